"""More tables of machinery vibration, each for its own machines: a reading belongs to one of them and never to the mildest.

Velocities are broadband, r.m.s.; of a pure sine the peak is 1.414 times as much.
"""

from inspector.criteria.exact import exact
from inspector.criteria.judgement import Criterion, Input, Judgement
from inspector.criteria.ladder import Ladder, below, beyond, stairs, to
from inspector.criteria.source import Source
from inspector.criteria.telling import told
from inspector.criteria.vibration import BOUNDARY, ZONES, in_zone, zone_ladder
from inspector.quantities import difference, show

CHANGE = Source("ISO 20816-3 (formerly ISO 10816-3)", "2022 (2009)", "change against a baseline, a quarter of zone B's end", "memory")
GENERAL = Source("ISO 10816-1, machines in general (older table)", "annex B, by an instrument seller's public table", "classes I to IV", "seen")
PUMPS = Source("ISO 10816-7, rotodynamic pumps", "2009", "categories I and II", "memory")
PROCESS = Source("ISO 13709 (API 610), centrifugal pumps", "by a public table of limits", "horizontal pumps, overall velocity", "seen")
FANS = Source("ISO 14694, industrial fans", "edition not read", "application BV-3, in service", "memory")
SETS = Source("ISO 8528-9, generating sets driven by engines", "edition not read", "guide values on the alternator", "memory")

CLASSES = {"I": (0.71, 1.8, 4.5), "II": (1.12, 2.8, 7.1), "III": (1.8, 4.5, 11.2), "IV": (2.8, 7.1, 18.0)}
SIZES = ("up to 200 kW", "above 200 kW")
PUMP_ZONES = {("I", SIZES[0]): (2.5, 4.0, 6.6), ("I", SIZES[1]): (3.5, 5.0, 7.6), ("II", SIZES[0]): (3.2, 5.1, 8.5), ("II", SIZES[1]): (4.2, 6.1, 9.5)}
REGIONS = {"preferred": 3.0, "allowable": 3.9}
FAN_LIMITS = {"rigid": (4.5, 7.1, 9.0), "flexible": (6.3, 11.8, 12.5)}  # start-up, alarm, shut-down
ALTERNATOR = (20.0, 28.0)
CAP = exact(1.25)  # times zone B's end, above which no alarm is set
WORST = "The worst bearing and direction counts, never a mean; name load and speed."


def alarm(baseline: float, group: str, support: str) -> float:
    """Return the alarm [mm/s] for a baseline: a quarter of zone B's end above it, capped. ISO 20816-3 (memory).

    Examples
    --------
    >>> alarm(2.0, "1", "flexible"), alarm(8.0, "1", "flexible")
    (3.775, 8.875)
    """
    end = exact(ZONES[group, support][1])
    return float(min(exact(baseline) + end / 4, CAP * end))


def change_ladder(baseline: float, group: str, support: str) -> Ladder:
    """The bands of a velocity [mm/s] beside its baseline. ISO 20816-3 (memory)."""
    quarter = float(exact(ZONES[group, support][1]) / 4)
    return stairs(
        "mm/s",
        below(difference(baseline, quarter), "changed", "fair", "so far below the baseline that something changed"),
        to(alarm(baseline, group, support), "as before", "good", "as before"),
        beyond("alarm", "poor", "a change that matters in any zone"),
    )


def judge_change(velocity: float, baseline: float, group: str, support: str) -> Judgement:
    """Judge the change of a rotating machine's vibration since its baseline.

    Parameters: velocity, baseline [mm/s r.m.s.], same point, load and speed; group : 1 or 2; support : rigid or flexible.

    References: ISO 20816-3 (memory).
    """
    limit = alarm(baseline, group, support)
    said = f"{show(velocity, 'mm/s')} r.m.s. after a baseline of {show(baseline, 'mm/s')}, against an alarm above {show(limit, 'mm/s')},"
    notes = ("Without a baseline there is no alarm: then only the zone counts.", WORST)
    return told("vibration-change", change_ladder(baseline, group, support).step(velocity), said, (velocity, "mm/s", limit), CHANGE, notes)


def _judge_zone(name: str, ladder: Ladder, velocity: float, machine: str, source: Source, *notes: str) -> Judgement:
    step, limit = ladder.step(velocity), ladder.steps[2].upto
    said = (
        f"{show(velocity, 'mm/s')} r.m.s. on a {machine}, where zone C begins above {show(ladder.steps[1].upto, 'mm/s')} and zone D above "
        f"{show(limit, 'mm/s')},"
    )
    return told(name, step, said, (velocity, "mm/s", limit), source, (BOUNDARY, *notes, WORST), verb=in_zone(step))


def general_ladder(machine_class: str) -> Ladder:
    """The zones of the older general table [mm/s]. ISO 10816-1, annex B (seen)."""
    return zone_ladder("mm/s", CLASSES[machine_class])


def judge_general(velocity: float, machine_class: str) -> Judgement:
    """Judge vibration by the older general table, for machines that no newer part covers.

    Parameters: velocity [mm/s r.m.s.]; machine_class : I (to 15 kW), II (to 75 kW), III (large, rigid), IV (large, flexible).

    References: ISO 10816-1, annex B (seen in an instrument seller's public table).
    """
    return _judge_zone(
        "general-vibration",
        general_ladder(machine_class),
        velocity,
        f"class {machine_class} machine",
        GENERAL,
        "An older table; where a part of the series fits the machine, that part governs.",
    )


def pump_ladder(category: str, size: str) -> Ladder:
    """The zones of a rotodynamic pump's velocity [mm/s]. ISO 10816-7:2009 (memory)."""
    return zone_ladder("mm/s", PUMP_ZONES[category, size])


def judge_pump(velocity: float, category: str, size: str) -> Judgement:
    """Judge the vibration of a rotodynamic pump.

    Parameters: velocity [mm/s r.m.s.]; category : I (fire, bilge, steering and other pumps on which safety depends) or II; size : one of SIZES.

    References: ISO 10816-7:2009 (memory).
    """
    return _judge_zone(
        "pump-vibration",
        pump_ladder(category, size),
        velocity,
        f"category {category} pump {size}",
        PUMPS,
        "At 70 to 120 % of the best flow; outside it the end of zone B may be higher.",
    )


def process_ladder(region: str) -> Ladder:
    """The bands of a horizontal pump's velocity [mm/s]. ISO 13709 / API 610 (seen)."""
    return stairs("mm/s", to(REGIONS[region], "within the limit", "good", "within it"), beyond("over the limit", "poor", "over it"))


def judge_process(velocity: float, region: str) -> Judgement:
    """Judge a horizontal centrifugal pump by the strict limit that process plants buy to: poor and never failed in service.

    Parameters: velocity [mm/s r.m.s.]; region : preferred or allowable operating region.

    References: ISO 13709 / API 610 (seen).
    """
    limit = REGIONS[region]
    said = f"{show(velocity, 'mm/s')} r.m.s. in the {region} region, against {show(limit, 'mm/s')},"
    return told("process-pump-vibration", process_ladder(region).step(velocity), said, (velocity, "mm/s", limit), PROCESS, (WORST,))


def fan_ladder(support: str) -> Ladder:
    """The bands of a fan's velocity [mm/s]. ISO 14694, BV-3 (memory)."""
    start, warn, stop = FAN_LIMITS[support]
    return stairs(
        "mm/s",
        to(start, "as put to work", "good", "as of a fan just put to work"),
        to(warn, "watch", "fair", "to be watched"),
        to(stop, "alarm", "poor", "above the alarm"),
        beyond("shut down", "failed", "above the figure at which a fan is shut down"),
    )


def judge_fan(velocity: float, support: str) -> Judgement:
    """Judge the vibration of an industrial fan in service.

    Parameters: velocity [mm/s r.m.s.]; support : rigid or flexible.

    References: ISO 14694, application BV-3 (memory).
    """
    limit = FAN_LIMITS[support][2]
    said = f"{show(velocity, 'mm/s')} r.m.s. on a fan on {support} supports, against shut-down above {show(limit, 'mm/s')},"
    return told("fan-vibration", fan_ladder(support).step(velocity), said, (velocity, "mm/s", limit), FANS, (WORST,))


def alternator_ladder() -> Ladder:
    """The bands of an engine-driven alternator's velocity [mm/s]. ISO 8528-9 (memory)."""
    return stairs(
        "mm/s",
        to(ALTERNATOR[0], "usual", "good", "usual for an alternator that an engine drives"),
        to(ALTERNATOR[1], "in the guide range", "fair", "inside the guide range, where mounts and alignment deserve a look"),
        beyond("above the guide range", "poor", "above the guide range"),
    )


def judge_alternator(velocity: float) -> Judgement:
    """Judge the vibration of an alternator that a reciprocating engine drives.

    Parameters: velocity [mm/s r.m.s.], on the alternator's bearing housing; sets above 100 kW.

    References: ISO 8528-9, guide values of 20 to 28 mm/s (memory, coarse).
    """
    said = f"{show(velocity, 'mm/s')} r.m.s. on the alternator of an engine-driven set, against {show(ALTERNATOR[0], 'mm/s')} to {show(ALTERNATOR[1], 'mm/s')},"
    notes = ("Not to be read against the zones of motors and turbines, which would condemn any engine-driven set.", WORST)
    return told("alternator-vibration", alternator_ladder().step(velocity), said, (velocity, "mm/s", ALTERNATOR[1]), SETS, notes)


def _velocity(name: str = "velocity", label: str = "Vibration velocity, r.m.s.") -> Input:
    return Input(name, label, "number", "mm/s", low=0, high=500)


def _choice(name: str, label: str, *choices: str) -> Input:
    return Input(name, label, "choice", choices=choices)


_SUPPORT = _choice("support", "Kind of support", "rigid", "flexible")
_ENDS = "Every end of the table from both sides"
CRITERIA = (
    Criterion(
        "vibration-change",
        "Change of vibration since the baseline",
        (_velocity(), _velocity("baseline", "Baseline, r.m.s."), _choice("group", "Machine group", "1", "2"), _SUPPORT),
        CHANGE,
        judge_change,
        "Rotating machines above 15 kW with a baseline; 0 to 500 mm/s.",
        "One machine by our own arithmetic on the recalled table.",
        ladder=change_ladder,
    ),
    Criterion(
        "general-vibration",
        "Vibration by the older general table",
        (_velocity(), _choice("machine_class", "Class of machine", *CLASSES)),
        GENERAL,
        judge_general,
        "Machines that no newer part of the series covers; 0 to 500 mm/s.",
        f"{_ENDS}, and the published case of class II at 3.2 mm/s.",
        ladder=general_ladder,
    ),
    Criterion(
        "pump-vibration",
        "Vibration of a rotodynamic pump",
        (_velocity(), _choice("category", "Category", "I", "II"), _choice("size", "Power", *SIZES)),
        PUMPS,
        judge_pump,
        "Rotodynamic pumps above 1 kW at 70 to 120 % of their best flow; 0 to 500 mm/s.",
        f"{_ENDS}; table recalled.",
        ladder=pump_ladder,
    ),
    Criterion(
        "process-pump-vibration",
        "Vibration of a horizontal pump by the process limit",
        (_velocity(), _choice("region", "Operating region", *REGIONS)),
        PROCESS,
        judge_process,
        "Horizontal centrifugal pumps; 0 to 500 mm/s.",
        "Both published limits from both sides.",
        ladder=process_ladder,
    ),
    Criterion(
        "fan-vibration",
        "Vibration of a fan",
        (_velocity(), _SUPPORT),
        FANS,
        judge_fan,
        "Industrial fans in service; 0 to 500 mm/s.",
        f"{_ENDS}; table recalled.",
        ladder=fan_ladder,
    ),
    Criterion(
        "alternator-vibration",
        "Vibration of an engine-driven alternator",
        (_velocity(),),
        SETS,
        judge_alternator,
        "Generating sets above 100 kW driven by reciprocating engines; 0 to 500 mm/s.",
        "Both recalled guide values from both sides.",
        ladder=alternator_ladder,
    ),
)
