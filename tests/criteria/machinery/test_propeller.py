"""Propellers: pitch, thickness, edges and the change of pitch, each limit from both sides."""

import pytest

from inspector.checklists.registry import criterion
from inspector.criteria.core.judgement import CannotJudge
from inspector.criteria.machinery.propeller import pitch_limits


@pytest.mark.parametrize(
    ("band", "measured"),
    [
        ("pitch too low", 2.3819),
        ("within the class", 2.382),
        ("within the class", 2.418),
        ("pitch too high", 2.4181),
    ],
)
def test_a_pitch_of_class_one_may_be_three_quarters_per_cent_off(judge, band, measured):
    """2.400 m within 18 mm, both ends inside."""
    judgement = judge("propeller-pitch", measured=measured)
    assert band == judgement.band
    assert judgement.rating == ("good" if band == "within the class" else "poor")


@pytest.mark.parametrize(
    ("expected", "measured"),
    [("S", 2.4), ("I", 2.386), ("II", 2.377), ("III", 2.352), (None, 2.32)],
)
def test_the_note_names_the_best_class_that_the_propeller_still_meets(judge, expected, measured):
    """A worn class I propeller may still be a class III one."""
    note = judge("propeller-pitch", measured=measured).notes[0]
    assert (f"class {expected}." if expected else "no class") in note


def test_the_nearer_end_is_the_limit(judge):
    """A low pitch is compared with the low end."""
    judgement = judge("propeller-pitch", measured=2.352)
    assert (2.382, -0.03) == (judgement.limit, judgement.margin)


@pytest.mark.parametrize(
    ("rating", "measured"),
    [("poor", 58.49), ("good", 58.5), ("good", 62.5), ("fair", 62.51)],
)
def test_a_thin_blade_is_poor_and_a_thick_one_fair(judge, rating, measured):
    """60 mm of class I: 1.5 % is 0.9 mm, so the least of 1.5 mm holds, and 2.5 mm above."""
    assert rating == judge("propeller-blade-thickness", measured=measured).rating


def test_the_share_holds_where_it_is_more_than_the_least():
    """At 200 mm of class I 1.5 % is 3 mm and 2.5 % is 5 mm."""
    rule = criterion("propeller-blade-thickness")
    bands = rule.bands_for({"nominal": 200, "tolerance_class": "I"}).bands
    assert [197.0, 205.0, None] == [band.upto for band in bands]


@pytest.mark.parametrize(
    ("rating", "loss", "length", "tolerance_class"),
    [
        ("good", 18, 600, "II"),
        ("poor", 18.01, 600, "II"),
        ("good", 13, 300, "II"),
        ("poor", 13.1, 300, "II"),
        ("good", 7, 100, "S"),
        ("good", 50, 1000, "III"),
    ],
)
def test_lost_edges_are_held_against_the_length_of_the_section(
    judge, rating, loss, length, tolerance_class
):
    """3 % and at least 13 mm for class II, and so on."""
    assert (
        rating
        == judge(
            "propeller-edge-loss", loss=loss, length=length, tolerance_class=tolerance_class
        ).rating
    )


@pytest.mark.parametrize(("rating", "time"), [("good", 30), ("poor", 30.1), ("good", 1)])
def test_a_change_of_pitch_takes_thirty_seconds_at_most(judge, rating, time):
    """Common practice, from both sides."""
    assert rating == judge("pitch-change-time", time=time).rating


def test_classes_widen_from_s_to_three():
    """Each class lies inside the next."""
    spans = [pitch_limits(3.1, one) for one in ("S", "I", "II", "III")]
    assert spans == sorted(spans, key=lambda span: span[1] - span[0])


@pytest.mark.parametrize(
    ("name", "changes"),
    [
        ("propeller-pitch", {"nominal": 0.2}),
        ("propeller-pitch", {"tolerance_class": "IV"}),
        ("propeller-edge-loss", {"length": 99}),
        ("pitch-change-time", {"time": 0}),
    ],
)
def test_what_lies_outside_is_refused(judge, name, changes):
    """Toys, unknown classes and no time at all are not judged."""
    with pytest.raises(CannotJudge):
        judge(name, **changes)


def test_a_blade_of_the_wrong_unit_is_refused(judge):
    """6 cm typed for 60 mm is caught at the ends of "propeller-blade-thickness"."""
    with pytest.raises(CannotJudge, match="below 5 mm"):
        judge("propeller-blade-thickness", nominal=4)
