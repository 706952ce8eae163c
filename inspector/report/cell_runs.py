"""What a cell of a table may hold: runs of text with their tones, or something drawn."""

from reportlab.platypus import Flowable

# A run is a piece of text and its tone: "" plain, "b" bold, "i" slanted, "soft", and "now", the
# accent for what a person must act on. With the tone PAGE the text is the key of a place, of which
# the page is printed; with ANCHOR it is the key of this very place; with "to:<key>" it leads there.
Run = tuple[str, str]
Cell = str | Flowable | list[Run]
# A cell as the layout handles it.
Content = Flowable | list[Run]

PAGE, ANCHOR, TO = "page", "anchor", "to:"
