"""Visits simulated on five made vessels: how soon systems have a word, and how often it is wrong.

The surveyor walks past what he can, then looks where the advice sends him; at the end he has looked
at all that can be had at a quay with the machinery running.
"""

import random
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

from inspector.assess.model import Assessment, Part
from inspector.assess.next_look.advice import next_look
from inspector.assess.recorded import Unit
from inspector.checklists.loader import read_library
from inspector.values.vocabulary import FIRM, NOTHING_SEEN, SOMETHING_SEEN, VERDICTS
from tests.benchmarks.made_vessels import ROOT, VESSELS, Vessel, agrees, made

# The last is a week on board.
HOURS = (0.75, 4, 8, 16, 40)
# The aims, systems with a word of 21: after 4, 8 and 16 hours.
AIMS = {4: 10, 8: 15, 16: 20}
MOST_WRONG = {"firm": 0.02, "so far": 0.15}
# Minutes to look at a unit in passing, and to the next space.
PASSING, WALK = 1.0, 2.0
# Minutes of advice that are followed before it is asked for again.
BLOCK = 60.0
# How often something is seen in passing where work is needed, and where none is (our own).
SEEN_IN_PASSING, FALSE_ALARM = 0.80, 0.06


def visits(_folder: Path) -> None:
    """Print the words after each number of hours, and how many of them are wrong."""
    library = read_library(ROOT / "checklists")
    print(f"systems with a word (firm) of {len(library.systems)}, by hours on board:")
    wrong: dict[str, list[bool]] = {"firm": [], "so far": [], "at least": []}
    for name in VESSELS:
        vessel = made(library, name, random.Random(name))
        told = []
        for when, assessment in _visited(vessel, random.Random(f"visit {name}")):
            words = [part.whole for part in assessment.systems]
            with_word = sum(_has_word(whole) for whole in words)
            firm = sum(_has_word(whole) and whole.firmness == FIRM for whole in words)
            told.append(f"{when} {with_word:2} ({firm:2})")
            for firmness, is_wrong in _wrong_words(assessment, vessel.true_words()):
                wrong[firmness].append(is_wrong)
        print(f"  {name:<10} {'   '.join(told)}", flush=True)
    aims = ", ".join(f"{count} after {hours} h" for hours, count in AIMS.items())
    print(f"  aim: at least {aims}")
    for firmness, found in wrong.items():
        share = sum(found) / max(len(found), 1)
        aim = f"; aim: at most {MOST_WRONG[firmness]:.0%}" if firmness in MOST_WRONG else ""
        print(f"  {firmness} words of units: {share:.1%} of {len(found)} wrong{aim}")


def _visited(vessel: Vessel, luck: random.Random) -> Iterator[tuple[str, Assessment]]:
    """The assessment after each number of hours, and after everything at a quay."""
    spent = _walked_past(vessel, luck, HOURS[0] * 60)
    for hours in HOURS:
        while hours * 60 - spent >= 1:
            block = min(BLOCK, hours * 60 - spent)
            taken = _looked(vessel, block)
            if not taken:
                break
            spent += taken
        yield f"{hours:g} h", vessel.assessed()
    for system in vessel.assessed().systems:
        for result in system.whole.results:
            vessel.sheets[result.subject] = vessel.answer(result.subject, result.check)
    yield "all", vessel.assessed()


def _walked_past(vessel: Vessel, luck: random.Random, minutes: float) -> float:
    """Walk past as many units as the first minutes allow; returns what it took."""
    bad = {
        (system.system.id, unit.id)
        for system in vessel.true_words().systems
        for unit in system.units
        if unit.verdict != "retain"
    }
    spent, here, units = 0.0, "", []
    for unit in sorted(vessel.units, key=lambda each: _space_of(vessel, each)):
        space = _space_of(vessel, unit)
        spent += PASSING + (WALK if space != here else 0)
        here = space
        if spent > minutes:
            break
        chance = SEEN_IN_PASSING if (unit.system, unit.id) in bad else FALSE_ALARM
        seen = SOMETHING_SEEN if luck.random() < chance else NOTHING_SEEN
        units.append(replace(unit, walked_past=seen))
    passed = {(unit.system, unit.id): unit for unit in units}
    vessel.units = tuple(passed.get((each.system, each.id), each) for each in vessel.units)
    return min(spent, minutes)


def _space_of(vessel: Vessel, unit: Unit) -> str:
    return unit.space or vessel.library.systems[unit.system].home


def _looked(vessel: Vessel, minutes: float) -> float:
    """Follow the advice for some minutes; returns what was taken."""
    assessment = vessel.assessed()
    found = next_look(assessment, minutes)
    checks = {
        result.subject: result
        for system in assessment.systems
        for unit in system.units
        for result in unit.results
    }
    for advice in found.advice:
        first = checks.get(advice.look.subject)
        if first is None:
            continue
        trial = first.check.together
        same = [
            result
            for result in checks.values()
            if result.subject == first.subject
            or (trial and result.check.together == trial and result.unit == first.unit)
        ]
        for result in same:
            vessel.sheets[result.subject] = vessel.answer(result.subject, result.check)
    # A price is made ashore, and settles nothing here.
    return found.minutes


def _has_word(part: Part) -> bool:
    return part.verdict in VERDICTS


def _wrong_words(found: Assessment, truth: Assessment) -> Iterator[tuple[str, bool]]:
    """How firm each unit's word is, and whether it is not the true one."""
    true = {
        (system.system.id, unit.id): unit.verdict
        for system in truth.systems
        for unit in system.units
    }
    for system in found.systems:
        for unit in system.units:
            if _has_word(unit):
                yield unit.firmness, not agrees(unit.verdict, true[system.system.id, unit.id])
