"""Plate thickness: wastage against the allowance of a published table, corrosion rate and remaining life.

The allowances are one society's; every society prints its own, so they are a profile that the surveyor may replace, and
each judgement names the one it used. Years are computed as exact fractions and compared unrounded: only what is shown
is rounded, half up.
"""

from collections.abc import Mapping
from fractions import Fraction

from inspector.criteria.exact import cents, exact, percent_of
from inspector.criteria.judgement import Criterion, Input, Judgement, refuse
from inspector.criteria.profiles import Limit, Profile
from inspector.criteria.source import Source
from inspector.quantities import difference, show

DIMINUTION = Source(
    "Table of diminution of steel, general hull (one classification society)",
    "undated scan", "categories A, B, C", "seen",
)
REMAINING = Source(
    "API 510, 570 and 653 corrosion rate and remaining life, with the hull renewal thickness as required thickness",
    "as worked in an inspector's answer key, 2003 figures", "exercises 1 to 10", "seen",
)

# member -> name of its limits in the profile
MEMBER_LIMITS = {
    "shell, strength deck or tight bulkhead": "shell",
    "floor, girder, web or hold frame": "floor",
    "ordinary stiffener or other deck": "stiffener",
}
MEMBERS = tuple(MEMBER_LIMITS)
# the share of the allowance at which corrosion becomes substantial: IACS UR Z7 / Z10 series 1.2, ESP Code A.1049(27) 1.2.9 (seen)
PROFILE = Profile("One society's general hull table", (
    Limit("shell_share", "shell, strength deck and tight bulkheads may lose", "%", 20, 5, 50),
    Limit("shell_added", "and further", "mm", 1, 0, 2),
    Limit("floor_share", "floors, girders, webs and hold frames may lose", "%", 25, 5, 50),
    Limit("floor_added", "and further", "mm", 0, 0, 2),
    Limit("stiffener_share", "ordinary stiffeners and other decks may lose", "%", 30, 5, 50),
    Limit("stiffener_added", "and further", "mm", 0, 0, 2),
    Limit("substantial", "substantial corrosion begins at this share of the allowance:", "%", 75, 50, 95),
), DIMINUTION)
BINDING = "The society on the vessel's certificate sets the binding figure."
STEADY = "Corrosion is taken to go on as it did; the greater of the known rates counts."
GAIN_TOLERANCE = 5  # % above as built that may be mill tolerance or paint: own
LONGEST_INTERVAL = 10  # years between looks, however long the life: the answer key's own figure (seen)


def allowances(as_built: float, member: str, limits: Mapping[str, float] = PROFILE.values) -> tuple[float, float]:
    """Return the thickness where substantial corrosion begins and the renewal thickness.

    Parameters
    ----------
    as_built [mm], member : one of MEMBERS, limits : those of PROFILE, as shipped or as set.

    Returns
    -------
    (t_sub [mm], t_renew [mm]), each rounded half up to 0.01 mm as the table prints them.

    References
    ----------
    Table of diminution of steel, general hull (seen); 75 % share: IACS UR Z7 1.2, ESP Code 1.2.9 (seen).

    Examples
    --------
    >>> allowances(10.0, "floor, girder, web or hold frame")
    (8.13, 7.5)
    """
    named, built = MEMBER_LIMITS[member], exact(as_built)
    allowance = exact(limits[f"{named}_share"]) * built / 100 + exact(limits[f"{named}_added"])
    return cents(built - exact(limits["substantial"]) * allowance / 100), cents(built - allowance)


def diminution(as_built: float, measured: float) -> float:
    """Return the loss of thickness [%] of the as-built thickness [mm]; negative where the plate reads thicker."""
    return percent_of(exact(as_built) - exact(measured), as_built)


def corrosion_rate(earlier: float, later: float, years: float) -> float:
    """Return the loss per year [unit of thickness per year] between two readings. API 510, 570, 653 (seen)."""
    return difference(earlier, later) / years


def remaining_life(now: float, required: float, rate: float) -> float | None:
    """Return the years until the required thickness is reached, 0 where it already is, None where nothing is lost.

    Parameters: now, required [unit of thickness], rate [the same unit per year]. API 510, 570, 653 (seen).
    """
    if now <= required:
        return 0.0
    return difference(now, required) / rate if rate > 0 else None


def _gain_note(criterion: str, as_built: float, measured: float) -> tuple[str, ...]:
    lost = diminution(as_built, measured)
    if lost >= 0:
        return ()
    if -lost > GAIN_TOLERANCE:
        refuse(criterion, "measured", measured,
               f"{show(measured, 'mm')} is {show(-lost, '%')} more than the {show(as_built, 'mm')} as built, so the "
               "plate, the drawing or the gauge setting is not the one meant")
    return (f"The plate reads {show(-lost, '%')} above as built: check the coating, the gauge zero and the drawing.",)


def judge_plate(as_built: float, measured: float, member: str, limits: Mapping[str, float]) -> Judgement:
    """Judge one plate or member by its mean thickness (general corrosion) or its least (pits).

    Parameters
    ----------
    as_built [mm] 5 to 50, measured [mm] 0 to 55, member : one of MEMBERS, limits : those of PROFILE.

    Notes
    -----
    t_sub and above acceptable; t_renew and above substantial corrosion; below t_renew renewal. The split of acceptable
    into good and fair at half of the allowance is our own.

    References
    ----------
    Table of diminution of steel, general hull, of one society (seen).
    """
    notes = _gain_note("plate-thickness", as_built, measured)
    substantial, renewal = allowances(as_built, member, limits)
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
    sentence = (f"{show(measured, 'mm')} of {show(as_built, 'mm')} as built ({lost} lost) stands against substantial "
                f"corrosion below {show(substantial, 'mm')} and renewal below {show(renewal, 'mm')}: {meaning}.")
    own = "Good down to half of the allowance, then fair: our own split of the acceptable band."
    return Judgement("plate-thickness", band, rating, measured, "mm", renewal, difference(measured, renewal), sentence,
                     DIMINUTION, (*notes, BINDING, own))


def _governing_rate(
    as_built: float, built_year: int, measured: float, measured_year: int, previous: float | None,
    previous_year: int | None,
) -> tuple[Fraction, str]:
    name = "plate-remaining-life"
    if measured_year <= built_year:
        refuse(name, "measured_year", measured_year,
               f"the gauging of {measured_year} must lie after the build of {built_year}")
    rates = [(exact_rate(as_built, measured, measured_year - built_year), "since new")]
    if (previous is None) != (previous_year is None):
        missing = "previous" if previous is None else "previous_year"
        refuse(name, missing, None, "a previous gauging needs both its thickness and its year")
    if previous_year is not None:
        if not built_year < previous_year < measured_year:
            refuse(name, "previous_year", previous_year,
                   f"the previous gauging of {previous_year} must lie between {built_year} and {measured_year}")
        rates.append((exact_rate(previous, measured, measured_year - previous_year), f"since {previous_year}"))
    return max(rates)


def exact_rate(earlier: float, later: float, years: int) -> Fraction:
    """Return the loss per year [mm] between two readings [mm] as an exact fraction. API 510, 570, 653 (seen)."""
    return Fraction(exact(earlier) - exact(later)) / years


def _life(now: float, required: float, rate: Fraction) -> Fraction | None:
    if now <= required:
        return Fraction(0)
    return Fraction(exact(now) - exact(required)) / rate if rate > 0 else None


def judge_remaining_life(
    as_built: float, built_year: int, measured: float, measured_year: int, member: str, limits: Mapping[str, float],
    previous: float | None = None, previous_year: int | None = None, horizon: float | None = None,
) -> Judgement:
    """Judge how many years a plate has until its renewal thickness, by the greater of two corrosion rates.

    Parameters
    ----------
    as_built, measured, previous [mm]; built_year, measured_year, previous_year [year]; member : one of MEMBERS;
    horizon [years] : how long the buyer means to keep the vessel; limits : those of PROFILE.

    Notes
    -----
    No life left: poor at the renewal thickness, failed below it. Otherwise good where half the life covers the horizon
    (the next look at half the life), fair where the whole does, poor where it does not. Without a horizon no rating.

    References
    ----------
    API 510, 570 and 653, as quoted in an answer key (seen); renewal thickness as in judge_plate.
    """
    notes = _gain_note("plate-remaining-life", as_built, measured)
    renewal = allowances(as_built, member, limits)[1]
    rate, since = _governing_rate(as_built, built_year, measured, measured_year, previous, previous_year)
    life = _life(measured, renewal, rate)
    band, rating, meaning = _life_band(life, measured < renewal, horizon)
    years = None if life is None else float(life)
    if years is None:
        said = f"{show(measured, 'mm')} shows no measurable loss {since}, so no end can be computed"
    else:
        said = (f"{show(measured, 'mm')} with a loss of {show(float(max(rate, 0)), 'mm', 3)} a year {since} reaches the "
                f"renewal thickness of {show(renewal, 'mm')} in {show(years, 'years')}")
        soon = round(min(years / 2, LONGEST_INTERVAL), 1)
        when = f"within {show(soon, 'years')}" if soon > 0 else "now"
        notes = (*notes, f"Gauge again {when}: half of the life, at most ten years.")
    margin = None if years is None or horizon is None else difference(years, horizon)
    return Judgement("plate-remaining-life", band, rating, years, "years", horizon, margin, f"{said}: {meaning}.",
                     REMAINING, (*notes, BINDING, STEADY))


def _life_band(life: Fraction | None, below: bool, horizon: float | None) -> tuple[str, str | None, str]:
    if life == 0:
        return "no life left", "failed" if below else "poor", "no life is left in this plate"
    if horizon is None:
        return "no horizon given", None, "without the buyer's horizon there is nothing to hold it against"
    years, wanted = f"the horizon of {show(horizon, 'years')}", Fraction(exact(horizon))
    if life is None or life >= 2 * wanted:
        return "covers the horizon twice", "good", f"enough for {years} with a gauging at half the life"
    if life >= wanted:
        return "covers the horizon", "fair", f"enough for {years}, but gauge again at half the life"
    return "ends before the horizon", "poor", f"short of {years}: count the plate as steel work"


_BUILT = Input("as_built", "Thickness as built", "number", "mm", low=5, high=50)
_MEASURED = Input("measured", "Measured thickness", "number", "mm", low=0, high=55)
_MEMBER = Input("member", "Kind of member", "choice", choices=MEMBERS)

CRITERIA = (
    Criterion(
        "plate-thickness", "Plate thickness against the renewal thickness", (_BUILT, _MEASURED, _MEMBER), DIMINUTION,
        judge_plate,
        "Steel hull plates and members of 5 to 50 mm as built; not more than 5 % above as built.",
        "Against the legible rows of the published table (6 to 10 mm, three categories), rounded half up to 0.01 mm.",
        profile=PROFILE,
    ),
    Criterion(
        "plate-remaining-life", "Years until the renewal thickness",
        (_BUILT, Input("built_year", "Year built", "whole", low=1900, high=2100), _MEASURED,
         Input("measured_year", "Year of this gauging", "whole", low=1900, high=2100), _MEMBER,
         Input("previous", "Previous thickness", "number", "mm", optional=True, low=0, high=55),
         Input("previous_year", "Year of the previous gauging", "whole", optional=True, low=1900, high=2100),
         Input("horizon", "Buyer's horizon", "number", "years", optional=True, low=0, high=60)),
        REMAINING, judge_remaining_life,
        "As plate-thickness; build, previous and present gauging in this order, whole years.",
        "Rates and lives against the published answers of the key; the hull cases are our own arithmetic.",
        profile=PROFILE,
    ),
)
