"""The front of the report: cover, the one-page summary, contents, vessel and brief, scope and limits."""

from collections.abc import Mapping
from dataclasses import dataclass, field

from reportlab.lib.units import mm
from reportlab.platypus import Flowable, PageBreak, Paragraph, Spacer

from inspector.assess.shapes import URGENCIES, Assessment
from inspector.criteria.source import Source
from inspector.report.figures import PageOf, Rule, SideNote, SpanBar, VerdictSquare
from inspector.report.pages import CONTENTS, contents, heading
from inspector.report.tables import rows_table
from inspector.report.theme import STYLES, Page, plain, txt
from inspector.report.wording import NEED_WORDS, in_reader_units, looked_at


@dataclass(frozen=True)
class Issue:
    """What identifies this issue of the report, and how it is to be read."""

    page: Page
    units: str
    made_at: str
    revision: str
    digest: str
    cites: Mapping[tuple[str, Source], int] = field(default_factory=dict)   # criterion and source -> its number in the list of sources
    whole: bool = True          # False: the short report, without every reading and rating

    @property
    def named(self) -> str:
        """The revision in words: "revision 1", or "draft"."""
        return f"revision {self.revision}" if self.revision[:1].isdigit() else self.revision or "draft"


NOT_LOOKED_AT = "not-looked-at"
KIND = "Visual, non-invasive pre-purchase inspection. It is no class or statutory survey, no valuation and no approval of stability."
LIMITS = (
    "This report says what could be seen, read and asked at the time and place named on the cover. Nothing was dismantled, nothing was tested "
    "beyond what the record shows, and hidden parts were not examined. Fresh paint, cargo, linings and insulation hide defects.",
    "It is not a class survey, not a statutory survey, not a valuation and not an approval of stability, strength or any conversion. "
    "It gives no assurance that a vessel, a space or an installation may be entered, energised or used.",
    "Local codes, the flag, class and port, and persons licensed by them decide. Work on electrical, pressure, refrigerant, fire-fighting and lifting "
    "equipment, and entry into enclosed spaces, belong to those who are competent and permitted to do it.",
    "Verdicts are opinions for the client named here, for the brief printed here. What was not seen counts as unknown: each condition is given "
    "as a span that shows what the unseen could still make of it. Cost and weight figures are estimates for comparison.",
)
MEANINGS = (
    ("good", "as it should be: no action beyond normal upkeep"), ("fair", "worn but serviceable: plan upkeep"),
    ("poor", "repair before it is relied upon"), ("failed", "does not do its job, or must not be used as it is"),
    ("retain", "keep as it is, with normal upkeep"), ("refurbish", "keep after the work listed"), ("remove", "take out, or replace"),
    ("undecided", "too little was seen; the checks that would decide are named"),
    ("danger now", "people may be hurt: tell those aboard today"), ("before purchase", "settle before money moves"),
    ("in the yard", "plan with the yard period"), ("keep watch", "record, and look again"),
)
VESSEL = (("name", "name", ""), ("imo", "IMO number", ""), ("flag", "flag", ""), ("class", "class", ""), ("built", "keel laid", ""), ("year", "year built", ""),
          ("yard", "builder", ""), ("length", "length", "m"), ("breadth", "breadth", "m"), ("depth", "depth", "m"), ("draught", "draught", "m"),
          ("tonnage", "gross tonnage", ""), ("deck_area", "deck area", "m²"), ("dp_class", "DP class", ""), ("particulars", "particulars", ""))
BRIEF = (("client", "client", ""), ("speed", "speed", "kn"), ("range", "range", "nmi"), ("endurance", "endurance", "days"), ("persons", "persons", ""),
         ("horizon", "horizon", "years"))


def vessel_name(assessment: Assessment) -> str:
    """The vessel's name, or words that say that there is none."""
    return plain(assessment.vessel.get("name", "")) or "Vessel not named"


def cover(assessment: Assessment, issue: Issue) -> list[Flowable]:
    """What it is, of which vessel, for whom, where and when, by whom."""
    visit = assessment.inspection
    rows = [("client", assessment.brief.get("client", "")), ("inspection", visit.get("title", "")), ("place", visit.get("place", "")),
            ("date", visit.get("date", "")), ("surveyors and attending", visit.get("attending", "")), ("weather", visit.get("weather", "")),
            ("IMO number", assessment.vessel.get("imo", "")), ("made", issue.made_at),
            ("revision", issue.revision or "draft"), ("digest of the record", issue.digest)]
    width = issue.page.column
    table = rows_table(("", ""), [[[(name, "soft")], plain(value) or "–"] for name, value in rows], (40 * mm, width - 40 * mm))
    return [Spacer(1, 42 * mm), Paragraph("Condition report", STYLES["kind"]), Paragraph(txt(vessel_name(assessment), 300), STYLES["title"]),
            Rule(width, 1.6, 2, 10), Paragraph(KIND, STYLES["lead"]), Spacer(1, 8 * mm), table, PageBreak()]


def summary(assessment: Assessment, issue: Issue) -> list[Flowable]:
    """One page: the verdict of each system with its span and reason, then the findings by urgency."""
    count = sum(part.decision != "" for part in (one.whole for one in assessment.systems))
    note = f"{count} of {len(assessment.systems)} verdicts {'is' if count == 1 else 'are'} the surveyor's own; the others are proposed by rule."
    parts: list[Flowable] = [heading("Summary", "summary"), SideNote(txt(note), issue.page)]
    parts += [_verdicts(assessment, issue)] if assessment.systems else [Paragraph("No system was recorded in this inspection.", STYLES["body"])]
    if assessment.disputes:
        many = "answers are" if assessment.disputes > 1 else "answer is"
        told = (f"<b>{assessment.disputes}</b> {many} disputed: answered differently, by two people who had not seen each other's answer or given apart, on "
                "two devices; every answer stands in the record.")
        parts.append(Paragraph(told, STYLES["body"]))
    parts += [heading("Findings by urgency", "summary-findings", 1), *_urgent(assessment, issue), PageBreak()]
    return parts


def _verdicts(assessment: Assessment, issue: Issue) -> Flowable:
    """One line a system, so that the whole ship stands on one page; the reasons stand with each system."""
    rows = []
    for one in assessment.systems:
        whole = one.whole
        why = [(plain(whole.reason, 54), "") if whole.decision and whole.reason else (whole.proposal.rule, "")]
        differs = [(f"proposed: {whole.proposal.verdict}", "i")] if whole.decision and whole.decision != whole.proposal.verdict else []
        bar = SpanBar(whole.condition, 32 * mm, assessment.settings.coverage)
        rows.append([VerdictSquare(whole.verdict), [(whole.verdict, "b")], plain(one.system.name, 44), bar, [*why, *differs],
                     PageOf(f"system-{one.system.id}" if looked_at(one, assessment) else NOT_LOOKED_AT)])
    rest = issue.page.column - (6 + 20 + 46 + 35 + 9) * mm
    return rows_table(("", "verdict", "system", "condition, 0 to 100", "by the rule", "page"), rows, (6 * mm, 20 * mm, 46 * mm, 35 * mm, rest, 9 * mm))


def _urgent(assessment: Assessment, issue: Issue) -> list[Flowable]:
    if not assessment.findings:
        return [Paragraph("No findings were recorded.", STYLES["body"])]
    ranked = sorted(assessment.findings, key=lambda one: (URGENCIES.index(one.urgency) if one.urgency in URGENCIES else len(URGENCIES), one.number))
    rows = [[[(one.urgency or "no urgency given", "now" if one.urgency == "danger now" else "")], str(one.number), [(plain(one.title, 140), "b")],
             plain(one.unit_name, 60)] for one in ranked]
    rest = issue.page.column - (27 + 8 + 38) * mm
    return [rows_table(("urgency", "no.", "finding", "where"), rows, (27 * mm, 8 * mm, rest, 38 * mm))]


def contents_page() -> list[Flowable]:
    """The list of sections with their pages."""
    return [heading("Contents", CONTENTS), Spacer(1, 4 * mm), contents(), PageBreak()]


def vessel_and_brief(assessment: Assessment, issue: Issue) -> list[Flowable]:
    """Who she is, and what she is wanted for."""
    needs = [(f"{one.system.name}", NEED_WORDS.get(one.whole.facts.need, one.whole.facts.need)) for one in assessment.systems]
    return [heading("Vessel and brief", "vessel"), heading("The vessel", "vessel-particulars", 1), _pairs(_facts(assessment.vessel, VESSEL, issue), issue),
            heading("The client's brief", "brief", 1), _pairs(_facts(assessment.brief, BRIEF, issue), issue),
            *([heading("What the brief needs of each system", "needs", 1), _pairs(needs, issue)] if needs else []), PageBreak()]


def _facts(values: Mapping[str, str], names: tuple, issue: Issue) -> list[tuple[str, str]]:
    known = [(label, in_reader_units(plain(values.get(key, "")), unit, issue.units)) for key, label, unit in names]
    return [(label, value) for label, value in known if value]


def _pairs(rows: list[tuple[str, str]], issue: Issue) -> Flowable:
    if not rows:
        return Paragraph("Nothing was recorded.", STYLES["body"])
    return rows_table(("", ""), [[[(name, "soft")], value] for name, value in rows], (46 * mm, issue.page.column - 46 * mm))


def scope_and_limits(issue: Issue) -> list[Flowable]:
    """What kind of inspection this was, what it was not, who decides, and what the words mean."""
    words = rows_table(("word", "what it means here"), [[[(word, "b")], meaning] for word, meaning in MEANINGS], (34 * mm, issue.page.column - 34 * mm))
    reckoned = ("Condition counts good as 100, fair 60, poor 25 and failed 0, weighted by check. A critical check rated poor holds it at 59 or less, "
                "a failed one at 24 or less. The span runs from the condition if all that was not seen were failed to the condition if it were good.")
    return [heading("Scope and limits of the inspection", "limits"), Paragraph(KIND, STYLES["lead"]), *(Paragraph(one, STYLES["body"]) for one in LIMITS),
            heading("What the words mean", "words", 1), words, heading("How condition is reckoned", "reckoned", 1), Paragraph(reckoned, STYLES["body"])]
