"""References from one page to another: the number of a page is known only after a layout.

A reference is written into a text as a sign that nobody can type, and is replaced by the page of
the layout before; the layouts end once no number changes any more.
"""

import re
from collections.abc import Mapping

from reportlab.platypus import Paragraph

_PAGE = re.compile("\x01([^\x03]*)\x03")
_LINK = re.compile("\x02([^\x03]*)\x03([^\x04]*)\x04")
_SIGNS = re.compile("[\x01\x02]")
_SOFT = "#47606b"


def key_of(*parts: object) -> str:
    """Return the name of a place in the report, whatever its parts were typed as.

    Parameters
    ----------
    *parts : object

    Returns
    -------
    str

    Examples
    --------
    >>> key_of("check", "hull", "frame 12/b")
    'check-hull-frame-12-b'
    """
    return "-".join(re.sub(r"[^0-9A-Za-z]+", "-", str(part)) for part in parts)


def page_of_key(key: str) -> str:
    """Return markup that prints the page of a place, as a link: "p 24".

    Parameters
    ----------
    key : str

    Returns
    -------
    str
    """
    return f"\x01{key}\x03"


def link_to(key: str, markup: str) -> str:
    """Return markup that leads to a place.

    Parameters
    ----------
    key : str
    markup : str
        What is printed.

    Returns
    -------
    str
    """
    return f"\x02{key}\x03{markup}\x04"


def resolved(markup: str, places: Mapping[str, int], *, linked: bool = True) -> str:
    """Return markup with its references as the layout before found them.

    Parameters
    ----------
    markup : str
    places : mapping of str to int
        Key -> page.
    linked : bool
        False where the places are those of another file.

    Returns
    -------
    str
        What leads nowhere is printed without a link.

    Examples
    --------
    >>> resolved(page_of_key("a") + link_to("b", "there"), {})
    'there'
    """

    def page(found: re.Match) -> str:
        key = found[1]
        if key not in places:
            return ""
        words = f"p\u00a0{places[key]}"
        shown = f'<font color="{_SOFT}"><b>{words}</b></font>'
        return f'<a href="#{key}">{shown}</a>' if linked else shown

    def link(found: re.Match) -> str:
        key, words = found.groups()
        return f'<a href="#{key}">{words}</a>' if linked and key in places else words

    return _LINK.sub(link, _PAGE.sub(page, markup))


class ReferringText(Paragraph):
    """A paragraph that may refer to pages and may be referred to.

    Attributes
    ----------
    template : str
        The markup with its references; "" where it has none.
    anchors : tuple of str
        The keys by which this place is referred to.
    """

    template: str = ""
    anchors: tuple[str, ...] = ()

    def wrap(self, width: float, height: float) -> tuple[float, float]:
        """Return the room that the text takes with the pages of the layout before.

        Parameters
        ----------
        width, height : float
            The room there is, points.

        Returns
        -------
        tuple of float
            Width and height, points.
        """
        self._resolve()
        return super().wrap(width, height)

    def _resolve(self) -> bool:
        """Put the pages in; True where they are others than before."""
        document = getattr(getattr(self, "canv", None), "_doctemplate", None)
        if not self.template or document is None:
            return False
        other = document.of_whole
        places = document.places if other is None else other
        text = resolved(self.template, places, linked=other is None)
        if text == self._shown:
            return False
        keep = self.keepWithNext if "keepWithNext" in self.__dict__ else None
        self._shown = text
        Paragraph.__init__(self, text, self.style)
        if keep is not None:
            self.keepWithNext = keep
        return True

    def split(self, width: float, height: float) -> list[Paragraph]:
        """Split between lines; the first part keeps what refers to this place.

        Parameters
        ----------
        width, height : float
            The room that is left, points.

        Returns
        -------
        list of Paragraph
        """
        parts = super().split(width, height)
        if parts and parts[0] is not self:
            parts[0].anchors = self.anchors
        return parts

    def draw(self) -> None:
        """Draw the lines, and note the page for whoever refers to it."""
        for key in self.anchors:
            self.canv._doctemplate.note(key)
            self.canv.bookmarkHorizontal(key, 0, self.height)
        super().draw()


def referring(
    kind: type[ReferringText], markup: str, style, anchors: tuple[str, ...] = ()
) -> ReferringText:
    """Return a paragraph whose markup may have references.

    Parameters
    ----------
    kind : type
        ReferringText or a kind of it.
    markup : str
    style : ParagraphStyle
    anchors : tuple of str

    Returns
    -------
    ReferringText
    """
    shown = resolved(markup, {})
    made = kind(shown, style)
    made._shown = shown
    if _SIGNS.search(markup):
        made.template = markup
    if anchors:
        made.anchors = anchors
    return made
