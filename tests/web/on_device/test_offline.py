"""What the service worker keeps, and what the walk page carries."""

import hashlib
import json
import re
from urllib.parse import urljoin

import pytest

from inspector.criteria.safety.gate_air import air_asked


def body(client, path):
    with client.get(path) as answer:
        assert 200 == answer.status_code, path
        return answer.data


def asset_list(client):
    text = client.get("/worker.js").text
    return json.loads(re.search(r"const ASSETS = (.*);", text).group(1)), json.loads(
        re.search(r"const EDITION = (.*);", text).group(1)
    )


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
        for name in re.findall(
            r'(?:from|new URL\()\s*"(\.{1,2}/[a-z0-9_/.]+\.js)"', body(client, path).decode()
        ):
            assert urljoin(path, name) in kept


def test_the_worker_is_never_kept_by_a_cache_on_the_way(client):
    """A stale worker would keep an old edition alive."""
    assert "no-cache" == client.get("/worker.js").headers["Cache-Control"]


@pytest.mark.parametrize(
    "path",
    [
        "000000000000/js/walk/main.js",
        "EDITION/js/join.js",
        "EDITION/js/walk/../light.js",
        "EDITION/fonts/screen/OFL.txt",
    ],
)
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


def test_the_gate_asks_for_the_air_in_the_order_of_testing():
    """Oxygen first, then flammable, toxic, carbon dioxide.

    The figures are those of the criterion.
    """
    asked = air_asked()

    assert ["oxygen", "flammable", "toxic", "carbon_dioxide"] == [one["name"] for one in asked]
    assert [(20.9, 22.0), (None, 1.0), (None, 50.0), (None, 0.5)] == [
        (one["least"], one["below"]) for one in asked
    ]
