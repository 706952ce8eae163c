"""The comparison of inspections, for page and command.

The chapters are slow to import, so that they are imported by the first comparison.
"""

from collections.abc import Iterator
from typing import TYPE_CHECKING

from inspector.record.inspection import Inspection
from inspector.services.conversion.conversion_chapters import chapter_shelf
from inspector.services.data_folder import DataFolder, title_of
from inspector.values.errors import InspectorError

if TYPE_CHECKING:
    from inspector.conversion.comparison.calculation import Candidate, Comparison

# More columns fit neither a screen nor a page.
MOST = 8


def comparison(data: DataFolder, ids: list[str], weights: dict[str, float]) -> "Comparison":
    """Return the comparison of inspections.

    Parameters
    ----------
    data : DataFolder
    ids : list of str
        The inspections to compare; without any, those on whose sheets something is recorded, or all
        where there is none yet, so far as they can be read.
    weights : dict of str to float
        Aspect -> weight [-].

    Returns
    -------
    Comparison

    Raises
    ------
    InspectorError
        A named inspection cannot be read, or a weight cannot be used.
    """
    from inspector.conversion.comparison.calculation import compare

    if ids:
        chosen = [data.inspections.get(inspection_id) for inspection_id in ids]
    else:
        readable = list(_readable(data))
        # Without a choice those that somebody has walked: of the others there is nothing to
        # compare.
        walked = [one for one in readable if any(one.state.subjects("sheet/"))]
        chosen = (walked or readable)[:MOST]
    return compare([_candidate(data, inspection) for inspection in chosen], weights)


def _readable(data: DataFolder) -> Iterator[Inspection]:
    """Every inspection that can be read: a damaged one must not keep the others out."""
    for inspection_id in data.inspections.ids():
        try:
            yield data.inspections.get(inspection_id)
        except InspectorError:
            continue


def _candidate(data: DataFolder, inspection: Inspection) -> "Candidate":
    from inspector.conversion.comparison.calculation import candidate

    # The chapters are those that the pages of the conversion show, calculated once for both.
    shelf = chapter_shelf(data, inspection)

    def make() -> "Candidate":
        return candidate(shelf.case, inspection.id, title_of(inspection), shelf.chapters())

    # The days to a survey depend on the day, so it is part of the key.
    return data.remember(f"candidate on {shelf.day}", inspection, make)
