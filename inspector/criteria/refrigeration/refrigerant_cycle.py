"""Superheat of the suction and subcooling of the liquid, by a gauge and a thermometer.

Blends glide: superheat is counted from the dew curve and subcooling from the bubble curve; the
wrong curve errs by 6 K on R-407C.
"""

from collections.abc import Callable, Mapping

from inspector.criteria.core.band_judgement import judge_between
from inspector.criteria.core.bands import Bands, bands_of, below, beyond, to
from inspector.criteria.core.criterion import Criterion
from inspector.criteria.core.judgement import Judgement, refuse
from inspector.criteria.core.limit_sets import LimitSet, settable_limit
from inspector.criteria.core.source import Source
from inspector.criteria.refrigeration.saturation_pressure import (
    CURVES,
    OutsideTable,
    bubble_temperature,
    dew_temperature,
)
from inspector.values.field import Field, number_field
from inspector.values.formatting import show

SOURCE = Source.common_practice(
    "Superheat and subcooling of refrigerating plant",
    "bands in K",
    edition="no publisher; saturation table by CoolProp 8.0.0",
)
ATMOSPHERE = 101.325  # kPa
# The ranges in which each limit may be set meet and do not overlap, so that the bands rise whatever
# a surveyor sets.
SUPERHEAT = LimitSet(
    "Superheat of the suction",
    (
        settable_limit("flood", "liquid may come back below", "K", 3, 0.5, 3.5),
        settable_limit("evaporator_least", "at the evaporator from", "K", 4, 3.5, 6),
        settable_limit("evaporator_most", "at the evaporator to", "K", 8, 6, 20),
        settable_limit("compressor_least", "at the compressor from", "K", 8, 3.5, 12),
        settable_limit("compressor_most", "at the compressor to", "K", 20, 12, 40),
    ),
    SOURCE,
)
SUBCOOLING = LimitSet(
    "Subcooling of the liquid",
    (
        settable_limit("short", "too little up to", "K", 2, 0, 2.5),
        settable_limit("least", "usual from", "K", 3, 2.5, 5),
        settable_limit("most", "usual to", "K", 8, 5, 10),
        settable_limit("over", "too much above", "K", 12, 10, 25),
    ),
    SOURCE,
)
NOTES = (
    (
        "Steady running for 15 min, sensor clamped and lagged, gauge near it; the "
        "pressure drop between the two is neglected."
    ),
    "Gauges are connected by certified persons only; read what is fitted.",
)


def superheat_bands(place: str, limits: Mapping[str, float]) -> Bands:
    """Four bands of superheat [K] at evaporator or compressor.

    Parameters
    ----------
    place : str
        Where it was taken: evaporator or compressor.
    limits : mapping of str to float
        The limits of ``SUPERHEAT``.

    Returns
    -------
    Bands
    """
    return bands_of(
        "K",
        below(
            limits["flood"],
            "liquid may come back",
            "poor",
            "so low that liquid may reach the compressor",
        ),
        below(limits[f"{place}_least"], "low", "fair", "low: watch for liquid at the compressor"),
        to(limits[f"{place}_most"], "usual", "good", "as usual"),
        beyond("high", "fair", "high: little gas, a starved evaporator or a warm suction line"),
    )


def subcooling_bands(limits: Mapping[str, float]) -> Bands:
    """Five bands of subcooling [K].

    Parameters
    ----------
    limits : mapping of str to float
        The limits of ``SUBCOOLING``.

    Returns
    -------
    Bands
    """
    return bands_of(
        "K",
        to(
            limits["short"],
            "too little",
            "poor",
            "too little: with bubbles in the glass, short of gas",
        ),
        below(limits["least"], "low", "fair", "low"),
        to(limits["most"], "usual", "good", "as usual"),
        to(limits["over"], "high", "fair", "high"),
        beyond("too much", "poor", "too much: overcharged, or a block before the valve"),
    )


def _absolute(pressure: float, barometer: float | None) -> float:
    """Return the absolute pressure [kPa] of a gauge pressure [kPa]."""
    # Gauges read above the air, tables of saturation are absolute.
    return pressure + (ATMOSPHERE if barometer is None else barometer)


def _saturation(
    curve: Callable[[str, float], float],
    refrigerant: str,
    pressure: float,
    barometer: float | None,
) -> float:
    """Return the temperature [°C] of a curve; refuse a pressure outside its table."""
    try:
        return curve(refrigerant, _absolute(pressure, barometer))
    except OutsideTable as outside:
        refuse("pressure", pressure, str(outside).rstrip("."))


def superheat(
    temperature: float, pressure: float, refrigerant: str, barometer: float | None = None
) -> float:
    """Return the superheat of a suction line above the dew curve; it is exact to about 0.1 K.

    Parameters
    ----------
    temperature : float
        Suction line [°C].
    pressure : float
        Suction pressure, gauge [kPa].
    refrigerant : str
        Refrigerant: R-22, R-134a, R-404A, R-407C, R-507A or R-717.
    barometer : float, optional
        Air pressure [kPa].

    Returns
    -------
    float
        Superheat [K].

    References
    ----------
    Saturation by CoolProp 8.0.0.
    """
    # By the dew curve, since it is gas: at a blend's bubble point the superheat would be too great
    # by its whole glide.
    dew = _saturation(dew_temperature, refrigerant, pressure, barometer)
    # The table is good to some hundredths of a kelvin, and a gauge to far less.
    return round(temperature - dew, 2)


def subcooling(
    temperature: float, pressure: float, refrigerant: str, barometer: float | None = None
) -> float:
    """Return the subcooling of a liquid line below the bubble curve.

    Parameters
    ----------
    temperature : float
        Liquid line [°C].
    pressure : float
        Liquid pressure, gauge [kPa].
    refrigerant : str
        Refrigerant: R-22, R-134a, R-404A, R-407C, R-507A or R-717.
    barometer : float, optional
        Air pressure [kPa].

    Returns
    -------
    float
        Subcooling [K].

    References
    ----------
    Saturation by CoolProp 8.0.0.
    """
    # By the bubble curve, since it is liquid, for the same reason the other way round.
    bubble = _saturation(bubble_temperature, refrigerant, pressure, barometer)
    return round(bubble - temperature, 2)


def _judged(
    bands: Bands, kelvin: float, subject: str, ends: tuple[float, float], vacuum: bool = False
) -> Judgement:
    """Return the judgement of superheat or subcooling [K] against its usual ends [K]."""
    low, high = ends
    subject = f"{subject}: {show(kelvin, 'K', 1)}, against {show(low, 'K')} to {show(high, 'K')},"
    notes = NOTES
    # dry vapour cannot be colder than its dew point, nor liquid warmer than its bubble point
    if kelvin < 0:
        wrong = (
            "A figure below zero is a misread gauge, the wrong gas, or a mixture of liquid and "
            "vapour in the line: read again."
        )
        notes = (wrong, *notes)
    if vacuum:
        notes = ("Below atmospheric pressure: air can be drawn in.", *notes)
    return judge_between(bands.band_of(kelvin), subject, (kelvin, "K"), ends, notes)


def judge_superheat(
    temperature: float,
    pressure: float,
    refrigerant: str,
    place: str,
    limits: Mapping[str, float],
    barometer: float | None = None,
) -> Judgement:
    """Judge the superheat of the suction.

    Parameters
    ----------
    temperature : float
        Suction line [°C].
    pressure : float
        Suction pressure, gauge [kPa].
    refrigerant : str
        Refrigerant: R-22, R-134a, R-404A, R-407C, R-507A or R-717.
    place : str
        Where it was taken: evaporator or compressor.
    limits : mapping of str to float
        The limits of ``SUPERHEAT``.
    barometer : float, optional
        Air pressure [kPa].

    Returns
    -------
    Judgement
        Value, limit and margin in K of superheat.

    References
    ----------
    Saturation by CoolProp 8.0.0, dew curve. Common practice: 4 to 8 K at the evaporator, 8 to 20 K
    at the compressor, under 3 K liquid may return.
    """
    kelvin = superheat(temperature, pressure, refrigerant, barometer)
    vacuum = pressure < 0
    gauge = f"{show(pressure, 'kPa')} gauge{' (vacuum)' if vacuum else ''}"
    subject = f"Superheat at the {place} of {refrigerant} at {show(temperature, '°C')} and {gauge}"
    ends = (limits[f"{place}_least"], limits[f"{place}_most"])
    return _judged(superheat_bands(place, limits), kelvin, subject, ends, vacuum)


def judge_subcooling(
    temperature: float,
    pressure: float,
    refrigerant: str,
    limits: Mapping[str, float],
    barometer: float | None = None,
) -> Judgement:
    """Judge the subcooling of the liquid.

    Parameters
    ----------
    temperature : float
        Liquid line [°C].
    pressure : float
        Liquid pressure, gauge [kPa].
    refrigerant : str
        Refrigerant: R-22, R-134a, R-404A, R-407C, R-507A or R-717.
    limits : mapping of str to float
        The limits of ``SUBCOOLING``.
    barometer : float, optional
        Air pressure [kPa].

    Returns
    -------
    Judgement
        Value, limit and margin in K of subcooling.

    References
    ----------
    Saturation by CoolProp 8.0.0, bubble curve. Common practice: 3 to 8 K; up to 2 K short of gas,
    above 12 K too much.
    """
    kelvin = subcooling(temperature, pressure, refrigerant, barometer)
    subject = (
        f"Subcooling of {refrigerant} at {show(temperature, '°C')} and "
        f"{show(pressure, 'kPa')} gauge"
    )
    ends = (limits["least"], limits["most"])
    return _judged(subcooling_bands(limits), kelvin, subject, ends)


_REFRIGERANT = Field("refrigerant", "Refrigerant", "choice", choices=tuple(CURVES))
_BAROMETER = number_field("barometer", "Air pressure", "kPa", 90, 110, optional=True)
_CHECKED = (
    "The table against CoolProp between its rows, six cases with both curves; the "
    "bands are trade guidance."
)

CRITERIA = (
    Criterion(
        "suction-superheat",
        "Superheat of the suction gas",
        (
            number_field("temperature", "Suction line", "°C", -60, 60),
            number_field("pressure", "Suction pressure, gauge", "kPa", -100, 3000),
            _REFRIGERANT,
            Field("place", "Where it was taken", "choice", choices=("evaporator", "compressor")),
            _BAROMETER,
        ),
        SOURCE,
        judge_superheat,
        "The six refrigerants of the table, saturation at -50 to 60 °C.",
        _CHECKED,
        limit_set=SUPERHEAT,
    ),
    Criterion(
        "liquid-subcooling",
        "Subcooling of the liquid before the valve",
        (
            number_field("temperature", "Liquid line", "°C", -60, 90),
            number_field("pressure", "Liquid pressure, gauge", "kPa", -100, 3000),
            _REFRIGERANT,
            _BAROMETER,
        ),
        SOURCE,
        judge_subcooling,
        "The six refrigerants of the table, saturation at -50 to 60 °C.",
        _CHECKED,
        limit_set=SUBCOOLING,
    ),
)
