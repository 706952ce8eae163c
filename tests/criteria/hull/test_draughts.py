"""Afloat: draughts, hog and sag, freeboard aft, lightship and roll at their limits."""

import pytest

from inspector.criteria.hull.draughts import mean_of_means
from tests.criteria.conftest import VALID

MARKS = VALID["hog-sag"]


@pytest.mark.parametrize(("rating", "greatest"), [("good", 4.5), ("poor", 4.49)])
def test_the_marks_amidships_are_compared_with_the_papers(judge, rating, greatest):
    """4.5 m amidships, between 4.1 m forward and 4.9 m aft."""
    judgement = judge("hog-sag", greatest=greatest)
    assert (rating, 4.5) == (judgement.rating, judgement.value)


# load lines are marked amidships on each side, and neither may be submerged: International
# Convention on Load Lines 1966, article 12 and regulation 5 (memory); greatest 4.5 m
@pytest.mark.parametrize(
    ("port", "starboard", "end", "band", "rating"),
    [
        (4.4, 4.5, 4.3, "at or under the greatest", "good"),
        (4.4, 4.51, 4.3, "over the greatest", "poor"),
        (4.51, 4.4, 4.3, "over the greatest", "poor"),
        # sagging: the mean of means is 4.445 m, and the marks are under water
        (4.52, 4.52, 4.22, "over the greatest", "poor"),
        # hogging: the marks are dry, and the mean of means is 4.5025 m
        (4.49, 4.49, 4.54, "mean over the greatest", "fair"),
        (4.49, 4.49, 4.53, "at or under the greatest", "good"),
    ],
)
def test_a_mark_under_water_is_never_good(judge, port, starboard, end, band, rating):
    """The deeper side decides, and the mean of means never makes it better."""
    ends = dict.fromkeys(("forward_port", "forward_starboard", "aft_port", "aft_starboard"), end)
    judgement = judge(
        "hog-sag", midship_port=port, midship_starboard=starboard, greatest=4.5, **ends
    )
    assert (band, rating) == (judgement.band, judgement.rating)


def test_a_hull_that_sags_lies_deeper_in_the_mean():
    """Three quarters of the weight lie on the midship mark: (4.1 + 6 x 4.6 + 4.9) / 8."""
    assert 4.575 == mean_of_means(4.1, 4.6, 4.9)


@pytest.mark.parametrize(
    ("band", "size", "midship"), [("straight", 0, 4.5), ("sags", 30, 4.53), ("hogs", 30, 4.47)]
)
def test_hog_and_sag_follow_from_the_midship_marks(judge, band, size, midship):
    """Deeper amidships than at the ends is a sag.

    Without the booklet's limit there is no rating.
    """
    judgement = judge("hog-sag", midship_port=midship, midship_starboard=midship)
    assert (band, None) == (judgement.band, judgement.rating)
    assert size == judgement.value


@pytest.mark.parametrize(("rating", "permitted"), [("good", 30), ("poor", 29.9)])
def test_hog_is_rated_where_the_booklet_permits_so_much(judge, rating, permitted):
    """A limit from the booklet makes it a rating, by common practice never a failure."""
    assert (
        rating
        == judge("hog-sag", midship_port=4.47, midship_starboard=4.47, permitted=permitted).rating
    )


def test_a_list_does_not_look_like_a_hog(judge):
    """Port and starboard are averaged first."""
    listing = {
        name: value + (0.1 if name.endswith("port") else -0.1) for name, value in MARKS.items()
    }
    assert "straight" == judge("hog-sag", **listing).band


@pytest.mark.parametrize(
    ("permitted", "greatest", "band"),
    [
        (30, 4.48, "at or under the greatest"),
        (29.9, 4.47, "hogs"),
        (29.9, 4.46, "over the greatest"),
        (None, 4.46, "over the greatest"),
    ],
)
def test_the_worse_of_marks_and_hog_is_told(judge, permitted, greatest, band):
    """A hog beyond the booklet is not hidden by dry marks, nor marks under water by a small hog."""
    judgement = judge(
        "hog-sag",
        midship_port=4.47,
        midship_starboard=4.47,
        permitted=permitted,
        greatest=greatest,
    )

    assert band == judgement.band
    assert "hogs" in f"{judgement.sentence} {' '.join(judgement.notes)}"
