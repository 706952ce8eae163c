"""The real program as a laptop that shares, over an address that a test names; and a browser that
trusts its certificate."""

import base64
import contextlib
import hashlib
import socket
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

from inspector import create_app
from tests import a_browser
from tests.a_computer import ROOT

# The program with these addresses as its own, whatever this machine has.
WITH_ADDRESSES = """
import sys
from inspector.sharing import addresses
own = [addresses.Address(*each.split("=")) for each in sys.argv[1].split()]
addresses.own_addresses = lambda: own
from inspector.cli.parser import main
sys.exit(main(sys.argv[2:]))
"""


def two_free_ports(address: str) -> int:
    """A port that is free on an address and on loopback, with the one after it."""
    for _ in range(50):
        with socket.socket() as first, socket.socket() as second, socket.socket() as own:
            first.bind((address, 0))
            port = first.getsockname()[1]
            try:
                second.bind((address, port + 1))
                own.bind(("127.0.0.1", port))
            except (OSError, OverflowError):
                continue
            return port
    raise AssertionError("no two free ports")


class SharingLaptop:
    """`inspector serve` whose own addresses are given; it may be killed and started again.

    Parameters
    ----------
    data : Path
        Its data folder.
    address : str
        The one that phones are near.
    own : str
        Every address as the program shall find it, "address=interface" parted by blanks.
    """

    def __init__(self, data: Path, address: str, own: str = ""):
        self.data, self.address, self.own = data, address, own or f"{address}=wlan0"
        self.port = two_free_ports(address)
        self.loopback = f"http://127.0.0.1:{self.port}"
        self.plain = f"http://{address}:{self.port}"
        self.secure = f"https://{address}:{self.port + 1}"
        self._process = None

    def begin(self, name: str = "") -> str:
        """Begin an inspection before the program runs, of a vessel with this name; its id."""
        app = create_app(self.data, TESTING=True, WTF_CSRF_ENABLED=False)
        client = app.test_client()
        begun = client.post("/inspections", data={"go": "walk"}).headers["Location"].split("/")[2]
        if name:
            client.post(f"/inspection/{begun}/edit/vessel", data={"name": name})
        app.extensions["shelf"].close()
        app.extensions["data_folder"].close()
        return begun

    def start(self, *more: str) -> None:
        """Start it, and return once it answers, and is shared where that is asked for."""
        command = [sys.executable, "-c", WITH_ADDRESSES, self.own, "serve", "--data"]
        command += [str(self.data), "--port", str(self.port), "--no-browser", *more]
        self._process = subprocess.Popen(command, cwd=ROOT, stdout=subprocess.PIPE, text=True)
        last = "Shared" if "--share" in more else "Open"
        assert any(line.startswith(last) for line in self._process.stdout), "it did not start"

    def kill(self) -> None:
        """End it at once."""
        if self._process:
            self._process.kill()
            self._process.communicate()
            self._process = None


def key_of(identity) -> str:
    """The SHA-256 of the certificate's public key, by which a browser is made to trust it."""
    from cryptography import x509
    from cryptography.hazmat.primitives.serialization import Encoding, PublicFormat

    found = x509.load_pem_x509_certificate(identity.certificate.read_bytes())
    key = found.public_key().public_bytes(Encoding.DER, PublicFormat.SubjectPublicKeyInfo)
    return base64.b64encode(hashlib.sha256(key).digest()).decode()


@contextlib.contextmanager
def trusting_browser(chromium, identity, profile: Path) -> Iterator:
    """A browser at phone size that trusts one certificate, as if its authority was installed."""
    path = a_browser.installed() or a_browser.own_download()
    context = chromium.browser_type.launch_persistent_context(
        str(profile),
        executable_path=path,
        args=["--no-sandbox", f"--ignore-certificate-errors-spki-list={key_of(identity)}"],
        viewport={"width": 390, "height": 844},
        has_touch=True,
        is_mobile=True,
    )
    context.pages[0].set_default_timeout(30_000)
    yield context
    context.close()
