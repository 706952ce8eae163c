"""Brings record, assessment and report together: one inspection -> one PDF. Used by the page and by the command."""

import hashlib
from datetime import UTC, date, datetime
from pathlib import Path

from inspector.conversion.contents import convert
from inspector.record import photos
from inspector.record.entry import to_json
from inspector.record.store import Inspection
from inspector.web.desk import Desk


def digest_of(inspection: Inspection) -> str:
    """A digest of everything recorded, whatever the order it arrived in."""
    lines = sorted(to_json(entry) for entry in inspection.entries)
    return hashlib.sha256("\n".join(lines).encode()).hexdigest()


def make_report(desk: Desk, inspection: Inspection, out: Path, *, paper: str = "a4", units: str = "si", whole: bool = True) -> None:
    """Write the condition report of an inspection as it stands now to `out`; `whole` False leaves every single reading and rating out."""
    # ReportLab costs an eighth of a second to import, which no other command or page should pay.
    from inspector.report.condition_report import build

    assessment = desk.assessment_of(inspection)
    build(
        assessment, out, photo_file=lambda sha: photos.report_copy(inspection.folder, sha), cautions=desk.library_of(inspection).cautions,
        paper=paper, units=units, made_at=datetime.now(UTC).strftime("%Y-%m-%d %H:%M UTC"), revision=f"draft, {len(inspection.entries)} entries",
        digest=digest_of(inspection), chapters=convert(inspection.state, assessment, date.today()), whole=whole,
    )
