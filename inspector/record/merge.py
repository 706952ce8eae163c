"""One inspection's files merged into those that are here: a union that overwrites nothing."""

import hashlib
import os
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from inspector.record import durable, photos
from inspector.record.entry import Entry, EntryRefused, from_dict, now, to_dict
from inspector.record.journal import from_line, lines_of, read_folder, to_line
from inspector.record.journal_files import JournalFiles
from inspector.record.own_numbers import forged
from inspector.record.photos.device_copies import keep_copy
from inspector.record.unseen import SUBJECT, claims_on_other_contents, field_of
from inspector.record.value_kinds import faults_of_kinds

DIGEST_LENGTH = 64


@dataclass(frozen=True)
class Merged:
    """What a merge brought.

    Parameters
    ----------
    entries, photos : int
        How many are new.
    refused : list of str
        A sentence for each line that was refused and kept aside.
    new_name : str
        The sentence that this computer writes under a new name from now on, "" where it does not.
    """

    entries: int
    photos: int
    refused: list[str]
    new_name: str


def merge(quarantine: Path, files: JournalFiles) -> Merged:
    """Merge checked files into an inspection's folder.

    Parameters
    ----------
    quarantine : Path
        The checked files.
    files : JournalFiles
        The journal files of the inspection, whose folder is made where it is not there yet. New
        entries go to the own one. Nobody writes to another computer's file, since a program may
        be carrying it.

    Returns
    -------
    Merged

    Raises
    ------
    OSError, durable.NotWritten
        Where the disk does not take it.
    """
    folder = files.folder
    for part in ("journal", "photos", "derived"):
        (folder / part).mkdir(parents=True, exist_ok=True)
    sources = sorted((quarantine / "photos").glob("*"))
    new_photos = sum(_merge_photo(path, folder / "photos" / path.name) for path in sources)
    for path in sorted((quarantine / "copies").glob("*")):
        _merge_copy(path, folder)
    known = read_folder(folder / "journal").entries
    new, refused = _new_entries(quarantine / "journal", known, _refused(quarantine, files))
    new_name = _begin_new_name_if_behind(files, new, refused)
    _append(b"".join(map(to_line, new)), files.own.path)
    if refused:
        files.refusals.keep(refused, "a bundle")
        _note_other_contents(quarantine / "journal", files, refused)
    if not (folder / "checklists").is_dir():
        # The checklists make it an inspection, so they come last and in one step.
        os.replace(quarantine / "checklists", folder / "checklists")
        durable.sync_folder(folder)
        durable.sync_folder(folder.parent)
    return Merged(len(new), new_photos, [why for _, why in refused], new_name)


def _refused(quarantine: Path, files: JournalFiles) -> dict[str, str]:
    """Id -> why, of the entries that this computer cannot have made and of other kinds of value."""
    brought = read_folder(quarantine / "journal")
    entries = list(brought.entries.values())
    damaged = sum(len(damage.lost) for damage in brought.damage)
    return faults_of_kinds(entries) | forged(files.host, files.last_number(), entries, damaged)


def _begin_new_name_if_behind(
    files: JournalFiles, new: list[Entry], refused: list[tuple[Any, str]]
) -> str:
    """Begin a new own name where the bundle knows more of the own numbers than the own file.

    Returns the sentence on it, "" where there is none.
    """
    # Another content of an own id proves that a number was given twice.
    own = [data["id"] for data, _ in refused if data.get("device") == files.host]
    is_twice = any(entry_id in files.known for entry_id in own)
    numbers = [entry.number for entry in new if entry.device == files.host]
    if not is_twice and not files.is_behind() and max(numbers, default=0) <= files.last_in_own():
        return ""
    before = files.host
    files.begin_new_name()
    return (
        f"This computer's own file of {files.folder.name} is older than what it once wrote there, "
        f"as after an older backup was put back. It writes under the name {files.host} from now "
        f"on, and no more as {before}, so that no number is given twice."
    )


def _note_other_contents(
    journals: Path, files: JournalFiles, refused: list[tuple[Any, str]]
) -> None:
    """Note of what came whose claims may mean another content of a number than is here.

    What is here under that number is then not hidden by somebody who has never seen it.
    """
    there = [data for data, _ in refused if data.get("id") in files.known]
    twice: dict[str, list[Entry]] = {}
    for each in map(from_dict, there):
        twice.setdefault(each.id, [files.known[each.id]]).append(each)
    if not twice:
        return
    # Also of what an import brought that was broken off here.
    files.settle()
    brought = read_folder(journals).entries.values()
    here = [entry for entry in brought if files.known.get(entry.id) == entry]
    notes, last = [], files.last_number()
    for entry_id, claims in claims_on_other_contents(here, twice, files.known.values()).items():
        last = files.next_number(last)
        subject = (SUBJECT, field_of(entry_id), claims)
        notes.append(Entry(f"{files.host}:{last}", now(), files.host, "", *subject))
    files.append(notes)


def _new_entries(
    journals: Path, known: dict[str, Entry], reasons: dict[str, str]
) -> tuple[list[Entry], list[tuple[Any, str]]]:
    """The entries that are new here, and the lines that are refused, each with its reason."""
    new: dict[str, Entry] = {}
    refused: list[tuple[Any, str]] = []
    for name, line in _lines(journals):
        try:
            entry = from_line(line)
        except EntryRefused as problem:
            # Half a line, as a pulled plug leaves it, is no evidence of anything.
            if line.endswith(b"}"):
                reason = f"A line of {name} in a bundle is not taken in: {problem}."
                refused.append(({"line": line.decode("utf-8", "replace")}, reason))
            continue
        reason = reasons.get(entry.id) or _contradiction(entry, known, new)
        if reason:
            refused.append((to_dict(entry), reason))
        # The same entry again is no news: bundles overlap, and are brought in twice.
        elif entry.id not in known:
            new[entry.id] = entry
    return list(new.values()), refused


def _lines(journals: Path) -> Iterator[tuple[str, bytes]]:
    """(file name, line) of every line of all journals."""
    for path in sorted(journals.glob("*.jsonl")):
        for line in filter(None, lines_of(path.read_bytes())):
            yield path.name, line


def _contradiction(entry: Entry, known: dict[str, Entry], new: dict[str, Entry]) -> str:
    """Why an entry must not take the place of another one with its id, "" where it does not."""
    if known.get(entry.id, entry) != entry:
        return (
            f"A bundle brought another entry with the id {entry.id}; the one that was here stays, "
            "and the check page can take the other one in beside it."
        )
    if new.get(entry.id, entry) != entry:
        return f"A bundle brought two entries with the id {entry.id}; the first one is used."
    return ""


def _merge_photo(source: Path, target: Path) -> bool:
    """Keep a photo; returns whether it is new here."""
    present = target.is_file()
    # One that has rotted here is replaced by the whole one.
    if not present or hashlib.sha256(target.read_bytes()).hexdigest() != target.stem:
        durable.replace(target, source.read_bytes())
    return not present


def _merge_copy(path: Path, folder: Path) -> None:
    digest = path.name[:DIGEST_LENGTH]
    # A copy is of no use where the original is.
    if photos.original(folder, digest) is None:
        keep_copy(folder, digest, path.read_bytes(), path.suffix[1:])


def _append(lines: bytes, target: Path) -> None:
    # Appended, never rewritten: a running program may have this file open, and a crash can tear
    # only the last new line. Synced even where nothing is new: what an earlier, interrupted import
    # left there is acknowledged now.
    handle = durable.open_for_appending(target)
    try:
        separator = b"\n" if lines and durable.ends_in_half_a_line(handle) else b""
        durable.append(handle, separator + lines)
    finally:
        os.close(handle)
    durable.sync_folder(target.parent)
