"""Text for spreadsheet cells: what begins like a formula is made plain text. Quoting in CSV does not stop a spreadsheet from running it (CWE-1236)."""

_STARTS = ("=", "+", "-", "@", "\t", "\r", "\n", "\uff1d", "\uff0b", "\uff0d", "\uff20")


def safe_cell(text: str) -> str:
    """The text with an apostrophe before it where a spreadsheet would take it for a formula. True numbers are to be written as numbers, not through here."""
    return "'" + text if text.startswith(_STARTS) or text.lstrip(" ").startswith(_STARTS) else text
