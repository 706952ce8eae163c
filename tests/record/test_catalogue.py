"""The catalogue keeps the old or the new, and never passes damage off as emptiness."""

import os

import pytest

from inspector.record import durable
from inspector.record.catalogue import Catalogue, CatalogueUnreadable


def test_documents_are_kept_changed_and_removed(tmp_path):
    """What was put is there for the next program that opens the file."""
    path = tmp_path / "data" / "catalogue.json"
    catalogue = Catalogue(path)
    first = catalogue.put("briefs", {"client": "A buyer"})
    catalogue.put("briefs", {"id": "second", "client": "Another"})
    catalogue.put("briefs", {**first, "client": "The buyer"})
    catalogue.remove("briefs", "second")
    catalogue.set("units", "metric")
    again = Catalogue(path)
    assert [{"id": first["id"], "client": "The buyer"}] == again.all("briefs")
    assert ("metric", "none") == (again.setting("units"), again.setting("language", "none"))
    assert again.get("briefs", "second") is None


@pytest.mark.parametrize("damage", [b"", b"{", b'{"briefs": {}}}}', b"\0" * 400, b"[]"])
def test_a_damaged_catalogue_yields_the_one_before(tmp_path, damage):
    """An empty, torn or blanked file is never read as no data."""
    path = tmp_path / "catalogue.json"
    catalogue = Catalogue(path)
    catalogue.put("briefs", {"id": "a"})
    catalogue.put("briefs", {"id": "b"})
    path.write_bytes(damage)
    assert [{"id": "a"}] == Catalogue(path).all("briefs")
    Catalogue(path).put("briefs", {"id": "c"})
    assert [{"id": "a"}, {"id": "c"}] == Catalogue(path).all("briefs")


def test_damage_of_both_generations_is_an_error(tmp_path):
    """Where nothing readable is left, the sentence says what to do."""
    for name in ("catalogue.json", "catalogue.json.earlier"):
        (tmp_path / name).write_bytes(b"{")
    with pytest.raises(CatalogueUnreadable, match="both unreadable"):
        Catalogue(tmp_path / "catalogue.json").all("briefs")


@pytest.mark.parametrize("broken", ["write", "fsync", "replace", "open"])
def test_a_write_that_fails_leaves_the_old(tmp_path, monkeypatch, broken):
    """Whichever step the disk refuses, the old catalogue stands and no half file stays."""
    catalogue = Catalogue(tmp_path / "catalogue.json")
    catalogue.put("briefs", {"id": "a"})

    def refuse(*_, **__):
        raise OSError(28, "No space left on device")

    with monkeypatch.context() as patch:
        patch.setattr(os, broken, refuse)
        with pytest.raises(durable.NotWritten, match="no space left on device"):
            catalogue.put("briefs", {"id": "b"})
    assert [{"id": "a"}] == Catalogue(tmp_path / "catalogue.json").all("briefs")
    assert [] == list(tmp_path.glob(".*"))


def test_an_unknown_table_is_refused(tmp_path):
    """Only the tables of the catalogue are kept."""
    with pytest.raises(ValueError, match="is not a table"):
        Catalogue(tmp_path / "catalogue.json").put("photos", {})
