"""The terms of a declared criterion: named values, figures, conditions and texts with values.

This is no language of expressions: a figure is a number, a name, a cell of a table or one operation
on numbers and names, and a condition compares one name with one other. What needs more is written
in Python.
"""

import re
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import date
from decimal import Decimal

from inspector.criteria.core.decimals import exact
from inspector.values.cell_text import NOT_KNOWN
from inspector.values.field import Field
from inspector.values.formatting import show
from inspector.values.text import with_article
from inspector.values.units import convert

Term = float | int | str | date | None
Raw = Mapping[str, object]

# name of an operation -> its result from exact operands; a share is so many percent of a whole
OPERATIONS: dict[str, Callable[..., Decimal]] = {
    "sum": lambda *parts: sum(parts),
    "difference": lambda first, second: first - second,
    "product": lambda first, second: first * second,
    "ratio": lambda first, second: first / second,
    "percent_of": lambda part, whole: 100 * part / whole,
    "share": lambda percent, whole: percent * whole / 100,
    "least": lambda *parts: min(parts),
    "greatest": lambda *parts: max(parts),
}
DIVIDING = ("ratio", "percent_of")
COMPARISONS: dict[str, Callable[[Term, Term], bool]] = {
    "from": lambda value, end: value >= end,
    "above": lambda value, end: value > end,
    "upto": lambda value, end: value <= end,
    "below": lambda value, end: value < end,
    "unlike": lambda value, other: value != other,
}
ROW_ENDS = ("upto", "below")
PLACEHOLDER = re.compile(r"(?P<article>\ba )?\{(?P<name>[a-z][a-z0-9_]*)(?::(?P<form>[^{}]+))?\}")
# before the decimals of a placeholder: so many at most, so many at least
AT_MOST = "~"
AT_LEAST = "+"
# what a table says of an input that was not given
MISSING = ""


@dataclass
class Terms:
    """The values of all names of one criterion in one case, and how each is formatted."""

    values: dict[str, Term] = field(default_factory=dict)
    fields: dict[str, Field] = field(default_factory=dict)

    def add(self, asked: Field, value: Term) -> None:
        """Take in a value under the name of its field."""
        self.values[asked.name] = value
        self.fields[asked.name] = asked

    def value_of(self, term: Term) -> Term:
        """Return the value of a name; a number or a date is its own value."""
        return self.values[term] if isinstance(term, str) else term

    def calculated(self, figure: object) -> Term:
        """Return the value of a figure; None where a term is missing or it divides by nothing.

        Parameters
        ----------
        figure : object
            A number, a name, a table of rows or one operation, as the file has it.

        Returns
        -------
        float or str or date or None
        """
        if not isinstance(figure, Mapping):
            return self.value_of(figure)
        if "by" in figure:
            return self.value_of(self._cell(figure))
        name = next(name for name in OPERATIONS if name in figure)
        return self._operated(name, figure[name])

    def _cell(self, table: Raw) -> Term:
        if "rows" not in table:
            return self._cell_by_size(table)
        return _row(table, [self.values[name] for name in names_by(table)])

    def _cell_by_size(self, table: Raw) -> Term:
        """Return the cell of the first row whose end the value has not passed, or the last one."""
        value = self.values[table["by"]]
        if value is None:
            return table.get("rest")
        key = next(key for key in ROW_ENDS if key in table)
        ends = [self.value_of(end) for end in table[key]]
        return table["cells"][sum(not COMPARISONS[key](value, end) for end in ends)]

    def _operated(self, name: str, operands: Sequence[Term]) -> float | None:
        """Return the result in exact decimals; None where a term is missing."""
        values = [self.value_of(operand) for operand in operands]
        # A share of nothing is not known, and is refused with a sentence where it is the value.
        if None in values or (name in DIVIDING and values[1] <= 0):
            return None
        return float(OPERATIONS[name](*map(exact, values)))

    def worded(self, words: object) -> str:
        """Return a text of the file: itself, or the row of a table."""
        if isinstance(words, str):
            return words
        return _row(words, [self.values[name] for name in names_by(words)])

    def holds(self, conditions: Raw) -> bool:
        """Return whether each named value is as it is asked to be.

        Parameters
        ----------
        conditions : mapping of str to object
            Name -> a text, a list of texts ("" where nothing was given), or a table of comparisons
            with a number, a date or a name. A comparison of what was not given does not hold.
        """
        return all(self._is(self.values[name], asked) for name, asked in conditions.items())

    def _is(self, value: Term, asked: object) -> bool:
        if isinstance(asked, Mapping):
            return all(self._compares(key, value, end) for key, end in asked.items())
        return (MISSING if value is None else value) in (
            asked if isinstance(asked, list) else [asked]
        )

    def _compares(self, key: str, value: Term, end: Term) -> bool:
        other = self.value_of(end)
        # What was not given is neither above nor below anything.
        return None not in (value, other) and COMPARISONS[key](value, other)

    def filled(self, template: str, **words: str) -> str:
        """Return a template with every placeholder replaced by its value as a reader sees it.

        Parameters
        ----------
        template : str
            "{name}" is the value with its unit, "{name:2}" the same with two decimals, "{name:~2}"
            with two at most, "{name:+2}" with two at least, "{name:ppm}" converted to ppm.
        **words : str
            What replaces the names that have no value of their own.
        """

        def replaced(match: re.Match) -> str:
            article, name, form = match.group("article", "name", "form")
            text = words[name] if name in words else self._shown(name, form)
            # "an office", where the file has "a {space}" for every space
            return with_article(text) if article else text

        return PLACEHOLDER.sub(replaced, template)

    def _shown(self, name: str, form: str | None) -> str:
        """Return a value as its placeholder asks: usual, with decimals, or in another unit."""
        value, asked = self.values[name], self.fields[name]
        if value is None:
            return NOT_KNOWN
        if form is None:
            return asked.formatted(value)
        if form.isdigit():
            return show(value, asked.unit, int(form))
        if form[0] == AT_MOST and form[1:].isdigit():
            rounded = round(value, int(form[1:]))
            decimals = len(f"{rounded:g}".partition(".")[2])
            return show(rounded, asked.unit, decimals)
        if form[0] == AT_LEAST and form[1:].isdigit():
            usual = show(value, "").partition(".")[2]
            return show(value, asked.unit, max(len(usual), int(form[1:])))
        return show(convert(value, asked.unit, form), form)


def names_by(table: Raw) -> list[str]:
    """Return the inputs by which a table has its rows."""
    by = table["by"]
    return [by] if isinstance(by, str) else list(by)


def _row(table: Raw, keys: Sequence[Term]) -> Term:
    """Return the cell of a row, or the rest where a choice has no row."""
    cell = table["rows"]
    for key in keys:
        cell = cell.get(MISSING if key is None else str(key), table.get("rest"))
        if not isinstance(cell, Mapping):
            break
    return cell


def names_in(figure: object) -> set[str]:
    """Return every name that a figure, a table of rows or a set of conditions depends on.

    Parameters
    ----------
    figure : object
        As the file has it.

    Returns
    -------
    set of str
    """
    if isinstance(figure, str):
        return {figure}
    if not isinstance(figure, Mapping):
        return set()
    if "by" in figure:
        cells = figure.get("cells") or _cells(figure.get("rows"))
        rows = {end for key in ROW_ENDS for end in figure.get(key, ())}
        return {*names_by(figure), *_names(cells), *_names(rows), *_names([figure.get("rest")])}
    return {name for key in OPERATIONS for name in _names(figure.get(key, ()))}


def names_in_conditions(conditions: Raw) -> set[str]:
    """Return the names that are compared, and those that they are compared with."""
    ends = [
        end for asked in conditions.values() if isinstance(asked, Mapping) for end in asked.values()
    ]
    return {*conditions, *_names(ends)}


def names_in_text(template: object) -> set[str]:
    """Return the names whose values a template shows."""
    return {match["name"] for match in PLACEHOLDER.finditer(str(template))}


def _names(terms: object) -> set[str]:
    return {term for term in terms if isinstance(term, str)}


def _cells(rows: object) -> list[object]:
    """Return every cell of a table of rows, however deep."""
    if not isinstance(rows, Mapping):
        return [rows]
    return [cell for row in rows.values() for cell in _cells(row)]
