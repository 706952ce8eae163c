"""The readings as a table: one number a row, with what was calculated and decided from it."""

from collections.abc import Iterator

from inspector.assess.checked import CheckResult, Typed
from inspector.assess.model import Assessment
from inspector.criteria.core.judgement import Judgement
from inspector.record.typed_values import typed_number
from inspector.report.data_files.table_sheets import Cell, Sheet

_HEADS = (
    "system",
    "unit",
    "check",
    "reading",
    "as typed",
    "value",
    "unit of value",
    "computed value",
    "computed unit",
    "judged",
    "band",
    "limit",
    "margin",
    "criterion",
    "source",
    "edition",
    "clause",
    "mark",
    "not judged because",
    "depth",
    "by",
    "on",
)
_NUMBERS = frozenset({"value", "computed value", "limit", "margin"})


def reading_sheet(assessment: Assessment) -> Sheet:
    """Return every reading of an inspection, one a row.

    Parameters
    ----------
    assessment : Assessment

    Returns
    -------
    Sheet
        Numbers in the unit in which they were typed; what a criterion calculated of all readings
        of its check stands in each of their rows.
    """
    rows = tuple(
        _row(part.system.name, result, reading)
        for part in assessment.systems
        for unit in part.units
        for result in unit.results
        for reading in result.readings
    )
    return Sheet("Readings", _HEADS, rows, numbers=_NUMBERS, dates=frozenset({"on"}))


def _row(system: str, result: CheckResult, reading: Typed) -> tuple[Cell, ...]:
    number = typed_number({"value": reading.text, "unit": reading.unit})
    return (
        system,
        result.unit_name,
        result.check.title,
        reading.label,
        reading.text,
        number,
        reading.unit,
        *_judged(result.judgement),
        result.cannot_judge,
        result.depth,
        result.who,
        # The day is enough for a table; the journal has the time.
        result.when[:10],
    )


def _judged(judgement: Judgement | None) -> Iterator[Cell]:
    """Yield what the criterion made of the check's readings, and where its limit is published."""
    if judgement is None:
        yield from (None, "", "", "", None, None, "", "", "", "", "")
        return
    yield judgement.value
    yield judgement.unit or ""
    yield judgement.rating or ""
    yield judgement.band
    yield judgement.limit
    yield judgement.margin
    yield judgement.criterion
    source = judgement.source
    yield from (
        ("", "", "", "")
        if source is None
        else (source.title, source.edition, source.clause, source.mark)
    )
