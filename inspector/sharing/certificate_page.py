"""One page and one file over plain http: the authority's certificate, and how to install it.

It is for devices that do not trust the authority yet; nothing that was recorded is here.
"""

import base64
import hashlib
import ssl
from datetime import UTC, datetime
from pathlib import Path

from flask import Flask, Response, render_template

from inspector import places
from inspector.sharing.authority import Identity

HERE = "<svg xmlns='http://www.w3.org/2000/svg' width='1' height='1'/>"
STYLE = (
    "body{font:18px/1.5 system-ui,sans-serif;margin:0 auto;padding:16px;max-width:760px;"
    "color:#12263a;background:#fbf7ec}"
    "h1{font-size:26px}h2{font-size:19px;margin:28px 0 6px}"
    "svg{display:block;width:200px;height:auto;margin:6px 0}"
    "code{font-size:17px;overflow-wrap:anywhere}"
    "a.get{display:inline-block;padding:14px 20px;border:2px solid #12263a;border-radius:8px;"
    "color:inherit;font-weight:600}"
)


def make(identity: Identity, address: str) -> Flask:
    """Return the application of that page.

    Parameters
    ----------
    identity : Identity
    address : str
        The one address under which it answers.

    Returns
    -------
    Flask
    """
    app = Flask(
        "inspector-authority", template_folder=str(places.shipped("templates")), static_folder=None
    )
    # Plain http that anybody may open: it serves one page and one public file, and takes nothing.
    app.config.update(TRUSTED_HOSTS=[address], MAX_CONTENT_LENGTH=1024)

    @app.get("/")
    def page():
        return render_template(
            "sharing/authority.html",
            style=STYLE,
            fingerprint=identity.fingerprint,
            news=identity.news,
            clock=f"{datetime.now(UTC):%Y-%m-%d %H:%M} UTC",
        )

    @app.get("/here.svg")
    def here():
        # A walk page that cannot connect safely asks for it: where it comes, the laptop is near.
        return Response(HERE, mimetype="image/svg+xml")

    @app.get("/authority.crt")
    def file():
        return Response(
            ssl.PEM_cert_to_DER_cert(Path(identity.authority).read_text()),
            mimetype="application/x-x509-ca-cert",
            headers={"Content-Disposition": 'attachment; filename="authority.crt"'},
        )

    @app.after_request
    def marked(response: Response) -> Response:
        response.headers["Content-Security-Policy"] = _policy()
        response.headers["X-Content-Type-Options"] = "nosniff"
        response.headers["Cache-Control"] = "no-store"
        return response

    return app


def _policy() -> str:
    """Nothing but the page's own style is allowed."""
    digest = base64.b64encode(hashlib.sha256(STYLE.encode()).digest()).decode()
    return (
        f"default-src 'none'; style-src 'sha256-{digest}'; base-uri 'none'; "
        "form-action 'none'; frame-ancestors 'none'"
    )
