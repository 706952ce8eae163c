"""The first two pages: what a client decides by, and where in the report each of it is told."""

from reportlab.lib.units import mm
from reportlab.platypus import Flowable, KeepInFrame, PageBreak, Paragraph, Spacer, Table

from inspector.assess.model import Assessment, Part, SystemPart
from inspector.conversion.core.chapter import Requirement
from inspector.report.cell_runs import PAGE, TO, Cell, Run
from inspector.report.client.blocks import (
    asked_words,
    figure_words,
    half_of,
    offered_words,
    text,
    titled,
    two_columns,
)
from inspector.report.client.decision import Decision
from inspector.report.client.money_blocks import budget_row, cost_block, money_block
from inspector.report.client.to_settle import safety_block, to_settle
from inspector.report.document import Heading
from inspector.report.issue import Issue, vessel_name
from inspector.report.marks import MetMark, Rule, VerdictSquare
from inspector.report.sections.photo_pages import BARE_TABLE, photo_number
from inspector.report.tables import rows_table
from inspector.report.theme import STYLES, plain, txt
from inspector.report.wording import all_results, looked_at, unseen_reason, was_not_seen
from inspector.values.cell_text import NOT_KNOWN, figure
from inspector.values.text import capital, counted, listed
from inspector.values.vocabulary import FIRM

KIND = (
    "Visual, non-invasive pre-purchase inspection. It is no class or statutory survey, no "
    "valuation and no approval of stability."
)
NO_ADVICE = "The surveyor has written no advice yet: the marks and figures below are computed."
NOT_LOOKED_AT = "not-looked-at"


def client_summary(assessment: Assessment, issue: Issue, decision: Decision) -> list[Flowable]:
    """Return the two pages.

    Parameters
    ----------
    assessment : Assessment
    issue : Issue
    decision : Decision

    Returns
    -------
    list of Flowable
    """
    page = issue.page
    high = page.height - page.top - page.bottom
    title = Heading(txt(vessel_name(assessment), 90), STYLES["title"])
    title.outline = (0, "Summary", "summary")
    first = [
        *_picture_and_advice(assessment, issue),
        Spacer(1, 7),
        two_columns(
            [
                *to_settle(assessment, decision, issue.units),
                *safety_block(decision),
                *cost_block(decision, half_of(issue)),
            ],
            _systems(assessment, issue),
            issue,
        ),
    ]
    second = [
        *_brief(decision, issue),
        two_columns(_unseen(assessment), money_block(decision, issue), issue),
        *_disputes(assessment.disputes),
        *_visit(assessment, issue),
    ]
    return [
        Paragraph(txt(_kind_line(assessment)), STYLES["kind"]),
        title,
        Paragraph(txt(_vessel_line(assessment, issue)), STYLES["kind"]),
        KeepInFrame(page.column, high - 26 * mm, first, mode="shrink"),
        PageBreak(),
        KeepInFrame(page.column, high - 2 * mm, second, mode="shrink"),
        PageBreak(),
    ]


def _kind_line(assessment: Assessment) -> str:
    client = plain(assessment.brief.get("client", ""), 60)
    date = plain(assessment.inspection.get("date", ""), 30)
    named = f"for {client}" if client else "for a client not named"
    return " · ".join(filter(None, ("Condition report", named, date)))


def _vessel_line(assessment: Assessment, issue: Issue) -> str:
    vessel = assessment.vessel
    length, year = plain(vessel.get("length", ""), 20), plain(vessel.get("year", ""), 12)
    try:
        long = figure(float(length), "m", issue.units)
    except ValueError:
        long = length
    dp_class = plain(vessel.get("dp_class", ""), 8)
    place = plain(assessment.inspection.get("place", ""), 60)
    parts = (
        long,
        f"built {year}" if year else "",
        f"DP class {dp_class}" if dp_class else "",
        f"IMO {plain(vessel.get('imo', ''), 14)}" if vessel.get("imo") else "",
        f"lying at {place}" if place else "",
    )
    return capital(", ".join(filter(None, parts)) or "Nothing is recorded of her particulars.")


def _picture_and_advice(assessment: Assessment, issue: Issue) -> list[Flowable]:
    """The picture that the surveyor chose, with his sentence beside it, or below a wide one."""
    advice = Paragraph(_advice(assessment), STYLES["advice"])
    chosen = assessment.inspection.get("cover", "")
    photos = assessment.photos
    of_vessel = [one for one in photos if one.on in ("vessel", "inspection")]
    found = [one for one in photos if one.sha == chosen] or of_vessel or list(photos)
    if not found or issue.pictures is None:
        return [Rule(issue.page.column, 1.2, 6, 4), advice]
    photo, width = found[0], issue.page.column
    shown = issue.pictures.picture(photo.sha, width, 70 * mm)
    words: list[Run] = [
        (photo_number(photo.number), f"{TO}photo-{photo.number}"),
        (plain(photo.caption, 110) or plain(photo.place, 110), "soft"),
    ]
    caption = text(words, "caption")
    if shown.width > width * 0.7:
        return [Spacer(1, 4), shown, caption, advice]
    gap = 6 * mm
    row = Table(
        [[shown, "", [advice, Spacer(1, 4), caption]]],
        colWidths=(shown.width, gap, width - shown.width - gap),
    )
    row.hAlign = "LEFT"
    row.setStyle([*BARE_TABLE, ("VALIGN", (0, 0), (-1, -1), "MIDDLE")])
    return [Spacer(1, 4), row]


def _advice(assessment: Assessment) -> str:
    """The surveyor's own sentence; none is ever made for him."""
    advice = plain(assessment.inspection.get("advice", ""), 320)
    return txt(advice) if advice else f'<font color="#47606b">{txt(NO_ADVICE)}</font>'


def _systems(assessment: Assessment, issue: Issue) -> list[Flowable]:
    """The mark and the word of each system, with its page."""
    body: list[Flowable] = [titled("System by system")]
    if not assessment.systems:
        none = "No system was recorded in this inspection."
        return [*body, Paragraph(none, STYLES["point"])]
    half = half_of(issue)
    widths = (5 * mm, 36 * mm, half - 51 * mm, 10 * mm)
    rows = [_system_row(part, assessment) for part in assessment.systems]
    table = rows_table(("", "", "", ""), rows, widths, tight=True)
    decided = sum(part.whole.decision != "" for part in assessment.systems)
    verb = "is" if decided == 1 else "are"
    note = (
        f"{decided} of {len(assessment.systems)} words {verb} the surveyor's own; the others are "
        "proposed by rule. Dotted: not firm."
    )
    return [*body, table, Paragraph(txt(note), STYLES["small"])]


def _system_row(part: SystemPart, assessment: Assessment) -> list[Cell]:
    key = f"system-{part.system.id}" if looked_at(part, assessment) else NOT_LOOKED_AT
    return [
        VerdictSquare(part.whole, 2.9 * mm),
        [(plain(part.system.name, 44), "")],
        _word(part.whole),
        [(key, PAGE)],
    ]


def _word(whole: Part) -> list[Run]:
    """The word, with what is replaced or in how many units, and how firm it is."""
    return [(plain(whole.spoken, 64), "b" if whole.verdict != "retain" else "")]


def _brief(decision: Decision, issue: Issue) -> list[Flowable]:
    """What is asked and what she offers."""
    body: list[Flowable] = [titled("What is asked, and what she offers")]
    rows: list[list[Cell]] = [
        [
            MetMark(asked.met),
            [(asked.label, "")],
            [(asked_words(asked, issue.units), "")],
            [(offered_words(asked, issue.units), "b" if asked.met is False else "")],
            [(_met_words(asked, issue.units), "soft")],
            [(key, PAGE)],
        ]
        for asked, key in decision.requirements
    ]
    cost = decision.cost
    if cost.budget is not None:
        rows.insert(0, budget_row(cost))
    if not rows:
        none = "Neither brief nor conversion asks for anything that can be compared yet."
        return [*body, Paragraph(none, STYLES["point"])]
    rest = issue.page.column - (5 + 34 + 44 + 32 + 10) * mm
    widths = (5 * mm, rest, 34 * mm, 44 * mm, 32 * mm, 10 * mm)
    heads = ("", "what", "asked", "offered", "", "")
    return [*body, rows_table(heads, rows, widths, tight=True)]


def _met_words(asked: Requirement, units: str) -> str:
    if asked.met:
        return "met"
    short = asked.short_by
    if short is not None:
        over = "short by" if asked.least else "over by"
        words = f"{over} {figure_words(short, asked.unit, units)}"
        return words if asked.met is False else f"open: likely {words}"
    return "open: not known" if asked.offered is None else "open: the span holds both"


def _unseen(assessment: Assessment) -> list[Flowable]:
    """What was not seen, and which words that could still turn."""
    results = [result for part in assessment.systems for result in all_results(part)]
    asked = [result for result in results if result.applicable]
    unseen = [result for result in asked if was_not_seen(result)]
    body: list[Flowable] = [titled("What was not seen")]
    if not unseen:
        return [*body, text([("Every check that applies has an answer.", "")], "point")]
    reasons: dict[str, int] = {}
    for result in unseen:
        reason = plain(unseen_reason(result), 30)
        reasons[reason] = reasons.get(reason, 0) + 1
    most = sorted(reasons.items(), key=lambda pair: -pair[1])[:4]
    said = ", ".join(f"{reason} {count}" for reason, count in most)
    lead = f"{len(unseen)} of {counted(len(asked), 'check')}: {said}."
    body.append(text([(lead, ""), ("unseen", PAGE)], "point"))
    turning: dict[tuple[str, str], list[str]] = {}
    for part in assessment.systems:
        whole = part.whole
        others = [word for word in whole.proposal.open_words if word != whole.verdict]
        if whole.decision or whole.firmness == FIRM or not others:
            continue
        could = turning.setdefault((whole.verdict, listed(others, "or")), [])
        could.append(plain(part.system.name, 40))
    for (word, others), names in turning.items():
        said = f"From {word} to {others} could still turn: {'; '.join(names)}."
        body.append(text([(said, "")], "point"))
    return body


def _disputes(count: int) -> list[Flowable]:
    """How many answers are disputed, nothing where none is."""
    if not count:
        return []
    number = counted(count, "answer is", "answers are")
    sentence = (
        f"{number} disputed: answered differently, by two people who had not seen each other's "
        "answer or given apart, on two devices; every answer is kept in the record."
    )
    return [Spacer(1, 4), Paragraph(txt(sentence), STYLES["point"])]


def _visit(assessment: Assessment, issue: Issue) -> list[Flowable]:
    """Who looked, where and when, and what kind of inspection it was."""
    visit = assessment.inspection
    rows = [
        ("client", assessment.brief.get("client", "")),
        ("surveyors", ", ".join(surveyors_of(assessment))),
        ("attending", visit.get("attending", "")),
        ("inspection", visit.get("title", "")),
        ("place and date", ", ".join(filter(None, (visit.get("place"), visit.get("date"))))),
        ("weather", visit.get("weather", "")),
        ("IMO number", assessment.vessel.get("imo", "")),
        ("made", issue.made_at),
        ("revision", issue.revision or "draft"),
        ("digest of the record", issue.digest),
    ]
    # Nothing is left out: an empty line would hide that nobody gave it.
    pairs = [(name, plain(value, 160) or NOT_KNOWN) for name, value in rows]
    made: list[list[Cell]] = [[[(name, "soft")], value] for name, value in pairs]
    width = issue.page.column
    return [
        titled("The inspection"),
        rows_table(("", ""), made, (34 * mm, width - 34 * mm), tight=True),
        Spacer(1, 3),
        Paragraph(KIND, STYLES["point"]),
    ]


def surveyors_of(assessment: Assessment) -> list[str]:
    """Return the people who rated, most answers first.

    Parameters
    ----------
    assessment : Assessment

    Returns
    -------
    list of str
        Empty where no answer says who gave it.
    """
    named = plain(assessment.inspection.get("surveyors", ""), 160)
    if named:
        return [named]
    counts: dict[str, int] = {}
    for part in assessment.systems:
        for result in all_results(part):
            who = plain(result.who, 60)
            if who and result.answer:
                counts[who] = counts.get(who, 0) + 1
    return sorted(counts, key=lambda who: -counts[who])[:4]
