"""The rate book: the surveyor's own prices per unit of work, kept with the catalogue."""

from flask import Blueprint, flash, redirect, render_template, request, url_for

from inspector.services.priced_lines import AMOUNTS, LARGEST
from inspector.values.numbers import parse_number
from inspector.web.current import data_folder
from inspector.web.forms.form_fields import FormField, TokenForm, faults_of, make_form

pages = Blueprint("rates", __name__)
# A bound, so that the page stays readable.
MOST_LINES = 400
LONGEST = 120


def _text(name: str, label: str) -> FormField:
    return FormField(name, label, "text", longest=LONGEST)


def _amount(name: str, label: str) -> FormField:
    return FormField(name, label, low=0, high=LARGEST, longest=LONGEST, optional=False)


RATE = (
    _text("name", "What for"),
    _text("unit", "Unit"),
    _amount("low", "Low, per unit"),
    _amount("likely", "Likely"),
    _amount("high", "High"),
    _text("currency", "Currency"),
    FormField(
        "on", "Date of the price", "text", longest=LONGEST, placeholder="2026-04-30 or 2026-04"
    ),
    _text("source", "From whom"),
)


@pages.route("/rates", methods=["GET", "POST"])
def rates():
    """The rate book; a posted line is added, or kept under its id."""
    if request.method != "POST":
        return _page()
    form = make_form(RATE)
    kept = data_folder().catalogue.get("rates", request.form.get("id", ""))
    faults = faults_of(form) or _faults(form, new=kept is None)
    if faults:
        return _page(faults, form, kept["id"] if kept else "")
    own_id = {"id": kept["id"]} if kept else {}
    data_folder().catalogue.put(
        "rates", {each.name: form[each.name].data for each in RATE} | own_id
    )
    flash("The rate is kept. Lines that were priced before keep their amounts.")
    return redirect(url_for("rates.rates"))


def _page(faults: list[str] | None = None, refused: TokenForm | None = None, refused_id: str = ""):
    """The book; the refused line of that id ("" for the new one) comes back as it was typed."""
    kept = data_folder().catalogue.all("rates")
    forms = {rate["id"]: make_form(RATE, rate, posted=False) for rate in kept}
    new = make_form(RATE, posted=False)
    # The form that was refused takes the place of the kept rate, so that nothing typed is lost.
    if refused and refused_id:
        forms[refused_id] = refused
    elif refused:
        new = refused
    page = render_template(
        "rates/rates.html",
        asked=RATE,
        new=new,
        forms=forms,
        fault=" ".join(faults or ()),
        title="Rate book",
        inspection=None,
    )
    return page, 400 if faults else 200


def _faults(form: TokenForm, *, new: bool) -> list[str]:
    """What is wrong with a line whose fields are good each by itself."""
    faults = []
    if not form["name"].data or not form["unit"].data:
        faults.append("A rate needs what it is for and its unit, such as m², m, t, h or piece.")
    amounts = [parse_number(form[name].data) for name in AMOUNTS]
    # A likely price outside its own range was typed into the wrong field.
    if amounts != sorted(amounts):
        faults.append("A rate must rise from low over likely to high.")
    if new and len(data_folder().catalogue.all("rates")) >= MOST_LINES:
        faults.append(f"The rate book holds {MOST_LINES} lines; take one out first.")
    return faults


@pages.get("/rates/<rate_id>/gone")
def book_again(rate_id: str):
    """The address of a button, loaded again, leads back to the book."""
    return redirect(url_for("rates.rates"))


@pages.post("/rates/<rate_id>/gone")
def take_out(rate_id: str):
    """Take a line out of the book; work lines that were priced by it keep their amounts."""
    data_folder().catalogue.remove("rates", rate_id)
    return redirect(url_for("rates.rates"))
