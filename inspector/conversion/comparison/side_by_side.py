"""The same system, requirement or check of all candidates in one row."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from inspector.assess.checked import CheckResult
from inspector.assess.model import Part
from inspector.conversion.comparison.asked_of_all import Asked, answers, asked_by
from inspector.conversion.comparison.calculation import Candidate
from inspector.conversion.core.chapter import Requirement


@dataclass(frozen=True)
class SystemRow:
    """One system over all candidates.

    Parameters
    ----------
    id, name : str
    parts : tuple of Part or None
        One for each candidate, None where the system is not on board or not counted.
    """

    id: str
    name: str
    parts: tuple[Part | None, ...]


@dataclass(frozen=True)
class RequirementRow:
    """One requirement over all candidates, None where a candidate does not answer it."""

    label: str
    requirements: tuple[Requirement | None, ...]


@dataclass(frozen=True)
class CheckRow:
    """One check over all candidates: every unit's result in each."""

    title: str
    results: tuple[tuple[CheckResult, ...], ...]

    @property
    def is_telling(self) -> bool:
        """Whether ratings differ or photos were taken."""
        results = [result for of_candidate in self.results for result in of_candidate]
        differ = len({result.rating for result in results}) > 1
        return differ or any(result.photos for result in results)


def by_system(candidates: Sequence[Candidate]) -> tuple[SystemRow, ...]:
    """Return the systems of all candidates, in the order of the checklists.

    Parameters
    ----------
    candidates : sequence of Candidate

    Returns
    -------
    tuple of SystemRow
    """
    parts = [
        {system.system.id: system.whole for system in candidate.assessment.systems}
        for candidate in candidates
    ]
    # The first candidate's checklists name a system where versions differ.
    systems = {
        system.system.id: system.system
        for candidate in reversed(candidates)
        for system in candidate.assessment.systems
    }
    ordered = sorted(systems.values(), key=lambda system: (system.order, system.name))
    return tuple(
        SystemRow(system.id, system.name, tuple(of_vessel.get(system.id) for of_vessel in parts))
        for system in ordered
    )


def by_requirement(candidates: Sequence[Candidate]) -> tuple[RequirementRow, ...]:
    """Return what is asked, over all candidates.

    Parameters
    ----------
    candidates : sequence of Candidate

    Returns
    -------
    tuple of RequirementRow
        One list for all: what the brief of any of them asks.
    """
    fields = {field: text for candidate in candidates for field, text in _typed(candidate)}
    asked = asked_by(fields) if candidates else ()
    answered = [answers(asked, candidate.requirements) for candidate in candidates]
    return tuple(
        RequirementRow(_label(one, of_all), tuple(of_all))
        for one, *of_all in zip(asked, *answered, strict=True)
    )


def _typed(candidate: Candidate) -> Iterable[tuple[str, str]]:
    """The fields of a candidate's brief that hold anything."""
    return ((field, text) for field, text in candidate.assessment.brief.items() if text)


def _label(asked: Asked, answered: Sequence[Requirement | None]) -> str:
    """The label of the first candidate that answers, which may name a figure of the brief."""
    return next((found.label for found in answered if found is not None), asked.label)


def by_check(candidates: Sequence[Candidate], system_id: str) -> tuple[CheckRow, ...]:
    """Return the same checks of one system, those with photos or different ratings first.

    Parameters
    ----------
    candidates : sequence of Candidate
    system_id : str

    Returns
    -------
    tuple of CheckRow
    """
    results: dict[str, list[list[CheckResult]]] = {}
    titles: dict[str, str] = {}
    for place, candidate in enumerate(candidates):
        for result in _results(candidate, system_id):
            titles.setdefault(result.check.id, result.check.title)
            by_candidate = results.setdefault(result.check.id, [[] for _ in candidates])
            by_candidate[place].append(result)
    rows = [CheckRow(titles[key], tuple(map(tuple, found))) for key, found in results.items()]
    return tuple(sorted(rows, key=lambda row: (not row.is_telling, row.title)))


def _results(candidate: Candidate, system_id: str) -> list[CheckResult]:
    """Return the results of a candidate's system, all units together."""
    return [
        result
        for system in candidate.assessment.systems
        if system.system.id == system_id
        for result in system.whole.results
    ]
