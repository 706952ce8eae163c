"""The working deck: what it may carry, how long it is by counting its fittings, how much of it is clear."""

from collections.abc import Mapping

from inspector.criteria.exact import around, exact, nearer
from inspector.criteria.judgement import Criterion, Input, Judgement, refuse
from inspector.criteria.ladder import Ladder, beyond, stairs, to
from inspector.criteria.profiles import Limit, Profile
from inspector.criteria.source import Source
from inspector.criteria.telling import told
from inspector.quantities import show

LOAD = Source("Deck load by the ship's own plan and booklet", "as declared aboard", "load per area and total deck cargo", "common practice")
COUNT = Source("Length by counting deck fittings set at a regular pitch", "no publisher", "agreement within one pitch", "common practice")
AREA = Source("Clear deck area from its sides", "no publisher", "agreement within 5 %", "common practice")
AGREEMENT = Profile("Clear deck area", (Limit("tolerance", "agreement within", "%", 5, 0.5, 20),), AREA)
HEAVY = "Wheels, legs and feet load single plates and beams: point loads are checked apart, and the master decides what is stowed."


def load_limit(area: float, rated: float, total: float | None = None) -> float:
    """Return the greatest mass [t] on an area [m²] of a rated load [t/m²], not above the booklet's total [t].

    Examples
    --------
    >>> load_limit(468, 5), load_limit(468, 5, 1200)
    (2340.0, 1200.0)
    """
    by_area = float(exact(area) * exact(rated))
    return by_area if total is None else min(by_area, float(total))


def load_ladder(area: float, rated: float, total: float | None = None) -> Ladder:
    """Bands of a deck load [t]."""
    return stairs(
        "t",
        to(load_limit(area, rated, total), "within the declared load", "good", "within what is declared"),
        beyond("over the declared load", "poor", "more than is declared: it needs a structural check"),
    )


def judge_load(mass: float, area: float, rated: float, total: float | None = None) -> Judgement:
    """Judge a present or planned load by what the deck is declared for.

    Parameters
    ----------
    mass [t], area [m²] it rests on, rated [t/m²] by the ship's plan, total [t] of deck cargo by the booklet, if it names one.

    References
    ----------
    The ship's own declaration counts; load per area times area, not above the total (common practice).
    """
    limit = load_limit(area, rated, total)
    mean = show(float(exact(mass) / exact(area)), "t/m²")
    said = f"{show(mass, 't')} on {show(area, 'm²')} ({mean} in the mean), against at most {show(limit, 't')},"
    asked = () if total is not None else ("The booklet's total deck cargo and its height often allow less than the plan: look for both.",)
    notes = (HEAVY, *asked)
    return told("deck-load", load_ladder(area, rated, total).step(mass), said, (mass, "t", limit), LOAD, notes)


def judge_pitch(claimed: float, counted: int, pitch: float) -> Judgement:
    """Judge a length on paper by counting fittings.

    Parameters
    ----------
    claimed [m] on paper, counted : pitches, whole, pitch [m] between two fittings as measured.

    References
    ----------
    Fittings at a regular pitch, commonly 10 ft, give a length without a tape (common practice).
    """
    length = exact(counted) * exact(pitch)
    low, high = float(length - exact(pitch)), float(length + exact(pitch))
    agrees = low <= claimed <= high
    band, rating = ("agrees", "good") if agrees else ("does not agree", "poor")
    said = "agrees within one pitch" if agrees else "does not agree within one pitch: measure with a tape"
    limit, margin = nearer(claimed, low, high)
    sentence = f"{counted} pitches of {show(pitch, 'm')} are {show(float(length), 'm')}; the paper's {show(claimed, 'm')} {said}."
    return Judgement("deck-pitch", band, rating, claimed, "m", limit, margin, sentence, COUNT,
                     ("Count spaces, not fittings: sixteen fittings are fifteen pitches.",))


def judge_area(claimed: float, length: float, breadth: float, deducted: float, limits: Mapping[str, float]) -> Judgement:
    """Judge a clear deck area on paper by its measured sides.

    Parameters
    ----------
    claimed [m²] on paper; length, breadth [m] clear between rails; deducted [m²] for winch, hatches and boxes; limits : those of AGREEMENT.

    References
    ----------
    Length times breadth less what stands on it (plain arithmetic); agreement within 5 % is common practice.
    """
    gross = exact(length) * exact(breadth)
    if deducted >= gross:
        refuse("deck-area", "deducted", deducted, f"{show(deducted, 'm²')} deducted leaves nothing of {show(float(gross), 'm²')}")
    net = gross - exact(deducted)
    low, high = around(net, limits["tolerance"])
    limit, margin = nearer(claimed, low, high)
    agrees = low <= claimed <= high
    band, rating = ("agrees", "good") if agrees else ("more on paper", "poor") if claimed > high else ("less on paper", "fair")
    said = "agrees with it" if agrees else "does not agree with it: the smaller one counts until measured again"
    sentence = f"{show(float(gross), 'm²')} gross and {show(float(net), 'm²')} net were measured; the paper's {show(claimed, 'm²')} {said}."
    return Judgement("deck-area", band, rating, claimed, "m²", limit, margin, sentence, AREA, ("Measured between crash rails, not between bulwarks.",))


CRITERIA = (
    Criterion(
        "deck-load", "Load on the deck against its declared load",
        (Input("mass", "Load", "number", "t", low=0, high=20_000), Input("area", "Area it rests on", "number", "m²", low=0.1, high=5000),
         Input("rated", "Declared load", "number", "t/m²", low=0.1, high=50),
         Input("total", "Deck cargo limit of the booklet", "number", "t", optional=True, low=1, high=20_000)),
        LOAD, judge_load, "Evenly spread loads on decks of 0.1 to 50 t/m²; point loads are another check.",
        "The limit from both sides by our own arithmetic, with and without a total.", ladder=load_ladder,
    ),
    Criterion(
        "deck-pitch", "Length on paper against counted pitches",
        (Input("claimed", "Length on paper", "number", "m", low=1, high=150), Input("counted", "Pitches counted", "whole", low=1, high=200),
         Input("pitch", "Pitch", "number", "m", low=0.3, high=10)),
        COUNT, judge_pitch, "Fittings at one regular pitch over the whole length.", "One case of the trade and both ends by our own arithmetic.",
    ),
    Criterion(
        "deck-area", "Clear deck area on paper against its sides",
        (Input("claimed", "Area on paper", "number", "m²", low=1, high=5000), Input("length", "Clear length", "number", "m", low=1, high=150),
         Input("breadth", "Clear breadth", "number", "m", low=1, high=40), Input("deducted", "Area taken up", "number", "m²", low=0, high=2000)),
        AREA, judge_area, "Rectangular working decks.", "One case and both ends of the tolerance by our own arithmetic.", profile=AGREEMENT,
    ),
)
