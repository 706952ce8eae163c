"""Pages of prepare, walk, decide and report.

Every route with bad input gives 4xx and a sentence, never a 500.
"""

import io
import re

import openpyxl
import pytest

from inspector import create_app


def test_three_taps_lead_to_the_walk(client):
    """From the list, one post begins an inspection and lands on its walk."""
    answer = client.post("/inspections", data={"go": "walk"}, follow_redirects=True)

    assert answer.status_code == 200
    assert answer.request.path.endswith("/walk")


@pytest.mark.parametrize(
    "page",
    [
        "prepare",
        "walk",
        "decide",
        "decide/hull",
        "report",
        "edit/vessel",
        "edit/brief",
        "edit/inspection",
    ],
)
def test_every_page_of_an_empty_inspection_shows(client, begun, page):
    """Nothing recorded yet is a normal case for every page."""
    assert client.get(f"/inspection/{begun}/{page}").status_code == 200


def test_particulars_are_kept_and_shown(client, begun):
    """What was typed for the vessel is on the prepare page, with what the check digit says."""
    client.post(
        f"/inspection/{begun}/edit/vessel",
        data={"name": "Grey Heron", "imo": "0001236", "length": "61,5", "dp_class": "2"},
    )
    page = client.get(f"/inspection/{begun}/prepare").get_data(as_text=True)

    assert "Grey Heron" in page
    assert "61,5" in page


@pytest.mark.parametrize(
    ("field", "value"),
    [
        ("length", "long"),
        ("length", "-3"),
        ("imo", "12"),
        ("built", "14.3.2008"),
        ("name", "x" * 201),
    ],
)
def test_a_bad_particular_is_refused_with_a_sentence_and_nothing_is_lost(
    client, begun, field, value
):
    """The form comes back with what was typed and says what would be right; nothing is recorded."""
    answer = client.post(f"/inspection/{begun}/edit/vessel", data={"flag": "Nowhere", field: value})
    text = answer.get_data(as_text=True)

    assert answer.status_code == 400
    assert 'class="fault"' in text
    assert "Nowhere" in text
    assert client.get(f"/exchange/{begun}/entries").get_data(as_text=True).count('"vessel"') == 0


def test_units_are_counted_renamed_and_taken_out(client, begun):
    """A unit can be added; ticked, it is taken out of the walk."""
    client.post(f"/inspection/{begun}/units", data={"system": "thrusters", "add": "Bow thruster 3"})
    page = client.get(f"/inspection/{begun}/prepare").get_data(as_text=True)
    assert "Bow thruster 3" in page

    client.post(
        f"/inspection/{begun}/units",
        data={"system": "thrusters", "unit-bow-thruster-3": "", "out-bow-thruster-3": "yes"},
    )
    assert 'name="unit-bow-thruster-3"' not in client.get(f"/inspection/{begun}/prepare").get_data(
        as_text=True
    )


def test_a_decision_against_the_proposal_needs_its_reason(client, begun):
    """Without a reason it is refused in a sentence; with one it is kept."""
    address = f"/inspection/{begun}/decide/hull/verdict"
    refused = client.post(address, data={"decision": "remove", "unit": "all"})
    kept = client.post(address, data={"decision": "remove", "unit": "all", "reason": "wasted"})

    assert refused.status_code == 400
    assert "give the reason" in refused.get_data(as_text=True)
    assert kept.status_code == 302


@pytest.mark.parametrize("costs", [("3", "2", "1"), ("-1", "", ""), ("cheap", "", "")])
def test_costs_that_cannot_be_are_refused(client, begun, costs):
    """A work line with costs that fall, lie below zero or are no numbers gets a sentence."""
    form = dict(
        zip(("low", "likely", "high"), costs, strict=True),
        text="renew",
        act="refurbish",
        unit="all",
    )
    answer = client.post(f"/inspection/{begun}/decide/hull/line", data=form)

    assert answer.status_code == 400
    assert 'class="fault"' in answer.get_data(as_text=True)


BAD = [
    ("get", "/no-such-page"),
    ("get", "/inspection/none/walk"),
    ("get", "/inspection/%2e%2e/walk"),
    ("get", "/inspection/{id}/decide/none"),
    ("get", "/inspection/{id}/edit/none"),
    ("post", "/inspection/{id}/units"),
    ("post", "/inspection/{id}/decide/hull/verdict"),
    ("post", "/inspection/{id}/decide/none/verdict"),
    ("post", "/inspection/{id}/decide/hull/line"),
    ("post", "/inspection/{id}/decide/hull/facts?x=1"),
    ("post", "/inspection/{id}/finding"),
    ("post", "/inspection/{id}/gone/scope/none"),
    ("post", "/inspection/{id}/gone/vessel/x"),
    ("get", "/inspection/{id}/report.pdf?paper=a0"),
    ("get", "/inspection/{id}/report.pdf?units=old"),
    ("get", "/exchange/{id}/entries?after=-1"),
    ("get", "/exchange/{id}/entries?after=x"),
    ("put", "/exchange/{id}/photo/xyz"),
    ("get", "/inspection/{id}/photo/xyz/thumb"),
    ("get", "/inspection/{id}/photo/" + "0" * 64 + "/thumb"),
    ("delete", "/inspections"),
    ("post", "/exchange/none/entries"),
]


@pytest.mark.parametrize(("method", "address"), BAD)
def test_bad_requests_get_a_sentence_never_a_500(client, begun, method, address):
    """Every route with bad input answers 4xx with a sentence (empty facts alone are fine)."""
    answer = getattr(client, method)(
        address.format(id=begun), data={"life_years": "ten"} if address.endswith("x=1") else None
    )

    assert 400 <= answer.status_code < 500
    text = (
        answer.json["error"]
        if answer.is_json
        else re.search(r'class="fault"[^>]*>([^<]+)', answer.get_data(as_text=True)).group(1)
    )
    assert len(text) > 10


def test_a_strangers_page_cannot_write(client, begun):
    """A post that comes from another origin is refused."""
    answer = client.post(
        "/surveyors", data={"name": "X"}, headers={"Origin": "https://elsewhere.example"}
    )

    assert answer.status_code == 403


def test_a_strangers_host_name_is_refused(client):
    """A request under a host name that is not ours is refused, whatever it asks."""
    assert client.get("/", headers={"Host": "rebound.example"}).status_code == 400


def test_a_write_without_a_token_is_refused(tmp_path):
    """Forms and the exchange need the token of this instance."""
    app = create_app(tmp_path / "data", TESTING=True)
    client = app.test_client()

    assert client.post("/surveyors", data={"name": "X"}).status_code == 400
    token = client.get("/session").json["csrf"]
    assert client.post("/surveyors", data={"name": "X", "csrf_token": token}).status_code == 302
    app.extensions["data_folder"].close()


def test_every_answer_carries_the_content_policy(client):
    """Pages and refusals alike forbid foreign and inline scripts."""
    for address in ("/", "/no-such-page", "/session"):
        assert "default-src 'self'" in client.get(address).headers["Content-Security-Policy"]


def test_a_card_says_what_passing_by_tells(client, begun):
    """The glance and what makes one stop come with the checklists that the page names; its row
    says that there is one."""
    page = client.get(f"/inspection/{begun}/walk").text
    address = re.search(r"/shipped/checklists/[^&\"]+\.json", page).group()
    checks = {one["id"]: one for one in client.get(address).json["propulsion.toml"]["check"]}

    plate = checks["engine-plate"]["glance"]
    assert "Photograph plate and hour meter of the engine." == plate["look"]
    assert "meters far apart, or plate painted over" == plate["bad"]
    assert re.search(r'data-check="engine-plate"[^>]* data-glance', page)


def test_a_work_line_keeps_what_the_yard_must_know(client, begun):
    """Place, quantity, who attends and supplies go into the list that the yard prices."""
    client.post(f"/inspection/{begun}/decide/hull/line", data={"text": "Dock", "act": "refurbish"})
    line = {
        "text": "Coat the rail",
        "act": "refurbish",
        "quantity": "110",
        "quantity_unit": "m²",
        "place": "frames 12 to 30",
        "done": "in dock",
        "class_attends": "yes",
        "supplied_by": "owner",
    }
    answer = client.post(f"/inspection/{begun}/decide/hull/line", data=line)
    page = client.get(f"/inspection/{begun}/yard-scope.xlsx")
    rows = list(openpyxl.load_workbook(io.BytesIO(page.data))["Scope"].values)
    coat = dict(zip(rows[0], rows[2], strict=True))

    assert 302 == answer.status_code
    assert ("frames 12 to 30", 110, "m²", "in dock", "yes", "owner") == tuple(
        coat[name]
        for name in (
            "frame or place",
            "quantity",
            "unit of quantity",
            "done",
            "class attends",
            "supplied by",
        )
    )
    assert 200 == client.get(f"/inspection/{begun}/yard-scope.pdf?estimate=yes").status_code
    assert 404 == client.get(f"/inspection/{begun}/yard-scope.doc").status_code
    assert 400 == client.get(f"/inspection/{begun}/yard-scope.pdf?paper=a3").status_code


def test_a_revision_is_signed_on_the_page_of_the_report(client, begun):
    """It is listed with its file; nothing new is not signed twice; a day is asked for."""
    signing = {"name": "K. Toreth", "capacity": "surveyor", "day": "2026-10-20"}
    client.post(f"/inspection/{begun}/edit/vessel", data={"name": "Candidate B"})
    without = client.post(f"/inspection/{begun}/sign", data=signing | {"day": ""})
    client.post(f"/inspection/{begun}/sign", data=signing)
    again = client.post(f"/inspection/{begun}/sign", data=signing)
    page = client.get(f"/inspection/{begun}/report").text

    assert (400, True) == (without.status_code, "give the day" in without.text)
    assert "signed by K. Toreth, surveyor, 2026-10-20" in page
    assert (400, True) == (again.status_code, "Nothing was recorded since" in again.text)
    assert 200 == client.get(f"/inspection/{begun}/revision/1.pdf").status_code
    assert 404 == client.get(f"/inspection/{begun}/revision/2.pdf").status_code
