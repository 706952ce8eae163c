"""The rules of one unit's word in their order, as a surveyor reads them aloud.

The first rule that applies counts. Papers are in none of them: they are beside the word. Law
against the thing itself comes before its condition, since what may not stay does not stay however
well it looks. The levels are settings (settings.py).
"""

from collections.abc import Callable
from dataclasses import dataclass

from inspector.assess.verdict.settings import DEFAULTS, Settings
from inspector.assess.verdict.unit_case import Case
from inspector.values.vocabulary import (
    AT_LEAST,
    FIRM,
    NOT_LOOKED_AT,
    PRICE_BOTH,
    SO_FAR,
)

AND_REPLACE = "and replace"
DECIDES = "decides the vessel"
# From the best to the worst, for "a worse answer never betters a word".
ORDER = ("retain", "refurbish", PRICE_BOTH, "remove")


@dataclass(frozen=True)
class Rule:
    """One rule.

    Parameters
    ----------
    name : str
        Short name.
    text : str
        To be read aloud; fields in braces are settings.
    verdict : str
        The word it gives.
    firmness : callable
        Case -> how far the word can be relied on.
    applies : callable
        Case -> bool.
    replaced : bool
        Whether what is removed by it must be replaced.
    """

    name: str
    text: str
    verdict: str
    firmness: Callable[[Case], str]
    applies: Callable[[Case], bool]
    replaced: bool = False

    def read(self, settings: Settings = DEFAULTS) -> str:
        """Return the text with the settings' figures.

        Parameters
        ----------
        settings : Settings

        Returns
        -------
        str
        """
        return self.text.format(
            retain_from=f"{settings.retain_from:g}",
            coverage=_percent(settings.coverage),
            cost_share=_percent(settings.cost_share),
        )


def _percent(share: float) -> str:
    """A share as a surveyor reads it aloud."""
    return f"{share * 100:.0f} %"


def _always(firmness: str) -> Callable[[Case], str]:
    return lambda case: firmness


def _firm_if_enough(case: Case) -> str:
    """Firm where enough was seen; before that, the rest can only add to the work."""
    return FIRM if case.evidence.enough else AT_LEAST


RULES = (
    # First of all: nobody pays for looking at what is not wanted in any condition.
    Rule(
        "not wanted",
        "What the brief does not want goes.",
        "remove",
        _always(FIRM),
        lambda case: case.need == "unwanted",
    ),
    Rule(
        "not looked at",
        "What nobody has looked at has no word.",
        NOT_LOOKED_AT,
        _always(""),
        lambda case: not case.looked_at,
    ),
    # Before law and price: who has seen that a thing cannot be mended needs no price of mending.
    Rule(
        "beyond repair",
        "What the surveyor says is beyond repair, with his reason, goes.",
        "remove",
        _always(FIRM),
        lambda case: bool(case.facts.beyond_repair),
        replaced=True,
    ),
    Rule(
        "law, too dear",
        "What may not stay by law goes, if bringing it within the law costs too much: more a year "
        "than replacing, or over {cost_share} of it.",
        "remove",
        _always(FIRM),
        lambda case: bool(case.facts.law) and case.too_dear,
        replaced=True,
    ),
    Rule(
        "law, way back priced",
        "What may not stay as it is by law is brought within the law, where that is priced and "
        "costs at most {cost_share} of replacing.",
        "refurbish",
        _firm_if_enough,
        lambda case: bool(case.facts.law) and case.priced,
    ),
    # A banned medium in a plant without parts: there is no way back to be priced.
    Rule(
        "law, no parts",
        "What may not stay by law, and has no parts any more, goes.",
        "remove",
        _always(FIRM),
        lambda case: bool(case.facts.law) and case.without_parts,
        replaced=True,
    ),
    Rule(
        "law, not priced",
        "What may not stay as it is by law is refurbished or removed: price both.",
        PRICE_BOTH,
        _always(""),
        lambda case: bool(case.facts.law),
    ),
    Rule(
        "not worth repair",
        "What needs work for certain goes, where the brief does not need it: nobody repairs it.",
        "remove",
        _always(FIRM),
        lambda case: case.work_is_certain and case.need == "neutral",
    ),
    Rule(
        "too dear",
        "What needs work for certain is removed and replaced, if refurbishing costs too much: more "
        "a year than replacing or, where lives are not known, over {cost_share} of it.",
        "remove",
        _always(FIRM),
        lambda case: case.work_is_certain and case.too_dear,
        replaced=True,
    ),
    Rule(
        "worth repair",
        "What needs work for certain is refurbished, where that is priced and not too dear, with "
        "its parts or without.",
        "refurbish",
        _firm_if_enough,
        lambda case: case.work_is_certain and case.priced,
    ),
    Rule(
        "not priced",
        "What needs work for certain, and has no parts any more or nothing critical in order, is "
        "refurbished or removed: price both.",
        PRICE_BOTH,
        _always(""),
        lambda case: case.work_is_certain and (case.without_parts or case.evidence.dead),
    ),
    Rule(
        "work certain",
        "What needs work for certain is refurbished at least.",
        "refurbish",
        _always(AT_LEAST),
        lambda case: case.work_is_certain,
    ),
    # What will not last the horizon must be worked on or replaced, so that prices decide here too.
    Rule(
        "not worth an overhaul",
        "What was seen enough of, and is worn, short-lived or without parts for the buyer's "
        "horizon, is removed and replaced, if refurbishing costs too much.",
        "remove",
        _always(FIRM),
        lambda case: case.work_is_due and case.too_dear,
        replaced=True,
    ),
    Rule(
        "worn",
        "What was seen enough of, and is below {retain_from} of 100, is refurbished.",
        "refurbish",
        _always(FIRM),
        lambda case: case.evidence.enough and case.looks_worn,
    ),
    Rule(
        "short-lived",
        "What was seen enough of, and will not last the buyer's horizon, is refurbished.",
        "refurbish",
        _always(FIRM),
        lambda case: case.evidence.enough and case.short_lived,
    ),
    Rule(
        "no parts",
        "What was seen enough of, and has no parts for the buyer's horizon, is refurbished.",
        "refurbish",
        _always(FIRM),
        lambda case: case.evidence.enough and case.parts_run_out,
    ),
    Rule(
        "sound",
        "What was seen enough of stays: every critical check at its depth, and {coverage} of the "
        "weight found good, or all of it seen. What failed beside it is a work line.",
        "retain",
        _always(FIRM),
        lambda case: case.evidence.enough,
    ),
    Rule(
        "too dear so far",
        "What was seen so far speaks for work, and refurbishing costs too much.",
        "remove",
        _always(SO_FAR),
        lambda case: case.hints_at_work and case.too_dear,
        replaced=True,
    ),
    Rule(
        "work so far",
        "What was seen so far speaks for work.",
        "refurbish",
        _always(SO_FAR),
        lambda case: case.hints_at_work,
    ),
    Rule(
        "sound so far",
        "What was seen so far is sound; what is open could still change that.",
        "retain",
        _always(SO_FAR),
        lambda case: True,
    ),
)


@dataclass(frozen=True)
class Word:
    """A word with how far it can be relied on, and the rule that gave it.

    Parameters
    ----------
    verdict, firmness, detail : str
        As in a Proposal.
    rule : Rule
    let_go : bool
        Whether it is removed and nothing takes its place.
    """

    verdict: str
    firmness: str
    detail: str
    rule: Rule
    let_go: bool = False

    @property
    def key(self) -> tuple[str, str]:
        """What makes two words different ones; only how firm they are does not."""
        return self.verdict, self.detail


def rule_for(case: Case) -> Rule:
    """Return the first rule that applies; the last one always does.

    Parameters
    ----------
    case : Case

    Returns
    -------
    Rule
    """
    return next(rule for rule in RULES if rule.applies(case))


def word_for(case: Case) -> Word:
    """Return the word of one unit.

    Parameters
    ----------
    case : Case

    Returns
    -------
    Word
        In a dispute by the worse answers; *so far* where the better ones would give another word.
    """
    word = _word_by_rules(case)
    if not case.evidence.disputed or not word.firmness:
        return word
    settled = Case(case.facts, case.evidence.settled_better(case.settings), case.settings)
    better = _word_by_rules(settled)
    if (better.key, better.firmness) == (word.key, word.firmness):
        return word
    return Word(word.verdict, SO_FAR, word.detail, word.rule, word.let_go)


def _word_by_rules(case: Case) -> Word:
    rule = rule_for(case)
    firmness = rule.firmness(case)
    if case.facts.stays and rule.verdict in ("remove", PRICE_BOTH):
        # The hull is never removed: what is said of it is said of buying the vessel.
        return Word("refurbish", firmness or AT_LEAST, DECIDES, rule)
    if rule.verdict == PRICE_BOTH:
        return Word(PRICE_BOTH, "", "price both", rule)
    if rule.verdict != "remove":
        return Word(rule.verdict, firmness, "", rule)
    replaced = rule.replaced and case.need not in ("neutral", "unwanted")
    return Word("remove", firmness, AND_REPLACE if replaced else "", rule, not replaced)
