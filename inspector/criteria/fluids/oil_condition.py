"""Viscosity of used engine oil by a laboratory's sheet; the maker's figure wins."""

from collections.abc import Mapping

from inspector.criteria.core.band_judgement import judge_by_band
from inspector.criteria.core.bands import Bands, bands_of, below, beyond, to
from inspector.criteria.core.criterion import Criterion
from inspector.criteria.core.decimals import exact, percent_of, share
from inspector.criteria.core.judgement import Judgement, refuse
from inspector.criteria.core.limit_sets import LimitSet, settable_limit
from inspector.criteria.core.source import Source
from inspector.values.field import Field, number_field
from inspector.values.formatting import show

VISCOSITY = Source.common_practice(
    "Change of viscosity of used oil", "10 and 20 % thinner, 15 and 25 % thicker"
)
VISCOSITY_LIMITS = LimitSet(
    "Usual limits of viscosity change",
    (
        settable_limit("thin_watch", "thinner, watch above", "%", 10.0, 1, 50),
        settable_limit("thin_act", "thinner, act above", "%", 20.0, 1, 60),
        settable_limit("thick_watch", "thicker, watch above", "%", 15.0, 1, 80),
        settable_limit("thick_act", "thicker, act above", "%", 25.0, 1, 100),
    ),
    VISCOSITY,
)
TEMPERATURES = ("40 °C", "100 °C")
NOTES = (
    "One bottle proves little: ask for the trend, the hours on the oil, and where and how "
    "it was drawn.",
    "The engine maker's sheet wins.",
)
THIN = "thinner than it may be: fuel, water or a wrong grade"
THICK = "thicker than it may be: soot, oxidation or a wrong grade"
CHANGED = "changed enough to be watched"


def change(used: float, new: float) -> float:
    """Return the change [%] of a used figure against the new one.

    Examples
    --------
    >>> round(change(88, 105), 1), round(change(112, 145), 1)
    (-16.2, -22.8)
    """
    return percent_of(exact(used) - exact(new), new)


def _changed_by(percent: float, new: float) -> float:
    """Return the figure that is so many percent above the new one."""
    return share(100 + exact(percent), new)


def viscosity_bands(new: float, used_at: str, new_at: str, limits: Mapping[str, float]) -> Bands:
    """Return the bands of the used oil's viscosity.

    Parameters
    ----------
    new : float
        Viscosity of the new oil [mm²/s].
    used_at, new_at : str
        The temperatures at which the two were read, which must be the same.
    limits : mapping of str to float
        thin_watch, thin_act, thick_watch and thick_act [%].

    Returns
    -------
    Bands
        In mm²/s.

    Raises
    ------
    CannotJudge
        The two temperatures differ.
    """
    # Viscosity falls steeply with temperature, by more than any wear changes it.
    if used_at != new_at:
        why = f"the used oil was read at {used_at} and the new oil at {new_at}"
        refuse("used_at", used_at, f"{why}; only like temperatures compare")
    # A surveyor may set the watch limit above the one to act at; the bands must rise all the same.
    thick_watch = min(limits["thick_watch"], limits["thick_act"])
    return bands_of(
        "mm²/s",
        below(_changed_by(-limits["thin_act"], new), "too thin", "poor", THIN),
        below(_changed_by(-limits["thin_watch"], new), "thinning", "fair", CHANGED),
        to(_changed_by(thick_watch, new), "as new", "good", "near enough to new"),
        to(_changed_by(limits["thick_act"], new), "thickening", "fair", CHANGED),
        beyond("too thick", "poor", THICK),
    )


def judge_viscosity(
    used: float, new: float, used_at: str, new_at: str, limits: Mapping[str, float]
) -> Judgement:
    """Judge the viscosity of a used oil against the new one.

    Parameters
    ----------
    used : float
        Viscosity of the used oil [mm²/s].
    new : float
        Viscosity of the new oil [mm²/s].
    used_at, new_at : str
        40 °C or 100 °C, both the same.
    limits : mapping of str to float
        thin_watch, thin_act, thick_watch and thick_act [%].

    Returns
    -------
    Judgement

    Raises
    ------
    CannotJudge
        The two temperatures differ.

    References
    ----------
    Common practice, no source.
    """
    bands, found = viscosity_bands(new, used_at, new_at, limits), change(used, new)
    limit = limits["thick_act"] if found >= 0 else -limits["thin_act"]
    compared = f"{show(used, 'mm²/s')} where new oil has {show(new, 'mm²/s')} at {used_at}"
    subject = f"{compared}, a change of {show(found, '%')} against {show(limit, '%')},"
    reading = (found, "%", limit)
    return judge_by_band(bands.band_of(used), subject, reading, NOTES, at_least=found < 0)


def _viscosity(name: str, label: str) -> Field:
    return number_field(name, label, "mm²/s", 0.5, 3000)


CRITERIA = (
    Criterion(
        "oil-viscosity",
        "Viscosity of a used oil",
        (
            _viscosity("used", "Used oil"),
            _viscosity("new", "New oil"),
            Field("used_at", "Used oil read at", "choice", choices=TEMPERATURES),
            Field("new_at", "New oil read at", "choice", choices=TEMPERATURES),
        ),
        VISCOSITY,
        judge_viscosity,
        "Oils of 0.5 to 3000 mm²/s, both read at the same temperature.",
        "Four samples by our own arithmetic, every limit from both sides.",
        limit_set=VISCOSITY_LIMITS,
        bands=viscosity_bands,
    ),
)
