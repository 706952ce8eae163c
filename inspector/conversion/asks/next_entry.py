"""What to type next for a line that is not met, not sure or not known: one place each."""

from collections.abc import Mapping
from dataclasses import dataclass

from inspector.conversion.asks.ask_lines import MET, NOT_KNOWN, NOT_MET, AskLine
from inspector.conversion.core.chapter import Chapter
from inspector.conversion.core.particulars import Rows

# The tables that decide a requirement, the nearest first; any other is looked up in its chapter.
DECIDED_BY = {
    "speed": ("speeds", "engines", "propulsion"),
    "range": ("tanks", "speeds", "engines", "propulsion"),
    "endurance": ("stores", "tanks", "propulsion"),
    "load-line": ("hydrostatics", "weights"),
    "gm": ("hydrostatics", "tanks", "weights"),
    "kg-limit": ("hydrostatics", "weights"),
    "wind": ("hydrostatics",),
    "deck-load": ("decks",),
    "deck-cargo": ("decks",),
    "power-one-set-out-harbour": ("plant_loads", "plant_generators"),
    "power-one-set-out-sea": ("plant_loads", "plant_generators"),
    "wind-after-failure": ("plant_thrusters", "plant_exposure"),
    "persons": ("wants", "spaces"),
}


@dataclass(frozen=True)
class NextEntry:
    """The one place to go to for a line.

    Parameters
    ----------
    table : str
        The id of the table of particulars; "" for the line's chapter.
    words : str
        What to do there.
    """

    table: str
    words: str


def next_entry(line: AskLine, chapter: Chapter, tables: Mapping[str, Rows]) -> NextEntry | None:
    """Return what to type next for a line.

    Parameters
    ----------
    line : AskLine
    chapter : Chapter
        The one that answers it.
    tables : mapping of str to Rows
        Table -> its usable rows.

    Returns
    -------
    NextEntry or None
        None for what is met: nothing is left to do.

    References
    ----------
    Model of our own: an empty table comes before a cell that is missing, and that before a value
    that was assumed.
    """
    if line.state == MET:
        return None
    wanted = (*DECIDED_BY.get(line.requirement.id, ()), *chapter.particulars)
    known = [table for table in dict.fromkeys(wanted) if table in tables]
    empty = next((table for table in known if not len(tables[table])), None)
    if line.state == NOT_KNOWN and empty is not None:
        return NextEntry(empty, f"type {tables[empty].table.title.lower()}")
    if line.state == NOT_KNOWN and known:
        return NextEntry(known[0], f"complete {tables[known[0]].table.title.lower()}")
    # What is known and not enough is changed by a decision, and the chapter says by which.
    if line.state == NOT_MET or not known:
        return NextEntry("", "see what decides it")
    return NextEntry(known[0], f"make it surer: {tables[known[0]].table.title.lower()}")
