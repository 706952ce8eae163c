"""Where span, likely value and ask of one line are on its bar, as shares of its length."""

from dataclasses import dataclass

from inspector.conversion.core.chapter import Requirement

# The room that is left on each side of what is drawn, as a share of its reach.
MARGIN = 0.25
# Above this share of the greatest value the least one is so near that a bar from zero shows
# nothing.
NEAR = 0.5


@dataclass(frozen=True)
class AskBar:
    """Places on a bar, as shares of its length from the left.

    Parameters
    ----------
    low, high : float
        The ends of the span [-].
    likely : float or None
        [-]
    asked : float
        [-]
    """

    low: float
    high: float
    likely: float | None
    asked: float


def ask_bar(requirement: Requirement) -> AskBar | None:
    """Return the bar of a requirement.

    Parameters
    ----------
    requirement : Requirement

    Returns
    -------
    AskBar or None
        None where nothing is known, or where offer and ask are one exact value.

    References
    ----------
    Model of our own: from zero, or from near the least value where all of them are close together.
    """
    offered, asked = requirement.offered, requirement.asked
    if offered is None or (offered.is_exact and offered.low == asked):
        return None
    least, most = min(offered.low, asked), max(offered.high, asked)
    reach = most - least
    start = 0.0 if 0 <= least < NEAR * most else least - MARGIN * reach
    end = most + MARGIN * (reach if start else most)
    places = [
        (value - start) / (end - start)
        for value in (offered.low, offered.high, offered.middle, asked)
    ]
    likely = places[2] if offered.point is not None else None
    return AskBar(places[0], places[1], likely, places[3])
