"""The back of the report: what was not seen, other findings and photos, cautions, signatures."""

from collections.abc import Mapping

from reportlab.lib.units import mm
from reportlab.platypus import Flowable, KeepTogether, Paragraph, Spacer

from inspector.assess.model import Assessment, SystemPart
from inspector.checklists.model import Caution
from inspector.report.document import heading, section, section_gap
from inspector.report.sections.findings_photos import (
    PhotoFile,
    findings_table,
    photo_pages,
    photos_of,
)
from inspector.report.sections.front_matter import Issue
from inspector.report.tables import Cell, rows_table
from inspector.report.theme import STYLES, plain, txt
from inspector.report.wording import all_results, unseen_reason, was_not_seen
from inspector.values.vocabulary import SIGNAL_WORDS


def not_seen(assessment: Assessment, issue: Issue) -> list[Flowable]:
    """Return every check without a rating, and why it has none.

    Parameters
    ----------
    assessment : Assessment
    issue : Issue

    Returns
    -------
    list of Flowable
    """
    rows = [row for part in assessment.systems for row in _unseen_rows(part)]
    if not rows:
        nothing = "Nothing was left unseen among the checks of this inspection."
        return section("What was not seen", "unseen", nothing)
    lead = (
        "Each of these is unknown, not good. It widens the span of the condition; another visit, "
        "a docking, a run or the ship's papers may settle it."
    )
    widths = (28 * mm, 36 * mm, 46 * mm, issue.page.column - 110 * mm)
    table = rows_table(("system", "unit", "check", "why"), rows, widths)
    return section("What was not seen", "unseen", lead, table)


def _unseen_rows(part: SystemPart) -> list[list[Cell]]:
    """Return the rows of a system's checks that were not seen, with their reasons."""
    return [
        [
            part.system.name,
            result.unit_name,
            result.check.title,
            [(unseen_reason(result), ""), (result.note, "soft")],
        ]
        for result in all_results(part)
        if was_not_seen(result)
    ]


def elsewhere(assessment: Assessment, issue: Issue, photo_file: PhotoFile) -> list[Flowable]:
    """Return the findings and photos that belong to no system of this report.

    Parameters
    ----------
    assessment : Assessment
    issue : Issue
    photo_file : callable
        Digest -> path of the report's copy, None where there is none.

    Returns
    -------
    list of Flowable
        Empty where there are none.
    """
    # A finding may name a system that was taken off the list after it was made.
    ids = {part.system.id for part in assessment.systems}
    findings = [finding for finding in assessment.findings if finding.system not in ids]
    filed = {photo.sha for part in assessment.systems for photo in photos_of(part, assessment)}
    photos = [photo for photo in assessment.photos if photo.sha not in filed]
    if not findings and not photos:
        return []
    body: list[Flowable] = [heading("Not filed under a system", "other")]
    if findings:
        body.append(heading("Findings", "other-findings", 1))
        body.append(findings_table(findings, issue, assessment))
    return [*body, *photo_pages(photos, issue, photo_file, "other"), section_gap()]


def cautions_section(
    assessment: Assessment, issue: Issue, cautions: Mapping[str, Caution]
) -> list[Flowable]:
    """Return the cautions of the systems in this report, the most serious first.

    Parameters
    ----------
    assessment : Assessment
    issue : Issue
    cautions : mapping of str to Caution
        Every caution by its id.

    Returns
    -------
    list of Flowable
    """
    lead = (
        "For whoever goes aboard with this report in hand. Nothing here says that an entry, a "
        "live panel or a vessel is fit to be approached; permit, licence and law decide."
    )
    named: set[str] = set()
    for part in assessment.systems:
        named.update(part.system.cautions)
        named.update(name for check in part.system.checks for name in check.cautions)
    used = sorted((cautions[name] for name in named if name in cautions), key=_by_seriousness)
    if not used:
        return section("Cautions", "cautions", lead)
    table = rows_table(
        ("signal", "what hurts, what to do instead, who decides"),
        [_caution_row(caution) for caution in used],
        (24 * mm, issue.page.column - 24 * mm),
    )
    return section("Cautions", "cautions", lead, table)


def _by_seriousness(caution: Caution) -> tuple[int, str]:
    """Return the key that sorts cautions, danger first."""
    # Appended, so that a checklist's own signal word is found as well, and comes last.
    signals = (*SIGNAL_WORDS, caution.signal)
    return signals.index(caution.signal), caution.id


def _caution_row(caution: Caution) -> list[Cell]:
    """Return the signal word beside what hurts, what to do instead and who decides."""
    tone = "now" if caution.signal == SIGNAL_WORDS[0] else "b"
    return [
        [(caution.signal.upper(), tone)],
        [(caution.hurts, ""), (caution.instead, "b"), (caution.decides, "soft")],
    ]


def signatures(assessment: Assessment, issue: Issue) -> list[Flowable]:
    """Return room to sign, beside what is signed: revision and digest.

    Parameters
    ----------
    assessment : Assessment
    issue : Issue

    Returns
    -------
    list of Flowable
        Kept together on one page.
    """
    width = issue.page.column
    lead = (
        f"Signed for {issue.named} of the record with digest {issue.digest}, made {issue.made_at}. "
        "A change of the record is a new revision."
    )
    body = [heading("Signatures", "signatures"), Paragraph(txt(lead), STYLES["body"])]
    present = plain(assessment.inspection.get("attending", ""), 400)
    if present:
        body.append(Paragraph(txt(f"Surveyors and attending: {present}"), STYLES["body"]))
    body.append(
        rows_table(
            ("name", "capacity", "date", "signature"),
            [[Spacer(1, 11 * mm), "", "", ""] for _ in range(3)],
            (width * 0.28, width * 0.24, width * 0.16, width * 0.32),
        )
    )
    # A signature alone on a page could be put below any text.
    return [KeepTogether(body)]
