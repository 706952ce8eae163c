"""Forms made from fields: what was recorded is shown as it is, what is not offered is refused."""

import html
import re

import pytest

from inspector.checklists.loader import read_library
from inspector.checklists.registry import CRITERIA
from inspector.places import shipped
from inspector.values.field import Field
from inspector.web.forms.form_fields import FormField, make_form
from inspector.web.forms.prepare_fields import BRIEF


@pytest.fixture
def inspection(app, begun):
    return app.extensions["data_folder"].inspections.get(begun)


@pytest.fixture(scope="module")
def library_checks():
    library = read_library(shipped("checklists"))
    return [check for system in library.systems.values() for check in system.checks]


def text_of(answer):
    return html.unescape(answer.get_data(as_text=True))


def test_a_field_of_another_room_may_stay_empty_in_a_form(app):
    """A form asks for what it can get; label, unit, range and help are those of the field."""
    asked = FormField.of(Field("draught", "Draught", unit="m", low=0, high=30, help="Amidships."))

    with app.test_request_context():
        form = make_form([asked])
    assert asked.parse("") is None
    assert "Draught, m" == form["draught"].label.text
    assert "Amidships." == form["draught"].description


@pytest.mark.parametrize(
    ("typed", "sentence"),
    [
        ("9,6", ""),
        ("31", "Draught: 31 m is above 30 m; 0 m to 30 m is accepted."),
        ("1.025", "Draught: '1.025' can be read in two ways: write 1025 or 1.0250."),
    ],
)
def test_a_form_refuses_by_the_sentence_of_the_field(app, typed, sentence):
    """The same words as for a reading or a setting."""
    asked = FormField("draught", "Draught", unit="m", low=0, high=30)

    with app.test_request_context(method="POST", data={"draught": typed}):
        form = make_form([asked])
        assert form.validate() is not bool(sentence)
    assert sentence == "".join(form["draught"].errors)
    assert typed == form["draught"].data


def test_a_value_that_came_with_another_unit_is_shown_with_it(client, begun, inspection):
    """It is not taken for a value in the form's own unit."""
    inspection.record("QX", [("vessel", "length", {"value": "131", "unit": "ft"})])
    page = text_of(client.get(f"/inspection/{begun}/edit/vessel"))

    assert 'value="131 ft"' in page


def test_a_row_keeps_a_unit_that_the_form_does_not_offer(client, begun, inspection):
    """Changing another cell does not change the unit of this one."""
    subject = "row/tanks/t1"
    capacity = {"value": "900", "unit": "km"}
    inspection.record("QX", [(subject, "name", "Fuel 1"), (subject, "capacity", capacity)])
    page = text_of(client.get(f"/inspection/{begun}/particulars/tanks/t1"))

    assert re.search(r'<option value="km" selected>km</option>', page)


@pytest.mark.parametrize(
    ("path", "typed", "label"),
    [
        ("finding", {"title": "Weeps", "urgency": "keep watch", "on": "hull/none"}, "On"),
        ("decide/hull/line", {"text": "Renew", "act": "replace", "unit": "none"}, "For"),
        ("decide/hull/line", {"text": "Renew", "act": "replace", "rate": "none"}, "or at the rate"),
    ],
)
def test_a_choice_that_was_removed_meanwhile_is_refused(
    client, begun, inspection, path, typed, label
):
    """A unit or a rate that is not there any more: one sentence, and nothing is recorded."""
    before = len(inspection.entries)
    answer = client.post(f"/inspection/{begun}/{path}", data=typed)

    assert 400 == answer.status_code
    sentence = f"{label}: what was chosen is not offered any more; choose again."
    assert sentence in text_of(answer)
    assert before == len(inspection.entries)


def test_what_checks_take_from_the_brief_is_known_to_their_criteria():
    """A choice of the brief is one of the criterion's, so that none is refused on board."""
    fields = {field.name: field for field in BRIEF}
    library = read_library(shipped("checklists"))
    wrong = [
        (system.id, check.id, choice)
        for system in library.systems.values()
        for check in system.checks
        for asked in (CRITERIA[check.criterion].inputs if check.criterion else ())
        if check.taken.get(asked.name, "").startswith("brief.") and asked.choices
        for choice in fields[check.taken[asked.name].removeprefix("brief.")].choices
        if choice and choice not in asked.choices
    ]

    assert [] == wrong


def test_the_kind_of_ship_is_asked_once(library_checks):
    """Where the brief says what she is to be, a check asks only if it is to be otherwise."""
    asking = [check for check in library_checks if check.taken.get("ship") == "brief.ship"]

    assert len(asking) >= 5
    assert all(one.optional for check in asking for one in check.readings if one.name == "ship")
