"""The readings of an enclosed space: their order, the instrument and its calibration.

Like the readings themselves these report inside or outside a text. Whether anyone enters is decided
aboard, by permit.
"""

from datetime import date, timedelta

from inspector.criteria.core.criterion import Criterion
from inspector.criteria.core.judgement import Judgement, judgement_in_words, refuse
from inspector.criteria.core.orders import AT_MOST, Order
from inspector.criteria.core.source import Source
from inspector.values.field import Field, number_field
from inspector.values.formatting import show
from inspector.values.numbers import difference
from inspector.values.text import counted

SEQUENCE = Source.seen(
    "29 CFR 1915.12, Precautions before entering confined and enclosed spaces (US shipyards)",
    "as published by the agency",
    "sequence of testing",
)
CARRIED = Source.seen(
    "SOLAS XI-1/7 with MSC.1/Circ.1485, atmosphere testing instrument",
    "in force 1 July 2016",
    "instrument to be carried",
)
CALIBRATED = Source.seen(
    "Resolution A.1050(27), Recommendations for entering enclosed spaces aboard ships",
    "replaced by MSC.581(110) in December 2025",
    "7, properly calibrated equipment",
)
ORDER = ("oxygen", "flammable gas", "toxic gas")
YES_NO = ("yes", "no")
DECIDES = (
    "It decides no entry: that needs the ship's permit, an attendant, rescue equipment "
    "and those responsible under local law."
)


def judge_order(first: str, second: str, third: str) -> Judgement:
    """Report whether the air was tested in the order of the rule.

    Parameters
    ----------
    first : str
        Tested first: oxygen, flammable gas or toxic gas.
    second : str
        Tested second: oxygen, flammable gas or toxic gas.
    third : str
        Tested third: oxygen, flammable gas or toxic gas.

    Returns
    -------
    Judgement

    References
    ----------
    29 CFR 1915.12 (seen): oxygen, then flammability, then toxicity.
    """
    tested = (first, second, third)
    # One gas tested twice leaves another untested, which no order makes good.
    if len(set(tested)) < 3:
        twice = next(name for name in tested if tested.count(name) > 1)
        refuse("second", second, f"{twice} is named twice, and each of the three is tested once")
    band = "in the order of the rule" if tested == ORDER else "out of order"
    sentence = f"Tested {', then '.join(tested)}: {band}, which is {', then '.join(ORDER)}."
    notes = (
        "Most combustible sensors mis-read where oxygen is low, so oxygen comes first.",
        DECIDES,
    )
    return judgement_in_words(band, None, sentence, notes)


def judge_instrument(
    oxygen: str,
    flammable: str,
    hydrogen_sulphide: str,
    carbon_monoxide: str,
    remote: str,
    carbon_dioxide: str,
) -> Judgement:
    """Judge whether the ship's own instrument measures what it must.

    Parameters
    ----------
    oxygen : str
        Measures oxygen: yes or no.
    flammable : str
        Measures flammable gas: yes or no.
    hydrogen_sulphide : str
        Measures hydrogen sulphide: yes or no.
    carbon_monoxide : str
        Measures carbon monoxide: yes or no.
    remote : str
        Reaches the space from outside: yes or no.
    carbon_dioxide : str
        Measures carbon dioxide: yes or no.

    Returns
    -------
    Judgement

    References
    ----------
    SOLAS XI-1/7 and MSC.1/Circ.1485 (seen). Carbon dioxide has a limit since MSC.581(110) of
    December 2025 (seen in circulars), so that without it the instrument is fair only.
    """
    answers = {
        "oxygen": oxygen,
        "flammable gas": flammable,
        "hydrogen sulphide": hydrogen_sulphide,
        "carbon monoxide": carbon_monoxide,
        "sampling from outside": remote,
    }
    missing = [name for name, answer in answers.items() if answer == "no"]
    if missing:
        band, rating = "short of the rule", "poor"
        sentence = f"The instrument lacks {', '.join(missing)}, which the rule asks for."
    # Only the recommendation of 2025 has a limit for it: its lack is no lack by the rule.
    elif carbon_dioxide == "no":
        band, rating = "without carbon dioxide", "fair"
        sentence = (
            "The instrument measures the four gases of the rule, but not carbon dioxide, for which "
            "the recommendation of 2025 has a limit."
        )
    else:
        band, rating = "as the rule asks", "good"
        sentence = (
            "The instrument measures the four gases of the rule and carbon dioxide, and reaches "
            "into the space from outside."
        )
    notes = (
        "A meter worn on the body does not replace it: both are needed.",
        DECIDES,
    )
    return judgement_in_words(band, rating, sentence, notes)


def judge_calibration(used: date, interval: float, calibrated: date | None = None) -> Judgement:
    """Judge whether the calibration of a gas meter was valid on the day of its use.

    Parameters
    ----------
    used : date
        Day of the readings.
    interval : float
        Maker's interval [days].
    calibrated : date, optional
        Last calibration or bump test.

    Returns
    -------
    Judgement

    References
    ----------
    A.1050(27), 7 (seen): properly calibrated equipment. The interval is the maker's.
    """
    notes = (DECIDES,)
    # an unknown date is worse than an old one: nothing vouches for the readings
    if calibrated is None:
        sentence = "The meter's last calibration is unknown, so its readings prove nothing."
        band = "calibration unknown"
        return Judgement(band, "failed", None, "days", interval, None, sentence, notes)
    age = (used - calibrated).days
    due = calibrated + timedelta(days=interval)
    if age <= interval:
        band, rating, outcome = "calibrated", "good", "valid"
    else:
        band, rating, outcome = "calibration run out", "failed", "run out"
    sentence = (
        f"Calibrated {counted(age, 'day')} before its use, against {show(interval, 'days')} by its "
        f"maker (to {due.isoformat()}): {outcome}."
    )
    margin = difference(interval, age)
    return Judgement(band, rating, age, "days", interval, margin, sentence, notes)


CRITERIA = (
    Criterion(
        "test-order",
        "Order in which the air was tested",
        tuple(
            Field(name, f"Tested {name}", "choice", choices=ORDER)
            for name in ("first", "second", "third")
        ),
        SEQUENCE,
        judge_order,
        "Three kinds of gas, each tested once.",
        "All six orders against the published sequence.",
    ),
    Criterion(
        "entry-instrument",
        "What the ship's gas instrument measures",
        tuple(
            Field(name, label, "choice", choices=YES_NO)
            for name, label in (
                ("oxygen", "Measures oxygen"),
                ("flammable", "Measures flammable gas"),
                ("hydrogen_sulphide", "Measures hydrogen sulphide"),
                ("carbon_monoxide", "Measures carbon monoxide"),
                ("remote", "Reaches the space from outside"),
                ("carbon_dioxide", "Measures carbon dioxide"),
            )
        ),
        CARRIED,
        judge_instrument,
        "Portable instruments of ships under the convention, yes or no for each.",
        "Each of the six asked things by its absence, against the published lists.",
    ),
    Criterion(
        "meter-calibration",
        "Calibration of a gas meter on the day of its use",
        (
            Field("used", "Day of the readings", "date", low=date(2000, 1, 1)),
            number_field("interval", "Maker's interval", "days", 1, 1100),
            Field(
                "calibrated",
                "Last calibration or bump test",
                "date",
                optional=True,
                low=date(2000, 1, 1),
            ),
        ),
        CALIBRATED,
        judge_calibration,
        "Dates from 2000, the maker's interval of 1 to 1100 days.",
        "The interval's last day and the day after by our own count; an unknown "
        "date counts against it.",
        orders=(
            Order(
                "calibrated",
                AT_MOST,
                "used",
                "a later calibration does not vouch for earlier readings",
            ),
        ),
    ),
)
