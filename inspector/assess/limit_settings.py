"""The limits that the surveyor set for this inspection, with the text that they come from."""

from collections.abc import Mapping

from inspector.checklists.registry import CRITERIA
from inspector.criteria.core.criterion import Criterion
from inspector.criteria.core.limit_sets import BadLimit, LimitSet


def limit_sets_of(
    limits: Mapping[str, Mapping[str, str]], own_criteria: Mapping[str, Criterion]
) -> tuple[dict[str, LimitSet], tuple[str, ...]]:
    """Make the limit sets that replace the shipped ones.

    Parameters
    ----------
    limits : mapping of str to mapping
        Criterion -> field -> text as recorded; the field "source" names where they come from.

    own_criteria : mapping of str to Criterion
        The surveyor's own, which are looked at before the shipped ones.

    Returns
    -------
    tuple of (dict of str to LimitSet, tuple of str)
        Criterion -> limit set, only where one differs from the shipped one; and a sentence for each
        that cannot be used, for which the shipped limits count.
    """
    found, faults = {}, []
    for name, typed in limits.items():
        rule = own_criteria.get(name) or CRITERIA.get(name)
        shipped = rule.limit_set if rule else None
        # A criterion of an older version, or one whose limits are law.
        if shipped is None:
            faults.append(f"Limits were set for {name}, which has none that can be set.")
            continue
        values = {field: text for field, text in typed.items() if field != "source"}
        try:
            limit_set = shipped.with_limits(values, typed.get("source", ""))
        except BadLimit as problem:
            faults.append(f"{rule.title}: {problem}")
            continue
        if limit_set.edited:
            found[name] = limit_set
    return found, tuple(faults)
