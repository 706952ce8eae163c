"""Decide: condition with its interval, the proposed verdict with reasons, the surveyor's decision, findings and work lines."""

import secrets
from typing import Any

from flask import Blueprint, abort, redirect, render_template, request, url_for

from inspector.assess.gather import YEARLY
from inspector.assess.shapes import URGENCIES, VERDICTS, SystemPart
from inspector.errors import InspectorError
from inspector.quantities import parse_number
from inspector.record.store import Inspection
from inspector.web.desk import desk, open_inspection, title_of
from inspector.web.forms import TokenForm
from inspector.web.rates import line_by_rate
from inspector.web.settle import differing

pages = Blueprint("decide", __name__)
ACTS = ("refurbish", "replace", "remove")
PARTS = ("", "made", "hard to get", "no longer made")
FACTS = ("life_years", "weight_won", "space_won", *YEARLY)
MONEY = ("low", "likely", "high")


class BadFact(InspectorError):
    """A figure typed in Decide that cannot be used."""


@pages.get("/inspection/<inspection_id>/decide")
def decide(inspection_id: str):
    """All systems of one inspection, each with its span and verdict."""
    return _page(open_inspection(inspection_id), None, "")


@pages.route("/inspection/<inspection_id>/decide/<system_id>", methods=["GET"])
def system(inspection_id: str, system_id: str):
    """One system opened beside the others."""
    return _page(open_inspection(inspection_id), system_id, "")


def _page(inspection: Inspection, system_id: str | None, fault: str):
    assessment = desk().assessment_of(inspection)
    chosen = next((part for part in assessment.systems if part.system.id == system_id), None)
    if system_id and chosen is None:
        abort(404)
    return render_template(
        "decide/decide.html", inspection=inspection, assessment=assessment, chosen=chosen, form=TokenForm(), fault=fault, verdicts=VERDICTS[:3],
        parts=PARTS, acts=ACTS, urgencies=URGENCIES, step="decide", title=title_of(inspection), differing=differing(inspection),
        facts=inspection.state.values(f"verdict/{system_id}/all") if chosen else {}, rates=desk().catalogue.all("rates"),
    ), 400 if fault else 200


def _chosen(inspection: Inspection, system_id: str) -> SystemPart:
    found = next((part for part in desk().assessment_of(inspection).systems if part.system.id == system_id), None)
    if found is None:
        abort(404)
    return found


@pages.post("/inspection/<inspection_id>/decide/<system_id>/verdict")
def give_verdict(inspection_id: str, system_id: str):
    """The surveyor's own word; one that differs from the proposal needs its reason."""
    inspection = open_inspection(inspection_id)
    unit = request.form.get("unit", "all")
    part = _chosen(inspection, system_id)
    judged = next((one for one in (part.whole, *part.units) if one.id == unit), None)
    decision, reason = request.form.get("decision"), request.form.get("reason", "").strip()[:4000]
    if judged is None or decision not in (*VERDICTS[:3], ""):
        abort(400, "A decision is retain, refurbish or remove, for the system or one of its units.")
    if decision and decision != judged.proposal.verdict and not reason:
        return _page(inspection, system_id, f"The proposal says {judged.proposal.verdict}. To decide {decision}, give the reason: the report shows both.")
    subject = f"verdict/{system_id}/{unit}"
    inspection.say(request.form.get("who", ""), [(subject, "decision", decision or None), (subject, "reason", reason or None)])
    return redirect(url_for("decide.system", inspection_id=inspection.id, system_id=system_id))


@pages.post("/inspection/<inspection_id>/decide/<system_id>/facts")
def give_facts(inspection_id: str, system_id: str):
    """What the rules need beside the condition: remaining life, parts, what removal wins."""
    inspection = open_inspection(inspection_id)
    _chosen(inspection, system_id)
    try:
        values: dict[str, Any] = {name: _figure(name.replace("_", " "), request.form.get(name, "")) for name in FACTS}
    except InspectorError as problem:
        return _page(inspection, system_id, str(problem))
    parts = request.form.get("parts", "")
    values["parts"] = parts if parts in PARTS and parts else None
    values["law"] = request.form.get("law", "").strip()[:1000] or None
    inspection.say("", [(f"verdict/{system_id}/all", name, value) for name, value in values.items()])
    return redirect(url_for("decide.system", inspection_id=inspection.id, system_id=system_id))


def _figure(label: str, text: str) -> str | None:
    """A number as typed, checked to be one; None for an empty field."""
    text = text.strip()[:40]
    if not text:
        return None
    try:
        parse_number(text)
    except InspectorError as problem:
        raise BadFact(f"{label.capitalize()}: {problem}") from problem
    return text


@pages.post("/inspection/<inspection_id>/decide/<system_id>/line")
def add_line(inspection_id: str, system_id: str):
    """One work line: act, what, cost (low, likely, high, or a quantity at a rate of the rate book), weight and place in the sequence."""
    inspection = open_inspection(inspection_id)
    part = _chosen(inspection, system_id)
    form = request.form
    try:
        figures = {name: _figure(name, form.get(name, "")) for name in (*MONEY, "weight", "sequence")}
        priced = line_by_rate(desk().catalogue, form.get("rate", ""), form.get("quantity", ""))
        figures |= priced
        _in_order(figures)
    except InspectorError as problem:
        return _page(inspection, system_id, str(problem))
    text, act, unit = form.get("text", "").strip()[:1000], form.get("act", ""), form.get("unit", "all")
    if not text or act not in ACTS or unit not in ("all", *(one.id for one in part.units)):
        return _page(inspection, system_id, "A work line needs its text, one of refurbish, replace or remove, and the system or a unit of it.")
    subject = f"scope/{secrets.token_hex(4)}"
    values = {"system": system_id, "unit": unit, "act": act, "text": text, **figures}
    inspection.say(form.get("who", ""), [(subject, name, value) for name, value in values.items() if value is not None])
    return redirect(url_for("decide.system", inspection_id=inspection.id, system_id=system_id) + "#lines")


def _in_order(figures: dict[str, str | None]) -> None:
    known = [parse_number(figures[name]) for name in MONEY if figures[name]]
    if known != sorted(known) or (known and known[0] < 0):
        raise BadFact("The costs must rise from low over likely to high, none below 0.")


@pages.post("/inspection/<inspection_id>/gone/<kind>/<one_id>")
def take_out(inspection_id: str, kind: str, one_id: str):
    """Take a work line or finding out of the report; its entries stay in the journal."""
    inspection = open_inspection(inspection_id)
    subject = f"{kind}/{one_id}"
    if kind not in ("scope", "finding") or not inspection.state.fields(subject):
        abort(404)
    inspection.say("", [(subject, "gone", True)])
    return redirect(url_for("decide.decide", inspection_id=inspection.id))


@pages.post("/inspection/<inspection_id>/finding")
def add_finding(inspection_id: str):
    """A finding made at the table rather than on the walk."""
    inspection = open_inspection(inspection_id)
    form = request.form
    title, urgency = form.get("title", "").strip()[:200], form.get("urgency", "")
    if not title or urgency not in URGENCIES:
        return _page(inspection, None, "A finding needs a title and its urgency: " + ", ".join(URGENCIES) + ".")
    subject = f"finding/{secrets.token_hex(4)}"
    values = {"title": title, "urgency": urgency, **{name: form.get(name, "").strip()[:4000] for name in ("text", "action", "on")}}
    inspection.say(form.get("who", ""), [(subject, name, value) for name, value in values.items() if value])
    return redirect(url_for("decide.decide", inspection_id=inspection.id) + "#findings")
