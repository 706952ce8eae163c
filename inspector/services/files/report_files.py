"""One inspection -> its report and its yard's list: record, assessment and report together.

For page and command.
"""

from datetime import UTC, date, datetime
from pathlib import Path
from typing import TYPE_CHECKING

from inspector.record import photos
from inspector.record.inspection import Inspection
from inspector.record.state import State
from inspector.services.data_folder import DataFolder
from inspector.services.files.revisions import Revision, digest_of, revisions_of, state_of
from inspector.values.errors import InspectorError

if TYPE_CHECKING:
    from inspector.assess.model import Assessment

SCOPE_ENDINGS = ("pdf", "xlsx")


class UnknownScopeFile(InspectorError):
    """A file name whose ending is none that the yard's list has. Attribute: ``ending``."""


def make_report(
    data: DataFolder,
    inspection: Inspection,
    out: Path,
    *,
    paper: str = "a4",
    units: str = "si",
    extent: str = "whole",
    revision: Revision | None = None,
) -> None:
    """Write the condition report of an inspection, as it is recorded now or as it was signed.

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
    revision : Revision, optional
        The signed state; None for the present one. The same revision gives the same bytes.

    Raises
    ------
    CannotSign
        The state of the revision cannot be put together any more.
    OSError
        The file cannot be written.
    """
    # ReportLab and the chapters are slow to import, and no other command or page should pay for it.
    from inspector.conversion.contents import chapters_of, read_case
    from inspector.report.client.all_in_cost import all_in_cost
    from inspector.report.condition_report import build
    from inspector.services.files.revision_changes import changes_since

    state, assessment = _what_is_reported(data, inspection, revision)
    case = read_case(assessment, revision.day if revision else date.today())
    before = [
        one for one in revisions_of(inspection) if not revision or one.number < revision.number
    ]
    build(
        assessment,
        out,
        # The report knows neither folders nor the recorder, and asks for each picture by its
        # digest.
        photo_file=lambda sha: photos.report_copy(inspection.folder, sha),
        cautions=data.library_of(inspection).cautions,
        paper=paper,
        units=units,
        # The day of the statement, and nothing of the moment in which the file is made.
        made_at=revision.day.isoformat() if revision else _now(),
        revision=revision.title if revision else _revision(inspection),
        digest=revision.digest if revision else digest_of(inspection.entries),
        chapters=chapters_of(case),
        cost=all_in_cost(case),
        tables=case.tables,
        extent=extent,
        signed_by=revision.signed_by if revision else "",
        changes=changes_since(inspection, before[-1] if before else None, state, assessment),
    )


def _what_is_reported(
    data: DataFolder, inspection: Inspection, revision: Revision | None
) -> "tuple[State, Assessment]":
    """The state that the report is of, and its assessment."""
    from inspector.assess.assessment import assess
    from inspector.assess.from_state import read_inspection

    if revision is None:
        return inspection.state, data.assessment_of(inspection)
    state = state_of(inspection, revision)
    return state, assess(read_inspection(state), data.library_of(inspection))


def make_scope(
    data: DataFolder,
    inspection: Inspection,
    out: Path,
    *,
    paper: str = "a4",
    with_estimate: bool = False,
) -> None:
    """Write the work of an inspection as a list that a yard prices.

    Parameters
    ----------
    data : DataFolder
    inspection : Inspection
    out : Path
        Its ending decides: .pdf or .xlsx. Replaced only by a whole file.
    paper : str
        "a4" or "letter", of the PDF.
    with_estimate : bool
        Whether the inspection's own costs are in it.

    Raises
    ------
    UnknownScopeFile
        The ending is another one.
    OSError
        The file cannot be written.
    """
    from inspector.report.document import whole_file
    from inspector.report.yard.scope_report import build_scope
    from inspector.report.yard.scope_workbook import scope_workbook

    ending = out.suffix.lower().removeprefix(".")
    if ending not in SCOPE_ENDINGS:
        sentence = f"The yard's list is a .pdf or an .xlsx file, and not '{out.suffix}'."
        raise UnknownScopeFile(sentence, ending=ending)
    assessment = data.assessment_of(inspection)
    if ending == "xlsx":
        with whole_file(out) as part:
            part.write_bytes(scope_workbook(assessment, with_estimate=with_estimate))
        return
    build_scope(
        assessment,
        out,
        paper=paper,
        made_at=_now(),
        revision=_revision(inspection),
        with_estimate=with_estimate,
    )


def _now() -> str:
    return datetime.now(UTC).strftime("%Y-%m-%d %H:%M UTC")


def _revision(inspection: Inspection) -> str:
    return f"draft, {len(inspection.entries)} entries"


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
    from inspector.report.client.safety_items import bad_without_finding

    return [
        (result.subject, f"{result.unit_name}: {result.check.title} ({result.rating})")
        for result in bad_without_finding(data.assessment_of(inspection))
    ]
