"""The rate book: the surveyor's own prices per unit of work, with currency, date and where they come from; kept with the catalogue, never shipped."""

from flask import Blueprint, flash, redirect, render_template, request, url_for

from inspector.errors import InspectorError
from inspector.quantities import parse_number
from inspector.record.catalogue import Catalogue
from inspector.web.desk import desk
from inspector.web.forms import TokenForm

pages = Blueprint("rates", __name__)
TEXTS = ("name", "unit", "currency", "on", "source")
AMOUNTS = ("low", "likely", "high")
MOST = 400


class BadRate(InspectorError):
    """A line of the rate book that cannot be used. Attribute: ``field``."""


@pages.route("/rates", methods=["GET", "POST"])
def rates():
    """The rate book; a posted line is added, or kept under its id."""
    fault, typed = "", {}
    if request.method == "POST":
        typed = {name: request.form.get(name, "").strip()[:120] for name in (*TEXTS, *AMOUNTS)}
        try:
            _check(typed)
        except BadRate as problem:
            fault = str(problem)
        else:
            known = desk().catalogue.get("rates", request.form.get("id", ""))
            if known is None and len(desk().catalogue.all("rates")) >= MOST:
                fault = f"The rate book holds {MOST} lines; take one out first."
            else:
                desk().catalogue.put("rates", {**typed, **({"id": known["id"]} if known else {})})
                flash("The rate is kept. Lines that were priced before keep their amounts.")
                return redirect(url_for("rates.rates"))
    return render_template("rates/rates.html", rates=desk().catalogue.all("rates"), typed=typed, fault=fault, form=TokenForm(), title="Rate book",
                           inspection=None), 400 if fault else 200


@pages.get("/rates/<rate_id>/gone")
def book_again(rate_id: str):
    """The address of a button, loaded again, leads back to the book."""
    return redirect(url_for("rates.rates"))


@pages.post("/rates/<rate_id>/gone")
def take_out(rate_id: str):
    """Take a line out of the book; work lines that were priced by it keep their amounts."""
    desk().catalogue.remove("rates", rate_id)
    return redirect(url_for("rates.rates"))


def _check(typed: dict[str, str]) -> None:
    if not typed["name"] or not typed["unit"]:
        raise BadRate("A rate needs what it is for and its unit, such as m², m, t, h or piece.", field="name")
    amounts = [_amount(name, typed[name]) for name in AMOUNTS]
    if amounts != sorted(amounts):
        raise BadRate("A rate must rise from low over likely to high.", field="low")


def _amount(name: str, text: str) -> float:
    try:
        value = parse_number(text)
    except InspectorError as problem:
        raise BadRate(f"{name.capitalize()}: {problem}", field=name) from problem
    if not 0 <= value <= 1e9:
        raise BadRate(f"{name.capitalize()}: {text} cannot be; expected 0 or more.", field=name)
    return value


def line_by_rate(catalogue: Catalogue, rate_id: str, quantity: str) -> dict[str, str]:
    """Low, likely and high of a work line by a rate and a quantity, as text, with what they were made from; {} where no rate is named."""
    if not rate_id:
        return {}
    rate = catalogue.get("rates", rate_id)
    if rate is None:
        raise BadRate("That rate is not in the book any more; choose another or type the costs.", field="rate")
    amount = _amount("quantity", quantity)
    made = {name: f"{parse_number(rate[name]) * amount:.10g}" for name in AMOUNTS}
    said = " ".join(part for part in (f"{quantity.strip()} {rate['unit']} at", rate["likely"], f"{rate['currency']}/{rate['unit']},", rate["name"]) if part)
    return {**made, "quantity": quantity.strip(), "rate": f"{said}{', ' + rate['on'] if rate.get('on') else ''}"}
