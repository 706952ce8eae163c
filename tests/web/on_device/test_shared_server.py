"""The real server shared on an address.

Basic over http, full over https with its own authority; and what is refused at the start.
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
from inspector.sharing import addresses, authority
from inspector.sharing import certificate_page as fetching

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

    def begin(*more, port=None):
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
            "--share",
            *more,
        ]
        process = subprocess.Popen(
            command, cwd=ROOT, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True
        )
        running.append(process)
        for line in process.stdout:
            if line.startswith("Shared"):
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


def new_code(port):
    """A code, as the person at the laptop has it made."""
    _, data, headers = at_laptop(port, "GET", "/session")
    cookie = headers["Set-Cookie"].partition(";")[0]
    status, page, _ = at_laptop(
        port,
        "POST",
        "/sharing/code",
        "",
        **{"Cookie": cookie, "X-CSRFToken": json.loads(data)["csrf"]},
    )
    assert 200 == status
    return re.search(r"[a-z2-9]{4}-[a-z2-9]{4}-[a-z2-9]{4}", page.decode()).group()


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
def test_full_sharing_speaks_tls_under_its_own_authority(start, tmp_path):
    """A client that trusts only the fetched authority gets in over https.

    One that does not trust it is refused by its own rules.
    """
    pytest.importorskip("cheroot")
    pytest.importorskip("cryptography")
    _, port = start("--address", ADDRESS, "--mode", "full")
    fetch = http.client.HTTPConnection(ADDRESS, port + 1, timeout=10)
    status, certificate, headers = ask(fetch, "GET", "/authority.crt")
    assert (200, "application/x-x509-ca-cert") == (status, headers["Content-Type"])
    page = ask(fetch, "GET", "/")[1].decode()
    assert 404 == ask(fetch, "GET", "/session")[0]
    fetch.close()
    trusting = ssl.create_default_context(cadata=certificate)
    device = http.client.HTTPSConnection(ADDRESS, port, timeout=10, context=trusting)
    given = join(device, port)
    assert 200 == ask(device, "GET", "/session", Authorization=f"Bearer {given['token']}")[0]
    device.close()

    fingerprint = authority._fingerprint(tmp_path / "data" / "tls" / "authority.pem")
    assert fingerprint in page
    assert fingerprint in at_laptop(port, "GET", "/sharing")[1].decode()
    with pytest.raises(ssl.SSLCertVerificationError):
        http.client.HTTPSConnection(
            ADDRESS, port, timeout=10, context=ssl.create_default_context()
        ).connect()


@linux
def test_a_mode_is_kept_over_a_restart(start, tmp_path):
    """The only inspection is shared at the start.

    A second start in the other mode ends in one sentence.
    """
    assert 0 == main(["import", str(a_bundle(tmp_path)), "--data", str(tmp_path / "data")])
    first, _ = start("--address", ADDRESS, "--mode", "basic")
    first.kill()
    first.wait()
    second, _ = start("--address", ADDRESS, "--mode", "full")

    assert 1 == second.wait(timeout=20)
    assert re.search(r"inspector: Inspection \S+ is shared in mode basic", second.stderr.read())


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
    pytest.importorskip("cheroot")
    _, _ = start("--address", ADDRESS, "--mode", "full")
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


@pytest.mark.parametrize(
    ("asked", "own", "chosen"),
    [
        (None, ["192.168.137.1"], "192.168.137.1"),
        (None, ["10.42.0.1", "8.8.4.4"], "10.42.0.1"),
        ("10.42.0.1", ["10.42.0.1", "192.168.2.1"], "10.42.0.1"),
    ],
)
def test_the_one_address_is_chosen(asked, own, chosen):
    """The address asked for, else the only private one."""
    assert chosen == addresses.choose(asked, own)


@pytest.mark.parametrize(
    ("asked", "own", "sentence"),
    [
        (None, [], "no address on a private network"),
        (None, ["10.42.0.1", "192.168.2.1"], "10.42.0.1, 192.168.2.1"),
        ("10.0.0.9", ["10.42.0.1"], "is not an address"),
        ("0.0.0.0", ["10.42.0.1"], "cannot be shared on"),
        ("::1", ["10.42.0.1"], "cannot be shared on"),
        ("laptop", ["10.42.0.1"], "is not an address"),
    ],
)
def test_an_address_that_cannot_be_is_refused_with_those_that_can(asked, own, sentence):
    """None, several, a foreign one, all of them at once.

    One sentence that lists the machine's own.
    """
    with pytest.raises(addresses.NoAddress, match=sentence):
        addresses.choose(asked, own)


@linux
def test_full_sharing_without_the_extra_is_one_sentence(monkeypatch, capsys, tmp_path):
    """Without the extra, the sentence names the command that brings it."""
    monkeypatch.setitem(sys.modules, "cryptography", None)
    arguments = [
        "serve",
        "--data",
        str(tmp_path),
        "--share",
        "--address",
        ADDRESS,
        "--mode",
        "full",
        "--no-browser",
    ]

    assert 1 == main([*arguments, "--port", str(free_port())])
    assert "pip install 'inspector[share]'" in capsys.readouterr().err


def test_how_to_share_without_sharing_is_refused(capsys, tmp_path):
    """--address or --mode alone are refused."""
    assert 1 == main(["serve", "--data", str(tmp_path), "--mode", "full", "--no-browser"])
    assert "--share" in capsys.readouterr().err


def test_an_identity_is_kept_while_it_serves(tmp_path):
    """The same address has the same authority, so that devices need it once.

    Another one, or an old one, needs a new.
    """
    pytest.importorskip("cheroot")
    from datetime import UTC, datetime, timedelta

    first = authority.identity_for(tmp_path, "192.168.7.7").fingerprint
    assert first == authority.identity_for(tmp_path, "192.168.7.7").fingerprint
    assert first == authority.identity_for(tmp_path, "10.42.0.1").fingerprint
    other = authority.identity_for(tmp_path, "192.168.7.8").fingerprint

    assert first != other
    assert (
        other
        != authority.identity_for(
            tmp_path, "192.168.7.8", datetime.now(UTC) + timedelta(days=390)
        ).fingerprint
    )


def test_the_authority_cannot_speak_for_public_names(tmp_path):
    """It speaks for private addresses and local names only, and for 825 days at most."""
    pytest.importorskip("cheroot")
    x509 = pytest.importorskip("cryptography.x509")
    made = authority.identity_for(tmp_path, "192.168.7.7")
    root, leaf = (
        x509.load_pem_x509_certificate(path.read_bytes())
        for path in (made.authority, made.certificate)
    )
    permitted = root.extensions.get_extension_for_class(x509.NameConstraints)

    assert permitted.critical
    assert {"local", "localhost", *authority.PRIVATE} == {
        str(one.value) for one in permitted.value.permitted_subtrees
    }
    assert (leaf.not_valid_after_utc - leaf.not_valid_before_utc).days <= 825
    leaf.verify_directly_issued_by(root)


def test_the_fetching_page_answers_under_its_address_only(tmp_path):
    """A rebound name is refused there too, and no script may run."""
    pytest.importorskip("cheroot")
    client = fetching.make(
        authority.identity_for(tmp_path, "192.168.7.7"), "192.168.7.7"
    ).test_client()

    assert 400 == client.get("/", headers={"Host": "rebound.example"}).status_code
    good = client.get("/", headers={"Host": "192.168.7.7:5732"})
    assert 200 == good.status_code
    assert good.headers["Content-Security-Policy"].startswith("default-src 'none'")
    assert 5 == good.get_data(as_text=True).count("<svg")
