"""What the service worker is told to keep, and the bands that the walk page carries."""

import hashlib
import json
import re

import pytest

from inspector import places
from inspector.checklists import Check, Reading, read_library
from inspector.quantities import WrongUnit, convert, exact_factors
from inspector.web.ladders import air_asked, ladder_data, ladders_of


def body(client, path):
    with client.get(path) as answer:
        assert 200 == answer.status_code, path
        return answer.data


def asset_list(client):
    text = client.get("/worker.js").text
    return json.loads(re.search(r"const ASSETS = (.*);", text).group(1)), json.loads(re.search(r"const EDITION = (.*);", text).group(1))


def test_every_asset_is_served_as_its_digest_says(client):
    """The worker keeps a file only where its bytes have the digest named, so each one must."""
    assets, _ = asset_list(client)

    served = [[path, hashlib.sha256(body(client, path)).hexdigest()] for path, _ in assets]

    assert assets == served
    assert len(assets) > 30


def test_every_module_that_the_walk_imports_is_among_the_assets(client):
    """A module that is missing offline would break the whole page."""
    assets, edition = asset_list(client)
    kept = {path for path, _ in assets}
    for path in [one for one in kept if one.startswith(f"/shipped/{edition}/js/")]:
        for name in re.findall(r'(?:from|new URL\()\s*"\./([a-z0-9_]+\.js)"', body(client, path).decode()):
            assert f"/shipped/{edition}/js/walk/{name}" in kept


def test_the_worker_is_never_kept_by_a_cache_on_the_way(client):
    """A stale worker would keep an old edition alive."""
    assert "no-cache" == client.get("/worker.js").headers["Cache-Control"]


@pytest.mark.parametrize("path", ["000000000000/js/walk/main.js", "EDITION/js/join.js", "EDITION/js/walk/../light.js", "EDITION/fonts/screen/OFL.txt"])
def test_a_file_of_another_edition_or_room_is_not_served_there(client, path):
    """Under an edition's address only the walk's own files of this very edition are found."""
    _, edition = asset_list(client)

    assert 404 == client.get(f"/shipped/{path.replace('EDITION', edition)}").status_code


def test_the_walk_page_names_itself_and_its_edition(client, begun):
    """By these headers a worker knows the page from a network's sign-in page."""
    answer = client.get(f"/inspection/{begun}/walk")
    _, edition = asset_list(client)

    assert [begun, edition] == [answer.headers["X-Walk"], answer.headers["X-Edition"]]
    assert f'src="/shipped/{edition}/js/walk/main.js"' in answer.text


def test_a_check_with_bands_carries_unit_factors_range_and_source():
    """The page needs all of it to judge alone."""
    library = read_library(places.shipped("checklists"))
    found = ladders_of(list(library.systems.values()))

    data = found["switchboards/harmonics"]

    assert {"unit", "steps", "input", "factors", "low", "high", "title", "source"} == set(data)
    assert ["1/1", "0/1"] == data["factors"]["%"]
    assert ["1/10000", "0/1"] == data["factors"]["ppm"]
    assert data["steps"][-1][0] is None
    assert "IACS" in data["source"]


OTHER = (Reading("other", "Other", unit="%"),)


@pytest.mark.parametrize("change", [{"criterion": ""}, {"taken": {"distortion": "vessel.name"}, "readings": ()}, {"readings": OTHER}])
def test_a_check_without_one_deciding_reading_carries_no_bands(change):
    """Where no criterion is named or its number is not typed on the card, the server judges alone."""
    plain = {"id": "a", "title": "A", "ask": "", "look": "", "bad": "", "space": "s", "minutes": 1.0, "weight": 1.0, "criterion": "harmonic-distortion",
             "readings": (Reading("distortion", "Distortion", unit="%"),)}

    assert ladder_data(Check(**plain)) is not None
    assert ladder_data(Check(**{**plain, **change})) is None


def test_the_gate_asks_for_the_air_in_the_order_of_testing():
    """Oxygen first, then flammable, toxic, carbon dioxide; the figures are those of the criterion."""
    asked = air_asked()

    assert ["oxygen", "flammable", "toxic", "carbon_dioxide"] == [one["name"] for one in asked]
    assert [(20.9, 22.0), (None, 1.0), (None, 50.0), (None, 0.5)] == [(one["least"], one["below"]) for one in asked]


@pytest.mark.parametrize(("unit", "to"), [("in", "mm"), ("°F", "°C"), ("°C", "°F"), ("psi", "bar"), ("ppm", "%"), ("kΩ", "MΩ")])
def test_exact_factors_convert_as_convert_does(unit, to):
    """Value x factor + offset, rounded once, is what convert gives."""
    factor, offset = exact_factors(unit, to)

    assert [convert(value, unit, to) for value in (-40, 0, 1, 3.7, 212)] == [
        float(factor * (int(value * 10)) / 10 + offset) for value in (-40, 0, 1, 3.7, 212)]


def test_unlike_units_have_no_factor():
    """A length never becomes a temperature."""
    with pytest.raises(WrongUnit):
        exact_factors("mm", "°C")
