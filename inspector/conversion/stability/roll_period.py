"""The metacentric height that a timed roll shows."""

from inspector.conversion.core.bounds import plain, within
from inspector.conversion.core.figure import Default, Figure, Gap, no_figure
from inspector.conversion.core.span import Span
from inspector.conversion.stability.starting_condition import StartingCondition
from inspector.criteria.core.source import Source
from inspector.criteria.hull.lightship_and_roll import FACTOR_SPREAD, ROLL_FACTORS, rolling_gm
from inspector.values.quantity import sentence

ROLLING_TEST = Source.seen(
    "Resolution A.749(18), annex 3, rolling test", "as adopted", "GM = (f B / T)², f ± 0.05"
)
WEATHER_CRITERION = Source.seen(
    "IS Code 2008, resolution MSC.267(85), part A",
    "2008, read in extracts",
    "2.3.4, roll period: f = 2 C",
)
ANY_LOADING = Default(
    "rolling factor f",
    Span(
        min(ROLL_FACTORS.values()) - FACTOR_SPREAD, None, max(ROLL_FACTORS.values()) + FACTOR_SPREAD
    ),
    "The loading when the roll was timed is not given, so every factor counts.",
    source=ROLLING_TEST,
)
GREATEST_LENGTH = 70.0  # m, up to which the rolling test applies
ROLL_GM = "GM of the day by its roll period"


def roll_constant(breadth: float, draught: float, length: float) -> float:
    """Return C of the roll period T = 2 C B / √GM; it is half of the rolling test's factor f.

    Parameters
    ----------
    breadth : float
        Breadth [m].
    draught : float
        Mean draught [m].
    length : float
        Length of the waterline [m].

    Returns
    -------
    float

    References
    ----------
    IS Code 2008, resolution MSC.267(85), part A, 2.3.4 (read in extracts).
    """
    # C of the weather criterion; the rolling test's f is twice that.
    return 0.373 + 0.023 * breadth / draught - 0.043 * length / 100


def gm_from_roll(period: float, breadth: float, factor: Span) -> Span:
    """Return the metacentric height that a natural roll period shows.

    Parameters
    ----------
    period : float
        Natural roll period, over and back [s].
    breadth : float
        Breadth [m].
    factor : Span
        Rolling factor f.

    Returns
    -------
    Span
        GM [m].

    Raises
    ------
    BadInput
        A period, a breadth or a factor that cannot be.

    References
    ----------
    GM = (f B / T)², resolution A.749(18), annex 3 (seen).
    """
    plain("roll period", period, 1, 60, "s")
    plain("breadth", breadth, 2, 80, "m")
    return within("rolling factor f", factor, 0.1, 2).apply(
        lambda value: rolling_gm(breadth, period, value)
    )


def with_spread(factor: float) -> Span:
    """Return a rolling factor with its spread.

    Parameters
    ----------
    factor : float
        Rolling factor f.

    Returns
    -------
    Span

    References
    ----------
    f ± 0.05, resolution A.749(18), annex 3 (seen).
    """
    return Span(factor - FACTOR_SPREAD, factor, factor + FACTOR_SPREAD)


def gm_by_roll_period(start: StartingCondition) -> Figure | None:
    """Return the metacentric height of the day on which a roll was timed.

    Parameters
    ----------
    start : StartingCondition

    Returns
    -------
    Figure or None
        GM [m]; None where no roll was timed.

    Raises
    ------
    BadInput
        A period or a breadth that cannot be.

    References
    ----------
    Resolution A.749(18), annex 3, up to 70 m (seen); above it IS Code 2008 part A 2.3.4 (read in
    extracts).
    """
    period, breadth = start.number("roll_period"), start.number("breadth")
    if period is None:
        return None
    # The roll was timed, so it is worth asking for what is missing.
    if breadth is None:
        gap = Gap("Breadth", "No GM follows from a roll period without it.")
        return no_figure(ROLL_GM, "m", (gap,))
    length = start.number("lwl") or start.number("lpp")
    # The rolling test is for vessels up to 70 m; longer ones roll by breadth over draught too.
    if length is not None and length > GREATEST_LENGTH:
        if not start.draught:
            why = "Above 70 m the roll period is calculated with breadth over draught."
            return no_figure(ROLL_GM, "m", (Gap("Mean draught", why),))
        constant = roll_constant(breadth, start.draught, length)
        return _roll_figure(period, breadth, with_spread(2 * constant), (), WEATHER_CRITERION)
    loading = start.row.text("roll_loading")
    # The factor follows the liquids aboard that day, not those of the booklet.
    if loading:
        return _roll_figure(period, breadth, with_spread(ROLL_FACTORS[loading]), (), ROLLING_TEST)
    return _roll_figure(period, breadth, ANY_LOADING.value, (ANY_LOADING,), ROLLING_TEST)


def _roll_figure(
    period: float, breadth: float, factor: Span, defaults: tuple[Default, ...], source: Source
) -> Figure:
    """Return the GM of a timed roll with its factor and source."""
    assumption = (
        "The roll period is the mean of several rolls, lines slack, in deep water; "
        "it replaces no inclining test."
    )
    formula = sentence("(f B / T)², f {factor}", factor=factor.quantity("", 2))
    gm = gm_from_roll(period, breadth, factor)
    return Figure(ROLL_GM, gm, "m", formula, (assumption,), defaults, (), source)
