"""Coolant and fuel: each limit from both sides, and each area's date."""

import pytest

from inspector.criteria.core.judgement import CannotJudge


@pytest.mark.parametrize(("expected", "chloride"), [("good", 100), ("poor", 100.1)])
def test_salt_in_the_coolant_is_suspected_above_100_ppm(judge, expected, chloride):
    """Sea water has found a way in."""
    assert expected == judge("coolant-chloride", chloride=chloride).rating


@pytest.mark.parametrize(("expected", "temperature"), [("good", 60), ("failed", 59.9)])
def test_a_fuel_flashes_at_60_degrees_or_above(judge, expected, temperature):
    """ISO 8217:2017, table 1, as public copies print it (seen)."""
    assert expected == judge("fuel-flash-point", temperature=temperature).rating


@pytest.mark.parametrize(
    ("band", "viscosity"),
    [("too thin", 1.99), ("in the grade", 2), ("in the grade", 6), ("too thick", 6.01)],
)
def test_a_distillate_lies_between_2_and_6(judge, band, viscosity):
    """Both ends belong to the grade."""
    assert band == judge("fuel-viscosity", viscosity=viscosity).band


@pytest.mark.parametrize(
    ("name", "changes"),
    [
        ("coolant-chloride", {"chloride": -1}),
        ("fuel-flash-point", {"temperature": 201}),
        ("fuel-viscosity", {"viscosity": 0}),
    ],
)
def test_what_lies_outside_is_refused(judge, name, changes):
    """Impossible figures are not judged."""
    with pytest.raises(CannotJudge, match="is accepted"):
        judge(name, **changes)


@pytest.mark.parametrize(
    ("expected", "sulphur", "area"),
    [
        ("good", 0.5, "outside"),
        ("failed", 0.501, "outside"),
        ("failed", 0.52, "outside"),
        ("good", 0.1, "Baltic and North Sea"),
        ("failed", 0.12, "Baltic and North Sea"),
        ("good", 0.08, "North America and US Caribbean"),
        ("good", 0.08, "outside"),
    ],
)
def test_half_a_per_cent_outside_and_a_tenth_inside(judge, expected, sulphur, area):
    """The limit itself complies."""
    assert expected == judge("fuel-sulphur", sulphur=sulphur, area=area).rating


@pytest.mark.parametrize(
    ("expected", "area", "on"),
    [
        ("good", "Mediterranean", "2025-04-30"),
        ("failed", "Mediterranean", "2025-05-01"),
        ("good", "Canadian Arctic", "2027-02-28"),
        ("failed", "Canadian Arctic", "2027-03-01"),
        ("good", "Norwegian Sea", "2027-02-28"),
        ("failed", "Norwegian Sea", "2027-03-01"),
    ],
)
def test_an_area_binds_from_its_day(judge, expected, area, on):
    """0.3 % is enough until then."""
    assert expected == judge("fuel-sulphur", sulphur=0.3, area=area, on=on).rating


def test_a_coming_limit_is_announced(judge):
    """The note names the day."""
    assert "2027-03-01" in judge("fuel-sulphur", area="Norwegian Sea").notes[0]


@pytest.mark.parametrize(
    "changes", [{"on": "2019-12-31"}, {"sulphur": 5.1}, {"area": "Pacific"}, {"sulphur": -0.1}]
)
def test_a_day_before_2020_and_an_unknown_area_are_refused(judge, changes):
    """Before 2020 other limits held."""
    with pytest.raises(CannotJudge):
        judge("fuel-sulphur", **changes)


@pytest.mark.parametrize(
    ("sulphur", "printed"),
    [(0.5, "0.50 %"), (0.502, "0.502 %")],
)
def test_a_content_is_printed_with_the_digits_of_its_limit_or_more(judge, sulphur, printed):
    """The delivery note gives two decimals; a third one that decides is not rounded away."""
    sentence = judge("fuel-sulphur", sulphur=sulphur, area="outside", on="2026-11-25").sentence

    assert f"content of {printed}, against at most 0.50 %" in sentence
