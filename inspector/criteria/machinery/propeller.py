"""Mean pitch of a propeller against the tolerances of manufacture, and the class it meets.

Tolerances of manufacture are a yardstick for a used propeller, not a law: beyond them is poor,
never failed.
"""

from inspector.criteria.core.band_judgement import judge_between
from inspector.criteria.core.bands import Bands, bands_of, below, beyond, to
from inspector.criteria.core.criterion import Criterion
from inspector.criteria.core.decimals import around
from inspector.criteria.core.judgement import Judgement
from inspector.criteria.core.source import Source
from inspector.values.field import Field, number_field
from inspector.values.formatting import show

SOURCE = Source.seen(
    "ISO 484-2, ship screw propellers, manufacturing tolerances, 0.80 to 2.50 m",
    "1981, from public tables of propeller workshops; the edition of 2015 not compared",
    "pitch, thickness and length of sections",
)
# Class -> share of the mean pitch, either way, in %.
PITCH = {"S": 0.5, "I": 0.75, "II": 1, "III": 3}
YARDSTICK = (
    "A tolerance of manufacture, taken as a yardstick; larger propellers have part 1 of the "
    "standard, the maker's drawing wins."
)


def pitch_limits(nominal: float, tolerance_class: str) -> tuple[float, float]:
    """Return the least and the most mean pitch of a class.

    Parameters
    ----------
    nominal : float
        Pitch as drawn [m].
    tolerance_class : str
        S, I, II or III.

    Returns
    -------
    tuple of (float, float)
        [m]

    References
    ----------
    ISO 484-2: mean pitch of the propeller within 0.5, 0.75, 1 and 3 % (seen).

    Examples
    --------
    >>> pitch_limits(2.4, "I")
    (2.382, 2.418)
    """
    return around(nominal, PITCH[tolerance_class])


def pitch_bands(nominal: float, tolerance_class: str) -> Bands:
    """Return three bands of mean pitch [m]: too low, within the class, too high.

    Parameters
    ----------
    nominal : float
        Pitch as drawn [m].
    tolerance_class : str
        S, I, II or III.

    Returns
    -------
    Bands
    """
    low, high = pitch_limits(nominal, tolerance_class)
    return bands_of(
        "m",
        below(low, "pitch too low", "poor", "too low: the engine runs light"),
        to(high, "within the class", "good", "within it"),
        beyond("pitch too high", "poor", "too high: the engine is overloaded"),
    )


def judge_pitch(measured: float, nominal: float, tolerance_class: str) -> Judgement:
    """Judge the mean pitch of a propeller against its class.

    Parameters
    ----------
    measured : float
        Mean pitch of the propeller [m].
    nominal : float
        Pitch as drawn [m].
    tolerance_class : str
        S, I, II or III.

    Returns
    -------
    Judgement

    References
    ----------
    ISO 484-2: mean pitch of the propeller within 0.5, 0.75, 1 and 3 % (seen).
    """
    low, high = pitch_limits(nominal, tolerance_class)
    subject = (
        f"A mean pitch of {show(measured, 'm')}, against {show(low, 'm')} to {show(high, 'm')} "
        f"of class {tolerance_class},"
    )
    band = pitch_bands(nominal, tolerance_class).band_of(measured)
    notes = (_class_met(measured, nominal), YARDSTICK)
    return judge_between(band, subject, (measured, "m"), (low, high), notes)


def _class_met(measured: float, nominal: float) -> str:
    """Return the sentence on the narrowest class that the pitch meets."""
    # From the narrowest class on: the first that fits is the best it meets.
    for name in PITCH:
        low, high = pitch_limits(nominal, name)
        if low <= measured <= high:
            return f"It meets class {name}."
    return "It meets no class of the standard."


def _pitch(name: str, label: str) -> Field:
    return number_field(name, label, "m", 0.3, 6)


CRITERIA = (
    Criterion(
        "propeller-pitch",
        "Mean pitch of a propeller against its class",
        (
            _pitch("measured", "Measured mean pitch"),
            _pitch("nominal", "Pitch as drawn"),
            Field("tolerance_class", "Class of the propeller", "choice", choices=tuple(PITCH)),
        ),
        SOURCE,
        judge_pitch,
        "Screw propellers of 0.80 to 2.50 m diameter, pitch of 0.3 to 6 m.",
        "Both ends of each class from both sides against public tables of the 1981 edition.",
        bands=pitch_bands,
    ),
)
