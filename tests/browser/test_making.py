"""A report in the making says so, can be stopped, and is there to save when it is done."""

from playwright.sync_api import expect


def test_a_report_is_made_in_sight_and_can_be_stopped(phone, served):
    """Stopped: told in words. Done: a link that saves a PDF under its name."""
    address, app = served
    phone.goto(address)
    phone.click("button:has-text('prepare first')")
    phone.goto(phone.url.split("?")[0].replace("/prepare", "/report"))
    phone.route("**/report.pdf*", lambda route: None)
    phone.click("button:has-text('make the report')")
    expect(phone.locator("#making")).to_contain_text("Making the report")
    phone.click("#making button")
    expect(phone.locator("#making")).to_contain_text("Stopped. Nothing was changed.")

    phone.unroute("**/report.pdf*")
    phone.click("button:has-text('make the report')")
    link = phone.locator("#making a")
    expect(link).to_be_visible(timeout=60_000)
    with phone.expect_download() as saved:
        link.click()
    assert saved.value.suggested_filename.startswith("condition-report-")
    with open(saved.value.path(), "rb") as file:
        assert file.read(5) == b"%PDF-"
