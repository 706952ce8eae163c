"""Who may talk to us, and what each may reach. Decided before any view runs: own host names only, own pages only for writes, this computer or a device that
was let in, a size for each kind of body. Every answer carries a strict content policy and the version.
"""

import ipaddress
from dataclasses import dataclass
from typing import Any
from urllib.parse import urlsplit

from flask import Flask, Response, abort, current_app, g, make_response, render_template, request
from flask_wtf.csrf import CSRFProtect
from itsdangerous import BadSignature, URLSafeSerializer
from werkzeug.exceptions import SecurityError

from inspector import __version__
from inspector.web.shared import sharing

POLICY = ("default-src 'self'; img-src 'self' blob: data:; object-src 'none'; base-uri 'none'; frame-ancestors 'none'; form-action 'self'; "
          "script-src 'self'; connect-src 'self'")
HEADERS = {
    "Content-Security-Policy": POLICY,
    "X-Content-Type-Options": "nosniff",
    "X-Frame-Options": "DENY",
    "Referrer-Policy": "same-origin",
    "Cross-Origin-Resource-Policy": "same-origin",
    "X-Inspector": __version__,
}
READS = ("GET", "HEAD", "OPTIONS")
HERE = ("localhost", "127.0.0.1", "[::1]")
# What a device reaches before it is let in, then with the cookie of its pass, then with the token of its pass. Everything else is for this computer.
OPEN = {"static", "sharing.join", "sharing.let_in"}
BY_COOKIE = {"prepare.home", "walk.walk", "exchange.photo_out"}
BY_TOKEN = {"exchange.entries_out", "exchange.entries_in", "exchange.photo_in", "exchange.photo_there", "exchange.session_facts",
            "next_look.advice"}
# The service worker's own files, which name nothing that was recorded.
BY_COOKIE_ROOMS = {"offline"}
PLAIN_BODY = 256 * 1024
BODIES = {
    "exchange.entries_in": 1_000_000, "exchange.photo_in": 25_000_000, "imports.take_in": 2_000_000_000, "sharing.let_in": 4_096,
}
COOKIE_LIFE = 30 * 86_400
csrf = CSRFProtect()


@dataclass(frozen=True)
class Caller:
    """Who asks: this computer itself, or a device (None: not let in); `by_token` where it showed its token rather than its cookie."""

    here: bool
    device: dict[str, Any] | None = None
    by_token: bool = False


def init_app(app: Flask) -> None:
    """Guard every request, and mark every answer."""
    app.config["WTF_CSRF_CHECK_DEFAULT"] = False  # checked below, since a device's token takes the place of the form token
    csrf.init_app(app)
    app.before_request(_own_pages_only)
    app.before_request(_bounded)
    app.before_request(_let_through)
    app.after_request(_marked)


def _own_pages_only() -> None:
    if request.method in READS:
        return
    origin = request.headers.get("Origin")
    site = request.headers.get("Sec-Fetch-Site", "same-origin")
    if (origin and origin != f"{request.scheme}://{request.host}") or site not in ("same-origin", "none"):
        abort(403, "This came from another site's page, so it was refused. Use the inspector's own pages.")


def _bounded() -> None:
    most = BODIES.get(request.endpoint or "", PLAIN_BODY)
    request.max_content_length = most
    if (request.content_length or 0) > most:
        abort(413, f"This is larger than {_size(most)}, which is the most that is taken here.")


def _size(count: int) -> str:
    return f"{count / 1e6:.0f} MB" if count >= 1e6 else f"{count / 1024:.0f} kB"


def caller() -> Caller:
    """Who asks, found once for each request."""
    if "caller" not in g:
        g.caller = _found()
    return g.caller


def caller_is_here() -> bool:
    """Whether the request comes from this computer under a loopback name."""
    # Both must be of this computer: a name in a header proves nothing, and an address alone is what a rebound page would use too.
    return _is_loopback(request.remote_addr) and _host_name() in HERE


def _found() -> Caller:
    if caller_is_here():
        return Caller(here=True)
    scheme, _, token = request.headers.get("Authorization", "").partition(" ")
    if scheme.lower() == "bearer":
        return Caller(False, sharing().devices.of_token(token.strip()[:200]), by_token=True)
    device_id = _device_in_cookie()
    return Caller(False, sharing().devices.of_id(device_id) if device_id else None)


def _host_name() -> str:
    try:
        name = urlsplit(f"//{request.host}").hostname or ""
    except (ValueError, SecurityError):
        return ""
    return f"[{name}]" if ":" in name else name


def _is_loopback(address: str | None) -> bool:
    try:
        return ipaddress.ip_address(address or "").is_loopback
    except ValueError:
        return False


def _let_through():
    who, endpoint = caller(), request.endpoint or ""
    if who.here:
        if request.method not in READS and current_app.config["WTF_CSRF_ENABLED"]:
            csrf.protect()
        return None
    shared = sharing().shared
    if shared is None or _host_name() != shared.address:
        abort(400, "This computer does not answer under that name. Use the address that its sharing page shows.")
    if endpoint in OPEN:
        return None
    if who.device is None or (endpoint in BY_TOKEN and not who.by_token):
        return _not_let_in()
    if endpoint not in BY_COOKIE | BY_TOKEN and request.blueprint not in BY_COOKIE_ROOMS:
        abort(403, "This page is for the laptop itself; a device that was let in reaches the walk.")
    if request.method not in READS and not who.by_token:
        abort(403, "A device writes with its pass only. Open the walk and let it hand over.")
    one = (request.view_args or {}).get("inspection_id")
    if one is not None and one not in sharing().inspections():
        abort(403, "This inspection is not shared with devices. Share it on the laptop's sharing page.")
    return render_for_devices() if endpoint == "prepare.home" else None


def render_for_devices():
    """The list that a device sees in place of the laptop's first page."""
    from inspector.web.desk import desk, title_of

    shown = [desk().inspections.get(one) for one in sharing().inspections() if one in desk().inspections.ids()]
    return render_template("sharing/list.html", inspections=[{"id": one.id, "title": title_of(one)} for one in shown])


def _not_let_in():
    sentence = "This device is not let in, or no longer. On the laptop, open the sharing page; then scan its code, or open /join here."
    if wants_json():
        return {"error": sentence}, 401
    return make_response(render_template("sharing/refused.html", sentence=sentence), 401)


def wants_json() -> bool:
    """Whether a program of ours asks, which reads JSON, rather than a person's page."""
    return request.path.startswith(("/exchange/", "/session")) or (request.path == "/join" and request.method == "POST")


def give_cookie(response: Response, device_id: str) -> None:
    """Let this browser load the pages of the walk: a signed cookie that names the device, worth nothing once the device is revoked."""
    response.set_cookie(_cookie_name(), _signer().dumps(device_id), max_age=COOKIE_LIFE, httponly=True, samesite="Strict", secure=request.is_secure)


def _device_in_cookie() -> str | None:
    try:
        found = _signer().loads(request.cookies.get(_cookie_name(), ""))
    except BadSignature:
        return None
    return found if isinstance(found, str) else None


def _cookie_name() -> str:
    return current_app.config["SESSION_COOKIE_NAME"].replace("inspector-", "inspector-device-")


def _signer() -> URLSafeSerializer:
    return URLSafeSerializer(current_app.secret_key, salt="device")


def _marked(response: Response) -> Response:
    for name, value in HEADERS.items():
        response.headers.setdefault(name, value)
    if request.is_secure or caller_is_here():
        # Browsers pass this one over, with a warning, on plain http from the network.
        response.headers.setdefault("Cross-Origin-Opener-Policy", "same-origin")
    # What was recorded is nobody's to keep but the pages' own scripts; pictures and static files say for themselves how long they hold.
    response.headers.setdefault("Cache-Control", "no-store" if wants_json() else "no-cache")
    return response
