"""The vessel afloat: draught marks against the papers, hog and sag, freeboard aft, lightship, and what a roll tells."""

from inspector.criteria.exact import exact, percent_of
from inspector.criteria.judgement import Criterion, Input, Judgement, refuse
from inspector.criteria.ladder import Ladder, below, beyond, stairs
from inspector.criteria.source import Source
from inspector.criteria.telling import told
from inspector.quantities import difference, show

LOADLINE = Source("International Convention on Load Lines", "1966, recalled", "article 12, submersion of the load line", "memory")
MARKS_READ = Source("Hog and sag from six draught marks", "no publisher", "midship mean less mean of the ends", "common practice")
STERN = Source("IS Code 2008, resolution MSC.267(85), part B, offshore supply vessels", "2008, recalled", "2.4, freeboard at the stern", "memory")
LIGHTSHIP = Source("SOLAS II-1/5.4 and 5.5 with explanatory notes", "as amended", "deviation of the lightship", "seen")
ROLLING = Source("Resolution A.749(18), annex 3, rolling test, with the least GM of IS Code 2008 part A 2.2", "as adopted; 2008",
                 "GM = (f B / T)²; GM at least 0.15 m",
                 "seen")

STERN_SHARE = exact(0.005)          # of length
AMEND, INCLINE = 1.0, 2.0           # % of lightship
LCG_AMEND, LCG_INCLINE = 0.5, 1.0   # % of length
# loading -> f; 2 C of the weather criterion is another thing and never enters here
ROLL_FACTORS = {
    "light or ballast": 0.88, "loaded, liquids 20 % of load": 0.78, "loaded, liquids 10 % of load": 0.75, "loaded, liquids 5 % of load": 0.73,
}
FACTOR_SPREAD = 0.05
LEAST_GM = 0.15  # m
SIX = ("forward_port", "forward_starboard", "midship_port", "midship_starboard", "aft_port", "aft_starboard")


def mean_of_means(forward: float, midship: float, aft: float) -> float:
    """Return the mean draught [m] that counts hog and sag: (forward + 6 midship + aft) / 8 (common practice of draught surveys)."""
    return float((exact(forward) + 6 * exact(midship) + exact(aft)) / 8)


def deflection(forward: float, midship: float, aft: float) -> float:
    """Return the sag [mm] from mean draughts [m]: positive where the midship lies deeper than the ends, negative where she hogs."""
    return float(1000 * (exact(midship) - (exact(forward) + exact(aft)) / 2))


def _mean(port: float, starboard: float) -> float:
    return float((exact(port) + exact(starboard)) / 2)


def judge_draught(
    forward_port: float, forward_starboard: float, midship_port: float, midship_starboard: float, aft_port: float, aft_starboard: float, greatest: float
) -> Judgement:
    """Judge the mean of six draught marks by the greatest draught on the papers.

    Parameters
    ----------
    forward_port, forward_starboard, midship_port, midship_starboard, aft_port, aft_starboard [m]; greatest [m] : summer draught.

    References
    ----------
    International Convention on Load Lines 1966, article 12 (memory); mean of means (common practice).
    """
    ends = _mean(forward_port, forward_starboard), _mean(midship_port, midship_starboard), _mean(aft_port, aft_starboard)
    mean = mean_of_means(*ends)
    within = mean <= greatest
    band, rating = ("at or under the greatest", "good") if within else ("over the greatest", "poor")
    said = "within it" if within else "more: she lies too deep, or the papers are not hers"
    sentence = (f"A mean draught of {show(mean, 'm')} (forward {show(ends[0], 'm')}, midship {show(ends[1], 'm')}, aft {show(ends[2], 'm')}), "
                f"against at most {show(greatest, 'm')}, is {said}.")
    notes = ("In fresh water she may lie deeper by the allowance on her certificate.", f"Trim {show(difference(ends[2], ends[0]), 'm')} by the stern.")
    return Judgement("mean-draught", band, rating, mean, "m", greatest, difference(greatest, mean), sentence, LOADLINE, notes)


def judge_hog_sag(
    forward_port: float, forward_starboard: float, midship_port: float, midship_starboard: float, aft_port: float, aft_starboard: float,
    permitted: float | None = None,
) -> Judgement:
    """Tell how much the hull hogs or sags, and judge it where the booklet permits so much.

    Parameters
    ----------
    forward_port, forward_starboard, midship_port, midship_starboard, aft_port, aft_starboard [m]; permitted [mm] by the booklet.

    References
    ----------
    Midship mean less mean of the ends (common practice). No general limit is published, so without the booklet's there is no rating.
    """
    bend = deflection(_mean(forward_port, forward_starboard), _mean(midship_port, midship_starboard), _mean(aft_port, aft_starboard))
    band = "sags" if bend > 0 else "hogs" if bend < 0 else "straight"
    size = abs(bend)
    rating = None if permitted is None else "good" if size <= permitted else "poor"
    against = "" if permitted is None else f", against at most {show(permitted, 'mm')}"
    said = f"She {band} by {show(size, 'mm')}{against}." if bend else "The six marks give no hog and no sag."
    notes = ("Read in still water from a boat or the quay; waves of 5 cm hide a hog of 5 cm.",
             "Loading and sun on deck bend a hull for hours: read again another day.")
    margin = None if permitted is None else difference(permitted, size)
    return Judgement("hog-sag", band, rating, size, "mm", permitted, margin, said, MARKS_READ, notes)


def stern_ladder(length: float) -> Ladder:
    """Bands of the freeboard at the stern [m] of a vessel of a length [m]."""
    return stairs(
        "m",
        below(float(exact(length) * STERN_SHARE), "low stern", "poor", "low: the deck aft is wet in operation"),
        beyond("enough freeboard aft", "good", "enough"),
    )


def judge_stern(freeboard: float, length: float) -> Judgement:
    """Judge the freeboard at the stern of a supply vessel.

    Parameters
    ----------
    freeboard [m] at the stern as she lies, length [m].

    References
    ----------
    IS Code 2008 part B 2.4 (memory): at least 0.005 of the length in all operating conditions.
    """
    limit = float(exact(length) * STERN_SHARE)
    said = f"A freeboard of {show(freeboard, 'm')} at the stern, against at least {show(limit, 'm')},"
    notes = ("It holds for every operating condition; the one of today is only one of them.", "A conversion may leave the rules for supply vessels.")
    return told("stern-freeboard", stern_ladder(length).step(freeboard), said, (freeboard, "m", limit), STERN, notes, at_least=True)


def judge_lightship(booklet: float, found: float, lcg_shift: float | None = None, length: float | None = None) -> Judgement:
    """Judge a lightship found by weighing against the one in the stability booklet.

    Parameters
    ----------
    booklet, found [t]; lcg_shift [m] of the centre along the ship, either way, with length [m] : both or none.

    References
    ----------
    SOLAS II-1/5.4, 5.5 (seen): new inclining above 2 % of displacement or 1 % of length; the booklet amended from 1 % or 0.5 %.
    """
    if (lcg_shift is None) != (length is None):
        missing = "length" if length is None else "lcg_shift"
        refuse("lightship-change", missing, None, "a shift of the centre needs both the shift and the length")
    shares = {"displacement": (percent_of(abs(exact(found) - exact(booklet)), booklet), AMEND, INCLINE)}
    if length is not None:
        shares["centre along the length"] = (percent_of(abs(lcg_shift), length), LCG_AMEND, LCG_INCLINE)
    name = max(shares, key=lambda one: shares[one][0] / shares[one][2])
    share, amend, incline = shares[name]
    if share > incline:
        band, rating, said = "new inclining due", "poor", "so a new inclining test is due"
    elif share >= amend:
        band, rating, said = "booklet to be amended", "fair", "so the booklet is to be amended"
    else:
        band, rating, said = "as in the booklet", "good", "so the booklet stands in this"
    sentence = (f"The lightship's {name} differs by {show(share, '%')}, where amending begins at {show(amend, '%')} "
                f"and inclining above {show(incline, '%')}, {said}.")
    notes = ("A change of height counts too (1 % of the centre's height), and only an inclining finds it.",
             "Small ships: 2 % or 2 t, whichever is greater (MSC/Circ.1158).")
    return Judgement("lightship-change", band, rating, share, "%", incline, difference(incline, share), sentence, LIGHTSHIP, notes)


def rolling_gm(breadth: float, period: float, factor: float) -> float:
    """Return the metacentric height [m] from breadth [m], roll period [s] and the rolling factor f. A.749(18) annex 3 (seen).

    Examples
    --------
    >>> round(rolling_gm(14, 9.5, 0.78), 3)
    1.321
    """
    return (factor * breadth / period) ** 2


def judge_roll(period: float, breadth: float, length: float, condition: str) -> Judgement:
    """Tell what a timed roll says of the metacentric height of a vessel to 70 m.

    Parameters
    ----------
    period [s] of a full roll, the mean of several; breadth [m]; length [m], to 70; condition : one of ROLL_FACTORS.

    References
    ----------
    A.749(18) annex 3 (seen); least GM 0.15 m by IS Code 2008 part A 2.2 (seen in extracts).
    """
    if breadth >= length:
        refuse("rolling-test", "breadth", breadth, f"a breadth of {show(breadth, 'm')} must lie below the length of {show(length, 'm')}")
    factor = ROLL_FACTORS[condition]
    gm, low, high = (rolling_gm(breadth, period, one) for one in (factor, factor - FACTOR_SPREAD, factor + FACTOR_SPREAD))
    if gm < LEAST_GM:
        band, rating, said = "below the least", "poor", "below it: have the stability looked at before she sails"
    elif low < LEAST_GM:
        band, rating, said = "near the least", "poor", "too near it for this test to tell"
    else:
        band, rating, said = "above the least", None, "above it, as an indication only"
    sentence = (f"A roll of {show(period, 's')} on {show(breadth, 'm')} breadth gives a metacentric height near {show(gm, 'm')} "
                f"({show(low, 'm')} to {show(high, 'm')}), against at least {show(LEAST_GM, 'm')}: {said}.")
    notes = ("Timed alongside with slack lines and deep water, as the mean of several rolls.", "It replaces no inclining test and no booklet.")
    return Judgement("rolling-test", band, rating, gm, "m", LEAST_GM, difference(gm, LEAST_GM), sentence, ROLLING, notes)


def _draughts() -> tuple[Input, ...]:
    return tuple(Input(name, f"Draught {name.replace('_', ' ')}", "number", "m", low=0.3, high=15) for name in SIX)


_TONNES = {"kind": "number", "unit": "t", "low": 50, "high": 20_000}

CRITERIA = (
    Criterion(
        "mean-draught", "Mean of six draught marks against the papers",
        (*_draughts(), Input("greatest", "Greatest draught on the papers", "number", "m", low=0.5, high=15)),
        LOADLINE, judge_draught, "Six marks read on one day, draughts of 0.3 to 15 m.", "The limit from both sides and one hand calculation.",
    ),
    Criterion(
        "hog-sag", "Hog or sag from six draught marks",
        (*_draughts(), Input("permitted", "Permitted by the booklet", "number", "mm", optional=True, low=0, high=500)),
        MARKS_READ, judge_hog_sag, "Six marks read on one day; a rating only with a limit from the booklet.",
        "Hog, sag and straight by hand, and the limit from both sides.",
    ),
    Criterion(
        "stern-freeboard", "Freeboard at the stern of a supply vessel",
        (Input("freeboard", "Freeboard at the stern", "number", "m", low=-1, high=10), Input("length", "Length", "number", "m", low=24, high=100)),
        STERN, judge_stern, "Offshore supply vessels of 24 to 100 m.", "The limit from both sides by our own arithmetic on the recalled share.",
        ladder=stern_ladder,
    ),
    Criterion(
        "lightship-change", "Lightship found against the booklet",
        (Input("booklet", "Lightship in the booklet", **_TONNES), Input("found", "Lightship found", **_TONNES),
         Input("lcg_shift", "Shift of the centre along the ship", "number", "m", optional=True, low=-20, high=20),
         Input("length", "Length", "number", "m", optional=True, low=24, high=150)),
        LIGHTSHIP, judge_lightship, "Ships with an approved booklet, lightships of 50 to 20 000 t.",
        "Both limits of both measures from both sides by our own arithmetic.",
    ),
    Criterion(
        "rolling-test", "Metacentric height from a timed roll",
        (Input("period", "Roll period, there and back", "number", "s", low=1, high=60), Input("breadth", "Breadth", "number", "m", low=4, high=30),
         Input("length", "Length", "number", "m", low=10, high=70), Input("condition", "Loading", "choice", choices=tuple(ROLL_FACTORS))),
        ROLLING, judge_roll, "Ships up to 70 m, upright, free to roll.", "Two cases by our own arithmetic and the least height from both sides.",
    ),
)
