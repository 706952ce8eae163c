"""Pictures made to cost time or memory are taken or refused soon, and pages answer meanwhile."""

import hashlib
import json
import random
import subprocess
import sys
import threading
import time
import urllib.error
import urllib.request
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import pytest
from PIL import Image

from inspector.record import photos
from tests.a_computer import ROOT, Computer
from tests.reliability import hostile_pictures as make

MOST_CPU, MOST_MEGABYTES = 2, 400
# Takes every picture in, one after the other, and prints the outcome and the CPU time [s] of each,
# then the most memory that the process ever had [MB].
CHILD = """
import json, sys, time
from pathlib import Path
from inspector.record import photos

folder, outcomes = Path(sys.argv[1]), {}
for path in sorted(folder.glob("*.picture")):
    data, before = path.read_bytes(), time.process_time()
    try:
        outcome = photos.take_in(folder, data).kind
    except photos.PhotoRefused as problem:
        outcome = str(problem)
    outcomes[path.stem] = outcome, time.process_time() - before
status = Path("/proc/self/status").read_text()
peak = next(line for line in status.splitlines() if line.startswith("VmHWM"))
print(json.dumps([outcomes, int(peak.split()[1]) / 1000]))
"""


def noise(size, kind="JPEG", mode="RGB", **options):
    """A picture with something to see everywhere, as a photo has."""
    small = Image.effect_noise((size[0] // 8, size[1] // 8), 60)
    picture = small.resize(size).convert(mode)
    out = make.io.BytesIO()
    picture.save(out, kind, **options)
    return out.getvalue()


SCANS = {
    "100 scans": (lambda: make.progressive_jpeg(1000, 1000, 99), "jpeg"),
    "101 scans": (lambda: make.progressive_jpeg(1000, 1000, 100), "of 101 scans; at most 100"),
    "as many blocks as are decoded": (
        lambda: make.progressive_jpeg(6000, 6000, 23, refine=True),
        "jpeg",
    ),
    "173 kB that took 17 s": (
        lambda: make.progressive_jpeg(5000, 5000, 600, refine=True),
        "of 601 scans",
    ),
    "few scans of very many pixels": (
        lambda: make.progressive_jpeg(10_900, 10_900, 3),
        "more blocks than can be decoded",
    ),
    "a single scan of very many pixels": (
        lambda: make.progressive_jpeg(10_900, 10_900, 0),
        "(1 scan) with more blocks than can be decoded",
    ),
    "a single scan of one colour in three": (
        lambda: make.partial_jpeg(10_900, 10_900),
        "(1 scan) with more blocks than can be decoded",
    ),
    "a million segments": (
        lambda: make.jpeg_with(b"\xff\xe5\0\2" * 1_000_000),
        "more than 4000 JPEG segments",
    ),
    "5 MB of fill bytes": (lambda: make.jpeg_with(b"\xff" * 5_000_000), "jpeg"),
    "5 MB of stuffed bytes": (lambda: make.jpeg_with(b"\xff\0" * 2_500_000), "jpeg"),
    "arithmetic": (
        lambda: make.progressive_jpeg(4000, 4000, 5, frame_kind=0xCA),
        "JPEG of a rare kind",
    ),
    "sides": (lambda: make.saved("JPEG", (65_500, 8)), "32000 on a side"),
    "thin": (lambda: make.saved("JPEG", (31_000, 3)), "jpeg"),
    "120 megapixels": (lambda: make.saved("JPEG", (10_900, 10_900), "L"), "jpeg"),
    "tags that fill the memory": (
        lambda: make.jpeg_with(make.segment(0xE1, make.exif_of_many_tags())),
        "jpeg",
    ),
    "tags in a circle": (
        lambda: make.jpeg_with(make.segment(0xE1, make.exif_in_a_circle())),
        "jpeg",
    ),
}
CHUNKS = {
    "119 megapixels of grey": (lambda: make.png(10_900, 10_900, 8, 0), "at most 50 megapixels"),
    "119 megapixels of palette": (lambda: make.png(10_900, 10_900, 1, 3), "at most 50 megapixels"),
    "50 megapixels seen through": (lambda: make.png(7_070, 7_070, 8, 6), "png"),
    "50 megapixels of 16 bits": (lambda: make.png(7_070, 7_070, 16, 6), "less with 16 bits"),
    "49 megapixels of 16-bit grey": (
        lambda: make.png(7_000, 7_000, 16, 0, more=make.png_chunk(b"tRNS", b"\0\1")),
        "png",
    ),
    "a million chunks": (
        lambda: make.png(64, 64, more=make.png_chunk(b"tEXt", b"") * 1_000_000),
        "more than 20000 PNG chunks",
    ),
    "text that unpacks to 200 MB": (
        lambda: make.png(
            64, 64, more=make.png_chunk(b"zTXt", b"a\0\0" + make.packed_zeros(200_000_000))
        ),
        "png",
    ),
    "profile that unpacks to 200 MB": (
        lambda: make.png(
            64, 64, more=make.png_chunk(b"iCCP", b"a\0\0" + make.packed_zeros(200_000_000))
        ),
        None,
    ),
    "tags that fill the memory": (
        lambda: make.png(64, 64, more=make.png_chunk(b"eXIf", make.exif_of_many_tags()[6:])),
        "png",
    ),
    "one column": (lambda: make.png(1, 3_000_000, 8, 0), "32000 on a side"),
}
OTHERS = {
    "webp of 119 megapixels": (lambda: make.webp_claiming(16_383, 7_300), "at most 20 megapixels"),
    "webp of 20 megapixels": (
        lambda: make.saved("WEBP", (5_000, 4_000), "RGBA", lossless=True),
        "webp",
    ),
    "webp of 21 megapixels": (
        lambda: make.saved("WEBP", (16_383, 1_300), lossless=True),
        "at most 20 megapixels",
    ),
    "3 million empty boxes": (lambda: make.heic(make.box(b"free") * 3_000_000), "HEIC"),
    "16 bytes": (lambda: make.box(b"ftyp", b"heic" + bytes(4)), "HEIC"),
    "no picture": (lambda: make.heic(make.box(b"mdat", b"pixels")), "HEIC"),
    "no pixels": (lambda: make.heic(make.heic_items(4032, 3024), make.box(b"mdat")), "HEIC"),
    "heic of 4 million megapixels": (
        lambda: make.heic(make.heic_items(2_000_000, 2_000_000), make.box(b"mdat", b"pixels")),
        "at most 50 megapixels",
    ),
    "plain heic": (
        lambda: make.heic(make.heic_items(4032, 3024), make.box(b"mdat", b"pixels")),
        "heic",
    ),
}
ORDINARY = {
    "12 megapixels": (lambda: noise((4032, 3024), quality=90), "jpeg"),
    "12 megapixels in 10 scans": (
        lambda: noise((4032, 3024), progressive=True, quality=90),
        "jpeg",
    ),
    "48 megapixels": (lambda: noise((8064, 6048)), "jpeg"),
    "48 megapixels in 10 scans": (lambda: noise((8064, 6048), progressive=True), "jpeg"),
    "12 megapixels as PNG": (lambda: noise((4032, 3024), "PNG", "L"), "png"),
    "12 megapixels as WebP": (lambda: noise((4032, 3024), "WEBP", method=0), "webp"),
}
KINDS = {"jpeg", "png", "webp", "heic"}


def outcomes_of(folder, pictures):
    """What a process of its own makes of pictures: outcomes with CPU time, and its peak memory."""
    for name, data in pictures.items():
        (folder / f"{name}.picture").write_bytes(data)
    command = [sys.executable, "-c", CHILD, str(folder)]
    done = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, timeout=300)
    assert 0 == done.returncode, done.stderr
    return json.loads(done.stdout)


@pytest.mark.skipif(not Path("/proc/self/status").exists(), reason="memory is read from /proc")
@pytest.mark.parametrize(
    "corpus", [SCANS, CHUNKS, OTHERS, ORDINARY], ids=["jpeg", "png", "others", "ordinary"]
)
def test_each_picture_is_taken_or_refused_soon_and_in_bounded_memory(tmp_path, corpus):
    """However it was made, a picture costs at most 2 s and 400 MB, and its outcome is the right
    one."""
    pictures = {name: maker() for name, (maker, _) in corpus.items()}
    outcomes, megabytes = outcomes_of(tmp_path, pictures)
    wrong = {
        name: outcomes[name][0]
        for name, (_, expected) in corpus.items()
        if not is_as_expected(outcomes[name][0], expected)
    }
    slow = {name: seconds for name, (_, seconds) in outcomes.items() if seconds > MOST_CPU}
    assert ({}, {}) == (wrong, slow)
    assert megabytes <= MOST_MEGABYTES


def is_as_expected(outcome, expected):
    """A kind that was taken, a part of a refusal, or either where nothing is expected."""
    if expected is None:
        return outcome in KINDS or outcome.endswith(".")
    return outcome == expected if expected in KINDS else expected in outcome


@pytest.mark.skipif(not Path("/proc/self/status").exists(), reason="memory is read from /proc")
def test_pictures_cut_and_altered_at_random_are_taken_or_refused(tmp_path):
    """Wherever a picture is cut, and whichever of its bytes are altered, it is taken or refused
    with a sentence."""
    dice = random.Random(9)
    wholes = [
        noise((1600, 1200)),
        noise((1600, 1200), progressive=True),
        noise((800, 600), "PNG"),
        noise((800, 600), "WEBP"),
        make.png(300, 300, 16, 0, more=make.png_chunk(b"tRNS", b"\0\0")),
        make.heic(make.heic_items(64, 64), make.box(b"mdat", bytes(500))),
    ]
    pictures = {}
    for number in range(240):
        whole = bytearray(dice.choice(wholes))
        if number % 2:
            del whole[dice.randrange(4, len(whole)) :]
        # Headers are hit as often as pixels, which are most of the bytes.
        for reach in (60, 700, len(whole)):
            whole[dice.randrange(min(reach, len(whole)))] = dice.randrange(256)
        pictures[f"{number}"] = bytes(whole)
    outcomes, megabytes = outcomes_of(tmp_path, pictures)
    assert all(is_as_expected(outcome, None) for outcome, _ in outcomes.values())
    assert [] == [name for name, (_, seconds) in outcomes.items() if seconds > MOST_CPU]
    assert megabytes <= MOST_MEGABYTES


@pytest.fixture
def computer(tmp_path):
    """The server as a process of its own, over a data folder with one inspection."""
    from inspector import create_app

    app = create_app(tmp_path / "data", TESTING=True)
    client = app.test_client()
    csrf = client.get("/session").json["csrf"]
    made = client.post("/inspections", headers={"X-CSRFToken": csrf})
    app.extensions["data_folder"].close()
    running = Computer(tmp_path / "data")
    running.inspection = made.headers["Location"].split("/")[2]
    yield running
    running.kill()


def asked(computer, path, data=None, headers=None):
    """Status, headers and body of an answer, and the seconds until it came."""
    opener = urllib.request.build_opener(urllib.request.ProxyHandler({}))
    request = urllib.request.Request(
        computer.address + path,
        data=data,
        method="GET" if data is None else "PUT",
        headers=headers or {},
    )
    before = time.perf_counter()
    try:
        with opener.open(request, timeout=120) as answer:
            found = answer.status, answer.headers, answer.read()
    except urllib.error.HTTPError as problem:
        with problem:
            found = problem.code, problem.headers, problem.read()
    return *found, time.perf_counter() - before


def test_pages_answer_while_photos_are_decoded(computer):
    """Costly pictures and ordinary photos, more than there are threads for them, all come through
    or are refused, and no page waits longer than a second for them."""
    _, headers, body, _ = asked(computer, "/session")
    own_page = {
        "Content-Type": "application/octet-stream",
        "X-CSRFToken": json.loads(body)["csrf"],
        "Cookie": headers["Set-Cookie"].split(";")[0],
    }
    costly = make.progressive_jpeg(6000, 6000, 23, refine=True)
    bomb = make.progressive_jpeg(5000, 5000, 600, refine=True)
    ordinary = noise((8064, 6048), progressive=True)
    # A comment makes each a photo of its own.
    sent = [(costly + bytes([number]), 200) for number in range(2)]
    sent += [(ordinary + bytes([number]), 200) for number in range(7)]
    sent += [(bomb + bytes([number]), 400) for number in range(2)]

    def put(picture):
        sha = hashlib.sha256(picture[0]).hexdigest()
        path = f"/exchange/{computer.inspection}/photo/{sha}"
        status = 503
        while status == 503:
            status, headers, *_ = asked(computer, path, picture[0], own_page)
            time.sleep(float(headers.get("Retry-After", 0)))
        return status

    idle = max(asked(computer, "/")[3] for _ in range(5))
    with ThreadPoolExecutor(len(sent)) as senders:
        answers = senders.map(put, sent)
        pages, finished = [], threading.Event()
        waiter = threading.Thread(target=lambda: (senders.shutdown(), finished.set()))
        waiter.start()
        while not finished.is_set():
            pages.append(asked(computer, "/"))
            time.sleep(0.05)
        waiter.join()
        statuses = list(answers)
    assert [status for _, status in sent] == statuses
    assert {200} == {status for status, *_ in pages}
    assert len(pages) > 3
    # On a busy machine a page takes its time without photos, too.
    assert max(seconds for *_, seconds in pages) < 1 + idle


def test_a_photo_without_a_free_place_is_asked_for_again(ship):
    """With every place taken the answer is 503 with when to come back; then the same photo is
    taken."""
    data = noise((640, 480))
    path = f"/exchange/{ship.id}/photo/{hashlib.sha256(data).hexdigest()}"
    pass_of = {"Authorization": f"Bearer {ship.token}"}
    leave, inside = threading.Event(), threading.Semaphore(0)

    def stay():
        with photos.place_for_request():
            inside.release()
            leave.wait(60)

    guests = [threading.Thread(target=stay) for _ in range(8)]
    for guest in guests:
        guest.start()
        inside.acquire()
    refused = ship.from_network("PUT", path, pass_of, data=data)
    leave.set()
    for guest in guests:
        guest.join()
    assert (503, "5") == (refused.status_code, refused.headers["Retry-After"])
    assert "Try again in 5 seconds; nothing is lost." in refused.json["error"]
    assert 200 == ship.from_network("PUT", path, pass_of, data=data).status_code
