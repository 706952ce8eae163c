"""The walk: one page per inspection that holds every sheet; what was recorded is painted over it by the page's own scripts."""

import gzip

from flask import Blueprint, Response, render_template, request

from inspector.assess.limits import profiles_of
from inspector.assess.shapes import REASONS
from inspector.web import offline
from inspector.web.desk import desk, open_inspection, title_of
from inspector.web.ladders import air_asked, ladders_of
from inspector.web.units import units_of

pages = Blueprint("walk", __name__)


@pages.get("/inspection/<inspection_id>/walk")
def walk(inspection_id: str):
    """Every sheet of the inspection on one page."""
    inspection = open_inspection(inspection_id)
    library = desk().library_of(inspection)
    counted = units_of(inspection.state, library)
    systems = [
        {"system": library.systems[one], "units": units, "minutes": sum(library.systems[one].minutes(unit["kind"]) for unit in units),
         "critical": sum(library.systems[one].minutes(unit["kind"], critical=True) for unit in units)}
        for one, units in counted.items() if units
    ]
    page = render_template(
        "walk/walk.html", inspection={"id": inspection.id, "title": title_of(inspection)}, systems=systems, spaces=library.spaces, cautions=library.cautions,
        reasons=REASONS, surveyors=[one["name"] for one in desk().catalogue.all("surveyors")], host=desk().host, step="walk",
        shipped=offline.address(), ladders=ladders_of([one["system"] for one in systems], profiles_of(inspection.state)[0]), air=air_asked(),
    )
    response = _compressed(page)
    # The service worker keeps a page only where these two name what it asked for, so that no other answer can take its place.
    response.headers.update({"X-Walk": inspection.id, "X-Edition": offline.edition()})
    return response


def _compressed(page: str) -> Response:
    # This one page is large and may travel over a tablet's hotspot; it holds no secret that compression could betray.
    response = Response(page, mimetype="text/html")
    response.vary.add("Accept-Encoding")
    if "gzip" in request.accept_encodings:
        response.set_data(gzip.compress(response.get_data(), compresslevel=6, mtime=0))
        response.content_encoding = "gzip"
    return response
