"""Vibration that people feel in cabins and at work: weighted values, told as comfort and never as a reason to condemn."""

from inspector.criteria.judgement import Criterion, Input, Judgement
from inspector.criteria.ladder import Ladder, beyond, stairs, to
from inspector.criteria.source import Source
from inspector.criteria.telling import told
from inspector.quantities import show

WEIGHTED = Source("ISO 6954, habitability on passenger and merchant ships", "2000", "table 1, 1 to 80 Hz, frequency-weighted", "seen")
PEAK = Source("ISO 6954, habitability (older edition)", "1984", "peak values above 5 Hz", "seen")
COMFORT = Source(
    "One society's limits for yachts and crew spaces, weighted by ISO 20283-5", "as published in its rules", "tables of acceptance numerals", "seen"
)

# space -> comments unlikely up to, likely above: velocity in mm/s, acceleration in m/s²
SPACES = {
    "passenger cabin": ((2.0, 4.0), (0.0715, 0.145)),
    "crew accommodation": ((3.0, 6.0), (0.107, 0.214)),
    "work space": ((4.0, 8.0), (0.143, 0.286)),
}
PEAKS = (4.0, 9.0)  # mm/s, single amplitude
# space -> ends of the acceptance numerals 1, 2 and 3, or one limit
NUMERALS = {
    "yacht cabin or lounge": (1.8, 2.0, 2.5),
    "yacht public space": (2.5, 2.9, 3.3),
    "yacht open deck": (2.5, 3.2, 3.8),
    "crew accommodation or bridge": (3.5,),
    "work space": (5.0,),
}
AT_SEA = ("Name load, speed, sea (to state 3) and depth (five draughts or more); otherwise the reading is indicative.",)


def _comments(unit: str, ends: tuple[float, float]) -> Ladder:
    return stairs(
        unit,
        to(ends[0], "comments unlikely", "good", "so low that adverse comments are unlikely"),
        to(ends[1], "usual on ships", "fair", "as is common on ships"),
        beyond("comments likely", "poor", "so high that adverse comments are likely"),
    )


def velocity_ladder(space: str) -> Ladder:
    """The bands of weighted velocity [mm/s] in a space. ISO 6954:2000, table 1 (seen)."""
    return _comments("mm/s", SPACES[space][0])


def judge_velocity(velocity: float, space: str) -> Judgement:
    """Judge the weighted velocity that people feel in a space.

    Parameters: velocity [mm/s], frequency-weighted r.m.s., 1 to 80 Hz; space : one of SPACES.

    References: ISO 6954:2000, table 1 (seen).
    """
    limit = SPACES[space][0][1]
    said = f"{show(velocity, 'mm/s')} in a {space}, where adverse comments are likely above {show(limit, 'mm/s')},"
    return told("habitability-vibration", velocity_ladder(space).step(velocity), said, (velocity, "mm/s", limit), WEIGHTED, AT_SEA)


def acceleration_ladder(space: str) -> Ladder:
    """The bands of weighted acceleration [m/s²] in a space. ISO 6954:2000, table 1 (seen)."""
    return _comments("m/s²", SPACES[space][1])


def judge_acceleration(acceleration: float, space: str) -> Judgement:
    """Judge the weighted acceleration that people feel in a space.

    Parameters: acceleration [m/s²], frequency-weighted r.m.s., 1 to 80 Hz (100 mm/s² are 0.1 m/s²); space : one of SPACES.

    References: ISO 6954:2000, table 1 (seen).
    """
    limit = SPACES[space][1][1]
    said = f"{show(acceleration, 'm/s²')} in a {space}, where adverse comments are likely above {show(limit, 'm/s²')},"
    return told("habitability-acceleration", acceleration_ladder(space).step(acceleration), said, (acceleration, "m/s²", limit), WEIGHTED, AT_SEA)


def peak_ladder() -> Ladder:
    """The bands of the peak velocity [mm/s] of the older edition. ISO 6954:1984 (seen)."""
    return _comments("mm/s", PEAKS)


def judge_peak(peak: float) -> Judgement:
    """Judge a peak velocity by the older edition, to which a vessel may have been built.

    Parameters: peak [mm/s], single amplitude above 5 Hz (not r.m.s.: of a pure sine the peak is 1.414 times as much).

    References: ISO 6954:1984 (seen).
    """
    said = f"A peak of {show(peak, 'mm/s')}, where adverse comments are likely above {show(PEAKS[1], 'mm/s')} by the older edition,"
    return told("habitability-peak", peak_ladder().step(peak), said, (peak, "mm/s", PEAKS[1]), PEAK, AT_SEA)


def comfort_ladder(space: str) -> Ladder:
    """The bands of weighted velocity [mm/s] by one society's acceptance numerals (seen)."""
    ends = NUMERALS[space]
    over = beyond("over the limit", "poor", "over it")
    if len(ends) == 1:
        return stairs("mm/s", to(ends[0], "within the limit", "good", "within it"), over)
    ratings = ("good", "good", "fair")
    return stairs(
        "mm/s",
        *(
            to(end, f"acceptance numeral {number}", rating, f"good enough for acceptance numeral {number}")
            for number, (end, rating) in enumerate(zip(ends, ratings, strict=True), 1)
        ),
        over,
    )


def judge_comfort(velocity: float, space: str) -> Judgement:
    """Judge the weighted velocity in a space by one society's limits for yachts and crew spaces.

    Parameters: velocity [mm/s], weighted r.m.s. by ISO 20283-5; space : one of NUMERALS.

    References: one society's rules, tables of acceptance numerals (seen); ISO 20283-5's own table was not read.
    """
    limit = NUMERALS[space][-1]
    said = f"{show(velocity, 'mm/s')} in a {space}, against {show(limit, 'mm/s')} at most,"
    notes = ("Above the propellers that society allows 0.3 mm/s more.", *AT_SEA)
    return told("comfort-vibration", comfort_ladder(space).step(velocity), said, (velocity, "mm/s", limit), COMFORT, notes)


def _velocity(name: str, label: str) -> Input:
    return Input(name, label, "number", "mm/s", low=0, high=200)


_SPACE = Input("space", "Kind of space", "choice", choices=tuple(SPACES))
CRITERIA = (
    Criterion(
        "habitability-vibration",
        "Vibration felt in a space, velocity",
        (_velocity("velocity", "Weighted velocity, r.m.s."), _SPACE),
        WEIGHTED,
        judge_velocity,
        "Spaces of passenger and merchant ships at sea, 1 to 80 Hz, 0 to 200 mm/s.",
        "Both ends of each published row from both sides.",
        ladder=velocity_ladder,
    ),
    Criterion(
        "habitability-acceleration",
        "Vibration felt in a space, acceleration",
        (Input("acceleration", "Weighted acceleration, r.m.s.", "number", "m/s²", low=0, high=10), _SPACE),
        WEIGHTED,
        judge_acceleration,
        "Spaces of passenger and merchant ships at sea, 1 to 80 Hz, 0 to 10 m/s².",
        "Both ends of each published row from both sides.",
        ladder=acceleration_ladder,
    ),
    Criterion(
        "habitability-peak",
        "Vibration felt, peak by the older edition",
        (_velocity("peak", "Peak velocity, single amplitude"),),
        PEAK,
        judge_peak,
        "Peak values above 5 Hz, 0 to 200 mm/s.",
        "Both published values from both sides.",
        ladder=peak_ladder,
    ),
    Criterion(
        "comfort-vibration",
        "Vibration felt, one society's comfort limits",
        (_velocity("velocity", "Weighted velocity, r.m.s."), Input("space", "Kind of space", "choice", choices=tuple(NUMERALS))),
        COMFORT,
        judge_comfort,
        "Yacht and crew spaces, voyages of a day or more, 0 to 200 mm/s.",
        "Every published limit from both sides.",
        ladder=comfort_ladder,
    ),
)
