"""Vibration of machinery, broadband r.m.s. velocity on parts that do not turn.

Two tables that must not be mixed: rotating machines (groups and supports) and reciprocating engines (classes). Wrong
versions of the first circulate, so its title and edition are printed with every judgement.
"""

from inspector.criteria.judgement import Criterion, Input, Judgement, Source
from inspector.quantities import difference, show

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


def machine_zone(velocity: float, group: str, support: str) -> str:
    """Return "zone A" to "zone D" for a rotating machine's velocity [mm/s r.m.s.]. ISO 20816-3:2022 (memory).

    Examples
    --------
    >>> machine_zone(4.5, "2", "rigid"), machine_zone(4.6, "2", "rigid")
    ('zone C', 'zone D')
    """
    return "zone " + "ABCD"[sum(velocity > end for end in ZONES[group, support])]


def severity_grade(velocity: float) -> float:
    """Return the severity grade of a reciprocating machine's velocity [mm/s r.m.s.]. ISO 10816-6:1995 (memory)."""
    return next((grade for grade, end in GRADES.items() if velocity <= end), TOP_GRADE)


def engine_zone(velocity: float, machine_class: str) -> str:
    """Return "zone A or B", "zone C" or "zone D" for an engine's velocity [mm/s r.m.s.]. ISO 10816-6:1995 (memory)."""
    grade = severity_grade(velocity)
    long_term, limited = CLASSES[machine_class]
    return "zone A or B" if grade <= long_term else "zone C" if grade <= limited else "zone D"


def judge_machine(velocity: float, group: str, support: str) -> Judgement:
    """Judge the vibration of a rotating machine at its worst bearing and direction.

    Parameters
    ----------
    velocity [mm/s r.m.s.], 10 to 1000 Hz; group : 1 (above 300 kW) or 2 (15 to 300 kW); support : rigid or flexible.

    References
    ----------
    ISO 20816-3:2022, in place of ISO 10816-3:2009 (memory). Not for machines driven by or being engines.
    """
    zone, (_, unrestricted, limited) = machine_zone(velocity, group, support), ZONES[group, support]
    rating, meaning = MEANINGS[zone]
    sentence = (f"{show(velocity, 'mm/s')} r.m.s. on a group {group} machine on {support} supports, against zone C "
                f"above {show(unrestricted, 'mm/s')} and zone D above {show(limited, 'mm/s')}, lies in {zone}: "
                f"{meaning}.")
    notes = (BOUNDARY, STEP, "Not for engines, nor for alternators driven by them; the worst bearing counts.")
    margin = difference(limited, velocity)
    return Judgement("machine-vibration", zone, rating, velocity, "mm/s", limited, margin, sentence, MACHINE, notes)


def judge_engine(velocity: float, machine_class: str) -> Judgement:
    """Judge the vibration of a reciprocating engine on its structure.

    Parameters
    ----------
    velocity [mm/s r.m.s.], 2 to 1000 Hz; machine_class : 1 to 7, by type and mounting of the engine.

    References
    ----------
    ISO 10816-6:1995 (memory). The grade is the worst of displacement, velocity and acceleration; only one is asked.
    """
    zone, limited = engine_zone(velocity, machine_class), CLASSES[machine_class][1]
    rating, meaning = MEANINGS[zone]
    limit = GRADES[limited]
    sentence = (f"{show(velocity, 'mm/s')} r.m.s. is severity grade {severity_grade(velocity):g}; for class "
                f"{machine_class}, where zone D begins above {show(limit, 'mm/s')}, it lies in {zone}: {meaning}.")
    notes = (BOUNDARY, "Displacement and acceleration may give a worse grade and were not asked for.",
             "The class is chosen by type and mounting; class 5 is common for marine engines (common practice).")
    margin = difference(limit, velocity)
    return Judgement("engine-vibration", zone, rating, velocity, "mm/s", limit, margin, sentence, ENGINE, notes)


_VELOCITY = Input("velocity", "Vibration velocity, r.m.s.", "number", "mm/s", low=0, high=500)

CRITERIA = (
    Criterion(
        "machine-vibration", "Vibration of a rotating machine",
        (_VELOCITY, Input("group", "Machine group", "choice", choices=("1", "2")),
         Input("support", "Kind of support", "choice", choices=("rigid", "flexible"))),
        MACHINE, judge_machine,
        "Rotating machines above 15 kW, 120 to 30 000 r/min, not driven by or being engines; 0 to 500 mm/s.",
        "Every boundary of the recalled table from both sides; no trustworthy public copy was found.",
    ),
    Criterion(
        "engine-vibration", "Vibration of a reciprocating engine",
        (_VELOCITY, Input("machine_class", "Class of machine", "choice", choices=tuple(CLASSES))),
        ENGINE, judge_engine,
        "Reciprocating engines above 100 kW, measured on the structure; 0 to 500 mm/s.",
        "The ladder of grades against its own law (each step 10 to the 0.2), cases by our own reading; table recalled.",
    ),
)
