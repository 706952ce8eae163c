"""A data folder moved or copied between computers, or put back older: never two writers under one
name, and pages and commands say what is gone."""

import shutil

import pytest

from inspector import create_app
from inspector.cli.parser import main
from inspector.services.data_folder import open_folder


@pytest.fixture
def computers(tmp_path, monkeypatch):
    """Opens a data folder on the computer of a name, whose memory of numbers is its own."""
    opened = []

    def on(name, folder="data"):
        monkeypatch.setenv("INSPECTOR_NUMBERS", str(tmp_path / f"numbers-{name}"))
        data = open_folder(tmp_path / folder)
        opened.append(data)
        return data

    yield on
    for data in opened:
        data.close()


def _say(data, value):
    [inspection_id] = data.inspections.ids() or [data.begin().id]
    [entry] = data.inspections.get(inspection_id).record("QX", [("vessel", "name", value)])
    data.close()
    return entry.device


def test_a_folder_keeps_its_name_on_its_computer(computers):
    """Opened again and again, it is written under one name."""
    names = {_say(computers("a"), f"answer {number}") for number in range(3)}
    assert 1 == len(names)


def test_a_copy_on_another_computer_gets_another_name(computers, tmp_path):
    """Both go on, and every answer of both is in the union of the two folders."""
    first = _say(computers("a"), "first")
    shutil.copytree(tmp_path / "data", tmp_path / "copy")
    other = _say(computers("b", "copy"), "second")
    again = _say(computers("a"), "third")
    assert first == again != other
    assert other == _say(computers("b", "copy"), "fourth")


def test_a_folder_that_travels_has_one_name_per_computer(computers):
    """Carried to and fro, it does not get a new name each time."""
    turns = [_say(computers(name), f"{number}") for number, name in enumerate("abab")]
    assert turns[:2] == turns[2:]
    assert turns[0] != turns[1]


def test_a_computer_that_can_remember_nothing_keeps_its_name(computers, tmp_path):
    """A file in the place of the folder of numbers: the name is still one."""
    (tmp_path / "numbers-a").write_bytes(b"")
    assert _say(computers("a"), "first") == _say(computers("a"), "second")


def test_pages_and_verify_say_what_an_older_backup_has_not(computers, tmp_path, capsys):
    """Until it is brought back, `verify` ends with 1 and every page of the inspection says so."""
    name = _say(computers("a"), "first")
    shutil.copytree(tmp_path / "data", tmp_path / "backup")
    for value in ("second", "third"):
        _say(computers("a"), value)
    shutil.rmtree(tmp_path / "data")
    (tmp_path / "backup").rename(tmp_path / "data")
    assert 1 == main(["verify", "--data", str(tmp_path / "data")])
    sentence = f"{name}: this computer wrote entries 2 to 3, which are not here now."
    assert sentence in capsys.readouterr().out
    app = create_app(tmp_path / "data", TESTING=True)
    [inspection_id] = app.extensions["data_folder"].inspections.ids()
    page = app.test_client().get(f"/inspection/{inspection_id}/prepare")
    assert 200 == page.status_code
    assert sentence in page.text
    app.extensions["data_folder"].close()
