"""What leaves a ship: oily water, sewage, ballast, burnt and stored waste, each by its rule and the day it was fitted."""

from datetime import date

from inspector.criteria.exact import exact
from inspector.criteria.judgement import Criterion, Input, Judgement, refuse
from inspector.criteria.ladder import Ladder, below, beyond, stairs, to
from inspector.criteria.months import add_months
from inspector.criteria.source import Source
from inspector.criteria.telling import told
from inspector.quantities import show

OILY = Source(
    "MARPOL Annex I, regulations 14 and 15, with MEPC.107(49)", "2003, as amended by MEPC.285(70)", "15 ppm; equipment fitted from 1 January 2005", "seen"
)
SEWAGE = Source("MARPOL Annex IV, regulation 9, with MEPC.2(VI), MEPC.159(55) and MEPC.227(64)", "dates recalled", "standard by date of fitting", "memory")
INCINERATOR = Source("MARPOL Annex VI, regulation 16, with MEPC.244(66)", "recalled", "outlet temperature", "memory")
SLUDGE = Source("MARPOL Annex I, regulation 12 and its interpretation", "recalled", "V = K C D", "memory")

PPM = 15.0
OIL_STANDARDS = ("none shown", "A.393(X)", "MEPC.60(33)", "MEPC.107(49)")
OIL_FROM = date(2005, 1, 1)
CALIBRATION_MONTHS = 60
SEWAGE_STANDARDS = ("none shown", "MEPC.2(VI)", "MEPC.159(55)", "MEPC.227(64)")
SEWAGE_FROM = ((date(2016, 1, 1), "MEPC.227(64)"), (date(2010, 1, 1), "MEPC.159(55)"))
OUTLET = {"continuous": 850.0, "batch": 600.0}  # °C; batch within 5 min of the start
SLUDGE_SHARE = {"distillate": 0.005, "heavy fuel": 0.015}


def content_ladder() -> Ladder:
    """Two bands of the oil content of the effluent [ppm]. MARPOL Annex I (seen)."""
    return stairs(
        "ppm",
        to(PPM, "within the limit", "good", "within it"),
        beyond("over the limit", "failed", "over it: nothing may go overboard"),
    )


def judge_content(content: float) -> Judgement:
    """Judge the oil content of water from the filtering equipment.

    Parameters
    ----------
    content [ppm], 0 to 10 000, as the monitor or a sample shows it.

    References
    ----------
    MARPOL Annex I reg. 14 and 15, MEPC.107(49): at most 15 ppm (seen).
    """
    return told(
        "oily-water-content",
        content_ladder().step(content),
        f"An oil content of {show(content, 'ppm')}, against at most {show(PPM, 'ppm')},",
        (content, "ppm", PPM),
        OILY,
        (
            "Ask for the test with clean water and the alarm: above 15 ppm the valve must turn the flow back.",
            "Nothing is pumped overboard for a test in port.",
        ),
    )


def oil_standard_asked(installed: date) -> str:
    """Return the standard asked of equipment by the day it was fitted; "an earlier one" before 2005. MEPC.107(49) (seen)."""
    return "MEPC.107(49)" if installed >= OIL_FROM else "an earlier one"


def judge_equipment(installed: date, standard: str, calibrated: date | None = None, on: date | None = None) -> Judgement:
    """Judge the oil filtering equipment by its standard, and its alarm by the date of calibration.

    Parameters
    ----------
    installed : when it was fitted; standard : on the plate and the type approval; calibrated : last calibration of the 15 ppm alarm; on : the day.

    Notes
    -----
    Older equipment than asked is failed; lawful older equipment fair; no standard shown, or a calibration overdue, poor.

    References
    ----------
    MEPC.107(49) for all equipment fitted from 1 January 2005; calibration within five years, MEPC.285(70) (seen).
    """
    late, told_of = _calibration(calibrated, on)
    if standard == "none shown":
        band, rating, meaning = "standard not shown", "poor", "find the plate and the type approval"
    elif standard != "MEPC.107(49)" and installed >= OIL_FROM:
        band, rating, meaning = "below the asked standard", "failed", "older than its date of fitting allows"
    elif late:
        band, rating, meaning = "calibration overdue", "poor", "of the right standard, but its alarm is overdue for calibration"
    elif standard == "MEPC.107(49)":
        band, rating, meaning = "present standard", "good", "enough"
    else:
        band, rating, meaning = "lawful, older standard", "fair", "lawful as fitted, of an older standard"
    asked = oil_standard_asked(installed)
    sentence = f"Equipment of {installed.isoformat()} asks for {asked}, and this shows {standard}: {meaning}."
    return Judgement("oily-water-equipment", band, rating, None, None, None, None, sentence, OILY, told_of)


def _calibration(calibrated: date | None, on: date | None) -> tuple[bool, tuple[str, ...]]:
    if calibrated is None or on is None:
        return False, ("The calibration of the 15 ppm alarm is not known; it may not be older than five years.",)
    if calibrated > on:
        refuse("oily-water-equipment", "calibrated", calibrated, f"a calibration of {calibrated.isoformat()} lies after the day, {on.isoformat()}")
    due = add_months(calibrated, CALIBRATION_MONTHS)
    return on > due, (f"The alarm's calibration of {calibrated.isoformat()} is due again by {due.isoformat()}.",)


def sewage_standard_asked(installed: date) -> str:
    """Return the standard asked of a sewage plant by the day it was fitted. MARPOL Annex IV (dates memory)."""
    return next((standard for since, standard in SEWAGE_FROM if installed >= since), "MEPC.2(VI)")


def judge_sewage(installed: date, standard: str, capacity: int | None = None, persons: int | None = None) -> Judgement:
    """Judge a sewage treatment plant by its standard, and its size by the persons on board.

    Parameters
    ----------
    installed : when it was fitted; standard : on plate and type approval; capacity : persons by the plate; persons : to be carried.

    References
    ----------
    MEPC.2(VI) before 2010, MEPC.159(55) from 1 January 2010, MEPC.227(64) from 1 January 2016 (memory).
    """
    asked = sewage_standard_asked(installed)
    small = capacity is not None and persons is not None and capacity < persons
    if standard == "none shown":
        band, rating, meaning = "standard not shown", "poor", "find the plate and the type approval"
    elif SEWAGE_STANDARDS.index(standard) < SEWAGE_STANDARDS.index(asked):
        band, rating, meaning = "below the asked standard", "failed", "older than its date of fitting allows"
    elif small:
        band, rating, meaning = "too small", "poor", f"of the right standard, but for {capacity} of {persons} persons"
    elif standard == SEWAGE_STANDARDS[-1]:
        band, rating, meaning = "present standard", "good", "enough"
    else:
        band, rating, meaning = "lawful, older standard", "fair", "lawful as fitted; a new plant would have to meet MEPC.227(64)"
    sentence = f"A plant of {installed.isoformat()} asks for {asked}, and this shows {standard}: {meaning}."
    notes = ("More than 12 passengers, or nutrient limits of a special area, ask for more.", "Annex IV applies from 400 GT or to more than 15 persons.")
    margin = None if capacity is None or persons is None else float(capacity - persons)
    return Judgement("sewage-plant", band, rating, capacity, "" if capacity is not None else None, persons, margin, sentence, SEWAGE, notes)


def outlet_ladder(kind: str) -> Ladder:
    """Two bands of an incinerator's outlet temperature [°C]."""
    return stairs(
        "°C",
        below(OUTLET[kind], "too cool", "poor", "too cool: it may not be fed"),
        beyond("hot enough", "good", "hot enough"),
    )


def judge_outlet(temperature: float, kind: str) -> Judgement:
    """Judge the outlet temperature of an incinerator's chamber.

    Parameters
    ----------
    temperature [°C], 0 to 1500; kind : continuous, or batch (within 5 min of the start).

    References
    ----------
    MARPOL VI reg. 16: 850 °C where fed continuously; 600 °C within 5 min for batch loading (memory).
    """
    limit = OUTLET[kind]
    return told(
        "incinerator-temperature",
        outlet_ladder(kind).step(temperature),
        f"An outlet temperature of {show(temperature, '°C')} ({kind}), against at least {show(limit, '°C')},",
        (temperature, "°C", limit),
        INCINERATOR,
        ("Fitted after 1 January 2000 it needs type approval.",),
        at_least=True,
    )


def sludge_volume(consumption: float, days: int, fuel: str) -> float:
    """Return the least sludge tank [m³] for a consumption [t/day] and days between disposals: K C D.

    Examples
    --------
    >>> round(sludge_volume(10.23, 30, "distillate"), 2)
    1.53
    """
    return float(exact(SLUDGE_SHARE[fuel]) * exact(consumption) * days)


def sludge_ladder(consumption: float, days: int, fuel: str) -> Ladder:
    """Two bands of sludge tank volume [m³]."""
    return stairs(
        "m³",
        below(sludge_volume(consumption, days, fuel), "too small", "poor", "too small"),
        beyond("large enough", "good", "large enough"),
    )


def judge_sludge(volume: float, consumption: float, days: int, fuel: str) -> Judgement:
    """Judge the volume of the sludge tanks.

    Parameters
    ----------
    volume [m³], 0 to 500; consumption [t/day], 0 to 200; days : between ports that take sludge, 1 to 120; fuel : distillate or heavy fuel.

    References
    ----------
    MARPOL Annex I reg. 12: V = K C D with K 0.005 for distillate and 0.015 for purified heavy fuel (memory).
    """
    limit = sludge_volume(consumption, days, fuel)
    return told(
        "sludge-tank",
        sludge_ladder(consumption, days, fuel).step(volume),
        f"A sludge tank volume of {show(volume, 'm³')}, against at least {show(limit, 'm³')},",
        (volume, "m³", limit),
        SLUDGE,
        ("A flag may have set other figures for her date of build: the oil certificate's supplement lists the tanks.",),
        at_least=True,
    )


_FITTED = Input("installed", "When it was fitted", "date", low=date(1970, 1, 1))

CRITERIA = (
    Criterion(
        "oily-water-content",
        "Oil content of discharged bilge water",
        (Input("content", "Oil content", "number", "ppm", low=0, high=10_000),),
        OILY,
        judge_content,
        "Effluent of oil filtering equipment, 0 to 10 000 ppm.",
        "The limit from both sides.",
        ladder=content_ladder,
    ),
    Criterion(
        "oily-water-equipment",
        "Oil filtering equipment by its date, and its alarm's calibration",
        (
            _FITTED,
            Input("standard", "Standard on the plate", "choice", choices=OIL_STANDARDS),
            Input("calibrated", "Last calibration of the alarm", "date", optional=True, low=date(1980, 1, 1), high=date(2200, 12, 31)),
            Input("on", "Day", "date", optional=True, low=date(1980, 1, 1), high=date(2200, 12, 31)),
        ),
        OILY,
        judge_equipment,
        "Oil filtering equipment fitted since 1970.",
        "The date of fitting and the five years from both sides.",
    ),
    Criterion(
        "sewage-plant",
        "Sewage treatment plant by its date and size",
        (
            _FITTED,
            Input("standard", "Standard on the plate", "choice", choices=SEWAGE_STANDARDS),
            Input("capacity", "Persons by the plate", "whole", optional=True, low=1, high=2000),
            Input("persons", "Persons to be carried", "whole", optional=True, low=1, high=2000),
        ),
        SEWAGE,
        judge_sewage,
        "Sewage treatment plants fitted since 1970, for 1 to 2000 persons.",
        "Both recalled dates and the size from both sides.",
    ),
    Criterion(
        "incinerator-temperature",
        "Outlet temperature of an incinerator",
        (Input("temperature", "Outlet temperature", "number", "°C", low=0, high=1500), Input("kind", "How it is fed", "choice", choices=tuple(OUTLET))),
        INCINERATOR,
        judge_outlet,
        "Shipboard incinerators, 0 to 1500 °C.",
        "Both recalled limits from both sides.",
        ladder=outlet_ladder,
    ),
    Criterion(
        "sludge-tank",
        "Volume of the sludge tanks",
        (
            Input("volume", "Volume of the tanks", "number", "m³", low=0, high=500),
            Input("consumption", "Fuel burnt a day", "number", "t/day", low=0, high=200),
            Input("days", "Days between disposals", "whole", low=1, high=120),
            Input("fuel", "Fuel", "choice", choices=tuple(SLUDGE_SHARE)),
        ),
        SLUDGE,
        judge_sludge,
        "Ships without sludge incineration, 0 to 200 t of fuel a day, 1 to 120 days.",
        "One case by our own arithmetic on a recalled formula, from both sides.",
        ladder=sludge_ladder,
    ),
)
