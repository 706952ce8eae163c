"""Four loading conditions after the conversion: departure, arrival, worst, and as inspected."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from inspector.conversion.core.case import Case
from inspector.conversion.core.figure import Default, Gap
from inspector.conversion.core.particulars import Row
from inspector.conversion.core.ship_particulars import HYDROSTATICS, TANKS
from inspector.conversion.core.span import ConversionError, Span
from inspector.conversion.core.tank_rows import tanks_once
from inspector.conversion.stability.booklet.booklet_tables import cross_curves, hydrostatic_table
from inspector.conversion.stability.calculation import Stability
from inspector.conversion.stability.loading.afloat import Afloat, Vessel, afloat
from inspector.conversion.stability.loading.ballast import Chooser, ballast_tanks, loaded
from inspector.conversion.stability.loading.fillings import (
    LEFT,
    STANDARD,
    USED,
    fillings,
    surfaces,
)
from inspector.conversion.stability.loading.particulars import LOADING
from inspector.conversion.stability.metacentric_height import ANY_HEIGHT
from inspector.conversion.stability.weights import Weight, common_centre
from inspector.record.typed_values import typed_number
from inspector.values.quantity import Quantity, sentence

DEPARTURE, ARRIVAL, AS_INSPECTED = "departure", "arrival", "as inspected"
# Shares used, between which the worst is looked for.
STEPS = tuple(step / 10 for step in range(11))
# More make a passenger ship under SOLAS.
MOST_PASSENGERS = 12
PERSON_WITH_EFFECTS = Default(
    "mass of a person with effects",
    0.1,
    sentence(
        "{person} and {effects}.",
        person=Quantity.exact(75, "kg"),
        effects=Quantity.exact(25, "kg"),
    ),
    unit="t",
)
NAME = "Loading conditions"
FULL_HEIGHT = Default(
    "height of what is in a tank",
    "that of the full tank",
    "The centre of a tank that is partly filled is lower: the careful side.",
)


@dataclass(frozen=True)
class LoadingConditions:
    """The four conditions, as far as they can be calculated.

    Parameters
    ----------
    conditions : tuple of Afloat
    gaps : tuple of Gap
        What is missing for them or for one of their checks.
    defaults : tuple of Default
    faults : tuple of str
    """

    conditions: tuple[Afloat, ...] = ()
    gaps: tuple[Gap, ...] = ()
    defaults: tuple[Default, ...] = ()
    faults: tuple[str, ...] = ()

    @property
    def met(self) -> Span | None:
        """How many of the four surely and how many possibly meet every check; None without any."""
        if not self.conditions:
            return None
        verdicts = [condition.met for condition in self.conditions]
        return Span(verdicts.count(True), None, len(verdicts) - verdicts.count(False))


def loading_conditions(case: Case, stability: Stability) -> LoadingConditions:
    """Return the four loading conditions of a vessel after her conversion.

    Parameters
    ----------
    case : Case
    stability : Stability
        What comes off and goes on, and the condition as inspected.

    Returns
    -------
    LoadingConditions

    References
    ----------
    IS Code 2008, part B, 3.4.1 (from memory) for departure and arrival; the search for the worst
    between them and the choice of ballast are models of our own.
    """
    tanks, _ = tanks_once(case.rows(TANKS))
    missing = _missing(stability, tanks, case)
    if missing is not None:
        return LoadingConditions(gaps=(missing,))
    vessel = _vessel(case, stability)
    chooser = Chooser(vessel, ballast_tanks(tanks))
    builder = _Builder(vessel, chooser, tanks, stability, case)
    try:
        ends = [builder.at(DEPARTURE, 0.0), builder.at(ARRIVAL, 1.0)]
        worst = min(STEPS, key=builder.margin)
        named = f"worst, {100 * worst:.0f} % used"
        between = builder.at(named, worst)
    except ConversionError as problem:
        return LoadingConditions(faults=(f"{NAME}: {problem}",))
    inspected = _as_inspected(stability, vessel)
    shown = (*ends, between, *(() if inspected is None else (inspected,)))
    defaults = (STANDARD, FULL_HEIGHT, *builder.defaults)
    return LoadingConditions(shown, tuple(_gaps(vessel, builder)), defaults)


def _missing(stability: Stability, tanks: Sequence[Row], case: Case) -> Gap | None:
    """Return what the conditions cannot be calculated without."""
    start = stability.start
    needed = {
        "lightship": start.number("lightship"),
        "its height": start.number("lightship_vcg"),
        "hydrostatics by draught": hydrostatic_table(case, []),
        "tanks for fuel or water": [row for row in tanks if row.text("kind") in USED],
    }
    lacking = [name for name, value in needed.items() if not value]
    if not lacking:
        return None
    why = f"Departure, arrival and worst are not calculated without: {', '.join(lacking)}."
    return Gap(NAME, why)


def _vessel(case: Case, stability: Stability) -> Vessel:
    """Return what all conditions share."""
    row = case.one(LOADING)
    passage = case.tables["propulsion"].one if "propulsion" in case.tables else Row("one")
    height, diameter = passage.number("shaft_height"), passage.number("diameter")
    passengers = row["passengers"] or 0
    speed = row.number("service_speed") or typed_number(case.assessment.brief.get("speed"), 1)
    return Vessel(
        stability.start,
        hydrostatic_table(case, []),
        cross_curves(case, []),
        stability.side,
        None if height is None or diameter is None else height + diameter / 2,
        passengers if passengers > MOST_PASSENGERS else 0,
        row.number("crowd"),
        speed,
    )


class _Builder:
    """Makes conditions of one vessel, each with its ballast."""

    def __init__(
        self,
        vessel: Vessel,
        chooser: Chooser,
        tanks: Sequence[Row],
        stability: Stability,
        case: Case,
    ) -> None:
        self.vessel, self.chooser, self.tanks = vessel, chooser, tanks
        changes = stability.weight_list.weights
        self.lightship = [weight for weight in changes if weight.part == "lightship"]
        self.loads = [w for w in changes if w.act == "on" and w.part != "lightship"]
        self.defaults: tuple[Default, ...] = ()
        self.row = case.one(LOADING)
        self.persons = typed_number(case.assessment.brief.get("persons"), 1)
        if self.persons:
            self.defaults = (PERSON_WITH_EFFECTS,)

    def at(self, name: str, used: float) -> Afloat:
        """Return the condition after a share of what is carried is used."""
        filled, weights = fillings(self.tanks, used), list(self._weights(used))
        moment = surfaces(filled)
        condition = loaded(self.vessel, weights, moment, self._spread(weights))
        ballast = self.chooser.choose(condition)
        weights += [filling.weight for filling in ballast]
        names = tuple(filling.tank.text("name") for filling in ballast)
        return afloat(self.vessel, name, weights, moment, names)

    def margin(self, used: float) -> float:
        """Return by how much the condition after a share is used keeps its limit [m]."""
        filled, weights = fillings(self.tanks, used), list(self._weights(used))
        moment = surfaces(filled)
        condition = loaded(self.vessel, weights, moment, self._spread(weights))
        for filling in self.chooser.choose(condition):
            condition = condition.with_tank(filling.weight)
        return self.chooser.margin(condition)

    def _spread(self, weights: Sequence[Weight]) -> Span:
        """Return KG without ballast [m], for how far it may be above its likely value."""
        start = self.vessel.start
        lightship, height = start.number("lightship"), start.number("lightship_vcg")
        return common_centre(lightship, height, weights, "vcg", ANY_HEIGHT.value)

    def _weights(self, used: float) -> Iterator[Weight]:
        """Yield all that changes the lightship and all that is loaded."""
        yield from self.lightship
        left = 1 - (1 - LEFT) * used
        for weight in self.loads:
            share = left if weight.part == "stores" else 1.0
            yield replace(weight, mass=weight.mass * share)
        for filling in fillings(self.tanks, used):
            if filling.weight is not None:
                yield filling.weight
        stores = self.row.number("stores")
        if stores:
            places = (self.row.number("stores_lcg"), 0.0, self.row.number("stores_vcg"))
            yield Weight("stores", "on", Span.exact(stores * left), *places, "stores")
        if self.persons:
            mass = Span.exact(self.persons * PERSON_WITH_EFFECTS.value)
            places = (self.row.number("persons_lcg"), 0.0, self.row.number("persons_vcg"))
            yield Weight("persons", "on", mass, *places, "deadweight")


def _as_inspected(stability: Stability, vessel: Vessel) -> Afloat | None:
    """Return the condition as found with the changes; None where its displacement is not known."""
    condition = stability.condition
    if condition.mass.span is None:
        return None
    limit = condition.kg_limit.span if condition.kg_limit is not None else None
    aft = condition.aft.span
    fluid = condition.surfaces.span is not None
    under = None if aft is None or vessel.tip is None else aft - vessel.tip
    heel = None if condition.list_angle is None else condition.list_angle.span
    lacking = () if under is not None else ("propeller under water",)
    return Afloat(
        AS_INSPECTED,
        condition.mass.span,
        (),
        stability.limited_kg.span,
        limit,
        condition.gm.span if fluid else None,
        condition.amidships.span,
        condition.draught_left.span,
        aft,
        None,
        heel,
        stability.criteria,
        stability.wind,
        (),
        under,
        lacking,
    )


def _gaps(vessel: Vessel, builder: _Builder) -> Iterator[Gap]:
    """Yield what is missing for a check of the conditions."""
    if vessel.tip is None:
        why = "Give its diameter and its centre above the keel among the passage."
        yield Gap("Propeller under water in each loading condition", why)
    table = vessel.table
    if table is not None and not all(table.has(name) for name in ("lcb", "lcf", "mctc")):
        why = "Give LCB, LCF and MCTC by draught; draughts are those of an even keel without them."
        yield Gap("Trim of the loading conditions", why)
    if surfaces(fillings(builder.tanks, 0.5)) is None:
        why = "Give the free-surface inertia of every tank for fuel, water and holding."
        yield Gap("Free surfaces of the loading conditions", why)
    if vessel.passengers and vessel.crowd is None:
        why = "Give how far from the centreline passengers can stand."
        yield Gap("Crowding to one side", why)


READ = (LOADING, HYDROSTATICS, TANKS)
