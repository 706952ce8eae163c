"""The page of the round: what is chosen, what is left out, and the act for what cannot be had."""

import json
import re

import pytest


@pytest.fixture
def page(client, begun):
    """The text of the page for some query."""

    def read(query=""):
        answer = client.get(f"/inspection/{begun}/round{query}")
        return answer.status_code, answer.get_data(as_text=True)

    return read


def visit(client, begun, **facts):
    """Record facts of the visit by its form."""
    answer = client.post(f"/inspection/{begun}/edit/inspection", data=facts)
    assert 302 == answer.status_code, answer.get_data(as_text=True)


def looks(text):
    return int(re.search(r"<b>(\d+) looks? at", text)[1])


def test_more_minutes_give_more_looks_and_leave_less_out(page):
    """Both are said at once."""
    short, long = page("?minutes=45")[1], page("?minutes=240")[1]

    assert 60 <= looks(short) < looks(long)
    left = [int(re.search(r"(\d+) checks are left out", text)[1]) for text in (short, long)]
    assert left == sorted(left, reverse=True)


def test_it_says_where_nobody_said_how_long_the_visit_is(client, begun, page):
    """And asks no more once it is known."""
    assert "Nobody has said how long the visit is" in page()[1]

    visit(client, begun, aboard="0.5")
    assert "Nobody has said" not in page()[1]
    assert 'value="30"' in page()[1]


def test_several_people_are_named_at_their_stops(client, begun, page):
    """Each with the minutes."""
    visit(client, begun, aboard="4", people="2")
    _, text = page()

    assert "person 1: 240 min, person 2: 240 min" in text
    assert "person 2," in text


def test_each_look_leads_to_its_card(client, begun, page):
    """By an address that the walk page knows: a sheet of it, and the check behind it."""
    _, text = page("?minutes=45")
    walk = client.get(f"/inspection/{begun}/walk").get_data(as_text=True)
    links = set(re.findall(rf'href="/inspection/{begun}/walk#sheet/([^"]+)"', text))

    assert len(links) >= 60
    for system, unit, check in (link.split("/") for link in links):
        assert f'data-sheet="{system}/{unit}"' in walk
        assert f'data-check="{check}"' in walk


def test_what_is_left_out_is_one_tap_away(page):
    """Even with no minute, every open check is a link."""
    _, text = page("?minutes=0")
    left = int(re.search(r"(\d+) checks are left out", text)[1])

    assert left == len(set(re.findall(r"#sheet/([^\"]+)", text)))


def test_what_cannot_be_had_is_one_act_and_its_undo_another(client, begun, page):
    """The undo is offered where the act leads to."""
    visit(client, begun, state="cold lay-up", berth="alongside")
    assert "cannot be had" in page()[1]

    answer = client.post(f"/inspection/{begun}/round/not-had")
    after = client.get(answer.headers["Location"]).get_data(as_text=True)
    assert "checks were just recorded as not seen" in after
    fields = dict(re.findall(r'name="(first|last)"\s+value="([^"]+)"', after))

    client.post(f"/inspection/{begun}/round/take-back", data=fields)
    assert "checks cannot be had" in page()[1]


@pytest.mark.parametrize("query", ["?minutes=-3", "?minutes=soon", "?people=0", "?people=1.5"])
def test_what_cannot_be_composed_is_refused_with_a_sentence(page, query):
    """And the page is there all the same."""
    status, text = page(query)

    assert 400 == status
    assert 'role="alert"' in text
    assert "Stops, in walking order" in text


@pytest.mark.parametrize("typed", ["soon", "25:00"])
def test_a_time_to_be_off_that_is_none_is_refused(client, begun, typed):
    """With a sentence that says how one is written."""
    answer = client.post(f"/inspection/{begun}/edit/inspection", data={"off": typed})

    assert 400 == answer.status_code
    assert "such as 16:30" in answer.get_data(as_text=True)


def round_of(client, begun):
    """What the walk page carries of the round."""
    text = client.get(f"/inspection/{begun}/walk").get_data(as_text=True)
    found = re.search(r'<script type="application/json" id="round">(.*?)</script>', text, re.S)
    return json.loads(found[1]) if found else None


def test_the_walk_page_carries_the_round_once_somebody_said_how_long(client, begun, page):
    """The same looks as on the page, as ids only, and small."""
    assert round_of(client, begun) is None

    visit(client, begun, aboard="0.75")
    found = round_of(client, begun)
    sheets = [one for stop in found["stops"] for look in stop["looks"] for one in look["sheets"]]

    assert looks(page()[1]) == len(sheets)
    assert len(json.dumps(found)) < 12_000
    assert all(f"#sheet/{one}" in page()[1] for one in sheets)


@pytest.mark.parametrize("address", ["prepare", "walk"])
def test_other_pages_lead_to_the_round(client, begun, address):
    """Where one plans the hours."""
    text = client.get(f"/inspection/{begun}/{address}").get_data(as_text=True)

    assert f'href="/inspection/{begun}/round"' in text
