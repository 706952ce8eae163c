"""The demo is complete, judged without a gap, invented throughout, and never written twice."""

import io
import re
from datetime import date

import pytest
from PIL import Image

from inspector import places
from inspector.assess.assessment import assess
from inspector.assess.from_state import read_inspection
from inspector.checklists.loader import read_library
from inspector.conversion.comparison.calculation import candidate, compare
from inspector.conversion.contents import CHAPTERS, TABLES, convert, read_case
from inspector.conversion.ship_kind.existing_items import existing_items
from inspector.conversion.ship_kind.ship_kinds import CARGO, PASSENGER
from inspector.criteria.papers.imo_number import check_digit
from inspector.demo.candidate import table_rows
from inspector.demo.pictures import SCENES, SIZE, picture
from inspector.demo.portfolio import prepare_in
from inspector.demo.prepared import PREPARED
from inspector.demo.rate_book import by_rate
from inspector.demo.scenario import PORTFOLIO, SURVEYORS
from inspector.demo.sheet_lines import sheets_of
from inspector.record import photos
from inspector.record.catalogue import Catalogue
from inspector.record.inspections import Inspections
from inspector.services.priced_lines import line_by_rate
from inspector.values.cell_text import cell_text

DAY = date(2026, 11, 25)
FIRST, SECOND, THIRD = (candidate.id for candidate in PORTFOLIO)
REAL = re.compile(
    r"\b(norway|norwegian|north sea|atlantic|pacific|baltic|denmark|germany|scotland"
    r"|england|ireland|iceland|panama|liberia|bahamas|malta|cyprus|singapore|aberdeen|bergen|hamburg"
    r"|rotterdam|london|arctic|antarctica?|greenland|svalbard)\b",
    re.IGNORECASE,
)


@pytest.fixture(scope="module")
def data(tmp_path_factory):
    folder = tmp_path_factory.mktemp("demo")
    prepare_in(folder)
    return folder


@pytest.fixture(scope="module")
def portfolio(data):
    opened = Inspections(data / "inspections", "demo-laptop")
    yield {name: opened.get(name) for name in opened.ids()}
    opened.close()


@pytest.fixture(scope="module")
def assessed(portfolio):
    return {
        name: assess(
            read_inspection(inspection.state), read_library(inspection.folder / "checklists")
        )
        for name, inspection in portfolio.items()
    }


@pytest.fixture(scope="module")
def converted(portfolio, assessed):
    return {name: convert(assessed[name], DAY) for name in portfolio}


def _results(assessment):
    return [
        result for system in assessment.systems for unit in system.units for result in unit.results
    ]


def test_holds_six_candidates_of_one_brief(data, portfolio):
    """An empty folder gets six inspections of one brief, two surveyors and a computer's name."""
    catalogue = Catalogue(data / "catalogue.json")
    (brief,) = catalogue.all("briefs")
    assert {FIRST, SECOND, THIRD, *(one.id for one in PREPARED)} == set(portfolio)
    assert {field: value for field, value in brief.items() if field != "id"} == portfolio[
        FIRST
    ].state.values("brief")
    assert list(SURVEYORS) == [surveyor["name"] for surveyor in catalogue.all("surveyors")]
    assert "demo-laptop" == catalogue.setting("host")


def test_one_is_walked_whole_one_half_one_barely(assessed):
    """Coverage falls from candidate to candidate as the scenario says."""
    shares = {
        name: [system.whole.condition.coverage for system in assessment.systems]
        for name, assessment in assessed.items()
    }
    assert 0.8 < min(shares[FIRST])
    assert 0.2 < sum(shares[SECOND]) / len(shares[SECOND]) < 0.7
    assert 0.15 > max(shares[THIRD])


@pytest.mark.parametrize("prepared", PREPARED, ids=lambda one: one.layout)
def test_a_prepared_one_is_counted_and_not_walked(portfolio, assessed, prepared):
    """Her units are those of the layout, with state and berth, and nothing is answered."""
    inspection = portfolio[prepared.id]
    layout = read_library(inspection.folder / "checklists").layouts[prepared.layout]
    recorded = read_inspection(inspection.state)
    for system, units in layout.units.items():
        names = [unit.name for unit in recorded.units if unit.system == system]
        assert [unit["name"] for unit in units] == names, system

    assert recorded.inspection["state"]
    assert recorded.inspection["berth"]
    assert {} == recorded.sheets
    assert {0} == {part.whole.condition.seen for part in assessed[prepared.id].systems}
    assert check_digit(prepared.vessel["imo"][:6]) == int(prepared.vessel["imo"][-1])


def test_findings_photos_lines_and_decisions_are_there(portfolio, assessed):
    """Each candidate has findings and photos; the first also priced work, decisions and lives."""
    assert [14, 7, 1] == [len(assessed[name].findings) for name in (FIRST, SECOND, THIRD)]
    assert [15, 6, 2] == [len(assessed[name].photos) for name in (FIRST, SECOND, THIRD)]
    assert 3 == sum(bool(finding.photos) for finding in assessed[FIRST].findings)
    lines = [line for system in assessed[FIRST].systems for line in system.lines]
    assert 22 == len(lines)
    assert 2 == sum(line.likely is None for line in lines)
    assert all(line.low < line.likely < line.high for line in lines if line.likely is not None)
    assert {1, 2, 3} < {line.sequence for line in lines}
    differing = [
        system.whole
        for system in assessed[FIRST].systems
        if system.whole.decision not in ("", system.whole.proposal.verdict)
    ]
    assert differing
    assert all(part.reason for part in differing)
    assert any(system.whole.facts.life_years is not None for system in assessed[FIRST].systems)
    assert [] == photos.verify(portfolio[FIRST].folder)


def test_every_reading_can_be_judged_and_agrees_but_one(assessed):
    """Every reading can be judged, and exactly one rating is the surveyor's own against it."""
    results = [result for assessment in assessed.values() for result in _results(assessment)]
    assert [] == [
        (result.subject, result.cannot_judge) for result in results if result.cannot_judge
    ]
    assert [PORTFOLIO[0].overruled.partition("=")[0]] == [
        result.subject for result in results if result.overruled
    ]
    assert 40 < sum(result.judgement is not None for result in results)


def test_covers_every_system(assessed):
    """All 21 systems have units in every candidate, and each of the first's was walked."""
    systems = set(read_library(places.shipped("checklists")).systems)
    assert 21 == len(systems)
    assert [systems] * 3 == [
        {system.system.id for system in assessed[name].systems} for name in (FIRST, SECOND, THIRD)
    ]
    assert [] == [
        unit.id
        for system in assessed[FIRST].systems
        for unit in system.units
        if not unit.condition.seen and unit.id != "voids"
    ]


def test_every_unit_has_its_kind(portfolio):
    """Where the units of a system differ, each has its kind, so it is asked its own checks."""
    library = read_library(places.shipped("checklists"))
    unlike = [
        (name, subject)
        for name, inspection in portfolio.items()
        for subject in inspection.state.subjects("unit/")
        if library.systems[subject.split("/")[1]].kinds
    ]
    assert unlike
    assert [] == [
        subject for name, subject in unlike if not portfolio[name].state.value(subject, "kind")
    ]


def test_the_conversion_is_answered_for_the_first(converted):
    """Every chapter of the first candidate have an answer, and no particular is faulty."""
    chapters = converted[FIRST]
    assert list(CHAPTERS) == [chapter.id for chapter in chapters]
    assert [] == [
        fault for chapters in converted.values() for chapter in chapters for fault in chapter.faults
    ]
    assert [] == [
        chapter.id
        for chapter in chapters
        if "not known" in cell_text(chapter.answer)
        or "cannot be calculated" in cell_text(chapter.answer)
    ]
    assert all(chapter.figure_tables for chapter in chapters)
    met = {
        requirement.id: requirement.met
        for chapter in chapters
        for requirement in chapter.requirements
    }
    assert met["speed"] is True
    assert met["range"] is True


def test_existing_items_fail_one_kind_of_ship_and_not_another(assessed):
    """Forty persons: more of what was read aboard fails a passenger ship than a cargo ship."""
    found = existing_items(assessed[FIRST], 40)

    assert 5 < len(found.items)
    assert set(found.failing(CARGO)) != set(found.failing(PASSENGER))
    assert found.failing(PASSENGER)


def test_no_particular_is_written_past_its_table(portfolio):
    """Every row belongs to a table that is read, and every value to one of its columns."""
    columns = {table.prefix: {column.name for column in table.columns} for table in TABLES}
    rows = [
        (inspection.state, subject)
        for inspection in portfolio.values()
        for prefix in ("row/", "certificate/")
        for subject in inspection.state.subjects(prefix)
    ]
    assert 90 < len(rows)
    assert [] == [
        subject
        for state, subject in rows
        if set(state.values(subject)) - columns.get(subject[: subject.rindex("/") + 1], set())
    ]


def test_particulars_thin_out(portfolio):
    """Complete for the first candidate, thinner for the second, nearly none for the third."""
    filled = [
        {subject.split("/")[1] for subject in portfolio[name].state.subjects("row/")}
        for name in (FIRST, SECOND, THIRD)
    ]
    kept = [table for table in TABLES if not table.subject and not table.superseded_by]
    assert {table.id for table in kept} == filled[0]
    assert len(filled[0]) > len(filled[1]) > len(filled[2]) == 1


def test_yearly_costs_are_compared(assessed):
    """For two units of the first the proposal compares yearly costs of both ways."""
    compared = [
        unit.id
        for system in assessed[FIRST].systems
        for unit in system.units
        if any("a year over" in reason for reason in unit.proposal.reasons)
    ]
    assert ["bow-2", "plant"] == compared


def test_the_surveyors_own_levels_are_used(assessed):
    """The first candidate's own settings and limits are used, and none of them is refused."""
    first = assessed[FIRST]
    assert 0.06 == first.settings.discount_rate
    assert ["plate-remaining-life", "plate-thickness", "stern-tube-wear"] == list(first.profiles)
    assert all("invented" in limits.source.title for limits in first.profiles.values())
    assert () == first.faults


def test_two_surveyors_are_compared(assessed):
    """Twelve checks were rated by both, nine alike; the three others are named."""
    (found,) = assessed[FIRST].agreements
    assert (12, 9) == (found.count, round(found.same * found.count))
    assert "both rated 12 checks and agree on 9; they differ on 3" in found.sentence
    assert 3 == len(found.differing)
    assert 0.5 < found.kappa < 0.8


def test_the_comparison_ranks_three(portfolio, assessed, converted):
    """The well-kept candidate is first; of the others too little is known for a place."""
    cases = {name: read_case(assessed[name], DAY) for name in portfolio}
    found = compare(
        [candidate(cases[name], name, name, converted[name]) for name in (FIRST, SECOND, THIRD)]
    )
    ranks = {place.name: place.rank for place in found.ranking.places}
    assert {FIRST: 1, SECOND: None, THIRD: None} == ranks
    # One whom nobody looked at stands behind one that was seen and is worn.
    assert [FIRST, SECOND, THIRD] == list(ranks)
    assert [] == [
        warning
        for warning in found.warnings
        if "currenc" in warning or "different briefs" in warning
    ]


def test_rates_price_the_lines_that_name_them(data, portfolio):
    """Every rate says that it is invented, and lines have the amounts the rate page would make."""
    catalogue = Catalogue(data / "catalogue.json")
    rates = {rate["name"]: rate for rate in catalogue.all("rates")}
    assert all("Invented" in rate["source"] for rate in rates.values())
    state = portfolio[FIRST].state
    priced = [
        state.values(subject)
        for subject in state.subjects("scope/")
        if state.value(subject, "rate")
    ]
    assert 6 == len(priced)
    for line in priced:
        (rate,) = [found for name, found in rates.items() if name in line["rate"]]
        made = line_by_rate(catalogue, rate["id"], line["quantity"])
        assert made == {name: line[name] for name in made}


def test_a_note_stays_with_its_unit(portfolio):
    """Notes parted by || go to the units in their order, also where the first unit has none."""
    state = portfolio[FIRST].state
    assert state.value("sheet/hull/shell/cracks", "note") is None
    assert state.value("sheet/hull/decks/cracks", "note").startswith("One at the toe")
    assert [] == [
        entry.value
        for entry in portfolio[FIRST].entries
        if entry.field == "note" and "|" in entry.value
    ]


def test_two_surveyors_disagree_once(portfolio):
    """One field has two heads from two devices; everything else is agreed."""
    (dispute,) = [
        found for inspection in portfolio.values() for found in inspection.state.disputes()
    ]
    subject, field, heads = dispute
    assert (PORTFOLIO[0].disputed.partition("=")[0], "rating") == (subject, field)
    assert 2 == len({entry.device for entry in heads})


def test_names_refer_to_nothing_real(portfolio):
    """No number was ever assigned though its check digit is valid, and no real place is named."""
    for inspection in portfolio.values():
        number = inspection.state.value("vessel", "imo")
        assert "000" == number[:3]
        assert check_digit(number[:6]) == int(number[6])
        assert [] == [entry.value for entry in inspection.entries if REAL.search(str(entry.value))]


def test_a_second_call_changes_nothing(data):
    """A folder that has inspections is left byte for byte as it is."""
    before = {path: path.read_bytes() for path in data.rglob("*") if path.is_file()}
    prepare_in(data)
    assert before == {path: path.read_bytes() for path in data.rglob("*") if path.is_file()}


def test_a_folder_with_an_inspection_gets_no_demo(tmp_path):
    """The demo never mixes with somebody's own inspection."""
    own = Inspections(tmp_path / "inspections", "own")
    own.create(places.shipped("checklists"), inspection_id="mine")
    own.close()
    prepare_in(tmp_path)
    assert ["mine"] == Inspections(tmp_path / "inspections", "own").ids()
    assert not (tmp_path / "catalogue.json").exists()


def test_it_is_the_same_every_time(data, tmp_path):
    """Two demos have the same journals, so they can be compared and merged."""
    prepare_in(tmp_path)
    journals = [path.relative_to(tmp_path) for path in sorted(tmp_path.rglob("*.jsonl"))]
    assert len(PORTFOLIO) + len(PREPARED) == len(journals)
    assert [(data / path).read_bytes() for path in journals] == [
        (tmp_path / path).read_bytes() for path in journals
    ]


def test_pictures_differ_and_have_the_promised_size():
    """Sixteen drawings, none like another, each a whole JPEG of 1600 by 1200."""
    drawn = {name: picture(name, "same title") for name in SCENES}
    assert 16 == len(set(drawn.values()))
    assert {("JPEG", SIZE)} == {
        (image.format, image.size)
        for image in (Image.open(io.BytesIO(data)) for data in drawn.values())
    }


def test_refuses_an_unknown_drawing_and_an_unknown_check():
    """A slip in the scenario is an error, not a gap in the demo."""
    hull = read_library(places.shipped("checklists")).systems["hull"]
    with pytest.raises(KeyError):
        picture("no-such-drawing", "")
    with pytest.raises(ValueError, match="hull has no check keel-colour"):
        list(sheets_of(hull, ["shell"], "keel-colour g"))
    with pytest.raises(ValueError, match="sheet/hull/shell/fenders has no reading colour"):
        list(sheets_of(hull, ["shell"], "fenders g | colour=3"))
    with pytest.raises(ValueError, match="expected one for all, or one for each of 3 units"):
        list(sheets_of(hull, ["shell", "decks", "closing"], "spot-gauging g | measured=9/8"))
    with pytest.raises(ValueError, match="zip"):
        table_rows("tanks", "name capacity", "Fuel 1|85|too many")
    with pytest.raises(KeyError):
        by_rate("1|hull|all|refurbish|Gold leaf||no-such-rate|4")
