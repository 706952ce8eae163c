"""How the report looks: paper, ink, fonts, styles, and `txt`, through which all text goes."""

import re
import threading
import unicodedata
from dataclasses import dataclass
from xml.sax.saxutils import escape

from reportlab import rl_config
from reportlab.lib.colors import HexColor
from reportlab.lib.enums import TA_RIGHT
from reportlab.lib.pagesizes import A4, LETTER
from reportlab.lib.styles import ParagraphStyle
from reportlab.lib.units import mm
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont

from inspector.places import shipped
from inspector.report.line_breaks import unbroken
from inspector.values.errors import InspectorError

# Photos go in as they are, with no text coding around them, and one record gives the same bytes
# each time.
rl_config.useA85 = 0
rl_config.invariant = 1

INK, SOFT, LINE = HexColor("#12303f"), HexColor("#47606b"), HexColor("#cfc3a4")
DEEP, ACCENT, WHITE = HexColor("#9fc3cd"), HexColor("#a0006d"), HexColor("#ffffff")
PLAIN, BOLD, SLANTED = "ReportPlain", "ReportBold", "ReportSlanted"
FONT_FILES = {
    PLAIN: "IBMPlexSans-Regular.ttf",
    BOLD: "IBMPlexSans-SemiBold.ttf",
    SLANTED: "IBMPlexSans-Italic.ttf",
}

# Signs that turn the writing direction or hide: by them a caption could show what it does not say.
_UNSEEN = re.compile(
    "[\u061c\u200b-\u200f\u202a-\u202e\u2060-\u2069\ufeff\ud800-\udfff\ufffe\uffff]"
)

# Printed for a character that the font lacks: Unicode's own sign for it, which the font has.
LACKING = "\ufffd"
# These draw nothing themselves: they choose between two forms of the sign before them.
_CHOOSERS = "\ufe0e\ufe0f"
_ENDLESS = re.compile(r"(\S{80})(?=\S)")


@dataclass(frozen=True)
class Page:
    """A sheet of paper with its column of text.

    Parameters
    ----------
    width, height : float
        Of the sheet, points.
    left, right, top, bottom : float
        The edges around the column of text, points.
    """

    width: float
    height: float
    left: float = 14 * mm
    right: float = 14 * mm
    top: float = 19 * mm
    bottom: float = 15 * mm

    @property
    def column(self) -> float:
        """Width of the text column, points."""
        return self.width - self.left - self.right


PAPERS = {"a4": Page(*A4), "letter": Page(*LETTER)}


class UnknownPaper(InspectorError):
    """The paper is neither A4 nor Letter. Attribute: ``paper``."""


def page_of(paper: str) -> Page:
    """Return the page of a paper.

    Parameters
    ----------
    paper : str
        "a4" or "letter".

    Returns
    -------
    Page

    Raises
    ------
    UnknownPaper
    """
    if paper not in PAPERS:
        raise UnknownPaper(
            f"The paper '{paper}' is not known: it is 'a4' or 'letter'.", paper=paper
        )
    return PAPERS[paper]


def clean(text: object, most: int = 0) -> str:
    """Return a text on one line, without control, direction and half characters.

    Parameters
    ----------
    text : object
        None counts as "".
    most : int
        The most characters, after which the text ends in "…"; 0 for any number.

    Returns
    -------
    str
    """
    seen = _UNSEEN.sub("", str(text if text is not None else ""))
    line = "".join(" " if _is_control(letter) else letter for letter in seen)
    # A letter typed as letter and accent becomes the one sign that the font has.
    line = unicodedata.normalize("NFC", re.sub(" {2,}", " ", line)).strip(" ")
    return line if not most or len(line) <= most else line[: most - 1].rstrip() + "…"


def _is_control(letter: str) -> bool:
    """Whether a character is a control character or ends a line or a paragraph."""
    return unicodedata.category(letter) in ("Cc", "Zl", "Zp")


def plain(text: object, most: int = 0) -> str:
    """Return a text as it is printed: ``clean``, with a mark for what the font lacks.

    Parameters
    ----------
    text : object
    most : int
        As for ``clean``.

    Returns
    -------
    str
    """
    return "".join(_drawn(letter) for letter in clean(text, most))


def _drawn(letter: str) -> str:
    """A character, or the mark without which one that the font lacks would vanish."""
    use_fonts()
    # ASCII is in every font; the look-up is for the rest.
    if letter.isascii() or ord(letter) in pdfmetrics.getFont(PLAIN).face.charToGlyph:
        return letter
    return "" if letter in _CHOOSERS else LACKING


def txt(text: object, most: int = 0) -> str:
    """Return a text as the content of a Paragraph: nothing that was typed can become markup.

    A number stays with its groups and its unit on one line. Endless words are broken, since they
    take minutes to set.

    Parameters
    ----------
    text : object
    most : int
        As for ``clean``.

    Returns
    -------
    str
    """
    # ReportLab needs minutes for one word of some thousand letters, so such words are parted.
    return escape(_ENDLESS.sub(r"\1 ", unbroken(plain(text, most))))


_REGISTERING = threading.Lock()


def use_fonts() -> None:
    """Register the report's fonts; only the characters that are used go into the file."""
    # Two reports may be begun at once: the second waits until the family is known as well, since
    # a registered font alone cannot be set.
    with _REGISTERING:
        if PLAIN in pdfmetrics.getRegisteredFontNames():
            return
        folder = shipped("static") / "fonts" / "report"
        for name, file in FONT_FILES.items():
            pdfmetrics.registerFont(TTFont(name, str(folder / file)))
        pdfmetrics.registerFontFamily(
            PLAIN, normal=PLAIN, bold=BOLD, italic=SLANTED, boldItalic=BOLD
        )


def _style(name: str, size: float, leading: float, **more: object) -> ParagraphStyle:
    """Return a style in the report's font, which never leaves one line of a paragraph alone."""
    settings = {
        "fontName": PLAIN,
        "bulletFontName": PLAIN,
        "textColor": INK,
        "splitLongWords": 1,
        "allowWidows": 0,
        "allowOrphans": 0,
    } | more
    return ParagraphStyle(name, fontSize=size, leading=leading, **settings)


STYLES = {
    style.name: style
    for style in (
        _style("body", 8.8, 11.8, spaceAfter=4),
        _style("lead", 9.6, 13, spaceAfter=5),
        _style("cell", 8.2, 10.6),
        _style("number", 8.2, 10.6, alignment=TA_RIGHT),
        _style("tight", 7.6, 9.4),
        _style("tightnumber", 7.6, 9.4, alignment=TA_RIGHT),
        _style("fine", 7, 8.6),
        _style("finenumber", 7, 8.6, alignment=TA_RIGHT),
        _style("line", 7.6, 9.8, spaceBefore=2, spaceAfter=2),
        _style("point", 8.4, 10.8, spaceAfter=1.5),
        _style("column", 7.4, 9.4, textColor=SOFT),
        _style("columnright", 7.4, 9.4, textColor=SOFT, alignment=TA_RIGHT),
        _style("small", 7.4, 9.6, textColor=SOFT, spaceAfter=3),
        _style("caption", 7.2, 9.2, textColor=SOFT),
        _style("title", 26, 29, fontName=BOLD, spaceAfter=3),
        _style("kind", 8.8, 11.6, textColor=SOFT, spaceAfter=2),
        _style("advice", 13, 16, fontName=BOLD, spaceBefore=6, spaceAfter=6),
        _style("h1", 17, 20, fontName=BOLD, spaceBefore=11, spaceAfter=3),
        _style("h2", 10.4, 12.6, fontName=BOLD, spaceBefore=6, spaceAfter=2),
        _style("h3", 8.8, 11.4, fontName=BOLD, spaceBefore=6, spaceAfter=1),
        _style("block", 10, 12.6, fontName=BOLD, spaceBefore=8, spaceAfter=3),
        _style("verdict", 13, 15, fontName=BOLD),
        _style("toc0", 9, 12.4),
        _style("toc1", 8, 10.6, leftIndent=12, textColor=SOFT),
    )
}
