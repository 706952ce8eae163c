"""The real server shared on an address: over http, and over https with its own authority; the
button that starts it; and what is refused.
"""

import http.client
import json
import re
import socket
import ssl
import stat
import subprocess
import sys
from pathlib import Path

import pytest

from inspector.cli.parser import main
from inspector.sharing import tls_certificates

ROOT = Path(__file__).resolve().parents[3]
# An address of this machine that is neither the laptop's own name nor needs a network.
ADDRESS = "127.0.0.2"
linux = pytest.mark.skipif(
    sys.platform != "linux", reason="only Linux answers on all of 127.0.0.0/8 by itself"
)


def free_port():
    """A port that is free here, with the one after it."""
    for _ in range(50):
        with socket.socket() as one, socket.socket() as two:
            one.bind((ADDRESS, 0))
            try:
                two.bind((ADDRESS, one.getsockname()[1] + 1))
            except OSError:
                continue
            return one.getsockname()[1]
    raise AssertionError("no two free ports")


@pytest.fixture
def start(tmp_path):
    running = []

    def begin(*more, port=None, share=True):
        port = port or free_port()
        command = [
            sys.executable,
            "-m",
            "inspector",
            "serve",
            "--data",
            str(tmp_path / "data"),
            "--port",
            str(port),
            "--no-browser",
            *(["--share"] if share else []),
            *more,
        ]
        process = subprocess.Popen(
            command, cwd=ROOT, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True
        )
        running.append(process)
        for line in process.stdout:
            if line.startswith("Shared" if share else "Open"):
                return process, port
        return process, port

    yield begin
    for process in running:
        process.kill()
        process.communicate()


def ask(connection, method, path, body=None, **headers):
    connection.request(method, path, body, headers)
    answer = connection.getresponse()
    return answer.status, answer.read(), answer.headers


def at_laptop(port, method, path, body=None, **headers):
    connection = http.client.HTTPConnection("127.0.0.1", port, timeout=10)
    try:
        return ask(connection, method, path, body, **headers)
    finally:
        connection.close()


def tap(port, path, body=""):
    """A button of the laptop's own pages: (status, page, headers)."""
    _, data, headers = at_laptop(port, "GET", "/session")
    given = {
        "Cookie": headers["Set-Cookie"].partition(";")[0],
        "X-CSRFToken": json.loads(data)["csrf"],
        "Content-Type": "application/x-www-form-urlencoded",
    }
    return at_laptop(port, "POST", path, body, **given)


def new_code(port):
    """A code, as the person at the laptop has it made."""
    status, page, _ = tap(port, "/sharing/code")
    assert 200 == status
    return re.search(r"\b[a-z2-9]{4}-[a-z2-9]{4}-[a-z2-9]{4}\b", page.decode()).group()


def join(connection, port):
    status, data, _ = ask(
        connection,
        "POST",
        "/join",
        json.dumps({"code": new_code(port), "name": "tablet"}),
        **{"Content-Type": "application/json"},
    )
    assert 200 == status
    return json.loads(data)


@linux
def test_basic_sharing_answers_on_the_one_address_and_on_loopback(start):
    """A device joins over http at the shared address.

    A third address of the same machine does not answer.
    """
    _, port = start("--address", ADDRESS)
    device = http.client.HTTPConnection(ADDRESS, port, timeout=10)
    assert 401 == ask(device, "GET", "/session")[0]
    given = join(device, port)
    status, data, _ = ask(device, "GET", "/session", Authorization=f"Bearer {given['token']}")
    device.close()

    assert (200, "") == (status, json.loads(data)["csrf"])
    with pytest.raises(ConnectionRefusedError):
        socket.create_connection(("127.0.0.3", port), timeout=2)


@linux
def test_https_beside_it_has_its_own_authority(start):
    """A client that trusts only the fetched authority gets in over https; one that does not is
    refused by its own rules. The fingerprint is on both pages."""
    _, port = start("--address", ADDRESS)
    fetch = http.client.HTTPConnection(ADDRESS, port, timeout=10)
    status, certificate, headers = ask(fetch, "GET", "/authority.crt")
    assert (200, "application/x-x509-ca-cert") == (status, headers["Content-Type"])
    page = ask(fetch, "GET", "/trust")[1].decode()
    fetch.close()
    trusting = ssl.create_default_context(cadata=certificate)
    device = http.client.HTTPSConnection(ADDRESS, port + 1, timeout=10, context=trusting)
    given = join(device, port)
    assert 200 == ask(device, "GET", "/session", Authorization=f"Bearer {given['token']}")[0]
    device.close()

    pem = ssl.DER_cert_to_PEM_cert(certificate).encode()
    fingerprint = tls_certificates.read(pem).fingerprint
    assert fingerprint in page
    assert fingerprint in at_laptop(port, "GET", "/sharing")[1].decode()
    with pytest.raises(ssl.SSLCertVerificationError):
        http.client.HTTPSConnection(
            ADDRESS, port + 1, timeout=10, context=ssl.create_default_context()
        ).connect()


def refused_at(port):
    """Whether nothing listens at the shared address."""
    try:
        socket.create_connection((ADDRESS, port), timeout=2).close()
    except ConnectionRefusedError:
        return True
    return False


@linux
def test_the_button_opens_the_network_and_the_other_shuts_it(start):
    """No restart and no option: nothing listens, the button is tapped and both addresses answer,
    the other is tapped and nothing listens; and once more at the same place. An open connection of
    a device ends with it, and its pass is good again afterwards."""
    _, port = start(share=False)
    assert refused_at(port)
    for _ in range(2):
        status, _, headers = tap(port, "/sharing/start", f"address={ADDRESS}")
        assert (302, "/sharing") == (status, headers["Location"])
        device = http.client.HTTPConnection(ADDRESS, port, timeout=10)
        assert 200 == ask(device, "GET", "/join")[0]
        token = join(device, port)["token"]
        assert not refused_at(port + 1)
        assert 302 == tap(port, "/sharing/stop")[0]
        assert refused_at(port)
        assert refused_at(port + 1)
        with pytest.raises((http.client.HTTPException, OSError)):
            ask(device, "GET", "/join")
        device.close()
    tap(port, "/sharing/start", f"address={ADDRESS}")
    device = http.client.HTTPConnection(ADDRESS, port, timeout=10)
    assert 200 == ask(device, "GET", "/session", Authorization=f"Bearer {token}")[0]
    device.close()


@linux
def test_a_port_that_is_taken_is_said_on_the_page(start):
    """The button answers with a sentence, and nothing is shared."""
    _, port = start(share=False)
    with socket.socket() as other:
        other.bind((ADDRESS, port))
        other.listen()
        status, page, _ = tap(port, "/sharing/start", f"address={ADDRESS}")

    assert 400 == status
    assert f"Port {port} of {ADDRESS} cannot be had" in page.decode()
    assert "stop sharing" not in at_laptop(port, "GET", "/sharing")[1].decode()


@linux
def test_the_only_inspection_is_shared_from_the_start(start, tmp_path):
    """There is nothing to choose, so a phone reaches it at once."""
    assert 0 == main(["import", str(a_bundle(tmp_path)), "--data", str(tmp_path / "data")])
    _, port = start("--address", ADDRESS)
    device = http.client.HTTPConnection(ADDRESS, port, timeout=10)
    opened = join(device, port)["open"]
    device.close()

    assert "/inspection/one/walk" == opened


def a_bundle(tmp_path):
    from inspector.places import shipped
    from inspector.record.bundles import bundle
    from inspector.record.inspections import Inspections

    elsewhere = Inspections(tmp_path / "elsewhere", "other")
    one = elsewhere.create(shipped("checklists"), "one")
    one.record("QX", [("vessel", "name", "Grey Heron")])
    bundle.write(one.folder, tmp_path / "one.zip")
    elsewhere.close()
    return tmp_path / "one.zip"


@linux
def test_a_taken_port_is_refused_never_replaced(start):
    """Another port would be another place for what the devices hold, so sharing does not start."""
    with socket.socket() as other:
        other.bind((ADDRESS, 0))
        other.listen()
        process, port = start("--address", ADDRESS, port=other.getsockname()[1])

        assert 1 == process.wait(timeout=20)
        printed = process.stderr.read()
    assert f"Port {port} of {ADDRESS} cannot be had" in printed
    assert "Traceback" not in printed


@pytest.mark.skipif(sys.platform == "win32", reason="rights are others there")
@linux
def test_secrets_are_their_owners_alone(start, tmp_path):
    """Data folder, key, cookie secret and catalogue (digests of tokens).

    Nobody else on this machine may read them.
    """
    _, _ = start("--address", ADDRESS)
    data = tmp_path / "data"
    rights = {
        name: stat.S_IMODE((data / name).stat().st_mode)
        for name in ("", "tls", "tls/key.pem", "secret", "catalogue.json")
    }

    assert {
        "": 0o700,
        "tls": 0o700,
        "tls/key.pem": 0o600,
        "secret": 0o600,
        "catalogue.json": 0o600,
    } == rights
    assert ["authority.pem", "certificate.pem", "key.pem"] == sorted(
        path.name for path in (data / "tls").iterdir()
    )


def test_how_to_share_without_sharing_is_refused(capsys, tmp_path):
    """--address alone is refused."""
    assert 1 == main(["serve", "--data", str(tmp_path), "--address", ADDRESS, "--no-browser"])
    assert "--share" in capsys.readouterr().err


def test_an_address_that_is_not_here_is_refused_before_anything_is_touched(capsys, tmp_path):
    """The sentence names those that there are; no data folder was made."""
    data = tmp_path / "data"
    arguments = ["serve", "--data", str(data), "--share", "--address", "203.0.113.9"]

    assert 1 == main([*arguments, "--no-browser"])
    assert "is not an address of this computer" in capsys.readouterr().err
    assert not data.exists()
