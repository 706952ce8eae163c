"""Wear of stern bearings, by lubrication. The class and the maker decide, so that every limit is a profile to be set."""

from collections.abc import Mapping

from inspector.criteria.judgement import Criterion, Input, Judgement
from inspector.criteria.ladder import Ladder, beyond, stairs, to
from inspector.criteria.profiles import Limit, Profile
from inspector.criteria.source import Source
from inspector.criteria.telling import told
from inspector.quantities import show

WATER = Source(
    "Clearance of water-lubricated stern bearings, machinery aft",
    "one society's old survey limits, first size quoted in public, others recalled",
    "4.8, 5.6 and 6.35 mm",
    "memory",
)
OIL = Source("Wear-down of oil-lubricated stern bearings", "no publisher", "growth since new, 0.3 and 0.5 mm", "common practice")
SMALL, MIDDLE = 230, 305  # mm, upper ends of the two smaller sizes of shaft

CLEARANCE = Profile(
    "Water-lubricated stern bearings, machinery aft",
    (
        Limit("small", "shaft up to 230 mm, at most", "mm", 4.8, 0.5, 20),
        Limit("middle", "shaft up to 305 mm, at most", "mm", 5.6, 0.5, 20),
        Limit("large", "larger shaft, at most", "mm", 6.35, 0.5, 20),
    ),
    WATER,
)
WEAR = Profile(
    "Oil-lubricated stern bearings, growth since new",
    (
        Limit("watch", "watch above", "mm", 0.3, 0.05, 10),
        Limit("act", "act above", "mm", 0.5, 0.05, 10),
    ),
    OIL,
)


def clearance_limit(diameter: float, limits: Mapping[str, float]) -> float:
    """Return the most clearance [mm] allowed for a shaft [mm]; an end of a size belongs to the smaller size."""
    return limits["small" if diameter <= SMALL else "middle" if diameter <= MIDDLE else "large"]


def clearance_ladder(diameter: float, limits: Mapping[str, float]) -> Ladder:
    """The two bands of clearance [mm] for a shaft diameter [mm]."""
    return stairs(
        "mm",
        to(clearance_limit(diameter, limits), "within the limit", "good", "within it"),
        beyond("over the limit", "failed", "over it: the bearing is due for renewal"),
    )


def judge_clearance(clearance: float, diameter: float, limits: Mapping[str, float]) -> Judgement:
    """Judge the clearance of a water-lubricated stern bearing, machinery aft.

    Parameters
    ----------
    clearance [mm], 0 to 30, as the poker gauge and the datum plate give it; diameter [mm] of the shaft, 100 to 600; limits : the profile.

    References
    ----------
    One society's limits: to 230 mm 4.8 mm (quoted in public), to 305 mm 5.6 mm and above 6.35 mm (memory). Not for rubber.
    """
    limit = clearance_limit(diameter, limits)
    notes = (
        "Machinery amidships is allowed more, rubber bearings have the maker's own limits.",
        "Compare with the datum plate and the reading after the last fitting; a change says more than one figure.",
    )
    return told(
        "stern-bearing-clearance",
        clearance_ladder(diameter, limits).step(clearance),
        f"A clearance of {show(clearance, 'mm')} on a shaft of {show(diameter, 'mm')}, against at most {show(limit, 'mm')},",
        (clearance, "mm", limit),
        WATER,
        notes,
    )


def wear_ladder(limits: Mapping[str, float]) -> Ladder:
    """The three bands of wear since new [mm] of an oil-lubricated bearing."""
    return stairs(
        "mm",
        to(limits["watch"], "as expected", "good", "as expected of a bearing in use"),
        to(limits["act"], "watch", "fair", "to be watched, with oil samples for metal and water"),
        beyond("act", "poor", "to be investigated before the next docking interval is agreed"),
    )


def judge_wear(wear: float, limits: Mapping[str, float]) -> Judgement:
    """Judge how far an oil-lubricated stern bearing has worn down since new.

    Parameters
    ----------
    wear [mm], growth of the wear-down reading since new, 0 to 20; limits : the profile.

    References
    ----------
    Common practice: investigate at 0.3 to 0.5 mm of growth. The maker's figure wins.
    """
    against = f"watch above {show(limits['watch'], 'mm')} and act above {show(limits['act'], 'mm')}"
    notes = ("Limit by the maker; a rule of thumb of 3 % of the shaft diameter is far wider and is not used here.",)
    return told(
        "stern-tube-wear",
        wear_ladder(limits).step(wear),
        f"A growth of wear-down of {show(wear, 'mm')}, against {against},",
        (wear, "mm", limits["act"]),
        OIL,
        notes,
    )


CRITERIA = (
    Criterion(
        "stern-bearing-clearance",
        "Clearance of a water-lubricated stern bearing",
        (Input("clearance", "Clearance", "number", "mm", low=0, high=30), Input("diameter", "Diameter of the shaft", "number", "mm", low=100, high=600)),
        WATER,
        judge_clearance,
        "Water-lubricated bearings other than rubber, machinery aft, shafts of 100 to 600 mm.",
        "Each size of shaft and each limit from both sides; the table is mostly recalled.",
        profile=CLEARANCE,
        ladder=clearance_ladder,
    ),
    Criterion(
        "stern-tube-wear",
        "Wear-down of an oil-lubricated stern bearing since new",
        (Input("wear", "Growth since new", "number", "mm", low=0, high=20),),
        OIL,
        judge_wear,
        "Oil-lubricated stern bearings whose first reading is known, growth of 0 to 20 mm.",
        "Both limits from both sides; trade guidance, no published example exists.",
        profile=WEAR,
        ladder=wear_ladder,
    ),
)
