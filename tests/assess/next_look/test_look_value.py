"""What one look is worth, by our own model: its properties, and figures worked by hand."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.assess.next_look.look_value import Chance, chance_of, need_worth, stake_worth
from inspector.assess.verdict.settings import DEFAULTS, Settings
from inspector.values.vocabulary import NEEDS

known = st.floats(0, 200)
chances = st.tuples(known, st.floats(0, 1), st.floats(0.01, 0.99)).map(
    lambda drawn: Chance(drawn[0] * drawn[1], drawn[0], drawn[2])
)


@pytest.mark.parametrize(
    ("chance", "information", "moved"),
    [
        # nothing known: 2 x 0.6 x 0.4 x 4 / (2 + 4)
        (Chance(0, 0, 0.6), 4, 0.32),
        # four heavy checks good: chance 5.2 / 6, and 1 / (6 + 1) of it moves
        (Chance(4, 4, 0.6), 1, 2 * (5.2 / 6) * (0.8 / 6) / 7),
    ],
)
def test_a_look_moves_the_chance_as_worked_by_hand(chance, information, moved):
    """The mean of the two ways: up where it is good, down where it is bad."""
    assert moved == pytest.approx(chance.movement(information))


@given(chances, st.floats(0.01, 20))
def test_the_movement_is_the_mean_of_both_ways(chance, information):
    """|after good - now| by its chance, plus |after bad - now| by its own."""
    now = chance.value
    good = Chance(chance.sound + information, chance.known + information, chance.prior).value
    bad = Chance(chance.sound, chance.known + information, chance.prior).value

    moved = now * (good - now) + (1 - now) * (now - bad)
    assert moved == pytest.approx(chance.movement(information), abs=1e-9)


@given(chances, st.floats(0.01, 20), st.floats(0, 50))
def test_a_look_after_others_tells_less_and_never_nothing(chance, information, already):
    """A large unit of which nothing was seen is always worth a look."""
    assert 0 < chance.movement(information, already) <= chance.movement(information)


def test_a_price_never_outranks_the_need():
    """The dearest neutral unit is worth less than the cheapest required one."""
    assert stake_worth(1e9, 1) * need_worth("neutral", DEFAULTS) < stake_worth(1, 1e9) * need_worth(
        "required", DEFAULTS
    )


def test_what_is_not_priced_is_at_the_middle():
    """No price is no reason to look, and none against it."""
    assert 1 == stake_worth(None, 100) == stake_worth(100, None) == stake_worth(100, 100)


def test_the_figures_of_the_model_are_settings():
    """What is assumed, what a glance tells and how much money counts can be set by a firm."""
    set_so = Settings(prior_sound=0.5, prior_strength=4.0, most_stake=3.0)
    chance = chance_of((), (), set_so)

    assert (0.5, 4.0) == (chance.value, chance.strength)
    assert 2 * 0.5 * 0.5 * 4 / 8 == pytest.approx(chance.movement(4.0))
    assert [3, pytest.approx(1 / 3)] == [
        stake_worth(*money, set_so) for money in ((1e9, 1), (1, 1e9))
    ]


def test_needs_rank_as_the_brief_says():
    """Required before useful, useful before neutral, nothing for the unwanted; so is silence."""
    worth = [need_worth(need, DEFAULTS) for need in NEEDS]

    assert sorted(worth, reverse=True) == worth
    assert 0 == worth[-1]
    assert need_worth("useful", DEFAULTS) == need_worth("", DEFAULTS)
