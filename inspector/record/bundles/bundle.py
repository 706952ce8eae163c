"""A bundle: one inspection as a zip file, written and taken in.

To take one in is a union, so it may be done in either direction, again, and in any order. Nothing
that is here is ever overwritten or removed.
"""

import hashlib
import json
import os
import shutil
import tempfile
import zipfile
import zlib
from collections.abc import Callable, Iterator
from contextlib import AbstractContextManager
from datetime import UTC, datetime
from pathlib import Path
from typing import IO

from inspector.record import durable, photos
from inspector.record.bundles.bundle_contents import (
    FORMAT,
    MANIFEST,
    MOST_RATIO,
    VERSION,
    is_allowed_name,
    unpack,
)
from inspector.record.entry import EntryRefused
from inspector.record.inspections import Inspections
from inspector.record.journal import from_line
from inspector.record.journal_files import JournalFiles
from inspector.record.merge import DIGEST_LENGTH, merge
from inspector.values.errors import InspectorError

_PARTS = ("journal", "photos", "copies", "checklists")
# What a manifest says of the photos in its bundle.
ORIGINALS = "as the cameras made them"
COPIES = "copies of our own making, without the camera's data; the originals are not in it"


class NotWhole(InspectorError):
    """An inspection's folder is no longer one that another computer could take in."""


def write(inspection_folder: Path, out: Path, *, originals: bool = True) -> None:
    """Write an inspection as a bundle, whole or not at all.

    A photo whose bytes no longer fit its name is left out and named in the manifest's "left_out".

    Parameters
    ----------
    inspection_folder : Path
    out : Path
        The zip file.
    originals : bool
        False puts a JPEG of our own making in the place of each photo, without the place, time and
        device that a camera writes into it. It is named as a copy of the original's digest, so the
        entries about the photo fit it, and the original can follow in another bundle.

    Raises
    ------
    NotWhole
        Where the folder has lost its checklists, so that it is no inspection any more.
    durable.NotWritten
        Where the disk does not take it.
    Busy
        Where a copy has to be made anew and too many photos are worked on.
    """
    if not any((inspection_folder / "checklists").glob("*.toml")):
        raise NotWhole(
            f"The folder {inspection_folder} is not whole any more: its checklists are gone, so no "
            "bundle can be made of it. Put the folder back from a backup or an earlier bundle."
        )
    draft = out.with_name(f".{out.name}.{os.getpid()}.new")
    try:
        out.parent.mkdir(parents=True, exist_ok=True)
        with open(draft, "wb") as file:
            _pack(inspection_folder, file, originals=originals)
            file.flush()
            os.fsync(file.fileno())
        os.replace(draft, out)
        durable.sync_folder(out.parent)
    except OSError as problem:
        draft.unlink(missing_ok=True)
        raise durable.NotWritten(
            f"The bundle {out} could not be written ({problem.strerror or problem}). Free some "
            "space or name another place."
        ) from problem


def _pack(folder: Path, file: IO[bytes], *, originals: bool) -> None:
    """Write all files, then the manifest of what was written and what was left out."""
    listed, left_out = {}, []
    with zipfile.ZipFile(file, "w") as archive:
        for name, data in _files(folder) if originals else _files_without_originals(folder):
            digest = hashlib.sha256(data).hexdigest()
            # A photo that has rotted is left out, so that the bundle never vouches for it.
            if _digest_in(name) not in ("", digest):
                left_out.append(name)
                continue
            listed[name] = {"sha256": digest, "bytes": len(data)}
            _put(archive, name, data)
        made = datetime.now(UTC).isoformat(timespec="seconds").replace("+00:00", "Z")
        # Last in the file, with the digests of everything before it.
        manifest = {
            "format": FORMAT,
            "version": VERSION,
            "inspection": folder.name,
            "made": made,
            "photos": ORIGINALS if originals else COPIES,
            "files": listed,
            "left_out": left_out,
        }
        _put(archive, MANIFEST, json.dumps(manifest, indent=1).encode("utf-8"))


def _files(folder: Path) -> Iterator[tuple[str, bytes]]:
    """Name and content of the files that belong into a bundle."""
    for name in _names(folder):
        data = (folder / name).read_bytes()
        yield name, _without_torn_end(data) if name.startswith("journal/") else data


def _files_without_originals(folder: Path) -> Iterator[tuple[str, bytes]]:
    """The same with a JPEG of our own making in the place of each photo or device's copy."""
    for name, data in _files(folder):
        part, _, file_name = name.partition("/")
        if part not in ("photos", "copies"):
            yield name, data
            continue
        sha = file_name[:DIGEST_LENGTH]
        path = photos.report_copy(folder, sha)
        # One that cannot be shown here is left out and named: its bytes may hold anything.
        copy = path.read_bytes() if path else b""
        digest = hashlib.sha256(copy).hexdigest() if copy else "0" * DIGEST_LENGTH
        yield f"copies/{sha}.{digest}.jpg", copy


def _digest_in(name: str) -> str:
    """The digest that a photo's or copy's bytes must have by its name; "" for other files."""
    part, _, file_name = name.partition("/")
    return file_name.split(".")[-2] if part in ("photos", "copies") else ""


def _put(archive: zipfile.ZipFile, name: str, data: bytes) -> None:
    """Add one file, packed only where that is of use."""
    # Photos are compressed already. A journal of many like lines is stored as it is where its
    # deflated size would look like a bomb to the reader.
    is_picture = name.startswith(("photos/", "copies/"))
    stored = is_picture or len(zlib.compress(data)) * (MOST_RATIO // 2) < len(data)
    method = zipfile.ZIP_STORED if stored else zipfile.ZIP_DEFLATED
    archive.writestr(zipfile.ZipInfo(name), data, method)


def _names(folder: Path) -> Iterator[str]:
    """The files that belong into a bundle, by their names in it."""
    for part in _PARTS:
        for path in sorted((folder / part).glob("*")):
            name = f"{part}/{path.name}"
            if is_allowed_name(name) and path.is_file() and _is_needed(folder, part, path):
                yield name


def _is_needed(folder: Path, part: str, path: Path) -> bool:
    # A copy travels only as long as it takes the place of its original.
    return part != "copies" or photos.original(folder, path.name[:DIGEST_LENGTH]) is None


def _without_torn_end(data: bytes) -> bytes:
    # A line that is being appended at this moment is no damage; the next bundle brings it whole.
    end = max(data.rfind(b"\n"), data.rfind(b"\r")) + 1
    try:
        from_line(data[end:])
    except EntryRefused:
        return data[:end]
    return data


def take_in(
    zip_path: Path,
    inspections_folder: Path,
    host: str,
    pause: Callable[[str], AbstractContextManager[JournalFiles]] | None = None,
    refused: list[str] | None = None,
    news: list[str] | None = None,
) -> tuple[str, int, int]:
    """Merge a bundle into the folder of inspections.

    Parameters
    ----------
    zip_path : Path
        The bundle.
    inspections_folder : Path
    host : str
        This computer's name; new entries go to its own journal file, whoever wrote them.
    pause : callable, optional
        Entered with the inspection's id while its files are appended to: `Inspections.paused`, with
        which a running program holds its own writing back.
    refused : list of str, optional
        Gets a sentence for each line of the bundle that is refused and kept aside.
    news : list of str, optional
        Gets a sentence where this computer writes under a new name from now on.

    Returns
    -------
    tuple of (str, int, int)
        Inspection id, new entries, new photos.

    Raises
    ------
    BundleRefused
        Before anything is changed, for what is not a whole and honest bundle.
    durable.NotWritten
        Where the disk does not take it. What was merged until then is kept; to take the bundle in
        again completes it.
    """
    inspections_folder.mkdir(parents=True, exist_ok=True)
    own = Inspections(inspections_folder, host)
    # Within the folder, so that what is accepted is moved in one step, and hidden from the list by
    # its dot.
    quarantine = Path(tempfile.mkdtemp(prefix=".quarantine-", dir=inspections_folder))
    try:
        inspection_id = unpack(zip_path, quarantine)
        # Nobody else may write meanwhile: numbers are compared with those here, and must stay as
        # compared.
        with (pause or own.paused)(inspection_id) as files:
            merged = merge(quarantine, files)
        if refused is not None:
            refused.extend(merged.refused)
        if news is not None and merged.new_name:
            news.append(merged.new_name)
        return inspection_id, merged.entries, merged.photos
    except OSError as problem:
        raise durable.NotWritten(
            f"The bundle {zip_path.name} could not be taken in ({problem.strerror or problem}). "
            "Free some space, then again."
        ) from problem
    finally:
        own.close()
        shutil.rmtree(quarantine, ignore_errors=True)
