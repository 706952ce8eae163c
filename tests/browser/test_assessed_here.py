"""Condition, word, the next looks and a round, calculated on the device by the same modules: the
demo's walked vessel, as the computer has it.
"""

import json
from urllib.parse import urlsplit

import pytest

from inspector import places
from inspector.checklists.loader import read_library
from inspector.demo.portfolio import PORTFOLIO, prepare_in
from inspector.record.entry import to_dict
from inspector.record.inspections import Inspections
from inspector.web.security import POLICY_OF_PYTHON
from tests import a_walk

# Run on both sides; only what is imported from the archive is there on the device.
SUMMARY = """
from inspector.assess.assessment import assess
from inspector.assess.from_state import read_inspection
from inspector.assess.next_look.advice import next_look
from inspector.assess.round.composition import compose_round
from inspector.checklists.library_tables import library_of_tables
from inspector.record.entry import from_dict
from inspector.record.state import State


def summary(entries, tables):
    library = library_of_tables(tables)
    found = assess(read_inspection(State(map(from_dict, entries))), library)
    parts = [part for system in found.systems for part in (system.whole, *system.units)]
    return [[part.id, part.name, repr(part.condition), repr(part.proposal)] for part in parts]
"""
WORKER = f"""
self.onmessage = async ({{ data }}) => {{
  const {{ addresses, entries }} = data;
  try {{
    const folder = new URL(addresses.runtime, self.location.href).href;
    const {{ loadPyodide }} = await import(`${{folder}}pyodide.mjs`);
    const python = await loadPyodide({{ indexURL: folder }});
    const modules = await (await fetch(addresses.modules)).arrayBuffer();
    python.unpackArchive(modules, "zip", {{ extractDir: "/modules" }});
    python.globals.set("entries", entries);
    python.globals.set("tables", await (await fetch(addresses.checklists)).text());
    python.runPython("import sys; sys.path.insert(0, '/modules')");
    python.runPython({json.dumps(SUMMARY)});
    const begun = performance.now();
    const found = python.runPython("import json; json.dumps(summary(json.loads(entries), json.loads(tables)))");
    self.postMessage({{ found, took: performance.now() - begun }});
  }} catch (error) {{
    self.postMessage({{ failed: String(error) }});
  }}
}};
"""
ASK = """([address, entries]) => new Promise((resolve) => {
  const worker = new Worker(address, { type: "module" });
  worker.onmessage = ({ data }) => resolve(data);
  worker.onerror = (event) => resolve({ failed: event.message });
  const addresses = JSON.parse(document.querySelector(".walk").dataset.python);
  worker.postMessage({ addresses, entries });
})"""


@pytest.fixture
def walked(tmp_path):
    """The entries of a vessel that was walked, as a device has them."""
    prepare_in(tmp_path / "demo")
    inspections = Inspections(tmp_path / "demo" / "inspections", "reader")
    entries = [to_dict(entry) for entry in inspections.get(PORTFOLIO[0].id).entries]
    inspections.close()
    return entries


def test_the_demo_is_assessed_on_the_device_as_on_the_computer(walked, phone, served):
    """Every condition and word of a walked vessel, the looks worth 45 minutes and a
    round for two people, to the last digit."""
    phone.set_default_timeout(240_000)
    phone.route(
        "**/worker-of-the-test.js",
        lambda route: route.fulfill(
            body=WORKER,
            content_type="text/javascript",
            headers={"Content-Security-Policy": POLICY_OF_PYTHON},
        ),
    )
    a_walk.begin(phone, served[0])
    worker = urlsplit(served[0])._replace(path="/worker-of-the-test.js").geturl()

    answer = phone.evaluate(ASK, [worker, json.dumps(walked)])

    assert "failed" not in answer, answer
    print(f"assessed on the device in {answer['took'] / 1000:.2f} s")
    there = {}
    exec(SUMMARY, there)
    tables = read_library(places.shipped("checklists")).tables
    expected = there["summary"](walked, json.loads(json.dumps(tables)))
    assert len(expected) > 20
    assert expected == json.loads(answer["found"])
