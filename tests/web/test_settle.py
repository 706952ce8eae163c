"""Two answers: both are shown with who and when, one tap settles, nothing unseen is replaced."""

import pytest

SUBJECT = "sheet/hull/shell-and-sea-chests/anodes"


def entry(device, number, field, value, at="2026-05-02T09:00:00.000Z", replaces=()):
    return {
        "id": f"{device}:{number}",
        "at": at,
        "device": device,
        "who": device.upper(),
        "subject": SUBJECT,
        "field": field,
        "value": value,
        "replaces": list(replaces),
    }


@pytest.fixture
def differing(client, begun):
    """Two devices answered one check without seeing each other, one with a clock ten years slow."""
    batch = [
        entry("kt", 1, "rating", "good"),
        entry("kt", 2, "note", "Half gone."),
        entry("lm", 1, "rating", "poor", "2016-01-01T00:00:00.000Z"),
        entry("lm", 2, "note", "Two missing.", "2016-01-01T00:00:00.000Z"),
    ]
    client.post(f"/exchange/{begun}/entries", json={"device": "kt", "entries": batch})
    return begun


def state(app, inspection_id):
    return app.extensions["data_folder"].inspections.get(inspection_id).state


def test_both_answers_are_shown_with_who_and_when(client, differing):
    """A slow clock hides nobody."""
    page = client.get(f"/inspection/{differing}/decide").get_data(as_text=True)

    for text in (
        "Answered differently",
        "<b>good</b>",
        "<b>poor</b>",
        "KT, 2026-05-02 09:00",
        "LM, 2016-01-01 00:00",
        "Half gone.",
        "Two missing.",
    ):
        assert text in page


@pytest.mark.parametrize(("keep", "expected"), [("kt:1", "good"), ("lm:1", "poor")])
def test_one_tap_settles_to_either_answer(client, app, differing, keep, expected):
    """Also the one that was shown anyway: an entry of its own replaces both."""
    client.post(
        f"/inspection/{differing}/settle",
        data={"subject": SUBJECT, "field": "rating", "keep": keep, "seen": ["kt:1", "lm:1"]},
    )

    assert expected == state(app, differing).value(SUBJECT, "rating")
    assert not state(app, differing).disputed(SUBJECT, "rating")
    assert 3 == len(state(app, differing).history(SUBJECT, "rating"))


def test_notes_keep_both_texts(client, app, differing):
    """Both texts are in one note, each with its author."""
    client.post(
        f"/inspection/{differing}/settle",
        data={"subject": SUBJECT, "field": "note", "keep": "both", "seen": ["kt:2", "lm:2"]},
    )

    note = state(app, differing).value(SUBJECT, "note")
    assert {"Half gone. (KT)", "Two missing. (LM)"} == set(note.splitlines())


def test_an_answer_that_came_meanwhile_is_not_settled_unseen(client, app, differing):
    """What the page had not shown stays standing beside the settled one."""
    client.post(
        f"/exchange/{differing}/entries",
        json={"device": "op", "entries": [entry("op", 1, "rating", "fair")]},
    )
    client.post(
        f"/inspection/{differing}/settle",
        data={"subject": SUBJECT, "field": "rating", "keep": "kt:1", "seen": ["kt:1", "lm:1"]},
    )

    assert {"good", "fair"} == {
        head.value for head in state(app, differing).heads(SUBJECT, "rating")
    }


@pytest.mark.parametrize(
    "form",
    [
        {"subject": "nowhere", "field": "rating", "keep": "kt:1"},
        {"subject": SUBJECT, "field": "rating", "keep": "kt:99"},
        {"subject": SUBJECT, "field": "no no"},
        {},
        {"subject": SUBJECT, "field": "rating", "keep": "both"},
    ],
)
def test_what_cannot_be_settled_is_told_in_a_sentence(client, app, differing, form):
    """A stale or forged form changes nothing."""
    answer = client.post(f"/inspection/{differing}/settle", data=form)

    assert 400 <= answer.status_code < 500
    assert state(app, differing).disputed(SUBJECT, "rating")
