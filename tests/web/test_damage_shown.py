"""An inspection with a damaged journal line says so on each of its pages, with what to do."""

import pytest

PAGES = ("prepare", "walk", "decide", "conversion", "report", "particulars", "")


@pytest.mark.parametrize("page", PAGES)
def test_every_page_names_the_damage_and_what_to_do(app, client, begun, page):
    """A flipped bit in the last line is named by file and line, and a whole record is not."""
    address = f"/inspection/{begun}/{page}".rstrip("/")
    assert "Damaged:" not in client.get(address, follow_redirects=True).text
    data = app.extensions["data_folder"]
    path = data.inspections.folder / begun / "journal" / f"{data.host}.jsonl"
    damaged = bytearray(path.read_bytes())
    damaged[-20] ^= 1
    data.inspections.forget(begun)
    path.write_bytes(damaged)

    line = len(damaged.splitlines())
    shown = client.get(address, follow_redirects=True)

    assert 200 == shown.status_code
    assert f"Damaged: {path.name}, line {line}: its checksum" in shown.text
    assert "bring in the latest bundle" in shown.text
