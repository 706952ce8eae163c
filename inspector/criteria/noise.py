"""Noise in spaces, by the code that binds new ships and compares older ones, and what a person's ears get in a day.

Levels are reported in whole decibels, half rounding up: 60.4 complies with 60 and 60.5 does not. That rounding is our own convention.
"""

import math
from datetime import date

from inspector.criteria.judgement import Criterion, Input, Judgement, refuse
from inspector.criteria.ladder import Ladder, below, beyond, stairs, to
from inspector.criteria.source import Source
from inspector.criteria.telling import told
from inspector.quantities import show

SPACES = Source("Code on noise levels on board ships, MSC.337(91)", "2012", "4.2, limits by space; the column from 10 000 GT is memory", "seen")
DAY = Source("Code on noise levels on board ships, MSC.337(91)", "2012", "chapter 5, level of 24 hours", "seen")
SMALL = Source("UK code of practice and machinery-space regulations", "SI 1998/2514 and small-vessel text 22.10", "90 manned, 110 unmanned", "seen")

# space -> limit to 10 000 GT, from 10 000 GT
LIMITS = {
    "machinery space": (110, 110),
    "machinery control room": (75, 75),
    "workshop": (85, 85),
    "other work space": (85, 85),
    "bridge or chartroom": (65, 65),
    "look-out or bridge wing": (70, 70),
    "radio room": (60, 60),
    "radar room": (65, 65),
    "cabin or hospital": (60, 55),
    "mess room": (65, 60),
    "recreation room": (65, 60),
    "open recreation area": (75, 75),
    "office": (65, 60),
    "galley, machines stopped": (75, 75),
    "servery or pantry": (75, 75),
    "normally unoccupied": (90, 90),
}
LEAST_TONNAGE, LARGE, FROM_KEEL = 1600, 10_000, date(2015, 1, 1)  # the contract counts from 1 July 2014, the keel where none is known
WATCHES = {"manned": 90.0, "unmanned": 110.0}
MOST_DAY, PROTECT, ADVISE, NEVER = 80.0, 85.0, 80.0, 120.0
HALF = 0.5  # dB, up to which a level still rounds down
RUNNING = ("Name the machines running; the code's trial is at 80 % of power or more with ventilation on, thrusters at 40 %.",)


def binding(tonnage: int, built: date) -> bool:
    """Return whether the code binds a ship of this tonnage [GT] and keel date, where no contract date is known (dates seen).

    Examples
    --------
    >>> binding(1600, date(2015, 1, 1)), binding(1599, date(2020, 1, 1)), binding(2500, date(2014, 12, 31))
    (True, False, False)
    """
    return tonnage >= LEAST_TONNAGE and built >= FROM_KEEL


def level_ladder(space: str, tonnage: int, built: date) -> Ladder:
    """The bands of the level [dB(A)] in a space: a limit where the code binds, a comparison where it does not. MSC.337(91), 4.2 (seen)."""
    limit = LIMITS[space][tonnage >= LARGE]
    over = (
        beyond("over the limit", "poor", "over it")
        if binding(tonnage, built)
        else beyond("over in comparison", "fair", "over it, which is a comparison: the code does not bind this vessel")
    )
    return stairs("dB(A)", below(limit + HALF, "within the limit", "good", "within it"), over)


def judge_level(level: float, space: str, tonnage: int, built: date) -> Judgement:
    """Judge the noise in a space.

    Parameters: level [dB(A)]; space : one of LIMITS; tonnage : GT; built : the keel's date.

    References: MSC.337(91), 4.2 (seen; the column from 10 000 GT memory). Poor and never failed: noise can be treated.
    """
    limit = LIMITS[space][tonnage >= LARGE]
    said = f"{show(level, 'dB(A)')} in a {space} of a vessel of {tonnage} GT, against {show(limit, 'dB(A)')},"
    notes = (
        *RUNNING,
        "Whole decibels, half rounding up, without allowance for the meter: our own convention.",
        "A bench inside the engine room counts as machinery space. Passengers' spaces lie outside the code.",
    )
    return told("noise-level", level_ladder(space, tonnage, built).step(level), said, (level, "dB(A)", limit), SPACES, notes)


def machinery_ladder(watch: str) -> Ladder:
    """The bands of the level [dB(A)] in a machinery space of a smaller vessel. UK texts (seen)."""
    return stairs("dB(A)", to(WATCHES[watch], "within the limit", "good", "within it"), beyond("over the limit", "poor", "over it"))


def judge_machinery(level: float, watch: str) -> Judgement:
    """Judge the noise in a machinery space by UK texts for smaller vessels.

    Parameters: level [dB(A)]; watch : manned or unmanned.

    References: UK small-vessel text 22.10 and SI 1998/2514, regulation 75 (seen).
    """
    limit = WATCHES[watch]
    said = f"{show(level, 'dB(A)')} in a machinery space ({watch}), against {show(limit, 'dB(A)')},"
    notes = ("Above 85 dB(A) a sign at the door and ear protection; above 90 dB(A) a manned space needs a refuge.", *RUNNING)
    return told("machinery-space-noise", machinery_ladder(watch).step(level), said, (level, "dB(A)", limit), SMALL, notes)


def day_level(parts: list[tuple[float, float]]) -> float:
    """Return the level of 24 hours [dB(A)] of parts, each a level [dB(A)] and its hours.

    Examples
    --------
    >>> round(day_level([(85, 8), (60, 16)]), 2)
    80.26
    """
    return 10 * math.log10(sum(hours * 10 ** (level / 10) for level, hours in parts) / 24)


def judge_exposure(
    level: float,
    hours: float,
    second_level: float,
    second_hours: float,
    third_level: float | None = None,
    third_hours: float | None = None,
    fourth_level: float | None = None,
    fourth_hours: float | None = None,
) -> Judgement:
    """Judge the noise that one person gets in a day of 24 hours.

    Parameters: level, second_level, third_level, fourth_level [dB(A)]; hours, second_hours, third_hours, fourth_hours [h], 24 together.

    References: MSC.337(91), 5.1 (seen): space limits are set so that 24 hours stay at 80 dB(A) or less.
    """
    name = "noise-exposure"
    read = [("level", level, hours), ("second", second_level, second_hours), ("third", third_level, third_hours), ("fourth", fourth_level, fourth_hours)]
    for part, loud, long in read:
        if (loud is None) != (long is None):
            refuse(name, f"{part}_level" if loud is None else f"{part}_hours", None, f"the {part} part has a level or hours without the other")
    parts = [(loud, long) for _, loud, long in read if loud is not None]
    total = sum(long for _, long in parts)
    if abs(total - 24) > 1e-6:
        refuse(name, "hours", hours, f"the hours make {show(total, 'h')}, and a day has 24 h")
    found = day_level(parts)
    ladder = stairs("dB(A)", to(MOST_DAY, "within the limit", "good", "within it"), beyond("over the limit", "poor", "over it"))
    listed = ", ".join(f"{show(long, 'h')} at {show(loud, 'dB(A)')}" for loud, long in parts)
    said = f"A day of {listed} makes {show(found, 'dB(A)')}, which, against {show(MOST_DAY, 'dB(A)')},"
    return told(name, ladder.step(found), said, (found, "dB(A)", MOST_DAY), DAY, ("Unprotected ears are meant; local law on work may ask less.",))


def protection_ladder() -> Ladder:
    """What a level [dB(A)] asks of people's ears; no rating. MSC.337(91), chapter 5 (seen above 85, memory above 120)."""
    return stairs(
        "dB(A)",
        to(ADVISE, "none asked", None, "one that asks for no protection"),
        to(PROTECT, "advised", None, "one at which employers' rules offer protection"),
        to(NEVER, "protection", None, "one to enter with ear protection or for a short time only"),
        beyond("stay out", None, "one to stay out of, even with protection"),
    )


def judge_protection(level: float) -> Judgement:
    """Tell what a level asks of people's ears; this speaks of people and not of the vessel's condition.

    Parameters: level [dB(A)].

    References: MSC.337(91), chapter 5: protection above 85 (seen), nobody above 120 (memory); 80 dB(A) by shore workers' rules (memory).
    """
    said = f"A level of {show(level, 'dB(A)')}, where ear protection begins above {show(PROTECT, 'dB(A)')},"
    notes = ("A reminder only: the ship's signs, the employer's rules and local law decide.",)
    return told("hearing-protection", protection_ladder().step(level), said, (level, "dB(A)", PROTECT), DAY, notes)


def _level(name: str = "level", label: str = "Sound level", optional: bool = False) -> Input:
    return Input(name, label, "number", "dB(A)", optional=optional, low=20, high=140)


def _hours(name: str, optional: bool = False) -> Input:
    return Input(
        name, f"{name.partition('_')[0].capitalize()} part's hours" if "_" in name else "Hours there", "number", "h", optional=optional, low=0, high=24
    )


CRITERIA = (
    Criterion(
        "noise-level",
        "Noise in a space",
        (
            _level(),
            Input("space", "Kind of space", "choice", choices=tuple(LIMITS)),
            Input("tonnage", "Gross tonnage", "whole", low=1, high=300_000),
            Input("built", "Keel laid", "date"),
        ),
        SPACES,
        judge_level,
        "Ships of any tonnage at sea; below 1600 GT or with a keel before 2015 a comparison only; 20 to 140 dB(A).",
        "Every published row from both sides of its rounding, the tonnage and date from both sides.",
        ladder=level_ladder,
    ),
    Criterion(
        "machinery-space-noise",
        "Noise in a machinery space of a smaller vessel",
        (_level(), Input("watch", "Is it manned", "choice", choices=tuple(WATCHES))),
        SMALL,
        judge_machinery,
        "Machinery spaces of smaller vessels, 20 to 140 dB(A).",
        "Both published limits from both sides.",
        ladder=machinery_ladder,
    ),
    Criterion(
        "noise-exposure",
        "Noise of a day for one person",
        (
            _level(),
            _hours("hours"),
            *(
                part
                for name in ("second", "third", "fourth")
                for part in (_level(f"{name}_level", f"{name.capitalize()} part's level", name != "second"), _hours(f"{name}_hours", name != "second"))
            ),
        ),
        DAY,
        judge_exposure,
        "Two to four parts of a day that make 24 hours; 20 to 140 dB(A).",
        "Four days by our own arithmetic.",
    ),
    Criterion(
        "hearing-protection",
        "What a level asks of people's ears",
        (_level(),),
        DAY,
        judge_protection,
        "Levels of 20 to 140 dB(A).",
        "Each end from both sides.",
        ladder=protection_ladder,
    ),
)
