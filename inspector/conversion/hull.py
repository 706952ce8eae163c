"""One hull as a set of exact numbers, with the coefficients that follow from it; a form that the formulas cannot take is refused.

What is uncertain about a hull is spread in hull_form.py.
"""

from dataclasses import dataclass
from functools import cached_property
from math import sqrt

from inspector.conversion import resistance_coefficients as c
from inspector.conversion.inputs import BadInput, plain


@dataclass(frozen=True)
class Appendage:
    """A part below water: its wetted area [m²] and 1 + k2 (rudder 1.3 to 2.8, shaft bracket 3.0, bilge keel 1.4, shaft 2 to 4; memory)."""

    area: float
    factor: float

    def __post_init__(self) -> None:
        plain("appendage: wetted area", self.area, 0, 2000, "m²")
        plain("appendage: 1 + k2", self.factor, 1, 5)


@dataclass(frozen=True)
class Tunnel:
    """The opening of a tunnel thruster: diameter [m] and its coefficient C_BTO, 0.003 to 0.012."""

    diameter: float
    coefficient: float

    def __post_init__(self) -> None:
        plain("thruster tunnel: diameter", self.diameter, 0.2, 5, "m")
        plain("thruster tunnel: C_BTO", self.coefficient, 0, 0.02)


@dataclass(frozen=True)
class Hull:
    """One hull at one draught.

    length [m] on the waterline; breadth, draught_fore, draught_aft [m] moulded; volume [m³] displaced; lcb [% of length,
    forward of its middle]; midship and waterplane are the coefficients C_M and C_WP; transom_area [m²] immersed at rest;
    bulb_area [m²] where the waterline meets the stem and bulb_height [m] of its middle above the keel; stern is
    C_stern (-25 pram with gondola, -10 V, 0 normal, +10 U with Hogner stern); wetted [m²] and entrance [deg, half angle]
    only if known, else the papers' formulas.

    Errors
    ------
    BadInput : a value that cannot be meant, or a form that the formulas cannot take, with ``field``.
    """

    length: float
    breadth: float
    draught_fore: float
    draught_aft: float
    volume: float
    lcb: float
    midship: float
    waterplane: float
    transom_area: float = 0.0
    appendages: tuple[Appendage, ...] = ()
    tunnels: tuple[Tunnel, ...] = ()
    bulb_area: float = 0.0
    bulb_height: float = 0.0
    stern: float = 0.0
    wetted: float | None = None
    entrance: float | None = None

    def __post_init__(self) -> None:
        limits = {
            "length": (10, 450, "m"), "breadth": (2, 80, "m"), "draught_fore": (0.3, 30, "m"), "draught_aft": (0.3, 30, "m"), "volume": (5, 600_000, "m³"),
            "lcb": (-10, 10, "%"), "midship": (0.5, 1, ""), "waterplane": (0.5, 0.999, ""), "transom_area": (0, 500, "m²"), "bulb_area": (0, 200, "m²"),
            "bulb_height": (0, 20, "m"), "stern": (-25, 10, ""),
        }
        for field, (low, high, unit) in limits.items():
            plain(f"hull: {field.replace('_', ' ')}", getattr(self, field), low, high, unit)
        if self.wetted is not None:
            plain("hull: wetted surface", self.wetted, 10, 60_000, "m²")
        if self.entrance is not None:
            plain("hull: half angle of entrance", self.entrance, 1, 80, "deg")
        self._refuse_forms_beyond_the_formulas()

    def _refuse_forms_beyond_the_formulas(self) -> None:
        ratio = self.length / self.breadth
        if not 2.1 <= ratio <= 15:
            raise BadInput(f"Hull: length / breadth is {ratio:.2f}, and the formulas take 2.1 to 15.", field="hull: length", value=self.length)
        if not 0.4 <= self.c_p <= 0.9:
            sentence = f"Hull: volume gives a prismatic coefficient of {self.c_p:.3f}, and the formulas take 0.40 to 0.90: check volume, draughts and C_M."
            raise BadInput(sentence, field="hull: volume", value=self.volume)
        if 1 - self.c_p - 0.0225 * abs(self.lcb) <= 0:
            raise BadInput(f"Hull: lcb of {self.lcb} % is more than so full a hull can have.", field="hull: lcb", value=self.lcb)
        if self.bulb_area and (self.bulb_height > 0.6 * self.draught_fore or self.bulb_height + 0.25 * sqrt(self.bulb_area) >= self.draught_fore):
            sentence = f"Hull: bulb height is {self.bulb_height} m, and the formulas take a bulb below 0.6 of the draught forward ({self.draught_fore} m)."
            raise BadInput(sentence, field="hull: bulb height", value=self.bulb_height)

    @property
    def draught(self) -> float:
        """Mean draught [m]."""
        return (self.draught_fore + self.draught_aft) / 2

    @cached_property
    def c_p(self) -> float:
        return self.volume / (self.midship * self.length * self.breadth * self.draught)

    @cached_property
    def c_b(self) -> float:
        return self.c_p * self.midship

    @cached_property
    def run(self) -> float:
        """Length of run L_R [m]."""
        return c.length_of_run(self.length, self.c_p, self.lcb)

    @cached_property
    def surface(self) -> float:
        """Wetted surface of the bare hull [m²]: as given, else by the papers."""
        formula = c.wetted_surface(self.length, self.breadth, self.draught, self.c_b, self.midship, self.waterplane, self.bulb_area)
        return formula if self.wetted is None else self.wetted

    @cached_property
    def angle(self) -> float:
        """Half angle of entrance [deg]: as given, else by the papers."""
        if self.entrance is not None:
            return self.entrance
        return c.entrance_angle(self.length, self.breadth, self.volume, self.c_p, self.waterplane, self.lcb, self.run)

    @property
    def appendage_area(self) -> float:
        """S_APP [m²]."""
        return sum(part.area for part in self.appendages)

    @cached_property
    def c2(self) -> float:
        return c.c2(c.c3(self.bulb_area, self.bulb_height, self.breadth, self.draught, self.draught_fore))

    @cached_property
    def c5(self) -> float:
        return c.c5(self.transom_area, self.breadth, self.draught, self.midship)

    @cached_property
    def allowance(self) -> float:
        """C_A."""
        return c.correlation(self.length, self.c_b, self.c2, self.draught_fore)

    def form_factor(self, edition: int) -> float:
        """1 + k1 of an edition."""
        if edition == 1982:
            return c.form_factor_1982(self.length, self.breadth, self.draught, self.c_p, self.lcb, self.run, self.stern)
        return c.form_factor_1984(self.length, self.breadth, self.draught, self.volume, self.c_p, self.run, self.stern)
