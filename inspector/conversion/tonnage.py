"""Gross and net tonnage of the 1969 convention: from enclosed volume and back, what a deckhouse adds, and which lines it would cross.

A certificate's figure has lost its decimals, so the volume behind it is a span. Only a recognised tonnage measurer decides what is enclosed.
"""

from dataclasses import dataclass
from math import floor, log10

from inspector.conversion.inputs import BadInput, plain, within
from inspector.conversion.shapes import Span, span
from inspector.criteria.source import Source
from inspector.quantities import show

ITC = Source("International Convention on Tonnage Measurement of Ships", "1969", "annex I, regulations 3 and 4", "seen")
LINES = Source("Thresholds of gross tonnage in the conventions", "recalled", "applications of SOLAS, MARPOL, MLC, Bunkers and Nairobi conventions", "memory")
MOST = 400_000.0   # m³, far beyond any vessel of this kind
# from this gross tonnage on -> what begins, in a few words
THRESHOLDS = {
    300: "safety radio, identification at sea, wreck removal insurance",
    400: "MARPOL certificates for oil, air and sewage, ballast water and anti-fouling papers",
    500: "SOLAS certificates of cargo ships, safety management, security, labour certificate, inventory of hazardous materials",
    1000: "bunker liability insurance",
    3000: "larger cabins, voyage data recorder; some large-yacht codes ended here",
    5000: "fuel consumption data",
}


def _k(volume: float) -> float:
    return 0.2 + 0.02 * log10(volume)


def gross(volume: float) -> float:
    """Gross tonnage with its decimals, of an enclosed volume [m³]: (0.2 + 0.02 log10 V) V. ITC 1969 annex I, regulation 3.

    Errors
    ------
    BadInput : the volume is not from 1 to 400 000 m³.

    Examples
    --------
    >>> round(gross(1000), 6)
    260.0
    """
    return _k(plain("enclosed volume", volume, 1, MOST, "m³")) * volume


def printed(tonnage: float) -> int:
    """As a certificate prints it: the decimals are dropped, and never rounded up (2999.97 is 2999)."""
    return floor(round(tonnage, 6))   # what should be whole may lie a hair below it in binary


def volume_of(tonnage: float) -> float:
    """Enclosed volume [m³] behind an exact gross tonnage, by halving."""
    plain("gross tonnage", tonnage, 1, 100_000)
    low, high = 1.0, MOST
    for _ in range(100):
        middle = (low + high) / 2
        low, high = (middle, high) if gross(middle) < tonnage else (low, middle)
    return (low + high) / 2


def behind(certificate: int) -> Span:
    """Enclosed volume [m³] behind a whole gross tonnage of a certificate: anything up to the next whole number."""
    plain("gross tonnage", certificate, 1, 99_999)
    if certificate != int(certificate):
        raise BadInput(f"Gross tonnage is {certificate}, and a certificate gives a whole number.", field="gross tonnage", value=certificate)
    return Span(volume_of(certificate), None, volume_of(certificate + 1))


def changed(volume: Span | float, added: Span | float) -> Span:
    """Gross tonnage after enclosed volume [m³] is added, minus where it is removed. BadInput where nothing would be left."""
    after = span(volume) + added
    if after.low < 1:
        sentence = f"Enclosed volume would be {show(after.low, 'm³')}, and a vessel needs more; check what is removed."
        raise BadInput(sentence, field="enclosed volume", value=after.low)
    return after.apply(gross)


def room_below(volume: Span, tonnage: float) -> Span:
    """How much volume [m³] may still be enclosed before a gross tonnage is reached; minus where it is passed."""
    return volume_of(tonnage) - span(volume)


@dataclass(frozen=True)
class Line:
    """One line of gross tonnage: what begins there, and whether it is "below", "crossed upward", "perhaps crossed", "crossed downward" or "above already"."""

    tonnage: int
    begins: str
    state: str
    room: Span        # m³ that may still be enclosed below it after the change


def lines(before: int, volume: Span, added: Span) -> tuple[Line, ...]:
    """Every line of THRESHOLDS against a certificate's figure, the volume behind it [m³] and the volume added [m³]."""
    after = changed(volume, added)
    return tuple(Line(at, begins, _state(before, after, at), room_below(volume + added, at)) for at, begins in THRESHOLDS.items())


def _state(before: int, after: Span, at: int) -> str:
    low, high = printed(after.low) >= at, printed(after.high) >= at
    if low != high:
        return "perhaps crossed"
    if before >= at:
        return "above already" if low else "crossed downward"
    return "crossed upward" if low else "below"


def net(tonnage: float, cargo: float = 0.0, draught: float | None = None, depth: float | None = None, few: int = 0, many: int = 0) -> float:
    """Net tonnage with its decimals. ITC 1969 annex I, regulation 4.

    tonnage: gross; cargo: volume of cargo spaces [m³]; draught, depth moulded [m], needed with cargo; few, many: passengers
    in cabins of up to 8 berths, and the others (fewer than 13 in all count as none).

    Errors
    ------
    BadInput : cargo space without draught and depth, or a value that cannot be meant.
    """
    plain("gross tonnage", tonnage, 1, 100_000)
    within("volume of cargo spaces", cargo, 0, MOST, "m³")
    first = 0.0
    if cargo > 0:
        if draught is None or depth is None:
            raise BadInput("Net tonnage: cargo space counts by draught and depth moulded; give both.", field="depth", value=depth)
        ratio = 4 * plain("draught", draught, 0.3, 30, "m") / (3 * plain("depth", depth, 0.5, 40, "m"))
        first = _k(cargo) * cargo * min(ratio**2, 1.0)
    people = few + many / 10 if few + many >= 13 else 0.0
    return max(max(first, 0.25 * tonnage) + 1.25 * (tonnage + 10_000) / 10_000 * people, 0.30 * tonnage)
