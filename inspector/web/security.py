"""Who may talk to us: own host names only, own pages only for writes, a strict content policy on every answer."""

from urllib.parse import urlsplit

from flask import Flask, Response, abort, request

POLICY = "default-src 'self'; img-src 'self' blob: data:; object-src 'none'; base-uri 'none'; frame-ancestors 'none'; form-action 'self'"
HEADERS = {
    "Content-Security-Policy": POLICY,
    "X-Content-Type-Options": "nosniff",
    "Referrer-Policy": "same-origin",
    "Cross-Origin-Opener-Policy": "same-origin",
}


def init_app(app: Flask) -> None:
    """Refuse strangers' writes before any view runs, and mark every answer."""
    app.before_request(_own_pages_only)
    app.after_request(_marked)


def _own_pages_only() -> None:
    if request.method in ("GET", "HEAD", "OPTIONS"):
        return
    origin = request.headers.get("Origin")
    site = request.headers.get("Sec-Fetch-Site", "same-origin")
    if (origin and urlsplit(origin).netloc != request.host) or site not in ("same-origin", "none"):
        abort(403, "This came from another site's page, so it was refused. Use the inspector's own pages.")


def _marked(response: Response) -> Response:
    for name, value in HEADERS.items():
        response.headers.setdefault(name, value)
    return response
