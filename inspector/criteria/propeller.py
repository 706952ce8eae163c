"""Propellers: pitch, blade thickness and lost edges against the tolerances of manufacture, and the time to change pitch.

Tolerances of manufacture are a yardstick for a used propeller, not a law: beyond them is poor, never failed.
"""

from collections.abc import Mapping
from decimal import Decimal

from inspector.criteria.exact import around, exact, share
from inspector.criteria.judgement import Criterion, Input, Judgement
from inspector.criteria.ladder import Ladder, below, beyond, stairs, to
from inspector.criteria.profiles import Limit, Profile
from inspector.criteria.source import Source
from inspector.criteria.telling import told, told_between
from inspector.quantities import show

SOURCE = Source(
    "ISO 484-2, ship screw propellers, manufacturing tolerances, 0.80 to 2.50 m",
    "1981, from public tables of propeller workshops",
    "pitch, thickness and length of sections",
    "seen",
)
PITCH_CHANGE = Source("Time of a controllable pitch propeller from full ahead to full astern", "no publisher", "15 to 30 s", "common practice")
CLASSES = ("S", "I", "II", "III")
# class -> share either way of mean pitch, %
PITCH = {"S": 0.5, "I": 0.75, "II": 1, "III": 3}
# class -> (share, least in mm) over and under the drawn thickness; share, least of the length of a section
OVER = {"S": (2, 2), "I": (2.5, 2.5), "II": (4, 4), "III": (6, 6)}
UNDER = {"S": (1, 1), "I": (1.5, 1.5), "II": (2, 2), "III": (4, 4)}
LENGTH = {"S": (1.5, 7), "I": (2, 10), "II": (3, 13), "III": (5, 15)}
TIME = Profile("Controllable pitch propellers", (Limit("longest", "full ahead to full astern within", "s", 30, 5, 120),), PITCH_CHANGE)
YARDSTICK = "A tolerance of manufacture, taken as a yardstick; larger propellers have part 1 of the standard, the maker's drawing wins."


def allowed(table: Mapping[str, tuple[float, float]], tolerance_class: str, size: float) -> Decimal:
    """Return the tolerance [mm] of a size [mm]: a share of it, but at least the table's least. ISO 484-2 (seen)."""
    percent, least = table[tolerance_class]
    return max(exact(share(percent, size)), exact(least))


def pitch_limits(nominal: float, tolerance_class: str) -> tuple[float, float]:
    """Return the least and the most mean pitch [m] of a class.

    Examples
    --------
    >>> pitch_limits(2.4, "I")
    (2.382, 2.418)
    """
    return around(nominal, PITCH[tolerance_class])


def pitch_ladder(nominal: float, tolerance_class: str) -> Ladder:
    """Three bands of mean pitch [m]: too low, within the class, too high. ISO 484-2 (seen)."""
    low, high = pitch_limits(nominal, tolerance_class)
    return stairs(
        "m",
        below(low, "pitch too low", "poor", "too low: the engine runs light"),
        to(high, "within the class", "good", "within it"),
        beyond("pitch too high", "poor", "too high: the engine is overloaded"),
    )


def judge_pitch(measured: float, nominal: float, tolerance_class: str) -> Judgement:
    """Judge the mean pitch of a propeller against its class.

    Parameters
    ----------
    measured, nominal [m], mean pitch of the propeller, 0.3 to 6; tolerance_class : S, I, II or III.

    References
    ----------
    ISO 484-2: mean pitch of the propeller within 0.5, 0.75, 1 and 3 % (seen).
    """
    low, high = pitch_limits(nominal, tolerance_class)
    met = next((one for one in CLASSES if pitch_limits(nominal, one)[0] <= measured <= pitch_limits(nominal, one)[1]), None)
    reached = f"It meets class {met}." if met else "It meets no class of the standard."
    return told_between(
        "propeller-pitch",
        pitch_ladder(nominal, tolerance_class).step(measured),
        f"A mean pitch of {show(measured, 'm')}, against {low:.4g} m to {high:.4g} m of class {tolerance_class},",
        (measured, "m"),
        (low, high),
        SOURCE,
        (reached, YARDSTICK),
    )


def thickness_ladder(nominal: float, tolerance_class: str) -> Ladder:
    """Three bands of blade thickness [mm]. ISO 484-2 (seen)."""
    low, high = thickness_limits(nominal, tolerance_class)
    return stairs(
        "mm",
        below(low, "too thin", "poor", "too thin: worn, eroded or ground away"),
        to(high, "within the class", "good", "within it"),
        beyond("too thick", "fair", "thicker than drawn, as after a weld repair: ask for its record"),
    )


def thickness_limits(nominal: float, tolerance_class: str) -> tuple[float, float]:
    """Return the least and the most thickness [mm] of a class. ISO 484-2 (seen)."""
    drawn = exact(nominal)
    return float(drawn - allowed(UNDER, tolerance_class, nominal)), float(drawn + allowed(OVER, tolerance_class, nominal))


def judge_thickness(measured: float, nominal: float, tolerance_class: str) -> Judgement:
    """Judge the thickness of a blade section against the drawing.

    Parameters
    ----------
    measured, nominal [mm], at the same radius, 5 to 400; tolerance_class : S, I, II or III.

    References
    ----------
    ISO 484-2: under by 1, 1.5, 2 or 4 % and at least as many mm, over by 2, 2.5, 4 or 6 % and at least as many mm (seen).
    """
    low, high = thickness_limits(nominal, tolerance_class)
    return told_between(
        "propeller-blade-thickness",
        thickness_ladder(nominal, tolerance_class).step(measured),
        f"A blade thickness of {show(measured, 'mm')}, against {show(low, 'mm')} to {show(high, 'mm')} of class {tolerance_class},",
        (measured, "mm"),
        (low, high),
        SOURCE,
        (YARDSTICK,),
    )


def edge_ladder(length: float, tolerance_class: str) -> Ladder:
    """Two bands of section length lost [mm]. ISO 484-2 (seen)."""
    limit = float(allowed(LENGTH, tolerance_class, length))
    return stairs(
        "mm",
        to(limit, "within the class", "good", "within it"),
        beyond("beyond the class", "poor", "beyond it: the blade wants repair by a propeller workshop"),
    )


def judge_edge(loss: float, length: float, tolerance_class: str) -> Judgement:
    """Judge how much of a blade section's length is lost at its edges.

    Parameters
    ----------
    loss [mm], lost at both edges of one section, 0 to 500; length [mm] of the section as drawn, 100 to 3000; tolerance_class : S, I, II or III.

    References
    ----------
    ISO 484-2: length of sections within 1.5, 2, 3 or 5 %, at least 7, 10, 13 or 15 mm (seen).
    """
    limit = float(allowed(LENGTH, tolerance_class, length))
    notes = (YARDSTICK, "Cracks, bends and damage near the root are judged by a specialist, not by this figure.")
    return told(
        "propeller-edge-loss",
        edge_ladder(length, tolerance_class).step(loss),
        f"A loss of {show(loss, 'mm')} at the edges of a section of {show(length, 'mm')}, against at most {show(limit, 'mm')} of class {tolerance_class},",
        (loss, "mm", limit),
        SOURCE,
        notes,
    )


def change_ladder(limits: Mapping[str, float]) -> Ladder:
    """Two bands of the time for a change of pitch [s]."""
    return stairs(
        "s",
        to(limits["longest"], "quick enough", "good", "quick enough"),
        beyond("slow", "poor", "slow: look at pump pressure, filters, hub and feedback"),
    )


def judge_change(time: float, limits: Mapping[str, float]) -> Judgement:
    """Judge the time from full pitch ahead to full pitch astern.

    Parameters
    ----------
    time [s], 1 to 600; limits : the profile.

    References
    ----------
    Common practice: 15 to 30 s. The maker's figure wins.
    """
    return told(
        "pitch-change-time",
        change_ladder(limits).step(time),
        f"A change of pitch in {show(time, 's')}, against at most {show(limits['longest'], 's')},",
        (time, "s", limits["longest"]),
        PITCH_CHANGE,
        ("Timed with clear water behind, by the bridge's order; note oil temperature and which pumps ran.",),
    )


_CLASS = Input("tolerance_class", "Class of the propeller", "choice", choices=CLASSES)

CRITERIA = (
    Criterion(
        "propeller-pitch",
        "Mean pitch of a propeller against its class",
        (Input("measured", "Measured mean pitch", "number", "m", low=0.3, high=6), Input("nominal", "Pitch as drawn", "number", "m", low=0.3, high=6), _CLASS),
        SOURCE,
        judge_pitch,
        "Screw propellers of 0.80 to 2.50 m diameter, pitch of 0.3 to 6 m.",
        "Both ends of each class from both sides against public tables of the 1981 edition.",
        ladder=pitch_ladder,
    ),
    Criterion(
        "propeller-blade-thickness",
        "Thickness of a propeller blade against the drawing",
        (
            Input("measured", "Measured thickness", "number", "mm", low=0, high=400),
            Input("nominal", "Thickness as drawn", "number", "mm", low=5, high=400),
            _CLASS,
        ),
        SOURCE,
        judge_thickness,
        "Screw propellers of 0.80 to 2.50 m diameter, sections of 5 to 400 mm.",
        "Share and least figure of each class from both sides against public tables of the 1981 edition.",
        ladder=thickness_ladder,
    ),
    Criterion(
        "propeller-edge-loss",
        "Section length lost at the edges of a blade",
        (
            Input("loss", "Length lost at the edges", "number", "mm", low=0, high=500),
            Input("length", "Section length as drawn", "number", "mm", low=100, high=3000),
            _CLASS,
        ),
        SOURCE,
        judge_edge,
        "Screw propellers of 0.80 to 2.50 m diameter, sections of 100 to 3000 mm.",
        "Share and least figure of each class from both sides against public tables of the 1981 edition.",
        ladder=edge_ladder,
    ),
    Criterion(
        "pitch-change-time",
        "Time from full pitch ahead to full pitch astern",
        (Input("time", "Time taken", "number", "s", low=1, high=600),),
        PITCH_CHANGE,
        judge_change,
        "Controllable pitch propellers, 1 to 600 s.",
        "The limit from both sides; trade guidance, no published example exists.",
        profile=TIME,
        ladder=change_ladder,
    ),
)
