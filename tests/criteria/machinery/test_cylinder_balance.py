"""Cylinders against each other: limits from both sides, lists that cannot be read, light load."""

import pytest

from inspector.criteria.core.judgement import CannotJudge
from inspector.criteria.machinery.cylinder_balance import worst


@pytest.mark.parametrize(
    ("expected", "last"), [("good", 440), ("fair", 440.1), ("fair", 466.6), ("poor", 466.7)]
)
def test_exhaust_is_watched_at_30_and_acted_on_at_50_kelvin(judge, expected, last):
    """Three cylinders at 400 °C and one at 440 °C, 30 K from the mean, or 466.6 °C, 49.95 K."""
    assert expected == judge("exhaust-spread", temperatures=f"400 400 400 {last}").rating


@pytest.mark.parametrize(("band", "load"), [("indicative", 74.9), ("act", 75)])
def test_light_load_is_indicative_only(judge, band, load):
    """Below 75 % the cylinders differ by themselves."""
    assert band == judge("exhaust-spread", temperatures="400 400 400 500", load=load).band


@pytest.mark.parametrize(
    ("name", "watch", "act"), [("compression-spread", 5, 10), ("firing-pressure-spread", 3, 5)]
)
def test_pressures_have_two_limits(judge, name, watch, act):
    """Two cylinders so many per cent below and above their mean of 100 bar."""
    found = [
        judge(name, pressures=f"{100 - share} {100 + share}").rating
        for share in (watch, watch + 0.01, act, act + 0.01)
    ]
    assert ["good", "fair", "fair", "poor"] == found


@pytest.mark.parametrize(
    "text",
    [
        "392 401 388",
        "392; 401; 388",
        "392,0 401,0 388,0",
        "392, 401, 388",
        "392,0, 401,0, 388",
    ],
)
def test_a_list_is_read_as_people_type_it(judge, text):
    """Blanks, semicolons or commas and blanks between the figures, decimal commas within them."""
    assert "393.7 °C" in judge("exhaust-spread", temperatures=text).sentence


@pytest.mark.parametrize(
    "text", ["392", "392 hot 388", " ".join(["390"] * 21), "392 4010", "392,401"]
)
def test_what_is_no_list_is_refused(judge, text):
    """One cylinder, a word, too many, a slip of the keys, commas that could be decimals."""
    with pytest.raises(CannotJudge):
        judge("exhaust-spread", temperatures=text)


def test_the_median_is_not_pulled_by_the_outlier():
    """One hot cylinder moves the mean and not the median."""
    number, from_mean, from_median = worst((400, 400, 400, 500))
    assert (4, 75, 100) == (number, from_mean, from_median)
