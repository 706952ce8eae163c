"""Forms on the laptop: a refused form keeps what was typed and names every fault."""

import re

import pytest

UNIT = "bow-thruster-3"
BATCH = [
    ("sheet/thrusters/bow-thruster-3/oil", "rating", "poor"),
    ("sheet/thrusters/bow-thruster-3/seals", "rating", "fair"),
    ("photo/" + "a" * 64, "on", "sheet/thrusters/bow-thruster-3/oil"),
    ("photo/" + "a" * 64, "name", "one.jpg"),
    ("finding/f1", "title", "Oil in the water"),
    ("finding/f1", "urgency", "danger now"),
    ("finding/f1", "on", "thrusters/bow-thruster-3"),
]


@pytest.fixture
def state(app, begun):
    """Maker of the inspection's state as it is now."""
    return lambda: app.extensions["data_folder"].inspections.get(begun).state


@pytest.fixture
def loaded(client, app, begun):
    """An inspection with a third bow thruster that has two answers, a photo and a finding."""
    kinds = app.extensions["data_folder"].library.systems["thrusters"].kinds
    client.post(
        f"/inspection/{begun}/units",
        data={"system": "thrusters", "add": "Bow thruster 3", "kind": next(iter(kinds), "")},
    )
    app.extensions["data_folder"].inspections.get(begun).record("QX", BATCH)
    return begun


def text_of(answer):
    """The page without the line breaks of its templates."""
    return " ".join(answer.get_data(as_text=True).split())


def faults(answer):
    return re.findall(r'class="fault"[^>]*>([^<]+)', text_of(answer))


def field(answer, name):
    """The value of the first input of that name."""
    return re.search(
        rf'<input[^>]*name="{re.escape(name)}"[^>]*?value="([^"]*)"'
        rf'|<input[^>]*?value="([^"]*)"[^>]*name="{re.escape(name)}"',
        text_of(answer),
    )


def shown(answer, name):
    found = field(answer, name)
    return (found.group(1) or found.group(2) or "") if found else None


def test_an_emptied_name_alone_takes_no_unit_out(client, loaded, state):
    """Without the tick an empty name is refused, and nothing else of that form is recorded."""
    answer = client.post(
        f"/inspection/{loaded}/units",
        data={"system": "thrusters", f"unit-{UNIT}": " ", "add": "Stern thruster 9"},
    )

    assert 400 == answer.status_code
    assert "Bow thruster 3: a unit needs a name." in faults(answer)[0]
    assert 'name="add" value="Stern thruster 9"' in text_of(answer)
    assert state().value(f"unit/thrusters/{UNIT}", "gone") is None
    assert "Stern thruster 9" not in text_of(client.get(f"/inspection/{loaded}/prepare"))


def test_the_tick_counts_what_is_recorded_for_a_unit(client, loaded):
    """Before a unit is taken out, the page counts its answers, photos and findings."""
    page = text_of(client.get(f"/inspection/{loaded}/prepare"))

    assert "take out: 2 answers, 1 photo and 1 finding are recorded for it" in page
    assert "take out: nothing is recorded for it" in page


def test_a_unit_comes_back_by_its_name_with_all_that_is_recorded_for_it(client, loaded, state):
    """Ticked, it is removed; the same name added again brings back the same unit, not a second."""
    subject = f"unit/thrusters/{UNIT}"
    kind = state().value(subject, "kind")
    client.post(
        f"/inspection/{loaded}/units",
        data={"system": "thrusters", f"unit-{UNIT}": "Bow thruster 3", f"out-{UNIT}": "yes"},
    )
    assert state().value(subject, "gone") is True
    assert f'name="unit-{UNIT}"' not in text_of(client.get(f"/inspection/{loaded}/prepare"))
    client.post(
        f"/inspection/{loaded}/units",
        data={"system": "thrusters", "add": "bow  THRUSTER 3", "kind": ""},
    )

    assert state().value(subject, "gone") is None
    assert kind == state().value(subject, "kind")
    assert [subject] == [
        one for one in state().subjects("unit/thrusters/") if one.startswith(subject)
    ]
    assert "2 answers, 1 photo and 1 finding" in text_of(
        client.get(f"/inspection/{loaded}/prepare")
    )


def test_taking_out_and_adding_at_once_is_refused(client, loaded, state):
    """One form cannot say both of one name."""
    answer = client.post(
        f"/inspection/{loaded}/units",
        data={"system": "thrusters", f"out-{UNIT}": "yes", "add": "Bow thruster 3"},
    )

    assert 400 == answer.status_code
    assert state().value(f"unit/thrusters/{UNIT}", "gone") is None


def test_a_refused_work_line_keeps_all_and_names_every_fault(client, begun, state):
    """Two bad figures, falling costs and a missing text are four sentences.

    What was typed is in the form.
    """
    typed = {
        "text": "",
        "act": "replace",
        "unit": "all",
        "low": "5",
        "likely": "3",
        "high": "much",
        "weight": "heavy",
        "sequence": "0",
    }
    answer = client.post(f"/inspection/{begun}/decide/hull/line", data=typed)

    assert 400 == answer.status_code
    for sentence in (
        "Cost, high:",
        "Weight:",
        "Place in the sequence: 0 is below 1; 1 to 9999 is accepted.",
        "must rise",
        "needs its text",
    ):
        assert sentence in faults(answer)[0]
    assert {"low": "5", "likely": "3", "high": "much", "weight": "heavy", "sequence": "0"} == {
        name: shown(answer, name) for name in ("low", "likely", "high", "weight", "sequence")
    }
    assert '<option value="replace" selected>replace</option>' in text_of(answer)
    assert [] == state().subjects("scope/")


def test_refused_facts_keep_all_and_name_every_fault(client, begun, state):
    """A remaining life below nothing and a weight in words are two sentences.

    The good field beside them is not lost.
    """
    answer = client.post(
        f"/inspection/{begun}/decide/hull/facts",
        data={"life_years": "-4", "weight_won": "lots", "space_won": "12", "parts": "made"},
    )

    assert 400 == answer.status_code
    assert "Remaining life: −4 years is below 0 years" in faults(answer)[0]
    assert "Weight won by removal:" in faults(answer)[0]
    assert ("-4", "lots", "12") == tuple(
        shown(answer, name) for name in ("life_years", "weight_won", "space_won")
    )
    assert '<option value="made" selected>' in text_of(answer)
    assert {} == state().values("verdict/hull/all")


def test_a_refused_finding_keeps_all(client, begun):
    """Title and urgency are both named; the long text is not typed twice."""
    answer = client.post(
        f"/inspection/{begun}/finding",
        data={"title": "", "urgency": "soon", "text": "Weeps at the seam", "action": "Weld"},
    )

    assert "needs a title" in faults(answer)[0]
    assert "Urgency: &#39;soon&#39; is not one of danger now" in faults(answer)[0]
    assert "Weeps at the seam</textarea>" in text_of(answer)
    assert "Weld</textarea>" in text_of(answer)


def test_a_row_kept_after_it_was_taken_out_is_back(client, begun, state):
    """What another page took out and this one keeps is there again, undisputed, with a sentence."""
    client.post(
        f"/inspection/{begun}/particulars/sales/new",
        data={"name": "Winch", "low": "1", "likely": "2", "high": "3"},
    )
    subject = state().subjects("row/sales/")[0]
    row = f"/inspection/{begun}/particulars/sales/{subject.split('/')[-1]}"
    client.post(row + "/gone")
    answer = client.post(
        row, data={"name": "Winch", "low": "1", "likely": "2", "high": "4"}, follow_redirects=True
    )

    assert "so it is back" in text_of(answer)
    assert state().value(subject, "gone") is None
    assert not state().disputed(subject, "gone")


@pytest.mark.parametrize("table", ["sales/new", "certificates/new", "prices/one"])
def test_an_empty_row_says_that_nothing_was_typed(client, begun, table, state):
    """An empty form does not look as if it had been kept."""
    answer = client.post(f"/inspection/{begun}/particulars/{table}", data={"name": ""})

    assert 400 == answer.status_code
    assert ["Nothing was typed, so nothing was kept."] == faults(answer)
    assert [] == state().subjects("row/")


def test_a_row_is_not_emptied_by_keeping_nothing(client, begun, state):
    """To empty a row is to take it out, and that has its own button."""
    client.post(
        f"/inspection/{begun}/particulars/sales/new",
        data={"name": "Winch", "low": "1", "likely": "2", "high": "3"},
    )
    subject = state().subjects("row/sales/")[0]
    answer = client.post(f"/inspection/{begun}/particulars/sales/{subject.split('/')[-1]}", data={})

    assert 400 == answer.status_code
    assert "Winch" == state().value(subject, "name")


@pytest.mark.parametrize(
    ("table", "typed", "sentence"),
    [
        ("sales", {"name": "Winch", "low": "9", "likely": "2", "high": "3"}, "must rise"),
        (
            "certificates",
            {"kind": "class", "issued": "2025-01-02", "expires": "2024-01-01"},
            "before the issue",
        ),
    ],
)
def test_a_row_that_contradicts_itself_is_refused_and_kept_in_the_form(
    client, begun, table, typed, sentence, state
):
    """A sale dearer at its low end, a paper that ends before it began.

    Refused on keeping, not reported later.
    """
    answer = client.post(f"/inspection/{begun}/particulars/{table}/new", data=typed)

    assert 400 == answer.status_code
    assert sentence in faults(answer)[0]
    assert [] == [*state().subjects("row/"), *state().subjects("certificate/")]


def test_levels_name_every_fault_at_once(client, begun, state):
    """A level outside its range does not hide another one; nothing is kept of either."""
    typed = {"coverage": "200", "retain_from": "0"}
    answer = client.post(f"/inspection/{begun}/rules", data=typed)

    assert 400 == answer.status_code
    assert "Enough seen: 200 % is above 100 %" in faults(answer)[0]
    assert "Retain from: 0 is below 1" in faults(answer)[0]
    assert "200" == shown(answer, "coverage")
    assert {} == state().values("settings")


def test_refused_limits_come_back_as_typed(client, begun):
    """A limit without its source is refused; the number is not typed twice."""
    page = text_of(client.get(f"/inspection/{begun}/rules"))
    criterion, name = re.search(
        r'rules/([a-z0-9-]+)" class="fields limits-of".*?name="(?!csrf)([a-z0-9_]+)"[^>]* value=""',
        page,
        re.S,
    ).groups()
    answer = client.post(f"/inspection/{begun}/rules/{criterion}", data={name: "many"})

    assert 400 == answer.status_code
    assert 'value="many"' in text_of(answer)


@pytest.mark.parametrize(
    ("again", "leads"),
    [
        ("finding", "/decide"),
        ("settle", "/decide"),
        ("gone/scope/x", "/decide"),
        ("decide/hull/line", "/decide/hull"),
        ("decide/hull/verdict", "/decide/hull"),
        ("decide/hull/facts", "/decide/hull"),
        ("units", "/prepare"),
        ("brief", "/prepare"),
        ("rules/oil-condition", "/rules"),
        ("particulars/sales/x/gone", "/particulars"),
    ],
)
def test_a_form_address_loaded_again_leads_to_its_page(client, begun, again, leads):
    """Nobody meets a refusal by entering the address bar after a refused form."""
    from inspector.checklists.registry import CRITERIA

    again = again if "rules" not in again else f"rules/{next(iter(CRITERIA))}"
    answer = client.get(f"/inspection/{begun}/{again}", follow_redirects=True)

    assert 200 == answer.status_code
    assert leads in answer.request.path


@pytest.mark.parametrize("again", ["finding", "settle", "units", "decide/hull/line", "rules/none"])
def test_a_form_address_of_no_inspection_is_not_found(client, begun, again):
    """The way back exists only where there is an inspection, and a criterion, to lead back to."""
    assert (
        404
        == client.get(
            f"/inspection/{'nowhere' if 'none' not in again else begun}/{again}"
        ).status_code
    )


def test_a_kept_brief_is_copied_into_an_inspection_begun_before_it(client, begun, app, state):
    """All its fields, needs too; what the brief before it asked is not mixed in."""
    client.post(f"/inspection/{begun}/edit/brief", data={"client": "QX", "persons": "12"})
    client.post("/brief/new", data={"client": "RZ", "speed": "14", "need/hull": "required"})
    kept = app.extensions["data_folder"].catalogue.all("briefs")[0]["id"]
    page = text_of(client.get(f"/inspection/{begun}/prepare"))
    client.post(f"/inspection/{begun}/brief", data={"brief": kept})

    assert f'<option value="{kept}">RZ</option>' in page
    assert {"client": "RZ", "speed": "14", "need/hull": "required"} == state().values("brief")


def test_no_brief_chosen_copies_nothing(client, begun, state):
    """A sentence, and the brief is as it was."""
    client.post(f"/inspection/{begun}/edit/brief", data={"client": "QX"})
    answer = client.post(f"/inspection/{begun}/brief", data={"brief": "nowhere"})

    assert 400 == answer.status_code
    assert {"client": "QX"} == state().values("brief")


def test_an_empty_need_says_that_it_is_neutral(client, begun):
    """The blank choice has words."""
    assert "nothing said: neutral</option>" in text_of(
        client.get(f"/inspection/{begun}/edit/brief")
    )


@pytest.mark.parametrize("page", ["edit/vessel", "edit/inspection", "particulars/certificates/new"])
def test_dates_have_a_date_field(client, begun, page):
    """As on the walk; a text that is no date stays visible in a text field."""
    assert 'type="date"' in text_of(client.get(f"/inspection/{begun}/{page}"))


def test_a_date_that_is_none_stays_visible(client, begun):
    """A date field would show nothing of what was typed."""
    answer = client.post(f"/inspection/{begun}/edit/vessel", data={"built": "14.3.2008"})

    assert re.search(
        r'<input[^>]*name="built"[^>]*type="text"|<input[^>]*type="text"[^>]*name="built"',
        text_of(answer),
    )
    assert "14.3.2008" == shown(answer, "built")


def test_a_fault_is_shown_at_its_field(client, begun):
    """Beside the sentence on top, each field carries its own and is described by it.

    The others carry none.
    """
    page = text_of(
        client.post(f"/inspection/{begun}/edit/vessel", data={"length": "long", "imo": "12"})
    )

    for name in ("length", "imo"):
        assert f'aria-describedby="fault-{name}"' in page
        assert f'id="fault-{name}"' in page
    assert 'aria-describedby="fault-flag"' not in page


SURVEYORS = [
    ("qx  one", "is there already", 1),
    ("", "needs a name", 1),
    ("x" * 81, "81 characters; at most 80", 1),
    ("two\nlines", "in one line", 1),
    ("RZ", "", 2),
]


@pytest.mark.parametrize(("name", "sentence", "count"), SURVEYORS)
def test_a_surveyor_is_kept_once(client, app, name, sentence, count):
    """Two of one name cannot be distinguished in a report."""
    client.post("/surveyors", data={"name": "QX One"})
    page = text_of(client.post("/surveyors", data={"name": name}, follow_redirects=True))

    assert sentence in page
    assert count == len(app.extensions["data_folder"].catalogue.all("surveyors"))


def test_vessels_without_a_name_are_told_apart(client, begun):
    """Each shows the day on which it was begun, and what tells it from others of that day.

    A title of its own needs none.
    """
    client.post("/inspections", data={"go": "walk"})
    named = client.post("/inspections").headers["Location"].split("/")[2]
    client.post(f"/inspection/{named}/edit/vessel", data={"name": "Grey Heron"})
    page = text_of(client.get("/"))

    assert page.count(f"Vessel without a name yet, begun {begun[:10]} ({begun[11:]})") >= 2
    assert f"({named})" not in page


def test_counts_have_no_wrong_plural(client, begun):
    """One finding is a finding; units are counted by a cross, whatever the unit's word."""
    client.post(f"/inspection/{begun}/finding", data={"title": "Crack", "urgency": "keep watch"})

    assert "1 finding</small>" in text_of(client.get("/"))
    assert re.search(r"\d+ × [a-z ]+, \d+ min", text_of(client.get(f"/inspection/{begun}/prepare")))


def test_bringing_in_no_file_is_one_sentence(client):
    """With a form and without one."""
    for form in ({}, {"x": "1"}):
        assert [
            "Choose a file first: a bundle or a backup (zip), or what a device saved (json)."
        ] == faults(client.post("/import", data=form))


def test_a_decision_without_its_reason_keeps_its_unit(client, begun):
    """The refused form is about the same unit as before."""
    answer = client.post(
        f"/inspection/{begun}/decide/hull/verdict",
        data={"decision": "remove", "unit": "shell-and-sea-chests", "reason": ""},
    )

    assert "give the reason" in faults(answer)[0]
    assert re.search(
        r'<select[^>]*name="unit"[^>]*>.*?<option value="shell-and-sea-chests" selected>',
        text_of(answer),
    )
