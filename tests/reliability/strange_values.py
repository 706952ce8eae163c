"""Every stored field with values nobody expects, then every page, report and table of it:
`python3 -m tests.reliability.strange_values --rounds 500`."""

import argparse
import random
import tempfile
import time
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from inspector import create_app
from inspector.conversion.contents import TABLES
from inspector.demo.portfolio import prepare_in
from inspector.record.entry import Entry, now
from inspector.record.journal import to_line

# Texts that a person or another program may write into any field.
TEXTS = (
    "",
    " ",
    "0",
    "-1",
    "1e999",
    "-0",
    "nan",
    "99999999999999999999",
    "0.0000000001",
    "1,200",
    "1.200",
    "12' 3\"",
    "½",
    "٣",
    "x" * 3000,
    "a\nb\r\nc\x07",
    "<script>alert(1)</script>&{{ 7*7 }}",
    "\u202eright to left \u0627\u0644\u0633\u0641\u064a\u0646\u0629 船 \U0001f6a2",
    "=SUM(A1:A9)",
    "0001-01-01",
    "9999-12-31",
    "2024-02-30",
    "yes",
    "good",
    "not seen: ",
    "no such choice",
    "../../etc",
    "sheet/hull",
)
UNITS = ("", "mm", "furlong", "°C", "MΩ", "%", "kW", "\u202e", "m" * 500)
# One of each kind that JSON has, and what lies deep or is large.
ANY_JSON = (
    0,
    -1,
    7.5,
    10**30,
    True,
    False,
    [],
    ["a", "b"],
    [[[]]],
    {},
    {"value": 5},
    {"value": ["5"], "unit": "mm"},
    {"value": "5", "unit": 3},
    {"value": {"value": "5"}},
    {"permit": True, "entered": []},
    {"a" * 200: {"b": None}},
    {"x": 0.1, "y": [1, {"z": "q"}]},
)
EDITED = ("vessel", "brief", "inspection")


def any_value(chance: random.Random) -> Any:
    """A value of any JSON kind, strange texts twice as often as the others."""
    kind = chance.randrange(4)
    if kind < 2:
        return chance.choice(TEXTS)
    if kind == 2:
        return {"value": chance.choice(TEXTS), "unit": chance.choice(UNITS)}
    return chance.choice(ANY_JSON)


class StrangeVessel:
    """The demo portfolio, into one inspection of which strange values are written."""

    def __init__(self, folder: Path):
        prepare_in(folder)
        self.app = create_app(folder, TESTING=True, WTF_CSRF_ENABLED=False)
        self.client = self.app.test_client()
        self.data = self.app.extensions["data_folder"]
        self.ids = self.data.inspections.ids()

    def fields(self, inspection_id: str) -> list[tuple[str, str]]:
        """Every field that is recorded, and every other one that a form asks for."""
        state = self.data.inspections.get(inspection_id).state
        found = {(one, name) for one in state.subjects() for name in state.fields(one)}
        for table in TABLES:
            for subject in [*state.subjects(table.prefix), f"{table.prefix}r-strange"]:
                found |= {(subject, column.name) for column in table.columns}
        return sorted(found)

    def spoil(self, inspection_id: str, share: float, chance: random.Random) -> list[tuple]:
        """Give a share of the fields strange values, as journals written elsewhere and here
        earlier may hold them; returns what was written."""
        inspection = self.data.inspections.get(inspection_id)
        written = []
        for number, (subject, name) in enumerate(self.fields(inspection_id)):
            if chance.random() < share:
                value = any_value(chance)
                here = number % 2 == 0
                self._append(inspection, here, subject, name, value)
                written.append((subject, name, value))
        inspection.refresh()
        return written

    def _append(self, inspection, here: bool, subject: str, name: str, value: Any) -> None:
        # Written beside the program, since it would refuse half of them.
        device = self.data.host if here else "stranger"
        path = inspection.folder / "journal" / f"{device}.jsonl"
        lines = path.read_bytes().count(b"\n") if path.is_file() else 0
        heads = tuple(head.id for head in inspection.state.heads(subject, name))
        entry = Entry(f"{device}:{lines + 1}", now(), device, "QX", subject, name, value, heads)
        with open(path, "ab") as file:
            file.write(to_line(entry))

    def pages(self, inspection_id: str, chance: random.Random, most: int) -> Iterator[str]:
        """Addresses of every kind of page; of one kind at most `most`, chosen by chance."""
        start = f"/inspection/{inspection_id}"
        state = self.data.inspections.get(inspection_id).state
        library = self.data.library_of(self.data.inspections.get(inspection_id))
        yield from ("/", "/import", "/rates", "/sharing", "/compare", "/compare/ranking")
        yield from (f"{start}{end}" for end in ("", "/prepare", "/walk", "/decide", "/report"))
        yield from (f"{start}{end}" for end in ("/conversion", "/particulars", "/rules"))
        yield from (f"{start}/edit/{subject}" for subject in EDITED)
        inspection = self.data.inspections.get(inspection_id)
        # A system of which nothing is on board has no page, and says so.
        systems = [part.system.id for part in self.data.assessment_of(inspection).systems]
        many = [
            [f"{start}/decide/{system}" for system in systems],
            [f"/compare/checks/{system}" for system in systems],
            [f"{start}/rules/{name}" for name in library.criteria],
            [
                f"{start}/particulars/{table.id}/{subject.rpartition('/')[2]}"
                for table in TABLES
                for subject in state.subjects(table.prefix)
            ],
        ]
        for addresses in many:
            yield from chance.sample(addresses, min(most, len(addresses)))
        yield from (f"/exchange/{inspection_id}/{end}" for end in ("entries", "next?minutes=45"))
        yield from (f"{start}/tables.{ending}" for ending in ("csv", "json", "xlsx"))
        yield f"{start}/bundle.zip"
        paper, units = chance.choice(("a4", "letter")), chance.choice(("si", "us"))
        yield f"{start}/report.pdf?paper={paper}&units={units}"
        yield "/compare/report.pdf"

    def visit(self, address: str) -> int:
        """The status of a page that was asked for and read to its end."""
        with self.client.get(address) as answer:
            answer.get_data()
            return answer.status_code

    def mend(self, inspection_id: str) -> list[int]:
        """The statuses of the forms in which somebody types what is right again."""
        statuses = []
        for subject in EDITED:
            address = f"/inspection/{inspection_id}/edit/{subject}"
            with self.client.post(
                address, data={"title": "Right again", "name": "Right"}
            ) as answer:
                statuses.append(answer.status_code)
        return statuses

    def close(self) -> None:
        """Let go of the files."""
        self.data.close()


def one_round(seed: int, share: float, most: int) -> tuple[int, list[str]]:
    """Spoil one vessel of a fresh portfolio and open its pages.

    Returns how many pages were opened, and a sentence for each that failed.
    """
    chance, faults, opened = random.Random(seed), [], 0
    with tempfile.TemporaryDirectory() as folder:
        vessel = StrangeVessel(Path(folder) / "data")
        try:
            inspection_id = chance.choice(vessel.ids)
            vessel.spoil(inspection_id, share, chance)
            for address in vessel.pages(inspection_id, chance, most):
                opened += 1
                try:
                    status = vessel.visit(address)
                except Exception as problem:  # every fault is to be listed, whatever it is
                    faults.append(f"{address}: {type(problem).__name__}: {problem}")
                    continue
                if status >= 400:
                    faults.append(f"{address}: {status}")
            faults += [
                f"a form: {status}" for status in vessel.mend(inspection_id) if status >= 500
            ]
        finally:
            vessel.close()
    return opened, faults


def main() -> None:
    """Run rounds and print every fault with its seed."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--rounds", type=int, default=50)
    parser.add_argument("--seed", type=int, default=0)
    parser.add_argument("--most", type=int, default=30)
    options = parser.parse_args()
    start, pages, faults = time.monotonic(), 0, 0
    for seed in range(options.seed, options.seed + options.rounds):
        opened, found = one_round(seed, random.Random(seed).choice((0.03, 0.2, 0.7)), options.most)
        pages, faults = pages + opened, faults + len(found)
        for fault in found:
            print(f"seed {seed}: {fault}", flush=True)
    seconds = time.monotonic() - start
    print(f"{options.rounds} rounds, {pages} pages, {faults} faults in {seconds:.0f} s")


if __name__ == "__main__":
    main()
