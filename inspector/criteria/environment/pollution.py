"""What leaves a ship: oily water and sewage, each by its rule and the day it was fitted."""

from datetime import date

from inspector.criteria.core.calendar import add_months
from inspector.criteria.core.criterion import Criterion
from inspector.criteria.core.judgement import Judgement, judgement_in_words, refuse
from inspector.criteria.core.orders import AT_LEAST, AT_MOST, Order
from inspector.criteria.core.source import Source
from inspector.values.field import Field

OILY = Source.seen(
    "MARPOL Annex I, regulations 14 and 15, with MEPC.107(49)",
    "2003, as amended by MEPC.285(70)",
    "15 ppm; equipment fitted from 1 January 2005",
)
SEWAGE = Source.seen(
    "MARPOL Annex IV, regulation 9, with MEPC.2(VI), MEPC.159(55) and MEPC.227(64)",
    "dates as an engineering institution's journal gives them, March 2016",
    "standard by date of fitting, 1 January 2010 and 2016",
)

OIL_STANDARDS = ("none shown", "A.393(X)", "MEPC.60(33)", "MEPC.107(49)")
OIL_FROM = date(2005, 1, 1)
CALIBRATION_MONTHS = 60
# resolution -> the year in which it was adopted (memory); no older plant can have been made to it
ADOPTED = {
    "MEPC.2(VI)": 1976,
    "A.393(X)": 1977,
    "MEPC.60(33)": 1992,
    "MEPC.107(49)": 2003,
    "MEPC.159(55)": 2006,
    "MEPC.227(64)": 2012,
}
SEWAGE_STANDARDS = ("none shown", "MEPC.2(VI)", "MEPC.159(55)", "MEPC.227(64)")
SEWAGE_FROM = ((date(2016, 1, 1), "MEPC.227(64)"), (date(2010, 1, 1), "MEPC.159(55)"))


def _refuse_newer_standard(installed: date, standard: str) -> None:
    """Refuse a standard that was adopted after the year of fitting."""
    adopted = ADOPTED.get(standard, 0)
    if adopted > installed.year:
        why = (
            f"{standard} was adopted in {adopted}, so that nothing fitted on "
            f"{installed.isoformat()} was made to it; read date and plate again"
        )
        refuse("standard", standard, why)


def oil_standard_asked(installed: date) -> str:
    """Return the standard required of equipment by the day of its fitting.

    Parameters
    ----------
    installed : date
        When it was fitted.

    Returns
    -------
    str
        Standard, "an earlier one" before 2005.

    References
    ----------
    MEPC.107(49) (seen).
    """
    return "MEPC.107(49)" if installed >= OIL_FROM else "an earlier one"


def judge_equipment(
    installed: date, standard: str, calibrated: date | None = None, on: date | None = None
) -> Judgement:
    """Judge the oil filtering equipment by its standard, and its alarm by the date of calibration.

    Parameters
    ----------
    installed : date
        When it was fitted.
    standard : str
        Standard on the plate: none shown, A.393(X), MEPC.60(33) or MEPC.107(49).
    calibrated : date, optional
        Last calibration of the alarm.
    on : date, optional
        Day.

    Returns
    -------
    Judgement

    Notes
    -----
    Older equipment than asked is failed; lawful older equipment fair; no standard shown, or a
    calibration overdue, poor.

    References
    ----------
    MEPC.107(49) for all equipment fitted from 1 January 2005; calibration within five years,
    MEPC.285(70) (seen).
    """
    _refuse_newer_standard(installed, standard)
    overdue, notes = _calibration(calibrated, on)
    if standard == "none shown":
        band, rating, meaning = "standard not shown", "poor", "find the plate and the type approval"
    elif standard != "MEPC.107(49)" and installed >= OIL_FROM:
        band, rating = "below the asked standard", "failed"
        meaning = "older than its date of fitting allows"
    # Behind the standard: a breach in the equipment is worse than one in its papers.
    elif overdue:
        band, rating = "calibration overdue", "poor"
        meaning = "of the right standard, but its alarm is overdue for calibration"
    elif standard == "MEPC.107(49)":
        band, rating, meaning = "present standard", "good", "enough"
    else:
        band, rating = "lawful, older standard", "fair"
        meaning = "lawful as fitted, of an older standard"
    sentence = (
        f"Equipment of {installed.isoformat()} asks for {oil_standard_asked(installed)}, and this "
        f"shows {standard}: {meaning}."
    )
    return judgement_in_words(band, rating, sentence, notes)


def _calibration(calibrated: date | None, on: date | None) -> tuple[bool, tuple[str, ...]]:
    """Return whether the calibration is overdue, and the note on it."""
    # Not known is a note and no breach: the paper may be in the office.
    if calibrated is None or on is None:
        return False, (
            "The calibration of the 15 ppm alarm is not known; it may not be older "
            "than five years.",
        )
    due = add_months(calibrated, CALIBRATION_MONTHS)
    return on > due, (
        f"The alarm's calibration of {calibrated.isoformat()} is due again by {due.isoformat()}.",
    )


def sewage_standard_asked(installed: date) -> str:
    """Return the standard required of a sewage plant by the day of its fitting.

    Parameters
    ----------
    installed : date
        When it was fitted.

    Returns
    -------
    str

    References
    ----------
    MARPOL Annex IV (dates from memory).
    """
    return next((standard for since, standard in SEWAGE_FROM if installed >= since), "MEPC.2(VI)")


def judge_sewage(
    installed: date, standard: str, capacity: int | None = None, persons: int | None = None
) -> Judgement:
    """Judge a sewage treatment plant by its standard, and its size by the persons on board.

    Parameters
    ----------
    installed : date
        When it was fitted.
    standard : str
        Standard on the plate, one of the choices.
    capacity : int, optional
        Persons by the plate.
    persons : int, optional
        Persons to be carried.

    Returns
    -------
    Judgement

    References
    ----------
    MEPC.2(VI) before 2010, MEPC.159(55) from 1 January 2010, MEPC.227(64) from 1 January 2016 (from
    memory).
    """
    _refuse_newer_standard(installed, standard)
    asked = sewage_standard_asked(installed)
    # In persons, which is how a plant is sized and a brief is written.
    margin = None if capacity is None or persons is None else float(capacity - persons)
    if standard == "none shown":
        band, rating, meaning = "standard not shown", "poor", "find the plate and the type approval"
    elif SEWAGE_STANDARDS.index(standard) < SEWAGE_STANDARDS.index(asked):
        band, rating = "below the asked standard", "failed"
        meaning = "older than its date of fitting allows"
    elif margin is not None and margin < 0:
        band, rating = "too small", "poor"
        meaning = f"of the right standard, but for {capacity} of {persons} persons"
    elif standard == SEWAGE_STANDARDS[-1]:
        band, rating, meaning = "present standard", "good", "enough"
    else:
        band, rating = "lawful, older standard", "fair"
        meaning = "lawful as fitted; a new plant would have to meet MEPC.227(64)"
    sentence = (
        f"A plant of {installed.isoformat()} asks for {asked}, and this shows {standard}: "
        f"{meaning}."
    )
    notes = (
        "More than 12 passengers, or nutrient limits of a special area, ask for more.",
        "Annex IV applies from 400 GT or to more than 15 persons.",
    )
    unit = None if capacity is None else ""
    return Judgement(band, rating, capacity, unit, persons, margin, sentence, notes)


_FITTED = Field("installed", "When it was fitted", "date", low=date(1970, 1, 1))

CRITERIA = (
    Criterion(
        "oily-water-equipment",
        "Oil filtering equipment by its date, and its alarm's calibration",
        (
            _FITTED,
            Field("standard", "Standard on the plate", "choice", choices=OIL_STANDARDS),
            Field(
                "calibrated",
                "Last calibration of the alarm",
                "date",
                optional=True,
                low=date(1980, 1, 1),
                high=date(2200, 12, 31),
            ),
            Field(
                "on", "Day", "date", optional=True, low=date(1980, 1, 1), high=date(2200, 12, 31)
            ),
        ),
        OILY,
        judge_equipment,
        "Oil filtering equipment fitted since 1970.",
        "The date of fitting and the five years from both sides.",
        orders=(
            Order("calibrated", AT_LEAST, "installed", "nothing is calibrated before it is fitted"),
            Order("calibrated", AT_MOST, "on", "what is still to come proves nothing on the day"),
            Order(
                "installed", AT_MOST, "on", "what is still to be fitted cannot be judged on the day"
            ),
        ),
    ),
    Criterion(
        "sewage-plant",
        "Sewage treatment plant by its date and size",
        (
            _FITTED,
            Field("standard", "Standard on the plate", "choice", choices=SEWAGE_STANDARDS),
            Field("capacity", "Persons by the plate", "whole", optional=True, low=1, high=2000),
            Field("persons", "Persons to be carried", "whole", optional=True, low=1, high=2000),
        ),
        SEWAGE,
        judge_sewage,
        "Sewage treatment plants fitted since 1970, for 1 to 2000 persons.",
        "Both recalled dates and the size from both sides.",
    ),
)
