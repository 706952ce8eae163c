"""Lengths and times as people write them: 12' 3", 3 1/2 in, 7:35, 7 h 35 min.

The walk's page reads by the same rules and the same tables (``for_browser``); a test compares the
two over a generated corpus.
"""

import re
from fractions import Fraction

from inspector.values.numbers import MINUS, NotANumber, parse_number, written_number
from inspector.values.unit_tables import ALIASES, LOOKALIKES, QUANTITY, UNITS
from inspector.values.units import convert

# Quantity -> what people write behind a number of it -> our one name for the unit.
MARKS = {
    "length": {
        "'": "ft",
        "ft": "ft",
        "feet": "ft",
        "foot": "ft",
        '"': "in",
        "in": "in",
        "inch": "in",
        "inches": "in",
        "m": "m",
        "cm": "cm",
        "mm": "mm",
    },
    "duration": {
        "h": "h",
        "hours": "h",
        "hour": "h",
        "hrs": "h",
        "hr": "h",
        "min": "min",
        "s": "s",
        "sec": "s",
        "days": "days",
        "day": "days",
    },
}
# What may follow a unit in one measure, and how many of it make one of the unit before.
FOLLOWING = {"ft": ("in", 12), "days": ("h", 24), "h": ("min", 60), "min": ("s", 60)}
FRACTIONS = {"½": "1/2", "¼": "1/4", "¾": "3/4", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8"}
# In each of these an hour and a minute are the usual pair; in minutes 7:35 could be either.
_BY_THE_CLOCK = ("h", "days")

_SPACES = re.compile(r"[\u00a0\u2009\u202f\s]+")
_PLAIN = re.compile(r"[+-]?[0-9., ]*")
_CLOCK = re.compile(r"([+-]?)([0-9]+):([0-5][0-9])(?::([0-5][0-9]))?")
_PART = re.compile(
    r"([0-9]+[ -][0-9]+/[0-9]+|[0-9]+/[0-9]+|[0-9]+(?:[.,][0-9]+)?|[.,][0-9]+) ?"
    r"([a-z]+|['\"])?(?: ?- ?| )?"
)
_MIXED = re.compile(r"(?:([0-9]+)[ -])?([0-9]+)/([0-9]+)")


def parse_measure(text: object, unit: str) -> tuple[float, str]:
    """Read a number that may carry its own units.

    Parameters
    ----------
    text : object
        As typed, or a number.
    unit : str
        The unit that holds where the text names none.

    Returns
    -------
    tuple of (float, str)
        The number and its unit: the first that the text names, else `unit` as given.

    Raises
    ------
    NotANumber
        As ``parse_number``, with the two ways in ``ways`` where the text has two meanings.

    Examples
    --------
    >>> parse_measure("12' 3\\"", "m"), parse_measure("3 1/2", "in"), parse_measure("7:30", "h")
    ((12.25, 'ft'), (3.5, 'in'), (7.5, 'h'))
    """
    name = (unit or "").strip().translate(LOOKALIKES)
    quantity = QUANTITY.get(ALIASES.get(name, name), "")
    plain = _spelled(str(text))
    if not isinstance(text, str) or quantity not in MARKS or _PLAIN.fullmatch(plain):
        return parse_number(text), unit
    clock = _CLOCK.fullmatch(plain) if quantity == "duration" else None
    if clock:
        return _by_the_clock(plain, clock, ALIASES.get(name, name))
    return _parts_together(plain, quantity, unit)


def parse_in(text: object, unit: str) -> float:
    """Read a number that may carry its own units, in a given unit.

    Parameters
    ----------
    text : object
        As typed, or a number.
    unit : str
        The unit that holds where the text names none, and that of the result.

    Returns
    -------
    float

    Raises
    ------
    NotANumber

    Examples
    --------
    >>> parse_in("1' 6\\"", "in"), parse_in("9,6", "mm")
    (18.0, 9.6)
    """
    value, own = parse_measure(text, unit)
    return value if own == unit else convert(value, own, unit)


def for_browser() -> dict[str, object]:
    """Return the tables by which the page reads, as plain JSON data.

    Returns
    -------
    dict
        In the shape that ``page/typed_number.js`` documents.
    """
    quantities = {unit: quantity for quantity in MARKS for unit in UNITS[quantity]}
    return {
        "marks": MARKS,
        "following": FOLLOWING,
        "fractions": FRACTIONS,
        "quantities": quantities,
        "byTheClock": _BY_THE_CLOCK,
    }


def _spelled(text: str) -> str:
    """Return the text with one spelling of quotes, fractions, spaces and the minus sign."""
    plain = text.replace(MINUS, "-").lower()
    for sign, spelled in FRACTIONS.items():
        plain = plain.replace(sign, f" {spelled}")
    for marks, one in (("′’‘´", "'"), ("″”“", '"')):
        for mark in marks:
            plain = plain.replace(mark, one)
    return _SPACES.sub(" ", plain.replace("''", '"')).strip()


def _by_the_clock(plain: str, clock: re.Match, unit: str) -> tuple[float, str]:
    """Hours and minutes, with seconds where there are any."""
    sign, hours, minutes, seconds = clock.groups()
    if unit not in _BY_THE_CLOCK and seconds is None:
        ways = (f"{hours} h {int(minutes)} min", f"{hours} min {int(minutes)} s")
        raise _asked_back(plain, ways)
    total = int(hours) + Fraction(int(minutes), 60) + Fraction(int(seconds or 0), 3600)
    return float(-total if sign == "-" else total), "h"


def _parts_together(plain: str, quantity: str, unit: str) -> tuple[float, str]:
    """Add the parts of a measure, each less than one of the part before it."""
    sign, rest = (plain[0], plain[1:].strip()) if plain[:1] in ("+", "-") else ("", plain)
    parts = _parts_of(rest, plain)
    # Only the last part may be broken: nobody writes 12.5' 3".
    if any(not number.isdigit() for number, _ in parts[:-1]):
        raise _unreadable(plain)
    total, before, worth = Fraction(0), "", Fraction(1)
    first = _unit_of(parts[0][1], quantity, "", unit, plain)
    for number, mark in parts:
        own, value = _unit_of(mark, quantity, before, unit, plain), _value(number, plain)
        if before:
            follower, count = FOLLOWING.get(before, ("", 1))
            if own != follower or value >= count:
                raise _unreadable(plain)
            worth /= count
        total, before = total + value * worth, own
    return float(-total if sign == "-" else total), first


def _parts_of(rest: str, plain: str) -> list[tuple[str, str | None]]:
    """Split a measure into its numbers, each with the mark behind it, if there is one."""
    parts = []
    while rest:
        found = _PART.match(rest)
        if not found:
            raise _unreadable(plain)
        parts.append(found.groups())
        rest = rest[found.end() :]
    if not parts:
        raise _unreadable(plain)
    return parts


def _unit_of(mark: str | None, quantity: str, before: str, unit: str, plain: str) -> str:
    """The unit that a mark names; without one that of the field, or what follows the last one."""
    if mark is None:
        return FOLLOWING.get(before, ("", 1))[0] if before else unit
    if mark not in MARKS[quantity]:
        raise _unreadable(plain)
    return MARKS[quantity][mark]


def _value(number: str, plain: str) -> Fraction:
    """The value of one part as it is written."""
    mixed = _MIXED.fullmatch(number)
    if not mixed:
        # Asked back by the same rule as every other number.
        parse_number(number)
        return Fraction(f"0{number}".replace(",", "."))
    whole, above, below = mixed.groups()
    if int(below) == 0 or (whole and int(above) >= int(below)):
        raise _unreadable(plain)
    value = Fraction(int(above), int(below))
    # 31/2 is what a thumb makes of 3 1/2.
    if value >= 1 and len(above) > 1:
        ways = (f"{above[:-1]} {above[-1]}/{below}", written_number(float(value)))
        raise _asked_back(plain, ways)
    return int(whole or 0) + value


def _asked_back(plain: str, ways: tuple[str, str]) -> NotANumber:
    sentence = f"'{plain}' can be read in two ways: write {ways[0]} or {ways[1]}."
    return NotANumber(sentence, text=plain, ways=ways)


def _unreadable(plain: str) -> NotANumber:
    sentence = (
        f"'{plain[:40]}' is not a measure: write it like 9.6, 12' 3\", 3 1/2 in, "
        "7:35 or 7 h 35 min."
    )
    return NotANumber(sentence, text=plain, ways=())
