"""Wake, thrust deduction and efficiencies of propellers behind a hull: the 1982 regressions.

The single-screw set comes out on its printed example; the twin-screw set has no printed example.
"""

from math import pi, sqrt

from inspector.conversion.core.bounds import plain
from inspector.conversion.core.span import Span
from inspector.conversion.hull.form_coefficients import G
from inspector.conversion.hull.hull_geometry import Hull
from inspector.conversion.hull.resistance import Resistance

# Air above vapour pressure at 15 °C, as in the 1982 paper, N/m².
PRESSURE = 99047


def viscous_coefficient(hull: Hull, result: Resistance) -> float:
    """Return C_V = (1 + k) C_F + C_A, with 1 + k weighted over hull and appendages.

    Parameters
    ----------
    hull : Hull
    result : Resistance
        At the speed asked for.

    Returns
    -------
    float

    References
    ----------
    Holtrop and Mennen, An approximate power prediction method, 1982 (memory).
    """
    parts = sum(part.area * part.factor for part in hull.appendages)
    form = (hull.surface * result.form_factor + parts) / (hull.surface + hull.appendage_area)
    return form * result.friction_coefficient + hull.allowance


def wake_single(hull: Hull, result: Resistance, diameter: float) -> float:
    """Return the wake fraction w of a single screw.

    Parameters
    ----------
    hull : Hull
    result : Resistance
        At the speed asked for.
    diameter : float
        Of the propeller [m].

    Returns
    -------
    float

    References
    ----------
    Holtrop and Mennen, An approximate power prediction method, 1982 (memory).
    """
    aft, c_p, c_v = hull.draught_aft, hull.c_p, viscous_coefficient(hull, result)
    # The fullness of the after body, which is what the propeller works behind.
    c_p1 = 1.45 * c_p - 0.315 - 0.0225 * hull.lcb
    c9, c11 = _c9(hull, diameter), _c11(aft / diameter)
    first = c9 * c_v * hull.length / aft * (0.0661875 + 1.21756 * c11 * c_v / (1 - c_p1))
    second = (
        0.24558 * sqrt(hull.breadth / (hull.length * (1 - c_p1)))
        - 0.09726 / (0.95 - c_p)
        + 0.11434 / (0.95 - hull.c_b)
    )
    return first + second + 0.75 * hull.stern * c_v + 0.002 * hull.stern


def _c9(hull: Hull, diameter: float) -> float:
    """Return c9 of the wake, by breadth over draught and the surface at the screw."""
    ratio = hull.breadth / hull.draught_aft
    if ratio < 5:
        c8 = hull.breadth * hull.surface / (hull.length * diameter * hull.draught_aft)
    else:
        c8 = hull.surface * (7 * ratio - 25) / (hull.length * diameter * (ratio - 3))
    return c8 if c8 < 28 else 32 - 16 / (c8 - 24)


def _c11(ratio: float) -> float:
    return ratio if ratio < 2 else 0.0833333 * ratio**3 + 1.33333


def thrust_deduction_single(hull: Hull, diameter: float) -> float:
    """Return the thrust deduction t of a single screw.

    Parameters
    ----------
    hull : Hull
    diameter : float
        Of the propeller [m].

    Returns
    -------
    float

    References
    ----------
    Holtrop and Mennen, An approximate power prediction method, 1982 (memory).
    """
    c_p1 = 1.45 * hull.c_p - 0.315 - 0.0225 * hull.lcb
    ratio = hull.breadth / hull.length
    # The paper splits here: beamy hulls follow another law.
    c10 = ratio if 1 / ratio > 5.2 else 0.25 - 0.003328402 / (ratio - 0.134615385)
    first = 0.001979 * hull.length / (hull.breadth - hull.breadth * c_p1) + 1.0585 * c10 - 0.00524
    return first - 0.1418 * diameter**2 / (hull.breadth * hull.draught) + 0.0015 * hull.stern


def wake_twin(hull: Hull, result: Resistance, diameter: float) -> float:
    """Return the wake fraction w of twin screws.

    Parameters
    ----------
    hull : Hull
    result : Resistance
        At the speed asked for.
    diameter : float
        Of the propeller [m].

    Returns
    -------
    float

    References
    ----------
    Holtrop and Mennen, An approximate power prediction method, 1982 (memory);
    not confirmed on an example.
    """
    c_v = viscous_coefficient(hull, result)
    return (
        0.3095 * hull.c_b
        + 10 * c_v * hull.c_b
        - 0.23 * diameter / sqrt(hull.breadth * hull.draught)
    )


def thrust_deduction_twin(hull: Hull, diameter: float) -> float:
    """Return the thrust deduction t of twin screws.

    Parameters
    ----------
    hull : Hull
    diameter : float
        Of the propeller [m].

    Returns
    -------
    float

    References
    ----------
    Holtrop and Mennen, An approximate power prediction method, 1982 (memory);
    not confirmed on an example.
    """
    return 0.325 * hull.c_b - 0.1885 * diameter / sqrt(hull.breadth * hull.draught)


def blade_area_ratio(
    thrust: float,
    diameter: float,
    blades: int,
    shaft_depth: float,
    screws: int = 1,
    density: float = 1025.0,
) -> float:
    """Return the blade area ratio AE/A0 that avoids cavitation.

    Parameters
    ----------
    thrust : float
        Of one screw [kN].
    diameter : float
        Of the propeller [m].
    blades : int
        2 to 7.
    shaft_depth : float
        Below the surface [m].
    screws : int
    density : float
        Of the water [kg/m³].

    Returns
    -------
    float

    Raises
    ------
    BadInput
        The number of blades cannot be meant.

    References
    ----------
    Keller's formula in Holtrop and Mennen, An approximate power prediction method, 1982 (memory).
    """
    plain("propeller: blades", blades, 2, 7)
    # Keller's constant: more margin behind a single screw, whose wake is less even.
    least = 0.2 if screws == 1 else 0.1
    return least + (1.3 + 0.3 * blades) * thrust * 1000 / (
        diameter**2 * (PRESSURE + density * G * shaft_depth)
    )


def rotative_single(hull: Hull, area_ratio: float) -> float:
    """Return the relative rotative efficiency of a single screw.

    Parameters
    ----------
    hull : Hull
    area_ratio : float
        AE/A0.

    Returns
    -------
    float
        [fraction]

    References
    ----------
    Holtrop and Mennen, An approximate power prediction method, 1982 (memory).
    """
    return 0.9922 - 0.05908 * area_ratio + 0.07424 * (hull.c_p - 0.0225 * hull.lcb)


def rotative_twin(hull: Hull, pitch_ratio: float) -> float:
    """Return the relative rotative efficiency of twin screws.

    Parameters
    ----------
    hull : Hull
    pitch_ratio : float
        P/D.

    Returns
    -------
    float
        [fraction]

    References
    ----------
    Holtrop and Mennen, An approximate power prediction method, 1982 (memory);
    not confirmed on an example.
    """
    return 0.9737 + 0.111 * (hull.c_p - 0.0225 * hull.lcb) - 0.06325 * pitch_ratio


def ideal_open_water(
    thrust: float, diameter: float, advance: float, density: float = 1025.0
) -> float:
    """Return the efficiency that no open propeller exceeds: 2 / (1 + sqrt(1 + C_T)).

    Parameters
    ----------
    thrust : float
        Of one screw [kN].
    diameter : float
        Of the propeller [m].
    advance : float
        Speed of the water into it [m/s].
    density : float
        Of the water [kg/m³].

    Returns
    -------
    float
        [fraction]

    References
    ----------
    Axial momentum of an actuator disc (common practice).
    """
    loading = thrust * 1000 / (0.5 * density * advance**2 * pi * diameter**2 / 4)
    return 2 / (1 + sqrt(1 + loading))


def quasi_propulsive(wake: float, deduction: float, rotative: float, open_water: Span) -> Span:
    """Return eta_D = eta_R eta_0 (1 − t) / (1 − w).

    Parameters
    ----------
    wake : float
        w.
    deduction : float
        t.
    rotative : float
        eta_R [fraction].
    open_water : Span
        eta_0 [fraction].

    Returns
    -------
    Span
        [fraction]

    References
    ----------
    Holtrop and Mennen, An approximate power prediction method, 1982 (memory).
    """
    return open_water * (rotative * (1 - deduction) / (1 - wake))
