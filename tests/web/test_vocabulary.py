"""The words that are recorded reach the walk's scripts as data and are not typed there again."""

import json
import re

import pytest

from inspector import places
from inspector.values.vocabulary import NOT_SEEN_REASONS, RATINGS, URGENCIES

SCRIPTS = sorted((places.shipped("static") / "js").rglob("*.js"))


@pytest.fixture
def vocabulary(client, begun):
    """The vocabulary as the walk page carries it."""
    page = client.get(f"/inspection/{begun}/walk").text
    return json.loads(
        re.search(
            r'<script type="application/json"\s+id="vocabulary">(.*?)</script>', page, re.DOTALL
        ).group(1)
    )


def test_the_page_carries_the_words_of_the_assessment(vocabulary):
    """What a phone records is what the laptop counts."""
    assert [*RATINGS] == vocabulary["ratings"]
    assert [*NOT_SEEN_REASONS] == vocabulary["reasons"]
    assert [*URGENCIES] == vocabulary["urgencies"]
    assert {vocabulary["noAccess"], vocabulary["noTime"]} <= set(NOT_SEEN_REASONS)


def test_no_script_types_a_recorded_word(vocabulary):
    """A word that changes in the vocabulary changes everywhere."""
    words = [
        *vocabulary["ratings"],
        # "refused" also names the screen of what the computer did not take.
        *(reason for reason in vocabulary["reasons"] if reason != "refused"),
        *vocabulary["urgencies"],
        vocabulary["notFitted"],
        vocabulary["notSeen"],
        *vocabulary["outcomes"]["taken"],
        *vocabulary["depths"],
        vocabulary["gate"]["outside"],
        vocabulary["gate"]["notEntered"],
        *vocabulary["gate"]["required"],
    ]
    typed = [
        (script.name, word)
        for script in SCRIPTS
        for word in words
        if re.search(rf"""["'`]{word}(: )?["'`]""", script.read_text(encoding="utf-8"))
    ]

    assert [] == typed
