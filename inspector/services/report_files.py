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
    extent: str = "whole",
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
    extent : str
        "whole", "short" without every single reading and rating, or "summary" for its first two
        pages alone.

    Raises
    ------
    OSError
        The file cannot be written.
    """
    # ReportLab and the chapters are slow to import, and no other command or page should pay for it.
    from inspector.conversion.contents import chapters_of, read_case
    from inspector.report.all_in_cost import all_in_cost
    from inspector.report.condition_report import build

    assessment = data.assessment_of(inspection)
    case = read_case(assessment, date.today())
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
        chapters=chapters_of(case),
        cost=all_in_cost(case),
        extent=extent,
    )


def bad_checks_without_finding(data: DataFolder, inspection: Inspection) -> list[tuple[str, str]]:
    """Return the poor and failed checks that no finding is about, for whoever makes the report.

    Parameters
    ----------
    data : DataFolder
    inspection : Inspection

    Returns
    -------
    list of (str, str)
        The subject of each and a sentence part that names it, the failed ones first.
    """
    from inspector.report.safety_items import bad_without_finding

    return [
        (result.subject, f"{result.unit_name}: {result.check.title} ({result.rating})")
        for result in bad_without_finding(data.assessment_of(inspection))
    ]
