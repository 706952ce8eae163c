"""Sharing: the laptop's page of code, devices and inspections; the page where a device joins."""

import io
from datetime import UTC, datetime

from flask import (
    Blueprint,
    current_app,
    flash,
    jsonify,
    redirect,
    render_template,
    request,
    url_for,
)
from markupsafe import Markup

from inspector.record import strict_json
from inspector.record.inspections import NoSuchInspection
from inspector.sharing.devices import MOST_NAMES
from inspector.sharing.pairing import CodeRefused
from inspector.sharing.shared_inspections import Shared, not_shared
from inspector.values.errors import InspectorError
from inspector.web.current import open_inspection, sharing
from inspector.web.forms.form_fields import TokenForm
from inspector.web.security import give_cookie

pages = Blueprint("sharing", __name__)


class BadJoin(InspectorError):
    """What a joining device sent cannot be used."""


@pages.get("/sharing")
def overview():
    """Where this computer is shared, which inspections, and which devices were let in."""
    return _page()


@pages.post("/sharing/code")
def new_code():
    """A new one-time code, shown once: only its digest is kept."""
    if sharing().shared is None:
        raise not_shared()
    return _page(sharing().pairing.new_code())


def _page(code: str = ""):
    """Return the sharing page, with a code where one was just made."""
    shared = sharing().shared
    return render_template(
        "sharing/sharing.html",
        title="Sharing",
        shared=shared,
        rows=_rows(),
        devices=sharing().devices.all(),
        form=TokenForm(),
        code=code,
        day=_day,
        join_drawing=_drawing(_join_address(shared, code)),
        minutes=int(sharing().pairing.seconds_left() // 60),
        fetch_drawing=_drawing(shared.fetch_address if shared else ""),
        fetch_address=shared.fetch_address if shared else "",
    )


def _rows() -> list[dict[str, str]]:
    """Every inspection, with the mode in which it is shared, "" for not at all."""
    modes = {name: document["mode"] for name, document in sharing().inspections().items()}
    rows = current_app.extensions["shelf"].rows_at_once()
    return [
        {"id": row["id"], "title": row["title"], "mode": modes.get(row["id"], "")} for row in rows
    ]


def _join_address(shared: Shared | None, code: str) -> str:
    """Return the address that a device opens to join."""
    # After the #, so that the code is in no log: a browser does not send it.
    return f"{shared.origin}/join#{code.replace('-', '')}" if code and shared else ""


def _drawing(address: str) -> Markup:
    """The QR code of an address, "" for none."""
    if not address:
        return Markup("")
    import segno

    out = io.BytesIO()
    # Medium correction: read from a screen with a scratch on it, and still coarse enough for an old
    # camera.
    segno.make(address, error="m", micro=False).save(
        out,
        kind="svg",
        scale=6,
        border=4,
        dark="#000",
        light="#fff",
        xmldecl=False,
        svgns=True,
        nl=False,
    )
    # Our own drawing of our own address and code.
    return Markup(out.getvalue().decode())  # noqa: S704


def _day(moment: float) -> str:
    # In UTC, as every recorded time is: the laptop may have crossed zones since.
    return datetime.fromtimestamp(moment, UTC).strftime("%Y-%m-%d %H:%M UTC")


@pages.post("/sharing/inspection")
def choose():
    """Share an inspection with the devices, or end that."""
    inspection = open_inspection(request.form.get("id", ""))
    if request.form.get("do") == "end":
        sharing().end(inspection.id)
    else:
        sharing().share(inspection.id)
    return redirect(url_for("sharing.overview"))


@pages.post("/sharing/device/<device_id>")
def device(device_id: str):
    """Let a device in no more, or take it out of the list."""
    if request.form.get("do") == "remove":
        sharing().devices.remove(device_id)
    else:
        sharing().devices.revoke(device_id)
    flash("Done. What the device has handed over stays in the inspection.")
    return redirect(url_for("sharing.overview"))


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
        sharing().pairing.use(code)
    except CodeRefused as problem:
        answer = jsonify(error=str(problem))
        answer.status_code = problem.status
        if problem.wait:
            answer.headers["Retry-After"] = str(problem.wait)
        return answer
    token, document = sharing().devices.let_in(name, before)
    # A browser that lost its storage had other names before, under which it may still hand over.
    used = _used(body)
    sharing().devices.names_of(document["id"], used, used)
    answer = jsonify(token=token, device=document["id"], name=document["name"])
    give_cookie(answer, document["id"])
    return answer


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
