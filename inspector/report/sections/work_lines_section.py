"""What the yard would do, for money and weight, with a sum of each system and of all."""

from collections.abc import Sequence

from reportlab.lib.units import mm
from reportlab.platypus import Flowable

from inspector.assess.model import Assessment, SystemPart
from inspector.assess.registers import WorkLine
from inspector.assess.work_cost import parts_priced_twice
from inspector.report.cell_runs import PAGE, Cell, Run
from inspector.report.document import section
from inspector.report.issue import Issue
from inspector.report.page_references import ReferringText, referring
from inspector.report.tables import markup, rows_table
from inspector.report.theme import STYLES
from inspector.values.cell_text import table_cell_text
from inspector.values.quantity import Money, Quantity

_AMOUNTS = ("low", "likely", "high")
_MEANING = (
    "Sums of low and of high are bounds, not likely ends. "
    "Weight: plus is added, minus is taken off."
)


def work_lines(assessment: Assessment, issue: Issue) -> list[Flowable]:
    """Return the work lines of all systems.

    Parameters
    ----------
    assessment : Assessment
    issue : Issue

    Returns
    -------
    list of Flowable
    """
    systems = [part for part in assessment.systems if part.lines]
    if not systems:
        return section("Work lines", "work", "No work lines were recorded.")
    rows: list[list[Cell]] = []
    counted: list[WorkLine] = []
    for part in systems:
        left_out = _left_out(part)
        in_sum = [line for line in part.lines if line.id not in left_out]
        # Of a single line the sum says nothing new: it names its system itself.
        several = len(part.lines) > 1
        if several:
            rows.append(_sum_row(part.system.name, in_sum, issue))
        rows += [
            _line_row(part, line, issue, left_out=line.id in left_out, named=not several)
            for line in part.lines
        ]
        counted += in_sum
    rows.append(_sum_row("Sum of all", counted, issue))
    rest = issue.page.column - (40 + 17 + 4 * 18) * mm
    table = rows_table(
        ("system, unit", "act", "what", *_AMOUNTS, "weight"),
        rows,
        (40 * mm, 17 * mm, rest, *(18 * mm,) * 4),
        right=(3, 4, 5, 6),
        tight=True,
    )
    currency = "Low, likely and high; no currency was named for them."
    if assessment.currency:
        currency = f"Low, likely and high in {assessment.currency}."
    total: list[Run] = [
        ("The one total is on the second page: these lines with their spread, and the price.", ""),
        ("summary", PAGE),
    ]
    beside = referring(ReferringText, markup(total), STYLES["line"])
    return section("Work lines", "work", f"{currency} {_MEANING}", table, beside)


def _left_out(part: SystemPart) -> set[str]:
    """The lines that are in no sum, since their unit is priced to be replaced and refurbished."""
    return {line.id for priced in parts_priced_twice(part) for line in priced.left_out}


def _line_row(
    part: SystemPart, line: WorkLine, issue: Issue, *, left_out: bool, named: bool
) -> list[Cell]:
    """Return one work line, with a remark where it is in no sum."""
    names = {unit.id: unit.name for unit in part.units}
    # A unit that was taken off the list keeps its line, under its id.
    where = "all units" if line.unit in ("all", "") else names.get(line.unit, line.unit)
    name: list[Run] = [(where, "")]
    if named:
        name.insert(0, (f"{part.system.name}:", "b"))
    return [
        name,
        line.act,
        [(line.text, ""), ("in no sum: the other act counts" if left_out else "", "i")],
        *(_amount(getattr(line, name)) for name in _AMOUNTS),
        _weight(line.weight, issue.units),
    ]


def _sum_row(title: str, lines: Sequence[WorkLine], issue: Issue) -> list[Cell]:
    """Return the sums of lines, and how many of them have no likely amount."""
    # A sum that lacks lines says so, or it would read as the whole price.
    priced = [line for line in lines if line.is_priced]
    unpriced = len(lines) - len(priced)
    sums = [_rounded(_sum(priced, name)) for name in _AMOUNTS]
    sums.append(_weight(_sum(lines, "weight"), issue.units))
    return [
        [(title, "b")],
        "",
        [(f"{unpriced} without a price" if unpriced else "", "soft")],
        *([(text, "b")] for text in sums),
    ]


def _sum(lines: Sequence[WorkLine], name: str) -> float | None:
    """The sum of what is known of the lines; None where nothing is."""
    # Unknown is not nothing: a sum of unknown amounts is unknown.
    known = [getattr(line, name) for line in lines if getattr(line, name) is not None]
    return sum(known) if known else None


def _amount(value: float | None) -> str:
    """An amount as it was typed; its currency is named above the table."""
    return table_cell_text(None if value is None else Money.exact(value, as_typed=True))


def _rounded(value: float | None) -> str:
    """A sum, which claims no more digits than an estimate has."""
    return table_cell_text(None if value is None else Money.exact(value))


def _weight(weight: float | None, units: str) -> str:
    return table_cell_text(None if weight is None else Quantity.exact(weight, "t"), units)
