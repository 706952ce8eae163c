"""The coefficients of the Holtrop and Mennen regression of ship resistance, by their names in the papers.

Every function is one formula on plain numbers in SI units, lengths of the waterline in m; lcb in % of L forward of L/2.

References
----------
Holtrop, J. and Mennen, G.G.J., "An approximate power prediction method", International Shipbuilding Progress 29 (335), 1982.
Holtrop, J., "A statistical re-analysis of resistance and propulsion data", International Shipbuilding Progress 31 (363), 1984.
The text was located; the exponents were confirmed on the printed examples of both papers (tests/published/test_holtrop.py).
"""

from math import cos, exp, log10, sqrt

G = 9.81  # m/s², as in the papers


def length_of_run(length: float, c_p: float, lcb: float) -> float:
    """L_R [m]."""
    return length * (1 - c_p + 0.06 * c_p * lcb / (4 * c_p - 1))


def wetted_surface(length: float, breadth: float, draught: float, c_b: float, c_m: float, c_wp: float, bulb_area: float) -> float:
    """S [m²] of the bare hull."""
    shape = 0.453 + 0.4425 * c_b - 0.2862 * c_m - 0.003467 * breadth / draught + 0.3696 * c_wp
    return length * (2 * draught + breadth) * sqrt(c_m) * shape + 2.38 * bulb_area / c_b


def entrance_angle(length: float, breadth: float, volume: float, c_p: float, c_wp: float, lcb: float, run: float) -> float:
    """Half angle of entrance iE [deg]. The lcb term has the opposite sign of that in the form factor."""
    power = (length / breadth) ** 0.80856 * (1 - c_wp) ** 0.30484 * (1 - c_p - 0.0225 * lcb) ** 0.6367
    power *= (run / breadth) ** 0.34574 * (100 * volume / length**3) ** 0.16302
    return 1 + 89 * exp(-power)


def c12(draught_to_length: float) -> float:
    if draught_to_length > 0.05:
        return draught_to_length**0.2228446
    return 48.20 * (draught_to_length - 0.02) ** 2.078 + 0.479948 if draught_to_length > 0.02 else 0.479948


def form_factor_1982(length: float, breadth: float, draught: float, c_p: float, lcb: float, run: float, stern: float) -> float:
    """1 + k1 of the 1982 paper."""
    fullness = (0.95 - c_p) ** -0.521448 * (1 - c_p + 0.0225 * lcb) ** 0.6906
    return (1 + 0.003 * stern) * (0.93 + c12(draught / length) * (breadth / run) ** 0.92497 * fullness)


def form_factor_1984(length: float, breadth: float, draught: float, volume: float, c_p: float, run: float, stern: float) -> float:
    """1 + k1 of the 1984 paper."""
    c14 = 1 + 0.011 * stern
    slender = (breadth / length) ** 1.06806 * (draught / length) ** 0.46106 * (length / run) ** 0.121563
    return 0.93 + 0.487118 * c14 * slender * (length**3 / volume) ** 0.36486 * (1 - c_p) ** -0.604247


def friction_ittc57(reynolds: float) -> float:
    """C_F of the ITTC 1957 line."""
    return 0.075 / (log10(reynolds) - 2) ** 2


def c7(breadth_to_length: float) -> float:
    if breadth_to_length < 0.11:
        return 0.229577 * breadth_to_length**0.33333
    return breadth_to_length if breadth_to_length <= 0.25 else 0.5 - 0.0625 / breadth_to_length


def c1(breadth_to_length: float, draught_to_breadth: float, angle: float) -> float:
    """Parameters: angle, iE [deg]."""
    return 2223105 * c7(breadth_to_length) ** 3.78613 * draught_to_breadth**1.07961 * (90 - angle) ** -1.37565


def c3(bulb_area: float, bulb_height: float, breadth: float, draught: float, draught_fore: float) -> float:
    if bulb_area == 0:
        return 0.0
    return 0.56 * bulb_area**1.5 / (breadth * draught * (0.31 * sqrt(bulb_area) + draught_fore - bulb_height))


def c2(c3_value: float) -> float:
    return exp(-1.89 * sqrt(c3_value))


def c5(transom_area: float, breadth: float, draught: float, c_m: float) -> float:
    return 1 - 0.8 * transom_area / (breadth * draught * c_m)


def wave_length(c_p: float, length_to_breadth: float) -> float:
    """lambda."""
    return 1.446 * c_p - (0.03 * length_to_breadth if length_to_breadth < 12 else 0.36)


def c15(length: float, volume: float) -> float:
    """Negative, although the 1982 paper prints its example positive: only so does the example come out."""
    slenderness = length**3 / volume
    if slenderness < 512:
        return -1.69385
    return 0.0 if slenderness > 1727 else -1.69385 + (length / volume ** (1 / 3) - 8) / 2.36


def c16(c_p: float) -> float:
    return 8.07981 * c_p - 13.8673 * c_p**2 + 6.984388 * c_p**3 if c_p < 0.8 else 1.73014 - 0.7067 * c_p


def m1(length: float, breadth: float, draught: float, volume: float, c_p: float) -> float:
    return 0.0140407 * length / draught - 1.75254 * volume ** (1 / 3) / length - 4.79323 * breadth / length - c16(c_p)


def m2_1982(c15_value: float, c_p: float, froude: float) -> float:
    return c15_value * c_p**2 * exp(-0.1 * froude**-2)


def m4_1984(c15_value: float, froude: float) -> float:
    return 0.4 * c15_value * exp(-0.034 * froude**-3.29)


def c17(length: float, breadth: float, volume: float, c_m: float) -> float:
    return 6919.3 * c_m**-1.3346 * (volume / length**3) ** 2.00977 * (length / breadth - 2) ** 1.40692


def m3(length: float, breadth: float, draught: float) -> float:
    return -7.2035 * (breadth / length) ** 0.326869 * (draught / breadth) ** 0.605375


def wave_share(size: float, decay: float, hump: float, lam: float, froude: float) -> float:
    """Wave resistance as a share of the weight of the displaced water: size exp(decay Fn^-0.9 + hump cos(lambda Fn^-2))."""
    return size * exp(decay * froude**-0.9 + hump * cos(lam * froude**-2))


def bulb_emergence(bulb_area: float, bulb_height: float, draught_fore: float) -> float:
    """P_B."""
    return 0.56 * sqrt(bulb_area) / (draught_fore - 1.5 * bulb_height)


def bulb_froude(speed: float, bulb_area: float, bulb_height: float, draught_fore: float) -> float:
    """Fni. Parameters: speed [m/s]."""
    return speed / sqrt(G * (draught_fore - bulb_height - 0.25 * sqrt(bulb_area)) + 0.15 * speed**2)


def transom_froude(speed: float, transom_area: float, breadth: float, c_wp: float) -> float:
    """FnT. Parameters: speed [m/s]."""
    return speed / sqrt(2 * G * transom_area / (breadth + breadth * c_wp))


def c6(transom_froude_value: float) -> float:
    return 0.2 * (1 - 0.2 * transom_froude_value) if transom_froude_value < 5 else 0.0


def correlation(length: float, c_b: float, c2_value: float, draught_fore: float) -> float:
    """C_A, the allowance from model to ship."""
    c4 = min(draught_fore / length, 0.04)
    return 0.006 * (length + 100) ** -0.16 - 0.00205 + 0.003 * sqrt(length / 7.5) * c_b**4 * c2_value * (0.04 - c4)
