"""The tanks as typed, each once, and what they hold after the conversion.

One row serves every chapter: fuel for range, water and holding for the days on board, contents and
free surfaces for stability.
"""

from collections.abc import Iterable, Sequence

from inspector.conversion.core.particulars import Row
from inspector.values.formatting import show

REMOVED, CONVERTED = "remove", "convert"


def name_key(name: str) -> str:
    """Return a name as it is compared: case and spaces do not matter.

    Parameters
    ----------
    name : str

    Returns
    -------
    str
    """
    return " ".join(name.casefold().split())


def tanks_once(rows: Iterable[Row]) -> tuple[tuple[Row, ...], tuple[str, ...]]:
    """Return each tank once by its name, the smaller where two rows of it differ.

    Parameters
    ----------
    rows : iterable of Row
        The rows of the table of tanks.

    Returns
    -------
    tuple of (tuple of Row, tuple of str)
        The tanks by their names, and one sentence for each that is typed more than once.
    """
    kept: dict[str, Row] = {}
    faults = []
    for row in sorted(rows, key=_by_size):
        key = name_key(row.text("name"))
        if key in kept:
            counted = show(kept[key].number("capacity"), "m³")
            name = row.text("name")
            faults.append(f"{name}: this tank is typed more than once; {counted} count.")
        else:
            kept[key] = row
    return tuple(kept[key] for key in sorted(kept)), tuple(faults)


def _by_size(row: Row) -> tuple[float, str]:
    """Return the order in which rows of one tank count, whatever the order of typing."""
    return row.number("capacity") or 0.0, repr(sorted(row.values.items(), key=str))


def holds_after(tank: Row) -> str:
    """Return what a tank holds after the conversion.

    Parameters
    ----------
    tank : Row

    Returns
    -------
    str
        One of TANK_KINDS; "" where it is removed, or nobody said what it will hold.
    """
    if tank["plan"] == REMOVED:
        return ""
    return tank.text("becomes" if tank["plan"] == CONVERTED else "kind")


def capacity_after(tanks: Sequence[Row], kind: str) -> float | None:
    """Return the capacity of all tanks that hold one thing after the conversion.

    Parameters
    ----------
    tanks : sequence of Row
        Each tank once.
    kind : str
        One of TANK_KINDS.

    Returns
    -------
    float or None
        Capacity [m³]; None where no tank holds it now or after, so that nobody typed them.
    """
    # A kind that all of its tanks lose is nothing, and not unknown.
    named = [tank for tank in tanks if kind in (tank.text("kind"), holds_after(tank))]
    if not named:
        return None
    return sum(tank.number("capacity") for tank in named if holds_after(tank) == kind)
