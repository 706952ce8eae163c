"""What the conversion does to a vessel: what is asked of her first, then chapter by chapter."""

from flask import Blueprint, abort, render_template

from inspector.services.conversion.conversion_chapters import ChapterShelf, chapter_shelf
from inspector.services.data_folder import title_of
from inspector.web.current import data_folder, open_inspection

pages = Blueprint("conversion", __name__)

# The width of a drawing's box [px]: that of a phone, so that its labels are as large as they are
# made; on a wide screen it grows, and the labels with it.
DRAWING_WIDTH = 356.0


@pages.get("/inspection/<inspection_id>/conversion")
def conversion(inspection_id: str):
    """What the brief asks and what she gives, one line each, the worst first."""
    # The chapters are slow to import, and no other page should wait for them.
    from inspector.conversion.asks import ask_words
    from inspector.conversion.asks.ask_bar import ask_bar
    from inspector.conversion.asks.ask_lines import ask_lines
    from inspector.conversion.asks.next_entry import next_entry
    from inspector.conversion.contents import CHAPTERS
    from inspector.report import figure_text

    inspection = open_inspection(inspection_id)
    shelf = chapter_shelf(data_folder(), inspection)
    chapters = {chapter.id: chapter for chapter in shelf.chapters()}
    lines = ask_lines(chapters.values())
    return render_template(
        "conversion/asks.html",
        inspection=inspection,
        lines=lines,
        nexts=[next_entry(line, chapters[line.chapter], shelf.case.tables) for line in lines],
        not_asked=ask_words.not_asked(shelf.case.assessment.brief),
        chapters=chapters,
        names={chapter_id: name for chapter_id, (name, _) in CHAPTERS.items()},
        bar=ask_bar,
        say=ask_words,
        words=figure_text,
        step="decide",
        title=title_of(inspection),
    )


@pages.get("/inspection/<inspection_id>/conversion/<chapter_id>")
def chapter(inspection_id: str, chapter_id: str):
    """One chapter, its answer first; no other is calculated for it."""
    from inspector.conversion.contents import CHAPTERS, TABLES
    from inspector.report import figure_text
    from inspector.report.drawn.geometry import draw

    inspection = open_inspection(inspection_id)
    if chapter_id not in CHAPTERS:
        abort(404)
    shelf = chapter_shelf(data_folder(), inspection)
    return render_template(
        "conversion/chapter.html",
        inspection=inspection,
        one=shelf.chapter(chapter_id),
        names={chapter_id: name for chapter_id, (name, _) in CHAPTERS.items()},
        tables={table.id: table for table in TABLES},
        to_type=_empty_tables(shelf, chapter_id),
        draw=lambda picture: draw(picture, DRAWING_WIDTH),
        words=figure_text,
        step="decide",
        title=title_of(inspection),
    )


def _empty_tables(shelf: ChapterShelf, chapter_id: str) -> list[str]:
    """Return the ids of the tables that a chapter reads and in which nothing is typed."""
    tables = shelf.case.tables
    return [
        table_id
        for table_id in shelf.chapter(chapter_id).particulars
        if table_id in tables and not len(tables[table_id])
    ]
