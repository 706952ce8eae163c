"""What the trade says by habit, and two rules from memory, by hand calculation.

Nothing of it is printed in a standard that was read; each row says so.
"""

import pytest

from inspector.checklists.registry import criterion

PRACTICE = "common practice, no source"
VISIT = {"on": "2026-11-25"}
# criterion, values, expected band, expected rating, source and calculation
JUDGEMENTS = [
    ("gear-oil-temperature", {"before": 64, "after": 52}, "normal", "good", PRACTICE),
    ("gear-oil-temperature", {"before": 68}, "warm", "fair", f"{PRACTICE}: 65 to 70 °C"),
    ("gear-oil-temperature", {"before": 75, "after": 70}, "hot", "poor", PRACTICE),
    (
        "thruster-overhaul",
        {"since": 7600, "overhauled": "2021-06-02", **VISIT},
        "within its interval",
        "good",
        PRACTICE,
    ),
    (
        "thruster-overhaul",
        {"since": 9400, "overhauled": "2012-04-03", **VISIT},
        "overdue",
        "poor",
        f"{PRACTICE}: ten years",
    ),
    ("rudders-in-step", {"difference": 1}, "in step", "good", PRACTICE),
    ("rudders-in-step", {"difference": 2.5}, "out of step", "poor", f"{PRACTICE}: 2°"),
    ("hose-age", {"oldest": 9.9}, "within its life", "good", PRACTICE),
    ("hose-age", {"oldest": 17}, "past its life", "poor", f"{PRACTICE}: ten years"),
    ("traction-battery-health", {"health": 85, "rated": 400}, "aged", "fair", PRACTICE),
    ("traction-battery-health", {"health": 74, "rated": 400}, "at its end", "poor", PRACTICE),
    ("inhibited-alarms", {"inhibited": 6, "channels": 1140}, "few", "good", "0.53 %, by hand"),
    ("inhibited-alarms", {"inhibited": 96, "channels": 420}, "many", "poor", "22.9 %, by hand"),
    ("unanswered-call", {"escalated": 3}, "in time", "good", PRACTICE),
    ("unanswered-call", {"escalated": 8}, "too late", "poor", f"{PRACTICE}: five minutes"),
    ("personnel-alarm", {"reminder": 27}, "in time", "good", f"{PRACTICE}: 27 and 30 min"),
    ("personnel-alarm", {"reminder": 30}, "late", "fair", f"{PRACTICE}: 27 and 30 min"),
    ("channels-by-lot", {"tried": 10, "failed": 2}, "many failed", "poor", f"{PRACTICE}: 2 of 10"),
    ("gauges-by-lot", {"pairs": 10, "off": 3}, "many differ", "poor", f"{PRACTICE}: 3 of 10"),
    ("refrigerant-added", {"added": 5.5, "charge": 14}, "leaking", "poor", "39 %, by hand"),
    ("bend-wall", {"bend": 4.6, "straight": 6.3}, "worn", "fair", "73 %, by hand"),
    ("bend-wall", {"bend": 3.1, "straight": 6.3}, "worn through", "poor", f"{PRACTICE}: half"),
    (
        "capacity-left",
        {"installed": 3640, "largest": 910, "peak": 1880},
        "with margin",
        "good",
        "SOLAS II-1/41.1.2 (memory): 1880 of 2730 kW are 68.9 %, by hand",
    ),
    (
        "capacity-left",
        {"installed": 1050, "largest": 350, "peak": 640},
        "little margin",
        "fair",
        "SOLAS II-1/41.1.2 (memory): 640 of 700 kW are 91.4 %, by hand",
    ),
    (
        "capacity-left",
        {"installed": 1050, "largest": 350, "peak": 720},
        "not carried",
        "poor",
        "SOLAS II-1/41.1.2 (memory): more than 700 kW",
    ),
    (
        "emergency-load",
        {"list": 118, "power": 150},
        "carried",
        "good",
        "SOLAS II-1/43.2: 78.7 %, by hand",
    ),
    (
        "emergency-load",
        {"list": 160, "power": 150},
        "overloaded",
        "failed",
        "SOLAS II-1/43.2: it is to be sufficient for all those services",
    ),
]


@pytest.mark.parametrize(("name", "values", "band", "rating", "source"), JUDGEMENTS)
def test_a_reading_is_rated_as_the_source_says(name, values, band, rating, source):
    """Band and rating of each row, as its source or its hand calculation has them."""
    judgement = criterion(name).apply(values)

    assert (band, rating) == (judgement.band, judgement.rating), source


def test_energy_taken_out_tells_the_capacity_of_a_traction_battery():
    """Our own arithmetic: 90 kWh over a fall of 25 % are 360 kWh, 72 % of 500."""
    values = {"health": 95, "rated": 500, "taken": 90, "span": 25}

    assert any("72 %" in note for note in criterion("traction-battery-health").apply(values).notes)
