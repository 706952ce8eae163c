"""The tables of the stability booklet with a row per displacement, draught or heel."""

from inspector.conversion.core.case import Case
from inspector.conversion.core.particulars import Table, column
from inspector.conversion.core.span import ConversionError
from inspector.conversion.stability.booklet.hydrostatic_table import HydrostaticTable
from inspector.conversion.stability.levers.cross_curves import CrossCurve, CrossCurves
from inspector.conversion.stability.levers.righting_levers import RightingLevers

# The heels at which booklets print KN.
HEELS = (5, 10, 12, 15, 20, 25, 30, 35, 40, 45, 50, 60, 70, 75, 80, 90)

LEVERS = Table(
    "levers",
    "Righting levers",
    "From the booklet: levers GZ of the starting condition. They hold for small changes only; "
    "beyond 2 % of displacement or 0.1 m of draught the cross curves are needed.",
    (
        column("angle", "Heel", "deg", needed=True, high=90),
        column("gz", "GZ before the changes", "m", needed=True, low=-5, high=10),
    ),
)
CROSS_CURVES = Table(
    "cross_curves",
    "Cross curves KN",
    "From the booklet, a row for each displacement as it is printed there. The displacement after "
    "the changes must be between two rows.",
    (
        column("displacement", "Displacement", "t", needed=True, low=1, high=200_000),
        *(column(f"kn_{heel}", f"KN at {heel}°", "m", low=-5, high=30) for heel in HEELS),
    ),
)
BY_DRAUGHT = Table(
    "hydrostatics_by_draught",
    "Hydrostatics by draught",
    "From the booklet, a row for each draught around those before and after the changes.",
    (
        column("draught", "Draught", "m", needed=True, low=0.3, high=30),
        column("displacement", "Displacement", "t", needed=True, low=1, high=200_000),
        column("km", "KM", "m", low=0.1, high=100),
        column("limit_kg", "Greatest KG allowed", "m", high=40),
        column("lcb", "Centre of buoyancy from the after perpendicular", "m", high=400),
        column("lcf", "Centre of flotation from the after perpendicular", "m", high=400),
        column("tpc", "Tonnes per centimetre", "t/cm", low=0.1, high=200),
        column("mctc", "Moment to change trim one centimetre", "t·m/cm", low=0.1, high=20_000),
    ),
)
BOOKLET_TABLES = (BY_DRAUGHT, LEVERS, CROSS_CURVES)


def hydrostatic_table(case: Case, faults: list[str]) -> HydrostaticTable | None:
    """Return the hydrostatics by draught as typed.

    Parameters
    ----------
    case : Case
    faults : list of str
        Takes the sentence of a refusal.

    Returns
    -------
    HydrostaticTable or None
        None where nothing usable is typed.

    References
    ----------
    As typed from the booklet.
    """
    rows = sorted(case.rows(BY_DRAUGHT), key=lambda row: row["displacement"])
    try:
        return HydrostaticTable(tuple(rows)) if rows else None
    except ConversionError as problem:
        faults.append(f"{BY_DRAUGHT.title}: {problem}")
        return None


def typed_levers(case: Case, faults: list[str]) -> RightingLevers | None:
    """Return GZ of the starting condition as typed; a curve begins upright without a lever.

    Parameters
    ----------
    case : Case
    faults : list of str
        Takes the sentence of a refusal.

    Returns
    -------
    RightingLevers or None
        None where nothing usable is typed.

    References
    ----------
    As typed from the booklet.
    """
    rows = sorted(case.rows(LEVERS), key=lambda row: row["angle"])
    ordinates = [(row["angle"], row["gz"]) for row in rows]
    if not ordinates:
        return None
    # A curve starts upright without a lever, and booklets leave that row out.
    if ordinates[0][0] > 0:
        ordinates.insert(0, (0.0, 0.0))
    try:
        return RightingLevers(*zip(*ordinates, strict=True))
    except ConversionError as problem:
        faults.append(f"{LEVERS.title}: {problem}")
        return None


def cross_curves(case: Case, faults: list[str]) -> CrossCurves | None:
    """Return KN as typed, by rising displacement.

    Parameters
    ----------
    case : Case
    faults : list of str
        Takes the sentence of a refusal.

    Returns
    -------
    CrossCurves or None
        None where nothing usable is typed.

    References
    ----------
    As typed from the booklet.
    """
    rows = []
    for row in case.rows(CROSS_CURVES):
        typed = {float(heel): row.number(f"kn_{heel}") for heel in HEELS}
        levers = {heel: lever for heel, lever in typed.items() if lever is not None}
        rows.append(CrossCurve(row.number("displacement"), levers))
    if not rows:
        return None
    try:
        return CrossCurves(tuple(sorted(rows, key=lambda row: row.displacement)))
    except ConversionError as problem:
        faults.append(f"{CROSS_CURVES.title}: {problem}")
        return None
