"""The next look: the exact plan against full enumeration, printed cases, and its sentences."""

from itertools import chain, combinations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.assess.assessment import assess
from inspector.assess.from_state import read_inspection
from inspector.assess.next_look.advice import next_look
from inspector.assess.next_look.buy_or_not import Breaker, best_joint, joint_gain
from inspector.assess.next_look.plan import Look, best_plan


def enumerated(looks, minutes, walk, here):
    """The best gain of all subsets, with the walk to each space but `here` charged once."""
    best = 0.0
    for subset in chain.from_iterable(combinations(looks, size) for size in range(len(looks) + 1)):
        spaces = {look.space for look in subset} - {here}
        if sum(look.minutes for look in subset) + walk * len(spaces) <= minutes + 1e-9:
            best = max(best, sum(look.gain for look in subset))
    return best


looks = st.lists(
    st.tuples(
        st.sampled_from("abc"),
        st.integers(1, 20).map(lambda n: n / 2),
        st.integers(0, 50).map(float),
    ),
    max_size=9,
).map(lambda rows: [Look(f"s{n}", f"check {n}", *row) for n, row in enumerate(rows)])


@given(
    looks,
    st.integers(0, 60).map(lambda n: n / 2),
    st.sampled_from([0.0, 1.0, 2.0, 3.5]),
    st.sampled_from(["", "a"]),
)
def test_the_plan_is_the_best_of_all_subsets(looks, minutes, walk, here):
    """Exact on small sheets: the gains equal those of full enumeration, and the plan fits."""
    plan = best_plan(looks, minutes, walk, here)

    assert enumerated(looks, minutes, walk, here) == pytest.approx(plan.gain)
    spaces = {look.space for look in plan.looks} - {here}
    assert sum(look.minutes for look in plan.looks) + walk * len(spaces) == pytest.approx(
        plan.minutes
    )
    assert plan.minutes <= minutes


@given(looks, st.integers(0, 40), st.integers(0, 20))
def test_more_minutes_never_win_less(looks, minutes, more):
    """A longer stay never makes the plan worth less."""
    assert best_plan(looks, minutes).gain <= best_plan(looks, minutes + more).gain + 1e-9


@pytest.mark.parametrize(
    ("minutes", "chosen", "gain"),
    [(20, "C", 9.0), (28, "AC", 16.0), (30, "AC", 16.0), (40, "BC", 17.8), (48, "ABC", 24.8)],
)
def test_the_exact_plan_where_the_greedy_one_loses(minutes, chosen, gain):
    """A wins most per minute, yet with 20 minutes C is the better one (worked by hand)."""
    three = [
        Look("A", "A", "x", 8, 7.0),
        Look("B", "B", "x", 20, 8.8),
        Look("C", "C", "x", 20, 9.0),
    ]

    plan = best_plan(three, minutes, walk=0)

    assert chosen == "".join(sorted(look.label for look in plan.looks))
    assert gain == pytest.approx(plan.gain)


def test_no_minutes_give_an_empty_plan_with_its_reason():
    """Nothing fits: the shortest useful look is named by its minutes."""
    plan = best_plan([Look("A", "A", "x", 8, 7.0)], 0)

    assert () == plan.looks
    assert "8" in plan.why


def test_nothing_useful_is_reported_as_such():
    """Looks that could change nothing make no plan."""
    assert "could change" in best_plan([Look("A", "A", "x", 8, 0.0)], 60).why


THREE = (Breaker("A", 0.3, 120, 8), Breaker("B", 0.2, 150, 20), Breaker("C", 0.4, 60, 20))
OTHERS = (Breaker("A", 0.3, 60, 8), Breaker("B", 0.2, 80, 20), Breaker("C", 0.4, 50, 20))


@pytest.mark.parametrize(
    ("breakers", "seen", "gain"),
    [
        (THREE, [0], 22.20),
        (THREE, [1], 22.00),
        (THREE, [2], 10.40),
        (THREE, [0, 1], 32.56),
        (THREE, [0, 2], 22.20),
        (THREE, [1, 2], 22.00),
        (THREE, [0, 1, 2], 32.56),
        (OTHERS, [0], 0.0),
        (OTHERS, [1], 3.60),
        (OTHERS, [2], 0.0),
        (OTHERS, [0, 1], 3.60),
        (OTHERS, [0, 2], 3.12),
        (OTHERS, [1, 2], 3.84),
        (OTHERS, [0, 1, 2], 6.24),
    ],
)
def test_joint_gains_do_not_add_up(breakers, seen, gain):
    """Looks can be substitutes or complements for one decision (worked by hand, all outcomes)."""
    assert gain == pytest.approx(joint_gain(breakers, seen, 100))


def test_the_joint_choice_finds_what_single_gains_would_call_worthless():
    """A and C are worth nothing alone and 3.12 together; with 28 minutes B alone wins 3.60."""
    chosen, gain = best_joint(OTHERS, 100, 28)

    assert gain == pytest.approx(3.60)
    assert ["B"] == [one.label for one in chosen]


def test_what_was_left_for_want_of_time_is_still_worth_a_look(library, write):
    """No time is a reason that more minutes cure, no access is none; both count as unseen."""
    write.rate("thrusters/bow/oil", "not seen: no time").rate(
        "thrusters/bow/tunnel", "not seen: no access"
    )

    subjects = {
        one.look.subject
        for one in next_look(assess(read_inspection(write.state), library), 60).advice
    }

    assert "sheet/thrusters/bow/oil" in subjects
    assert "sheet/thrusters/bow/tunnel" not in subjects
