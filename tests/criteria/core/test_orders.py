"""Two inputs that contradict each other are refused with a sentence that names both."""

from datetime import date, timedelta
from itertools import combinations
from pathlib import Path

import pytest

from inspector.checklists.registry import CRITERIA
from inspector.criteria.core.judgement import CannotJudge
from inspector.criteria.core.orders import ABOVE, AT_LEAST, AT_MOST, BELOW, Order
from tests.criteria.conftest import VALID

ORDERS = [(rule, order) for rule in CRITERIA.values() for order in rule.orders]
NAMES = [f"{rule.name}: {order.input} {order.relation} {order.other}" for rule, order in ORDERS]
# One pair or several a line: criterion | inputs, each with each | why no order is demanded.
FREE = Path(__file__).with_name("pairs_without_order.txt")


def field_of(rule, name):
    """Return the input of a name."""
    return next(field for field in rule.inputs if field.name == name)


def possible(field, given):
    """Return values over the range of an input, by rising value; days around a given one too."""
    if field.kind == "date":
        around = date.fromisoformat(str(given or "2020-02-29"))
        days = [around + timedelta(days=step) for step in (-4000, -400, -1, 0, 1, 400, 4000)]
        ends = (field.low or date(1900, 1, 1), field.high or date(2200, 1, 1))
        return [day for day in days if ends[0] <= day <= ends[1]]
    low, high = field.low, field.high
    steps = [low + (high - low) * share for share in (0, 0.001, 0.01, 0.03, 0.1, 0.3, 0.6, 1)]
    values = sorted({*steps, *([] if given is None else [float(given)])})
    return sorted({round(value) for value in values}) if field.kind == "whole" else values


def broken(rule, order):
    """Return valid values of a criterion but for two that break this order, and none before it."""
    valid = VALID[rule.name]
    firsts = possible(field_of(rule, order.input), valid.get(order.input))
    others = possible(field_of(rule, order.other), valid.get(order.other))
    for first in firsts:
        for other in others:
            values = {**valid, order.input: first, order.other: other}
            if not order.holds(first, other) and first_broken(rule, values, order):
                return values
    raise AssertionError(f"no values of {rule.name} break {order} alone")


def first_broken(rule, values, order):
    """Whether all orders before this one hold, as far as their inputs are given."""
    read = {each.name: each.parse(values.get(each.name)) for each in rule.inputs}
    before = rule.orders[: rule.orders.index(order)]
    return all(
        each.holds(read[each.input], read[each.other])
        for each in before
        if None not in (read[each.input], read[each.other])
    )


@pytest.mark.parametrize(("rule", "order"), ORDERS, ids=NAMES)
def test_a_broken_order_is_refused_with_both_names(rule, order):
    """Whoever typed them sees which two readings cannot both be."""
    with pytest.raises(CannotJudge) as refusal:
        rule.apply(broken(rule, order))

    assert order.input == refusal.value.input
    for name in (order.input, order.other):
        assert f"'{field_of(rule, name).label}'" in str(refusal.value)
    assert order.why in str(refusal.value)


@pytest.mark.parametrize(("rule", "order"), ORDERS, ids=NAMES)
def test_an_order_is_of_two_inputs_of_one_quantity(rule, order):
    """Metres are not compared with days, nor an input with itself."""
    first, other = field_of(rule, order.input), field_of(rule, order.other)

    assert first.name != other.name
    assert (first.kind == "date", first.unit) == (other.kind == "date", other.unit)


def pairs_of(rule):
    """Return the pairs of inputs that could be put in an order: of one unit, or both dates."""
    for first, other in combinations(rule.inputs, 2):
        dates = {first.kind, other.kind} == {"date"}
        if dates or (first.is_number and other.is_number and first.unit == other.unit):
            yield frozenset((first.name, other.name))


def free_pairs():
    """Return the pairs by criterion that need no order, from the list with its reasons."""
    found = {}
    for line in FREE.read_text(encoding="utf-8").splitlines():
        if line.strip():
            name, inputs, why = (part.strip() for part in line.split("|"))
            assert why, line
            names = [each.strip() for each in inputs.split(",")]
            found.setdefault(name, set()).update(map(frozenset, combinations(names, 2)))
    return found


def test_every_pair_of_one_quantity_has_an_order_or_a_reason_for_none():
    """A new input beside a like one makes somebody think which of them may be the greater."""
    free = free_pairs()
    wanted = {
        (rule.name, *sorted(pair))
        for rule in CRITERIA.values()
        for pair in pairs_of(rule)
        if pair not in free.get(rule.name, ())
    }
    declared = {(rule.name, *sorted((each.input, each.other))) for rule, each in ORDERS}

    assert set() == wanted - declared


def test_the_list_of_pairs_without_order_is_of_pairs_that_are_there():
    """A reason that nobody needs any more is taken out of the list."""
    for name, pairs in free_pairs().items():
        ordered = {frozenset((each.input, each.other)) for each in CRITERIA[name].orders}

        assert pairs <= set(pairs_of(CRITERIA[name])), name
        assert set() == pairs & ordered, name


DAY = date(2024, 2, 29)
EDGES = [
    (AT_MOST, 5, 5, True),
    (AT_MOST, 5.1, 5, False),
    (BELOW, 5, 5, False),
    (BELOW, 4.9, 5, True),
    (AT_LEAST, 5, 5, True),
    (AT_LEAST, 4.9, 5, False),
    (ABOVE, 5, 5, False),
    (ABOVE, 5.1, 5, True),
    (AT_MOST, DAY, DAY, True),
    (AT_MOST, date(2024, 3, 1), DAY, False),
    (AT_LEAST, date(2024, 2, 28), DAY, False),
]


@pytest.mark.parametrize(("relation", "value", "other", "holds"), EDGES)
def test_an_order_at_its_edge(relation, value, other, holds):
    """Equal values are in order, but for the two strict relations."""
    assert holds == Order("first", relation, "second", "why").holds(value, other)


def test_an_order_with_a_tolerance():
    """1.1 times 50 is 55, though the floats make a little more or less of it."""
    order = Order("first", AT_MOST, "second", "why", times=1.1)

    assert order.holds(55, 50)
    assert not order.holds(55.1, 50)
