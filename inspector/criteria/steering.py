"""Steering: how fast the gear puts the rudder over, the play of its bearings, the truth of its indicator.

A time taken alongside bears no load of water: it can show a slow gear, it cannot show a quick one.
"""

from collections.abc import Mapping

from inspector.criteria.exact import exact
from inspector.criteria.judgement import Criterion, Input, Judgement
from inspector.criteria.ladder import Ladder, beyond, stairs, to
from inspector.criteria.profiles import Limit, Profile
from inspector.criteria.source import Source
from inspector.criteria.telling import told
from inspector.quantities import show

SOLAS = Source(
    "SOLAS chapter II-1, regulation 29, steering gear", "as given in a national act and public notes", "29.3 and 29.4, times of main and auxiliary gear", "seen"
)
BEARING = Source(
    "Survey guidance of one classification society, rudders", "as shown by a public rules site", "section 3, 3.1.4, greatest bearing clearance", "seen"
)
INDICATOR = Source("Error of a rudder angle indicator", "no publisher", "1° amidships, 2.5° elsewhere", "common practice")

MAIN, AUXILIARY = 28.0, 60.0  # s
LEAST_SPEED = 7.0  # kn, of the auxiliary trial
UNLOADED = ("under way, less", "alongside")
MAIN_CONDITIONS = ("trial draught, full ahead", *UNLOADED)
AUXILIARY_CONDITIONS = ("trial draught, asked speed", *UNLOADED)
INDICATOR_ERROR = {"amidships": 1.0, "elsewhere": 2.5}  # deg
PLAY = Profile(
    "Rudder bearings, one society's guidance",
    (
        Limit("base", "allowed for any size", "mm", 5, 0.5, 15),
        Limit("share", "and of the diameter", "%", 0.2, 0, 2),
    ),
    BEARING,
)
LOADED = "The rule's trial is at the deepest seagoing draught, rudder fully immersed, at the speed it asks for; each pump alone and both together."


def _time_ladder(limit: float, full: bool) -> Ladder:
    quick = ("within the limit", "good", "within it") if full else ("no load, no pass", None, "within it, but without the load that the rule asks for: no pass")
    slow = "over it" if full else "over it even without the full load of water"
    return stairs("s", to(limit, *quick), beyond("over the limit", "failed", slow))


def main_ladder(condition: str) -> Ladder:
    """Two bands of the time [s] from 35° on one side to 30° on the other. SOLAS II-1/29.3 (seen)."""
    return _time_ladder(MAIN, condition not in UNLOADED)


def judge_main(time: float, condition: str) -> Judgement:
    """Judge the main steering gear's time from 35° on one side to 30° on the other.

    Parameters
    ----------
    time [s], 1 to 600; condition : trial draught at full ahead, under way with less, or alongside.

    References
    ----------
    SOLAS II-1/29.3: not more than 28 s at the deepest seagoing draught and maximum ahead service speed (seen).
    """
    return told(
        "steering-main-time",
        main_ladder(condition).step(time),
        f"A time of {show(time, 's')} for the main gear ({condition}), against at most {show(MAIN, 's')} from 35° to 30°,",
        (time, "s", MAIN),
        SOLAS,
        (LOADED,),
    )


def auxiliary_speed(service_speed: float) -> float:
    """Return the speed [kn] that the auxiliary gear's trial asks of a ship's service speed [kn]: half, at least 7. SOLAS II-1/29.4 (seen).

    Examples
    --------
    >>> auxiliary_speed(14), auxiliary_speed(16)
    (7.0, 8.0)
    """
    return max(LEAST_SPEED, service_speed / 2)


def _full_trial(condition: str, service_speed: float | None, trial_speed: float | None) -> bool:
    asked = auxiliary_speed(service_speed) if service_speed is not None else LEAST_SPEED
    return condition not in UNLOADED and (trial_speed is None or trial_speed >= asked)


def auxiliary_ladder(condition: str, service_speed: float | None, trial_speed: float | None) -> Ladder:
    """Two bands of the time [s] from 15° on one side to 15° on the other. SOLAS II-1/29.4 (seen)."""
    return _time_ladder(AUXILIARY, _full_trial(condition, service_speed, trial_speed))


def judge_auxiliary(time: float, condition: str, service_speed: float | None = None, trial_speed: float | None = None) -> Judgement:
    """Judge the auxiliary steering gear's time from 15° on one side to 15° on the other.

    Parameters
    ----------
    time [s], 1 to 600; condition : trial draught at the asked speed, under way with less, or alongside; service_speed, trial_speed [kn], 0 to 40.

    Notes
    -----
    A trial below half of the service speed or below 7 kn counts as one with less load.

    References
    ----------
    SOLAS II-1/29.4: not more than 60 s at half of the maximum ahead service speed or 7 kn, whichever is greater (seen).
    """
    asked = None if service_speed is None else auxiliary_speed(service_speed)
    speed = (f"The trial speed asked for is {show(asked, 'kn')}.",) if asked is not None else ("Half of the service speed or 7 kn, whichever is greater.",)
    return told(
        "steering-auxiliary-time",
        auxiliary_ladder(condition, service_speed, trial_speed).step(time),
        f"A time of {show(time, 's')} for the auxiliary gear ({condition}), against at most {show(AUXILIARY, 's')} from 15° to 15°,",
        (time, "s", AUXILIARY),
        SOLAS,
        (*speed, LOADED),
    )


def bearing_limit(diameter: float, limits: Mapping[str, float]) -> float:
    """Return the most clearance [mm] of a rudder bearing for a diameter [mm]: 5 + 0.002 D as shipped.

    Examples
    --------
    >>> bearing_limit(500, PLAY.values)
    6.0
    """
    return float(exact(limits["base"]) + exact(limits["share"]) * exact(diameter) / 100)


def bearing_ladder(diameter: float, limits: Mapping[str, float]) -> Ladder:
    """Two bands of rudder bearing clearance [mm]. One society's survey guidance (seen)."""
    return stairs(
        "mm",
        to(bearing_limit(diameter, limits), "within the limit", "good", "within it"),
        beyond("over the limit", "poor", "over it: bush or liner is due for renewal"),
    )


def judge_bearing(clearance: float, diameter: float, limits: Mapping[str, float]) -> Judgement:
    """Judge the clearance of a rudder stock or pintle bearing.

    Parameters
    ----------
    clearance [mm], 0 to 40, across the diameter; diameter [mm] of stock or pintle over the liner, 50 to 800; limits : the profile.

    References
    ----------
    One society's survey guidance, for metal and for synthetic bushes where the maker says nothing: 5 + 0.002 D mm (seen).
    """
    limit = bearing_limit(diameter, limits)
    notes = (
        "A broad guide: the maker's figure for synthetic bushes and the drawing go first.",
        "Taken in dock by feeler gauge, four ways round, with the rudder amidships.",
    )
    return told(
        "rudder-bearing-clearance",
        bearing_ladder(diameter, limits).step(clearance),
        f"A clearance of {show(clearance, 'mm')} on a diameter of {show(diameter, 'mm')}, against at most {show(limit, 'mm')},",
        (clearance, "mm", limit),
        BEARING,
        notes,
    )


def indicator_ladder(position: str) -> Ladder:
    """Two bands of the error of a rudder indicator [deg]."""
    return stairs(
        "deg",
        to(INDICATOR_ERROR[position], "true enough", "good", "true enough"),
        beyond("untrue", "poor", "more than usual: have it adjusted"),
    )


def judge_indicator(error: float, position: str) -> Judgement:
    """Judge the difference between a rudder indicator and the rudder itself.

    Parameters
    ----------
    error [deg], without sign, 0 to 70; position : amidships or elsewhere.

    References
    ----------
    Common practice: within 1° amidships and 2.5° elsewhere.
    """
    limit = INDICATOR_ERROR[position]
    return told(
        "rudder-indicator",
        indicator_ladder(position).step(error),
        f"An error of {show(error, 'deg')} {position}, against at most {show(limit, 'deg')},",
        (error, "deg", limit),
        INDICATOR,
        ("Read at the stock itself while another reads the bridge, over the whole travel.",),
    )


_TIME = Input("time", "Time taken", "number", "s", low=1, high=600)
_SPEED = {"kind": "number", "unit": "kn", "optional": True, "low": 0, "high": 40}

CRITERIA = (
    Criterion(
        "steering-main-time",
        "Time of the main steering gear, 35° to 30°",
        (_TIME, Input("condition", "How it was taken", "choice", choices=MAIN_CONDITIONS)),
        SOLAS,
        judge_main,
        "Main steering gear of rudders, one side to the other, 1 to 600 s.",
        "The limit from both sides in each condition; the sentence of the rule as public texts give it.",
        ladder=main_ladder,
    ),
    Criterion(
        "steering-auxiliary-time",
        "Time of the auxiliary steering gear, 15° to 15°",
        (
            _TIME,
            Input("condition", "How it was taken", "choice", choices=AUXILIARY_CONDITIONS),
            Input("service_speed", "Service speed", **_SPEED),
            Input("trial_speed", "Speed at the trial", **_SPEED),
        ),
        SOLAS,
        judge_auxiliary,
        "Auxiliary steering gear of rudders, one side to the other, 1 to 600 s.",
        "The limit and the asked speed from both sides; the sentence of the rule as public texts give it.",
        ladder=auxiliary_ladder,
    ),
    Criterion(
        "rudder-bearing-clearance",
        "Clearance of a rudder bearing",
        (
            Input("clearance", "Clearance", "number", "mm", low=0, high=40),
            Input("diameter", "Stock or pintle over the liner", "number", "mm", low=50, high=800),
        ),
        BEARING,
        judge_bearing,
        "Metal and synthetic bushes of rudder stocks and pintles of 50 to 800 mm.",
        "The limit at three diameters from both sides by the published formula.",
        profile=PLAY,
        ladder=bearing_ladder,
    ),
    Criterion(
        "rudder-indicator",
        "Error of a rudder angle indicator",
        (Input("error", "Error, without sign", "number", "deg", low=0, high=70), Input("position", "Where", "choice", choices=tuple(INDICATOR_ERROR))),
        INDICATOR,
        judge_indicator,
        "Rudder angle indicators, errors of 0 to 70°.",
        "Both limits from both sides; trade guidance, no published example exists.",
        ladder=indicator_ladder,
    ),
)
