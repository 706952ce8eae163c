"""What would change a unit's word: only what somebody can do or learn.

Each change is really made and put through the rules, and only what gives another word is reported.
"""

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace

from inspector.assess.verdict.evidence import evidence_of, with_rating
from inspector.assess.verdict.unit_case import Case
from inspector.assess.verdict.unit_rules import Word, word_for
from inspector.values.formatting import amount
from inspector.values.vocabulary import FIRM, NOT_LOOKED_AT, RATINGS

MOST_CHANGES = 3
_FAILING = f"found {RATINGS[-1]}"
# Hundredths of money; beyond any refit, and exact as a float.
_MOST_MONEY = 10**15
# Lighter looks than these turn no word by themselves.
_MOST_TRIED = 4
# A limit of money is printed with so many digits, on the side on which the sentence is true.
_DIGITS = 3


@dataclass(frozen=True)
class WordChange:
    """One thing done or learnt, with the case as it would be then.

    Parameters
    ----------
    fact : str
        In words.
    word : Word
        What the rules give then.
    case : Case
        The varied case, so that anybody can put it through the rules again.
    one_is_enough : bool
        Whether it turns a whole system where it happens to one of its units: a look that fails.
    """

    fact: str
    word: Word
    case: Case
    one_is_enough: bool = False


def word_changes(case: Case) -> tuple[WordChange, ...]:
    """Find what would turn the word of one unit.

    Parameters
    ----------
    case : Case

    Returns
    -------
    tuple of WordChange
        A settlement first, then looks, prices, and what can be learnt of law, life and parts; the
        brief's need last. At most MOST_CHANGES, and one for each fact.
    """
    now = word_for(case)
    found: list[WordChange] = []
    # What can be done on board today before what needs an office.
    for vary in (_settled, _looked_at, _prices, _learnt, _need):
        for fact, varied in vary(case, now):
            word = word_for(varied)
            if word.key != now.key:
                found.append(WordChange(fact, word, varied, fact.endswith(_FAILING)))
            if len(found) == MOST_CHANGES:
                return tuple(found)
    return tuple(found)


def _settled(case: Case, _: Word) -> Iterator[tuple[str, Case]]:
    """A dispute settled by its better answer."""
    for result in case.evidence.results:
        if result.better:
            fact = f"{result.check.title} settled as {result.better}"
            yield fact, _with_rating(case, result.subject, result.better)


def _looked_at(case: Case, now: Word) -> Iterator[tuple[str, Case]]:
    """One open look that would turn the word by itself; then all of them together."""
    # Of what nobody has seen every look is news, and what is firm does not wait for one.
    if now.verdict == NOT_LOOKED_AT or now.firmness == FIRM or case.work_is_certain:
        return
    others = [one for one in case.evidence.results if not (one.closed or one.check.critical)]
    others.sort(key=lambda result: -result.check.weight)
    open_yet = [*case.evidence.open_critical, *others[:_MOST_TRIED]]
    turning = 0
    for result in open_yet:
        for rating in (RATINGS[-1], RATINGS[0]):
            varied = _with_rating(case, result.subject, rating)
            if word_for(varied).key != now.key and turning < MOST_CHANGES - 1:
                turning += 1
                yield f"{result.check.title} found {rating}", varied
    critical = case.evidence.open_critical
    if not turning and critical:
        varied = case
        for result in critical:
            varied = _with_rating(varied, result.subject, "good")
        yield f"All {len(critical)} open critical checks found good", varied


def _with_rating(case: Case, subject: str, rating: str) -> Case:
    evidence = case.evidence
    results = with_rating((*evidence.results, *evidence.services), subject, rating)
    found = evidence_of(results, evidence.walked_past, case.settings)
    return replace(case, evidence=found)


def _with_facts(case: Case, **changed: object) -> Case:
    return replace(case, facts=replace(case.facts, **changed))


def _prices(case: Case, now: Word) -> Iterator[tuple[str, Case]]:
    """The nearest price that turns the word; where one is missing, both sides of the limit."""
    if not (case.work_is_certain or case.facts.law):
        return
    facts = case.facts
    # Nobody buys a new hull: where renewing it has no price, none is missing.
    if facts.stays and facts.replace_cost is None:
        return
    if facts.replace_cost is None and facts.refurbish_cost is None:
        share = case.settings.cost_share
        both = {"replace_cost": 100.0, "refurbish_cost": 100.0 * share}
        per_cent = f"{share * 100:.0f} % of a new one"
        yield f"Refurbishing priced at {per_cent} or less", _with_facts(case, **both)
        dearer = {**both, "refurbish_cost": 100.0}
        yield f"Refurbishing priced at more than {per_cent}", _with_facts(case, **dearer)
        return
    renewing = "Renewing" if facts.stays else "A new one"
    for field, words in (("refurbish_cost", "Refurbishing"), ("replace_cost", renewing)):
        yield from _price_limits(case, now, field, words)


def _price_limits(case: Case, now: Word, field: str, words: str) -> Iterator[tuple[str, Case]]:
    """The amount of one price from which the word is another one, below and above."""
    price = getattr(case.facts, field)
    for end, more in ((0, False), (_MOST_MONEY, True)):
        # Where there is no price yet, the search begins at the other end.
        start = round(price * 100) if price is not None else _MOST_MONEY - end
        if not 0 <= start <= _MOST_MONEY or _word_at(case, field, end) == now.key:
            continue
        if _word_at(case, field, start) != now.key:
            # Any price at all turns it; the limit is between the two words that it can give.
            yield from _between(case, field, words, start, end, more)
            continue
        found = _bisect(case, field, start, end)
        yield _at_limit(case, field, words, found, more)


def _between(
    case: Case, field: str, words: str, start: int, end: int, more: bool
) -> Iterator[tuple[str, Case]]:
    if _word_at(case, field, start) == _word_at(case, field, end):
        if not more:
            yield f"A price for it: {words.lower()}", _priced(case, field, end)
        return
    yield _at_limit(case, field, words, _bisect(case, field, start, end), more)


def _at_limit(case: Case, field: str, words: str, found: int, more: bool) -> tuple[str, Case]:
    rounded = _rounded(found, more)
    if _word_at(case, field, rounded) != _word_at(case, field, found):
        rounded = found
    side = "more" if more else "less"
    return f"{words} at {amount(rounded / 100)} or {side}", _priced(case, field, rounded)


def _rounded(hundredths: int, up: bool) -> int:
    """An amount to a few digits, away from the limit."""
    step = 10 ** max(len(str(hundredths)) - _DIGITS, 0)
    return (math.ceil if up else math.floor)(hundredths / step) * step


def _word_at(case: Case, field: str, hundredths: int) -> tuple[str, str]:
    return word_for(_priced(case, field, hundredths)).key


def _priced(case: Case, field: str, hundredths: int) -> Case:
    return _with_facts(case, **{field: hundredths / 100})


def _bisect(case: Case, field: str, same: int, other: int) -> int:
    """The amount nearest to `same`, in hundredths, that gives another word than it does."""
    kept = _word_at(case, field, same)
    while abs(other - same) > 1:
        middle = (same + other) // 2
        if _word_at(case, field, middle) == kept:
            same = middle
        else:
            other = middle
    return other


def _learnt(case: Case, _: Word) -> Iterator[tuple[str, Case]]:
    """What can be learnt of law, life and parts."""
    facts, horizon = case.facts, case.horizon
    if facts.law:
        yield "A ruling by flag or class that it may stay as it is", _with_facts(case, law=())
    if case.short_lived:
        fact = f"A life shown to reach the horizon of {horizon:g} years"
        yield fact, _with_facts(case, life_years=horizon)
    if case.without_parts:
        yield "A source of parts", _with_facts(case, parts="hard to get")


def _need(case: Case, now: Word) -> Iterator[tuple[str, Case]]:
    """The brief's need, where it is what decides."""
    if now.rule.name in ("not wanted", "not worth repair"):
        yield "A brief that needs it", _with_facts(case, need="required")
    elif case.work_is_certain and not case.facts.need:
        yield "A brief that does not need it", _with_facts(case, need="neutral")
