"""Whether the lightship and what is in the tanks make the displacement that was typed."""

from collections.abc import Iterator, Sequence

from inspector.conversion.core.particulars import Row
from inspector.conversion.core.span import Span, span
from inspector.conversion.stability.starting_condition import StartingCondition
from inspector.conversion.stability.tanks_given_up import assumed_density
from inspector.values.quantity import Cell, Quantity, sentence

# A difference that no sounding explains: a share of the displacement, and t (a limit of our own).
UNEXPLAINED, LEAST = 0.02, 20.0


def contents_of(tank: Row) -> Span | None:
    """Return the mass of what is in a tank now.

    Parameters
    ----------
    tank : Row

    Returns
    -------
    Span or None
        Mass [t]; None where its filling is not known.

    References
    ----------
    Capacity × filling × density, plain mechanics.
    """
    fill, contents = tank.number("fill"), tank.text("kind")
    if contents == "void" or fill == 0:
        return Span.exact(0.0)
    if fill is None:
        return None
    density = tank.number("density")
    if density is None:
        density = assumed_density(tank.text("name"), contents).value
    return tank.number("capacity") * fill / 100 * span(density) / 1000


def unexplained(start: StartingCondition, tanks: Sequence[Row]) -> Iterator[Cell]:
    """Yield by how much lightship and contents miss the displacement, where it is too much.

    Parameters
    ----------
    start : StartingCondition
    tanks : sequence of Row
        Each tank once.

    Yields
    ------
    Cell

    References
    ----------
    Sum of masses, plain mechanics; the limit is our own.
    """
    mass, lightship = start.number("displacement"), start.number("lightship")
    masses = [contents_of(tank) for tank in tanks]
    # A tank without a filling may hold the whole difference.
    if mass is None or not lightship or not tanks or None in masses:
        return
    typed = {name: start.number(name) or 0.0 for name in ("cargo", "stores")}
    contents = sum(masses, Span.exact(0.0))
    left = mass - lightship - sum(typed.values()) - contents
    most = max(LEAST, UNEXPLAINED * mass)
    if -most <= left.high and left.low <= most:
        return
    yield sentence(
        "Lightship {lightship}, contents of the tanks {contents}, cargo {cargo} and stores "
        "{stores} make {sum}; the displacement is {mass}: {left} {more}.",
        lightship=Quantity.exact(lightship, "t", 0),
        contents=contents.quantity("t", 0),
        cargo=Quantity.exact(typed["cargo"], "t", 0),
        stores=Quantity.exact(typed["stores"], "t", 0),
        sum=(mass - left).quantity("t", 0),
        mass=Quantity.exact(mass, "t", 0),
        left=(left if left.middle > 0 else 0 - left).quantity("t", 0),
        more="are not explained" if left.middle > 0 else "are too many",
    )
