"""A proposed word: how far it can be relied on, why, and what would change it."""

from dataclasses import dataclass

from inspector.values.vocabulary import PRICE_BOTH


@dataclass(frozen=True)
class Change:
    """One thing that somebody can do or learn, and that would change the word.

    Parameters
    ----------
    fact : str
        In words.
    verdict : str
        The word that it would give, read aloud.
    """

    fact: str
    verdict: str


@dataclass(frozen=True)
class Paper:
    """A paper or a service beside a word: it has a date and a cost, and never makes the word.

    Parameters
    ----------
    sentence : str
        What is due or missing, with its date.
    unit : str
        Id of the unit, "all" for the ship's papers.
    """

    sentence: str
    unit: str = "all"


@dataclass(frozen=True)
class OfferedLine:
    """A work line that is offered, without a price, since something is poor, failed or worn.

    Parameters
    ----------
    unit : str
        Id of the unit.
    check : str
        Id of the check, "" where it is about the unit as a whole.
    act : str
        "refurbish", "replace" or "remove".
    text : str
        What the yard would do.
    """

    unit: str
    check: str
    act: str
    text: str


@dataclass(frozen=True)
class Proposal:
    """A proposed word.

    Parameters
    ----------
    verdict : str
        "retain", "refurbish", "remove"; "not looked at", or "refurbish or remove" where only
        prices can say.
    rule : str
        Short name of the rule that applies.
    rule_text : str
        The rule as a surveyor reads it aloud.
    reasons : tuple of str
        At most four, the worst first.
    changes : tuple of Change
        What would change the word, at most three.
    deciding : tuple of str
        The critical checks that are still open, "Bow thruster 1: Water in the hub oil".
    firmness : str
        "firm", "so far", "at least"; "" where there is no word to rely on.
    detail : str
        What is read with the word: "and replace", "replace 1 of 4", "decides the vessel".
    counts : str
        For a system of several units: "5 sound, set 4 failed; 6 critical looks open.".
    open_words : tuple of str
        The words that are still possible, the best first.
    sentence : str
        The sentence that a client reads beside the word.
    remark : str
        What must be known of the answers behind it, "" for nothing.
    """

    verdict: str
    rule: str
    rule_text: str
    reasons: tuple[str, ...] = ()
    changes: tuple[Change, ...] = ()
    deciding: tuple[str, ...] = ()
    firmness: str = ""
    detail: str = ""
    counts: str = ""
    open_words: tuple[str, ...] = ()
    sentence: str = ""
    remark: str = ""

    @property
    def spoken(self) -> str:
        """The word as it is read aloud: "refurbish, at least (replace 1 of 4)"."""
        return read_aloud(self.verdict, self.firmness, self.detail)


def read_aloud(verdict: str, firmness: str = "", detail: str = "") -> str:
    """Return a word with how far it can be relied on.

    Parameters
    ----------
    verdict, firmness, detail : str
        As in a Proposal.

    Returns
    -------
    str

    Examples
    --------
    >>> read_aloud("remove", "firm", "and replace")
    'remove and replace, firm'
    >>> read_aloud("refurbish", "at least", "1 of 4")
    'refurbish, at least (1 of 4)'
    """
    if verdict == PRICE_BOTH:
        return f"{verdict}: {detail}"
    joined = detail.startswith("and ")
    word = f"{verdict} {detail}" if joined else verdict
    text = f"{word}, {firmness}" if firmness else word
    return text if joined or not detail else f"{text} ({detail})"
