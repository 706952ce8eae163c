"""The chapter on space and tonnage: what the vessel gives and wins, whether what is wanted fits, how many are berthed, the tonnage after the changes."""

from collections.abc import Iterator

from inspector.assess.gather import number
from inspector.conversion import space_lines
from inspector.conversion.book import Case
from inspector.conversion.cabins import HEADROOM, MLC, services
from inspector.conversion.chapters import Chapter, Lines, Requirement
from inspector.conversion.shapes import Default, Figure, Gap, no_figure, unique
from inspector.conversion.space import LIMITS
from inspector.conversion.space_room import Room, room
from inspector.conversion.space_tables import ENCLOSURES, SPACES, WANTS
from inspector.conversion.tonnage import ITC, net, printed

TABLES = (SPACES, WANTS, ENCLOSURES)
PASSENGERS = 12
CREW = Default("who lives in a cabin", "crew", "", "It is not told; guests and special personnel have other rules.", MLC)
VERIFY = ("Verify before you rely on it: tonnage is measured by a recognised organisation, cabins and escapes are approved by flag and class, "
          "and the use of spaces is bound by the damage stability of the approved booklet.")


def chapter(case: Case) -> Chapter:
    """The chapter on space and tonnage."""
    found = room(case)
    told = bool(found.spaces or found.wants or found.tonnage.added is not None)
    persons = number(case.assessment.brief.get("persons"), 0)
    days = number(case.assessment.brief.get("endurance"), 0)
    return Chapter(
        "space", "Space and tonnage", _answer(found, told), tuple(_figures(found)) if told else (), tuple(_lines(found, persons, days)) if told else (),
        tuple(space_lines.drawings(found.balances)), warnings=tuple(_warnings(found, persons)), gaps=tuple(_gaps(found, persons)),
        defaults=unique(*(one.defaults for one in found.spaces), _who(found)), faults=(*case.faults(*TABLES), *found.faults),
        verify=VERIFY if told else "", tables=tuple(table.id for table in TABLES), requirements=tuple(_requirements(found, persons)),
    )


def _who(found: Room) -> tuple[Default, ...]:
    return (CREW,) if any(one.kind == "cabin" and not one.row.text("who") for one in found.wants) else ()


def _answer(found: Room, told: bool) -> str:
    if not told:
        return "Neither spaces nor wants nor enclosed volumes are given, so nothing can be told of space and tonnage."
    short = [one.name.lower() for one in found.balances if one.short]
    open_ends = [one.name.lower() for one in found.balances if one.short is None and one.wanted.high > 0]
    if not found.wants:
        found_room = "Nothing is listed that is wanted, so nothing is balanced"
    else:
        found_room = "Not known whether there is room enough" if open_ends else "What is wanted finds room by area and volume"
    said = [f"Too little: {' and '.join(short)}" if short else found_room]
    if open_ends and short:
        said.append(f"not sure of {' and '.join(open_ends)}")
    if found.berthed:
        said.append(f"the cabins listed berth {found.berthed} persons")
    if found.tonnage.added is not None and found.tonnage.after is not None:
        said.append(f"gross tonnage goes from {found.tonnage.before} to {space_lines.gross_text(found.tonnage.after)}")
    return "; ".join(said) + "."


def _figures(found: Room) -> Iterator[Figure]:
    for one in found.balances:
        if one.over is None:
            yield no_figure(f"{one.name}: left over", one.unit, (Gap(one.name, "No space of this kind is given."),))
        else:
            text = "given + won - lost, as far as usable, less what is wanted; minus is a shortfall"
            yield Figure(f"{one.name}: left over", one.over, one.unit, text, LIMITS)
    tonnage = found.tonnage
    if tonnage.added is not None:
        yield Figure("Enclosed volume, change", tonnage.added, "m³", "added less removed", ("Removing what stands inside the hull changes no tonnage.",))
    if tonnage.after is not None and tonnage.added is not None:
        yield Figure("Gross tonnage after", tonnage.after.apply(printed), "", "(0.2 + 0.02 log10 V) V; a certificate drops the decimals",
                     ("The tonnage before is the one of the certificate under the 1969 convention.",), source=ITC)
        text = "0.30 of gross: no cargo space, fewer than 13 passengers"
        yield Figure("Net tonnage after, at least", tonnage.after.apply(lambda gross: printed(net(gross))), "", text, source=ITC)


def _lines(found: Room, persons: float | None, days: float | None) -> Iterator[Lines]:
    if found.spaces:
        yield space_lines.spaces(found.spaces)
    if found.wants:
        yield space_lines.wants(found.wants)
    if found.tonnage.lines:
        yield space_lines.thresholds(found.tonnage.lines)
    aboard = int(persons) if persons and persons >= 1 else found.berthed
    if found.wants and 1 <= aboard <= 5000:
        yield space_lines.serving(aboard, services(aboard, days if days is not None and days <= 1000 else None))


def _gaps(found: Room, persons: float | None) -> Iterator[Gap]:
    for one in found.spaces:
        if one.kind != "open deck" and one.act != "lost" and one.height is None:
            yield Gap(f"Clear height of {one.name}", f"Whether it takes cabins ({HEADROOM:g} m) is not known, and it counts as if it did.")
    for one in found.wants:
        if one.area is None:
            yield Gap(f"Floor of {one.name}", "It is in no balance until its floor is given.")
    if found.tonnage.before is None and (found.wants or found.tonnage.added is not None):
        yield Gap("Gross tonnage", "Give it among the vessel's particulars, as on the tonnage certificate; cabins are asked by it.")
    kinds = {one.kind for one in found.wants}
    if "cabin" in kinds and not {"corridors and stairs", "sanitary"} <= kinds:
        yield Gap("Corridors, stairs and sanitary spaces", "They are wanted with cabins, and the list does not carry both of them.")
    if persons and not found.berthed and found.spaces:
        yield Gap("Cabins", f"The brief asks for {persons:g} persons, and no cabin is listed among what is wanted or there already.")


def _warnings(found: Room, persons: float | None) -> Iterator[str]:
    for one in found.balances:
        if one.short:
            yield f"{one.name}: short by {space_lines.shortfall(one)}."
    for want in found.wants:
        for fault in want.faults:
            unit = "m²" if fault.what == "floor" else "m"
            against = f"{fault.found:g} {unit}, against at least {fault.asked:g} {unit}"
            yield f"{want.name}: a {fault.what} of {against} ({MLC}); flag and class say what holds for her."
    for line in found.tonnage.lines:
        if line.state in ("crossed upward", "perhaps crossed"):
            said = "crosses" if line.state == "crossed upward" else "may cross"
            yield f"The enclosed volume {said} {line.tonnage} GT: {line.begins}. Settle this with flag before anything is enclosed."
    if max(persons or 0, found.berthed) > PASSENGERS:
        yield ("More than 12 passengers make a passenger ship under SOLAS at any tonnage; who counts as crew, special personnel or passenger "
               "is for the flag to say, before a layout is drawn.")


def _requirements(found: Room, persons: float | None) -> Iterator[Requirement]:
    if persons:
        yield Requirement("persons", "Persons berthed", persons, "", found.offered)
