"""What the conversion does: range, weight, stability, power, space, money and certificates of one inspection, chapter by chapter."""

from datetime import date

from flask import Blueprint, render_template

from inspector.conversion.contents import TABLES, convert
from inspector.report.conversion import amount
from inspector.report.geometry import draw
from inspector.web.desk import desk, open_inspection, title_of

pages = Blueprint("conversion", __name__)


@pages.get("/inspection/<inspection_id>/conversion")
def conversion(inspection_id: str):
    """All chapters, each with its answer first."""
    inspection = open_inspection(inspection_id)
    chapters = convert(inspection.state, desk().assessment_of(inspection), date.today())
    return render_template("conversion/conversion.html", inspection=inspection, chapters=chapters, tables={table.id: table for table in TABLES},
                           draw=draw, amount=amount, step="decide", title=title_of(inspection))
