"""The chapter on weight and stability: what comes off and goes on, how she floats then, what her metacentric height is, and what the deck is asked to carry."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from inspector.conversion import afloat, stability_lines
from inspector.conversion.afloat import Start
from inspector.conversion.book import Case
from inspector.conversion.chapters import Chapter, Lines, Requirement
from inspector.conversion.deck_loads import DECKS, DeckLoad, deck_load
from inspector.conversion.free_surfaces import free_surfaces
from inspector.conversion.levers import LEAST, Held, Levers, held
from inspector.conversion.shapes import ConversionError, Figure, Gap, Span, no_figure, unique
from inspector.conversion.ship_tables import HYDROSTATICS, TANKS
from inspector.conversion.tables import Column, Table
from inspector.conversion.weights import Weight, total
from inspector.conversion.weights_table import WEIGHTS, Listed, listed
from inspector.errors import InspectorError
from inspector.quantities import show
from inspector.words import capital

LEVERS = Table("levers", "Righting levers",
               "From the booklet: levers GZ of the starting condition, or cross curves KN at the displacement after the changes.", (
    Column("angle", "Heel", "deg", needed=True, high=90),
    Column("gz", "GZ before the changes", "m", low=-5, high=10),
    Column("kn", "KN after the changes", "m", low=-5, high=30),
))
TABLES = (WEIGHTS, LEVERS, DECKS)
READ = (HYDROSTATICS, TANKS, *TABLES)
VERIFY = ("Verify before you rely on it: this is arithmetic on what was typed, and no approval. Only a naval architect's calculation, an inclining test "
          "and a stability booklet approved by class and flag decide how this vessel may be loaded, changed and sailed.")
TOLD_FROM = 0.02   # m of KG, below which a single weight is not worth a warning
TOLERANCE = 0.05   # m by which a given GM may lie off KM - KG


@dataclass(frozen=True)
class Answers:
    """All of the chapter that is reckoned, before it is put into words."""

    list: Listed
    start: Start
    figures: dict[str, Figure]
    curve: Levers | None             # as typed: GZ before, or KN after
    cross: bool                      # whether it is KN
    rise: Span | None                # by which it is lowered
    criteria: tuple[Held, ...]
    loads: tuple[DeckLoad, ...]
    faults: tuple[str, ...]


def answers(case: Case) -> Answers:
    """Everything reckoned from one inspection's tables. Never raises for recorded data."""
    found, start = listed(case), Start(case.one(HYDROSTATICS))
    figures = _figures(found.weights, start, case)
    faults = [*found.faults]
    loads = tuple(_loads(case, faults))
    curve, cross = _curve(case, faults)
    rise = None if curve is None else _rise(start, figures, cross)
    gm = figures["gm"].span
    if figures["surfaces"].span is None and gm is not None and gm.high >= LEAST["initial GM"]:
        gm = None   # free surfaces only lower it, so that a solid GM can fail the criterion and never keep it
    try:
        criteria = held(curve if rise is not None else None, rise or Span.exact(0.0), gm, start.get("flooding"))
    except ConversionError as problem:
        faults.append(f"{LEVERS.title}: {problem}")
        criteria = held(None, Span.exact(0.0), gm)
    return Answers(found, start, figures, curve, cross, rise, criteria, loads, tuple(faults))


def _figures(weights: tuple[Weight, ...], start: Start, case: Case) -> dict[str, Figure]:
    mass = _kept("Displacement after", "t", afloat.displacement, start, weights)
    sunk = _kept("Mean draught, change", "m", afloat.sinking, start, weights)
    trim = _kept("Trim, change", "m", afloat.trim, start, weights)
    fore, aft = _kept_pair(start, sunk, trim)
    kg = _kept("KG after, solid", "m", afloat.kg, start, weights)
    km = _kept("KM after", "m", afloat.km, start, sunk)
    surfaces = free_surfaces(case.rows(TANKS), start.get("free_surface"))
    gm = _kept("GM after", "m", afloat.gm, km, kg, surfaces, mass)
    found = {"mass": mass, "sunk": sunk, "trim": trim, "fore": fore, "aft": aft, "kg": kg, "km": km, "surfaces": surfaces, "gm": gm}
    extra = {"list": _kept("List", "deg", afloat.listing, weights, mass, gm), "roll": _kept("GM of the day by its roll period", "m", afloat.rolled, start)}
    return {**found, **{key: one for key, one in extra.items() if one is not None}}


def _kept(name: str, unit: str, reckon: Callable[..., Figure | None], *given) -> Figure | None:
    """A figure, or the refusal as its gap."""
    try:
        return reckon(*given)
    except InspectorError as problem:
        return no_figure(name, unit, (Gap(name, str(problem)),))


def _kept_pair(start: Start, sunk: Figure, trim: Figure) -> tuple[Figure, Figure]:
    try:
        return afloat.draughts(start, sunk, trim)
    except InspectorError as problem:
        gap = Gap("Draughts after", str(problem))
        return no_figure("Draught forward after", "m", (gap,)), no_figure("Draught aft after", "m", (gap,))


def _curve(case: Case, faults: list[str]) -> tuple[Levers | None, bool]:
    """The typed curve, and whether it is KN; a curve begins at no lever and no heel."""
    rows = sorted(case.rows(LEVERS), key=lambda row: row["angle"])
    cross = any(row["kn"] is not None for row in rows)
    told = [(row["angle"], row["kn" if cross else "gz"]) for row in rows if row["kn" if cross else "gz"] is not None]
    if not told:
        return None, cross
    if told[0][0] > 0:
        told.insert(0, (0.0, 0.0))
    try:
        return Levers(*zip(*told, strict=True)), cross
    except ConversionError as problem:
        faults.append(f"{LEVERS.title}: {problem}")
        return None, cross


def _rise(start: Start, figures: dict[str, Figure], cross: bool) -> Span | None:
    """By how much the curve is lowered [m times the sine of the heel]: KN by the whole fluid KG, GZ by its change; None where KG or free surface is unknown."""
    kg, surfaces, mass = (figures[key].span for key in ("kg", "surfaces", "mass"))
    if kg is None or surfaces is None or mass is None:
        return None
    fluid = kg + surfaces / mass
    return fluid if cross else fluid - (start.kg + start.surface_rise)


def _loads(case: Case, faults: list[str]) -> Iterator[DeckLoad]:
    for row in case.rows(DECKS):
        try:
            yield deck_load(row.text("name"), *(row.number(name) for name in ("load", "area", "rated", "total", "walls", "acceleration")))
        except InspectorError as problem:
            faults.append(f"{DECKS.title}: {problem}")


def chapter(case: Case) -> Chapter:
    """The chapter on weight and stability."""
    found = answers(case)
    figures = (*_changes(found), *found.figures.values())
    gaps = unique(found.list.gaps, _gaps(found), *(one.gaps for one in found.figures.values() if one.span is None))
    told = bool(found.list.weights or found.loads or found.start.get("displacement"))
    return Chapter(
        "stability", "Weight and stability", _answer(found), figures if told else (), tuple(_lines(found)),
        tuple(stability_lines.drawings(found.list.weights, found.start, *_curves(found))), warnings=tuple(_warnings(found)), gaps=gaps,
        defaults=unique(*(one.defaults for one in found.list.masses), *(one.defaults for one in found.loads)),
        faults=(*case.faults(*READ), *found.faults), verify=VERIFY if told else "", tables=tuple(table.id for table in READ),
        requirements=tuple(_requirements(found)),
    )


def _changes(found: Answers) -> Iterator[Figure]:
    for act, name in (("off", "Comes off"), ("on", "Goes on")):
        chosen = [one for one in found.list.weights if one.act == act]
        if chosen:
            masses = sum((one.mass for one in chosen), Span.exact(0.0))
            yield Figure(name, masses, "t", f"sum of {len(chosen)} of the list")


def _answer(found: Answers) -> str:
    mass, gm = found.figures["mass"].span, found.figures["gm"]
    if mass is None:
        if not found.list.weights:
            return "Neither the starting condition nor a weight is given, so nothing can be told of weight and stability."
        return f"The list changes her by {stability_lines.text(total(found.list.weights), 0)} t; without her displacement nothing more can be told."
    changed = f"She would displace {stability_lines.text(mass, 0)} t"
    if gm.span is None:
        return f"{changed}; her metacentric height is not known: {gm.gaps[0].name} is missing."
    kept = {True: "above", False: "below", None: "not surely above"}[gm.span.at_least(LEAST["initial GM"])]
    solid = " before any free surface" if found.figures["surfaces"].span is None else ""
    height = f"a metacentric height of {stability_lines.text(gm.span)} m{solid}"
    return f"{changed}, with {height}: {kept} the least of {LEAST['initial GM']:g} m by this first check."


def _lines(found: Answers) -> Iterator[Lines]:
    if found.list.weights:
        yield stability_lines.weight_lines(found.list.weights, found.list.masses, found.start)
    if found.figures["mass"].span is not None:
        yield stability_lines.criteria_lines(found.criteria)
    lightship = stability_lines.lightship_lines(found.list.weights, found.start)
    if lightship:
        yield lightship
    if found.loads:
        yield stability_lines.deck_lines(found.loads)


def _curves(found: Answers) -> tuple[Levers | None, Levers | None]:
    """The levers before (None where KN was typed) and after, at the middle of the rise."""
    if found.curve is None or found.rise is None:
        return None, None
    return None if found.cross else found.curve, found.curve.lowered(found.rise.middle)


def _gaps(found: Answers) -> Iterator[Gap]:
    start = found.start
    if start.get("displacement") is not None and found.curve is None:
        yield Gap("Righting levers", "GZ of the starting condition, or KN at the new displacement, every 5 or 10 deg to 40 deg or more, from the booklet.")
    if start.get("displacement") is not None and not start.get("lightship"):
        yield Gap("Lightship", "Whether the change asks for a new inclining test cannot be told without it.")
    if start.get("displacement") is not None and not start.row.text("booklet"):
        yield Gap("Stability booklet", "Its date and who approved it are not recorded: were these figures read in an approved booklet?")
    for one in found.loads:
        if one.share is None:
            yield Gap(f"Declared load under {one.name}", "Read it from the ship's own plan or the plate on deck.")


def _warnings(found: Answers) -> Iterator[str]:
    start, gm = found.start, found.figures["gm"].span
    if gm is not None and gm.low < LEAST["initial GM"]:
        yield (f"The metacentric height after the changes may be as little as {show(gm.low, 'm', 2)}, against at least {show(LEAST['initial GM'], 'm')}: "
               "this layout needs a naval architect before anything else is spent on it.")
    for one in found.criteria:
        if one.met is False and one.name != "initial GM":
            measured = stability_lines.text(one.found, stability_lines.DIGITS[one.unit])
            yield f"{one.name.capitalize()}: {measured} {one.unit}, against at least {one.asked:g}; not kept by this first check."
    yield from _height_warnings(found)
    limit, kg = start.get("limit_kg"), found.figures["kg"].span
    if limit is not None and kg is not None and kg.high > limit:
        yield f"KG may come to {show(kg.high, 'm', 2)} before free surface, against {show(limit, 'm', 2)} allowed by the booklet."
    if abs(start.disagreement) > TOLERANCE:
        yield f"KM less KG less free surface lies {show(start.disagreement, 'm', 2)} off the GM that was given: one of them was misread; KM and KG were used."
    rolled = found.figures.get("roll")
    if rolled and rolled.span and start.gm is not None and not rolled.span.contains(start.gm):
        yield (f"The timed roll tells a metacentric height of {stability_lines.text(rolled.span)} m, and the starting condition has {show(start.gm, 'm', 2)}: "
               "she lay otherwise that day, or the booklet is not hers any more.")
    if start.row.text("booklet") and not start.row["inclined_on"]:
        yield "No date of an inclining test is recorded: a booklet stands on one."
    for one in found.loads:
        if one.share is not None and one.share.high > 100:
            yield f"{one.name} reaches {stability_lines.text(one.share, 0)} % of what the deck is declared for: it needs a structural check."


def _height_warnings(found: Answers) -> Iterator[str]:
    """The weights that raise KG: what goes on high, and what comes off low."""
    for one, raised in stability_lines.effects(found.list.weights, found.start):
        if raised is not None and raised.low > 0 and raised.high >= TOLD_FROM:
            why = "put on above" if one.act == "on" else "taken off below"
            moved = stability_lines.text(raised, 3)
            yield (f"{capital(one.name)}, {why} the centre of gravity, alone raises KG by {moved} m "
                   "and takes as much from the metacentric height.")


def _requirements(found: Answers) -> Iterator[Requirement]:
    gm = found.figures["gm"].span if found.figures["surfaces"].span is not None else None
    if found.start.get("displacement") is not None or found.list.weights:
        yield Requirement("gm", "Metacentric height after the changes", LEAST["initial GM"], "m", gm)
    shares = [one.share for one in found.loads]
    if shares:
        known = None if None in shares else Span(*(max(getattr(one, end) for one in shares) for end in ("low", "point", "high")))
        yield Requirement("deck-load", "Heaviest load on deck, of what is declared", 100.0, "%", known, least=False)
