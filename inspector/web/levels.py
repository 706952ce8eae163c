"""The surveyor's own levels: settings of the rules, and limits where class or maker decide."""

from flask import Blueprint, abort, flash, redirect, render_template, request, url_for

from inspector.assess.verdict.settings import SETTINGS
from inspector.criteria.core.criterion import Criterion
from inspector.criteria.core.limit_sets import BadLimit
from inspector.record.inspection import Inspection
from inspector.services.data_folder import title_of
from inspector.web.current import data_folder, open_inspection, surveyor_name
from inspector.web.forms.form_fields import FormField, RecordForm, TokenForm, faults_of, make_form

pages = Blueprint("rules", __name__)
KEPT = "levels"  # the catalogue's setting that new inspections begin with
LEVELS = tuple(
    FormField.of(setting.field, placeholder=setting.default or "not set") for setting in SETTINGS
)
SOURCE = FormField(
    "source", "Taken from", "text", longest=400, help="Title, edition, table of the text."
)


@pages.get("/inspection/<inspection_id>/rules")
def rules(inspection_id: str):
    """All settings and limits, with the defaults and their sources."""
    return _page(open_inspection(inspection_id))


def _page(
    inspection: Inspection,
    faults: list[str] | None = None,
    refused: tuple[str, TokenForm] | None = None,
):
    """The page; a refused form, with its name, shows what was typed."""
    forms = {"settings": _settings_form(inspection, posted=False)}
    # Only criteria with limits of their own: the others are fixed by their texts.
    with_limits = [rule for rule in _criteria_of(inspection).values() if rule.limit_set]
    for rule in with_limits:
        recorded = inspection.state.values(f"profile/{rule.name}")
        forms[rule.name] = make_form(_limit_fields(rule), recorded, posted=False)
    if refused:
        forms |= dict([refused])
    page = render_template(
        "rules/rules.html",
        inspection=inspection,
        forms=forms,
        levels=LEVELS,
        rules=[(rule, _limit_fields(rule)) for rule in with_limits],
        fault=" ".join(faults or ()),
        everywhere="everywhere" in request.form,
        step="prepare",
        title=title_of(inspection),
    )
    return page, 400 if faults else 200


def _criteria_of(inspection: Inspection) -> dict[str, Criterion]:
    """Every criterion of an inspection: the shipped ones, and the surveyor's own."""
    # Imported by the first page of levels: the list of inspections needs no criterion.
    from inspector.checklists.registry import CRITERIA

    # A surveyor's own cannot take a shipped name, so that none hides another.
    return {**CRITERIA, **data_folder().library_of(inspection).criteria}


def _limit_fields(rule: Criterion) -> tuple[FormField, ...]:
    """The limits of a criterion as a form asks for them, the shipped ones as placeholders."""
    limits = [
        FormField.of(limit.field, placeholder=f"{limit.value:g}") for limit in rule.limit_set.limits
    ]
    return (*limits, SOURCE)


def _settings_form(inspection: Inspection, *, posted: bool) -> RecordForm:
    """Return the form of the settings, filled with what was recorded or posted."""
    recorded = {} if posted else inspection.state.values("settings")
    form = make_form(LEVELS, recorded, RecordForm, posted=posted)
    form.remember_heads(inspection.state, "settings", [each.name for each in LEVELS])
    return form


@pages.post("/inspection/<inspection_id>/rules")
def keep_settings(inspection_id: str):
    """Keep the settings; an empty field goes back to its default."""
    inspection = open_inspection(inspection_id)
    form = _settings_form(inspection, posted=True)
    typed = {each.name: form[each.name].data for each in LEVELS}
    faults = faults_of(form)
    if faults:
        return _page(inspection, faults, ("settings", form))
    inspection.record(
        surveyor_name(),
        [("settings", name, text or None) for name, text in typed.items()],
        seen=lambda _, name: form.heads_seen(name),
    )
    # Inspections that have begun keep their own levels: what was reported must stay repeatable.
    if request.form.get("everywhere"):
        data_folder().catalogue.set(KEPT, {name: text for name, text in typed.items() if text})
        flash("Kept. New inspections begin with these levels.")
    return redirect(url_for("rules.rules", inspection_id=inspection.id))


@pages.get("/inspection/<inspection_id>/rules/<criterion>")
def limits_again(inspection_id: str, criterion: str):
    """The address of one criterion's form, loaded again, leads back to it on its page."""
    inspection = open_inspection(inspection_id)
    if criterion not in _criteria_of(inspection):
        abort(404)
    return _back_to(inspection, criterion)


@pages.post("/inspection/<inspection_id>/rules/<criterion>")
def keep_limits(inspection_id: str, criterion: str):
    """Keep the surveyor's own limits of one criterion; an empty field means the shipped limit."""
    inspection = open_inspection(inspection_id)
    rule = _criteria_of(inspection).get(criterion)
    if rule is None or rule.limit_set is None:
        abort(404)
    fields = _limit_fields(rule)
    form = make_form(fields)
    typed = {each.name: form[each.name].data for each in fields}
    source = typed.pop("source")
    faults = faults_of(form) or _set_faults(rule, typed, source)
    if faults:
        return _page(inspection, faults, (criterion, form))
    # Without a limit of his own there is nothing that a text could be the source of.
    values = {**typed, "source": source if any(typed.values()) else ""}
    changes = [(f"profile/{criterion}", name, text or None) for name, text in values.items()]
    inspection.record(surveyor_name(), changes)
    return _back_to(inspection, criterion)


def _set_faults(rule: Criterion, typed: dict[str, str], source: str) -> list[str]:
    """What is wrong with limits that are good each by itself, such as a source that is missing."""
    try:
        rule.limit_set.with_limits(typed, source)
    except BadLimit as problem:
        return [str(problem)]
    return []


def _back_to(inspection: Inspection, criterion: str):
    return redirect(url_for("rules.rules", inspection_id=inspection.id) + f"#{criterion}")


def kept_levels() -> list[tuple[str, str, str]]:
    """Return the changes by which a new inspection takes over the kept levels."""
    kept = data_folder().catalogue.setting(KEPT, {})
    texts = {name: text for name, text in kept.items() if isinstance(text, str) and text}
    return [("settings", name, text) for name, text in texts.items()]
