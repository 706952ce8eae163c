"""What a naval architect needs for subdivision and damage stability, and what of it is here."""

from collections.abc import Sequence
from dataclasses import dataclass

from inspector.conversion.core.case import Case
from inspector.conversion.core.figure import Gap
from inspector.conversion.core.particulars import Row
from inspector.conversion.core.ship_particulars import HYDROSTATICS, TANKS
from inspector.conversion.ship_kind.particulars import COMPARTMENTS, CUTS, OPENINGS
from inspector.conversion.stability.booklet.booklet_tables import BY_DRAUGHT, CROSS_CURVES
from inspector.values.text import counted


@dataclass(frozen=True)
class Needed:
    """One thing that the architect needs.

    Parameters
    ----------
    name : str
    here : str
        What of it is typed; "" for nothing.
    source : str
        Where it is found.
    """

    name: str
    here: str
    source: str

    @property
    def gap(self) -> Gap | None:
        """What is missing; None where something of it is here."""
        return None if self.here else Gap(self.name, f"From {self.source}.")


def needed_by_architect(case: Case) -> tuple[Needed, ...]:
    """Return what the architect needs, with what is typed of it.

    Parameters
    ----------
    case : Case

    Returns
    -------
    tuple of Needed

    References
    ----------
    Common practice, no source: what is handed over with an order for a damage calculation.
    """
    tanks = [row for row in case.rows(TANKS) if row.number("lcg") is not None]
    booklet = case.one(HYDROSTATICS)
    return (
        Needed(
            "Watertight compartments with their bulkheads",
            _count(case.rows(COMPARTMENTS), "compartment"),
            "the general arrangement and the damage control plan",
        ),
        Needed(
            "Openings with their height and closing",
            _count(case.rows(OPENINGS), "opening"),
            "the booklet's list of openings, and a walk with a tape",
        ),
        Needed(
            "What the conversion cuts",
            _count(case.rows(CUTS), "cut"),
            "the sketch of the conversion, deck by deck",
        ),
        Needed(
            "Hydrostatics at several draughts",
            _count(case.rows(BY_DRAUGHT), "draught"),
            "the stability booklet",
        ),
        Needed("Cross curves KN", _count(case.rows(CROSS_CURVES), "row"), "the stability booklet"),
        Needed(
            "Lightship with its centre",
            "typed" if booklet.number("lightship") and booklet.number("lightship_vcg") else "",
            "the report of the inclining test",
        ),
        Needed("Tanks with their centres", _count(tanks, "tank"), "the capacity plan"),
        Needed(
            "Lines plan or a model of the hull",
            "",
            "the drawings aboard, the yard that built her, or a scan in dock",
        ),
        Needed(
            "The damage stability that was approved for her",
            "",
            "the booklet or its annex: supply vessels have one for their type",
        ),
    )


def _count(rows: Sequence[Row], word: str) -> str:
    return counted(len(rows), word) if rows else ""


@dataclass(frozen=True)
class Compartment:
    """A typed compartment and its length."""

    row: Row
    length: float | None


def compartments(case: Case) -> tuple[Compartment, ...]:
    """Return the typed compartments from aft, each with its length.

    Parameters
    ----------
    case : Case

    Returns
    -------
    tuple of Compartment
        Length [m]; None where a bulkhead has no place.

    References
    ----------
    Plain arithmetic.
    """
    found = []
    for row in case.rows(COMPARTMENTS):
        after, forward = row.number("after"), row.number("forward")
        known = after is not None and forward is not None
        found.append(Compartment(row, forward - after if known else None))
    return tuple(sorted(found, key=lambda each: each.row.number("after") or 0.0))
