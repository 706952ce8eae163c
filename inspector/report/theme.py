"""How the report looks, as data: paper sizes and frames, ink, fonts and styles, and `txt`, through which every text goes before it is set."""

import re
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

from inspector.errors import InspectorError
from inspector.places import shipped

# Photos go in as they are (no text coding around them), and two builds of one record give the same bytes.
rl_config.useA85 = 0
rl_config.invariant = 1

INK, SOFT, LINE, DEEP, ACCENT, WHITE = (HexColor(one) for one in ("#12303f", "#47606b", "#cfc3a4", "#9fc3cd", "#a0006d", "#ffffff"))
PLAIN, BOLD, SLANTED = "ReportPlain", "ReportBold", "ReportSlanted"
FONT_FILES = {PLAIN: "IBMPlexSans-Regular.ttf", BOLD: "IBMPlexSans-SemiBold.ttf", SLANTED: "IBMPlexSans-Italic.ttf"}

# marks that turn the writing direction or hide: a caption could show something else than it says
_UNSEEN = re.compile("[\u061c\u200b-\u200f\u202a-\u202e\u2060-\u2069\ufeff\ud800-\udfff\ufffe\uffff]")

# what stands for a character that the font lacks; Unicode's own sign for it, which the font has (it has no open square)
LACKING = "\ufffd"
# these draw nothing themselves: they choose between two forms of the sign before them
_CHOOSERS = "\ufe0e\ufe0f"
_ENDLESS = re.compile(r"(\S{80})(?=\S)")


@dataclass(frozen=True)
class Page:
    """A sheet of paper in points: text column, and a margin column left of it for what qualifies the text."""

    width: float
    height: float
    left: float = 40 * mm
    right: float = 18 * mm
    top: float = 25 * mm
    bottom: float = 20 * mm
    margin: float = 16 * mm
    note: float = 20 * mm

    @property
    def column(self) -> float:
        """Width of the text column, points."""
        return self.width - self.left - self.right


PAPERS = {"a4": Page(*A4), "letter": Page(*LETTER)}


class UnknownPaper(InspectorError):
    """The paper is neither A4 nor Letter. Attribute: ``paper``."""


def page_of(paper: str) -> Page:
    """The page of a paper's name, "a4" or "letter"; UnknownPaper for any other."""
    if paper not in PAPERS:
        raise UnknownPaper(f"The paper '{paper}' is not known: it is 'a4' or 'letter'.", paper=paper)
    return PAPERS[paper]


def clean(text: object, most: int = 0) -> str:
    """Text without control, direction and half characters, on one line; cut after `most` characters if that is not 0."""
    lone = _UNSEEN.sub("", str(text if text is not None else ""))
    clean = "".join(" " if unicodedata.category(one) in ("Cc", "Zl", "Zp") else one for one in lone)
    clean = unicodedata.normalize("NFC", re.sub(" {2,}", " ", clean)).strip(" ")
    return clean if not most or len(clean) <= most else clean[: most - 1].rstrip() + "…"


def plain(text: object, most: int = 0) -> str:
    """The same as it is printed: a character that the font lacks is shown as a mark, since it would vanish otherwise."""
    return "".join(one if _drawn(one) else ("" if one in _CHOOSERS else LACKING) for one in clean(text, most))


def _drawn(letter: str) -> bool:
    use_fonts()
    return letter.isascii() or ord(letter) in pdfmetrics.getFont(PLAIN).face.charToGlyph


def txt(text: object, most: int = 0) -> str:
    """The same, safe as the content of a Paragraph: nothing that a person typed can become markup; endless words are broken, as they take minutes to set."""
    return escape(_ENDLESS.sub(r"\1 ", plain(text, most)))


def use_fonts() -> None:
    """Register the report's fonts; only the characters that are used go into the file."""
    if PLAIN in pdfmetrics.getRegisteredFontNames():
        return
    for name, file in FONT_FILES.items():
        pdfmetrics.registerFont(TTFont(name, str(shipped("static") / "fonts" / "report" / file)))
    pdfmetrics.registerFontFamily(PLAIN, normal=PLAIN, bold=BOLD, italic=SLANTED, boldItalic=BOLD)


def _style(name: str, size: float, leading: float, **more: object) -> ParagraphStyle:
    settings = {"fontName": PLAIN, "bulletFontName": PLAIN, "textColor": INK, "splitLongWords": 1, "allowWidows": 0, "allowOrphans": 0} | more
    return ParagraphStyle(name, fontSize=size, leading=leading, **settings)


STYLES = {style.name: style for style in (
    _style("body", 9.4, 13.3, spaceAfter=6),
    _style("lead", 10.6, 15, spaceAfter=8),
    _style("cell", 8.4, 11.4),
    _style("number", 8.4, 11.4, alignment=TA_RIGHT),
    _style("column", 7.8, 10.4, textColor=SOFT),
    _style("columnright", 7.8, 10.4, textColor=SOFT, alignment=TA_RIGHT),
    _style("small", 7.8, 10.8, textColor=SOFT, spaceAfter=5),
    _style("side", 7.4, 10.4, textColor=SOFT),
    _style("caption", 7.6, 10.2, textColor=SOFT),
    _style("title", 30, 33, fontName=BOLD, spaceAfter=6),
    _style("kind", 9.4, 13, textColor=SOFT, spaceAfter=3),
    _style("h1", 23, 26, fontName=BOLD, spaceBefore=22, spaceAfter=5, keepWithNext=1),
    _style("h2", 11.5, 14.5, fontName=BOLD, spaceBefore=14, spaceAfter=3, keepWithNext=1),
    _style("h3", 9.4, 12.5, fontName=BOLD, spaceBefore=9, spaceAfter=1, keepWithNext=1),
    _style("verdict", 15, 17, fontName=BOLD),
    _style("toc0", 9.6, 17),
    _style("toc1", 8.4, 12.4, leftIndent=12, textColor=SOFT),
)}
