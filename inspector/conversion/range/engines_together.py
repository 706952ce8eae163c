"""Several rows of engines as the one plant that they are, whatever their order."""

from collections.abc import Iterable, Sequence
from dataclasses import replace

from inspector.conversion.core.figure import Gap
from inspector.conversion.range.engines import ConsumptionPoint, Engine
from inspector.values.formatting import show
from inspector.values.text import listed


def together(engines: Iterable[Engine]) -> tuple[Engine | None, tuple[Gap, ...]]:
    """Return engines of one use as one plant, and what is to be asked about them.

    Parameters
    ----------
    engines : iterable of Engine

    Returns
    -------
    tuple of (Engine or None, tuple of Gap)
        Like engines are counted together. Unlike ones share the load by their ratings, at the
        dearest consumption among them, and the gap names them.

    References
    ----------
    Engines in parallel share by their ratings (common practice, no source).
    """
    among = _counted(engines)
    if len(among) < 2:
        return (among[0] if among else None), ()
    count = sum(engine.count for engine in among)
    power = sum(engine.power * engine.count for engine in among)
    years = [engine.built for engine in among]
    speeds = [engine.rpm for engine in among]
    combined = Engine(
        listed([engine.name for engine in among]),
        power / count,
        count,
        # The faster and the older engine burns more; where one is not known, none is claimed.
        None if None in speeds else max(speeds),
        None if None in years else min(years),
        _dearest(among),
        among[0].kind,
    )
    each = [f"{engine.count} × {engine.name} of {show(engine.power, 'kW')}" for engine in among]
    why = (
        f"{listed(each)} are taken as running together, each by its rating, at the dearest "
        "consumption among them; which of them run on passage is worth asking"
    )
    return combined, (Gap("engines of unlike kinds", why),)


def _counted(engines: Iterable[Engine]) -> list[Engine]:
    """Return engines with like ones counted together, by rating and name."""
    like: dict[tuple, list[Engine]] = {}
    for engine in engines:
        points = tuple(sorted(engine.points, key=lambda point: point.load))
        key = (engine.power, engine.rpm or 0.0, engine.built or 0, points, engine.kind)
        like.setdefault(key, []).append(engine)
    found = [
        replace(
            min(group, key=lambda engine: engine.name),
            count=sum(engine.count for engine in group),
            name=listed(sorted({engine.name for engine in group})),
        )
        for group in like.values()
    ]
    return sorted(found, key=lambda engine: (-engine.power, engine.name, repr(engine)))


def _dearest(engines: Sequence[Engine]) -> tuple[ConsumptionPoint, ...]:
    """Return the greatest rate at each load that all of them have; none where one has none."""
    tables = [{point.load: point for point in engine.points} for engine in engines]
    shared = set(tables[0]).intersection(*tables[1:])
    return tuple(
        ConsumptionPoint(
            load,
            max(table[load].rate for table in tables),
            all(table[load].measured for table in tables),
        )
        for load in sorted(shared)
    )
