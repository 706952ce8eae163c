"""Entries fold to one state in any order; a false one is refused by the name of its key."""

import itertools
import json

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.record.entry import Entry, EntryRefused, from_dict, to_dict, to_json
from inspector.record.journal import from_line, to_line
from inspector.record.state import State, snapshot

SUBJECTS = ("vessel", "sheet/hull/hull-1/plating")
VALUES = st.one_of(
    st.none(),
    st.booleans(),
    st.text(max_size=20),
    st.integers(-9, 9),
    st.dictionaries(st.sampled_from("ab"), st.text(max_size=5)),
)


@st.composite
def histories(draw):
    """Entries of up to three devices, each replacing any before it: devices see different parts."""
    entries, counts = [], {}
    for _ in range(draw(st.integers(1, 12))):
        device = draw(st.sampled_from(("laptop", "phone", "tablet")))
        counts[device] = counts.get(device, 0) + 1
        subject = draw(st.sampled_from(SUBJECTS))
        earlier = [entry.id for entry in entries if entry.subject == subject]
        replaced = (
            draw(st.lists(st.sampled_from(earlier), unique=True, max_size=3)) if earlier else []
        )
        # Clocks of devices go wrong, so the times are in no order.
        at = f"2026-05-0{draw(st.integers(1, 9))}T09:00:00.000Z"
        entries.append(
            Entry(
                f"{device}:{counts[device]}",
                at,
                device,
                "AB",
                subject,
                "note",
                draw(VALUES),
                tuple(replaced),
            )
        )
    return entries


@given(st.data(), histories())
def test_order_and_repetition_change_nothing(data, entries):
    """Overlapping parts of a history, in any order and repeated, give the state of the whole."""
    parts = [
        data.draw(st.lists(st.sampled_from(entries))) for _ in range(data.draw(st.integers(1, 2)))
    ]
    mixed = data.draw(st.permutations([*entries, *(entry for part in parts for entry in part)]))
    expected, folded = State(entries), State(mixed)
    assert snapshot(expected) == snapshot(folded)
    assert [expected.values(subject) for subject in SUBJECTS] == [
        folded.values(subject) for subject in SUBJECTS
    ]
    assert list(expected.disputes()) == list(folded.disputes())


@given(histories())
def test_heads_are_what_nobody_replaced(entries):
    """The state agrees with the plain definition, and every recorded field has a head."""
    replaced = {one for entry in entries for one in entry.replaces}
    state = State(entries)
    for subject in state.subjects():
        expected = {entry.id for entry in entries if entry.subject == subject} - replaced
        assert expected == {entry.id for entry in state.heads(subject, "note")}
        assert expected


@given(histories())
def test_a_journal_line_gives_the_same_entry_back(entries):
    """What is written is read as it was, whatever the value."""
    for entry in entries:
        assert entry == from_line(to_line(entry)[:-1])
        assert entry == from_dict(json.loads(to_json(entry)))


def test_undo_restores_by_a_further_entry(entry):
    """Undo is one more entry with the earlier value; both are in the history, none disputed."""
    first, second = (
        entry(1, "good"),
        entry(2, "poor", replaces=["phone:1"], at="2026-05-02T09:01:00.000Z"),
    )
    undo = entry(3, "good", replaces=["phone:2"], at="2026-05-02T09:02:00.000Z")
    state = State([undo, second, first])
    assert "good" == state.value(first.subject, "rating")
    assert [first, second, undo] == state.history(first.subject, "rating")
    assert not state.disputed(first.subject, "rating")


def test_a_cleared_field_has_no_value(entry):
    """None clears: the default comes back, the history stays."""
    state = State([entry(1), entry(2, None, replaces=["phone:1"])])
    assert "-" == state.value(entry(1).subject, "rating", "-")
    assert {} == state.values(entry(1).subject)
    assert 2 == len(state.history(entry(1).subject, "rating"))


def test_two_who_did_not_see_each_other_are_both_kept(entry):
    """Different answers are a dispute, equal ones are not; replacing both ends it."""
    one, two = entry(1, "good"), entry(1, "poor", device="laptop")
    state = State([one, two])
    assert [(one.subject, "rating")] == [(subject, field) for subject, field, _ in state.disputes()]
    assert not State([one, entry(1, "good", device="laptop")]).disputed(one.subject, "rating")
    state.add(entry(2, "fair", replaces=["phone:1", "laptop:1"]))
    assert "fair" == state.value(one.subject, "rating")
    assert [] == list(state.disputes())


def of(device, number, replaces=()):
    own = {"id": f"{device}:{number}", "device": device, "replaces": list(replaces)}
    return from_dict({**ENTRY_OF_A_DEVICE, **own})


ENTRY_OF_A_DEVICE = {
    "at": "2026-05-02T09:00:00.000Z",
    "who": "QX",
    "subject": "sheet/hull/shell/plating",
    "field": "rating",
    "value": "good",
}


def heads_in_any_order(entries):
    """The ids of the heads, the same for every order of arrival."""
    found = {
        tuple(head.id for head in State(order).heads("sheet/hull/shell/plating", "rating"))
        for order in itertools.permutations(entries)
    }
    assert 1 == len(found)
    return list(found.pop())


def test_a_forged_circle_shows_every_entry():
    """Entries that replace each other hide nothing."""
    circle = [of("phone", 1, ["tablet:1"]), of("tablet", 1, ["phone:1"])]
    assert ["phone:1", "tablet:1"] == heads_in_any_order(circle)


def test_an_answer_that_somebody_replaced_beforehand_is_shown_and_can_be_settled():
    """Who saw the forged entry is not hidden by it, and one more entry settles both."""
    forged = of("phone", 1, ["tablet:1", "phone:1000"])
    answered = of("tablet", 1, ["phone:1"])
    settled = of("laptop", 1, ["phone:1", "tablet:1"])
    assert ["phone:1", "tablet:1"] == heads_in_any_order([forged, answered])
    assert ["laptop:1"] == heads_in_any_order([forged, answered, settled])


def test_a_device_cannot_replace_its_own_later_entry():
    """It numbers its entries, so it has not seen a later one."""
    both = [of("phone", 1, ["phone:2"]), of("phone", 2)]
    assert ["phone:1", "phone:2"] == heads_in_any_order(both)


def test_an_entry_that_arrives_after_the_one_that_replaces_it_is_replaced():
    """Whichever of two devices hands over first, the result is one."""
    assert ["tablet:1"] == heads_in_any_order([of("phone", 1), of("tablet", 1, ["phone:1", "x:9"])])


def test_a_circle_leaves_what_was_replaced_before_it_replaced():
    """A forged circle brings no settled answer back."""
    entries = [
        of("phone", 1),
        of("phone", 2, ["phone:1", "tablet:1"]),
        of("tablet", 1, ["phone:2"]),
    ]
    assert ["phone:2", "tablet:1"] == heads_in_any_order(entries)


DEEP = []
for _ in range(2000):
    DEEP = [DEEP]


@pytest.mark.parametrize(
    ("key", "value"),
    [
        ("id", "phone"),
        ("id", "phone:0"),
        ("id", "phone:01"),
        ("id", "Phone:1"),
        ("id", "phone:1\n"),
        ("id", "laptop:1"),
        ("id", None),
        ("id", 1),
        ("device", ""),
        ("device", "a/b"),
        ("device", "x" * 41),
        ("device", ["phone"]),
        ("at", "yesterday"),
        ("at", "2026-05-02T09:00:00"),
        ("at", "2026-13-02T09:00:00Z"),
        ("at", 7),
        ("who", "x" * 81),
        ("who", "a\nb"),
        ("who", "\ud800"),
        ("who", None),
        ("subject", "sheet/hull"),
        ("subject", "../x"),
        ("subject", "photo/abc"),
        ("subject", "Vessel"),
        ("subject", ""),
        ("field", "Rating"),
        ("field", "a/b/c"),
        ("field", ""),
        ("value", float("nan")),
        ("value", float("inf")),
        ("value", "x" * 20_001),
        ("value", "\ud800"),
        ("value", {1, 2}),
        ("value", DEEP),
        ("replaces", "phone:1"),
        ("replaces", ["phone"]),
        ("replaces", ["phone:1"]),
        ("replaces", [f"phone:{n}" for n in range(2, 203)]),
        ("replaces", None),
    ],
)
def test_what_is_not_an_entry_is_refused(entry, key, value):
    """One wrong key at a time, and the sentence names it."""
    with pytest.raises(EntryRefused, match=key):
        from_dict({**to_dict(entry(1)), key: value})


@pytest.mark.parametrize("key", list(to_dict(Entry("a:1", "", "a", "", "", "", ""))))
def test_a_missing_key_is_refused(entry, key):
    """Every key must be there; a value left out is not the same as one that was cleared."""
    data = {name: value for name, value in to_dict(entry(1)).items() if name != key}
    with pytest.raises(EntryRefused, match=f"{key} is missing"):
        from_dict(data)


@pytest.mark.parametrize("data", [None, [], "entry", 7])
def test_other_json_is_refused(data):
    """Only an object can be an entry."""
    with pytest.raises(EntryRefused, match="JSON object"):
        from_dict(data)


def test_a_line_with_one_altered_byte_is_refused(entry):
    """The checksum tells rot from record, at every byte."""
    line = to_line(entry(1))[:-1]
    for place in range(len(line)):
        with pytest.raises(EntryRefused):
            from_line(line[:place] + bytes([line[place] ^ 1]) + line[place + 1 :])
