"""The looks that a visit could take, each with its ways: in full, or in passing.

What the visit cannot have is listed beside them with the reason. A look's worth is that of the next
look; what a glance is worth of it is a setting, since no figure is published.
"""

import math
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field

from inspector.assess.checked import CheckResult
from inspector.assess.model import Assessment
from inspector.assess.next_look.look_value import Chance, information
from inspector.assess.next_look.open_looks import (
    OpenUnit,
    disputed_results,
    needs_price,
    open_results,
    open_units,
    units_by_system,
    worth_for_others,
)
from inspector.assess.verdict.settings import Settings
from inspector.checklists.attainable import reason_against, reason_against_check
from inspector.checklists.model import Glance

FULL, GLANCE = "full", "glance"
# To look again together moves as much as the best look at a unit of which nothing is known.
_SETTLES = 4.0
_EACH, _PER_VESSEL = "each", "vessel"
# Nothing is looked at and recorded in less.
_LEAST_SECONDS = 5


@dataclass(frozen=True)
class Way:
    """One way to take a look.

    Parameters
    ----------
    kind : str
        FULL or GLANCE.
    seconds : int
        What it takes, without the way to the stop [s].
    worth : float
        By the model of the next look: it ranks, it has no unit.
    subjects : tuple of str
        The sheets that it answers.
    """

    kind: str
    seconds: int
    worth: float
    subjects: tuple[str, ...]


@dataclass(frozen=True)
class RoundLook:
    """One look, or several that run together.

    Parameters
    ----------
    subject : str
        The sheet that names it.
    unit, title : str
        Unit and check in words.
    system, space : str
        Ids; where it is taken.
    subjects : tuple of str
        Every sheet that it answers in full.
    ways : tuple of Way
        Of which one is taken, or none.
    """

    subject: str
    unit: str
    title: str
    system: str
    space: str
    subjects: tuple[str, ...]
    ways: tuple[Way, ...]


@dataclass(frozen=True)
class VisitLooks:
    """What a visit could look at, and what it cannot have.

    Parameters
    ----------
    looks : tuple of RoundLook
        Those worth something.
    still_open : mapping of str to str
        Sheet -> space, of every check without an answer, those that cannot be had among them.
    not_had : mapping of str to str
        Sheet -> why it cannot be had, where nothing is recorded and the check has no glance.
    entering : int
        What it takes to come to a stop [s].
    """

    looks: tuple[RoundLook, ...] = ()
    still_open: Mapping[str, str] = field(default_factory=dict)
    not_had: Mapping[str, str] = field(default_factory=dict)
    entering: int = 0


@dataclass(frozen=True)
class _Candidate:
    """A check that could be looked at on one unit, before its worth is known."""

    unit: OpenUnit
    result: CheckResult
    reason: str
    glance: Glance | None

    @property
    def quickest(self) -> float:
        """Seconds of the shortest way to look at it."""
        return self.glance.seconds if self.glance else max(60 * self.result.check.minutes, 1)


def visit_looks(assessment: Assessment) -> VisitLooks:
    """List what a visit could look at, in the state in which the vessel is met.

    Parameters
    ----------
    assessment : Assessment
        With the facts of the visit in ``inspection``.

    Returns
    -------
    VisitLooks
        Nothing of a unit that is unwanted, decided, or whose word no look can change, as for the
        next look; such checks are still among those that are open.
    """
    found: list[RoundLook] = []
    candidates: list[_Candidate] = []
    glanced = _GlancedAt(assessment)
    units = list(open_units(assessment, assessment.settings))
    for unit in units:
        # Only prices can turn its word; they are asked for ashore.
        if needs_price(unit.part):
            continue
        found += [_settling(unit, result) for result in disputed_results(unit.part)]
        for result in open_results(unit.part):
            reason = reason_against_check(result.check, assessment.inspection)
            candidates.append(_Candidate(unit, result, reason, glanced.of(unit, result)))
    worth = _worth_of(candidates, units, assessment.settings)
    for group in _grouped(candidates, assessment):
        look = _look(group, assessment, worth)
        if look.ways:
            found.append(look)
    order = [system.system.id for system in assessment.systems]
    found.sort(key=lambda look: order.index(look.system))
    open_now = [one for one in _results(assessment) if _is_unanswered(one)]
    return VisitLooks(
        tuple(found),
        {one.subject: one.space for one in open_now},
        dict(_not_had(open_now, assessment.inspection)),
        round(60 * assessment.settings.entering_minutes),
    )


class _GlancedAt:
    """Says on which unit a glance is taken: on each, or on the first of those that are alike."""

    def __init__(self, assessment: Assessment):
        self._taken: set[tuple[str, str, str]] = set()
        for result in _results(assessment):
            # One answer is what a glance at one of them, or at the worst, was to give.
            if result.check.glance and result.rating is not None:
                self._taken.add(self._key(_system_of(result), result))

    @staticmethod
    def _key(system: str, result: CheckResult) -> tuple[str, str, str]:
        glance = result.check.glance
        each = glance is not None and glance.which == _EACH
        return system, result.check.id, result.unit if each else ""

    def of(self, unit: OpenUnit, result: CheckResult) -> Glance | None:
        """The glance at a check of a unit, None where there is none, or another unit has it."""
        key = self._key(unit.system.system.id, result)
        if result.check.glance is None or result.rating is not None or key in self._taken:
            return None
        self._taken.add(key)
        return result.check.glance


def _system_of(result: CheckResult) -> str:
    return result.subject.split("/")[1]


def _results(assessment: Assessment) -> Iterator[CheckResult]:
    for system in assessment.systems:
        yield from system.whole.results


def _is_unanswered(result: CheckResult) -> bool:
    # What is only offered is nothing that a visit leaves out.
    return not result.answer and result.rating is None and not result.check.optional


def _not_had(results: Iterable[CheckResult], visit: Mapping[str, str]) -> Iterator[tuple[str, str]]:
    """The sheets that can be recorded as not seen, with the reason."""
    for result in results:
        reason = reason_against_check(result.check, visit)
        touched = result.readings or result.note or result.photos or result.gate
        # Passing by still shows something of a check with a glance.
        if reason and not touched and result.check.glance is None:
            yield result.subject, reason


def _settling(unit: OpenUnit, result: CheckResult) -> RoundLook:
    """Both look again together where two answers differ: the answer decides."""
    worth = unit.worth * Chance(0.0, 0.0, unit.chance.prior, unit.chance.strength).movement(
        _SETTLES
    )
    way = Way(FULL, _whole_seconds(result.check.minutes), worth, (result.subject,))
    title = f"{result.check.title}: settle the two answers"
    return RoundLook(
        result.subject,
        result.unit_name,
        title,
        unit.system.system.id,
        result.space,
        (result.subject,),
        (way,),
    )


def _whole_seconds(minutes: float) -> int:
    # Steps of five seconds keep the composition quick.
    return max(5 * round(12 * minutes), _LEAST_SECONDS)


def _worth_of(
    candidates: list[_Candidate], units: list[OpenUnit], settings: Settings
) -> dict[str, float]:
    """Sheet -> worth of the look in full: of several on one unit, each later one adds less."""

    def rank(one: _Candidate) -> tuple[bool, float, str]:
        # What can be had only in passing comes last: it is no reason to think less of the others.
        gained = information(one.result.check, settings)
        return bool(one.reason), -gained / one.quickest, one.result.subject

    already: dict[str, float] = {}
    by_system = units_by_system(units)
    worth = {}
    for one in sorted(candidates, key=rank):
        unit, gained = one.unit, information(one.result.check, settings)
        key = f"{unit.system.system.id}/{unit.part.id}"
        movement = unit.chance.movement(gained, already.get(key, 0.0))
        others = worth_for_others(one.result, by_system, settings)
        worth[one.result.subject] = unit.worth * movement + others
        already[key] = already.get(key, 0.0) + gained
    return worth


def _grouped(candidates: list[_Candidate], assessment: Assessment) -> list[list[_Candidate]]:
    """The candidates in groups that run together: a trial is one look."""
    state, berth = (assessment.inspection.get(name, "") for name in ("state", "berth"))
    groups: dict[str, list[_Candidate]] = {}
    for one in candidates:
        key = one.result.subject
        trial = assessment.trials.get(one.result.check.together)
        # A trial that cannot be had brings nothing together: each check is then seen by itself.
        if trial and not one.reason and not reason_against(trial.needs, state, berth):
            own = f"{trial.id}/{one.unit.system.system.id}/{one.unit.part.id}"
            key = trial.id if trial.per == _PER_VESSEL else own
        groups.setdefault(key, []).append(one)
    return list(groups.values())


def _look(group: list[_Candidate], assessment: Assessment, worth: Mapping[str, float]) -> RoundLook:
    """One look with its ways, the shorter ones first."""
    # The check that a trial is run for comes first: critical, then heavy.
    order = sorted(group, key=_importance)
    first = order[0].result
    subjects = tuple(one.result.subject for one in order)
    title = first.check.title
    if len(order) > 1:
        title = f"{title}, and {len(order) - 1} more with it"
    here = [one for one in order if one.result.space == first.space]
    ways = _glances(here, worth, assessment.settings.glance_share)
    if not any(one.reason for one in group):
        trial = assessment.trials.get(first.check.together)
        minutes = math.fsum(one.result.check.minutes for one in group)
        seconds = _whole_seconds(minutes + (trial.minutes if trial else 0.0))
        ways.append(Way(FULL, seconds, math.fsum(worth[subject] for subject in subjects), subjects))
    useful = tuple(way for way in ways if way.worth > 0)
    return RoundLook(
        first.subject,
        first.unit_name,
        title,
        order[0].unit.system.system.id,
        first.space,
        subjects,
        useful,
    )


def _importance(one: _Candidate) -> tuple[bool, float, str]:
    check = one.result.check
    return not check.critical, -check.weight, one.result.subject


def _glances(group: list[_Candidate], worth: Mapping[str, float], share: float) -> list[Way]:
    """The ways in passing: of several checks the best glance, the best two, and so on."""
    with_glance = [
        (one.glance, one.result.subject) for one in group if one.glance and not one.result.seen
    ]
    with_glance.sort(key=lambda pair: (-worth[pair[1]] / pair[0].seconds, pair[1]))
    ways = []
    seconds, gained, subjects = 0, 0.0, ()
    for glance, subject in with_glance:
        seconds += _whole_seconds(glance.seconds / 60)
        gained += share * worth[subject]
        subjects = (*subjects, subject)
        ways.append(Way(GLANCE, seconds, gained, subjects))
    return ways
