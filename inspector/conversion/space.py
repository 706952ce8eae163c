"""Space: areas and volumes from frames, breadth and height, and a plain balance of what a vessel gives against what the brief wants to put there."""

from collections.abc import Iterable
from dataclasses import dataclass

from inspector.conversion.cabins import HEADROOM
from inspector.conversion.inputs import PRACTICE, BadInput, one_of, or_default, plain, within
from inspector.conversion.shapes import Default, Span

KINDS = ("open deck", "hold", "tank", "accommodation", "machinery space", "other")
ACTS = ("given", "won", "lost")
USABLE = Default("share of a space inside the hull that can be used", Span(0.80, 0.85, 0.90), "", "Linings, structure and ducts take the rest.", PRACTICE)
LIMITS = (
    "Double bottom, boundaries of fuel tanks, cofferdams, collision and machinery bulkheads stay where they are.",
    "The subdivision of the damage-stability booklet, and two ways out of every living space, limit the use.",
)


def length_of(name: str, frames: float | None, pitch: float | None, length: float | None) -> float:
    """Length [m]: as given, else so many frame spaces or deck fittings times their pitch [m]. BadInput where neither can be told."""
    if length is not None:
        return plain(f"{name}: length", length, 0, 200, "m")
    if frames is None or pitch is None:
        raise BadInput(f"{name}: length is missing; give it, or frames and their pitch.", field=f"{name}: length", value=length)
    return plain(f"{name}: frames", frames, 0, 1000) * plain(f"{name}: pitch", pitch, 0.1, 10, "m")


@dataclass(frozen=True)
class Space:
    """One space. area [m²] net of what stands in it; height [m] clear, None unknown; volume [m³] only where it is known by itself.

    share: of area and volume that can be used (None: not told, USABLE inside; an open deck is used whole).
    """

    name: str
    kind: str
    act: str
    area: float | None = None
    height: float | None = None
    volume: float | None = None
    share: float | None = None

    def __post_init__(self) -> None:
        one_of(f"{self.name}: kind", self.kind, KINDS)
        one_of(f"{self.name}: act", self.act, ACTS)
        for field, high, unit in (("area", 20_000, "m²"), ("height", 40, "m"), ("volume", 100_000, "m³"), ("share", 1, "")):
            if getattr(self, field) is not None:
                plain(f"{self.name}: {field}", getattr(self, field), 0, high, unit)
        if self.area is None and self.volume is None:
            raise BadInput(f"{self.name}: area is missing; give it, or length and breadth, or a volume.", field=f"{self.name}: area", value=None)

    @property
    def defaults(self) -> tuple[Default, ...]:
        return (USABLE,) if self.share is None and self.kind != "open deck" else ()

    def _usable(self, whole: float) -> Span:
        if self.kind == "open deck" and self.share is None:
            return Span.exact(whole)
        return or_default(self.share, USABLE)[0] * whole

    @property
    def usable_area(self) -> Span | None:
        """m², None where only a volume is known."""
        return None if self.area is None else self._usable(self.area)

    @property
    def usable_volume(self) -> Span | None:
        """m³: as given, else area by height; None where neither can be told."""
        whole = self.volume if self.volume is not None else None if self.area is None or self.height is None else self.area * self.height
        return None if whole is None else self._usable(whole)

    @property
    def livable(self) -> bool | None:
        """Whether it has the headroom for cabins, else it is for stores and technical rooms only; None where it was not measured."""
        return None if self.height is None else self.height >= HEADROOM


def rectangle(name: str, length: float, breadth: float, deducted: float = 0.0) -> float:
    """Net area [m²] of length by breadth [m] less what stands in it [m²]; BadInput where nothing is left."""
    gross = plain(f"{name}: length", length, 0, 200, "m") * plain(f"{name}: breadth", breadth, 0, 80, "m")
    within(f"{name}: deducted", deducted, 0, gross, "m²")
    return gross - deducted


@dataclass(frozen=True)
class Balance:
    """What there is against what is wanted, of one measure in one unit; None where nothing was given."""

    name: str
    unit: str
    there: Span | None
    wanted: Span

    @property
    def over(self) -> Span | None:
        """What is left, minus where it falls short."""
        return None if self.there is None else self.there - self.wanted

    @property
    def short(self) -> bool | None:
        """True where it surely falls short, False where it surely does not, None where that is not known."""
        enough = None if self.over is None else self.over.at_least(0)
        return None if enough is None else not enough


def summed(spaces: Iterable[Space], measure: str) -> Span | None:
    """Sum of "usable_area" or "usable_volume": given and won count, lost is taken off; None where no space tells it."""
    told = [(one.act, getattr(one, measure)) for one in spaces if getattr(one, measure) is not None]
    if not told:
        return None
    return sum((0 - amount if act == "lost" else amount for act, amount in told), Span.exact(0.0))
