"""Text for spreadsheet cells: what begins like a formula is made plain text.

Quoting in CSV does not stop a spreadsheet from running it (CWE-1236).
"""

# The last four are the wide forms of the first four.
_STARTS = ("=", "+", "-", "@", "\t", "\r", "\n", "\uff1d", "\uff0b", "\uff0d", "\uff20")


def safe_cell(text: str) -> str:
    """Return a text with an apostrophe before it where a spreadsheet would take it for a formula.

    Parameters
    ----------
    text : str
        True numbers are written as numbers, not through here.

    Returns
    -------
    str
    """
    # A text that begins like a formula would be calculated by whoever opens the file.
    return "'" + text if text.startswith(_STARTS) or text.lstrip(" ").startswith(_STARTS) else text
