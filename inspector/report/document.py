"""The document: running head and foot, outline, contents, and "page x of y"."""

import os
from collections.abc import Iterator, Mapping
from contextlib import contextmanager, suppress
from pathlib import Path

from reportlab.lib.units import mm
from reportlab.pdfgen.canvas import Canvas
from reportlab.platypus import (
    BaseDocTemplate,
    CondPageBreak,
    Flowable,
    Frame,
    PageTemplate,
    Paragraph,
    TableStyle,
)
from reportlab.platypus.tableofcontents import TableOfContents

from inspector.report.printed_pictures import StreamedCanvas
from inspector.report.theme import INK, PLAIN, SOFT, STYLES, Page, plain, txt

MOST_PASSES = 6
# The list of contents does not list itself.
CONTENTS = "contents"

_FOOT = "Visual, non-invasive inspection. No class or statutory survey; see Limits, page {page}."
_OF_WHOLE = (
    "Page numbers are those of the whole report of the same digest; limits on its page {page}."
)
# Below a heading of each level: its text and the first rows of its table.
_ROOM = (46 * mm, 22 * mm)
_CONTENTS_STYLE = TableStyle(
    [
        ("FONTNAME", (0, 0), (-1, -1), PLAIN),
        ("VALIGN", (0, 0), (-1, -1), "TOP"),
        ("LEFTPADDING", (0, 0), (-1, -1), 0),
        ("RIGHTPADDING", (0, 0), (-1, -1), 0),
        ("TOPPADDING", (0, 0), (-1, -1), 0),
        ("BOTTOMPADDING", (0, 0), (-1, -1), 0),
    ]
)


@contextmanager
def whole_file(out: Path) -> Iterator[Path]:
    """Yield the path to write to; it becomes ``out`` only when all went well.

    Parameters
    ----------
    out : Path

    Yields
    ------
    Path

    Raises
    ------
    OSError
        Naming ``out``, which is what the caller asked for, and not the path beside it.
    """
    # Beside it, since a file can be replaced at once only within one file system.
    part = out.with_name(f"{out.name}.part")
    try:
        yield part
        os.replace(part, out)
    except OSError as problem:
        if str(problem.filename) != str(part):
            raise
        # Under the name that the user asked for: he knows nothing of the draft beside it.
        raise OSError(problem.errno, problem.strerror, str(out)) from problem
    finally:
        with suppress(OSError):
            part.unlink()


class Report(BaseDocTemplate):
    """A report on one paper, laid out again until its page numbers no longer change.

    Parameters
    ----------
    out : Path
    page : Page
        The paper.
    head, mark : str
        Of each page: what is in the running head, and what identifies the report in the foot.
    of_whole : mapping of str to int, optional
        The pages of the whole report, of which this one is a part with references into it.
    **about : str or list of str
        Title, author and the like of the file.

    Attributes
    ----------
    places : dict of str to int
        The page of each section, by its key, as the pass before found it.
    total : int
        The number of pages in the pass before.
    """

    def __init__(
        self,
        out: Path,
        page: Page,
        *,
        head: str,
        mark: str,
        of_whole: Mapping[str, int] | None = None,
        **about: str | list[str],
    ) -> None:
        # The initial font is ours: ReportLab would name Helvetica, which no viewer need have.
        size = (page.width, page.height)
        super().__init__(str(out), pagesize=size, lang="en", initialFontName=PLAIN, **about)
        self.sheet, self.head, self.mark = page, plain(head, 70), plain(mark, 60)
        # Page numbers are known only after a pass, and printing them may move what follows.
        self.places: dict[str, int] = {}
        self.of_whole = of_whole
        self.total = 0
        self._found: dict[str, int] = {}
        self._section, self._first = "", ""
        height = page.height - page.top - page.bottom
        frame = Frame(page.left, page.bottom, page.column, height, 0, 0, 0, 0)
        self.addPageTemplates([PageTemplate("page", [frame], onPageEnd=self._head_and_foot)])

    def typeset(self, story: list[Flowable]) -> None:
        """Lay the story out until every page number is right.

        Parameters
        ----------
        story : list of Flowable
        """
        # Several passes: contents and "page x of y" are known only after one.
        self.multiBuild(story, maxPasses=MOST_PASSES, canvasmaker=StreamedCanvas)

    def note(self, key: str) -> None:
        """Note the page of a place that is no heading.

        Parameters
        ----------
        key : str
        """
        self._found.setdefault(key, self.page)

    def afterFlowable(self, flowable: Flowable) -> None:  # noqa: N802 - ReportLab's name
        """Note each heading for outline, contents and running head."""
        # Only what `heading` made has one.
        if getattr(flowable, "outline", None) is None:
            return
        level, title, key = flowable.outline
        # At the heading itself, so that a viewer opens there and not at the head of its page.
        top = self.frame._y + flowable.height
        self.canv.bookmarkPage(key, fit="XYZ", left=0, top=top, zoom=0)
        self.canv.addOutlineEntry(title, key, level, closed=level > 0)
        # Parts of a system all have the same titles: the outline has them, and the printed list
        # has only sections and chapters.
        if key != CONTENTS and (level == 0 or key.startswith("chapter-")):
            self.notify("TOCEntry", (level, txt(title), self.page, key))
        self._found[key] = self.page
        # The running head names the first section of a page, and else the one that goes on.
        if level == 0:
            self._section, self._first = title, self._first or title

    def _allSatisfied(self) -> bool:  # noqa: N802 - ReportLab's name
        """Whether this pass found every section where the pass before did."""
        # "Page x of y" is right only when two passes in a row found the same.
        same = (self.total, self.places) == (self.page, self._found)
        settled = same and bool(super()._allSatisfied())
        self.total, self.places, self._found = self.page, self._found, {}
        self._section = self._first = ""
        return settled

    def _head_and_foot(self, pen: Canvas, _doc: BaseDocTemplate) -> None:
        """Draw the running head, which the cover has none of, and the foot."""
        pen.saveState()
        pen.setFont(PLAIN, 7.6)
        pen.setFillColor(SOFT)
        left, right = self.sheet.left, self.sheet.width - self.sheet.right
        # The first page begins with the vessel's name itself.
        if self.page > 1:
            top = self.sheet.height - 13 * mm
            pen.drawString(left, top, self.head)
            pen.drawRightString(right, top, self._first or self._section)
            pen.setStrokeColor(INK)
            pen.setLineWidth(0.5)
            pen.line(left, top - 2.5 * mm, right, top - 2.5 * mm)
        foot, pages = (_FOOT, self.places) if self.of_whole is None else (_OF_WHOLE, self.of_whole)
        pen.drawString(left, 9 * mm, foot.format(page=pages.get("limits", "")))
        place = f"{self.mark} · page {self.page} of {self.total}"
        pen.drawRightString(right, 9 * mm, place)
        pen.restoreState()
        self._first = ""


class Heading(Paragraph):
    """A heading that goes to the next page where too little of what follows would fit below it.

    ReportLab keeps a heading with all of the table behind it, which leaves pages half empty.
    """

    outline: tuple[int, str, str] | None = None
    room: float = 0

    def wrap(self, width: float, height: float) -> tuple[float, float]:
        """Return the room that it takes: more than there is where it must not stand here.

        Parameters
        ----------
        width, height : float
            The room there is, points.

        Returns
        -------
        tuple of float
            Width and height, points.
        """
        wide, high = super().wrap(width, height)
        return (wide, high) if height >= high + self.room else (wide, height + 1)

    def split(self, width: float, height: float) -> list[Flowable]:
        """Never split.

        Parameters
        ----------
        width, height : float

        Returns
        -------
        list of Flowable
            Empty.
        """
        return []


def heading(title: str, key: str, level: int = 0, room: float | None = None) -> Heading:
    """Return a heading that is also an entry of outline and contents.

    Parameters
    ----------
    title : str
    key : str
        Names the place within the report.
    level : int
        0 for a section, 1 for a part of it.
    room : float, optional
        What must fit below it on its page, points; else so much that the first rows do.

    Returns
    -------
    Heading
    """
    made = Heading(txt(title, 120), STYLES["h1" if level == 0 else "h2"])
    # Read by `afterFlowable`.
    made.outline = (level, plain(title, 120), key)
    made.room = _ROOM[level] if room is None else room
    return made


def small_heading(title: str) -> Heading:
    """Return a heading without an entry anywhere.

    Parameters
    ----------
    title : str

    Returns
    -------
    Heading
    """
    made = Heading(txt(title, 120), STYLES["h3"])
    made.room = 14 * mm
    return made


def section_gap() -> CondPageBreak:
    """Return what parts two sections that may share a page.

    A new one each time, since a flowable remembers where it was.
    """
    return CondPageBreak(50 * mm)


def section(title: str, key: str, lead: str, *body: Flowable) -> list[Flowable]:
    """Return a section that may share its page with others.

    Parameters
    ----------
    title, key : str
        Of the heading.
    lead : str
        Its first paragraph, as plain text.
    *body : Flowable
        What follows.

    Returns
    -------
    list of Flowable
    """
    return [heading(title, key), Paragraph(txt(lead), STYLES["body"]), *body]


def contents() -> TableOfContents:
    """Return the list of sections with dotted leaders and page numbers."""
    styles = [STYLES["toc0"], STYLES["toc1"]]
    return TableOfContents(levelStyles=styles, dotsMinLevel=0, tableStyle=_CONTENTS_STYLE)
