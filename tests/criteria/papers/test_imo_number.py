"""The ship's number: what fits, what does not, and what is no number at all.

All numbers here are invented.
"""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.checklists.registry import criterion
from inspector.criteria.core.judgement import CannotJudge
from inspector.criteria.papers.imo_number import check_digit


@pytest.mark.parametrize(
    "number",
    ["0123450", "IMO 0123450", "IMO0123450", "imo 0123450", "  0123450 ", "0000012", "3333331"],
)
def test_a_fitting_number_is_not_rated_and_not_called_proven(judge, number):
    """A check digit that fits proves careful copying only."""
    judgement = judge("imo-number", number=number)
    assert (judgement.band, judgement.rating) == ("check digit fits", None)
    assert "not proven" in judgement.sentence
    assert "verified" not in judgement.sentence


@pytest.mark.parametrize(
    ("wanted", "number"), [(2, "0000013"), (1, "0132450"), (0, "0123405"), (7, "0000128")]
)
def test_a_number_that_does_not_fit_is_given_the_digit_that_would(judge, wanted, number):
    """A wrong digit and swapped neighbours are found."""
    judgement = judge("imo-number", number=number)
    assert ("check digit does not fit", "poor", wanted) == (
        judgement.band,
        judgement.rating,
        judgement.limit,
    )
    assert f"should be {wanted}" in judgement.sentence


@pytest.mark.parametrize(
    "number",
    ["IMO 0123450", "imo0123450", "IMO No. 0123450", "I.M.O. number: 0123450", "IMO 012 3450"],
)
def test_a_number_is_read_with_its_letters(judge, number):
    """As certificates, plates and the hull print it."""
    assert "0123450 fits" in judge("imo-number", number=number).sentence


@pytest.mark.parametrize(
    ("said", "number"),
    [
        ("has 6 digits", "202020"),
        ("has 8 digits", "33333310"),
        ("letter O where a zero", "4OOOOO8"),
        ("zero where IMO", "IM0 0123450"),
        ("seven digits", "00000-12"),
        ("seven digits", "０１２３４５０"),
        ("seven digits", "012345²"),
        ("placeholder", "0000000"),
        ("seven digits", "IMO"),
        ("seven digits", "-123450"),
        ("has 5 digits", "IMO 12345"),
        ("missing", " "),
    ],
)
def test_what_is_no_number_is_refused_with_its_reason(judge, said, number):
    """Length, letters, look-alike digits and placeholders each get their own sentence."""
    with pytest.raises(CannotJudge, match=said):
        judge("imo-number", number=number)


def test_a_number_given_as_an_integer_is_refused(judge):
    """Leading zeros live in text only."""
    with pytest.raises(CannotJudge, match="is not text"):
        judge("imo-number", number=123450)


def test_a_company_number_in_the_ships_field_is_recognised(judge):
    """The other register's sum fits, and the note says so."""
    judgement = judge("imo-number", number="0000014")
    assert judgement.rating == "poor"
    assert any("company" in note for note in judgement.notes)


def test_the_typed_run_fits_by_chance_and_is_remarked(judge):
    """1234567 has a fitting digit and is no evidence."""
    assert any("by chance" in note for note in judge("imo-number", number="1234567").notes)


def test_a_slip_in_the_third_place_can_go_unseen(judge):
    """0123450 and 0143450 both fit: the reason why a fit is no proof."""
    assert judge("imo-number", number="0143450").band == "check digit fits"


@given(
    st.from_regex(r"000[0-9]{3}", fullmatch=True).filter(lambda digits: digits != "000000"),
    st.integers(1, 9),
)
def test_any_number_with_its_digit_fits_and_with_another_does_not(digits, shift):
    """The last digit alone decides, over all invented numbers."""
    fitting = check_digit(digits)
    rule = criterion("imo-number")
    assert rule.apply({"number": f"{digits}{fitting}"}).band == "check digit fits"
    assert (
        rule.apply({"number": f"{digits}{(fitting + shift) % 10}"}).band
        == "check digit does not fit"
    )


@given(st.from_regex(r"0[0-9]{5}", fullmatch=True), st.integers(0, 4))
def test_a_swap_of_two_unlike_neighbours_is_always_found(digits, place):
    """Neighbouring weights differ by one, so no swap inside the six can pass."""
    swapped = digits[:place] + digits[place + 1] + digits[place] + digits[place + 2 :]
    assert (digits == swapped) == (check_digit(digits) == check_digit(swapped))
