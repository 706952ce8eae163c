"""Counting what is on board: a layout for all systems, plus and minus, and names, spaces, kinds."""

from flask import Blueprint, abort, flash, redirect, request, url_for

from inspector.checklists.model import System
from inspector.record.inspection import Inspection
from inspector.services.layouts import layout_changes, one_less, one_more
from inspector.services.units_on_board import CountResult, unit_changes
from inspector.web.current import data_folder, open_inspection, surveyor_name
from inspector.web.prepare import back_to_prepare, prepare_page

pages = Blueprint("counting", __name__)


@pages.post("/inspection/<inspection_id>/layout")
def count_layout(inspection_id: str):
    """Count the units of every system by a common layout."""
    inspection = open_inspection(inspection_id)
    library = data_folder().library_of(inspection)
    layout = library.layouts.get(request.form.get("layout", ""))
    if layout is None:
        fault = "Choose one of the layouts; nothing was counted."
        return prepare_page(inspection, faults=[fault])
    result = layout_changes(inspection.state, library, layout)
    # Recorded by name: which layouts exist depends on the checklists.
    result.changes.append(("inspection", "layout", layout.name))
    return _kept(inspection, result, "systems")


@pages.post("/inspection/<inspection_id>/count")
def step(inspection_id: str):
    """One unit more or less of a kind."""
    inspection = open_inspection(inspection_id)
    library, system = data_folder().library_of(inspection), _system(inspection)
    change, kind = one_more, request.form.get("more")
    if kind is None:
        change, kind = one_less, request.form.get("less", "")
    # A page that was open while the checklists changed.
    if kind not in ("", *system.kinds):
        abort(400, "That kind of unit is not in this inspection's checklists.")
    result = change(inspection.state, library, system, kind)
    if result.faults:
        return prepare_page(inspection, opened=system.id, faults=result.faults)
    return _kept(inspection, result, system.id)


@pages.post("/inspection/<inspection_id>/units")
def count_units(inspection_id: str):
    """Name, add or take out units; a count with a fault changes nothing and comes back as typed."""
    inspection = open_inspection(inspection_id)
    library, system = data_folder().library_of(inspection), _system(inspection)
    count = unit_changes(request.form, inspection.state, library, system)
    if count.faults:
        typed = request.form.to_dict()
        return prepare_page(inspection, opened=system.id, faults=count.faults, typed=typed)
    return _kept(inspection, count, system.id, opened=system.id)


def _system(inspection: Inspection) -> System:
    """The system that was posted."""
    systems = data_folder().library_of(inspection).systems
    system = systems.get(request.form.get("system", ""))
    if system is None:
        abort(400, "That system is not in this inspection's checklists.")
    return system


def _kept(inspection: Inspection, result: CountResult, place: str, opened: str | None = None):
    """Record a count and lead back to where it was made."""
    inspection.record(surveyor_name(), result.changes)
    for sentence in result.notes:
        flash(sentence)
    page = url_for("prepare.prepare", inspection_id=inspection.id, opened=opened)
    return redirect(f"{page}#{place}")


@pages.get("/inspection/<inspection_id>/units")
@pages.get("/inspection/<inspection_id>/count", endpoint="step_again")
@pages.get("/inspection/<inspection_id>/layout", endpoint="layout_again")
def units_again(inspection_id: str):
    """The address of a form, loaded again after a refusal, leads back to its page."""
    return back_to_prepare(open_inspection(inspection_id))
