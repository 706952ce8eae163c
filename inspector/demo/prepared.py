"""Three more inspections of the demo, prepared and not walked yet: one for each unlike layout.

All of it is made up.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from inspector.checklists.model import Library
from inspector.demo.candidate import vessel, visit
from inspector.demo.sheet_lines import FieldValue
from inspector.services.layouts import units_in
from inspector.services.units_on_board import unit_id


@dataclass(frozen=True)
class Prepared:
    """An inspection before its visit.

    Parameters
    ----------
    id : str
        Id of its inspection.
    layout : str
        Id of the layout by which its units are counted.
    visit, vessel : dict of str to str
        Fields of the inspection and of the vessel.
    """

    id: str
    layout: str
    visit: dict[str, str]
    vessel: dict[str, str]


def counted_units(prepared: Prepared, library: Library) -> Iterator[FieldValue]:
    """Yield what is recorded where the units of a prepared inspection are counted.

    Parameters
    ----------
    prepared : Prepared
    library : Library

    Yields
    ------
    FieldValue
    """
    layout = library.layouts[prepared.layout]
    yield "inspection", "layout", layout.name
    for system in library.systems.values():
        taken: set[str] = set()
        for unit in units_in(layout, library, system):
            own_id = unit_id(unit["name"], taken)
            taken.add(own_id)
            for field, value in unit.items():
                yield f"unit/{system.id}/{own_id}", field, value


# Each by another layout, so that counting by a layout can be tried on unlike vessels.
PREPARED = (
    Prepared(
        "demo-quenmarra-fell",
        "diesel-electric",
        visit(
            "Quenmarra Fell, laid up|Inner basin, Vessmark roads|2026-12-08|"
            "Caretaker; an electrician on the second day||cold lay-up|alongside",
        ),
        vessel(
            "Quenmarra Fell|0002345|Vessmark|Offshore support vessel, DP class 2|2012-02-20|2013|"
            "Tarnbrekka Yard, hull 63|84.0|18.0|7.8|6.1|3440|760|2",
        ),
    ),
    Prepared(
        "demo-tolvenish-reed",
        "one-gear",
        visit(
            "Tolvenish Reed, between two charters|Fish quay, Dunmorrel|2026-12-10|"
            "Master and chief engineer, until the evening tide||in service|alongside",
        ),
        vessel(
            "Tolvenish Reed|0003466|Vessmark|Research and survey vessel|1998-06-15|1999|"
            "Skarnholt Yard, hull 12|58.2|12.6|6.2|5.0|1240|240",
        ),
    ),
    Prepared(
        "demo-osmereth-gull",
        "hybrid-pods",
        visit(
            "Osmereth Gull, trial day offered|Outer anchorage, Vessmark roads|2026-12-14|"
            "Full crew, owner's superintendent||in service|sea trial",
        ),
        vessel(
            "Osmereth Gull|0004563|Vessmark|Supply vessel, DP class 2, battery power|2019-09-02|"
            "2020|Tarnbrekka Yard, hull 88|80.5|17.2|7.6|6.0|2980|690|2",
        ),
    ),
)
