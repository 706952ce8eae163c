"""Pasting a table: a look first, then taken, and nothing before that is recorded."""

import pytest

TEXT = "Draught\tDisplacement\tKM\n4.4\t2604\t7.0\n4.6\t2744\t6.9"


def subjects(app, inspection):
    """The rows that are recorded."""
    state = app.extensions["data_folder"].inspections.get(inspection).state
    return state.subjects("row/hydrostatics_by_draught/")


def page_of(inspection, table="hydrostatics_by_draught"):
    """The address of the page."""
    return f"/inspection/{inspection}/particulars/{table}/paste"


def test_a_look_shows_what_was_understood_and_keeps_nothing(client, app, begun):
    """The rows are in a table, the text is still there, and nothing is recorded."""
    assert client.get(page_of(begun)).status_code == 200
    answer = client.post(page_of(begun), data={"text": TEXT})
    page = answer.get_data(as_text=True)

    assert answer.status_code == 200
    assert "What was understood" in page
    assert "<td>2744</td>" in page
    assert "take these 2 rows" in page
    assert [] == list(subjects(app, begun))


def test_taken_rows_are_recorded_as_typed(client, app, begun):
    """Two subjects with their cells as they were pasted."""
    answer = client.post(page_of(begun), data={"text": TEXT, "take": "1"})

    assert answer.status_code == 302
    state = app.extensions["data_folder"].inspections.get(begun).state
    kept = sorted(state.values(one)["displacement"] for one in subjects(app, begun))
    assert ["2604", "2744"] == kept


@pytest.mark.parametrize("text", ["", "nothing here", TEXT + "\n4.8\t-3\t6.8"])
def test_a_faulty_text_is_told_and_kept_on_the_page(client, app, begun, text):
    """Even with the word to take it nothing is recorded."""
    answer = client.post(page_of(begun), data={"text": text, "take": "1"})

    assert answer.status_code == 400
    assert 'class="fault"' in answer.get_data(as_text=True)
    assert text.strip().split("\n")[-1][:7] in answer.get_data(as_text=True)
    assert [] == list(subjects(app, begun))


def test_a_table_of_one_row_is_not_pasted(client, begun):
    """It has a form of its own."""
    assert client.get(page_of(begun, "hydrostatics")).status_code == 404
    assert client.get(page_of(begun, "nothing")).status_code == 404
