"""A laptop is lost in the middle of a shared inspection: backup and phones bring all back."""

import hashlib
import io
import json
import os
import shutil
import tracemalloc
import zipfile

import pytest
from PIL import Image

from inspector import create_app
from inspector.cli.parser import main
from inspector.record import durable, photos
from inspector.services import backup, restore
from inspector.services.backup_contents import CATALOGUE, MANIFEST
from inspector.services.data_folder import open_folder
from inspector.services.import_file import import_file
from inspector.services.inspection_list import ids_put_away, put_away
from inspector.sharing.shared_inspections import Shared

ADDRESS = "192.168.137.1"
OWN_CRITERIA = "checklists/criteria/fin-seals.toml"


def answer(number, value, device="phone-1"):
    """An entry as a phone makes it: one rating of one check."""
    return {
        "id": f"{device}:{number}",
        "at": f"2026-05-02T09:14:{number:02}.512Z",
        "device": device,
        "who": "QX",
        "subject": f"sheet/hull/u1/check-{number}",
        "field": "rating",
        "value": value,
        "replaces": [],
    }


def picture(colour="teal"):
    out = io.BytesIO()
    Image.new("RGB", (320, 240), colour).save(out, "JPEG")
    return out.getvalue()


@pytest.fixture
def new_computer(monkeypatch, tmp_path):
    """Makes a data folder on a computer that never numbered anything."""

    def make(name):
        monkeypatch.setenv("INSPECTOR_NUMBERS", str(tmp_path / f"numbers of {name}"))
        return open_folder(tmp_path / name)

    return make


@pytest.fixture
def old(new_computer):
    """A laptop with two inspections, one put away, a photo, a brief, a price, levels and more."""
    data = new_computer("old")
    one, two = data.begin(), data.begin()
    one.record("QX", [("vessel", "name", "Invented Heron"), ("unit/hull/u1", "name", "Hull")])
    photos.take_in(one.folder, picture())
    two.record("QX", [("vessel", "name", "Invented Egret")])
    put_away(data.catalogue, [two.id])
    data.catalogue.put("briefs", {"id": "b1", "client": "Bay Yachts", "speed": "12"})
    data.catalogue.put("surveyors", {"id": "s1", "name": "Q. Xample"})
    data.catalogue.put("rates", {"id": "r1", "name": "Blasting", "unit": "m²", "likely": "80"})
    data.catalogue.put("devices", {"id": "phone-1", "token": "digest-of-a-secret"})
    data.catalogue.set("levels", {"retain_from": "85"})
    (data.path / OWN_CRITERIA).parent.mkdir(parents=True)
    (data.path / OWN_CRITERIA).write_text("# mine\n", encoding="utf-8")
    yield data
    data.close()


@pytest.fixture
def saved(old, tmp_path):
    """The backup of the laptop."""
    out = tmp_path / "stick" / backup.file_name()
    backup.write(old, out)
    return out


def _names(data):
    return {
        data.inspections.get(each).state.value("vessel", "name") for each in data.inspections.ids()
    }


def test_everything_comes_back_on_a_new_computer(old, saved, new_computer):
    """Inspections with photos, briefs, prices, levels, own criteria, and what was put away."""
    new = new_computer("new")

    restored = restore.restore(new, saved)

    assert (2, 2, []) == (restored.inspections, restored.new_inspections, restored.notes)
    assert {"Invented Heron", "Invented Egret"} == _names(new)
    assert 1 == len(list(new.inspections.folder.glob("*/photos/*.jpg")))
    for table in ("briefs", "surveyors", "rates"):
        assert old.catalogue.all(table) == new.catalogue.all(table)
    assert {"retain_from": "85"} == new.catalogue.setting("levels")
    assert ids_put_away(old.catalogue) == ids_put_away(new.catalogue)
    assert "# mine\n" == (new.path / OWN_CRITERIA).read_text(encoding="utf-8")


def test_the_new_computer_writes_under_a_name_of_its_own(old, saved, new_computer):
    """Never under the old one's, whose laptop may turn up again with numbers of its own."""
    new = new_computer("new")
    restore.restore(new, saved)
    written = set()
    for inspection_id in new.inspections.ids():
        inspection = new.inspections.get(inspection_id)
        written |= {entry.device for entry in inspection.record("QX", [("vessel", "flag", "none")])}
        assert not (inspection.folder / "journal" / f"{old.host}.jsonl").exists()

    assert {new.host} == written
    assert old.host != new.host


def test_no_pass_and_no_key_is_in_it(old, saved):
    """Whoever finds the stick comes in nowhere."""
    (old.path / "secret").write_text("the-key-of-this-computer", encoding="utf-8")
    backup.write(old, saved)
    content = saved.read_bytes()

    assert b"digest-of-a-secret" not in content
    assert b"the-key-of-this-computer" not in content
    with zipfile.ZipFile(saved) as archive:
        settings = json.loads(archive.read(CATALOGUE))["settings"]
    assert ["levels", "put away"] == sorted(each["id"] for each in settings)


def test_a_backup_brought_back_twice_adds_nothing(saved, new_computer):
    """It is a union, as of bundles."""
    new = new_computer("new")
    restore.restore(new, saved)

    again = restore.restore(new, saved)

    assert (2, 0, 0, 0, []) == (
        again.inspections,
        again.new_inspections,
        again.entries,
        again.photos,
        again.notes,
    )
    assert 1 == len(new.catalogue.all("briefs"))


def test_what_is_here_is_never_replaced(old, saved, new_computer):
    """Answers, briefs, prices, settings and files of this computer stay; what differs is said."""
    new = new_computer("new")
    restore.restore(new, saved)
    heron = next(each for each in new.inspections.ids() if each not in ids_put_away(new.catalogue))
    new.inspections.get(heron).record("ZV", [("vessel", "name", "Invented Teal")])
    new.catalogue.put("briefs", {"id": "b1", "client": "Bay Yachts", "speed": "14"})
    new.catalogue.set("levels", {"retain_from": "70"})
    (new.path / OWN_CRITERIA).write_text("# newer\n", encoding="utf-8")

    restored = restore.restore(new, saved)

    assert "Invented Teal" == new.inspections.get(heron).state.value("vessel", "name")
    assert ["14", "12"] == [brief["speed"] for brief in new.catalogue.all("briefs")]
    assert {"retain_from": "70"} == new.catalogue.setting("levels")
    assert "# newer\n" == (new.path / OWN_CRITERIA).read_text(encoding="utf-8")
    assert ["fin-seals.toml", "'levels'"] == [
        next(word for word in ("fin-seals.toml", "'levels'") if word in note)
        for note in restored.notes
    ]


def _cut(content):
    return content[: len(content) // 2]


def _without_its_end(content):
    return content[:-30]


def _flip_in_a_photo(content):
    place = content.index(picture()[100:140])
    return content[:place] + bytes([content[place] ^ 1]) + content[place + 1 :]


def _empty(_):
    return b""


@pytest.mark.parametrize("damage", [_cut, _without_its_end, _flip_in_a_photo, _empty])
def test_a_damaged_backup_is_refused_and_changes_nothing(saved, new_computer, damage):
    """It is checked as a whole before anything is taken over."""
    new = new_computer("new")
    before = (new.path / "catalogue.json").read_bytes()
    saved.write_bytes(damage(saved.read_bytes()))

    with pytest.raises(restore.BackupRefused, match="damaged or was cut short|no backup"):
        restore.restore(new, saved)
    with pytest.raises(restore.InspectorError):
        import_file(new, saved)

    assert [] == new.inspections.ids()
    assert before == (new.path / "catalogue.json").read_bytes()


def _rewritten(path, change):
    """The same backup with other files, packed anew with a list that fits."""
    with zipfile.ZipFile(path) as archive:
        files = {name: archive.read(name) for name in archive.namelist()}
    change(files)
    with zipfile.ZipFile(path, "w") as archive:
        for name, content in files.items():
            archive.writestr(name, content)


@pytest.mark.parametrize(
    ("change", "sentence"),
    [
        (lambda files: files.update({"../outside.toml": b"x"}), "belongs in no backup"),
        (lambda files: files.update({"secret": b"x"}), "belongs in no backup"),
        (lambda files: files.update({"checklists/more.toml": b"x"}), "damaged"),
        (lambda files: files.pop(CATALOGUE), "no backup of this program"),
        (lambda files: files.pop(MANIFEST), "damaged"),
        (lambda files: files.update({MANIFEST: b'{"format": "other"}'}), "not of the kind"),
        (lambda files: files.update({MANIFEST: b"[[["}), "JSON"),
    ],
)
def test_a_file_that_is_no_honest_backup_is_refused(saved, new_computer, change, sentence):
    """One sentence, and nothing is changed."""
    new = new_computer("new")
    _rewritten(saved, change)

    with pytest.raises(restore.InspectorError, match=sentence):
        restore.restore(new, saved)

    assert [] == new.inspections.ids()


def test_one_inspection_that_was_damaged_before_keeps_no_other_back(old, saved, new_computer):
    """It is named, and the others are there."""
    broken = next(iter(ids_put_away(old.catalogue)))
    for path in (old.inspections.folder / broken / "checklists").glob("*.toml"):
        path.unlink()
    count, _, left_out = backup.write(old, saved)
    assert (1, [broken]) == (count, list(left_out))
    new = new_computer("new")

    restored = restore.restore(new, saved)

    assert {"Invented Heron"} == _names(new)
    assert any(broken in note and "not in the backup" in note for note in restored.notes)


def test_a_full_disk_leaves_no_half_backup(old, saved, monkeypatch):
    """The earlier backup is still there, whole."""
    before = saved.read_bytes()

    def refuse(*_):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "fsync", refuse)
    with pytest.raises(durable.NotWritten, match="could not be written"):
        backup.write(old, saved)

    assert before == saved.read_bytes()
    assert [saved] == list(saved.parent.iterdir())


def test_a_backup_is_never_in_memory_as_a_whole(old, new_computer, tmp_path):
    """Sixty photos of half a megabyte pass through a few megabytes, out and in."""
    folder = old.inspections.folder / old.inspections.ids()[0]
    for number in range(60):
        content = picture() + os.urandom(500_000) + bytes([number])
        (folder / "photos" / f"{hashlib.sha256(content).hexdigest()}.jpg").write_bytes(content)
    out, new = tmp_path / "large.zip", new_computer("new")
    tracemalloc.start()
    backup.write(old, out)
    restore.restore(new, out)
    most = tracemalloc.get_traced_memory()[1]
    tracemalloc.stop()

    assert out.stat().st_size > 30_000_000
    assert most < 12_000_000
    assert 61 == len(list(new.inspections.folder.glob("*/photos/*.jpg")))


def test_the_first_page_takes_a_backup_too(saved, new_computer):
    """Whoever brings it in need not know what kind of file it is."""
    brought = import_file(new_computer("new"), saved)

    assert "Brought back: 2 inspections, 2 new here" in brought.sentences[0]


def test_the_folder_is_lost_in_the_middle_of_a_shared_inspection(
    monkeypatch, tmp_path, new_computer
):
    """Nothing is lost that was backed up or is still on the phone, and nothing is there twice."""
    monkeypatch.setenv("INSPECTOR_NUMBERS", str(tmp_path / "numbers of old"))
    first = _Laptop(tmp_path / "old")
    phone = _Phone(first)
    laptop_said = first.inspection.record("QX", [("vessel", "name", "Invented Heron")])
    phone.hand_over([answer(1, "good"), answer(2, "poor")])
    stick = tmp_path / "stick.zip"
    backup.write(first.data, stick)
    phone.hand_over([answer(3, "fair")])
    lost_with_the_laptop = first.inspection.record("QX", [("vessel", "flag", "none")])[0].id
    phone.keep(answer(4, "failed"))
    first.data.close()
    shutil.rmtree(tmp_path / "old")

    monkeypatch.setenv("INSPECTOR_NUMBERS", str(tmp_path / "numbers of new"))
    second = open_folder(tmp_path / "new")
    restore.restore(second, stick)
    import_file(second, phone.saved_file(tmp_path, first.inspection.id))
    found = second.inspections.get(first.inspection.id)

    ids = [entry.id for entry in found.entries]
    of_phone = {f"{phone.device}:{number}" for number in (1, 2, 3, 4)}
    assert of_phone | {entry.id for entry in laptop_said} <= set(ids)
    assert lost_with_the_laptop not in ids
    assert len(ids) == len(set(ids))
    assert {} == found.missing()
    assert second.host == found.record("QX", [("vessel", "flag", "other")])[0].device
    second.close()


class _Laptop:
    """An instance that shares one inspection with phones."""

    def __init__(self, folder):
        shared = Shared(ADDRESS, 5731)
        self.app = create_app(folder, TESTING=True, WTF_CSRF_ENABLED=False, SHARED=shared)
        self.data = self.app.extensions["data_folder"]
        self.inspection = self.data.begin()
        self.app.extensions["sharing"].share(self.inspection.id)


class _Phone:
    """A phone that was let in, and keeps every answer until it is told that it may forget it."""

    def __init__(self, laptop):
        self.laptop, self.kept = laptop, []
        code = laptop.app.extensions["sharing"].pairing.new_code()
        joined = self._ask("/join", {"code": code, "name": "phone"})
        self.token, self.device = joined["token"], joined["device"]

    def _ask(self, path, body):
        head = {"Host": f"{ADDRESS}:5731"}
        if hasattr(self, "token"):
            head["Authorization"] = f"Bearer {self.token}"
        answer = self.laptop.app.test_client().post(
            path, json=body, headers=head, environ_overrides={"REMOTE_ADDR": "192.168.137.50"}
        )
        assert 200 == answer.status_code
        return answer.get_json()

    def hand_over(self, answers):
        """Hand answers over; the walk page keeps them in the browser all the same."""
        own = [self._own(each) for each in answers]
        path = f"/exchange/{self.laptop.inspection.id}/entries"
        outcomes = self._ask(path, {"entries": own})
        assert "refused" not in json.dumps(outcomes)
        self.kept += own

    def keep(self, answer):
        """An answer that was never handed over."""
        self.kept.append(self._own(answer))

    def _own(self, answer):
        number = answer["id"].partition(":")[2]
        return {**answer, "id": f"{self.device}:{number}", "device": self.device}

    def saved_file(self, folder, inspection_id):
        """What the walk page saves of all that it holds."""
        path = folder / "phone.json"
        body = {
            "format": "inspector-waiting",
            "version": 1,
            "inspection": inspection_id,
            "device": self.device,
            "entries": self.kept,
            "photos": [],
        }
        path.write_text(json.dumps(body), encoding="utf-8")
        return path


def test_the_commands_save_and_bring_back(old, tmp_path, monkeypatch, capsys):
    """Both say what was done; the new computer's name is printed."""
    out = tmp_path / "all.zip"
    assert 0 == main(["backup", "--data", str(old.path), "--out", str(out)])
    assert "2 inspections" in (said := capsys.readouterr().out)
    assert "the passes of phones and tablets" in said
    monkeypatch.setenv("INSPECTOR_NUMBERS", str(tmp_path / "numbers of new"))

    assert 0 == main(["restore", "--data", str(tmp_path / "new"), str(out)])

    captured = capsys.readouterr()
    assert "Brought back: 2 inspections, 2 new here" in captured.out
    assert "2 of 2 inspections" in captured.err


def test_the_command_refuses_what_is_no_backup(tmp_path, capsys):
    """With exit code 1 and one sentence."""
    other = tmp_path / "other.zip"
    other.write_bytes(b"not a zip file")

    assert 1 == main(["restore", "--data", str(tmp_path / "new"), str(other)])
    assert 1 == main(["restore", "--data", str(tmp_path / "new"), str(tmp_path / "nothing.zip")])

    lines = capsys.readouterr().err.splitlines()
    assert 2 == len(lines)
    assert all(line.startswith("inspector: ") for line in lines)
