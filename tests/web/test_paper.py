"""A visit on paper: sheets with numbers, and the page where their answers are typed."""

import re

import pytest


@pytest.fixture
def stop(client, begun):
    """The address of a stop's page, and the numbers of two of its lines by their titles."""
    page = client.get(f"/inspection/{begun}/paper").text
    space = re.search(rf"/inspection/{begun}/paper/([a-z-]+)", page)[1]
    address = f"/inspection/{begun}/paper/{space}"
    numbers = re.findall(r'name="([0-9.]+)-rating"', client.get(address).text)
    return address, numbers


def values(app, begun):
    state = app.extensions["data_folder"].inspections.get(begun).state
    return {subject: state.values(subject) for subject in state.subjects("sheet/")}


def test_answers_typed_from_a_sheet_are_kept(app, client, begun, stop):
    """With the usual depth, as on the walk page; empty lines make no entry."""
    address, numbers = stop
    typed = {
        f"{numbers[0]}-rating": "poor",
        f"{numbers[0]}-note": "Rust in the corner",
        f"{numbers[1]}-rating": "not seen: no light",
    }
    answer = client.post(address, data=typed, follow_redirects=True)
    found = list(values(app, begun).values())

    assert "3 answers kept." in answer.text
    assert 2 == len(found)
    rated = next(each for each in found if each["rating"] == "poor")
    assert ("Rust in the corner", True) == (
        rated["note"],
        rated["depth"] in ("sighted", "reported"),
    )
    assert {"rating": "not seen: no light"} in found


def test_a_form_sent_twice_or_emptied_changes_nothing(app, client, begun, stop):
    """To take an answer away is an act of its own."""
    address, numbers = stop
    client.post(address, data={f"{numbers[0]}-rating": "good"})
    inspection = app.extensions["data_folder"].inspections.get(begun)
    count = len(inspection.entries)
    client.post(address, data={f"{numbers[0]}-rating": "good"})
    client.post(address, data={f"{numbers[0]}-rating": ""})

    assert count == len(inspection.entries)


def test_an_answer_given_meanwhile_is_not_replaced_unseen(app, client, begun, stop):
    """Who typed from paper had not seen it: both stay, until somebody settles it."""
    address, numbers = stop
    page = client.get(address).text
    seen = re.search(r'name="seen"[^>]*value="([^"]*)"', page)[1].replace("&#34;", '"')
    client.post(address, data={f"{numbers[0]}-rating": "good"})
    client.post(address, data={f"{numbers[0]}-rating": "failed", "seen": seen})
    state = app.extensions["data_folder"].inspections.get(begun).state

    assert 1 == len([name for _, name, _ in state.disputes() if name == "rating"])


def test_a_fault_keeps_nothing_and_shows_what_was_typed(app, client, begun, stop):
    """One sentence beside the line."""
    address, numbers = stop
    typed = {f"{numbers[0]}-rating": "splendid", f"{numbers[1]}-note": "kept on the page"}
    answer = client.post(address, data=typed)

    assert 400 == answer.status_code
    assert "kept on the page" in answer.text
    assert {} == values(app, begun)


def test_the_sheets_have_the_numbers_of_the_page(client, begun, stop):
    """A line is found again by its number."""
    import io

    import pypdf

    address, numbers = stop
    space = address.rpartition("/")[2]
    answer = client.get(f"/inspection/{begun}/walk-sheets.pdf?stop={space}")
    text = "\n".join(page.extract_text() for page in pypdf.PdfReader(io.BytesIO(answer.data)).pages)

    assert 200 == answer.status_code
    assert all(number in text for number in numbers)


@pytest.mark.parametrize(
    ("path", "status"),
    [
        ("paper/nowhere", 404),
        ("walk-sheets.pdf?stop=nowhere", 404),
        ("walk-sheets.pdf?paper=a3", 400),
    ],
)
def test_what_is_not_there_gets_a_sentence(client, begun, path, status):
    assert status == client.get(f"/inspection/{begun}/{path}").status_code
