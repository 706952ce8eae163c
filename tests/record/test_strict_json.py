"""JSON from strangers, and text for spreadsheet cells."""

import json

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.record.strict_json import DEEPEST, BadJson, loads
from inspector.report.data_files.spreadsheet_text import safe_cell

VALUES = st.recursive(
    st.none() | st.booleans() | st.integers() | st.text(st.characters(codec="utf-8")),
    lambda inner: st.lists(inner) | st.dictionaries(st.text(st.characters(codec="utf-8")), inner),
    max_leaves=8,
)


def deep(levels):
    return b"[" * levels + b"]" * levels


@given(VALUES)
def test_plain_json_is_read_as_it_was_written(value):
    """What is flat enough comes back as it is."""
    assert value == loads(json.dumps(value).encode(), deepest=40)


@pytest.mark.parametrize(
    "data",
    [
        b"",
        b"{",
        b"\xff",
        b"nul",
        b"1" * 5000,
        b'{"a": 1, "a": 2}',
        b'{"x": [{"a": 1, "a": 1}]}',
        b"NaN",
        b"[Infinity]",
        b"-Infinity",
        deep(DEEPEST + 1),
        deep(100_000),
        b'{"a":' * 100_000,
        b"[1] x",
        b"\xef\xbb\xbf[]",
    ],
)
def test_what_is_not_plain_is_refused_in_a_sentence(data):
    """Cut, doubled keys, no numbers, too deep: BadJson, never another error."""
    with pytest.raises(BadJson) as caught:
        loads(data)
    assert str(caught.value).endswith(".")


def test_the_depth_that_is_allowed_is_read():
    """The last level that is allowed is read, the next is not."""
    assert loads(deep(DEEPEST))


@pytest.mark.parametrize(
    "text",
    ["=1+1", "+1", "-1", "@SUM(A1)", "\tx", "\rx", "\nx", " =1", "=cmd|' /c calc'!A0", "\uff1d1"],
)
def test_a_formula_becomes_text(text):
    """What a spreadsheet would run is shown instead."""
    assert "'" + text == safe_cell(text)


@pytest.mark.parametrize("text", ["", "grey", "1", "a=b", "3 - 4", "'quoted"])
def test_plain_text_stays(text):
    """Nothing else is changed."""
    assert text == safe_cell(text)
