"""Whether a report's file and an inspection's record belong together."""

import re
import tempfile
from dataclasses import dataclass
from pathlib import Path

from inspector.record.inspection import Inspection
from inspector.services.data_folder import DataFolder
from inspector.services.files.report_files import make_report
from inspector.services.files.revisions import CannotSign, Revision, digest_of, revisions_of

# What the report writes about itself, in plain letters: revision, digest, and how it was made.
_ABOUT = re.compile(
    rb"/Keywords \(condition report, [^()]*?, ([0-9a-f]{64}), "
    rb"(a4|letter) (si|us) (whole|short|summary)\)"
)
# A report with 600 photos is some 150 MB.
LARGEST = 2_000_000_000


@dataclass(frozen=True)
class Belonging:
    """What was found of a file.

    Parameters
    ----------
    sentence : str
    ours : bool
        Whether it was made from this record and not changed, as far as that can be told.
    """

    sentence: str
    ours: bool


def check_report(data: DataFolder, inspection: Inspection, file: Path) -> Belonging:
    """Compare a report's file with the record that it says it is of.

    Parameters
    ----------
    data : DataFolder
    inspection : Inspection
    file : Path
        A PDF.

    Returns
    -------
    Belonging
        A signed revision is made again and compared byte by byte. Of a draft, which carries the
        moment in which it was made, only the digest is compared.

    Raises
    ------
    OSError
        The file cannot be read.
    """
    content = file.read_bytes() if file.stat().st_size <= LARGEST else b""
    about = _ABOUT.search(content)
    if about is None:
        return Belonging(f"{file.name} is no condition report that names its record.", ours=False)
    digest, paper, units, extent = (part.decode() for part in about.groups())
    for revision in revisions_of(inspection):
        if revision.digest == digest:
            how = {"paper": paper, "units": units, "extent": extent}
            return _compared(data, inspection, revision, content, how)
    if digest == digest_of(inspection.entries):
        return Belonging(
            f"{file.name} is a draft made from the record as it is now. It is not signed, and "
            "whether its pages were changed afterwards cannot be told.",
            ours=True,
        )
    return Belonging(
        f"{file.name} names a record with another digest: it is of another inspection, or of a "
        "state of this one that nobody signed.",
        ours=False,
    )


def _compared(
    data: DataFolder,
    inspection: Inspection,
    revision: Revision,
    content: bytes,
    how: dict[str, str],
) -> Belonging:
    """Compare with the report of a revision, made again."""
    signed = f"{revision.title}, signed by {revision.signed_by} on {revision.day.isoformat()}"
    with tempfile.TemporaryDirectory() as folder:
        again = Path(folder) / "again.pdf"
        try:
            make_report(data, inspection, again, **how, revision=revision)
        except CannotSign as problem:
            return Belonging(f"It is {signed}. {problem}", ours=False)
        if again.read_bytes() == content:
            return Belonging(f"It is {signed}, byte for byte as this record makes it.", ours=True)
    return Belonging(
        f"It says that it is {signed}, but its bytes differ from the report that this record "
        "makes: it was changed afterwards, or made by another edition of this program.",
        ours=False,
    )
