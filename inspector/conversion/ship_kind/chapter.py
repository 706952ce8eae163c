"""The chapter on the kind of ship: cargo, special purpose or passenger ship, side by side."""

from collections.abc import Iterator

from inspector.conversion.core.case import Case
from inspector.conversion.core.chapter import Chapter
from inspector.conversion.core.figure import Gap
from inspector.conversion.ship_kind import presentation
from inspector.conversion.ship_kind.calculation import ShipKind, ship_kind
from inspector.conversion.ship_kind.particulars import TABLES
from inspector.conversion.ship_kind.ship_kinds import PASSENGER, SPECIAL

TITLE = "Cargo, special purpose or passenger ship"
NO_PERSONS = Gap("Persons on board", "Name them in the brief: every rule begins with their number.")
NOBODY_SAID = Gap(
    "Who is aboard", "Say how many are crew, special personnel and passengers; the flag decides."
)
NO_LENGTH = Gap("Length", "It stands on the load line certificate and chooses among the rules.")


def chapter(case: Case) -> Chapter:
    """Return the chapter on the kind of ship. Never raises for recorded data.

    Parameters
    ----------
    case : Case

    Returns
    -------
    Chapter
    """
    found = ship_kind(case)
    return Chapter(
        "ship-kind",
        TITLE,
        presentation.answer(found),
        presentation.figures(found),
        presentation.tables(found),
        warnings=tuple(_warnings(found)),
        gaps=tuple(_gaps(found)),
        faults=(*case.faults(*TABLES), *found.faults),
        verify=presentation.VERIFY,
        particulars=tuple(table.id for table in TABLES),
    )


def _warnings(found: ShipKind) -> Iterator[str]:
    """Yield where the brief asks for another kind of ship than its persons make."""
    if not found.kind or not found.wanted:
        return
    # The brief calls them as the criteria of the checks do: by their first word.
    if not found.wanted.startswith(found.kind.split()[0]):
        yield (
            f"The brief wants a ship as {found.wanted}, and the persons make her a {found.kind}: "
            "one of both must change."
        )
    if found.kind == PASSENGER and found.wanted.startswith(SPECIAL.split()[0]):
        yield "Guests are no special personnel, whatever they are called in a contract."


def _gaps(found: ShipKind) -> Iterator[Gap]:
    """Yield what is missing: who is aboard, the length, and what the architect needs."""
    if found.aboard.persons is None:
        yield NO_PERSONS
    if not found.kind:
        yield NOBODY_SAID
    if found.length is None:
        yield NO_LENGTH
    for each in found.needed:
        if each.gap is not None:
            yield each.gap
