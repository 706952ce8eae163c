"""One inspection as a file to carry away: a bundle, or tables for those who calculate further."""

from datetime import date
from pathlib import Path

from inspector.record.bundles import bundle
from inspector.record.inspection import Inspection
from inspector.services.data_folder import DataFolder

TABLE_ENDINGS = ("csv", "json", "xlsx")


def export(
    data: DataFolder,
    inspection: Inspection,
    out: Path,
    *,
    originals: bool = True,
    table: str = "",
) -> None:
    """Write an inspection to a file.

    Parameters
    ----------
    data : DataFolder
    inspection : Inspection
    out : Path
        Its ending decides: .zip is a bundle; .xlsx, .csv and .json are tables.
    originals : bool
        Whether a bundle holds the photos as the cameras made them, or copies without their data.
    table : str
        Which table a .csv holds; "" for the checks.

    Raises
    ------
    InspectorError
        With one sentence where the ending is another one.
    """
    if out.suffix.lower() == ".zip":
        bundle.write(inspection.folder, out, originals=originals)
        return
    # Imported here, since no other command or page should pay for it.
    from inspector.conversion.contents import convert
    from inspector.report.data_files import spreadsheets

    assessment = data.assessment_of(inspection)
    # As of today, since surveys come due whether anybody looks or not.
    chapters = convert(assessment, date.today())
    spreadsheets.write(spreadsheets.sheets(assessment, chapters), out, table)
