"""What the chapter on space prints beside its figures: the spaces, what is wanted, the lines of tonnage, what goes with the persons, and the drawing."""

from collections.abc import Iterator, Sequence

from inspector.conversion.cabins import HEADROOM, MLC, Services
from inspector.conversion.chapters import Bar, Bars, Lines
from inspector.conversion.shapes import Span
from inspector.conversion.space import LIMITS, Balance, Space
from inspector.conversion.space_tables import Want
from inspector.conversion.stability_lines import text
from inspector.conversion.tonnage import LINES, Line, printed
from inspector.quantities import show


def gross_text(tonnage: Span) -> str:
    """Gross tonnage as a certificate would print it, both ends where they differ."""
    low, high = printed(tonnage.low), printed(tonnage.high)
    return str(low) if low == high else f"between {low} and {high}"


def shortfall(balance: Balance) -> str:
    """By how much a balance falls short, with its unit."""
    return f"{text(0 - balance.over, 1)} {balance.unit}"


def spaces(found: Sequence[Space]) -> Lines:
    """The spaces with usable area and volume."""
    takes = {True: "yes", False: "stores and technical rooms only", None: "height not measured"}
    rows = tuple((one.name, one.kind, one.act, _bare(one.area), _bare(one.height), text(one.usable_area, 1), text(one.usable_volume, 1),
                  "–" if one.kind == "open deck" else takes[one.livable]) for one in found)
    headings = ("space", "kind", "act", "net m²", "height, m", "usable m²", "usable m³", f"cabins ({HEADROOM:g} m)")
    return Lines("Spaces", headings, rows, (3, 4, 5, 6), " ".join(LIMITS))


def wants(found: Sequence[Want]) -> Lines:
    """What is wanted, with the least floor where the labour convention asks one."""
    rows = tuple((one.name, one.kind, one.row.text("place"), str(one.count), str(one.persons or "–"), text(one.area, 1), text(one.least, 1),
                  text(one.volume, 1), "there already" if not one.built else "to be built") for one in found)
    return Lines("What is wanted", ("what", "kind", "where", "count", "persons", "floor, m²", "least each, m²", "volume, m³", ""), rows, (3, 4, 5, 6, 7),
                 f"Least floor: {MLC}. A cabin without a floor of its own counts with the least.")


def thresholds(found: Sequence[Line]) -> Lines:
    """The lines of gross tonnage."""
    rows = tuple((str(one.tonnage), one.begins, one.state, "–" if one.state == "above already" else text(one.room, 0)) for one in found)
    return Lines("Lines of gross tonnage", ("from GT", "what begins", "after the changes", "m³ left below it"), rows, (0, 3),
                 f"{LINES}. Shedding tonnage rarely helps: date of build and old certificates still count. "
                 "Open-sided spaces that are glazed later count as enclosed.")


def serving(persons: int, needs: Services) -> Lines:
    """What goes with a number of persons."""
    hospital = {True: "yes", False: "no", None: "by the days of the voyage"}[needs.hospital]
    rows = (("sets of toilet, basin and shower, one to 6 persons", str(needs.sanitary)),
            ("mess for all at once, 1.5 m² a seat (a guideline)", show(needs.mess, "m²")), ("hospital, from 15 crew on more than 3 days", hospital))
    return Lines(f"What goes with {persons} persons", ("what", "at least"), rows, (1,), f"{MLC}; the hospital counts crew, and here all persons are counted.")


def drawings(found: Sequence[Balance]) -> Iterator[Bars]:
    """Floor that is there against what is wanted."""
    known = [one for one in found if one.there is not None and one.unit == "m²"]
    if known:
        bars = tuple(Bar(one.name, one.there.low, one.there.point, one.there.high, one.wanted.middle) for one in known)
        first = known[0]
        told = f"{first.name}: {text(first.there, 0)} m² there, {text(first.wanted, 0)} m² wanted."
        yield Bars("Floor there, and wanted", "m²", bars, told, "wanted")


def _bare(value: float | None) -> str:
    return "–" if value is None else show(value, "", 2)
