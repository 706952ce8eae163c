"""A phone that trusts the laptop's certificate, and then no more: near is told from far."""

import base64
import hashlib
import shutil
import subprocess
import sys

import pytest
from playwright.sync_api import expect

from inspector import create_app
from inspector.sharing import authority
from tests import a_browser, a_walk
from tests.a_computer import ROOT
from tests.web.on_device.test_shared_server import ADDRESS, free_port, new_code

pytestmark = pytest.mark.skipif(
    sys.platform != "linux", reason="only Linux answers on all of 127.0.0.0/8 by itself"
)


@pytest.fixture
def laptop(tmp_path):
    """Starts and kills `inspector serve --share --mode full` on one port; one inspection is
    begun."""
    pytest.importorskip("cheroot")
    app = create_app(tmp_path / "data", TESTING=True, WTF_CSRF_ENABLED=False)
    app.test_client().post("/inspections", data={"go": "walk"})
    app.extensions["data_folder"].close()
    port, running = free_port(), []

    class Laptop:
        data = tmp_path / "data"
        at = port
        address = f"https://{ADDRESS}:{port}"

        def start(self):
            """Start it, and return once it is shared."""
            command = [sys.executable, "-m", "inspector", "serve", "--data", str(self.data)]
            command += ["--port", str(port), "--no-browser", "--share", "--address", ADDRESS]
            process = subprocess.Popen(
                [*command, "--mode", "full"], cwd=ROOT, stdout=subprocess.PIPE, text=True
            )
            running.append(process)
            assert any(line.startswith("Shared") for line in process.stdout)

        def kill(self):
            """End it at once."""
            process = running.pop()
            process.kill()
            process.communicate()

    yield Laptop()
    for process in running:
        process.kill()
        process.communicate()


def key_of(identity):
    """The SHA-256 of the certificate's public key, by which a browser is made to trust it."""
    from cryptography import x509
    from cryptography.hazmat.primitives.serialization import Encoding, PublicFormat

    found = x509.load_pem_x509_certificate(identity.certificate.read_bytes())
    key = found.public_key().public_bytes(Encoding.DER, PublicFormat.SubjectPublicKeyInfo)
    return base64.b64encode(hashlib.sha256(key).digest()).decode()


@pytest.fixture
def trusting(chromium, laptop, tmp_path):
    """A page of a browser that trusts the laptop's first certificate alone."""
    trusted = key_of(authority.identity_for(laptop.data / "tls", ADDRESS))
    path = a_browser.installed() or a_browser.own_download()
    context = chromium.browser_type.launch_persistent_context(
        str(tmp_path / "profile"),
        executable_path=path,
        args=["--no-sandbox", f"--ignore-certificate-errors-spki-list={trusted}"],
        viewport={"width": 390, "height": 844},
        has_touch=True,
        is_mobile=True,
    )
    yield context.pages[0]
    context.close()


def rate(page, number):
    button = a_walk.plain_cards(page).nth(number).locator("[data-rate=fair]")
    button.click()
    expect(button).to_have_attribute("aria-pressed", "true")


def test_a_renewed_authority_does_not_look_like_distance(trusting, laptop):
    """Killed, the laptop is far; started with another authority it is near and not trusted, and
    the strip says so with the address that helps. What is recorded waits."""
    page = trusting
    laptop.start()
    page.goto(f"{laptop.address}/join#{new_code(laptop.at).replace('-', '')}")
    page.fill("[name=name]", "tablet")
    page.click("form#join button")
    page.wait_for_url(f"{laptop.address}/")
    page.click("a.button.first")
    a_walk.called(page, "QX")
    a_walk.sheet(page)
    rate(page, 0)
    a_walk.handed_over(page)
    strip, helps = page.locator("#strip"), f"open http://{ADDRESS}:{laptop.at + 1}/"

    laptop.kill()
    rate(page, 1)
    expect(strip).to_contain_text("no contact with", timeout=20_000)
    expect(strip).to_contain_text(helps)
    assert "no safe connection" not in strip.inner_text()

    shutil.rmtree(laptop.data / "tls")
    laptop.start()
    page.evaluate("() => window.dispatchEvent(new Event('online'))")
    expect(strip).to_contain_text("is near, but no safe connection", timeout=30_000)
    expect(strip).to_contain_text(helps)
    expect(strip).to_contain_text("1 to hand over")
    assert "no contact" not in strip.inner_text()
