"""The chapter on space and tonnage: what fits, berths, and tonnage after the changes."""

from collections.abc import Iterator

from inspector.conversion.core.case import Case
from inspector.conversion.core.chapter import Chapter, FigureTable, Requirement
from inspector.conversion.core.claims import CLAIMS, beside_claim, claims_table
from inspector.conversion.core.figure import Default, Figure, Gap, no_figure, unique
from inspector.conversion.core.particulars import Row
from inspector.conversion.core.span import Span
from inspector.conversion.space import presentation
from inspector.conversion.space.areas import LIMITS
from inspector.conversion.space.cabins import HEADROOM, MLC, services
from inspector.conversion.space.calculation import Layout, Tonnage, layout
from inspector.conversion.space.net_tonnage import net_tonnage
from inspector.conversion.space.particulars import TABLES
from inspector.conversion.space.tonnage import ITC, certificate_tonnage
from inspector.conversion.stability.loading.particulars import LOADING
from inspector.record.typed_values import typed_number
from inspector.values.quantity import Cell, Quantity, Sentence, joined, sentence
from inspector.values.text import listed

# More make a passenger ship under SOLAS.
MOST_PASSENGERS = 12
CREW = Default(
    "who lives in a cabin",
    "crew",
    "It is not given; guests and special personnel have other rules.",
    source=MLC,
)
NOTHING_GIVEN = (
    "Neither spaces nor wants nor enclosed volumes are given, so space and tonnage are not known."
)
PASSENGER_SHIP = (
    "More than 12 passengers make a passenger ship under SOLAS at any tonnage; who counts as crew, "
    "special personnel or passenger is decided by the flag, before a layout is drawn."
)
VERIFY = (
    "Verify before you rely on it: tonnage is measured by a recognised organisation, cabins and "
    "escapes are approved by flag and class, and the use of spaces is bound by the damage "
    "stability of the approved booklet."
)


def chapter(case: Case) -> Chapter:
    """Return the chapter on space and tonnage.

    Parameters
    ----------
    case : Case

    Returns
    -------
    Chapter
    """
    found = layout(case)
    persons = typed_number(case.assessment.brief.get("persons"), 0)
    days = typed_number(case.assessment.brief.get("endurance"), 0)
    tables = () if found.is_empty else tuple(_tables(found, persons, days))
    claims = claims_table(beside_claim(case.one(CLAIMS), "berths", _berths_there(found), ""))
    tables = tables if claims is None else (*tables, claims)
    return Chapter(
        "space",
        "Space and tonnage",
        NOTHING_GIVEN if found.is_empty else _answer(found),
        () if found.is_empty else tuple(_figures(found)),
        tables,
        tuple(presentation.drawings(found.balances)),
        warnings=(*_warnings(found, persons), *_passengers(found, persons, case.one(LOADING))),
        gaps=tuple(_gaps(found, persons)),
        defaults=unique(*(space.defaults for space in found.spaces), _crew_assumed(found)),
        faults=(*case.faults(*TABLES), *found.faults),
        verify="" if found.is_empty else VERIFY,
        particulars=tuple(table.id for table in (*TABLES, CLAIMS)),
        requirements=tuple(_requirements(found, persons)),
    )


def _berths_there(found: Layout) -> Span | None:
    """Return the berths in cabins that are there already; None where no such cabin is listed."""
    there = [want.persons for want in found.wants if not want.built and want.persons]
    return Span.exact(sum(there)) if there else None


def _crew_assumed(found: Layout) -> tuple[Default, ...]:
    """Return the default of cabins without an inhabitant, where there are any."""
    cabins = [want for want in found.wants if want.kind == "cabin"]
    return (CREW,) if any(not cabin.row.text("who") for cabin in cabins) else ()


def _answer(found: Layout) -> Cell:
    """Return the chapter in a sentence: what fits, who has a berth, what the tonnage becomes."""
    parts: list[Cell] = list(_fit(found))
    if found.berthed:
        parts.append(sentence("the cabins listed berth {persons} persons", persons=found.berthed))
    tonnage = found.tonnage
    if tonnage.added is not None and tonnage.after is not None:
        parts.append(
            sentence(
                "gross tonnage changes from {before} to {after}",
                before=tonnage.before,
                after=presentation.tonnage_cell(tonnage.after),
            )
        )
    return sentence("{parts}.", parts=joined(parts, "; "))


def _fit(found: Layout) -> Iterator[str]:
    """Whether what is wanted finds room."""
    short = [balance.name.lower() for balance in found.balances if balance.short]
    not_sure = [
        balance.name.lower()
        for balance in found.balances
        if balance.short is None and balance.wanted.high > 0
    ]
    if short:
        yield f"Too little: {listed(short)}"
        if not_sure:
            yield f"not sure of {listed(not_sure)}"
    elif not found.wants:
        yield "Nothing is listed that is wanted, so nothing is balanced"
    elif not_sure:
        yield "Not known whether there is room enough"
    else:
        yield "What is wanted finds room by area and volume"


def _figures(found: Layout) -> Iterator[Figure]:
    """Yield what is left over of each kind of room, then the tonnage."""
    for balance in found.balances:
        name = f"{balance.name}: left over"
        # Something is wanted and no space is given: named, since a blank would pass for room
        # enough.
        if balance.over is None:
            gap = Gap(balance.name, "No space of this kind is given.")
            yield no_figure(name, balance.unit, (gap,))
            continue
        how = "given + won − lost, as far as usable, less what is wanted; minus is a shortfall"
        yield Figure(name, balance.over, balance.unit, how, LIMITS)
    yield from _tonnage_figures(found.tonnage)


def _tonnage_figures(tonnage: Tonnage) -> Iterator[Figure]:
    """Yield the change of the enclosed volume [m³] and the tonnage after it."""
    if tonnage.added is None:
        return
    yield Figure(
        "Enclosed volume, change",
        tonnage.added,
        "m³",
        "added less removed",
        ("Removing what is inside the hull changes no tonnage.",),
    )
    # The volume is known and the certificate is not, so that no tonnage follows from it.
    if tonnage.after is None:
        return
    yield Figure(
        "Gross tonnage after",
        tonnage.after.apply(certificate_tonnage),
        "",
        "(0.2 + 0.02 log10 V) V; a certificate drops the decimals",
        ("The tonnage before is the one of the certificate under the 1969 convention.",),
        source=ITC,
    )
    yield Figure(
        "Net tonnage after, at least",
        # The least that the formula can give: cargo or passengers would only add to it.
        tonnage.after.apply(lambda gross: certificate_tonnage(net_tonnage(gross))),
        "",
        "0.30 of gross: no cargo space, fewer than 13 passengers",
        source=ITC,
    )


def _tables(found: Layout, persons: float | None, days: float | None) -> Iterator[FigureTable]:
    """Yield the tables that have any row."""
    if found.spaces:
        yield presentation.spaces_table(found.spaces)
    if found.wants:
        yield presentation.wants_table(found.wants)
    if found.tonnage.thresholds:
        yield presentation.thresholds_table(found.tonnage.thresholds)
    # The brief counts before the list of cabins, which may still be incomplete.
    aboard = int(persons) if persons and persons >= 1 else found.berthed
    if found.wants and 1 <= aboard <= 5000:
        voyage = days if days is not None and days <= 1000 else None
        yield presentation.services_table(aboard, services(aboard, voyage))


def _gaps(found: Layout, persons: float | None) -> Iterator[Gap]:
    """Yield what is missing of spaces, rooms wanted and tonnage."""
    yield from _gaps_of_spaces(found)
    for want in found.wants:
        if want.area is None:
            yield Gap(f"Floor of {want.name}", "It is in no balance until its floor is given.")
    if found.tonnage.before is None and (found.wants or found.tonnage.added is not None):
        yield Gap(
            "Gross tonnage",
            "Give it among the vessel's particulars, as on the tonnage certificate; the least "
            "floor of cabins depends on it.",
        )
    # Cabins alone would make a balance look better than any ship that can be lived in.
    kinds = {want.kind for want in found.wants}
    if "cabin" in kinds and not {"corridors and stairs", "sanitary"} <= kinds:
        yield Gap(
            "Corridors, stairs and sanitary spaces",
            "They are wanted with cabins, and the list does not name both of them.",
        )
    if persons and not found.berthed and found.spaces:
        why = sentence(
            "The brief asks for {persons} persons, and no cabin is listed among what is wanted or "
            "there already.",
            persons=Quantity.exact(persons),
        )
        yield Gap("Cabins", why)


def _gaps_of_spaces(found: Layout) -> Iterator[Gap]:
    """Yield the spaces whose clear height is not known."""
    why = sentence(
        "Whether it takes cabins ({headroom}) is not known, and it counts as if it did.",
        headroom=Quantity.exact(HEADROOM, "m"),
    )
    occupied = (
        "Free, kept or cleared: none or all of it counts until that is said, since what is "
        "lived in has no room for anything else."
    )
    for space in found.spaces:
        if space.may_be_occupied:
            yield Gap(f"Whether {space.name} is free", occupied)
        if not space.is_open_deck and space.act != "lost" and space.height is None:
            yield Gap(f"Clear height of {space.name}", why)


def _warnings(found: Layout, persons: float | None) -> Iterator[Cell]:
    """Yield what is short, cabins under the standard, and thresholds of tonnage crossed."""
    for balance in found.balances:
        if balance.short:
            missing = (0 - balance.over).quantity(balance.unit, 1)
            yield sentence("{name}: short by {missing}.", name=balance.name, missing=missing)
    yield from _cabin_warnings(found)
    for threshold in found.tonnage.thresholds:
        if threshold.state in ("crossed upward", "perhaps crossed"):
            verb = "crosses" if threshold.state == "crossed upward" else "may cross"
            yield (
                f"The enclosed volume {verb} {threshold.tonnage} GT: {threshold.begins}. Settle "
                "this with the flag before anything is enclosed."
            )
    if max(persons or 0, found.berthed) > MOST_PASSENGERS:
        yield PASSENGER_SHIP


def _passengers(found: Layout, persons: float | None, loading: Row) -> Iterator[Cell]:
    """Yield where the passengers of the loading are not those of cabins or brief."""
    passengers = loading["passengers"]
    guests = sum(want.persons for want in found.wants if want.row.text("who") == "guest")
    if passengers is None:
        return
    if guests and guests != passengers:
        yield sentence(
            "Cabins for guests berth {guests}, and the loading counts {passengers} passengers.",
            guests=guests,
            passengers=passengers,
        )
    if persons and passengers > persons:
        yield sentence(
            "The loading counts {passengers} passengers, and the brief {persons} persons in all.",
            passengers=passengers,
            persons=Quantity.exact(persons),
        )


def _cabin_warnings(found: Layout) -> Iterator[Sentence]:
    """Yield each shortfall of a cabin against its standard."""
    for want in found.wants:
        for shortfall in want.shortfalls:
            unit = "m²" if shortfall.what == "floor" else "m"
            yield sentence(
                "{name}: a {what} of {found}, against at least {asked} ({source}); flag and class "
                "decide which standard applies to her.",
                name=want.name,
                what=shortfall.what,
                found=Quantity.exact(shortfall.found, unit),
                asked=Quantity.exact(shortfall.asked, unit),
                source=str(MLC),
            )


def _requirements(found: Layout, persons: float | None) -> Iterator[Requirement]:
    """Yield the demand of the brief on berths."""
    if persons:
        yield Requirement("persons", "Persons berthed", persons, "", found.offered)
