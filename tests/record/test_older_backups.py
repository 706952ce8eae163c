"""An older backup put back never makes this computer give a number twice."""

import os
import shutil
import time

import pytest

from inspector.places import shipped
from inspector.record.bundles import bundle
from inspector.record.inspections import Inspections
from inspector.record.own_numbers import EVERY, NumbersGiven, new_name
from tests.reliability.faults import failing


class Computer:
    """A laptop's inspections, with its memory of numbers outside of them."""

    def __init__(self, folder, host="laptop"):
        self.folder, self.host = folder, host
        self.start()

    def start(self):
        data, numbers = self.folder / "data", self.folder / "numbers"
        self.inspections = Inspections(data, self.host, numbers)

    def one(self):
        return self.inspections.get("one")

    def say(self, *values):
        """Answer the same field again and again."""
        for value in values:
            # No two answers within one millisecond.
            time.sleep(0.002)
            self.one().record("QX", [("vessel", "name", value)])

    def back_up(self):
        shutil.copytree(self.folder / "data", self.folder / "backup")

    def put_back(self):
        """The program is stopped, its data folder replaced by the backup, and started again."""
        self.inspections.close()
        shutil.rmtree(self.folder / "data")
        shutil.copytree(self.folder / "backup", self.folder / "data")
        self.start()

    def export(self):
        path = self.folder / "out.zip"
        bundle.write(self.folder / "data" / "one", path)
        return path

    def bring(self, path):
        told, refused = [], []
        found = bundle.take_in(
            path, self.folder / "data", self.host, self.inspections.paused, refused, told
        )
        return found, told, refused

    def known(self):
        return {entry.id: entry.value for entry in self.one().entries}


@pytest.fixture
def two(tmp_path):
    """A laptop with two answers and a backup of then, four more answers, and another laptop."""
    one, other = Computer(tmp_path / "laptop"), Computer(tmp_path / "other", "other")
    one.inspections.create(shipped("checklists"), "one")
    one.say("first", "second")
    one.back_up()
    one.say("third", "fourth")
    yield one, other
    one.inspections.close()
    other.inspections.close()


def test_after_an_older_backup_the_next_answer_gets_a_new_name(two):
    """Nobody else knows the lost numbers, and still none of them is given again."""
    one, _ = two
    one.put_back()
    one.say("fifth")
    [(entry_id, _)] = [pair for pair in one.known().items() if pair[1] == "fifth"]
    assert entry_id.startswith("laptop-")
    assert entry_id.endswith(":1")
    assert one.one().host == entry_id.partition(":")[0]
    assert (one.folder / "data" / "one" / "journal" / f"{one.one().host}.jsonl").is_file()


def test_both_laptops_end_equal_with_every_answer(two):
    """What the other laptop had kept returns beside what was answered after the backup."""
    one, other = two
    other.bring(one.export())
    one.put_back()
    one.say("fifth")
    before = one.known()
    found, told, refused = one.bring(other.export())
    assert (("one", 2, 0), [], []) == (found, told, refused)
    other.bring(one.export())
    assert one.known() == other.known()
    assert {**before, "laptop:3": "third", "laptop:4": "fourth"} == one.known()


def test_the_import_that_shows_it_says_so(two):
    """Without a memory of numbers, the other laptop's bundle is what shows an older backup."""
    one, other = two
    other.bring(one.export())
    one.put_back()
    shutil.rmtree(one.folder / "numbers")
    one.start()
    found, told, _ = one.bring(other.export())
    assert ("one", 2, 0) == found
    [sentence] = told
    assert f"It writes under the name {one.one().host} from now on" in sentence
    one.say("fifth")
    other.bring(one.export())
    assert one.known() == other.known()
    assert 5 == len(one.known())


def test_what_was_numbered_twice_is_kept_aside_and_named_by_the_import(two):
    """Memory and folder both went back: both laptops say which answer they did not take."""
    one, other = two
    other.bring(one.export())
    one.put_back()
    shutil.rmtree(one.folder / "numbers")
    one.start()
    one.say("another third")
    _, told, refused = one.bring(other.export())
    assert 1 == len(told)
    assert "another entry with the id laptop:3" in refused[0]
    assert ["third"] == [row["entry"]["value"] for row in one.one().refused()]
    one.say("after")
    assert "laptop" != one.one().host
    _, _, refused = other.bring(one.export())
    assert "another entry with the id laptop:3" in refused[0]
    # The other laptop noted that "after" was said in sight of another content than its own.
    assert {"other"} == {name.partition(":")[0] for name in other.known().keys() - one.known()}
    one.bring(other.export())
    assert set(one.known()) == set(other.known())


def test_once_taken_in_both_contents_of_a_number_are_shown_on_both_laptops(two):
    """Under new numbers, with their authors and times; settled on one, it is settled on both."""
    one, other = two
    other.bring(one.export())
    one.put_back()
    shutil.rmtree(one.folder / "numbers")
    one.start()
    one.say("another third")
    one.bring(other.export())
    assert 1 == one.one().take_in_kept_aside()
    other.bring(one.export())
    assert [] == one.one().refused() == other.one().refused()
    heads = [each.one().state.heads("vessel", "name") for each in two]
    assert heads[0] == heads[1]
    assert {"third", "another third", "fourth"} == {each.value for each in heads[0]}
    one.one().record("QX", [("vessel", "name", "Grey Heron")], settles=True)
    other.bring(one.export())
    assert ["Grey Heron"] == [each.value for each in other.one().state.heads("vessel", "name")]


def test_a_name_is_begun_once(two):
    """After the restart the computer goes on under its newest name."""
    one, _ = two
    one.put_back()
    one.say("fifth")
    name = one.one().host
    one.inspections.close()
    one.start()
    one.say("sixth")
    assert (name, "sixth") == (one.one().host, one.known()[f"{name}:2"])


def test_a_backup_of_the_last_moment_keeps_the_name(two):
    """Nothing was written after it, so nothing can be given twice."""
    one, _ = two
    shutil.rmtree(one.folder / "backup")
    one.back_up()
    one.put_back()
    one.say("fifth")
    assert "fifth" == one.known()["laptop:5"]


def test_two_copies_of_a_data_folder_write_under_two_names(two):
    """Used by turns, each goes on under its own name, without a new one each time."""
    one, _ = two
    one.say("fifth")
    names = []
    for turn in range(4):
        swap = one.folder / "swap"
        one.inspections.close()
        (one.folder / "data").rename(swap)
        (one.folder / "backup").rename(one.folder / "data")
        swap.rename(one.folder / "backup")
        one.start()
        one.say(f"turn {turn}")
        names.append(one.one().host)
    assert names[0] == names[2]
    assert names[1] == names[3] == "laptop"
    assert names[0] != names[1]


def test_a_removed_and_returned_inspection_is_written_into_a_new_file(two):
    """The bundle is older than what was written here, so the own file is not begun again."""
    one, other = two
    shutil.rmtree(one.folder / "backup")
    path = one.folder / "older.zip"
    shutil.copy(one.export(), path)
    one.say("fifth")
    one.inspections.close()
    shutil.rmtree(one.folder / "data" / "one")
    one.start()
    found, told, _ = one.bring(path)
    assert ("one", 4, 0) == found
    assert 1 == len(told)
    assert not (one.folder / "data" / "one" / "journal" / "laptop.jsonl").exists()
    one.say("sixth")
    assert one.one().host != "laptop"


def test_a_damaged_count_begins_a_new_name(two):
    """What cannot be read may be any number."""
    one, _ = two
    one.inspections.close()
    (one.folder / "numbers" / "one" / "laptop").write_bytes(b"\x00\x00")
    one.start()
    one.say("fifth")
    assert "laptop" != one.one().host


def test_where_nothing_can_be_remembered_answers_are_still_kept(two, monkeypatch):
    """A folder of numbers that takes nothing costs no answer."""
    one, _ = two
    one.inspections.close()
    shutil.rmtree(one.folder / "numbers")
    (one.folder / "numbers").write_bytes(b"a file in its place")
    one.start()
    one.say("fifth")
    assert "fifth" == one.known()["laptop:5"]
    (one.folder / "numbers").unlink()


def test_a_count_is_read_as_it_was_written(tmp_path):
    """Names come the one used last first; a count only counts under its own name."""
    given = NumbersGiven(tmp_path / "one")
    assert ([], 0) == (given.names(), given.highest("laptop"))
    for number, name in enumerate(("laptop", "laptop-123456"), 7):
        given.remember(name, number)
        os.utime(tmp_path / "one" / name, (number, number))
    assert ["laptop-123456", "laptop"] == given.names()
    assert (7, 8, 0) == tuple(map(given.highest, ("laptop", "laptop-123456", "other")))
    (tmp_path / "one" / "laptop").write_bytes(b"seven")
    assert EVERY == given.highest("laptop")


@pytest.mark.parametrize("name", ["laptop", "laptop-ab12", "laptop-ab12-0f0f0f", "a" * 40])
def test_a_new_name_is_one_that_a_device_may_have(name):
    """It keeps the beginning, and does not grow from one time to the next."""
    first = new_name(name)
    assert name[:6] == first[:6]
    assert len(first) <= 40
    assert len(new_name(first)) == len(first)
    assert new_name(name) != first


def test_half_a_count_is_no_count(tmp_path):
    """A full disk may leave its first half, which would read as a number that is too low."""
    given = NumbersGiven(tmp_path)
    given.remember("laptop", 123)
    whole = (tmp_path / "laptop").read_bytes()
    for length in range(len(whole)):
        (tmp_path / "laptop").write_bytes(whole[:length])
        assert EVERY == given.highest("laptop")


def test_a_count_that_the_disk_did_not_take_is_written_with_the_next_act(two):
    """Else the own journal, removed after that, would begin its numbers again."""
    one, _ = two
    with failing(3):
        one.say("fifth")
    assert 4 == NumbersGiven(one.folder / "numbers" / "one").highest("laptop")
    one.one().take_in([])
    assert 5 == NumbersGiven(one.folder / "numbers" / "one").highest("laptop")
