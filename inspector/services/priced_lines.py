"""Work lines that are priced by the surveyor's rate book: a quantity at a rate."""

from inspector.record.catalogue import Catalogue
from inspector.values.errors import InspectorError
from inspector.values.field import Field, FieldRefused
from inspector.values.numbers import parse_number, written_number

AMOUNTS = ("low", "likely", "high")
# A rate or a quantity beyond this is a slip of the finger.
LARGEST = 1e9
QUANTITY = Field("quantity", "Quantity", low=0, high=LARGEST)


class BadRate(InspectorError):
    """A rate, or a quantity at a rate, that cannot be used. Attribute: ``field``."""


def line_by_rate(catalogue: Catalogue, rate_id: str, quantity: str) -> dict[str, str]:
    """Return the figures of a work line that is priced by a rate.

    Parameters
    ----------
    catalogue : Catalogue
        With the rate book.
    rate_id : str
        "" where the line names no rate.
    quantity : str
        As typed, in the rate's unit.

    Returns
    -------
    dict of str to str
        Low, likely and high as text, the quantity and its unit, and in words what they were made
        from; empty where no rate is named.

    Raises
    ------
    BadRate
        Where the rate is not in the book any more, or the quantity cannot be used.
    """
    # Priced by hand, which needs no rate.
    if not rate_id:
        return {}
    rate = catalogue.get("rates", rate_id)
    if rate is None:
        sentence = "That rate is not in the book any more; choose another or type the costs."
        raise BadRate(sentence, field="rate")
    try:
        amount = QUANTITY.parse(quantity)
    except FieldRefused as refusal:
        raise BadRate(str(refusal), field=refusal.field) from refusal
    # Kept as text that is read back in one way only, like everything typed.
    costs = {name: written_number(parse_number(rate[name]) * amount) for name in AMOUNTS}
    quantity = quantity.strip()
    how_much = {"quantity": quantity, "quantity_unit": rate["unit"]}
    return {**costs, **how_much, "rate": _rate_text(rate, quantity)}


def _rate_text(rate: dict[str, str], quantity: str) -> str:
    """A rate in words, as the report prints it: "12 m² at 120 crowns/m², coating, 2026-09-01"."""
    price = f"{rate['likely']} {rate['currency']}/{rate['unit']}"
    parts = [f"{quantity} {rate['unit']} at {price}", rate["name"], rate.get("on")]
    return ", ".join(part for part in parts if part)
