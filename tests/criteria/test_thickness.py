"""Thickness: the boundaries of the published table, rates, lives and what is refused."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.criteria.judgement import RATINGS, CannotJudge
from inspector.criteria.profiles import BadProfile
from inspector.criteria.registry import criterion
from inspector.criteria.thickness import MEMBERS, allowances, corrosion_rate

FLOOR = MEMBERS[1]


@pytest.mark.parametrize(
    ("rating", "band", "measured"),
    [
        ("good", "acceptable", 8.5), ("fair", "acceptable", 8.49), ("fair", "acceptable", 7.75),
        ("poor", "substantial corrosion", 7.74), ("poor", "substantial corrosion", 7.0),
        ("failed", "below renewal thickness", 6.99), ("failed", "below renewal thickness", 0),
    ],
)
def test_a_shell_plate_of_ten_millimetres_changes_band_at_the_printed_values(judge, rating, band, measured):
    """Substantial corrosion begins under 7.75 mm and renewal under 7.00 mm; the limit itself is still inside."""
    judgement = judge("plate-thickness", measured=measured)
    assert (rating, band) == (judgement.rating, judgement.band)


def test_the_table_rounds_half_up_and_so_does_the_judgement(judge):
    """8.125 prints as 8.13, so a floor plate of 10 mm at 8.125 mm is already substantially corroded."""
    judgement = judge("plate-thickness", member=FLOOR, measured=8.125)
    assert judgement.band == "substantial corrosion"


def test_the_margin_is_what_is_left_above_renewal(judge):
    """Limit and margin are in millimetres, exact as written."""
    judgement = judge("plate-thickness", measured=8.3)
    assert (judgement.value, judgement.unit, judgement.limit, judgement.margin) == (8.3, "mm", 7.0, 1.3)


@pytest.mark.parametrize("measured", [10.01, 10.5])
def test_a_plate_thicker_than_built_is_flagged_and_not_clipped(judge, measured):
    """Up to 5 % above as built may be paint or tolerance; the note says check."""
    judgement = judge("plate-thickness", measured=measured)
    assert measured == judgement.value
    assert any("above as built: check the coating" in note for note in judgement.notes)


@pytest.mark.parametrize("measured", [9.99, 10])
def test_a_plate_at_or_under_its_thickness_is_not_flagged(judge, measured):
    """The note about coating and zero belongs to readings above as built."""
    assert not any("above as built" in note for note in judge("plate-thickness", measured=measured).notes)


@pytest.mark.parametrize("name", ["plate-thickness", "plate-remaining-life"])
def test_a_plate_much_thicker_than_built_is_refused(judge, name):
    """More than 5 % above is another plate, another drawing or a gauge set wrong."""
    with pytest.raises(CannotJudge, match="not the one meant"):
        judge(name, measured=10.51)


def test_the_profile_is_named(judge):
    """The society's figures are a profile, and the judgement says so."""
    assert any(note.startswith("Profile used: One society's general hull table: ") for note in judge("plate-thickness").notes)


FLAT = {"shell_share": "20", "shell_added": "0"}


def test_the_surveyor_may_set_the_profile_of_his_own_society(judge):
    """With a flat 20 % a plate of 10 mm at 8.3 mm has used 85 % of its allowance, and the judgement cites his text."""
    rule = criterion("plate-thickness")
    own = rule.profile.with_limits(FLAT, "Hull rules of the society, 2019, table 3")
    judgement = rule.apply({"as_built": 10, "measured": 8.3, "member": MEMBERS[0]}, own)
    assert ("substantial corrosion", 8.0) == (judgement.band, judgement.limit)
    assert "cited by the surveyor" == judgement.source.mark
    assert any("as set by the surveyor" in note for note in judgement.notes)


@pytest.mark.parametrize(("band", "measured"), [("substantial corrosion", 10.1), ("acceptable", 10.3)])
def test_a_flat_fifth_of_twelve_millimetres(judge, band, measured):
    """12 mm less 20 % is 9.6, and three quarters of the 2.4 mm are gone at 10.2."""
    rule = criterion("plate-thickness")
    own = rule.profile.with_limits(FLAT, "Hull rules of the society, 2019, table 3")
    assert band == rule.apply({"as_built": 12, "measured": measured, "member": MEMBERS[0]}, own).band


@pytest.mark.parametrize("limit", [{"shell_share": "51"}, {"floor_added": "2.1"}, {"substantial": "49"}])
def test_limits_that_cannot_be_are_refused(limit):
    """An allowance of more than half of the plate is a slip of the keyboard."""
    with pytest.raises(BadProfile, match="cannot be; expected"):
        criterion("plate-thickness").profile.with_limits(limit, "Some rules")


def test_remaining_life_follows_the_profile_too():
    """10.0 mm of 2008, 8.9 of 2021 and 8.3 of 2026 on a flat 20 %: 0.3 mm at 0.12 mm a year are 2.5 years."""
    rule = criterion("plate-remaining-life")
    own = rule.profile.with_limits(FLAT, "Hull rules of the society, 2019, table 3")
    values = {"as_built": 10, "built_year": 2008, "measured": 8.3, "measured_year": 2026, "previous": 8.9, "previous_year": 2021, "member": MEMBERS[0]}
    assert 2.5 == rule.apply(values, own).value


def test_the_horizon_is_compared_with_the_exact_life(judge):
    """1.5 mm at 1.5 mm in 18 years are 18 years and not their binary neighbour."""
    assert 18.0 == judge("plate-remaining-life", measured=8.5).value


@pytest.mark.parametrize(("years", "measured"), [("9 years", 8.5), ("10 years", 9.5)])
def test_the_next_gauging_comes_at_half_the_life_and_within_ten_years(judge, years, measured):
    """18 years of life ask for a look within 9; a longer life still within 10."""
    assert any(f"Gauge again within {years}" in note for note in judge("plate-remaining-life", measured=measured).notes)


@given(st.integers(50, 500), st.sampled_from(MEMBERS), st.lists(st.floats(0, 1), min_size=2, max_size=2))
def test_a_thinner_plate_never_gets_a_better_rating(tenths, member, shares):
    """Over all members and thicknesses the rating falls with the reading."""
    rule, built = criterion("plate-thickness"), tenths / 10
    readings = [{"as_built": built, "measured": built * share, "member": member} for share in sorted(shares)]
    thin, thick = map(rule.apply, readings)
    assert RATINGS.index(thin.rating) >= RATINGS.index(thick.rating)


@given(st.integers(50, 500), st.sampled_from(MEMBERS))
def test_substantial_corrosion_lies_between_as_built_and_renewal(tenths, member):
    """The three thicknesses keep their order for every plate."""
    substantial, renewal = allowances(tenths / 10, member)
    assert 0 < renewal < substantial < tenths / 10


@pytest.mark.parametrize(
    ("rating", "band", "horizon"),
    [("good", "covers the horizon twice", 9), ("fair", "covers the horizon", 9.01), ("fair", "covers the horizon", 18),
     ("poor", "ends before the horizon", 18.01), (None, "no horizon given", None)],
)
def test_remaining_life_is_held_against_the_horizon(judge, rating, band, horizon):
    """A plate with 18 years left: good to 9 years, fair to 18, poor beyond, unrated without a horizon."""
    judgement = judge("plate-remaining-life", measured=8.5, horizon=horizon)
    assert judgement.value == pytest.approx(18.0)
    assert (rating, band) == (judgement.rating, judgement.band)


@pytest.mark.parametrize(("rating", "measured"), [("poor", 7.0), ("failed", 6.99)])
def test_a_plate_at_its_renewal_thickness_has_no_life_left(judge, rating, measured):
    """At the limit poor, below it failed, and the life is zero and not negative."""
    judgement = judge("plate-remaining-life", measured=measured, horizon=10)
    assert (rating, 0.0, "no life left") == (judgement.rating, judgement.value, judgement.band)


def test_a_plate_without_loss_has_no_number_of_years(judge):
    """No loss is told in words, never as infinity."""
    judgement = judge("plate-remaining-life", measured=10, horizon=10)
    assert judgement.value is None
    assert judgement.rating == "good"
    assert "no measurable loss" in judgement.sentence
    assert "inf" not in judgement.sentence


@pytest.mark.parametrize(("rate", "previous"), [(0.12, 8.9), (1.7 / 18, 8.5)])
def test_the_greater_of_the_two_rates_governs(judge, rate, previous):
    """A plate from 10.0 (2008) to 8.3 mm (2026) lost faster since 2021 in the first case, slower in the second."""
    judgement = judge("plate-remaining-life", measured=8.3, previous=previous, previous_year=2021)
    assert (8.3 - 7.0) / rate == pytest.approx(judgement.value)


@pytest.mark.parametrize(
    ("input_name", "changes", "said"),
    [
        ("measured_year", {"measured_year": 2008}, "must lie after the build"),
        ("previous_year", {"previous": 9.5}, "needs both"), ("previous", {"previous_year": 2020}, "needs both"),
        ("previous_year", {"previous": 9.5, "previous_year": 2026}, "must lie between"),
        ("previous_year", {"previous": 9.5, "previous_year": 2008}, "must lie between"),
    ],
)
def test_years_out_of_order_are_refused(judge, input_name, changes, said):
    """Build, previous and present gauging follow each other, and the previous one needs year and thickness."""
    with pytest.raises(CannotJudge, match=said) as caught:
        judge("plate-remaining-life", **changes)

    assert input_name == caught.value.input


def test_a_rate_is_loss_over_years():
    """Two thicknesses and the years between give the rate in the unit of the thicknesses."""
    assert corrosion_rate(10.0, 8.3, 18) == pytest.approx(1.7 / 18)
