"""Decide: condition and proposed verdicts; the surveyor's decisions, findings and work lines."""

import secrets
from typing import TYPE_CHECKING

from flask import Blueprint, abort, redirect, render_template, request, url_for

from inspector.record.inspection import Inspection
from inspector.services.data_folder import title_of
from inspector.services.priced_lines import line_by_rate
from inspector.values.errors import InspectorError
from inspector.values.numbers import parse_number
from inspector.values.text import listed
from inspector.values.vocabulary import ACTS, URGENCIES, VERDICTS
from inspector.web.current import data_folder, open_inspection, surveyor_name
from inspector.web.forms.decide_forms import (
    COSTS,
    LINE_FIGURES,
    LINE_LINKS,
    YEARLY_FACTS,
    facts_form,
    facts_of,
    figures_of,
    finding_form,
    line_form,
    verdict_form,
)
from inspector.web.forms.form_fields import TokenForm, faults_of
from inspector.web.settle import differing

if TYPE_CHECKING:
    from inspector.assess.assessment import Assessment
    from inspector.assess.model import SystemPart


pages = Blueprint("decide", __name__)


@pages.get("/inspection/<inspection_id>/decide")
def decide(inspection_id: str):
    """All systems of one inspection, each with its span and verdict."""
    return _page(open_inspection(inspection_id), None)


@pages.route("/inspection/<inspection_id>/decide/<system_id>", methods=["GET"])
def system(inspection_id: str, system_id: str):
    """One system opened beside the others; ``unit`` chooses whose facts are shown."""
    return _page(open_inspection(inspection_id), system_id)


def _page(
    inspection: Inspection,
    system_id: str | None,
    faults: list[str] | None = None,
    refused: tuple[str, TokenForm] | None = None,
):
    """The page; a refused form, with its name, shows what was typed."""
    assessment = data_folder().assessment_of(inspection)
    chosen = _part(inspection, system_id) if system_id else None
    unit = _unit_asked(chosen) if chosen else "all"
    forms = {"finding": finding_form(assessment, posted=False)}
    if chosen:
        forms |= _forms_of(inspection, assessment, chosen, unit)
    if refused:
        forms |= dict([refused])
    page = render_template(
        "decide/decide.html",
        inspection=inspection,
        assessment=assessment,
        chosen=chosen,
        form=TokenForm(),
        forms=forms,
        fault=" ".join(faults or ()),
        verdicts=VERDICTS,
        unit=unit,
        facts=facts_of(unit),
        yearly_facts=YEARLY_FACTS,
        line_links=LINE_LINKS,
        step="decide",
        title=title_of(inspection),
        differing=differing(inspection),
        rates=data_folder().catalogue.all("rates"),
    )
    return page, 400 if faults else 200


def _unit_asked(part: "SystemPart") -> str:
    """The unit whose facts are asked for or sent, "all" for the whole system."""
    unit = request.values.get("unit", "all")
    # A unit that was removed since the page was opened: the whole system is shown and not an error.
    return unit if unit in [each.id for each in part.units] else "all"


def _forms_of(
    inspection: Inspection, assessment: "Assessment", part: "SystemPart", unit: str
) -> dict[str, TokenForm]:
    """The forms of one system, with what is recorded; the facts are those of one unit."""
    facts = inspection.state.values(f"verdict/{part.system.id}/{unit}")
    return {
        "verdict": verdict_form(part, posted=False),
        "facts": facts_form(unit, facts, posted=False),
        "line": line_form(part, assessment, data_folder().catalogue.all("rates"), posted=False),
    }


def _part(inspection: Inspection, system_id: str) -> "SystemPart":
    """The system's part of the assessment; 404 where the inspection has none."""
    return _part_of(data_folder().assessment_of(inspection), system_id)


def _part_of(assessment: "Assessment", system_id: str) -> "SystemPart":
    for part in assessment.systems:
        if part.system.id == system_id:
            return part
    abort(404)


@pages.post("/inspection/<inspection_id>/decide/<system_id>/verdict")
def give_verdict(inspection_id: str, system_id: str):
    """The surveyor's own word; a word that differs from the proposal needs its reason."""
    inspection = open_inspection(inspection_id)
    part = _part(inspection, system_id)
    form = verdict_form(part, posted=True)
    faults = faults_of(form)
    if faults:
        return _page(inspection, system_id, faults, ("verdict", form))
    unit, decision, reason = form["unit"].data or "all", form["decision"].data, form["reason"].data
    # Each word is a button of its own; a form sent without one names no decision.
    if "decision" not in request.form or decision not in (*VERDICTS, ""):
        abort(400, "A decision is retain, refurbish or remove, for the system or one of its units.")
    proposed = _judged(part, unit).proposal.verdict
    # To follow the proposal needs no reason: the rule gives it.
    if decision and decision != proposed and not reason:
        sentence = (
            f"The proposal says {proposed}. To decide {decision}, give the reason: "
            "the report shows both."
        )
        return _page(inspection, system_id, [sentence], ("verdict", form))
    subject = f"verdict/{system_id}/{unit}"
    # An empty decision takes back an earlier one; nothing is deleted, the proposal counts again.
    changes = [(subject, "decision", decision or None), (subject, "reason", reason or None)]
    inspection.record(surveyor_name(), changes)
    return _back_to_system(inspection, system_id)


def _judged(part: "SystemPart", unit: str):
    """The system as a whole ("all") or one of its units."""
    return next(each for each in (part.whole, *part.units) if each.id == unit)


@pages.post("/inspection/<inspection_id>/decide/<system_id>/facts")
def give_facts(inspection_id: str, system_id: str):
    """What the rules need beside the condition: remaining life, parts, what removal wins."""
    inspection = open_inspection(inspection_id)
    unit = _unit_asked(_part(inspection, system_id))
    form = facts_form(unit, {}, posted=True)
    faults = faults_of(form)
    if faults:
        return _page(inspection, system_id, faults, ("facts", form))
    subject = f"verdict/{system_id}/{unit}"
    fields = (*facts_of(unit), *YEARLY_FACTS)
    changes = [(subject, each.name, form[each.name].data or None) for each in fields]
    inspection.record(surveyor_name(), changes)
    return _back_to_system(inspection, system_id)


@pages.post("/inspection/<inspection_id>/decide/<system_id>/line")
def add_line(inspection_id: str, system_id: str):
    """One work line: act, what, cost or a quantity at a rate, weight, place in the sequence."""
    inspection = open_inspection(inspection_id)
    assessment = data_folder().assessment_of(inspection)
    part = _part_of(assessment, system_id)
    form = line_form(part, assessment, data_folder().catalogue.all("rates"), posted=True)
    faults = faults_of(form)
    figures = _line_figures(form, faults)
    if not form["text"].data:
        faults.append("A work line needs its text: what the yard would do.")
    if not form["act"].data:
        faults.append(f"A work line needs its act: {listed(ACTS, 'or')}.")
    if faults:
        return _page(inspection, system_id, faults, ("line", form))
    values = {
        "system": system_id,
        "unit": form["unit"].data or "all",
        "act": form["act"].data,
        "text": form["text"].data,
        "check": _known_check(part, form["check"].data),
        "quantity": form["quantity"].data,
        **{name: form[name].data for name in LINE_LINKS},
        **figures,
    }
    _record_new(inspection, "scope", values)
    return _back_to_system(inspection, system_id, "#lines")


def _known_check(part: "SystemPart", check: str | None) -> str | None:
    """The check that an offered line follows from, where the system has it."""
    # A check that this checklist does not have would leave the line pointing nowhere.
    return check if check and part.system.check(check) else None


def _line_figures(form: TokenForm, faults: list[str]) -> dict[str, str | None]:
    """The figures of a work line, priced by its rate where it names one; adds what is wrong."""
    # A rate takes the place of costs that were typed as well.
    figures = figures_of(form, LINE_FIGURES)
    if form["quantity"].errors or form["rate"].errors:
        return figures
    try:
        priced = line_by_rate(data_folder().catalogue, form["rate"].data, form["quantity"].data)
    except InspectorError as problem:
        faults.append(str(problem))
        priced = {}
    figures |= priced
    costs = [parse_number(figures[name]) for name in COSTS if figures[name]]
    if costs != sorted(costs):
        faults.append("The costs must rise from low over likely to high.")
    return figures


def _record_new(inspection: Inspection, kind: str, values: dict[str, str | None]) -> None:
    """Record a work line or a finding under an id of its own."""
    subject = f"{kind}/{secrets.token_hex(4)}"
    changes = [(subject, name, value) for name, value in values.items() if value]
    inspection.record(surveyor_name(), changes)


@pages.post("/inspection/<inspection_id>/gone/<kind>/<one_id>")
def take_out(inspection_id: str, kind: str, one_id: str):
    """Take a work line or finding out of the report; its entries stay in the journal."""
    inspection = open_inspection(inspection_id)
    subject = f"{kind}/{one_id}"
    if kind not in ("scope", "finding") or not inspection.state.fields(subject):
        abort(404)
    # Marked and not deleted: the journal keeps what was once written, and who took it out.
    inspection.record(surveyor_name(), [(subject, "gone", True)])
    return redirect(url_for("decide.decide", inspection_id=inspection.id))


@pages.post("/inspection/<inspection_id>/finding")
def add_finding(inspection_id: str):
    """A finding that is made on the laptop rather than on the walk."""
    inspection = open_inspection(inspection_id)
    form = finding_form(data_folder().assessment_of(inspection), posted=True)
    faults = faults_of(form)
    if not form["title"].data:
        faults.append("A finding needs a title: what is wrong, in a line.")
    if not form["urgency"].data:
        faults.append(f"A finding needs its urgency: {', '.join(URGENCIES)}.")
    if faults:
        return _page(inspection, None, faults, ("finding", form))
    values = {name: form[name].data for name in ("title", "urgency", "text", "action", "on")}
    _record_new(inspection, "finding", values)
    return redirect(url_for("decide.decide", inspection_id=inspection.id) + "#findings")


@pages.get("/inspection/<inspection_id>/decide/<system_id>/verdict")
@pages.get("/inspection/<inspection_id>/decide/<system_id>/facts", endpoint="facts_again")
@pages.get("/inspection/<inspection_id>/decide/<system_id>/line", endpoint="line_again")
def system_again(inspection_id: str, system_id: str):
    """The address of a form, loaded again after a refusal, leads back to its system."""
    return _back_to_system(open_inspection(inspection_id), system_id)


@pages.get("/inspection/<inspection_id>/finding")
@pages.get("/inspection/<inspection_id>/settle", endpoint="settle_again")
@pages.get("/inspection/<inspection_id>/gone/<kind>/<one_id>", endpoint="gone_again")
def decide_again(inspection_id: str, **_: str):
    """The address of a form for the whole inspection, loaded again, leads back to Decide."""
    return redirect(url_for("decide.decide", inspection_id=open_inspection(inspection_id).id))


def _back_to_system(inspection: Inspection, system_id: str, place: str = ""):
    """Return to the page of a system, at a place on it where one is named."""
    page = url_for("decide.system", inspection_id=inspection.id, system_id=system_id)
    return redirect(page + place)
