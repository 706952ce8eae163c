"""Superheat of the suction and subcooling of the liquid: a gauge and a thermometer against the saturation table.

Blends glide: superheat is counted from the dew curve and subcooling from the bubble curve; the wrong one errs by 6 K on R-407C.
"""

from collections.abc import Callable, Mapping

from inspector.criteria.judgement import Criterion, Input, Judgement, refuse
from inspector.criteria.ladder import Ladder, below, beyond, stairs, to
from inspector.criteria.profiles import Limit, Profile
from inspector.criteria.saturation import CURVES, OutsideTable, bubble_temperature, dew_temperature
from inspector.criteria.source import Source
from inspector.criteria.telling import told_between
from inspector.quantities import show

SOURCE = Source("Superheat and subcooling of refrigerating plant", "no publisher; saturation table by CoolProp 8.0.0", "bands in K", "common practice")
ATMOSPHERE = 101.325  # kPa
SUPERHEAT = Profile(
    "Superheat of the suction",
    (
        Limit("flood", "liquid may come back below", "K", 3, 0.5, 3.5),
        Limit("evaporator_least", "at the evaporator from", "K", 4, 3.5, 6),
        Limit("evaporator_most", "at the evaporator to", "K", 8, 6, 20),
        Limit("compressor_least", "at the compressor from", "K", 8, 3.5, 12),
        Limit("compressor_most", "at the compressor to", "K", 20, 12, 40),
    ),
    SOURCE,
)
SUBCOOLING = Profile(
    "Subcooling of the liquid",
    (
        Limit("short", "too little up to", "K", 2, 0, 2.5),
        Limit("least", "usual from", "K", 3, 2.5, 5),
        Limit("most", "usual to", "K", 8, 5, 10),
        Limit("over", "too much above", "K", 12, 10, 25),
    ),
    SOURCE,
)
NOTES = (
    "Steady running for 15 min, sensor clamped and lagged, gauge near it; the pressure drop between the two is neglected.",
    "Gauges are connected by certified persons only; read what is fitted.",
)


def superheat_ladder(place: str, limits: Mapping[str, float]) -> Ladder:
    """Four bands of superheat [K] at evaporator or compressor."""
    return stairs(
        "K",
        below(limits["flood"], "liquid may come back", "poor", "so low that liquid may reach the compressor"),
        below(limits[f"{place}_least"], "low", "fair", "low: watch for liquid at the compressor"),
        to(limits[f"{place}_most"], "usual", "good", "as usual"),
        beyond("high", "fair", "high: little gas, a starved evaporator or a warm suction line"),
    )


def subcooling_ladder(limits: Mapping[str, float]) -> Ladder:
    """Five bands of subcooling [K]."""
    return stairs(
        "K",
        to(limits["short"], "too little", "poor", "too little: with bubbles in the glass, short of gas"),
        below(limits["least"], "low", "fair", "low"),
        to(limits["most"], "usual", "good", "as usual"),
        to(limits["over"], "high", "fair", "high"),
        beyond("too much", "poor", "too much: overcharged, or a block before the valve"),
    )


def _absolute(pressure: float, barometer: float | None) -> float:
    return pressure + (ATMOSPHERE if barometer is None else barometer)


def _saturation(criterion: str, curve: Callable[[str, float], float], refrigerant: str, pressure: float, barometer: float | None) -> float:
    try:
        return curve(refrigerant, _absolute(pressure, barometer))
    except OutsideTable as outside:
        refuse(criterion, "pressure", pressure, str(outside).rstrip("."))


def superheat(temperature: float, pressure: float, refrigerant: str, barometer: float | None = None) -> float:
    """Return the superheat [K] of a suction line [°C] at a gauge pressure [kPa], from the dew curve; 0.1 K is all it can tell."""
    dew = _saturation("suction-superheat", dew_temperature, refrigerant, pressure, barometer)
    return round(temperature - dew, 2)


def subcooling(temperature: float, pressure: float, refrigerant: str, barometer: float | None = None) -> float:
    """Return the subcooling [K] of a liquid line [°C] at a gauge pressure [kPa], from the bubble curve."""
    bubble = _saturation("liquid-subcooling", bubble_temperature, refrigerant, pressure, barometer)
    return round(bubble - temperature, 2)


def _told(name: str, ladder: Ladder, kelvin: float, words: str, low: float, high: float) -> Judgement:
    said = f"{words}: {show(kelvin, 'K', 1)}, against {show(low, 'K')} to {show(high, 'K')},"
    vacuum = ("Below atmospheric pressure: air can be drawn in.",) if "vacuum" in words else ()
    wrong = ("A figure below zero is a misread gauge, the wrong gas, or a mixture of liquid and vapour in the line: read again.",) if kelvin < 0 else ()
    return told_between(name, ladder.step(kelvin), said, (kelvin, "K"), (low, high), SOURCE, (*vacuum, *wrong, *NOTES))


def judge_superheat(
    temperature: float, pressure: float, refrigerant: str, place: str, limits: Mapping[str, float], barometer: float | None = None
) -> Judgement:
    """Judge the superheat of the suction.

    Parameters
    ----------
    temperature [°C] of the suction line, -60 to 60; pressure [kPa] gauge beside it; refrigerant : one of the table; place : evaporator or
    compressor; barometer [kPa], 101.325 where not told; limits : the profile.

    Returns
    -------
    Judgement : value, limit and margin in K of superheat.

    References
    ----------
    Saturation by CoolProp 8.0.0, dew curve. Common practice: 4 to 8 K at the evaporator, 8 to 20 K at the compressor, under 3 K liquid may return.
    """
    kelvin = superheat(temperature, pressure, refrigerant, barometer)
    gauge = f"{show(pressure, 'kPa')} gauge{' (vacuum)' if pressure < 0 else ''}"
    words = f"Superheat at the {place} of {refrigerant} at {show(temperature, '°C')} and {gauge}"
    return _told("suction-superheat", superheat_ladder(place, limits), kelvin, words, limits[f"{place}_least"], limits[f"{place}_most"])


def judge_subcooling(temperature: float, pressure: float, refrigerant: str, limits: Mapping[str, float], barometer: float | None = None) -> Judgement:
    """Judge the subcooling of the liquid.

    Parameters
    ----------
    temperature [°C] of the liquid line, -60 to 90; pressure [kPa] gauge beside it; refrigerant : one of the table; barometer [kPa], 101.325 where
    not told; limits : the profile.

    Returns
    -------
    Judgement : value, limit and margin in K of subcooling.

    References
    ----------
    Saturation by CoolProp 8.0.0, bubble curve. Common practice: 3 to 8 K; up to 2 K short of gas, above 12 K too much.
    """
    kelvin = subcooling(temperature, pressure, refrigerant, barometer)
    words = f"Subcooling of {refrigerant} at {show(temperature, '°C')} and {show(pressure, 'kPa')} gauge"
    return _told("liquid-subcooling", subcooling_ladder(limits), kelvin, words, limits["least"], limits["most"])


_REFRIGERANT = Input("refrigerant", "Refrigerant", "choice", choices=tuple(CURVES))
_BAROMETER = Input("barometer", "Air pressure", "number", "kPa", optional=True, low=90, high=110)
_CHECKED = "The table against CoolProp between its rows, six cases with both curves; the bands are trade guidance."

CRITERIA = (
    Criterion(
        "suction-superheat",
        "Superheat of the suction gas",
        (
            Input("temperature", "Suction line", "number", "°C", low=-60, high=60),
            Input("pressure", "Suction pressure, gauge", "number", "kPa", low=-100, high=3000),
            _REFRIGERANT,
            Input("place", "Where it was taken", "choice", choices=("evaporator", "compressor")),
            _BAROMETER,
        ),
        SOURCE,
        judge_superheat,
        "The six refrigerants of the table, saturation at -50 to 60 °C.",
        _CHECKED,
        profile=SUPERHEAT,
    ),
    Criterion(
        "liquid-subcooling",
        "Subcooling of the liquid before the valve",
        (
            Input("temperature", "Liquid line", "number", "°C", low=-60, high=90),
            Input("pressure", "Liquid pressure, gauge", "number", "kPa", low=-100, high=3000),
            _REFRIGERANT,
            _BAROMETER,
        ),
        SOURCE,
        judge_subcooling,
        "The six refrigerants of the table, saturation at -50 to 60 °C.",
        _CHECKED,
        profile=SUBCOOLING,
    ),
)
