"""Plate thickness: wastage against the allowance of a published table.

Every society prints its own allowances. Those shipped are the strict end of two tables that were
read, as a set of limits that the surveyor may replace by those of the vessel's class, and each
judgement names the set that it used and the renewal thickness of the more lenient table.
Thicknesses are compared unrounded: only what is shown is rounded, half up.
"""

from collections.abc import Mapping

from inspector.criteria.core.criterion import Criterion
from inspector.criteria.core.decimals import exact, percent_of, to_hundredths
from inspector.criteria.core.judgement import Judgement, refuse
from inspector.criteria.core.limit_sets import LimitSet, settable_limit
from inspector.criteria.core.source import Source
from inspector.values.field import Field, number_field
from inspector.values.formatting import show
from inspector.values.numbers import difference

DIMINUTION = Source.seen(
    "Table of diminution of steel, general hull (one classification society)",
    "undated scan",
    "categories A, B, C",
)

STRICT = Source.seen(
    "Wastage allowances of a second classification society, beside the first one's table",
    "vessels of 90 m and over, undated copy with shifted columns",
    "strict end: plates 20 %, internals 25 %",
)

# member -> name of its limits in the profile
MEMBER_LIMITS = {
    "shell, strength deck or tight bulkhead": "shell",
    "floor, girder, web or hold frame": "floor",
    "ordinary stiffener or other deck": "stiffener",
}
MEMBERS = tuple(MEMBER_LIMITS)
# substantial corrosion begins at 75 % of the allowance by IACS UR Z7 and Z10 series, 1.2, and by
# the ESP Code A.1049(27), 1.2.9 (seen)
PROFILE = LimitSet(
    "Strict end of two societies' tables",
    (
        settable_limit(
            "shell_share", "shell, strength deck and tight bulkheads may lose", "%", 20, 5, 50
        ),
        settable_limit("shell_added", "and further", "mm", 0, 0, 2),
        settable_limit(
            "floor_share", "floors, girders, webs and hold frames may lose", "%", 25, 5, 50
        ),
        settable_limit("floor_added", "and further", "mm", 0, 0, 2),
        settable_limit(
            "stiffener_share", "ordinary stiffeners and other decks may lose", "%", 25, 5, 50
        ),
        settable_limit("stiffener_added", "and further", "mm", 0, 0, 2),
        settable_limit(
            "substantial",
            "substantial corrosion begins at this share of the allowance:",
            "%",
            75,
            50,
            95,
        ),
    ),
    STRICT,
)
# the more lenient of the two tables, as printed
LENIENT = {**PROFILE.values, "shell_added": 1, "stiffener_share": 30}
BINDING = "The society on the vessel's certificate sets the binding figure."
GAIN_TOLERANCE = 5  # % above as built that may be mill tolerance or paint: own


def allowances(
    as_built: float, member: str, limits: Mapping[str, float] = LENIENT
) -> tuple[float, float]:
    """Return the thickness where substantial corrosion begins and the renewal thickness.

    Parameters
    ----------
    as_built : float
        Thickness as built [mm].
    member : str
        Kind of member, one of ``MEMBERS``.
    limits : mapping of str to float, optional
        The limits of ``PROFILE``, as shipped or as set; without them those of the more lenient
        table.

    Returns
    -------
    tuple of (float, float)
        Thickness where substantial corrosion begins and renewal thickness [mm], each rounded half
        up to 0.01 mm as the table prints them.

    References
    ----------
    Table of diminution of steel, general hull (seen); 75 % share: IACS UR Z7 1.2, ESP Code 1.2.9
    (seen).

    Examples
    --------
    >>> allowances(10.0, "floor, girder, web or hold frame")
    (8.13, 7.5)
    """
    named, built = MEMBER_LIMITS[member], exact(as_built)
    # A share of the thickness as built, and where a society allows it, a fixed part beside it.
    allowance = exact(limits[f"{named}_share"]) * built / 100 + exact(limits[f"{named}_added"])
    return to_hundredths(built - exact(limits["substantial"]) * allowance / 100), to_hundredths(
        built - allowance
    )


def diminution(as_built: float, measured: float) -> float:
    """Return the loss of thickness in percent of the thickness as built.

    Parameters
    ----------
    as_built : float
        Thickness as built [mm].
    measured : float
        Measured thickness [mm].

    Returns
    -------
    float
        Loss [%]; negative where the plate reads thicker.
    """
    return percent_of(exact(as_built) - exact(measured), as_built)


def gain_notes(as_built: float, measured: float) -> tuple[str, ...]:
    """Return the note on a plate that reads thicker than as built.

    Parameters
    ----------
    as_built : float
        Thickness as built [mm].
    measured : float
        Measured thickness [mm].

    Returns
    -------
    tuple of str
        Empty where nothing was gained.

    Raises
    ------
    CannotJudge
        Where more was gained than mill tolerance or paint explain.
    """
    gained = -diminution(as_built, measured)
    # The usual case: nothing to say of a plate that has lost.
    if gained <= 0:
        return ()
    # a plate does not grow: beyond mill tolerance and paint another plate was measured
    if gained > GAIN_TOLERANCE:
        refuse(
            "measured",
            measured,
            f"{show(measured, 'mm')} is {show(gained, '%')} more than the {show(as_built, 'mm')} "
            "as built, so the plate, the drawing or the gauge setting is not the one meant",
        )
    note = (
        f"The plate reads {show(gained, '%')} above as built: "
        "check the coating, the gauge zero and the drawing."
    )
    return (note,)


def judge_plate(
    as_built: float, measured: float, member: str, limits: Mapping[str, float]
) -> Judgement:
    """Judge one plate or member by its mean thickness (general corrosion) or its least (pits).

    Parameters
    ----------
    as_built : float
        Thickness as built [mm].
    measured : float
        Measured thickness [mm].
    member : str
        Kind of member, one of ``MEMBERS``.
    limits : mapping of str to float
        The limits of ``PROFILE``.

    Returns
    -------
    Judgement

    Notes
    -----
    t_sub and above acceptable; t_renew and above substantial corrosion; below t_renew renewal. The
    split of acceptable into good and fair at half of the allowance is our own.

    References
    ----------
    Tables of two societies (seen): the strict end of both.
    """
    notes = gain_notes(as_built, measured)
    substantial, renewal = allowances(as_built, member, limits)
    # the table knows one acceptable band; half of the allowance splits it into good and fair
    half = (exact(as_built) + exact(renewal)) / 2
    lost = show(diminution(as_built, measured), "%")
    if measured < renewal:
        band, rating = "below renewal thickness", "failed"
        meaning = "below the renewal thickness: the plate is to be renewed"
    elif measured < substantial:
        band, rating = "substantial corrosion", "poor"
        meaning = "inside the allowance, with most of it used: gauge more closely and each year"
    else:
        band, rating = "acceptable", "good" if exact(measured) >= half else "fair"
        meaning = "short of substantial corrosion"
    sentence = (
        f"{show(measured, 'mm')} of {show(as_built, 'mm')} as built ({lost} lost), against "
        f"substantial corrosion below {show(substantial, 'mm')} and renewal below "
        f"{show(renewal, 'mm')}: {meaning}."
    )
    # Always named beside the limit used: a seller will cite the lenient one.
    lenient = allowances(as_built, member)[1]
    other = (
        f"Renewal below {show(renewal, 'mm')} by the limits used, below {show(lenient, 'mm')} by "
        f"the more lenient of two societies' tables ({DIMINUTION.mark})."
    )
    own = "Good down to half of the allowance, then fair: our own split of the acceptable band."
    return Judgement(
        band,
        rating,
        measured,
        "mm",
        renewal,
        difference(measured, renewal),
        sentence,
        (*notes, other, BINDING, own),
    )


AS_BUILT = number_field("as_built", "Thickness as built", "mm", 5, 50)
MEASURED = number_field("measured", "Measured thickness", "mm", 0, 55)
MEMBER = Field("member", "Kind of member", "choice", choices=MEMBERS)

CRITERIA = (
    Criterion(
        "plate-thickness",
        "Plate thickness against the renewal thickness",
        (AS_BUILT, MEASURED, MEMBER),
        STRICT,
        judge_plate,
        "Steel hull plates and members of 5 to 50 mm as built; not more than 5 % above as built.",
        "Allowances against the legible rows of the published table (6 to 10 mm, three "
        "categories), rounded half up to 0.01 mm; the strict end by our own arithmetic.",
        limit_set=PROFILE,
    ),
)
