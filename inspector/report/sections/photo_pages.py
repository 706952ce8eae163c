"""Photos with their captions, which are the register as well: number, place, time and digest."""

from collections.abc import Sequence

from reportlab.lib.units import mm
from reportlab.platypus import Flowable, Spacer, Table

from inspector.assess.model import Assessment, SystemPart
from inspector.assess.registers import Photo
from inspector.report.cell_runs import TO, Run
from inspector.report.document import heading
from inspector.report.issue import Issue
from inspector.report.page_references import ReferringText, referring
from inspector.report.theme import PLAIN, STYLES, plain, txt
from inspector.report.wording import all_results, is_on
from inspector.values.cell_text import minute_text

_GAP = 4 * mm
_ABREAST = 3
_HEIGHT = 46 * mm
# So many signs are enough to tell the photos of one inspection apart, and to compare by eye.
DIGEST_SHOWN = 12
_SIDES = ("LEFT", "RIGHT", "TOP", "BOTTOM")
BARE_TABLE = [
    ("FONTNAME", (0, 0), (-1, -1), PLAIN),
    ("VALIGN", (0, 0), (-1, -1), "TOP"),
    *((f"{side}PADDING", (0, 0), (-1, -1), 0) for side in _SIDES),
]


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


def photo_runs(shas: Sequence[str], assessment: Assessment) -> list[Run]:
    """Return the numbers of photos, each leading to its picture.

    Parameters
    ----------
    shas : sequence of str
        Digests of photos.
    assessment : Assessment

    Returns
    -------
    list of Run
        Empty where none of them is in the register.
    """
    numbers = {photo.sha: photo.number for photo in assessment.photos}
    known = [numbers[sha] for sha in shas if sha in numbers]
    return [(photo_number(number), f"{TO}photo-{number}") for number in known]


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


def photo_pages(photos: Sequence[Photo], issue: Issue, key: str) -> list[Flowable]:
    """Return photos three abreast with their captions.

    Parameters
    ----------
    photos : sequence of Photo
    issue : Issue
    key : str
        Of the section in the outline.

    Returns
    -------
    list of Flowable
        Empty where there are no photos.
    """
    if not photos:
        return []
    # Never without its first row.
    body: list[Flowable] = [heading("Photos", f"{key}-photos", 1, room=_HEIGHT + 14 * mm)]
    for first in range(0, len(photos), _ABREAST):
        body.append(photo_row(photos[first : first + _ABREAST], issue, _ABREAST, _HEIGHT))
    return body


def photo_row(photos: Sequence[Photo], issue: Issue, abreast: int, height: float) -> Table:
    """Return a row of photos with their captions, which begins at the left.

    Parameters
    ----------
    photos : sequence of Photo
        At most ``abreast``.
    issue : Issue
    abreast : int
        How many have room side by side.
    height : float
        The most that a picture is high, points.

    Returns
    -------
    Table
    """
    width = (issue.page.column - _GAP * (abreast - 1)) / abreast
    cells: list = []
    for photo in photos:
        picture = issue.pictures.picture(photo.sha, width, height)
        cells += [[picture, Spacer(1, 2), caption(photo)], ""]
    cells += [""] * (2 * abreast - 1 - len(cells))
    row = Table(
        [cells[: 2 * abreast - 1]],
        colWidths=([width, _GAP] * abreast)[:-1],
        hAlign="LEFT",
        spaceBefore=3,
        spaceAfter=5,
    )
    row.setStyle(BARE_TABLE)
    return row


def caption(photo: Photo) -> ReferringText:
    """Return the caption of a photo: number, text, place, minute and the digest's beginning.

    Parameters
    ----------
    photo : Photo

    Returns
    -------
    ReferringText
        The place to which references to the photo lead.
    """
    text = plain(photo.caption, 240) or "without a caption"
    place = plain(photo.place, 120) or "not filed"
    clock = "" if photo.by_camera or not photo.taken else " UTC"
    when = f"{minute_text(photo.taken)}{clock}" if photo.taken else "time not known"
    words = (
        f"<b>{photo_number(photo.number)}</b> {txt(text)}. "
        f"{txt(place)}. {txt(when)} · {txt(photo.sha[:DIGEST_SHOWN])}"
    )
    return referring(ReferringText, words, STYLES["caption"], (f"photo-{photo.number}",))
