"""What to look at next: for each unseen check what seeing it is worth, and from these the best plan for the minutes left on board.

The gain of a look is the expected money between deciding with and without it: the least expected loss over the actions retain, refurbish and
remove, less the expected least loss once its rating is known. The ratings are drawn from what the sheet shows so far, smoothed. The model and its
figures are our own (no published one exists for a walk-round): it ranks looks, it prices nothing.
"""

from collections.abc import Iterable
from dataclasses import dataclass, replace

from inspector.assess.condition import of_results
from inspector.assess.look_plan import Breaker, Look, Plan, best_joint, best_plan
from inspector.assess.rules import Case, fired
from inspector.assess.settings import Settings
from inspector.assess.shapes import RATINGS, Assessment, CheckResult, Facts, Part
from inspector.assess.verdict import unseen_of
from inspector.words import grouped

PRIOR = {"good": 0.35, "fair": 0.35, "poor": 0.20, "failed": 0.10}   # of a check nobody has seen yet
STRENGTH = 2.0                                                       # the prior counts like so many seen checks
MOST_TOLD = 12
LATER = ("", "not seen: no time")   # answers that leave a check open for the minutes left; what could not be reached or opened cannot be seen now either


@dataclass(frozen=True)
class Advice:
    """One look of the plan with its reason in a sentence; `stake` is the money between the best and the worst choice, None where not priced."""

    look: Look
    sentence: str
    stake: float | None


@dataclass(frozen=True)
class NextLook:
    """The advice for the minutes left: the plan in walking order, its reasons, and the joint buy-or-walk answer ("" where it is not asked)."""

    advice: tuple[Advice, ...]
    minutes: float
    gain: float
    why: str = ""
    joint: str = ""


def chances(seen: Iterable[str]) -> dict[str, float]:
    """Chance of each rating for the next check of a sheet: what was seen, smoothed by PRIOR.

    Examples
    --------
    >>> chances(["good", "good"])["good"]
    0.675
    """
    counted = [rating for rating in seen if rating in RATINGS]
    total = len(counted) + STRENGTH
    return {rating: (counted.count(rating) + STRENGTH * PRIOR[rating]) / total for rating in RATINGS}


def losses(facts: Facts, critical: bool, late: float) -> dict[str, dict[str, float]]:
    """Loss of each action under each true rating of one check, in the money of the work lines; actions that are not priced are left out.

    late: how many times dearer a thing is that is found only after the purchase.
    """
    refurbish = facts.refurbish_cost if facts.refurbish_cost is not None else facts.replace_cost
    replace_it = facts.replace_cost if facts.replace_cost is not None else facts.refurbish_cost
    if refurbish is None or replace_it is None:
        return {}
    found = {"retain": {"good": 0.0, "fair": 0.0, "poor": late * refurbish, "failed": late * (replace_it if critical else refurbish)}}
    if facts.refurbish_cost is not None:
        # what turns out to be beyond repair was refurbished in vain
        found["refurbish"] = {"good": refurbish, "fair": refurbish, "poor": refurbish, "failed": refurbish + (replace_it if critical else 0.0)}
    if facts.replace_cost is not None:
        found["remove"] = dict.fromkeys(RATINGS, replace_it)
    return found


def look_gain(chance: dict[str, float], table: dict[str, dict[str, float]]) -> float:
    """Expected gain of seeing before choosing: least expected loss less expected least loss; never below 0."""
    if not table:
        return 0.0
    before = min(sum(chance[rating] * row[rating] for rating in RATINGS) for row in table.values())
    after = sum(chance[rating] * min(row[rating] for row in table.values()) for rating in RATINGS)
    return max(before - after, 0.0)


def next_look(assessment: Assessment, minutes: float, *, here: str = "", walk: float = 2.0, settings: Settings | None = None) -> NextLook:
    """The plan for the minutes left, with a reason for each look.

    here: the space one stands in ("" not known). Priced systems come first; where minutes are left, unpriced ones follow by how far they could
    move a verdict. Pure; nothing is remembered between calls, so it is asked again after each answer.
    """
    settings = settings or Settings()
    open_ones = [(part, result) for system in assessment.systems for part in system.units if not part.decision for result in part.results
                 if result.applicable and result.rating is None and result.answer in LATER]
    money = {system.system.id: system.whole.facts for system in assessment.systems}
    priced, unpriced, stakes = [], [], {}
    cached: dict[str, dict[str, float]] = {}
    for part, result in open_ones:
        system_id = result.subject.split("/")[1]
        table = losses(_costs(part, money[system_id]), result.check.critical, settings.late_factor)
        chance = cached.setdefault(f"{system_id}/{part.id}", chances(one.rating for one in part.results if one.rating))
        share = 1.0 if result.check.critical else result.check.weight / sum(one.check.weight for one in part.results if one.applicable)
        bad = chance["poor"] + chance["failed"]
        gain = share * look_gain(chance, table) if table else share * result.check.weight * bad
        look = Look(result.subject, f"{result.unit_name}: {result.check.title}", result.space, result.check.minutes, gain)
        (priced if table else unpriced).append(look)
        stakes[look.subject] = share * max(row[rating] for row in table.values() for rating in RATINGS) if table else None
    plan = best_plan(priced, minutes, walk, here)
    last = plan.looks[-1].space if plan.looks else here
    rest = best_plan(unpriced, minutes - plan.minutes, walk, last)
    by_subject = {result.subject: (part, result) for part, result in open_ones}
    money_in = assessment.currency
    told = tuple(Advice(look, _sentence(look, *by_subject[look.subject], stakes[look.subject], settings, number < MOST_TOLD, money_in), stakes[look.subject])
                 for number, look in enumerate((*plan.looks, *rest.looks)))
    why = "" if told else _why(plan, rest, open_ones)
    return NextLook(told, plan.minutes + rest.minutes, plan.gain, why, _joint(open_ones, money, cached, settings, minutes, money_in))


def _costs(part: Part, whole: Facts) -> Facts:
    """The unit's own costs, else an equal share of the system's: a thruster's share of the thrusters."""
    count = max(len(whole.units), 1)
    of_whole = {name: None if getattr(whole, name) is None else getattr(whole, name) / count for name in ("refurbish_cost", "replace_cost")}
    return replace(part.facts, **{name: getattr(part.facts, name) if getattr(part.facts, name) is not None else value for name, value in of_whole.items()})


def _why(plan: Plan, rest: Plan, open_ones: list) -> str:
    return "Every check has an answer." if not open_ones else (plan.why if "fits" in plan.why else rest.why)


def _sentence(look: Look, part: Part, result: CheckResult, stake: float | None, settings: Settings, told: bool,
              currency: str = "") -> str:
    turns = _turn(part, result, settings) if told else ""
    name = part.name
    could = f"could turn {name} from {part.proposal.verdict} to {turns}" if turns else f"narrows what is known of {name}"
    money = f", {_with(grouped(stake), currency)} at stake" if stake else ", not priced"
    return f"{result.check.title}: {could}{money}, {look.minutes:g} min."


def _with(amount: str, currency: str) -> str:
    return f"{amount} {currency}".strip()


def _turn(part: Part, result: CheckResult, settings: Settings) -> str:
    """The verdict that seeing it good or bad would give, where it differs from the one proposed now: the worse one first."""
    for rating in ("failed", "poor", "good"):
        found = _verdict_if(part, result, rating, settings)
        if found not in (part.proposal.verdict, "undecided"):
            return found
    return ""


def _verdict_if(part: Part, result: CheckResult, rating: str, settings: Settings) -> str:
    results = tuple(replace(one, rating=rating) if one.subject == result.subject else one for one in part.results)
    return fired(Case(part.facts, of_results(results), unseen_of(results), settings)).verdict


def _joint(open_ones: list, money: dict[str, Facts], cached: dict, settings: Settings, minutes: float, currency: str = "") -> str:
    """The few deal-breakers taken together against one decision, where the worth of a sound vessel is known."""
    if settings.buying_worth is None:
        return ""
    breakers = []
    for part, result in open_ones:
        system_id = result.subject.split("/")[1]
        costs = _costs(part, money[system_id])
        loss = costs.replace_cost if costs.replace_cost is not None else costs.refurbish_cost
        if result.check.critical and loss:
            chance = cached[f"{system_id}/{part.id}"]
            breakers.append(Breaker(f"{part.name}: {result.check.title}", chance["failed"] + chance["poor"], settings.late_factor * loss, result.check.minutes))
    chosen, gain = best_joint(breakers, settings.buying_worth, minutes)
    if not chosen:
        return "Buy or walk away: no critical check that fits the minutes could change that answer, as far as it is priced."
    names = "; ".join(one.label for one in chosen)
    return f"Buy or walk away: worth seeing together {names}; {_with(grouped(gain), currency)} expected, {sum(one.minutes for one in chosen):g} min."
