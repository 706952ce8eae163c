"""Which rules begin at a gross tonnage, and whether a change of the enclosed volume crosses one."""

from dataclasses import dataclass

from inspector.conversion.core.span import Span, span
from inspector.conversion.space.tonnage import (
    certificate_tonnage,
    enclosed_volume,
    gross_tonnage_after,
)
from inspector.criteria.core.source import Source

THRESHOLDS_SOURCE = Source.recalled(
    "Thresholds of gross tonnage in the conventions",
    "applications of SOLAS, MARPOL, MLC, Bunkers and Nairobi conventions",
)


# From this gross tonnage on -> what begins, in a few words.
THRESHOLDS = {
    300: "safety radio, identification at sea, wreck removal insurance",
    400: "MARPOL certificates for oil, air and sewage, ballast water and anti-fouling papers",
    500: (
        "SOLAS certificates of cargo ships, safety management, security, labour certificate, "
        "inventory of hazardous materials"
    ),
    1000: "bunker liability insurance",
    3000: "larger cabins, voyage data recorder; some large-yacht codes ended here",
    5000: "fuel consumption data",
}


def volume_left_below(volume: Span, tonnage: float) -> Span:
    """Return how much volume may still be enclosed before a gross tonnage is reached.

    Parameters
    ----------
    volume : Span
        Enclosed volume [m³].
    tonnage : float
        Gross tonnage of the threshold [-].

    Returns
    -------
    Span
        Volume [m³], minus where the threshold is passed.

    References
    ----------
    ITC 1969, annex I, regulation 3 (seen), inverted.
    """
    # In m³ and not in tonnage: what a builder may still enclose is a room.
    return enclosed_volume(tonnage) - span(volume)


@dataclass(frozen=True)
class Threshold:
    """One threshold of gross tonnage against a changed vessel.

    Parameters
    ----------
    tonnage : int
        Gross tonnage from which it counts [-].
    begins : str
        What begins there.
    state : str
        "below", "crossed upward", "perhaps crossed", "crossed downward" or "above already".
    room : Span
        Volume that may still be enclosed below it after the change [m³].
    """

    tonnage: int
    begins: str
    state: str
    room: Span


def thresholds_after(before: int, volume: Span, added: Span) -> tuple[Threshold, ...]:
    """Return every threshold of THRESHOLDS against a change of the enclosed volume.

    Parameters
    ----------
    before : int
        Gross tonnage of the certificate [-].
    volume : Span
        The enclosed volume behind it [m³].
    added : Span
        Enclosed volume added [m³], minus where it is removed.

    Returns
    -------
    tuple of Threshold

    Raises
    ------
    BadInput
        No enclosed volume would remain.

    References
    ----------
    Thresholds of gross tonnage in the conventions (*from memory*).
    """
    after = gross_tonnage_after(volume, added)
    return tuple(
        Threshold(at, begins, _state(before, after, at), volume_left_below(volume + added, at))
        for at, begins in THRESHOLDS.items()
    )


def _state(before: int, after: Span, at: int) -> str:
    """Return where a change leaves a threshold: below, crossed, or above already."""
    # Law asks for the figure of the certificate, so decimals are dropped before comparing.
    low, high = certificate_tonnage(after.low) >= at, certificate_tonnage(after.high) >= at
    if low != high:
        return "perhaps crossed"
    # Falling below a threshold seldom frees an existing ship, so it is told apart from being below
    # it.
    if before >= at:
        return "above already" if low else "crossed downward"
    return "crossed upward" if low else "below"
