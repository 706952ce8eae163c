"""Where a line of the report may not end: within a number, and between a number and its unit.

A sum read as "120 0" on one line and "00" on the next is a sum misread. `unbroken` joins what
belongs together by no-break spaces; the tables then choose a size of type at which it fits.
"""

import re

from inspector.values.formatting import NO_BREAK_SPACE
from inspector.values.units import known_units

# Longer ones are identifiers or nonsense, and are broken like any endless word.
MOST_LETTERS = 40

_SPACE = "[ \u00a0\u202f]"
# Four groups at most and not within a longer row of them: "380 385 372 390 376" are five readings.
_GROUPED = rf"(?<!\d{_SPACE})\d{{1,3}}(?:{_SPACE}\d{{3}}){{1,3}}(?!{_SPACE}?\d)"
_NUMBER = rf"(?<![\w.,])[+−-]?(?:{_GROUPED}|\d+)(?:[.,:]\d+)*"
# "kg/m³" must be tried before "kg", which would leave the rest behind a break.
_LONGEST_FIRST = sorted(known_units(), key=len, reverse=True)
# A currency is three capitals, its sign or its usual word, alone or by hour, day or tonne;
# and whatever carries a sign that only units have ("m·rad", "kJ/kg") is a unit, though we cannot
# convert it.
_UNIT = "|".join(
    [
        *(re.escape(unit).replace(r"\ ", _SPACE) for unit in _LONGEST_FIRST),
        r"[A-Z]{3}(?:/\w{1,8})?",
        "[€$£]",
        r"(?:crowns?|dollars?|euros?|francs?|kroner?|kronor|pounds?|yen)(?:/\w{1,8})?",
        r"[^\W\d]{0,6}[/²³·°%‰µΩ][^\s,;:()]{0,8}",
    ]
)
# A surveyor may name any currency: after a no-break space the next word is the unit.
_AFTER = rf"(?:{_SPACE}(?:{_UNIT})(?![\w·/])|{NO_BREAK_SPACE}[^\W\d]\w*)"
_TOKEN = re.compile(rf"(?:[€$£±≈~<>≤≥]{_SPACE})?{_NUMBER}{_AFTER}?")
_AROUND = "()[]–-/.,;:…+~≈<>≤≥±×%€$£"
_BEFORE_UNIT = re.compile(rf"{NO_BREAK_SPACE}(?!\d{{3}}(?!\d))")


def unbroken(text: str) -> str:
    """Join every number, its groups and its unit by no-break spaces.

    Parameters
    ----------
    text : str
        A text as printed, on one line.

    Returns
    -------
    str
        The same letters; only spaces became no-break spaces.

    Examples
    --------
    >>> unbroken("120 000 to 140 000 EUR").split(" ")
    ['120\\xa0000', 'to', '140\\xa0000\\xa0EUR']
    """
    return _TOKEN.sub(lambda found: re.sub(_SPACE, NO_BREAK_SPACE, found[0]), text)


def numbers_in(text: str) -> list[str]:
    """Return the words of a text that are a number, or several with a dash or a stroke between.

    Parameters
    ----------
    text : str
        As ``unbroken`` returns it.

    Returns
    -------
    list of str
    """
    return [word for word in text.split(" ") if len(word) <= MOST_LETTERS and _is_number(word)]


def _is_number(word: str) -> bool:
    """Whether a word is a number, apart from brackets and stops around it."""
    found = _TOKEN.search(word)
    return found is not None and not _TOKEN.sub("", word).strip(_AROUND)


def loosened(text: str) -> str:
    """Return a text with a break allowed before each unit, but still none within a number.

    Parameters
    ----------
    text : str
        As ``unbroken`` returns it.

    Returns
    -------
    str
    """
    return _BEFORE_UNIT.sub(" ", text)
