"""A time of the day as people write it."""

from datetime import time

import pytest

from inspector.values.clock_time import read_time, time_fault


@pytest.mark.parametrize(
    ("text", "read"),
    [
        ("16:30", time(16, 30)),
        (" 9.05 ", time(9, 5)),
        ("7h15", time(7, 15)),
        ("00:00", time(0, 0)),
    ],
)
def test_a_time_is_read_as_it_is_written(text, read):
    """With a colon, a stop, or the letter of the hours."""
    assert read == read_time(text)


@pytest.mark.parametrize("text", ["", "half past four", "24:00", "12:60", "1630", "-1:20"])
def test_what_is_no_time_is_refused_with_a_sentence(text):
    """The sentence says what was typed and how a time looks."""
    assert read_time(text) is None
    assert "such as 16:30" in time_fault("Time to be off", text)
