"""What assessment hands to conversion, report and screens: plain frozen data."""

from collections.abc import Mapping
from dataclasses import dataclass, field

from inspector.assess.agreement import Agreement
from inspector.assess.checked import CheckResult, Condition
from inspector.assess.recorded import RecordedInspection
from inspector.assess.registers import Finding, Photo, WorkLine
from inspector.assess.verdict.settings import Settings
from inspector.assess.verdict.word import OfferedLine, Paper, Proposal
from inspector.checklists.model import System, Trial
from inspector.criteria.core.criterion import Criterion
from inspector.criteria.core.limit_sets import LimitSet
from inspector.values.vocabulary import FIRM, RETAIN_WITH_WORK


@dataclass(frozen=True)
class Facts:
    """What the verdict rules need beside the condition, for one system or unit.

    Parameters
    ----------
    need : str
        What the brief says of it; "" where it says nothing.
    law : tuple of str
        Sentences that say why the thing itself may not stay as it is.
    life_years, horizon : float or None
        Remaining life, and the buyer's horizon; years.
    parts : str
        "made", "hard to get", "no longer made" or "".
    refurbish_cost, replace_cost : float or None
        Money.
    weight_won : float or None
        t taken off by removal.
    space_won : float or None
        m³ given back by removal.
    danger : tuple of str
        Titles of its findings that are a danger now.
    life_refurbished, life_new : float or None
        Years after refurbishing, and of a new one.
    yearly_refurbished, yearly_new : float or None
        Running and upkeep, money a year; None counts as 0, and that is reported.
    residual_refurbished, residual_new : float or None
        Worth after its life, money; None counts as 0, and that is reported.
    beyond_repair : str
        Why the surveyor says that it cannot be repaired, "" where he does not.
    services_cost : float or None
        What its papers and services cost, money.
    shared : bool
        Whether the costs are those of the whole system, since the unit has none of its own.
    stays : bool
        Whether it is a part of the ship that cannot be taken out.
    """

    need: str = ""
    law: tuple[str, ...] = ()
    life_years: float | None = None
    horizon: float | None = None
    parts: str = ""
    refurbish_cost: float | None = None
    replace_cost: float | None = None
    weight_won: float | None = None
    space_won: float | None = None
    danger: tuple[str, ...] = ()
    life_refurbished: float | None = None
    life_new: float | None = None
    yearly_refurbished: float | None = None
    yearly_new: float | None = None
    residual_refurbished: float | None = None
    residual_new: float | None = None
    beyond_repair: str = ""
    services_cost: float | None = None
    shared: bool = False
    stays: bool = False


@dataclass(frozen=True)
class WorkCost:
    """What the counted lines of a system come to, in words that fit its word.

    Parameters
    ----------
    label : str
        "refurbishing", "work beside it", "a new one" ...
    likely : float
        The sum of their likely costs [currency].
    """

    label: str
    likely: float


@dataclass(frozen=True)
class Part:
    """A unit, or a whole system.

    Parameters
    ----------
    id : str
        "all" for a whole system.
    name : str
    condition : Condition
    facts : Facts
    proposal : Proposal
    decision : str
        The surveyor's: "retain", "refurbish", "remove", or "" where he has not decided.
    reason : str
        His reason.
    results : tuple of CheckResult
    walked_past : str
        What was seen against it in passing: "nothing", "something" or "".
    papers : tuple of Paper
        The papers and services beside its word.
    let_go : bool
        Whether it goes and nothing takes its place.
    cost : WorkCost or None
        Of a whole system, what its work lines come to; None where none is priced.
    with_work : bool
        Whether work is recorded or offered on it, also where it stays.
    """

    id: str
    name: str
    condition: Condition
    facts: Facts
    proposal: Proposal
    decision: str = ""
    reason: str = ""
    results: tuple[CheckResult, ...] = ()
    walked_past: str = ""
    papers: tuple[Paper, ...] = ()
    let_go: bool = False
    cost: WorkCost | None = None
    with_work: bool = False

    @property
    def verdict(self) -> str:
        """The surveyor's decision, else the proposal."""
        return self.decision or self.proposal.verdict

    @property
    def firmness(self) -> str:
        """How far the word can be relied on; what the surveyor decides is firm."""
        return FIRM if self.decision else self.proposal.firmness

    @property
    def spoken(self) -> str:
        """The word as it is read aloud; the surveyor's own is said without a firmness.

        Where it stays and something is done on it all the same, the word says so.
        """
        spoken = self.decision or self.proposal.spoken
        if self.with_work and self.verdict == "retain":
            return spoken.replace("retain", RETAIN_WITH_WORK, 1)
        return spoken


@dataclass(frozen=True)
class SystemPart:
    """A system of the inspection: the whole, its units and its work lines.

    Parameters
    ----------
    system : System
    whole : Part
    units : tuple of Part
    lines : tuple of WorkLine
        As recorded.
    offered : tuple of OfferedLine
        Lines that no recorded one covers yet.
    against : tuple of str
        A sentence for each recorded line that its word speaks against.
    """

    system: System
    whole: Part
    units: tuple[Part, ...]
    lines: tuple[WorkLine, ...] = ()
    offered: tuple[OfferedLine, ...] = ()
    against: tuple[str, ...] = ()


@dataclass(frozen=True)
class Assessment:
    """Everything that screens and report show of one inspection.

    Parameters
    ----------
    vessel, brief, inspection : mapping of str to str
        Field -> text.
    systems : tuple of SystemPart
    findings : tuple of Finding
    photos : tuple of Photo
    disputes : int
        How many fields have unlike answers that nobody has settled.
    settings : Settings
    profiles : mapping of str to LimitSet
        Limits that the surveyor set, by criterion.
    agreements : tuple of Agreement
        Every two people who rated the same checks.
    currency : str
        What all amounts are in, "" where none was named.
    faults : tuple of str
        A sentence for each setting or limit of the surveyor's that could not be used.
    recorded : RecordedInspection
        What all of this was calculated from.
    own_criteria : mapping of str to Criterion
        The surveyor's own criteria in the checklists of the inspection.
    trials : mapping of str to Trial
        The trials in which several checks are done at once.
    """

    vessel: Mapping[str, str] = field(default_factory=dict)
    brief: Mapping[str, str] = field(default_factory=dict)
    inspection: Mapping[str, str] = field(default_factory=dict)
    systems: tuple[SystemPart, ...] = ()
    findings: tuple[Finding, ...] = ()
    photos: tuple[Photo, ...] = ()
    disputes: int = 0
    settings: Settings = field(default_factory=Settings)
    profiles: Mapping[str, LimitSet] = field(default_factory=dict)
    agreements: tuple[Agreement, ...] = ()
    currency: str = ""
    faults: tuple[str, ...] = ()
    recorded: RecordedInspection = field(default_factory=RecordedInspection)
    own_criteria: Mapping[str, Criterion] = field(default_factory=dict)
    trials: Mapping[str, Trial] = field(default_factory=dict)
