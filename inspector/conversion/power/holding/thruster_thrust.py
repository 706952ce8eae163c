"""The thrust of thrusters and propellers at zero speed, by power and diameter or as measured."""

from inspector.conversion.core.bounds import within
from inspector.conversion.core.figure import Default, Figure
from inspector.conversion.core.span import Span
from inspector.conversion.power.plant_elements import Thruster
from inspector.criteria.core.source import Source
from inspector.values.quantity import Quantity, sentence

LAW = Source.recalled(
    "Thrust at zero speed by power and diameter, station-keeping standards",
    "T = K × (D × P) to the power of 2/3: K 800 open, 900 tunnel, 1200 in nozzle",
    edition="not read",
)
# kN for each kW where thrust was not measured (common practice).
PER_KILOWATT = {
    "tunnel": 0.11,
    "azimuth in nozzle": 0.16,
    "propeller in nozzle": 0.15,
    "open propeller": 0.13,
}
POWER_SPREAD = 0.15  # share by which a thrust by power alone may be off
# K of T = K (D P)^(2/3), with T in N, D in m and P in kW (from memory).
BY_DIAMETER = {
    "tunnel": 900,
    "azimuth in nozzle": 1200,
    "propeller in nozzle": 1200,
    "open propeller": 800,
}
HULL_LOSS = 0.85  # of the law's thrust, for hull, inflow and interaction
RATES = {
    kind: Default(
        f"thrust per kW, {kind}",
        rate,
        sentence(
            "{thrust} for each kW where thrust was not measured", thrust=Quantity.exact(rate, "kN")
        ),
    )
    for kind, rate in PER_KILOWATT.items()
}
LAWS = {
    kind: Default(
        f"thrust by power and diameter, {kind}",
        f"K {factor} × {HULL_LOSS}",
        "0.85 for hull, inflow and interaction",
        source=LAW,
    )
    for kind, factor in BY_DIAMETER.items()
}


def thrust_by_diameter(kind: str, power: float, diameter: float) -> float:
    """Return the nominal thrust of a unit, before any loss.

    Parameters
    ----------
    kind : str
        One of BY_DIAMETER.
    power : float
        Power at the shaft [kW].
    diameter : float
        Diameter [m].

    Returns
    -------
    float
        Thrust [kN].

    References
    ----------
    T = K (D P)^(2/3), station-keeping standards (not read, from memory).

    Examples
    --------
    >>> round(thrust_by_diameter("tunnel", 500, 1.6), 2)
    77.56
    """
    return BY_DIAMETER[kind] * (diameter * power) ** (2 / 3) / 1000


def full_thrust(unit: Thruster, sideways: bool) -> Figure:
    """Return the full thrust of a unit.

    Parameters
    ----------
    unit : Thruster
    sideways : bool
        Whether across is meant, else along.

    Returns
    -------
    Figure
        Thrust [kN]: as measured, else by power alone, and by diameter too where that is known. A
        propeller with its rudder pushes sideways only as far as its ``side`` says.

    References
    ----------
    T = K (D P)^(2/3) (from memory) with 0.85 for losses; kN per kW (both common practice, no
    source).
    """
    name = f"thrust of {unit.name}"
    # A propeller pushes sideways by its rudder alone, and no rule of thumb covers that.
    if sideways and (unit.is_propeller or unit.acts == "along"):
        side = Span.exact(unit.side or 0.0)
        return Figure(name, side, "kN", "as typed for propeller with rudder")
    # Measured on this ship, so no spread is laid around it.
    if unit.thrust is not None:
        return Figure(name, Span.exact(unit.thrust), "kN", "as measured")
    by_power, rate = PER_KILOWATT[unit.kind] * unit.rated, RATES[unit.kind]
    if unit.diameter is None:
        spread = Span.around(by_power, POWER_SPREAD)
        formula = "kN per kW, off by 15 % either way"
        return Figure(name, spread, "kN", formula, defaults=(rate,))
    by_law = HULL_LOSS * thrust_by_diameter(unit.kind, unit.rated, unit.diameter)
    # Two rules of thumb that differ show how little is known, so both are ends of the span.
    both = Span(min(by_power, by_law), by_law, max(by_power, by_law))
    formula = "K × (D × P) to the power of 2/3, × loss, and kN per kW"
    defaults = (rate, LAWS[unit.kind])
    return Figure(name, both, "kN", formula, defaults=defaults, source=LAW)


def shaft_power(thrust: float, full: float, rated: float) -> float:
    """Return the power at the shaft for less than the full thrust.

    Parameters
    ----------
    thrust : float
        Thrust [kN].
    full : float
        Full thrust [kN].
    rated : float
        Rated power [kW].

    Returns
    -------
    float
        Power [kW].

    Raises
    ------
    BadInput
        A thrust below zero or above the full thrust.

    References
    ----------
    P = P_rated (T / T_full)^1.5, propeller law at zero speed (common practice, no source).

    Examples
    --------
    >>> round(shaft_power(50.49, 77.0, 700), 1)
    371.7
    """
    # A search asks this many thousand times, so the full check runs only where it will refuse.
    if not 0 <= thrust <= full:
        within("thrust", thrust, 0, full, "kN")
    return rated * (thrust / full) ** 1.5
