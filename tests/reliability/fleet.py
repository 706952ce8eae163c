"""Devices after the protocol, and laptops with the real record on disk; what is true of them
stands in truth.py."""

import os
import shutil
from collections.abc import Collection, Iterable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from inspector.record.bundles import bundle
from inspector.record.entry import Entry, from_dict, to_dict
from inspector.record.inspections import Inspections
from inspector.record.journal import read_folder, to_line
from inspector.record.state import snapshot
from tests.reliability.truth import World, by_field, disputes_of, folded, heads_of, void_claims

ID = "one"
BATCH = 3
KEPT_BACKUPS = 3


class Device:
    """A phone: numbers from 1 without holes, an outbox, and all that it was told. What it says
    is kept before it is shown, so nothing here is ever lost."""

    def __init__(self, world: World, name: str):
        self.world, self.name, self.number = world, name, 0
        # Every name it had, with how many entries were made under it.
        self.names: dict[str, int] = {}
        self.known: dict[str, dict] = {}
        self.own: dict[str, dict] = {}
        self.outbox: list[str] = []
        self.epoch, self.position = "", 0
        self.talks_to: Laptop | None = None

    def record(self, place: tuple[str, str], value: Any, forged: Iterable[str] = ()) -> None:
        """Answer one field; what stands in it already alone makes no entry. It may claim to
        replace entries that do not exist yet."""
        said = by_field(self.known.values()).get(place, [])
        standing = heads_of(said, void_claims(self.known.values()))
        if len(standing) == 1 and standing[0]["value"] == value:
            return
        self.number += 1
        self.names[self.name] = self.number
        entry = {
            "id": f"{self.name}:{self.number}",
            "at": self.world.now(),
            "device": self.name,
            "who": self.name,
            "subject": place[0],
            "field": place[1],
            "value": value,
            "replaces": [*(one["id"] for one in standing), *forged],
        }
        self.world.write(entry, frozenset(one["id"] for one in said))
        self.known[entry["id"]] = self.own[entry["id"]] = entry
        self.outbox.append(entry["id"])
        # Kept on the device before the tick is shown, so it counts from now on.
        self.world.acknowledged.add(entry["id"])

    def join_anew(self, name: str) -> None:
        """It was taken out of the list and joined again: another name, numbers from 1."""
        self.name, self.number = name, 0

    def forge(self, place: tuple[str, str], value: Any, laptop: "Laptop", other: "Device") -> None:
        """An answer that claims to replace the next ones of this device, of the laptop and of
        another device."""
        laptop.take_in([], ())
        host = laptop.host
        known = [entry.number for entry in laptop.inspection().entries if entry.device == host]
        last = max(known, default=0)
        ids = [f"{host}:{last + ahead}" for ahead in (1, 2, 4)]
        ids += [f"{self.name}:{self.number + ahead}" for ahead in (2, 3)]
        if other is not self:
            ids += [f"{other.name}:{other.number + ahead}" for ahead in (1, 2)]
        before = self.number
        self.record(place, value, ids)
        if self.number > before:
            self.send(laptop, [f"{self.name}:{self.number}"])

    def reload(self) -> None:
        """The page is opened anew: the position in the laptop's list is forgotten, what was
        stored is not."""
        self.epoch, self.position = "", 0

    def _turn_to(self, laptop: "Laptop") -> None:
        # Another laptop is another address, so another page.
        if self.talks_to is not laptop:
            self.reload()
            self.talks_to = laptop

    def send(self, laptop: "Laptop", ids: list[str], reply_lost: bool = False) -> None:
        """One batch; where the reply is lost, the device cannot know what became of it."""
        self._turn_to(laptop)
        # Also before it has recorded anything under its name of now.
        fates = laptop.take_in([self.own[one] for one in ids], {self.name, *self.names})
        if not reply_lost:
            self.outbox = [one for one in self.outbox if one not in fates]

    def fetch(self, laptop: "Laptop") -> None:
        """What is new since the last time; where everything came (another epoch), what was
        handed over once and is not in it goes again."""
        anew, came = self.fetch_only(laptop)
        if anew:
            self._again(one for one in self.own if one not in came)
        self.epoch, self.position = (
            laptop.inspection().epoch,
            len(came) + (0 if anew else self.position),
        )

    def fetch_only(self, laptop: "Laptop") -> tuple[bool, set[str]]:
        """The page is closed as soon as it has stored what came; returns whether that was
        everything, and the ids."""
        self._turn_to(laptop)
        one = laptop.inspection()
        anew = self.epoch != one.epoch
        found = [to_dict(entry) for entry in one.since(0 if anew else self.position)]
        self.known.update((entry["id"], entry) for entry in found)
        return anew, {entry["id"] for entry in found}

    def hand_over(self, laptop: "Laptop") -> None:
        """The whole honest protocol: send what waits, fetch, send what was lost there, fill the
        holes that are named."""
        self._empty_outbox(laptop)
        self.fetch(laptop)
        self._empty_outbox(laptop)
        missing = laptop.inspection().missing()
        for name in self.names:
            ids = [f"{name}:{number}" for number in missing.get(name, [])]
            # Beyond its own count somebody else used its name.
            self._again(one for one in ids if one in self.own)
        self._empty_outbox(laptop)
        there = laptop.inspection().complete_up_to()
        assert self.names == {name: there.get(name, 0) for name in self.names}

    def _again(self, ids: Iterable[str]) -> None:
        self.outbox += [one for one in ids if one not in self.outbox]

    def _empty_outbox(self, laptop: "Laptop") -> None:
        while self.outbox:
            self.send(laptop, self.outbox[:BATCH])


@dataclass(frozen=True)
class Stick:
    """A bundle and the entries that it holds for certain."""

    path: Path
    holds: frozenset[str]


class Laptop:
    """The real record of one inspection in a folder of its own.

    `must` is what it has acknowledged or shown, which may never be gone again; `unsure` what came
    with a bundle that the disk did not take as a whole.
    """

    def __init__(self, world: World, folder: Path, host: str):
        self.world, self.folder, self.first_name = world, folder, host
        self.numbers = folder.with_name(f"numbers-{host}")
        self.backups: list[Path] = []
        # Whoever carries its files has seen an older state of them come.
        self.was_older = False
        self.must: set[str] = set()
        self.unsure: set[str] = set()
        self.form: dict[tuple[str, str], list[str]] | None = None
        self.form_saw: frozenset[str] = frozenset()
        self._start()

    def _start(self) -> None:
        self.inspections = Inspections(self.folder, self.first_name, self.numbers)
        self._checked, self._all = 0, {}

    def inspection(self):
        """The inspection as a page of the server gets it."""
        return self.inspections.get(ID)

    @property
    def host(self) -> str:
        """The name under which it writes now."""
        return self.inspection().host

    @property
    def own_files(self) -> list[Path]:
        """The journal files that this laptop writes or once wrote."""
        return sorted(self.journals.glob(f"{self.first_name}*.jsonl"))

    @property
    def journals(self) -> Path:
        return self.folder / ID / "journal"

    def known(self) -> dict[str, dict]:
        """Everything this laptop has, by id; what is new to the world is told to it."""
        entries = self.inspection().entries
        for entry in entries[self._checked :]:
            self._learn(entry)
        self._checked = len(entries)
        return self._all

    def _learn(self, entry: Entry) -> None:
        data = to_dict(entry)
        # A laptop's entry is met first where it is read first: what was written but not
        # acknowledged may have been carried away already.
        if entry.id not in self.world.entries:
            self.world.write(data, self.world.attempts[entry.at])
        assert self.world.entries[entry.id] == data
        assert entry.id not in self._all
        self._all[entry.id] = data

    def record(self, changes: list[tuple[str, str, Any]], from_form: bool = False) -> None:
        """Record answers here; from a form that was opened earlier, they replace only what that
        showed."""
        first, form, saw = len(self.world.issued), self.form if from_form else None, self.form_saw
        try:
            said = self.inspection().record(
                self.first_name,
                changes,
                (lambda subject, name: form.get((subject, name), [])) if form is not None else None,
            )
            self.must |= {entry.id for entry in said}
            self.world.acknowledged |= {entry.id for entry in said}
        finally:
            issued = set(self.world.issued[first:])
            # Not `known`: what was written in this call can be told to the world only once its
            # attempt is on the list.
            if form is None:
                saw = frozenset(
                    entry.id
                    for entry in self.inspections._open[ID].entries
                    if entry.at not in issued
                )
            self.world.attempts.update((at, saw) for at in issued)

    def open_form(self) -> None:
        """A form is shown; it carries the heads in sight."""
        known = self.known()
        self.form = {
            place: [one["id"] for one in heads_of(said)]
            for place, said in by_field(known.values()).items()
        }
        self.form_saw = frozenset(known)

    def take_in(self, batch: list[dict], names: Collection[str]) -> dict[str, str]:
        """A batch over the network; every honest entry is stored or was had already."""
        self._count_as_seen(batch)
        fates = self.inspection().take_in(batch, only=names).outcomes
        assert set(fates) == {entry["id"] for entry in batch}
        assert set(fates.values()) <= {"stored", "already had"}, fates
        self.must |= set(fates)
        return fates

    def _count_as_seen(self, batch: list[dict]) -> None:
        """Whatever is here when an entry is handed over, its author may well have seen, also one
        who named it before it was there and whose first hand-over is lost."""
        known = self.known()
        here = {*known, *(entry["id"] for entry in batch)}
        for entry in batch:
            if entry["id"] not in known:
                self.world.count_as_seen(entry, here)

    def kill(self) -> None:
        """The process ends at once; files stay as the system has them."""
        self.inspections.close()
        self.form = None
        self._start()

    def pull_the_plug(self, share: float) -> None:
        """The machine is off: of what no fsync covers only a share of the bytes is found again."""
        self.inspections.close()
        for path in self.journals.glob("*.jsonl"):
            facts = path.stat()
            safe = min(self.world.synced.get(facts.st_ino, 0), facts.st_size)
            os.truncate(path, safe + int((facts.st_size - safe) * share))
            self.world.synced[facts.st_ino] = path.stat().st_size
        self.form, self.unsure = None, set()
        self._start()

    def _settled_on_disk(self) -> None:
        # What carries a file reads it minutes later, when the system has long written it out by
        # itself.
        for path in self.own_files:
            facts = path.stat()
            self.world.synced[facts.st_ino] = facts.st_size

    def carry_to(self, other: "Laptop", share: float = 1) -> None:
        """A file-synchronising program brings this laptop's own journal files to the other one,
        or first a part of them."""
        self._settled_on_disk()
        for source in self.own_files:
            self._carry(source, other.journals / source.name, share)

    def _carry(self, source: Path, target: Path, share: float) -> None:
        data = source.read_bytes()
        part = data[: int(len(data) * share)]
        there = target.stat().st_size if target.exists() else 0
        if self.was_older and len(data) < there:
            # The older state is not carried over the newer one.
            return
        if len(part) < there:
            part = data
        draft = target.with_name(f".{target.name}.tmp")
        draft.write_bytes(part)
        draft.rename(target)
        self.world.synced[target.stat().st_ino] = len(part)

    def put_back(self) -> None:
        """Somebody puts a backup of the own journal file back, of this very minute: another file
        with the same lines."""
        self._settled_on_disk()
        for path in self.own_files:
            draft = path.with_name("backup")
            draft.write_bytes(path.read_bytes())
            draft.rename(path)
            self.world.synced[path.stat().st_ino] = path.stat().st_size

    def back_up(self, folder: Path) -> None:
        """Copy the inspection as it is now; a few copies are kept."""
        self._settled_on_disk()
        shutil.copytree(self.folder / ID, folder)
        self.backups = [*self.backups, folder][-KEPT_BACKUPS:]

    def put_older_back(self, age: int, elsewhere: set[str]) -> None:
        """While the program is closed, an older backup takes the place of the inspection."""
        with self._closed_and_older(elsewhere):
            shutil.rmtree(self.folder / ID)
            shutil.copytree(self.backups[-1 - age % len(self.backups)], self.folder / ID)

    def remove_own_journal(self, elsewhere: set[str]) -> None:
        """Somebody removes the own files while the program is closed."""
        with self._closed_and_older(elsewhere):
            for path in self.own_files:
                path.unlink()

    @contextmanager
    def _closed_and_older(self, elsewhere: set[str]) -> Iterator[None]:
        """What is gone after this must be nowhere else: neither on another laptop nor a device."""
        before = set(self.known())
        self.inspections.close()
        yield
        for path in self.journals.glob("*.jsonl"):
            facts = path.stat()
            self.world.synced[facts.st_ino] = facts.st_size
        self.form, self.was_older = None, True
        self._start()
        self.must, self.unsure = set(self.known()), set()
        self.world.gone |= before - self.must - elsewhere

    def edit_own_journal(self, line_end: bytes) -> None:
        """Somebody opens the own files in an editor, which changes line ends, and saves them."""
        self.inspections.close()
        for path in self.own_files:
            data = path.read_bytes().replace(b"\r\n", b"\n").replace(b"\n", line_end)
            path.write_bytes(data)
            self.world.synced[path.stat().st_ino] = len(data)
        self.form = None
        self._start()

    def made_up(self, number: int, name: str = "") -> dict:
        """An entry of a stranger in this laptop's name, or in another one."""
        host = name or self.host
        entry = {
            "id": f"{host}:{number}",
            "at": "2026-05-02T09:00:00.000Z",
            "device": host,
            "who": "a stranger",
            "subject": "vessel",
            "field": "name",
            "value": "forged",
            "replaces": [],
        }
        self.world.forge(entry)
        return entry

    def bring_saved(self, entries: list[dict]) -> None:
        """The owner brings in a file of entries; only what bears this laptop's name may be left."""
        names, host = {entry["device"] for entry in entries}, self.host
        self._count_as_seen(entries)
        fates = self.inspection().take_in(entries, names, "a file").outcomes
        taken = {one for one, fate in fates.items() if not fate.startswith("refused: ")}
        refused = set(fates) - taken
        assert all(one.startswith(f"{host}:") for one in refused), fates
        assert refused <= self.world.forged, refused
        self.must |= taken

    def refuse_another_name(self, device: Device, name: str, number: int) -> None:
        """A device hands over an entry in somebody else's name; it is kept aside."""
        entry = self.made_up(number, name)
        [outcome] = self.inspection().take_in([entry], {device.name}).outcomes.values()
        assert outcome.startswith("refused: "), outcome

    def take_in_kept_aside(self) -> None:
        """The owner looked at what was refused, and takes it in."""
        self.inspection().take_in_kept_aside()
        assert [] == [row for row in self.inspection().refused() if "line" not in row["entry"]]

    def refuse_stranger(self, ahead: int) -> None:
        """Somebody hands over an entry in this laptop's name that it never made."""
        # Under the name of now, which an older backup has changed at the latest now.
        self.take_in([], ())
        entry = self.made_up(900_000_000 + ahead)
        [outcome] = self.inspection().take_in([entry]).outcomes.values()
        assert outcome.startswith("refused: "), outcome
        path = self.journals / "stranger.jsonl"
        path.write_bytes(to_line(from_dict(entry)))
        self.inspection()
        # It is not carried on: on the other laptop it would be one of a name that it cannot check.
        path.unlink()

    def lose_own_journal(self, share: float) -> None:
        """Somebody cuts the own file, or removes it, while the program runs; then a page opens."""
        self.take_in([], ())
        path = self.journals / f"{self.host}.jsonl"
        if share == 0:
            path.unlink(missing_ok=True)
        elif path.exists():
            os.truncate(path, int(path.stat().st_size * share))
        self.inspection()

    def flip_a_bit(self, place: int, bit: int) -> None:
        """One bit of the own files changes while the program is closed."""
        self.inspections.close()
        files = [path for path in self.own_files if path.stat().st_size]
        if files:
            path = files[place % len(files)]
            data = bytearray(path.read_bytes())
            data[place % len(data)] ^= 1 << bit
            path.write_bytes(data)
            self.world.synced[path.stat().st_ino] = len(data)
        self.form = None
        self._start()

    def export(self, out: Path) -> "Stick":
        """The inspection as a bundle."""
        self._settled_on_disk()
        bundle.write(self.folder / ID, out)
        return Stick(out, frozenset(self.known()))

    def bring(self, stick: "Stick") -> None:
        """Take a bundle in while the program runs."""
        before, doubt = set(self.known()), self.inspection()._files.doubt
        there = len(read_folder(self.journals).entries)
        try:
            told = bundle.take_in(stick.path, self.folder, self.first_name, self.inspections.paused)
        except BaseException:
            self.unsure |= stick.holds - before
            raise
        self.unsure -= stick.holds
        # What a stranger made up in this laptop's name is not taken.
        self.must |= stick.holds - self.world.forged
        on_disk = len(read_folder(self.journals).entries) - there
        # Taking in also clears up what a failed write left behind; such a line is no news to the
        # bundle.
        assert told == (ID, on_disk, 0) or (doubt and told[1] <= on_disk), (told, on_disk)

    def check(self) -> None:
        """What this laptop shows is the dumb fold of what it has; nothing it ever had is gone;
        no answer is hidden that nobody replaced with it in sight."""
        known = self.known()
        assert self.must <= set(known), f"{self.host} lost {sorted(self.must - set(known))}"
        self.must |= set(known) - self.unsure
        one, entries = self.inspection(), list(known.values())
        shown = snapshot(one.state)
        assert folded(entries) == shown
        for (subject, name), standing in self.world.unseen_heads(entries).items():
            assert standing <= set(shown[subject][name]), f"{self.host} hides {sorted(standing)}"
        assert disputes_of(entries) == {
            (subject, name) for subject, name, _ in one.state.disputes()
        }
        assert all(
            fault.what in ("is not a whole journal line", "its checksum does not fit")
            for fault in one.damage
        ), one.damage
        assert all(
            "line" in row["entry"] or row["entry"]["who"] == "a stranger" for row in one.refused()
        )
