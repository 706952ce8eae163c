"""Text as posted by a form: its line ends, and the sentence for one that is too long."""


def posted_text(text: str | None) -> str:
    """Return what was typed, without blanks at its ends and with line ends of one character.

    A browser posts two characters for each line end and counts one.

    Parameters
    ----------
    text : str or None

    Returns
    -------
    str
    """
    # A browser posts two characters for a line end that it counted as one.
    return (text or "").replace("\r\n", "\n").replace("\r", "\n").strip()


def length_fault(label: str, text: str, most: int) -> str:
    """The sentence for a text of more than `most` characters, "" for one that fits."""
    if len(text) <= most:
        return ""
    return (
        f"{label}: the text has {len(text)} characters; at most {most} can be kept. "
        "Shorten it; nothing was recorded."
    )
