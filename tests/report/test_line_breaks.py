"""No line of the report ends within a number, nor between a number and its unit."""

import re

import pypdf
import pytest
from reportlab.lib.pagesizes import A4
from reportlab.platypus import Paragraph, SimpleDocTemplate

from inspector.report.column_widths import SMALLEST, fitted_widths
from inspector.report.line_breaks import loosened, numbers_in, unbroken
from inspector.report.tables import rows_table
from inspector.report.theme import STYLES, txt, use_fonts
from inspector.values.formatting import grouped, show
from inspector.values.units import known_units

MONEY = [
    f"{grouped(amount)} {name}"
    for amount in (12_400, 120_000, 1_234_567, 98_765_432)
    for name in ("EUR", "NOK", "crowns", "€")
]
QUANTITIES = [
    "12 400 m²",
    "12\u00a0400 m²",
    "−18 °C",
    "0.42 %",
    "44100 h",
    "± 30 %",
    "1 200,5 kg/nmi",
    "85 US gal/min",
    "1.2 long ton·ft",
    "9.6 mm",
    "140 t·m",
    "0.055 m·rad",
    "240 crowns/piece",
    "+3.5 kn",
    "1 250 per 100 ml",
    "$ 12 000",
]
TOKENS = MONEY + QUANTITIES
SENTENCES = [
    *(
        f"Taken together it comes to {token}, which was typed, and {token} more."
        for token in TOKENS
    ),
    "Replacing costs 120 000 to 140 000 EUR, refurbishing 45 000 / 60 000 EUR (or 1 250 000 NOK).",
    "The deck of 12 400 m² at −18 °C carries 5 t/m².",
]


def text_of(line):
    """A line as laid out, of either kind that the PDF library makes."""
    return (
        " ".join(line[1]) if isinstance(line, tuple) else "".join(word.text for word in line.words)
    )


def lines_of(paragraph, width):
    paragraph.wrap(width, 10_000)
    return [text_of(line) for line in paragraph.blPara.lines]


def squeezed(text):
    return re.sub(r"\s+", "", text)


def whole(token, lines):
    """Whether every mention of a token in the lines' text is within one line."""
    wanted, found = squeezed(token), [squeezed(line) for line in lines]
    return "".join(found).count(wanted) == sum(line.count(wanted) for line in found) > 0


@pytest.fixture(autouse=True)
def fonts():
    use_fonts()


def cells_of(table):
    """(column, paragraph) of each cell of a table, the head included."""
    return [(column, cell) for row in table._cellvalues for column, (cell,) in enumerate(row)]


@pytest.mark.parametrize("token", [*TOKENS, *(show(-12_345.6, unit) for unit in known_units())])
def test_a_number_and_its_unit_are_a_single_word(token):
    """For every unit we know, and every currency, there is no place to break in number and unit."""
    joined = unbroken(f"It is {token}.")

    assert joined.replace("\u00a0", " ") == f"It is {token}.".replace("\u00a0", " ")
    assert len(joined.split(" ")) == 3


@pytest.mark.parametrize(
    "text",
    [
        "Frame 38, strake D",
        "unit 2 of 4",
        "in 2024 the owner left",
        "380 385 372 390 376",
        "from 12 to 14 persons",
        "3 anodes",
    ],
)
def test_other_words_may_part(text):
    """What is no quantity keeps every place to break."""
    assert unbroken(text) == text


@pytest.mark.parametrize("sentence", SENTENCES)
@pytest.mark.parametrize("style", ["body", "cell", "caption"])
def test_no_line_of_a_paragraph_ends_within_a_quantity(sentence, style):
    """In every width in which the longest of them has room, and in steps of a point."""
    numbers = [word for word in numbers_in(unbroken(sentence)) if "\u00a0" in word]
    assert numbers
    for width in range(110, 220, 3):
        lines = lines_of(Paragraph(txt(sentence), STYLES[style]), width)
        assert all(whole(number, lines) for number in numbers), (width, lines)


@pytest.mark.parametrize("width", [16, 24, 32, 44, 60, 90])
@pytest.mark.parametrize("tone", ["", "b", "now"])
def test_no_line_of_a_cell_ends_within_a_number(width, tone):
    """A narrow column is set smaller; a line may end before a unit, but never within the number."""
    rows = [[[(sentence, tone)], token] for sentence, token in zip(SENTENCES, TOKENS, strict=False)]
    table = rows_table(("said", "120 000 EUR"), rows, (width, width), right=(1,))

    for column, cell in cells_of(table):
        lines = lines_of(cell, table._colWidths[column] - 6)
        for number in numbers_in(loosened("".join(frag.text for frag in cell.frags))):
            assert whole(number, lines), (width, lines)


@pytest.mark.parametrize("token", TOKENS)
def test_a_unit_parts_from_its_number_only_below_the_smallest_size(token):
    """As long as setting the table smaller is enough, number and unit share a line."""
    for width in range(20, 120, 4):
        ((_, cell),) = cells_of(rows_table(("",), [[token]], (width,)))
        lines = lines_of(cell, width - 6)
        if len(lines) > 1:
            assert cell.style.fontSize <= SMALLEST * STYLES["cell"].fontSize + 1e-9
            assert any(whole(number, lines) for number in numbers_in(loosened(unbroken(token))))


def test_a_table_has_one_size_of_type():
    """One wide sum makes its whole table smaller, so that no row looks like a footnote."""
    table = rows_table(
        ("what", "sum"), [["Paint", "9 600 EUR"], ["Plate", "98 765 432 EUR"]], (30, 60)
    )

    assert (
        len(
            {
                round(cell.style.fontSize / STYLES["cell"].fontSize, 3)
                for _, cell in cells_of(table)[2:]
            }
        )
        == 1
    )
    assert cells_of(table)[2][1].style.fontSize < STYLES["cell"].fontSize


def test_a_roomy_table_keeps_the_size_of_its_style():
    """Nothing shrinks without need."""
    table = rows_table(("what", "sum"), [["Plate", "98 765 432 EUR"]], (120, 120))

    assert {STYLES["cell"].fontSize} == {cell.style.fontSize for _, cell in cells_of(table)[2:]}


def test_a_column_is_as_wide_as_its_widest_quantity():
    """Columns of plain text make room for number and unit, not for the groups of a number alone."""
    rows = [
        ["A longer text that can be broken wherever it pleases the setter", token]
        for token in TOKENS
    ]
    widths = fitted_widths(("what", "sum"), rows, 200)

    assert sum(widths) == pytest.approx(200)
    table = rows_table(("what", "sum"), rows, widths)
    assert table._colWidths == widths
    assert {1} == {
        len(lines_of(cell, widths[1] - 6)) for column, cell in cells_of(table) if column == 1
    }


def test_a_neighbour_gives_of_its_width_before_the_table_is_set_smaller():
    """A roomy column of words makes room for a sum; the table stays as wide as it was."""
    table = rows_table(("what", "sum"), [["Plate of the shell", "98 765 432 EUR"]], (120, 60))

    assert sum(table._colWidths) == pytest.approx(180)
    assert 60 < table._colWidths[1] < 90
    assert {STYLES["cell"].fontSize} == {cell.style.fontSize for _, cell in cells_of(table)[2:]}


def printed(folder, table):
    """The text of each page of a file that holds nothing but a table."""
    SimpleDocTemplate(str(folder / "table.pdf"), pagesize=A4).build([table])
    return [page.extract_text() for page in pypdf.PdfReader(folder / "table.pdf").pages]


def test_a_row_higher_than_a_page_goes_on_between_words(tmp_path):
    """A cell of any length is printed whole, and the end of a page parts no quantity either."""
    sums = [f"item {number} at {grouped(1_000_000 + number)} EUR," for number in range(2_000)]

    pages = printed(tmp_path, rows_table(("",), [[" ".join(sums)]], (120,)))

    assert len(pages) > 10
    assert squeezed("".join(pages)) == squeezed("".join(sums))
    assert all(squeezed(page).endswith("EUR,") or squeezed(page)[-1].isalnum() for page in pages)


def test_a_row_that_fits_a_page_is_not_split(tmp_path):
    """At the end of a page the next row moves to the next page, below the one head of that page."""
    rows = [
        [f"row {number}", f"begin{number} " + "words " * 200 + f"end{number}"]
        for number in range(40)
    ]

    pages = printed(tmp_path, rows_table(("name", "text"), rows, (80, 200)))

    assert len(pages) > 10
    for page in pages:
        assert page.count("name") == 1
        assert re.findall(r"begin(\d+)", page) == re.findall(r"end(\d+)", page)


def test_a_printed_page_shows_every_quantity_whole(tmp_path):
    """Read back from a PDF, each quantity of a narrow table is on one line."""
    table = rows_table(("what", "sum"), [["Sum", token] for token in TOKENS], (40, 62), right=(1,))
    text = "\n".join(printed(tmp_path, table))

    lines = {squeezed(line) for line in text.splitlines()}
    assert [token for token in TOKENS if not any(squeezed(token) in line for line in lines)] == []
