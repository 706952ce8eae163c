"""Vibration of machinery, broadband r.m.s. velocity on parts that do not turn.

Two tables that must not be mixed: rotating machines (groups and supports) and reciprocating engines (classes). Wrong
versions of the first circulate, so its title and edition are printed with every judgement.
"""

from inspector.criteria.judgement import Criterion, Input, Judgement
from inspector.criteria.ladder import Ladder, Step, beyond, stairs, to
from inspector.criteria.source import Source
from inspector.criteria.telling import told
from inspector.quantities import show

MACHINE = Source("ISO 20816-3 (formerly ISO 10816-3)", "2022 (2009)", "zone boundaries, groups 1 and 2", "memory")
ENGINE = Source("ISO 10816-6", "1995", "vibration severity grades and zones, classes 1 to 7", "memory")

# (group, support) -> upper ends of zones A, B, C in mm/s r.m.s.
ZONES = {
    ("1", "rigid"): (2.3, 4.5, 7.1), ("1", "flexible"): (3.5, 7.1, 11.0),
    ("2", "rigid"): (1.4, 2.8, 4.5), ("2", "flexible"): (2.3, 4.5, 7.1),
}
# grade -> its upper end in mm/s r.m.s.; above the last the grade is 180
GRADES = {1.1: 1.12, 1.8: 1.78, 2.8: 2.82, 4.5: 4.46, 7.1: 7.07, 11: 11.2, 18: 17.8, 28: 28.2, 45: 44.6, 71: 70.7,
          112: 112.0}
TOP_GRADE = 180
VELOCITY_ENDS = tuple(GRADES.values())
# the same grades by displacement (µm) and acceleration (m/s²)
DISPLACEMENT_ENDS = (17.8, 28.3, 44.8, 71.0, 113, 178, 283, 448, 710, 1125, 1784)
ACCELERATION_ENDS = (1.76, 2.79, 4.42, 7.01, 11.1, 17.6, 27.9, 44.2, 70.1, 111, 176)
# class -> highest grade of zones A and B, highest grade of zone C
CLASSES = {"1": (4.5, 7.1), "2": (7.1, 11), "3": (11, 18), "4": (18, 28), "5": (28, 45), "6": (45, 71), "7": (71, 112)}

MEANINGS = {
    "zone A": ("good", "as of a newly commissioned machine"),
    "zone B": ("good", "fit for unrestricted long-term running"),
    "zone A or B": ("good", "fit for unrestricted long-term running"),
    "zone C": ("poor", "fit for a limited time only, until a repair"),
    "zone D": ("failed", "likely to damage the machine"),
}
BOUNDARY = "A value on a boundary belongs to the better zone: our own choice."
STEP = "A change of a quarter of the end of zone B since the baseline matters in any zone; ask for the baseline."


def zone_ladder(unit: str, ends: tuple[float, ...], zones: tuple[str, ...] = ("zone A", "zone B", "zone C", "zone D")) -> Ladder:
    """Zones by their upper ends, each end in the better zone."""
    return stairs(unit, *(to(end, zone, *MEANINGS[zone]) for end, zone in zip(ends, zones, strict=False)), beyond(zones[-1], *MEANINGS[zones[-1]]))


def in_zone(step: Step) -> str:
    """What stands between a sentence's subject and a zone's meaning."""
    return f"lies in {step.band}:"


def machine_ladder(group: str, support: str) -> Ladder:
    """The zones of a rotating machine's velocity [mm/s r.m.s.]. ISO 20816-3:2022 (memory)."""
    return zone_ladder("mm/s", ZONES[group, support])


def severity_grade(velocity: float, displacement: float | None = None, acceleration: float | None = None) -> float:
    """Return the severity grade: the worst of velocity [mm/s], displacement [µm] and acceleration [m/s²], all r.m.s. ISO 10816-6:1995 (memory).

    Examples
    --------
    >>> severity_grade(9), severity_grade(9, displacement=300)
    (11, 28)
    """
    read = ((velocity, VELOCITY_ENDS), (displacement, DISPLACEMENT_ENDS), (acceleration, ACCELERATION_ENDS))
    grades = (*GRADES, TOP_GRADE)
    return max(grades[sum(value > end for end in ends)] for value, ends in read if value is not None)


def engine_ladder(machine_class: str, displacement: float | None = None, acceleration: float | None = None) -> Ladder:
    """The zones of an engine's velocity [mm/s r.m.s.], none better than what displacement and acceleration already say."""
    long_term, limited = CLASSES[machine_class]
    others = severity_grade(0, displacement, acceleration)
    first = long_term if others <= long_term else limited if others <= limited else TOP_GRADE
    zones = tuple((GRADES[grade], zone) for grade, zone in ((long_term, "zone A or B"), (limited, "zone C")) if grade >= first)
    return zone_ladder("mm/s", tuple(end for end, _ in zones), (*(zone for _, zone in zones), "zone D"))


def judge_machine(velocity: float, group: str, support: str) -> Judgement:
    """Judge the vibration of a rotating machine at its worst bearing and direction.

    Parameters
    ----------
    velocity [mm/s r.m.s.], 10 to 1000 Hz; group : 1 (above 300 kW) or 2 (15 to 300 kW); support : rigid or flexible.

    References
    ----------
    ISO 20816-3:2022, in place of ISO 10816-3:2009 (memory). Not for machines driven by or being engines.
    """
    step, (_, unrestricted, limited) = machine_ladder(group, support).step(velocity), ZONES[group, support]
    said = (f"{show(velocity, 'mm/s')} r.m.s. on a group {group} machine on {support} supports, against zone C "
                f"above {show(unrestricted, 'mm/s')} and zone D above {show(limited, 'mm/s')},")
    notes = (BOUNDARY, STEP, "Not for engines, nor for alternators driven by them; the worst bearing counts.")
    return told("machine-vibration", step, said, (velocity, "mm/s", limited), MACHINE, notes, verb=in_zone(step))


def judge_engine(velocity: float, machine_class: str, displacement: float | None = None, acceleration: float | None = None) -> Judgement:
    """Judge the vibration of a reciprocating engine on its structure: the worst of the quantities read.

    Parameters
    ----------
    velocity [mm/s r.m.s.], 10 to 250 Hz or 2 to 1000 Hz; machine_class : 1 to 7, by type and mounting of the engine;
    displacement [µm r.m.s.], 2 to 10 Hz; acceleration [m/s² r.m.s.], 250 to 1000 Hz; both optional.

    References
    ----------
    ISO 10816-6:1995 (memory).
    """
    step, limited = engine_ladder(machine_class, displacement, acceleration).step(velocity), CLASSES[machine_class][1]
    limit = GRADES[limited]
    read = [show(velocity, "mm/s"), *(show(value, unit) for value, unit in ((displacement, "µm"), (acceleration, "m/s²")) if value is not None)]
    verb = "is" if len(read) == 1 else "are, by the worst of them,"
    said = (f"{' and '.join(read)} r.m.s. {verb} severity grade {severity_grade(velocity, displacement, acceleration):g}; for class "
                f"{machine_class}, where zone D begins above {show(limit, 'mm/s')}, it")
    unasked = ("Displacement and acceleration may give a worse grade; not both were read.",) if None in (displacement, acceleration) else ()
    notes = (BOUNDARY, *unasked, "The class is chosen by type and mounting; class 5 is common for marine engines (common practice).")
    return told("engine-vibration", step, said, (velocity, "mm/s", limit), ENGINE, notes, verb=in_zone(step))


_VELOCITY = Input("velocity", "Vibration velocity, r.m.s.", "number", "mm/s", low=0, high=500)

CRITERIA = (
    Criterion(
        "machine-vibration", "Vibration of a rotating machine",
        (_VELOCITY, Input("group", "Machine group", "choice", choices=("1", "2")),
         Input("support", "Kind of support", "choice", choices=("rigid", "flexible"))),
        MACHINE, judge_machine,
        "Rotating machines above 15 kW, 120 to 30 000 r/min, not driven by or being engines; 0 to 500 mm/s.",
        "Every boundary of the recalled table from both sides; no trustworthy public copy was found.",
        ladder=machine_ladder,
    ),
    Criterion(
        "engine-vibration", "Vibration of a reciprocating engine",
        (_VELOCITY, Input("machine_class", "Class of machine", "choice", choices=tuple(CLASSES)),
         Input("displacement", "Vibration displacement, r.m.s.", "number", "µm", optional=True, low=0, high=50_000),
         Input("acceleration", "Vibration acceleration, r.m.s.", "number", "m/s²", optional=True, low=0, high=5000)),
        ENGINE, judge_engine,
        "Reciprocating engines above 100 kW, measured on the structure; 0 to 500 mm/s.",
        "The ladder of grades against its own law (each step 10 to the 0.2), cases by our own reading; table recalled.",
        ladder=engine_ladder,
    ),
)
