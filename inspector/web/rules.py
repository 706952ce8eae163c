"""The surveyor's own levels: settings of the verdict rules, and limits where class, flag or maker decide; kept with the inspection."""

import json
from typing import Any

from flask import Blueprint, abort, flash, redirect, render_template, request, url_for

from inspector.assess.settings import ASKED, BadSetting, setting
from inspector.criteria.profiles import BadProfile, Profile
from inspector.criteria.registry import CRITERIA
from inspector.web.desk import desk, open_inspection, title_of
from inspector.web.forms import PlainForm
from inspector.web.who import who

pages = Blueprint("rules", __name__)
KEPT = "levels"  # the catalogue's setting that new inspections begin with


@pages.get("/inspection/<inspection_id>/rules")
def rules(inspection_id: str):
    """All settings and limits, with the defaults and their sources."""
    return _page(inspection_id, "")


def _page(inspection_id: str, fault: str, typed: dict[str, str] | None = None, limits: dict[str, dict[str, str]] | None = None):
    inspection = open_inspection(inspection_id)
    state, form = inspection.state, PlainForm()
    names = [one.name for one in ASKED]
    form.seen.data = json.dumps({name: [entry.id for entry in state.heads("settings", name)] for name in names})
    profiles = [(rule, rule.profile, (limits or {}).get(rule.name) or state.values(f"profile/{rule.name}")) for rule in CRITERIA.values() if rule.profile]
    return render_template("rules/rules.html", inspection=inspection, form=form, asked=ASKED, values=typed or state.values("settings"), profiles=profiles,
                           fault=fault, step="prepare", title=title_of(inspection)), 400 if fault else 200


@pages.post("/inspection/<inspection_id>/rules")
def keep_settings(inspection_id: str):
    """Keep the settings; an empty field goes back to its default."""
    inspection, form = open_inspection(inspection_id), PlainForm()
    typed = {one.name: request.form.get(one.name, "").strip()[:40] for one in ASKED}
    faults = _faults(typed)
    if faults:
        return _page(inspection_id, " ".join(faults), typed)
    inspection.say(who(), [("settings", name, text or None) for name, text in typed.items()], seen=lambda _, field: form.heads_seen(field))
    if request.form.get("everywhere"):
        desk().catalogue.set(KEPT, {name: text for name, text in typed.items() if text})
        flash("Kept. New inspections begin with these levels.")
    return redirect(url_for("rules.rules", inspection_id=inspection.id))


def _faults(typed: dict[str, str]) -> list[str]:
    """A sentence for every setting that cannot be, and one for two that contradict each other."""
    faults, values = [], {}
    for one in ASKED:
        try:
            values[one.name] = setting(one, typed[one.name] or one.default)
        except BadSetting as problem:
            faults.append(str(problem))
    retain, refurbish = values.get("retain_from"), values.get("refurbish_from")
    if retain is not None and refurbish is not None and retain < refurbish:
        faults.append(f"Retain from ({retain:g}) must not lie below refurbish from ({refurbish:g}).")
    return faults


@pages.get("/inspection/<inspection_id>/rules/<criterion>")
def limits_again(inspection_id: str, criterion: str):
    """The address of one criterion's form, loaded again, leads back to it on its page."""
    if criterion not in CRITERIA:
        abort(404)
    return redirect(url_for("rules.rules", inspection_id=open_inspection(inspection_id).id) + f"#{criterion}")


@pages.post("/inspection/<inspection_id>/rules/<criterion>")
def keep_limits(inspection_id: str, criterion: str):
    """Keep limits of the surveyor's own for one criterion, with the text he takes them from; empty fields go back to the limits as shipped."""
    inspection = open_inspection(inspection_id)
    shipped: Profile | None = CRITERIA[criterion].profile if criterion in CRITERIA else None
    if shipped is None:
        abort(404)
    typed = {name: request.form.get(name, "").strip()[:40] for name in shipped.values}
    cited = request.form.get("source", "").strip()[:400]
    try:
        shipped.with_limits(typed, cited)
    except BadProfile as problem:
        return _page(inspection_id, str(problem), limits={criterion: {**typed, "source": cited}})
    values: dict[str, Any] = {**typed, "source": cited if any(typed.values()) else ""}
    inspection.say(who(), [(f"profile/{criterion}", name, text or None) for name, text in values.items()])
    return redirect(url_for("rules.rules", inspection_id=inspection.id) + f"#{criterion}")


def kept_levels() -> list[tuple[str, str, str]]:
    """The changes with which a new inspection takes over the levels kept for every inspection."""
    kept = desk().catalogue.setting(KEPT, {})
    return [("settings", name, text) for name, text in kept.items() if isinstance(text, str) and text]
