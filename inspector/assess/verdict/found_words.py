"""What was found, and what is still open, in a seaman's words."""

from collections.abc import Sequence

from inspector.assess.checked import CheckResult
from inspector.assess.verdict.evidence import Evidence

_MOST_NAMED = 3
# A note longer than this is no sentence to be read aloud; its first one is.
_LONGEST_NOTE = 110
# Where a look is to be had that nobody can take at a quay.
_ELSEWHERE = {"sea": "at sea", "dock": "in dock", "laboratory": "by a laboratory"}


def bad_words(result: CheckResult) -> str:
    """Return a poor or failed check: "Load run: failed (trips at half load)".

    Parameters
    ----------
    result : CheckResult

    Returns
    -------
    str
    """
    note = result.note.strip().split(". ")[0].rstrip(".")
    why = f" ({note})" if note and len(note) <= _LONGEST_NOTE else ""
    if result.better:
        return (
            f"{result.check.title}: {result.rating} by one, {result.better} by another; the worse "
            "answer counts until it is settled"
        )
    return f"{result.check.title}: {result.rating}{why}"


def open_names(evidence: Evidence) -> tuple[str, ...]:
    """Return the critical checks that are open, each with what it still needs.

    Parameters
    ----------
    evidence : Evidence

    Returns
    -------
    tuple of str
        "Load run (only sighted)", "Half an hour under load (at sea)"; the heaviest first.
    """
    return tuple(_to_prove(result) for result in evidence.open_critical)


def _to_prove(result: CheckResult) -> str:
    known = f"only {result.depth}" if result.rating and result.depth else ""
    where = _ELSEWHERE.get(result.check.needs, "")
    needs = ", ".join(filter(None, (known, where)))
    return f"{result.check.title} ({needs})" if needs else result.check.title


def few_of(names: Sequence[str]) -> str:
    """Return the first few names, and how many more there are.

    Parameters
    ----------
    names : sequence of str
        A name that occurs several times is named once.

    Returns
    -------
    str

    Examples
    --------
    >>> few_of(["Inside", "Load run", "Inside", "Plate", "Seal", "Oil"])
    'Inside; Load run; Plate and 2 more'
    """
    once = list(dict.fromkeys(names))
    more = len(once) - _MOST_NAMED
    return "; ".join(once[:_MOST_NAMED]) + (f" and {more} more" if more > 0 else "")
