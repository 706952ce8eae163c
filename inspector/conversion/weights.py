"""Weights that come off and go on: steel by area and thickness, pipe by its row of the standard, liquids by volume, and where the centre goes.

Masses are spans in tonnes; a centre that is not known may lie anywhere in the vessel, and a common centre is bounded exactly.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from functools import cached_property
from math import pi

from inspector.conversion.inputs import PRACTICE, BadInput, one_of, or_default, plain, within
from inspector.conversion.shapes import Default, Figure, Span, span
from inspector.criteria.source import Source

STEEL = 7850.0  # kg/m³
ACTS = ("off", "on")
PARTS = ("lightship", "deadweight")
B3610 = Source("ASME B36.10, welded and seamless wrought steel pipe", "edition not read, NPS 4 seen", "outside diameter and wall by schedule", "seen")
PLATE_MASS = Source("Mass of steel plate", "7850 kg/m³", "7.85 kg per m² and mm", "common practice")
STIFFENERS = Default("added to plate for stiffeners, brackets and welds", Span(20.0, 25.0, 30.0), "%", "Usual for stiffened panels without drawings.", PRACTICE)
FITTINGS = Default("added to pipe for fittings, flanges and supports", Span(20.0, 25.0, 40.0), "%", "Usual for pipe systems without drawings.", PRACTICE)
# how far a mass may be off, by what it rests on [share]
BASES = {"weighed": 0.02, "drawing": 0.05, "computed": 0.10, "rule of thumb": 0.30}
NO_BASIS = Default("how far a mass may be off where its basis is not told", 30.0, "%", "It is taken as a rule of thumb.", PRACTICE)
# nominal size and schedule -> outside diameter, wall [mm]
PIPES = {
    "1 in, schedule 40": (33.4, 3.38), "2 in, schedule 40": (60.3, 3.91), "2 in, schedule 80": (60.3, 5.54), "3 in, schedule 40": (88.9, 5.49),
    "4 in, schedule 40": (114.3, 6.02), "4 in, schedule 80": (114.3, 8.56), "5 in, schedule 40": (141.3, 6.55), "6 in, schedule 40": (168.3, 7.11),
    "6 in, schedule 80": (168.3, 10.97), "8 in, schedule 40": (219.1, 8.18), "8 in, schedule 80": (219.1, 12.70), "10 in, schedule 40": (273.0, 9.27),
    "12 in, standard wall": (323.8, 9.53),
}


def plate_unit_mass(thickness: float, density: float = STEEL) -> float:
    """Mass of a plate [kg/m²] of a thickness [mm] and a density [kg/m³].

    Examples
    --------
    >>> plate_unit_mass(10)
    78.5
    """
    plain("plate: density", density, 1000, 20_000, "kg/m³")
    return plain("plate: thickness", thickness, 0.5, 300, "mm") * density / 1000


def pipe_unit_mass(pipe: str) -> float:
    """Mass of bare steel pipe [kg/m] of a row of PIPES: π t (D - t) at 7850 kg/m³. ASME B36.10."""
    outside, wall = PIPES[one_of("pipe: size and schedule", pipe, tuple(PIPES))]
    return pi * wall * (outside - wall) * STEEL / 1e6


def plate(name: str, area: float | Span, thickness: float, extra: float | Span | None = None) -> Figure:
    """Steel by area [m²] and thickness [mm], with an addition [%] for stiffeners (default 20 to 30): mass [t]."""
    added, defaults = or_default(extra, STIFFENERS)
    within(f"{name}: addition", added, 0, 200, "%")
    mass = within(f"{name}: area", area, 0, 100_000, "m²") * plate_unit_mass(thickness) / 1000 * (1 + added / 100)
    return Figure(name, mass, "t", "area x thickness x 7.85 x (1 + addition)", (), defaults, (), PLATE_MASS)


def pipe(name: str, length: float | Span, size: str, extra: float | Span | None = None) -> Figure:
    """Empty steel pipe by length [m] and row of PIPES, with an addition [%] for fittings (default 20 to 40): mass [t]."""
    added, defaults = or_default(extra, FITTINGS)
    within(f"{name}: addition", added, 0, 200, "%")
    mass = within(f"{name}: length", length, 0, 100_000, "m") * pipe_unit_mass(size) / 1000 * (1 + added / 100)
    return Figure(name, mass, "t", "length x kg/m of its row x (1 + addition)", (f"{name}: pipe reckoned empty.",), defaults, (), B3610)


def contents(name: str, volume: float | Span, density: float | Span) -> Figure:
    """What stands in a tank: volume [m³] and density [kg/m³] as it is: mass [t]."""
    mass = within(f"{name}: volume", volume, 0, 20_000, "m³") * within(f"{name}: density", density, 300, 4000, "kg/m³") / 1000
    return Figure(name, mass, "t", "volume x density")


def stated(name: str, mass: float | Span, basis: str | None = None) -> Figure:
    """A mass [t] as given, spread by what it rests on (one of BASES; not told counts as a rule of thumb)."""
    given = within(f"{name}: mass", mass, 0, 100_000, "t")
    if basis is not None:
        one_of(f"{name}: basis", basis, tuple(BASES))
    share, defaults = (BASES[basis], ()) if basis else (NO_BASIS.value / 100, (NO_BASIS,))
    return Figure(name, given * Span(1 - share, 1, 1 + share), "t", f"as given, ± {share * 100:.0f} % ({basis or 'basis not told'})", (), defaults)


@dataclass(frozen=True)
class Weight:
    """One weight off or on. mass [t]; lcg [m from the after perpendicular, forward is plus], tcg [m, starboard is plus], vcg [m above keel]; None: unknown.

    Raises BadInput, with the field, for what cannot be.
    """

    name: str
    act: str
    mass: Span
    lcg: float | None = None
    tcg: float | None = None
    vcg: float | None = None
    part: str = "lightship"

    def __post_init__(self) -> None:
        one_of(f"{self.name}: act", self.act, ACTS)
        one_of(f"{self.name}: part of", self.part, PARTS)
        within(f"{self.name}: mass", self.mass, 0, 100_000, "t")
        for field, low, high in (("lcg", -200, 200), ("tcg", -50, 50), ("vcg", -5, 80)):
            if getattr(self, field) is not None:
                plain(f"{self.name}: {field}", getattr(self, field), low, high, "m")

    @cached_property
    def change(self) -> Span:
        """Mass added [t], minus where it comes off."""
        return self.mass if self.act == "on" else 0 - self.mass


def total(weights: Iterable[Weight]) -> Span:
    """The mass added by all weights [t].

    Errors
    ------
    BadInput : there is none.
    """
    weights = tuple(weights)
    if not weights:
        raise BadInput("Weights: there is none, so no change can be told; enter what comes off and what goes on.", field="weights", value=())
    return sum((one.change for one in weights), Span.exact(0.0))


def centre(mass: float, at: float, weights: Iterable[Weight], axis: str, anywhere: Span) -> Span:
    """Where the common centre comes [m] along an axis ("lcg", "tcg" or "vcg") when weights change a mass [t] that has its centre at `at` [m].

    A weight of unknown centre lies somewhere in `anywhere` [m]. The ends are the least and greatest that any masses and
    centres within their spans give; the point is known only where every part's is.

    Errors
    ------
    BadInput : nothing would be left afloat.
    """
    weights = tuple(weights)
    parts = [(one.change, anywhere if getattr(one, axis) is None else Span.exact(getattr(one, axis))) for one in weights]
    if mass + sum(change.low for change, _ in parts) <= 0:
        raise BadInput(f"Weights: {mass:g} t less what comes off leaves nothing; check the displacement and the weights.", field="weights", value=mass)
    low, high = (_extreme(mass, at, parts, greatest) for greatest in (False, True))
    if any(change.point is None or where.point is None for change, where in parts):
        return Span(low, None, high)
    point = _common(mass, at, [(change.point, where.point) for change, where in parts])
    return Span(min(low, point), point, max(high, point))


def _common(mass: float, at: float, parts: list[tuple[float, float]]) -> float:
    return (mass * at + sum(change * where for change, where in parts)) / (mass + sum(change for change, _ in parts))


def _extreme(mass: float, at: float, parts: list[tuple[Span, Span]], greatest: bool) -> float:
    """A quotient of linear forms has its extremes at corners, and each step to the best corner for the present value gains, until none does."""
    best, sign = at, 1 if greatest else -1
    for _ in range(60):
        corner = [max(((change, where) for change in (one.low, one.high) for where in (place.low, place.high)),
                      key=lambda pair: sign * pair[0] * (pair[1] - best)) for one, place in parts]
        value = _common(mass, at, corner)
        if abs(value - best) <= 1e-13 * max(1.0, abs(value)):
            break
        best = value
    return value


def raised_by(mass: float, kg: float, weight: Weight) -> Span | None:
    """How far one weight alone moves the common centre up [m] of a vessel of a mass [t] and centre kg [m]; None where its centre is unknown."""
    if weight.vcg is None:
        return None
    return centre(mass, kg, (weight,), "vcg", span(weight.vcg)) - kg


def of_lightship(weights: Iterable[Weight]) -> tuple[Weight, ...]:
    """The weights that change the lightship; contents of tanks and stores are deadweight."""
    return tuple(one for one in weights if one.part == "lightship")
