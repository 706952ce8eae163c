"""Codes that a phone's camera reads, drawn for the screen."""

import io

from markupsafe import Markup


def drawn(text: str) -> Markup:
    """Return the QR code of a text.

    Parameters
    ----------
    text : str
        "" for no code.

    Returns
    -------
    Markup
        An SVG that takes the size of what it stands in; "" for no text.
    """
    if not text:
        return Markup("")
    import segno

    out = io.BytesIO()
    # Medium correction: read from a screen with a scratch on it, and still coarse enough for an old
    # camera.
    segno.make(text, error="m", micro=False).save(
        out,
        kind="svg",
        border=4,
        # Black on white at night as well: cameras read no other.
        dark="#000",
        light="#fff",
        xmldecl=False,
        svgns=True,
        nl=False,
        omitsize=True,
    )
    # Our own drawing of our own text.
    return Markup(out.getvalue().decode())  # noqa: S704
