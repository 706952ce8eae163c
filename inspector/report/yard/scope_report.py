"""The yard's list as a PDF: an item a row, with an empty column for the price of each."""

from collections.abc import Sequence
from itertools import groupby
from pathlib import Path

from reportlab.lib.units import mm
from reportlab.platypus import Flowable, Paragraph

from inspector.assess.model import Assessment
from inspector.report.cell_runs import Cell
from inspector.report.document import Report, heading, whole_file
from inspector.report.issue import vessel_name
from inspector.report.tables import rows_table
from inspector.report.theme import STYLES, Page, page_of, plain, txt, use_fonts
from inspector.report.yard.scope_items import (
    ScopeItem,
    ScopeSum,
    scope_items,
    scope_sum,
    scope_sums,
)
from inspector.values.cell_text import table_cell_text
from inspector.values.quantity import Money
from inspector.values.text import counted

TITLE = "Scope of work for the yard"
_HEAD = (
    "item",
    "order",
    "unit, place",
    "what is to be done",
    "quantity",
    "how",
    "after",
    "finding, photos",
    "price",
)
_WIDTHS = (11 * mm, 11 * mm, 44 * mm, 0, 24 * mm, 27 * mm, 13 * mm, 28 * mm, 30 * mm)
_EDGE = 16 * mm
HOW_TO_PRICE = (
    "Price each item apart, in the currency named, with what it needs: staging, cleaning, gas "
    "freeing, testing and certificates. Items marked alternative are priced as well and stand in "
    "no sum. An item without a place is to be seen on board. The numbers are those of the "
    "condition report, and an item keeps its number when the list changes."
)
LIMITS = (
    "The items follow from a visual, non-invasive inspection; quantities are estimates to be "
    "checked on board before the work is ordered. Hot work, entry to enclosed spaces, work on "
    "electrical plant and lifting are done by permit, under the yard's own rules, local law and "
    "the classification society; nothing in this list says that a space or a plant is safe."
)


def build_scope(
    assessment: Assessment,
    out: Path,
    *,
    paper: str = "a4",
    made_at: str,
    revision: str,
    with_estimate: bool = False,
) -> None:
    """Write the yard's list as a PDF in landscape.

    Parameters
    ----------
    assessment : Assessment
    out : Path
        Replaced only by a whole file.
    paper : str
        "a4" or "letter".
    made_at, revision : str
        As printed in the foot.
    with_estimate : bool
        Whether the column of prices holds the inspection's likely costs, for the owner; otherwise
        it is empty, for the yard.

    Raises
    ------
    UnknownPaper
        There is no such paper.
    OSError
        The file cannot be written.
    """
    upright = page_of(paper)
    page = Page(upright.height, upright.width, left=_EDGE, right=_EDGE, bottom=18 * mm)
    use_fonts()
    name = vessel_name(assessment)
    with whole_file(out) as part:
        report = Report(
            part,
            page,
            head=f"{TITLE} · {name}",
            mark=f"{plain(revision, 40)} · {plain(made_at, 40)}",
            title=f"{TITLE}: {name}",
            author="",
            subject=TITLE,
            creator="inspector",
        )
        report.typeset(_story(assessment, name, page.column, with_estimate))


def _story(assessment: Assessment, name: str, width: float, with_estimate: bool) -> list[Flowable]:
    items = scope_items(assessment)
    currency = assessment.currency or "no currency was named"
    purpose = "with the inspection's estimate" if with_estimate else "to be priced"
    lead = f"{name}, {purpose}. {counted(len(items), 'item')}. Currency: {currency}."
    body = [_table(items, width, with_estimate)] if items else [_nothing()]
    return [
        Paragraph(TITLE, STYLES["title"]),
        Paragraph(txt(lead), STYLES["lead"]),
        Paragraph(txt(HOW_TO_PRICE), STYLES["body"]),
        *body,
        heading("Limits", "limits"),
        Paragraph(txt(LIMITS), STYLES["body"]),
    ]


def _nothing() -> Paragraph:
    return Paragraph("No work lines were recorded.", STYLES["body"])


def _table(items: Sequence[ScopeItem], width: float, with_estimate: bool) -> Flowable:
    """Return the items, under a line for each system that has its name and its sum."""
    rows: list[list[Cell]] = []
    for system, of_system in groupby(items, key=lambda item: item.system):
        own = list(of_system)
        in_sum = scope_sum(system, [item for item in own if item.counted])
        rows.append(_sum_row(in_sum, with_estimate))
        rows += [_row(item, with_estimate) for item in own]
    rows += [_sum_row(each, with_estimate) for each in scope_sums(items)]
    widths = [each or width - sum(_WIDTHS) for each in _WIDTHS]
    return rows_table(_HEAD, rows, widths, right=(0, 1, 4, 8))


def _row(item: ScopeItem, with_estimate: bool) -> list[Cell]:
    line = item.line
    return [
        [(str(line.number), "b")],
        "" if line.sequence is None else str(line.sequence),
        [(item.unit, ""), (line.place, "soft")],
        [(f"{line.act}:", "soft"), (line.text, "")],
        " ".join(part for part in (line.quantity, line.quantity_unit) if part),
        _how(item),
        "" if item.after is None else str(item.after),
        _references(item),
        _price(item, with_estimate),
    ]


def _how(item: ScopeItem) -> str:
    """Where it is done, who attends and who supplies, as far as somebody said."""
    line = item.line
    said = [line.done]
    if line.class_attends:
        said.append("class attends")
    if line.supplied_by:
        said.append(f"{line.supplied_by} supplies")
    return ", ".join(part for part in said if part)


def _references(item: ScopeItem) -> str:
    named = []
    if item.finding is not None:
        named.append(f"finding {item.finding}")
    if item.photos:
        word = "photo" if len(item.photos) == 1 else "photos"
        named.append(f"{word} {', '.join(map(str, item.photos))}")
    return ", ".join(named)


def _price(item: ScopeItem, with_estimate: bool) -> Cell:
    amount = _amount(item.line.likely) if with_estimate else ""
    return amount if item.counted else [(amount, ""), ("alternative", "i")]


def _sum_row(found: ScopeSum, with_estimate: bool) -> list[Cell]:
    unpriced = f"{found.unpriced} without a likely amount" if found.unpriced else ""
    remark: Cell = [(unpriced, "soft")] if with_estimate else ""
    price: Cell = [(_amount(found.likely), "b")] if with_estimate else ""
    return ["", "", [(found.title, "b")], remark, *[""] * 3, [("sum", "soft")], price]


def _amount(value: float | None) -> str:
    return table_cell_text(None if value is None else Money.exact(value, as_typed=True))
