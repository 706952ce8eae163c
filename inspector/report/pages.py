"""The document: running head and foot, outline, contents, and `page x of y` from the layout before."""

import os
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

from reportlab.lib.units import mm
from reportlab.pdfgen.canvas import Canvas
from reportlab.platypus import BaseDocTemplate, Flowable, Frame, PageTemplate, Paragraph, TableStyle
from reportlab.platypus.tableofcontents import TableOfContents

from inspector.report.theme import INK, PLAIN, SOFT, STYLES, Page, plain, txt

MOST_PASSES = 6
CONTENTS = "contents"                # the list does not list itself


@contextmanager
def whole_file(out: Path) -> Iterator[Path]:
    """The path to write to instead of `out`, which is replaced only when all went well. An OSError of that path names `out`, which is what was asked for."""
    part = out.with_name(f"{out.name}.part")
    try:
        yield part
        os.replace(part, out)
    except OSError as problem:
        if str(problem.filename) != str(part):
            raise
        raise OSError(problem.errno, problem.strerror, str(out)) from problem
    finally:
        with suppress(OSError):
            part.unlink()


class Report(BaseDocTemplate):
    """A report on one paper. `places` tells where each section began, and `total` the pages, in the pass before."""

    def __init__(self, out: Path, page: Page, *, head: str, mark: str, **about: str):
        super().__init__(str(out), pagesize=(page.width, page.height), lang="en", initialFontName=PLAIN, **about)
        self.sheet, self.head, self.mark = page, plain(head, 70), plain(mark, 60)
        self.places: dict[str, int] = {}
        self.total = 0
        self._found: dict[str, int] = {}
        self._section, self._first = "", ""
        frame = Frame(page.left, page.bottom, page.column, page.height - page.top - page.bottom, 0, 0, 0, 0)
        self.addPageTemplates([PageTemplate("page", [frame], onPageEnd=self._furniture)])

    def typeset(self, story: list[Flowable]) -> None:
        """Lay the story out until every page number stands."""
        self.multiBuild(story, maxPasses=MOST_PASSES)

    def afterFlowable(self, flowable: Flowable) -> None:  # noqa: N802 - ReportLab's name for the hook
        """Note each heading for outline, contents and running head."""
        if not hasattr(flowable, "outline"):
            return
        level, title, key = flowable.outline
        self.canv.bookmarkPage(key)
        self.canv.addOutlineEntry(title, key, level, closed=level > 0)
        # parts of a system all bear the same names: the outline holds them, the printed list only sections and chapters
        if key != CONTENTS and (level == 0 or key.startswith("chapter-")):
            self.notify("TOCEntry", (level, txt(title), self.page, key))
        self._found[key] = self.page
        if level == 0:
            self._section, self._first = title, self._first or title

    def _allSatisfied(self) -> bool:  # noqa: N802 - ReportLab's name for the hook
        settled = (self.total, self.places) == (self.page, self._found) and bool(super()._allSatisfied())
        self.total, self.places, self._found = self.page, self._found, {}
        self._section = self._first = ""
        return settled

    def _furniture(self, pen: Canvas, _doc: BaseDocTemplate) -> None:
        page = self.sheet
        pen.saveState()
        pen.setFont(PLAIN, 7.6)
        pen.setFillColor(SOFT)
        if self.page > 1:
            pen.drawString(page.margin, page.height - 15 * mm, self.head)
            pen.drawRightString(page.width - page.right, page.height - 15 * mm, self._first or self._section)
            pen.setStrokeColor(INK)
            pen.setLineWidth(0.5)
            pen.line(page.margin, page.height - 17.5 * mm, page.width - page.right, page.height - 17.5 * mm)
        limits = self.places.get("limits", "")
        pen.drawString(page.margin, 10 * mm, f"Visual, non-invasive inspection. No class or statutory survey; see Limits, page {limits}.")
        pen.drawRightString(page.width - page.right, 10 * mm, f"{self.mark} · page {self.page} of {self.total}")
        pen.restoreState()
        self._first = ""


def heading(title: str, key: str, level: int = 0) -> Paragraph:
    """A heading that is also an entry of outline and contents; level 0 is a section, 1 a part of it."""
    made = Paragraph(txt(title, 120), STYLES["h1" if level == 0 else "h2"])
    made.outline = (level, plain(title, 120), key)
    return made


def contents() -> TableOfContents:
    """The list of sections with dotted leaders and page numbers."""
    lines = TableStyle([("FONTNAME", (0, 0), (-1, -1), PLAIN), ("VALIGN", (0, 0), (-1, -1), "TOP"), ("LEFTPADDING", (0, 0), (-1, -1), 0),
                        ("RIGHTPADDING", (0, 0), (-1, -1), 0), ("TOPPADDING", (0, 0), (-1, -1), 0), ("BOTTOMPADDING", (0, 0), (-1, -1), 0)])
    return TableOfContents(levelStyles=[STYLES["toc0"], STYLES["toc1"]], dotsMinLevel=0, tableStyle=lines)
