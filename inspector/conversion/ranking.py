"""Candidates in order by a weighted score, and how firm that order is: the weight at which two change places, ties, and what spans cannot separate.

Scores run from 0 (unusable) to 100 (as wanted) on fixed ends, never scaled over the candidates at hand: otherwise the order of two would depend on
a third. Simple additive weighting, as in any handbook of multi-criteria decisions; the swap weight is plain algebra.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

from inspector.conversion.shapes import ConversionError, Span

TIE = 1e-9
EDGE = 1e-3


class BadWeights(ConversionError):
    """Weights that cannot be used. Attribute: ``field`` (the aspect)."""


@dataclass(frozen=True)
class Scored:
    """One candidate: name, a span 0..100 for each aspect (the same aspects for all)."""

    name: str
    scores: Mapping[str, Span]


@dataclass(frozen=True)
class Swap:
    """At that weight of that aspect the two candidates change places, the other weights keeping their proportions."""

    aspect: str
    weight: float
    now: float
    first: str
    second: str


@dataclass(frozen=True)
class Place:
    """One line of the ranking: equal totals share a rank; `total` is a span."""

    rank: int
    name: str
    total: Span


@dataclass(frozen=True)
class Ranking:
    """The order, the swaps between neighbours (nearest first), and the pairs that what was seen cannot separate."""

    places: tuple[Place, ...]
    weights: Mapping[str, float]
    swaps: tuple[Swap, ...]
    open_pairs: tuple[tuple[str, str], ...]
    dominant: str = ""               # the candidate that is surely no worse in any aspect and better in one, whatever the weights


def normalised(weights: Mapping[str, float], aspects: Sequence[str]) -> dict[str, float]:
    """Weights that sum to 1. Raises BadWeights for a negative, endless or missing one, or where all are 0.

    Examples
    --------
    >>> normalised({"condition": 3, "cost": 1}, ["condition", "cost"])
    {'condition': 0.75, 'cost': 0.25}
    """
    for aspect in aspects:
        value = weights.get(aspect)
        if value is None or not 0 <= value < 1e9:
            raise BadWeights(f"The weight of {aspect} must be a number from 0, and not {value}.", field=aspect)
    total = sum(weights[aspect] for aspect in aspects)
    if total <= 0:
        raise BadWeights("At least one weight must be above 0.", field=aspects[0] if aspects else "")
    return {aspect: weights[aspect] / total for aspect in aspects}


def rank(candidates: Sequence[Scored], weights: Mapping[str, float]) -> Ranking:
    """Rank candidates by the weighted sum of their points; equal totals share a rank and stand by name."""
    aspects = list(candidates[0].scores) if candidates else []
    shares = normalised(weights, aspects) if aspects else {}
    totals = {one.name: _total(one, shares) for one in candidates}
    ordered = sorted(candidates, key=lambda one: (-round(_point(totals[one.name]), 9), one.name))
    places: list[Place] = []
    for number, one in enumerate(ordered, 1):
        same = places and abs(_point(places[-1].total) - _point(totals[one.name])) <= TIE
        places.append(Place(places[-1].rank if same else number, one.name, totals[one.name]))
    swaps = sorted((swap for pair in pairwise(ordered) for swap in _swaps(*pair, shares)), key=lambda swap: abs(swap.weight - swap.now))
    return Ranking(tuple(places), shares, tuple(swaps), _open_pairs(places), _dominant(ordered))


def _point(span: Span) -> float:
    return span.point if span.point is not None else (span.low + span.high) / 2


def _total(one: Scored, shares: Mapping[str, float]) -> Span:
    low, point, high = (sum(shares[aspect] * value(one.scores[aspect]) for aspect in shares) for value in (lambda s: s.low, _point, lambda s: s.high))
    return Span(min(low, point), point, max(high, point))


def swap_weight(difference: Mapping[str, float], weights: Mapping[str, float], aspect: str) -> float | None:
    """The weight of one aspect at which a difference of scores (first less second, per aspect) weighs nothing; None where there is none in 0..1.

    The others keep their proportions: with D = sum over the others of w_j d_j / (1 - w_k), w_k* = D / (D - d_k).
    """
    rest = 1 - weights[aspect]
    if rest <= TIE:
        return None
    others = sum(weights[one] * difference[one] for one in weights if one != aspect) / rest
    if abs(others - difference[aspect]) <= TIE:
        return None
    found = others / (others - difference[aspect])
    return found if 0 <= found <= 1 else None


def _swaps(one: Scored, other: Scored, shares: Mapping[str, float]):
    difference = {aspect: _point(one.scores[aspect]) - _point(other.scores[aspect]) for aspect in shares}
    for aspect in shares:
        at = swap_weight(difference, shares, aspect)
        # at the very ends nothing but that aspect, or nothing of it, counts: no weighting that anybody would choose
        if at is not None and EDGE < at < 1 - EDGE and any(abs(value) > TIE for value in difference.values()):
            yield Swap(aspect, at, shares[aspect], one.name, other.name)


def _open_pairs(places: Sequence[Place]) -> tuple[tuple[str, str], ...]:
    """Neighbours whose spans overlap: what was seen does not separate them."""
    return tuple((one.name, other.name) for one, other in pairwise(places) if not one.total.low > other.total.high)


def _dominant(ordered: Sequence[Scored]) -> str:
    """The first candidate, where in every aspect the whole of its span is no worse than that of any other, and somewhere better."""
    if len(ordered) < 2:
        return ""
    best, rest = ordered[0], ordered[1:]
    for other in rest:
        differences = [best.scores[aspect].low - other.scores[aspect].high for aspect in best.scores]
        if min(differences) < -TIE or max(differences) <= TIE:
            return ""
    return best.name
