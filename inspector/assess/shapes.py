"""The shapes that assessment hands to conversion, report and screens. Plain frozen data; how they come about is in the sibling modules."""

from collections.abc import Mapping
from dataclasses import dataclass, field

from inspector.assess.agreement import Agreement
from inspector.assess.settings import Settings
from inspector.checklists import Check, System
from inspector.criteria.judgement import Judgement
from inspector.criteria.profiles import Profile

RATINGS = ("good", "fair", "poor", "failed")
REASONS = ("no access", "not opened", "not run", "no light", "no time")
VERDICTS = ("retain", "refurbish", "remove", "undecided")
NEEDS = ("required", "useful", "neutral", "unwanted")
URGENCIES = ("danger now", "before purchase", "in the yard", "keep watch")


@dataclass(frozen=True)
class Typed:
    """A reading as typed: label, the text without its unit, and the unit ("" for whole, choice, date and text)."""

    id: str
    label: str
    text: str
    unit: str = ""


@dataclass(frozen=True)
class Answered:
    """One of several answers to one field of a check that were given without seeing each other."""

    field: str                         # rating, note or reading/<id>
    text: str
    who: str
    at: str                            # ISO time by that device's own clock


@dataclass(frozen=True)
class CheckResult:
    """One check on one unit. `answer` is what the surveyor said ("" if nothing), `rating` what counts (his word, else the judgement's proposal)."""

    subject: str                       # sheet/<system>/<unit>/<check>
    check: Check
    unit: str                          # the unit's id
    unit_name: str
    answer: str = ""                   # good|fair|poor|failed, "not seen: <reason>", "not fitted" or ""
    rating: str | None = None          # None where not seen or not fitted
    readings: tuple[Typed, ...] = ()
    judgement: Judgement | None = None
    cannot_judge: str = ""             # one sentence, where readings are there but cannot be judged
    note: str = ""
    photos: tuple[str, ...] = ()       # sha256, in the order taken
    disputed: bool = False             # two answers given apart: by two people, or by one on two devices
    who: str = ""
    answers: tuple[Answered, ...] = ()  # every standing answer of each disputed field, until settled
    space: str = ""                    # where this unit's check is walked
    gate: Mapping[str, str] = field(default_factory=dict)   # enclosed space: permit, attendant, instrument, entered ... as answered

    @property
    def applicable(self) -> bool:
        return self.answer != "not fitted"

    @property
    def overruled(self) -> bool:
        """The surveyor's rating differs from the one that the judgement proposed."""
        return bool(self.judgement and self.judgement.rating and self.answer in RATINGS and self.answer != self.judgement.rating)


@dataclass(frozen=True)
class Condition:
    """0 to 100; `points` is None where nothing was seen; low..high is what the unseen could still make of it."""

    points: float | None
    low: float
    high: float
    coverage: float                    # 0..1, by weight
    seen: int
    applicable: int
    capped_by: tuple[str, ...] = ()    # titles of the critical checks that set the cap


@dataclass(frozen=True)
class Change:
    """One single fact that would flip the verdict: the fact in words, and the verdict it would give."""

    fact: str
    verdict: str


@dataclass(frozen=True)
class Proposal:
    """A proposed verdict: the rule that fired, every reason in a sentence, what would change it, which checks would decide it."""

    verdict: str
    rule: str                          # short name of the rule
    rule_text: str                     # the rule as a surveyor reads it aloud
    reasons: tuple[str, ...] = ()
    changes: tuple[Change, ...] = ()
    deciding: tuple[str, ...] = ()     # "Bow thruster 1: Water in the hub oil", for undecided


@dataclass(frozen=True)
class WorkLine:
    """One line of the scope: what the yard would do, for money (low, likely, high) and weight (t, plus is added)."""

    id: str
    system: str
    unit: str                          # unit id or "all"
    act: str                           # refurbish | replace | remove
    text: str
    low: float | None = None
    likely: float | None = None
    high: float | None = None
    weight: float | None = None
    sequence: int | None = None        # place in the order of the work, 1 first; None: not placed yet
    rate: str = ""                     # the line of the rate book it was priced by, as it read then


@dataclass(frozen=True)
class Finding:
    """One fact found, with its urgency and what to do."""

    id: str
    number: int
    title: str
    text: str
    urgency: str
    action: str = ""
    system: str = ""
    unit: str = ""
    unit_name: str = ""
    photos: tuple[str, ...] = ()
    check: str = ""                    # title of the check it was made on, "" where it was made on none

    @property
    def where(self) -> str:
        """The unit, and the check it was made on: "Bow thruster 1: Water in the hub oil"."""
        return ": ".join(part for part in (self.unit_name, self.check) if part)


@dataclass(frozen=True)
class Facts:
    """What the verdict rules need beside the condition, for one system or unit."""

    need: str = "neutral"
    law: tuple[str, ...] = ()          # sentences saying why it may not stay as it is
    life_years: float | None = None    # remaining life, None unknown
    horizon: float | None = None       # the buyer's, years
    parts: str = ""                    # "", "made", "hard to get", "no longer made"
    refurbish_cost: float | None = None
    replace_cost: float | None = None
    weight_won: float | None = None    # t taken off by removal
    space_won: float | None = None     # m³ given back by removal
    danger: tuple[str, ...] = ()       # titles of its findings that are a danger now
    units: tuple[str, ...] = ()        # for a whole system: the verdict of each of its units
    life_refurbished: float | None = None   # years after refurbishing; with the four below for the yearly cost
    life_new: float | None = None
    yearly_refurbished: float | None = None   # running and upkeep a year; None counts as 0 and is told
    yearly_new: float | None = None
    residual_refurbished: float | None = None   # worth after its life; None counts as 0 and is told
    residual_new: float | None = None


@dataclass(frozen=True)
class Part:
    """A unit, or a whole system ("all"): condition, facts, proposal and the surveyor's own decision."""

    id: str
    name: str
    condition: Condition
    facts: Facts
    proposal: Proposal
    decision: str = ""                 # retain|refurbish|remove or "" (not decided)
    reason: str = ""
    results: tuple[CheckResult, ...] = ()

    @property
    def verdict(self) -> str:
        """The surveyor's word if given, else the proposal."""
        return self.decision or self.proposal.verdict


@dataclass(frozen=True)
class SystemPart:
    """A system of the inspection: the whole and its units."""

    system: System
    whole: Part
    units: tuple[Part, ...]
    lines: tuple[WorkLine, ...] = ()


@dataclass(frozen=True)
class Photo:
    """A photo as registered: number in the register, digest, what it shows, where it belongs."""

    number: int
    sha: str
    caption: str = ""
    on: str = ""                       # subject it belongs to, "" unfiled
    taken: str = ""
    who: str = ""
    kind: str = "jpeg"
    place: str = ""                    # "Bow thruster 1: Water in the hub oil"


@dataclass(frozen=True)
class Assessment:
    """Everything that screens and report show of one inspection."""

    vessel: Mapping[str, str] = field(default_factory=dict)
    brief: Mapping[str, str] = field(default_factory=dict)
    inspection: Mapping[str, str] = field(default_factory=dict)
    systems: tuple[SystemPart, ...] = ()
    findings: tuple[Finding, ...] = ()
    photos: tuple[Photo, ...] = ()
    disputes: int = 0
    settings: Settings = field(default_factory=Settings)
    profiles: Mapping[str, Profile] = field(default_factory=dict)   # limits that the surveyor set, by criterion
    agreements: tuple[Agreement, ...] = ()                          # every two people who rated the same checks
    currency: str = ""                 # what all amounts are in, "" where none was named
    faults: tuple[str, ...] = ()       # settings and limits of his own that could not be used, one sentence each
