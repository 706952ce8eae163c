"""Fixtures for the criteria: judge by name, and one set of valid values for each criterion."""

import pytest

from inspector.criteria.registry import criterion
from tests.criteria import promised_hull, promised_plant, promised_systems

SHELL = "shell, strength deck or tight bulkhead"
VALID = {
    "plate-thickness": {"as_built": 10, "measured": 9, "member": SHELL},
    "plate-remaining-life": {"as_built": 10, "built_year": 2008, "measured": 9, "measured_year": 2026, "member": SHELL},
    "coating-condition": {"breakdown": 2, "scale": 0, "edges": 15},
    "insulation-resistance": {"resistance": 50, "temperature": 20, "insulation": "thermosetting",
                              "winding": "random-wound or under 1 kV", "voltage": 480},
    "polarization-index": {"one_minute": 260, "ten_minutes": 540, "thermal_class": "F"},
    "thermographic-rise": {"over_similar": 2, "load": 100},
    "machine-vibration": {"velocity": 2.0, "group": "1", "support": "rigid"},
    "engine-vibration": {"velocity": 20, "machine_class": "5"},
    "cold-store-temperature": {"temperature": -20, "store": "frozen"},
    "refrigerant-status": {"refrigerant": "R-134a", "installed": "2008-05-31"},
    "entry-atmosphere": {"oxygen": 20.9, "carbon_dioxide": 0.04, "flammable": 0, "toxic": 0},
    "nox-tier": {"built": "2008-05-31", "speed": 1800, "certificate": "I"},
    "dp-equipment": {"built": "2008-05-31", "class_claimed": "2", "computers": 2, "references": 3, "heading": 2,
                     "motion": 2, "wind": 2, "ups": 1},
    "imo-number": {"number": "0123450"},
    "oil-water": {"water": 0.01, "service": "thruster"},
    "supply-voltage": {"voltage": 480, "nominal": 480},
    "supply-frequency": {"frequency": 60, "nominal": 60},
    "harmonic-distortion": {"distortion": 5},
    "earth-fault": {"resistance": 2000, "voltage": 480},
}

VALID |= promised_hull.VALID
VALID |= promised_systems.VALID
VALID |= promised_plant.VALID


@pytest.fixture
def judge():
    """Judge values by the name of a criterion, over the valid ones where a value is not given."""

    def apply(name, **values):
        return criterion(name).apply({**VALID[name], **values})

    return apply


@pytest.fixture
def valid():
    """Return a copy of the valid values of a criterion."""
    return lambda name: dict(VALID[name])
