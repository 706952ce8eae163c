"""Every criterion by its name, so that a checklist, a command and the report find the same rule.

What calculates is Python: each module of ``inspector.criteria`` with a tuple ``CRITERIA`` is found
by walking the packages. What only compares is data: the files in ``checklists/criteria/``. Nothing
is read before a criterion is asked for.
"""

import difflib
import importlib
import pkgutil
from collections import Counter
from collections.abc import Iterator, Mapping
from functools import cached_property

import inspector.criteria
from inspector.checklists.criteria_files import shipped_criteria
from inspector.criteria.core.criterion import Criterion
from inspector.criteria.core.source import MARKS
from inspector.values.errors import InspectorError


class NoSuchCriterion(InspectorError):
    """No criterion has this name. Attributes: ``name``, ``nearest`` (a tuple of names)."""


def calculated_criteria() -> Iterator[Criterion]:
    """Yield the criteria of every module of the criteria, in no order."""
    for module in pkgutil.walk_packages(inspector.criteria.__path__, "inspector.criteria."):
        yield from getattr(importlib.import_module(module.name), "CRITERIA", ())


class _Shipped(Mapping[str, Criterion]):
    """The criteria that are shipped, sorted by name, read when the first one is asked for."""

    @cached_property
    def _by_name(self) -> dict[str, Criterion]:
        found = {rule.name: rule for rule in (*calculated_criteria(), *shipped_criteria())}
        return dict(sorted(found.items()))

    def __getitem__(self, name: str) -> Criterion:
        return self._by_name[name]

    def __iter__(self) -> Iterator[str]:
        return iter(self._by_name)

    def __len__(self) -> int:
        return len(self._by_name)


CRITERIA: Mapping[str, Criterion] = _Shipped()


def count_by_mark() -> dict[str, int]:
    """Return how many criteria have a source of each mark, without marks that none has."""
    counted = Counter(rule.source.mark for rule in CRITERIA.values())
    return {mark: counted[mark] for mark in MARKS if counted[mark]}


def mark_table() -> str:
    """Return the count by mark as the Markdown table that README.md carries."""
    rows = [f"| {mark} | {count} |" for mark, count in count_by_mark().items()]
    return "\n".join(["| mark | criteria |", "| --- | ---: |", *rows, f"| all | {len(CRITERIA)} |"])


def criterion_title(name: str, own: Mapping[str, Criterion]) -> str:
    """Return the title of a criterion, or its name where it is no longer known."""
    rule = own.get(name) or CRITERIA.get(name)
    return rule.title if rule else name


def criterion(name: str, own: Mapping[str, Criterion] | None = None) -> Criterion:
    """Return the criterion of a name.

    Parameters
    ----------
    name : str
    own : mapping of str to Criterion, optional
        The surveyor's own criteria of the inspection at hand (``Library.criteria``), which are
        looked at first.

    Returns
    -------
    Criterion

    Raises
    ------
    NoSuchCriterion
        With the nearest names.

    Examples
    --------
    >>> criterion("plate-thickness").source.mark
    'seen'
    """
    known = {**CRITERIA, **own} if own else CRITERIA
    if name in known:
        return known[name]
    nearest = tuple(difflib.get_close_matches(name, known, n=3, cutoff=0.4))
    if nearest:
        hint = f"did you mean {' or '.join(nearest)}?"
    else:
        hint = f"the names are {', '.join(known)}."
    raise NoSuchCriterion(f"There is no criterion '{name}': {hint}", name=name, nearest=nearest)
