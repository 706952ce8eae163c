"""The wording of the lines of what is asked, and of the sentence that opens the page."""

from collections.abc import Sequence
from math import ceil, log10

from inspector.conversion.asks.ask_lines import (
    MET,
    NOT_KNOWN,
    NOT_MET,
    NOT_SURE,
    AskLine,
    counts,
)
from inspector.conversion.core.chapter import Requirement
from inspector.conversion.core.span import Span
from inspector.conversion.core.span_sentences import likely_with_span
from inspector.values.quantity import Cell, Quantity, joined, sentence
from inspector.values.text import listed

# Short titles of what is asked; any other requirement is called by its own label.
TITLES = {
    "range": "Range",
    "endurance": "Endurance",
    "load-line": "Load line",
    "gm": "Metacentric height",
    "kg-limit": "KG below the booklet's limit",
    "deck-load": "Deck load",
    "deck-cargo": "Deck cargo",
    "power-one-set-out-harbour": "Power in harbour, one set out",
    "power-one-set-out-sea": "Power at sea, one set out",
    "wind-after-failure": "Station kept after a failure",
    "persons": "Persons berthed",
}
# Fields of the brief without which there is no line at all, and what they are called.
ASKED_BY_BRIEF = {
    "speed": "speed",
    "range": "range",
    "endurance": "endurance",
    "persons": "persons on board",
    "budget": "budget",
}
# A first check claims no more digits than this.
DIGITS = 3
NOTHING_ASKED = "Nothing is asked yet: the brief names neither speed, range, days nor persons."


def title_of(requirement: Requirement) -> Cell:
    """Return the title of a line: what is asked, and how much.

    Parameters
    ----------
    requirement : Requirement

    Returns
    -------
    Cell

    References
    ----------
    Model of our own.
    """
    name = TITLES.get(requirement.id, requirement.label)
    # That at least so much is asked goes without saying.
    template = "{name}, {asked}" if requirement.least else "{name}, at most {asked}"
    asked = Quantity.exact(requirement.asked, requirement.unit)
    return sentence(template, name=name, asked=asked)


def offer_of(line: AskLine) -> Cell:
    """Return what the vessel offers, the likely value first, and what decides it.

    Parameters
    ----------
    line : AskLine

    Returns
    -------
    Cell

    References
    ----------
    Model of our own.
    """
    requirement = line.requirement
    if requirement.offered is None:
        return _lacking(requirement)
    offered = likely_with_span(_shown(requirement), requirement.unit, _decimals(requirement))
    if requirement.binds == "":
        return offered
    return sentence("{offered}: {binds}", offered=offered, binds=requirement.binds)


def _lacking(requirement: Requirement) -> Cell:
    """Return what is missing where nothing is offered."""
    if not requirement.lacks:
        return "Too little is typed for a figure."
    names = [gap.name.lower() for gap in requirement.lacks]
    return f"Missing: {listed(names[:DIGITS])}."


def _shown(requirement: Requirement) -> Span:
    """Return the offer with no more digits than it can claim, and never rounded onto the ask."""
    offered = requirement.offered
    if _decimals(requirement) is not None:
        return offered
    return offered.apply(lambda value: float(f"{value:.{DIGITS}g}"))


def _decimals(requirement: Requirement) -> int | None:
    """Return the decimals that tell an offer from the ask it misses; None: as many as usual."""
    offered, asked = requirement.offered, requirement.asked
    if requirement.met is True:
        return None
    misses = [abs(end - asked) for end in (offered.low, offered.high) if end != asked]
    nearest = min(misses, default=0.0)
    # "40 of 40 asked, not met" would look like a fault of the tool.
    if nearest == 0.0 or nearest > abs(asked) * 10 ** (1 - DIGITS):
        return None
    return max(0, ceil(-log10(nearest)))


def opening(lines: Sequence[AskLine]) -> Cell:
    """Return the whole page in one or two sentences.

    Parameters
    ----------
    lines : sequence of AskLine
        The worst first.

    Returns
    -------
    Cell

    References
    ----------
    Model of our own.
    """
    if not lines:
        return NOTHING_ASKED
    number = counts(lines)
    first = f"{number[MET]} of {len(lines)} are met"
    rest = [
        f"{number[state]} {word}"
        for state, word in (
            (NOT_MET, "not met"),
            (NOT_SURE, "not sure"),
            (NOT_KNOWN, "not known"),
        )
        if number[state]
    ]
    told = f"{first}; {listed(rest)}." if rest else f"All {len(lines)} are met."
    worst = lines[0]
    if worst.state not in (NOT_MET, NOT_SURE):
        return told
    return joined(
        (
            told,
            sentence(
                "First of all {title}: {offer}.",
                title=_lowered(title_of(worst.requirement)),
                offer=offer_of(worst),
            ),
        )
    )


def _lowered(title: Cell) -> Cell:
    """Return a title as a part of a sentence."""
    name = title.figures["name"]
    # "KG" stays as it is; a word loses its capital.
    small = name if name[:2].isupper() else name[:1].lower() + name[1:]
    return sentence(title.template, **{**title.figures, "name": small})


def not_asked(brief: dict[str, str]) -> tuple[str, ...]:
    """Return what the brief leaves open, and what therefore has no line.

    Parameters
    ----------
    brief : dict of str to str
        Field -> as typed.

    Returns
    -------
    tuple of str

    References
    ----------
    Model of our own.
    """
    return tuple(
        name for field, name in ASKED_BY_BRIEF.items() if not str(brief.get(field) or "").strip()
    )
