"""The wording of the rule book: its answer, its table and its cautions."""

from collections.abc import Iterator

from inspector.conversion.core.chapter import FigureTable, table_columns
from inspector.conversion.rule_book.calculation import RuleBook
from inspector.conversion.rule_book.rule_line import APPLIES, ASK, WAITS, RuleLine
from inspector.values.quantity import Cell, Quantity, joined, sentence
from inspector.values.text import counted, listed

VERIFY = (
    "Verify before you rely on it: reminders, no rulings. Flag, class and recognised organisation "
    "say which text applies on the day the work starts, and what an existing ship may keep."
)
NEXT = {APPLIES: "apply", ASK: "must be asked", WAITS: "wait for what is not typed"}


def answer(book: RuleBook) -> Cell:
    """Return the chapter in a sentence or two.

    Parameters
    ----------
    book : RuleBook

    Returns
    -------
    Cell
    """
    counts = {state: sum(line.state == state for line in book.lines) for state in NEXT}
    told = [f"{number} {NEXT[state]}" for state, number in counts.items() if number]
    first = f"Of {counted(len(book.lines), 'rule')} {listed(told)}."
    asked = [line.rule.lower() for line in book.lines if line.state == ASK]
    parts: list[Cell] = [first]
    if asked:
        parts.append(f"To be settled with the flag before a contract: {listed(asked)}.")
    return joined((*parts, *_below_a_step(book)))


def _below_a_step(book: RuleBook) -> Iterator[Cell]:
    """How large a house stays below the next step."""
    room = next((room for room in book.rooms if room.passed is False), None)
    if room is not None:
        yield sentence(
            "She stays below {step} GT while at most {volume} more is enclosed.",
            step=room.step,
            volume=Quantity(room.volume.low, None, room.volume.high, "m³", 0),
        )


def warnings(book: RuleBook) -> Iterator[Cell]:
    """Yield what the figures say against the plan.

    Parameters
    ----------
    book : RuleBook

    Yields
    ------
    Cell
    """
    days = book.facts.dates.number("kept_days")
    for figure in book.figures:
        if days is None or figure.span is None or figure.unit != "days":
            continue
        if figure.span.at_least(days) is not True:
            yield sentence(
                "{name}: {found}, and {asked} are planned in waters where nothing may go over.",
                name=figure.name,
                found=figure.span.quantity("days", 0),
                asked=Quantity.exact(days, "days"),
            )
    cold = book.facts.dates.number("air_cold")
    if cold is not None and cold < 0:
        yield sentence(
            "At {cold} dense air raises firing pressures, fuel clouds and oil stiffens: the maker "
            "says what the engines may give, and what must be heated before a start "
            "(common practice).",
            cold=Quantity.exact(cold, "°C"),
        )


def tables(book: RuleBook) -> tuple[FigureTable, ...]:
    """Return the rules by date.

    Parameters
    ----------
    book : RuleBook

    Returns
    -------
    tuple of FigureTable
    """
    return (
        FigureTable(
            "Rules by the day from which they bind",
            table_columns("rule", "stands", "since", "for her", "decided by", "source"),
            tuple(_row(line) for line in book.lines),
            "What is from memory says so. Without a day: the rule has none of its own, or its day "
            "is not typed yet.",
        ),
    )


def _row(line: RuleLine) -> tuple[Cell, ...]:
    return (
        line.rule,
        line.state,
        line.since,
        line.for_her,
        line.decides,
        line.source.as_cited(),
    )
