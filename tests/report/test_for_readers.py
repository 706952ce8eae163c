"""What a newcomer to the report stumbled over: units, signs, figures that claim too much."""

import dataclasses

import pytest

from inspector.assess.checked import Condition
from inspector.assess.model import SystemPart
from inspector.conversion.core.chapter import Chapter, FigureTable, TableColumn
from inspector.conversion.core.drawing import Axis, Bar, Bars, Curve, Graph
from inspector.conversion.core.figure import Figure
from inspector.conversion.core.span import Span
from inspector.report.document import whole_file
from inspector.report.drawn.drawing_units import in_system
from inspector.report.figure_text import ends_printed, headings, rows_printed
from inspector.report.theme import plain
from inspector.report.wording import condition_text, disputed_text, looked_at
from inspector.values.quantity import Quantity, sentence
from tests.report.conftest import results, system
from tests.report.test_condition_report import words


@pytest.mark.parametrize(
    ("expected", "value", "unit"),
    [
        ("−0.073 m", -0.0729712, "m"),
        ("1000 kW", 999.8347, "kW"),
        ("23.3 years", 70 / 3, "years"),
        ("1025 kg/m³", 1025, "kg/m³"),
        ("2873", 2873.0, ""),
    ],
)
def test_computed_figures_claim_three_digits(expected: str, value: float, unit: str) -> None:
    """What was calculated is rounded; what was given in few digits stays as it was given."""
    likely = ends_printed(Figure("Figure", Span.exact(value), unit, ""))[1]
    assert expected == likely.replace("\u00a0", " ")


@pytest.mark.parametrize(
    ("expected", "value"), [("23 500 EUR", 23456.7), ("1 235 000 EUR", 1234567.8)]
)
def test_sums_of_money_claim_hundreds_or_thousands(expected: str, value: float) -> None:
    """An estimate of 1 234 567.80 is not one."""
    likely = ends_printed(Figure("Cost", Span.exact(value), "EUR", "", is_money=True))[1]
    assert expected == likely.replace("\u00a0", " ")


def test_an_end_that_is_not_known_is_a_dash() -> None:
    """A span without a best single value shows none."""
    assert ("1 m", "–", "2 m") == tuple(
        text.replace("\u00a0", " ")
        for text in ends_printed(Figure("Draught", Span(1.0, None, 2.0), "m", ""))
    )


def test_bars_are_drawn_in_the_units_of_the_reader() -> None:
    """Values, limit and unit of a drawing go over together; days have no other unit and stay."""
    bars = Bars("Floor", "m²", (Bar("mess", 10.0, None, 20.0, 10.0),), "Floor.")
    shown = in_system(bars, "us")
    assert "ft²" == shown.unit
    assert pytest.approx((107.639, 215.278, 107.639), abs=0.001) == (
        shown.bars[0].low,
        shown.bars[0].high,
        shown.bars[0].limit,
    )
    assert shown.bars[0].point is None
    assert bars == in_system(bars, "si")
    days = dataclasses.replace(bars, unit="days")
    assert days == in_system(days, "us")


def test_a_graph_goes_over_by_its_axes() -> None:
    """Each axis is converted by its unit; knots stay knots, and so does the mark on them."""
    graph = Graph(
        "Power",
        Axis("speed", "kn"),
        Axis("shaft power", "kW"),
        (Curve("trial", ((10.0, 745.6998715822702),)),),
        "Power.",
        12.0,
    )
    shown = in_system(graph, "us")
    assert (Axis("speed", "kn"), Axis("shaft power", "hp"), 12.0) == (
        shown.x,
        shown.y,
        shown.mark_x,
    )
    assert ((10.0, pytest.approx(1000)),) == shown.curves[0].points


POWER = Quantity.exact(745.6998715822702, "kW")
TABLE = FigureTable(
    "Sets",
    (
        TableColumn("name"),
        TableColumn("mass", "t"),
        TableColumn("power"),
        TableColumn("margin", "kW"),
    ),
    (
        ("port", Quantity(1, 1.5, 2, "t"), POWER, None),
        ("starboard", None, sentence("{power} at most", power=POWER), POWER),
    ),
)


def test_a_table_goes_over_as_a_whole() -> None:
    """Figures under a heading with a unit, with their own and in sentences are all converted."""
    assert ["name", "mass, long ton", "power", "margin, hp"] == headings(TABLE, "us")
    assert [
        ["port", "0.984 to 1.97", "1000 hp", "–"],
        ["starboard", "–", "1000 hp at most", "1000"],
    ] == [[cell.replace("\u00a0", " ") for cell in row] for row in rows_printed(TABLE, "us")]
    assert ["port", "1 to 2", "746 kW", "–"] == [
        cell.replace("\u00a0", " ") for cell in rows_printed(TABLE)[0]
    ]


def test_columns_that_hold_nothing_but_figures_are_set_to_the_right() -> None:
    """What a column holds decides, so that no table can name the wrong one."""
    assert (1, 3) == TABLE.numeric


def test_a_figure_in_another_unit_than_its_column_is_refused() -> None:
    """It would be printed without its unit, as another figure."""
    with pytest.raises(ValueError, match="'mass' is in t"):
        dataclasses.replace(TABLE, rows=(("port", Quantity.exact(1, "kg"), None, None),))


def test_a_us_report_has_no_figure_in_si(full, write) -> None:
    """Figures, tables, notes, answers and warnings are all in US units; an SI report is not."""
    floor = Span(400.0, 430.0, 455.0)
    chapter = Chapter(
        "space",
        "Space",
        sentence("There is room: {floor}.", floor=floor.quantity("m²")),
        (Figure("Floor", floor, "m²", sentence("{floor} in all", floor=floor.quantity("m²"))),),
        (dataclasses.replace(TABLE, note=sentence("Of {mass}.", mass=Quantity.exact(9, "t"))),),
        warnings=(sentence("Only {floor}.", floor=Quantity.exact(430, "m²")),),
    )
    us, si = (
        words(write(full, units="us", chapters=[chapter])),
        words(write(full, chapters=[chapter])),
    )
    before = words(write(full, units="us"))
    for text in (
        "There is room: 4310 to 4900 ft²",
        "4630 ft²",
        "Of 8.86 long ton",
        "Only 4630 ft²",
    ):
        assert text in us
    for unit in (" m²", " kW", " t "):
        assert before.count(unit) == us.count(unit)
    assert "There is room: 400 to 455 m²" in si


def test_signs_that_the_font_lacks_leave_a_mark(full, write) -> None:
    """Letters that the font has not are shown as a mark each; they do not vanish."""
    assert "Vessel \ufffd\ufffd\ufffd \ufffd Ωж" == plain("Vessel عمر 🚢 Ωж")
    read = words(write(dataclasses.replace(full, vessel={"name": "Ship عمر"})))
    assert "Ship \ufffd\ufffd\ufffd" in read


def test_too_little_seen_gives_no_figure() -> None:
    """One good check of many is no condition of 100: without enough only the span is shown."""
    state = Condition(100, 1, 100, 0.01, 1, 141)
    assert state.shown is None
    assert (
        "Too little was seen for a figure of the condition (1 to 100 counting what was not seen)."
        == condition_text(state)
    )
    assert condition_text(dataclasses.replace(state, enough=True)).startswith("Condition 100 (")


def test_a_condition_with_all_seen_is_one_figure() -> None:
    """Where nothing is left unseen there is no span to print."""
    assert "Condition 94." == condition_text(Condition(94.4, 94.4, 94.4, 1.0, 9, 9, enough=True))


def test_systems_that_nobody_looked_at_are_one_list(full, write) -> None:
    """Empty systems take a line each and no page; in the short report the others follow on."""
    empty = [
        SystemPart(
            system(f"empty-{at}", f"Empty {at}"),
            dataclasses.replace(full.systems[1].whole, name=f"Empty {at}"),
            (),
        )
        for at in range(30)
    ]
    more = dataclasses.replace(full, systems=(*full.systems, *empty))
    assert [True, *[False] * 31] == [looked_at(one, more) for one in more.systems]
    for extent in ("whole", "short"):
        assert len(write(more, extent=extent).pages) - len(write(full, extent=extent).pages) <= 4
    assert "Not looked at" in words(write(more, extent="short"))


@pytest.mark.parametrize(
    ("currency", "said"),
    [("NOK", "Low, likely and high in NOK."), ("", "no currency was named for them.")],
)
def test_work_lines_name_their_currency(full, write, currency: str, said: str) -> None:
    """Amounts are in the currency that the inspection names, or the report says it names none."""
    assert said in words(write(dataclasses.replace(full, currency=currency)))


def test_one_person_on_two_devices_is_not_two_people() -> None:
    """Where both answers are by one person, the words say that two devices gave them."""
    result = results("one", "One", [])[1]
    same = dataclasses.replace(
        result, answers=tuple(dataclasses.replace(one, who="K. T.") for one in result.answers)
    )
    assert disputed_text(same).startswith(
        "Answered differently, given apart, on two devices (rating):"
    )
    assert disputed_text(result).startswith("Answered differently (rating):")


def test_one_dispute_is_told_in_the_singular(full, write) -> None:
    """Counts agree with their words."""
    assert "1 answer is disputed" in words(write(dataclasses.replace(full, disputes=1)))


def test_a_path_that_cannot_be_written_is_told_as_asked(tmp_path) -> None:
    """The refusal names the file that was asked for, not the one written on the way."""
    asked = tmp_path / "nowhere" / "x.pdf"
    with pytest.raises(FileNotFoundError) as caught, whole_file(asked) as part:
        part.write_bytes(b"x")
    assert str(asked) == caught.value.filename
