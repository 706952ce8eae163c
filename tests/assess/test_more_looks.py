"""Of drawn inspections: a look more or a deeper one never widens a span, the order of the answers
changes nothing, and more minutes never lower the worth of a round.
"""

import random

import pytest

from inspector.assess.assessment import assess
from inspector.assess.from_state import read_inspection
from inspector.assess.next_look.advice import next_look
from inspector.assess.round.composition import round_of
from inspector.assess.round.look_ways import visit_looks
from inspector.record.entry import from_dict
from inspector.record.state import State
from inspector.values.vocabulary import RATINGS, TESTED
from tests.random_inspections import drawn

SEEDS = range(40)


def assessed(entries, library):
    """The assessment of what is recorded."""
    return assess(read_inspection(State(map(from_dict, entries))), library)


def spans(assessment):
    """System and unit -> low and high of its condition."""
    return {
        (system.system.id, unit.id): (unit.condition.low, unit.condition.high)
        for system in assessment.systems
        for unit in (system.whole, *system.units)
    }


def with_entry(entries, subject, field, value):
    """One entry more, which replaces what there is in its field."""
    known = [one["id"] for one in entries if (one["subject"], one["field"]) == (subject, field)]
    entry = {
        "id": f"later:{len(entries) + 1}",
        "at": "2026-05-02T20:00:00.000Z",
        "device": "later",
        "who": "QX",
        "subject": subject,
        "field": field,
        "value": value,
        "replaces": known,
    }
    return [*entries, entry]


def results_of(assessment):
    return [result for system in assessment.systems for result in system.whole.results]


@pytest.mark.parametrize("seed", SEEDS)
def test_a_look_more_never_widens_a_span(seed):
    """Whatever is found by it, nothing that was possible of the units becomes more."""
    one, luck = drawn(seed), random.Random(seed)
    library = one.library
    before = assessed(one.entries, library)
    unseen = [
        result
        for result in results_of(before)
        if not result.answer and result.rating is None and not result.check.optional
    ]
    for result in luck.sample(unseen, min(len(unseen), 3)):
        answered = with_entry(one.entries, result.subject, "rating", luck.choice(RATINGS))
        after = spans(assessed(answered, library))
        for unit, (low, high) in spans(before).items():
            assert low <= after[unit][0] <= after[unit][1] <= high, (result.subject, unit)


@pytest.mark.parametrize("seed", SEEDS)
def test_a_deeper_look_never_widens_a_span(seed):
    """The same answer, now tested: no span is wider than it was."""
    one, luck = drawn(seed), random.Random(seed)
    library = one.library
    before = assessed(one.entries, library)
    seen = [result for result in results_of(before) if result.rating and result.depth]
    for result in luck.sample(seen, min(len(seen), 3)):
        deeper = with_entry(one.entries, result.subject, "depth", TESTED)
        after = spans(assessed(deeper, library))
        for unit, (low, high) in spans(before).items():
            assert after[unit][1] - after[unit][0] <= high - low, (result.subject, unit)


@pytest.mark.parametrize("seed", SEEDS)
def test_the_same_answers_in_any_order_come_out_alike(seed):
    """Spans, words, the next looks and the round."""
    one = drawn(seed)
    library, shuffled = one.library, list(one.entries)
    random.Random(seed).shuffle(shuffled)
    spaces = [*library.spaces]
    found = []
    for entries in (one.entries, shuffled):
        assessment = assessed(entries, library)
        words = [(unit.id, repr(unit.proposal)) for s in assessment.systems for unit in s.units]
        made = round_of(visit_looks(assessment), spaces, 45, 2)
        found.append((spans(assessment), words, made, next_look(assessment, 30)))

    assert found[0] == found[1]


@pytest.mark.parametrize("seed", SEEDS)
def test_more_minutes_never_lower_the_worth_of_a_round(seed):
    """Minute by minute at first, then in long steps; for one person and for three."""
    one = drawn(seed)
    looks = visit_looks(assessed(one.entries, one.library))
    for people in (1, 3):
        worths = [
            round_of(looks, [*one.library.spaces], minutes, people).worth
            for minutes in (0, 1, 2, 3, 5, 8, 13, 21, 34, 55, 89, 144, 600)
        ]
        assert all(less <= more + 1e-9 for less, more in zip(worths, worths[1:], strict=False))
