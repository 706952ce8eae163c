"""Where a phone or tablet comes in: it joins by a code, and may learn to trust this computer."""

from flask import (
    Blueprint,
    Response,
    current_app,
    jsonify,
    render_template,
    request,
)

from inspector.record import strict_json
from inspector.record.inspections import NoSuchInspection
from inspector.sharing import authority
from inspector.sharing.devices import MOST_NAMES
from inspector.sharing.pairing import CodeRefused
from inspector.values.errors import InspectorError
from inspector.web.current import data_folder, sharing
from inspector.web.joining import phones
from inspector.web.security import POLICY, caller, give_cookie

pages = Blueprint("joining", __name__)
HERE = "<svg xmlns='http://www.w3.org/2000/svg' width='1' height='1'/>"


class BadJoin(InspectorError):
    """What a joining device sent cannot be used."""


@pages.get("/join")
def join():
    """Where a device types the code, or has it from the address."""
    return render_template("sharing/join.html", title="Join")


@pages.post("/join")
def let_in():
    """Trade a code for a pass: a token for the exchange, and a cookie for loading the pages."""
    if sharing().shared is None:
        raise NoSuchInspection("Nothing is shared now.")
    body = strict_json.loads(request.get_data(cache=False))
    code, name, before = _asked(body)
    try:
        moves = _moving(sharing().pairing.use(code))
    except CodeRefused as problem:
        answer = jsonify(error=str(problem))
        answer.status_code = problem.status
        if problem.wait:
            answer.headers["Retry-After"] = str(problem.wait)
        return answer
    token, document = sharing().devices.let_in(name, before, moves=moves, secure=request.is_secure)
    # A browser that lost its storage had other names before, under which it may still hand over.
    used = _used(body)
    sharing().devices.names_of(document["id"], used, used)
    answer = jsonify(token=token, device=document["id"], name=document["name"], open=_opened())
    give_cookie(answer, document["id"])
    return answer


def _moving(device_id: str) -> str:
    """The device that moves by a code, "" for a new one; refused where it was ended meanwhile."""
    if device_id and sharing().devices.of_id(device_id) is None:
        raise CodeRefused("This phone is let in no longer; ask for a new code.", status=403, wait=0)
    return device_id


def _opened() -> str:
    """The page that a device sees first: the only inspection, else the list of them."""
    there = set(data_folder().inspections.ids())
    shared = [name for name in sharing().inspections() if name in there]
    return f"/inspection/{shared[0]}/walk" if len(shared) == 1 else "/"


@pages.post("/join/move")
def move():
    """The address at which a device that is let in goes on over https, with a code to join."""
    shared, device = sharing().shared, caller().device
    if shared is None or not shared.secure_origin or device is None:
        raise BadJoin("This laptop does not serve https now; its sharing page says why.")
    code = sharing().pairing.code_to_move(device["id"])
    return jsonify(address=f"{shared.secure_origin}/join#move{code}")


@pages.get("/trust")
def trust():
    """How a device learns to trust this computer, so that the walk works after closing too."""
    shared = sharing().shared
    page = render_template("sharing/trust.html", title="Works after closing too", shared=shared)
    response = Response(page)
    if shared and shared.secure_origin:
        # The page asks there for one picture: where it comes, the device trusts us.
        policy = POLICY.replace("img-src", f"img-src {shared.secure_origin}/here.svg")
        response.headers["Content-Security-Policy"] = policy
    return response


@pages.get("/here.svg")
def here():
    """Nothing but the news that this computer is near, for pages of its other address."""
    headers = {"Cross-Origin-Resource-Policy": "cross-origin", "Cache-Control": "no-store"}
    return Response(HERE, mimetype="image/svg+xml", headers=headers)


@pages.get("/authority.crt")
def authority_file():
    """The authority's certificate, as devices install it."""
    shared = sharing().shared
    if shared is None or not shared.secure_origin:
        raise NoSuchInspection("There is no authority to fetch: this laptop serves no https now.")
    return Response(
        authority.file_of(current_app.config["TLS_FOLDER"]),
        mimetype="application/x-x509-ca-cert",
        headers={"Content-Disposition": 'attachment; filename="authority.crt"'},
    )


@pages.post("/exchange/<inspection_id>/device")
def says(inspection_id: str):
    """Take what a device says of itself: what it still holds, and whether it is ready."""
    said = phones.read(strict_json.loads(request.get_data(cache=False)))
    device = caller().device
    # This computer's own walk holds nothing apart.
    if device is not None:
        sharing().devices.hear(device["id"], inspection_id, said)
    return jsonify(heard=True)


def _asked(body) -> tuple[str, str, tuple[str, str] | None]:
    """The code, the device's name, and id and token of its earlier pass where it sent them."""
    if not _has_texts(body, "code", "name"):
        raise BadJoin('To join, send JSON such as {"code": "...", "name": "..."}.')
    name = body["name"].strip()
    # The name is shown on the laptop and becomes part of a file's name.
    if not 0 < len(name) <= 60 or not name.isprintable():
        raise BadJoin("The device needs a name of 1 to 60 characters, such as tablet of QX.")
    before = body.get("before")
    if _has_texts(before, "device", "token"):
        return body["code"], name, (before["device"], before["token"])
    return body["code"], name, None


def _used(body) -> dict[str, str]:
    """The names that the browser says to have used, each with its token or ""."""
    used = body.get("used")
    rows = used[:MOST_NAMES] if isinstance(used, list) else []
    tokens = {row["device"]: row.get("token") for row in rows if _has_texts(row, "device")}
    return {name: token if isinstance(token, str) else "" for name, token in tokens.items()}


def _has_texts(found, *names: str) -> bool:
    """Whether a part of the body is an object with a text under each of these names."""
    return isinstance(found, dict) and all(isinstance(found.get(name), str) for name in names)
