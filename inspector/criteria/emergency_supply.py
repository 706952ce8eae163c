"""Supplies that must last: uninterruptible supplies, the emergency source and the battery that bridges until it runs."""

from collections.abc import Mapping
from datetime import date

from inspector.criteria.judgement import Criterion, Input, Judgement
from inspector.criteria.ladder import Ladder, below, beyond, stairs, to
from inspector.criteria.profiles import Limit, Profile
from inspector.criteria.source import Source
from inspector.criteria.telling import told
from inspector.quantities import show

UPS = Source("Class practice with the IMO guidelines for dynamic positioning", "MSC/Circ.645 and MSC.1/Circ.1580", "30 minutes for each supply", "memory")
START = Source("SOLAS II-1/42 and II-1/43, emergency source of electrical power", "consolidated text", "automatic start, 45 s", "memory")
LASTING = Source("SOLAS II-1/42 and II-1/43, emergency source of electrical power", "consolidated text", "18 h cargo, 36 h passenger", "seen")
BRIDGING = Source("SOLAS II-1/42 and II-1/43, transitional source", "consolidated text", "30 minutes", "memory")

UPS_PROFILE = Profile("Usual endurance of an uninterruptible supply", (Limit("least", "at least", "min", 30.0, 5, 240),), UPS)
MOST_SECONDS, BRIDGE_MINUTES = 45.0, 30.0
LEAST_HOURS = {"cargo": 18.0, "passenger": 36.0}
OLDER_TEXT = date(1984, 9, 1)  # keel before it: the original text may still bind (memory)
IN_TRADE = ("Applies because: SOLAS, to vessels in trade. A private yacht outside trade is held to her flag's or yacht code's own text.",)


def ups_ladder(limits: Mapping[str, float]) -> Ladder:
    """The bands of the time [min] that a supply lasts on its battery."""
    return stairs("min", below(limits["least"], "too short", "failed", "too short"), beyond("long enough", "good", "long enough"))


def judge_ups(time: float, limits: Mapping[str, float]) -> Judgement:
    """Judge how long an uninterruptible supply lasts on its battery under its real load.

    Parameters: time [min]; limits : least [min].

    References: 30 minutes as class practice (memory).
    """
    said = f"{show(time, 'min')} on the battery, against {show(limits['least'], 'min')} at least,"
    notes = ("The time counts under the load of the consumers, not as the front panel estimates it; ask for the test's date.",)
    return told("ups-endurance", ups_ladder(limits).step(time), said, (time, "min", limits["least"]), UPS, notes, at_least=True)


def start_ladder() -> Ladder:
    """The bands of the time [s] until the emergency board is fed. SOLAS II-1/42 and 43 (memory)."""
    return stairs("s", to(MOST_SECONDS, "in time", "good", "in time"), beyond("too slow", "failed", "too slow"))


def judge_start(time: float) -> Judgement:
    """Judge how long the emergency set takes from loss of main power until it feeds the emergency board.

    Parameters: time [s].

    References: SOLAS II-1/42 and II-1/43, 45 s (memory).
    """
    said = f"{show(time, 's')} from loss of power to a fed emergency board, against {show(MOST_SECONDS, 's')},"
    notes = (*IN_TRADE, "The test is run by the ship's crew, never by the visitor.")
    return told("emergency-start", start_ladder().step(time), said, (time, "s", MOST_SECONDS), START, notes)


def lasting_ladder(ship: str, built: date | None = None) -> Ladder:
    """The bands of the endurance [h] of an emergency source; nothing is failed where an older text may bind. SOLAS II-1/42 and 43 (seen)."""
    least = LEAST_HOURS[ship]
    enough = beyond("long enough", "good", "long enough")
    if built is not None and built < OLDER_TEXT:
        why = "below the present text, and a keel laid before 1 September 1984 may stand on an older one: ask the flag"
        return stairs("h", below(least, "older text may bind", None, why), enough)
    return stairs("h", below(least, "too short", "failed", "too short"), enough)


def judge_lasting(time: float, ship: str, built: date | None = None) -> Judgement:
    """Judge how long the emergency source carries its services with the fuel or charge it has.

    Parameters: time [h]; ship : cargo or passenger; built : the keel's date, if known.

    References: SOLAS II-1/43 (18 h) and II-1/42 (36 h), both seen; the keel date of the older text is memory.
    """
    least = LEAST_HOURS[ship]
    said = f"{show(time, 'h')} from the emergency source of a {ship} ship, against {show(least, 'h')},"
    notes = (*IN_TRADE, "More than twelve passengers make a passenger ship. Fuel counts to the suction, not to the tank's floor.")
    return told("emergency-endurance", lasting_ladder(ship, built).step(time), said, (time, "h", least), LASTING, notes, at_least=True)


def bridging_ladder() -> Ladder:
    """The bands of the time [min] that the transitional battery lasts. SOLAS II-1/42 and 43 (memory)."""
    return stairs("min", below(BRIDGE_MINUTES, "too short", "failed", "too short"), beyond("long enough", "good", "long enough"))


def judge_bridging(time: float) -> Judgement:
    """Judge how long the transitional battery lasts, where the emergency source is a generator.

    Parameters: time [min].

    References: SOLAS II-1/42 and II-1/43, 30 minutes (memory).
    """
    said = f"{show(time, 'min')} from the transitional battery, against {show(BRIDGE_MINUTES, 'min')},"
    return told("transitional-source", bridging_ladder().step(time), said, (time, "min", BRIDGE_MINUTES), BRIDGING, IN_TRADE, at_least=True)


CRITERIA = (
    Criterion(
        "ups-endurance",
        "Time an uninterruptible supply lasts",
        (Input("time", "Time on the battery", "number", "min", low=0, high=6000),),
        UPS,
        judge_ups,
        "Uninterruptible supplies under their real load, 0 to 6000 min.",
        "The recalled limit from both sides.",
        profile=UPS_PROFILE,
        ladder=ups_ladder,
    ),
    Criterion(
        "emergency-start",
        "Time until the emergency board is fed",
        (Input("time", "Time until it is fed", "number", "s", low=0, high=3600),),
        START,
        judge_start,
        "Emergency generators with automatic start, 0 to 3600 s.",
        "The recalled limit from both sides.",
        ladder=start_ladder,
    ),
    Criterion(
        "emergency-endurance",
        "Endurance of the emergency source",
        (
            Input("time", "Endurance", "number", "h", low=0, high=1000),
            Input("ship", "Kind of ship", "choice", choices=tuple(LEAST_HOURS)),
            Input("built", "Keel laid", "date", optional=True),
        ),
        LASTING,
        judge_lasting,
        "Cargo and passenger ships in trade under SOLAS; keels before 1 September 1984 are not failed.",
        "Both limits from both sides; a battery and a day tank by our own arithmetic.",
        ladder=lasting_ladder,
    ),
    Criterion(
        "transitional-source",
        "Time the transitional battery lasts",
        (Input("time", "Time on the battery", "number", "min", low=0, high=6000),),
        BRIDGING,
        judge_bridging,
        "Ships whose emergency source is a generator, 0 to 6000 min.",
        "The recalled limit from both sides.",
        ladder=bridging_ladder,
    ),
)
