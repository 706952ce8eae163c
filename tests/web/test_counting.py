"""Units counted by layout, plus and minus; the state of the vessel and what can be had then."""

import re

import pytest

from inspector.conversion.comparison.scores import WEIGHTS
from inspector.services.comparison import comparison
from inspector.services.units_on_board import units_of


@pytest.fixture
def data(app):
    return app.extensions["data_folder"]


@pytest.fixture
def on_board(data, begun):
    """The names of a system's units, as they are counted now."""
    inspection = data.inspections.get(begun)

    def names(system):
        inspection.refresh()
        return [unit["name"] for unit in units_of(inspection.state, data.library)[system]]

    return names


def step(client, begun, system, **posted):
    return client.post(f"/inspection/{begun}/count", data={"system": system, **posted})


def test_minus_and_plus_leave_the_count_as_it_was(client, begun, on_board):
    """The unit that minus took out is the one that plus brings back."""
    before = on_board("dynamic-positioning")
    step(client, begun, "dynamic-positioning", less="")
    assert [] == on_board("dynamic-positioning")

    step(client, begun, "dynamic-positioning", more="")
    assert before == on_board("dynamic-positioning")


def test_plus_numbers_a_unit_that_no_checklist_proposes(client, begun, on_board, data):
    """One more than proposed is called after its kind, with a number that is free."""
    before = on_board("steering")
    kind = next(iter(data.library.systems["steering"].kinds), "")
    for _ in range(2):
        step(client, begun, "steering", more=kind)

    assert 2 == len(set(on_board("steering")) - set(before))
    assert all(re.search(r" \d+$", name) for name in set(on_board("steering")) - set(before))


def test_minus_takes_out_nothing_that_holds_a_record(client, begun, on_board, data):
    """A unit with an answer stays, and the page says which and why."""
    inspection = data.inspections.get(begun)
    unit = units_of(inspection.state, data.library)["dynamic-positioning"][0]
    check = data.library.systems["dynamic-positioning"].checks[0].id
    subject = f"sheet/dynamic-positioning/{unit['id']}/{check}"
    inspection.record("QX", [(subject, "rating", "good")])

    answer = step(client, begun, "dynamic-positioning", less="")

    assert 400 == answer.status_code
    assert "1 answer is recorded for it" in answer.get_data(as_text=True)
    assert [unit["name"]] == on_board("dynamic-positioning")


def test_minus_on_nothing_is_one_sentence(client, begun):
    """None can be taken out of none."""
    step(client, begun, "dynamic-positioning", less="")

    answer = step(client, begun, "dynamic-positioning", less="")

    assert 400 == answer.status_code
    assert "none can be taken out" in answer.get_data(as_text=True)


def test_a_kind_that_is_not_there_is_refused(client, begun):
    """What no page of ours posts changes nothing."""
    assert 400 == step(client, begun, "steering", more="sails").status_code


def test_a_layout_counts_every_system(client, begun, on_board, data):
    """Each layout gives each system the units that it names, and no others."""
    for layout in data.library.layouts.values():
        answer = client.post(f"/inspection/{begun}/layout", data={"layout": layout.id})
        assert 302 == answer.status_code
        for system, units in layout.units.items():
            assert {unit["name"] for unit in units} == set(on_board(system)), (layout.id, system)


def test_a_layout_keeps_a_unit_with_a_record(client, begun, on_board, data):
    """Nothing recorded goes out of sight by a choice of layout, and the page names what stayed."""
    client.post(f"/inspection/{begun}/units", data={"system": "deck-machinery", "add": "Odd winch"})
    inspection = data.inspections.get(begun)
    inspection.record("QX", [("sheet/deck-machinery/odd-winch/crane-run", "note", "loud")])
    layout = next(iter(data.library.layouts))

    page = client.post(
        f"/inspection/{begun}/layout", data={"layout": layout}, follow_redirects=True
    ).get_data(as_text=True)

    assert "Odd winch" in on_board("deck-machinery")
    assert "Odd winch stayed, because something is recorded there." in page


def test_no_layout_chosen_is_one_sentence(client, begun):
    """The button without a choice counts nothing."""
    answer = client.post(f"/inspection/{begun}/layout", data={})

    assert 400 == answer.status_code
    assert "Choose one of the layouts; nothing was counted." in answer.get_data(as_text=True)


def test_the_page_says_what_can_be_had_in_her_state(client, begun):
    """In cold lay-up nothing runs, and prepare counts what follows from it."""
    client.post(
        f"/inspection/{begun}/edit/inspection", data={"state": "cold lay-up", "berth": "alongside"}
    )

    page = client.get(f"/inspection/{begun}/prepare").get_data(as_text=True)

    assert re.search(r"Her state: cold lay-up, alongside\.\s+\d+ checks can be had now", page)


def test_a_state_that_is_none_is_refused(client, begun):
    """Only the four states can be kept."""
    answer = client.post(f"/inspection/{begun}/edit/inspection", data={"state": "sunk"})

    assert 400 == answer.status_code


def test_the_comparison_is_offered_of_what_was_walked(client, begun, data):
    """Of five inspections the four that are ticked begin with the one that has an answer."""
    unit = units_of(data.inspections.get(begun).state, data.library)["hull"][0]["id"]
    check = data.library.systems["hull"].checks[0].id
    for _ in range(4):
        client.post("/inspections", data={"go": "prepare"})
    data.inspections.get(begun).record("QX", [(f"sheet/hull/{unit}/{check}", "rating", "good")])

    page = client.get("/").get_data(as_text=True)

    boxes = re.findall(r'<input[^>]*name="id"[^>]*>', page)
    ticked = [re.search(r'value="([^"]+)"', box)[1] for box in boxes if " checked" in box]
    assert 4 == len(ticked)
    assert begun in ticked


def test_without_a_choice_those_that_were_walked_are_compared(client, begun, data):
    """One that is only prepared has nothing to compare yet; before any is walked all are shown."""
    client.post("/inspections", data={"go": "prepare"})
    assert 2 == len(comparison(data, [], WEIGHTS).candidates)

    unit = units_of(data.inspections.get(begun).state, data.library)["hull"][0]["id"]
    check = data.library.systems["hull"].checks[0].id
    data.inspections.get(begun).record("QX", [(f"sheet/hull/{unit}/{check}", "rating", "good")])

    assert [begun] == [one.id for one in comparison(data, [], WEIGHTS).candidates]
