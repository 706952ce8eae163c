"""What would change a verdict: every single fact is really varied through the rules, and only what flips is told.

Each flip carries the varied case, so that anybody can put it through the rules again.
"""

import math
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass, replace

from inspector.assess.rules import Case, fired
from inspector.assess.shapes import NEEDS, Change
from inspector.words import amount, grouped, listed

PARTS = ("made", "hard to get", "no longer made")
_FARTHEST = 10**15  # hundredths of money; beyond any refit, and exact as a float


@dataclass(frozen=True)
class Flip:
    """One change of one fact: in words, the verdict it gives, and the varied case."""

    fact: str
    verdict: str
    case: Case

    @property
    def change(self) -> Change:
        return Change(self.fact, self.verdict)


def flips(case: Case) -> tuple[Flip, ...]:
    """The nearest flip of each single input, in a fixed order; empty where nothing single would change the verdict."""
    now = fired(case).verdict
    tried = (flip for vary in _VARIATIONS for flip in vary(case))
    return tuple(flip for flip in tried if flip.verdict != now)


def _flip(fact: str, case: Case) -> Flip:
    return Flip(fact, fired(case).verdict, case)


def _facts(case: Case, **changed: object) -> Case:
    return replace(case, facts=replace(case.facts, **changed))


def _condition(case: Case) -> Iterator[Flip]:
    """The nearest level above that flips when reached, and below when lost."""
    points, now = case.condition.points, fired(case).verdict
    if points is None:
        return
    levels = sorted({case.settings.retain_from, case.settings.refurbish_from})
    lifted = ", once its cap is lifted" if case.condition.capped_by else ""
    above = (_flip(f"The condition reaching {level:g} of 100{lifted}", _at(case, level)) for level in levels if level > points)
    below = (_flip(f"The condition falling below {level:g} of 100", _at(case, math.nextafter(level, 0)))
             for level in reversed(levels) if 0 < level <= points)
    yield from _first(above, now)
    yield from _first(below, now)


def _at(case: Case, points: float) -> Case:
    old = case.condition
    return replace(case, condition=replace(old, points=points, low=min(old.low, points), high=max(old.high, points)))


def _first(tried: Iterable[Flip], now: str) -> list[Flip]:
    return [flip for flip in tried if flip.verdict != now][:1]


def _coverage(case: Case) -> Iterator[Flip]:
    asked = case.settings.coverage
    if case.condition.points is not None and case.condition.coverage < asked:
        enough = replace(case, condition=replace(case.condition, coverage=asked))
        yield _flip(f"{asked * 100:g} % of the weight seen, with the condition as it is now", enough)


def _critical(case: Case) -> Iterator[Flip]:
    open_ones = [one for one in case.unseen if one.critical]
    if open_ones:
        names = "the critical check not yet seen" if len(open_ones) == 1 else f"the {len(open_ones)} critical checks not yet seen"
        rest = tuple(one for one in case.unseen if not one.critical)
        yield _flip(f"Seeing {names}, with the condition as it is now", replace(case, unseen=rest))


def _law(case: Case) -> Iterator[Flip]:
    if case.facts.law:
        yield _flip("A ruling by flag or class that it may stay as it is", _facts(case, law=()))


def _danger(case: Case) -> Iterator[Flip]:
    if case.facts.danger:
        yield _flip("The danger put right", _facts(case, danger=()))


def _life(case: Case) -> Iterator[Flip]:
    life, horizon = case.facts.life_years, case.horizon
    if horizon is None:
        return
    enough, too_short = _tenth(horizon, math.ceil), _tenth(horizon, math.floor)
    if life is None or life < horizon:
        yield _flip(f"A remaining life of {enough:g} years or more", _facts(case, life_years=enough))
    if too_short > 0 and (life is None or life >= horizon):
        yield _flip(f"A remaining life of less than {too_short:g} years", _facts(case, life_years=math.nextafter(too_short, 0)))


def _horizon(case: Case) -> Iterator[Flip]:
    life, horizon = case.facts.life_years, case.horizon
    if life is None:
        return
    covered, too_long = _tenth(life, math.floor), _tenth(life, math.ceil)
    if horizon is None or horizon > life:
        yield _flip(f"A horizon of {covered:g} years or less", _facts(case, horizon=covered))
    if horizon is None or horizon <= life:
        yield _flip(f"A horizon of more than {too_long:g} years", _facts(case, horizon=math.nextafter(too_long, math.inf)))


def _tenth(years: float, towards: Callable[[float], int]) -> float:
    # what is printed is what was tried, so a long figure is first rounded to the side on which the sentence stays true
    return years if round(years, 1) == years else towards(years * 10) / 10


def _parts(case: Case) -> Iterator[Flip]:
    others = [(word, _facts(case, parts=word)) for word in PARTS if word != case.facts.parts]
    yield from _grouped("Parts that are", others)


def _need(case: Case) -> Iterator[Flip]:
    others = [(word, _facts(case, need=word)) for word in NEEDS if word != case.facts.need]
    yield from _grouped("A brief that calls it", others)


def _grouped(start: str, others: list[tuple[str, Case]]) -> Iterator[Flip]:
    """One flip per verdict, with all the words that lead there."""
    by_verdict: dict[str, list[tuple[str, Case]]] = {}
    for word, varied in others:
        by_verdict.setdefault(fired(varied).verdict, []).append((word, varied))
    for same in by_verdict.values():
        yield _flip(f"{start} {listed([word for word, _ in same], 'or')}", same[0][1])


def _cost(field: str, words: str) -> Callable[[Case], Iterator[Flip]]:
    """Vary one cost down to nothing and up without end; where an end flips, bisect to the hundredth where it does."""
    def vary(case: Case) -> Iterator[Flip]:
        now, typed = fired(case).verdict, getattr(case.facts, field)
        start = None if typed is None else round(typed * 100)
        for end, more in ((0, False), (_FARTHEST, True)):
            if (start is not None and (start > end) == more) or fired(_priced(case, field, end)).verdict == now:
                continue
            # not priced yet: search from the far end, where the verdict must be as it is now to be a limit at all
            last = start if start is not None else _FARTHEST - end
            if start is None and fired(_priced(case, field, last)).verdict != now:
                yield _flip(f"A price for {words}, whatever it is", _priced(case, field, end))
                return
            found = _bisect(case, field, last, end)
            yield _flip(f"{words.capitalize()} at {amount(found / 100)} or {'more' if more else 'less'}", _priced(case, field, found))
    return vary


def _priced(case: Case, field: str, hundredths: int) -> Case:
    return _facts(case, **{field: hundredths / 100})


def _bisect(case: Case, field: str, same: int, other: int) -> int:
    """The amount nearest to `same`, in hundredths, that gives another verdict than now; `other` is known to."""
    now = fired(case).verdict
    while abs(other - same) > 1:
        middle = (same + other) // 2
        if fired(_priced(case, field, middle)).verdict == now:
            same = middle
        else:
            other = middle
    return other


def _annual(field: str, words: str, unit: str, low: float, high: float) -> Callable[[Case], Iterator[Flip]]:
    """Vary one figure of the yearly costs both ways to its nearest flip, to the tenth; only where the yearly costs are known."""
    def vary(case: Case) -> Iterator[Flip]:
        if case.cheaper is None:
            return
        typed = case.settings.discount_rate * 100 if field == "discount_rate" else getattr(case.facts, field) or 0.0
        now = fired(case).verdict
        for end, more in ((low, False), (high, True)):
            if (typed < end) != more or typed == end:
                continue
            found = _first_tenth(lambda value: fired(_yearly(case, field, value)).verdict != now, typed, end, field == "discount_rate")
            if found is not None:
                yield _flip(f"{words} of {grouped(found, ',.10g')} {unit} or {'more' if more else 'less'}".replace("  ", " "),
                            _yearly(case, field, found))
    return vary


def _first_tenth(flips_at: Callable[[float], bool], typed: float, end: float, by_rate: bool) -> float | None:
    """The first tenth from `typed` towards `end` that flips: steps that grow, then a bisection inside the step that did; None where none does."""
    sign, first = (1, math.floor(typed * 10) + 1) if end > typed else (-1, math.ceil(typed * 10) - 1)
    last = round(end * 10)
    at, step = first, 1
    before = first - sign
    while sign * (last - at) >= 0:
        if flips_at(at / 10):
            same, other = before, at
            while abs(other - same) > 1:
                middle = (same + other) // 2
                same, other = (same, middle) if flips_at(middle / 10) else (middle, other)
            return other / 10
        if at == last:
            break
        # lives and sums act one way only, so that growing steps miss nothing; a rate is followed by whole per cents
        before, step = at, 10 if by_rate else step * 2
        at = at + sign * step if sign * (last - at - sign * step) >= 0 else last
    return None


def _yearly(case: Case, field: str, value: float) -> Case:
    if field == "discount_rate":
        return replace(case, settings=replace(case.settings, discount_rate=value / 100))
    return _facts(case, **{field: value})


_VARIATIONS = (_condition, _coverage, _critical, _law, _danger, _life, _horizon, _parts,
               _cost("refurbish_cost", "refurbishing"), _cost("replace_cost", "replacing"),
               _annual("life_refurbished", "A life after refurbishing", "years", 1, 60), _annual("life_new", "A life of the new one", "years", 1, 60),
               _annual("yearly_refurbished", "A yearly cost refurbished", "", 0, 1e9), _annual("yearly_new", "A yearly cost of the new one", "", 0, 1e9),
               _annual("discount_rate", "A discount rate", "%", 0, 50), _need)
