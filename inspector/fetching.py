"""One page and one file over plain http: the authority's certificate for devices that do not trust it yet, and how to install it. Nothing recorded is here."""

import base64
import hashlib
import ssl
from pathlib import Path

from flask import Flask, Response, render_template

from inspector import places
from inspector.authority import Identity

STYLE = (
    "body{font:18px/1.5 system-ui,sans-serif;margin:0 auto;padding:16px;max-width:760px;color:#12263a;background:#fbf7ec}"
    "h1{font-size:26px}h2{font-size:19px;margin:28px 0 6px}svg{display:block;width:200px;height:auto;margin:6px 0}"
    "code{font-size:17px;overflow-wrap:anywhere}"
    "a.get{display:inline-block;padding:14px 20px;border:2px solid #12263a;border-radius:8px;color:inherit;font-weight:600}"
)


def make(identity: Identity, address: str) -> Flask:
    """The application of that page, for the one address."""
    app = Flask("inspector-authority", template_folder=str(places.shipped("templates")), static_folder=None)
    app.config.update(TRUSTED_HOSTS=[address], MAX_CONTENT_LENGTH=1024)
    hashed = base64.b64encode(hashlib.sha256(STYLE.encode()).digest()).decode()
    policy = f"default-src 'none'; style-src 'sha256-{hashed}'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'"

    @app.get("/")
    def page():
        return render_template("sharing/authority.html", style=STYLE, fingerprint=identity.fingerprint)

    @app.get("/authority.crt")
    def file():
        data = ssl.PEM_cert_to_DER_cert(Path(identity.authority).read_text())
        return Response(data, mimetype="application/x-x509-ca-cert", headers={"Content-Disposition": 'attachment; filename="authority.crt"'})

    @app.after_request
    def marked(response: Response) -> Response:
        response.headers.update({"Content-Security-Policy": policy, "X-Content-Type-Options": "nosniff", "Cache-Control": "no-store"})
        return response

    return app
