"""Sinkage, trim, list and metacentric height of a hull, by the plain mechanics of ship stability.

All of it is a first check from the surveyor's figures: only an approved stability booklet and an
inclining test decide.
"""

from math import atan, degrees

from inspector.conversion.core.bounds import BadInput, plain, within
from inspector.conversion.core.figure import Default
from inspector.conversion.core.span import Span, span
from inspector.criteria.core.source import Source
from inspector.values.formatting import show

CHANGES = Source.seen(
    "Ship stability by textbooks",
    "plain mechanics",
    "w/TPC, moment/MCTC, sum of moments, free-surface moment/displacement",
)
ROUGH = Source.recalled(
    "Approximate hydrostatics for general cargo forms",
    "MCTC = 7.31 TPC² / B",
    edition="no publisher",
)
FLOTATION = Default(
    "centre of flotation as a share of the length from aft",
    Span(0.44, 0.48, 0.52),
    "Usual for workboats, whose waterplane is full aft.",
)
# The formula is for cargo forms; for a workboat it may be off by so much (common practice).
MCTC_SPREAD = 0.15


def free_surface_moment(inertia: float, density: float | Span) -> Span:
    """Return the free-surface moment of a slack tank; how much is in the tank does not matter.

    Parameters
    ----------
    inertia : float
        Second moment of the surface's area [m⁴].
    density : float or Span
        Density of the liquid [kg/m³].

    Returns
    -------
    Span
        Moment [t·m].

    Raises
    ------
    BadInput
        An inertia or a density that cannot be.

    References
    ----------
    Density × inertia, textbooks of ship stability (seen).
    """
    plain("tank: free-surface inertia", inertia, 0, 1e6, "m⁴")
    # Inertia times density gives t·m, as a booklet prints it; the depth of the liquid does not
    # matter.
    return within("tank: density", density, 300, 4000, "kg/m³") * inertia / 1000


def tonnes_per_cm(area: float, density: float = 1025.0) -> float:
    """Return the mass that sinks a hull by one centimetre.

    Parameters
    ----------
    area : float
        Area of the waterplane [m²].
    density : float
        Density of the water [kg/m³].

    Returns
    -------
    float
        TPC [t/cm].

    Raises
    ------
    BadInput
        An area or a density that cannot be.

    References
    ----------
    TPC = area × density / 100, textbooks of ship stability (seen).
    """
    square_metres = plain("waterplane area", area, 1, 50_000, "m²")
    # A centimetre of depth, and kilograms to tonnes.
    return square_metres * plain("water: density", density, 980, 1040, "kg/m³") / 100_000


def estimated_mctc(tpc: float, breadth: float) -> Span:
    """Return a rough moment to change trim; an approved booklet always comes first.

    Parameters
    ----------
    tpc : float
        Tonnes per centimetre [t/cm].
    breadth : float
        Breadth [m].

    Returns
    -------
    Span
        MCTC [t·m/cm], ± 15 %.

    Raises
    ------
    BadInput
        A TPC or a breadth that cannot be.

    References
    ----------
    MCTC = 7.31 TPC² / B, approximate hydrostatics for general cargo forms (from memory).
    """
    immersion = plain("TPC", tpc, 0.1, 200, "t/cm")
    moment = 7.31 * immersion**2 / plain("breadth", breadth, 2, 80, "m")
    return Span.around(moment, MCTC_SPREAD)


def parallel_sinkage(change: Span, tpc: float) -> Span:
    """Return the change of the mean draught for a mass added.

    Parameters
    ----------
    change : Span
        Mass added [t].
    tpc : float
        Tonnes per centimetre [t/cm].

    Returns
    -------
    Span
        Sinkage [m], minus for a rise.

    Raises
    ------
    BadInput
        A TPC that cannot be.

    References
    ----------
    Mass / TPC, textbooks of ship stability (seen).
    """
    # TPC is per centimetre, draughts are in metres.
    return span(change) / plain("TPC", tpc, 0.1, 200, "t/cm") / 100


def trim_change(moment: Span, mctc: Span | float) -> Span:
    """Return the change of trim for a trimming moment.

    Parameters
    ----------
    moment : Span
        Moment about the centre of flotation [t·m], plus by the head.
    mctc : Span or float
        Moment to change trim by one centimetre [t·m/cm].

    Returns
    -------
    Span
        Change of trim [m], plus by the head.

    Raises
    ------
    BadInput
        An MCTC that cannot be.

    References
    ----------
    Moment / MCTC, textbooks of ship stability (seen).
    """
    return moment / within("MCTC", mctc, 0.1, 20_000, "t·m/cm") / 100


def end_draughts(
    draughts: tuple[float, float], sinkage: Span, trim: Span, flotation: Span | float
) -> tuple[Span, Span]:
    """Return the draughts forward and aft after a sinkage and a change of trim.

    Parameters
    ----------
    draughts : tuple of (float, float)
        Draughts forward and aft before [m].
    sinkage : Span
        Change of the mean draught [m].
    trim : Span
        Change of trim [m], plus by the head.
    flotation : Span or float
        Centre of flotation from the after perpendicular, as a share of the length.

    Returns
    -------
    tuple of (Span, Span)
        Draughts forward and aft [m].

    Raises
    ------
    BadInput
        A centre of flotation outside the length.

    References
    ----------
    Trim shared by the centre of flotation, textbooks of ship stability (seen).
    """
    share = within("centre of flotation, share of the length", flotation, 0, 1)
    fore, aft = draughts
    # She trims about her centre of flotation: the ends move by their distances from it.
    return fore + sinkage + trim * (1 - share), aft + sinkage - trim * share


def fluid_gm(
    km: Span | float, kg: Span | float, moment: Span | float, displacement: Span | float
) -> Span:
    """Return the metacentric height less the rise of all free surfaces.

    Parameters
    ----------
    km : Span or float
        Metacentre above the keel [m].
    kg : Span or float
        Centre of gravity above the keel, solid [m].
    moment : Span or float
        Moment of all free surfaces [t·m].
    displacement : Span or float
        Displacement [t].

    Returns
    -------
    Span
        GM [m].

    Raises
    ------
    BadInput
        A displacement that cannot be.

    References
    ----------
    KM − KG − free-surface moment / displacement, textbooks of ship stability (seen).
    """
    return span(km) - kg - span(moment) / within("displacement", displacement, 1, 500_000, "t")


def list_angle(moment: Span | float, displacement: Span | float, gm: Span | float) -> Span:
    """Return the angle of list from upright.

    Parameters
    ----------
    moment : Span or float
        Transverse moment [t·m], plus to starboard.
    displacement : Span or float
        Displacement [t].
    gm : Span or float
        Metacentric height [m].

    Returns
    -------
    Span
        List [deg], plus to starboard.

    Raises
    ------
    BadInput
        GM is not surely above zero.

    References
    ----------
    tan(list) = moment / (displacement × GM), textbooks of ship stability (seen).
    """
    gm = span(gm)
    # An unstable ship does not list by a weight, it falls to one side.
    if gm.low <= 0:
        raise BadInput(
            f"GM is {show(gm.low, 'm')} at its low end, and a list follows only from a GM above 0.",
            field="GM",
            value=gm.low,
            unit="m",
        )
    # Only for small angles, where the metacentre does not move yet.
    tangent = span(moment) / (displacement * gm)
    return tangent.apply(lambda value: degrees(atan(value)))
