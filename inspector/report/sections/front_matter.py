"""The front of the report: cover, the summary of one page, contents, vessel and brief."""

from collections.abc import Mapping
from dataclasses import dataclass, field

from reportlab.lib.units import mm
from reportlab.platypus import Flowable, PageBreak, Paragraph, Spacer

from inspector.assess.model import Assessment, Part, SystemPart
from inspector.assess.registers import Finding
from inspector.criteria.core.source import Source
from inspector.report.document import CONTENTS, contents, heading
from inspector.report.marks import PageOf, Rule, SideNote, VerdictSquare
from inspector.report.reading_text import conversion_note, typed_value
from inspector.report.tables import Cell, Run, pairs_table, rows_table
from inspector.report.theme import STYLES, Page, plain, txt
from inspector.report.verdict_text import NEED_WORDS, overruled_proposal
from inspector.report.wording import looked_at
from inspector.values.cell_text import NOT_KNOWN
from inspector.values.text import counted
from inspector.values.vocabulary import URGENCIES

NOT_LOOKED_AT = "not-looked-at"
KIND = (
    "Visual, non-invasive pre-purchase inspection. It is no class or statutory survey, no "
    "valuation and no approval of stability."
)
# Key in the record, label, and the unit that it was typed in.
VESSEL = (
    ("name", "name", ""),
    ("imo", "IMO number", ""),
    ("flag", "flag", ""),
    ("class", "class", ""),
    ("built", "keel laid", ""),
    ("year", "year built", ""),
    ("yard", "builder", ""),
    ("length", "length", "m"),
    ("breadth", "breadth", "m"),
    ("depth", "depth", "m"),
    ("draught", "draught", "m"),
    ("tonnage", "gross tonnage", ""),
    ("deck_area", "deck area", "m²"),
    ("dp_class", "DP class", ""),
    ("particulars", "particulars", ""),
)
BRIEF = (
    ("client", "client", ""),
    ("speed", "speed", "kn"),
    ("range", "range", "nmi"),
    ("endurance", "endurance", "days"),
    ("persons", "persons", ""),
    ("horizon", "horizon", "years"),
    ("ship", "kind of ship she is to be", ""),
)


@dataclass(frozen=True)
class Issue:
    """What identifies this issue of the report, and how it is to be read.

    Parameters
    ----------
    page : Page
        The paper.
    units : str
        "si" or "us".
    made_at, revision, digest : str
        As printed on cover and foot.
    cites : mapping of (str, Source) to int
        Criterion and source -> its number in the list of sources.
    whole : bool
        False for the short report, without every reading and rating.
    """

    page: Page
    units: str
    made_at: str
    revision: str
    digest: str
    cites: Mapping[tuple[str, Source], int] = field(default_factory=dict)
    whole: bool = True

    @property
    def named(self) -> str:
        """The revision in words: "revision 1", or "draft"."""
        # A revision is typed freely: "2" needs the word before it, "final" does not.
        if self.revision[:1].isdigit():
            return f"revision {self.revision}"
        # A report without a revision was never issued, and says so on each page.
        return self.revision or "draft"


def vessel_name(assessment: Assessment) -> str:
    """Return the vessel's name, or words that say that there is none.

    Parameters
    ----------
    assessment : Assessment

    Returns
    -------
    str
    """
    return plain(assessment.vessel.get("name", "")) or "Vessel not named"


def cover(assessment: Assessment, issue: Issue) -> list[Flowable]:
    """Return the page that says of which vessel, for whom, where, when and by whom.

    Parameters
    ----------
    assessment : Assessment
    issue : Issue

    Returns
    -------
    list of Flowable
    """
    visit = assessment.inspection
    rows = [
        ("client", assessment.brief.get("client", "")),
        ("inspection", visit.get("title", "")),
        ("place", visit.get("place", "")),
        ("date", visit.get("date", "")),
        ("surveyors and attending", visit.get("attending", "")),
        ("weather", visit.get("weather", "")),
        ("IMO number", assessment.vessel.get("imo", "")),
        ("made", issue.made_at),
        ("revision", issue.revision or "draft"),
        ("digest of the record", issue.digest),
    ]
    width = issue.page.column
    # Nothing is left out of the cover: an empty line would hide that nobody gave it.
    shown = [(name, plain(value) or NOT_KNOWN) for name, value in rows]
    return [
        Spacer(1, 42 * mm),
        Paragraph("Condition report", STYLES["kind"]),
        Paragraph(txt(vessel_name(assessment), 300), STYLES["title"]),
        Rule(width, 1.6, 2, 10),
        Paragraph(KIND, STYLES["lead"]),
        Spacer(1, 8 * mm),
        pairs_table(shown, width, 40 * mm),
        PageBreak(),
    ]


def summary(assessment: Assessment, issue: Issue) -> list[Flowable]:
    """Return one page: the verdict of each system, then the findings by urgency.

    Parameters
    ----------
    assessment : Assessment
    issue : Issue

    Returns
    -------
    list of Flowable
    """
    verdicts = Paragraph("No system was recorded in this inspection.", STYLES["body"])
    if assessment.systems:
        verdicts = _verdicts(assessment, issue)
    return [
        heading("Summary", "summary"),
        SideNote(txt(_decided_note(assessment)), issue.page),
        verdicts,
        *_disputes(assessment.disputes),
        heading("Findings by urgency", "summary-findings", 1),
        _findings(assessment, issue),
        PageBreak(),
    ]


def _decided_note(assessment: Assessment) -> str:
    """Return how many verdicts are the surveyor's own."""
    count = sum(part.whole.decision != "" for part in assessment.systems)
    verb = "is" if count == 1 else "are"
    return (
        f"{count} of {len(assessment.systems)} verdicts {verb} the surveyor's own; "
        "the others are proposed by rule."
    )


def _disputes(count: int) -> list[Flowable]:
    """Return how many answers are disputed, nothing where none is."""
    if not count:
        return []
    # Only the number is bold, so that it is found when leafing.
    number, answers = counted(count, "answer is", "answers are").split(" ", 1)
    sentence = (
        f"<b>{number}</b> {answers} disputed: answered differently, by two people who had not "
        "seen each other's answer or given apart, on two devices; every answer is kept in the "
        "record."
    )
    return [Paragraph(sentence, STYLES["body"])]


def _verdicts(assessment: Assessment, issue: Issue) -> Flowable:
    """A line for each system, so that the whole ship is on one page."""
    # No condition here: several units have counts and no figure, and why takes the room.
    rest = issue.page.column - (6 + 30 + 36 + 9) * mm
    return rows_table(
        ("", "verdict", "system", "why", "page"),
        [_verdict_row(part, assessment) for part in assessment.systems],
        (6 * mm, 30 * mm, 36 * mm, rest, 9 * mm),
    )


def _verdict_row(part: SystemPart, assessment: Assessment) -> list[Cell]:
    """Return one system: its word, why, and its page."""
    whole = part.whole
    # Cut for the summary, which is one page; the section of the system has it whole.
    reason: Run = (plain(whole.proposal.sentence, 88), "")
    if whole.decision and whole.reason:
        reason = (plain(whole.reason, 66), "")
    section = f"system-{part.system.id}" if looked_at(part, assessment) else NOT_LOOKED_AT
    return [
        VerdictSquare(whole),
        _word(whole),
        plain(part.system.name, 44),
        [reason, *overruled_proposal(whole)],
        PageOf(section),
    ]


def _word(whole: Part) -> list[Run]:
    """The word, with what is replaced or in how many units, and how firm it is."""
    if whole.decision:
        return [(whole.decision, "b")]
    proposal = whole.proposal
    joined = proposal.detail.startswith("and ")
    word = f"{proposal.verdict} {proposal.detail}" if joined else proposal.verdict
    detail = "" if joined else plain(proposal.detail, 40)
    rest = ", ".join(filter(None, (proposal.firmness, detail)))
    return [(word, "b"), (rest, "soft")]


def _findings(assessment: Assessment, issue: Issue) -> Flowable:
    """Return the table of findings, the most urgent first."""
    if not assessment.findings:
        return Paragraph("No findings were recorded.", STYLES["body"])
    rest = issue.page.column - (27 + 8 + 38) * mm
    return rows_table(
        ("urgency", "no.", "finding", "where"),
        [_finding_row(finding) for finding in sorted(assessment.findings, key=_by_urgency)],
        (27 * mm, 8 * mm, rest, 38 * mm),
    )


def _by_urgency(finding: Finding) -> tuple[int, int]:
    """The most urgent first; without an urgency last."""
    # Appended, so that an urgency of an older list is found as well.
    urgencies = (*URGENCIES, finding.urgency)
    return urgencies.index(finding.urgency), finding.number


def _finding_row(finding: Finding) -> list[Cell]:
    """Return the row of a finding on the first pages, without its text."""
    return [
        [urgency_run(finding)],
        str(finding.number),
        [(plain(finding.title, 140), "b")],
        plain(finding.unit_name, 60),
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
    tone = "now" if finding.urgency == URGENCIES[0] else ""
    return finding.urgency or "no urgency given", tone


def contents_page() -> list[Flowable]:
    """Return the list of sections with their pages."""
    return [heading("Contents", CONTENTS), Spacer(1, 4 * mm), contents(), PageBreak()]


def vessel_and_brief(assessment: Assessment, issue: Issue) -> list[Flowable]:
    """Return the vessel's particulars and the client's brief.

    Parameters
    ----------
    assessment : Assessment
    issue : Issue

    Returns
    -------
    list of Flowable
    """
    body = [
        heading("Vessel and brief", "vessel"),
        heading("The vessel", "vessel-particulars", 1),
        *_particulars(assessment.vessel, VESSEL, issue),
        heading("The client's brief", "brief", 1),
        *_particulars(assessment.brief, BRIEF, issue),
    ]
    if assessment.systems:
        # A verdict can be followed only beside what the brief asked of that system.
        needs = [_need(part) for part in assessment.systems]
        body.append(heading("What the brief needs of each system", "needs", 1))
        body.append(pairs_table(needs, issue.page.column, 46 * mm))
    return [*body, PageBreak()]


def _need(part: SystemPart) -> tuple[str, str]:
    """Return a system's name and how much the brief needs it."""
    need = part.whole.facts.need
    return part.system.name, NEED_WORDS[need]


def _particulars(
    values: Mapping[str, str], names: tuple[tuple[str, str, str], ...], issue: Issue
) -> list[Flowable]:
    """A table of what is known of these names, and from which units it was converted."""
    typed = [(label, plain(values.get(key, "")), unit) for key, label, unit in names]
    known = [(label, typed_value(text, unit, issue.units)) for label, text, unit in typed if text]
    if not known:
        return [Paragraph("Nothing was recorded.", STYLES["body"])]
    note = conversion_note([(text, unit) for _, text, unit in typed], issue.units)
    notes = [Paragraph(txt(note), STYLES["small"])] if note else []
    return [pairs_table(known, issue.page.column, 46 * mm), *notes]
