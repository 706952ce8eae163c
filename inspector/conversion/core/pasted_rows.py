"""Rows of a table pasted from a spreadsheet: what was understood, before anything is taken.

A first line of headings says which column is which; a booklet that prints heels downwards and
displacements across is turned. Nothing is guessed: a column whose heading is not known is named and
left out.
"""

import re
from collections.abc import Sequence
from dataclasses import dataclass

from inspector.conversion.core.particulars import Table, cells
from inspector.values.field import Field

# More is no table of a booklet.
MOST_ROWS, MOST_CHARACTERS = 200, 50_000
# How booklets head their columns, in lower case without spaces and signs -> our name of it.
USUAL = {
    "t": "draught",
    "d": "draught",
    "draft": "draught",
    "displ": "displacement",
    "disp": "displacement",
    "displacementt": "displacement",
    "δ": "displacement",
    "kmt": "km",
    "tkm": "km",
    "maxkg": "limit_kg",
    "kgmax": "limit_kg",
    "kglimit": "limit_kg",
    "tpi": "tpc",
    "mct": "mctc",
    "mtc": "mctc",
    "mct1cm": "mctc",
    "heel": "angle",
    "v": "speed",
    "cap": "capacity",
    "volume": "capacity",
}
HEEL_WORDS = ("heel", "angle", "angleofheel")
_SIGNS = re.compile(r"[^0-9a-zδ]+")
_UNIT = re.compile(r"\([^)]*\)|\[[^\]]*\]|,\s*[^,]*$")
_HEEL = re.compile(r"^(?:kn)?(?:at)?(\d{1,2})(?:deg|°)?$")


@dataclass(frozen=True)
class Pasted:
    """What was understood of a pasted text.

    Parameters
    ----------
    columns : tuple of Field
        Those that were recognised, in the order of the text.
    rows : tuple of dict of str to str
        Column name -> as pasted, a line each.
    left_out : tuple of str
        Headings that are no column of the table.
    faults : tuple of str
        What cannot be used; with any of them nothing is taken.
    """

    columns: tuple[Field, ...] = ()
    rows: tuple[dict[str, str], ...] = ()
    left_out: tuple[str, ...] = ()
    faults: tuple[str, ...] = ()

    @property
    def can_be_taken(self) -> bool:
        """Whether there are rows and nothing is wrong with them."""
        return bool(self.rows) and not self.faults


def understood(table: Table, text: str) -> Pasted:
    """Return what a pasted text says in the columns of a table.

    Parameters
    ----------
    table : Table
    text : str
        Lines with tabs, semicolons or wide gaps between their cells, the first with headings.

    Returns
    -------
    Pasted
    """
    if len(text) > MOST_CHARACTERS:
        return Pasted(faults=(f"The text is longer than {MOST_CHARACTERS} characters.",))
    lines = [_cells(line) for line in text.splitlines() if line.strip()]
    if len(lines) < 2:
        return Pasted(faults=("Paste a line of headings and at least one line below it.",))
    if len(lines) > MOST_ROWS + 1:
        return Pasted(faults=(f"There are {len(lines) - 1} lines; {MOST_ROWS} are accepted.",))
    lines = _turned(table, lines)
    headings = [_column(table, heading) for heading in lines[0]]
    known = [found for found in headings if found is not None]
    names = [found.name for found in known]
    left_out = tuple(
        heading
        for heading, found in zip(lines[0], headings, strict=True)
        if found is None and heading
    )
    faults = _faults_of_headings(table, names)
    # What a heading lacks would be missing again in every line.
    complete = not faults
    rows = []
    for number, line in enumerate(lines[1:], 2):
        if len(line) > len(headings):
            much = f"Line {number} has {len(line)} cells"
            faults.append(f"{much}, and there are {len(headings)} headings.")
            continue
        row = {
            found.name: cell
            for found, cell in zip(headings, line, strict=False)
            if found is not None and cell
        }
        if row:
            rows.append(row)
            wrong = cells(table, row)[1] if complete else []
            faults += [f"Line {number}: {sentence}" for sentence in wrong]
    return Pasted(tuple(known), tuple(rows), left_out, tuple(faults))


def _cells(line: str) -> list[str]:
    """Return the cells of a line: by tabs, else by semicolons, else by wide gaps."""
    for mark in ("\t", ";"):
        if mark in line:
            return [cell.strip() for cell in line.split(mark)]
    return re.split(r"\s{2,}", line.strip()) if "  " in line.strip() else line.split()


def _key(heading: str) -> str:
    """Return a heading as it is compared: without spaces and signs."""
    return _SIGNS.sub("", heading.casefold())


def _bare(heading: str) -> str:
    """Return a heading as it is compared, without the unit that may end it."""
    return _key(_UNIT.sub("", heading)) or _key(heading)


def _column(table: Table, heading: str) -> Field | None:
    """Return the column that a heading means, None where it is none."""
    whole, bare = _key(heading), _bare(heading)
    if not whole:
        return None
    # A whole label before one without its end, since a comma may part a unit or a second half.
    for found in table.columns:
        if whole in (_key(found.name), _key(found.label), _key(found.label_with_unit)):
            return found
    for found in table.columns:
        if bare in (_key(found.name), _key(found.label), _bare(found.label)):
            return found
    usual = USUAL.get(bare)
    if usual is not None and table.column(usual) is not None:
        return table.column(usual)
    heel = _HEEL.match(bare)
    if heel is not None:
        return table.column(f"kn_{int(heel.group(1))}")
    starting = [found for found in table.columns if _key(found.label).startswith(bare)]
    return starting[0] if len(starting) == 1 and len(bare) > 2 else None


def _turned(table: Table, lines: Sequence[Sequence[str]]) -> list[list[str]]:
    """Return lines turned, where they have heels downwards and displacements across."""
    first = _key(lines[0][0]) if lines[0] else ""
    if table.column("kn_10") is None or first not in HEEL_WORDS:
        return [list(line) for line in lines]
    width = max(len(line) for line in lines)
    filled = [[*line, *([""] * (width - len(line)))] for line in lines]
    turned = [list(column) for column in zip(*filled, strict=True)]
    turned[0][0] = "displacement"
    return turned


def _faults_of_headings(table: Table, names: Sequence[str]) -> list[str]:
    """Return what is wrong with the headings: none known, one twice, or a needed one missing."""
    if not names:
        labels = ", ".join(found.label for found in table.columns[:6])
        return [f"No heading is a column of this table; it has {labels} and so on."]
    twice = sorted({name for name in names if names.count(name) > 1})
    faults = [f"Two headings mean {table.column(name).label}." for name in twice]
    faults += [
        f"No heading means {found.label}, which every row needs."
        for found in table.columns
        if not found.optional and found.name not in names
    ]
    return faults
