"""One inspection -> one PDF: record, assessment and report together, for page and command."""

import hashlib
from datetime import UTC, date, datetime
from pathlib import Path

from inspector.record import photos
from inspector.record.entry import to_json
from inspector.record.inspection import Inspection
from inspector.services.data_folder import DataFolder


def digest_of(inspection: Inspection) -> str:
    """Return a digest of everything recorded, whatever the order in which it arrived.

    Parameters
    ----------
    inspection : Inspection

    Returns
    -------
    str
        SHA-256, in hexadecimal digits.
    """
    # Sorted, because devices hand over in any order.
    lines = sorted(to_json(entry) for entry in inspection.entries)
    return hashlib.sha256("\n".join(lines).encode()).hexdigest()


def make_report(
    data: DataFolder,
    inspection: Inspection,
    out: Path,
    *,
    paper: str = "a4",
    units: str = "si",
    whole: bool = True,
) -> None:
    """Write the condition report of an inspection as it is recorded now.

    Parameters
    ----------
    data : DataFolder
    inspection : Inspection
    out : Path
        Replaced only by a whole file.
    paper : str
        "a4" or "letter".
    units : str
        "si" or "us".
    whole : bool
        False leaves out every single reading and rating.

    Raises
    ------
    OSError
        The file cannot be written.
    """
    # ReportLab and the chapters are slow to import, and no other command or page should pay for it.
    from inspector.conversion.contents import convert
    from inspector.report.condition_report import build

    assessment = data.assessment_of(inspection)
    build(
        assessment,
        out,
        # The report knows neither folders nor the recorder, and asks for each picture by its
        # digest.
        photo_file=lambda sha: photos.report_copy(inspection.folder, sha),
        cautions=data.library_of(inspection).cautions,
        paper=paper,
        units=units,
        made_at=datetime.now(UTC).strftime("%Y-%m-%d %H:%M UTC"),
        revision=f"draft, {len(inspection.entries)} entries",
        digest=digest_of(inspection),
        chapters=convert(assessment, date.today()),
        whole=whole,
    )
