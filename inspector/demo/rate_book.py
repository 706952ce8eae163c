"""The invented rate book of the demo, and work lines priced from it.

The lines are priced as the rate page would price them, in an invented currency.
"""

from inspector.demo.candidate import Entries
from inspector.demo.sheet_lines import logical_lines
from inspector.values.numbers import parse_number, written_number

CURRENCY = "crowns"
PRICED_ON = "2026-09-01"
SOURCE = "Invented for the demo; no yard ever quoted it"
_FIELDS = ("id", "name", "unit", "low", "likely", "high")
_BOOK = """
demo-coat|Blasting and coating, weather deck|m²|95|140|230
demo-steel|Steel renewed, plate and stiffener|t|8200|11500|17000
demo-house|House built and fitted out, by floor|m²|3900|5200|7400
demo-lining|Linings and insulation renewed|m²|310|420|680
demo-pipe|Pipe renewed, 4 in, fitted|m|260|370|590
demo-cable|Main cable pulled|m|85|120|190
demo-wet|Wet unit renewed|piece|11000|14500|21000
demo-hose|Hydraulic hose renewed|piece|340|480|800
demo-dock|Dry dock, one day with services|day|14000|18500|26000
demo-sample|Sample drawn and analysed|piece|160|240|420
"""


def _rate(line: str) -> dict[str, str]:
    """Return a rate of the book, written id|name|unit|low|likely|high."""
    named = dict(zip(_FIELDS, line.split("|"), strict=True))
    return named | {"currency": CURRENCY, "on": PRICED_ON, "source": SOURCE}


RATES = tuple(_rate(line) for line in logical_lines(_BOOK))


# The lines of ``work_lines`` count from 1 and stay below this number.
FIRST_NUMBER = 60


def by_rate(text: str) -> Entries:
    """Return the entries of work lines that are priced by the rate book.

    Parameters
    ----------
    text : str
        Lines sequence|system|unit|act|text|weight|rate|quantity.

    Returns
    -------
    Entries

    Raises
    ------
    KeyError
        A rate is not in the book.
    """
    return tuple(
        entry
        for number, line in enumerate(logical_lines(text), FIRST_NUMBER)
        for entry in _work_line(f"scope/demo-{number}", line)
    )


def _work_line(subject: str, line: str) -> Entries:
    """Return the entries of a work line that is priced by a rate and a quantity."""
    parts = (part.strip() for part in line.split("|"))
    sequence, system, unit, act, text, weight, rate_id, quantity = parts
    rate = {rate["id"]: rate for rate in RATES}[rate_id]
    amounts = {
        name: written_number(parse_number(rate[name]) * parse_number(quantity))
        for name in ("low", "likely", "high")
    }
    priced_by = (
        f"{quantity} {rate['unit']} at {rate['likely']} {CURRENCY}/{rate['unit']}, "
        f"{rate['name']}, {PRICED_ON}"
    )
    values = {
        "sequence": sequence,
        "system": system,
        "unit": unit,
        "act": act,
        "text": text,
        **amounts,
        "weight": weight,
        "quantity": quantity,
        "quantity_unit": rate["unit"],
        "rate": priced_by,
    }
    return tuple((subject, name, value) for name, value in values.items() if value)
