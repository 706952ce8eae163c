"""The general intact stability criteria on a curve of righting levers and an initial GM."""

from collections.abc import Callable
from dataclasses import dataclass

from inspector.conversion.core.span import Span, span
from inspector.conversion.stability.levers.lever_span import LeverSpan
from inspector.conversion.stability.levers.righting_levers import RightingLevers
from inspector.criteria.core.source import Source
from inspector.values.quantity import Quantity

INTACT = Source.seen(
    "IS Code 2008, resolution MSC.267(85), part A",
    "2008, read in extracts",
    "2.2, general criteria of righting levers",
)
INITIAL_GM = "initial GM"
# Criterion -> the least that is required, in m·rad, m or degrees.
LEAST = {
    "area to 30°": 0.055,
    "area to 40° or flooding": 0.090,
    "area from 30° to 40° or flooding": 0.030,
    "lever at 30° or more": 0.20,
    "angle of the greatest lever": 25.0,
    INITIAL_GM: 0.15,
}


# Decimals in which a criterion is compared with its limit.
DIGITS = {"m·rad": 3, "m": 2, "deg": 0}


@dataclass(frozen=True)
class CriterionResult:
    """One criterion and its value.

    Parameters
    ----------
    name : str
        One of LEAST.
    least : float
        The least that is required [unit].
    unit : str
        "m·rad", "m" or "deg".
    value : Span or None
        The value [unit]; None where the levers do not reach far enough.
    floods_at : float or None
        The angle of down-flooding [deg], where water comes in before the angle that is asked for.
    """

    name: str
    least: float
    unit: str
    value: Span | None
    floods_at: float | None = None

    @property
    def met(self) -> bool | None:
        """True or False where the whole span agrees, None where that is not known."""
        # There is no righting lever to count on beyond the angle at which water comes in.
        if self.floods_at is not None:
            return False
        return None if self.value is None else self.value.at_least(self.least)

    @property
    def quantity(self) -> Quantity | None:
        """The value with its unit."""
        return None if self.value is None else self.value.quantity(self.unit, DIGITS[self.unit])

    @property
    def least_quantity(self) -> Quantity:
        """The least that is required, with its unit."""
        return Quantity.exact(self.least, self.unit)


@dataclass(frozen=True)
class _Measure:
    """How a criterion is read off a curve, and the angle to which curve and ship must reach."""

    name: str
    unit: str
    reach: float
    read: Callable[[RightingLevers], float | Span]


def intact_criteria(
    levers: LeverSpan | None, gm: Span | None, flooding: float | None = None
) -> tuple[CriterionResult, ...]:
    """Return each general criterion with its value.

    Parameters
    ----------
    levers : LeverSpan or None
        The levers after the changes; None where they are not known.
    gm : Span or None
        Metacentric height after the changes [m]; None where it is not known.
    flooding : float, optional
        Angle of down-flooding [deg]; below an angle that a criterion asks for, it fails.

    Returns
    -------
    tuple of CriterionResult
        In the order of LEAST.

    Raises
    ------
    BadInput
        An angle that the curve does not have.

    References
    ----------
    IS Code 2008, resolution MSC.267(85), part A, 2.2.1 to 2.2.4 (read in extracts).
    """
    results = [_result(levers, measure, flooding) for measure in _measures(flooding)]
    return (*results, CriterionResult(INITIAL_GM, LEAST[INITIAL_GM], "m", gm))


def _measures(flooding: float | None) -> tuple[_Measure, ...]:
    """Return the criteria on the curve, which counts as far as the angle of flooding [deg]."""
    # Levers beyond the angle at which water comes in count for nothing.
    last = 90.0 if flooding is None else flooding
    end = min(40.0, last)
    least_angle = LEAST["angle of the greatest lever"]
    return (
        _Measure("area to 30°", "m·rad", 30.0, lambda curve: curve.area_to(30.0)),
        _Measure("area to 40° or flooding", "m·rad", end, lambda curve: curve.area_to(end)),
        _Measure(
            "area from 30° to 40° or flooding",
            "m·rad",
            max(end, 30.0),
            lambda curve: curve.area_between(30.0, end),
        ),
        _Measure(
            "lever at 30° or more",
            "m",
            30.0,
            lambda curve: curve.until(last).greatest_lever_from(30.0),
        ),
        _Measure(
            "angle of the greatest lever",
            "deg",
            least_angle,
            lambda curve: curve.until(last).greatest_lever_angle,
        ),
    )


def _result(levers: LeverSpan | None, measure: _Measure, flooding: float | None) -> CriterionResult:
    """Return a criterion with its value, or with the angle at which water comes in too soon."""
    known = (measure.name, LEAST[measure.name], measure.unit)
    if flooding is not None and flooding < measure.reach:
        return CriterionResult(*known, None, flooding)
    # A curve drawn on by guess could meet what the ship does not.
    if levers is None or levers.reach < measure.reach:
        return CriterionResult(*known, None)
    # Areas and levers rise steadily with every lever, so the ends of the curves are their ends.
    values = [span(measure.read(curve)) for curve in levers.ends]
    likely = None
    if levers.likely is not None:
        values.append(span(measure.read(levers.likely)))
        likely = values[-1].point
    low, high = min(value.low for value in values), max(value.high for value in values)
    return CriterionResult(*known, Span(low, likely, high))
