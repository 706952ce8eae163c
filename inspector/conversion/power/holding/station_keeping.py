"""Wind and current on a hull that keeps station. A screen, not a capability plot.

Static balance only: no sea, no dynamics; waves are a share on top. Forces in kN, speeds in m/s,
positions in m from midship, forward is plus.
"""

from dataclasses import dataclass

from inspector.conversion.core.bounds import check_ranges, or_default
from inspector.conversion.core.figure import Default
from inspector.conversion.core.span import Span
from inspector.conversion.power.holding.steady_forces import (
    Force,
    Forces,
    current_force,
    wind_force,
)
from inspector.criteria.core.source import Source
from inspector.values.units import convert

FASTEST = 100.0  # m/s, where the search for the wind ends
SCREEN = Source.common_practice(
    "Static balance of wind and current, by plain mechanics",
    "0.5 × density × coefficient × area × speed²",
    edition="no edition",
)
# Spans, since nobody on board knows a coefficient: the ends go through to the wind that is
# withstood.
WIND_BEAM = Default("wind coefficient on the beam", Span(0.8, 0.9, 1.0), "usual for such a screen")
WIND_HEAD = Default("wind coefficient from ahead", Span(0.6, 0.7, 0.8), "usual for such a screen")
CURRENT_BEAM = Default(
    "current coefficient on the beam", Span(0.6, 0.7, 1.0), "usual for such a screen"
)
CURRENT_HEAD = Default(
    "current coefficient from ahead", Span(0.05, 0.10, 0.15), "usual for such a screen"
)
CURRENT = Default(
    "current",
    Span.exact(1.0),
    "what such a screen mostly takes where no place was named",
    unit="kn",
)
WAVES = Default(
    "waves, on top of wind and current", 1.25, "25 % of their sum; waves are not calculated"
)
WIND_CENTRE = Default(
    "centre of the side wind area, forward of midship", 0.05, "share of the length: house forward"
)
DRIVE = Default("efficiency of a thruster's electric drive", 0.92, "motor and drive together")


@dataclass(frozen=True)
class Exposure:
    """A hull in wind and current; coefficients, waves, x_wind and current take listed defaults.

    Parameters
    ----------
    length, draught : float
        At the waterline [m].
    lateral : float
        Side area in the wind [m²].
    frontal : float, optional
        Frontal area in the wind [m²]; without it there is no force from ahead.
    breadth : float, optional
        Breadth [m]; without it there is no force from ahead.
    x_wind : float, optional
        Centre of the side wind area, forward of midship [m].
    x_current : float
        Centre of the side area under water, forward of midship [m].
    current : float, optional
        Current [m/s].
    wind_beam, wind_head, current_beam, current_head : float, optional
        Coefficients.
    waves : float, optional
        Factor for waves.

    Raises
    ------
    BadInput
        A value that no hull can have; the field is named.
    """

    length: float
    draught: float
    lateral: float
    frontal: float | None = None
    breadth: float | None = None
    x_wind: float | None = None
    x_current: float = 0.0
    current: float | None = None
    wind_beam: float | None = None
    wind_head: float | None = None
    current_beam: float | None = None
    current_head: float | None = None
    waves: float | None = None

    def __post_init__(self) -> None:
        coefficients = ("wind_beam", "wind_head", "current_beam", "current_head")
        ranges = {
            "length": (5, 400, "m"),
            "draught": (0.5, 30, "m"),
            "lateral": (1, 20_000, "m²"),
            "frontal": (1, 5000, "m²"),
            "breadth": (2, 80, "m"),
            "x_wind": (-200, 200, "m"),
            "x_current": (-200, 200, "m"),
            "current": (0, 6, "m/s"),
            "waves": (1, 2, ""),
            **dict.fromkeys(coefficients, (0.01, 3, "")),
        }
        check_ranges("exposure", self, ranges)


def beam_forces(exposure: Exposure) -> tuple[Forces, tuple[Default, ...]]:
    """Return the forces on the beam, and the defaults that they depend on.

    Parameters
    ----------
    exposure : Exposure

    Returns
    -------
    tuple of (tuple of Force, tuple of Default)

    Raises
    ------
    BadInput
        A value that cannot be; the field is named.

    References
    ----------
    Static balance of wind and current, plain mechanics; coefficients (common practice, no source).
    """
    centre, assumed = exposure.x_wind, ()
    if centre is None:
        centre, assumed = WIND_CENTRE.value * exposure.length, (WIND_CENTRE,)
    wind, wind_defaults = or_default(exposure.wind_beam, WIND_BEAM)
    current, current_defaults = or_default(exposure.current_beam, CURRENT_BEAM)
    forces, defaults = _forces(
        exposure,
        (wind, exposure.lateral, centre),
        (current, exposure.length * exposure.draught, exposure.x_current),
    )
    return forces, (*wind_defaults, *current_defaults, *defaults, *assumed)


def head_forces(exposure: Exposure) -> tuple[Forces, tuple[Default, ...]] | None:
    """Return the forces from ahead, and the defaults that they depend on.

    Parameters
    ----------
    exposure : Exposure

    Returns
    -------
    tuple of (tuple of Force, tuple of Default) or None
        None where the frontal area or the breadth is not known.

    Raises
    ------
    BadInput
        A value that cannot be; the field is named.

    References
    ----------
    Static balance of wind and current, plain mechanics; coefficients (common practice, no source).
    """
    # From ahead it is another question, which may stay open while the beam is answered.
    if exposure.frontal is None or exposure.breadth is None:
        return None
    wind, wind_defaults = or_default(exposure.wind_head, WIND_HEAD)
    current, current_defaults = or_default(exposure.current_head, CURRENT_HEAD)
    forces, defaults = _forces(
        exposure,
        (wind, exposure.frontal, 0.0),
        (current, exposure.breadth * exposure.draught, 0.0),
    )
    return forces, (*wind_defaults, *current_defaults, *defaults)


# A coefficient, the area it applies to [m²], and where the force acts [m].
_Side = tuple[Span, float, float]


def _forces(exposure: Exposure, wind: _Side, current: _Side) -> tuple[Forces, tuple[Default, ...]]:
    """Return least, likely and greatest force of one side, with the defaults in them."""
    waves, wave_defaults = or_default(exposure.waves, WAVES)
    speed, speed_defaults = exposure.current, ()
    if speed is None:
        speed, speed_defaults = convert(CURRENT.value.point, "kn", "m/s"), (CURRENT,)
    wind_coefficient, wind_area, x_wind = wind
    current_coefficient, current_area, x_current = current
    forces = []
    for end in ("low", "point", "high"):
        # At 1 m/s: the force grows with the square, so any wind follows from it.
        by_wind = wind_force(getattr(wind_coefficient, end), wind_area, 1.0)
        by_current = current_force(getattr(current_coefficient, end), current_area, speed)
        forces.append(Force(by_wind, by_current, x_wind, x_current, waves.middle))
    return tuple(forces), (*wave_defaults, *speed_defaults)
