"""Report: a page with the choices, the PDF itself, the tables and the bundle."""

import io
import tempfile
from collections.abc import Callable
from pathlib import Path

from flask import (
    Blueprint,
    Response,
    abort,
    redirect,
    render_template,
    request,
    send_file,
    url_for,
)

from inspector.record.inspection import Inspection
from inspector.services.data_folder import title_of
from inspector.services.files.export_file import TABLE_ENDINGS, export
from inspector.services.files.report_files import (
    SCOPE_ENDINGS,
    bad_checks_without_finding,
    make_report,
    make_scope,
)
from inspector.values.vocabulary import UNIT_SYSTEMS
from inspector.web.current import data_folder, open_inspection, surveyor_name
from inspector.web.forms.form_fields import FormField, RecordForm, make_form

pages = Blueprint("reports", __name__)
EXTENTS = ("whole", "short", "summary")


def own_words(photos) -> tuple[FormField, ...]:
    """What only the surveyor can say or choose for the first page of the report."""
    names = {"": "one of the whole vessel, else the first"}
    for photo in photos:
        words = photo.caption or photo.place or "without a caption"
        names[photo.sha] = f"P-{photo.number:03d} {words[:60]}"
    return (
        FormField(
            "advice",
            "Your advice in one or two sentences, as printed",
            "text",
            longest=320,
            lines=2,
        ),
        FormField("surveyors", "Surveyors, as they sign", "text", longest=120),
        FormField(
            "cover", "Picture of the first page", "choice", choices=tuple(names), names=names
        ),
    )


@pages.route("/inspection/<inspection_id>/report", methods=["GET", "POST"])
def report(inspection_id: str):
    """What the surveyor himself says in the report, the choices for it, what is still without."""
    inspection = open_inspection(inspection_id)
    assessment = data_folder().assessment_of(inspection)
    asked = own_words(assessment.photos)
    form = make_form(asked, inspection.state.values("inspection"), RecordForm)
    form.remember_heads(inspection.state, "inspection", [each.name for each in asked])
    if form.validate_on_submit():
        changes = [("inspection", each.name, form[each.name].data or None) for each in asked]
        inspection.record(surveyor_name(), changes, seen=lambda _, name: form.heads_seen(name))
        return redirect(url_for("reports.report", inspection_id=inspection.id))
    return render_template(
        "report/report.html",
        inspection=inspection,
        assessment=assessment,
        form=form,
        asked=asked,
        without=bad_checks_without_finding(data_folder(), inspection),
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
    extent = request.args.get("extent", "whole")
    if extent not in EXTENTS:
        abort(400, "The extent is whole, short or summary.")

    def write(out: Path) -> None:
        make_report(data_folder(), inspection, out, paper=paper, units=units, extent=extent)

    kind = "client-summary" if extent == "summary" else "condition-report"
    return _made_file(write, f"{kind}-{inspection.id}.pdf", download=False)


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
