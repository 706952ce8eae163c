"""Thrust as measured on one thruster, against its power and diameter."""

from collections.abc import Mapping

from inspector.criteria.core.band_judgement import judge_by_band
from inspector.criteria.core.bands import Bands, bands_of, below, beyond, to
from inspector.criteria.core.criterion import Criterion
from inspector.criteria.core.judgement import Judgement
from inspector.criteria.core.limit_sets import LimitSet, settable_limit
from inspector.criteria.core.source import Source
from inspector.values.field import Field, number_field
from inspector.values.formatting import show

PULL = Source.recalled(
    "Static thrust of thrusters, a station-keeping standard's formula",
    "K (D P) to the power 2/3",
    edition="edition not read",
)
PROFILE = LimitSet(
    "Usual share of nominal thrust",
    (
        settable_limit("low", "low below", "%", 70.0, 30, 100),
        settable_limit("sound", "sound from", "%", 85.0, 30, 100),
    ),
    PULL,
)
# newtons, for a diameter in m and a power in kW
FACTORS = {
    "tunnel": 900,
    "azimuth in nozzle": 1200,
    "open propeller": 800,
}
# The constants are those of good nozzles; half more is another thruster or another unit (our own
# cut).
MOST_OF_NOMINAL = 1.5


def nominal_thrust(kind: str, diameter: float, power: float) -> float:
    """Return the nominal static thrust of a thruster.

    Parameters
    ----------
    kind : str
        Kind of thruster: tunnel, azimuth in nozzle or open propeller.
    diameter : float
        Propeller diameter [m].
    power : float
        Shaft power at the measurement [kW].

    Returns
    -------
    float
        Thrust [kN].

    References
    ----------
    A station-keeping standard's formula (from memory).

    Examples
    --------
    >>> round(nominal_thrust("tunnel", 1.2, 250), 2)
    40.33
    >>> round(nominal_thrust("azimuth in nozzle", 2.2, 1000), 2)
    202.98
    """
    return FACTORS[kind] * (diameter * power) ** (2 / 3) / 1000


def _pull_bands(kind: str, diameter: float, power: float, limits: Mapping[str, float]) -> Bands:
    """Return the bands of a measured thrust [kN] beside the nominal thrust."""
    nominal = nominal_thrust(kind, diameter, power)
    return bands_of(
        "kN",
        below(
            limits["low"] / 100 * nominal, "weak", "poor", "weak: look at blades, pitch and power"
        ),
        below(
            limits["sound"] / 100 * nominal,
            "reduced",
            "fair",
            "reduced, within the losses of hull and inflow",
        ),
        to(MOST_OF_NOMINAL * nominal, "sound", "good", "what such a thruster gives"),
        beyond(
            "read again", None, "more than any such thruster gives: read unit, size and power again"
        ),
    )


def judge_pull(
    thrust: float, kind: str, diameter: float, power: float, limits: Mapping[str, float]
) -> Judgement:
    """Judge the static thrust measured on one thruster.

    Parameters
    ----------
    thrust : float
        Thrust measured [kN].
    kind : str
        Kind of thruster, one of ``FACTORS``.
    diameter : float
        Propeller diameter [m].
    power : float
        Shaft power at the measurement [kW].
    limits : mapping of str to float
        The limits of ``PROFILE``.

    Returns
    -------
    Judgement

    References
    ----------
    A station-keeping standard's constants (from memory); losses of 10 to 30 % (common practice, no
    source).
    """
    nominal = nominal_thrust(kind, diameter, power)
    # Losses of hull and inflow are usual, so the limit is well below the nominal thrust.
    limit = limits["low"] / 100 * nominal
    subject = (
        f"{show(thrust, 'kN')} from a thruster ({kind}) of {show(diameter, 'm')} at "
        f"{show(power, 'kW')}, nominally {show(nominal, 'kN')},"
    )
    notes = (
        "A screen, not a bollard pull certificate; shallow water, quay walls and "
        "current spoil the figure.",
    )
    return judge_by_band(
        _pull_bands(kind, diameter, power, limits).band_of(thrust),
        subject,
        (thrust, "kN", limit),
        notes,
        at_least=True,
    )


CRITERIA = (
    Criterion(
        "thruster-pull",
        "Static thrust of one thruster",
        (
            number_field("thrust", "Thrust measured", "kN", 0, 5000),
            Field("kind", "Kind of thruster", "choice", choices=tuple(FACTORS)),
            number_field("diameter", "Propeller diameter", "m", 0.3, 6),
            number_field("power", "Shaft power at the measurement", "kW", 10, 10_000),
        ),
        PULL,
        judge_pull,
        "Thrusters of 0.3 to 6 m and 10 to 10 000 kW at zero speed.",
        "Six thrusters by our own arithmetic on the recalled constants, both "
        "limits from both sides.",
        limit_set=PROFILE,
        bands=_pull_bands,
    ),
)
