"""Sharing: the laptop's page with the code, the devices and the shared inspections; and the page where a device joins."""

import io

import segno
from flask import Blueprint, flash, jsonify, redirect, render_template, request, url_for
from markupsafe import Markup

from inspector.errors import InspectorError
from inspector.record import strict_json
from inspector.record.store import NoSuchInspection
from inspector.web.desk import desk, open_inspection, title_of
from inspector.web.forms import TokenForm
from inspector.web.pairing import CodeRefused
from inspector.web.security import give_cookie
from inspector.web.shared import sharing

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
        raise InspectorError("Nothing is shared now. Stop the inspector and start it with: inspector serve --share")
    return _page(sharing().pairing.new_code())


def _page(code: str = ""):
    now_shared, shared = sharing().inspections(), sharing().shared
    rows = [{"id": one, "title": _title(one), "mode": now_shared.get(one, {}).get("mode", "")} for one in desk().inspections.ids()]
    return render_template(
        "sharing/sharing.html", title="Sharing", shared=shared, rows=rows, devices=sharing().devices.all(), form=TokenForm(), code=code, day=_day,
        join_drawing=_drawing(f"{shared.origin}/join#{code.replace('-', '')}") if code and shared else "", minutes=int(sharing().pairing.seconds_left() // 60),
        fetch_drawing=_drawing(_fetch_address(shared)) if shared and shared.fetch_port else "", fetch_address=_fetch_address(shared),
    )


def _title(inspection_id: str) -> str:
    try:
        return title_of(desk().inspections.get(inspection_id))
    except (InspectorError, OSError):
        return inspection_id


def _fetch_address(shared) -> str:
    return f"http://{shared.address}:{shared.fetch_port}/" if shared and shared.fetch_port else ""


def _drawing(address: str) -> Markup:
    out = io.BytesIO()
    segno.make(address, error="m", micro=False).save(out, kind="svg", scale=6, border=4, dark="#000", light="#fff", xmldecl=False, svgns=True, nl=False)
    return Markup(out.getvalue().decode())  # noqa: S704  (our own drawing of our own address and code)


def _day(moment: float) -> str:
    from datetime import UTC, datetime

    return datetime.fromtimestamp(moment, UTC).strftime("%Y-%m-%d %H:%M UTC")


@pages.post("/sharing/inspection/<inspection_id>")
def choose(inspection_id: str):
    """Share an inspection with the devices, or end that."""
    inspection = open_inspection(inspection_id)
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
    """Trade the code for a pass: {code, name, before?: {device, token}} -> {token, device, name}, and a cookie for loading the pages."""
    if sharing().shared is None:
        raise NoSuchInspection("Nothing is shared now.")
    code, name, before = _asked(strict_json.loads(request.get_data(cache=False)))
    try:
        sharing().pairing.use(code)
    except CodeRefused as problem:
        answer = jsonify(error=str(problem))
        answer.status_code = problem.status
        if problem.wait:
            answer.headers["Retry-After"] = str(problem.wait)
        return answer
    token, document = sharing().devices.let_in(name, before)
    answer = jsonify(token=token, device=document["id"], name=document["name"])
    give_cookie(answer, document["id"])
    return answer


def _asked(body) -> tuple[str, str, tuple[str, str] | None]:
    if not isinstance(body, dict) or not isinstance(body.get("code"), str) or not isinstance(body.get("name"), str):
        raise BadJoin('To join, send JSON such as {"code": "...", "name": "..."}.')
    name = body["name"].strip()
    if not 0 < len(name) <= 60 or not name.isprintable():
        raise BadJoin("The device needs a name of 1 to 60 characters, such as tablet of QX.")
    before = body.get("before")
    if isinstance(before, dict) and isinstance(before.get("device"), str) and isinstance(before.get("token"), str):
        return body["code"], name, (before["device"][:60], before["token"][:200])
    return body["code"], name, None
