"""Engine tiers of the United States by model year, power and displacement per cylinder, for vessels under that flag."""

from inspector.criteria.judgement import Criterion, Input, Judgement
from inspector.criteria.source import Source
from inspector.quantities import show

PART_1042 = Source(
    "40 CFR part 1042 and its forerunner, marine compression-ignition engines", "first model years as in public extracts", "1042.1 and the tier 4 dates", "seen"
)
RECALLED = Source("40 CFR part 1042 and its forerunner, marine compression-ignition engines", "recalled", "first model years", "memory")
US_TIERS = ("none", "1", "2", "3", "4")
# upper end of displacement [l per cylinder] -> first model year
TIER_2 = ((0.9, 2005), (2.5, 2004), (30, 2007))
TIER_3 = ((0.9, 2012), (1.2, 2013), (2.5, 2014), (3.5, 2013), (7, 2012), (15, 2013), (30, 2014))
TIER_4 = ((1400, 2017), (2000, 2016), (3701, 2014))  # upper end of power [kW] -> first model year, from 600 kW
TIER_4_FROM = 600  # kW


def us_tier_years(power: float, displacement: float) -> dict[str, int]:
    """Return tier -> first model year for a power [kW] and displacement [l per cylinder]. 40 CFR 1042 (mostly seen).

    Examples
    --------
    >>> us_tier_years(1500, 4.0)
    {'2': 2007, '3': 2012, '4': 2016}
    """

    def first(rows: tuple[tuple[float, int], ...], value: float) -> int:
        return next(year for end, year in rows if value < end)

    years = {"2": first(TIER_2, displacement), "3": first(TIER_3, displacement)}
    return years if power < TIER_4_FROM else {**years, "4": first(TIER_4, power)}


def judge_us_tier(model_year: int, power: float, displacement: float, label: str) -> Judgement:
    """Judge the tier on an engine's label against the one of its model year, for the flag of the United States.

    Parameters
    ----------
    model_year : of the engine; power [kW], 75 to 3700; displacement [l] per cylinder, under 30; label : none, 1, 2, 3 or 4.

    References
    ----------
    40 CFR 1042.1 first model years of tier 3, dates of tier 2 and of tier 4 under 2000 kW (seen); tier 4 from 2000 kW and tier 2
    from 5 l per cylinder (memory). Before tier 2 nothing is asked here.
    """
    years = us_tier_years(power, displacement)
    asked = max((tier for tier, year in years.items() if model_year >= year), default="none")
    recalled = (asked == "4" and power >= 2000) or (asked == "2" and displacement >= 5)
    source = RECALLED if recalled else PART_1042
    short = US_TIERS.index(label) < US_TIERS.index(asked)
    if label == "none":
        band, rating, meaning = (
            ("no label", "poor", "find label and certificate, or price an engine") if short else ("no tier asked", "fair", "of the oldest kind")
        )
    elif short:
        band, rating, meaning = "below the asked tier", "failed", "below what its model year asks for"
    else:
        band, rating, meaning = "meets the tier", "good", "enough"
    rule = "no tier of 2 and above" if asked == "none" else f"tier {asked} (from model year {years[asked]})"
    paper = "no tier on its label" if label == "none" else f"a tier {label} label"
    size = f"{show(power, 'kW')} and {show(displacement, 'l')} per cylinder"
    sentence = f"A model year {model_year} engine of {size} asks for {rule}, and it has {paper}: {meaning}."
    notes = ("For vessels under the flag of the United States; other flags follow MARPOL.", "Replacement and remanufactured engines have rules of their own.")
    return Judgement("us-engine-tier", band, rating, None, None, None, None, sentence, source, notes)


CRITERIA = (
    Criterion(
        "us-engine-tier",
        "United States tier of an engine against its model year",
        (
            Input("model_year", "Model year", "whole", low=1970, high=2100),
            Input("power", "Rated power", "number", "kW", low=75, high=3700),
            Input("displacement", "Displacement per cylinder", "number", "l", low=0.1, high=29.99),
            Input("label", "Tier on the engine's label", "choice", choices=US_TIERS),
        ),
        PART_1042,
        judge_us_tier,
        "Commercial marine engines of 75 to 3700 kW, under 30 l per cylinder, model years 1970 to 2100.",
        "First model years from both sides; the limits in g/kWh are not judged.",
    ),
)
