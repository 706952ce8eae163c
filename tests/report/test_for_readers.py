"""What a newcomer to the report stumbled over: units, signs, figures that claim too much, empty systems, amounts."""

import dataclasses

import pytest

from inspector.assess.shapes import Condition, SystemPart
from inspector.conversion.chapters import Bar, Bars, Chapter, Curve, Graph, Lines
from inspector.conversion.shapes import Figure, Span
from inspector.report.conversion import amount
from inspector.report.pages import whole_file
from inspector.report.reader_units import drawing_in, table_in
from inspector.report.theme import plain
from inspector.report.wording import condition_text, counted, disputed_text, looked_at, told_points
from tests.report.conftest import results, system
from tests.report.test_condition_report import words


@pytest.mark.parametrize(("expected", "value", "unit"), [
    ("−0.073 m", -0.0729712, "m"), ("1000 kW", 999.8347, "kW"), ("23.3 years", 70 / 3, "years"), ("23\u00a0500 EUR", 23456.7, "EUR"),
    ("1\u00a0235\u00a0000 EUR", 1234567.8, "EUR"), ("1025 kg/m³", 1025, "kg/m³"), ("2873", 2873.0, ""), ("–", None, "m"),
])
def test_computed_figures_claim_three_digits(expected: str, value: float | None, unit: str) -> None:
    """What was computed is rounded, money to hundreds or thousands; what was given in few digits stays as it was given."""
    assert expected == amount(value, unit, "si")


def test_bars_are_drawn_in_the_units_of_the_reader() -> None:
    """Values, limit and unit of a drawing go over together; days have no other unit and stay."""
    bars = Bars("Floor", "m²", (Bar("mess", 10.0, None, 20.0, 10.0),), "Floor.")
    told = drawing_in(bars, "us")
    assert "ft²" == told.unit
    assert pytest.approx((107.639, 215.278, 107.639), abs=0.001) == (told.bars[0].low, told.bars[0].high, told.bars[0].limit)
    assert told.bars[0].point is None
    assert bars == drawing_in(bars, "si")
    days = dataclasses.replace(bars, unit="days")
    assert days == drawing_in(days, "us")


def test_a_graph_goes_over_by_its_axes() -> None:
    """Each axis is converted by the unit in its label; knots stay knots, and so does the mark on them."""
    graph = Graph("Power", "speed, kn", "shaft power, kW", (Curve("trial", ((10.0, 745.6998715822702),)),), "Power.", 12.0)
    told = drawing_in(graph, "us")
    assert ("speed, kn", "shaft power, hp", 12.0) == (told.x_label, told.y_label, told.mark_x)
    assert ((10.0, pytest.approx(1000)),) == told.curves[0].points


def test_a_table_goes_over_as_a_whole_or_is_marked() -> None:
    """Cells under a heading with a unit and cells with their own are converted; a table with anything left in SI stays and says so."""
    table = Lines("Sets", ("name", "mass, t", "power", "margin kW"), (("port", "1 to 2", "745.7 kW", "–"),), (1, 2))
    told = table_in(table, "us")
    assert (("name", "mass, long ton", "power", "margin hp"), (("port", "0.984 to 1.97", "1000 hp", "–"),)) == (told.headings, told.rows)
    mixed = dataclasses.replace(table, note="Left and need in kN across.")
    assert dataclasses.replace(mixed, title="Sets (SI)") == table_in(mixed, "us")
    assert mixed == table_in(mixed, "si")


def test_the_us_report_says_what_stays_in_si(full, write) -> None:
    """The conversion of a US report carries one line on its sentences, and its figures are not SI; an SI report has no such line."""
    chapter = Chapter("space", "Space", "There is room.", (Figure("Floor", Span(400.0, 430.0, 455.0), "m²", "sum"),))
    line = "Sentences and the tables marked SI are in SI units."
    told = words(write(full, units="us", chapters=[chapter]))
    assert line in told
    assert "4630 ft²" in told
    assert line not in words(write(full, chapters=[chapter]))


def test_signs_that_the_font_lacks_leave_a_mark(full, write) -> None:
    """Letters that the font has not are shown as a mark each; they do not vanish."""
    assert "Vessel \ufffd\ufffd\ufffd \ufffd Ωж" == plain("Vessel عمر 🚢 Ωж")
    read = words(write(dataclasses.replace(full, vessel={"name": "Ship عمر"})))
    assert "Ship \ufffd\ufffd\ufffd" in read


def test_too_little_seen_gives_no_figure() -> None:
    """One good check of many is no condition of 100: below the coverage that the settings ask the span stands alone."""
    state = Condition(100, 1, 100, 0.01, 1, 141)
    assert told_points(state, 0.6) is None
    assert "Too little was seen for a figure of the condition (1 to 100 counting what was not seen)." == condition_text(state, 0.6)
    assert 100 == told_points(dataclasses.replace(state, coverage=0.6), 0.6)


def test_systems_that_nobody_looked_at_are_one_list(full, write) -> None:
    """Empty systems take a line each and no page; in the short report the others follow each other."""
    empty = [SystemPart(system(f"empty-{at}", f"Empty {at}"), dataclasses.replace(full.systems[1].whole, name=f"Empty {at}"), ()) for at in range(30)]
    more = dataclasses.replace(full, systems=(*full.systems, *empty))
    assert [True, *[False] * 31] == [looked_at(one, more) for one in more.systems]
    for whole in (True, False):
        assert len(write(more, whole=whole).pages) - len(write(full, whole=whole).pages) <= 4
    assert "Not looked at" in words(write(more, whole=False))


@pytest.mark.parametrize(("currency", "said"), [("NOK", "Low, likely and high in NOK."), ("", "no currency was named for them.")])
def test_work_lines_name_their_currency(full, write, currency: str, said: str) -> None:
    """Amounts are in the currency that the inspection names; where it names none, the report says that."""
    assert said in words(write(dataclasses.replace(full, currency=currency)))


def test_one_person_on_two_devices_is_not_two_people() -> None:
    """Where both answers are by one person, the words say that they were given apart, on two devices."""
    result = results("one", "One", [])[1]
    same = dataclasses.replace(result, answers=tuple(dataclasses.replace(one, who="K. T.") for one in result.answers))
    assert disputed_text(same).startswith("Answered differently, given apart, on two devices (rating):")
    assert disputed_text(result).startswith("Answered differently (rating):")


def test_one_dispute_is_told_in_the_singular(full, write) -> None:
    """Counts agree with their words."""
    assert "1 answer is disputed" in words(write(dataclasses.replace(full, disputes=1)))
    assert ("1 photo", "2 photos", "0 photos") == tuple(counted(number, "photo") for number in (1, 2, 0))


def test_a_path_that_cannot_be_written_is_told_as_asked(tmp_path) -> None:
    """The refusal names the file that was asked for, not the one written on the way."""
    asked = tmp_path / "nowhere" / "x.pdf"
    with pytest.raises(FileNotFoundError) as caught, whole_file(asked) as part:
        part.write_bytes(b"x")
    assert str(asked) == caught.value.filename
