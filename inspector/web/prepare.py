"""Prepare: the list of inspections, briefs, surveyors; the visit, the vessel, and the systems with their units counted."""

from collections.abc import Mapping

from flask import Blueprint, flash, redirect, render_template, request, url_for

from inspector.assess.shapes import NEEDS
from inspector.record.store import Inspection
from inspector.web.desk import desk, open_inspection, title_of
from inspector.web.forms import BRIEF, VESSEL, VISIT, Asked, TokenForm, date_input, first_fault, form_for, imo_sentence
from inspector.web.overview import rows
from inspector.web.rules import kept_levels
from inspector.web.units import counted, hanging, told_hanging, unit_id, units_of
from inspector.web.who import who

pages = Blueprint("prepare", __name__)
pages.add_app_template_global(date_input)
PARTS = {"inspection": ("The visit", VISIT), "vessel": ("The vessel", VESSEL)}


@pages.get("/")
def home():
    """The inspections with what is known of each; briefs and surveyors."""
    catalogue = desk().catalogue
    return render_template("prepare/home.html", rows=rows(desk()), briefs=catalogue.all("briefs"), surveyors=catalogue.all("surveyors"), form=TokenForm(),
                           own_faults=desk().own_faults)


@pages.post("/inspections")
def begin():
    """Begin an inspection: the checklists as they are today, every system with its proposed units; all of it can be changed later."""
    inspection = desk().begin()
    changes = []
    for system in desk().library.systems.values():
        taken: set[str] = set()
        for name in system.units:
            taken.add(one := unit_id(name, taken))
            changes.append((f"unit/{system.id}/{one}", "name", name))
            for field, known in (("space", system.unit_homes), ("kind", system.unit_kinds)):
                if name in known:
                    changes.append((f"unit/{system.id}/{one}", field, known[name]))
    brief = desk().catalogue.get("briefs", request.form.get("brief", ""))
    changes += _brief_changes(brief) + kept_levels()
    inspection.say(who(), changes)
    go_on = "walk.walk" if request.form.get("go") == "walk" else "prepare.prepare"
    return redirect(url_for(go_on, inspection_id=inspection.id))


def _brief_changes(brief: dict | None) -> list[tuple[str, str, str]]:
    return [("brief", field, value) for field, value in (brief or {}).items() if field != "id" and value]


@pages.post("/inspection/<inspection_id>/brief")
def take_brief(inspection_id: str):
    """Copy a kept brief into an inspection that was begun without it: what it does not ask is cleared, so that no two briefs are mixed."""
    inspection = open_inspection(inspection_id)
    kept = desk().catalogue.get("briefs", request.form.get("brief", ""))
    if kept is None:
        return _prepare_page(inspection, None, ["Choose one of the kept briefs; nothing was copied."])
    copied = _brief_changes(kept)
    named = {field for _, field, _ in copied}
    cleared = [("brief", field, None) for field in inspection.state.fields("brief") if field not in named]
    inspection.say(who(), [*copied, *cleared])
    flash(f"The brief {'for ' + kept['client'] if kept.get('client') else 'without a name'} is copied into this inspection.")
    return redirect(url_for("prepare.prepare", inspection_id=inspection.id))


@pages.route("/brief/<brief_id>", methods=["GET", "POST"])
def brief(brief_id: str):
    """One client's brief, kept for several candidates; "new" begins one."""
    kept = desk().catalogue.get("briefs", brief_id) or {}
    needs = _needs(desk().library)
    form = form_for(BRIEF + needs, None, "brief", kept)
    if form.validate_on_submit():
        values = {one.name: form[one.name].data for one in BRIEF + needs}
        desk().catalogue.put("briefs", {**({"id": kept["id"]} if kept else {}), **values})
        flash("The brief is kept. Inspections begun from now on carry a copy of it.")
        return redirect(url_for("prepare.home"))
    return render_template("prepare/form.html", title="Brief", form=form, asked=BRIEF + needs, fault=first_fault(form), back=url_for("prepare.home"))


def _needs(library) -> tuple[Asked, ...]:
    return tuple(Asked(f"need/{system.id}", f"Need: {system.name}", kind="choice", choices=("", *NEEDS), blank="nothing said: neutral")
                 for system in library.systems.values())


@pages.post("/surveyors")
def add_surveyor():
    """Keep a surveyor's name."""
    name = request.form.get("name", "").strip()
    if not name or len(name) > 80:
        flash("A surveyor needs a name of at most 80 characters.")
    elif any(" ".join(name.split()).casefold() == " ".join(one["name"].split()).casefold() for one in desk().catalogue.all("surveyors")):
        flash(f"{name} is there already. Add initials or a firm where two persons have one name.")
    else:
        desk().catalogue.put("surveyors", {"name": name})
    return redirect(url_for("prepare.home"))


@pages.get("/inspection/<inspection_id>")
def inspection_home(inspection_id: str):
    """An inspection's own address leads to its preparation."""
    return redirect(url_for("prepare.prepare", inspection_id=open_inspection(inspection_id).id))


@pages.get("/inspection/<inspection_id>/prepare")
def prepare(inspection_id: str):
    """What is known before the walk, with the units to count."""
    return _prepare_page(open_inspection(inspection_id), request.args.get("opened"), [])


def _prepare_page(inspection: Inspection, opened: str | None, faults: list[str], typed: Mapping[str, str] | None = None):
    library = desk().library_of(inspection)
    state = inspection.state
    units = units_of(state, library)
    minutes = {one.id: sum(one.minutes(unit["kind"]) for unit in units[one.id]) for one in library.systems.values()}
    total = {"checks": sum(len(one.checks_for(unit["kind"])) for one in library.systems.values() for unit in units[one.id]), "minutes": sum(minutes.values()),
             "critical": sum(one.minutes(unit["kind"], critical=True) for one in library.systems.values() for unit in units[one.id])}
    return render_template(
        "prepare/prepare.html", inspection=inspection, library=library, units=units, state=state, form=TokenForm(), total=total, minutes=minutes,
        opened=opened, refused=inspection.refused(), faults=faults, typed=typed or {}, hanging=hanging(state), told_hanging=told_hanging,
        briefs=desk().catalogue.all("briefs"),
        vessel=state.values("vessel"), brief=state.values("brief"), visit=state.values("inspection"), asked={"vessel": VESSEL, "visit": VISIT, "brief": BRIEF},
        imo=imo_sentence(state.value("vessel", "imo", "")), step="prepare", title=title_of(inspection),
    ), 400 if faults else 200


@pages.route("/inspection/<inspection_id>/edit/<subject>", methods=["GET", "POST"])
def edit(inspection_id: str, subject: str):
    """Edit the visit, the vessel or this inspection's copy of the brief."""
    inspection = open_inspection(inspection_id)
    parts = {**PARTS, "brief": ("The brief", BRIEF + _needs(desk().library_of(inspection)))}
    if subject not in parts:
        return render_template("refused.html", sentence="There is no such page.", status=404), 404
    title, asked = parts[subject]
    form = form_for(asked, inspection.state, subject)
    back = url_for("prepare.prepare", inspection_id=inspection.id)
    if form.validate_on_submit():
        changes = [(subject, one.name, form[one.name].data or None) for one in asked]
        inspection.say(who(), changes, seen=lambda _, field: form.heads_seen(field))
        return redirect(back)
    fault = first_fault(form)
    return render_template("prepare/form.html", title=title, form=form, asked=asked, fault=fault, back=back), 400 if fault else 200


@pages.post("/inspection/<inspection_id>/units")
def count_units(inspection_id: str):
    """Name, add or take out units; a count with a fault changes nothing and comes back as typed."""
    inspection = open_inspection(inspection_id)
    library = desk().library_of(inspection)
    system = library.systems.get(request.form.get("system", ""))
    if system is None:
        return render_template("refused.html", sentence="That system is not in this inspection's checklists.", status=400), 400
    changes, faults, told = counted(request.form, inspection.state, library, system)
    if faults:
        return _prepare_page(inspection, system.id, faults, request.form.to_dict())
    inspection.say(who(), changes)
    for sentence in told:
        flash(sentence)
    return redirect(url_for("prepare.prepare", inspection_id=inspection.id, opened=system.id) + f"#{system.id}")


@pages.get("/inspection/<inspection_id>/units")
@pages.get("/inspection/<inspection_id>/brief", endpoint="brief_again")
def units_again(inspection_id: str):
    """The address of a form, loaded again after a refusal, leads back to its page."""
    return redirect(url_for("prepare.prepare", inspection_id=open_inspection(inspection_id).id))


@pages.get("/inspections")
@pages.get("/surveyors", endpoint="surveyors_again")
def list_again():
    """The addresses of the first page's forms lead back to it."""
    return redirect(url_for("prepare.home"))
