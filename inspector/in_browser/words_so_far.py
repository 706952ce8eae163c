"""Condition and word of every system as they are now, for a page that has no computer near."""

from typing import Any

from inspector.assess.model import Assessment, SystemPart
from inspector.assess.summary_sentences import summary_sentences


def words_so_far(assessment: Assessment) -> dict[str, Any]:
    """Return what is known of the vessel so far, as plain data.

    Parameters
    ----------
    assessment : Assessment

    Returns
    -------
    dict
        ``sentences``: what decides, in a few sentences; ``systems``: of each its name, its word as
        it is read aloud, the sentence behind it, how many checks are seen of how many, and its
        condition with low and high, 0 to 100, where enough was seen for a figure.
    """
    return {
        "sentences": summary_sentences(assessment),
        "systems": [_of_system(part) for part in assessment.systems],
    }


def _of_system(part: SystemPart) -> dict[str, Any]:
    whole = part.whole
    return {
        "id": part.system.id,
        "name": part.system.name,
        "verdict": whole.verdict,
        "firmness": whole.firmness,
        "word": whole.spoken or whole.verdict,
        "sentence": whole.reason if whole.decision else whole.proposal.sentence,
        "seen": whole.condition.seen,
        "of": whole.condition.applicable,
        "points": whole.condition.shown,
        "low": whole.condition.low,
        "high": whole.condition.high,
    }
