"""How hard a generating set works against the figures on its plate."""

import math
from collections.abc import Mapping
from dataclasses import replace

from inspector.criteria.core.band_judgement import judge_by_band
from inspector.criteria.core.bands import Bands, bands_of, below, beyond, to
from inspector.criteria.core.criterion import Criterion
from inspector.criteria.core.decimals import share
from inspector.criteria.core.judgement import Judgement, refuse
from inspector.criteria.core.limit_sets import LimitSet, settable_limit
from inspector.criteria.core.source import Source
from inspector.values.field import Field, number_field
from inspector.values.formatting import show

SETS = Source.common_practice("Loading of diesel generating sets", "30, 85 and 90 % of rating")
SET_PROFILE = LimitSet(
    "Usual loading of a generating set",
    (
        settable_limit("light", "light below", "%", 30.0, 0, 60),
        settable_limit("high", "high above", "%", 85.0, 50, 100),
        settable_limit("most", "no margin above", "%", 90.0, 50, 110),
    ),
    SETS,
)
FULL = 100.0  # % of all ratings


def set_load(
    power: float,
    rated_power: float,
    current: float | None = None,
    rated_current: float | None = None,
) -> float:
    """Return the load of a set [%]: the greater of its power and its current.

    Parameters
    ----------
    power : float
        Power carried [kW].
    rated_power : float
        Rated power [kW].
    current : float, optional
        Current [A].
    rated_current : float, optional
        Rated current [A].

    Returns
    -------
    float
        Load of a set [%].

    Examples
    --------
    >>> round(set_load(300, 340), 1), round(set_load(300, 340, 555.1, 511.2), 1)
    (88.2, 108.6)
    """
    by_power = 100 * power / rated_power
    return (
        by_power
        if current is None or rated_current is None
        else max(by_power, 100 * current / rated_current)
    )


def _set_bands(
    rated_power: float,
    current: float | None,
    rated_current: float | None,
    limits: Mapping[str, float],
) -> Bands:
    """Return the bands of the power [kW] of a set; a current given may exclude the lighter ones."""
    # Half of a pair cannot be a share of anything.
    if (current is None) != (rated_current is None):
        refuse(
            "current" if current is None else "rated_current",
            None,
            "a current needs its rating beside it, and a rating its current",
        )
    steps = (
        below(
            limits["light"], "light", "fair", "light: long running at such a load fouls a diesel"
        ),
        to(min(limits["high"], limits["most"]), "usual", "good", "in the usual range"),
        to(limits["most"], "high", "fair", "high: little is left for a step of load"),
        to(FULL, "no margin", "poor", "without margin for a step of load"),
        beyond("overloaded", "failed", "above the rating"),
    )
    # at a poor power factor the current reaches its rating before the power does
    carried = 0.0 if current is None else 100 * current / rated_current
    kept = [
        step for step in steps if step.includes(carried) or step.upto is None or step.upto > carried
    ]
    return bands_of(
        "kW", *(replace(step, upto=share(step.upto, rated_power)) for step in kept[:-1]), kept[-1]
    )


def judge_set(
    power: float,
    rated_power: float,
    limits: Mapping[str, float],
    current: float | None = None,
    rated_current: float | None = None,
) -> Judgement:
    """Judge the load of one generating set.

    Parameters
    ----------
    power : float
        Power carried [kW].
    rated_power : float
        Rated power [kW].
    limits : mapping of str to float
        The limits of ``SET_PROFILE``.
    current : float, optional
        Current [A].
    rated_current : float, optional
        Rated current [A].

    Returns
    -------
    Judgement

    References
    ----------
    Common practice; 30, 85 and 90 %, and 100 % as the plate's own figure.
    """
    load = set_load(power, rated_power, current, rated_current)
    band = _set_bands(rated_power, current, rated_current, limits).band_of(power)
    amps = "" if current is None else f" and {show(current, 'A')} of {show(rated_current, 'A')}"
    subject = (
        f"{show(power, 'kW')} of {show(rated_power, 'kW')}{amps} is a load of "
        f"{show(load, '%')}, which, against {show(limits['most'], '%')},"
    )
    notes = (
        "kVA are not kW: at a poor power factor the current reaches its rating "
        "before the power does.",
    )
    return judge_by_band(band, subject, (load, "%", limits["most"]), notes)


def transformer_current(rated_power: float, voltage: float) -> float:
    """Return the rated current of a three-phase transformer on the side of a voltage.

    Parameters
    ----------
    rated_power : float
        Rated power [kW].
    voltage : float
        Voltage on the same side, line to line [V].

    Returns
    -------
    float
        Rated current [A].

    References
    ----------
    Plain arithmetic.

    Examples
    --------
    >>> round(transformer_current(75, 208), 2), round(transformer_current(75, 480), 2)
    (208.18, 90.21)
    """
    return 1000 * rated_power / (math.sqrt(3) * voltage)


def _kilowatts(name: str, label: str, low: float = 0.1) -> Field:
    return number_field(name, label, "kW", low, 100_000)


CRITERIA = (
    Criterion(
        "generator-loading",
        "Load of a generating set",
        (
            _kilowatts("power", "Power carried", 0),
            _kilowatts("rated_power", "Rated power"),
            number_field("current", "Current", "A", 0, 20_000, optional=True),
            number_field("rated_current", "Rated current", "A", 0.1, 20_000, optional=True),
        ),
        SETS,
        judge_set,
        "Diesel generating sets of 0.1 kW to 100 MW, steady load.",
        "One overload by current by our own arithmetic, each limit from both sides.",
        limit_set=SET_PROFILE,
        bands=_set_bands,
    ),
)
