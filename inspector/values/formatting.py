"""A number as text: its digits, groups, sign and unit.

Everything that prints a number does it here, so that it reads the same everywhere; whole cells of
tables and sentences, in the reader's units, are made of it by ``cell_text``.
"""

from decimal import ROUND_HALF_UP, Decimal, localcontext

from inspector.values.numbers import MINUS, parse_number
from inspector.values.units import known_unit

NO_BREAK_SPACE = "\u00a0"
# Units that are printed by their sign, which follows the number without a space.
_SIGNS = {"deg": "°"}

_SIGNIFICANT = 4
# Ends of a span of points [0 to 100] that are nearer than this are printed as one figure.
ONE_FIGURE = 0.5


def show(value: float, unit: str | None, digits: int | None = None) -> str:
    """Return a number with its unit: "9.6 mm", "−18 °C", "0.42 %", "12 400 m²".

    Parameters
    ----------
    value : float
        The number [unit].
    unit : str or None
        A known unit; None or "" for a plain count.
    digits : int, optional
        Decimals. Without it, four significant digits (whole numbers are never cut) and no trailing
        zeros.

    Returns
    -------
    str
        Half is rounded away from zero; numbers of five digits and more are grouped by no-break
        spaces. Degrees of angle follow their number closely: "35°".

    Raises
    ------
    WrongUnit, NotANumber
        The unit is not known, or the value is not finite.
    """
    name = known_unit(unit)
    number = Decimal(repr(parse_number(value)))
    # Four digits are more than any gauge aboard has, and keep equal readings equal.
    decimals = max(0, _SIGNIFICANT - 1 - number.adjusted()) if digits is None else digits
    with localcontext() as exact:
        # Any float fits, so that no length of number can raise here.
        exact.prec = 400
        # Half up, as published tables round; Python's own rounding goes to the even digit.
        rounded = number.quantize(Decimal(1).scaleb(-decimals), rounding=ROUND_HALF_UP)
    text = f"{abs(rounded):f}"
    # Asked-for decimals stay, since they say how finely the figure was calculated.
    if digits is None and "." in text:
        text = text.rstrip("0").rstrip(".")
    # The sign of the rounded number: −0.001 m shown with two decimals is 0, and not −0.
    sign = MINUS if rounded < 0 else ""
    return with_printed_unit(f"{sign}{_grouped_digits(text)}", name)


def printed_unit(unit: str) -> str:
    """Return a unit as it is printed: "°" for deg, every other one by its name.

    Parameters
    ----------
    unit : str
        A known unit or a currency; "" for none.

    Returns
    -------
    str
    """
    return _SIGNS.get(unit, unit)


def with_printed_unit(number: str, unit: str) -> str:
    """Return a written number with its unit behind it.

    Parameters
    ----------
    number : str
    unit : str
        A known unit or a currency; "" for none.

    Returns
    -------
    str

    Examples
    --------
    >>> with_printed_unit("35", "deg"), with_printed_unit("9.6", "mm"), with_printed_unit("4", "")
    ('35°', '9.6 mm', '4')
    """
    printed = printed_unit(unit)
    return f"{number}{printed}" if unit in _SIGNS else f"{number} {printed}".rstrip()


def _grouped_digits(text: str) -> str:
    """Group the digits of a number from five on, with spaces that do not break."""
    whole, point, decimals = text.partition(".")
    # Years and four-digit figures are read at a glance; a group would only part them.
    if len(whole) < 5:
        return text
    return f"{int(whole):,}".replace(",", NO_BREAK_SPACE) + point + decimals


def grouped(value: float, form: str = ",.0f") -> str:
    """Return a number with its thousands set apart by a space that does not break.

    Parameters
    ----------
    value : float
    form : str
        A format that groups by commas.

    Returns
    -------
    str

    Examples
    --------
    >>> grouped(1234567.4).split()
    ['1', '234', '567']
    """
    return format(value, form).replace(",", NO_BREAK_SPACE).replace("-", MINUS)


def amount(value: float) -> str:
    """Return a sum of money as typed: grouped, with hundredths only where there are any.

    Parameters
    ----------
    value : float
        In the currency that the caller prints.

    Returns
    -------
    str

    Examples
    --------
    >>> amount(250), amount(250.5)
    ('250', '250.50')
    """
    return grouped(value, ",.2f").removesuffix(".00")


def rounded_sum(value: float) -> float:
    """Return an estimated sum in whole hundreds below 100 000, in whole thousands above.

    Parameters
    ----------
    value : float
        In any currency. Below 1000 it is rounded to whole units.

    Returns
    -------
    float

    Examples
    --------
    >>> rounded_sum(1234567.8), rounded_sum(23456.7), rounded_sum(123.4)
    (1235000.0, 23500.0, 123.0)
    """
    if abs(value) < 1000:
        return round(value, 0)
    # An estimate in single crowns would claim what no yard can.
    return round(value, -2 if abs(value) < 100_000 else -3)
