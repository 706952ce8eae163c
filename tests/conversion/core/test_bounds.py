"""Every refusal is one sentence that names its field."""

import pytest

from inspector.conversion.core.bounds import BadInput, one_of, or_default, plain, within
from inspector.conversion.core.figure import Default
from inspector.conversion.core.span import Span

DEFAULT = Default("density", Span(845, 850, 855), "no note", unit="kg/m³")


@pytest.mark.parametrize(
    "value", [-1, 11, Span(5, 6, 12), float("nan"), float("inf"), "5", None, True]
)
def test_what_lies_outside_or_is_no_number_is_refused(value):
    """The field opens the sentence and is kept for programs."""
    with pytest.raises(BadInput, match=r"^Tank 1: fill ") as refused:
        within("tank 1: fill", value, 0, 10, "m³")

    assert "tank 1: fill" == refused.value.field


def test_the_sentence_tells_what_would_be_right():
    """Value and both ends, with the unit."""
    with pytest.raises(
        BadInput, match="^Speed is 400 kn, and it must lie between 0 kn and 60 kn.$"
    ):
        plain("speed", 400, 0, 60, "kn")


def test_a_span_is_refused_where_one_number_is_needed():
    """A speed is one number."""
    with pytest.raises(BadInput, match="must be one number"):
        plain("speed", Span(1, 2, 3), 0, 60, "kn")


def test_the_ends_belong():
    """Both limits are allowed, and a span stays as it is."""
    assert [Span.exact(0), Span.exact(10), Span(0, 5, 10)] == [
        within("x", value, 0, 10) for value in (0, 10, Span(0, 5, 10))
    ]


def test_a_wrong_word_is_told_the_right_ones():
    """All choices are named."""
    with pytest.raises(BadInput, match="one of: vacuum, gravity"):
        one_of("toilets", "chemical", ("vacuum", "gravity"))


def test_a_default_is_listed_only_where_it_was_used():
    """A given value brings no default with it."""
    assert (Span.exact(840), ()) == or_default(840, DEFAULT)
    assert (DEFAULT.value, (DEFAULT,)) == or_default(None, DEFAULT)
