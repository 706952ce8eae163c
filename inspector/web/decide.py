"""Decide: condition with its interval, the proposed verdict with reasons, the surveyor's decision, findings and work lines."""

import secrets
from collections.abc import Iterable

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
LARGEST = 1e12
LABELS = {
    "life_years": "Remaining life", "weight_won": "Weight won by removal", "space_won": "Space won by removal", "life_refurbished": "Life after refurbishing",
    "life_new": "Life of a new one", "yearly_refurbished": "Yearly cost, refurbished", "yearly_new": "Yearly cost, new",
    "residual_refurbished": "Worth after its life, refurbished", "residual_new": "Worth after its life, new",
    "low": "Cost, low", "likely": "Cost, likely", "high": "Cost, high", "weight": "Weight", "sequence": "Place in the sequence",
}
ENDS = {**dict.fromkeys(MONEY, (0.0, LARGEST)), **dict.fromkeys(("life_years", "life_refurbished", "life_new"), (0.0, 200.0)), "sequence": (1.0, 9999.0)}


class BadFact(InspectorError):
    """A figure typed in Decide that cannot be used."""


@pages.get("/inspection/<inspection_id>/decide")
def decide(inspection_id: str):
    """All systems of one inspection, each with its span and verdict."""
    return _page(open_inspection(inspection_id), None)


@pages.route("/inspection/<inspection_id>/decide/<system_id>", methods=["GET"])
def system(inspection_id: str, system_id: str):
    """One system opened beside the others."""
    return _page(open_inspection(inspection_id), system_id)


def _page(inspection: Inspection, system_id: str | None, faults: list[str] | None = None, refused: str = ""):
    """The page; with faults, the form named `refused` ("verdict", "facts", "line" or "finding") comes back as it was typed."""
    assessment = desk().assessment_of(inspection)
    chosen = next((part for part in assessment.systems if part.system.id == system_id), None)
    if system_id and chosen is None:
        abort(404)
    facts = inspection.state.values(f"verdict/{system_id}/all") if chosen else {}
    typed = request.form.to_dict() if refused else {}
    return render_template(
        "decide/decide.html", inspection=inspection, assessment=assessment, chosen=chosen, form=TokenForm(), fault=" ".join(faults or ()),
        verdicts=VERDICTS[:3], again={refused: typed},
        parts=PARTS, acts=ACTS, urgencies=URGENCIES, step="decide", title=title_of(inspection), differing=differing(inspection),
        facts=typed if refused == "facts" else facts, rates=desk().catalogue.all("rates"),
    ), 400 if faults else 200


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
        sentence = f"The proposal says {judged.proposal.verdict}. To decide {decision}, give the reason: the report shows both."
        return _page(inspection, system_id, [sentence], "verdict")
    subject = f"verdict/{system_id}/{unit}"
    inspection.say(request.form.get("who", ""), [(subject, "decision", decision or None), (subject, "reason", reason or None)])
    return redirect(url_for("decide.system", inspection_id=inspection.id, system_id=system_id))


@pages.post("/inspection/<inspection_id>/decide/<system_id>/facts")
def give_facts(inspection_id: str, system_id: str):
    """What the rules need beside the condition: remaining life, parts, what removal wins."""
    inspection = open_inspection(inspection_id)
    _chosen(inspection, system_id)
    figures, faults = _figures(FACTS)
    if faults:
        return _page(inspection, system_id, faults, "facts")
    parts = request.form.get("parts", "")
    values = {**figures, "parts": parts if parts in PARTS and parts else None, "law": request.form.get("law", "").strip()[:1000] or None}
    inspection.say("", [(f"verdict/{system_id}/all", name, value) for name, value in values.items()])
    return redirect(url_for("decide.system", inspection_id=inspection.id, system_id=system_id))


def _figures(names: Iterable[str]) -> tuple[dict[str, str | None], list[str]]:
    """The posted figures of these names as typed (None where empty), and a sentence for each that cannot be used."""
    found: dict[str, str | None] = dict.fromkeys(names)
    faults = []
    for name in found:
        try:
            found[name] = _figure(name, request.form.get(name, ""))
        except BadFact as problem:
            faults.append(str(problem))
    return found, faults


def _figure(name: str, text: str) -> str | None:
    """A number as typed, checked to be one that can be; None for an empty field."""
    text = text.strip()[:40]
    if not text:
        return None
    try:
        number = parse_number(text)
    except InspectorError as problem:
        raise BadFact(f"{LABELS[name]}: {problem}") from problem
    low, high = ENDS.get(name, (-LARGEST, LARGEST))
    if not low <= number <= high:
        raise BadFact(f"{LABELS[name]}: {text} cannot be; expected {low:.15g} to {high:.15g}.")
    return text


@pages.post("/inspection/<inspection_id>/decide/<system_id>/line")
def add_line(inspection_id: str, system_id: str):
    """One work line: act, what, cost (low, likely, high, or a quantity at a rate of the rate book), weight and place in the sequence."""
    inspection = open_inspection(inspection_id)
    part = _chosen(inspection, system_id)
    text, act, unit = request.form.get("text", "").strip()[:1000], request.form.get("act", ""), request.form.get("unit", "all")
    figures, faults = _line_figures()
    if not text:
        faults.append("A work line needs its text: what the yard would do.")
    if act not in ACTS:
        faults.append("A work line needs its act: refurbish, replace or remove.")
    if unit not in ("all", *(one.id for one in part.units)):
        faults.append("A work line is for the system or for one of its units; that unit is not on board any more.")
    if faults:
        return _page(inspection, system_id, faults, "line")
    subject = f"scope/{secrets.token_hex(4)}"
    values = {"system": system_id, "unit": unit, "act": act, "text": text, **figures}
    inspection.say(request.form.get("who", ""), [(subject, name, value) for name, value in values.items() if value is not None])
    return redirect(url_for("decide.system", inspection_id=inspection.id, system_id=system_id) + "#lines")


def _line_figures() -> tuple[dict[str, str | None], list[str]]:
    """The figures of a posted work line, priced by its rate where it names one, and every fault of them."""
    figures, faults = _figures((*MONEY, "weight", "sequence"))
    try:
        figures |= line_by_rate(desk().catalogue, request.form.get("rate", ""), request.form.get("quantity", ""))
    except InspectorError as problem:
        faults.append(str(problem))
    known = [parse_number(figures[name]) for name in MONEY if figures[name]]
    if known != sorted(known):
        faults.append("The costs must rise from low over likely to high.")
    return figures, faults


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
    faults = [] if title else ["A finding needs a title: what is wrong, in a line."]
    if urgency not in URGENCIES:
        faults.append(f"A finding needs its urgency: {', '.join(URGENCIES)}.")
    if faults:
        return _page(inspection, None, faults, "finding")
    subject = f"finding/{secrets.token_hex(4)}"
    values = {"title": title, "urgency": urgency, **{name: form.get(name, "").strip()[:4000] for name in ("text", "action", "on")}}
    inspection.say(form.get("who", ""), [(subject, name, value) for name, value in values.items() if value])
    return redirect(url_for("decide.decide", inspection_id=inspection.id) + "#findings")


@pages.get("/inspection/<inspection_id>/decide/<system_id>/verdict")
@pages.get("/inspection/<inspection_id>/decide/<system_id>/facts", endpoint="facts_again")
@pages.get("/inspection/<inspection_id>/decide/<system_id>/line", endpoint="line_again")
def system_again(inspection_id: str, system_id: str):
    """The address of a form, loaded again after a refusal, leads back to its system."""
    return redirect(url_for("decide.system", inspection_id=open_inspection(inspection_id).id, system_id=system_id))


@pages.get("/inspection/<inspection_id>/finding")
@pages.get("/inspection/<inspection_id>/settle", endpoint="settle_again")
@pages.get("/inspection/<inspection_id>/gone/<kind>/<one_id>", endpoint="gone_again")
def decide_again(inspection_id: str, **_: str):
    """The address of a form for the whole inspection, loaded again, leads back to Decide."""
    return redirect(url_for("decide.decide", inspection_id=open_inspection(inspection_id).id))
