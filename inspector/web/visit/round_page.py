"""The round of a visit: what is looked at for the time there is, and what it leaves out."""

from collections import Counter
from datetime import datetime

from flask import Blueprint, flash, redirect, render_template, request, url_for

from inspector.assess.round.time_left import LONGEST, Visit, visit_of
from inspector.record.inspection import Inspection
from inspector.services.data_folder import title_of
from inspector.services.units_on_board import units_of
from inspector.services.visit.rounds import (
    acted_on,
    made_round,
    outlook,
    put_away,
    take_back,
)
from inspector.values.numbers import NotANumber, parse_number
from inspector.web.current import data_folder, open_inspection, surveyor_name
from inspector.web.forms.form_fields import TokenForm

pages = Blueprint("round", __name__)
# A longer round is folded to its stops, or nobody would find the next one on a phone.
MOST_OPEN = 100


@pages.get("/inspection/<inspection_id>/round")
def visit(inspection_id: str):
    """The round for the minutes and people of the visit, or for others that are typed."""
    inspection = open_inspection(inspection_id)
    planned = visit_of(inspection.state, datetime.now().astimezone())
    asked, fault = _asked(planned)
    library = data_folder().library_of(inspection)
    here = request.args.get("here") or None
    made = made_round(data_folder(), inspection, asked.minutes, asked.people, here)
    first, last = request.args.get("first", ""), request.args.get("last", "")
    page = render_template(
        "round/round.html",
        inspection=inspection,
        title=title_of(inspection),
        asked=asked,
        planned=planned,
        fault=fault,
        here=here or "",
        made=made,
        reasons=Counter(made.not_had.values()),
        systems_met=len({subject.split("/")[1] for subject in made.subjects}),
        most_open=MOST_OPEN,
        outlook=outlook(data_folder(), inspection, made),
        left_out=_left_out(inspection, made.left_out, made.not_had),
        spaces=library.spaces,
        systems=library.systems,
        longest=LONGEST,
        act={"first": first, "last": last, "count": len(acted_on(inspection, first, last))},
        form=TokenForm(),
    )
    return page, 400 if fault else 200


def _asked(planned: Visit) -> tuple[Visit, str]:
    """The minutes and people to compose for, and what is wrong with those that were typed."""
    typed = {name: request.args.get(name, "").strip() for name in ("minutes", "people")}
    try:
        minutes = parse_number(typed["minutes"]) if typed["minutes"] else planned.minutes
        people = parse_number(typed["people"]) if typed["people"] else planned.people
    except NotANumber as problem:
        return planned, f"Minutes and people: {problem}"
    if not 0 <= minutes <= LONGEST:
        return planned, f"The minutes must be 0 to {LONGEST}."
    if people != int(people) or people < 1:
        return planned, "The people must be a whole number from 1."
    return Visit(minutes, int(people), planned.known or bool(typed["minutes"])), ""


def _left_out(inspection: Inspection, left_out, not_had) -> dict[str, list[dict[str, str]]]:
    """Space -> the checks that the round leaves out there, in the order of the checklists."""
    library = data_folder().library_of(inspection)
    units = units_of(inspection.state, library)
    names = {(system, one["id"]): one["name"] for system, own in units.items() for one in own}
    found: dict[str, list[dict[str, str]]] = {space: [] for space in library.spaces}
    for subject, space in left_out.items():
        _, system, unit, check_id = subject.split("/")
        check = library.systems[system].check(check_id)
        found.setdefault(space, []).append(
            {
                "at": subject.removeprefix("sheet/"),
                "unit": names.get((system, unit), unit),
                "title": check.title,
                "minutes": check.minutes,
                "critical": check.critical,
                "reason": not_had.get(subject, ""),
            }
        )
    return {space: own for space, own in found.items() if own}


@pages.post("/inspection/<inspection_id>/round/not-had")
def record_not_had(inspection_id: str):
    """Record what cannot be had as not seen, in one act."""
    inspection = open_inspection(inspection_id)
    made = made_round(data_folder(), inspection, 0, 1)
    ends = put_away(inspection, surveyor_name(), made.not_had)
    flash(f"{len(made.not_had)} checks are recorded as not seen, each with its reason.")
    act = dict(zip(("first", "last"), ends, strict=False))
    return redirect(url_for("round.visit", inspection_id=inspection.id, **act))


@pages.post("/inspection/<inspection_id>/round/take-back")
def undo_not_had(inspection_id: str):
    """Undo that act, in one act."""
    inspection = open_inspection(inspection_id)
    first, last = request.form.get("first", ""), request.form.get("last", "")
    count = take_back(inspection, surveyor_name(), first, last)
    flash(f"{count} checks are open again.")
    return redirect(url_for("round.visit", inspection_id=inspection.id))


@pages.get("/inspection/<inspection_id>/round/not-had")
@pages.get("/inspection/<inspection_id>/round/take-back", endpoint="take_back_again")
def again(inspection_id: str):
    """The address of a form, loaded again after a refusal, leads back to its page."""
    return redirect(url_for("round.visit", inspection_id=inspection_id))
