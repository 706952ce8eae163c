"""The order in which two inputs of one quantity must be, as physics or the calendar demands it.

Two values can each be possible and together be impossible: an alarm calibrated before it was
fitted, a pit deeper than its plate. An order says so as data beside the inputs, and one check
refuses such a pair before any rule sees it, with a sentence that names both.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import date

from inspector.criteria.core.judgement import refuse
from inspector.values.field import Field, Value
from inspector.values.formatting import show

AT_MOST, BELOW, AT_LEAST, ABOVE = "at_most", "below", "at_least", "above"
RELATIONS = (AT_MOST, BELOW, AT_LEAST, ABOVE)
# A product of floats may fall a bit short of the number that a person would write.
_SLACK = 1e-9


@dataclass(frozen=True)
class Order:
    """``input`` has this relation to ``other``, where both are given.

    Parameters
    ----------
    input, other : str
        Names of inputs of one quantity. The first one is blamed where the order is broken.
    relation : str
        One of RELATIONS; a date that is at most another one is not after it.
    why : str
        Why it cannot be otherwise, without a full stop.
    times : float
        What the other one is multiplied with: readings have a tolerance.
    """

    input: str
    relation: str
    other: str
    why: str
    times: float = 1.0

    def holds(self, value: Value, other: Value) -> bool:
        """Whether two values are in this order.

        Parameters
        ----------
        value, other : float or int or date
            In the units of their inputs, which are alike.

        Returns
        -------
        bool
        """
        if isinstance(value, date):
            value, bound, slack = value.toordinal(), other.toordinal(), 0
        else:
            bound = other * self.times
            slack = abs(bound) * _SLACK
        return {
            AT_MOST: value <= bound + slack,
            BELOW: value < bound - slack,
            AT_LEAST: value >= bound - slack,
            ABOVE: value > bound + slack,
        }[self.relation]


def order_of(raw: Mapping[str, object]) -> Order:
    """Return the order of a table of a declared criterion.

    Parameters
    ----------
    raw : mapping
        With ``input``, one of RELATIONS, ``why`` and maybe ``times``.

    Returns
    -------
    Order
    """
    relation = next(each for each in RELATIONS if each in raw)
    return Order(raw["input"], relation, raw[relation], raw["why"], raw.get("times", 1.0))


def refuse_broken(
    orders: Iterable[Order], fields: Mapping[str, Field], values: Mapping[str, Value | None]
) -> None:
    """Refuse values of which two contradict each other.

    Parameters
    ----------
    orders : iterable of Order
    fields : mapping of str to Field
        The inputs by name.
    values : mapping of str to float or int or date or None
        What was given, in the units of the inputs; a name may be missing.

    Raises
    ------
    CannotJudge
        With a sentence that names both inputs and their values.
    """
    for order in orders:
        value, other = values.get(order.input), values.get(order.other)
        if value is None or other is None or order.holds(value, other):
            continue
        first, second = fields[order.input], fields[order.other]
        said = f"'{first.label}' of {_shown(first, value)} is {_wrong(order, value)}"
        why = f"{said} '{second.label}' of {_shown(second, other)}: {order.why}"
        refuse(order.input, value, why)


def _wrong(order: Order, value: Value) -> str:
    """What a value is against the other one where their order is broken."""
    if isinstance(value, date):
        return {AT_MOST: "after", BELOW: "not before", AT_LEAST: "before", ABOVE: "not after"}[
            order.relation
        ]
    words = {AT_MOST: "above", BELOW: "not below", AT_LEAST: "below", ABOVE: "not above"}
    often = "" if order.times == 1 else f" {show(order.times, '')} times"
    return words[order.relation] + often


def _shown(field: Field, value: Value) -> str:
    return value.isoformat() if isinstance(value, date) else field.formatted(value)
