"""Areas and volumes of spaces, and a plain balance of what there is against what is wanted."""

from collections.abc import Iterable
from dataclasses import dataclass

from inspector.conversion.core.bounds import (
    BadInput,
    check_ranges,
    one_of,
    or_default,
    plain,
    within,
)
from inspector.conversion.core.figure import Default
from inspector.conversion.core.span import Span
from inspector.conversion.space.cabins import HEADROOM

OPEN_DECK = "open deck"
KINDS = (OPEN_DECK, "hold", "tank", "accommodation", "machinery space", "other")
ACTS = ("given", "won", "lost")
# What becomes of a space that is given: nothing is in it, what is in it stays, or it is taken out.
FREE, KEPT, CLEARED = STATES = ("free", "kept", "cleared")
USABLE = Default(
    "share of a space inside the hull that can be used",
    Span(0.80, 0.85, 0.90),
    "Linings, structure and ducts take the rest.",
)
LIMITS = (
    "Double bottom, boundaries of fuel tanks, cofferdams, collision and machinery bulkheads stay "
    "where they are.",
    "The subdivision of the damage-stability booklet, and two ways out of every living space, "
    "limit the use.",
)


def clear_length(
    name: str, frames: float | None, pitch: float | None, length: float | None
) -> float:
    """Return the length of a space: as given, else counted frame spaces or fittings by their pitch.

    Parameters
    ----------
    name : str
        Name of the space, for refusals.
    frames : float or None
        Frame spaces or deck fittings counted [-].
    pitch : float or None
        From one to the next [m].
    length : float or None
        Length as given [m].

    Returns
    -------
    float
        Length [m].

    Raises
    ------
    BadInput
        Neither is given, or a value is not possible.

    References
    ----------
    Counting frames to measure a length: *common practice, no source*.
    """
    # A length by tape is closer than counted frames, whose pitch may change along the ship.
    if length is not None:
        return plain(f"{name}: length", length, 0, 200, "m")
    if frames is None or pitch is None:
        raise BadInput(
            f"{name}: length is missing; give it, or frames and their pitch.",
            field=f"{name}: length",
            value=length,
        )
    return plain(f"{name}: frames", frames, 0, 1000) * plain(f"{name}: pitch", pitch, 0.1, 10, "m")


def net_area(name: str, length: float, breadth: float, deducted: float = 0.0) -> float:
    """Return the area of a rectangle less what stays in it.

    Parameters
    ----------
    name : str
        Name of the space, for refusals.
    length, breadth : float
        Clear sides [m].
    deducted : float
        Area taken up by what stays in it [m²].

    Returns
    -------
    float
        Area [m²].

    Raises
    ------
    BadInput
        A side is not possible, or more is deducted than there is.

    References
    ----------
    Plain geometry.
    """
    long = plain(f"{name}: length", length, 0, 200, "m")
    whole = long * plain(f"{name}: breadth", breadth, 0, 80, "m")
    within(f"{name}: deducted", deducted, 0, whole, "m²")
    return whole - deducted


@dataclass(frozen=True)
class Space:
    """One space of the vessel.

    Parameters
    ----------
    name : str
    kind : str
        One of KINDS.
    act : str
        One of ACTS: given by the vessel, won by removal, or lost to the changes.
    area : float or None
        Net of what stays in it [m²].
    height : float or None
        Clear height [m]; None where it was not measured.
    volume : float or None
        Only where it is known by itself [m³].
    share : float or None
        Share of area and volume that can be used [-]. Where it is not given, an open deck is used
        whole and a space inside by USABLE.
    state : str or None
        One of STATES, for a space inside that is given; None where nobody said, so that none or all
        of it may be free.

    Raises
    ------
    BadInput
        A value is not possible, or neither area nor volume is given.
    """

    name: str
    kind: str
    act: str
    area: float | None = None
    height: float | None = None
    volume: float | None = None
    share: float | None = None
    state: str | None = None

    def __post_init__(self) -> None:
        one_of(f"{self.name}: kind", self.kind, KINDS)
        one_of(f"{self.name}: act", self.act, ACTS)
        if self.state is not None:
            one_of(f"{self.name}: state", self.state, STATES)
        bounds = {
            "area": (0, 20_000, "m²"),
            "height": (0, 40, "m"),
            "volume": (0, 100_000, "m³"),
            "share": (0, 1, ""),
        }
        check_ranges(self.name, self, bounds)
        # A space of no size would be in every sum as nothing, and look as if it were counted.
        if self.area is None and self.volume is None:
            raise BadInput(
                f"{self.name}: area is missing; give it, or length and breadth, or a volume.",
                field=f"{self.name}: area",
                value=None,
            )

    @property
    def is_open_deck(self) -> bool:
        """Whether it is outside, so that no lining takes a share of it."""
        return self.kind == OPEN_DECK

    @property
    def may_be_occupied(self) -> bool:
        """Whether nobody said if there is room in it."""
        return self.act == "given" and not self.is_open_deck and self.state is None

    @property
    def defaults(self) -> tuple[Default, ...]:
        """The usable share, where nobody gave it and it was used."""
        return (USABLE,) if self.share is None and not self.is_open_deck else ()

    def _usable(self, whole: float) -> Span:
        """Return what of an area [m²] or volume [m³] can be used."""
        # What is on deck was deducted from the area already, and there are no linings.
        if self.is_open_deck:
            return Span.exact(whole if self.share is None else self.share * whole)
        usable = or_default(self.share, USABLE)[0] * whole
        if self.act != "given" or self.state in (FREE, CLEARED):
            return usable
        # What is lived in already has no room for anything else.
        return Span.exact(0.0) if self.state == KEPT else Span(0.0, None, usable.high)

    @property
    def usable_area(self) -> Span | None:
        """Usable area [m²]; None where only a volume is known."""
        return None if self.area is None else self._usable(self.area)

    @property
    def usable_volume(self) -> Span | None:
        """Usable volume [m³]: as given, else area by height; None where neither is known."""
        # A volume from the capacity plan has the ship's shape in it; area by height has not.
        if self.volume is not None:
            return self._usable(self.volume)
        if self.area is None or self.height is None:
            return None
        return self._usable(self.area * self.height)

    @property
    def livable(self) -> bool | None:
        """Whether it has the headroom for cabins; None where it was not measured."""
        return None if self.height is None else self.height >= HEADROOM


@dataclass(frozen=True)
class Balance:
    """What is available against what is wanted, in one measure.

    Parameters
    ----------
    name : str
    unit : str
        "m²" or "m³".
    available : Span or None
        What there is [unit]; None where nothing was given.
    wanted : Span
        What is wanted [unit].
    """

    name: str
    unit: str
    available: Span | None
    wanted: Span

    @property
    def over(self) -> Span | None:
        """What remains [unit], minus where it falls short."""
        return None if self.available is None else self.available - self.wanted

    @property
    def short(self) -> bool | None:
        """True where it surely falls short, False where it surely does not, None else."""
        enough = None if self.over is None else self.over.at_least(0)
        # Surely short only where even the best end falls short.
        return None if enough is None else not enough


def total(spaces: Iterable[Space], measure: str) -> Span | None:
    """Return the sum of a measure over spaces: given and won are added, lost is taken off.

    Parameters
    ----------
    spaces : iterable of Space
    measure : str
        "usable_area" or "usable_volume".

    Returns
    -------
    Span or None
        The sum [m² or m³]; None where no space has that measure.

    References
    ----------
    Model of our own.
    """
    # A space without that measure is left out here; a gap of the chapter names it.
    measured = [(space.act, getattr(space, measure)) for space in spaces]
    known = [(act, amount) for act, amount in measured if amount is not None]
    if not known:
        return None
    signed = (0 - amount if act == "lost" else amount for act, amount in known)
    return sum(signed, Span.exact(0.0))
