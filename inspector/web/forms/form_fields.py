"""Forms made from fields: one rendering, one reader and one sentence for what cannot be.

A form asks for ``FormField`` objects: a ``Field`` with what only a form needs to know.
``Field.parse`` checks what was posted, and a refused form shows everything as it was typed. What
is kept is the text, not the number that was read.
"""

import json
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field, fields
from datetime import date

from flask import request
from flask_wtf import FlaskForm
from markupsafe import Markup
from wtforms import HiddenField, StringField, TextAreaField
from wtforms.validators import StopValidation
from wtforms.widgets import html_params

from inspector.record.entry import ID
from inspector.record.state import State
from inspector.values.field import Field, FieldRefused, typed_parts
from inspector.values.typed_text import length_fault, posted_text

LONGEST_TEXT, LONGEST_FIGURE = 200, 40
# As many entries as one entry may replace.
MOST_HEADS = 200


@dataclass(frozen=True)
class FormField(Field):
    """A field as a form asks for it; unlike others it may stay empty.

    Parameters
    ----------
    lines : int
        Height of a text's area; 1 for a single line.
    names : mapping of str to str
        What the form calls a choice, where that is not the choice itself; "" is the empty choice.
    units : tuple of str
        The units among which a number's own one is chosen, with which it is kept; () where it is
        typed in the field's unit and kept without.
    placeholder : str
        Shown while nothing is typed.
    rule : callable or None
        A check beyond ``parse``: text -> the sentence for what is wrong with it, "" for nothing.
    """

    optional: bool = True
    lines: int = 1
    names: Mapping[str, str] = field(default_factory=dict)
    units: tuple[str, ...] = ()
    placeholder: str = ""
    rule: Callable[[str], str] | None = None

    @classmethod
    def of(cls, asked: Field, **more) -> "FormField":
        """Return a field of another room as a form asks for it.

        Parameters
        ----------
        asked : Field
        **more
            What the form adds or changes.

        Returns
        -------
        FormField
        """
        known = {part.name: getattr(asked, part.name) for part in fields(Field)}
        return cls(**{**known, "optional": True, **more})

    @property
    def most(self) -> int:
        """The most characters that are kept."""
        return self.longest or (LONGEST_TEXT if self.kind in ("text", "choice") else LONGEST_FIGURE)


class TokenForm(FlaskForm):
    """A form with its token.

    It reads what was posted as a form; a body of JSON, however deep, is no form of ours.
    """

    class Meta(FlaskForm.Meta):
        """How the form meets the request."""

        def wrap_formdata(self, form, formdata):
            """Return what was posted; nothing for a form that is only shown (``formdata=None``)."""
            posted = formdata is not None and request.method == "POST"
            return request.form if posted else None


class RecordForm(TokenForm):
    """A form over fields of the record, which carries the entries that its author saw.

    An answer that was given elsewhere meanwhile is therefore never replaced unseen.
    """

    seen = HiddenField()

    def remember_heads(self, state: State, subject: str, names: Iterable[str]) -> None:
        """Carry the ids of the entries that are shown, unless the form was posted with them."""
        # As the form was made and not as it is posted: what others recorded meanwhile was not seen.
        if not self.seen.data:
            heads = {name: [head.id for head in state.heads(subject, name)] for name in names}
            self.seen.data = json.dumps(heads)

    def heads_seen(self, name: str) -> list[str]:
        """Ids of the entries that were shown in a field when the form was made."""
        try:
            found = json.loads(self.seen.data or "{}")
        except (ValueError, RecursionError):
            return []
        ids = found.get(name) if isinstance(found, dict) else None
        # A posted field may be anything; what names no entry is no entry that was seen.
        if not isinstance(ids, list):
            return []
        known = [each for each in ids if isinstance(each, str) and ID.fullmatch(each)]
        return known[:MOST_HEADS]


class DateField(StringField):
    """A date; where the text is no date it is a text input, since a date input would be empty."""

    def __call__(self, **attributes):
        return super().__call__(type=date_input(self.data), **attributes)


class ChoiceField(StringField):
    """A choice; WTForms' own one names a choice in ways that differ between its versions."""

    _OPTION = Markup('<option value="{}"{}>{}</option>')

    def __init__(self, label: str, names: Mapping[str, str], **more):
        super().__init__(label, **more)
        self.names = names

    def __call__(self, **attributes) -> Markup:
        """Return the select element, with each choice under its name."""
        options = [
            self._OPTION.format(choice, " selected" if choice == self.data else "", name)
            for choice, name in self.names.items()
        ]
        attributes = html_params(name=self.name, **attributes)
        return Markup("<select {}>{}</select>").format(Markup(attributes), Markup("").join(options))


def make_form(
    asked: Iterable[FormField],
    values: Mapping[str, object] | None = None,
    base: type[TokenForm] = TokenForm,
    *,
    posted: bool = True,
) -> TokenForm:
    """Make a form.

    Parameters
    ----------
    asked : iterable of FormField
    values : mapping of str to object, optional
        What the form shows at first, as recorded.
    base : type of TokenForm
    posted : bool
        Whether what was posted with this request belongs to this form.

    Returns
    -------
    TokenForm
        With one input for each field, and one named ``<name>-unit`` where a unit is chosen.
    """
    inputs, shown = {}, {}
    for each in asked:
        text, unit = typed_parts((values or {}).get(each.name))
        inputs[each.name], shown[each.name] = _input(each), _shown(text)
        if each.units:
            shown[unit_name(each)] = unit or each.unit
            inputs[unit_name(each)] = _unit_input(each, shown[unit_name(each)])
        elif unit and unit != each.unit:
            # Shown with its unit and refused when posted, since it is not in the form's own unit.
            shown[each.name] += f" {unit}"
    # WTForms takes its inputs from a class, and these come from a table.
    form = type("Form", (base,), inputs)
    return form(data=shown) if posted else form(formdata=None, data=shown)


def unit_name(asked: Field) -> str:
    """Return the name of the input in which a field's unit is chosen."""
    return f"{asked.name}-unit"


def faults_of(form: TokenForm) -> list[str]:
    """Check a form that was posted.

    Parameters
    ----------
    form : TokenForm

    Returns
    -------
    list of str
        A sentence for each fault, in the order of the fields.
    """
    form.validate()
    return [sentence for errors in form.errors.values() for sentence in errors]


def date_input(text: object) -> str:
    """Return the type of a date's input: "text" where the text is no date, else "date"."""
    try:
        date.fromisoformat(str(text or "1970-01-01"))
    except ValueError:
        return "text"
    return "date" if len(str(text or "")) in (0, 10) else "text"


def described(bound, id: str) -> dict[str, str]:
    """Return the attributes by which an input with a fault names the sentence beside it."""
    return {"aria-describedby": f"fault-{id}", "aria-invalid": "true"} if bound.errors else {}


def _shown(value: object) -> str:
    return "" if value is None else str(value)


def _input(asked: FormField):
    """The input of one field."""
    known = {
        "filters": [posted_text],
        "validators": [_check_of(asked)],
        "description": asked.help,
    }
    label = asked.label if len(asked.units) > 1 else asked.label_with_unit
    attributes = {"autocomplete": "off"}
    if asked.placeholder:
        attributes["placeholder"] = asked.placeholder
    if asked.kind == "choice":
        names = {choice: asked.names.get(choice, choice) for choice in asked.choices}
        return ChoiceField(label, names, **known)
    if asked.kind == "date":
        attributes["placeholder"] = "2008-03-14"
        return DateField(label, render_kw=attributes, **known)
    if asked.lines > 1:
        return TextAreaField(label, render_kw=attributes | {"rows": asked.lines}, **known)
    # Text with a numeric keyboard: a number input drops a decimal comma without a word.
    if asked.is_number:
        attributes["inputmode"] = "decimal"
    return StringField(label, render_kw=attributes, **known)


def _unit_input(asked: FormField, recorded: str) -> ChoiceField:
    """Return the choice of a unit beside a number."""
    # A unit that came from elsewhere is offered too, so that keeping a row does not change it.
    names = {unit: unit for unit in (*asked.units, recorded)}
    return ChoiceField(f"unit of {asked.label}", names, filters=[posted_text])


def _check_of(asked: FormField) -> Callable:
    """The validator of one field.

    The Length of WTForms would also give the page a ``maxlength``, by which a browser cuts what is
    pasted without a word.
    """

    def check(form, bound) -> None:
        sentence = length_fault(asked.label, bound.data, asked.most)
        sentence = sentence or _parse_fault(asked, form, bound)
        if not sentence and asked.rule and bound.data:
            sentence = asked.rule(bound.data)
        if sentence:
            raise StopValidation(sentence)

    return check


def _parse_fault(asked: FormField, form, bound) -> str:
    """Return why what was typed cannot be taken; "" where it can."""
    if asked.names and bound.data not in ("", *asked.choices):
        # A unit or a rate that was removed since the page was made: its id means nothing to a
        # person.
        return f"{asked.label}: what was chosen is not offered any more; choose again."
    try:
        asked.parse(typed_value(asked, form))
    except FieldRefused as refusal:
        return str(refusal)
    return ""


def typed_value(asked: FormField, form: TokenForm) -> str | dict[str, str]:
    """Return what was typed as the record keeps it.

    Parameters
    ----------
    asked : FormField
    form : TokenForm

    Returns
    -------
    str or dict
        The text, or ``{"value": text, "unit": unit}`` where something was typed and a unit belongs
        to it.
    """
    text = form[asked.name].data
    if text and asked.units:
        return {"value": text, "unit": form[unit_name(asked)].data or asked.unit}
    return text
