"""What the report says in words: readings in the reader's units with the typed value beside, limits, conditions, reasons not seen, weights, money."""

import math

from inspector.assess.shapes import CheckResult, Condition, Part, Typed
from inspector.errors import InspectorError
from inspector.quantities import convert, in_units, known_unit, parse_number, show
from inspector.report.tables import Run

NEED_WORDS = {"required": "required by the brief", "useful": "useful to the brief", "neutral": "the brief asks neither way",
              "unwanted": "not wanted by the brief"}


def in_reader_units(text: str, unit: str, units: str) -> str:
    """A typed value in the reader's units, and the typed one in brackets where they differ; what is no number stays as typed.

    Examples
    --------
    >>> in_reader_units("9.6 mm", "mm", "us")
    '0.378 in (typed 9.6 mm)'
    """
    bare = text.strip()
    if not unit or not bare:
        return bare
    number = bare.removesuffix(unit).strip()
    try:
        value, target = in_units(parse_number(number), unit, units)
        if target == known_unit(unit):
            return f"{number} {unit}"
        return f"{show(value, target)} (typed {number} {unit})"
    except InspectorError:
        return bare


def reading_text(reading: Typed, units: str, alone: bool) -> str:
    """One reading with its label, or without it where it stands alone beside its check."""
    value = in_reader_units(reading.text, reading.unit, units)
    return value if alone else f"{reading.label}: {value}"


def readings_text(result: CheckResult, units: str, labelled: bool = False) -> str:
    """All readings of a check in one line; a single one goes without its label unless `labelled`."""
    return "; ".join(reading_text(one, units, len(result.readings) == 1 and not labelled) for one in result.readings if one.text)


def limit_text(result: CheckResult, units: str) -> str:
    """The limit that the reading was held against, in the reader's units; a dash where there is none."""
    judged = result.judgement
    if judged is None or judged.limit is None:
        return "–"
    try:
        return show(*in_units(judged.limit, judged.unit or "", units))
    except InspectorError:
        return f"{judged.limit} {judged.unit or ''}".strip()


def condition_text(state: Condition) -> str:
    """The condition as one phrase, never a bare figure."""
    span = f"{math.floor(state.low)} to {math.ceil(state.high)} counting what was not seen"
    return f"Condition not known ({span})." if state.points is None else f"Condition {math.floor(state.points)} ({span})."


def coverage_text(state: Condition) -> str:
    """How much was seen."""
    return f"{state.seen} of {state.applicable} checks seen, {state.coverage * 100:.0f} % by weight."


def unseen_reason(result: CheckResult) -> str:
    """Why a check has no rating: the surveyor's reason, or that it was left unanswered."""
    if result.answer.startswith("not seen"):
        return result.answer.partition(":")[2].strip() or "no reason given"
    return "read but not rated" if result.readings else "not answered"


def was_not_seen(result: CheckResult) -> bool:
    """The check belongs to the unit and has no rating."""
    return result.applicable and result.rating is None


def rating_runs(result: CheckResult) -> list[Run]:
    """The rating in words, with what a reader must know of it: overruled, disputed."""
    if not result.applicable:
        said: list[Run] = [("not fitted", "soft")]
    elif result.rating is None:
        said = [(f"not seen, {unseen_reason(result)}" if result.answer else unseen_reason(result), "soft")]
    else:
        said = [(result.rating, "now" if result.rating in ("poor", "failed") else "")]
    if result.overruled:
        said.append((f"(surveyor's word; overruled: the reading is judged {result.judgement.rating})", "i"))
    if result.disputed:
        said.append(("(disputed)", "i"))
    return said


def disputed_text(result: CheckResult) -> str:
    """Every standing answer where two people differ, with who and when; "" where nobody does."""
    by_field: dict[str, list[str]] = {}
    for one in result.answers:
        by_field.setdefault(one.field.removeprefix("reading/"), []).append(f"{one.text} by {one.who or 'nobody named'}, {one.at[:16].replace('T', ' ')}")
    return " ".join(f"Answered differently ({field}): {'; '.join(told)}. Not settled." for field, told in by_field.items())


_GATE = (("permit", "permit"), ("attendant", "attendant"), ("instrument", "calibrated instrument"))
# the record's earlier spelling said yes or no
_HOW = {"yes": "entered", "no": "from outside"}


def gate_text(result: CheckResult) -> str:
    """How an enclosed space was treated, as answered before the rating."""
    gate = result.gate
    if not gate:
        return ""
    how = _HOW.get(gate.get("entered", ""), gate.get("entered", ""))
    if how != "entered":
        return {"from outside": "Seen from outside, not entered.", "not entered": "Not entered."}.get(how, "")
    held = [word for key, word in _GATE if gate.get(key) == "yes"]
    lacking = [word for key, word in _GATE if gate.get(key) != "yes"]
    read = "; ".join(f"{name.replace('_', ' ')} {value}" for name, value in gate.items() if name not in ("entered", *(key for key, _ in _GATE)))
    told = f"Entered with {', '.join(held)}" if held else "Entered without permit, attendant or calibrated instrument"
    return told + (f"; without {', '.join(lacking)}" if lacking and held else "") + (f"; read before: {read}" if read else "") + "."


def tons(weight: float | None, units: str) -> str:
    """A weight in t or long ton; a dash where unknown."""
    return "–" if weight is None else show(*in_units(weight, "t", units))


def room(space: float, units: str) -> str:
    """A space in m³, or in ft³ for a US reader, who counts gallons only of liquids."""
    return show(convert(space, "m³", "ft³"), "ft³", 0) if units == "us" else show(space, "m³")


def money(amount: float | None) -> str:
    """An amount, grouped; a dash where unknown."""
    return "–" if amount is None else show(round(amount), "")


def decided_words(part: Part) -> str:
    """The first reason for what stands: the surveyor's where he decided, else the proposal's."""
    if part.decision:
        return part.reason or "Decided by the surveyor without a reason given."
    return " ".join(part.proposal.reasons[:2]) or part.proposal.rule_text


def fact_rows(part: Part, units: str) -> list[tuple[str, str]]:
    """What the verdict rests on beside the condition: (name, value) of each fact that is known."""
    facts = part.facts
    space = "" if facts.space_won is None else room(facts.space_won, units)
    known = [
        ("need", NEED_WORDS.get(facts.need, facts.need)),
        ("law", " ".join(facts.law)),
        ("remaining life", "" if facts.life_years is None else show(facts.life_years, "years")),
        ("the buyer's horizon", "" if facts.horizon is None else show(facts.horizon, "years")),
        ("parts", facts.parts),
        ("cost to refurbish", "" if facts.refurbish_cost is None else money(facts.refurbish_cost)),
        ("cost to replace", "" if facts.replace_cost is None else money(facts.replace_cost)),
        ("weight won by removal", "" if facts.weight_won is None else tons(facts.weight_won, units)),
        ("space won by removal", space),
    ]
    return [(name, value) for name, value in known if value]
