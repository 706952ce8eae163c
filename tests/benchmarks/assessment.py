"""What deciding costs: assessment and conversion of 600 checks and 120 work lines with 10,000
draws, and the next look, against plain numpy."""

import datetime
import math
import random
import time
from collections.abc import Callable
from pathlib import Path

import numpy as np

from inspector.assess.assessment import assess
from inspector.assess.from_state import read_inspection
from inspector.assess.next_look.advice import next_look
from inspector.checklists.loader import read_library
from inspector.checklists.model import Library
from inspector.conversion.contents import convert
from inspector.conversion.money.cost_line import CostLine
from inspector.conversion.money.cost_spread import spread
from inspector.record.entry import from_dict
from inspector.record.state import State
from tests.benchmarks.common import say

ROOT = Path(__file__).resolve().parents[2]
CHECKS, LINES, DRAWS = 600, 120, 10_000


def assessment(_folder: Path) -> None:
    """Print the whole of Decide for a large inspection, as figures and as ratios."""
    library = read_library(ROOT / "checklists")
    state = State(map(from_dict, _recorded(library)))
    today = datetime.date(2026, 5, 2)
    lines = _lines()
    plain = _best(lambda: _by_numpy(lines))
    whole = _best(lambda: convert(assess(read_inspection(state), library), today))
    say(
        f"assessment and conversion, {CHECKS} checks, {LINES} lines, {DRAWS} draws",
        whole,
        "the draws alone by plain numpy",
        plain,
        "300 ms",
    )
    assessed = assess(read_inspection(state), library)
    say(
        "next look for two hours",
        _best(lambda: next_look(assessed, 120)),
        "the draws alone by plain numpy",
        plain,
        "200 ms",
    )
    say(
        f"spread of {LINES} lines, {DRAWS} draws",
        _best(lambda: spread(lines, 0.3)),
        "the same by plain numpy",
        plain,
        "none",
    )


def _best(act: Callable[[], object], rounds: int = 7) -> float:
    times = []
    for _ in range(rounds):
        start = time.perf_counter()
        act()
        times.append(time.perf_counter() - start)
    return sorted(times)[len(times) // 2]


def _lines() -> list[CostLine]:
    return [CostLine(f"line {n}", 10.0 + n, 20.0 + 2 * n, 60.0 + 3 * n) for n in range(LINES)]


def _by_numpy(lines: list[CostLine]) -> float:
    """The copula drawn in the plainest way: P80 of the sum."""
    generator = np.random.default_rng(1)
    common, total = generator.standard_normal(DRAWS), np.zeros(DRAWS)
    below = np.vectorize(lambda z: 0.5 * (1 + math.erf(z / math.sqrt(2))), otypes=[float])
    for line in lines:
        share = below(math.sqrt(0.3) * common + math.sqrt(0.7) * generator.standard_normal(DRAWS))
        width, cut = line.high - line.low, (line.likely - line.low) / (line.high - line.low)
        total += np.where(
            share <= cut,
            line.low + np.sqrt(share * width * (line.likely - line.low)),
            line.high - np.sqrt((1 - share) * width * (line.high - line.likely)),
        )
    return float(np.quantile(total, 0.8))


def _recorded(library: Library) -> list[dict]:
    """Entries of an inspection of about CHECKS checks, seven in ten seen, and LINES priced work
    lines."""
    luck, said, count = (
        random.Random(1),
        [("brief", "horizon", "12"), ("brief", "speed", "11"), ("brief", "persons", "14")],
        0,
    )
    for system in library.systems.values():
        for number, name in enumerate(system.units):
            if count >= CHECKS:
                break
            kind = system.unit_kinds.get(name, "")
            said += [
                (f"unit/{system.id}/u{number}", "name", name),
                (f"unit/{system.id}/u{number}", "kind", kind),
            ]
            for check in system.checks_for(kind):
                count += 1
                if luck.random() < 0.7:
                    said.append(
                        (
                            f"sheet/{system.id}/u{number}/{check.id}",
                            "rating",
                            luck.choice(["good", "fair", "poor", "failed"]),
                        )
                    )
    ids = list(library.systems)
    for number, line in enumerate(_lines()):
        costs = {name: str(getattr(line, name)) for name in ("low", "likely", "high")}
        values = {
            "system": ids[number % 8],
            "unit": "all",
            "act": "refurbish",
            "text": line.name,
            **costs,
        }
        said += [(f"scope/l{number}", field, value) for field, value in values.items()]
    return [
        {
            "id": f"bench:{number}",
            "at": "2026-05-02T09:14:07.512Z",
            "device": "bench",
            "who": "QX",
            "subject": subject,
            "field": field,
            "value": value,
            "replaces": [],
        }
        for number, (subject, field, value) in enumerate(said, 1)
    ]
