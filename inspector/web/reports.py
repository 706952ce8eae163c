"""Report: a page with the choices, the PDF itself, and the bundle to carry away."""

import io
import tempfile
from datetime import date
from pathlib import Path

from flask import Blueprint, abort, render_template, request, send_file

from inspector.conversion.contents import convert
from inspector.record import bundle
from inspector.web.desk import desk, open_inspection, title_of
from inspector.web.making import make_report

pages = Blueprint("reports", __name__)


@pages.get("/inspection/<inspection_id>/report")
def report(inspection_id: str):
    """Choices for the report, and what it will contain."""
    inspection = open_inspection(inspection_id)
    return render_template("report/report.html", inspection=inspection, assessment=desk().assessment_of(inspection), step="report", title=title_of(inspection))


@pages.get("/inspection/<inspection_id>/report.pdf")
def report_pdf(inspection_id: str):
    """The condition report as it stands now."""
    inspection = open_inspection(inspection_id)
    paper, units = request.args.get("paper", "a4"), request.args.get("units", "si")
    if paper not in ("a4", "letter") or units not in ("si", "us"):
        abort(400, "The paper is a4 or letter, the units are si or us.")
    with tempfile.TemporaryDirectory() as folder:
        out = Path(folder) / "report.pdf"
        make_report(desk(), inspection, out, paper=paper, units=units, whole=request.args.get("extent") != "short")
        # Sent from an open handle, so that the folder can go as soon as the answer does.
        return send_file(_whole(out), mimetype="application/pdf", as_attachment=False, download_name=f"condition-report-{inspection.id}.pdf")


@pages.get("/inspection/<inspection_id>/tables.<ending>")
def tables(inspection_id: str, ending: str):
    """The record as plain tables."""
    from inspector.report import sheets

    inspection = open_inspection(inspection_id)
    if ending not in sheets.WRITERS:
        abort(404)
    assessment = desk().assessment_of(inspection)
    with tempfile.TemporaryDirectory() as folder:
        out = Path(folder) / f"tables.{ending}"
        sheets.write(sheets.sheets(assessment, convert(inspection.state, assessment, date.today())), out)
        return send_file(_whole(out), as_attachment=True, download_name=f"{inspection.id}.{ending}")


@pages.get("/inspection/<inspection_id>/bundle.zip")
def bundle_zip(inspection_id: str):
    """The whole inspection as one file."""
    inspection = open_inspection(inspection_id)
    with tempfile.TemporaryDirectory() as folder:
        out = Path(folder) / "bundle.zip"
        bundle.write(inspection.folder, out)
        return send_file(_whole(out), mimetype="application/zip", as_attachment=True, download_name=f"{inspection.id}.zip")


def _whole(path: Path):
    return io.BytesIO(path.read_bytes())
