"""What the conversion does to one inspection's vessel, chapter by chapter."""

from datetime import date

from flask import Blueprint, render_template

from inspector.services.data_folder import title_of
from inspector.web.current import data_folder, open_inspection

pages = Blueprint("conversion", __name__)


@pages.get("/inspection/<inspection_id>/conversion")
def conversion(inspection_id: str):
    """All chapters, each with its answer first."""
    # The chapters are slow to import, and no other page should wait for them.
    from inspector.conversion.contents import TABLES, convert
    from inspector.report import figure_text
    from inspector.report.geometry import draw

    inspection = open_inspection(inspection_id)
    chapters = convert(data_folder().assessment_of(inspection), date.today())
    return render_template(
        "conversion/conversion.html",
        inspection=inspection,
        chapters=chapters,
        tables={table.id: table for table in TABLES},
        draw=draw,
        words=figure_text,
        step="decide",
        title=title_of(inspection),
    )
