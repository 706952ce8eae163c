"""The same system, requirement or check of all candidates in one row."""

from collections.abc import Sequence
from dataclasses import dataclass

from inspector.assess.checked import CheckResult
from inspector.assess.model import Part
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
    """Return the brief's requirements over all candidates.

    Parameters
    ----------
    candidates : sequence of Candidate

    Returns
    -------
    tuple of RequirementRow
    """
    asked = [
        {requirement.id: requirement for requirement in candidate.requirements}
        for candidate in candidates
    ]
    # By key and not by label, which may name a figure of one vessel.
    labels: dict[str, str] = {}
    for requirements in asked:
        for key, requirement in requirements.items():
            labels.setdefault(key, requirement.label)
    return tuple(
        RequirementRow(label, tuple(requirements.get(key) for requirements in asked))
        for key, label in labels.items()
    )


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
