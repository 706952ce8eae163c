"""Sharing on the laptop: the button that starts it, one code after the other, the phones, stop."""

import time

from flask import Blueprint, current_app, flash, redirect, render_template, request, url_for

from inspector.sharing import addresses
from inspector.sharing.network_name import NetworkRefused
from inspector.sharing.shared_inspections import not_shared
from inspector.values.errors import InspectorError
from inspector.web.current import data_folder, open_inspection, sharing
from inspector.web.forms.form_fields import TokenForm
from inspector.web.joining.drawn_codes import drawn
from inspector.web.joining.phones import phones

pages = Blueprint("sharing", __name__)
STEPS = 2


@pages.get("/sharing")
def overview():
    """Where this computer is shared, which inspections, and which phones were let in."""
    return _overview()


def _overview(fault: str = "", networks: list[addresses.Address] | None = None):
    """The page of sharing; with a fault, or with the question on which network the phones are."""
    found = _phones()
    page = render_template(
        "sharing/sharing.html",
        title="Sharing with phones",
        shared=sharing().shared,
        rows=_rows(),
        phones=found,
        holding=[phone.name for phone in found if not phone.is_all_here and phone.state == "in"],
        joined=_name_of(request.args.get("joined", "")),
        form=TokenForm(),
        fault=fault,
        networks=networks or [],
        last_network=_last_address(),
        minutes=int(sharing().pairing.seconds_left() // 60),
    )
    return page, 400 if fault else 200


@pages.post("/sharing/start")
def start():
    """Let phones join: on the only network there is, else on the one that the user names."""
    own = addresses.own_addresses()
    try:
        address = addresses.choose(request.form.get("address") or None, own)
        sharing().start(address)
    except addresses.SeveralAddresses:
        return _overview(networks=addresses.likely(own))
    except InspectorError as problem:
        return _overview(fault=str(problem))
    sharing().share_the_only(data_folder().inspections.ids())
    return redirect(url_for("sharing.overview" if _which_is_open() else "sharing.network"))


@pages.post("/sharing/stop")
def stop():
    """Let nobody on the network in any more."""
    sharing().stop()
    flash("Sharing has stopped: only this computer reaches the inspector now.")
    return redirect(url_for("sharing.overview"))


@pages.post("/sharing/authority")
def authority():
    """Make a new authority, as the user agreed."""
    sharing().agree_to_new_authority()
    return redirect(url_for("sharing.overview"))


@pages.get("/sharing/network")
def network():
    """Ask for the network's name and password, or for the word that the phone is on it."""
    _require_shared()
    return _ask_network()


def _ask_network(fault: str = ""):
    typed = request.form if fault else None
    known = sharing().network.now()
    page = render_template(
        "sharing/network.html",
        title="The network",
        form=TokenForm(),
        fault=fault,
        name=typed["name"] if typed else known.name if known else "",
        password=known.password if known and not typed else "",
        keep="keep" in typed if typed else sharing().network.is_kept,
        shared=sharing().shared,
    )
    return page, 400 if fault else 200


@pages.post("/sharing/network")
def network_code():
    """The code of the network, alone on the screen."""
    _require_shared()
    name, password = request.form.get("name", ""), request.form.get("password", "")
    try:
        found = sharing().network.take(name, password, keep="keep" in request.form)
    except NetworkRefused as problem:
        return _ask_network(str(problem))
    return render_template(
        "sharing/code.html",
        title="Join the network",
        form=TokenForm(),
        step=1,
        steps=STEPS,
        drawing=drawn(found.code_text),
        network=found,
    )


@pages.post("/sharing/code")
def new_code():
    """A new one-time code, shown once and alone on the screen: only its digest is kept."""
    shared = _require_shared()
    code = sharing().pairing.new_code()
    return render_template(
        "sharing/code.html",
        title="Join the inspection",
        form=TokenForm(),
        step=STEPS,
        steps=STEPS,
        # After the #, so that the code is in no log: a browser does not send it.
        drawing=drawn(f"{shared.origin}/join#{code.replace('-', '')}&{_next_number()}"),
        code=code,
        shared=shared,
        titles=[row["title"] for row in _rows() if row["shared"]],
        newest=_newest(),
    )


@pages.get("/sharing/now")
def now():
    """The list of phones as it is now, for the pages that show it."""
    page = render_template("sharing/phones.html", phones=_phones(), form=TokenForm())
    return {"phones": page, "newest": _newest(), "isShared": sharing().shared is not None}


@pages.post("/sharing/inspection")
def choose():
    """Share an inspection with the phones, or end that."""
    inspection = open_inspection(request.form.get("id", ""))
    if request.form.get("do") == "end":
        sharing().end(inspection.id)
        return redirect(url_for("sharing.overview"))
    is_first = not sharing().inspections()
    sharing().share(inspection.id)
    return redirect(url_for("sharing.network" if is_first else "sharing.overview"))


@pages.post("/sharing/device/<device_id>")
def device(device_id: str):
    """Let a phone in no more, or take it out of the list."""
    if request.form.get("do") == "remove":
        sharing().devices.remove(device_id)
    else:
        sharing().devices.revoke(device_id)
    flash("Done. What the phone has handed over stays in the inspection.")
    return redirect(url_for("sharing.overview"))


@pages.get("/sharing/start")
@pages.get("/sharing/stop", endpoint="stop_again")
@pages.get("/sharing/authority", endpoint="authority_again")
@pages.get("/sharing/code", endpoint="code_again")
@pages.get("/sharing/inspection", endpoint="choose_again")
@pages.get("/sharing/device/<device_id>", endpoint="device_again")
def overview_again(device_id: str = ""):
    """The addresses of the forms lead back to their page."""
    return redirect(url_for("sharing.overview"))


def _require_shared():
    """Where this computer is shared, refused in a sentence where it is not."""
    shared = sharing().shared
    if shared is None:
        raise not_shared()
    return shared


def _titles() -> dict[str, str]:
    """What every inspection is called, by its id."""
    return {row["id"]: row["title"] for row in current_app.extensions["shelf"].rows_at_once()}


def _rows() -> list[dict[str, object]]:
    """Every inspection: id, title, and whether phones may reach it."""
    shared = sharing().inspections()
    return [
        {"id": name, "title": title, "shared": name in shared} for name, title in _titles().items()
    ]


def _which_is_open() -> bool:
    """Whether the user has to say which inspection the phones may reach."""
    return not sharing().inspections()


def _phones():
    return phones(sharing().devices, _titles(), time.time())


def _newest() -> str:
    """Which phone came in last, and when: it changes as soon as one joins."""
    devices = sharing().devices.all()
    return f"{devices[0]['id']} {devices[0]['since']}" if devices else ""


def _name_of(device_id: str) -> str:
    """What a phone is called, "" for one that is not known."""
    found = (row["name"] for row in sharing().devices.all() if row["id"] == device_id)
    return next(found, "")


def _next_number() -> int:
    """The number of the next phone: its name is proposed with it."""
    return len(sharing().devices.all()) + 1


def _last_address() -> str:
    """The address of the last sharing, which is proposed where there are several."""
    return str(sharing().catalogue.setting("share-origin") or "").rpartition("/")[2].split(":")[0]
