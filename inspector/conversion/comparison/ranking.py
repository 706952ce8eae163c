"""Candidates in order by what is assured of their weighted score, and how firm that order is.

They stand by the low end, which what is not known can only lower: ignorance never helps. One of
which less than a stated share is known has no place at all.

Scores run from 0 (unusable) to 100 (as wanted) on fixed ends and are never scaled over the
candidates at hand: otherwise the order of two would depend on a third.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

from inspector.conversion.core.span import ConversionError, Span

# Two scores closer than this are equal.
TIE = 1e-9
# A share of the weights so near to all or nothing is one that nobody would choose.
EDGE = 1e-3
# The share of what is weighed that must be known for a place in the order: our own choice.
LEAST_KNOWN = 0.5


class BadWeights(ConversionError):
    """Weights that cannot be used. Attribute: ``field`` (the aspect)."""


@dataclass(frozen=True)
class Scored:
    """One candidate with its scores.

    Parameters
    ----------
    name : str
    scores : mapping of str to Span
        Aspect -> score [0 to 100]; every candidate has the same aspects.
    """

    name: str
    scores: Mapping[str, Span]


@dataclass(frozen=True)
class Swap:
    """The weight of an aspect at which two neighbours change places.

    Parameters
    ----------
    aspect : str
    weight : float
        Share of all weights at which they do [-]; the others keep their proportions.
    now : float
        Its share as chosen [-].
    first, second : str
        The candidates, in their present order.
    """

    aspect: str
    weight: float
    now: float
    first: str
    second: str


@dataclass(frozen=True)
class Place:
    """One line of the ranking.

    Parameters
    ----------
    rank : int or None
        From 1 by what is assured; equal ones share a rank. None where too little is known.
    name : str
    total : Span
        Weighted score [0 to 100].
    """

    rank: int | None
    name: str
    total: Span

    @property
    def known(self) -> float:
        """The share of what is weighed that is known [-]."""
        return 1 - self.total.width / 100


@dataclass(frozen=True)
class Ranking:
    """The order, and what could change it.

    Parameters
    ----------
    places : tuple of Place
        Those without a rank last.
    weights : mapping of str to float
        Aspect -> its share [-]; the shares sum to 1.
    swaps : tuple of Swap
        Between neighbours, the nearest to the chosen weight first.
    open_pairs : tuple of (str, str)
        Neighbours that what was seen cannot separate.
    dominant : str
        The candidate that is surely no worse in any aspect and better in one, or "".
    """

    places: tuple[Place, ...]
    weights: Mapping[str, float]
    swaps: tuple[Swap, ...]
    open_pairs: tuple[tuple[str, str], ...]
    dominant: str = ""


def normalised(weights: Mapping[str, float], aspects: Sequence[str]) -> dict[str, float]:
    """Return weights as shares that sum to 1.

    Parameters
    ----------
    weights : mapping of str to float
        Aspect -> weight [-].
    aspects : sequence of str

    Returns
    -------
    dict of str to float
        Aspect -> share [-].

    Raises
    ------
    BadWeights
        One is negative, infinite or missing, or all are 0.

    References
    ----------
    Simple additive weighting, as in any handbook of multi-criteria decisions.

    Examples
    --------
    >>> normalised({"condition": 3, "cost": 1}, ["condition", "cost"])
    {'condition': 0.75, 'cost': 0.25}
    """
    for aspect in aspects:
        value = weights.get(aspect)
        # The comparison also refuses NaN this way, since it is never below anything.
        if value is None or not 0 <= value < 1e9:
            raise BadWeights(
                f"The weight of {aspect} must be a number from 0, and not {value}.", field=aspect
            )
    total = sum(weights[aspect] for aspect in aspects)
    if total <= 0:
        raise BadWeights(
            "At least one weight must be above 0.", field=aspects[0] if aspects else ""
        )
    return {aspect: weights[aspect] / total for aspect in aspects}


def rank(candidates: Sequence[Scored], weights: Mapping[str, float]) -> Ranking:
    """Return candidates ranked by the low end of their weighted sums; equal ones go by name.

    Parameters
    ----------
    candidates : sequence of Scored
    weights : mapping of str to float
        Aspect -> weight [-].

    Returns
    -------
    Ranking

    Raises
    ------
    BadWeights
        As ``normalised`` does.

    References
    ----------
    Simple additive weighting, as in any handbook of multi-criteria decisions.
    """
    aspects = list(candidates[0].scores) if candidates else []
    shares = normalised(weights, aspects) if aspects else {}
    totals = {scored.name: _total(scored, shares) for scored in candidates}
    # Rounded, so that equal totals go by name and not by a binary fraction.
    by_assured = sorted(
        candidates, key=lambda scored: (-round(totals[scored.name].low, 9), scored.name)
    )
    ordered = [scored for scored in by_assured if _is_rankable(totals[scored.name])]
    places = _places([(scored.name, totals[scored.name]) for scored in ordered])
    without = tuple(
        Place(None, scored.name, totals[scored.name])
        for scored in by_assured
        if scored not in ordered
    )
    swaps = [swap for pair in pairwise(ordered) for swap in _swaps(*pair, shares)]
    swaps.sort(key=lambda swap: abs(swap.weight - swap.now))
    return Ranking(
        (*places, *without), shares, tuple(swaps), _open_pairs(places), _dominant(ordered)
    )


def _is_rankable(total: Span) -> bool:
    """Whether enough is known of a candidate for a place in the order."""
    return total.width <= 100 * (1 - LEAST_KNOWN) + TIE


def _places(ordered: Sequence[tuple[str, Span]]) -> tuple[Place, ...]:
    """Return the places of ordered totals; equal ones share a rank."""
    places: list[Place] = []
    for number, (name, total) in enumerate(ordered, 1):
        # Equal scores share a rank, and the next rank is left out, as in a race.
        same = places and abs(places[-1].total.low - total.low) <= TIE
        places.append(Place(places[-1].rank if same else number, name, total))
    return tuple(places)


def _total(scored: Scored, shares: Mapping[str, float]) -> Span:
    """Return the weighted sum of the scores, end by end."""
    low = sum(shares[aspect] * scored.scores[aspect].low for aspect in shares)
    point = sum(shares[aspect] * scored.scores[aspect].middle for aspect in shares)
    high = sum(shares[aspect] * scored.scores[aspect].high for aspect in shares)
    # Sums of floats may leave the point a hair outside its ends.
    return Span(min(low, point), point, max(high, point))


def swap_weight(
    difference: Mapping[str, float], weights: Mapping[str, float], aspect: str
) -> float | None:
    """Return the weight of one aspect at which two candidates change places.

    The other weights keep their proportions: with D = sum over the others of w_j d_j / (1 - w_k),
    it is w_k* = D / (D - d_k).

    Parameters
    ----------
    difference : mapping of str to float
        Aspect -> score of the first less that of the second [-100 to 100].
    weights : mapping of str to float
        Aspect -> share [-]; the shares sum to 1.
    aspect : str

    Returns
    -------
    float or None
        Share of that aspect [-]; None where there is none from 0 to 1.

    References
    ----------
    Plain algebra of the weighted sum.
    """
    rest = 1 - weights[aspect]
    # With all weight on one aspect the others have no proportions to keep.
    if rest <= TIE:
        return None
    others = sum(weights[other] * difference[other] for other in weights if other != aspect) / rest
    # Where an aspect differs as all the others together do, no weight of it changes the order.
    if abs(others - difference[aspect]) <= TIE:
        return None
    weight = others / (others - difference[aspect])
    return weight if 0 <= weight <= 1 else None


def _swaps(first: Scored, second: Scored, shares: Mapping[str, float]) -> Iterator[Swap]:
    """Yield the weights at which two neighbours change places, one for each aspect."""
    difference = {aspect: first.scores[aspect].low - second.scores[aspect].low for aspect in shares}
    # Two equal candidates change places at any weight, which says nothing.
    if all(abs(value) <= TIE for value in difference.values()):
        return
    for aspect in shares:
        weight = swap_weight(difference, shares, aspect)
        if weight is not None and EDGE < weight < 1 - EDGE:
            yield Swap(aspect, weight, shares[aspect], first.name, second.name)


def _open_pairs(places: Sequence[Place]) -> tuple[tuple[str, str], ...]:
    """Neighbours whose spans overlap: what was seen does not separate them."""
    return tuple(
        (first.name, second.name)
        for first, second in pairwise(places)
        # Neighbours only: where these overlap, the order between them is open.
        if first.total.low <= second.total.high
    )


def _dominant(ordered: Sequence[Scored]) -> str:
    """The first candidate, where its spans are surely no worse anywhere and better somewhere."""
    if len(ordered) < 2:
        return ""
    best, rest = ordered[0], ordered[1:]
    for other in rest:
        differences = [
            # Its worst against the other's best, so that nothing unseen can turn it.
            best.scores[aspect].low - other.scores[aspect].high
            for aspect in best.scores
        ]
        if min(differences) < -TIE or max(differences) <= TIE:
            return ""
    return best.name
