"""Engine tiers of the United States by model year, power and displacement, under that flag."""

from inspector.criteria.core.criterion import Criterion
from inspector.criteria.core.judgement import Judgement, judgement_in_words
from inspector.criteria.core.source import Source
from inspector.values.field import Field, number_field
from inspector.values.formatting import show

PART_1042 = Source.seen(
    "40 CFR part 1042 and its forerunner, marine compression-ignition engines",
    "first model years as in public extracts",
    "1042.1 and the tier 4 dates",
)
RECALLED = Source.recalled(
    "40 CFR part 1042 and its forerunner, marine compression-ignition engines", "first model years"
)
US_TIERS = ("none", "1", "2", "3", "4")
# upper end of displacement [l per cylinder] -> first model year
TIER_2 = ((0.9, 2005), (2.5, 2004), (30, 2007))
TIER_3 = ((0.9, 2012), (1.2, 2013), (2.5, 2014), (3.5, 2013), (7, 2012), (15, 2013), (30, 2014))
# upper end of power [kW] -> first model year, from 600 kW
TIER_4 = ((1400, 2017), (2000, 2016), (3701, 2014))
TIER_4_FROM = 600  # kW


def us_tier_years(power: float, displacement: float) -> dict[str, int]:
    """Return the first model year of each tier by power and displacement.

    Parameters
    ----------
    power : float
        Rated power [kW].
    displacement : float
        Displacement per cylinder [l].

    Returns
    -------
    dict of str to int
        First model year by tier.

    References
    ----------
    40 CFR 1042 (mostly seen).

    Examples
    --------
    >>> us_tier_years(1500, 4.0)
    {'2': 2007, '3': 2012, '4': 2016}
    """
    years = {"2": _first_year(TIER_2, displacement), "3": _first_year(TIER_3, displacement)}
    # Smaller engines have no fourth tier.
    if power >= TIER_4_FROM:
        years["4"] = _first_year(TIER_4, power)
    return years


def _first_year(rows: tuple[tuple[float, int], ...], value: float) -> int:
    """Return the first model year of the row whose upper end the value has not reached."""
    # The inputs end below the last row, so that one is always found.
    return next(year for end, year in rows if value < end)


def judge_us_tier(model_year: int, power: float, displacement: float, label: str) -> Judgement:
    """Judge the tier on an engine's label against that of its model year, under the US flag.

    Parameters
    ----------
    model_year : int
        Model year.
    power : float
        Rated power [kW].
    displacement : float
        Displacement per cylinder [l].
    label : str
        Tier on the engine's label: none, 1, 2, 3 or 4.

    Returns
    -------
    Judgement

    References
    ----------
    40 CFR 1042.1 first model years of tier 3, dates of tier 2 and of tier 4 under 2000 kW (seen);
    tier 4 from 2000 kW and tier 2 from 5 l per cylinder (from memory). Before tier 2 nothing is
    asked here.
    """
    years = us_tier_years(power, displacement)
    asked = max((tier for tier, year in years.items() if model_year >= year), default="none")
    short = US_TIERS.index(label) < US_TIERS.index(asked)
    # a missing label is a paper to be found, a label of a lower tier is a breach
    if label == "none" and short:
        band, rating = "no label", "poor"
        meaning = "find label and certificate, or price an engine"
    elif label == "none":
        band, rating, meaning = "no tier asked", "fair", "of the oldest kind"
    elif short:
        band, rating = "below the asked tier", "failed"
        meaning = "below what its model year asks for"
    else:
        band, rating, meaning = "meets the tier", "good", "enough"
    rule = "no tier of 2 and above"
    if asked != "none":
        rule = f"tier {asked} (from model year {years[asked]})"
    paper = "no tier on its label" if label == "none" else f"a tier {label} label"
    sentence = (
        f"A model year {model_year} engine of {show(power, 'kW')} and {show(displacement, 'l')} "
        f"per cylinder asks for {rule}, and it has {paper}: {meaning}."
    )
    notes = (
        "For vessels under the flag of the United States; other flags follow MARPOL.",
        "Replacement and remanufactured engines have rules of their own.",
    )
    source = _source_of(asked, power, displacement)
    return judgement_in_words(band, rating, sentence, notes, source)


def _source_of(tier: str, power: float, displacement: float) -> Source:
    """Return the source of a first model year: two ends of the tables are recalled."""
    # Only these rows of the table were not in the extracts that were read.
    recalled = (tier == "4" and power >= 2000) or (tier == "2" and displacement >= 5)
    return RECALLED if recalled else PART_1042


CRITERIA = (
    Criterion(
        "us-engine-tier",
        "United States tier of an engine against its model year",
        (
            Field("model_year", "Model year", "whole", low=1970, high=2100),
            number_field("power", "Rated power", "kW", 75, 3700),
            number_field("displacement", "Displacement per cylinder", "l", 0.1, 29.99),
            Field("label", "Tier on the engine's label", "choice", choices=US_TIERS),
        ),
        PART_1042,
        judge_us_tier,
        "Commercial marine engines of 75 to 3700 kW, under 30 l per cylinder, "
        "model years 1970 to 2100.",
        "First model years from both sides; the limits in g/kWh are not judged.",
    ),
)
