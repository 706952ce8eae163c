"""What a cell of the table of checks by unit says, and which checks are told in full instead."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from inspector.assess.checked import CheckResult, Typed
from inspector.assess.model import Part
from inspector.report.reading_text import bare_value, limit_text
from inspector.report.wording import unseen_reason, was_not_seen
from inspector.values.cell_text import figure, reader_unit
from inspector.values.text import capital
from inspector.values.vocabulary import REPORTED

# Beside a source: how well its limit is known, where that is not "seen".
MARKS = {"common practice": "cp", "memory": "m", "cited by the surveyor": "own"}
_DATES = ("days",)
# Units of one system share a table where so much of the smaller one's checks are the same.
_ALIKE = 0.5


@dataclass(frozen=True)
class Row:
    """One check on several units.

    Parameters
    ----------
    results : tuple of (CheckResult or None)
        One for each unit of its group; None where the unit is not asked.
    """

    results: tuple[CheckResult | None, ...]

    @property
    def asked(self) -> list[CheckResult]:
        """The results there are."""
        return [result for result in self.results if result is not None]

    @property
    def title(self) -> str:
        """The title of the check."""
        return self.asked[0].check.title


def groups_of(units: Sequence[Part]) -> list[list[Part]]:
    """Return units in groups that are asked mostly the same, so that each group fills a table.

    Parameters
    ----------
    units : sequence of Part

    Returns
    -------
    list of list of Part
        In the order of their first units.
    """
    groups: list[tuple[set[str], list[Part]]] = []
    for unit in units:
        asked = {result.check.id for result in unit.results}
        for known, members in groups:
            least = min(len(known), len(asked))
            if least and len(known & asked) >= _ALIKE * least:
                known |= asked
                members.append(unit)
                break
        else:
            groups.append((set(asked), [unit]))
    return [members for _, members in groups]


def rows_of(units: Sequence[Part]) -> list[Row]:
    """Return a row for each check that any of these units is asked, in the checklist's order.

    Parameters
    ----------
    units : sequence of Part

    Returns
    -------
    list of Row
    """
    by_check: dict[str, dict[str, CheckResult]] = {}
    for unit in units:
        for result in unit.results:
            by_check.setdefault(result.check.id, {})[unit.id] = result
    return [Row(tuple(found.get(unit.id) for unit in units)) for found in by_check.values()]


def has_cells(row: Row) -> bool:
    """Return whether a check has a row of its own, and is not named in a line with its like.

    Parameters
    ----------
    row : Row

    Returns
    -------
    bool
        True where something was read, is not good, or differs between units.
    """
    kinds = {kind_of(result) for result in row.asked}
    if kinds & {"read", "told"}:
        return True
    # Alike on all units: a line holds it. On several units that differ a row is shorter.
    return len(row.asked) > 1 and len(kinds) > 1 and "good" in kinds


def kind_of(result: CheckResult) -> str:
    """Return how a result is told.

    Parameters
    ----------
    result : CheckResult

    Returns
    -------
    str
        "told" in full; "read", good with a reading; "good" without; "unseen", "not fitted"; "" for
        what was only offered.
    """
    if not result.fitted:
        return "not fitted"
    if is_told(result):
        return "told"
    if was_not_seen(result):
        return "unseen"
    if result.rating is None:
        return ""
    return "read" if result.readings else "good"


def is_told(result: CheckResult) -> bool:
    """Return whether a result is told in full: it is not plainly good.

    Parameters
    ----------
    result : CheckResult

    Returns
    -------
    bool
    """
    return bool(
        result.rating not in (None, "good")
        or result.disputed
        or result.overruled
        or (result.readings and result.cannot_judge)
        or (result.rating is None and result.readings)
    )


def cell_words(result: CheckResult, units: str) -> tuple[str, str]:
    """Return what a cell says beside its mark, and the unit of that.

    Parameters
    ----------
    result : CheckResult
    units : str
        "si" or "us": the reader's units.

    Returns
    -------
    tuple of (str, str)
        The value without its unit, and the unit, "" for none.
    """
    kind = kind_of(result)
    if kind == "not fitted":
        return "not fitted", ""
    if kind == "unseen":
        return unseen_reason(result), ""
    if not kind:
        return "", ""
    words, unit = _value(result, units)
    by_word = result.depth == REPORTED and result.check.proof != REPORTED
    # What somebody only said is no look, and its cell must not be taken for one.
    return (f"{words} (told)".strip() if by_word else words), unit


def _value(result: CheckResult, units: str) -> tuple[str, str]:
    """The one figure that stands for a check's readings; the other parts are in the data."""
    read = [reading for reading in result.readings if reading.text]
    judged = result.judgement
    if not read:
        return "", ""
    if len(read) == 1:
        return bare_value(read[0], units)
    if judged is not None and judged.value is not None and judged.unit not in _DATES:
        return _computed(judged.value, judged.unit or "", units)
    return bare_value(_telling(read, judged is not None and judged.unit in _DATES), units)


def _telling(read: Sequence[Typed], is_date: bool) -> Typed:
    """The reading that says most: of a service its date, else the first with a figure."""
    if is_date:
        dated = [reading for reading in read if reading.text[:4].isdigit() and "-" in reading.text]
        return (dated or read)[0]
    with_unit = [reading for reading in read if reading.unit]
    return (with_unit or read)[0]


def _computed(value: float, unit: str, units: str) -> tuple[str, str]:
    return figure(value, unit, units, with_unit=False), reader_unit(unit, units)


def limit_words(row: Row, units: str) -> str:
    """Return the limit that all units of a row share, with its direction; "" where they differ.

    Parameters
    ----------
    row : Row
    units : str

    Returns
    -------
    str
    """
    found = {limit_of(result, units) for result in row.asked if result.judgement}
    return found.pop() if len(found) == 1 else ""


def limit_of(result: CheckResult, units: str) -> str:
    """Return the limit of one reading with its direction: "≤ 5 %".

    Parameters
    ----------
    result : CheckResult
    units : str

    Returns
    -------
    str
        "" where there is none, or where it says nothing (a date has its days).
    """
    judged = result.judgement
    if judged is None or judged.limit is None or judged.unit in _DATES:
        return ""
    # A limit of nothing without a unit is a count of faults, of which the band tells.
    if not judged.limit and not judged.unit:
        return ""
    sign = ""
    if judged.margin and judged.value is not None:
        at_most = (judged.value < judged.limit) == (judged.margin > 0)
        sign = "≤ " if at_most else "≥ "
    return f"{sign}{limit_text(result, units)}"


def bare_lines(rows: Sequence[Row], names: dict[str, str]) -> Iterator[tuple[str, list[str]]]:
    """Yield what is alike of the checks without a row: a heading, and the titles.

    Parameters
    ----------
    rows : sequence of Row
    names : dict of str to str
        Id of a unit -> its short name.

    Yields
    ------
    tuple of (str, list of str)
        "Good, tested" and so on; what was not seen is listed at the back.
    """
    found: dict[str, list[str]] = {}
    for row in rows:
        by_kind: dict[str, list[CheckResult]] = {}
        for result in row.asked:
            by_kind.setdefault(_bare_heading(result), []).append(result)
        for heading, results in by_kind.items():
            if heading:
                found.setdefault(heading, []).append(_titled(row, results, names))
    yield from found.items()


def _bare_heading(result: CheckResult) -> str:
    kind = kind_of(result)
    if kind == "not fitted":
        return "Not fitted"
    if kind != "good":
        return ""
    words = {REPORTED: "from papers" if result.check.proof == REPORTED else "by word only"}
    return capital(f"good, {words.get(result.depth, result.depth)}" if result.depth else "good")


def _titled(row: Row, results: Sequence[CheckResult], names: dict[str, str]) -> str:
    """The title, with the units where it is not all of them."""
    if len(results) == len(row.asked) and (len(row.results) == len(row.asked)):
        return row.title
    units = ", ".join(names.get(result.unit, result.unit_name) for result in results)
    return f"{row.title} ({units})"


def source_mark(result: CheckResult) -> str:
    """Return how well the source of a judgement is known, in two letters; "" where it was read.

    Parameters
    ----------
    result : CheckResult

    Returns
    -------
    str
    """
    judged = result.judgement
    return MARKS.get(judged.source.mark, "") if judged and judged.source else ""


def short_names(units: Sequence[Part]) -> dict[str, str]:
    """Return names short enough for a heading: without what all of them begin with.

    Parameters
    ----------
    units : sequence of Part

    Returns
    -------
    dict of str to str
        Id of a unit -> its name, shortened where several begin alike.

    Examples
    --------
    >>> from types import SimpleNamespace as unit
    >>> short_names([unit(id="a", name="Main engine 1"), unit(id="b", name="Main engine 2")])
    {'a': 'engine 1', 'b': 'engine 2'}
    """
    words = [unit.name.split() for unit in units]
    alike = 0
    if len(words) > 1:
        least = min(len(each) for each in words)
        while alike < least - 1 and len({each[alike].lower() for each in words}) == 1:
            alike += 1
    # One of the common words stays where a bare number would be left.
    return {
        unit.id: " ".join(each[_from(each, alike) :])
        for unit, each in zip(units, words, strict=True)
    }


def _from(words: Sequence[str], alike: int) -> int:
    rest = words[alike:]
    return alike - 1 if alike and rest and rest[0][:1].isdigit() and len(rest) == 1 else alike
