"""Every finding with its picture beside the text, the most urgent first."""

from collections.abc import Sequence

from reportlab.lib.units import mm
from reportlab.platypus import Flowable, Paragraph, Table

from inspector.assess.model import Assessment, SystemPart
from inspector.assess.registers import Finding, Photo, WorkLine
from inspector.report.cell_runs import PAGE, Run
from inspector.report.document import heading
from inspector.report.issue import Issue, checks_of_findings
from inspector.report.marks import Rule
from inspector.report.page_references import ReferringText, key_of, referring
from inspector.report.sections.photo_pages import (
    BARE_TABLE,
    caption,
    photo_number,
    photo_row,
)
from inspector.report.tables import markup
from inspector.report.theme import STYLES, plain
from inspector.values.cell_text import money_text
from inspector.values.quantity import Money
from inspector.values.vocabulary import URGENCIES

_PICTURE = 110 * mm
_SMALL_PICTURE = 46 * mm
_GAP = 5 * mm
# Letters that have room beside a picture.
_MOST_BESIDE = 800


def in_order(findings: Sequence[Finding]) -> list[Finding]:
    """Return findings, the most urgent first; without an urgency last.

    Parameters
    ----------
    findings : sequence of Finding

    Returns
    -------
    list of Finding
    """

    def place(finding: Finding) -> tuple[int, int]:
        # Appended, so that an urgency of an older list is found as well.
        return (*URGENCIES, finding.urgency).index(finding.urgency), finding.number

    return sorted(findings, key=place)


def photos_of_finding(finding: Finding, assessment: Assessment, issue: Issue) -> list[Photo]:
    """Return the photos of a finding, and those of the check on which it was made.

    Parameters
    ----------
    finding : Finding
    assessment : Assessment
    issue : Issue

    Returns
    -------
    list of Photo
        Its own first.
    """
    subject = checks_of_findings(issue).get(finding.number)
    of_check = [photo.sha for photo in assessment.photos if subject and photo.on == subject]
    by_sha = {photo.sha: photo for photo in assessment.photos}
    shas = dict.fromkeys((*finding.photos, *of_check))
    return [by_sha[sha] for sha in shas if sha in by_sha]


def photos_in_findings(assessment: Assessment, issue: Issue) -> set[str]:
    """Return the digests of the photos that are printed beside a finding.

    Parameters
    ----------
    assessment : Assessment
    issue : Issue

    Returns
    -------
    set of str
    """
    return {
        photo.sha
        for finding in assessment.findings
        for photo in photos_of_finding(finding, assessment, issue)
    }


def findings_section(assessment: Assessment, issue: Issue) -> list[Flowable]:
    """Return the section on findings.

    Parameters
    ----------
    assessment : Assessment
    issue : Issue

    Returns
    -------
    list of Flowable
    """
    body: list[Flowable] = [heading("Findings", "findings")]
    if not assessment.findings:
        return [*body, Paragraph("No findings were recorded.", STYLES["body"])]
    printed: set[str] = set()
    for finding in in_order(assessment.findings):
        body += _finding(finding, assessment, issue, printed)
    return body


def _finding(
    finding: Finding, assessment: Assessment, issue: Issue, printed: set[str]
) -> list[Flowable]:
    """Return a finding: its text beside its first picture, further ones below."""
    # A photo of two findings is printed with the first of them, and named at the other.
    photos = photos_of_finding(finding, assessment, issue)
    shown = [photo for photo in photos if photo.sha not in printed]
    printed.update(photo.sha for photo in shown)
    # Only so many of the short report's pages are for pictures.
    shown = shown if issue.whole else shown[:1]
    width = issue.page.column
    wide = _PICTURE if issue.whole else _SMALL_PICTURE
    runs = finding_runs(finding, assessment, issue)
    if not shown:
        named = ", ".join(photo_number(photo.number) for photo in photos)
        runs.append((f"See {named}." if named else "No photo.", "soft"))
        text = _text(runs, finding)
        return [Rule(width, 0.4, 3, 3), text]
    first = shown[0]
    # A long text would not end beside its picture, which then follows below.
    if sum(len(text) for text, _ in runs) > _MOST_BESIDE:
        rows = [photo_row(shown[at : at + 3], issue, 3, 46 * mm) for at in range(0, len(shown), 3)]
        return [Rule(width, 0.4, 3, 3), _text(runs, finding), *rows]
    picture = issue.pictures.picture(first.sha, wide, wide * 0.75)
    beside = [_text(runs, finding), caption(first)]
    row = Table(
        [[beside, "", picture]],
        colWidths=(width - wide - _GAP, _GAP, wide),
        hAlign="LEFT",
        spaceBefore=1,
        spaceAfter=2,
    )
    row.setStyle(BARE_TABLE)
    rest = shown[1:]
    rows = [photo_row(rest[at : at + 3], issue, 3, 46 * mm) for at in range(0, len(rest), 3)]
    return [Rule(width, 0.4, 2, 2), row, *rows]


def _text(runs: Sequence[Run], finding: Finding) -> ReferringText:
    return referring(ReferringText, markup(runs), STYLES["body"], (f"finding-{finding.number}",))


def finding_runs(finding: Finding, assessment: Assessment, issue: Issue) -> list[Run]:
    """Return what is said of a finding: urgency, fact, what to do, where, and what it costs.

    Parameters
    ----------
    finding : Finding
    assessment : Assessment
    issue : Issue

    Returns
    -------
    list of Run
    """
    subject = checks_of_findings(issue).get(finding.number)
    part = next((one for one in assessment.systems if one.system.id == finding.system), None)
    runs: list[Run] = [
        (f"{finding.number}", "b"),
        urgency_run(finding),
        (_sentence(finding.title), "b"),
        (_sentence(finding.text), ""),
        (_sentence(finding.action), "i"),
        (_sentence(finding.where), "soft"),
    ]
    if subject:
        runs.append((key_of("check", subject), PAGE))
    elif part is not None:
        runs.append((f"system-{part.system.id}", PAGE))
    for line in _priced(finding, part):
        cost = money_text(Money.exact(line.likely, assessment.currency, as_typed=True))
        runs.append((f"Work line on it: {line.act}, likely {cost}.", "soft"))
    return [run for run in runs if run[0]]


def _priced(finding: Finding, part: SystemPart | None) -> list[WorkLine]:
    """The priced work lines of the unit on which a finding was made."""
    if part is None or not finding.unit:
        return []
    return [line for line in part.lines if line.unit == finding.unit and line.likely is not None][
        :2
    ]


def urgency_run(finding: Finding) -> Run:
    """Return the urgency of a finding, in the accent where people are in danger.

    Parameters
    ----------
    finding : Finding

    Returns
    -------
    Run
    """
    tone = "now" if finding.urgency == URGENCIES[0] else "i"
    return finding.urgency or "no urgency given", tone


def _sentence(text: str) -> str:
    """Return a typed text that ends like a sentence."""
    words = plain(text)
    # Titles are typed with and without a full stop, and run on in one cell.
    return f"{words}." if words and words[-1] not in ".!?…" else words
