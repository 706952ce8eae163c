"""The section of one system: verdict, units, readings and ratings, findings, photos."""

from reportlab.lib.units import mm
from reportlab.platypus import CondPageBreak, Flowable, PageBreak, Paragraph, Spacer, Table

from inspector.assess.model import Assessment, Part, SystemPart
from inspector.report.document import heading
from inspector.report.marks import Rule, SideNote, SpanBar, VerdictSquare
from inspector.report.sections.findings_photos import (
    PhotoFile,
    findings_table,
    photo_pages,
    photos_of,
)
from inspector.report.sections.front_matter import NOT_LOOKED_AT, Issue
from inspector.report.sections.ratings_section import measured, ratings
from inspector.report.tables import Cell, Run, pairs_table, rows_table
from inspector.report.theme import PLAIN, STYLES, plain, txt
from inspector.report.verdict_text import fact_rows, overruled_proposal, verdict_reason
from inspector.report.wording import (
    all_results,
    condition_text,
    coverage_text,
    looked_at,
    unseen_reason,
    was_not_seen,
)
from inspector.values.text import capital, counted, listed

_MARK = 5 * mm
_BAND = [
    ("FONTNAME", (0, 0), (-1, -1), PLAIN),
    ("LEFTPADDING", (0, 0), (-1, -1), 0),
    ("RIGHTPADDING", (0, 0), (-1, -1), 0),
    ("VALIGN", (0, 0), (-1, -1), "TOP"),
    ("TOPPADDING", (0, 0), (-1, -1), 6),
]


def system_section(
    part: SystemPart, assessment: Assessment, issue: Issue, photo_file: PhotoFile
) -> list[Flowable]:
    """Return everything on one system, beginning on a page of its own.

    Parameters
    ----------
    part : SystemPart
    assessment : Assessment
    issue : Issue
        In the short report a section follows the one before, without readings and ratings.
    photo_file : callable
        Digest -> path of the report's copy, None where there is none.

    Returns
    -------
    list of Flowable
    """
    key = f"system-{part.system.id}"
    details = []
    if issue.whole:
        details = measured(part, issue, key) + ratings(part, assessment, issue, key)
    return [
        heading(part.system.name, key),
        Paragraph(txt(part.system.about), STYLES["body"]),
        *_verdict(part, assessment, issue),
        *_units(part, assessment, issue, key),
        *details,
        *_findings(part, assessment, issue, key),
        *photo_pages(photos_of(part, assessment), issue, photo_file, key),
        section_end(issue),
    ]


def section_end(issue: Issue) -> Flowable:
    """Return what parts a system's section from the next: a page, or room in the short report.

    Parameters
    ----------
    issue : Issue

    Returns
    -------
    Flowable
    """
    # The whole report is read system by system, the short one from front to back.
    return PageBreak() if issue.whole else CondPageBreak(80 * mm)


def not_looked_at(assessment: Assessment, issue: Issue) -> list[Flowable]:
    """Return the systems of which nothing was recorded, a line each.

    Parameters
    ----------
    assessment : Assessment
    issue : Issue

    Returns
    -------
    list of Flowable
        Empty where something was recorded of every system.
    """
    left = [part for part in assessment.systems if not looked_at(part, assessment)]
    if not left:
        return []
    widths = (40 * mm, 22 * mm, 36 * mm, issue.page.column - 98 * mm)
    lead = (
        "Nothing was recorded of these: their condition is unknown, not good. "
        "The word is what the rule proposes in that case."
    )
    return [
        heading("Not looked at", NOT_LOOKED_AT),
        Paragraph(lead, STYLES["body"]),
        rows_table(("system", "verdict", "seen", ""), [_left_row(part) for part in left], widths),
        section_end(issue),
    ]


def _left_row(part: SystemPart) -> list[Cell]:
    """Return the row of a system that is not decided, with what would decide it."""
    whole = part.whole
    deciding = "; ".join(whole.proposal.deciding)
    return [
        part.system.name,
        [(capital(whole.spoken), "b")],
        coverage_text(whole.condition),
        [(f"Would decide it: {deciding}." if deciding else "", "soft")],
    ]


def _verdict(part: SystemPart, assessment: Assessment, issue: Issue) -> list[Flowable]:
    """The verdict, the proposal beside the decision, what would change it, and its facts."""
    whole, width = part.whole, issue.page.column
    facts = fact_rows(whole, issue.units, assessment.currency)
    return [
        Rule(width, 1.6, 4),
        SideNote(_side_note(part), issue.page),
        _band(whole, width),
        Paragraph(_condition(part), STYLES["body"]),
        *_decision(whole),
        *_proposal(whole),
        *(Paragraph(f"<b>{txt(sentence)}</b>", STYLES["body"]) for sentence in part.against),
        Rule(width, 0.5, 2, 4),
        *([pairs_table(facts, width, 40 * mm)] if facts else []),
    ]


def _band(whole: Part, width: float) -> Table:
    """The square of the verdict beside its word, who gave it, and the span of the condition."""
    # Who gave the word is printed in all cases: a rule signs no report.
    given_by = "Proposed by rule; the surveyor has not decided."
    if whole.decision:
        given_by = f"Surveyor's decision: {whole.decision}."
    words = [
        Paragraph(txt(capital(whole.spoken)), STYLES["verdict"]),
        Spacer(1, 3),
        Paragraph(txt(given_by), STYLES["body"]),
        SpanBar(whole.condition, 70 * mm),
    ]
    band = Table(
        [[VerdictSquare(whole, 13 * mm), words]],
        colWidths=(18 * mm, width - 18 * mm),
        hAlign="LEFT",
    )
    band.setStyle(_BAND)
    return band


def _condition(part: SystemPart) -> str:
    """Several units by their counts, a single one by its figure; then what is still possible."""
    whole = part.whole
    first = whole.proposal.counts or condition_text(whole.condition)
    sentences = [first, coverage_text(whole.condition)]
    # Once the surveyor has decided, what the rule left open is no longer of interest.
    if len(whole.proposal.open_words) > 1 and not whole.decision:
        sentences.append(f"Still possible: {listed(whole.proposal.open_words, 'or')}.")
    if whole.proposal.remark:
        sentences.append(whole.proposal.remark)
    return txt(" ".join(sentences))


def _decision(whole: Part) -> list[Flowable]:
    """Return the surveyor's own verdict, nothing where there is none."""
    if not whole.decision:
        return []
    return [Paragraph(f"<b>The surveyor:</b> {txt(verdict_reason(whole))}", STYLES["body"])]


def _proposal(part: Part) -> list[Flowable]:
    """The rule that applied, its reasons, what would change it, and what would decide it."""
    proposal = part.proposal
    word = f"<b>Proposed: {txt(proposal.spoken)}.</b> " if part.decision else ""
    body = [Paragraph(f"{word}{txt(f'{proposal.sentence} {proposal.rule_text}')}", STYLES["body"])]
    body += [Paragraph(txt(reason), STYLES["body"]) for reason in proposal.reasons]
    if proposal.changes:
        changes = "; ".join(f"{change.fact} → {change.verdict}" for change in proposal.changes)
        body.append(Paragraph(txt(f"Would change it: {changes}."), STYLES["small"]))
    if proposal.deciding:
        deciding = "; ".join(proposal.deciding)
        body.append(Paragraph(txt(f"Still open: {deciding}."), STYLES["small"]))
    return body


def _side_note(part: SystemPart) -> str:
    """How many checks were seen, and why the others were not."""
    state = part.whole.condition
    unseen = [result for result in all_results(part) if was_not_seen(result)]
    # Each reason once; which check had which is in the list at the back.
    reasons = sorted({plain(unseen_reason(result), 30) for result in unseen})
    note = f"{state.seen} of {counted(state.applicable, 'check')} seen."
    return txt(f"{note} Rest: {', '.join(reasons)}." if reasons else note, 180)


def _units(part: SystemPart, assessment: Assessment, issue: Issue, key: str) -> list[Flowable]:
    """Return the table of a system's units, nothing where it has none."""
    if not part.units:
        return []
    several = len(part.units) > 1
    rest = issue.page.column - (36 + 38 + 16) * mm - _MARK - 2 * mm
    table = rows_table(
        ("unit", "condition, 0 to 100", "seen", "", "verdict"),
        [_unit_row(unit, several) for unit in part.units],
        (36 * mm, 38 * mm, 16 * mm, _MARK + 2 * mm, rest),
    )
    return [heading("Units", f"{key}-units", 1), table]


def _unit_row(unit: Part, several: bool) -> list[Cell]:
    """Return the row of a unit: condition, what was seen, verdict and reason."""
    words: list[Run] = [(unit.spoken, "b"), *overruled_proposal(unit)]
    # A single unit has the reasons of its system, which are printed above the table.
    if unit.decision or several:
        words.append((verdict_reason(unit), ""))
    return [
        unit.name,
        SpanBar(unit.condition, 34 * mm),
        f"{unit.condition.seen} of {unit.condition.applicable}",
        VerdictSquare(unit),
        words,
    ]


def _findings(part: SystemPart, assessment: Assessment, issue: Issue, key: str) -> list[Flowable]:
    """Return the findings of a system, or a sentence that there are none."""
    findings = [found for found in assessment.findings if found.system == part.system.id]
    top = heading("Findings", f"{key}-findings", 1)
    if not findings:
        return [top, Paragraph("No findings were recorded for this system.", STYLES["body"])]
    return [top, findings_table(findings, issue, assessment)]
