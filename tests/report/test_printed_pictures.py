"""Pictures in the report: no finer than paper shows, and never all in memory at once."""

import tracemalloc

from PIL import Image
from pypdf import PdfReader

from inspector.report.printed_pictures import FINEST, NoPicture, PrintShop, StreamedCanvas


def noise(path, size=(1600, 1200), seed=60):
    Image.effect_noise(size, seed).convert("RGB").save(path, quality=90)
    return path


def test_a_photo_is_printed_with_the_pixels_that_its_place_shows(tmp_path):
    """A large one is made smaller, a small one goes in as it is, and one size is made once."""
    large, small = noise(tmp_path / "a.jpg"), noise(tmp_path / "b.jpg", (120, 90))
    files = {"a" * 64: large, "b" * 64: small}
    folder = tmp_path / "made"
    folder.mkdir()
    shop = PrintShop(files.get, folder)

    printed = shop.picture("a" * 64, 144, 200)
    with Image.open(printed.path) as opened:
        assert (2 * FINEST, round(2 * FINEST * 0.75)) == opened.size
    assert printed.path == shop.picture("a" * 64, 144, 200).path
    assert small == shop.picture("b" * 64, 144, 200).path


def test_what_cannot_be_read_is_a_frame_that_says_so(tmp_path):
    """A missing, a torn and a foreign file never stop the report."""
    torn = noise(tmp_path / "torn.jpg", (200, 150))
    torn.write_bytes(torn.read_bytes()[:3000])
    foreign = tmp_path / "foreign.jpg"
    foreign.write_bytes(b"no picture")
    files = {"t" * 64: torn, "f" * 64: foreign}
    shop = PrintShop(files.get, tmp_path)

    for sha in ("t" * 64, "f" * 64, "m" * 64):
        assert isinstance(shop.picture(sha, 300, 200), NoPicture)


def test_a_report_of_many_photos_is_written_without_holding_them(tmp_path):
    """While the file is written, memory has room for a few pictures and not for all."""
    made = [noise(tmp_path / f"{at}.jpg", seed=40 + at) for at in range(12)]
    out = tmp_path / "out.pdf"
    tracemalloc.start()
    pen = StreamedCanvas(str(out), invariant=1)
    for number, path in enumerate(made):
        pen.picture(path, f"p{number}", 400, 300)
        pen.showPage()
    pen.save()
    peak = tracemalloc.get_traced_memory()[1]
    tracemalloc.stop()

    photos = sum(path.stat().st_size for path in made)
    assert peak < photos / 2
    assert photos < out.stat().st_size < photos * 1.01 + 100_000
    assert len(made) == sum(len(page.images) for page in PdfReader(out).pages)
