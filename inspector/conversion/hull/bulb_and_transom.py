"""Bulb and transom in the Holtrop and Mennen regression of resistance, named as in the papers.

References
----------
Holtrop, J. and Mennen, G.G.J., "An approximate power prediction method", International Shipbuilding
Progress 29 (335), 1982.
Holtrop, J., "A statistical re-analysis of resistance and propulsion data", International
Shipbuilding Progress 31 (363), 1984.
The text was located; the exponents were confirmed on the printed examples of both papers.
"""

from math import exp, sqrt

from inspector.conversion.hull.form_coefficients import G


def c3(
    bulb_area: float, bulb_height: float, breadth: float, draught: float, draught_fore: float
) -> float:
    """Return c3, the influence of the bulb on the waves.

    Parameters
    ----------
    bulb_area : float
        Of the bulb where the waterline meets the stem [m²].
    bulb_height : float
        Of the middle of the bulb above the keel [m].
    breadth : float
        Moulded [m].
    draught : float
        Mean, moulded [m].
    draught_fore : float
        Moulded, forward [m].

    Returns
    -------
    float
        0 without a bulb.

    References
    ----------
    Holtrop and Mennen, An approximate power prediction method, 1982 (memory).
    """
    # Also keeps a hull without a bulb clear of the height of one.
    if bulb_area == 0:
        return 0.0
    return (
        0.56
        * bulb_area**1.5
        / (breadth * draught * (0.31 * sqrt(bulb_area) + draught_fore - bulb_height))
    )


def c2(c3_value: float) -> float:
    """Return c2, the reduction of wave resistance by a bulb.

    Parameters
    ----------
    c3_value : float
        c3.

    Returns
    -------
    float

    References
    ----------
    Holtrop and Mennen, An approximate power prediction method, 1982 (memory).
    """
    return exp(-1.89 * sqrt(c3_value))


def c5(transom_area: float, breadth: float, draught: float, c_m: float) -> float:
    """Return c5, the influence of a transom on the waves.

    Parameters
    ----------
    transom_area : float
        Immersed at rest [m²].
    breadth : float
        Moulded [m].
    draught : float
        Mean, moulded [m].
    c_m : float
        Midship coefficient.

    Returns
    -------
    float

    References
    ----------
    Holtrop and Mennen, An approximate power prediction method, 1982 (memory).
    """
    return 1 - 0.8 * transom_area / (breadth * draught * c_m)


def bulb_emergence(bulb_area: float, bulb_height: float, draught_fore: float) -> float:
    """Return P_B, how much the bulb emerges.

    Parameters
    ----------
    bulb_area : float
        Of the bulb where the waterline meets the stem [m²].
    bulb_height : float
        Of the middle of the bulb above the keel [m].
    draught_fore : float
        Moulded, forward [m].

    Returns
    -------
    float

    References
    ----------
    Holtrop and Mennen, An approximate power prediction method, 1982 (memory).
    """
    return 0.56 * sqrt(bulb_area) / (draught_fore - 1.5 * bulb_height)


def bulb_froude(speed: float, bulb_area: float, bulb_height: float, draught_fore: float) -> float:
    """Return Fni, the Froude number of the immersion of the bulb.

    Parameters
    ----------
    speed : float
        [m/s]
    bulb_area : float
        Of the bulb where the waterline meets the stem [m²].
    bulb_height : float
        Of the middle of the bulb above the keel [m].
    draught_fore : float
        Moulded, forward [m].

    Returns
    -------
    float

    References
    ----------
    Holtrop and Mennen, An approximate power prediction method, 1982 (memory).
    """
    return speed / sqrt(G * (draught_fore - bulb_height - 0.25 * sqrt(bulb_area)) + 0.15 * speed**2)


def transom_froude(speed: float, transom_area: float, breadth: float, c_wp: float) -> float:
    """Return FnT, the Froude number of the transom.

    Parameters
    ----------
    speed : float
        [m/s]
    transom_area : float
        Immersed at rest [m²].
    breadth : float
        Moulded [m].
    c_wp : float
        Waterplane coefficient.

    Returns
    -------
    float

    References
    ----------
    Holtrop and Mennen, An approximate power prediction method, 1982 (memory).
    """
    return speed / sqrt(2 * G * transom_area / (breadth + breadth * c_wp))


def c6(transom_froude_value: float) -> float:
    """Return c6, the pressure on an immersed transom.

    Parameters
    ----------
    transom_froude_value : float
        FnT.

    Returns
    -------
    float

    References
    ----------
    Holtrop and Mennen, An approximate power prediction method, 1982 (memory).
    """
    # From a Froude number of 5 the water leaves the transom and it is dry.
    return 0.2 * (1 - 0.2 * transom_froude_value) if transom_froude_value < 5 else 0.0
