"""Vibration of reciprocating engines on their structure, by grades of three quantities.

Not to be mixed with the tables of rotating machines, pumps, fans and generating sets, which only
compare (``checklists/criteria/vibration.toml``).
"""

from inspector.criteria.core.band_judgement import judge_by_band
from inspector.criteria.core.bands import Band, Bands, bands_of, beyond, to
from inspector.criteria.core.criterion import Criterion
from inspector.criteria.core.judgement import Judgement
from inspector.criteria.core.source import Source
from inspector.values.field import Field, number_field
from inspector.values.formatting import show

SOURCE = Source.recalled(
    "ISO 10816-6", "vibration severity grades and zones, classes 1 to 7", edition="1995"
)

# Grade -> its upper end in mm/s r.m.s.; above the last one the grade is 180.
GRADES = {
    1.1: 1.12,
    1.8: 1.78,
    2.8: 2.82,
    4.5: 4.46,
    7.1: 7.07,
    11: 11.2,
    18: 17.8,
    28: 28.2,
    45: 44.6,
    71: 70.7,
    112: 112.0,
}
TOP_GRADE = 180
VELOCITY_ENDS = tuple(GRADES.values())
# The same grades by displacement (µm) and acceleration (m/s²).
DISPLACEMENT_ENDS = (17.8, 28.3, 44.8, 71.0, 113, 178, 283, 448, 710, 1125, 1784)
ACCELERATION_ENDS = (1.76, 2.79, 4.42, 7.01, 11.1, 17.6, 27.9, 44.2, 70.1, 111, 176)
# Class -> highest grade of zones A and B, highest grade of zone C.
CLASSES = {
    "1": (4.5, 7.1),
    "2": (7.1, 11),
    "3": (11, 18),
    "4": (18, 28),
    "5": (28, 45),
    "6": (45, 71),
    "7": (71, 112),
}
LONG_TERM = ("zone A or B", "good", "fit for unrestricted long-term running")
LIMITED = ("zone C", "poor", "fit for a limited time only, until a repair")
DAMAGING = ("zone D", "failed", "likely to damage the machine")
BOUNDARY = "A value on a boundary belongs to the better zone: our own choice."
NOT_BOTH_READ = "Displacement and acceleration may give a worse grade; not both were read."
CLASS_CHOICE = (
    "The class is chosen by type and mounting; class 5 is common for marine engines (common "
    "practice)."
)


def severity_grade(
    velocity: float, displacement: float | None = None, acceleration: float | None = None
) -> float:
    """Return the severity grade, which is the worst of three quantities.

    Parameters
    ----------
    velocity : float
        [mm/s r.m.s.]
    displacement : float, optional
        [µm r.m.s.]
    acceleration : float, optional
        [m/s² r.m.s.]

    Returns
    -------
    float
        One of GRADES, or TOP_GRADE.

    References
    ----------
    ISO 10816-6:1995 (*from memory*).

    Examples
    --------
    >>> severity_grade(9), severity_grade(9, displacement=300)
    (11, 28)
    """
    grades = [_grade(velocity, VELOCITY_ENDS)]
    if displacement is not None:
        grades.append(_grade(displacement, DISPLACEMENT_ENDS))
    if acceleration is not None:
        grades.append(_grade(acceleration, ACCELERATION_ENDS))
    return max(grades)


def _grade(value: float, ends: tuple[float, ...]) -> float:
    """Return the grade of one quantity by the upper ends of the grades."""
    return (*GRADES, TOP_GRADE)[sum(value > end for end in ends)]


def engine_bands(
    machine_class: str, displacement: float | None = None, acceleration: float | None = None
) -> Bands:
    """Return the zones of an engine's velocity, none better than the other quantities give.

    Parameters
    ----------
    machine_class : str
        One of CLASSES.
    displacement : float, optional
        [µm r.m.s.]
    acceleration : float, optional
        [m/s² r.m.s.]

    Returns
    -------
    Bands
        In mm/s r.m.s.
    """
    long_term, limited = CLASSES[machine_class]
    others = severity_grade(0, displacement, acceleration)
    zones: list[Band] = []
    # A zone that displacement or acceleration has left already is not offered.
    if others <= long_term:
        zones.append(to(GRADES[long_term], *LONG_TERM))
    if others <= limited:
        zones.append(to(GRADES[limited], *LIMITED))
    return bands_of("mm/s", *zones, beyond(*DAMAGING))


def judge_engine(
    velocity: float,
    machine_class: str,
    displacement: float | None = None,
    acceleration: float | None = None,
) -> Judgement:
    """Judge the vibration of a reciprocating engine on its structure.

    Parameters
    ----------
    velocity : float
        [mm/s r.m.s.], 10 to 250 Hz or 2 to 1000 Hz.
    machine_class : str
        1 to 7, by type and mounting of the engine.
    displacement : float, optional
        [µm r.m.s.], 2 to 10 Hz.
    acceleration : float, optional
        [m/s² r.m.s.], 250 to 1000 Hz.

    Returns
    -------
    Judgement

    References
    ----------
    ISO 10816-6:1995 (*from memory*).
    """
    band = engine_bands(machine_class, displacement, acceleration).band_of(velocity)
    limit = GRADES[CLASSES[machine_class][1]]
    read = [show(velocity, "mm/s")]
    if displacement is not None:
        read.append(show(displacement, "µm"))
    if acceleration is not None:
        read.append(show(acceleration, "m/s²"))
    verb = "is" if len(read) == 1 else "are, by the worst of them,"
    grade = severity_grade(velocity, displacement, acceleration)
    zone = f"for class {machine_class}, where zone D begins above {show(limit, 'mm/s')}, it"
    subject = f"{' and '.join(read)} r.m.s. {verb} severity grade {grade:g}; {zone}"
    unread = (NOT_BOTH_READ,) if None in (displacement, acceleration) else ()
    notes = (BOUNDARY, *unread, CLASS_CHOICE)
    reading = (velocity, "mm/s", limit)
    return judge_by_band(band, subject, reading, notes, verb=f"lies in {band.band}:")


def _optional(name: str, label: str, unit: str, high: float) -> Field:
    return number_field(name, label, unit, 0, high, optional=True)


CRITERIA = (
    Criterion(
        "engine-vibration",
        "Vibration of a reciprocating engine",
        (
            number_field("velocity", "Vibration velocity, r.m.s.", "mm/s", 0, 500),
            Field("machine_class", "Class of machine", "choice", choices=tuple(CLASSES)),
            _optional("displacement", "Vibration displacement, r.m.s.", "µm", 50_000),
            _optional("acceleration", "Vibration acceleration, r.m.s.", "m/s²", 5000),
        ),
        SOURCE,
        judge_engine,
        "Reciprocating engines above 100 kW, measured on the structure; 0 to 500 mm/s.",
        "The ladder of grades against its own law (each step 10 to the 0.2), cases by our own "
        "reading; table recalled.",
        bands=engine_bands,
    ),
)
