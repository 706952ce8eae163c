"""The pages of particulars, levels, rates, chapters, the next look and the comparison."""

import re

import pytest

from inspector.checklists.registry import CRITERIA
from inspector.conversion.contents import CHAPTERS, TABLES


def text_of(answer):
    return answer.get_data(as_text=True)


@pytest.mark.parametrize("page", ["particulars", "conversion", "rules"])
def test_the_pages_of_an_empty_inspection_show(client, begun, page):
    """Nothing typed yet is a normal case, and every chapter then says what is missing."""
    assert client.get(f"/inspection/{begun}/{page}").status_code == 200


@pytest.mark.parametrize("chapter", CHAPTERS)
def test_every_chapter_has_a_page_of_its_own(client, begun, chapter):
    """Nothing typed yet: the page still shows, names the others and leads back to what is asked."""
    page = text_of(client.get(f"/inspection/{begun}/conversion/{chapter}"))

    assert f'id="{chapter}"' in page
    assert f'href="/inspection/{begun}/conversion"' in page
    assert all(f"/conversion/{other}" in page for other in CHAPTERS)


def test_a_chapter_that_is_none_is_refused(client, begun):
    """An address typed by hand is no page."""
    assert client.get(f"/inspection/{begun}/conversion/sails").status_code == 404


def test_the_conversion_opens_with_what_is_asked(client, app, begun):
    """One line for each ask with one place to go to, and what the brief leaves open."""
    inspection = app.extensions["data_folder"].inspections.get(begun)
    inspection.record("QX", [("brief", "endurance", "45"), ("brief", "persons", "40")])
    page = text_of(client.get(f"/inspection/{begun}/conversion"))

    assert 'data-ask="endurance"' in page
    assert "Endurance, 45" in page
    assert f"/inspection/{begun}/particulars?opened=stores#stores" in page
    assert "The brief says nothing of speed, range, budget" in page
    assert "0 of" in page
    assert " of 0 " not in page


@pytest.mark.parametrize("table", TABLES, ids=lambda table: table.id)
def test_every_table_can_be_filled_from_its_page(client, app, begun, table):
    """A value of each column's own kind is taken, kept as typed and read back typed."""

    def usual(column):
        if column.kind == "choice":
            return column.choices[0]
        if column.kind == "date":
            return "2024-05-31"
        if column.kind == "text":
            return "Something"
        middle = min(max(column.low, 1), column.high)
        return str(int(middle) if column.kind == "whole" else middle)

    row = "one" if table.single else "new"
    answer = client.post(
        f"/inspection/{begun}/particulars/{table.id}/{row}",
        data={column.name: usual(column) for column in table.columns},
    )

    assert answer.status_code == 302
    state = app.extensions["data_folder"].inspections.get(begun).state
    assert len(state.subjects(table.prefix)) == 1
    assert client.get(f"/inspection/{begun}/particulars").status_code == 200
    pages = ("", *(f"/{chapter}" for chapter in CHAPTERS))
    assert {200} == {
        client.get(f"/inspection/{begun}/conversion{page}").status_code for page in pages
    }


@pytest.mark.parametrize(
    ("table", "data", "sentence"),
    [
        ("tanks", {"name": "Fuel 1", "capacity": "120", "density": "-840"}, "Density"),
        ("tanks", {"name": "Fuel 1"}, "Capacity is missing"),
        ("tanks", {"name": "F", "capacity": "12", "capacity-unit": "kW"}, "Capacity"),
        ("speeds", {"speed": "400", "power": "900"}, "400 kn is above 60 kn"),
        ("speeds", {"speed": "ten", "power": "900"}, "Speed"),
        ("engines", {"name": "Main", "drives": "propeller"}, "Rated power of each is missing"),
        ("engines", {"name": "Main", "drives": "sails", "power": "900"}, "not one of"),
        ("certificates", {"kind": "class", "expires": "31.5.2027"}, "not a date"),
    ],
)
def test_a_faulty_cell_is_told_by_its_name_and_nothing_typed_is_lost(
    client, app, begun, table, data, sentence
):
    """One sentence that names the field; the form comes back as typed; nothing is recorded."""
    answer = client.post(f"/inspection/{begun}/particulars/{table}/new", data=data)
    page = text_of(answer)

    assert answer.status_code == 400
    assert sentence in re.sub(r"&#39;|&quot;", "'", page)
    assert all(
        value in page
        for name, value in data.items()
        if not name.endswith("-unit") and name not in ("kind", "drives")
    )
    assert not app.extensions["data_folder"].inspections.get(begun).state.subjects(f"row/{table}/")


def test_a_table_that_another_took_over_is_shown_only_with_rows(client, begun):
    """Older inspections keep what was typed in it; a new one is not asked twice."""
    page = f"/inspection/{begun}/particulars"
    older = next(table for table in TABLES if table.superseded_by)

    assert any(older.superseded_by == table.id for table in TABLES)
    assert f'id="{older.id}"' not in text_of(client.get(page))
    client.post(f"{page}/{older.id}/new", data={"name": "Set 1", "bus": "A", "rated": "300"})
    assert f'id="{older.id}"' in text_of(client.get(page))


def test_a_row_is_changed_and_taken_out(client, app, begun):
    """Its entries stay in the journal; the row is not shown any more."""
    client.post(
        f"/inspection/{begun}/particulars/tanks/new",
        data={"name": "Fuel 1", "kind": "fuel", "capacity": "120"},
    )
    subject = app.extensions["data_folder"].inspections.get(begun).state.subjects("row/tanks/")[0]
    row = subject.split("/")[2]
    client.post(
        f"/inspection/{begun}/particulars/tanks/{row}",
        data={"name": "Fuel 1 port", "kind": "fuel", "capacity": "118,5"},
    )
    assert "118,5" in text_of(client.get(f"/inspection/{begun}/particulars"))

    client.post(f"/inspection/{begun}/particulars/tanks/{row}/gone")
    assert "118,5" not in text_of(client.get(f"/inspection/{begun}/particulars"))


def test_levels_are_kept_and_a_new_inspection_may_begin_with_them(client, app, begun):
    """Set for this inspection, and for every new one where that is asked."""
    client.post(f"/inspection/{begun}/rules", data={"retain_from": "80", "everywhere": "yes"})
    other = client.post("/inspections", data={"go": "walk"}).headers["Location"].split("/")[2]
    data = app.extensions["data_folder"]

    assert 80 == data.assessment_of(data.inspections.get(begun)).settings.retain_from
    assert 80 == data.assessment_of(data.inspections.get(other)).settings.retain_from


@pytest.mark.parametrize("data", [{"coverage": "140"}, {"discount_rate": "much"}])
def test_a_level_that_cannot_be_is_refused(client, begun, data):
    """The sentence names the level."""
    answer = client.post(f"/inspection/{begun}/rules", data=data)

    assert answer.status_code == 400
    assert 'class="fault"' in text_of(answer)


def test_own_limits_need_the_text_they_come_from(client, app, begun):
    """Without it they are refused; with it the assessment uses them."""
    name, profile = next((one.name, one.limit_set) for one in CRITERIA.values() if one.limit_set)
    limit = profile.limits[0]
    refused = client.post(
        f"/inspection/{begun}/rules/{name}", data={limit.name: f"{limit.value:g}"}
    )
    kept = client.post(
        f"/inspection/{begun}/rules/{name}",
        data={limit.name: f"{limit.value:g}", "source": "Own rules, 2025, table 3"},
    )

    assert (400, 302) == (refused.status_code, kept.status_code)
    data = app.extensions["data_folder"]
    assert "Own rules, 2025, table 3" in str(
        data.assessment_of(data.inspections.get(begun)).profiles[name].source
    )


def test_the_rate_book_prices_a_work_line(client, app, begun):
    """Quantity times rate, and the line remembers what it was made from."""
    client.post(
        "/rates",
        data={
            "name": "Steel renewed",
            "unit": "kg",
            "low": "8",
            "likely": "11",
            "high": "16",
            "currency": "crowns",
            "on": "2026-04",
        },
    )
    rate = app.extensions["data_folder"].catalogue.all("rates")[0]["id"]
    client.post(
        f"/inspection/{begun}/decide/hull/line",
        data={
            "text": "Renew plates",
            "act": "refurbish",
            "unit": "all",
            "rate": rate,
            "quantity": "2500",
        },
    )
    data = app.extensions["data_folder"]
    line = next(
        line
        for system in data.assessment_of(data.inspections.get(begun)).systems
        for line in system.lines
    )

    assert (20_000, 27_500, 40_000) == (line.low, line.likely, line.high)
    assert "2500 kg at 11 crowns/kg" in line.rate


@pytest.mark.parametrize(
    "data",
    [
        {"name": "Steel", "unit": "kg", "low": "8", "likely": "4", "high": "16"},
        {"unit": "kg", "low": "1", "likely": "1", "high": "1"},
        {"name": "Steel", "unit": "kg", "low": "-1", "likely": "4", "high": "16"},
        {"name": "S", "unit": "t", "low": "", "likely": "", "high": ""},
    ],
)
def test_a_rate_that_cannot_be_is_refused(client, app, data):
    """A sentence, and an empty book."""
    assert client.post("/rates", data=data).status_code == 400
    assert [] == app.extensions["data_folder"].catalogue.all("rates")


def test_the_next_look_fits_the_minutes_and_gives_its_reason(client, begun):
    """Each look has a sentence; together they take no longer than asked."""
    answer = client.get(f"/exchange/{begun}/next?minutes=45").json

    assert answer["looks"]
    assert answer["minutes"] <= 45
    assert all(look["sentence"].endswith(".") for look in answer["looks"])


@pytest.mark.parametrize("minutes", ["", "-1", "soon", "99999"])
def test_minutes_that_cannot_be_are_refused(client, begun, minutes):
    """One sentence as JSON."""
    answer = client.get(f"/exchange/{begun}/next?minutes={minutes}")

    assert answer.status_code == 400
    assert "minutes left" in answer.json["error"]


def test_candidates_stand_side_by_side_and_can_be_printed(client, begun):
    """Page, ranking alone, the checks of a system and the PDF."""
    other = client.post("/inspections", data={"go": "walk"}).headers["Location"].split("/")[2]
    ids = f"id={begun}&id={other}"

    assert client.get(f"/compare?{ids}").status_code == 200
    assert "ranking" in text_of(client.get(f"/compare/ranking?{ids}&weight-cost=90"))
    assert client.get(f"/compare/checks/hull?{ids}").status_code == 200
    assert client.get(f"/compare/report.pdf?{ids}").data.startswith(b"%PDF")


@pytest.mark.parametrize(
    "query",
    [
        "id=nowhere",
        "weight-cost=much",
        "weight-cost=-1",
        "weight-cost=0&weight-condition=0&weight-requirements=0&weight-surveys=0",
    ],
)
def test_a_comparison_that_cannot_be_is_told_in_a_sentence(client, begun, query):
    """Unknown inspections and weights that cannot be used are refused."""
    answer = client.get(f"/compare?id={begun}&{query}")

    assert 400 <= answer.status_code < 500


@pytest.mark.parametrize(
    "table", [table for table in TABLES if table.groups], ids=lambda table: table.id
)
def test_a_long_row_is_in_groups_and_asks_every_column_once(client, begun, table):
    """Each column has one input, and a group is open where something of it was typed."""
    for heading, names in table.groups:
        assert all(table.column(name) is not None for name in names), heading
    row = "one" if table.single else "new"
    page = text_of(client.get(f"/inspection/{begun}/particulars/{table.id}/{row}"))

    for column in table.columns:
        assert page.count(f'name="{column.name}"') == 1
    assert len(table.groups) == page.count('<details class="table"')
    assert '<details class="table" open' not in page


def test_a_group_with_a_fault_is_open(client, begun):
    """The field that is refused is in sight."""
    answer = client.post(
        f"/inspection/{begun}/particulars/tanks/new",
        data={"name": "Fuel 1", "capacity": "120", "density": "-840"},
    )

    assert text_of(answer).count('<details class="table" open') == 1
