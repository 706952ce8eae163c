"""What is timed or taped in a trial on board, against the texts that set the figures.

Rules that were read are marked (seen), recalled ones (memory); figures of the trade that nobody
publishes are marked common practice. Sums are our own.
"""

import pytest

from inspector.checklists.registry import criterion
from inspector.criteria.core.judgement import CannotJudge

RESCUE = "SOLAS III/17, a public study note: not more than 5 min (seen)"
STARTING = "LSA Code 4.4.6.2, on a public rules site: within 2 min (seen)"
ESCAPE = "FSS Code 13, cargo ships, on a public rules site: 700 mm (seen)"
SLOPES = "MSC.1/Circ.1331, a trade directory: 30° and 55° (seen)"
PILOTS = "SOLAS V/23.3.3, a class society's circular of 2015: 1.5 to 9 m (seen)"
DELAY = "46 CFR 108.445(a): at least 20 s (seen)"
WINDLASS = "IACS UR A3, 3.1.4: at least 0.15 m/s (seen)"
SOUNDER = "MSC.74(69), annex 4, three public notes: 0.5 m on the scale of 20 m (seen)"
AIR = "a workboat code, 21.7.3: 25 m³/h (seen); ISO 7547, 8 l/s = 28.8 m³/h (memory)"
SEATS = "crew accommodation by a French decree: 1.5 m² a seat"
PRACTICE = "common practice, no source"

# criterion, values, band, rating, source
JUDGEMENTS = [
    ("rescue-boat-recovery", {"hoist": 299}, "within the limit", "good", RESCUE),
    ("rescue-boat-recovery", {"hoist": 300.5}, "too slow", "poor", RESCUE),
    ("boat-engine-start", {"start": 119}, "in time", "good", STARTING),
    ("boat-engine-start", {"start": 120.5}, "too long", "failed", STARTING),
    ("escape-width", {"width": 699.9}, "too narrow", "poor", ESCAPE),
    ("escape-width", {"width": 700.1}, "wide enough", "good", ESCAPE),
    ("gangway-slope", {"slope": 29.9, "way": "gangway"}, "within the limit", "good", SLOPES),
    ("gangway-slope", {"slope": 30.1, "way": "gangway"}, "too steep", "poor", SLOPES),
    (
        "gangway-slope",
        {"slope": 55.1, "way": "accommodation ladder"},
        "too steep",
        "poor",
        SLOPES,
    ),
    ("pilot-climb", {"climb": 1.49}, "lower than a pilot ladder is for", "fair", PILOTS),
    ("pilot-climb", {"climb": 8.99}, "by ladder alone", "good", PILOTS),
    ("pilot-climb", {"climb": 9.01}, "ladder and accommodation ladder", "poor", PILOTS),
    ("gas-release-delay", {"delay": 19.9}, "too short", "failed", DELAY),
    ("gas-release-delay", {"delay": 20.1}, "long enough", "good", DELAY),
    # half a length of 27.5 m at 9 m a minute takes 91.7 s
    ("heave-speed", {"heaved": 13.75, "time": 91}, "fast enough", "good", WINDLASS),
    ("heave-speed", {"heaved": 13.75, "time": 92}, "too slow", "poor", WINDLASS),
    ("sounder-error", {"sounder": 6.49, "lead": 6}, "within the tolerance", "good", SOUNDER),
    ("sounder-error", {"sounder": 5.49, "lead": 6}, "apart", "poor", SOUNDER),
    ("sounder-error", {"sounder": 6.51, "lead": 6}, "apart", "poor", SOUNDER),
    ("fresh-air-head", {"head": 24.99}, "too little", "poor", AIR),
    ("fresh-air-head", {"head": 28.79}, "less than the standard", "fair", AIR),
    ("fresh-air-head", {"head": 28.81}, "enough", "good", AIR),
    ("seat-area", {"floor": 75, "seats": 50}, "enough for crew", "good", SEATS),
    ("seat-area", {"floor": 74, "seats": 50}, "tight", "fair", SEATS),
    ("sounding-short", {"table": 8.2, "tape": 8.11}, "as the table has it", "good", PRACTICE),
    ("sounding-short", {"table": 8.2, "tape": 8.09}, "short", "poor", PRACTICE),
    ("ram-drift", {"drift": 99}, "holds", "good", PRACTICE),
    ("ram-drift", {"drift": 101}, "sinks", "poor", PRACTICE),
    ("hydraulic-temperature", {"temperature": 64.9}, "as usual", "good", PRACTICE),
    ("hydraulic-temperature", {"temperature": 65.1}, "too hot", "poor", PRACTICE),
]


@pytest.mark.parametrize(("name", "values", "band", "rating", "source"), JUDGEMENTS)
def test_a_reading_just_beside_the_limit(name, values, band, rating, source):
    """Each side of each limit comes out in its own band."""
    judgement = criterion(name).apply(values)

    assert (band, rating) == (judgement.band, judgement.rating), source


def test_litres_a_second_are_those_of_the_standard():
    """8 l/s are 28.8 m³/h."""
    assert pytest.approx(28.8) == 8 * 3600 / 1000
    assert 28.8 == criterion("fresh-air-head").apply({"head": 30}).limit


@pytest.mark.parametrize(
    ("name", "values"),
    [
        ("pilot-climb", {"climb": 0.4}),
        ("gangway-slope", {"slope": 91, "way": "gangway"}),
        ("sounding-short", {"table": 5, "tape": 5.21}),
        ("sounder-error", {"sounder": 30, "lead": 21}),
        ("heave-speed", {"heaved": 20, "time": 0}),
        ("fresh-air-head", {"head": -1}),
    ],
)
def test_what_cannot_be_is_refused(name, values):
    """A reading that no trial gives is asked back."""
    with pytest.raises(CannotJudge):
        criterion(name).apply(values)
