"""What the chapter on stability prints beside its figures: each weight's effect, the criteria one by one, the lightship, the loads on deck, the drawings."""

from collections.abc import Iterator, Sequence

from inspector.conversion.afloat import Start
from inspector.conversion.chapters import Bar, Bars, Curve, Graph, Lines
from inspector.conversion.deck_loads import DeckLoad
from inspector.conversion.levers import INTACT, Held, Levers
from inspector.conversion.shapes import ConversionError, Figure, Span
from inspector.conversion.stability import LIGHTSHIP_LIMITS, lightship_word
from inspector.conversion.weights import Weight, centre, of_lightship, raised_by, total
from inspector.criteria.floating import LIGHTSHIP
from inspector.quantities import show

MET = {True: "kept", False: "not kept", None: "not known"}
MOST_BARS = 12
DIGITS = {"m·rad": 3, "m": 2, "deg": 0}


def text(span: Span | None, digits: int = 2) -> str:
    """A span in a cell: one number where it is exact, low to high (likely) else, a dash where there is none."""
    if span is None:
        return "–"
    low, high = (show(value, "", digits) for value in (span.low, span.high))
    if low == high:
        return low
    return f"{low} to {high}" if span.point is None else f"{low} to {high} ({show(span.point, '', digits)})"


def effects(weights: Sequence[Weight], start: Start) -> list[tuple[Weight, Span | None]]:
    """Each weight with what it alone does to KG [m], greatest first; None where its height or the starting KG is not known."""
    mass, kg = start.get("displacement"), start.kg
    found = [(one, _raised(mass, kg, one)) for one in weights]
    return sorted(found, key=lambda pair: -abs(pair[1].middle) if pair[1] else 1.0)


def _raised(mass: float | None, kg: float | None, weight: Weight) -> Span | None:
    if mass is None or kg is None:
        return None
    try:
        return raised_by(mass, kg, weight)
    except ConversionError:   # it alone takes off more than floats: the displacement tells that
        return None


def weight_lines(weights: Sequence[Weight], masses: Sequence[Figure], start: Start) -> Lines:
    """The list of weights with centres and effects."""
    how = {one.name: one.formula_text for one in masses}
    rows = tuple((one.name, one.act, text(one.mass, 1), *map(_bare, (one.lcg, one.tcg, one.vcg)), text(raised, 3), one.part, how.get(one.name, ""))
                 for one, raised in effects(weights, start))
    return Lines("Weights off and on", ("what", "act", "mass, t", "along, m", "off centre, m", "above keel, m", "KG by it alone, m", "part of", "mass from"),
                 rows, (3, 4, 5), "Along: from the after perpendicular. A low weight taken off raises KG as a high weight put on does.")


def _bare(value: float | None) -> str:
    return "not given" if value is None else show(value, "", 2)


def criteria_lines(rows: Sequence[Held]) -> Lines:
    """The general criteria, one by one."""
    told = tuple((one.name, f"{one.asked:g} {one.unit}", text(one.found, DIGITS[one.unit]), MET[one.met]) for one in rows)
    return Lines("General intact criteria", ("criterion", "at least", "found", ""), told, (),
                 f"{INTACT}. Not known: the levers given do not tell it; the greatest lies somewhere between its neighbours. "
                 "Severe wind and rolling (2.3) and damage stability are not reckoned here.")


def lightship_lines(weights: Sequence[Weight], start: Start) -> Lines | None:
    """What the changed lightship asks for; None where no lightship or no change of it is given."""
    mass, changing = start.get("lightship"), of_lightship(weights)
    if not mass or not changing:
        return None
    rows = []
    for name, percent in lightship_shares(mass, changing, start):
        amend, incline = LIGHTSHIP_LIMITS[name]
        rows.append((name, f"{text(percent, 2)} %", f"{amend:g} %", f"{incline:g} %", lightship_word(percent, amend, incline)))
    return Lines("The lightship changes", ("of", "by", "amend from", "incline above", "so"), tuple(rows), (2, 3),
                 f"{LIGHTSHIP}. Class and flag may ask for an inclining test in any case.")


def lightship_shares(mass: float, changing: Sequence[Weight], start: Start) -> Iterator[tuple[str, Span]]:
    """By how much the lightship differs [%]: of its mass, its centre along (of the length) and its height (of itself), as far as the centres are given."""
    yield "mass", 100 * total(changing) / mass
    along, height, length = start.get("lightship_lcg"), start.get("lightship_vcg"), start.get("lpp")
    try:
        if along is not None and length and all(one.lcg is not None for one in changing):
            yield "centre along the length", 100 * (centre(mass, along, changing, "lcg", Span.exact(0.0)) - along) / length
        if height and all(one.vcg is not None for one in changing):
            yield "centre in height", 100 * (centre(mass, height, changing, "vcg", Span.exact(0.0)) - height) / height
    except ConversionError:   # the list takes off more than the lightship: the share of the mass tells that
        return


def deck_lines(loads: Sequence[DeckLoad]) -> Lines:
    """Loads on deck against what is declared."""
    rows = tuple((one.name, show(one.mass, "t"), show(one.mean, "", 2), show(one.moving, "", 2), "–" if one.line is None else show(one.line, "", 2),
                  "not declared" if one.share is None else text(one.share, 0) + " %") for one in loads)
    return Lines("Loads on deck", ("load", "mass", "mean, t/m²", "in a seaway, t/m²", "under its walls, t/m", "of what is declared"), rows, (1, 2, 3, 4, 5),
                 "Of what is declared: at rest, and with the acceleration of a seaway on top; whether the declared load includes motion, the ship's plan says. "
                 "Walls must land on bulkheads, girders or new pillars: a structural check is always needed.")


def drawings(weights: Sequence[Weight], start: Start, before: Levers | None, after: Levers | None) -> Iterator[Bars | Graph]:
    """What each weight does to KG, and the righting levers before and after."""
    known = [(one, raised) for one, raised in effects(weights, start) if raised is not None][:MOST_BARS]
    if known:
        bars = tuple(Bar(f"{one.name[:28]} {one.act}", raised.low, raised.point, raised.high, 0.0) for one, raised in known)
        most, moved = known[0]
        told = f"{most.name} {most.act} moves KG most, by {text(moved, 3)} m."
        yield Bars("What each weight alone does to KG", "m", bars, told, "no change")
    if after is not None:
        curves = [Curve("before", tuple(zip(before.angles, before.levers, strict=True)), dashed=True)] if before else []
        curves.append(Curve("after, estimate", tuple(zip(after.angles, after.levers, strict=True)), dots=True))
        told = f"After the changes the greatest lever is {show(max(after.levers), 'm', 2)} at about {after.peak.point:g} deg."
        yield Graph("Righting levers", "heel, deg", "lever, m", tuple(curves), told)
