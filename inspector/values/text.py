"""Small helpers of language: a capital at the start, names in a row, a count with its word."""

from collections.abc import Sequence


def capital(text: str) -> str:
    """Return a text with its first letter as a capital and the others as they are.

    Examples
    --------
    >>> capital("main engine of the USV")
    'Main engine of the USV'
    """
    return text[:1].upper() + text[1:]


def with_article(word: str) -> str:
    """Return a word after "a" or "an", by the sound of its first letter.

    Examples
    --------
    >>> with_article("office"), with_article("used part"), with_article("cabin")
    ('an office', 'a used part', 'a cabin')
    """
    # "used", "unit" and "one" begin with the sound of a consonant.
    sounds_open = word[:1].lower() in "aeiou" and not word.lower().startswith(("us", "uni", "one"))
    return f"{'an' if word and sounds_open else 'a'} {word}"


def listed(names: Sequence[str], last: str = "and") -> str:
    """Return names in a row, the last one after a word.

    Parameters
    ----------
    names : sequence of str
    last : str
        The word before the last name.

    Returns
    -------
    str

    Examples
    --------
    >>> listed(["hull"]), listed(["hull", "deck", "tanks"]), listed(["fuel", "water"], "or")
    ('hull', 'hull, deck and tanks', 'fuel or water')
    """
    if len(names) < 2:
        return "".join(names)
    # No comma before the last: lists are short, and names have commas of their own.
    return f"{', '.join(names[:-1])} {last} {names[-1]}"


def counted(count: int, singular: str, plural: str = "") -> str:
    """Return a count with its word.

    Parameters
    ----------
    count : int
    singular, plural : str
        The word for one and for several; without ``plural``, the singular with an s.

    Returns
    -------
    str

    Examples
    --------
    >>> counted(1, "photo"), counted(2, "photo"), counted(2, "battery", "batteries")
    ('1 photo', '2 photos', '2 batteries')
    """
    return f"{count} {singular if count == 1 else plural or singular + 's'}"
