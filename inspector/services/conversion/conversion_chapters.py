"""The chapters of one inspection, each calculated once until something more is recorded.

A page shows one chapter, and the first page all that is asked: neither may wait for what it does
not show, nor for what was calculated a moment ago.
"""

from dataclasses import dataclass, field
from datetime import date
from typing import TYPE_CHECKING, Any

from inspector.record.inspection import Inspection
from inspector.services.data_folder import DataFolder

if TYPE_CHECKING:
    from inspector.conversion.core.case import Case
    from inspector.conversion.core.chapter import Chapter


@dataclass
class ChapterShelf:
    """What was calculated of one state of an inspection on one day.

    Parameters
    ----------
    day : date
    case : Case
    made : dict of str to Chapter
        Id -> chapter, as far as asked for.
    """

    day: date
    case: "Case"
    made: dict[str, "Chapter"] = field(default_factory=dict)

    def chapter(self, chapter_id: str) -> "Chapter":
        """Return a chapter, calculated the first time it is asked for."""
        from inspector.conversion.contents import chapter_of

        if chapter_id not in self.made:
            self.made[chapter_id] = chapter_of(self.case, chapter_id)
        return self.made[chapter_id]

    def chapters(self) -> tuple["Chapter", ...]:
        """Return all chapters in their order."""
        from inspector.conversion.contents import CHAPTERS

        return tuple(self.chapter(chapter_id) for chapter_id in CHAPTERS)


def chapter_shelf(data: DataFolder, inspection: Inspection) -> ChapterShelf:
    """Return what was calculated of an inspection as it is now, today.

    Parameters
    ----------
    data : DataFolder
    inspection : Inspection

    Returns
    -------
    ChapterShelf
    """
    kept: dict[str, Any] = data.remember("chapters", inspection, dict)
    today = date.today()
    # Days to a survey depend on the day, so that yesterday's chapters are made anew.
    if kept.get("day") != today:
        kept.update(day=today, shelf=_new_shelf(data, inspection, today))
    return kept["shelf"]


def _new_shelf(data: DataFolder, inspection: Inspection, today: date) -> ChapterShelf:
    """Return a shelf with the case read and nothing calculated yet."""
    # The chapters are slow to import, and no other page should wait for them.
    from inspector.conversion.contents import read_case

    return ChapterShelf(today, read_case(data.assessment_of(inspection), today))
