"""Compare: candidates side by side against one brief, their ranking, the same checks in rows.

The chapters and the report are slow to import, so that the views import them when they are asked.
"""

import io
import tempfile
from datetime import date
from pathlib import Path
from typing import Any

from flask import Blueprint, abort, render_template, request, send_file

from inspector.services.comparison import MOST, comparison
from inspector.values.numbers import parse_number
from inspector.web.current import data_folder

pages = Blueprint("compare", __name__)


def _shown() -> dict[str, Any]:
    """What every template of this step formats with."""
    from inspector.conversion.comparison import presentation
    from inspector.report import figure_text
    from inspector.report.drawn.geometry import draw

    return {"shown": presentation, "words": figure_text, "draw": draw}


@pages.get("/compare")
def side_by_side():
    """The candidates named by `id`; without any, those that were walked."""
    from inspector.conversion.comparison import presentation
    from inspector.conversion.comparison.scores import ASPECTS
    from inspector.conversion.comparison.side_by_side import by_system

    found = comparison(data_folder(), _ids(), _weights())
    return render_template(
        "compare/compare.html",
        found=found,
        systems=by_system(found.candidates),
        brief=presentation.brief_rows(found.candidates),
        ids=[candidate.id for candidate in found.candidates],
        aspects=ASPECTS,
        weights=_weights(),
        title="Candidates side by side",
        inspection=None,
        **_shown(),
    )


@pages.get("/compare/ranking")
def ranking():
    """The ranking alone, for weights that are being moved."""
    found = comparison(data_folder(), _ids(), _weights())
    return render_template("compare/ranking.html", found=found, **_shown())


@pages.get("/compare/checks/<system_id>")
def checks(system_id: str):
    """The same checks of one system, candidate beside candidate, with their photos."""
    from inspector.conversion.comparison.scores import WEIGHTS
    from inspector.conversion.comparison.side_by_side import by_check, by_system

    found = comparison(data_folder(), _ids(), WEIGHTS)
    rows = by_check(found.candidates, system_id)
    if not rows:
        abort(404)
    name = next(row.name for row in by_system(found.candidates) if row.id == system_id)
    return render_template(
        "compare/checks.html",
        found=found,
        rows=rows,
        title=name,
        inspection=None,
        ids=[candidate.id for candidate in found.candidates],
    )


@pages.get("/compare/report.pdf")
def report_pdf():
    """The comparison as a PDF."""
    from inspector.report.comparison_report import build

    paper, units = request.args.get("paper", "a4"), request.args.get("units", "si")
    found = comparison(data_folder(), _ids(), _weights())
    with tempfile.TemporaryDirectory() as folder:
        out = Path(folder) / "comparison.pdf"
        build(found, out, paper=paper, units=units, made_at=date.today().isoformat())
        return send_file(
            # Read whole before the folder goes: the file would be gone when it is sent.
            io.BytesIO(out.read_bytes()),
            mimetype="application/pdf",
            download_name="comparison.pdf",
        )


def _ids() -> list[str]:
    """The inspections named, each once."""
    # An id given twice would compare a vessel with itself.
    return list(dict.fromkeys(request.args.getlist("id")))[:MOST]


def _weights() -> dict[str, float]:
    """The weights that were moved; the usual one for each that was not."""
    from inspector.conversion.comparison.scores import WEIGHTS

    typed = {aspect: request.args.get(f"weight-{aspect}", "").strip() for aspect in WEIGHTS}
    return {
        aspect: parse_number(text) if text else WEIGHTS[aspect] for aspect, text in typed.items()
    }
