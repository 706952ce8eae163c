"""One inspection's files merged into those that stand here: a union. Nothing that stands here is ever overwritten or removed."""

import hashlib
import os
from collections.abc import Iterator
from pathlib import Path

from inspector.record import copies, durable, photos
from inspector.record.entry import Entry, EntryRefused, to_dict
from inspector.record.journal import from_line, read_folder
from inspector.record.refusals import Refusals


def merge(quarantine: Path, folder: Path) -> tuple[int, int]:
    """Merge the checked files in `quarantine` into an inspection's folder; returns (new entries, new photos). OSError, durable.NotWritten: the disk."""
    for part in ("journal", "photos", "derived"):
        (folder / part).mkdir(parents=True, exist_ok=True)
    new_photos = sum(_merge_photo(path, folder / "photos" / path.name) for path in sorted((quarantine / "photos").glob("*")))
    for path in sorted((quarantine / "copies").glob("*")):
        if photos.original(folder, path.name[:64]) is None:
            copies.keep(folder, path.name[:64], path.read_bytes(), path.suffix[1:])
    known = read_folder(folder / "journal").entries
    for path in sorted((quarantine / "journal").glob("*.jsonl")):
        _merge_journal(_honest(path.read_bytes(), known, folder), folder / "journal" / path.name)
    new_entries = len(read_folder(folder / "journal").entries) - len(known)
    if not (folder / "checklists").is_dir():
        # The checklists make it an inspection, so they come last and in one step.
        os.replace(quarantine / "checklists", folder / "checklists")
        durable.sync_folder(folder)
        durable.sync_folder(folder.parent)
    return new_entries, new_photos


def _honest(theirs: bytes, known: dict[str, Entry], folder: Path) -> bytes:
    # A line that gives a known id another content could, in a file that is read first, take the place of what was recorded here. It is kept aside.
    lines, refused = [], []
    for line in theirs.split(b"\n"):
        try:
            entry = from_line(line)
        except EntryRefused:
            lines.append(line)
            continue
        if known.get(entry.id, entry) == entry:
            lines.append(line)
        else:
            refused.append((to_dict(entry), f"A bundle brought another entry with the id {entry.id}; the one that was here stays."))
    if refused:
        Refusals(folder / "refused", "bundles").keep(refused, "a bundle")
    return b"\n".join(lines)


def _merge_photo(source: Path, target: Path) -> bool:
    present = target.is_file()
    # One that has rotted here is replaced by the whole one.
    if not present or hashlib.sha256(target.read_bytes()).hexdigest() != target.stem:
        durable.replace(target, source.read_bytes())
    return not present


def _merge_journal(theirs: bytes, target: Path) -> None:
    # Lines are appended, never rewritten: a running program may hold this file open, and a crash can tear only the last new line.
    handle = os.open(target, os.O_RDWR | os.O_CREAT | os.O_APPEND | getattr(os, "O_BINARY", 0), 0o644)
    try:
        ours = target.read_bytes()
        missing = b"".join(line + b"\n" for line in _lines_new(theirs, set(ours.split(b"\n"))))
        if missing:
            durable.append(handle, (b"\n" if ours and not ours.endswith(b"\n") else b"") + missing)
    finally:
        os.close(handle)
    durable.sync_folder(target.parent)


def _lines_new(theirs: bytes, known: set[bytes]) -> Iterator[bytes]:
    for line in theirs.split(b"\n"):
        if line and line not in known:
            known.add(line)
            yield line
