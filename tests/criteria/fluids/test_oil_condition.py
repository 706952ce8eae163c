"""Used engine oil: every limit from both sides, and readings that do not compare."""

import pytest

from inspector.checklists.registry import criterion
from inspector.criteria.core.judgement import CannotJudge


@pytest.mark.parametrize(
    ("band", "used"),
    [
        ("too thin", 79.9),
        ("thinning", 80),
        ("thinning", 89.9),
        ("as new", 90),
        ("as new", 115),
        ("thickening", 115.1),
        ("thickening", 125),
        ("too thick", 125.1),
    ],
)
def test_viscosity_is_watched_and_acted_on_either_way(judge, band, used):
    """-10 and -20, +15 and +25 % of 100 mm²/s."""
    assert band == judge("oil-viscosity", used=used, new=100).band


def test_mixed_temperatures_are_refused(judge):
    """A reading at 100 °C against one at 40 °C says nothing."""
    with pytest.raises(CannotJudge, match="only like temperatures compare"):
        judge("oil-viscosity", used_at="100 °C")


@pytest.mark.parametrize(
    ("band", "used"),
    [("in reserve", 7.26), ("half used", 7.25), ("half used", 5.81), ("used up", 5.8)],
)
def test_a_base_number_is_half_used_from_fifty_per_cent_on(judge, band, used):
    """Exactly 50 % of 14.5 counts as half used, 60 % as used up."""
    assert band == judge("oil-base-number", used=used).band


@pytest.mark.parametrize(
    ("band", "acid"), [("below the acid number", 9), ("in reserve", 8.1), ("in reserve", None)]
)
def test_a_base_number_below_the_acid_number_is_spent(judge, band, acid):
    """8.1 of 14.5 is 44 % used up, and spent all the same beside an acid number of 9."""
    assert band == judge("oil-base-number", used=8.1, acid=acid).band


@pytest.mark.parametrize(
    ("name", "asked", "watch", "act"), [("fuel-dilution", "fuel", 2, 5), ("oil-soot", "soot", 2, 3)]
)
def test_fuel_and_soot_have_two_limits(judge, name, asked, watch, act):
    """Good to the first, watched to the second, then acted on; guidance never fails."""
    found = [
        judge(name, **{asked: value}).rating for value in (watch, watch + 0.01, act, act + 0.01)
    ]
    assert ["good", "fair", "fair", "poor"] == found


def test_the_makers_sheet_replaces_the_usual_limits():
    """With 1 and 3 % from the engine's own sheet, 3.1 % calls for action by that sheet."""
    rule = criterion("fuel-dilution")
    own = rule.limit_set.with_limits(
        {"watch": "1", "act": "3"}, "Engine maker's oil sheet, table 2"
    )
    assert ("act", "cited by the surveyor") == (
        rule.apply({"fuel": 3.1}, own).band,
        rule.apply({"fuel": 3.1}, own).source.mark,
    )


@pytest.mark.parametrize(
    ("name", "changes"),
    [
        ("oil-viscosity", {"new": 0}),
        ("oil-base-number", {"new": 0}),
        ("fuel-dilution", {"fuel": 101}),
        ("oil-soot", {"soot": -1}),
    ],
)
def test_what_lies_outside_is_refused(judge, name, changes):
    """Nothing is divided by an oil that has no viscosity."""
    with pytest.raises(CannotJudge, match="is accepted"):
        judge(name, **changes)
