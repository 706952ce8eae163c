"""Reading a number as a person types it, and differences of numbers as they are written."""

import math
import re
from decimal import Decimal

from inspector.values.errors import InspectorError

MINUS = "−"
# No-break space, thin space and narrow no-break space: what people and other programs group digits
# with.
_GROUP_SPACES = re.compile(r"[\u00a0\u2009\u202f]")
_NUMBER = re.compile(r"[+-]?(?:[0-9]+|[0-9]{1,3}(?: [0-9]{3})+)?(?:[.,][0-9]+)?")
# A leading zero cannot begin a thousand, so 0.125 has one meaning only.
_THOUSANDS_OR_DECIMALS = re.compile(r"([+-]?[1-9][0-9]{0,2})[.,]([0-9]{3})")
_LONGEST_SHOWN = 40


class NotANumber(InspectorError):
    """The text is not a number that can be read in one way only. Attribute: ``text``;
    ``ways`` where it has two meanings: how to write each.
    """


def parse_number(text: str | int | float) -> float:
    """Read a number as a surveyor types it.

    Accepts a decimal point or comma ("9.6", "9,6", ".5"), a sign ("-18", "−18", "+3") and spaces
    that group thousands by three ("1 200", "12 000,5"). Refuses exponents, units, ">1000" and
    infinities. A number with one separator that exactly three digits follow ("1,200", "1.025")
    means a thousand in one country and decimals in another: it is asked back and never guessed.

    Parameters
    ----------
    text : str or int or float
        What was typed, or a number as it is.

    Returns
    -------
    float

    Raises
    ------
    NotANumber
        With ``text`` and one sentence that says what would be right.

    Examples
    --------
    >>> parse_number("12 000,5"), parse_number("0.125"), parse_number("1.0250")
    (12000.5, 0.125, 1.025)
    """
    # What our own pages print is read back: groups set apart, and a real minus sign.
    plain = _GROUP_SPACES.sub(" ", str(text)).strip().replace(MINUS, "-")
    # A number from JSON or TOML has one meaning; only what people type is ambiguous.
    if isinstance(text, int | float) and not isinstance(text, bool):
        return _finite(text, plain)
    ambiguous = _THOUSANDS_OR_DECIMALS.fullmatch(plain)
    if ambiguous:
        raise _two_meanings(plain, *ambiguous.groups())
    # The pattern allows no digits at all, as before the point of ".5"; the last one must be one.
    if not _NUMBER.fullmatch(plain) or not plain[-1:].isdigit():
        sentence = (
            f"'{_shortened(plain)}' is not a number: "
            "write digits with one decimal point or comma, like 9.6."
        )
        raise NotANumber(sentence, text=text)
    return _finite(plain.replace(" ", "").replace(",", "."), plain)


def _two_meanings(plain: str, whole: str, decimals: str) -> NotANumber:
    """The question which number is meant, with a way to write each that has one meaning only."""
    thousands = whole + decimals
    short = decimals.rstrip("0")
    # "1.200" is also 1.2; "1.025" needs a fourth decimal to say that its three are decimals.
    decimal = f"{whole}.{short}" if short != decimals else f"{whole}.{decimals}0"
    decimal = decimal.removesuffix(".")
    sentence = f"'{plain}' can be read in two ways: write {thousands} or {decimal}."
    return NotANumber(sentence, text=plain, ways=(thousands, decimal))


def _shortened(text: str) -> str:
    return text if len(text) <= _LONGEST_SHOWN else f"{text[:_LONGEST_SHOWN]}..."


def _finite(number: str | int | float, plain: str) -> float:
    """Return the number; refuse infinity and what is no number."""
    try:
        value = float(number)
    # An integer in JSON may have thousands of digits, more than any float.
    except OverflowError:
        value = math.inf
    if not math.isfinite(value):
        sentence = f"'{_shortened(plain)}' is not a finite number, so it cannot be a reading."
        raise NotANumber(sentence, text=plain)
    return value


def written_number(value: float) -> str:
    """Return a number as text that ``parse_number`` reads back in one way only.

    Parameters
    ----------
    value : float

    Returns
    -------
    str
        At most ten significant digits, with a decimal point and without groups.

    Examples
    --------
    >>> written_number(1.025), written_number(1200.0), written_number(0.5)
    ('1.0250', '1200', '0.5')
    """
    # Ten digits hide the last bits of a sum, and the form has no exponent that a reader would trip
    # over.
    text = f"{Decimal(f'{value:.10g}'):f}"
    return f"{text}0" if _THOUSANDS_OR_DECIMALS.fullmatch(text) else text


def difference(a: float, b: float) -> float:
    """Return a − b of the numbers as they are written.

    So 0.3 − 0.1 is 0.2 and not its binary neighbour.

    Parameters
    ----------
    a, b : float
        Numbers in the same unit.

    Returns
    -------
    float

    Examples
    --------
    >>> difference(0.3, 0.1)
    0.2
    """
    # 0.3 − 0.1 is 0.2 on paper; in binary it is a little less, which could turn a verdict at a
    # limit.
    return float(Decimal(repr(float(a))) - Decimal(repr(float(b))))
