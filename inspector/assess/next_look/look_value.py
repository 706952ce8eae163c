"""What one look is worth: stake x need x how far it moves the chance that the unit is sound.

A model of our own, since no published one exists for a walk-round: it ranks looks, it prices
nothing. Its figures are settings. The loss between deciding with and without a look is not used:
it gives nothing for every large unit of which little was seen, since no single look turns it.
"""

from collections.abc import Iterable
from dataclasses import dataclass

from inspector.assess.checked import CheckResult
from inspector.assess.verdict.settings import DEFAULTS, Settings
from inspector.checklists.model import Check

_HEAVIEST = 5.0


@dataclass(frozen=True)
class Chance:
    """What is known of whether a unit is sound.

    Parameters
    ----------
    sound : float
        What speaks for it, in heavy checks.
    known : float
        All that was seen of it, in heavy checks.
    prior : float
        The chance before anything was seen, 0 to 1.
    strength : float
        How many heavy checks that counts like.
    """

    sound: float
    known: float
    prior: float
    strength: float = DEFAULTS.prior_strength

    @property
    def value(self) -> float:
        """The chance that it is sound, 0 to 1."""
        return (self.sound + self.strength * self.prior) / (self.known + self.strength)

    def movement(self, information: float, already: float = 0.0) -> float:
        """Return how far a look is expected to move the chance, up or down.

        Parameters
        ----------
        information : float
            What the look is worth as information, in heavy checks.
        already : float
            That of the looks chosen before it.

        Returns
        -------
        float
            0 to 0.5: the mean of the two ways, each with its chance.

        Examples
        --------
        >>> round(Chance(0.0, 0.0, 0.6).movement(4.0), 3)
        0.32
        """
        chance = self.value
        known = self.known + already + self.strength + information
        return 2 * chance * (1 - chance) * information / known


def information(check: Check, settings: Settings) -> float:
    """Return what one check is worth as information on its unit, in heavy checks.

    Parameters
    ----------
    check : Check
    settings : Settings

    Returns
    -------
    float
    """
    return check.weight / _HEAVIEST * (settings.critical_factor if check.critical else 1.0)


def chance_of(
    own: Iterable[CheckResult], sisters: Iterable[CheckResult], settings: Settings
) -> Chance:
    """Return the chance that a unit is sound.

    Parameters
    ----------
    own : iterable of CheckResult
        The results of the unit.
    sisters : iterable of CheckResult
        Those of the same checks on like units, which count a share of what they count on their
        own unit.
    settings : Settings

    Returns
    -------
    Chance
    """
    sound = known = 0.0
    shares = [(result, 1.0) for result in own] + [
        (result, settings.sister_share) for result in sisters
    ]
    for result, share in shares:
        if not result.applicable or not result.seen or result.is_service:
            continue
        weight = share * information(result.check, settings)
        if not result.closed and result.check.critical:
            weight *= settings.sighted_share
        known += weight
        sound += 0.0 if result.bad else weight
    return Chance(sound, known, settings.prior_sound, settings.prior_strength)


def need_worth(need: str, settings: Settings) -> float:
    """Return what a look at a thing is worth by the brief's need of it.

    Parameters
    ----------
    need : str
        "" where the brief says nothing counts as useful.
    settings : Settings

    Returns
    -------
    float
        0 to 1.
    """
    worth = {
        "required": 1.0,
        "neutral": settings.need_neutral,
        "unwanted": 0.0,
    }
    return worth.get(need, settings.need_useful)


def stake_worth(money: float | None, middle: float | None, settings: Settings = DEFAULTS) -> float:
    """Return what is at stake with a unit against the middle one of the vessel.

    Parameters
    ----------
    money : float or None
        The dearer of its prices; None where it has none.
    middle : float or None
        The middle one of all priced units.
    settings : Settings

    Returns
    -------
    float
        Within the settings' bounds, 1 where nothing is priced: a price alone never outranks need.
    """
    if not money or not middle:
        return 1.0
    most = settings.most_stake
    return min(max(money / middle, 1 / most), most)
