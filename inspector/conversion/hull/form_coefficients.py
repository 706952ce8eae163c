"""Form and friction in the Holtrop and Mennen regression of resistance, named as in the papers.

References
----------
Holtrop, J. and Mennen, G.G.J., "An approximate power prediction method", International Shipbuilding
Progress 29 (335), 1982.
Holtrop, J., "A statistical re-analysis of resistance and propulsion data", International
Shipbuilding Progress 31 (363), 1984.
The text was located; the exponents were confirmed on the printed examples of both papers.
"""

from math import exp, log10, sqrt

# As in the papers, m/s².
G = 9.81


def length_of_run(length: float, c_p: float, lcb: float) -> float:
    """Return the length of run L_R.

    Parameters
    ----------
    length : float
        Of the waterline [m].
    c_p : float
        Prismatic coefficient.
    lcb : float
        Centre of buoyancy forward of midlength [% of length].

    Returns
    -------
    float
        [m]

    References
    ----------
    Holtrop and Mennen, An approximate power prediction method, 1982 (memory).
    """
    return length * (1 - c_p + 0.06 * c_p * lcb / (4 * c_p - 1))


def wetted_surface(
    length: float,
    breadth: float,
    draught: float,
    c_b: float,
    c_m: float,
    c_wp: float,
    bulb_area: float,
) -> float:
    """Return the wetted surface S of the bare hull.

    Parameters
    ----------
    length : float
        Of the waterline [m].
    breadth : float
        Moulded [m].
    draught : float
        Mean, moulded [m].
    c_b : float
        Block coefficient.
    c_m : float
        Midship coefficient.
    c_wp : float
        Waterplane coefficient.
    bulb_area : float
        Of the bulb where the waterline meets the stem [m²].

    Returns
    -------
    float
        [m²]

    References
    ----------
    Holtrop and Mennen, An approximate power prediction method, 1982 (memory).
    """
    shape = 0.453 + 0.4425 * c_b - 0.2862 * c_m - 0.003467 * breadth / draught + 0.3696 * c_wp
    return length * (2 * draught + breadth) * sqrt(c_m) * shape + 2.38 * bulb_area / c_b


def entrance_angle(
    length: float, breadth: float, volume: float, c_p: float, c_wp: float, lcb: float, run: float
) -> float:
    """Return the half angle of entrance iE.

    Parameters
    ----------
    length : float
        Of the waterline [m].
    breadth : float
        Moulded [m].
    volume : float
        Displaced [m³].
    c_p : float
        Prismatic coefficient.
    c_wp : float
        Waterplane coefficient.
    lcb : float
        Centre of buoyancy forward of midlength [% of length].
    run : float
        Length of run L_R [m].

    Returns
    -------
    float
        [deg]

    References
    ----------
    Holtrop and Mennen, An approximate power prediction method, 1982 (memory).
    The lcb term has the opposite sign of that in the form factor.
    """
    power = (
        (length / breadth) ** 0.80856 * (1 - c_wp) ** 0.30484 * (1 - c_p - 0.0225 * lcb) ** 0.6367
    )
    power *= (run / breadth) ** 0.34574 * (100 * volume / length**3) ** 0.16302
    return 1 + 89 * exp(-power)


def c12(draught_to_length: float) -> float:
    """Return c12, the influence of draught over length on the form factor.

    Parameters
    ----------
    draught_to_length : float
        T/L.

    Returns
    -------
    float

    References
    ----------
    Holtrop and Mennen, An approximate power prediction method, 1982 (memory).
    """
    if draught_to_length > 0.05:
        return draught_to_length**0.2228446
    return (
        48.20 * (draught_to_length - 0.02) ** 2.078 + 0.479948
        if draught_to_length > 0.02
        else 0.479948
    )


def form_factor_1982(
    length: float, breadth: float, draught: float, c_p: float, lcb: float, run: float, stern: float
) -> float:
    """Return the form factor 1 + k1 of the 1982 paper.

    Parameters
    ----------
    length : float
        Of the waterline [m].
    breadth : float
        Moulded [m].
    draught : float
        Mean, moulded [m].
    c_p : float
        Prismatic coefficient.
    lcb : float
        Centre of buoyancy forward of midlength [% of length].
    run : float
        Length of run L_R [m].
    stern : float
        C_stern: −25 pram with gondola, −10 V, 0 normal, +10 U with Hogner stern.

    Returns
    -------
    float

    References
    ----------
    Holtrop and Mennen, An approximate power prediction method, 1982 (memory).
    """
    fullness = (0.95 - c_p) ** -0.521448 * (1 - c_p + 0.0225 * lcb) ** 0.6906
    return (1 + 0.003 * stern) * (
        0.93 + c12(draught / length) * (breadth / run) ** 0.92497 * fullness
    )


def form_factor_1984(
    length: float,
    breadth: float,
    draught: float,
    volume: float,
    c_p: float,
    run: float,
    stern: float,
) -> float:
    """Return the form factor 1 + k1 of the 1984 paper.

    Parameters
    ----------
    length : float
        Of the waterline [m].
    breadth : float
        Moulded [m].
    draught : float
        Mean, moulded [m].
    volume : float
        Displaced [m³].
    c_p : float
        Prismatic coefficient.
    run : float
        Length of run L_R [m].
    stern : float
        C_stern: −25 pram with gondola, −10 V, 0 normal, +10 U with Hogner stern.

    Returns
    -------
    float

    References
    ----------
    Holtrop, A statistical re-analysis of resistance and propulsion data, 1984 (memory).
    """
    c14 = 1 + 0.011 * stern
    slender = (
        (breadth / length) ** 1.06806 * (draught / length) ** 0.46106 * (length / run) ** 0.121563
    )
    return (
        0.93 + 0.487118 * c14 * slender * (length**3 / volume) ** 0.36486 * (1 - c_p) ** -0.604247
    )


def friction_ittc57(reynolds: float) -> float:
    """Return the friction coefficient C_F of a flat plate.

    Parameters
    ----------
    reynolds : float
        Reynolds number of the waterline.

    Returns
    -------
    float

    References
    ----------
    ITTC 1957 model-ship correlation line (memory).
    """
    return 0.075 / (log10(reynolds) - 2) ** 2


def correlation(length: float, c_b: float, c2_value: float, draught_fore: float) -> float:
    """Return C_A, the allowance from model to ship.

    Parameters
    ----------
    length : float
        Of the waterline [m].
    c_b : float
        Block coefficient.
    c2_value : float
        c2.
    draught_fore : float
        Moulded, forward [m].

    Returns
    -------
    float

    References
    ----------
    Holtrop and Mennen, An approximate power prediction method, 1982 (memory).
    """
    c4 = min(draught_fore / length, 0.04)
    return (
        0.006 * (length + 100) ** -0.16
        - 0.00205
        + 0.003 * sqrt(length / 7.5) * c_b**4 * c2_value * (0.04 - c4)
    )
