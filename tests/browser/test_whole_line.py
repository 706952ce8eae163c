"""The whole line on a phone: from an empty data folder over the walk to the report, which is
read back."""

import io
import re
import urllib.request

import pytest
from PIL import Image, ImageDraw
from playwright.sync_api import expect
from pypdf import PdfReader

from tests import a_walk

WORDS = ("good", "fair", "poor", "failed")


def picture(path, orientation=None, number=0):
    """A photo with one magenta corner, upright top left whatever its EXIF orientation says."""
    upright = Image.new("RGB", (640, 480), (60, 90 + 8 * number, 100))
    ImageDraw.Draw(upright).rectangle((0, 0, 150, 110), fill=(200, 0, 120))
    turns = {
        2: Image.Transpose.FLIP_LEFT_RIGHT,
        3: Image.Transpose.ROTATE_180,
        4: Image.Transpose.FLIP_TOP_BOTTOM,
        5: Image.Transpose.TRANSPOSE,
        6: Image.Transpose.ROTATE_90,
        7: Image.Transpose.TRANSVERSE,
        8: Image.Transpose.ROTATE_270,
    }
    stored = upright.transpose(turns[orientation]) if orientation in turns else upright
    exif = Image.Exif()
    if orientation:
        exif[0x0112] = orientation
    stored.save(path, exif=exif)
    return str(path)


def is_upright(data: bytes) -> bool:
    image = Image.open(io.BytesIO(data)).convert("RGB")
    red, green, blue = image.getpixel((image.width // 12, image.height // 12))
    return image.width > image.height and red > 150 and green < 80 and blue > 70


@pytest.fixture
def files(tmp_path):
    made = [picture(tmp_path / f"o{n}.jpg", n, n) for n in range(1, 9)]
    made += [picture(tmp_path / f"plain{n}.jpg", None, 10 + n) for n in range(2)] + [
        picture(tmp_path / "one.png", None, 14)
    ]
    damaged = tmp_path / "damaged.jpg"
    damaged.write_bytes((tmp_path / "o1.jpg").read_bytes()[:900])
    return [*made, str(damaged)]


def handed_over(page):
    expect(page.locator("#strip")).to_contain_text("all handed over", timeout=60_000)


def test_from_nothing_to_the_report(phone, served, files):
    """Prepare, count, rate 60 checks in seven systems, read, photograph, find, decide, report:
    the PDF holds it all."""
    address, app = served
    phone.goto(address)
    phone.click("a[href='/brief/new']")
    phone.fill("[name=client]", "Society for Cold Coasts")
    phone.fill("[name=speed]", "11")
    phone.select_option("[name='need/thrusters']", "required")
    phone.click("button:has-text('keep')")
    phone.click("button:has-text('prepare first')")
    inspection = phone.url.split("/")[4]
    phone.click("a[href$='/edit/vessel']")
    phone.fill("[name=name]", "Grey Petrel")
    phone.fill("[name=imo]", "0001236")
    phone.fill("[name=built]", "2008-03-14")
    phone.click("button:has-text('keep')")
    phone.click("#thrusters summary")
    phone.fill("#thrusters [name=add]", "Bow thruster 9")
    phone.click("#thrusters button")
    phone.goto(f"{address}/inspection/{inspection}/walk")
    phone.fill("#who-name", "QX")
    phone.click("#who-keep")
    rated, readings = walk_all(phone)
    photograph(phone, files)
    for number, urgency in enumerate(("danger now", "in the yard"), 1):
        find(phone, f"Finding number {number}", urgency)
    findings_are_here(phone, app, inspection, 2)
    phone.goto(f"{address}/inspection/{inspection}/decide/thrusters")
    phone.fill("aside [name=reason]", "The yard knows these hubs.")
    phone.click("button[name=decision][value=refurbish]")
    phone.goto(f"{address}/inspection/{inspection}/report")
    pdf = urllib.request.urlopen(f"{address}/inspection/{inspection}/report.pdf", timeout=60).read()

    text = " ".join(page.extract_text() for page in PdfReader(io.BytesIO(pdf)).pages)
    flat = "".join(text.split())
    missing = [
        one
        for one in [*readings, "Finding number 1", "Finding number 2", "The yard knows these hubs."]
        if "".join(one.split()) not in flat
    ]
    assert missing == []
    assert [] == [
        (title, rating)
        for title, rating in rated
        if not stands("".join(title.split()), rating, flat)
    ]
    assert_photos_upright(pdf, len(files) - 1)


def stands(title, rating, flat):
    """The word of the rating is at the mark beside the check, whether its unit or its limit stands
    between, or the check is in the list that the rating heads."""
    # No other rating stands between.
    beside = re.escape(title) + r"(?:(?!good|fair|poor|failed).){0,60}" + rating
    in_list = rating.capitalize() + r"[^:]{0,20}:[^:]{0,3000}?" + re.escape(title)
    return re.search(beside, flat) or re.search(in_list, flat)


def walk_all(page):
    """Rate at least nine checks on one sheet of each of the seven systems; returns each title
    with its rating and the readings typed."""
    titles, readings = [], []
    for system in (
        "hull",
        "propulsion",
        "thrusters",
        "switchboards",
        "tanks",
        "reefers",
        "dynamic-positioning",
    ):
        page.click(".walk-nav [data-go=sheets]")
        page.locator(f"[data-sheet^='{system}/']").first.click()
        cards = page.locator("#cards article.check:not([data-enclosed])")
        a_walk.optional(page)
        for index in range(9):
            card = cards.nth(index)
            card.locator(f"button[data-rate={WORDS[index % 4]}]").click()
            titles.append((card.locator("h3").inner_text(), WORDS[index % 4]))
        row = a_walk.row_with(page, "[data-row=number]")
        typed = row.locator("input[data-kind=number]").first
        number = str(11 + len(readings))
        unit = row.locator("select[data-unit-of]").first
        if len(readings) % 2:
            # Every other gauge shows another unit than the one asked for, where it can.
            unit.select_option(index=unit.locator("option").count() - 1)
        typed.fill(number + ",5")
        typed.blur()
        readings.append(number + ",5")
    handed_over(page)
    return titles, readings


def photograph(page, files):
    """Attach every file to one card; the damaged one is told in words and nothing else is held
    up."""
    card = a_walk.unfold(page.locator("#cards article.check:not([data-enclosed])").first)
    card.locator("[data-act=photo]").click()
    card.locator("input[data-photo=choose]").set_input_files(files)
    expect(page.locator("#alarm")).to_contain_text("photo", ignore_case=True, timeout=60_000)


def find(page, title, urgency):
    """Make a finding on the first card of the sheet in sight."""
    card = a_walk.unfold(page.locator("#cards article.check").first)
    card.locator("[data-act=finding]").click()
    page.fill("#finding-title", title)
    page.fill("#finding-text", "Seen on the walk.")
    page.check(f"input[name=urgency][value='{urgency}']")
    page.click("[data-finding-keep]")
    expect(page.locator("#finding-dialog")).not_to_be_visible()


def findings_are_here(page, app, inspection, count):
    """Wait until the computer has as many findings."""
    kept = app.extensions["data_folder"].inspections
    for _ in range(300):
        subjects = {entry.subject for entry in kept.get(inspection).entries}
        if count == sum(subject.startswith("finding/") for subject in subjects):
            return
        page.wait_for_timeout(100)
    pytest.fail(f"{count} findings were not handed over")


def assert_photos_upright(pdf: bytes, count: int):
    """Every photo is in the PDF once at least, and its marked corner is top left."""
    images = {
        image.data
        for page in PdfReader(io.BytesIO(pdf)).pages
        for image in page.images
        if min(image.image.size) > 200
    }
    assert len(images) >= count
    assert all(map(is_upright, images))
