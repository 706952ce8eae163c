"""The loading conditions as they are shown: one table, and what is not met in words."""

from collections.abc import Iterator

from inspector.conversion.core.chapter import FigureTable, table_columns
from inspector.conversion.core.span import Span
from inspector.conversion.stability.loading.afloat import Afloat
from inspector.conversion.stability.loading.heeling import PASSENGER_CRITERIA
from inspector.conversion.stability.loading.loading_conditions import LoadingConditions
from inspector.values.quantity import Cell, Quantity, sentence
from inspector.values.text import capital, listed

WORDS = {True: "met", False: "not met", None: "not known"}


def table(loading: LoadingConditions) -> FigureTable:
    """Return the table of the loading conditions.

    Parameters
    ----------
    loading : LoadingConditions

    Returns
    -------
    FigureTable
    """
    return FigureTable(
        "Loading conditions",
        table_columns(
            "condition",
            "all checks",
            ("displacement", "t"),
            ("draught amidships", "m"),
            ("left to the load line", "m"),
            ("draught aft", "m"),
            ("KG, fluid", "m"),
            ("KG allowed", "m"),
            ("GM", "m"),
            "not met or not known",
            "ballast",
        ),
        tuple(_row(condition) for condition in loading.conditions),
        sentence(
            "Departure and arrival with 98 % and 10 % of fuel and water; worst: of eleven steps "
            "between them that with the least margin. Ballast is the least water that leaves the "
            "least unmet. Severe wind with the area after the changes; {source}.",
            source=str(PASSENGER_CRITERIA),
        ),
    )


def _row(condition: Afloat) -> tuple[Cell, ...]:
    """Return one condition, with the checks that it does not surely meet."""
    open_checks = [f"{name}: {WORDS[met]}" for name, met in condition.checks if not met]
    return (
        condition.name,
        WORDS[condition.met],
        condition.mass.quantity("t", 0),
        *(
            _metres(span)
            for span in (
                condition.amidships,
                condition.left,
                condition.aft,
                condition.fluid_kg,
                condition.limit_kg,
                condition.gm,
            )
        ),
        listed(open_checks) if open_checks else "",
        listed(list(condition.ballast)) if condition.ballast else "none",
    )


def _metres(span: Span | None) -> Quantity | None:
    return None if span is None else span.quantity("m", 2)


def warnings(loading: LoadingConditions) -> Iterator[Cell]:
    """Yield what a loading condition does not meet.

    Parameters
    ----------
    loading : LoadingConditions

    Yields
    ------
    Cell
    """
    for condition in loading.conditions:
        failed = [name for name, met in condition.checks if met is False]
        if failed:
            yield f"{capital(condition.name)}: {listed(failed)} not met by this first check."
