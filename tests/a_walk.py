"""What the tests do on a walk page, in a surveyor's words."""

import hashlib

from PIL import Image
from playwright.sync_api import Page, expect

# As long as our Python may take to start on a busy machine.
STARTS_MS = 120_000
# Everything this device keeps of entries, straight from its own store.
LOG = """async () => {
  const open = indexedDB.open("inspection-walk");
  const database = await new Promise((done) => { open.onsuccess = () => done(open.result); });
  const rows = database.transaction("entries").objectStore("entries").getAll();
  return new Promise((done) => {
    rows.onsuccess = () => { database.close(); done(rows.result.map((row) => row.entry)); };
  });
}"""


def begin(page: Page, address: str, who: str = "QX") -> str:
    """Begin an inspection on the gangway; returns its id, with the list of sheets in sight."""
    page.goto(address)
    page.click("button:has-text('begin the walk')")
    called(page, who)
    return page.url.split("/")[4].split("#")[0]


def come_aboard(page: Page, address: str, inspection: str, who: str) -> None:
    """Open the walk of an inspection that somebody began."""
    page.goto(f"{address}/inspection/{inspection}/walk")
    called(page, who)


def called(page: Page, who: str) -> None:
    page.fill("#who-name", who)
    page.click("#who-keep")


def sheet(page: Page, system: str = "hull") -> None:
    """Open the first sheet of a system."""
    page.evaluate("() => { location.hash = 'sheets'; }")
    page.locator(f"[data-sheet^='{system}/']").first.click()


def plain_cards(page: Page):
    """The cards in sight that ask for no entry into an enclosed space."""
    return page.locator("#cards article.check:not([data-enclosed])")


def unfold(row):
    """Tap the title of a row where it is folded; returns the row.

    What is optional stands below a heading that is folded at first.
    """
    if not row.is_visible():
        optional(row.page)
    title = row.locator("[data-act=unfold]")
    if title.get_attribute("aria-expanded") == "false":
        title.click()
    return row


def optional(page: Page) -> None:
    """Show what counts only where it is answered."""
    heading = page.locator("[data-fold=optional][aria-expanded=false]")
    if heading.count():
        heading.click()


# The subject of the first row in sight that has a reading of a kind, without an enclosed space.
WITH_READING = """(kind) => {
  for (const row of document.querySelectorAll("#cards article.check:not([data-enclosed])")) {
    if (!row.checkVisibility() || !row.dataset.subject) continue;
    const [, system] = row.dataset.subject.split("/");
    const { content } = document.querySelector(`template[data-system="${system}"]`);
    const source = content.querySelector(`[data-check="${row.dataset.check}"]`);
    if (source.querySelector(kind)) return row.dataset.subject;
  }
  return null;
}"""


def row_with(page: Page, reading: str):
    """The first row with a reading that a selector names, unfolded; None where there is none."""
    subject = page.evaluate(WITH_READING, reading)
    return unfold(page.locator(f"#cards article[data-subject='{subject}']")) if subject else None


def kept_for_good(page: Page) -> None:
    """Wait until the service worker keeps the page and all its assets, as the ready screen
    proves it."""
    page.evaluate("() => { location.hash = 'ready'; }")
    expect(page.locator("#ready li").nth(3)).to_have_attribute(
        "data-ready", "ready", timeout=20_000
    )


def judging_line(page: Page):
    """The line of the ready screen about judging without the computer."""
    page.evaluate("() => { location.hash = 'ready'; }")
    return page.locator("#ready li", has_text="judging without the computer")


def judges_here(page: Page) -> None:
    """Wait until this device judges readings, and keeps all that it needs for it."""
    expect(judging_line(page)).to_have_attribute("data-ready", "ready", timeout=STARTS_MS)


def card(page: Page, system: str, check: str):
    """The card of a check, unfolded, on the first sheet of its system."""
    sheet(page, system)
    return unfold(page.locator(f"#cards article[data-check='{check}']").first)


def fill_readings(card, fields: dict[str, str]) -> None:
    """Type the readings of a card: reading -> text or choice."""
    for name, value in fields.items():
        field = card.locator(f"[data-reading='{name}']")
        if field.evaluate("(field) => field.tagName") == "SELECT":
            field.select_option(value)
        else:
            field.fill(value)
            field.blur()


def handed_over(page: Page) -> None:
    """Wait until the computer has proved that it has everything."""
    expect(page.locator("#strip")).to_contain_text("all handed over", timeout=60_000)


def log_of(page: Page) -> dict[str, dict]:
    """Every entry kept on this device, by id."""
    return {one["id"]: one for one in page.evaluate(LOG)}


def pictures(folder, count: int) -> dict[str, str]:
    """Different photos larger than a small copy may be: SHA-256 -> path."""
    made = {}
    for number in range(count):
        noise = Image.effect_noise((300, 200), 60 + number).resize((2400, 1600))
        path = folder / f"photo{number}.jpg"
        noise.convert("RGB").save(path, quality=90)
        made[hashlib.sha256(path.read_bytes()).hexdigest()] = str(path)
    return made


def load_anew(page: Page) -> None:
    """Load the page again once nothing is on its way, so that no request breaks off."""
    page.wait_for_load_state("networkidle")
    page.reload()
