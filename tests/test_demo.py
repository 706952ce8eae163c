"""The invented portfolio: complete, judged without a gap, named after nothing that exists, and never written twice."""

import io
import re

import pytest
from PIL import Image

from inspector import places
from inspector.assess.assessment import assess
from inspector.checklists import read_library
from inspector.criteria.identity import check_digit
from inspector.demo.pictures import SCENES, SIZE, picture
from inspector.demo.portfolio import prepare_in
from inspector.demo.scenario import PORTFOLIO, SURVEYORS
from inspector.demo.sheets import sheets_of
from inspector.record import photos
from inspector.record.catalogue import Catalogue
from inspector.record.store import Inspections

FIRST, SECOND, THIRD = (candidate.id for candidate in PORTFOLIO)
REAL = re.compile(r"\b(norway|norwegian|north sea|atlantic|pacific|baltic|denmark|germany|scotland|england|ireland|iceland|panama|liberia|bahamas|malta|"
                  r"cyprus|singapore|aberdeen|bergen|hamburg|rotterdam|london|arctic|antarctica?|greenland|svalbard)\b", re.IGNORECASE)


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
    return {name: assess(one.state, read_library(one.folder / "checklists")) for name, one in portfolio.items()}


def _results(assessment):
    return [result for system in assessment.systems for unit in system.units for result in unit.results]


def test_holds_three_candidates_of_one_brief(data, portfolio):
    """An empty folder gets three inspections, one brief that each of them carries, two surveyors and the computer's name."""
    catalogue = Catalogue(data / "catalogue.json")
    (brief,) = catalogue.all("briefs")
    assert {FIRST, SECOND, THIRD} == set(portfolio)
    assert {field: value for field, value in brief.items() if field != "id"} == portfolio[FIRST].state.values("brief")
    assert list(SURVEYORS) == [one["name"] for one in catalogue.all("surveyors")]
    assert "demo-laptop" == catalogue.setting("host")


def test_one_is_walked_whole_one_half_one_barely(assessed):
    """Coverage falls from candidate to candidate as the scenario says."""
    shares = {name: [system.whole.condition.coverage for system in one.systems] for name, one in assessed.items()}
    assert 0.8 < min(shares[FIRST])
    assert 0.2 < sum(shares[SECOND]) / len(shares[SECOND]) < 0.7
    assert 0.15 > max(shares[THIRD])


def test_findings_photos_lines_and_decisions_are_there(portfolio, assessed):
    """Each candidate has its findings and photos; the first also work lines with three sums, decisions and remaining lives."""
    assert [9, 4, 1] == [len(assessed[name].findings) for name in (FIRST, SECOND, THIRD)]
    assert [10, 4, 2] == [len(assessed[name].photos) for name in (FIRST, SECOND, THIRD)]
    lines = [line for system in assessed[FIRST].systems for line in system.lines]
    assert lines
    assert all(line.low < line.likely < line.high for line in lines)
    differing = [system.whole for system in assessed[FIRST].systems if system.whole.decision not in ("", system.whole.proposal.verdict)]
    assert differing
    assert all(part.reason for part in differing)
    assert any(system.whole.facts.life_years is not None for system in assessed[FIRST].systems)
    assert [] == photos.verify(portfolio[FIRST].folder)


def test_every_reading_can_be_judged_and_agrees_but_one(assessed):
    """No reading of the demo is beyond its criterion, and exactly one rating is the surveyor's own against the judgement."""
    results = [result for one in assessed.values() for result in _results(one)]
    assert [] == [(one.subject, one.cannot_judge) for one in results if one.cannot_judge]
    assert [PORTFOLIO[0].overruled.partition("=")[0]] == [one.subject for one in results if one.overruled]
    assert 40 < sum(one.judgement is not None for one in results)


def test_two_surveyors_disagree_once(portfolio):
    """One field has two heads from two devices; everything else is agreed."""
    (dispute,) = [one for inspection in portfolio.values() for one in inspection.state.disputes()]
    subject, field, heads = dispute
    assert (PORTFOLIO[0].disputed.partition("=")[0], "rating") == (subject, field)
    assert 2 == len({entry.device for entry in heads})


def test_names_refer_to_nothing_real(portfolio):
    """Numbers lie below any that is given out yet have a valid check digit, and no text names a real place."""
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
    """Two demos hold the same journals, so they can be compared and merged."""
    prepare_in(tmp_path)
    journals = [path.relative_to(tmp_path) for path in sorted(tmp_path.rglob("*.jsonl"))]
    assert 3 == len(journals)
    assert [(data / path).read_bytes() for path in journals] == [(tmp_path / path).read_bytes() for path in journals]


def test_pictures_differ_and_have_the_promised_size():
    """Sixteen drawings, none like another, each a whole JPEG of 1600 by 1200."""
    drawn = {name: picture(name, "same title") for name in SCENES}
    assert 16 == len(set(drawn.values()))
    assert {("JPEG", SIZE)} == {(image.format, image.size) for image in (Image.open(io.BytesIO(data)) for data in drawn.values())}


def test_refuses_an_unknown_drawing_and_an_unknown_check():
    """A slip in the scenario is an error, not a gap in the demo."""
    hull = read_library(places.shipped("checklists")).systems["hull"]
    with pytest.raises(KeyError):
        picture("no-such-drawing", "")
    with pytest.raises(ValueError, match="hull has no check keel-colour"):
        list(sheets_of(hull, ["shell"], "keel-colour g"))
