"""Walk sheets to print: a stop after another, a line a look, with boxes to tick and room to write.

For spaces into which no device may be taken, and for who writes better than he types.
"""

from collections.abc import Mapping, Sequence
from itertools import groupby
from pathlib import Path

from reportlab.lib.units import mm
from reportlab.platypus import Flowable, Paragraph

from inspector.assess.model import Assessment
from inspector.assess.round.paper_stops import PaperLook, PaperStop
from inspector.checklists.model import Caution
from inspector.report.cell_runs import Cell
from inspector.report.document import Report, heading, section_gap, whole_file
from inspector.report.tables import rows_table
from inspector.report.theme import INK, STYLES, Page, page_of, plain, txt, use_fonts
from inspector.values.cell_text import reader_unit
from inspector.values.field import Field
from inspector.values.vocabulary import NOT_FITTED, RATINGS

TITLE = "Walk sheets"
_EDGE = 14 * mm
_BOX = 3.4 * mm
_BOX_WIDTH = 11 * mm
_HEAD = ("no.", "unit, check", *RATINGS, NOT_FITTED, "not seen, why", "readings", "note")
HOW = (
    "Tick one box a line, or write why it was not seen: no access, not opened, not run, no light, "
    "no time, unsafe, refused, covered, not shown. A line left empty stays unanswered. Write each "
    "reading with the unit printed beside it. The numbers lead to the same lines on the page where "
    "the answers are typed."
)
LIMITS = (
    "Visual, non-invasive inspection. Nothing on these sheets says that a space or a plant is "
    "safe: entry to enclosed spaces is by permit with attendant and measured air, running and "
    "opening by the crew, under the vessel's own rules and local law."
)


def build_walk_sheets(
    assessment: Assessment,
    stops: Sequence[PaperStop],
    cautions: Mapping[str, Caution],
    out: Path,
    *,
    paper: str = "a4",
    made_at: str,
) -> None:
    """Write the sheets of some stops as a PDF in landscape.

    Parameters
    ----------
    assessment : Assessment
    stops : sequence of PaperStop
    cautions : mapping of str to Caution
        Every caution by its id.
    out : Path
        Replaced only by a whole file.
    paper : str
        "a4" or "letter".
    made_at : str
        As printed in the foot.

    Raises
    ------
    UnknownPaper
        There is no such paper.
    OSError
        The file cannot be written.
    """
    upright = page_of(paper)
    page = Page(
        upright.height,
        upright.width,
        left=_EDGE,
        right=_EDGE,
        top=22 * mm,
        bottom=16 * mm,
    )
    use_fonts()
    name = plain(assessment.vessel.get("name", "")) or "Vessel not named"
    with whole_file(out) as part:
        report = Report(
            part,
            page,
            head=f"{TITLE} · {name}",
            mark=plain(made_at, 40),
            title=f"{TITLE}: {name}",
            author="",
            subject=TITLE,
            creator="inspector",
        )
        report.typeset(_story(name, stops, cautions, page.column))


def _story(
    name: str, stops: Sequence[PaperStop], cautions: Mapping[str, Caution], width: float
) -> list[Flowable]:
    story: list[Flowable] = [
        Paragraph(TITLE, STYLES["title"]),
        Paragraph(txt(name), STYLES["lead"]),
        Paragraph(txt(HOW), STYLES["body"]),
        heading("Limits", "limits"),
        Paragraph(txt(LIMITS), STYLES["body"]),
    ]
    for stop in stops:
        story += _stop(stop, cautions, width)
    return story


def _stop(stop: PaperStop, cautions: Mapping[str, Caution], width: float) -> list[Flowable]:
    """Return one stop: its name, what can hurt there, its lines by system."""
    made: list[Flowable] = [
        section_gap(),
        heading(f"{stop.number}. {stop.name}", f"stop-{stop.number}"),
        *(Paragraph(txt(text), STYLES["small"]) for text in _dangers(stop, cautions)),
    ]
    return [*made, _lines(stop.looks, width)]


def _dangers(stop: PaperStop, cautions: Mapping[str, Caution]) -> list[str]:
    """What can hurt at the checks of a stop, each once, the most serious first."""
    order = ("danger", "warning", "caution", "notice")
    named = {name for look in stop.looks for name in look.result.check.cautions}
    found = [cautions[name] for name in named if name in cautions]
    found.sort(key=lambda caution: (order.index(caution.signal), caution.id))
    texts = [f"{one.signal.upper()}: {one.hurts} {one.instead}" for one in found]
    if any(look.result.check.enclosed for look in stop.looks):
        texts.insert(0, "ENCLOSED SPACE: permit, attendant and measured air before anybody enters.")
    return texts


def _lines(looks: Sequence[PaperLook], width: float) -> Flowable:
    """Return the lines of a stop, with a line for the name of each system."""
    fixed = (12 * mm, 56 * mm, *(_BOX_WIDTH,) * 5, 24 * mm, 78 * mm)
    rows: list[list[Cell]] = []
    for system, of_system in groupby(looks, key=lambda look: look.system):
        rows.append(["", [(system, "b")], *[""] * (len(_HEAD) - 2)])
        rows += [_row(look) for look in of_system]
    return rows_table(_HEAD, rows, (*fixed, width - sum(fixed)))


class _Box(Flowable):
    """A box to tick; ticked where the answer is recorded already."""

    def __init__(self, ticked: bool) -> None:
        super().__init__()
        self.width = self.height = _BOX
        self.ticked = ticked

    def wrap(self, *_: float) -> tuple[float, float]:
        """Return the room that it takes, points."""
        return self.width, self.height

    def draw(self) -> None:
        """Draw it."""
        pen = self.canv
        pen.setStrokeColor(INK)
        pen.setLineWidth(0.6)
        pen.rect(0, 0, _BOX, _BOX)
        if self.ticked:
            pen.setLineWidth(1.4)
            pen.line(0.2 * _BOX, 0.5 * _BOX, 0.42 * _BOX, 0.22 * _BOX)
            pen.line(0.42 * _BOX, 0.22 * _BOX, 0.82 * _BOX, 0.8 * _BOX)


def _row(look: PaperLook) -> list[Cell]:
    check = look.result.check
    marks = "critical" if check.critical else ""
    # What is recorded already is printed, so that nobody looks twice for nothing.
    answered = look.result.answer
    boxes = [_Box(answered == word) for word in (*RATINGS, NOT_FITTED)]
    unseen = answered.removeprefix("not seen: ") if answered.startswith("not seen") else ""
    return [
        [(look.number, "b")],
        [(f"{look.result.unit_name}:", "soft"), (check.title, ""), (marks, "b")],
        *boxes,
        [(unseen, "soft")],
        ", ".join(_blank(reading) for reading in check.readings),
        "photo wanted" if check.photo else "",
    ]


def _blank(reading: Field) -> str:
    """A reading with room to write it: "Water content ____ %"."""
    if reading.choices:
        return f"{reading.label}: {' / '.join(reading.choices)}"
    unit = reader_unit(reading.unit) if reading.unit else ""
    return " ".join(part for part in (reading.label, "______", unit) if part)
