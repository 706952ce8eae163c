"""The section of one system: verdict, units, checks by unit, findings, photos."""

from reportlab.lib.units import mm
from reportlab.platypus import Flowable, Paragraph, Table

from inspector.assess.model import Assessment, Part, SystemPart
from inspector.report.cell_runs import PAGE, Cell, Run
from inspector.report.client.client_summary import NOT_LOOKED_AT
from inspector.report.document import heading
from inspector.report.issue import Issue
from inspector.report.marks import SpanBar, VerdictSquare
from inspector.report.page_references import ReferringText, referring
from inspector.report.sections.checks_by_unit import checks_by_unit
from inspector.report.sections.findings_section import photos_in_findings
from inspector.report.sections.full_checks import not_good
from inspector.report.sections.photo_pages import photo_pages, photos_of
from inspector.report.tables import markup, rows_table
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
from inspector.values.text import capital, listed
from inspector.values.vocabulary import FIRM

_MARK = 5 * mm
_BAND = [
    ("FONTNAME", (0, 0), (-1, -1), PLAIN),
    ("LEFTPADDING", (0, 0), (-1, -1), 0),
    ("RIGHTPADDING", (0, 0), (-1, -1), 0),
    ("VALIGN", (0, 0), (-1, -1), "TOP"),
    ("TOPPADDING", (0, 0), (-1, -1), 2),
    ("BOTTOMPADDING", (0, 0), (-1, -1), 3),
]


def system_section(part: SystemPart, assessment: Assessment, issue: Issue) -> list[Flowable]:
    """Return everything on one system, which follows on the one before.

    Parameters
    ----------
    part : SystemPart
    assessment : Assessment
    issue : Issue

    Returns
    -------
    list of Flowable
    """
    key = f"system-{part.system.id}"
    body: list[Flowable] = [
        heading(part.system.name, key),
        *_verdict(part, assessment, issue),
        *_units(part, issue),
        *_findings(part, assessment),
    ]
    if not issue.whole:
        return [*body, *not_good(part, assessment, issue, key)]
    beside_findings = photos_in_findings(assessment, issue)
    photos = [one for one in photos_of(part, assessment) if one.sha not in beside_findings]
    return [
        *body,
        *checks_by_unit(part, assessment, issue, key),
        *photo_pages(photos, issue, key),
    ]


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
    widths = (40 * mm, 28 * mm, 36 * mm, issue.page.column - 104 * mm)
    lead = (
        "Nothing was recorded of these: their condition is unknown, not good. "
        "The word is what the rule proposes in that case."
    )
    heads = ("system", "verdict", "seen", "")
    return [
        heading("Not looked at", NOT_LOOKED_AT),
        Paragraph(lead, STYLES["body"]),
        rows_table(heads, [_left_row(part) for part in left], widths, tight=True),
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
    said = "; ".join(f"{name}: {value}" for name, value in facts)
    about = [Paragraph(txt(part.system.about), STYLES["small"])] if issue.whole else []
    return [
        *about,
        _band(part, width),
        *_decision(whole),
        *_proposal(whole, issue),
        *(Paragraph(f"<b>{txt(sentence)}</b>", STYLES["line"]) for sentence in part.against),
        *([Paragraph(txt(f"{capital(said)}."), STYLES["small"])] if said else []),
    ]


def _band(part: SystemPart, width: float) -> Table:
    """The square of the verdict beside its word, who gave it, and the span of the condition."""
    whole = part.whole
    # Who gave the word is printed in all cases: a rule signs no report.
    given_by = "Proposed by rule; the surveyor has not decided."
    if whole.decision:
        given_by = f"Surveyor's decision: {whole.decision}."
    words = [
        Paragraph(txt(capital(whole.spoken)), STYLES["verdict"]),
        Paragraph(f"{txt(given_by)} {_condition(part)}", STYLES["line"]),
    ]
    band = Table(
        [[VerdictSquare(whole, 9 * mm), words, SpanBar(whole.condition, 44 * mm)]],
        colWidths=(13 * mm, width - 61 * mm, 48 * mm),
        hAlign="LEFT",
    )
    band.setStyle(_BAND)
    return band


def _condition(part: SystemPart) -> str:
    """Several units by their counts, a single one by its figure; then what is still possible."""
    whole = part.whole
    first = whole.proposal.counts or condition_text(whole.condition)
    sentences = [capital(first), _coverage(part)]
    # Once the surveyor has decided, what the rule left open is no longer of interest.
    if len(whole.proposal.open_words) > 1 and not whole.decision:
        sentences.append(f"Still possible: {listed(whole.proposal.open_words, 'or')}.")
    if whole.proposal.remark:
        sentences.append(whole.proposal.remark)
    return txt(" ".join(sentences))


def _coverage(part: SystemPart) -> str:
    """How many checks were seen, and why the others were not."""
    unseen = [result for result in all_results(part) if was_not_seen(result)]
    # Each reason once; which check had which is in the list at the back.
    reasons = sorted({plain(unseen_reason(result), 30) for result in unseen})
    said = coverage_text(part.whole.condition)
    return f"{said} The rest: {', '.join(reasons[:5])}." if reasons else said


def _decision(whole: Part) -> list[Flowable]:
    """Return the surveyor's own verdict, nothing where there is none."""
    if not whole.decision:
        return []
    return [Paragraph(f"<b>The surveyor:</b> {txt(verdict_reason(whole))}", STYLES["body"])]


def _proposal(part: Part, issue: Issue) -> list[Flowable]:
    """The rule that applied, its reasons, what would change it, and what would decide it."""
    proposal = part.proposal
    word = f"<b>Proposed: {txt(proposal.spoken)}.</b> " if part.decision else ""
    said = " ".join(filter(None, (proposal.sentence, proposal.rule_text, *proposal.reasons)))
    body = [Paragraph(f"{word}{txt(said)}", STYLES["body"])]
    rest = []
    if proposal.changes:
        changes = "; ".join(f"{change.fact} → {change.verdict}" for change in proposal.changes)
        rest.append(f"Would change it: {changes}.")
    if proposal.deciding:
        rest.append(f"Still open: {'; '.join(proposal.deciding)}.")
    if rest:
        body.append(Paragraph(txt(" ".join(rest)), STYLES["small"]))
    return body


def _units(part: SystemPart, issue: Issue) -> list[Flowable]:
    """Return the table of a system's units, nothing where it has no more than one."""
    if len(part.units) < 2:
        return []
    rest = issue.page.column - (36 + 34 + 16) * mm - _MARK - 1 * mm
    # The short report tells the units that do not simply stay.
    plain_ones = [one for one in part.units if one.verdict == "retain" and one.firmness == FIRM]
    shown = [one for one in part.units if issue.whole or one not in plain_ones]
    if not shown:
        return []
    table = rows_table(
        ("unit", "condition, 0 to 100", "seen", "", "verdict"),
        [_unit_row(unit) for unit in shown],
        (36 * mm, 34 * mm, 16 * mm, _MARK + 1 * mm, rest),
        tight=True,
    )
    return [table]


def _unit_row(unit: Part) -> list[Cell]:
    """Return the row of a unit: condition, what was seen, verdict and reason."""
    words: list[Run] = [(unit.spoken, "b"), *overruled_proposal(unit), (verdict_reason(unit), "")]
    return [
        unit.name,
        SpanBar(unit.condition, 30 * mm),
        f"{unit.condition.seen} of {unit.condition.applicable}",
        VerdictSquare(unit, 2.9 * mm),
        words,
    ]


def _findings(part: SystemPart, assessment: Assessment) -> list[Flowable]:
    """Return where the findings of a system are, nothing where there are none."""
    findings = [found for found in assessment.findings if found.system == part.system.id]
    if not findings:
        return []
    runs: list[Run] = [("Findings:", "b")]
    for number, finding in enumerate(findings):
        before = "· " if number else ""
        runs.append((f"{before}{finding.number} {plain(finding.title, 90).rstrip('.')}", ""))
        runs.append((f"finding-{finding.number}", PAGE))
    return [referring(ReferringText, markup(runs), STYLES["line"])]
