"""Criterion.apply checks first, caps what is not published, and names the limits it used."""

from datetime import date, datetime

import pytest

from inspector.criteria.core.criterion import Criterion
from inspector.criteria.core.judgement import CannotJudge, Judgement
from inspector.criteria.core.source import Source
from inspector.values.errors import InspectorError
from inspector.values.field import Field


def made(kind="number", mark="seen", rating="failed", seen=None, **details):
    """Return a criterion of one input that records what its rule received."""
    source = Source("A rule of this test", "first", "1", mark)

    def rule(value):
        if seen is not None:
            seen.append(value)
        return Judgement("band", rating, None, None, None, None, "A sentence.", ("first note",))

    asked = Field("value", "Value", kind, **details)
    return Criterion("made", "Made", (asked,), source, rule, "All.", "Here.")


@pytest.mark.parametrize(
    ("expected", "kind", "received", "details"),
    [
        (9.6, "number", "9,6", {"unit": "mm"}),
        (9.6, "number", 9.6, {"unit": "mm"}),
        (3, "whole", "3", {}),
        (3, "whole", 3.0, {}),
        ("1", "choice", 1, {"choices": ("1", "2")}),
        ("a", "choice", " a ", {"choices": ("a", "b")}),
        (date(2008, 5, 31), "date", "2008-05-31", {}),
        (date(2008, 5, 31), "date", date(2008, 5, 31), {}),
        (date(2008, 5, 31), "date", datetime(2008, 5, 31, 23, 59), {}),
        ("x", "text", " x ", {}),
        (None, "number", "", {"unit": "mm", "optional": True}),
        (None, "date", None, {"optional": True}),
    ],
)
def test_a_rule_receives_clean_values(expected, kind, received, details):
    """Typed text becomes a number, a date or a choice before the rule sees it."""
    seen = []
    made(kind, seen=seen, **details).apply({"value": received})
    assert [expected] == seen


@pytest.mark.parametrize(
    ("kind", "received", "details", "said"),
    [
        ("number", "abc", {"unit": "mm"}, "is not"),
        ("number", "1,200", {"unit": "mm"}, "two ways"),
        ("number", float("nan"), {"unit": "mm"}, "is not"),
        ("number", True, {"unit": "mm"}, "is not"),
        ("number", [1], {"unit": "mm"}, "is not"),
        ("whole", "2.5", {}, "whole number"),
        ("choice", "c", {"choices": ("a", "b")}, "is not one of a, b"),
        ("choice", "c", {"choices": ("a" * 200, "b" * 200, "cd")}, "the 3 choices; near it are cd"),
        ("choice", True, {"choices": ("True",)}, "is not one of"),
        ("date", "31.05.2008", {}, "like 2008-05-31"),
        ("date", "2008-02-30", {}, "is not a date"),
        ("date", 2008, {}, "is not a date"),
        ("text", 123450, {}, "is not text"),
        (
            "number",
            -0.1,
            {"unit": "mm", "low": 0, "high": 9},
            "−0.1 mm is below 0 mm; 0 mm to 9 mm is accepted",
        ),
        ("number", 9.1, {"unit": "mm", "low": 0, "high": 9}, "9.1 mm is above 9 mm"),
        ("date", "1993-01-01", {"low": date(1994, 7, 1)}, "1993-01-01 is below 1994-07-01"),
        ("whole", 2101, {"low": 1900, "high": 2100}, "2101 is above 2100"),
    ],
)
def test_a_value_of_the_wrong_kind_or_range_is_refused(kind, received, details, said):
    """The rule is not asked, and the sentence says what is wrong and what would be right."""
    seen = []
    with pytest.raises(CannotJudge, match=said) as caught:
        made(kind, seen=seen, **details).apply({"value": received})

    assert seen == []
    assert (caught.value.criterion, caught.value.input) == ("made", "value")
    assert str(caught.value).startswith("Made cannot be judged: ")
    assert str(caught.value).endswith(".")


@pytest.mark.parametrize("received", [0, 9])
def test_the_ends_of_a_range_belong_to_it(received):
    """Low and high themselves are judged."""
    assert made(unit="mm", low=0, high=9).apply({"value": received}).band == "band"


@pytest.mark.parametrize("mark", ["memory", "common practice"])
def test_a_limit_that_is_not_published_cannot_fail_a_system(mark):
    """Its failed becomes poor, and a note says why."""
    judgement = made(mark=mark, unit="mm").apply({"value": 1})
    assert judgement.rating == "poor"
    assert any(f"marked {mark}" in note for note in judgement.notes)


@pytest.mark.parametrize(
    ("mark", "rating"),
    [("seen", "failed"), ("memory", "poor"), ("memory", None), ("memory", "good")],
)
def test_nothing_else_is_capped(mark, rating):
    """A published limit may fail, and other ratings stay as they are."""
    judgement = made(mark=mark, rating=rating, unit="mm").apply({"value": 1})
    assert rating == judgement.rating
    assert not any("Held at poor" in note for note in judgement.notes)


def test_the_limits_used_close_the_notes():
    """Title, edition, clause and mark of the source are printed with every judgement."""
    notes = made(unit="mm").apply({"value": 1}).notes
    assert notes == ("first note", "Limits used: A rule of this test, first, 1 (seen).")


@pytest.mark.parametrize(
    ("expected", "mark"), [(True, "common practice"), (False, "memory"), (False, "seen")]
)
def test_common_practice_is_printed_as_guidance(expected, mark):
    """A habit of the trade never reads like a rule."""
    assert expected == made(mark=mark, unit="mm").apply({"value": 1}).notes[-1].endswith(
        "Guidance, not a rule."
    )


def test_a_missing_value_is_refused_with_label_and_unit():
    """The sentence tells a person which field it was."""
    with pytest.raises(
        CannotJudge, match=r"^Made cannot be judged: 'value' \(Value, mm\) is missing\.$"
    ):
        made(unit="mm").apply({})


def test_a_refusal_is_one_of_our_errors():
    """Whoever catches the root catches it, with the facts as attributes."""
    with pytest.raises(InspectorError) as caught:
        made(unit="mm").apply({"value": "abc"})

    assert caught.value.facts == {"criterion": "made", "input": "value", "received": "abc"}


def test_a_judgement_cannot_be_altered():
    """What was judged stays judged."""
    judgement = made(unit="mm").apply({"value": 1})
    with pytest.raises(AttributeError):
        judgement.rating = "good"


@pytest.mark.parametrize(
    ("name", "values", "first", "second"),
    [
        ("steering-main-time", {"time": 28.001}, "28.001 s", "28 s"),
        ("hearing-protection", {"level": 85.001}, "85.001 dB(A)", "85 dB(A)"),
        ("co2-charge", {"measured": 40.5004}, "40.5004 kg", "40.5 kg"),
    ],
)
def test_a_value_beside_its_limit_is_printed_apart_from_it(judge, name, values, first, second):
    """No sentence says that 28 s are over 28 s: our own rule for what is printed."""
    sentence = judge(name, **values).sentence
    assert sentence.index(first) < sentence.index(second)


@pytest.mark.parametrize(
    ("space", "words"),
    [
        ("office", "in an office"),
        ("other work space", "in an other work space"),
        ("workshop", "in a workshop"),
    ],
)
def test_a_word_follows_its_article(judge, space, words):
    """An office and a workshop from one sentence of the file."""
    assert words in judge("noise-level", space=space).sentence


@pytest.mark.parametrize(
    ("on", "words"), [("2027-08-30", "1 day away"), ("2027-09-01", "1 day past")]
)
def test_one_day_is_written_in_the_singular(judge, on, words):
    """A raft of 31 August 2025 with two years' interval in the valid values."""
    assert words in judge("service-due", on=on).sentence
