"""What a round will and will not decide, by system, before anybody steps aboard.

Every look of the round is taken to find the thing good, at the depth at which it is taken, and the
inspection is assessed with these answers: what then has no firm word will have none after the round
either, unless something bad is found.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace

from inspector.assess.assessment import assess
from inspector.assess.depth import load_readings
from inspector.assess.model import SystemPart
from inspector.assess.recorded import RecordedInspection, RecordedSheet
from inspector.assess.round.composition import Round
from inspector.assess.round.look_ways import FULL
from inspector.checklists.model import Check, Library
from inspector.values.vocabulary import FIRM, NOT_LOOKED_AT, RATINGS, REPORTED, SIGHTED

_GOOD = RATINGS[0]
# How far a round comes with a system, from the best.
DECIDES, POINTS, LEAVES_OPEN = "decides", "points", "leaves open"


@dataclass(frozen=True)
class Outlook:
    """What the round does for one system.

    Parameters
    ----------
    system, name : str
        Id and name.
    outcome : str
        DECIDES where every unit has a firm word if all is found good, LEAVES_OPEN where some unit
        is still not looked at, POINTS between.
    looks : int
        Checks of it in the round.
    left_out : int
        Checks of it without an answer after the round.
    critical_open : int
        Critical checks that are then not seen, or not at the depth that proves them.
    """

    system: str
    name: str
    outcome: str
    looks: int
    left_out: int
    critical_open: int


def outlook_of(recorded: RecordedInspection, library: Library, made: Round) -> tuple[Outlook, ...]:
    """Return what a round will and will not decide.

    Parameters
    ----------
    recorded : RecordedInspection
    library : Library
        Its checklists.
    made : Round

    Returns
    -------
    tuple of Outlook
        In the order of the checklists.
    """
    answers = dict(_answers(made, library, recorded.sheets))
    after = assess(replace(recorded, sheets={**recorded.sheets, **answers}), library)
    return tuple(_of_system(system, made.subjects) for system in after.systems)


def _answers(
    made: Round, library: Library, before: Mapping[str, RecordedSheet]
) -> Iterable[tuple[str, RecordedSheet]]:
    """The sheets of the round as they are if everything is found good."""
    for stop in made.stops:
        for one in stop.chosen:
            for subject in one.way.subjects:
                _, system, _, check_id = subject.split("/")
                check = library.systems[system].check(check_id)
                if check is not None:
                    old = before.get(subject, RecordedSheet())
                    yield subject, _good(check, one.way.kind, old)


def _good(check: Check, kind: str, before: RecordedSheet) -> RecordedSheet:
    glanced = REPORTED if check.proof == REPORTED else SIGHTED
    depth = check.proof if kind == FULL else glanced
    readings = dict(before.readings)
    if kind == FULL:
        # What says under which load it was tested must be there, or it counts as sighted.
        readings = {**dict.fromkeys(load_readings(check), "1"), **readings}
    # Two answers that differed are settled by the look.
    return replace(before, answer=_GOOD, depth=depth, readings=readings, answers=(), heads={})


def _of_system(system: SystemPart, subjects: Iterable[str]) -> Outlook:
    own = f"sheet/{system.system.id}/"
    asked = [result for result in system.whole.results if not result.check.optional]
    counted = [result for result in asked if result.fitted and not result.is_service]
    return Outlook(
        system=system.system.id,
        name=system.system.name,
        outcome=_outcome(system),
        looks=sum(subject.startswith(own) for subject in subjects),
        left_out=sum(not result.answer and result.rating is None for result in asked),
        critical_open=sum(result.check.critical and not result.closed for result in counted),
    )


def _outcome(system: SystemPart) -> str:
    if any(unit.verdict == NOT_LOOKED_AT for unit in system.units):
        return LEAVES_OPEN
    return DECIDES if all(unit.firmness == FIRM for unit in system.units) else POINTS
