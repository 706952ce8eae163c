"""The invented rate book of the demo, in an invented currency, and work lines priced by it as the rate page would price them."""

from inspector.demo.candidate import Entries
from inspector.quantities import parse_number

CURRENCY = "crowns"
ON = "2026-09-01"
SOURCE = "Invented for the demo; no yard ever quoted it"
_FIELDS = ("id", "name", "unit", "low", "likely", "high")
RATES = tuple(dict(zip(_FIELDS, line.split("|"), strict=True)) | {"currency": CURRENCY, "on": ON, "source": SOURCE} for line in """
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
""".strip().splitlines())


def by_rate(text: str, start: int = 60) -> Entries:
    """Lines `sequence|system|unit|act|text|weight|rate|quantity` -> entries of work lines, numbered from `start`; a rate not in the book is a KeyError."""
    return tuple(entry for number, line in enumerate(text.strip().splitlines(), start) for entry in _line(f"scope/demo-{number}", line))


def _line(subject: str, line: str) -> Entries:
    sequence, system, unit, act, text, weight, rate_id, quantity = line.split("|")
    rate = {one["id"]: one for one in RATES}[rate_id]
    amounts = {name: f"{parse_number(rate[name]) * parse_number(quantity):.10g}" for name in ("low", "likely", "high")}
    told = f"{quantity} {rate['unit']} at {rate['likely']} {CURRENCY}/{rate['unit']}, {rate['name']}, {ON}"
    values = {"sequence": sequence, "system": system, "unit": unit, "act": act, "text": text, **amounts, "weight": weight, "quantity": quantity, "rate": told}
    return tuple((subject, name, value) for name, value in values.items() if value)
