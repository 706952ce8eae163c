"""The comparison as a PDF: ranking with its stability, the brief's requirements, systems side by side."""

from pathlib import Path

from reportlab.lib.units import mm
from reportlab.platypus import Flowable, Paragraph, Spacer

from inspector.conversion.chapters import Requirement
from inspector.conversion.compare import ASPECTS, Comparison, by_requirement, by_system
from inspector.report.conversion import amount
from inspector.report.figures import SpanBar
from inspector.report.front import Issue
from inspector.report.pages import Report, heading, whole_file
from inspector.report.tables import Cell, rows_table
from inspector.report.theme import STYLES, page_of, plain, txt, use_fonts
from inspector.words import grouped

LIMITS = ("Scores run on fixed ends and rest on what was seen on visual, non-invasive visits. They order candidates for a talk; they do not choose one. "
          "No class or statutory survey, no valuation, no stability approval; local codes and licensed persons decide.")


def build(found: Comparison, out: Path, *, paper: str = "a4", units: str = "si", made_at: str) -> None:
    """Write the comparison; `out` is replaced only by a whole file. Raises UnknownPaper."""
    page = page_of(paper)
    use_fonts()
    issue = Issue(page, "us" if units == "us" else "si", plain(made_at, 60), "", "")
    with whole_file(out) as part:
        report = Report(part, page, head="Candidates side by side", mark=plain(made_at, 40), title="Candidates side by side", author="", subject="Comparison",
                        creator="inspector")
        report.typeset(_story(found, issue))


def _story(found: Comparison, issue: Issue) -> list[Flowable]:
    names = ", ".join(one.name for one in found.candidates) or "none"
    body: list[Flowable] = [Paragraph("Candidates side by side", STYLES["title"]), Paragraph(txt(names), STYLES["lead"])]
    body += [Paragraph(f"<b>{txt(warning)}</b>", STYLES["body"]) for warning in found.warnings]
    return [*body, *_ranking(found, issue), *_brief(found, issue), *_systems(found, issue), heading("Limits", "limits"), Paragraph(txt(LIMITS), STYLES["body"])]


def _ranking(found: Comparison, issue: Issue) -> list[Flowable]:
    wide = issue.page.column
    rows: list[list[Cell]] = [[str(place.rank), place.name, f"{place.total.point:.1f}", f"{place.total.low:.0f} to {place.total.high:.0f}"]
                              for place in found.ranking.places]
    body: list[Flowable] = [heading("Ranking", "ranking"), rows_table(("", "candidate", "score", "span"), rows, (12 * mm, wide - 62 * mm, 20 * mm, 30 * mm),
                                                                      right=(2, 3))]
    weights = "; ".join(f"{aspect} {share * 100:.0f} %" for aspect, share in found.ranking.weights.items())
    body.append(Paragraph(txt(f"Weights: {weights}."), STYLES["body"]))
    body += [Paragraph(txt(f"{aspect}: {told}."), STYLES["small"]) for aspect, told in ASPECTS.items()]
    if found.ranking.dominant:
        body.append(Paragraph(txt(f"{found.ranking.dominant} is no worse in any aspect: it leads whatever the weights."), STYLES["body"]))
    body += [Paragraph(f"<b>{txt(f'{one} and {other} are not separable with what was seen.')}</b>", STYLES["body"]) for one, other in found.ranking.open_pairs]
    body += [Paragraph(txt(f"{swap.first} and {swap.second} change places when {swap.aspect} weighs {swap.weight * 100:.1f} % (now {swap.now * 100:.1f} %)."),
                       STYLES["body"]) for swap in found.ranking.swaps[:6]]
    return body


def _brief(found: Comparison, issue: Issue) -> list[Flowable]:
    wide = (issue.page.column - 40 * mm) / max(len(found.candidates), 1)
    rows: list[list[Cell]] = [[label, *(_requirement(cell, issue.units) for cell in cells)] for label, cells in by_requirement(found.candidates)]
    rows.append(["Cost to reach the brief", *(_cost(one) for one in found.candidates)])
    rows.append(["Days to the next survey", *([(str(one.next_survey[2]), "b"), (one.next_survey[0], "soft")] if one.next_survey else "not known"
                                              for one in found.candidates)])
    head = ("asked", *(one.name for one in found.candidates))
    return [heading("Against the brief", "brief"), rows_table(head, rows, (40 * mm, *[wide] * len(found.candidates)))]


def _requirement(one: Requirement | None, units: str) -> Cell:
    if one is None:
        return "–"
    word = {True: "met", False: "not met", None: "not known"}[one.met]
    offered = ""
    if one.offered is not None:
        best = one.offered.point if one.offered.point is not None else one.offered.low
        offered = f"{amount(best, one.unit, units)} of {amount(one.asked, one.unit, units)} asked"
    short = f", short by {amount(one.short_by, one.unit, units)}" if one.short_by else ""
    return [(word, "b"), (offered + short, "soft")]


def _cost(one) -> Cell:
    if one.cost is None:
        return "not known"
    low, likely, high = (grouped(value) for value in (one.cost.low, one.cost.point, one.cost.high))
    missing = f"; {one.unpriced} {'line' if one.unpriced == 1 else 'lines'} without a price" if one.unpriced else ""
    return [(f"{likely} {one.currency}", "b"), (f"{low} to {high}{missing}", "soft")]


def _systems(found: Comparison, issue: Issue) -> list[Flowable]:
    wide = (issue.page.column - 34 * mm) / max(len(found.candidates), 1)
    body: list[Flowable] = [heading("System by system", "systems")]
    rows: list[list[Cell]] = []
    for row in by_system(found.candidates):
        rows.append([[(row.name, "b")], *(SpanBar(part.condition, min(wide - 4 * mm, 42 * mm), one.assessment.settings.coverage) if part else "not counted"
                                          for one, part in zip(found.candidates, row.parts, strict=True))])
        rows.append(["", *([(part.verdict, "b"), (f"{part.condition.applicable - part.condition.seen} of {part.condition.applicable} not seen", "soft")]
                           if part else "" for part in row.parts)])
    return [*body, rows_table(("", *(one.name for one in found.candidates)), rows, (34 * mm, *[wide] * len(found.candidates))), Spacer(1, 4)]
