"""What was found in each check, and the condition that follows."""

from collections.abc import Mapping
from dataclasses import dataclass, field

from inspector.assess.depth import reaches
from inspector.assess.recorded import Answered
from inspector.checklists.model import Check
from inspector.criteria.core.judgement import Judgement
from inspector.values.vocabulary import NOT_FITTED, RATINGS, REPORTED, SIGHTED

BAD = ("poor", "failed")
# The criteria that compare a date: what they find is a paper or a service, and no state of a thing.
SERVICE_CRITERIA = (
    "service-due",
    "printed-expiry",
    "survey-window",
    "meter-calibration",
    "co2-cylinder-tests",
    "bulk-tank-test",
    "dp-annual-survey",
    "dp-periodical-survey",
    "dp-document",
    "landing-papers",
)


@dataclass(frozen=True)
class Typed:
    """A reading as typed.

    Parameters
    ----------
    id, label : str
        Of the reading in the checklist.
    text : str
        Without its unit.
    unit : str
        "" for whole, choice, date and text.
    """

    id: str
    label: str
    text: str
    unit: str = ""


@dataclass(frozen=True)
class CheckResult:
    """One check on one unit.

    Parameters
    ----------
    subject : str
        "sheet/<system>/<unit>/<check>".
    check : Check
    unit, unit_name : str
        The unit's id and name.
    answer : str
        What the surveyor recorded: a rating, "not seen: <reason>", "not fitted" or "".
    rating : str or None
        What counts: his rating, else the judgement's; of two answers the worse one until it is
        settled. None where not seen or not fitted.
    readings : tuple of Typed
    judgement : Judgement or None
    cannot_judge : str
        One sentence, where readings are there but cannot be judged.
    note : str
    overruled_because : str
        Why the surveyor's rating differs from the judgement's; "" where nobody said.
    as_unit : str
        Name of the sister unit whose answer was taken over; "" for an answer of its own.
    photos : tuple of str
        SHA-256, in the order taken.
    disputed : bool
        Two answers given apart: by two people, or by one on two devices.
    who : str
        Who gave the rating, else who wrote last.
    when : str
        ISO time of that, by the clock of that device.
    answers : tuple of Answered
        Every current answer of each disputed field, until it is settled.
    space : str
        Where the check is made.
    gate : mapping of str to str
        Enclosed space: permit, attendant, instrument, entered ... as answered.
    depth : str
        How the answer is known, of DEPTHS; "" where that was not recorded, and then it counts as
        it did before depths were.
    better : str or None
        Of two answers the better one; None where there are not two.
    """

    subject: str
    check: Check
    unit: str
    unit_name: str
    answer: str = ""
    rating: str | None = None
    readings: tuple[Typed, ...] = ()
    judgement: Judgement | None = None
    cannot_judge: str = ""
    note: str = ""
    overruled_because: str = ""
    as_unit: str = ""
    photos: tuple[str, ...] = ()
    disputed: bool = False
    who: str = ""
    when: str = ""
    answers: tuple[Answered, ...] = ()
    space: str = ""
    gate: Mapping[str, str] = field(default_factory=dict)
    depth: str = ""
    better: str | None = None

    @property
    def fitted(self) -> bool:
        """Whether the thing that is checked is fitted."""
        return self.answer != NOT_FITTED

    @property
    def applicable(self) -> bool:
        """Whether it counts: it is fitted, and where it is only offered it has a rating."""
        # What is only offered counts once somebody took it up.
        return self.fitted and (not self.check.optional or self.rating is not None)

    @property
    def seen(self) -> bool:
        """Whether somebody looked; what is only reported counts where papers are the proof."""
        # Somebody's word is enough only where a paper proves the check.
        least = REPORTED if self.check.proof == REPORTED else SIGHTED
        return self.rating is not None and reaches(self.depth, least)

    @property
    def proved(self) -> bool:
        """Whether it is known at the depth that the check asks for."""
        return self.rating is not None and reaches(self.depth, self.check.proof)

    @property
    def bad(self) -> bool:
        """Whether it is poor or failed."""
        return self.rating in BAD

    @property
    def closed(self) -> bool:
        """Whether no further look is needed: what was seen to be bad needs no deeper proof."""
        # What is seen to be bad needs no test to prove it.
        return self.proved or (self.seen and self.bad)

    @property
    def is_service(self) -> bool:
        """Whether it is about a date: what is overdue costs days and money, and no new thing."""
        return self.check.criterion in SERVICE_CRITERIA

    @property
    def overruled(self) -> bool:
        """Whether the surveyor's rating differs from the one that the judgement proposed."""
        proposed = self.judgement.rating if self.judgement else None
        # "Not seen" does not contradict a reading.
        return bool(proposed) and self.answer in RATINGS and self.answer != proposed


@dataclass(frozen=True)
class Condition:
    """The condition of a unit or system, 0 to 100.

    Parameters
    ----------
    points : float or None
        Over what was seen; None where nothing was.
    low, high : float
        What the unseen could still make of it.
    coverage : float
        Share seen by weight, 0 to 1.
    seen, applicable : int
        Numbers of checks.
    enough : bool
        Whether enough was seen for a figure: every critical check at its depth, and the share of
        the weight found good that the settings ask, or so much lost that it cannot be retained,
        or everything seen.
    """

    points: float | None
    low: float
    high: float
    coverage: float
    seen: int
    applicable: int
    enough: bool = False

    @property
    def shown(self) -> float | None:
        """The points where enough was seen for a figure, else None."""
        return self.points if self.enough else None
