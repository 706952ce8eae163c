"""What was seen of one unit, as the rules look at it."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from functools import cached_property

from inspector.assess.checked import CheckResult, Condition
from inspector.assess.condition import of_results
from inspector.assess.verdict.settings import DEFAULTS, Settings
from inspector.values.vocabulary import RATINGS, REPORTED, SOMETHING_SEEN


@dataclass(frozen=True)
class Evidence:
    """What was seen of one unit.

    Parameters
    ----------
    condition : Condition
        Of what was seen.
    results : tuple of CheckResult
        Its applicable checks that are about the thing itself, without services and papers.
    services : tuple of CheckResult
        Its applicable checks that are about a date.
    walked_past : str
        What was seen against it in passing.
    """

    condition: Condition
    results: tuple[CheckResult, ...] = ()
    services: tuple[CheckResult, ...] = ()
    walked_past: str = ""

    @cached_property
    def looked_at(self) -> bool:
        """Whether anybody looked, in passing at least, or said anything of it."""
        rated = any(result.rating for result in (*self.results, *self.services))
        return rated or bool(self.walked_past)

    @property
    def enough(self) -> bool:
        """Every critical check at its depth, and enough of the rest found good, lost or seen."""
        return self.condition.enough

    @cached_property
    def critical_bad(self) -> tuple[CheckResult, ...]:
        """The critical checks that were seen to be poor or failed, the failed ones first."""
        found = [result for result in self._critical if result.seen and result.bad]
        return tuple(sorted(found, key=_by_rating))

    @cached_property
    def _critical(self) -> tuple[CheckResult, ...]:
        return tuple(result for result in self.results if result.check.critical)

    @cached_property
    def bad(self) -> tuple[CheckResult, ...]:
        """Every check that is poor or failed: critical first, then the failed, then the heavy."""
        found = [result for result in self.results if result.bad]
        return tuple(sorted(found, key=_by_need))

    @cached_property
    def open_critical(self) -> tuple[CheckResult, ...]:
        """The critical checks that still need a look or a proof, the heaviest first."""
        # The heaviest first, since the list is cut where it is printed.
        found = [result for result in self._critical if not result.closed]
        return tuple(sorted(found, key=lambda result: -result.check.weight))

    @cached_property
    def dead(self) -> bool:
        """Whether nothing critical is left in order, and there is more than one such check.

        What fails in a single point may be mended there; what fails in all of them is a choice
        between mending and a new one, which only prices can make.
        """
        seen = [result for result in self._critical if result.seen]
        # One failed check may be an error; two that agree, with none against them, are not.
        return len(seen) > 1 and all(result.rating == RATINGS[-1] for result in seen)

    @cached_property
    def hinted_points(self) -> float | None:
        """The points over what was seen, else over what was only reported."""
        rated = [result for result in self.results if result.rating]
        known = [result for result in rated if result.seen] or rated
        # As rated: a critical check that waits for its test counts as fair, and is no hint at work.
        return of_results(replace(result, depth="") for result in known).points

    @cached_property
    def hints_at_work(self) -> bool:
        """Whether something seen or said speaks against it, though it is not certain."""
        reported_bad = any(result.bad for result in self._critical)
        return reported_bad or self.walked_past == SOMETHING_SEEN

    @property
    def by_word_only(self) -> bool:
        """Whether all that is known of it was said or shown on paper."""
        depths = {result.depth for result in self.results if result.rating}
        return depths == {REPORTED}

    @cached_property
    def disputed(self) -> bool:
        """Whether people differ on a rating, so that the better answer may be the right one."""
        return any(result.better for result in self.results)

    def settled_better(self, settings: Settings) -> "Evidence":
        """Return the same with every dispute settled by its better answer."""
        settled = (
            replace(result, rating=result.better, better=None) if result.better else result
            for result in self.results
        )
        return evidence_of((*settled, *self.services), self.walked_past, settings)


def evidence_of(
    results: Iterable[CheckResult], walked_past: str = "", settings: Settings = DEFAULTS
) -> Evidence:
    """Return what was seen of one unit.

    Parameters
    ----------
    results : iterable of CheckResult
        Of its checks.
    walked_past : str
        What was seen against it in passing.
    settings : Settings
        With the share of the weight that must be found good.

    Returns
    -------
    Evidence
    """
    applicable = tuple(result for result in results if result.applicable)
    return Evidence(
        of_results(applicable, settings),
        tuple(result for result in applicable if not result.is_service),
        tuple(result for result in applicable if result.is_service),
        walked_past,
    )


def with_rating(results: Sequence[CheckResult], subject: str, rating: str) -> list[CheckResult]:
    """Return the results with one check seen at its depth and rated.

    Parameters
    ----------
    results : sequence of CheckResult
    subject : str
        The sheet.
    rating : str
        What is found there.

    Returns
    -------
    list of CheckResult
    """
    return [
        replace(result, rating=rating, answer=rating, depth=result.check.proof, better=None)
        if result.subject == subject
        else result
        for result in results
    ]


def completed(evidence: Evidence, rating: str, settings: Settings) -> Evidence:
    """Return the evidence as it would be if all that is open were found alike.

    Parameters
    ----------
    evidence : Evidence
    rating : str
        What is found in every open check.
    settings : Settings

    Returns
    -------
    Evidence
    """
    found = (
        result
        if result.closed
        else replace(result, rating=rating, answer=rating, depth=result.check.proof)
        for result in evidence.results
    )
    return evidence_of((*found, *evidence.services), "", settings)


def _by_rating(result: CheckResult) -> tuple[int, float]:
    return -RATINGS.index(result.rating), -result.check.weight


def _by_need(result: CheckResult) -> tuple[bool, int, float]:
    return (not result.check.critical, *_by_rating(result))
