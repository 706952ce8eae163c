"""Prepare: inspections begun, briefs; the visit, the vessel, the units on board."""

from collections.abc import Mapping

from flask import Blueprint, abort, flash, redirect, render_template, request, url_for

from inspector.record.durable import NotWritten
from inspector.record.inspection import Inspection
from inspector.record.typed_values import typed_text
from inspector.services.data_folder import title_of
from inspector.services.effort import asked_on_board, chances_now, effort_of
from inspector.services.layouts import counts_by_kind
from inspector.services.units_on_board import (
    proposed_units,
    records_by_unit,
    records_clause,
    units_of,
)
from inspector.web.current import data_folder, open_inspection, surveyor_name
from inspector.web.forms.form_fields import (
    FormField,
    RecordForm,
    TokenForm,
    make_form,
)
from inspector.web.forms.prepare_fields import BRIEF, VESSEL, VISIT, brief_fields, imo_sentence
from inspector.web.levels import kept_levels

pages = Blueprint("prepare", __name__)


@pages.post("/inspections")
def begin():
    """Begin an inspection with today's checklists and every proposed unit."""
    inspection = data_folder().begin()
    brief = data_folder().catalogue.get("briefs", request.form.get("brief", ""))
    changes = proposed_units(data_folder().library) + _brief_changes(brief) + kept_levels()
    try:
        inspection.record(surveyor_name(), changes)
    except NotWritten:
        # It was not acknowledged, and without its units it would be half an inspection.
        data_folder().inspections.take_back(inspection.id)
        raise
    next_page = "walk.walk" if request.form.get("go") == "walk" else "prepare.prepare"
    return redirect(url_for(next_page, inspection_id=inspection.id))


def _brief_changes(brief: Mapping | None) -> list[tuple[str, str, str]]:
    """Return a kept brief as what is recorded in a new inspection."""
    typed = {name: value for name, value in (brief or {}).items() if name != "id" and value}
    return [("brief", name, value) for name, value in typed.items()]


@pages.post("/inspection/<inspection_id>/brief")
def take_brief(inspection_id: str):
    """Copy a kept brief into an inspection; what it does not ask is cleared."""
    inspection = open_inspection(inspection_id)
    kept = data_folder().catalogue.get("briefs", request.form.get("brief", ""))
    if kept is None:
        fault = "Choose one of the kept briefs; nothing was copied."
        return prepare_page(inspection, faults=[fault])
    copied = _brief_changes(kept)
    named = {name for _, name, _ in copied}
    before = inspection.state.fields("brief")
    # Otherwise the new brief would carry what only the old one asked.
    cleared = [("brief", name, None) for name in before if name not in named]
    inspection.record(surveyor_name(), [*copied, *cleared])
    whose = f"for {kept['client']}" if kept.get("client") else "without a name"
    flash(f"The brief {whose} is copied into this inspection.")
    return back_to_prepare(inspection)


@pages.route("/brief/<brief_id>", methods=["GET", "POST"])
def brief(brief_id: str):
    """A client's brief, kept for several candidates; "new" begins one."""
    # An id that is not kept begins a new brief, so that nothing typed is lost with an old link.
    catalogue = data_folder().catalogue
    kept = catalogue.get("briefs", brief_id) or {}
    asked = brief_fields(data_folder().library.systems.values())
    form = make_form(asked, kept, RecordForm)
    if form.validate_on_submit():
        values = {each.name: form[each.name].data for each in asked}
        own_id = {"id": kept["id"]} if kept else {}
        catalogue.put("briefs", own_id | values)
        flash("The brief is kept. Inspections begun from now on carry a copy of it.")
        return redirect(url_for("home.home"))
    return _form_page("Brief", form, asked, url_for("home.home"))


def _form_page(title: str, form: TokenForm, asked: tuple[FormField, ...], back: str):
    """A page of one form, with its faults where it was posted."""
    fault = " ".join(sentence for errors in form.errors.values() for sentence in errors)
    page = render_template(
        "prepare/form.html", title=title, form=form, asked=asked, fault=fault, back=back
    )
    return page, 400 if fault else 200


@pages.get("/inspection/<inspection_id>")
def inspection_home(inspection_id: str):
    """An inspection's own address leads to its preparation."""
    return back_to_prepare(open_inspection(inspection_id))


@pages.get("/inspection/<inspection_id>/prepare")
def prepare(inspection_id: str):
    """What is known before the walk, with the units to count."""
    return prepare_page(open_inspection(inspection_id), opened=request.args.get("opened"))


def prepare_page(
    inspection: Inspection,
    *,
    opened: str | None = None,
    faults: list[str] | None = None,
    typed: Mapping[str, str] | None = None,
):
    """The page; with faults, the count of the opened system comes back as it was typed.

    Parameters
    ----------
    inspection : Inspection
    opened : str, optional
        The system whose names are in sight.
    faults : list of str, optional
    typed : mapping of str to str, optional
        What was posted.
    """
    library, state = data_folder().library_of(inspection), inspection.state
    units = units_of(state, library)
    asked = asked_on_board(state, library, units)
    efforts = {system: effort_of(own, library.trials) for system, own in asked.items()}
    whole = effort_of([one for own in asked.values() for one in own], library.trials)
    page = render_template(
        "prepare/prepare.html",
        inspection=inspection,
        library=library,
        units=units,
        form=TokenForm(),
        efforts=efforts,
        effort=whole,
        opened=opened,
        refused=inspection.refused(),
        faults=faults or [],
        typed=typed or {},
        counts={each.id: counts_by_kind(each, units[each.id]) for each in library.systems.values()},
        chances=chances_now(state, asked),
        recorded=records_by_unit(state),
        records_clause=records_clause,
        briefs=data_folder().catalogue.all("briefs"),
        vessel=state.values("vessel"),
        brief=state.values("brief"),
        visit=state.values("inspection"),
        asked={"vessel": VESSEL, "visit": VISIT, "brief": BRIEF},
        imo=imo_sentence(typed_text(state.value("vessel", "imo"))),
        step="prepare",
        title=title_of(inspection),
    )
    return page, 400 if faults else 200


@pages.route("/inspection/<inspection_id>/edit/<subject>", methods=["GET", "POST"])
def edit(inspection_id: str, subject: str):
    """Edit the visit, the vessel or this inspection's copy of the brief."""
    inspection = open_inspection(inspection_id)
    systems = data_folder().library_of(inspection).systems.values()
    parts = {
        "inspection": ("The visit", VISIT),
        "vessel": ("The vessel", VESSEL),
        "brief": ("The brief", brief_fields(systems)),
    }
    if subject not in parts:
        abort(404)
    title, asked = parts[subject]
    form = make_form(asked, inspection.state.values(subject), RecordForm)
    form.remember_heads(inspection.state, subject, [each.name for each in asked])
    if form.validate_on_submit():
        # Every field, also the unchanged: the recorder leaves out what is recorded already.
        changes = [(subject, each.name, form[each.name].data or None) for each in asked]
        inspection.record(surveyor_name(), changes, seen=lambda _, name: form.heads_seen(name))
        return back_to_prepare(inspection)
    return _form_page(title, form, asked, url_for("prepare.prepare", inspection_id=inspection.id))


@pages.get("/inspection/<inspection_id>/brief")
def brief_again(inspection_id: str):
    """The address of a form, loaded again after a refusal, leads back to its page."""
    return back_to_prepare(open_inspection(inspection_id))


def back_to_prepare(inspection: Inspection):
    """Lead to the page on which an inspection is prepared."""
    return redirect(url_for("prepare.prepare", inspection_id=inspection.id))
