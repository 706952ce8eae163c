"""One hull as exact numbers, with the coefficients that follow from it.

A form that the formulas cannot take is refused. What is uncertain is spread in ``hull_form``.
"""

from dataclasses import dataclass
from functools import cached_property
from math import sqrt

from inspector.conversion.core.bounds import BadInput, check_ranges, plain
from inspector.conversion.hull import bulb_and_transom as ends
from inspector.conversion.hull import form_coefficients as form


@dataclass(frozen=True)
class Appendage:
    """A part below water.

    Parameters
    ----------
    area : float
        Wetted, 0 to 2000 [m²].
    factor : float
        1 + k2, 1 to 5: rudder 1.3 to 2.8, shaft bracket 3.0, bilge keel 1.4, shaft 2 to 4 (memory).

    Raises
    ------
    BadInput
        A value is outside its range.
    """

    area: float
    factor: float

    def __post_init__(self) -> None:
        plain("appendage: wetted area", self.area, 0, 2000, "m²")
        plain("appendage: 1 + k2", self.factor, 1, 5)


@dataclass(frozen=True)
class Tunnel:
    """The opening of a tunnel thruster.

    Parameters
    ----------
    diameter : float
        0.2 to 5 [m].
    coefficient : float
        C_BTO, usually 0.003 to 0.012.

    Raises
    ------
    BadInput
        A value is outside its range.
    """

    diameter: float
    coefficient: float

    def __post_init__(self) -> None:
        plain("thruster tunnel: diameter", self.diameter, 0.2, 5, "m")
        plain("thruster tunnel: C_BTO", self.coefficient, 0, 0.02)


@dataclass(frozen=True)
class Hull:
    """One hull at one draught.

    Parameters
    ----------
    length : float
        Of the waterline, 10 to 450 [m].
    breadth, draught_fore, draught_aft : float
        Moulded [m].
    volume : float
        Displaced [m³].
    lcb : float
        Centre of buoyancy forward of midlength [% of length].
    midship, waterplane : float
        The coefficients C_M and C_WP.
    transom_area : float
        Immersed at rest [m²].
    appendages : tuple of Appendage
    tunnels : tuple of Tunnel
    bulb_area : float
        Where the waterline meets the stem [m²].
    bulb_height : float
        Of the middle of the bulb above the keel [m].
    stern : float
        C_stern: −25 pram with gondola, −10 V, 0 normal, +10 U with Hogner stern.
    wetted : float or None
        Wetted surface [m²]; None for the papers' formula.
    entrance : float or None
        Half angle of entrance [deg]; None for the papers' formula.

    Raises
    ------
    BadInput
        A value that cannot be meant, or a form that the formulas cannot take, with ``field``.
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
            "length": (10, 450, "m"),
            "breadth": (2, 80, "m"),
            "draught_fore": (0.3, 30, "m"),
            "draught_aft": (0.3, 30, "m"),
            "volume": (5, 600_000, "m³"),
            "lcb": (-10, 10, "%"),
            "midship": (0.5, 1, ""),
            "waterplane": (0.5, 0.999, ""),
            "transom_area": (0, 500, "m²"),
            "bulb_area": (0, 200, "m²"),
            "bulb_height": (0, 20, "m"),
            "stern": (-25, 10, ""),
        }
        check_ranges("hull", self, limits)
        # Given values take the place of the regressions for them.
        if self.wetted is not None:
            plain("hull: wetted surface", self.wetted, 10, 60_000, "m²")
        if self.entrance is not None:
            plain("hull: half angle of entrance", self.entrance, 1, 80, "deg")
        self._refuse_forms_beyond_the_formulas()

    def _refuse_forms_beyond_the_formulas(self) -> None:
        """Refuse a form for which the regression gives numbers without meaning."""
        ratio = self.length / self.breadth
        # Beyond these the regression gives numbers for shapes that no ship behind it had.
        if not 2.1 <= ratio <= 15:
            problem = f"length / breadth is {ratio:.2f}, and the formulas take 2.1 to 15."
            raise BadInput(f"Hull: {problem}", field="hull: length", value=self.length)
        if not 0.4 <= self.c_p <= 0.9:
            problem = (
                f"volume gives a prismatic coefficient of {self.c_p:.3f}, "
                "and the formulas take 0.40 to 0.90: check volume, draughts and C_M."
            )
            raise BadInput(f"Hull: {problem}", field="hull: volume", value=self.volume)
        # The base of a power in the formula of the angle of entrance, which must not be negative.
        if 1 - self.c_p - 0.0225 * abs(self.lcb) <= 0:
            problem = f"lcb of {self.lcb} % is more than so full a hull can have."
            raise BadInput(f"Hull: {problem}", field="hull: lcb", value=self.lcb)
        # The formula of the bulb would take a root of a negative number.
        if self.bulb_area and self._bulb_is_too_high():
            problem = (
                f"bulb height is {self.bulb_height} m, and the formulas take a bulb below 0.6 "
                f"of the draught forward ({self.draught_fore} m)."
            )
            raise BadInput(f"Hull: {problem}", field="hull: bulb height", value=self.bulb_height)

    def _bulb_is_too_high(self) -> bool:
        """Whether the bulb is over 0.6 of the draught forward, or reaches the waterline."""
        top = self.bulb_height + 0.25 * sqrt(self.bulb_area)
        return self.bulb_height > 0.6 * self.draught_fore or top >= self.draught_fore

    @property
    def draught(self) -> float:
        """Mean draught [m]."""
        return (self.draught_fore + self.draught_aft) / 2

    @cached_property
    def c_p(self) -> float:
        """Prismatic coefficient."""
        # On the waterline and not between perpendiculars, as the regression was made.
        return self.volume / (self.midship * self.length * self.breadth * self.draught)

    @cached_property
    def c_b(self) -> float:
        """Block coefficient."""
        return self.c_p * self.midship

    @cached_property
    def run(self) -> float:
        """Length of run L_R [m]."""
        return form.length_of_run(self.length, self.c_p, self.lcb)

    @cached_property
    def surface(self) -> float:
        """Wetted surface of the bare hull [m²]: as given, else by the papers."""
        formula = form.wetted_surface(
            self.length,
            self.breadth,
            self.draught,
            self.c_b,
            self.midship,
            self.waterplane,
            self.bulb_area,
        )
        return formula if self.wetted is None else self.wetted

    @cached_property
    def angle(self) -> float:
        """Half angle of entrance [deg]: as given, else by the papers."""
        if self.entrance is not None:
            return self.entrance
        return form.entrance_angle(
            self.length, self.breadth, self.volume, self.c_p, self.waterplane, self.lcb, self.run
        )

    @property
    def appendage_area(self) -> float:
        """Wetted surface of all appendages, S_APP [m²]."""
        return sum(part.area for part in self.appendages)

    @cached_property
    def c2(self) -> float:
        """The reduction of wave resistance by the bulb."""
        return ends.c2(
            ends.c3(self.bulb_area, self.bulb_height, self.breadth, self.draught, self.draught_fore)
        )

    @cached_property
    def c5(self) -> float:
        """The influence of the transom on the waves."""
        return ends.c5(self.transom_area, self.breadth, self.draught, self.midship)

    @cached_property
    def allowance(self) -> float:
        """C_A, the allowance from model to ship."""
        return form.correlation(self.length, self.c_b, self.c2, self.draught_fore)

    def form_factor(self, edition: int) -> float:
        """Return 1 + k1.

        Parameters
        ----------
        edition : int
            1982 or 1984.

        Returns
        -------
        float

        References
        ----------
        Holtrop and Mennen 1982; Holtrop 1984 (memory).
        """
        if edition == 1982:
            return form.form_factor_1982(
                self.length, self.breadth, self.draught, self.c_p, self.lcb, self.run, self.stern
            )
        return form.form_factor_1984(
            self.length, self.breadth, self.draught, self.volume, self.c_p, self.run, self.stern
        )
