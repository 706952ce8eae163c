"""One inspection's files merged into those that stand here: a union. Nothing that stands here is ever overwritten or removed."""

import hashlib
import os
from pathlib import Path
from typing import Any

from inspector.record import copies, durable, photos
from inspector.record.entry import Entry, EntryRefused, to_dict
from inspector.record.journal import from_line, read_folder, to_line
from inspector.record.refusals import Refusals


def merge(quarantine: Path, folder: Path, host: str) -> tuple[int, int]:
    """Merge the checked files in `quarantine` into an inspection's folder; returns (new entries, new photos). OSError, durable.NotWritten: the disk.

    host: the computer whose journal file the new entries go to. Nobody writes to another computer's file, since a program may be carrying it.
    """
    for part in ("journal", "photos", "derived"):
        (folder / part).mkdir(parents=True, exist_ok=True)
    new_photos = sum(_merge_photo(path, folder / "photos" / path.name) for path in sorted((quarantine / "photos").glob("*")))
    for path in sorted((quarantine / "copies").glob("*")):
        if photos.original(folder, path.name[:64]) is None:
            copies.keep(folder, path.name[:64], path.read_bytes(), path.suffix[1:])
    fresh, refused = _fresh(quarantine / "journal", read_folder(folder / "journal").entries)
    _append(b"".join(map(to_line, fresh)), folder / "journal" / f"{host}.jsonl")
    if refused:
        Refusals(folder / "refused", host).keep(refused, "a bundle")
    if not (folder / "checklists").is_dir():
        # The checklists make it an inspection, so they come last and in one step.
        os.replace(quarantine / "checklists", folder / "checklists")
        durable.sync_folder(folder)
        durable.sync_folder(folder.parent)
    return len(fresh), new_photos


def _fresh(journals: Path, known: dict[str, Entry]) -> tuple[list[Entry], list[tuple[Any, str]]]:
    # What is new here; and what is kept aside: whole lines that have rotted, and lines that give a known id another content, which must not take the place
    # of what stands here. Half a line, as a pulled plug leaves it, says nothing.
    fresh: dict[str, Entry] = {}
    refused: list[tuple[Any, str]] = []
    for path in sorted(journals.glob("*.jsonl")):
        for line in filter(None, path.read_bytes().split(b"\n")):
            try:
                entry = from_line(line)
            except EntryRefused as problem:
                if line.endswith(b"}"):
                    refused.append(({"line": line.decode("utf-8", "replace")}, f"A line of {path.name} in a bundle is not taken in: {problem}."))
                continue
            if known.get(entry.id, entry) != entry:
                refused.append((to_dict(entry), f"A bundle brought another entry with the id {entry.id}; the one that was here stays."))
            elif fresh.get(entry.id, entry) != entry:
                refused.append((to_dict(entry), f"A bundle brought two entries with the id {entry.id}; the first one is used."))
            elif entry.id not in known:
                fresh[entry.id] = entry
    return list(fresh.values()), refused


def _merge_photo(source: Path, target: Path) -> bool:
    present = target.is_file()
    # One that has rotted here is replaced by the whole one.
    if not present or hashlib.sha256(target.read_bytes()).hexdigest() != target.stem:
        durable.replace(target, source.read_bytes())
    return not present


def _append(lines: bytes, target: Path) -> None:
    # Appended, never rewritten: a running program may hold this file open, and a crash can tear only the last new line. Synced even where nothing is new:
    # what an earlier, interrupted taking in left there is acknowledged now.
    handle = os.open(target, os.O_RDWR | os.O_CREAT | os.O_APPEND | getattr(os, "O_BINARY", 0), 0o644)
    try:
        size = os.lseek(handle, 0, os.SEEK_END)
        os.lseek(handle, max(size - 1, 0), os.SEEK_SET)
        torn = size > 0 and os.read(handle, 1) != b"\n"
        durable.append(handle, (b"\n" if torn and lines else b"") + lines)
    finally:
        os.close(handle)
    durable.sync_folder(target.parent)
