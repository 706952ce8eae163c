"""A visit on paper: sheets to print, and a page a stop where their answers are typed."""

import io
import tempfile
from pathlib import Path

from flask import Blueprint, abort, flash, redirect, render_template, request, send_file, url_for

from inspector.assess.round.paper_stops import PaperStop, paper_stops
from inspector.record.inspection import Inspection
from inspector.services.data_folder import title_of
from inspector.values.text import counted
from inspector.web.current import data_folder, open_inspection, surveyor_name
from inspector.web.forms.form_fields import faults_of
from inspector.web.forms.paper_form import changes_of, heads_seen, paper_form

pages = Blueprint("paper", __name__)


@pages.get("/inspection/<inspection_id>/paper")
def stops(inspection_id: str):
    """The stops, each with its sheet to print and its page to type."""
    inspection = open_inspection(inspection_id)
    return render_template(
        "paper/stops.html",
        inspection=inspection,
        title=title_of(inspection),
        stops=_stops(inspection),
    )


@pages.get("/inspection/<inspection_id>/walk-sheets.pdf")
def walk_sheets(inspection_id: str):
    """The walk sheets as a PDF; ?stop= names one space."""
    # The PDF library is slow to import, and no other page should pay for it.
    from inspector.report.walk_sheets import build_walk_sheets

    inspection = open_inspection(inspection_id)
    space, paper = request.args.get("stop", ""), request.args.get("paper", "a4")
    if paper not in ("a4", "letter"):
        abort(400, "The paper is a4 or letter.")
    chosen = [stop for stop in _stops(inspection) if space in ("", stop.space)]
    if not chosen:
        abort(404)
    with tempfile.TemporaryDirectory() as folder:
        out = Path(folder) / "sheets.pdf"
        build_walk_sheets(
            data_folder().assessment_of(inspection),
            chosen,
            data_folder().library_of(inspection).cautions,
            out,
            paper=paper,
            made_at=title_of(inspection),
        )
        content = io.BytesIO(out.read_bytes())
    return send_file(content, download_name=f"walk-sheets-{inspection.id}.pdf")


@pages.get("/inspection/<inspection_id>/paper/<space>")
def stop(inspection_id: str, space: str):
    """The lines of one stop, with what is recorded."""
    inspection = open_inspection(inspection_id)
    chosen = _stop(inspection, space)
    return _page(inspection, chosen, paper_form(chosen, inspection.state, posted=False))


@pages.post("/inspection/<inspection_id>/paper/<space>")
def keep(inspection_id: str, space: str):
    """Keep what was typed from a sheet; nothing of it where a line has a fault."""
    inspection = open_inspection(inspection_id)
    chosen = _stop(inspection, space)
    form = paper_form(chosen, inspection.state, posted=True)
    if faults_of(form):
        return _page(inspection, chosen, form, refused=True)
    changes = changes_of(chosen, form, inspection.state)
    inspection.record(
        surveyor_name(), changes, seen=lambda subject, name: heads_seen(chosen, form, subject, name)
    )
    answers = sum(name != "depth" for _, name, _ in changes)
    flash(f"{counted(answers, 'answer')} kept.")
    return redirect(url_for("paper.stop", inspection_id=inspection.id, space=space))


def _page(inspection: Inspection, chosen: PaperStop, form, *, refused: bool = False):
    page = render_template(
        "paper/stop.html",
        inspection=inspection,
        title=title_of(inspection),
        stop=chosen,
        form=form,
        refused=refused,
    )
    return page, 400 if refused else 200


def _stops(inspection: Inspection) -> tuple[PaperStop, ...]:
    data = data_folder()
    return paper_stops(data.assessment_of(inspection), data.library_of(inspection).spaces)


def _stop(inspection: Inspection, space: str) -> PaperStop:
    """The stop of a space; 404 where nothing is asked there."""
    for each in _stops(inspection):
        if each.space == space:
            return each
    abort(404)
