"""Report: a page with the choices, the PDF itself, the tables and the bundle."""

import io
import tempfile
from collections.abc import Callable
from pathlib import Path

from flask import Blueprint, Response, abort, render_template, request, send_file

from inspector.record.inspection import Inspection
from inspector.services.data_folder import title_of
from inspector.services.export_file import TABLE_ENDINGS, export
from inspector.services.report_files import SCOPE_ENDINGS, make_report, make_scope
from inspector.values.vocabulary import UNIT_SYSTEMS
from inspector.web.current import data_folder, open_inspection

pages = Blueprint("reports", __name__)


@pages.get("/inspection/<inspection_id>/report")
def report(inspection_id: str):
    """Choices for the report, and what it will contain."""
    inspection = open_inspection(inspection_id)
    return render_template(
        "report/report.html",
        inspection=inspection,
        assessment=data_folder().assessment_of(inspection),
        step="report",
        title=title_of(inspection),
    )


@pages.get("/inspection/<inspection_id>/report.pdf")
def report_pdf(inspection_id: str):
    """The condition report as it would be now."""
    inspection = open_inspection(inspection_id)
    paper, units = request.args.get("paper", "a4"), request.args.get("units", "si")
    # An address may be typed by hand, and a report in wrong units is worse than none.
    if paper not in ("a4", "letter") or units not in UNIT_SYSTEMS:
        abort(400, "The paper is a4 or letter, the units are si or us.")
    whole = request.args.get("extent") != "short"

    def write(out: Path) -> None:
        make_report(data_folder(), inspection, out, paper=paper, units=units, whole=whole)

    return _made_file(write, f"condition-report-{inspection.id}.pdf", download=False)


@pages.get("/inspection/<inspection_id>/yard-scope.<ending>")
def yard_scope(inspection_id: str, ending: str):
    """The work lines for a yard to price; with ?estimate=yes our own costs are in it."""
    inspection = open_inspection(inspection_id)
    paper, estimate = request.args.get("paper", "a4"), request.args.get("estimate", "no")
    if ending not in SCOPE_ENDINGS:
        abort(404)
    if paper not in ("a4", "letter") or estimate not in ("yes", "no"):
        abort(400, "The paper is a4 or letter, the estimate is yes or no.")

    def write(out: Path) -> None:
        with_estimate = estimate == "yes"
        make_scope(data_folder(), inspection, out, paper=paper, with_estimate=with_estimate)

    kind = "-with-estimate" if estimate == "yes" else ""
    return _made_file(write, f"yard-scope-{inspection.id}{kind}.{ending}", download=True)


@pages.get("/inspection/<inspection_id>/tables.<ending>")
def tables(inspection_id: str, ending: str):
    """The record as plain tables; ?table= names the one that a CSV holds."""
    inspection = open_inspection(inspection_id)
    if ending not in TABLE_ENDINGS:
        abort(404)
    return _exported(inspection, ending, table=request.args.get("table", ""))


@pages.get("/inspection/<inspection_id>/bundle.zip")
def bundle_zip(inspection_id: str):
    """The whole inspection as one file; with ?photos=copies without the cameras' own data."""
    originals = request.args.get("photos", "originals")
    if originals not in ("originals", "copies"):
        abort(400, "The photos in a bundle are originals or copies.")
    return _exported(open_inspection(inspection_id), "zip", originals=originals == "originals")


def _exported(
    inspection: Inspection, ending: str, *, originals: bool = True, table: str = ""
) -> Response:
    """Return an inspection as a file of the kind that the ending names."""

    def write(out: Path) -> None:
        export(data_folder(), inspection, out, originals=originals, table=table)

    kind = "" if originals else "-photo-copies"
    return _made_file(write, f"{inspection.id}{kind}.{ending}", download=True)


def _made_file(write: Callable[[Path], None], name: str, *, download: bool) -> Response:
    """Send a file that is made for this answer alone, under that name."""
    with tempfile.TemporaryDirectory() as folder:
        out = Path(folder) / f"made{Path(name).suffix}"
        write(out)
        # Read whole, so that the folder can be removed before the answer is on its way.
        content = io.BytesIO(out.read_bytes())
    return send_file(content, as_attachment=download, download_name=name)
