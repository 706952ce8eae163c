"""`python3 -m tests.benchmarks`: prints what things cost, as ratios against a baseline measured
in the same run. Asserts nothing."""

import gzip
import hashlib
import io
import os
import random
import subprocess
import sys
import tempfile
from collections.abc import Callable
from pathlib import Path

from PIL import Image

from inspector import create_app
from inspector.record import photos
from inspector.record.entry import from_dict
from inspector.record.inspection import Inspection
from inspector.record.journal import Journal
from tests.benchmarks.assessment import assessment
from tests.benchmarks.below_deck import below_deck
from tests.benchmarks.common import Answers, median_of, say
from tests.benchmarks.conversion import conversion
from tests.benchmarks.first_firm import first_firm
from tests.benchmarks.folding import folded
from tests.benchmarks.handing_over import handed_over
from tests.benchmarks.rounds import rounds
from tests.benchmarks.shelf import listed
from tests.benchmarks.visits import visits

ROOT = Path(__file__).resolve().parents[2]


def journal(folder: Path) -> None:
    """One durable entry against one fsynced append of 200 bytes; then the same in an inspection
    of 100 and of 20,000 entries."""
    raw = os.open(folder / "raw", os.O_WRONLY | os.O_CREAT | os.O_APPEND)
    answers, ours = Answers(), Journal(folder / "j" / "ours.jsonl")
    bare, kept = median_of(
        lambda: (os.write(raw, b"x" * 200), os.fsync(raw)),
        lambda: ours.append([from_dict(answers())]),
        rounds=600,
    )
    say("an entry in the journal", kept, "one fsynced append", bare, "2 x")
    inspections = [filled(folder, "small", 100), filled(folder, "large", 20_000)]
    small, large = median_of(*map(taking, inspections), rounds=600)
    say("an entry at 20,000 entries", large, "at 100", small, "1.3 x")


def taking(inspection: Inspection) -> Callable[[], object]:
    answers = Answers("new")
    return lambda: inspection.take_in([answers()])


def filled(folder: Path, name: str, count: int) -> Inspection:
    (folder / name).mkdir()
    inspection, answers = Inspection(folder / name, "host"), Answers("old")
    inspection.take_in([answers() for _ in range(count)])
    return inspection


def web(folder: Path) -> None:
    """An answer posted and durable, and the walk page of some 600 checks, against an empty
    request."""
    app = create_app(folder / "data", TESTING=True, WTF_CSRF_ENABLED=False)
    app.add_url_rule("/empty", view_func=lambda: "")
    client, answers = app.test_client(), Answers()
    inspection = client.post("/inspections", data={"go": "walk"}).headers["Location"].split("/")[2]
    raw = os.open(folder / "raw", os.O_WRONLY | os.O_CREAT | os.O_APPEND)
    empty, posted, bare = median_of(
        lambda: client.get("/empty"),
        lambda: client.post(f"/exchange/{inspection}/entries", json={"entries": [answers()]}),
        lambda: (os.write(raw, b"x" * 200), os.fsync(raw)),
        rounds=600,
    )
    say("an answer posted and durable", posted, "an empty request", empty, "2 x")
    # Nobody can answer faster than that: a request has to come and go, and the disk has to take it.
    floor = "an empty request and one fsynced append"
    say("an answer posted and durable", posted, floor, empty + bare, "none: the honest floor")
    [walk] = median_of(lambda: client.get(f"/inspection/{inspection}/walk"), rounds=20)
    page = client.get(f"/inspection/{inspection}/walk").data
    say("the walk page rendered", walk, "an empty request", empty, "at most 60 ms")
    print(
        f"the walk page: {len(page) / 1000:.0f} kB, "
        f"{len(gzip.compress(page)) / 1000:.0f} kB compressed; goal 60 kB"
    )


def photo(folder: Path) -> None:
    """Taking a 12 megapixel photo in, against half-scale decode, encode and digest of the same
    bytes."""
    (folder / "photos").mkdir()
    source = Image.effect_noise((4032, 3024), 40).convert("RGB")
    buffer = io.BytesIO()
    source.save(buffer, "JPEG", quality=88)
    data = buffer.getvalue()

    def floor() -> None:
        image = Image.open(io.BytesIO(data))
        image.draft("RGB", (2016, 1512))
        image.load()
        image.save(io.BytesIO(), "JPEG", quality=82)
        hashlib.sha256(data).digest()

    bare, taken = median_of(
        floor, lambda: photos.take_in(folder, data + random.randbytes(4)), rounds=7
    )
    say("a photo taken in", taken, "half-scale decode, encode, digest", bare, "2 x")


def report(folder: Path) -> None:
    """A report of 200 photographs against the floor of embedding them alone."""
    from reportlab import rl_config
    from reportlab.pdfgen.canvas import Canvas

    from inspector.assess.model import Assessment
    from inspector.assess.registers import Photo
    from inspector.report.condition_report import build

    rl_config.useA85 = 0
    files = {hashlib.sha256(bytes([n])).hexdigest(): folder / f"{n}.jpg" for n in range(200)}
    for n, path in enumerate(files.values()):
        Image.effect_noise((1600, 1200), 30 + n % 20).convert("RGB").save(path, quality=80)
    shown = Assessment(photos=tuple(Photo(n, sha, f"Photo {n}") for n, sha in enumerate(files, 1)))

    def floor() -> None:
        canvas = Canvas(str(folder / "floor.pdf"))
        for path in files.values():
            canvas.drawImage(str(path), 0, 0, 400, 300)
            canvas.showPage()
        canvas.save()

    def ours() -> None:
        build(
            shown,
            folder / "ours.pdf",
            photo_file=files.get,
            cautions={},
            made_at="2026-01-01",
            revision="1",
            digest="0" * 64,
        )

    bare, made = median_of(floor, ours, rounds=5)
    say("a report of 200 photographs", made, "embedding them alone", bare, "4 x")


def start(folder: Path) -> None:
    """From the command to the first page, against importing the five packages."""
    bare_code = "import flask, flask_wtf, PIL.Image, reportlab.platypus, tinydb"
    page_code = (
        "from pathlib import Path; from inspector import create_app; "
        f"create_app(Path({str(folder / 'start')!r})).test_client().get('/')"
    )
    bare, page = median_of(
        *(
            lambda code=code: subprocess.run([sys.executable, "-c", code], cwd=ROOT, check=True)
            for code in (bare_code, page_code)
        ),
        rounds=5,
    )
    say("start to first page", page, "bare import of five packages", bare, "2 x")


if __name__ == "__main__":
    for measure in (
        journal,
        web,
        photo,
        report,
        start,
        assessment,
        conversion,
        handed_over,
        folded,
        listed,
        visits,
        rounds,
        first_firm,
        below_deck,
    ):
        with tempfile.TemporaryDirectory() as folder:
            measure(Path(folder))
