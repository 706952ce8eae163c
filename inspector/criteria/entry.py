"""What stands around the readings of an enclosed space: their order and age, the instrument and its calibration.

Like the readings themselves these say inside or outside a text. Whether anyone enters is decided aboard, by permit.
"""

from collections.abc import Mapping
from datetime import date, timedelta

from inspector.criteria.judgement import Criterion, Input, Judgement, refuse
from inspector.criteria.ladder import Ladder, beyond, stairs, to
from inspector.criteria.profiles import Limit, Profile
from inspector.criteria.source import Source
from inspector.criteria.telling import told
from inspector.quantities import difference, show

SEQUENCE = Source("29 CFR 1915.12, Precautions before entering confined and enclosed spaces (US shipyards)", "as published by the agency",
                  "sequence of testing", "seen")
AGE = Source("Age of the readings before entry into an enclosed space", "no publisher", "re-test within 15 minutes", "common practice")
CARRIED = Source("SOLAS XI-1/7 with MSC.1/Circ.1485, atmosphere testing instrument", "in force 1 July 2016", "instrument to be carried", "seen")
CALIBRATED = Source("Resolution A.1050(27), Recommendations for entering enclosed spaces aboard ships", "replaced by MSC.581(110) in December 2025",
                    "7, properly calibrated equipment", "seen")
ORDER = ("oxygen", "flammable gas", "toxic gas")
RETEST = Profile("Re-test before entry", (Limit("longest", "readings hold for at most", "min", 15, 1, 60),), AGE)
YES_NO = ("yes", "no")
DECIDES = "It decides no entry: that needs the ship's permit, an attendant, rescue equipment and those responsible under local law."


def judge_order(first: str, second: str, third: str) -> Judgement:
    """Tell whether the air was tested in the order of the rule.

    Parameters
    ----------
    first, second, third : oxygen, flammable gas or toxic gas, as they were tested.

    References
    ----------
    29 CFR 1915.12 (seen): oxygen, then flammability, then toxicity.
    """
    tested = (first, second, third)
    if len(set(tested)) < 3:
        twice = next(name for name in tested if tested.count(name) > 1)
        refuse("test-order", "second", second, f"{twice} stands twice, and each of the three is tested once")
    inside = tested == ORDER
    band = "in the order of the rule" if inside else "out of order"
    sentence = f"Tested {', then '.join(tested)}: {band}, which is {', then '.join(ORDER)}."
    notes = ("Most combustible sensors mis-read where oxygen is low, so oxygen comes first.", DECIDES)
    return Judgement("test-order", band, None, None, None, None, None, sentence, SEQUENCE, notes)


def age_ladder(limits: Mapping[str, float]) -> Ladder:
    """Bands of the age of readings [min]."""
    return stairs(
        "min",
        to(limits["longest"], "inside the interval", None, "inside the interval, if nothing has changed since"),
        beyond("test again", None, "too old: test again"),
    )


def judge_age(minutes: float, limits: Mapping[str, float]) -> Judgement:
    """Tell whether readings of the air are to be taken again.

    Parameters
    ----------
    minutes [min] since the readings; limits : those of RETEST.

    References
    ----------
    The texts ask for readings before entry and at intervals, without a figure; 15 minutes is common practice.
    """
    longest = limits["longest"]
    said = f"A set of readings {show(minutes, 'min')} old, against at most {show(longest, 'min')},"
    notes = ("Always test again after a break, a stop of ventilation, new work, an opened line, tide or heat that moves vapour, or an alarm.", DECIDES)
    return told("reading-age", age_ladder(limits).step(minutes), said, (minutes, "min", longest), AGE, notes)


def judge_instrument(oxygen: str, flammable: str, hydrogen_sulphide: str, carbon_monoxide: str, remote: str) -> Judgement:
    """Judge whether the ship's own instrument measures what it must.

    Parameters
    ----------
    oxygen, flammable, hydrogen_sulphide, carbon_monoxide : yes or no; remote : yes where it reaches the space from outside.

    References
    ----------
    SOLAS XI-1/7 and MSC.1/Circ.1485 (seen); carbon dioxide is expected since MSC.581(110) (seen in circulars).
    """
    had = {"oxygen": oxygen, "flammable gas": flammable, "hydrogen sulphide": hydrogen_sulphide, "carbon monoxide": carbon_monoxide,
           "sampling from outside": remote}
    short = [name for name, answer in had.items() if answer == "no"]
    band, rating = ("as the rule asks", "good") if not short else ("short of the rule", "poor")
    sentence = "The instrument measures all four gases and reaches into the space from outside." if not short else \
        f"The instrument lacks {', '.join(short)}, which the rule asks for."
    notes = ("Carbon dioxide is now expected as well.", "A meter worn on the body does not replace it: both are needed.", DECIDES)
    return Judgement("entry-instrument", band, rating, None, None, None, None, sentence, CARRIED, notes)


def judge_calibration(used: date, interval: float, calibrated: date | None = None) -> Judgement:
    """Judge whether the calibration of a gas meter held on the day it was used.

    Parameters
    ----------
    used : day of the readings; interval [days] : the maker's; calibrated : day of the last calibration or bump test, missing where unknown.

    References
    ----------
    A.1050(27), 7 (seen): properly calibrated equipment. The interval is the maker's.
    """
    if calibrated is None:
        sentence = "The meter's last calibration is unknown, so its readings prove nothing."
        return Judgement("meter-calibration", "calibration unknown", "failed", None, "days", interval, None, sentence, CALIBRATED, (DECIDES,))
    if calibrated > used:
        refuse("meter-calibration", "calibrated", calibrated, f"the calibration of {calibrated} lies after the readings of {used}")
    age = (used - calibrated).days
    due = calibrated + timedelta(days=interval)
    band, rating, said = ("calibrated", "good", "valid") if age <= interval else ("calibration run out", "failed", "run out")
    sentence = f"Calibrated {age} days before its use, against {show(interval, 'days')} by its maker (to {due.isoformat()}): {said}."
    return Judgement("meter-calibration", band, rating, age, "days", interval, difference(interval, age), sentence, CALIBRATED, (DECIDES,))


CRITERIA = (
    Criterion(
        "test-order", "Order in which the air was tested",
        tuple(Input(name, f"Tested {name}", "choice", choices=ORDER) for name in ("first", "second", "third")),
        SEQUENCE, judge_order, "Three kinds of gas, each tested once.", "All six orders against the published sequence.",
    ),
    Criterion(
        "reading-age", "Age of the readings of the air", (Input("minutes", "Since the readings", "number", "min", low=0, high=1440),),
        AGE, judge_age, "Readings of the last day.", "The limit from both sides; the figure is common practice.", profile=RETEST, ladder=age_ladder,
    ),
    Criterion(
        "entry-instrument", "What the ship's gas instrument measures",
        tuple(Input(name, label, "choice", choices=YES_NO) for name, label in (
            ("oxygen", "Measures oxygen"), ("flammable", "Measures flammable gas"), ("hydrogen_sulphide", "Measures hydrogen sulphide"),
            ("carbon_monoxide", "Measures carbon monoxide"), ("remote", "Reaches the space from outside"))),
        CARRIED, judge_instrument, "Portable instruments of ships under the convention, yes or no for each.",
        "Each of the five asked things by its absence, against the published list.",
    ),
    Criterion(
        "meter-calibration", "Calibration of a gas meter on the day of its use",
        (Input("used", "Day of the readings", "date", low=date(2000, 1, 1)), Input("interval", "Maker's interval", "number", "days", low=1, high=1100),
         Input("calibrated", "Last calibration or bump test", "date", optional=True, low=date(2000, 1, 1))),
        CALIBRATED, judge_calibration, "Dates from 2000, the maker's interval of 1 to 1100 days.",
        "The interval's last day and the day after by our own count; an unknown date counts against it.",
    ),
)
