"""Chapters are calculated once until more is recorded, and only those that are asked for."""

import pytest

from inspector.conversion import contents
from inspector.services.conversion.conversion_chapters import chapter_shelf
from inspector.services.data_folder import open_folder


@pytest.fixture
def folder(tmp_path):
    data = open_folder(tmp_path)
    yield data
    data.close()


@pytest.fixture
def written(monkeypatch):
    """The ids of the chapters that were calculated, in their order."""
    made = []

    def noted(chapter_id, name, write):
        def write_noted(case):
            made.append(chapter_id)
            return write(case)

        return name, write_noted

    noted_chapters = {key: noted(key, *entry) for key, entry in contents.CHAPTERS.items()}
    monkeypatch.setattr(contents, "CHAPTERS", noted_chapters)
    return made


def test_a_page_of_one_chapter_calculates_no_other(folder, written):
    """And a second look at it calculates nothing."""
    inspection = folder.begin()
    chapter_shelf(folder, inspection).chapter("space")
    chapter_shelf(folder, inspection).chapter("space")

    assert ["space"] == written


def test_all_chapters_reuse_what_was_calculated(folder, written):
    """The first page after a chapter's page calculates the rest."""
    inspection = folder.begin()
    chapter_shelf(folder, inspection).chapter("money")
    shown = chapter_shelf(folder, inspection).chapters()

    assert tuple(contents.CHAPTERS) == tuple(chapter.id for chapter in shown)
    assert sorted(contents.CHAPTERS) == sorted(written)


def test_whatever_is_recorded_makes_them_anew(folder):
    """A speed in the brief is in the next answer."""
    inspection = folder.begin()
    before = chapter_shelf(folder, inspection).chapter("range").requirements
    inspection.record("QX", [("brief", "endurance", "45")])
    after = chapter_shelf(folder, inspection).chapter("range").requirements

    assert () == before
    assert ["endurance"] == [requirement.id for requirement in after]
