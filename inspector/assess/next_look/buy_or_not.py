"""The one question that several looks answer together: buy, or walk away.

The gains of single looks do not add up here, so that their sets are enumerated.
"""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import combinations, product

# Deal-breakers taken together: 3^10 outcomes are quick, and nobody has more.
MOST_JOINT = 10
_TOLERANCE = 1e-9


@dataclass(frozen=True)
class Breaker:
    """A possible deal-breaker.

    Parameters
    ----------
    label : str
    chance : float
        That it is wrong, 0 to 1.
    loss : float
        What that costs.
    minutes : float
        To find out.
    """

    label: str
    chance: float
    loss: float
    minutes: float

    @property
    def expected_loss(self) -> float:
        """Chance times loss."""
        return self.chance * self.loss


def joint_gain(breakers: Sequence[Breaker], seen: Iterable[int], worth: float) -> float:
    """Return what seeing some of the breakers is worth to the decision.

    Parameters
    ----------
    breakers : sequence of Breaker
    seen : iterable of int
        Indices of those that are looked at.
    worth : float
        What buying wins if nothing is wrong; walking away wins 0.

    Returns
    -------
    float
        In the money of the losses.

    References
    ----------
    R. A. Howard, Information Value Theory, IEEE Transactions on Systems Science and Cybernetics
    SSC-2(1), 1966 (*from memory*).
    """
    seen = list(seen)
    unseen = [breaker for index, breaker in enumerate(breakers) if index not in seen]
    rest = worth - math.fsum(breaker.expected_loss for breaker in unseen)
    looked_at = [breakers[index] for index in seen]
    found = 0.0
    for outcome in product((False, True), repeat=len(looked_at)):
        chance, value = 1.0, rest
        for wrong, breaker in zip(outcome, looked_at, strict=True):
            chance *= breaker.chance if wrong else 1 - breaker.chance
            value -= breaker.loss if wrong else 0.0
        found += chance * max(value, 0.0)
    without = worth - math.fsum(breaker.expected_loss for breaker in breakers)
    return found - max(without, 0.0)


def best_joint(
    breakers: Sequence[Breaker], worth: float, minutes: float
) -> tuple[tuple[Breaker, ...], float]:
    """Find the set of deal-breakers that is worth most within the minutes.

    Parameters
    ----------
    breakers : sequence of Breaker
        Of these, the MOST_JOINT dearest ones.
    worth : float
        What buying wins if nothing is wrong.
    minutes : float

    Returns
    -------
    tuple of (tuple of Breaker, float)
        The set and its gain.
    """
    few = sorted(breakers, key=lambda breaker: -breaker.expected_loss)[:MOST_JOINT]
    best: tuple[tuple[int, ...], float] = ((), 0.0)
    for size in range(1, len(few) + 1):
        for subset in combinations(range(len(few)), size):
            if math.fsum(few[index].minutes for index in subset) > minutes + _TOLERANCE:
                continue
            gain = joint_gain(few, subset, worth)
            if gain > best[1] + _TOLERANCE:
                best = (subset, gain)
    return tuple(few[index] for index in best[0]), best[1]
