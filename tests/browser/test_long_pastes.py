"""A long text pasted on the walk: what fits is pasted whole, what does not is refused with a
sentence and changes nothing."""

from playwright.sync_api import expect

from tests import a_walk

PASTE = """(field, text) => {
  field.focus();
  const data = new DataTransfer();
  data.setData("text/plain", text);
  return field.dispatchEvent(new ClipboardEvent("paste", { clipboardData: data, bubbles: true, cancelable: true }));
}"""


def test_a_pasted_note_is_never_cut(phone, computer):
    """A text with the line ends of another system counts each as one character."""
    a_walk.begin(phone, computer.address)
    a_walk.sheet(phone)
    card = a_walk.unfold(a_walk.plain_cards(phone).first)
    card.locator("[data-act=note]").click()
    note = card.locator("[data-note]")
    note.fill("Wet.")
    fits = ("a" * 38 + "\r\n") * 102  # 3978 characters with line ends of one

    assert note.evaluate(PASTE, fits)
    assert not note.evaluate(PASTE, fits + "b" * 30)
    expect(phone.locator("#alarm")).to_contain_text(
        "would have 4012 characters; at most 4000 can be kept here"
    )
    expect(note).to_have_value("Wet.")
