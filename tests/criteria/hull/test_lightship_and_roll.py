"""Lightship and roll: each limit from both sides, and what a roll cannot show."""

import pytest

from inspector.criteria.core.judgement import CannotJudge
from inspector.criteria.hull.lightship_and_roll import rolling_gm


@pytest.mark.parametrize(
    ("band", "found", "shift"),
    [
        ("as in the booklet", 2120.9, None),
        ("booklet to be amended", 2121, None),
        ("booklet to be amended", 2142, None),
        ("new inclining due", 2142.1, None),
        ("new inclining due", 2057.9, None),
        ("as in the booklet", 2100, 0.324),
        ("booklet to be amended", 2100, -0.325),
        ("booklet to be amended", 2100, 0.65),
        ("new inclining due", 2100, 0.651),
        ("new inclining due", 2160, 0.5),
    ],
)
def test_a_lightship_may_differ_by_so_much(judge, band, found, shift):
    """Of 2100 t, 1 % and 2 %; of 65 m, 0.5 % and 1 %: the worse of the two counts, either way."""
    assert (
        band
        == judge(
            "lightship-change", found=found, lcg_shift=shift, length=None if shift is None else 65
        ).band
    )


def test_a_shift_needs_its_length(judge):
    """A shift is a share of the length, and refused without it."""
    with pytest.raises(CannotJudge, match="needs the length") as caught:
        judge("lightship-change", lcg_shift=0.5)

    assert "length" == caught.value.input


def test_a_length_without_a_shift_changes_nothing(judge):
    """The length is a particular of most vessels; alone it is no second measure."""
    assert judge("lightship-change") == judge("lightship-change", length=65)


@pytest.mark.parametrize(
    ("band", "rating", "period"),
    [
        ("above the least", None, 26),
        ("near the least", "poor", 27),
        ("near the least", "poor", 28.1),
        ("below the least", "poor", 28.3),
    ],
)
def test_a_slow_roll_warns(judge, band, rating, period):
    """14 m and f 0.78: 0.15 m lies at 28.195 s, and with f 0.73 at 26.388 s."""
    judgement = judge("rolling-test", period=period)
    assert (band, rating) == (judgement.band, judgement.rating)


def test_the_rolling_factor_is_not_that_of_the_weather_criterion():
    """f is twice C: with f 0.78 the height is that of T = 2 C B / sqrt(GM) with C 0.39, and not a
    quarter of it.
    """
    assert (2 * 0.39 * 14 / 9.5) ** 2 == pytest.approx(rolling_gm(14, 9.5, 0.78))


def test_a_vessel_over_seventy_metres_is_not_judged_by_its_roll(judge):
    """The test was written for ships up to 70 m."""
    with pytest.raises(CannotJudge, match="above 70 m"):
        judge("rolling-test", length=70.1)


def test_a_vessel_broader_than_long_is_refused(judge):
    """One of the two was mistyped."""
    with pytest.raises(CannotJudge, match="is not below 'Length'"):
        judge("rolling-test", breadth=14, length=13)
