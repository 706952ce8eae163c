"""The fields of brief, vessel and visit as data, and the Flask-WTF forms made from them. Every field may stay empty."""

import json
from dataclasses import dataclass
from datetime import date
from typing import Any

from flask import request
from flask_wtf import FlaskForm
from wtforms import HiddenField, SelectField, StringField, TextAreaField
from wtforms.validators import Length, StopValidation

from inspector.criteria.judgement import CannotJudge
from inspector.criteria.registry import criterion
from inspector.errors import InspectorError
from inspector.quantities import parse_number
from inspector.record.entry import ID
from inspector.record.state import State


@dataclass(frozen=True)
class Asked:
    """One field: its name in the record, its label, its unit; kind text, long, number, date, imo or choice; low..high for numbers.

    most: the characters of a text; blank: what a choice calls its empty answer.
    """

    name: str
    label: str
    unit: str = ""
    kind: str = "text"
    choices: tuple[str, ...] = ()
    low: float = 0
    high: float = 1e6
    most: int = 200
    blank: str = ""


VISIT = (
    Asked("title", "What you call this inspection", most=120), Asked("place", "Place and berth"), Asked("date", "Date of the visit", kind="date"),
    Asked("attending", "Who attended"), Asked("weather", "Weather, light and water"),
)
VESSEL = (
    Asked("name", "Name", most=120), Asked("imo", "IMO number", kind="imo", most=40), Asked("flag", "Flag", most=120), Asked("class", "Class and notations"),
    Asked("built", "Keel laid", kind="date"), Asked("year", "Year of build", kind="number", low=1900, high=2100), Asked("yard", "Yard"),
    Asked("length", "Length over all", "m", "number", high=500), Asked("breadth", "Breadth", "m", "number", high=100),
    Asked("depth", "Depth", "m", "number", high=60), Asked("draught", "Draught", "m", "number", high=30),
    Asked("tonnage", "Gross tonnage", kind="number", high=300_000), Asked("deck_area", "Open deck area", "m²", "number", high=20_000),
    Asked("dp_class", "DP class", kind="choice", choices=("", "1", "2", "3")), Asked("particulars", "Other particulars", kind="long"),
)
BRIEF = (
    Asked("client", "For whom", most=120), Asked("speed", "Speed", "kn", "number", high=60), Asked("range", "Range", "nmi", "number", high=40_000),
    Asked("endurance", "Endurance", "days", "number", high=400), Asked("persons", "Persons on board", kind="number", high=2000),
    Asked("horizon", "How long she is to be kept", "years", "number", high=60), Asked("budget", "Budget for vessel and work", "", "number", high=1e12),
    Asked("waters", "Waters with their own emission rules", kind="choice",
          choices=("", "open sea", "North America and US Caribbean", "Baltic and North Sea", "Canadian Arctic", "Norwegian Sea")),
)


class TokenForm(FlaskForm):
    """A form that carries its token and reads what was posted as a form; a body of JSON, however deep, is no form of ours."""

    class Meta(FlaskForm.Meta):
        def wrap_formdata(self, form, formdata):
            return request.form if request.method == "POST" else None


class PlainForm(TokenForm):
    """A form that carries which entries its author saw, so that an answer given meanwhile elsewhere is never replaced unseen."""

    seen = HiddenField()

    def heads_seen(self, field: str) -> list[str]:
        """Ids of the entries shown in `field` when the form was made."""
        try:
            found = json.loads(self.seen.data or "{}")
        except (ValueError, RecursionError):
            return []
        ids = found.get(field) if isinstance(found, dict) else None
        return [one for one in ids if isinstance(one, str) and ID.fullmatch(one)][:200] if isinstance(ids, list) else []


def form_for(asked: tuple[Asked, ...], state: State | None, subject: str, values: dict[str, Any] | None = None) -> PlainForm:
    """A form over `asked`, filled from the state (or from `values`), bound to the request where one was posted."""
    shape = type("Form", (PlainForm,), {one.name: _field(one) for one in asked})
    shown = values if values is not None else state.values(subject)
    form = shape(data={one.name: shown.get(one.name, "") for one in asked})
    if state is not None and not form.seen.data:
        form.seen.data = json.dumps({one.name: [entry.id for entry in state.heads(subject, one.name)] for one in asked})
    return form


def first_fault(form: PlainForm) -> str:
    """The form's faults as one text, "" where there are none."""
    return " ".join(sentence for errors in form.errors.values() for sentence in errors)


def date_input(typed: Any) -> str:
    """The type of a date's input: "date", or "text" where what is kept is no ISO date, which a date input would show as empty."""
    try:
        date.fromisoformat(str(typed or "1970-01-01"))
    except ValueError:
        return "text"
    return "date" if len(str(typed or "")) in (0, 10) else "text"


def _most(one: Asked) -> int:
    return {"long": 4000, "number": 40, "date": 40}.get(one.kind, one.most)


def _field(one: Asked):
    label = f"{one.label}, {one.unit}" if one.unit else one.label
    limit = Length(max=_most(one), message=f"{one.label}: at most %(max)d characters.")
    if one.kind == "choice":
        return SelectField(label, choices=list(one.choices))
    if one.kind == "long":
        return TextAreaField(label, validators=[limit])
    checks = {"number": _is_number, "date": _is_date, "imo": _is_imo}
    kind = checks[one.kind](one) if one.kind in checks else None
    return StringField(label, filters=[lambda text: (text or "").strip()], validators=[limit, kind] if kind else [limit])


def _is_number(one: Asked):
    def check(form, field):
        if not field.data:
            return
        try:
            number = parse_number(field.data)
        except InspectorError as problem:
            raise StopValidation(f"{one.label}: {problem}") from problem
        if not one.low <= number <= one.high:
            raise StopValidation(f"{one.label}: {field.data} {one.unit} cannot be; expected {one.low:g} to {one.high:g} {one.unit}".rstrip() + ".")
    return check


def _is_date(one: Asked):
    def check(form, field):
        try:
            field.data and date.fromisoformat(field.data)
        except ValueError as problem:
            raise StopValidation(f"{one.label}: {field.data!r} is not a date; expected year-month-day, such as 2008-03-14.") from problem
    return check


def _is_imo(one: Asked):
    def check(form, field):
        try:
            field.data and criterion("imo-number").apply({"number": field.data})
        except CannotJudge as problem:
            raise StopValidation(f"{one.label}: {problem}") from problem
    return check


def imo_sentence(number: str) -> str:
    """What the check digit says of a number, "" for none."""
    if not number:
        return ""
    try:
        return criterion("imo-number").apply({"number": number}).sentence
    except CannotJudge as problem:
        return str(problem)
