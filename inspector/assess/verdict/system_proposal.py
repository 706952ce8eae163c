"""The words of its units -> the proposed word of a system, with reasons and changes."""

from collections.abc import Iterator, Sequence

from inspector.assess.verdict.changes import MOST_CHANGES, WordChange
from inspector.assess.verdict.proposal import MOST_DECIDING, Judged, between
from inspector.assess.verdict.system_sentence import counts_of, of_units, system_sentence
from inspector.assess.verdict.system_word import SystemWord, UnitWord, named, system_word
from inspector.assess.verdict.word import Change, Proposal, read_aloud
from inspector.values.text import capital
from inspector.values.vocabulary import FIRM, NOT_LOOKED_AT, PRICE_BOTH

# Reasons of a system's units that are read aloud for the system.
_MOST_REASONS = 4
_REASONS_OF_A_UNIT = 2


def propose_system(units: Sequence[Judged]) -> Proposal:
    """Propose the word of a system from those of its units.

    Parameters
    ----------
    units : sequence of Judged

    Returns
    -------
    Proposal
    """
    words = [unit.unit_word for unit in units]
    word = system_word(words)
    if len(units) == 1 and not units[0].decided:
        return units[0].part.proposal
    parts = [unit.part for unit in units]
    return Proposal(
        verdict=word.verdict,
        rule=word.rule,
        rule_text=word.rule_text,
        reasons=_reasons(units),
        changes=_changes(units, words, word),
        deciding=tuple(look for part in parts for look in part.proposal.deciding)[:MOST_DECIDING],
        firmness=word.firmness,
        detail=word.detail,
        counts=counts_of(words),
        open_words=_open_words(word, units),
        sentence=system_sentence(words, word),
        remark=_remark([part.proposal.remark for part in parts if part.proposal.remark]),
    )


def _reasons(units: Sequence[Judged]) -> tuple[str, ...]:
    """The worst reasons of the units, each once with the units that share it.

    One of each unit comes first, and those of the units with the worst word before the others.
    """
    ranked = sorted(units, key=_by_word)
    shared: dict[str, list[str]] = {}
    # First one reason of each unit, so that none is hidden behind the reasons of another.
    for place in range(_REASONS_OF_A_UNIT):
        for unit in ranked:
            reasons = _reasons_of(unit)
            if place < len(reasons):
                shared.setdefault(reasons[place], []).append(unit.part.name)
    found = [
        f"{capital(of_units(names, len(units)))}: {reason}" for reason, names in shared.items()
    ]
    return tuple(found)[:_MOST_REASONS]


def _by_word(unit: Judged) -> tuple[int, bool]:
    """Units that need something first, then those that go, then those of which little is known."""
    order = ("refurbish", PRICE_BOTH, "remove", NOT_LOOKED_AT, "retain")
    return order.index(unit.unit_word.verdict), not unit.case.evidence.bad


def _reasons_of(unit: Judged) -> tuple[str, ...]:
    """Of a unit on which the surveyor has decided, his own."""
    part = unit.part
    if not unit.decided:
        return part.proposal.reasons
    why = part.reason.rstrip(".") or "decided by the surveyor"
    return (f"{part.decision}, by the surveyor: {why}.",)


def _changes(
    units: Sequence[Judged], words: Sequence[UnitWord], word: SystemWord
) -> tuple[Change, ...]:
    """What would turn the word of the system, the changes that give another verdict first.

    What several units wait for is one change: a failed look on any of them is enough, whatever
    else is done or learnt for all of them together.
    """
    shared: dict[str, dict[int, WordChange]] = {}
    for place, unit in enumerate(units):
        for change in () if unit.decided else unit.changes:
            shared.setdefault(change.fact, {})[place] = change
    turning, counting = [], []
    for fact, by_place in shared.items():
        then = system_word([*_with_changes(units, words, by_place)])
        # A unit may turn without turning its system.
        if then.key == word.key:
            continue
        spoken = read_aloud(then.verdict, then.firmness, then.detail)
        names = [words[place].name for place in by_place]
        kept = counting if then.verdict == word.verdict else turning
        one = by_place[min(by_place)].one_is_enough
        kept.append(Change(f"{_of_which(names, len(units), one)}: {fact}", spoken))
    return tuple([*turning, *counting][:MOST_CHANGES])


def _with_changes(
    units: Sequence[Judged], words: Sequence[UnitWord], by_place: dict[int, WordChange]
) -> Iterator[UnitWord]:
    """The words of the units with a change made on all that wait for it, or on the first one."""
    first = min(by_place)
    for place, word in enumerate(words):
        change = by_place.get(place)
        made = change and (place == first or not change.one_is_enough)
        yield units[place].with_word(change.word) if made else word


def _of_which(names: Sequence[str], count: int, one_is_enough: bool) -> str:
    if len(names) > 1 and one_is_enough:
        return f"One of {named(names)}" if len(names) < count else f"One of the {count}"
    return capital(of_units(names, count))


def _open_words(word: SystemWord, units: Sequence[Judged]) -> tuple[str, ...]:
    """The words that are still possible for a system, by those of its units."""
    if word.firmness == FIRM:
        return (word.verdict,)
    of_its_units = [verdict for unit in units for verdict in unit.part.proposal.open_words]
    return between([*of_its_units, word.verdict])


def _remark(remarks: Sequence[str]) -> str:
    """Of several units: that some of their answers are from before depths were recorded."""
    if len(remarks) < 2:
        return "".join(remarks)
    return (
        "Answers of several units do not say how they are known (recorded before that was asked), "
        "and count as seen."
    )
