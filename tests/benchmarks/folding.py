"""What it costs to open an inspection of 50,000 entries: time against parsing the same lines,
memory against the bytes on disk."""

import json
import tracemalloc
from pathlib import Path

from inspector.record.entry import from_dict
from inspector.record.inspection import Inspection
from inspector.record.journal import to_line
from tests.benchmarks.common import Answers, median_of, say

ENTRIES = 50_000


def folded(folder: Path) -> None:
    """An inspection opened cold, each entry replacing the one before it in its field; then the
    memory that it holds."""
    answers = Answers(replacing=True)
    lines = [to_line(from_dict(answers())) for _ in range(ENTRIES)]
    path = folder / "one" / "journal" / "other.jsonl"
    path.parent.mkdir(parents=True)
    path.write_bytes(b"".join(lines))
    parsed, opened = median_of(
        lambda: [json.loads(line) for line in lines],
        lambda: Inspection(folder / "one", "host"),
        rounds=3,
    )
    say(
        f"{ENTRIES} entries opened and folded",
        opened,
        "json.loads of the same lines",
        parsed,
        "2 x",
    )
    tracemalloc.start()
    inspection = Inspection(folder / "one", "host")
    held, most = tracemalloc.get_traced_memory()
    tracemalloc.stop()
    size = path.stat().st_size
    assert ENTRIES == len(inspection.entries)
    print(
        f"memory of {ENTRIES} entries: {held / 1e6:.0f} MB held, {most / 1e6:.0f} MB at most, "
        f"{held / size:.1f} x and {most / size:.1f} x "
        f"the {size / 1e6:.1f} MB on disk; goal 8 x held",
        flush=True,
    )
