"""How often a word is wrong at the moment at which it becomes firm.

Each unit of the made vessels is looked at check by check, the critical ones first, until its word
is firm: the hardest moment, since a visit goes on after it. Printed for several shares of the
weight to be found good, so that the share in the settings can be chosen by figures.
"""

import random
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

from inspector.assess.checked import CheckResult
from inspector.assess.model import Part
from inspector.assess.verdict.evidence import evidence_of
from inspector.assess.verdict.settings import DEFAULTS, Settings
from inspector.assess.verdict.unit_case import Case
from inspector.assess.verdict.unit_rules import word_for
from inspector.checklists.loader import read_library
from inspector.values.vocabulary import FIRM
from tests.benchmarks.made_vessels import NOT_AT_A_QUAY, ROOT, VESSELS, agrees, made

SHARES = (0.25, 0.35, DEFAULTS.coverage, 0.50)
# Vessels drawn of each kind but the flawless one, of which no word can be wrong.
DRAWN = 6
MOST_WRONG = 0.02


def first_firm(_folder: Path) -> None:
    """Print for each share how many words became firm, after how much, and how many are wrong."""
    units = list(_units())
    print("words of units at the moment at which they become firm, by the share found good:")
    for share in SHARES:
        settings = replace(DEFAULTS, coverage=share)
        found = [one for unit, luck in units if (one := _first_firm(unit, luck, settings))]
        wrong = sum(is_wrong for is_wrong, _ in found) / len(found)
        seen = sum(coverage for _, coverage in found) / len(found)
        mark = ", as set" if share == DEFAULTS.coverage else ""
        print(
            f"  {share:.0%}{mark}: {len(found)} of {len(units)} firm after {seen:.0%} of the "
            f"weight, {wrong:.1%} wrong; aim: at most {MOST_WRONG:.0%}",
            flush=True,
        )


def _units() -> Iterator[tuple[Part, int]]:
    """Units with every check answered truly, each with the number that orders its looks."""
    library = read_library(ROOT / "checklists")
    for number in range(DRAWN):
        for name in VESSELS:
            if VESSELS[name] is not None:
                vessel = made(library, name, random.Random(f"{name} {number}"))
                for system in vessel.true_words().systems:
                    yield from ((unit, number) for unit in system.units)


def _first_firm(unit: Part, number: int, settings: Settings) -> tuple[bool, float] | None:
    """Whether the word is wrong when it becomes firm, and the share seen; None if it never does."""
    results = list(unit.results)
    order = _looks(unit, number)
    for result in results:
        if result not in order:
            results[results.index(result)] = _unseen(result)
    for looks in range(len(order) + 1):
        shown = [_unseen(one) if one in order[looks:] else one for one in results]
        evidence = evidence_of(shown, "", settings)
        word = word_for(Case(unit.facts, evidence, settings))
        if evidence.condition.seen and word.firmness == FIRM:
            wrong = not agrees(word.verdict, unit.proposal.verdict)
            return wrong, evidence.condition.coverage
    return None


def _looks(unit: Part, number: int) -> list[CheckResult]:
    """What can be looked at, in order: the critical checks, then the others as it comes."""
    found = [one for one in unit.results if one.check.needs not in NOT_AT_A_QUAY]
    random.Random(f"{unit.name} {number}").shuffle(found)
    return sorted(found, key=lambda one: not one.check.critical)


def _unseen(result: CheckResult) -> CheckResult:
    return replace(result, rating=None, answer="")
