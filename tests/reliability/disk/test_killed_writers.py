"""Programs killed in the middle of writing: afterwards there is the old or the new, never half,
and never less than was acknowledged."""

import json
import os
import random
import subprocess
import sys
import time
from pathlib import Path

import pytest

from inspector.record.catalogue import Catalogue
from inspector.record.journal import read_folder

ROOT = Path(__file__).resolve().parents[3]
KILLS = 30

# Each says on its output what was acknowledged, after it was.
KEEPS_DOCUMENTS = """
import sys
from pathlib import Path
from inspector.record.catalogue import Catalogue
catalogue = Catalogue(Path(sys.argv[1]) / "catalogue.json")
number = int(sys.argv[2])
while True:
    number += 1
    catalogue.put("briefs", {"id": "one", "number": number, "text": str(number) * 150000})
    print(number, flush=True)
"""
KEEPS_ENTRIES = """
import sys
from pathlib import Path
from inspector.record.inspection import Inspection
inspection = Inspection(Path(sys.argv[1]), "laptop")
number = int(sys.argv[2])
while True:
    number += 1
    inspection.record("AB", [("vessel", "particulars", f"{number} " + "x" * 15000)])
    print(number, flush=True)
"""


def killed(program, folder, number, moment):
    """Run `program` until `moment` seconds after its first acknowledgement, kill it, and return
    the last number it acknowledged."""
    process = subprocess.Popen(
        [sys.executable, "-c", program, str(folder), str(number)],
        stdout=subprocess.PIPE,
        cwd=ROOT,
        env={**os.environ, "PYTHONPATH": str(ROOT)},
    )
    with process:
        first = process.stdout.readline()
        time.sleep(moment)
        process.kill()
        lines = (first + process.stdout.read()).split(b"\n")
    # What follows the last newline may be half a number.
    return int(lines[-2])


@pytest.mark.skipif(os.name == "nt", reason="SIGKILL is of POSIX systems")
def test_a_catalogue_killed_while_writing_is_old_or_new(tmp_path):
    """Thirty kills at random moments: the catalogue is whole each time and holds the last
    document acknowledged or the one after it."""
    chance, number = random.Random(20260502), 0
    for _ in range(KILLS):
        number = killed(KEEPS_DOCUMENTS, tmp_path, number, chance.uniform(0, 0.03))
        # The file itself must be whole: that the generation before it would stand in is a second
        # line of defence, not this one.
        assert {"briefs"} == set(json.loads((tmp_path / "catalogue.json").read_bytes()))
        document = Catalogue(tmp_path / "catalogue.json").get("briefs", "one")
        assert document["number"] in (number, number + 1)
        assert str(document["number"]) * 150000 == document["text"]
        number = document["number"]


@pytest.mark.skipif(os.name == "nt", reason="SIGKILL is of POSIX systems")
def test_a_journal_killed_while_writing_keeps_what_was_acknowledged(tmp_path):
    """Ten kills at random moments: every acknowledged entry is there, at most one more a kill,
    and the next program goes on."""
    chance, number = random.Random(7), 0
    for kill in range(1, 11):
        number = killed(KEEPS_ENTRIES, tmp_path, number, chance.uniform(0, 0.03))
        reading = read_folder(tmp_path / "journal")
        numbers = [int(entry.value.split()[0]) for entry in reading.entries.values()]
        assert list(range(1, len(numbers) + 1)) == numbers
        assert numbers[-1] in (number, number + 1)
        assert len(reading.damage) <= kill
        number = numbers[-1]


def test_who_reads_while_the_catalogue_is_written_sees_old_or_new(tmp_path):
    """Half a second of reading as fast as possible beside a writer: the file is whole at every
    look, so a kill at any of those moments leaves it whole."""
    program = [sys.executable, "-c", KEEPS_DOCUMENTS, str(tmp_path), "0"]
    looks = 0
    with subprocess.Popen(
        program, stdout=subprocess.PIPE, cwd=ROOT, env={**os.environ, "PYTHONPATH": str(ROOT)}
    ) as process:
        try:
            process.stdout.readline()
            end = time.monotonic() + 0.5
            while time.monotonic() < end:
                assert (tmp_path / "catalogue.json").read_bytes().endswith(b"}")
                looks += 1
        finally:
            process.kill()
    assert looks > 20
