"""What every criterion must answer by its source, written down before it was compared."""

from collections import Counter, defaultdict

import pytest

from inspector.checklists.registry import CRITERIA
from tests.published.second_calculation.cases import GROUPS, agrees, all_cases, answer

CASES = all_cases()
LEAST = 4
GIVEN = ("good", "fair", "poor", "failed", "none", "refused", *GROUPS)


def by_criterion():
    """Return the cases of each criterion."""
    found = defaultdict(list)
    for case in CASES:
        found[case.criterion].append(case)
    return found


@pytest.mark.parametrize("name", CRITERIA)
def test_a_criterion_answers_as_its_source_says(name):
    """Each case agrees; what disagreed was looked up, and the wrong side mended."""
    cases = by_criterion()[name]
    wrong = [(each.name, given) for each in cases if not agrees(each, *(given := answer(each)))]

    assert len(cases) >= LEAST
    assert [] == wrong


def test_every_case_is_of_a_criterion_and_says_what_it_rests_on():
    """A case of no criterion, or without source and reason, proves nothing."""
    words = {word for case in CASES for word in case.expected.partition(": ")[0].split("/")}

    assert [] == [case.name for case in CASES if case.criterion not in CRITERIA]
    assert [] == [case.name for case in CASES if not (case.source and case.why)]
    assert words <= set(GIVEN)


def test_no_case_is_there_twice():
    """Two answers to one question would agree with anything."""
    counted = Counter((case.criterion, *sorted(case.values.items())) for case in CASES)

    assert [] == [key for key, count in counted.items() if count > 1]
