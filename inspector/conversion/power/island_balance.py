"""The load balance of each island: the buses that ties join in one way of running.

Power cannot pass an open tie: a bus that is short is not helped by a set on another one.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace

from inspector.conversion.core.figure import Figure, Gap, no_figure, unique
from inspector.conversion.core.span import Span
from inspector.conversion.power.cascade_failure import islands_of
from inspector.conversion.power.electrical_loads import (
    CONDITIONS,
    STATION_KEEPING,
    Consumer,
    demand,
)
from inspector.conversion.power.load_balance import Balance, largest_set_out
from inspector.conversion.power.plant import Plant, with_bus

AS_KEEPING_STATION = (
    "Ties whose state was not typed for this way of running are taken as they are while keeping "
    "station."
)
ANYWHERE = (
    "Loads whose bus nobody named may be on any bus: all of them here at most, none at least."
)
NONE_HERE = Figure("demand", Span.exact(0), "kW", "no load is typed on it")


def island_name(island: Iterable[str], buses: Iterable[str]) -> str:
    """Return an island as it is named in sentences: "bus A + bus B".

    Parameters
    ----------
    island, buses : iterable of str
        The buses of the island, and all buses of the plant.

    Returns
    -------
    str

    References
    ----------
    Model of our own.
    """
    return with_bus(" + ".join(sorted(island)), buses)


def balances_by_island(
    plant: Plant,
    consumers: Sequence[Consumer],
    thrusters: Mapping[frozenset[str], Figure],
    factor: float | None = None,
) -> tuple[Balance, ...]:
    """Return the balance of each island in each condition, with one set out.

    Parameters
    ----------
    plant : Plant
    consumers : sequence of Consumer
    thrusters : mapping of frozenset of str to Figure
        Island while keeping station -> what its thrusters draw then [kW].
    factor : float, optional
        Power factor of the load.

    Returns
    -------
    tuple of Balance
        By condition; an island without a set in order and without a load is left out. Any one set
        may be the one that is out, so that each island is balanced without its own largest.

    References
    ----------
    SOLAS II-1/41.1 (from memory) asks for any one set stopped; that it is asked of each island is
    plain arithmetic, since no power passes an open tie.
    """
    balances = []
    for condition in CONDITIONS:
        islands = islands_of(plant, condition=condition)
        for island in islands:
            # In other conditions what a list says of thrusters stands.
            drawn = thrusters.get(island) if condition == STATION_KEEPING else None
            need = _need(plant, consumers, condition, island, drawn)
            sets = [generator for generator in plant.sets if generator.bus in island]
            # A bus of a mistyped tie feeds nothing and asks for nothing.
            if need is not NONE_HERE or any(generator.counts for generator in sets):
                alone = len(islands) == 1
                place = "" if alone else island_name(island, plant.buses)
                need = _named(need, condition, place)
                balance = largest_set_out(sets, need, condition, factor, place=place)
                balances.append(replace(balance, buses=frozenset() if alone else island))
    return tuple(balances)


def _need(
    plant: Plant,
    consumers: Sequence[Consumer],
    condition: str,
    island: frozenset[str],
    thrusters: Figure | None,
) -> Figure:
    """Return the demand on an island; ``NONE_HERE`` where nothing can be on it."""
    if thrusters is not None and thrusters.span is None:
        gap = Gap(
            "power of the thrusters",
            "it follows from wind, current and areas, of which some are missing",
        )
        return no_figure("demand", "kW", (gap,))
    extra = None if thrusters is None else thrusters.span
    # With a single island every load is on it, named or not.
    if island >= set(plant.buses):
        return demand(consumers, condition, extra)
    here = [consumer for consumer in consumers if consumer.bus in island]
    loose = [consumer for consumer in consumers if not consumer.bus]
    if not here and not loose and consumers:
        return NONE_HERE if extra is None or not extra.high else _only(thrusters)
    # A list that is empty is not known, which is not the same as nothing on this bus.
    found = demand(here, condition, extra) if here or not loose else NONE_HERE
    if loose and found.span is not None:
        return _with_loose(found, demand(loose, condition), len(island) / len(plant.buses))
    return found


def _only(thrusters: Figure) -> Figure:
    """Return the demand of an island that nothing but thrusters draw from."""
    return Figure("demand", thrusters.span, "kW", "thrusters", thrusters.assumptions)


def _with_loose(found: Figure, loose: Figure, share: float) -> Figure:
    """Return a demand with what loads without a bus may add to it, likely their even share."""
    if loose.span is None:
        return loose
    added = Span(0.0, loose.span.middle * share, loose.span.high)
    return Figure(
        "demand",
        found.span + added,
        "kW",
        f"{found.formula_text} + loads without a bus",
        (*found.assumptions, ANYWHERE),
        unique(found.defaults, loose.defaults),
    )


def _named(need: Figure, condition: str, place: str) -> Figure:
    """Return a demand with the name of its condition and island."""
    name = ", ".join(part for part in ("demand", condition, place) if part)
    # Only where there is more than one island does the state of a tie matter.
    assumed = (AS_KEEPING_STATION,) if place else ()
    return Figure(
        name,
        need.span,
        "kW",
        need.formula_text,
        (*need.assumptions, *assumed),
        need.defaults,
        need.gaps,
        need.source,
    )


def worst_in(balances: Iterable[Balance], condition: str) -> Balance | None:
    """Return the island that is worst off in a condition.

    Parameters
    ----------
    balances : iterable of Balance
    condition : str

    Returns
    -------
    Balance or None
        One whose demand is not known comes first, then the least margin; None where there is none.

    References
    ----------
    Model of our own.
    """
    among = [balance for balance in balances if balance.condition == condition]
    return min(among, key=_margin, default=None)


def _margin(balance: Balance) -> float:
    return float("-inf") if balance.margin.span is None else balance.margin.span.middle
