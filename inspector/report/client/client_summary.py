"""The first two pages: what a client decides by, and where in the report each of it is told."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from reportlab.lib.units import mm
from reportlab.platypus import Flowable, KeepInFrame, PageBreak, Paragraph, Spacer, Table

from inspector.assess.model import Assessment, Part, SystemPart
from inspector.assess.registers import Finding
from inspector.conversion.core.chapter import Chapter, Requirement
from inspector.conversion.core.particulars import Rows
from inspector.report.client.all_in_cost import AllIn
from inspector.report.client.cost_bar import CostBar, in_millions
from inspector.report.client.safety_items import SafetyItem
from inspector.report.document import Heading
from inspector.report.issue import Issue, vessel_name
from inspector.report.marks import MetMark, Rule, VerdictSquare
from inspector.report.page_references import ReferringText, referring
from inspector.report.sections.photo_pages import BARE_TABLE, photo_number
from inspector.report.tables import PAGE, TO, Cell, Run, markup, rows_table
from inspector.report.theme import STYLES, plain, txt
from inspector.report.wording import all_results, looked_at, unseen_reason, was_not_seen
from inspector.values.cell_text import NOT_KNOWN, figure, money_text
from inspector.values.quantity import Money
from inspector.values.text import capital, counted, listed
from inspector.values.vocabulary import FIRM, URGENCIES

KIND = (
    "Visual, non-invasive pre-purchase inspection. It is no class or statutory survey, no "
    "valuation and no approval of stability."
)
NO_ADVICE = "The surveyor has written no advice yet: the marks and figures below are computed."
NOT_LOOKED_AT = "not-looked-at"
MOST_TO_SETTLE = 5
# Of these at least so many places are for what the brief asks and does not get.
_FOR_THE_BRIEF = 2
_MOST_SAFETY = 7
_MILLION = 1e6
_GUTTER = 8 * mm
_BRIEF_ORDER = ("speed", "range", "endurance", "persons")


@dataclass(frozen=True)
class Decision:
    """What the report is made of beside the assessment.

    Parameters
    ----------
    chapters : sequence of Chapter
    cost : AllIn
    safety : sequence of SafetyItem
    tables : mapping of str to Rows
        The particulars as typed.
    """

    chapters: Sequence[Chapter] = ()
    cost: AllIn = AllIn()
    safety: Sequence[SafetyItem] = ()
    tables: Mapping[str, Rows] = field(default_factory=dict)

    @property
    def requirements(self) -> list[tuple[Requirement, str]]:
        """What is asked, with the key of its chapter: what the brief itself asks first."""
        found = [
            (asked, f"chapter-{chapter.id}")
            for chapter in self.chapters
            for asked in chapter.requirements
        ]
        return sorted(found, key=lambda pair: _place_of(pair[0]))


def _place_of(asked: Requirement) -> int:
    return _BRIEF_ORDER.index(asked.id) if asked.id in _BRIEF_ORDER else len(_BRIEF_ORDER)


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
        _two_columns(
            [
                *_to_settle(assessment, decision, issue.units),
                *_safety(decision),
                *_cost(decision, _half(issue)),
            ],
            _systems(assessment, issue),
            issue,
        ),
    ]
    second = [
        *_brief(decision, issue),
        _two_columns(_unseen(assessment), _money(decision, issue), issue),
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


def _half(issue: Issue) -> float:
    return (issue.page.column - _GUTTER) / 2


def _two_columns(left: list[Flowable], right: list[Flowable], issue: Issue) -> Table:
    half = _half(issue)
    columns = Table([[left, "", right]], colWidths=(half, _GUTTER, half), hAlign="LEFT")
    columns.setStyle(BARE_TABLE)
    return columns


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
    caption = _text(words, "caption")
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


def _text(runs: Sequence[Run], style: str) -> ReferringText:
    return referring(ReferringText, markup(runs), STYLES[style])


def _advice(assessment: Assessment) -> str:
    """The surveyor's own sentence; none is ever made for him."""
    advice = plain(assessment.inspection.get("advice", ""), 320)
    return txt(advice) if advice else f'<font color="#47606b">{txt(NO_ADVICE)}</font>'


def _titled(title: str, style: str = "block") -> Paragraph:
    return Paragraph(txt(title), STYLES[style])


def _list(items: Sequence[Sequence[Run]], style: str = "point") -> list[Flowable]:
    """Return a numbered list."""
    rows = [
        [Paragraph(f"{number}", STYLES[style]), _text(runs, style)]
        for number, runs in enumerate(items, 1)
    ]
    table = Table(rows, colWidths=(5 * mm, None), hAlign="LEFT")
    table.setStyle([*BARE_TABLE, ("BOTTOMPADDING", (0, 0), (-1, -1), 2.4)])
    return [table]


def settled_first(
    assessment: Assessment, decision: Decision, units: str = "si"
) -> tuple[list[list[Run]], int]:
    """Return what is to be settled before money moves, and how much more there is.

    Parameters
    ----------
    assessment : Assessment
    decision : Decision
    units : str
        "si" or "us": the reader's units.

    Returns
    -------
    tuple of (list of list of Run, int)
        At most MOST_TO_SETTLE: dangers and what must be settled before purchase by their urgency,
        and of what the brief asks what she cannot give.
    """
    numbers = {photo.sha: photo.number for photo in assessment.photos}
    found = [
        _finding_runs(finding, numbers)
        for finding in sorted(assessment.findings, key=lambda one: (_urgency(one), one.number))
        if _urgency(finding) < 2
    ]
    asked = [
        _lacking_runs(requirement, key, units)
        for requirement, key in decision.requirements
        # Where the span holds both, what is likely decides whether it is to be settled.
        if requirement.short_by is not None
    ]
    over = decision.cost.left is not None and decision.cost.left < 0
    if over:
        lacks = _money_words(-decision.cost.left, decision.cost.currency)
        asked.insert(
            0,
            [(f"The total to plan with is {lacks} over the budget.", ""), ("chapter-money", PAGE)],
        )
    kept = min(len(asked), max(_FOR_THE_BRIEF, MOST_TO_SETTLE - len(found)))
    first = [*found[: MOST_TO_SETTLE - kept], *asked[:kept]]
    return first, len(found) + len(asked) - len(first)


def _urgency(finding: Finding) -> int:
    # Appended, so that an urgency of an older list is found as well.
    return (*URGENCIES, finding.urgency).index(finding.urgency)


def _finding_runs(finding: Finding, numbers: dict[str, int]) -> list[Run]:
    tone = "now" if finding.urgency == URGENCIES[0] else ""
    words = plain(finding.title, 110).rstrip(".")
    if finding.unit_name and finding.unit_name.lower() not in words.lower():
        words = f"{words}, {plain(finding.unit_name, 40)}"
    runs: list[Run] = [(f"{words}.", tone), (f"finding-{finding.number}", PAGE)]
    shown = [numbers[sha] for sha in finding.photos if sha in numbers]
    return [*runs, *((photo_number(one), f"{TO}photo-{one}") for one in shown[:1])]


def _lacking_runs(asked: Requirement, key: str, units: str) -> list[Run]:
    words = f"{asked.label}: {_offered(asked, units)}, asked {_asked(asked, units)}."
    return [(words, ""), (key, PAGE)]


def _asked(asked: Requirement, units: str = "si") -> str:
    side = "at least" if asked.least else "at most"
    return f"{side} {_figure(asked.asked, asked.unit, units)}"


def _offered(asked: Requirement, units: str = "si") -> str:
    if asked.offered is None:
        return NOT_KNOWN
    point, low, high = asked.offered.point, asked.offered.low, asked.offered.high
    ends = [_figure(end, asked.unit, units) for end in (low, high)]
    if ends[0] == ends[1]:
        return ends[0]
    span = f"{_figure(low, asked.unit, units, with_unit=False)} to {ends[1]}"
    return span if point is None else f"{_figure(point, asked.unit, units)} ({span})"


def _figure(value: float, unit: str, units: str, *, with_unit: bool = True) -> str:
    """A figure in three digits; a whole number that was typed stays whole."""
    rounded = value if value == int(value) else float(f"{value:.3g}")
    return figure(rounded, unit, units, with_unit=with_unit)


def _to_settle(assessment: Assessment, decision: Decision, units: str) -> list[Flowable]:
    first, more = settled_first(assessment, decision, units)
    body: list[Flowable] = [_titled("Settle before money moves")]
    if not first:
        return [*body, _text([("Nothing of that urgency was found.", "")], "point")]
    body += _list(first)
    if more:
        body.append(_text([(f"and {more} more:", "soft"), ("findings", PAGE)], "point"))
    return body


def _safety(decision: Decision) -> list[Flowable]:
    """What is failed or overdue of safety, whatever anybody wrote of it."""
    body: list[Flowable] = [_titled("Safety: failed or overdue")]
    if not decision.safety:
        return [*body, _text([("Nothing that was seen is failed or overdue.", "")], "point")]
    for item in decision.safety[:_MOST_SAFETY]:
        tone = "" if item.state == "poor" else "b"
        words = f"{item.state}, {item.more}" if item.more else item.state
        runs: list[Run] = [(f"{plain(item.what, 84)}:", ""), (words, tone), (item.key, PAGE)]
        body.append(_text(runs, "point"))
    more = len(decision.safety) - _MOST_SAFETY
    if more > 0:
        body.append(_text([(f"and {more} more:", "soft"), ("safety", PAGE)], "point"))
    return body


def _cost(decision: Decision, width: float) -> list[Flowable]:
    """One bar: what she costs until she reaches the brief, against the budget."""
    cost = decision.cost
    head = "To reach the brief"
    if cost.total is not None and cost.currency:
        scale = "million " if in_millions(cost) else ""
        head = f"{head}, {scale}{plain(cost.currency, 12)}"
    body: list[Flowable] = [_titled(head)]
    if cost.total is None:
        return [*body, _text([(_why_no_total(cost), "")], "point")]
    said = f"Four in five stay below {_money_words(cost.planned, cost.currency)}."
    planned = [_text([(said, "")], "point")] if cost.planned is not None else []
    return [*body, CostBar(cost, width), *planned, *_open(cost)]


def _open(cost: AllIn) -> list[Flowable]:
    """What is not priced: with it the total is so much at least."""
    if not cost.open:
        return []
    named = "; ".join(plain(name, 60) for name in cost.open[:4])
    more = f" and {len(cost.open) - 4} more" if len(cost.open) > 4 else ""
    words = f"So much at least. Not priced: {named}{more}."
    return [_text([(words, "soft"), ("chapter-money", PAGE)], "point")]


def _why_no_total(cost: AllIn) -> str:
    named = [plain(name, 60) for name in cost.open[:3]]
    lacks = f" Not priced: {'; '.join(named)}." if named else ""
    return f"Nothing is priced yet, so there is no total.{lacks}"


def _systems(assessment: Assessment, issue: Issue) -> list[Flowable]:
    """The mark and the word of each system, with its page."""
    body: list[Flowable] = [_titled("System by system")]
    if not assessment.systems:
        none = "No system was recorded in this inspection."
        return [*body, Paragraph(none, STYLES["point"])]
    half = _half(issue)
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
    body: list[Flowable] = [_titled("What is asked, and what she offers")]
    rows: list[list[Cell]] = [
        [
            MetMark(asked.met),
            [(asked.label, "")],
            [(_asked(asked, issue.units), "")],
            [(_offered(asked, issue.units), "b" if asked.met is False else "")],
            [(_met_words(asked, issue.units), "soft")],
            [(key, PAGE)],
        ]
        for asked, key in decision.requirements
    ]
    cost = decision.cost
    if cost.budget is not None:
        rows.insert(0, _budget_row(cost))
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
        words = f"{over} {_figure(short, asked.unit, units)}"
        return words if asked.met is False else f"open: likely {words}"
    return "open: not known" if asked.offered is None else "open: the span holds both"


def _budget_row(cost: AllIn) -> list[Cell]:
    total = cost.total
    budget = _money_words(cost.budget, cost.currency)
    if total is None:
        return [MetMark(None), "Vessel and work", f"at most {budget}", _why_no_total(cost), "", ""]
    low, high = (_money_words(end, cost.currency) for end in (total.low, total.high))
    met = True if total.high <= cost.budget else False if total.low > cost.budget else None
    # A sum that lacks lines may yet pass the budget.
    met = None if met and cost.open else met
    side = "left" if cost.left >= 0 else "over"
    return [
        MetMark(met),
        "Vessel and all of the work",
        f"at most {budget}",
        [(f"{_money_words(total.middle, cost.currency)} ({low} to {high})", "")],
        [
            (
                f"{_money_words(abs(cost.left), cost.currency)} {side}, by the total to plan with",
                "soft",
            )
        ],
        [("chapter-money", PAGE)],
    ]


def _money_words(value: float, currency: str) -> str:
    """A sum in three digits, in millions where it is that much: an estimate claims no more."""
    named = plain(currency, 12)
    if abs(value) >= _MILLION:
        return f"{value / _MILLION:.3g} million {named}".rstrip()
    return money_text(Money.exact(float(f"{value:.3g}"), named))


def _money(decision: Decision, issue: Issue) -> list[Flowable]:
    """The one total, line by line."""
    cost = decision.cost
    rows: list[tuple[str, float | None, str]] = [(name, likely, "") for name, likely in cost.heads]
    rows += [
        ("all of it, as likely as not", cost.total.middle if cost.total else None, "b"),
        ("all of it, four in five stay below", cost.planned, "b"),
        ("budget", cost.budget, ""),
        ("left of the budget, by that", cost.left, "b"),
    ]
    made: list[list[Cell]] = [
        [
            [(name, tone)],
            [(NOT_KNOWN if value is None else _money_words(value, cost.currency), tone)],
        ]
        for name, value, tone in rows
    ]
    half = _half(issue)
    body: list[Flowable] = [_titled("The money, in one sum")]
    body.append(rows_table(("", ""), made, (half - 40 * mm, 40 * mm), right=(1,), tight=True))
    return [*body, *_open(cost)]


def _unseen(assessment: Assessment) -> list[Flowable]:
    """What was not seen, and which words that could still turn."""
    results = [result for part in assessment.systems for result in all_results(part)]
    asked = [result for result in results if result.applicable]
    unseen = [result for result in asked if was_not_seen(result)]
    body: list[Flowable] = [_titled("What was not seen")]
    if not unseen:
        return [*body, _text([("Every check that applies has an answer.", "")], "point")]
    reasons: dict[str, int] = {}
    for result in unseen:
        reason = plain(unseen_reason(result), 30)
        reasons[reason] = reasons.get(reason, 0) + 1
    most = sorted(reasons.items(), key=lambda pair: -pair[1])[:4]
    said = ", ".join(f"{reason} {count}" for reason, count in most)
    lead = f"{len(unseen)} of {counted(len(asked), 'check')}: {said}."
    body.append(_text([(lead, ""), ("unseen", PAGE)], "point"))
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
        body.append(_text([(said, "")], "point"))
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
        _titled("The inspection"),
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
