"""The back of the report: what was not seen, other findings and photos, work lines, photo register, sources, cautions, signatures."""

from reportlab.lib.units import mm
from reportlab.platypus import CondPageBreak, Flowable, KeepTogether, Paragraph, Spacer

from inspector.assess.settings import told
from inspector.assess.shapes import Assessment, SystemPart, WorkLine
from inspector.checklists import Caution
from inspector.conversion.money import two_ways
from inspector.criteria.registry import CRITERIA
from inspector.criteria.source import Source
from inspector.report.front import Issue
from inspector.report.pages import heading
from inspector.report.systems import PhotoFile, all_results, findings_table, photo_pages, photos_of
from inspector.report.tables import Cell, rows_table
from inspector.report.theme import STYLES, plain, txt
from inspector.report.wording import money, tons, unseen_reason, was_not_seen

SIGNALS = ("danger", "warning", "caution", "notice")


def apart() -> CondPageBreak:
    """Between the sections at the back, which are often short and may share a page; a new one each time, since a flowable remembers where it was."""
    return CondPageBreak(80 * mm)


def not_seen(assessment: Assessment, issue: Issue) -> list[Flowable]:
    """Every check without a rating, and why."""
    rows: list[list[Cell]] = [[one.system.name, result.unit_name, result.check.title, [(unseen_reason(result), ""), (result.note, "soft")]]
                              for one in assessment.systems for result in all_results(one) if was_not_seen(result)]
    lead = "Each of these is unknown, not good. It widens the span of the condition; another visit, a docking, a run or the ship's papers may settle it."
    body = [Paragraph(lead, STYLES["body"]), rows_table(("system", "unit", "check", "why"), rows, (28 * mm, 36 * mm, 46 * mm, issue.page.column - 110 * mm))]
    none = [Paragraph("Nothing was left unseen among the checks of this inspection.", STYLES["body"])]
    return [heading("What was not seen", "unseen"), *(body if rows else none), apart()]


def elsewhere(assessment: Assessment, issue: Issue, photo_file: PhotoFile) -> list[Flowable]:
    """Findings and photos that belong to no system of this report; nothing where there are none."""
    ids = {one.system.id for one in assessment.systems}
    findings = [found for found in assessment.findings if found.system not in ids]
    filed = {photo.sha for one in assessment.systems for photo in photos_of(one, assessment)}
    photos = [photo for photo in assessment.photos if photo.sha not in filed]
    if not findings and not photos:
        return []
    numbers = {photo.sha: photo.number for photo in assessment.photos}
    table = [heading("Findings", "other-findings", 1), findings_table(findings, issue, numbers)] if findings else []
    return [heading("Not filed under a system", "other"), *table, *photo_pages(photos, issue, photo_file, "other"), apart()]


def work_lines(assessment: Assessment, issue: Issue) -> list[Flowable]:
    """What the yard would do, for money and weight, with a sum per system and over all."""
    systems = [one for one in assessment.systems if one.lines]
    if not systems:
        return [heading("Work lines", "work"), Paragraph("No work lines were recorded.", STYLES["body"]), apart()]
    aside = {line.id for one in systems for both in two_ways(one) for line in both.aside}
    done = {one.system.id: [line for line in one.lines if line.id not in aside] for one in systems}
    rows = [row for one in systems for row in (*(_line(one, line, issue, line.id in aside) for line in one.lines),
                                               _sum(f"Sum, {one.system.name}", done[one.system.id], issue))]
    rows.append(_sum("Sum of all", [line for lines in done.values() for line in lines], issue))
    wide = issue.page.column - (30 + 20 + 4 * 19) * mm
    table = rows_table(("system, unit", "act", "what", "low", "likely", "high", "weight"), rows, (30 * mm, 20 * mm, wide, *(19 * mm,) * 4), right=(3, 4, 5, 6))
    inside = f"Low, likely and high in {txt(assessment.currency, 40)}" if assessment.currency else "Low, likely and high; no currency was named for them"
    lead = (f"{inside}. Sums of low and of high are bounds, not likely ends. "
            "Weight: plus is added, minus is taken off.")
    return [heading("Work lines", "work"), Paragraph(lead, STYLES["body"]), table, apart()]


def _line(one: SystemPart, line: WorkLine, issue: Issue, aside: bool) -> list[Cell]:
    names = {unit.id: unit.name for unit in one.units}
    where = "all units" if line.unit in ("all", "") else names.get(line.unit, line.unit)
    amounts: list[Cell] = [money(line.low), money(line.likely), money(line.high), tons(line.weight, issue.units)]
    return [[(f"{one.system.name}:", "soft"), (where, "")], line.act, [(line.text, ""), ("in no sum: the other way counts" if aside else "", "i")], *amounts]


def _sum(title: str, lines: tuple[WorkLine, ...] | list[WorkLine], issue: Issue) -> list[Cell]:
    def total(name: str) -> float | None:
        known = [value for line in lines if (value := getattr(line, name)) is not None]
        return sum(known) if known else None

    amounts: list[Cell] = [[(money(total(name)), "b")] for name in ("low", "likely", "high")]
    blank = sum(line.likely is None for line in lines)
    return [[(title, "b")], "", [(f"{blank} without a likely amount" if blank else "", "soft")], *amounts, [(tons(total("weight"), issue.units), "b")]]


def rules_used(assessment: Assessment, issue: Issue) -> list[Flowable]:
    """The settings of the verdict rules, limits that the surveyor set himself, how far two surveyors agree, and what could not be used of these."""
    wide = issue.page.column
    rows: list[list[Cell]] = [[label, value, [("default" if is_default else "set for this inspection", "soft" if is_default else "b")]]
                              for label, value, is_default in told(assessment.settings)]
    body: list[Flowable] = [rows_table(("setting", "used", ""), rows, (wide * 0.45, wide * 0.25, wide * 0.30))]
    if assessment.profiles:
        own = [[CRITERIA[name].title, profile.told(), str(profile.source)] for name, profile in sorted(assessment.profiles.items()) if name in CRITERIA]
        body += [Paragraph("Limits set by the surveyor", STYLES["h3"]), rows_table(("criterion", "limits", "taken from"), own, (wide / 3,) * 3)]
    body += [Paragraph(txt(one.sentence), STYLES["body"]) for one in assessment.agreements]
    body += [Paragraph(f"<b>{txt(fault)}</b>", STYLES["body"]) for fault in assessment.faults]
    lead = "The rules stand with each verdict; these are the levels they used."
    return [heading("Rules and settings", "rules"), Paragraph(lead, STYLES["body"]), *body, apart()]


def photo_register(assessment: Assessment, issue: Issue) -> list[Flowable]:
    """Every photo with the first twelve signs of its digest, by which the original can be proved."""
    if not assessment.photos:
        return [heading("Photo register", "photos"), Paragraph("No photos were taken.", STYLES["body"]), apart()]
    rows = [[f"P-{one.number:03d}", one.caption or "–", one.place or one.on or "not filed", one.taken[:16].replace("T", " ") or "–", one.sha[:12]]
            for one in assessment.photos]
    wide = (issue.page.column - (13 + 28 + 28) * mm) / 2
    lead = "The digest is SHA-256 over the original file. Pictures in this report are smaller copies."
    return [heading("Photo register", "photos"), Paragraph(lead, STYLES["body"]),
            rows_table(("no.", "caption", "place", "taken", "digest"), rows, (13 * mm, wide, wide, 28 * mm, 28 * mm)), apart()]


def cites(assessment: Assessment) -> dict[tuple[str, Source], int]:
    """Each criterion with the source it judged by -> its number in the list of sources."""
    used = {(result.judgement.criterion, result.judgement.source) for one in assessment.systems for result in all_results(one) if result.judgement}
    return {entry: number for number, entry in enumerate(sorted(used, key=lambda pair: (pair[0], str(pair[1]))), 1)}


def sources(assessment: Assessment, issue: Issue) -> list[Flowable]:
    """Each criterion that judged a reading: title, edition, clause, and how well it is known here."""
    if not issue.cites:
        return [heading("Sources", "sources"), Paragraph("No reading was judged by a criterion.", STYLES["body"]), apart()]
    rows = [[f"S{number}", CRITERIA[name].title if name in CRITERIA else name, f"{at.title}, {at.edition}", at.clause, at.mark]
            for (name, at), number in issue.cites.items()]
    wide = (issue.page.column - (10 + 22) * mm) / 3
    lead = ("Mark: seen, the text or an extract of it was read; memory, recalled and to be verified before use; common practice, guidance and no rule; "
            "cited by the surveyor, his own limit. Only what was seen or is cited may fail a system.")
    return [heading("Sources", "sources"), Paragraph(lead, STYLES["body"]),
            rows_table(("no.", "criterion", "title, edition", "clause", "mark"), rows, (10 * mm, wide, wide, wide, 22 * mm)), apart()]


def cautions_section(assessment: Assessment, issue: Issue, cautions: dict[str, Caution]) -> list[Flowable]:
    """The cautions of the systems in this report, the gravest first, for whoever goes aboard next."""
    named = {name for one in assessment.systems for name in (*one.system.cautions, *(check.caution for check in one.system.checks))}
    used = sorted((cautions[name] for name in named if name in cautions), key=lambda one: (_gravity(one), one.id))
    rows = [[[(one.signal.upper(), "now" if one.signal == "danger" else "b")], [(one.hurts, ""), (one.instead, "b"), (one.decides, "soft")]] for one in used]
    lead = ("For whoever goes aboard with this report in hand. Nothing here says that an entry, a live panel or a vessel is fit to be approached; "
            "permit, licence and law decide.")
    table = [rows_table(("signal", "what hurts, what to do instead, who decides"), rows, (24 * mm, issue.page.column - 24 * mm))] if rows else []
    return [heading("Cautions", "cautions"), Paragraph(lead, STYLES["body"]), *table, apart()]


def _gravity(one: Caution) -> int:
    return SIGNALS.index(one.signal) if one.signal in SIGNALS else len(SIGNALS)


def signatures(assessment: Assessment, issue: Issue) -> list[Flowable]:
    """Room to sign, beside what is signed: revision and digest."""
    width = issue.page.column
    present = plain(assessment.inspection.get("attending", ""), 400)
    lead = f"Signed for {txt(issue.named)} of the record with digest {txt(issue.digest)}, made {txt(issue.made_at)}. A change of the record is a new revision."
    lines = rows_table(("name", "standing", "date", "signature"), [[Spacer(1, 11 * mm), "", "", ""] for _ in range(3)],
                       (width * 0.28, width * 0.24, width * 0.16, width * 0.32))
    who = [Paragraph(f"Surveyors and attending: {txt(present)}", STYLES["body"])] if present else []
    return [KeepTogether([heading("Signatures", "signatures"), Paragraph(lead, STYLES["body"]), *who, lines])]
