"""Compare: candidates side by side against one brief, the ranking with weights that can be moved, and identical checks with their photos."""

import io
import tempfile
from datetime import date
from pathlib import Path

from flask import Blueprint, abort, render_template, request, send_file

from inspector.conversion.compare import ASPECTS, WEIGHTS, Candidate, Comparison, by_check, by_requirement, by_system, candidate, compare
from inspector.conversion.contents import chapters_of, read_case
from inspector.errors import InspectorError
from inspector.quantities import parse_number
from inspector.record.store import Inspection
from inspector.report.conversion import amount
from inspector.web.desk import Desk, desk, title_of

pages = Blueprint("compare", __name__)
MOST = 8


@pages.get("/compare")
def side_by_side():
    """The candidates named by `id`; without any, all that can be read."""
    found = comparison(desk(), _ids(), _weights())
    return render_template("compare/compare.html", found=found, systems=by_system(found.candidates), requirements=by_requirement(found.candidates),
                           ids=[one.id for one in found.candidates], aspects=ASPECTS, weights=_weights(), amount=amount,
                           title="Candidates side by side", inspection=None)


@pages.get("/compare/ranking")
def ranking():
    """The ranking alone, for weights that are being moved."""
    found = comparison(desk(), _ids(), _weights())
    return render_template("compare/ranking.html", found=found, aspects=ASPECTS)


@pages.get("/compare/checks/<system_id>")
def checks(system_id: str):
    """The identical checks of one system, candidate beside candidate, with their photos."""
    found = comparison(desk(), _ids(), WEIGHTS)
    rows = by_check(found.candidates, system_id)
    if not rows:
        abort(404)
    name = next(row.name for row in by_system(found.candidates) if row.id == system_id)
    return render_template("compare/checks.html", found=found, rows=rows, title=name, inspection=None, ids=[one.id for one in found.candidates])


@pages.get("/compare/report.pdf")
def report_pdf():
    """The comparison as a PDF."""
    from inspector.report.comparison_report import build  # ReportLab is slow to import; no other page should pay

    paper, units = request.args.get("paper", "a4"), request.args.get("units", "si")
    found = comparison(desk(), _ids(), _weights())
    with tempfile.TemporaryDirectory() as folder:
        out = Path(folder) / "comparison.pdf"
        build(found, out, paper=paper, units=units, made_at=date.today().isoformat())
        return send_file(io.BytesIO(out.read_bytes()), mimetype="application/pdf", download_name="comparison.pdf")


def comparison(at: Desk, ids: list[str], weights: dict[str, float]) -> Comparison:
    """The comparison of these inspections (all readable ones where none is named)."""
    made = []
    for inspection_id in ids or at.inspections.ids()[:MOST]:
        try:
            inspection = at.inspections.get(inspection_id)
        except InspectorError:
            if ids:
                raise
            continue
        made.append(_candidate(at, inspection))
    return compare(made, weights)


def _candidate(at: Desk, inspection: Inspection) -> Candidate:
    today = date.today()
    def make() -> Candidate:
        case = read_case(inspection.state, at.assessment_of(inspection), today)
        return candidate(case, inspection.id, title_of(inspection), chapters_of(case))
    # the days to a survey hang on the day, so it is part of what is remembered
    return at.remember(f"candidate on {today}", inspection, make)


def _ids() -> list[str]:
    """The inspections named, each once."""
    return list(dict.fromkeys(request.args.getlist("id")))[:MOST]


def _weights() -> dict[str, float]:
    found = {}
    for aspect, usual in WEIGHTS.items():
        text = request.args.get(f"weight-{aspect}", "").strip()[:12]
        found[aspect] = parse_number(text) if text else usual
    return found
