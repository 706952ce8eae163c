"""Every criterion by its name, so that a checklist, a command and the report find the same rule."""

import difflib

from inspector.criteria import (
    atmosphere,
    coating,
    dynamic_positioning,
    emissions,
    identity,
    insulation,
    oil,
    refrigeration,
    supply,
    thermography,
    thickness,
    vibration,
)
from inspector.criteria.judgement import Criterion
from inspector.errors import InspectorError

_MODULES = (thickness, coating, insulation, thermography, vibration, refrigeration, atmosphere, emissions,
            dynamic_positioning, identity, oil, supply)

CRITERIA: dict[str, Criterion] = {rule.name: rule for module in _MODULES for rule in module.CRITERIA}


class NoSuchCriterion(InspectorError):
    """No criterion has this name. Attributes: ``name``, ``nearest`` (a tuple of names)."""


def criterion(name: str) -> Criterion:
    """Return the criterion of this name, or raise NoSuchCriterion with the nearest names.

    Examples
    --------
    >>> criterion("plate-thickness").source.mark
    'seen'
    """
    if name in CRITERIA:
        return CRITERIA[name]
    nearest = tuple(difflib.get_close_matches(name, CRITERIA, n=3, cutoff=0.4))
    hint = f"did you mean {' or '.join(nearest)}?" if nearest else f"the names are {', '.join(CRITERIA)}."
    raise NoSuchCriterion(f"There is no criterion '{name}': {hint}", name=name, nearest=nearest)
