"""Report: a page with the choices, the PDF itself, the tables and the bundle."""

import io
import tempfile
from collections.abc import Callable
from datetime import date
from pathlib import Path
from textwrap import shorten

from flask import (
    Blueprint,
    Response,
    abort,
    flash,
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
from inspector.services.files.revisions import (
    CannotSign,
    Revision,
    revisions_of,
    sign,
    unsigned,
)
from inspector.values.text import capital
from inspector.values.vocabulary import UNIT_SYSTEMS
from inspector.web.current import data_folder, open_inspection, surveyor_name
from inspector.web.forms.form_fields import FormField, RecordForm, faults_of, make_form

pages = Blueprint("reports", __name__)
EXTENTS = ("whole", "short", "summary")
SIGNING = (
    FormField("name", "Name", "text", longest=120),
    FormField("capacity", "As", "text", longest=80, placeholder="surveyor"),
    FormField("day", "Day of the statement", "date"),
)


def own_words(photos) -> tuple[FormField, ...]:
    """What only the surveyor can say or choose for the first page of the report."""
    names = {"": "of the vessel, else the first"}
    for photo in photos:
        words = photo.caption or photo.place or "without a caption"
        names[photo.sha] = shorten(f"P-{photo.number:03d} {words}", 66, placeholder=" …")
    return (
        FormField(
            "advice",
            "Your advice in one or two sentences, as printed",
            "text",
            longest=320,
            lines=4,
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
    return _report_page(inspection, form)


def _report_page(inspection: Inspection, form=None, *, signing=None, fault: str = "") -> str:
    """The page, with the surveyor's own words and the room to sign."""
    assessment = data_folder().assessment_of(inspection)
    asked = own_words(assessment.photos)
    if form is None:
        values = inspection.state.values("inspection")
        form = make_form(asked, values, RecordForm, posted=False)
        form.remember_heads(inspection.state, "inspection", [each.name for each in asked])
    name, today = surveyor_name(), date.today().isoformat()
    return render_template(
        "report/report.html",
        inspection=inspection,
        assessment=assessment,
        form=form,
        asked=asked,
        signing=signing or make_form(SIGNING, {"name": name, "day": today}, posted=False),
        fault=fault,
        revisions=revisions_of(inspection),
        unsigned=unsigned(inspection),
        without=bad_checks_without_finding(data_folder(), inspection),
        step="report",
        title=title_of(inspection),
    )


@pages.post("/inspection/<inspection_id>/sign")
def sign_revision(inspection_id: str):
    """Sign what is recorded now as the next revision."""
    inspection = open_inspection(inspection_id)
    form = make_form(SIGNING)
    faults = faults_of(form) or _unanswered(form)
    if not faults:
        name, capacity, day = (form[each.name].data for each in SIGNING)
        try:
            signed = sign(inspection, surveyor_name(), name, capacity, date.fromisoformat(day))
        except CannotSign as problem:
            faults = [str(problem)]
    if faults:
        return _report_page(inspection, signing=form, fault=" ".join(faults)), 400
    flash(f"{capital(signed.title)} is signed. What is recorded from now on is the next one.")
    return redirect(url_for("reports.report", inspection_id=inspection.id) + "#revisions")


def _unanswered(form) -> list[str]:
    """A sentence where name or day is missing, without which nothing is signed."""
    missing = [name for name in ("name", "day") if not form[name].data]
    return [f"To sign, give the {' and the '.join(missing)}."] if missing else []


@pages.get("/inspection/<inspection_id>/sign")
def sign_again(inspection_id: str):
    """The address of the form, loaded again after a refusal, leads back to the report."""
    inspection = open_inspection(inspection_id)
    return redirect(url_for("reports.report", inspection_id=inspection.id))


@pages.get("/inspection/<inspection_id>/revision/<int:number>.pdf")
def revision_pdf(inspection_id: str, number: int):
    """The report of a signed revision, the same bytes each time."""
    inspection = open_inspection(inspection_id)
    for revision in revisions_of(inspection):
        if revision.number == number:
            return _report_file(inspection, revision)
    abort(404)


@pages.get("/inspection/<inspection_id>/report.pdf")
def report_pdf(inspection_id: str):
    """The condition report as it would be now."""
    return _report_file(open_inspection(inspection_id), None)


def _report_file(inspection: Inspection, revision: Revision | None) -> Response:
    """The report as the address asks for it."""
    paper, units = request.args.get("paper", "a4"), request.args.get("units", "si")
    # An address may be typed by hand, and a report in wrong units is worse than none.
    if paper not in ("a4", "letter") or units not in UNIT_SYSTEMS:
        abort(400, "The paper is a4 or letter, the units are si or us.")
    extent = request.args.get("extent", "whole")
    if extent not in EXTENTS:
        abort(400, "The extent is whole, short or summary.")

    def write(out: Path) -> None:
        how = {"paper": paper, "units": units, "extent": extent}
        make_report(data_folder(), inspection, out, **how, revision=revision)

    kind = "client-summary" if extent == "summary" else "condition-report"
    signed = f"-revision-{revision.number}" if revision else ""
    return _made_file(write, f"{kind}-{inspection.id}{signed}.pdf", download=False)


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
