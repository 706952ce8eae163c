"""What conversion and comparison of the demo's candidates cost, the first time and after."""

import time
from collections.abc import Callable
from datetime import date
from functools import partial
from pathlib import Path

from inspector import create_app
from inspector.assess.assessment import assess
from inspector.conversion.contents import read_case
from inspector.conversion.power.calculation import calculate
from inspector.demo.portfolio import prepare_in
from inspector.services.data_folder import open_folder
from tests.benchmarks.common import median_of, say

VESSEL = "demo-zellowen-tide"


def conversion(folder: Path) -> None:
    """Print the failure search and the pages, as ratios against one assessment of the vessel."""
    prepare_in(folder / "data")
    data = open_folder(folder / "data")
    inspection = data.inspections.get(VESSEL)
    case = read_case(data.assessment_of(inspection), date(2026, 11, 30))
    recorded, library = case.recorded, data.library_of(inspection)
    assessed, searched = median_of(
        lambda: assess(recorded, library), lambda: calculate(case), rounds=5
    )
    data.close()
    against = "assessing her once"
    say("all single failures of her power plant", searched, against, assessed, "1 x")
    client = create_app(folder / "data", TESTING=True).test_client()
    pages = {
        "the first page of the conversion": (
            f"/inspection/{VESSEL}/conversion",
            "1 s, then 300 ms",
        ),
        "the page of three candidates": ("/compare", "1 s"),
    }
    for name, (address, goal) in pages.items():
        first = _timed(partial(client.get, address))
        say(f"{name}, the first time", first, against, assessed, goal)
        again = _timed(partial(client.get, address))
        say(f"{name}, after", again, against, assessed, goal)


def _timed(act: Callable[[], object]) -> float:
    start = time.perf_counter()
    act()
    return time.perf_counter() - start
