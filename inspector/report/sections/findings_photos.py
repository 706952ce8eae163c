"""Findings as a table, and photos with their captions, for the sections of systems and the rest."""

from collections.abc import Callable, Sequence
from pathlib import Path

from reportlab.lib.units import mm
from reportlab.platypus import Flowable, Paragraph, Spacer, Table

from inspector.assess.model import Assessment, SystemPart
from inspector.assess.registers import Finding, Photo
from inspector.report.document import heading
from inspector.report.marks import picture
from inspector.report.sections.front_matter import Issue, urgency_run
from inspector.report.tables import Cell, Run, rows_table
from inspector.report.theme import PLAIN, STYLES, plain, txt
from inspector.report.wording import all_results, is_on
from inspector.values.cell_text import minute_text

PhotoFile = Callable[[str], Path | None]

_GAP = 4 * mm
_PHOTO_HEIGHT = 62 * mm
_SIDES = ("LEFT", "RIGHT", "TOP", "BOTTOM")
_BARE_TABLE = [
    ("FONTNAME", (0, 0), (-1, -1), PLAIN),
    ("VALIGN", (0, 0), (-1, -1), "TOP"),
    *((f"{side}PADDING", (0, 0), (-1, -1), 0) for side in _SIDES),
]


def photos_named(shas: Sequence[str], assessment: Assessment) -> str:
    """Return the numbers under which photos are in the register.

    Parameters
    ----------
    shas : sequence of str
        Digests of photos.
    assessment : Assessment

    Returns
    -------
    str
        "P-001, P-004"; "" where none of them is in the register.
    """
    numbers = {photo.sha: photo.number for photo in assessment.photos}
    return ", ".join(photo_number(numbers[sha]) for sha in shas if sha in numbers)


def photo_number(number: int) -> str:
    """Return the number of a photo as it is printed: "P-001".

    Parameters
    ----------
    number : int

    Returns
    -------
    str
    """
    return f"P-{number:03d}"


def findings_table(findings: Sequence[Finding], issue: Issue, assessment: Assessment) -> Flowable:
    """Return findings as a table: number, fact and what to do with photos, urgency.

    Parameters
    ----------
    findings : sequence of Finding
    issue : Issue
    assessment : Assessment

    Returns
    -------
    Flowable
    """
    return rows_table(
        ("no.", "finding, and what to do", "urgency"),
        [_finding_row(finding, assessment) for finding in findings],
        (9 * mm, issue.page.column - 39 * mm, 30 * mm),
    )


def _finding_row(finding: Finding, assessment: Assessment) -> list[Cell]:
    """Return the row of a finding with its action, place and photos."""
    # "No photo." is printed, since a reader cannot see whether one was left out.
    named = photos_named(finding.photos, assessment)
    fact: list[Run] = [
        (_sentence(finding.title), "b"),
        (_sentence(finding.text), ""),
        (_sentence(finding.action), "i"),
        (_sentence(finding.where), "soft"),
        (f"See {named}." if named else "No photo.", "soft"),
    ]
    return [str(finding.number), fact, [urgency_run(finding)]]


def _sentence(text: str) -> str:
    """Return a typed text that ends like a sentence."""
    words = plain(text)
    # Titles are typed with and without a full stop, and run on in one cell.
    return f"{words}." if words and words[-1] not in ".!?…" else words


def photos_of(part: SystemPart, assessment: Assessment) -> list[Photo]:
    """Return the photos of a system's sheets, units and findings, in the register's order.

    Parameters
    ----------
    part : SystemPart
    assessment : Assessment

    Returns
    -------
    list of Photo
    """
    # A photo may belong to a check, to a finding, or to the unit itself.
    shas = {sha for result in all_results(part) for sha in result.photos}
    for finding in assessment.findings:
        if finding.system == part.system.id:
            shas.update(finding.photos)
    return [photo for photo in assessment.photos if photo.sha in shas or is_on(photo.on, part)]


def photo_pages(
    photos: list[Photo], issue: Issue, photo_file: PhotoFile, key: str, title: str = "Photos"
) -> list[Flowable]:
    """Return photos two abreast with their captions.

    Parameters
    ----------
    photos : list of Photo
    issue : Issue
    photo_file : callable
        Digest -> path of the report's copy, None where there is none.
    key : str
        Of the section in the outline.
    title : str

    Returns
    -------
    list of Flowable
        Empty where there are no photos.
    """
    if not photos:
        return []
    body: list[Flowable] = [heading(title, f"{key}-photos", 1)]
    for first in range(0, len(photos), 2):
        body.append(_photo_row(photos[first : first + 2], issue, photo_file))
    return body


def _photo_row(pair: list[Photo], issue: Issue, photo_file: PhotoFile) -> Table:
    """Return one or two photos with their captions side by side."""
    width = (issue.page.column - _GAP) / 2
    cells = [
        [picture(photo_file(photo.sha), width, _PHOTO_HEIGHT), Spacer(1, 3), _caption(photo)]
        for photo in pair
    ]
    # An odd last photo stays at the left, below the others.
    left, right = cells[0], cells[1] if len(cells) > 1 else ""
    row = Table(
        [[left, "", right]],
        colWidths=(width, _GAP, width),
        hAlign="LEFT",
        spaceBefore=4,
        spaceAfter=6,
    )
    row.setStyle(_BARE_TABLE)
    return row


def _caption(photo: Photo) -> Paragraph:
    """Return the caption of a photo: number, text and minute."""
    text = plain(photo.caption, 240) or plain(photo.place, 120) or "without a caption"
    return Paragraph(
        f"<b>{photo_number(photo.number)}</b> {txt(text)}. {txt(minute_text(photo.taken))}",
        STYLES["caption"],
    )
