"""Python for the walk page: addresses that name their content, types, policy, and who gets it."""

import gzip
import hashlib
import json
import re

import pytest

from inspector.services import browser_python


def named_by_worker(client):
    """Address -> SHA-256 of what the service worker keeps of Python."""
    text = client.get("/worker.js").text
    return dict(json.loads(re.search(r"const PYTHON = (.*);", text).group(1)))


def named_by_page(client, inspection):
    """What the walk page hands to its worker."""
    page = client.get(f"/inspection/{inspection}/walk").text
    return json.loads(re.search(r"data-python='([^']*)'", page).group(1))


def test_each_part_is_served_as_its_digest_says_and_kept_for_good(client):
    """The service worker refuses anything else."""
    parts = named_by_worker(client)

    assert len(browser_python.runtime()) + 1 == len(parts)
    for path, digest in parts.items():
        with client.get(path) as answer:
            assert digest == hashlib.sha256(answer.data).hexdigest()
            assert "immutable" in answer.headers["Cache-Control"]


def test_the_page_names_the_parts_that_the_worker_keeps(client, begun):
    """A page must never run another Python than the one that is kept for it."""
    page, parts = named_by_page(client, begun), named_by_worker(client)

    assert page["modules"] in parts
    assert f"{page['runtime']}pyodide.asm.wasm" in parts


@pytest.mark.parametrize(
    ("name", "kind"),
    [
        ("pyodide.asm.wasm", "application/wasm"),
        ("pyodide.mjs", "text/javascript; charset=utf-8"),
        ("python_stdlib.zip", "application/zip"),
        ("pyodide-lock.json", "application/json"),
    ],
)
def test_each_file_of_the_runtime_has_the_type_that_browsers_ask_for(client, begun, name, kind):
    """A browser compiles nothing and imports nothing of another type."""
    with client.get(named_by_page(client, begun)["runtime"] + name) as answer:
        assert kind == answer.headers["Content-Type"]


def test_the_runtime_travels_compressed(client, begun):
    """Ten megabytes become less than four, and are the same bytes again."""
    path = f"{named_by_page(client, begun)['runtime']}pyodide.asm.wasm"
    with client.get(path, headers={"Accept-Encoding": "gzip"}) as answer:
        assert "gzip" == answer.headers["Content-Encoding"]
        assert len(answer.data) < 4_000_000
        found = hashlib.sha256(gzip.decompress(answer.data)).hexdigest()

    assert named_by_worker(client)[path] == found


def test_the_checklists_of_an_inspection_are_served_by_their_digest(client, begun):
    """The device makes its library of the same tables as the computer."""
    path = named_by_page(client, begun)["checklists"]
    with client.get(path) as answer:
        data = answer.data

    assert path.endswith(f"/{begun}/{hashlib.sha256(data).hexdigest()}.json")
    assert {"hull.toml", "spaces.toml"} <= set(json.loads(data))


@pytest.mark.parametrize(
    "path",
    [
        "/shipped/python/000000000000/pyodide.mjs",
        "/shipped/python/RUNTIME/README.md",
        "/shipped/python/RUNTIME/SHA256SUMS",
        f"/shipped/modules/{'0' * 64}.zip",
        f"/shipped/checklists/BEGUN/{'0' * 64}.json",
    ],
)
def test_another_content_is_not_served_under_an_address(client, begun, path):
    """What is not there any more is refused, and never replaced by what is there now."""
    named = path.replace("RUNTIME", browser_python.runtime_digest()).replace("BEGUN", begun)

    assert 404 == client.get(named).status_code


def test_only_the_worker_that_runs_python_may_compile(client, begun):
    """The page, and every other script, keeps the strict policy."""
    page = client.get(f"/inspection/{begun}/walk")
    folder = re.search(r"/shipped/[0-9a-f]{12}/js/walk/", page.text).group()
    worker = client.get(f"{folder}python/python_worker.js")
    others = [page, client.get(f"{folder}python/python.js"), client.get("/worker.js")]

    assert "script-src 'self' 'wasm-unsafe-eval';" in worker.headers["Content-Security-Policy"]
    assert [] == [one for one in others if "unsafe-eval" in one.headers["Content-Security-Policy"]]
