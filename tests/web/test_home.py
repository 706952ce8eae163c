"""The first page at any number of inspections: search, pages, put away, read in the background."""

import re

import pytest

from inspector.services import shelf as shelf_module


@pytest.fixture
def named(client):
    """Ten inspections of named vessels, without units; name -> id."""
    data = client.application.extensions["data_folder"]
    ids = {}
    for number in range(10):
        inspection = data.begin()
        name = f"Invented Heron {'QRSTUVWXYZ'[number] * 3}"
        inspection.record("QX", [("vessel", "name", name), ("brief", "client", "Bay Yachts")])
        ids[name] = inspection.id
    return ids


def _titles(page):
    return re.findall(r'href="/inspection/[^"]+/walk">(Invented Heron [Q-Z]+)<', page)


def _page(client, query=""):
    # Reading in the background is for the test that is about it.
    client.application.extensions["shelf"].rows()
    answer = client.get(f"/{query}")
    assert 200 == answer.status_code
    return answer.get_data(as_text=True)


def test_a_search_shows_what_it_found(client, named):
    """By name and by client."""
    assert ["Invented Heron UUU"] == _titles(_page(client, "?words=heron+uuu"))
    assert 10 == len(_titles(_page(client, "?words=bay+yachts")))
    assert "No inspection is found" in _page(client, "?words=elsewhere")


@pytest.mark.parametrize("query", ["?page=x", "?page=-1", "?page=" + "9" * 5000, "?state=none"])
def test_no_query_breaks_the_page(client, named, query):
    """Whatever is in the address, there is a list."""
    assert "Inspections" in _page(client, query)


def test_pages_turn(client, named, monkeypatch):
    """With four to a page the third one has two."""
    monkeypatch.setattr("inspector.services.inspection_list.PER_PAGE", 4)

    assert 2 == len(_titles(_page(client, "?page=3")))
    assert "page 3 of 3" in _page(client, "?page=3")


def test_candidates_ticked_on_another_page_stay_ticked(client, named):
    """A search does not lose what was chosen to be compared."""
    chosen = named["Invented Heron XXX"]
    page = _page(client, f"?words=egret&id={chosen}")

    assert re.search(rf'value="{chosen}"\s+form="list"\s+checked', page)


def test_put_away_and_found_again(client, named):
    """It leaves the list, is found under its state, opens as before, and is taken back."""
    one = named["Invented Heron TTT"]
    client.post("/list/away", data={"id": one, "do": "put away"})
    assert "Invented Heron TTT" not in _titles(_page(client))
    assert ["Invented Heron TTT"] == _titles(_page(client, "?state=put+away"))
    assert 200 == client.get(f"/inspection/{one}/walk").status_code

    client.post("/list/away", data={"id": one, "do": "take back"})

    assert "Invented Heron TTT" in _titles(_page(client))


def test_all_that_a_search_found_is_put_away_at_once(client, named):
    """On all its pages; what it did not find stays."""
    client.application.extensions["shelf"].rows()
    client.post("/list/away", data={"all": "yes", "words": "heron", "do": "put away"})

    assert [] == _titles(_page(client))
    assert "All inspections are put away" in _page(client)
    assert 10 == len(_titles(_page(client, "?state=put+away")))


def test_only_inspections_that_are_there_are_put_away(client, named):
    """A made-up id leaves nothing behind in the catalogue."""
    client.post("/list/away", data={"id": "no-such", "do": "put away"})

    assert not client.application.extensions["data_folder"].catalogue.setting("put away")


def test_the_first_start_shows_what_is_being_read(client, named, monkeypatch):
    """The page is there at once, says how far the reading is, and lets it be stopped."""
    for path in client.application.extensions["data_folder"].path.rglob("summary.json"):
        path.unlink()
    monkeypatch.setattr(shelf_module.Shelf, "_make_missing", lambda self: self._stop.wait(30))
    page = client.get("/").get_data(as_text=True)
    assert "10 of 10 inspections are being read" in page
    assert "stop reading" in page
    assert client.get("/list/progress").get_json()["running"]

    client.post("/list/reading", data={"do": "stop"})

    assert not client.get("/list/progress").get_json()["running"]
    assert "read on" in client.get("/").get_data(as_text=True)


def test_a_candidate_is_one_line_of_words_and_the_next_act(client, begun):
    """Each system has a mark that a screen reader hears by name; what is next is one button."""
    page = _page(client)
    systems = client.application.extensions["data_folder"].library.systems
    heard = re.findall(r'class="heard">([^<:]+): ', page)
    assert [system.name for system in systems.values()] == heard
    assert "Nothing is looked at yet." in page
    assert re.search(rf'href="/inspection/{begun}/prepare">plan the visit<', page)


def test_the_brief_comes_first(client):
    """What is asked stands above everything that is offered."""
    client.application.extensions["data_folder"].catalogue.put(
        "briefs", {"client": "Bay Yachts", "speed": "12", "range": "9000", "persons": "40"}
    )
    page = client.get("/").get_data(as_text=True)
    asked = "12 kn, 9000 nmi, 40 persons"
    assert -1 < page.index(asked) < page.index("New inspection")


def test_opening_the_list_opens_no_inspection_a_second_time(client, named):
    """After the first list, home reads summaries only."""
    _page(client)
    data = client.application.extensions["data_folder"]
    data.inspections.close()

    _page(client)

    assert [] == list(data.inspections._open)
