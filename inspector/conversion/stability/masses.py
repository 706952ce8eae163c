"""Masses of plate by area, pipe by length and contents by volume, or as given."""

from math import pi

from inspector.conversion.core.bounds import one_of, or_default, plain, within
from inspector.conversion.core.figure import Default, Figure
from inspector.conversion.core.span import Span
from inspector.criteria.core.source import Source
from inspector.values.quantity import Quantity, sentence

STEEL_DENSITY = 7850.0  # kg/m³
B3610 = Source.seen(
    "ASME B36.10, welded and seamless wrought steel pipe",
    "edition not read, NPS 4 seen",
    "outside diameter and wall by schedule",
)
PLATE_MASS = Source.common_practice(
    "Mass of steel plate", "7.85 kg per m² and mm", edition="7850 kg/m³"
)
STIFFENERS = Default(
    "added to plate for stiffeners, brackets and welds",
    Span(20.0, 25.0, 30.0),
    "Usual for stiffened panels without drawings.",
    unit="%",
)
FITTINGS = Default(
    "added to pipe for fittings, flanges and supports",
    Span(20.0, 25.0, 40.0),
    "Usual for pipe systems without drawings.",
    unit="%",
)
# What a mass is known from -> how far it may be off, in % of itself (common practice).
BASES = {"weighed": 2, "drawing": 5, "computed": 10, "rule of thumb": 30}
NO_BASIS = Default(
    "how far a mass may be off where its basis is not given",
    30.0,
    "It is taken as a rule of thumb.",
    unit="%",
)
# Nominal size and schedule -> outside diameter and wall, mm.
PIPES = {
    "1 in, schedule 40": (33.4, 3.38),
    "2 in, schedule 40": (60.3, 3.91),
    "2 in, schedule 80": (60.3, 5.54),
    "3 in, schedule 40": (88.9, 5.49),
    "4 in, schedule 40": (114.3, 6.02),
    "4 in, schedule 80": (114.3, 8.56),
    "5 in, schedule 40": (141.3, 6.55),
    "6 in, schedule 40": (168.3, 7.11),
    "6 in, schedule 80": (168.3, 10.97),
    "8 in, schedule 40": (219.1, 8.18),
    "8 in, schedule 80": (219.1, 12.70),
    "10 in, schedule 40": (273.0, 9.27),
    "12 in, standard wall": (323.8, 9.53),
}


def plate_unit_mass(thickness: float, density: float = STEEL_DENSITY) -> float:
    """Return the mass of a plate for each square metre.

    Parameters
    ----------
    thickness : float
        Thickness [mm].
    density : float
        Density of the material [kg/m³].

    Returns
    -------
    float
        Mass [kg/m²].

    Raises
    ------
    BadInput
        A value outside what a plate can have.

    References
    ----------
    Plain geometry; steel of 7850 kg/m³ (common practice, no source).

    Examples
    --------
    >>> plate_unit_mass(10)
    78.5
    """
    plain("plate: density", density, 1000, 20_000, "kg/m³")
    return plain("plate: thickness", thickness, 0.5, 300, "mm") * density / 1000


def pipe_unit_mass(size: str) -> float:
    """Return the mass of bare steel pipe for each metre.

    Parameters
    ----------
    size : str
        Nominal size and schedule, one of PIPES.

    Returns
    -------
    float
        Mass [kg/m], π t (D − t) at 7850 kg/m³.

    Raises
    ------
    BadInput
        The size is not in PIPES.

    References
    ----------
    ASME B36.10, outside diameters and walls (edition not read, NPS 4 seen).
    """
    outside, wall = PIPES[one_of("pipe: size and schedule", size, tuple(PIPES))]
    return pi * wall * (outside - wall) * STEEL_DENSITY / 1e6


def plate_mass(
    name: str, area: float | Span, thickness: float, extra: float | Span | None = None
) -> Figure:
    """Return the mass of a stiffened steel plate.

    Parameters
    ----------
    name : str
        What the plate is.
    area : float or Span
        Area of one side [m²].
    thickness : float
        Thickness [mm].
    extra : float or Span, optional
        Addition for stiffeners, brackets and welds [%]; without it, 20 to 30 % is a listed default.

    Returns
    -------
    Figure
        Mass [t].

    Raises
    ------
    BadInput
        A value outside what a plate can have; the field is named.

    References
    ----------
    7.85 kg per m² and mm of steel; addition for stiffeners (both common practice, no source).
    """
    share, defaults = _with_addition(name, extra, STIFFENERS)
    square_metres = within(f"{name}: area", area, 0, 100_000, "m²")
    # Drawings give the area of plate only; frames, brackets and welds come on top of it.
    bare = square_metres * plate_unit_mass(thickness) / 1000
    mass = bare * share
    formula = "area × thickness × 7.85 × (1 + addition)"
    return Figure(name, mass, "t", formula, (), defaults, (), PLATE_MASS)


def pipe_mass(
    name: str, length: float | Span, size: str, extra: float | Span | None = None
) -> Figure:
    """Return the mass of an empty run of steel pipe.

    Parameters
    ----------
    name : str
        What the pipe is.
    length : float or Span
        Length of the run [m].
    size : str
        Nominal size and schedule, one of PIPES.
    extra : float or Span, optional
        Addition for fittings, flanges and supports [%]; without it, 20 to 40 % is a listed default.

    Returns
    -------
    Figure
        Mass [t].

    Raises
    ------
    BadInput
        A value that no pipe can have; the field is named.

    References
    ----------
    ASME B36.10 (edition not read, NPS 4 seen); addition for fittings (common practice, no source).
    """
    share, defaults = _with_addition(name, extra, FITTINGS)
    metres = within(f"{name}: length", length, 0, 100_000, "m")
    bare = metres * pipe_unit_mass(size) / 1000
    mass = bare * share
    formula = "length × kg/m of its size × (1 + addition)"
    assumption = f"{name}: the pipe is taken as empty."
    return Figure(name, mass, "t", formula, (assumption,), defaults, (), B3610)


def _with_addition(
    name: str, extra: float | Span | None, default: Default
) -> tuple[Span, tuple[Default, ...]]:
    """Return the factor of an addition [%] on the bare mass, with the default if it was used."""
    addition, defaults = or_default(extra, default)
    within(f"{name}: addition", addition, 0, 200, "%")
    return 1 + addition / 100, defaults


def contents_mass(name: str, volume: float | Span, density: float | Span) -> Figure:
    """Return the mass of what a tank or hold contains.

    Parameters
    ----------
    name : str
        What the contents are.
    volume : float or Span
        Volume [m³].
    density : float or Span
        Density as it is aboard [kg/m³].

    Returns
    -------
    Figure
        Mass [t].

    Raises
    ------
    BadInput
        A value that no contents can have; the field is named.

    References
    ----------
    Volume × density, plain mechanics.
    """
    # No default density: mud and fuel differ threefold, and the surveyor knows which it was.
    cubic_metres = within(f"{name}: volume", volume, 0, 20_000, "m³")
    mass = cubic_metres * within(f"{name}: density", density, 300, 4000, "kg/m³") / 1000
    return Figure(name, mass, "t", "volume × density")


def given_mass(name: str, mass: float | Span, basis: str | None = None) -> Figure:
    """Return a mass as given, widened by what it is known from.

    Parameters
    ----------
    name : str
        What has the mass.
    mass : float or Span
        Mass [t].
    basis : str, optional
        One of BASES; without it the mass counts as a rule of thumb, which is a listed default.

    Returns
    -------
    Figure
        Mass [t].

    Raises
    ------
    BadInput
        The mass cannot be, or the basis is not one of BASES.

    References
    ----------
    Spreads of 2, 5, 10 and 30 % (common practice, no source).
    """
    given = within(f"{name}: mass", mass, 0, 100_000, "t")
    if basis is not None:
        one_of(f"{name}: basis", basis, tuple(BASES))
    # A mass of unknown origin is trusted no further than a rule of thumb.
    percent, defaults = (BASES[basis], ()) if basis else (NO_BASIS.value, (NO_BASIS,))
    share = percent / 100
    formula = sentence(
        "as given, ± {spread} ({basis})",
        spread=Quantity.exact(percent, "%"),
        basis=basis or "basis not given",
    )
    return Figure(name, given * Span(1 - share, 1, 1 + share), "t", formula, (), defaults)
