"""What to look at next: the best plan for the minutes left, with a reason for each look."""

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace

from inspector.assess.model import Assessment
from inspector.assess.next_look.buy_or_not import Breaker, best_joint
from inspector.assess.next_look.open_looks import CHECK, PRICE, SETTLE, OpenLook, open_looks
from inspector.assess.next_look.plan import Look, best_plan
from inspector.assess.verdict.evidence import evidence_of, with_rating
from inspector.assess.verdict.settings import DEFAULTS, Settings
from inspector.assess.verdict.unit_case import Case
from inspector.assess.verdict.unit_rules import Word, word_for
from inspector.assess.verdict.word import read_aloud
from inspector.values.formatting import grouped


@dataclass(frozen=True)
class Advice:
    """One look of the plan with its reason.

    Parameters
    ----------
    look : Look
    sentence : str
    stake : float or None
        The dearer price of the unit; None where it is not priced.
    """

    look: Look
    sentence: str
    stake: float | None


@dataclass(frozen=True)
class NextLook:
    """The advice for the minutes left.

    Parameters
    ----------
    advice : tuple of Advice
        In walking order.
    minutes : float
        Walks included.
    gain : float
        What the looks are worth together, by our own model: it ranks, it has no unit.
    why : str
        Why there is no advice, "" where there is some.
    joint : str
        What to see before buying or walking away; "" where it is not asked.
    """

    advice: tuple[Advice, ...]
    minutes: float
    gain: float
    why: str = ""
    joint: str = ""


def next_look(
    assessment: Assessment,
    minutes: float,
    *,
    here: str = "",
    walk: float = 2.0,
    settings: Settings = DEFAULTS,
) -> NextLook:
    """Plan the minutes left on board.

    Nothing is remembered between calls, so it is asked again after each answer.

    Parameters
    ----------
    assessment : Assessment
    minutes : float
        Left on board.
    here : str
        The space where the surveyor is, "" where that is not known.
    walk : float
        Minutes to enter another space.
    settings : Settings

    Returns
    -------
    NextLook
    """
    found = open_looks(assessment, settings, here)
    by_look = {each.look: each for each in found}
    plan = best_plan([each.look for each in found], minutes, walk, here)
    advice = tuple(
        Advice(look, _sentence(by_look[look], settings, assessment), by_look[look].unit.money)
        for look in plan.looks
    )
    why = "" if advice else plan.why
    joint = _joint(found, settings, minutes, assessment.currency)
    return NextLook(advice, plan.minutes, plan.gain, why, joint)


def _sentence(each: OpenLook, settings: Settings, assessment: Assessment) -> str:
    """What the look could do, what is at stake, and how long it takes."""
    money = each.unit.money
    stake = f"{_sum(money, assessment.currency)} at stake" if money else "not priced"
    what = _what(each)
    return f"{what}: {_could(each, settings)}, {stake}, {each.look.minutes:g} min."


def _what(each: OpenLook) -> str:
    if each.kind == PRICE:
        return "Price the repair and a new one"
    if each.kind == SETTLE:
        return f"Settle {each.results[0].check.title} together"
    return each.look.label.partition(": ")[2]


def _could(each: OpenLook, settings: Settings) -> str:
    """What the look could turn, really tried; else that it makes the word firmer."""
    part = each.unit.part
    if each.kind == PRICE:
        return f"only prices can decide {part.name}"
    now = word_for(_case(each, settings))
    # The worst first: it is what a buyer would regret not having looked at.
    found = [_word_if(each, rating, settings) for rating in ("failed", "poor", "good")]
    for word in found:
        if word.key != now.key:
            then = read_aloud(word.verdict, word.firmness, word.detail)
            return f"could turn {part.name} from {part.spoken} to {then}"
    if any(word.firmness != now.firmness for word in found):
        return f"could make {now.verdict} firm for {part.name}"
    return f"says more of {part.name}, and does not change its verdict alone"


def _case(each: OpenLook, settings: Settings) -> Case:
    part = each.unit.part
    evidence = evidence_of(part.results, part.walked_past, settings)
    return Case(part.facts, evidence, settings)


def _word_if(each: OpenLook, rating: str, settings: Settings) -> Word:
    """The word if all that the look answers on its first unit were found with that rating."""
    part, case = each.unit.part, _case(each, settings)
    results = list(part.results)
    for result in each.results:
        results = with_rating(results, result.subject, rating)
    return word_for(replace(case, evidence=evidence_of(results, part.walked_past, settings)))


def _joint(found: list[OpenLook], settings: Settings, minutes: float, currency: str) -> str:
    """What to see together before the one decision, where the worth of a sound vessel is known."""
    if settings.buying_worth is None:
        return ""
    breakers = [breaker for each in found for breaker in _breakers(each, settings)]
    chosen, gain = best_joint(breakers, settings.buying_worth, minutes)
    if not chosen:
        return (
            "Buy or walk away: no critical check that fits the minutes could change that answer, "
            "as far as it is priced."
        )
    names = "; ".join(breaker.label for breaker in chosen)
    needed = math.fsum(breaker.minutes for breaker in chosen)
    return (
        f"Buy or walk away: worth seeing together {names}; {_sum(gain, currency)} expected, "
        f"{needed:g} min."
    )


def _breakers(each: OpenLook, settings: Settings) -> Iterator[Breaker]:
    """A look as a deal-breaker, where it is at something critical and priced."""
    critical = any(result.check.critical for result in each.results)
    loss = each.unit.money
    # Only what is critical and priced can break a purchase that is otherwise worth its money.
    if each.kind == CHECK and critical and loss:
        bad = 1 - each.unit.chance.value
        yield Breaker(each.look.label, bad, settings.late_factor * loss, each.look.minutes)


def _sum(amount: float, currency: str) -> str:
    return f"{grouped(amount)} {currency}".strip()
