"""The load balance: demand by condition against the sets with the largest one stopped.

With any one set stopped the rest should carry normal propulsion, safety and least comfort
(SOLAS II-1/41.1.2, from memory); a yacht outside trade is not bound by it, yet it is the usual
measure.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from functools import lru_cache

from inspector.conversion.core.bounds import BadInput, or_default, plain
from inspector.conversion.core.figure import PRACTICE, Default, Figure, no_figure, unique
from inspector.conversion.core.span import Span
from inspector.conversion.power.plant_elements import GeneratorSet
from inspector.conversion.power.three_phase import usable_power
from inspector.criteria.core.source import Source

ONE_SET_OUT = Source.recalled(
    "SOLAS II-1/41.1, main source of electrical power",
    "41.1.1, 41.1.2 and 41.1.4: any one set stopped",
    edition="edition not read",
)
CEILING = Default(
    "most that the remaining sets are planned for",
    0.90,
    "above 90 % nothing is left for a step of load",
)
RATED_FACTOR = Default("power factor on the plates of the sets", 0.80, "usual for marine sets")
LOAD_FACTOR = Default(
    "power factor of the ship's load", 0.80, "motors without a reading at the board"
)
SPARE = "spare for new consumers with one set out"


@dataclass(frozen=True)
class Balance:
    """One condition with the largest set stopped.

    Parameters
    ----------
    condition : str
    stopped : str
        The set that is stopped; "" where no set in order is left to feed it.
    remaining : float
        What the other sets can give [kW].
    demand : Figure
        Demand [kW].
    margin : Figure
        Remaining less demand [kW].
    spare : Figure
        What is left for new consumers below the ceiling [kW].
    place : str
        The buses that are balanced, as they are named in sentences; "" where all are one.
    sets : tuple of GeneratorSet
        The sets in order that feed them.
    buses : frozenset of str
        These buses; empty where all are one.
    """

    condition: str
    stopped: str
    remaining: float
    demand: Figure
    margin: Figure
    spare: Figure
    place: str = ""
    sets: tuple[GeneratorSet, ...] = ()
    buses: frozenset[str] = frozenset()

    @property
    def name(self) -> str:
        """The condition, with the buses where they are not all of the plant."""
        return f"{self.condition}, {self.place}" if self.place else self.condition

    @property
    def carried(self) -> bool | None:
        """True or False where the whole span agrees; None where it is not known."""
        # None as well where the span has zero within it.
        return None if self.margin.span is None else self.margin.span.at_least(0)


def main_sets(sets: Iterable[GeneratorSet]) -> tuple[GeneratorSet, ...]:
    """Return the sets that count as main plant: in order, and not the emergency set.

    Parameters
    ----------
    sets : iterable of GeneratorSet

    Returns
    -------
    tuple of GeneratorSet

    References
    ----------
    SOLAS II-1/41.1 (from memory).
    """
    return tuple(generator for generator in sets if generator.counts)


# The search for the wind that is withstood asks for the same few sets many thousand times.
@lru_cache(maxsize=1024)
def set_capacity(generator: GeneratorSet, load_factor: float | None = None) -> float:
    """Return what a set can give at the power factor of the load, by current as well as by power.

    Parameters
    ----------
    generator : GeneratorSet
    load_factor : float, optional
        Power factor of the load; without it, that of LOAD_FACTOR.

    Returns
    -------
    float
        Power [kW].

    References
    ----------
    Plain arithmetic of three-phase circuits, see ``usable_power``.
    """
    plate = RATED_FACTOR.value if generator.power_factor is None else generator.power_factor
    factor = LOAD_FACTOR.value if load_factor is None else load_factor
    return usable_power(generator.rated, plate, factor)


def assumed_power_factors(
    sets: Iterable[GeneratorSet], load_factor: float | None
) -> tuple[Default, ...]:
    """Return the defaults that are used for power factors that nobody gave.

    Parameters
    ----------
    sets : iterable of GeneratorSet
    load_factor : float or None
        Power factor of the load as read at the board.

    Returns
    -------
    tuple of Default

    References
    ----------
    Power factor of 0.8 for sets and motors (common practice, no source).
    """
    no_plate = any(generator.power_factor is None for generator in sets)
    plates = (RATED_FACTOR,) if no_plate else ()
    return plates if load_factor is not None else (*plates, LOAD_FACTOR)


def largest_set_out(
    sets: Iterable[GeneratorSet],
    need: Figure,
    condition: str,
    load_factor: float | None = None,
    ceiling: float | None = None,
    *,
    place: str = "",
) -> Balance:
    """Return the balance of a condition with the largest main set stopped.

    Parameters
    ----------
    sets : iterable of GeneratorSet
    need : Figure
        Demand [kW].
    condition : str
    load_factor : float, optional
        Power factor of the load.
    ceiling : float, optional
        Share of the remaining sets that is planned for; without it, 0.9 is a listed default.
    place : str
        The buses that these sets feed, where they are not all of the plant.

    Returns
    -------
    Balance

    Raises
    ------
    BadInput
        There is no main set in order in the whole plant.

    References
    ----------
    SOLAS II-1/41.1 (from memory); ceiling of 0.9 (common practice, no source).
    """
    # An island may be without a set, and then carries nothing; a plant may not.
    usable = main_sets(sets) if place else require_sets(main_sets(sets))
    if ceiling is not None:
        plain("ceiling", ceiling, 0.3, 1)
    powers = {generator.name: set_capacity(generator, load_factor) for generator in usable}
    # The set that can give most is the worst to lose, whatever its plate says.
    largest = max(powers, key=lambda name: powers[name], default="")
    remaining = sum(powers.values()) - powers.get(largest, 0.0)
    where = f"{condition}, {place}" if place else condition
    margin_name, spare_name = (f"{what} with one set out, {where}" for what in ("margin", "spare"))
    # The sets are known all the same, so that the table shows what is left of them.
    if need.span is None:
        unknown = (no_figure(name, "kW", need.gaps) for name in (margin_name, spare_name))
        return Balance(condition, largest, remaining, need, *unknown, place, usable)
    share, assumed_ceiling = or_default(ceiling, CEILING)
    defaults = (*need.defaults, *assumed_power_factors(usable, load_factor))
    # Said with every figure, since the list of sets is longer than what counts of it.
    never = "sets out of order and for emergency never count"
    out = f"{largest or 'No set'} is the set that is out; {never}."
    assumed = (out, *need.assumptions)
    margin = Figure(
        margin_name,
        remaining - need.span,
        "kW",
        "sum of the sets − largest − demand",
        assumed,
        defaults,
        source=ONE_SET_OUT,
    )
    spare = Figure(
        spare_name,
        share.low * remaining - need.span,
        "kW",
        "ceiling × (sum of the sets − largest) − demand",
        assumed,
        (*defaults, *assumed_ceiling),
        source=PRACTICE,
    )
    return Balance(condition, largest, remaining, need, margin, spare, place, usable)


def require_sets(usable: tuple[GeneratorSet, ...]) -> tuple[GeneratorSet, ...]:
    """Refuse a plant in which no set counts.

    Parameters
    ----------
    usable : tuple of GeneratorSet
        The sets that count as main plant.

    Returns
    -------
    tuple of GeneratorSet

    Raises
    ------
    BadInput
        There is none.

    References
    ----------
    Model of our own.
    """
    if not usable:
        raise BadInput(
            "Generating sets: none is in order and not for emergency, so no power can be "
            "calculated; give one at least.",
            field="sets",
            value=(),
        )
    return usable


def spare_for_new(balances: Iterable[Balance]) -> Figure:
    """Return the spare for new consumers.

    Parameters
    ----------
    balances : iterable of Balance

    Returns
    -------
    Figure
        Spare [kW], wherever it is taken: the least over conditions and islands; those that are not
        known are gaps.

    References
    ----------
    Model of our own.
    """
    spares = [balance.spare for balance in balances]
    # A condition that is not known may be the tightest; its gaps go along with the result.
    known = [spare for spare in spares if spare.span is not None]
    gaps = tuple(gap for spare in spares if spare.span is None for gap in spare.gaps)
    if not known:
        return no_figure(SPARE, "kW", gaps)
    tightest = min(known, key=lambda spare: spare.span.middle)
    return Figure(
        SPARE,
        _least([spare.span for spare in known]),
        "kW",
        f"least over the conditions: {tightest.name.partition(', ')[2]}",
        tightest.assumptions,
        unique(*(spare.defaults for spare in known)),
        gaps,
        PRACTICE,
    )


def _least(spans: list[Span]) -> Span:
    """Return the span of the least of several values."""
    points = [span.point for span in spans]
    likely = None if None in points else min(points)
    return Span(min(span.low for span in spans), likely, min(span.high for span in spans))
