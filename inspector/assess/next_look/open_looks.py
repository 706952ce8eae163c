"""The looks that could still be taken: checks, trials that run together, prices and disputes."""

import math
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from statistics import median

from inspector.assess.checked import CheckResult
from inspector.assess.model import Assessment, Part, SystemPart
from inspector.assess.next_look.look_value import (
    Chance,
    chance_of,
    information,
    need_worth,
    stake_worth,
)
from inspector.assess.next_look.plan import Look
from inspector.assess.verdict.settings import Settings
from inspector.checklists.model import Trial
from inspector.values.text import listed
from inspector.values.vocabulary import FIRM, PRICE_BOTH, SO_FAR, not_seen

# Answers that leave a check open for the minutes left; what could not be reached or opened cannot
# be seen now either.
LATER = ("", not_seen("no time"))
CHECK, PRICE, SETTLE = "check", "price", "settle"
_PER_VESSEL = "vessel"


@dataclass(frozen=True)
class OpenUnit:
    """A unit on which a look could still change something.

    Parameters
    ----------
    part : Part
    system : SystemPart
    chance : Chance
    worth : float
        Stake times need.
    money : float or None
        The dearer of its prices.
    """

    part: Part
    system: SystemPart
    chance: Chance
    worth: float
    money: float | None


@dataclass(frozen=True)
class OpenLook:
    """A look with what it is about.

    Parameters
    ----------
    look : Look
    kind : str
        CHECK, PRICE or SETTLE.
    unit : OpenUnit
        Of several units the first.
    results : tuple of CheckResult
        The checks that it answers.
    """

    look: Look
    kind: str
    unit: OpenUnit
    results: tuple[CheckResult, ...] = ()


def open_looks(assessment: Assessment, settings: Settings, here: str = "") -> list[OpenLook]:
    """List every look that could still be taken, each with its worth.

    Parameters
    ----------
    assessment : Assessment
    settings : Settings
    here : str
        The space where the surveyor is; to price and to settle by word needs no walk.

    Returns
    -------
    list of OpenLook
        Nothing of a unit that is unwanted, or whose word no look can change.
    """
    found: list[OpenLook] = []
    together: dict[str, list[tuple[OpenUnit, CheckResult]]] = {}
    units = list(open_units(assessment, settings))
    for unit in units:
        if needs_price(unit.part):
            found.append(_price_look(unit, settings, here))
            continue
        found += [_settle_look(unit, result) for result in disputed_results(unit.part)]
        for result in open_results(unit.part):
            found_in = _trial_of(result, assessment.trials)
            key = f"{found_in.id}/{unit.system.system.id}/{unit.part.id}" if found_in else ""
            if found_in and found_in.per == _PER_VESSEL:
                key = found_in.id
            together.setdefault(key or result.subject, []).append((unit, result))
    groups = _with_falling_worth(list(together.values()), units, assessment.trials, settings)
    return [*found, *groups]


def open_units(assessment: Assessment, settings: Settings) -> Iterator[OpenUnit]:
    """Yield the units on which a look could still change something.

    Parameters
    ----------
    assessment : Assessment
    settings : Settings

    Yields
    ------
    OpenUnit
        Nothing that is unwanted, decided, or whose word is firm.
    """
    priced = [
        money
        for system in assessment.systems
        for part in system.units
        if (money := _money(part, system))
    ]
    middle = median(priced) if priced else None
    for system in assessment.systems:
        for part in system.units:
            need = "required" if part.facts.stays else part.facts.need
            money = _money(part, system)
            worth = stake_worth(money, middle, settings) * need_worth(need, settings)
            # A look cannot change what the surveyor has decided.
            if part.decision or not worth or part.proposal.firmness == FIRM:
                continue
            sisters = _sisters(part, system)
            chance = chance_of(part.results, sisters, settings)
            yield OpenUnit(part, system, chance, worth, money)


def _money(part: Part, system: SystemPart) -> float | None:
    """The dearer price of a unit, or its equal share of that of the whole."""
    facts = part.facts
    costs = [cost for cost in (facts.refurbish_cost, facts.replace_cost) if cost]
    if not costs:
        return None
    return max(costs) / (len(system.units) if facts.shared else 1)


def _sisters(part: Part, system: SystemPart) -> list[CheckResult]:
    """The results of the same checks on the other units of the system."""
    own = {result.check.id for result in part.results}
    return [
        result
        for other in system.units
        if other.id != part.id
        for result in other.results
        if result.check.id in own
    ]


def needs_price(part: Part) -> bool:
    """Return whether only a price can turn its word.

    Parameters
    ----------
    part : Part

    Returns
    -------
    bool
        Work that is certain needs no further look.
    """
    facts, proposal = part.facts, part.proposal
    unpriced = facts.refurbish_cost is None or facts.replace_cost is None
    # While two people differ, the work is not certain yet.
    settled = proposal.firmness != SO_FAR
    certain = settled and proposal.rule in ("work certain", "worth repair", "not priced")
    return proposal.verdict == PRICE_BOTH or (certain and unpriced)


def disputed_results(part: Part) -> list[CheckResult]:
    """Return the critical checks of a unit that have two answers.

    Parameters
    ----------
    part : Part

    Returns
    -------
    list of CheckResult
    """
    return [one for one in part.results if one.better and one.check.critical and one.applicable]


def open_results(part: Part) -> list[CheckResult]:
    """Return the checks of a unit that are still worth a look.

    Parameters
    ----------
    part : Part

    Returns
    -------
    list of CheckResult
        Unseen, or critical and not yet at the depth that proves them.
    """
    # Where work is certain and priced, more looks only add to it.
    if part.proposal.rule == "worth repair":
        return []
    return [
        result
        for result in part.results
        if not result.is_service and not result.better and _is_open(result)
    ]


def _is_open(result: CheckResult) -> bool:
    # A check that is offered only is asked where something speaks for it, not for want of one.
    if not result.applicable:
        return False
    if result.rating is None:
        return result.answer in LATER
    return not result.seen or (result.check.critical and not result.closed)


def _trial_of(result: CheckResult, trials: Mapping[str, Trial]) -> Trial | None:
    return trials.get(result.check.together)


def _price_look(unit: OpenUnit, settings: Settings, here: str) -> OpenLook:
    """Pricing both ways turns what cannot be said without: it moves the word all the way."""
    part = unit.part
    subject = f"verdict/{unit.system.system.id}/{part.id}"
    gain = unit.worth * _certain(unit)
    label = f"{part.name}: price the repair and a new one"
    return OpenLook(Look(subject, label, here, settings.pricing_minutes, gain), PRICE, unit)


def _certain(unit: OpenUnit) -> float:
    # As far as the best look on a unit of which nothing is known.
    return Chance(0.0, 0.0, unit.chance.prior, unit.chance.strength).movement(4.0)


def _settle_look(unit: OpenUnit, result: CheckResult) -> OpenLook:
    """Both look again together: the answer decides, since the check is critical."""
    label = f"{unit.part.name}: settle {result.check.title}"
    gain = unit.worth * _certain(unit)
    look = Look(result.subject, label, result.space, result.check.minutes, gain)
    return OpenLook(look, SETTLE, unit, (result,))


def _with_falling_worth(
    groups: list[list[tuple[OpenUnit, CheckResult]]],
    units: Sequence[OpenUnit],
    trials: Mapping[str, Trial],
    settings: Settings,
) -> list[OpenLook]:
    """The looks with their worth: of several on one unit, each later one adds less."""
    groups.sort(key=lambda group: -_information(group, settings) / _minutes(group, trials))
    already: dict[str, float] = {}
    by_system = units_by_system(units)
    found = []
    for group in groups:
        gain = 0.0
        for unit, result in group:
            key = f"{unit.system.system.id}/{unit.part.id}"
            gained = information(result.check, settings)
            gain += unit.worth * unit.chance.movement(gained, already.get(key, 0.0))
            already[key] = already.get(key, 0.0) + gained
            gain += worth_for_others(result, by_system, settings)
        found.append(_check_look(group, trials, gain))
    return found


def units_by_system(units: Iterable[OpenUnit]) -> dict[str, list[OpenUnit]]:
    """Return the units on which a look could still change something, by the id of their system.

    Parameters
    ----------
    units : iterable of OpenUnit

    Returns
    -------
    dict of str to list of OpenUnit
    """
    found: dict[str, list[OpenUnit]] = {}
    for unit in units:
        found.setdefault(unit.system.system.id, []).append(unit)
    return found


def worth_for_others(
    result: CheckResult, by_system: Mapping[str, Sequence[OpenUnit]], settings: Settings
) -> float:
    """Return what a look is worth for the other systems that its check informs.

    Parameters
    ----------
    result : CheckResult
    by_system : mapping of str to sequence of OpenUnit
        As ``units_by_system`` returns it.
    settings : Settings

    Returns
    -------
    float
    """
    # A paper can inform several systems: there it counts as an answer on a like unit.
    shared = information(result.check, settings) * settings.sister_share
    others = [other for system in result.check.also for other in by_system.get(system, ())]
    return math.fsum(other.worth * other.chance.movement(shared) for other in others)


def _information(group: list[tuple[OpenUnit, CheckResult]], settings: Settings) -> float:
    return math.fsum(unit.worth * information(result.check, settings) for unit, result in group)


def _minutes(group: list[tuple[OpenUnit, CheckResult]], trials: Mapping[str, Trial]) -> float:
    """The trial once, and the reading off of each check."""
    trial = _trial_of(group[0][1], trials)
    own = math.fsum(result.check.minutes for _, result in group)
    return max(own + (trial.minutes if trial else 0.0), 0.5)


def _check_look(
    group: list[tuple[OpenUnit, CheckResult]], trials: Mapping[str, Trial], gain: float
) -> OpenLook:
    results = tuple(result for _, result in group)
    # The check that a trial is run for comes first: critical, then heavy.
    ordered = sorted(results, key=lambda one: (not one.check.critical, -one.check.weight))
    first = ordered[0]
    label = f"{first.unit_name}: {first.check.title}"
    if len(ordered) > 1:
        names = list(dict.fromkeys(one.check.title for one in ordered[1:]))
        label += f", and with it {listed(names)}"
    minutes = _minutes(group, trials)
    look = Look(first.subject, label, first.space, minutes, gain)
    return OpenLook(look, CHECK, group[0][0], tuple(ordered))
