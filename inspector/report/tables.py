"""Tables without cages, whose cells may hold any text of any length: a long cell goes on in rows of its own."""

from collections.abc import Sequence

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
