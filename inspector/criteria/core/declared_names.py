"""The names that a declared criterion uses: each must be known, and mean one thing."""

from collections.abc import Iterator, Mapping
from datetime import date

from inspector.criteria.core.declared import field_of
from inspector.criteria.core.declared_rule import VALUE
from inspector.criteria.core.declared_terms import (
    COMPARISONS,
    DIVIDING,
    MISSING,
    OPERATIONS,
    ROW_ENDS,
    Raw,
    names_in_text,
)
from inspector.values.table_rules import entries_of, faults_of_unit, is_number, is_text

NUMBER, DATE, TEXT = "number", "date", "text"
_KINDS = {"number": NUMBER, "whole": NUMBER, "date": DATE}
# What a sentence may show of its band beside the names.
OF_A_BAND = ("meaning", "band")


class Names:
    """The names known so far in one criterion, and the mistakes of what uses them.

    Parameters
    ----------
    where : str
        File and criterion, at the start of each sentence.
    raw : mapping
        The table of the criterion, whose shape is right.
    """

    def __init__(self, where: str, raw: Raw) -> None:
        self.where, self.raw = where, raw
        self.inputs = {each["id"]: each for each in raw["inputs"]}
        self.choices = {
            name: tuple(map(str, each.get("choices", ()))) for name, each in self.inputs.items()
        }
        # Name -> number, date or text, which are never compared with each other.
        self.known: dict[str, str] = {
            name: _KINDS.get(field_of(each).kind, TEXT) for name, each in self.inputs.items()
        }

    def fault(self, key: str, problem: str) -> str:
        """Return the sentence of one mistake."""
        return f"{self.where}, {key}: {problem}"

    def new(self, key: str, name: str, kind: str = NUMBER) -> Iterator[str]:
        """Take in a name that a limit, a figure or a word has; it may be no other's."""
        if name in self.known or name in (VALUE, *OF_A_BAND):
            yield self.fault(key, f"{name!r} is the name of something else as well.")
        # Known even where it is doubled, so that one slip is not reported at each of its uses.
        self.known[name] = kind

    def name(self, key: str, term: object, kind: str = "") -> Iterator[str]:
        """Yield a fault where a term is neither a number nor a known name, or not of a kind."""
        found = "" if isinstance(term, Mapping) else self.kind_of(term)
        if isinstance(term, str) and term not in self.known:
            yield self.fault(key, f"{term!r} is not known here; known are {', '.join(self.known)}.")
        elif not found:
            yield self.fault(key, f"is {term!r}; expected a number or a name.")
        elif kind and found != kind:
            yield self.fault(key, f"{term!r} is a {found}; expected a {kind}.")

    def kind_of(self, figure: object) -> str:
        """Return number, date or text for a term or a figure, "" where it is neither."""
        if isinstance(figure, Mapping):
            cells = entries_of(figure.get("cells")) or cells_of(figure)
            return self.kind_of(cells[0]) if "by" in figure and cells else NUMBER
        if isinstance(figure, str):
            return self.known.get(figure, "")
        if isinstance(figure, date):
            return DATE
        return NUMBER if is_number(figure) else ""

    def figure(self, key: str, figure: object) -> Iterator[str]:
        """Yield the faults of a figure: number, name, table or one operation."""
        if not isinstance(figure, Mapping):
            yield from self.name(key, figure)
            return
        yield from faults_of_unit(f"{self.where}, {key}", figure.get("unit", ""))
        names = [name for name in OPERATIONS if name in figure]
        if "by" in figure and not names:
            yield from self._table(key, figure)
        elif len(names) == 1 and set(figure) <= {*names, "unit"}:
            yield from self._operands(key, names[0], figure[names[0]])
        else:
            known = ", ".join(OPERATIONS)
            yield self.fault(key, f"is {figure!r}; expected by with rows, or one of {known}.")

    def _operands(self, key: str, name: str, operands: object) -> Iterator[str]:
        """Yield the faults of the terms of one operation."""
        # Two of them where their order matters; any number where it does not.
        paired = name in (*DIVIDING, "difference", "product", "share")
        if not isinstance(operands, list) or not operands or (paired and len(operands) != 2):
            count = "two" if paired else "some"
            yield self.fault(
                key, f"{name} is {operands!r}; expected a list of {count} names or numbers."
            )
            return
        for operand in operands:
            yield from self.name(key, operand, NUMBER)

    def _table(self, key: str, table: Raw) -> Iterator[str]:
        """Yield the faults of a table of figures."""
        if "rows" in table:
            faults = list(self.rows(key, table.get("by"), table["rows"], table.get("rest")))
            values = [] if faults else cells_of(table)
        else:
            values = entries_of(table.get("cells"))
            faults = list(self._sizes(key, table, len(values)))
        yield from faults
        for value in values:
            yield from self.name(key, value, self.kind_of(values[0]))

    def _sizes(self, key: str, table: Raw, cells: int) -> Iterator[str]:
        """Yield the faults of a table by a number: its ends, and one cell more than ends."""
        by = table.get("by")
        yield from self.name(key, by)
        if self.kind_of(by) == TEXT:
            yield self.fault(key, f"by is {by!r}, a text; expected rows for it.")
        ends = [table[name] for name in ROW_ENDS if isinstance(table.get(name), list)]
        for end in ends[0] if ends else ():
            yield from self.name(key, end, self.kind_of(by))
        if len(ends) != 1 or cells != len(ends[0]) + 1:
            expected = (
                "expected rows; or upto or below with ends, and cells, one more than the ends."
            )
            yield self.fault(key, expected)

    def rows(self, key: str, by: object, rows: object, rest: object) -> Iterator[str]:
        """Yield the faults of the rows of a table by one or two choices."""
        names = [by] if isinstance(by, str) else entries_of(by)
        if not names or not all(is_text(name) and self.choices.get(name) for name in names):
            yield self.fault(key, f"by is {by!r}; expected inputs with choices.")
            return
        yield from self._row(key, names, rows, rest)

    def _row(self, key: str, names: list[str], rows: object, rest: object) -> Iterator[str]:
        """Yield the faults of one level of rows, and of the levels below it."""
        if not isinstance(rows, Mapping):
            yield self.fault(key, f"is {rows!r}; expected a row for each {names[0]}.")
            return
        choices = {*self.choices[names[0]]}
        # An input that may stay empty needs a row for that too.
        if self.inputs[names[0]].get("optional"):
            choices.add(MISSING)
        for choice in rows:
            if choice not in choices:
                yield self.fault(key, f"{choice!r} is no choice of {names[0]}.")
        for choice in sorted(choices - set(rows)):
            if rest is None:
                yield self.fault(key, f"has no row for {names[0]} {choice!r}, and no rest.")
        for choice, cell in rows.items():
            if len(names) > 1:
                yield from self._row(key, names[1:], cell, rest)
            elif isinstance(cell, Mapping | list):
                yield self.fault(key, f"{choice!r} is {cell!r}; expected one cell.")
        if isinstance(rest, Mapping | list):
            yield self.fault(key, f"rest is {rest!r}; expected one cell.")

    def conditions(self, key: str, conditions: Raw) -> Iterator[str]:
        """Yield the faults of a set of conditions."""
        for name, asked in conditions.items():
            yield from self.name(key, name)
            if isinstance(asked, Mapping):
                for comparison, end in asked.items():
                    yield from self._comparison(key, name, comparison, end)
            else:
                yield from self._asked_choices(key, name, asked)

    def _comparison(self, key: str, name: str, comparison: str, end: object) -> Iterator[str]:
        """Yield the faults of one comparison: its word, and a term of the same kind."""
        kind = self.kind_of(name)
        if comparison not in COMPARISONS:
            known = ", ".join(COMPARISONS)
            yield self.fault(key, f"{comparison!r} is not known; known are {known}.")
        elif kind == TEXT and comparison != "unlike":
            yield self.fault(key, f"{name!r} is a text, which is not {comparison} anything.")
        yield from self.name(key, end, kind)

    def _asked_choices(self, key: str, name: str, asked: object) -> Iterator[str]:
        for choice in asked if isinstance(asked, list) else [asked]:
            if choice != MISSING and choice not in self.choices.get(name, ()):
                yield self.fault(key, f"{choice!r} is no choice of {name}.")

    def placeholders(self, key: str, template: object, *also: str) -> Iterator[str]:
        """Yield a fault for each placeholder whose name is not known."""
        for name in sorted(names_in_text(template or "") - {*self.known, *also}):
            known = ", ".join([*self.known, *also])
            yield self.fault(key, f"{{{name}}} is not known; known are {known}.")


def cells_of(table: Raw) -> list[object]:
    """Return every cell of a table of rows, however deep, and its rest."""
    cells, waiting = [], [table.get("rows"), *([table["rest"]] if "rest" in table else [])]
    for cell in waiting:
        if isinstance(cell, Mapping):
            waiting += cell.values()
        else:
            cells.append(cell)
    return cells
