"""The word of a system from those of its units, as it is read aloud.

Units that are let go leave the count. If all others stay, the system stays; if all go, it goes; if
any is worked on or replaced, it is refurbished, and the word says which.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from inspector.values.text import listed
from inspector.values.vocabulary import (
    AT_LEAST,
    FIRM,
    NOT_LOOKED_AT,
    PRICE_BOTH,
    SO_FAR,
)

# More names than these are counted.
_MOST_NAMED = 3


@dataclass(frozen=True)
class UnitWord:
    """What a system needs to know of one unit's word.

    Parameters
    ----------
    name : str
    verdict, firmness, detail : str
        As in a Proposal; of a decision the surveyor's own word, firm.
    let_go : bool
        Whether it goes and nothing takes its place.
    sentence : str
        What a client reads beside it.
    open_looks : tuple of str
        The critical checks that are still open, named.
    jobs : tuple of str
        What is to be put right beside its word, where it stays.
    rule, rule_text : str
        The rule that gave it, and how it is read aloud.
    """

    name: str
    verdict: str
    firmness: str
    detail: str = ""
    let_go: bool = False
    sentence: str = ""
    open_looks: tuple[str, ...] = ()
    jobs: tuple[str, ...] = ()
    rule: str = ""
    rule_text: str = ""

    @property
    def stays(self) -> bool:
        """Whether it stays as it is."""
        return self.verdict == "retain"

    @property
    def replaced(self) -> bool:
        """Whether a new one takes its place."""
        return self.verdict == "remove" and not self.let_go

    @property
    def worked_on(self) -> bool:
        """Whether it is refurbished, or something is to be done that only prices can say."""
        return self.verdict in ("refurbish", PRICE_BOTH)


@dataclass(frozen=True)
class SystemWord:
    """The word of a system.

    Parameters
    ----------
    verdict, firmness, detail : str
        As in a Proposal.
    rule, rule_text : str
        Which of the rules for systems applied.
    """

    verdict: str
    firmness: str
    detail: str
    rule: str
    rule_text: str

    @property
    def key(self) -> tuple[str, str]:
        """What makes two words different ones; only how firm they are does not."""
        return self.verdict, self.detail


_LEFT = "What is let go leaves the count."
_TEXTS = {
    "no units": "Where no unit is counted, nothing can be said.",
    "none looked at": "Where nobody has looked at any unit, there is no word.",
    "all go": "Where all units go, the system goes.",
    "all replaced": "Where all units go and are needed, the system is removed and replaced.",
    "price all": "Where only prices can say for every unit, they say for the system: price both.",
    "some work": "Where a unit is worked on or replaced, the system is refurbished there. " + _LEFT,
    "all stay": "Where all units stay, the system stays. " + _LEFT,
}


def system_word(units: Sequence[UnitWord]) -> SystemWord:
    """Return the word of a system.

    Parameters
    ----------
    units : sequence of UnitWord

    Returns
    -------
    SystemWord
        Of a single unit its own word.
    """
    if len(units) == 1:
        (only,) = units
        return SystemWord(only.verdict, only.firmness, only.detail, only.rule, only.rule_text)
    # What the brief does not need and what goes anyway leaves the count, before the rest is
    # counted.
    kept = [unit for unit in units if not unit.let_go]
    if not units:
        return _word(NOT_LOOKED_AT, "", "", "no units")
    if not kept:
        return _word("remove", _together(units), "", "all go")
    if all(unit.verdict == NOT_LOOKED_AT for unit in kept):
        return _word(NOT_LOOKED_AT, "", _gone(units), "none looked at")
    if all(unit.replaced for unit in kept):
        return _word("remove", _together(units), "and replace", "all replaced")
    if all(unit.verdict == PRICE_BOTH for unit in kept):
        return _word(PRICE_BOTH, "", "price both", "price all")
    if any(unit.worked_on or unit.replaced for unit in kept):
        return _word("refurbish", _work_firmness(units), _which(units, kept), "some work")
    return _word("retain", _together(units), _gone(units), "all stay")


def _word(verdict: str, firmness: str, detail: str, rule: str) -> SystemWord:
    return SystemWord(verdict, firmness, detail, rule, _TEXTS[rule])


def _together(units: Sequence[UnitWord]) -> str:
    """Firm when each unit is firm."""
    return FIRM if all(unit.firmness == FIRM for unit in units) else SO_FAR


def _work_firmness(units: Sequence[UnitWord]) -> str:
    """Firm when each unit is; at least where some work is certain, so far where none is."""
    if _together(units) == FIRM:
        return FIRM
    # Work that is certain stays certain, however little was seen of the others.
    at_work = [unit for unit in units if unit.worked_on or unit.replaced]
    return AT_LEAST if any(unit.firmness != SO_FAR for unit in at_work) else SO_FAR


def _which(units: Sequence[UnitWord], kept: Sequence[UnitWord]) -> str:
    """Which of the units are worked on or replaced: "replace 1 of 4"."""
    work = sum(unit.worked_on for unit in kept)
    new = sum(unit.replaced for unit in kept)
    parts = [f"{work} of {len(kept)}"] if work else []
    if new:
        parts.append(f"replace {new} of {len(kept)}")
    if any("decides" in unit.detail for unit in kept):
        parts.append("decides the vessel")
    return ", ".join(filter(None, (*parts, _gone(units))))


def _gone(units: Sequence[UnitWord]) -> str:
    """The units that are let go: "towing gear removed"."""
    names = [unit.name for unit in units if unit.let_go]
    return f"{named(names)} removed" if names else ""


def named(names: Sequence[str]) -> str:
    """Return the names of a few units, or how many they are.

    Parameters
    ----------
    names : sequence of str

    Returns
    -------
    str
    """
    if len(names) > _MOST_NAMED:
        return f"{len(names)} units"
    # "Suits, jackets and beacons" is one unit, and must not read as several.
    composed = len(names) > 1 and any("," in name or " and " in name for name in names)
    return "; ".join(names) if composed else listed(list(names))
