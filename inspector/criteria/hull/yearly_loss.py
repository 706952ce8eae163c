"""How much thickness a plate loses in a year, by the greater of the known rates."""

from inspector.criteria.core.criterion import Criterion
from inspector.criteria.core.judgement import Judgement, refuse
from inspector.criteria.core.orders import ABOVE, BELOW, Order
from inspector.criteria.core.source import Source
from inspector.criteria.hull.corrosion import corrosion_rate
from inspector.values.field import Field, number_field
from inspector.values.formatting import show

RATES = Source.seen(
    "API 510, 570 and 653 long-term and short-term corrosion rate",
    "as worked in an inspector's answer key, 2003 figures",
    "exercises 1 to 10",
)


def judge_rate(
    measured: float,
    measured_year: int,
    previous: float,
    previous_year: int,
    as_built: float | None = None,
    built_year: int | None = None,
) -> Judgement:
    """Report the yearly loss of a plate, by the greater of the known rates.

    Parameters
    ----------
    measured : float
        Measured thickness [mm].
    measured_year : int
        Year of this gauging.
    previous : float
        Previous thickness [mm].
    previous_year : int
        Year of the previous gauging.
    as_built : float, optional
        Thickness as built [mm].
    built_year : int, optional
        Year built.

    Returns
    -------
    Judgement
        Value the governing rate [mm in a year]; no rating, because no limit of a rate is published
        for hulls.

    References
    ----------
    API 510, 570 and 653, as quoted in an answer key (seen): the greater of the two governs.
    """
    _check_years(measured_year, previous_year, as_built, built_year)
    rates = [
        (
            corrosion_rate(previous, measured, measured_year - previous_year),
            f"since {previous_year}",
        )
    ]
    if built_year is not None:
        since_new = corrosion_rate(as_built, measured, measured_year - built_year)
        rates.append((since_new, "since new"))
    # As the published method has it: of the long-term and the short-term rate the greater governs.
    rate, since = max(rates)
    notes = ("A rate has no limit of its own: what it leaves is judged as remaining life.",)
    # readings scatter, so that a gain between two gaugings means that nothing was lost
    if rate <= 0:
        sentence = f"The plate shows no measurable loss {since}."
        return Judgement("no measurable loss", None, 0.0, "mm", None, None, sentence, notes)
    faster = built_year is not None and rate > since_new
    band = "faster than since new" if faster else "governing rate"
    loss = show(float(rate), "mm", 4)
    sentence = f"The plate loses {loss} a year {since}, the greater of the known rates."
    return Judgement(band, None, float(rate), "mm", None, None, sentence, notes)


def _check_years(
    measured_year: int, previous_year: int, as_built: float | None, built_year: int | None
) -> None:
    """Refuse years out of order, and a thickness as built without its year."""
    if (as_built is None) != (built_year is None):
        missing = "as_built" if as_built is None else "built_year"
        refuse(
            missing, None, "the rate since new needs both the thickness as built and the year built"
        )


_YEAR = {"low": 1900, "high": 2100}

CRITERIA = (
    Criterion(
        "corrosion-rate",
        "Loss of thickness in a year",
        (
            number_field("measured", "Measured thickness", "mm", 0, 55),
            Field("measured_year", "Year of this gauging", "whole", **_YEAR),
            number_field("previous", "Previous thickness", "mm", 0, 55),
            Field("previous_year", "Year of the previous gauging", "whole", **_YEAR),
            number_field("as_built", "Thickness as built", "mm", 5, 50, optional=True),
            Field("built_year", "Year built", "whole", optional=True, **_YEAR),
        ),
        RATES,
        judge_rate,
        "Uniform corrosion of steel plates; build, previous and present gauging in "
        "this order, whole years.",
        "Against the published answers of the key and two hull cases by our own arithmetic.",
        orders=(
            Order(
                "measured_year", ABOVE, "previous_year", "this gauging lies after the previous one"
            ),
            Order("built_year", BELOW, "previous_year", "a gauging lies after the build"),
        ),
    ),
)
