"""The comparison as a PDF: the ranking, the brief's requirements, and the systems in rows."""

from pathlib import Path

from reportlab.lib.units import mm
from reportlab.platypus import Flowable, Paragraph, Spacer

from inspector.assess.model import Part
from inspector.conversion.comparison import presentation
from inspector.conversion.comparison.calculation import Comparison
from inspector.conversion.comparison.presentation import Entry
from inspector.conversion.comparison.scores import ASPECTS
from inspector.conversion.comparison.side_by_side import SystemRow, by_system
from inspector.report.cell_runs import Cell
from inspector.report.document import Report, heading, whole_file
from inspector.report.drawn.drawings import Drawn
from inspector.report.figure_text import printed
from inspector.report.issue import Issue
from inspector.report.marks import SpanBar
from inspector.report.tables import rows_table
from inspector.report.theme import STYLES, page_of, plain, txt, use_fonts
from inspector.values.cell_text import DASH

TITLE = "Candidates side by side"
LIMITS = (
    "Scores run on fixed ends and depend on what was seen on visual, non-invasive visits. They "
    "order candidates for a discussion; they do not choose one. No class or statutory survey, no "
    "valuation, no stability approval; local codes and licensed persons decide."
)
LABELS = 40 * mm
SYSTEMS = 34 * mm
WIDEST_BAR = 42 * mm


def build(
    found: Comparison, out: Path, *, paper: str = "a4", units: str = "si", made_at: str
) -> None:
    """Write the comparison; the file is replaced only by a whole one.

    Parameters
    ----------
    found : Comparison
    out : Path
    paper : str
        "a4" or "letter".
    units : str
        "si" or "us": the reader's units.
    made_at : str
        Date or time that is printed on every page.

    Raises
    ------
    UnknownPaper
        There is no such paper.
    """
    page = page_of(paper)
    use_fonts()
    issue = Issue(page, "us" if units == "us" else "si", plain(made_at, 60), "", "")
    with whole_file(out) as part:
        report = Report(
            part,
            page,
            head=TITLE,
            mark=plain(made_at, 40),
            title=TITLE,
            author="",
            subject="Comparison",
            creator="inspector",
        )
        report.typeset(_story(found, issue))


def _story(found: Comparison, issue: Issue) -> list[Flowable]:
    """Return the whole report in the order in which it is printed."""
    names = ", ".join(candidate.name for candidate in found.candidates) or "none"
    return [
        Paragraph(TITLE, STYLES["title"]),
        Paragraph(txt(names), STYLES["lead"]),
        *(_bold(warning) for warning in found.warnings),
        *_ranking(found, issue),
        *_brief(found, issue),
        *_systems(found, issue),
        heading("Limits", "limits"),
        Paragraph(txt(LIMITS), STYLES["body"]),
    ]


def _bold(text: str) -> Paragraph:
    return Paragraph(f"<b>{txt(text)}</b>", STYLES["body"])


def _ranking(found: Comparison, issue: Issue) -> list[Flowable]:
    """Return the table of ranks and scores, with what the order depends on."""
    ranking, wide = found.ranking, issue.page.column
    rows: list[list[Cell]] = [
        [
            "" if place.rank is None else str(place.rank),
            place.name,
            printed(presentation.score(place)),
            printed(presentation.reach(place)),
            printed(presentation.known(place)),
        ]
        for place in ranking.places
    ]
    widths = (12 * mm, wide - 84 * mm, 20 * mm, 30 * mm, 22 * mm)
    bars = presentation.ranking_bars(ranking)
    sentences = [presentation.weights_sentence(ranking), *presentation.swap_sentences(ranking)]
    weights, *swaps = (Paragraph(txt(printed(cell)), STYLES["body"]) for cell in sentences)
    return [
        heading("Ranking", "ranking"),
        rows_table(
            ("", "candidate", "assured", "may reach", "known"), rows, widths, right=(2, 3, 4)
        ),
        *((Drawn(bars, wide, issue.units),) if bars.bars else ()),
        weights,
        *(
            Paragraph(txt(f"{aspect}: {meaning}."), STYLES["small"])
            for aspect, meaning in ASPECTS.items()
        ),
        *(_bold(printed(remark)) for remark in presentation.remarks(ranking)),
        *swaps,
    ]


def _brief(found: Comparison, issue: Issue) -> list[Flowable]:
    """Return what the brief asks, and what each candidate offers for it."""
    # With no candidate the table is empty, and must not divide by nothing.
    wide = (issue.page.column - LABELS) / max(len(found.candidates), 1)
    rows = [
        [row.label, *(_entry(entry, issue.units) for entry in row.entries)]
        for row in presentation.brief_rows(found.candidates)
    ]
    head = ("asked", *(candidate.name for candidate in found.candidates))
    widths = (LABELS, *[wide] * len(found.candidates))
    return [heading("Against the brief", "brief"), rows_table(head, rows, widths)]


def _entry(entry: Entry | None, units: str) -> Cell:
    """Return an entry of the comparison, its detail smaller."""
    # The brief does not ask it, or nobody could calculate it for this candidate.
    if entry is None:
        return DASH
    return [(printed(entry.main, units), "b"), (printed(entry.detail, units), "soft")]


def _systems(found: Comparison, issue: Issue) -> list[Flowable]:
    """Return the systems, each with a bar and a verdict for every candidate."""
    wide = (issue.page.column - SYSTEMS) / max(len(found.candidates), 1)
    rows: list[list[Cell]] = []
    for row in by_system(found.candidates):
        rows.append([[(row.name, "b")], *_bars(row, wide)])
        # Bar and verdict in two rows, since three candidates leave no room for them side by side.
        rows.append(["", *(_word(part) for part in row.parts)])
    head = ("", *(candidate.name for candidate in found.candidates))
    widths = (SYSTEMS, *[wide] * len(found.candidates))
    return [
        heading("System by system", "systems"),
        rows_table(head, rows, widths),
        Spacer(1, 4),
    ]


def _bars(row: SystemRow, wide: float) -> list[Cell]:
    """Return the condition of one system as a bar for each candidate."""
    # On a wide page the bars of two candidates would cross half of it, and say no more.
    width = min(wide - 4 * mm, WIDEST_BAR)
    return [SpanBar(part.condition, width) if part else "not counted" for part in row.parts]


def _word(part: Part | None) -> Cell:
    """Return a candidate's verdict of a system, with how much of it was seen."""
    if part is None:
        return ""
    seen = part.proposal.counts or presentation.unseen(part)
    return [(part.spoken, "b"), (seen, "soft")]
