"""The yard's list as a workbook: columns for the yard's prices, which add themselves up."""

import io
from collections.abc import Callable, Sequence

import xlsxwriter
from xlsxwriter.utility import xl_range

from inspector.assess.model import Assessment
from inspector.report.data_files.spreadsheet_text import safe_cell
from inspector.report.data_files.spreadsheets import PLAIN_TEXTS
from inspector.report.yard.scope_items import (
    AMOUNTS,
    COUNTED,
    ScopeItem,
    scope_items,
    scope_sums,
)

Value = str | float | int | None
# Heading -> width in letters, and how its value is read from an item.
_COLUMNS: dict[str, tuple[int, Callable[[ScopeItem], Value]]] = {
    "item": (6, lambda item: item.line.number),
    "order": (6, lambda item: item.line.sequence),
    "system": (20, lambda item: item.system),
    "unit": (24, lambda item: item.unit),
    "frame or place": (20, lambda item: item.line.place),
    "act": (11, lambda item: item.line.act),
    "what is to be done": (60, lambda item: item.line.text),
    "quantity": (10, lambda item: item.line.quantity if item.quantity is None else item.quantity),
    "unit of quantity": (10, lambda item: item.line.quantity_unit),
    "done": (9, lambda item: item.line.done),
    "after item": (8, lambda item: item.after),
    "finding": (8, lambda item: item.finding),
    "photos": (12, lambda item: ", ".join(map(str, item.photos))),
    "class attends": (8, lambda item: "yes" if item.line.class_attends else ""),
    "supplied by": (9, lambda item: item.line.supplied_by),
    "counted": (11, lambda item: item.status),
}
_ESTIMATE = tuple(f"estimate, {name}" for name in AMOUNTS)
_TO_FILL = ("unit price", "price")
_MONEY = "#,##0"


def scope_workbook(assessment: Assessment, *, with_estimate: bool = False) -> bytes:
    """Return the yard's list as a workbook.

    Parameters
    ----------
    assessment : Assessment
    with_estimate : bool
        Whether the inspection's costs are in it, for the owner. The yard's columns are empty.

    Returns
    -------
    bytes
        The sums are formulas over the counted items, so that prices add themselves up as they
        are typed.
    """
    items = scope_items(assessment)
    out = io.BytesIO()
    with xlsxwriter.Workbook(out, PLAIN_TEXTS) as book:
        page = book.add_worksheet("Scope")
        _Writer(book, page, items, with_estimate).write()
        page.set_landscape()
        page.set_paper(9)
        page.fit_to_pages(1, 0)
        page.repeat_rows(0)
        page.freeze_panes(1, 1)
        about = book.add_worksheet("About")
        _about(about, assessment)
    return out.getvalue()


class _Writer:
    """The sheet of items and its sums."""

    def __init__(self, book, page, items: Sequence[ScopeItem], with_estimate: bool) -> None:
        self.page, self.items = page, items
        self.bold = book.add_format({"bold": True, "text_wrap": True, "valign": "top"})
        self.wrapped = book.add_format({"text_wrap": True, "valign": "top"})
        self.money = book.add_format({"num_format": _MONEY, "valign": "top"})
        self.sum = book.add_format({"num_format": _MONEY, "bold": True})
        self.estimate = _ESTIMATE if with_estimate else ()
        self.heads = (*_COLUMNS, *self.estimate, *_TO_FILL)

    def write(self) -> None:
        """Write heads, items and sums."""
        for column, head in enumerate(self.heads):
            width = _COLUMNS[head][0] if head in _COLUMNS else 13
            self.page.set_column(column, column, width)
            self.page.write_string(0, column, head, self.bold)
        for row, item in enumerate(self.items, 1):
            self._item(row, item)
        if self.items:
            self.page.autofilter(0, 0, len(self.items), len(self.heads) - 1)
            self._sums(len(self.items) + 1)

    def _item(self, row: int, item: ScopeItem) -> None:
        for column, (_, value_of) in enumerate(_COLUMNS.values()):
            self._cell(row, column, value_of(item))
        first = len(_COLUMNS)
        for column, name in enumerate(AMOUNTS if self.estimate else (), first):
            amount = getattr(item.line, name)
            if amount is not None:
                self.page.write_number(row, column, amount, self.money)
        for column in range(first + len(self.estimate), len(self.heads)):
            self.page.write_blank(row, column, None, self.money)

    def _cell(self, row: int, column: int, value: Value) -> None:
        if isinstance(value, int | float):
            self.page.write_number(row, column, value, self.wrapped)
        elif value:
            self.page.write_string(row, column, safe_cell(value), self.wrapped)

    def _sums(self, row: int) -> None:
        """One row: the sums of the counted items, of each column of amounts."""
        at = list(self.heads).index("counted")
        status = xl_range(1, at, row - 1, at)
        total = scope_sums(self.items)[-1]
        self.page.write_string(row, self.heads.index("what is to be done"), total.title, self.bold)
        values = [getattr(total, name) or 0 for name in AMOUNTS] if self.estimate else []
        # The yard's unit prices are of unlike units, and have no sum.
        columns = [*range(at + 1, at + 1 + len(self.estimate)), len(self.heads) - 1]
        for column, value in zip(columns, [*values, 0], strict=True):
            amounts = xl_range(1, column, row - 1, column)
            formula = f'=SUMIFS({amounts},{status},"{COUNTED}")'
            self.page.write_formula(row, column, formula, self.sum, value)


def _about(page, assessment: Assessment) -> None:
    """What the reader of the list must know, a line each."""
    lines = (
        ("vessel", assessment.vessel.get("name", "")),
        ("currency", assessment.currency or "none was named"),
        ("counted", "in the sum; an alternative is priced as well and is in no sum"),
        ("order", "place in the sequence of the work, the first is 1"),
        ("numbers", "items, findings and photos have the numbers of the condition report"),
    )
    page.set_column(0, 0, 14)
    page.set_column(1, 1, 90)
    for row, (name, text) in enumerate(lines):
        page.write_string(row, 0, name)
        page.write_string(row, 1, safe_cell(text))
