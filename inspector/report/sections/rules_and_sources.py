"""What the report used: settings of the rules, limits of the surveyor's own, photos, sources."""

from collections.abc import Sequence

from reportlab.lib.units import mm
from reportlab.platypus import Flowable, Paragraph

from inspector.assess.model import Assessment
from inspector.assess.photo_times import camera_clock, clock_sentence
from inspector.assess.verdict.settings import settings_used
from inspector.checklists.registry import criterion_title
from inspector.criteria.core.source import Source
from inspector.report.cell_runs import ANCHOR, Cell
from inspector.report.document import section, small_heading
from inspector.report.issue import Issue
from inspector.report.reading_text import limits_text
from inspector.report.tables import rows_table
from inspector.report.theme import STYLES, txt
from inspector.report.wording import all_results
from inspector.values.text import counted


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
        rows_table(
            ("setting", "used", ""),
            rows,
            (width * 0.45, width * 0.25, width * 0.30),
            tight=True,
        ),
        *_own_limits(assessment, issue),
        *(
            Paragraph(txt(" ".join((found.sentence, *found.differing))), STYLES["body"])
            for found in assessment.agreements
        ),
        *(Paragraph(f"<b>{txt(fault)}</b>", STYLES["body"]) for fault in assessment.faults),
        *photo_times(assessment),
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
        small_heading("Limits set by the surveyor"),
        rows_table(("criterion", "limits", "taken from"), rows, (width / 3,) * 3, tight=True),
    ]


def photo_times(assessment: Assessment) -> list[Flowable]:
    """Return by whose clocks the photos were taken, and what their digests are.

    Parameters
    ----------
    assessment : Assessment

    Returns
    -------
    list of Flowable
        Empty where there are no photos.
    """
    if not assessment.photos:
        return [Paragraph("No photos were taken.", STYLES["line"])]
    by_camera = sum(photo.by_camera for photo in assessment.photos)
    said = (
        f"{counted(len(assessment.photos), 'photo')}. The digest in a caption is the beginning of "
        "SHA-256 over the original file; pictures in this report are smaller copies."
    )
    if by_camera:
        clock = clock_sentence(camera_clock(assessment.recorded.photos.values()))
        said += (
            f" The time of {by_camera} of them is by the camera's own clock; where UTC is written, "
            f"it is by the device on which the photo was chosen. {clock}"
        )
    return [Paragraph(txt(said.strip()), STYLES["line"])]


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
    used = {(judgement.criterion, judgement.source) for judgement in judged if judgement.source}
    # By title, so that a reader can search; all that is of one publication has one number.
    publications = sorted({_publication(source) for _, source in used})
    numbers = {publication: number for number, publication in enumerate(publications, 1)}
    return {pair: numbers[_publication(pair[1])] for pair in used}


def _publication(source: Source) -> tuple[str, str]:
    return source.title, source.edition


def sources(assessment: Assessment, issue: Issue) -> list[Flowable]:
    """Return each publication, with the criteria that judged by it and how well it is known.

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
    found: dict[int, list[tuple[str, Source]]] = {}
    for (name, source), number in issue.cites.items():
        found.setdefault(number, []).append((name, source))
    made = [_source_row(number, found[number], assessment) for number in sorted(found)]
    lead = (
        "By publication: edition, then each clause with what it judged here. Seen: the text or an "
        "extract of it was read; memory: recalled, to be verified before use; common practice: "
        "guidance and no rule; cited by the surveyor: his own limit. Only what was seen or is "
        "cited may fail a system."
    )
    # Two abreast, from top to bottom on each page as far as rows allow: they are short texts.
    made += [["", ""]] * (len(made) % 2)
    rows = [[*one, *other] for one, other in zip(made[::2], made[1::2], strict=True)]
    half = issue.page.column / 2
    table = rows_table(("",) * 4, rows, (10 * mm, half - 10 * mm) * 2, fine=True)
    return section("Sources", "sources", lead, table)


def _source_row(
    number: int, used: Sequence[tuple[str, Source]], assessment: Assessment
) -> list[Cell]:
    """Return one publication: each clause with what it judged, and how well it is known."""
    source = used[0][1]
    by_clause: dict[str, list[str]] = {}
    for name, each in sorted(used, key=lambda pair: (pair[1].clause, pair[0])):
        title = criterion_title(name, assessment.own_criteria)
        by_clause.setdefault(each.clause, []).append(title)
    clauses = [
        f"{clause}: {', '.join(dict.fromkeys(names))}" for clause, names in by_clause.items()
    ]
    marks = ", ".join(dict.fromkeys(each.mark for _, each in used))
    return [
        [(f"S{number}", ""), (f"source-{number}", ANCHOR)],
        [
            (f"{source.title}, {source.edition}.", ""),
            (f"{'; '.join(clauses)}.", "soft"),
            (f"{marks}.", "i"),
        ],
    ]
