"""The form in which the answers of one stop are typed from paper, a line a look."""

import json
from collections.abc import Iterator
from typing import Any

from inspector.assess.depth import usual_depth
from inspector.assess.round.paper_stops import PaperLook, PaperStop
from inspector.record.state import State
from inspector.values.field import Field, typed_parts
from inspector.values.vocabulary import NOT_FITTED, NOT_SEEN_REASONS, RATINGS, not_seen
from inspector.web.forms.form_fields import FormField, RecordForm, make_form

ANSWERS = (*RATINGS, NOT_FITTED, *(not_seen(reason) for reason in NOT_SEEN_REASONS))
LONGEST_NOTE = 4000
Change = tuple[str, str, Any]


def paper_form(stop: PaperStop, state: State, *, posted: bool) -> RecordForm:
    """Return the form of a stop, with what is recorded.

    Parameters
    ----------
    stop : PaperStop
    state : State
    posted : bool
        Whether what was posted with this request belongs to it.

    Returns
    -------
    RecordForm
        It carries the entries that its author saw, so that no answer is replaced unseen.
    """
    asked, values, heads = [], {}, {}
    for look in stop.looks:
        for name, form_field in _fields(look, state):
            asked.append(form_field)
            values[form_field.name] = state.value(look.result.subject, name)
            seen = state.heads(look.result.subject, name)
            if seen:
                heads[form_field.name] = [head.id for head in seen]
    form = make_form(asked, values, RecordForm, posted=posted)
    form.seen.data = form.seen.data or json.dumps(heads)
    return form


def _fields(look: PaperLook, state: State) -> Iterator[tuple[str, FormField]]:
    """Each recorded field of a look with its field of the form, in the order of the paper."""
    names = {"": "", **{answer: answer for answer in ANSWERS}}
    rating = FormField(
        f"{look.number}-rating", "Answer", "choice", choices=tuple(names), names=names
    )
    yield "rating", rating
    for reading in look.result.check.readings:
        recorded = state.value(look.result.subject, f"reading/{reading.name}")
        # What was typed in another unit stays as it is, and is changed on the walk page.
        if typed_parts(recorded)[1] in ("", reading.unit):
            yield f"reading/{reading.name}", _reading(look, reading)
    yield "note", FormField(f"{look.number}-note", "Note", "text", longest=LONGEST_NOTE)


def _reading(look: PaperLook, reading: Field) -> FormField:
    more = {"choices": ("", *reading.choices)} if reading.choices else {}
    return FormField.of(reading, name=f"{look.number}-{reading.name}", help="", **more)


def changes_of(stop: PaperStop, form: RecordForm, state: State) -> list[Change]:
    """Return what the form says and the record does not, and the name of each field in the form.

    Parameters
    ----------
    stop : PaperStop
    form : RecordForm
        Posted and without faults.
    state : State

    Returns
    -------
    list of (str, str, Any)
        Subject, field and value. An emptied line changes nothing: to take an answer away is an act
        of its own, on the walk page.
    """
    changes: list[Change] = []
    for look in stop.looks:
        changes += _changes_of_look(look, form, state)
    return changes


def _changes_of_look(look: PaperLook, form: RecordForm, state: State) -> Iterator[Change]:
    subject, check = look.result.subject, look.result.check
    units = {f"reading/{reading.name}": reading.unit for reading in check.readings}
    for name, form_field in _fields(look, state):
        typed = form[form_field.name].data
        if not typed:
            continue
        unit = units.get(name, "")
        value = {"value": typed, "unit": unit} if unit else typed
        if typed_parts(state.value(subject, name)) == typed_parts(value):
            continue
        yield subject, name, value
        if name == "rating" and typed in RATINGS:
            # As on the walk page, where the usual depth is recorded with the rating.
            yield subject, "depth", usual_depth(check, _typed_readings(look, form, state))


def _typed_readings(look: PaperLook, form: RecordForm, state: State) -> set[str]:
    return {
        name.removeprefix("reading/")
        for name, form_field in _fields(look, state)
        if name.startswith("reading/") and form[form_field.name].data
    }


def heads_seen(stop: PaperStop, form: RecordForm, subject: str, name: str) -> list[str]:
    """Return the ids of the entries of a field that the author saw.

    Parameters
    ----------
    stop : PaperStop
    form : RecordForm
    subject, name : str
        As recorded.

    Returns
    -------
    list of str
    """
    number = next(look.number for look in stop.looks if look.result.subject == subject)
    return form.heads_seen(f"{number}-{name.removeprefix('reading/')}")
