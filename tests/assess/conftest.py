"""Fixtures for the assessment: a small checklist folder, and a state written entry by entry."""

from datetime import datetime, timedelta

import pytest

from inspector.checklists.loader import read_library
from inspector.record.entry import from_dict
from inspector.record.state import State
from tests.assess.verdict.a_case import CAUTIONS, HEAD

BEGUN = datetime(2026, 5, 2)
SPACES = '[space.room]\nname = "Room"\norder = 1\n'
CHECK = """
[[check]]
id = "{id}"
title = "{title}"
ask = "Ask."
look = "Look."
bad = "Bad."
space = "room"
minutes = 3
weight = {weight}
"""


def check(id, title, weight, extra=""):
    return CHECK.format(id=id, title=title, weight=weight) + extra


OIL = """critical = true
criterion = "oil-water"
given = { service = "thruster" }
readings = [{ id = "water", label = "Water content", unit = "%" }]
"""
TIER = """criterion = "nox-tier"
from = { built = "vessel.built" }
readings = [
  { id = "speed", label = "Rated speed", unit = "rpm" },
  { id = "certificate", label = "Certificate", choices = ["none", "I", "II", "III"] },
  { id = "plate", label = "Plate text", kind = "text" },
]
"""
PLATE = """criterion = "plate-remaining-life"
from = { built_year = "vessel.year", horizon = "brief.horizon" }
given = { member = "shell, strength deck or tight bulkhead", measured_year = 2026 }
readings = [
  { id = "as_built", label = "As built", unit = "mm" },
  { id = "measured", label = "Measured", unit = "mm" },
]
"""


@pytest.fixture
def library(tmp_path):
    """Two systems: thrusters (oil, tunnel, noise) and engines (tier, plate life, look)."""
    (tmp_path / "spaces.toml").write_text(SPACES)
    (tmp_path / "cautions.toml").write_text(CAUTIONS)
    thrusters = HEAD.format(id="thrusters", name="Thrusters", order=20) + check(
        "oil", "Water in the oil", 5, OIL
    )
    thrusters += check("tunnel", "Tunnel plate", 3) + check("noise", "Noise", 2)
    engines = HEAD.format(id="engines", name="Engines", order=10) + check("tier", "Tier", 2, TIER)
    engines += check("plate", "Plate", 3, PLATE) + check("look", "Look", 5)
    (tmp_path / "thrusters.toml").write_text(thrusters)
    (tmp_path / "engines.toml").write_text(engines)
    return read_library(tmp_path, check_criteria=True)


class Writer:
    """Writes entries one second apart, each replacing what stands, and folds them into a state."""

    def __init__(self):
        self.state = State()
        self.count = 0

    def __call__(self, subject, field, value, *, device="tablet", who="AB", blind=False):
        self.count += 1
        replaces = [] if blind else [head.id for head in self.state.heads(subject, field)]
        at = BEGUN + timedelta(seconds=self.count)
        self.state.add(
            from_dict(
                {
                    "id": f"{device}:{self.count}",
                    "at": f"{at.isoformat()}.000Z",
                    "device": device,
                    "who": who,
                    "subject": subject,
                    "field": field,
                    "value": value,
                    "replaces": replaces,
                }
            )
        )
        return self

    def rate(self, path, rating, **more):
        return self(f"sheet/{path}", "rating", rating, **more)


@pytest.fixture
def write():
    """An inspection with two thrusters and one engine, nothing rated yet."""
    writer = Writer()
    writer("unit/thrusters/bow", "name", "Bow thruster")(
        "unit/thrusters/aft", "name", "Aft thruster"
    )
    return writer("unit/engines/main", "name", "Main engine")
