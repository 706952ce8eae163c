"""Typed cells as text in the reader's units: quantities, spans, money, dates, what is not known.

Pages, report, spreadsheets and comparison all print their cells through this module, so that a
figure reads the same everywhere; the digits of a number are those of ``formatting``.
"""

import math
from datetime import date
from decimal import Decimal

from inspector.values.formatting import amount, printed_unit, rounded_sum, show, with_printed_unit
from inspector.values.quantity import Cell, Money, Quantity, Sentence
from inspector.values.units import WrongUnit, convert, in_units, known_unit

# The one word for a figure that is missing, and its sign in the narrow cell of a table.
NOT_KNOWN = "not known"
DASH = "–"

# A converted figure may be coarser by a factor of two, as a power of ten.
_COARSER = 0.3
# A number of no more digits was typed, or is a constant of a rule: it is shown as it is.
_TYPED_DIGITS = 4


def figure(
    value: float | None,
    unit: str,
    system: str = "si",
    digits: int | None = None,
    *,
    signed: bool = False,
    with_unit: bool = True,
) -> str:
    """Return one figure in the reader's units, with no more digits than it can claim.

    Parameters
    ----------
    value : float or None
        The figure [unit]; None is not known.
    unit : str
        A known unit.
    system : str
        "si" or "us": the reader's units.
    digits : int, optional
        Decimals in ``unit``; where the unit changes, as many as keep that resolution. Without it a
        calculated figure has three significant digits, and one that was typed (at most four digits)
        stays as it is. Whole counts are never cut.
    signed : bool
        Whether a plus is shown.
    with_unit : bool
        Whether the unit follows.

    Returns
    -------
    str
        NOT_KNOWN for None.

    Examples
    --------
    >>> figure(12345.6, "kg"), figure(9.6, "mm", "us"), figure(None, "kg")
    ('12\\xa0300 kg', '0.378 in', 'not known')
    """
    if value is None:
        return NOT_KNOWN
    shown, target = in_units(value, unit, system)
    if digits is not None:
        text = show(shown, target, _digits_in(unit, target, digits))
    # A conversion makes digits that nobody measured: three are kept.
    elif target != known_unit(unit):
        text = show(_three_digits(shown), target)
    # What was typed comes back as typed, so that a surveyor finds his own figure again.
    elif _digits_of(value) <= _TYPED_DIGITS or not target:
        text = show(shown, target)
    else:
        text = show(_three_digits(shown), target)
    if not with_unit:
        text = text.removesuffix(printed_unit(target)).rstrip() if target else text
    return f"+{text}" if signed and value > 0 else text


def _digits_in(unit: str, target: str, digits: int) -> int:
    """The decimals that resolve about as finely in one unit as a number of them does in another.

    Negative where even tens or hundreds do: whole cubic metres are hundreds of US gallons.
    """
    if target == known_unit(unit):
        return digits
    # Of two temperatures only the difference is a step, whatever the zero of the scale.
    step = convert(10.0**-digits, unit, target) - convert(0.0, unit, target)
    return math.ceil(-math.log10(step) - _COARSER)


def _three_digits(value: float) -> float:
    return float(f"{value:.3g}")


def _digits_of(value: float) -> int:
    """How many digits it takes to write a value, without zeros that only keep a place."""
    if value % 1 == 0:
        return len(str(abs(int(value))))
    # Through Decimal, since a float prints 0.00001 with an exponent.
    text = f"{Decimal(repr(float(value))):f}".lstrip("-").strip("0").replace(".", "")
    return len(text.lstrip("0"))


def span_text(quantity: Quantity | None, system: str = "si", *, with_unit: bool = True) -> str:
    """Return a quantity as text: "9.6 mm", or "11 900 to 12 700 nmi" where it is a span.

    Parameters
    ----------
    quantity : Quantity or None
    system : str
        "si" or "us": the reader's units.
    with_unit : bool
        Whether the unit follows.

    Returns
    -------
    str
        NOT_KNOWN for None.
    """
    if quantity is None:
        return NOT_KNOWN
    low, high = (
        figure(end, quantity.unit, system, quantity.digits, signed=quantity.signed, with_unit=False)
        for end in (quantity.low, quantity.high)
    )
    # Ends that read alike are one figure: "3 to 3 m" would look like a mistake.
    text = low if low == high else f"{low} to {high}"
    unit = _reader_name(quantity.unit, system)
    return with_printed_unit(text, unit) if with_unit else text


def reader_unit(unit: str, system: str = "si") -> str:
    """Return the unit in which a reader of a system sees a unit.

    Parameters
    ----------
    unit : str
        A known unit; anything else (a currency) stays as it is.
    system : str
        "si" or "us".

    Returns
    -------
    str
    """
    return printed_unit(_reader_name(unit, system))


def _reader_name(unit: str, system: str) -> str:
    """The name of the unit in which a reader sees a unit; a currency stays as it is."""
    if not unit:
        return ""
    try:
        return in_units(1.0, unit, system)[1]
    # A surveyor may name any currency, which nothing converts.
    except WrongUnit:
        return unit


def money_text(money: Money | None, *, with_currency: bool = True) -> str:
    """Return a sum of money as text, as a span where it is one.

    Parameters
    ----------
    money : Money or None
    with_currency : bool
        Whether the currency follows.

    Returns
    -------
    str
        NOT_KNOWN for None.

    Examples
    --------
    >>> money_text(Money.exact(250.5, "EUR", as_typed=True)), money_text(None)
    ('250.50 EUR', 'not known')
    """
    if money is None:
        return NOT_KNOWN
    low, high = (_sum_text(end, money.as_typed) for end in (money.low, money.high))
    text = low if low == high else f"{low} to {high}"
    return f"{text} {money.currency}" if money.currency and with_currency else text


def _sum_text(value: float, as_typed: bool) -> str:
    return amount(value if as_typed else rounded_sum(value))


def date_text(day: date | None) -> str:
    """Return a date as ISO 8601 writes it, NOT_KNOWN for None."""
    return NOT_KNOWN if day is None else day.isoformat()


def minute_text(at: str) -> str:
    """Return a recorded time to the minute.

    Parameters
    ----------
    at : str
        ISO 8601, as a device's clock gave it; "" where it is not known.

    Returns
    -------
    str

    Examples
    --------
    >>> minute_text("2026-05-02T09:14:07.512Z")
    '2026-05-02 09:14'
    """
    return at[:16].replace("T", " ")


def cell_text(cell: Cell, system: str = "si", *, with_unit: bool = True) -> str:
    """Return what a cell holds as text, in the reader's units.

    Parameters
    ----------
    cell : str, int, Quantity, Money, Sentence, date or None
    system : str
        "si" or "us".
    with_unit : bool
        Whether a unit or currency follows; False under a heading that names it.

    Returns
    -------
    str
        NOT_KNOWN for None.

    Examples
    --------
    >>> figures = {"speed": Quantity.exact(9, "kn"), "range": None}
    >>> cell_text(Sentence("At {speed}: {range}.", figures))
    'At 9 kn: not known.'
    """
    if isinstance(cell, Quantity):
        return span_text(cell, system, with_unit=with_unit)
    if isinstance(cell, Money):
        return money_text(cell, with_currency=with_unit)
    if isinstance(cell, Sentence):
        parts = {name: cell_text(value, system) for name, value in cell.figures.items()}
        return cell.template.format(**parts)
    if isinstance(cell, date):
        return date_text(cell)
    return NOT_KNOWN if cell is None else str(cell)


def table_cell_text(cell: Cell, system: str = "si", unit: str = "") -> str:
    """Return what a cell of a table holds as text: without its unit below a heading that names it.

    Parameters
    ----------
    cell : Cell
    system : str
        "si" or "us".
    unit : str
        The unit or currency that the heading names; "" where it names none.

    Returns
    -------
    str
        DASH for None.
    """
    return DASH if cell is None else cell_text(cell, system, with_unit=not unit)


def heading_text(heading: str, unit: str, system: str = "si") -> str:
    """Return the heading of a column or an axis with the unit that its reader sees.

    Parameters
    ----------
    heading : str
    unit : str
        A known unit or a currency; "" for none.
    system : str
        "si" or "us".

    Returns
    -------
    str

    Examples
    --------
    >>> heading_text("mass", "t", "us"), heading_text("heel", "deg"), heading_text("name", "")
    ('mass, long ton', 'heel, °', 'name')
    """
    return ", ".join(part for part in (heading, reader_unit(unit, system)) if part)
