"""The reports of the invented portfolio, which use every part of a report at once."""

import re
from datetime import date
from pathlib import Path

import pytest
from pypdf import PdfReader

from inspector.conversion.contents import convert
from inspector.demo.portfolio import prepare_in
from inspector.report.sections.rules_and_sources import cites
from inspector.services.data_folder import open_folder
from inspector.services.files.report_files import make_report

CANDIDATES = ("demo-brannoveth-veil", "demo-ithrenna-lark", "demo-zellowen-tide")
CHECKLISTS = Path(__file__).parents[2] / "checklists"

# What no report prints, and how it is found.
BADLY_SET = {
    "a hyphen for a minus": re.compile(r"(?<![\w./–-])-\d"),
    "an x for a times sign": re.compile(r"(?<=[\d) ]) ?\bx (?=[\d(a-z])"),
    "a caret for a power": re.compile(r"\^"),
    "deg for a degree sign": re.compile(r"\bdeg\b"),
    "a figure that was never formatted": re.compile(r"\b(?:Quantity|Money|Sentence|Span)\("),
}
# Units that a US reader sees converted, behind a number or behind the comma of a heading.
SI_UNIT = (
    "mm|cm|m|m²|m³|km|µm|kg|t|kg/m³|t/m³|t/m²|t/m|kN|kW|MW|kPa|MPa|bar|mbar|°C|K|t·m|t/cm"
    "|kg/nmi|g/kWh|kg/h|l|l/h|l/min|m³/h|m³/day|t/day|mm/s|m/s²"
)
SI_QUANTITY = re.compile(rf"(?<![\w.,])(\d[\d.,]*)\s?({SI_UNIT})(?![\w·/²³°])")
NOTE = re.compile(r"Converted from the units that the values were typed in: [^.]*\.")
SI_HEADING = re.compile(r"\w, (mm|m²|m³|kg|kW|kN|bar|kPa|°C|t·m|t/m²|kg/nmi|t/day)(?=\s)")


@pytest.fixture(scope="module")
def demo(tmp_path_factory):
    """The demo portfolio in a folder of its own."""
    folder = tmp_path_factory.mktemp("demo")
    prepare_in(folder)
    opened = open_folder(folder)
    yield opened
    opened.close()


@pytest.fixture(scope="module")
def texts(demo, tmp_path_factory):
    """The text of each report, with every break made one space."""
    out = tmp_path_factory.mktemp("reports") / "report.pdf"
    found = {}
    for candidate in CANDIDATES:
        for units in ("si", "us"):
            make_report(demo, demo.inspections.get(candidate), out, units=units)
            text = " ".join(page.extract_text() for page in PdfReader(out).pages)
            found[candidate, units] = " ".join(text.split())
    return found


def quantities(text):
    return {(number, unit) for number, unit in SI_QUANTITY.findall(text)}


@pytest.mark.parametrize("units", ["si", "us"])
@pytest.mark.parametrize("candidate", CANDIDATES)
def test_a_demo_report_has_every_system_and_chapter(demo, texts, candidate, units):
    """Nothing that the demo records, own limits included, stops the report."""
    inspection = demo.inspections.get(candidate)
    words = texts[candidate, units]
    assessment = demo.assessment_of(inspection)

    for system in assessment.systems:
        assert system.system.name in words
    for chapter in convert(assessment, date.today()):
        assert not chapter.figures or chapter.title in words
    for limits in assessment.profiles.values():
        assert limits.title.split(",")[0] in words


@pytest.mark.parametrize("units", ["si", "us"])
@pytest.mark.parametrize("candidate", CANDIDATES)
@pytest.mark.parametrize("fault", BADLY_SET)
def test_figures_are_printed_as_a_book_prints_them(texts, candidate, units, fault):
    """Signs of mathematics are the true ones, and degrees have theirs."""
    text = texts[candidate, units]
    found = [text[hit.start() - 40 : hit.end() + 20] for hit in BADLY_SET[fault].finditer(text)]

    assert found == []


@pytest.mark.parametrize("candidate", CANDIDATES)
def test_a_us_report_has_no_si_figure_of_ours(demo, texts, candidate):
    """SI is only where somebody wrote it in words: a surveyor, a checklist or a source."""
    inspection = demo.inspections.get(candidate)
    recorded = [str(entry.value) for entry in inspection.entries]
    sources = [str(source) for _, source in cites(demo.assessment_of(inspection))]
    checklists = [path.read_text(encoding="utf-8") for path in CHECKLISTS.rglob("*.toml")]
    in_words = quantities(" ".join([*recorded, *sources, *checklists]))
    text = NOTE.sub("", texts[candidate, "us"])

    assert quantities(text) - in_words == set()
    assert [text[hit.start() - 30 : hit.end()] for hit in SI_HEADING.finditer(text)] == []
    assert len(quantities(texts[candidate, "si"]) - in_words) > 3


@pytest.mark.parametrize("candidate", CANDIDATES)
def test_a_us_report_names_what_was_typed_once_for_each_table(texts, candidate):
    """No reading has its typed value beside it; its table says which units were typed."""
    text = texts[candidate, "us"]

    assert "(typed" not in text
    assert "Converted from the units that the values were typed in: m and m²." in text
