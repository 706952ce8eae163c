"""The section of one system: verdict, units, readings against limits, ratings with notes, findings, photos."""

from collections.abc import Callable, Sequence
from pathlib import Path

from reportlab.lib.units import mm
from reportlab.platypus import CondPageBreak, Flowable, PageBreak, Paragraph, Spacer, Table

from inspector.assess.shapes import Assessment, CheckResult, Finding, Part, Photo, SystemPart
from inspector.report.figures import LevelMark, Rule, SideNote, SpanBar, VerdictSquare, picture
from inspector.report.front import NOT_LOOKED_AT, Issue
from inspector.report.pages import heading
from inspector.report.tables import Cell, Run, rows_table
from inspector.report.theme import PLAIN, STYLES, plain, txt
from inspector.report.wording import (
    condition_text,
    coverage_text,
    decided_words,
    disputed_text,
    fact_rows,
    gate_text,
    limit_text,
    looked_at,
    rating_runs,
    readings_text,
    unseen_reason,
    was_not_seen,
)
from inspector.words import capital

PhotoFile = Callable[[str], Path | None]
_MARK = 5 * mm


def system_section(one: SystemPart, assessment: Assessment, issue: Issue, photo_file: PhotoFile) -> list[Flowable]:
    """Everything on one system, beginning on a page of its own; in the short report it follows the one before."""
    key = f"system-{one.system.id}"
    findings = [found for found in assessment.findings if found.system == one.system.id]
    numbers = {photo.sha: photo.number for photo in assessment.photos}
    return [heading(one.system.name, key), Paragraph(txt(one.system.about), STYLES["body"]), *_verdict(one, assessment, issue),
            *_units(one, assessment, issue, key),
            *(_measured(one, issue, key) + _ratings(one, issue, key, numbers) if issue.whole else []), *_findings(findings, issue, key, numbers),
            *photo_pages(photos_of(one, assessment), issue, photo_file, key), PageBreak() if issue.whole else CondPageBreak(80 * mm)]


def not_looked_at(assessment: Assessment, issue: Issue) -> list[Flowable]:
    """The systems of which nothing was recorded, one line each; nothing where there are none."""
    left = [one for one in assessment.systems if not looked_at(one, assessment)]
    if not left:
        return []
    rows: list[list[Cell]] = []
    for one in left:
        whole = one.whole
        would = f"Would decide it: {'; '.join(whole.proposal.deciding)}." if whole.proposal.deciding else ""
        rows.append([one.system.name, [(capital(whole.verdict), "b")], coverage_text(whole.condition), [(would, "soft")]])
    widths = (40 * mm, 22 * mm, 36 * mm, issue.page.column - 98 * mm)
    lead = "Nothing was recorded of these: their condition is unknown, not good. The verdict is the rule's word for that."
    return [heading("Not looked at", NOT_LOOKED_AT), Paragraph(lead, STYLES["body"]), rows_table(("system", "verdict", "seen", ""), rows, widths),
            PageBreak() if issue.whole else CondPageBreak(80 * mm)]


def _verdict(one: SystemPart, assessment: Assessment, issue: Issue) -> list[Flowable]:
    """The band with square and word, the proposal beside the decision, what would change it, and the facts it rests on."""
    whole, width, least = one.whole, issue.page.column, assessment.settings.coverage
    says = f"Surveyor's decision: {whole.decision}." if whole.decision else "Proposed by rule; the surveyor has not decided."
    band = Table([[VerdictSquare(whole.verdict, 13 * mm), [Paragraph(txt(whole.verdict.capitalize()), STYLES["verdict"]), Spacer(1, 3),
                  Paragraph(txt(says), STYLES["body"]), SpanBar(whole.condition, 70 * mm, least)]]], colWidths=(18 * mm, width - 18 * mm), hAlign="LEFT")
    band.setStyle([("FONTNAME", (0, 0), (-1, -1), PLAIN), ("LEFTPADDING", (0, 0), (-1, -1), 0), ("RIGHTPADDING", (0, 0), (-1, -1), 0),
                   ("VALIGN", (0, 0), (-1, -1), "TOP"), ("TOPPADDING", (0, 0), (-1, -1), 6)])
    told = [Paragraph(f"{txt(condition_text(whole.condition, least))} {txt(coverage_text(whole.condition))}{_capped(whole)}", STYLES["body"])]
    if whole.decision:
        told.append(Paragraph(f"<b>The surveyor:</b> {txt(decided_words(whole))}", STYLES["body"]))
    facts = fact_rows(whole, issue.units, assessment.currency)
    rests = [rows_table(("", ""), [[[(name, "soft")], value] for name, value in facts], (40 * mm, width - 40 * mm))] if facts else []
    return [Rule(width, 1.6, 4), SideNote(_side(one), issue.page), band, *told, *_proposal(whole), Rule(width, 0.5, 2, 4), *rests]


def _capped(whole: Part) -> str:
    return f" Held down by {txt(', '.join(whole.condition.capped_by))}." if whole.condition.capped_by else ""


def _proposal(part: Part) -> list[Flowable]:
    """The rule that fired, its reasons, what would flip it, and for undecided what would decide it."""
    made = part.proposal
    word = f"<b>Proposed: {txt(made.verdict)}.</b> " if part.decision else ""
    told = [Paragraph(f"{word}{txt(made.rule_text)}", STYLES["body"]), *(Paragraph(txt(reason), STYLES["body"]) for reason in made.reasons)]
    if made.changes:
        told.append(Paragraph("Would change it: " + "; ".join(f"{txt(one.fact)} → {txt(one.verdict)}" for one in made.changes) + ".", STYLES["small"]))
    if made.deciding:
        told.append(Paragraph("Would decide it: " + txt("; ".join(made.deciding)) + ".", STYLES["small"]))
    return told


def _side(one: SystemPart) -> str:
    whole = one.whole.condition
    reasons = sorted({unseen_reason(result) for result in all_results(one) if was_not_seen(result)})
    note = f"{whole.seen} of {whole.applicable} {'check' if whole.applicable == 1 else 'checks'} seen."
    return txt(f"{note} Rest: {', '.join(plain(reason, 30) for reason in reasons)}." if reasons else note, 180)


def all_results(one: SystemPart) -> list[CheckResult]:
    """The results of every unit; those of the whole where it has no units of its own."""
    return [result for unit in one.units for result in unit.results] or list(one.whole.results)


def _units(one: SystemPart, assessment: Assessment, issue: Issue, key: str) -> list[Flowable]:
    rows = []
    for unit in one.units:
        differs: list[Run] = [(f"proposed: {unit.proposal.verdict}", "i")] if unit.decision and unit.decision != unit.proposal.verdict else []
        spoken: list[Run] = [(decided_words(unit), "")] if unit.decision or len(one.units) > 1 else []
        bar = SpanBar(unit.condition, 34 * mm, assessment.settings.coverage)
        rows.append([unit.name, bar, f"{unit.condition.seen} of {unit.condition.applicable}", VerdictSquare(unit.verdict),
                     [(unit.verdict, "b"), *differs, *spoken]])
    rest = issue.page.column - (36 + 38 + 16) * mm - _MARK - 2 * mm
    table = rows_table(("unit", "condition, 0 to 100", "seen", "", "verdict"), rows, (36 * mm, 38 * mm, 16 * mm, _MARK + 2 * mm, rest))
    return [heading("Units", f"{key}-units", 1), table] if rows else []


def _measured(one: SystemPart, issue: Issue, key: str) -> list[Flowable]:
    """Every reading that a criterion judges beside its limit, with the judgement and the number of its source."""
    rows = [_measure_row(result, issue) for result in all_results(one) if _is_measured(result)]
    top = heading("What was measured", f"{key}-measured", 1)
    if not rows:
        return [top, Paragraph("No readings were taken that a criterion judges; others stand with the ratings.", STYLES["body"])]
    rest = issue.page.column - (20 + 46 + 17) * mm - _MARK
    lead = Paragraph("The last column names the source by its number in the list of sources.", STYLES["small"])
    return [top, lead, rows_table(("unit, check, reading", "limit", "", "judged", "source"), rows, (rest, 20 * mm, _MARK, 46 * mm, 17 * mm), right=(1,))]


def _is_measured(result: CheckResult) -> bool:
    return bool(result.readings and (result.judgement or result.cannot_judge))


def _measure_row(result: CheckResult, issue: Issue) -> list[Cell]:
    judged = result.judgement
    name: list[Run] = [(f"{result.unit_name}:", "soft"), (f"{result.check.title}:", ""), (readings_text(result, issue.units), "b")]
    said: list[Run] = [(result.cannot_judge, "soft")]
    by: list[Run] = []
    if judged:
        said = [(f"{judged.rating}," if judged.rating else "", "now" if judged.rating in ("poor", "failed") else ""), (judged.band, "")]
        number = issue.cites.get((judged.criterion, judged.source))
        by = [(f"S{number}" if number else str(judged.source), ""), (judged.source.mark, "i")]
    if result.overruled:
        said.append((f"(surveyor: {result.answer})", "i"))
    mark = LevelMark(judged.rating) if judged and judged.rating else ""
    return [name, limit_text(result, issue.units), mark, said, by]


def _ratings(one: SystemPart, issue: Issue, key: str, numbers: dict[str, int]) -> list[Flowable]:
    """Each unit's checks with rating and note; checks of which only the rating is known are listed by it."""
    parts: list[Flowable] = [heading("Ratings and notes", f"{key}-ratings", 1)]
    for unit in one.units or (one.whole,):
        rows = [_rating_row(result, issue, numbers) for result in unit.results if not _is_bare(result)]
        parts.append(Paragraph(txt(unit.name, 120), STYLES["h3"]))
        rest = issue.page.column - (50 + 36) * mm - _MARK
        parts += [rows_table(("check", "", "rating", "note"), rows, (50 * mm, _MARK, 36 * mm, rest))] if rows else []
        parts += [Paragraph(f"<b>{txt(capital(reason))}</b>: {txt('; '.join(titles))}.", STYLES["cell"])
                  for reason, titles in _bare(unit.results).items()]
        parts += [] if unit.results else [Paragraph("No checks.", STYLES["body"])]
    return parts


def _is_bare(result: CheckResult) -> bool:
    """Nothing is to be told of it but its rating, or why there is none; a poor or failed one always has a row of its own."""
    told = result.note or result.photos or result.disputed or result.gate or result.overruled or (result.readings and not _is_measured(result))
    return result.rating not in ("poor", "failed") and not told


def _bare(results: Sequence[CheckResult]) -> dict[str, list[str]]:
    """Rating, or why there is none -> titles of the checks of which nothing else is to be told."""
    found: dict[str, list[str]] = {}
    for result in results:
        if _is_bare(result):
            why = result.rating or ("not fitted" if not result.applicable else f"not seen, {unseen_reason(result)}" if result.answer else unseen_reason(result))
            found.setdefault(why, []).append(result.check.title)
    return found


def _rating_row(result: CheckResult, issue: Issue, numbers: dict[str, int]) -> list[Cell]:
    mark = LevelMark(result.rating) if result.rating else ""
    return [result.check.title, mark, rating_runs(result), _note(result, issue, numbers)]


def _note(result: CheckResult, issue: Issue, numbers: dict[str, int]) -> list[Run]:
    read = "" if _is_measured(result) else readings_text(result, issue.units, labelled=True)
    shown = ", ".join(f"P-{numbers[sha]:03d}" for sha in result.photos if sha in numbers)
    told = (gate_text(result), disputed_text(result), result.note, read and f"{read}.")
    says = [(one, "") for one in told if one]
    return [*says, (f"See {shown}." if shown else "", "soft")]


def _findings(findings: list[Finding], issue: Issue, key: str, numbers: dict[str, int]) -> list[Flowable]:
    top = heading("Findings", f"{key}-findings", 1)
    if not findings:
        return [top, Paragraph("No findings were recorded for this system.", STYLES["body"])]
    return [top, findings_table(findings, issue, numbers)]


def findings_table(findings: list[Finding], issue: Issue, numbers: dict[str, int]) -> Flowable:
    """Number, fact and action, photos, urgency."""
    rows = []
    for one in findings:
        shown = ", ".join(f"P-{numbers[sha]:03d}" for sha in one.photos if sha in numbers)
        told: list[Run] = [(_sentence(one.title), "b"), (_sentence(one.text), ""), (_sentence(one.action), "i"),
                           (_sentence(one.where), "soft"), (f"See {shown}." if shown else "No photo.", "soft")]
        rows.append([str(one.number), told, [(one.urgency or "no urgency given", "now" if one.urgency == "danger now" else "")]])
    return rows_table(("no.", "finding, and what to do", "urgency"), rows, (9 * mm, issue.page.column - 39 * mm, 30 * mm))


def _sentence(text: str) -> str:
    words = plain(text)
    return f"{words}." if words and words[-1] not in ".!?…" else words


def photos_of(one: SystemPart, assessment: Assessment) -> list[Photo]:
    """The photos of a system's sheets, units and findings, in the order of the register."""
    shas = {sha for result in all_results(one) for sha in result.photos}
    shas |= {sha for found in assessment.findings if found.system == one.system.id for sha in found.photos}
    return [photo for photo in assessment.photos if photo.sha in shas or photo.on.split("/")[1:2] == [one.system.id]]


def photo_pages(photos: list[Photo], issue: Issue, photo_file: PhotoFile, key: str, title: str = "Photos") -> list[Flowable]:
    """Photos two abreast with captions; nothing where there are none."""
    if not photos:
        return []
    gap = 4 * mm
    width = (issue.page.column - gap) / 2
    parts: list[Flowable] = [heading(title, f"{key}-photos", 1)]
    for first in range(0, len(photos), 2):
        pair = [[picture(photo_file(photo.sha), width, 62 * mm), Spacer(1, 3), _caption(photo)] for photo in photos[first : first + 2]]
        row = Table([[pair[0], "", pair[1] if len(pair) > 1 else ""]], colWidths=(width, gap, width), hAlign="LEFT", spaceBefore=4, spaceAfter=6)
        row.setStyle([("FONTNAME", (0, 0), (-1, -1), PLAIN), ("VALIGN", (0, 0), (-1, -1), "TOP"), *((f"{side}PADDING", (0, 0), (-1, -1), 0)
                      for side in ("LEFT", "RIGHT", "TOP", "BOTTOM"))])
        parts.append(row)
    return parts


def _caption(photo: Photo) -> Paragraph:
    text = plain(photo.caption, 240) or plain(photo.place, 120) or "without a caption"
    return Paragraph(f"<b>P-{photo.number:03d}</b> {txt(text)}. {txt(photo.taken[:16].replace('T', ' '))}", STYLES["caption"])
