"""Facts and evidence -> the proposed word of a unit.

A proposal only: the surveyor decides, and the report shows both where they differ.
"""

from collections.abc import Iterable
from dataclasses import dataclass, replace

from inspector.assess.model import Part
from inspector.assess.verdict.changes import WordChange, word_changes
from inspector.assess.verdict.evidence import completed
from inspector.assess.verdict.found_words import open_names
from inspector.assess.verdict.reasons import reasons_of, remark_of
from inspector.assess.verdict.sentences import sentence_of
from inspector.assess.verdict.system_word import UnitWord
from inspector.assess.verdict.unit_case import Case
from inspector.assess.verdict.unit_rules import AND_REPLACE, Word, word_for
from inspector.assess.verdict.word import Change, Proposal, read_aloud
from inspector.values.text import capital
from inspector.values.vocabulary import FIRM, NOT_LOOKED_AT, PRICE_BOTH, RATINGS, VERDICTS

# Open looks that are named.
MOST_DECIDING = 6


@dataclass(frozen=True)
class Judged:
    """A unit with its proposal, and what the proposal was made from.

    Parameters
    ----------
    part : Part
    case : Case
    word : Word
    changes : tuple of WordChange
    decided : bool
        Whether the surveyor decided on this unit; what he decided of the whole system is no part
        of what is proposed for it.
    """

    part: Part
    case: Case
    word: Word
    changes: tuple[WordChange, ...]
    decided: bool = False

    @property
    def unit_word(self) -> UnitWord:
        """What a system needs to know of it: the surveyor's decision counts before the rules."""
        part = self.part
        proposal = part.proposal
        if not self.decided:
            return replace(self.with_word(self.word), sentence=proposal.sentence)
        removed = part.decision == "remove"
        return UnitWord(
            part.name,
            part.decision,
            FIRM,
            AND_REPLACE if removed and not part.let_go else "",
            part.let_go,
            part.reason or "decided by the surveyor",
            rule="decided",
            rule_text="The surveyor has decided.",
        )

    def with_word(self, word: Word) -> UnitWord:
        """Return what a system needs to know, if the unit had another word."""
        evidence = self.case.evidence
        stays = word.verdict == VERDICTS[0]
        return UnitWord(
            self.part.name,
            word.verdict,
            word.firmness,
            word.detail,
            word.let_go,
            open_looks=open_names(evidence),
            jobs=tuple(result.check.title for result in evidence.bad) if stays else (),
            rule=word.rule.name,
            rule_text=word.rule.read(self.case.settings),
        )


def propose(
    case: Case, name: str, currency: str = ""
) -> tuple[Proposal, Word, tuple[WordChange, ...]]:
    """Propose the word of one unit by the first of the rules that applies.

    Parameters
    ----------
    case : Case
    name : str
        Of the unit.
    currency : str
        What the costs are in, printed with each; "" where none was named.

    Returns
    -------
    tuple of (Proposal, Word, tuple of WordChange)
        The same for the same input.
    """
    word, changes = word_for(case), word_changes(case)
    proposal = Proposal(
        verdict=word.verdict,
        rule=word.rule.name,
        rule_text=word.rule.read(case.settings),
        reasons=reasons_of(case, word, currency),
        changes=tuple(_change(change) for change in changes),
        deciding=_deciding(case, word, name),
        firmness=word.firmness,
        detail=word.detail,
        open_words=open_words(case, word),
        sentence=capital(sentence_of(case, word)),
        remark=remark_of(case),
    )
    return proposal, word, changes


def _change(change: WordChange) -> Change:
    word = change.word
    return Change(change.fact, read_aloud(word.verdict, word.firmness, word.detail))


def _deciding(case: Case, word: Word, name: str) -> tuple[str, ...]:
    """The critical checks that are open, where the word still depends on them."""
    if word.firmness == FIRM:
        return ()
    return tuple(f"{name}: {look}" for look in open_names(case.evidence)[:MOST_DECIDING])


def open_words(case: Case, word: Word) -> tuple[str, ...]:
    """Return the words that are still possible, the best first.

    Parameters
    ----------
    case : Case
    word : Word
        Its word as it is.

    Returns
    -------
    tuple of str
        Of a firm word itself. Else the words from that with all open looks good to that with all
        of them failed.
    """
    if word.firmness == FIRM:
        return (word.verdict,)
    # The two ends are enough: the verdict only worsens as the ratings do.
    ends = [word.verdict]
    for rating in (RATINGS[0], RATINGS[-1]):
        evidence = completed(case.evidence, rating, case.settings)
        ends.append(word_for(replace(case, evidence=evidence)).verdict)
    return between(ends)


def between(verdicts: Iterable[str]) -> tuple[str, ...]:
    """Return the words from the best to the worst of some.

    Parameters
    ----------
    verdicts : iterable of str

    Returns
    -------
    tuple of str
        Empty where nobody looked.
    """
    places = [place for verdict in verdicts for place in _places(verdict)]
    return VERDICTS[min(places) : max(places) + 1] if places else ()


def _places(verdict: str) -> tuple[int, ...]:
    """Where a word is between retain and remove; one that only prices can say is both."""
    if verdict == PRICE_BOTH:
        return 1, 2
    return () if verdict == NOT_LOOKED_AT else (VERDICTS.index(verdict),)
