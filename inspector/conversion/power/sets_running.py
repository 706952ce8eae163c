"""How many sets a demand keeps running, and how hard."""

from collections.abc import Iterable
from dataclasses import dataclass

from inspector.conversion.power.load_balance import main_sets, require_sets, set_capacity
from inspector.conversion.power.plant_elements import GeneratorSet

FURTHER_SET_ABOVE = 0.85  # share of rating above which a further set is started (common practice)
LIGHT_BELOW = 0.30  # share of rating below which a diesel fouls (common practice)


@dataclass(frozen=True)
class SetsRunning:
    """The sets that a demand keeps running.

    Parameters
    ----------
    count : int
    load : float
        Their load as a share of what they can give.
    word : str
        "light", "usual", "high" or "overloaded".
    """

    count: int
    load: float
    word: str


def sets_running(
    sets: Iterable[GeneratorSet], power: float, load_factor: float | None = None
) -> SetsRunning:
    """Return the fewest sets, largest first, that carry a power at 85 % or less.

    Parameters
    ----------
    sets : iterable of GeneratorSet
    power : float
        Demand [kW].
    load_factor : float, optional
        Power factor of the load.

    Returns
    -------
    SetsRunning
        All main sets where even they do not carry it at 85 %.

    Raises
    ------
    BadInput
        There is no main set in order.

    References
    ----------
    A further set above 85 % (common practice, no source).
    """
    usable = require_sets(main_sets(sets))
    # The largest first, so that the fewest sets that carry it are found.
    powers = sorted((set_capacity(each, load_factor) for each in usable), reverse=True)
    count = 1
    while count < len(powers) and power > FURTHER_SET_ABOVE * sum(powers[:count]):
        count += 1
    # Sets in parallel share alike, each by its size.
    load = power / sum(powers[:count])
    return SetsRunning(count, load, loading_word(load))


def loading_word(load: float) -> str:
    """Return the word for the load of a set.

    Parameters
    ----------
    load : float
        Share of its rating.

    Returns
    -------
    str
        "light" below 30 %, "usual" to 85 %, "high" to 100 %, "overloaded" above.

    References
    ----------
    Common practice, no source.
    """
    if load < LIGHT_BELOW:
        return "light"
    if load <= FURTHER_SET_ABOVE:
        return "usual"
    return "high" if load <= 1 else "overloaded"
