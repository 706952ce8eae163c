"""Devices after the protocol, and laptops with the real record on disk; what is true of them stands in truth.py."""

import os
from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from inspector.record import bundle
from inspector.record.entry import Entry, to_dict
from inspector.record.state import snapshot
from inspector.record.store import Inspections
from tests.reliability.truth import World, by_field, disputes_of, folded, heads_of

ID = "one"
BATCH = 3


class Device:
    """A phone: numbers from 1 without holes, an outbox, and all that it was told. What it says is kept before it is shown, so nothing here is ever lost."""

    def __init__(self, world: World, name: str):
        self.world, self.name, self.number = world, name, 0
        self.known: dict[str, dict] = {}
        self.own: dict[str, dict] = {}
        self.outbox: list[str] = []
        self.epoch, self.position = "", 0
        self.talks_to: Laptop | None = None

    def say(self, place: tuple[str, str], value: Any) -> None:
        """Answer one field; what stands in it already alone makes no entry."""
        said = by_field(self.known.values()).get(place, [])
        standing = heads_of(said)
        if len(standing) == 1 and standing[0]["value"] == value:
            return
        self.number += 1
        entry = {"id": f"{self.name}:{self.number}", "at": self.world.now(), "device": self.name, "who": self.name, "subject": place[0], "field": place[1],
                 "value": value, "replaces": [one["id"] for one in standing]}
        self.world.write(entry, frozenset(one["id"] for one in said))
        self.known[entry["id"]] = self.own[entry["id"]] = entry
        self.outbox.append(entry["id"])
        # Kept on the device before the tick is shown, so it counts from now on.
        self.world.acknowledged.add(entry["id"])

    def reload(self) -> None:
        """The page is opened anew: the position in the laptop's list is forgotten, what was stored is not."""
        self.epoch, self.position = "", 0

    def _turn_to(self, laptop: "Laptop") -> None:
        # Another laptop is another address, so another page.
        if self.talks_to is not laptop:
            self.reload()
            self.talks_to = laptop

    def send(self, laptop: "Laptop", ids: list[str], reply_lost: bool = False) -> None:
        """One batch; where the reply is lost, the device cannot know what became of it."""
        self._turn_to(laptop)
        fates = laptop.take_in([self.own[one] for one in ids], self.name)
        if not reply_lost:
            self.outbox = [one for one in self.outbox if one not in fates]

    def fetch(self, laptop: "Laptop") -> None:
        """What is new since the last time; where everything came (another epoch), what was handed over once and is not in it goes again."""
        anew, came = self.fetch_only(laptop)
        if anew:
            self._again(one for one in self.own if one not in came)
        self.epoch, self.position = laptop.inspection().epoch, len(came) + (0 if anew else self.position)

    def fetch_only(self, laptop: "Laptop") -> tuple[bool, set[str]]:
        """The page is closed as soon as it has stored what came; returns whether that was everything, and the ids."""
        self._turn_to(laptop)
        one = laptop.inspection()
        anew = self.epoch != one.epoch
        found = [to_dict(entry) for entry in one.since(0 if anew else self.position)]
        self.known.update((entry["id"], entry) for entry in found)
        return anew, {entry["id"] for entry in found}

    def hand_over(self, laptop: "Laptop") -> None:
        """The whole honest protocol: send what waits, fetch, send what was lost there, fill the holes that are named."""
        self._empty_outbox(laptop)
        self.fetch(laptop)
        self._empty_outbox(laptop)
        self._again(f"{self.name}:{number}" for number in laptop.inspection().missing().get(self.name, []))
        self._empty_outbox(laptop)
        assert self.number == laptop.inspection().held().get(self.name, 0)

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

    `must` is what it has acknowledged or shown, which may never be gone again; `unsure` what came with a bundle that the disk did not take as a whole.
    """

    def __init__(self, world: World, folder: Path, host: str):
        self.world, self.folder, self.host = world, folder, host
        self.must: set[str] = set()
        self.unsure: set[str] = set()
        self.form: dict[tuple[str, str], list[str]] | None = None
        self.form_saw: frozenset[str] = frozenset()
        self._start()

    def _start(self) -> None:
        self.inspections, self._checked, self._all = Inspections(self.folder, self.host), 0, {}

    def inspection(self):
        """The inspection as a page of the server gets it."""
        return self.inspections.get(ID)

    @property
    def journals(self) -> Path:
        return self.folder / ID / "journal"

    def known(self) -> dict[str, dict]:
        """Everything this laptop has, by id; what is new to the world is told to it."""
        entries = self.inspection().entries
        for entry in entries[self._checked:]:
            self._learn(entry)
        self._checked = len(entries)
        return self._all

    def _learn(self, entry: Entry) -> None:
        data = to_dict(entry)
        # A laptop's entry is met first where it is read first: what was written but not acknowledged may have been carried away already.
        if entry.id not in self.world.entries:
            self.world.write(data, self.world.attempts[entry.at])
        assert self.world.entries[entry.id] == data
        assert entry.id not in self._all
        self._all[entry.id] = data

    def say(self, changes: list[tuple[str, str, Any]], from_form: bool = False) -> None:
        """Record answers here; from a form that was opened earlier, they replace only what that showed."""
        first, form, saw = len(self.world.issued), self.form if from_form else None, self.form_saw
        try:
            said = self.inspection().say(self.host, changes, (lambda subject, name: form.get((subject, name), [])) if form is not None else None)
            self.must |= {entry.id for entry in said}
            self.world.acknowledged |= {entry.id for entry in said}
        finally:
            issued = set(self.world.issued[first:])
            # Not `known`: what was written in this call can be told to the world only once its attempt is on the list.
            if form is None:
                saw = frozenset(entry.id for entry in self.inspections._open[ID].entries if entry.at not in issued)
            self.world.attempts.update((at, saw) for at in issued)

    def open_form(self) -> None:
        """A form is shown; it carries the heads in sight."""
        known = self.known()
        self.form = {place: [one["id"] for one in heads_of(said)] for place, said in by_field(known.values()).items()}
        self.form_saw = frozenset(known)

    def take_in(self, batch: list[dict], device: str) -> dict[str, str]:
        """A batch over the network; every honest entry is stored or was had already."""
        fates = self.inspection().take_in(batch, only=device).fates
        assert set(fates) == {entry["id"] for entry in batch}
        assert set(fates.values()) <= {"stored", "already had"}, fates
        self.must |= set(fates)
        return fates

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
        # What carries a file reads it minutes later, when the system has long written it out by itself.
        path = self.journals / f"{self.host}.jsonl"
        if path.exists():
            facts = path.stat()
            self.world.synced[facts.st_ino] = facts.st_size

    def carry_to(self, other: "Laptop", share: float = 1) -> None:
        """A file-synchronising program brings this laptop's own journal file to the other one, or first a part of it."""
        self._settled_on_disk()
        source, target = self.journals / f"{self.host}.jsonl", other.journals / f"{self.host}.jsonl"
        if not source.exists():
            return
        data = source.read_bytes()
        part = data[: int(len(data) * share)]
        if target.exists() and len(part) < target.stat().st_size:
            part = data
        draft = target.with_name(f".{target.name}.tmp")
        draft.write_bytes(part)
        draft.rename(target)
        self.world.synced[target.stat().st_ino] = len(part)

    def put_back(self) -> None:
        """Somebody puts a backup of the own journal file back, of this very minute: another file with the same lines."""
        self._settled_on_disk()
        path = self.journals / f"{self.host}.jsonl"
        if path.exists():
            draft = path.with_name("backup")
            draft.write_bytes(path.read_bytes())
            draft.rename(path)
            self.world.synced[path.stat().st_ino] = path.stat().st_size

    def export(self, out: Path) -> "Stick":
        """The inspection as a bundle."""
        self._settled_on_disk()
        bundle.write(self.folder / ID, out)
        return Stick(out, frozenset(self.known()))

    def bring(self, stick: "Stick") -> None:
        """Take a bundle in while the program runs."""
        before, doubt = set(self.known()), self.inspection()._doubt
        try:
            told = bundle.take_in(stick.path, self.folder, self.host, self.inspections.paused)
        except BaseException:
            self.unsure |= stick.holds - before
            raise
        self.unsure -= stick.holds
        self.must |= stick.holds
        grown = len(self.known()) - len(before)
        # Taking in also clears up what a failed write left behind; such a line is no news to the bundle.
        assert told == (ID, grown, 0) or (doubt and told[1] <= grown)

    def check(self) -> None:
        """What this laptop shows is the dumb fold of what it has; nothing it ever had is gone; no answer is hidden that nobody replaced with it in sight."""
        known = self.known()
        assert self.must <= set(known), f"{self.host} lost {sorted(self.must - set(known))}"
        self.must |= set(known) - self.unsure
        one, entries = self.inspection(), list(known.values())
        shown = snapshot(one.state)
        assert folded(entries) == shown
        for (subject, name), standing in self.world.unseen_heads(entries).items():
            assert standing <= set(shown[subject][name]), f"{self.host} hides {sorted(standing)}"
        assert disputes_of(entries) == {(subject, name) for subject, name, _ in one.state.disputes()}
        assert all(fault.what in ("is not a whole journal line", "its checksum does not fit") for fault in one.damage), one.damage
        assert all("line" in row["entry"] for row in one.refused())
