"""An inspection that began with older checklists opens as before, whatever is shipped now.

The files in tests/checklists/older are those of the first version: no needs, no trials, no layouts.
"""

import re
from pathlib import Path

import pytest

from inspector.checklists.asked import asked_of, minutes_of

OLDER = Path(__file__).parents[1] / "checklists" / "older"
UNIT, SUBJECT = "unit/propulsion/port", "sheet/propulsion/port/load-run"


@pytest.fixture
def older(app):
    """The id of an inspection with two engines, one of them answered, on older checklists."""
    inspection = app.extensions["data_folder"].inspections.create(OLDER, inspection_id="older")
    inspection.record(
        "QX",
        [
            (UNIT, "name", "Port shaft line"),
            ("unit/propulsion/starboard", "name", "Starboard shaft line"),
            (SUBJECT, "rating", "poor"),
            ("sheet/propulsion/port/stern-seals", "rating", "not seen: no access"),
        ],
    )
    return inspection.id


@pytest.mark.parametrize("step", ["prepare", "walk", "decide", "decide/propulsion", "report"])
def test_every_step_opens(client, older, step):
    """Each page of it is there."""
    assert 200 == client.get(f"/inspection/{older}/{step}").status_code


def test_it_is_asked_what_it_was_asked(app, older):
    """Each of the two units has all its 38 checks, and the minutes are their plain sum."""
    data = app.extensions["data_folder"]
    library = data.library_of(data.inspections.get(older))
    system = library.systems["propulsion"]

    asked = asked_of(system, {"port": "", "starboard": ""})

    assert 2 * 38 == len(asked) == 2 * len(system.checks)
    assert sum(one.check.minutes for one in asked) == minutes_of(asked, library.trials)


def test_its_answers_count_as_before(app, older):
    """One of the two answers is a rating, of 38 checks on each unit."""
    data = app.extensions["data_folder"]
    assessment = data.assessment_of(data.inspections.get(older))
    (part,) = [one for one in assessment.systems if one.system.id == "propulsion"]

    assert (1, 76) == (part.whole.condition.seen, part.whole.condition.applicable)


def test_its_page_offers_no_layout_and_counts_by_plus_and_minus(client, older):
    """What older checklists do not know is not offered; a third unit is counted all the same."""
    page = client.get(f"/inspection/{older}/prepare").get_data(as_text=True)
    assert 'name="layout"' not in page

    answer = client.post(
        f"/inspection/{older}/count",
        data={"system": "propulsion", "more": ""},
        follow_redirects=True,
    )
    assert re.search(r"3 × [a-z ]+, \d+ min", answer.get_data(as_text=True))
