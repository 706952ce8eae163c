"""Who may talk to us, and what each may reach; decided before any view runs.

Own host names only; own pages only, for writes; this computer, or a device that was let in; a size
for each kind of body. Every answer carries a strict content policy and the version.
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
from inspector.web.current import data_folder, sharing

POLICY = (
    "default-src 'self'; img-src 'self' blob: data:; object-src 'none'; base-uri 'none'; "
    "frame-ancestors 'none'; form-action 'self'; script-src 'self'; connect-src 'self'"
)
# Of the worker that runs Python, and of nothing else: it compiles WebAssembly.
POLICY_OF_PYTHON = POLICY.replace("script-src 'self'", "script-src 'self' 'wasm-unsafe-eval'")
HEADERS = {
    "Content-Security-Policy": POLICY,
    "X-Content-Type-Options": "nosniff",
    "X-Frame-Options": "DENY",
    "Referrer-Policy": "same-origin",
    "Cross-Origin-Resource-Policy": "same-origin",
    "X-Inspector": __version__,
}
# Methods that change nothing, so that another site's page may cause them.
READS = ("GET", "HEAD", "OPTIONS")
HERE = ("localhost", "127.0.0.1", "[::1]")
# What a device reaches before it is let in, then with the cookie of its pass, then with the token
# of its pass. Everything else is for this computer.
OPEN = {
    "static",
    "joining.join",
    "joining.let_in",
    "joining.trust",
    "joining.here",
    "joining.authority_file",
}
BY_COOKIE = {"home.home", "walk.walk", "exchange.photo_out"}
BY_TOKEN = {
    "exchange.entries_out",
    "exchange.entries_in",
    "exchange.photo_in",
    "exchange.photo_there",
    "exchange.session_facts",
    "joining.move",
    "joining.says",
    "next_look.advice",
}
# The service worker's own files and those of Python, which name nothing that was recorded.
BY_COOKIE_ROOMS = {"offline", "python_files"}
# A form of ours is far smaller than this.
PLAIN_BODY = 256 * 1024  # bytes
BODIES = {
    "exchange.entries_in": 1_000_000,
    "exchange.photo_in": 25_000_000,
    "imports.take_in": 2_000_000_000,
    "joining.let_in": 4_096,
    "joining.move": 4_096,
    "joining.says": 16_384,
}
# As long as a device's pass.
COOKIE_LIFE = 30 * 86_400  # seconds
csrf = CSRFProtect()


@dataclass(frozen=True)
class Caller:
    """Who asks.

    Parameters
    ----------
    here : bool
        This computer itself.
    device : dict or None
        The device, None where none was let in.
    by_token : bool
        Whether it showed its token rather than its cookie.
    """

    here: bool
    device: dict[str, Any] | None = None
    by_token: bool = False


def init_app(app: Flask) -> None:
    """Guard every request, and mark every answer."""
    # Checked below, since a device's token takes the place of the form token.
    app.config["WTF_CSRF_CHECK_DEFAULT"] = False
    csrf.init_app(app)
    # In this order: cheap refusals first, and before anything of the body is read.
    app.before_request(_own_pages_only)
    app.before_request(_bounded)
    app.before_request(_let_through)
    app.after_request(_marked)


def _own_pages_only() -> None:
    """Refuse every write that a page of ours did not send."""
    if request.method in READS:
        return
    # Old browsers send no Sec-Fetch-Site; for them Origin and the form token are left.
    origin = request.headers.get("Origin")
    site = request.headers.get("Sec-Fetch-Site", "same-origin")
    if (origin and origin != f"{request.scheme}://{request.host}") or site not in (
        "same-origin",
        "none",
    ):
        abort(
            403,
            "This came from another site's page, so it was refused. Use the inspector's own pages.",
        )


def _bounded() -> None:
    """Refuse a body larger than its address takes."""
    # The length that is stated is refused at once; one that is not stated is counted while read.
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
    # Both must be of this computer: a name in a header proves nothing, and an address alone is
    # what a rebound page would use too.
    return _is_loopback(request.remote_addr) and _host_name() in HERE


def _found() -> Caller:
    """Return who is calling: this computer, a device by token or cookie, or nobody."""
    if caller_is_here():
        return Caller(here=True)
    scheme, _, token = request.headers.get("Authorization", "").partition(" ")
    if scheme.lower() == "bearer":
        return Caller(False, sharing().devices.of_token(token.strip()), by_token=True)
    # A page is loaded by navigation, which can carry no header of ours: a cookie takes its place.
    device_id = _device_in_cookie()
    return Caller(False, sharing().devices.of_id(device_id) if device_id else None)


def _host_name() -> str:
    """Return the name in the Host header, "" where there is none."""
    try:
        name = urlsplit(f"//{request.host}").hostname or ""
    # A Host header may be anything, also nothing that a URL can hold.
    except (ValueError, SecurityError):
        return ""
    return f"[{name}]" if ":" in name else name


def _is_loopback(address: str | None) -> bool:
    """Whether an address is this computer's own."""
    try:
        return ipaddress.ip_address(address or "").is_loopback
    except ValueError:
        return False


def _let_through():
    """None where the view may run, else the answer in its place."""
    if caller().here:
        # The tests switch it off where they are not about it.
        if request.method not in READS and current_app.config["WTF_CSRF_ENABLED"]:
            csrf.protect()
        return None
    shared = sharing().shared
    # Another name for this computer may be a rebound one, made by a page of somebody else.
    if shared is None or _host_name() != shared.address:
        abort(
            400,
            "This computer does not answer under that name. "
            "Use the address that its sharing page shows.",
        )
    endpoint = request.endpoint or ""
    if endpoint in OPEN:
        return None
    # A cookie goes along with any request that a browser makes; a token is sent by our own script
    # alone.
    if caller().device is None or (endpoint in BY_TOKEN and not caller().by_token):
        return _not_let_in()
    _refuse_other_pages(endpoint)
    return _list_for_devices() if endpoint == "home.home" else None


def _refuse_other_pages(endpoint: str) -> None:
    """A device that was let in reaches the walk of shared inspections, and writes by its token."""
    if endpoint not in BY_COOKIE | BY_TOKEN and request.blueprint not in BY_COOKIE_ROOMS:
        abort(403, "This page is for the laptop itself; a device that was let in reaches the walk.")
    if request.method not in READS and not caller().by_token:
        abort(403, "A device writes with its pass only. Open the walk and let it hand over.")
    inspection_id = (request.view_args or {}).get("inspection_id")
    if inspection_id is not None and inspection_id not in sharing().inspections():
        abort(
            403,
            "This inspection is not shared with devices. Share it on the laptop's sharing page.",
        )


def _list_for_devices():
    """The list that a device sees in place of the laptop's first page."""
    there = set(data_folder().inspections.ids())
    shown = []
    for inspection_id in sharing().inspections():
        if inspection_id in there:
            title = current_app.extensions["shelf"].row(inspection_id)["title"]
            shown.append({"id": inspection_id, "title": title})
    return render_template("sharing/list.html", inspections=shown, is_secure=request.is_secure)


def _not_let_in():
    """Refuse a device that has not joined, as JSON or as a page."""
    sentence = _why_not_let_in()
    if wants_json():
        return {"error": sentence}, 401
    return make_response(render_template("sharing/refused.html", sentence=sentence), 401)


def _why_not_let_in() -> str:
    """Why a device is not let in, with what to do."""
    shared, device_id = sharing().shared, _device_in_cookie()
    if shared and shared.secure_origin and device_id and sharing().devices.has_moved(device_id):
        return (
            f"This device goes on at {shared.secure_origin}/ since it trusts this laptop. Open "
            "that, and keep to it."
        )
    return (
        "This device is not let in, or no longer. On the laptop, open the sharing page; "
        "then scan its code, or open /join here."
    )


def wants_json() -> bool:
    """Whether a program of ours asks, which reads JSON, rather than a person's page."""
    joins = request.path in ("/join", "/join/move") and request.method == "POST"
    return joins or request.path.startswith(("/exchange/", "/session"))


def give_cookie(response: Response, device_id: str) -> None:
    """Let a browser load the pages of the walk, by a signed cookie that names the device.

    Parameters
    ----------
    response : Response
    device_id : str
        Once that device is revoked, the cookie opens nothing.
    """
    response.set_cookie(
        _cookie_name(),
        _signer().dumps(device_id),
        max_age=COOKIE_LIFE,
        # No script needs it, and none that slipped in can read it.
        httponly=True,
        samesite="Strict",
        secure=request.is_secure,
    )


def _device_in_cookie() -> str | None:
    """Return the device's id in the signed cookie; None where it is not ours."""
    try:
        found = _signer().loads(request.cookies.get(_cookie_name(), ""))
    except BadSignature:
        return None
    return found if isinstance(found, str) else None


def _cookie_name() -> str:
    # Cookies know neither ports nor schemes: the passes of http and https have names of their own.
    kind = "inspector-secure-device-" if request.is_secure else "inspector-device-"
    return current_app.config["SESSION_COOKIE_NAME"].replace("inspector-", kind)


def _signer() -> URLSafeSerializer:
    return URLSafeSerializer(current_app.secret_key, salt="device")


def nearby() -> str:
    """Where a device that came over https asks, without a certificate, whether we are near."""
    shared = sharing().shared
    return f"{shared.origin}/" if shared and request.is_secure else ""


def _marked(response: Response) -> Response:
    """Return the response with the headers that forbid foreign content and framing."""
    if nearby():
        policy = POLICY.replace("img-src", f"img-src {nearby()}here.svg")
        response.headers.setdefault("Content-Security-Policy", policy)
    for name, value in HEADERS.items():
        response.headers.setdefault(name, value)
    if request.is_secure or caller_is_here():
        # Browsers pass this one over, with a warning, on plain http from the network.
        response.headers.setdefault("Cross-Origin-Opener-Policy", "same-origin")
    # What was recorded is nobody's to keep but the pages' own scripts; pictures and static files
    # say themselves for how long they may be kept.
    response.headers.setdefault("Cache-Control", "no-store" if wants_json() else "no-cache")
    return response
