"""What was recorded as plain tables: checks, verdicts, findings, work lines and photos."""

from collections.abc import Callable, Iterable
from operator import attrgetter
from typing import Any, NamedTuple

from inspector.assess.checked import CheckResult
from inspector.assess.model import Assessment, Part, SystemPart
from inspector.assess.registers import WorkLine
from inspector.report.data_files.reading_table import reading_sheet
from inspector.report.data_files.table_sheets import Cell, Sheet

# Heading -> how its value is read from what a row is about.
Columns = dict[str, Callable[[Any], Cell]]
# Headings whose columns hold numbers, or days.
_NUMBERS = frozenset(
    {
        *("limit", "computed value", "margin", "photos", "number", "order", "item"),
        *("condition", "at least", "at most", "coverage", "refurbish", "replace"),
        *(
            "low",
            "likely",
            "high",
            "weight, t",
            "weeks",
            "both rated",
            "share alike",
            "Cohen's kappa",
        ),
        *("kappa, linear weights", "rated by one only"),
    }
)
_DATES = frozenset({"on"})


def record_sheets(assessment: Assessment) -> tuple[Sheet, ...]:
    """Return every table of what was recorded of one inspection.

    Parameters
    ----------
    assessment : Assessment

    Returns
    -------
    tuple of Sheet
        The checks first.
    """
    # The sheets are for calculating on: one row a check, never a text of several.
    systems = assessment.systems
    checks = [
        _Row(part, result) for part in systems for unit in part.units for result in unit.results
    ]
    verdicts = [_Row(part, unit) for part in systems for unit in (part.whole, *part.units)]
    lines = [_Row(part, line) for part in systems for line in part.lines]
    return (
        _sheet("Checks", _CHECKS, checks),
        reading_sheet(assessment),
        _sheet("Verdicts", _VERDICTS, verdicts),
        _sheet("Findings", _FINDINGS, assessment.findings),
        _sheet("Work lines", _LINES, lines),
        _sheet("Photos", _PHOTOS, assessment.photos),
        _sheet("Agreement", _AGREEMENT, assessment.agreements),
    )


class _Row(NamedTuple):
    """What a row is about, and the system that it belongs to."""

    system: SystemPart
    about: CheckResult | Part | WorkLine


def _sheet(name: str, columns: Columns, items: Iterable) -> Sheet:
    """Return a sheet with a row for each item."""
    rows = tuple(tuple(value(item) for value in columns.values()) for item in items)
    heads = tuple(columns)
    return Sheet(name, heads, rows, _NUMBERS.intersection(heads), _DATES.intersection(heads))


def _readings(row: _Row) -> str:
    """The readings as typed, each with the unit it was typed in."""
    read = row.about.readings
    # As typed, in the unit in which it was typed: a conversion would add digits that nobody read.
    return "; ".join(f"{each.label} {each.text} {each.unit}".strip() for each in read)


def _judged(name: str, otherwise: Cell = "") -> Callable[[_Row], Cell]:
    """An attribute of the judgement; something else where there is no judgement."""

    def value(row: _Row) -> Cell:
        judgement = row.about.judgement
        return getattr(judgement, name) if judgement else otherwise

    return value


def _source(row: _Row) -> str:
    """The source of the judgement, or why the readings cannot be judged."""
    judgement = row.about.judgement
    # A reading that could not be judged says why, where its source would be.
    return str(judgement.source) if judgement else row.about.cannot_judge


def _own_price(row: _Row, name: str) -> Cell:
    """Return a price of a unit; None where it is the whole system's."""
    facts = row.about.facts
    return None if facts.shared else getattr(facts, name)


def _unit_name(row: _Row) -> str:
    # By identity: a system with one unit has the same figures in both rows.
    return "all" if row.about is row.system.whole else row.about.name


# The heads are what an office's own scripts read the exported files by: they are kept as they are.
_SYSTEM = attrgetter("system.system.name")
_CHECKS: Columns = {
    "system": _SYSTEM,
    "unit": attrgetter("about.unit_name"),
    "check": attrgetter("about.check.title"),
    "answer": attrgetter("about.answer"),
    "rating counted": lambda row: row.about.rating or "",
    "depth": attrgetter("about.depth"),
    "readings": _readings,
    "judged": lambda row: _judged("rating")(row) or "",
    "band": _judged("band"),
    "computed value": _judged("value", None),
    "limit": _judged("limit", None),
    "margin": _judged("margin", None),
    "limit unit": lambda row: _judged("unit")(row) or "",
    "source": _source,
    "mark": lambda row: getattr(getattr(row.about.judgement, "source", None), "mark", ""),
    "note": attrgetter("about.note"),
    "by": attrgetter("about.who"),
    "on": lambda row: row.about.when[:10],
    "disputed": lambda row: "yes" if row.about.disputed else "",
    "photos": lambda row: len(row.about.photos),
}
_VERDICTS: Columns = {
    "system": _SYSTEM,
    "unit": _unit_name,
    "proposed": attrgetter("about.proposal.verdict"),
    "how firm": attrgetter("about.proposal.firmness"),
    "read aloud": attrgetter("about.proposal.spoken"),
    "rule": attrgetter("about.proposal.rule"),
    "decided": attrgetter("about.decision"),
    "reason": attrgetter("about.reason"),
    "condition": attrgetter("about.condition.shown"),
    "at least": attrgetter("about.condition.low"),
    "at most": attrgetter("about.condition.high"),
    "coverage": attrgetter("about.condition.coverage"),
    # Prices of the whole system are in its own row only.
    "refurbish": lambda row: _own_price(row, "refurbish_cost"),
    "replace": lambda row: _own_price(row, "replace_cost"),
}
_FINDINGS: Columns = {
    "number": attrgetter("number"),
    "title": attrgetter("title"),
    "text": attrgetter("text"),
    "urgency": attrgetter("urgency"),
    "action": attrgetter("action"),
    "system": attrgetter("system"),
    "unit": attrgetter("unit_name"),
    "photos": lambda finding: len(finding.photos),
}
_LINES: Columns = {
    "item": attrgetter("about.number"),
    "order": attrgetter("about.sequence"),
    "system": _SYSTEM,
    "unit": attrgetter("about.unit"),
    "act": attrgetter("about.act"),
    "what": attrgetter("about.text"),
    "low": attrgetter("about.low"),
    "likely": attrgetter("about.likely"),
    "high": attrgetter("about.high"),
    "weight, t": attrgetter("about.weight"),
    "weeks": attrgetter("about.weeks"),
    "rate": attrgetter("about.rate"),
}
_PHOTOS: Columns = {
    "number": attrgetter("number"),
    "sha256": attrgetter("sha"),
    "caption": attrgetter("caption"),
    "place": attrgetter("place"),
    "taken": attrgetter("taken"),
    "on": lambda photo: photo.taken[:10],
    "by": attrgetter("who"),
}
_AGREEMENT: Columns = {
    "first": attrgetter("first"),
    "second": attrgetter("second"),
    "both rated": attrgetter("count"),
    "share alike": attrgetter("same"),
    "Cohen's kappa": attrgetter("kappa"),
    "kappa, linear weights": attrgetter("linear"),
    "rated by one only": attrgetter("dropped"),
}
