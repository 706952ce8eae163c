"""What the report says in words: readings in the reader's units with the typed value beside, limits, conditions, reasons not seen, weights, money."""

import math

from inspector.assess.shapes import Assessment, CheckResult, Condition, Part, SystemPart, Typed
from inspector.errors import InspectorError
from inspector.quantities import convert, in_units, known_unit, parse_number, show
from inspector.report.tables import Run
from inspector.words import grouped

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


def told_points(state: Condition, least: float) -> float | None:
    """The condition's figure; None where nothing was seen, or less of the weight than `least` (0 to 1), so that one check seen never reads 100."""
    return None if state.points is None or state.coverage < least - 1e-9 else state.points


def looked_at(one: SystemPart, assessment: Assessment) -> bool:
    """Whether anything at all was said of a system: an answer, a reading, a note, a photo, a finding, a work line, a decision or a duty of law."""
    results = [result for unit in one.units for result in unit.results] or one.whole.results
    said = any(result.answer or result.rating or result.readings or result.note or result.photos for result in results)
    told = any(found.system == one.system.id for found in assessment.findings)
    told = told or any(photo.on.split("/")[1:2] == [one.system.id] for photo in assessment.photos)
    return bool(said or told or one.lines or one.whole.facts.law or any(part.decision for part in (one.whole, *one.units)))


def condition_text(state: Condition, least: float = 0.0) -> str:
    """The condition as one phrase, never a bare figure."""
    span = f"{math.floor(state.low)} to {math.ceil(state.high)} counting what was not seen"
    points = told_points(state, least)
    if points is None:
        return f"Condition not known ({span})." if state.points is None else f"Too little was seen for a figure of the condition ({span})."
    return f"Condition {math.floor(points)} ({span})."


def coverage_text(state: Condition) -> str:
    """How much was seen."""
    return f"{state.seen} of {counted(state.applicable, 'check')} seen, {state.coverage * 100:.0f} % by weight."


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
    """Every standing answer of a disputed field, with who and when; "" where none is. One person may have answered on two devices."""
    by_field: dict[str, list[str]] = {}
    people: dict[str, set[str]] = {}
    for one in result.answers:
        people.setdefault(one.field.removeprefix("reading/"), set()).add(one.who)
        by_field.setdefault(one.field.removeprefix("reading/"), []).append(f"{one.text} by {one.who or 'nobody named'}, {one.at[:16].replace('T', ' ')}")
    return " ".join(f"Answered differently{_apart(people[field])} ({field}): {'; '.join(told)}. Not settled." for field, told in by_field.items())


def _apart(people: set[str]) -> str:
    return ", given apart, on two devices" if len(people) == 1 and any(people) else ""


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
    """An amount, grouped as everywhere; a dash where unknown."""
    return "–" if amount is None else grouped(amount)


def decided_words(part: Part) -> str:
    """The first reason for what stands: the surveyor's where he decided, else the proposal's."""
    if part.decision:
        return part.reason or "Decided by the surveyor without a reason given."
    return " ".join(part.proposal.reasons[:2]) or part.proposal.rule_text


def priced(value: float | None, currency: str) -> str:
    """An amount with its currency where one was named; "" where the amount is unknown."""
    return "" if value is None else f"{money(value)} {currency}".strip()


def counted(count: int, one: str, many: str = "") -> str:
    """A count with its word: "1 photo", "2 photos"."""
    return f"{count} {one if count == 1 else many or one + 's'}"


def fact_rows(part: Part, units: str, currency: str = "") -> list[tuple[str, str]]:
    """What the verdict rests on beside the condition: (name, value) of each fact that is known."""
    facts = part.facts
    space = "" if facts.space_won is None else room(facts.space_won, units)
    known = [
        ("need", NEED_WORDS.get(facts.need, facts.need)),
        ("law", " ".join(facts.law)),
        ("remaining life", "" if facts.life_years is None else show(facts.life_years, "years")),
        ("the buyer's horizon", "" if facts.horizon is None else show(facts.horizon, "years")),
        ("parts", facts.parts),
        ("cost to refurbish", priced(facts.refurbish_cost, currency)),
        ("cost to replace", priced(facts.replace_cost, currency)),
        ("weight won by removal", "" if facts.weight_won is None else tons(facts.weight_won, units)),
        ("space won by removal", space),
    ]
    return [(name, value) for name, value in known if value]
