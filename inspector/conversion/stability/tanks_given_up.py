"""What is in the tanks that are removed or converted: it comes off, as it is lost for range."""

from collections.abc import Iterator, Sequence

from inspector.conversion.core.figure import Default, Figure, Gap
from inspector.conversion.core.particulars import Row
from inspector.conversion.core.span import Span, span
from inspector.conversion.core.tank_rows import CONVERTED, REMOVED
from inspector.conversion.stability.masses import contents_mass, given_mass
from inspector.conversion.stability.weights import Weight

# kg/m³ where the table of tanks names none (common practice).
DENSITIES = {
    "fuel": Span(840.0, 850.0, 900.0),
    "cargo fuel": Span(840.0, 850.0, 900.0),
    "fresh water": Span.exact(1000.0),
    "sewage": Span(1000.0, 1000.0, 1025.0),
    "grey water": Span(1000.0, 1000.0, 1025.0),
    "lubricating oil": Span(880.0, 900.0, 920.0),
    "ballast": Span(1000.0, 1025.0, 1030.0),
    "wet cargo": Span(800.0, 1500.0, 2500.0),
    "dry bulk": Span(600.0, 1500.0, 2500.0),
}
COUNTED = Default(
    "what is in tanks to be removed or converted",
    "in the starting condition",
    "It comes off with them. Where the starting condition has such a tank empty, type its filling "
    "as 0, or its own row in the list of weights.",
)


def assumed_density(name: str, contents: str) -> Default:
    """Return the density taken for what a tank holds, as a default.

    Parameters
    ----------
    name : str
        The tank.
    contents : str
        What it holds, "" where nobody said.

    Returns
    -------
    Default
        Density [kg/m³].

    References
    ----------
    Usual densities (common practice, no source).
    """
    density = DENSITIES.get(contents, DENSITIES["wet cargo"])
    why = f"None is given for {contents or 'its contents'}."
    return Default(f"density in {name}", density, why, unit="kg/m³")


def planned_away(tanks: Sequence[Row], names: set[str]) -> Iterator[Row]:
    """Yield the tanks whose contents come off and that the list of weights does not have.

    Parameters
    ----------
    tanks : sequence of Row
        The rows of the table of tanks.
    names : set of str
        The names in the list of weights, in lower case.

    Yields
    ------
    Row

    References
    ----------
    The plan as typed by the surveyor.
    """
    for tank in tanks:
        listed = tank.text("name").strip().casefold() in names
        if tank["plan"] in (REMOVED, CONVERTED) and not listed:
            yield tank


def contents_coming_off(tank: Row) -> tuple[Weight, Figure] | None:
    """Return what a tank that is planned away holds now, as a weight that comes off.

    Parameters
    ----------
    tank : Row

    Returns
    -------
    tuple of (Weight, Figure) or None
        The weight and its mass [t]; None where the tank is empty, or its filling is not known.

    Raises
    ------
    BadInput
        A volume or a density that no contents can have.

    References
    ----------
    Capacity × filling × density, plain mechanics.
    """
    fill = tank.number("fill")
    # A void has nothing in it whatever its filling says.
    if not fill or tank.text("kind") == "void":
        return None
    name = f"Contents of {tank.text('name')}"
    given, defaults = tank.number("density"), (COUNTED,)
    if given is None:
        assumed = assumed_density(tank.text("name"), tank.text("kind"))
        given, defaults = assumed.value, (assumed, COUNTED)
    mass = contents_mass(name, tank.number("capacity") * fill / 100, span(given)).span
    places = (tank.number(place) for place in ("lcg", "tcg", "vcg"))
    figure = Figure(name, mass, "t", "capacity × filling × density", (), defaults)
    return Weight(name, "off", mass, *places, "deadweight"), figure


def steel_coming_off(tank: Row) -> tuple[Weight, Figure] | None:
    """Return a tank that is removed as a weight that comes off with its own mass.

    Parameters
    ----------
    tank : Row

    Returns
    -------
    tuple of (Weight, Figure) or None
        The weight and its mass [t]; None where it stays, or its mass is not given.

    Raises
    ------
    BadInput
        A mass that no tank can have.

    References
    ----------
    As typed; ± 30 % as a rule of thumb (common practice, no source).
    """
    mass = tank.number("steel")
    if tank["plan"] != REMOVED or not mass:
        return None
    figure = given_mass(tank.text("name"), mass)
    places = (tank.number(place) for place in ("lcg", "tcg", "vcg"))
    return Weight(figure.name, "off", figure.span, *places, "lightship"), figure


def tank_gaps(tank: Row) -> Iterator[Gap]:
    """Yield what is not known of a tank that is planned away.

    Parameters
    ----------
    tank : Row

    Yields
    ------
    Gap

    References
    ----------
    The plan as typed by the surveyor.
    """
    name, plan = tank.text("name"), tank.text("plan")
    if tank.number("fill") is None and tank.text("kind") != "void":
        why = "How far it is filled is not given, so its contents are still counted on board."
        yield Gap(f"Filling of {name} ({plan})", why)
    if plan == REMOVED and tank.number("steel") is None:
        why = "Its steel goes with it: give the mass of the tank itself."
        yield Gap(f"Steel of {name}", why)
    elif plan == CONVERTED and not tank.text("becomes"):
        why = "It is taken to hold a liquid with a free surface; its weight is in no sum yet."
        yield Gap(f"What {name} will hold", why)
