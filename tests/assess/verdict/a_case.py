"""A situation aboard, written entry by entry with the recorder, and the words that it gets.

The checklist of every system here is the same seven looks, so that a case says only what differs.
"""

from dataclasses import dataclass, field

from inspector.assess.assessment import assess
from inspector.assess.from_state import read_inspection
from inspector.checklists.loader import read_library
from inspector.record.inspections import Inspections

SPACES = '[space.room]\nname = "Room"\norder = 1\n[space.aft]\nname = "Aft"\norder = 2\n'
CAUTIONS = """[caution.alone]
signal = "warning"
hurts = "Nobody hears."
instead = "Go in twos."
decides = "The master."
"""
TRIALS = """[trial.load-trial]
name = "Load run"
minutes = 30
per = "unit"
needs = "running"
"""
HEAD = """[system]
id = "{id}"
name = "{name}"
order = {order}
unit = "unit"
units = ["One"]
about = "About."
retain = "Stays."
refurbish = "Is worked on."
remove = "Goes."
"""
# Two critical looks: one by a run under load, one with the eye.
CHECKS = """
[[check]]
id = "plate"
title = "Plate"
ask = "Ask."
look = "Look."
bad = "Bad."
space = "room"
minutes = 3
weight = 2
[[check]]
id = "hours"
title = "Hours on paper"
ask = "Ask."
look = "Look."
bad = "Bad."
space = "room"
minutes = 3
weight = 2
proof = "reported"
[[check]]
id = "leaks"
title = "Leaks"
ask = "Ask."
look = "Look."
bad = "Bad."
space = "room"
minutes = 4
weight = 3
[[check]]
id = "smoke"
title = "Smoke"
ask = "Ask."
look = "Look."
bad = "Bad."
space = "room"
minutes = 2
weight = 3
proof = "tested"
together = "load-trial"
[[check]]
id = "inside"
title = "Inside"
ask = "Ask."
look = "Look."
bad = "Bad."
space = "room"
minutes = 5
weight = 5
critical = true
[[check]]
id = "run"
title = "Load run"
ask = "Ask."
look = "Look."
bad = "Bad."
space = "room"
minutes = 5
weight = 5
critical = true
proof = "tested"
together = "load-trial"
readings = [{ id = "load", label = "Load held", unit = "kW" }]
[[check]]
id = "service"
title = "Yearly service"
ask = "Ask."
look = "Look."
bad = "Bad."
space = "room"
minutes = 2
weight = 3
criterion = "service-due"
given = { kind = "boat and davit, annual examination" }
from = { on = "inspection.date" }
readings = [{ id = "last", label = "Last examination", kind = "date" }]
"""
SYSTEMS = (
    ("hull", "Hull"),
    ("sets", "Generating sets"),
    ("thrusters", "Thrusters"),
    ("positioning", "Positioning"),
    ("steering", "Steering"),
)
LOOKS = ("plate", "hours", "leaks", "smoke", "inside", "run")
CRITICAL = ("inside", "run")


def sheets_in(folder):
    """Write the checklists."""
    folder.mkdir(parents=True)
    (folder / "spaces.toml").write_text(SPACES)
    (folder / "cautions.toml").write_text(CAUTIONS)
    (folder / "trials.toml").write_text(TRIALS)
    for order, (system, name) in enumerate(SYSTEMS, 1):
        text = HEAD.format(id=system, name=name, order=order) + CHECKS
        (folder / f"{system}.toml").write_text(text)
    return folder


def all_of(rating, *, but=None, depth="proof", looks=LOOKS):
    """Ratings of one unit: all alike, but some."""
    ratings = dict.fromkeys(looks, rating) | (but or {})
    return {"ratings": {check: word for check, word in ratings.items() if word}, "depth": depth}


GOOD = all_of("good")
UNSEEN = {"ratings": {}}


@dataclass
class Situation:
    """What is known of one system, in the surveyor's terms.

    units: one mapping per unit (ratings, depth, need, facts, walked_past, readings); facts and
    lines of the whole beside them.
    """

    system: str = "sets"
    units: tuple = (GOOD,)
    need: str = "required"
    facts: dict = field(default_factory=dict)
    lines: tuple = ()
    horizon: str = "15"
    more: tuple = ()

    def entries(self):
        """Every entry: (subject, field, value)."""
        yield "inspection", "date", "2026-11-25"
        yield "brief", "horizon", self.horizon
        if self.need:
            yield "brief", f"need/{self.system}", self.need
        for name, value in self.facts.items():
            yield f"verdict/{self.system}/all", name, value
        for number, unit in enumerate(self.units, 1):
            yield from self._unit(f"u{number}", unit, number)
        for number, (unit, act, likely) in enumerate(self.lines, 1):
            fields = {"system": self.system, "unit": unit, "act": act, "text": "Work"}
            fields["likely"] = str(likely)
            yield from ((f"scope/l{number}", name, value) for name, value in fields.items())
        yield from self.more

    def _unit(self, unit_id, unit, number):
        subject = f"unit/{self.system}/{unit_id}"
        yield subject, "name", unit.get("name", f"Unit {number}")
        if unit.get("walked_past"):
            yield subject, "walked_past", unit["walked_past"]
        for name, value in unit.get("facts", {}).items():
            yield f"verdict/{self.system}/{unit_id}", name, value
        for check, rating in unit["ratings"].items():
            sheet = f"sheet/{self.system}/{unit_id}/{check}"
            yield sheet, "rating", rating
            yield from _depth_of(sheet, check, unit.get("depth", "proof"))


def _depth_of(sheet, check, depth):
    """The depth of an answer: as the check asks, none (an older answer), or one said."""
    proofs = {"hours": "reported", "smoke": "tested", "run": "tested"}
    given = proofs.get(check, "sighted") if depth == "proof" else depth
    if given:
        yield sheet, "depth", given
    if given == "tested" and check == "run":
        yield sheet, "reading/load", {"value": "300", "unit": "kW"}


def record(folder, *situations, blind=()):
    """Keep situations with the recorder; blind entries come from a device that saw none of it."""
    sheets = sheets_in(folder / "sheets")
    kept = Inspections(folder / "kept", "laptop")
    inspection = kept.create(sheets)
    inspection.record("AB", [entry for each in situations for entry in each.entries()])
    if blind:
        inspection.take_in([_blind(number, *entry) for number, entry in enumerate(blind, 1)])
    state, library = inspection.state, read_library(sheets, check_criteria=True)
    kept.close()
    return state, library


def _blind(number, subject, name, value):
    return {
        "id": f"phone:{number}",
        "at": f"2026-05-02T09:{number:02d}:00.000Z",
        "device": "phone",
        "who": "CD",
        "subject": subject,
        "field": name,
        "value": value,
        "replaces": [],
    }


def assessed(folder, *situations, blind=()):
    """The assessment of situations."""
    state, library = record(folder, *situations, blind=blind)
    return assess(read_inspection(state), library)


def words(part):
    """(verdict, firmness, detail) of a part."""
    proposal = part.proposal
    return proposal.verdict, proposal.firmness, proposal.detail
