"""The drawings as marks: inside their box, in the reader's units, with a sentence."""

from datetime import date

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from inspector.conversion.core.drawing import (
    AskedPoint,
    Axis,
    Bar,
    Bars,
    Curve,
    Graph,
    Period,
    Polar,
    Timeline,
)
from inspector.report.drawn.geometry import draw
from inspector.report.drawn.picture import ticks
from inspector.values.quantity import Quantity, sentence

amounts = st.floats(-1e6, 1e6, allow_nan=False)
bars = st.lists(
    amounts.flatmap(lambda low: st.tuples(st.just(low), st.floats(0, 1e5), st.text(max_size=60))),
    min_size=1,
    max_size=8,
).map(
    lambda rows: Bars(
        "Title",
        "t",
        tuple(Bar(name, low, low + wide / 2, low + wide) for low, wide, name in rows),
        "Told.",
    )
)


def inside(picture):
    for mark in picture.marks:
        points = [mark.points[0]] if mark.kind == "box" else mark.points
        for x, y in points:
            assert -0.5 <= x <= picture.width + 0.5
            assert -0.5 <= y <= picture.height + 0.5
        if mark.kind == "box":
            (x, _), (width, _) = mark.points
            assert x + width <= picture.width + 1.5


@given(bars)
def test_bars_stay_inside_their_box(drawing):
    """Whatever the amounts, nothing is drawn outside, and the sentence travels along."""
    picture = draw(drawing)

    inside(picture)
    assert "Told." == picture.described


@given(
    st.lists(
        st.lists(st.tuples(st.floats(0, 30), st.floats(0, 1e5)), min_size=1, max_size=9).map(
            sorted
        ),
        min_size=1,
        max_size=4,
    )
)
def test_graphs_stay_inside_their_box(lines):
    """Curves, dots and axis alike; names stay off the axis."""
    curves = tuple(
        Curve(f"way {number}", tuple(points), dots=True) for number, points in enumerate(lines)
    )

    inside(
        draw(
            Graph("Power", Axis("speed", "kn"), Axis("power", "kW"), curves, "Told.", 12.0, "brief")
        )
    )


def test_a_timeline_marks_today_and_every_state_by_its_word():
    """State is shown by a word, not by colour alone."""
    picture = draw(
        Timeline(
            "Surveys",
            date(2026, 5, 2),
            (Period("class", date(2026, 4, 1), date(2026, 10, 1), "in window"),),
            "Told.",
        )
    )

    words = [mark.text for mark in picture.marks if mark.kind == "text"]
    assert "today" in words
    assert any("in window" in word for word in words)
    inside(picture)


@pytest.mark.parametrize(
    "drawing",
    [
        Graph("x", Axis("kn"), Axis("kW"), (), "Nothing."),
        Timeline("x", date(2026, 5, 2), (), "Nothing."),
    ],
)
def test_nothing_to_draw_is_said(drawing):
    """An empty drawing is a sentence, not an error."""
    assert any(mark.text for mark in draw(drawing).marks)


@pytest.mark.parametrize(
    ("low", "high", "expected"),
    [
        (0, 9, [0, 2, 4, 6, 8]),
        (0, 100, [0, 20, 40, 60, 80, 100]),
        (3, 3, [3]),
        (-1, 1, [-1, -0.5, 0, 0.5, 1]),
    ],
)
def test_ticks_are_round_values_within_the_ends(low, high, expected):
    """Steps of 1, 2 or 5 times a power of ten."""
    assert expected == ticks(low, high)


def test_a_drawing_for_a_us_reader_names_us_units():
    """Numbers, axes and bars are all in the reader's units, and the SI drawing is in SI."""
    graph = Graph(
        "Power",
        Axis("speed", "kn"),
        Axis("power", "kW"),
        (Curve("own", ((8.0, 0.0), (10.0, 745.7))),),
        sentence("{power} at the most.", power=Quantity.exact(745.6998715822702, "kW")),
    )
    bars = Bars("Floor", "m²", (Bar("mess", 0.0, None, 9.290304),), "Floor.")

    us, si = draw(graph, system="us"), draw(graph)
    assert {"speed, kn", "power, hp", "1 000"} <= texts(us)
    assert {"speed, kn", "power, kW", "600"} <= texts(si)
    assert ("1000 hp at the most.", "746 kW at the most.") == (us.described, si.described)
    assert {"ft²", "100"} <= texts(draw(bars, system="us"))


def texts(picture):
    return {mark.text.replace("\u00a0", " ") for mark in picture.marks if mark.kind == "text"}


winds = st.lists(st.floats(0, 200), min_size=4, max_size=24)


@example([[0.0, 0.0, 0.0, 5e-324]], None)
@given(st.lists(winds, min_size=1, max_size=3), st.none() | st.floats(0.1, 300))
@pytest.mark.parametrize("width", [356.0, 460.0])
def test_a_polar_drawing_stays_inside_its_box(width, rows, asked):
    """Rings, curves and names, on a phone and in the report."""
    curves = tuple(
        Curve(
            f"after failure {at}",
            tuple((360 * n / len(row), wind) for n, wind in enumerate(row)),
            dashed=at > 0,
        )
        for at, row in enumerate(rows)
    )
    picture = draw(Polar("Wind", "kn", curves, "Told.", asked, "asked"), width)

    inside(picture)
    words = [mark.text for mark in picture.marks if mark.kind == "text"]
    assert {"ahead", "starboard", "astern", "port"} <= set(words)
    assert ("asked, " in " ".join(words)) == (asked is not None)


def test_ahead_is_at_the_top_and_starboard_at_the_right():
    """A bearing of 90 degrees is drawn to the right of the centre, 0 above it."""
    curve = Curve("one", ((0, 10.0), (90, 20.0)))
    picture = draw(Polar("Wind", "kn", (curve,), "Told."))
    (ahead, starboard) = next(
        mark.points for mark in picture.marks if mark.kind == "line" and mark.tone == "ink"
    )

    assert picture.width / 2 == pytest.approx(ahead[0])
    assert ahead[1] < starboard[1]
    assert starboard[0] - picture.width / 2 == pytest.approx(2 * (starboard[1] - ahead[1]))


def test_a_polar_drawing_for_a_us_reader_has_us_units():
    """Values are converted, directions are not."""
    curve = Curve("one", ((0, 10.0), (90, 20.0)))
    picture = draw(Polar("Reach", "m", (curve,), "Told.", 10.0, "asked"), system="us")

    words = [mark.text for mark in picture.marks if mark.kind == "text"]
    assert "rings: ft" in words
    assert "asked, 32.8" in words


@pytest.mark.parametrize("width", [356.0, 460.0])
def test_what_is_asked_is_marked_in_a_graph(width):
    """The point lies where it is asked, also beyond the curves, and stays inside."""
    curve = Curve("likely", ((8.0, 12_000.0), (14.0, 6_000.0)))
    asked = (AskedPoint(12.0, 15_000.0, "asked"),)
    picture = draw(
        Graph("Range", Axis("speed", "kn"), Axis("range", "nmi"), (curve,), "Told.", asked=asked),
        width,
    )

    inside(picture)
    assert "asked" in [mark.text for mark in picture.marks]
    ring = next(mark for mark in picture.marks if mark.tone == "accent" and mark.kind == "line")
    path = next(mark for mark in picture.marks if mark.tone == "ink" and mark.kind == "line")
    assert path.points[0][0] < ring.points[1][0] < path.points[-1][0]
    assert ring.points[1][1] < min(y for _, y in path.points)


@given(bars)
def test_narrow_bars_stay_inside_their_box(drawing):
    """On a phone the names stand above their bars."""
    inside(draw(drawing, 356.0))
