"""Tables without cages, whose cells may hold any text of any length: a long cell goes on in rows of its own."""

from collections.abc import Sequence

from reportlab.pdfbase.pdfmetrics import stringWidth
from reportlab.platypus import Flowable, Paragraph, Table

from inspector.report.theme import ACCENT, INK, LINE, PLAIN, STYLES, plain, txt

# a run is a piece of text and its tone: "" plain, "b" bold, "i" slanted, "soft", "now" (the accent: what a person must act on)
Run = tuple[str, str]
Cell = str | Flowable | list[Run]

_TONES = {"": ("", ""), "b": ("<b>", "</b>"), "i": ("<i>", "</i>"), "soft": ('<font color="#47606b">', "</font>"),
          "now": (f'<font color="{ACCENT.hexval().replace("0x", "#")}"><b>', "</b></font>")}
_LETTERS_PER_POINT = 4.5
_INNER = 6


def markup(runs: Sequence[Run]) -> str:
    """Runs as the content of a Paragraph, every text escaped."""
    return " ".join(f"{_TONES[tone][0]}{txt(text)}{_TONES[tone][1]}" for text, tone in runs if plain(text))


def rows_table(head: Sequence[str], rows: Sequence[Sequence[Cell]], widths: Sequence[float], right: Sequence[int] = ()) -> Table:
    """A table with a soft head line that repeats on each page, and a hairline under each row.

    widths: points, one per column. right: the columns set to the right (numbers).
    """
    body: list[list[Flowable | str]] = []
    ends: list[int] = []
    for row in rows:
        parts = [_pieces(cell, width) for cell, width in zip(row, widths, strict=True)]
        for turn in range(max(len(part) for part in parts)):
            body.append([_set(part[turn], column in right) if turn < len(part) else "" for column, part in enumerate(parts)])
        ends.append(len(body) - 1)
    top = [[Paragraph(txt(title), STYLES["columnright" if column in right else "column"]) for column, title in enumerate(head)]] if any(head) else []
    made = Table(top + body, colWidths=list(widths), repeatRows=len(top), hAlign="LEFT", spaceBefore=2, spaceAfter=4)
    made.setStyle(_lines(len(top), ends))
    return made


def fitted_widths(head: Sequence[str], rows: Sequence[Sequence[str]], width: float) -> list[float]:
    """Widths of columns of plain text that together fill `width`: none narrower than its longest word if that can be, the rest by how much stands in it."""
    style = STYLES["cell"]
    columns = [[title, *(plain(row[at]) for row in rows)] for at, title in enumerate(head)]
    least = [max(_wide(word, style) for text in texts for word in text.split() or [""]) + _INNER + 1 for texts in columns]
    wanted = [max(least[at], min(max(_wide(text, style) for text in texts) + _INNER + 1, width * 0.6)) for at, texts in enumerate(columns)]
    if sum(least) >= width:
        return [one * width / sum(least) for one in least]
    if sum(wanted) <= width:
        spare = (width - sum(wanted)) / len(wanted)
        return [one + spare for one in wanted]
    share = (width - sum(least)) / (sum(wanted) - sum(least))
    return [low + (high - low) * share for low, high in zip(least, wanted, strict=True)]


def _wide(text: str, style) -> float:
    return stringWidth(text[:200], style.fontName, style.fontSize)


def _lines(top: int, ends: list[int]) -> list[tuple]:
    return [
        ("FONTNAME", (0, 0), (-1, -1), PLAIN), ("VALIGN", (0, 0), (-1, -1), "TOP"), ("LEFTPADDING", (0, 0), (-1, -1), 0),
        ("RIGHTPADDING", (0, 0), (-1, -1), _INNER), ("TOPPADDING", (0, 0), (-1, -1), 3), ("BOTTOMPADDING", (0, 0), (-1, -1), 3.4),
        *([("LINEBELOW", (0, 0), (-1, 0), 0.5, INK)] if top else []),
        *(("LINEBELOW", (0, end + top), (-1, end + top), 0.25, LINE) for end in ends),
    ]


def _set(piece: Flowable | list[Run], right: bool) -> Flowable:
    return piece if isinstance(piece, Flowable) else Paragraph(markup(piece), STYLES["number" if right else "cell"])


def _pieces(cell: Cell, width: float) -> list[Flowable | list[Run]]:
    """The cell in pieces that each fit on a page, however wide their letters are."""
    if isinstance(cell, Flowable):
        return [cell]
    runs = [(plain(text), tone) for text, tone in ([(cell, "")] if isinstance(cell, str) else cell)]
    room = max(40, int(width * _LETTERS_PER_POINT))
    pieces: list[list[Run]] = [[]]
    free = room
    for text, tone in runs:
        while len(text) > free:
            cut = text.rfind(" ", 0, free) if " " in text[free // 2 : free] else free
            pieces[-1].append((text[:cut], tone))
            pieces.append([])
            text, free = text[cut:].lstrip(" "), room
        pieces[-1].append((text, tone))
        free -= len(text)
    return pieces
