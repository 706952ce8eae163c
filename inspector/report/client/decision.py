"""What the first two pages decide by, beside the assessment."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from inspector.conversion.core.chapter import Chapter, Requirement
from inspector.conversion.core.particulars import Rows
from inspector.report.client.all_in_cost import AllIn
from inspector.report.client.safety_items import SafetyItem

_BRIEF_ORDER = ("speed", "range", "endurance", "persons")


@dataclass(frozen=True)
class Decision:
    """What the report is made of beside the assessment.

    Parameters
    ----------
    chapters : sequence of Chapter
    cost : AllIn
    safety : sequence of SafetyItem
    tables : mapping of str to Rows
        The particulars as typed.
    """

    chapters: Sequence[Chapter] = ()
    cost: AllIn = AllIn()
    safety: Sequence[SafetyItem] = ()
    tables: Mapping[str, Rows] = field(default_factory=dict)

    @property
    def requirements(self) -> list[tuple[Requirement, str]]:
        """What is asked, with the key of its chapter: what the brief itself asks first."""
        found = [
            (asked, f"chapter-{chapter.id}")
            for chapter in self.chapters
            for asked in chapter.requirements
        ]
        return sorted(found, key=lambda pair: _place_of(pair[0]))


def _place_of(asked: Requirement) -> int:
    return _BRIEF_ORDER.index(asked.id) if asked.id in _BRIEF_ORDER else len(_BRIEF_ORDER)
