"""Wave making in the Holtrop and Mennen regression of resistance, named as in the papers.

References
----------
Holtrop, J. and Mennen, G.G.J., "An approximate power prediction method", International Shipbuilding
Progress 29 (335), 1982.
Holtrop, J., "A statistical re-analysis of resistance and propulsion data", International
Shipbuilding Progress 31 (363), 1984.
The text was located; the exponents were confirmed on the printed examples of both papers.
"""

from math import cos, exp


def c7(breadth_to_length: float) -> float:
    """Return c7, the influence of breadth over length on the waves.

    Parameters
    ----------
    breadth_to_length : float
        B/L.

    Returns
    -------
    float

    References
    ----------
    Holtrop and Mennen, An approximate power prediction method, 1982 (memory).
    """
    if breadth_to_length < 0.11:
        return 0.229577 * breadth_to_length**0.33333
    return breadth_to_length if breadth_to_length <= 0.25 else 0.5 - 0.0625 / breadth_to_length


def c1(breadth_to_length: float, draught_to_breadth: float, angle: float) -> float:
    """Return c1, the size of the wave resistance at low speed.

    Parameters
    ----------
    breadth_to_length : float
        B/L.
    draught_to_breadth : float
        T/B.
    angle : float
        Half angle of entrance iE [deg].

    Returns
    -------
    float

    References
    ----------
    Holtrop and Mennen, An approximate power prediction method, 1982 (memory).
    """
    return (
        2223105
        * c7(breadth_to_length) ** 3.78613
        * draught_to_breadth**1.07961
        * (90 - angle) ** -1.37565
    )


def wave_length(c_p: float, length_to_breadth: float) -> float:
    """Return lambda, the length of the waves that the hull makes.

    Parameters
    ----------
    c_p : float
        Prismatic coefficient.
    length_to_breadth : float
        L/B.

    Returns
    -------
    float

    References
    ----------
    Holtrop and Mennen, An approximate power prediction method, 1982 (memory).
    """
    return 1.446 * c_p - (0.03 * length_to_breadth if length_to_breadth < 12 else 0.36)


def c15(length: float, volume: float) -> float:
    """Return c15, the influence of slenderness on the humps of the wave resistance.

    Parameters
    ----------
    length : float
        Of the waterline [m].
    volume : float
        Displaced [m³].

    Returns
    -------
    float

    References
    ----------
    Holtrop and Mennen, An approximate power prediction method, 1982 (memory).
    It is negative, although the paper prints its example positive: only so does the example come
    out.
    """
    # Between 512 and 1727, L over the cube root of the volume runs from 8 to 12.
    slenderness = length**3 / volume
    if slenderness < 512:
        return -1.69385
    return 0.0 if slenderness > 1727 else -1.69385 + (length / volume ** (1 / 3) - 8) / 2.36


def c16(c_p: float) -> float:
    """Return c16, the influence of the prismatic coefficient on the waves.

    Parameters
    ----------
    c_p : float
        Prismatic coefficient.

    Returns
    -------
    float

    References
    ----------
    Holtrop and Mennen, An approximate power prediction method, 1982 (memory).
    """
    return (
        8.07981 * c_p - 13.8673 * c_p**2 + 6.984388 * c_p**3
        if c_p < 0.8
        else 1.73014 - 0.7067 * c_p
    )


def m1(length: float, breadth: float, draught: float, volume: float, c_p: float) -> float:
    """Return m1, the decay of the wave resistance at low speed.

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

    Returns
    -------
    float

    References
    ----------
    Holtrop and Mennen, An approximate power prediction method, 1982 (memory).
    """
    return (
        0.0140407 * length / draught
        - 1.75254 * volume ** (1 / 3) / length
        - 4.79323 * breadth / length
        - c16(c_p)
    )


def m2_1982(c15_value: float, c_p: float, froude: float) -> float:
    """Return m2, the humps of the wave resistance, of the 1982 paper.

    Parameters
    ----------
    c15_value : float
        c15.
    c_p : float
        Prismatic coefficient.
    froude : float
        Froude number on the waterline.

    Returns
    -------
    float

    References
    ----------
    Holtrop and Mennen, An approximate power prediction method, 1982 (memory).
    """
    return c15_value * c_p**2 * exp(-0.1 * froude**-2)


def m4_1984(c15_value: float, froude: float) -> float:
    """Return m4, the humps of the wave resistance, of the 1984 paper.

    Parameters
    ----------
    c15_value : float
        c15.
    froude : float
        Froude number on the waterline.

    Returns
    -------
    float

    References
    ----------
    Holtrop, A statistical re-analysis of resistance and propulsion data, 1984 (memory).
    """
    return 0.4 * c15_value * exp(-0.034 * froude**-3.29)


def c17(length: float, breadth: float, volume: float, c_m: float) -> float:
    """Return c17, the size of the wave resistance at high speed.

    Parameters
    ----------
    length : float
        Of the waterline [m].
    breadth : float
        Moulded [m].
    volume : float
        Displaced [m³].
    c_m : float
        Midship coefficient.

    Returns
    -------
    float

    References
    ----------
    Holtrop, A statistical re-analysis of resistance and propulsion data, 1984 (memory).
    """
    return (
        6919.3 * c_m**-1.3346 * (volume / length**3) ** 2.00977 * (length / breadth - 2) ** 1.40692
    )


def m3(length: float, breadth: float, draught: float) -> float:
    """Return m3, the decay of the wave resistance at high speed.

    Parameters
    ----------
    length : float
        Of the waterline [m].
    breadth : float
        Moulded [m].
    draught : float
        Mean, moulded [m].

    Returns
    -------
    float

    References
    ----------
    Holtrop, A statistical re-analysis of resistance and propulsion data, 1984 (memory).
    """
    return -7.2035 * (breadth / length) ** 0.326869 * (draught / breadth) ** 0.605375


def wave_share(size: float, decay: float, hump: float, lam: float, froude: float) -> float:
    """Return the wave resistance as a share of the weight of the displaced water.

    Parameters
    ----------
    size : float
        c1 c2 c5, or c17 c2 c5 at high speed.
    decay : float
        m1, or m3 at high speed.
    hump : float
        m2 or m4.
    lam : float
        lambda.
    froude : float
        Froude number on the waterline.

    Returns
    -------
    float
        [fraction]

    References
    ----------
    size exp(decay Fn^−0.9 + hump cos(lambda Fn^−2)): Holtrop and Mennen 1982,
    Holtrop 1984 (memory).
    """
    return size * exp(decay * froude**-0.9 + hump * cos(lam * froude**-2))
