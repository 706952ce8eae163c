"""The forces of wind and current on a hull. Forces in kN."""

from dataclasses import dataclass

from inspector.conversion.core.bounds import plain

# Air of 15 °C at sea level; in winter it is some per cent denser, well within the coefficients.
AIR, WATER = 1.225, 1025.0  # kg/m³


@dataclass(frozen=True)
class Force:
    """Wind and current from one side.

    Parameters
    ----------
    wind : float
        Wind force for each square of its speed [kN/(m/s)²].
    current : float
        Current force [kN].
    x_wind, x_current : float
        Where they act, forward of midship is plus [m].
    waves : float
        Factor for waves (1.25 adds a quarter).
    """

    wind: float
    current: float
    x_wind: float = 0.0
    x_current: float = 0.0
    waves: float = 1.25

    def total(self, speed: float) -> float:
        """Return the whole force.

        Parameters
        ----------
        speed : float
            Wind [m/s].

        Returns
        -------
        float
            Force [kN].

        References
        ----------
        Static balance, plain mechanics; factor for waves (common practice, no source).
        """
        return self.waves * (self.wind * speed**2 + self.current)


# The least, the likely and the greatest force.
Forces = tuple[Force, Force, Force]


def wind_force(coefficient: float, area: float, speed: float) -> float:
    """Return the force of the wind on an area.

    Parameters
    ----------
    coefficient : float
    area : float
        Area in the wind [m²].
    speed : float
        Wind [m/s].

    Returns
    -------
    float
        Force [kN].

    Raises
    ------
    BadInput
        A value that cannot be; the field is named.

    References
    ----------
    0.5 × density × coefficient × area × speed², plain mechanics (common practice).
    """
    factor = 0.5 * AIR * plain("wind coefficient", coefficient, 0, 3)
    exposed = factor * plain("wind area", area, 0, 20_000, "m²")
    return exposed * plain("wind", speed, 0, 150, "m/s") ** 2 / 1000


def current_force(coefficient: float, area: float, speed: float) -> float:
    """Return the force of the current on an area under water.

    Parameters
    ----------
    coefficient : float
    area : float
        Area under water [m²].
    speed : float
        Current [m/s].

    Returns
    -------
    float
        Force [kN].

    Raises
    ------
    BadInput
        A value that cannot be; the field is named.

    References
    ----------
    0.5 × density × coefficient × area × speed², plain mechanics (common practice).
    """
    factor = 0.5 * WATER * plain("current coefficient", coefficient, 0, 3)
    exposed = factor * plain("area under water", area, 0, 20_000, "m²")
    return exposed * plain("current", speed, 0, 10, "m/s") ** 2 / 1000
