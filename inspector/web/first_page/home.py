"""The first page: the list of inspections with its search; briefs and surveyors."""

from flask import Blueprint, current_app, jsonify, redirect, render_template, request, url_for

from inspector.services.comparison import MOST
from inspector.services.inspection_list import (
    AWAY,
    Wanted,
    ids_put_away,
    list_page,
    put_away,
    take_back,
)
from inspector.services.shelf import Shelf
from inspector.services.summary import STATES
from inspector.web.current import data_folder, sharing
from inspector.web.forms.form_fields import FormField, TokenForm, faults_of, make_form
from inspector.web.joining.phones import holds_something

pages = Blueprint("home", __name__)
# As long as the journal takes it.
SURVEYOR = FormField("name", "A surveyor's name", "text", longest=80)
# With so few inspections no search is needed, and those walked are ticked to be compared.
FEW = 8


def shelf() -> Shelf:
    """The summaries of the running data folder."""
    return current_app.extensions["shelf"]


@pages.get("/")
def home():
    """The inspections with what is known of each; briefs and surveyors."""
    return _home()


def _home(fault: str = "", surveyor: str = ""):
    """The first page; with a fault, the surveyor's name comes back as it was typed."""
    catalogue, rows = data_folder().catalogue, shelf().rows_at_once()
    found = list_page(rows, ids_put_away(catalogue), _wanted())
    chosen = list(dict.fromkeys(request.args.getlist("id")))[:MOST]
    shown = {row["id"] for row in found.rows}
    page = render_template(
        "home/home.html",
        found=found,
        wanted=_wanted(),
        states=(*STATES, AWAY),
        away=AWAY,
        few=found.there <= FEW,
        asked=_asked(catalogue.all("briefs")),
        brief_clients=[brief.get("client") for brief in catalogue.all("briefs")[-1:]],
        chosen=chosen,
        chosen_elsewhere=[row for row in rows if row["id"] in chosen and row["id"] not in shown],
        progress=shelf().progress(),
        reading=sum(bool(row.get("reading")) for row in rows),
        briefs=catalogue.all("briefs"),
        surveyors=catalogue.all("surveyors"),
        form=TokenForm(),
        own_faults=data_folder().own_faults,
        fault=fault,
        surveyor=surveyor,
        sharing_now=_sharing_now(),
    )
    return page, 400 if fault else 200


def _sharing_now() -> dict[str, object]:
    """Where sharing stands: whether it is open, how many phones are in, how many hold something."""
    rows = [row for row in sharing().devices.all() if not row["revoked"] and not row["expired"]]
    holding = [row for row in rows if holds_something(row["said"])]
    return {"shared": sharing().shared, "count": len(rows), "holding": len(holding)}


def _asked(briefs: list[dict]) -> str:
    """What the newest brief asks for, in a few words."""
    units = {"speed": "kn", "range": "nmi", "endurance": "days", "persons": "persons"}
    newest = briefs[-1] if briefs else {}
    return ", ".join(f"{newest[name]} {unit}" for name, unit in units.items() if newest.get(name))


def _wanted() -> Wanted:
    """Return what of the list is asked for by the address or the form."""
    number = request.values.get("page", "1")
    return Wanted(
        words=request.values.get("words", "").strip(),
        state=request.values.get("state", ""),
        # Python reads no number of thousands of digits, and nobody has so many pages.
        page=int(number) if number.isdecimal() and len(number) < 7 else 1,
    )


@pages.get("/list/progress")
def progress():
    """How far the reading of summaries in the background is, for the page that shows it."""
    now = shelf().progress()
    return jsonify(done=now.done, total=now.total, running=now.running)


@pages.post("/list/reading")
def reading():
    """Stop reading in the background, or read on."""
    if request.form.get("do") == "stop":
        shelf().stop()
    else:
        shelf().go_on()
    return redirect(url_for("home.home"))


@pages.post("/list/away")
def away():
    """Put inspections away or take them back: one, or all that the search finds."""
    ids = request.form.getlist("id")
    catalogue, wanted = data_folder().catalogue, _wanted()
    if request.form.get("all"):
        # All that the search found, not only those on this page.
        ids = list(_ids_found(wanted))
    known = set(data_folder().inspections.ids())
    change = take_back if request.form.get("do") == "take back" else put_away
    change(catalogue, [each for each in ids if each in known])
    return redirect(url_for("home.home", words=wanted.words, state=wanted.state))


def _ids_found(wanted: Wanted):
    """The ids of every inspection that a search finds, on all its pages."""
    rows, away_now = shelf().rows_at_once(), ids_put_away(data_folder().catalogue)
    last = list_page(rows, away_now, wanted).pages
    for number in range(1, last + 1):
        page = list_page(rows, away_now, Wanted(wanted.words, wanted.state, number))
        yield from (row["id"] for row in page.rows)


@pages.post("/surveyors")
def add_surveyor():
    """Keep a surveyor's name."""
    form = make_form([SURVEYOR])
    fault = " ".join(faults_of(form)) or _name_fault(form["name"].data)
    if fault:
        return _home(fault, form["name"].data)
    data_folder().catalogue.put("surveyors", {"name": form["name"].data})
    return redirect(url_for("home.home"))


def _name_fault(name: str) -> str:
    """What is wrong with a surveyor's name, "" for nothing."""
    if not name:
        return f"A surveyor needs a name of at most {SURVEYOR.most} characters."
    # The journal takes a name as one line.
    if not name.isprintable():
        return "A surveyor's name is typed in one line, without control characters."
    kept = data_folder().catalogue.all("surveyors")
    if _comparable(name) in [_comparable(surveyor["name"]) for surveyor in kept]:
        return f"{name} is there already. Add initials or a firm where two persons have one name."
    return ""


def _comparable(name: str) -> str:
    """A name without its capitals and double blanks."""
    return " ".join(name.split()).casefold()


@pages.get("/inspections")
@pages.get("/surveyors", endpoint="surveyors_again")
@pages.get("/list/reading", endpoint="reading_again")
@pages.get("/list/away", endpoint="away_again")
def list_again():
    """The addresses of the first page's forms lead back to it."""
    return redirect(url_for("home.home"))
