"""Afloat: draughts, hog and sag, freeboard aft, lightship and roll at their limits."""

import pytest

from inspector.criteria.floating import mean_of_means, rolling_gm
from inspector.criteria.judgement import CannotJudge
from tests.criteria.promised_hull import MARKS


@pytest.mark.parametrize(("rating", "greatest"), [("good", 4.5), ("poor", 4.49)])
def test_the_mean_of_six_marks_is_held_against_the_papers(judge, rating, greatest):
    """4.1, 4.5 and 4.9 m make 4.5 m."""
    judgement = judge("mean-draught", greatest=greatest)
    assert (rating, 4.5) == (judgement.rating, judgement.value)


def test_a_hull_that_sags_lies_deeper_in_the_mean():
    """Three quarters of the weight lie on the midship mark: (4.1 + 6 x 4.6 + 4.9) / 8."""
    assert 4.575 == mean_of_means(4.1, 4.6, 4.9)


@pytest.mark.parametrize(("band", "size", "midship"), [("straight", 0, 4.5), ("sags", 30, 4.53), ("hogs", 30, 4.47)])
def test_hog_and_sag_are_told_from_the_midship_marks(judge, band, size, midship):
    """Deeper amidships than at the ends is a sag; without the booklet's limit there is no rating."""
    judgement = judge("hog-sag", midship_port=midship, midship_starboard=midship)
    assert (band, None) == (judgement.band, judgement.rating)
    assert size == judgement.value


@pytest.mark.parametrize(("rating", "permitted"), [("good", 30), ("poor", 29.9)])
def test_hog_is_rated_where_the_booklet_permits_so_much(judge, rating, permitted):
    """A limit from the booklet makes it a rating, by common practice never a failure."""
    assert rating == judge("hog-sag", midship_port=4.47, midship_starboard=4.47, permitted=permitted).rating


def test_a_list_does_not_look_like_a_hog(judge):
    """Port and starboard are averaged first."""
    listing = {name: value + (0.1 if name.endswith("port") else -0.1) for name, value in MARKS.items()}
    assert "straight" == judge("hog-sag", **listing).band


@pytest.mark.parametrize(("rating", "freeboard"), [("good", 0.325), ("poor", 0.324), ("poor", -0.1)])
def test_the_stern_keeps_half_a_per_cent_of_the_length(judge, rating, freeboard):
    """65 m ask for 0.325 m; the share is recalled, so it never fails."""
    assert rating == judge("stern-freeboard", freeboard=freeboard).rating


@pytest.mark.parametrize(
    ("band", "found", "shift"),
    [("as in the booklet", 2120.9, None), ("booklet to be amended", 2121, None), ("booklet to be amended", 2142, None), ("new inclining due", 2142.1, None),
     ("new inclining due", 2057.9, None), ("as in the booklet", 2100, 0.324), ("booklet to be amended", 2100, -0.325), ("booklet to be amended", 2100, 0.65),
     ("new inclining due", 2100, 0.651), ("new inclining due", 2160, 0.5)],
)
def test_a_lightship_may_differ_by_so_much(judge, band, found, shift):
    """Of 2100 t, 1 % and 2 %; of 65 m, 0.5 % and 1 %: the worse of the two counts, either way."""
    assert band == judge("lightship-change", found=found, lcg_shift=shift, length=None if shift is None else 65).band


@pytest.mark.parametrize(("missing", "given"), [("length", {"lcg_shift": 0.5}), ("lcg_shift", {"length": 65})])
def test_a_shift_needs_its_length(judge, missing, given):
    """One without the other is refused."""
    with pytest.raises(CannotJudge, match="needs both") as caught:
        judge("lightship-change", **given)

    assert missing == caught.value.input


@pytest.mark.parametrize(
    ("band", "rating", "period"), [("above the least", None, 26), ("near the least", "poor", 27), ("near the least", "poor", 28.1),
                                   ("below the least", "poor", 28.3)]
)
def test_a_slow_roll_warns(judge, band, rating, period):
    """14 m and f 0.78: 0.15 m lies at 28.195 s, and with f 0.73 at 26.388 s."""
    judgement = judge("rolling-test", period=period)
    assert (band, rating) == (judgement.band, judgement.rating)


def test_the_rolling_factor_is_not_that_of_the_weather_criterion():
    """f is twice C: with f 0.78 the height is that of T = 2 C B / sqrt(GM) with C 0.39, and not a quarter of it."""
    assert (2 * 0.39 * 14 / 9.5) ** 2 == pytest.approx(rolling_gm(14, 9.5, 0.78))


def test_a_vessel_over_seventy_metres_is_not_judged_by_its_roll(judge):
    """The test was written for ships up to 70 m."""
    with pytest.raises(CannotJudge, match="above 70 m"):
        judge("rolling-test", length=70.1)


def test_a_vessel_broader_than_long_is_refused(judge):
    """One of the two was mistyped."""
    with pytest.raises(CannotJudge, match="must lie below the length"):
        judge("rolling-test", breadth=14, length=13)
