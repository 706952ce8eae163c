"""The walk: one page with every sheet; the page's own scripts show what was recorded."""

from datetime import datetime

from flask import Blueprint, render_template

from inspector.assess.depth import load_readings
from inspector.checklists.attainable import asked_of_crew, reasons_against, refused_by_crew
from inspector.checklists.model import Library
from inspector.record.inspection import Inspection
from inspector.services.data_folder import title_of
from inspector.services.effort import Effort, asked_on_board, effort_of, not_asked_by_unit
from inspector.services.units_on_board import units_of
from inspector.services.visit.rounds import round_to_follow
from inspector.values.vocabulary import ASKED_OF_CREW, for_browser
from inspector.web.current import data_folder, open_inspection
from inspector.web.on_device import offline, python_files
from inspector.web.on_device.compression import compressed
from inspector.web.security import caller_is_here, nearby

pages = Blueprint("walk", __name__)


@pages.get("/inspection/<inspection_id>/walk")
def walk(inspection_id: str):
    """Every sheet of the inspection on one page."""
    # What judges is slow to import, and the first page should not wait for it.
    from inspector.checklists.typing_help import typing_help
    from inspector.criteria.safety.gate_air import air_asked

    inspection = open_inspection(inspection_id)
    library = data_folder().library_of(inspection)
    systems, effort = _systems(inspection, library)
    page = render_template(
        "walk/walk.html",
        inspection={"id": inspection.id, "title": title_of(inspection)},
        systems=systems,
        effort=effort,
        trials=library.trials,
        attainable={"met": reasons_against(), "refused": refused_by_crew()},
        asked_of_crew=asked_of_crew,
        crew={name: label for name, (label, _) in ASKED_OF_CREW.items()},
        round=round_to_follow(data_folder(), inspection, datetime.now().astimezone()),
        spaces=library.spaces,
        cautions=library.cautions,
        vocabulary=for_browser(),
        surveyors=[kept["name"] for kept in data_folder().catalogue.all("surveyors")],
        host=data_folder().host,
        step="walk",
        shipped=offline.address(),
        edition=offline.edition(),
        nearby=nearby(),
        on_laptop=caller_is_here(),
        python=python_files.addresses(inspection.id, library),
        air=air_asked(),
        load_readings=load_readings,
        typing_help=lambda check, reading: typing_help(check, reading, library.criteria),
    )
    # This one page is large and may travel over a tablet's hotspot.
    response = compressed(page.encode(), "text/html")
    # The service worker keeps a page only where these two name what it asked for, so that no
    # other answer can take its place.
    response.headers.update({"X-Walk": inspection.id, "X-Edition": offline.edition()})
    return response


def _systems(inspection: Inspection, library: Library) -> tuple[list[dict], Effort]:
    """Each system with units on board, its units and its effort; and the effort of the vessel."""
    units = units_of(inspection.state, library)
    asked = asked_on_board(inspection.state, library, units)
    skipped = not_asked_by_unit(library, units, asked)
    found = []
    for system_id, on_board in units.items():
        # A system without a unit on board has no sheet to walk.
        if on_board:
            found.append(
                {
                    "system": library.systems[system_id],
                    "units": [
                        {**unit, "skipped": skipped[f"{system_id}/{unit['id']}"]}
                        for unit in on_board
                    ],
                    "effort": effort_of(asked[system_id], library.trials),
                }
            )
    whole = effort_of([one for own in asked.values() for one in own], library.trials)
    return found, whole
