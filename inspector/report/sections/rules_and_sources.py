"""What the report used: settings of the rules, limits of the surveyor's own, photos, sources."""

from reportlab.lib.units import mm
from reportlab.platypus import Flowable, Paragraph

from inspector.assess.model import Assessment
from inspector.assess.photo_times import camera_clock, clock_sentence
from inspector.assess.registers import Photo
from inspector.assess.verdict.settings import settings_used
from inspector.checklists.registry import criterion_title
from inspector.criteria.core.source import Source
from inspector.report.document import section
from inspector.report.reading_text import limits_text
from inspector.report.sections.findings_photos import photo_number
from inspector.report.sections.front_matter import Issue
from inspector.report.tables import Cell, rows_table
from inspector.report.theme import STYLES, txt
from inspector.report.wording import all_results
from inspector.values.cell_text import DASH, minute_text

# So many signs are enough to tell the photos of one inspection apart, and to compare by eye.
_DIGEST_SHOWN = 12


def rules_used(assessment: Assessment, issue: Issue) -> list[Flowable]:
    """Return the settings of the rules, the surveyor's limits, and how far two surveyors agree.

    Parameters
    ----------
    assessment : Assessment
    issue : Issue

    Returns
    -------
    list of Flowable
        What could not be used of the settings and limits is named last.
    """
    width = issue.page.column
    rows = [_setting_row(*setting) for setting in settings_used(assessment.settings)]
    return section(
        "Rules and settings",
        "rules",
        "Each verdict names its rule; these are the settings that the rules used.",
        rows_table(("setting", "used", ""), rows, (width * 0.45, width * 0.25, width * 0.30)),
        *_own_limits(assessment, issue),
        *(
            Paragraph(txt(" ".join((found.sentence, *found.differing))), STYLES["body"])
            for found in assessment.agreements
        ),
        *(Paragraph(f"<b>{txt(fault)}</b>", STYLES["body"]) for fault in assessment.faults),
    )


def _setting_row(label: str, value: str, is_default: bool) -> list[Cell]:
    """Return the row of a setting, marked where it is not the default."""
    where = ("default", "soft") if is_default else ("set for this inspection", "b")
    return [label, value, [where]]


def _own_limits(assessment: Assessment, issue: Issue) -> list[Flowable]:
    """The limits that the surveyor set."""
    if not assessment.profiles:
        return []
    rows = [
        [
            criterion_title(name, assessment.own_criteria),
            limits_text(limits, issue.units),
            str(limits.source),
        ]
        for name, limits in sorted(assessment.profiles.items())
    ]
    width = issue.page.column
    return [
        Paragraph("Limits set by the surveyor", STYLES["h3"]),
        rows_table(("criterion", "limits", "taken from"), rows, (width / 3,) * 3),
    ]


def photo_register(assessment: Assessment, issue: Issue) -> list[Flowable]:
    """Return every photo with the beginning of its digest, by which the original can be proved.

    Parameters
    ----------
    assessment : Assessment
    issue : Issue

    Returns
    -------
    list of Flowable
    """
    if not assessment.photos:
        return section("Photo register", "photos", "No photos were taken.")
    rows = [
        [
            photo_number(photo.number),
            photo.caption or DASH,
            photo.place or photo.on or "not filed",
            _taken_text(photo, mixed=any(each.by_camera for each in assessment.photos)),
            photo.sha[:_DIGEST_SHOWN],
        ]
        for photo in assessment.photos
    ]
    rest = (issue.page.column - (13 + 28 + 28) * mm) / 2
    return section(
        "Photo register",
        "photos",
        "The digest is SHA-256 over the original file. Pictures in this report are smaller copies.",
        *_about_the_times(assessment),
        rows_table(
            ("no.", "caption", "place", "taken", "digest"),
            rows,
            (13 * mm, rest, rest, 28 * mm, 28 * mm),
        ),
    )


def _taken_text(photo: Photo, *, mixed: bool) -> str:
    """The time of a photo; where cameras wrote some of them, a device's time is marked as UTC."""
    if not photo.taken:
        return DASH
    # Cameras write local time without a zone, devices UTC: only where both occur is the zone worth
    # its room.
    return minute_text(photo.taken) + (" UTC" if mixed and not photo.by_camera else "")


def _about_the_times(assessment: Assessment) -> list[Flowable]:
    """By whose clocks the photos were taken, where a camera wrote its own."""
    by_camera = sum(photo.by_camera for photo in assessment.photos)
    if not by_camera:
        return []
    clock = clock_sentence(camera_clock(assessment.recorded.photos.values()))
    whose = (
        f"The time of {by_camera} of {len(assessment.photos)} photos is by the camera's own clock; "
        "where UTC is written, it is by the device on which the photo was chosen."
    )
    return [Paragraph(txt(f"{whose} {clock}".strip()), STYLES["body"])]


def cites(assessment: Assessment) -> dict[tuple[str, Source], int]:
    """Return the number in the list of sources of each criterion with the source it judged by.

    Parameters
    ----------
    assessment : Assessment

    Returns
    -------
    dict of (str, Source) to int
    """
    judged = [
        result.judgement
        for part in assessment.systems
        for result in all_results(part)
        if result.judgement
    ]
    # One criterion may judge by several sources: those of the flag, or a surveyor's own limits.
    used = {(judgement.criterion, judgement.source) for judgement in judged}
    # By name, so that the list is in an order in which a reader can search.
    in_order = sorted(used, key=lambda pair: (pair[0], str(pair[1])))
    return {pair: number for number, pair in enumerate(in_order, 1)}


def sources(assessment: Assessment, issue: Issue) -> list[Flowable]:
    """Return each criterion that judged a reading, with its source and how well that is known.

    Parameters
    ----------
    assessment : Assessment
    issue : Issue

    Returns
    -------
    list of Flowable
    """
    if not issue.cites:
        return section("Sources", "sources", "No reading was judged by a criterion.")
    rows = [
        [
            f"S{number}",
            criterion_title(name, assessment.own_criteria),
            f"{source.title}, {source.edition}",
            source.clause,
            source.mark,
        ]
        for (name, source), number in issue.cites.items()
    ]
    rest = (issue.page.column - (10 + 22) * mm) / 3
    lead = (
        "Mark: seen, the text or an extract of it was read; memory, recalled and to be verified "
        "before use; common practice, guidance and no rule; cited by the surveyor, his own limit. "
        "Only what was seen or is cited may fail a system."
    )
    table = rows_table(
        ("no.", "criterion", "title, edition", "clause", "mark"),
        rows,
        (10 * mm, rest, rest, rest, 22 * mm),
    )
    return section("Sources", "sources", lead, table)
