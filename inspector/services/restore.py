"""A backup brought back: checked as a whole first, then added to what is here."""

import hashlib
import shutil
import struct
import tempfile
import zipfile
import zlib
from collections.abc import Callable
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from inspector.record import durable, strict_json
from inspector.record.bundles import bundle
from inspector.services.backup_contents import (
    CATALOGUE,
    FORMAT,
    MANIFEST,
    MOST_FILES,
    MOST_MANIFEST,
    MOST_SMALL,
    NOT_SETTINGS,
    TABLES,
    VERSION,
    is_allowed_name,
)
from inspector.services.data_folder import DataFolder
from inspector.services.inspection_list import AWAY, put_away
from inspector.values.errors import InspectorError

_PIECE = 1 << 20
# Where a zip file has the name of its first file.
_NAME_AT = 30
_DAMAGED = "is damaged or was cut short, so nothing was brought back. Copy it again"
_NOT_A_ZIP = (zipfile.BadZipFile, zlib.error, struct.error, EOFError, NotImplementedError)
_NOT_A_ZIP += (RuntimeError, ValueError)


class BackupRefused(InspectorError):
    """Not a backup that can be brought back; nothing was changed."""


@dataclass
class Restored:
    """What a backup brought.

    Parameters
    ----------
    inspections, new_inspections, entries, photos : int
    notes : list of str
        A sentence for each thing that was not taken over, and why.
    """

    inspections: int = 0
    new_inspections: int = 0
    entries: int = 0
    photos: int = 0
    notes: list[str] = field(default_factory=list)

    def sentence(self) -> str:
        """Return what was brought, in one sentence."""
        noun = "inspection" if self.inspections == 1 else "inspections"
        return (
            f"Brought back: {self.inspections} {noun}, {self.new_inspections} new here; "
            f"new entries {self.entries}, new photos {self.photos}."
        )


def is_backup(path: Path) -> bool:
    """Tell whether a file is a backup, whole or not, rather than a bundle or something else.

    Parameters
    ----------
    path : Path

    Returns
    -------
    bool
    """
    # By its first file: the end of a backup that was cut short looks like the bundle in it.
    with open(path, "rb") as file:
        return file.read(_NAME_AT + len(CATALOGUE))[_NAME_AT:] == CATALOGUE.encode()


def restore(
    data: DataFolder, path: Path, progress: Callable[[int, int], None] | None = None
) -> Restored:
    """Bring a backup back by union: nothing that is here is replaced or removed.

    The entries are written into this computer's own journal files, whoever made them; each keeps
    the name of its author's device.

    Parameters
    ----------
    data : DataFolder
    path : Path
    progress : callable, optional
        Called with how many of how many inspections are brought back.

    Returns
    -------
    Restored

    Raises
    ------
    BackupRefused
        With one sentence, before anything is changed.
    durable.NotWritten
        Where the disk does not take it; what was brought until then is kept, and bringing the same
        file back once more completes it.
    """
    try:
        with zipfile.ZipFile(path) as archive:
            names = _checked(archive, path)
            restored = _bring_back(data, archive, names, progress)
            missing = _manifest(archive, path)["left_out"]
            restored.notes += [
                f"{each} is not in the backup: {why}" for each, why in missing.items()
            ]
            return restored
    except _NOT_A_ZIP as problem:
        raise BackupRefused(f"{path.name} {_DAMAGED}.") from problem


def _checked(archive: zipfile.ZipFile, path: Path) -> list[str]:
    """The names of all files but the manifest, once each has its digest and length."""
    names = archive.namelist()
    if not is_backup(path) or len(names) > MOST_FILES:
        raise BackupRefused(
            f"{path.name} is no backup of this program; expected a file that `inspector backup` "
            "or the page Backup made."
        )
    # Of two files of one name a zip reader takes the last, and the digest would be checked on that
    # one alone.
    if MANIFEST not in names or len(set(names)) != len(names):
        raise BackupRefused(f"{path.name} {_DAMAGED}.")
    strange = next((name for name in names if not is_allowed_name(name)), None)
    if strange is not None:
        raise BackupRefused(f"{path.name} holds {strange[:120]!r}, which belongs in no backup.")
    stated = _manifest(archive, path)["files"]
    names.remove(MANIFEST)
    if set(stated) != set(names):
        raise BackupRefused(f"{path.name} {_DAMAGED}.")
    for name in names:
        if _digest_in(archive, name) != stated[name]:
            raise BackupRefused(f"{path.name} {_DAMAGED} (at {name}).")
    return names


def _manifest(archive: zipfile.ZipFile, path: Path) -> dict[str, Any]:
    if archive.getinfo(MANIFEST).file_size > MOST_MANIFEST:
        raise BackupRefused(f"The list in {path.name} is longer than any backup's.")
    found = strict_json.loads(archive.read(MANIFEST))
    kind = (FORMAT, VERSION)
    if not isinstance(found, dict) or (found.get("format"), found.get("version")) != kind:
        raise BackupRefused(
            f"{path.name} is not of the kind {FORMAT!r}, version {VERSION}. Bring it back with the "
            "program version that made it."
        )
    if not isinstance(found.get("files"), dict) or not isinstance(found.get("left_out"), dict):
        raise BackupRefused(f"{path.name} {_DAMAGED}.")
    return found


def _digest_in(archive: zipfile.ZipFile, name: str) -> dict[str, Any]:
    info = archive.getinfo(name)
    is_bundle = name.startswith("inspections/")
    # Never compressed by us: a few kilobytes that unpack to terabytes are refused before they are
    # read.
    if info.compress_type != zipfile.ZIP_STORED or (not is_bundle and info.file_size > MOST_SMALL):
        raise BackupRefused(f"{name} in the backup is packed in a way that no backup uses.")
    digest, count = hashlib.sha256(), 0
    with archive.open(info) as source:
        while piece := source.read(_PIECE):
            digest.update(piece)
            count += len(piece)
    return {"sha256": digest.hexdigest(), "bytes": count}


def _bring_back(
    data: DataFolder,
    archive: zipfile.ZipFile,
    names: list[str],
    progress: Callable[[int, int], None] | None,
) -> Restored:
    result = Restored()
    bundles = [name for name in names if name.startswith("inspections/")]
    # Inspections before the files that belong to them: these need the folder to be there.
    for number, name in enumerate(bundles, 1):
        _bring_inspection(data, archive, name, result)
        if progress:
            progress(number, len(bundles))
    for name in names:
        target = _target_of(data, name)
        if target is not None:
            _bring_file(archive, name, target, result)
    if CATALOGUE in names:
        _bring_catalogue(data, strict_json.loads(archive.read(CATALOGUE)), result)
    return result


def _bring_inspection(
    data: DataFolder, archive: zipfile.ZipFile, name: str, result: Restored
) -> None:
    there = set(data.inspections.ids())
    room = data.path / "quarantine"
    room.mkdir(mode=0o700, exist_ok=True)
    refused, news = [], []
    with tempfile.TemporaryDirectory(dir=room) as made:
        copy = Path(made) / Path(name).name
        with archive.open(name) as source, open(copy, "wb") as file:
            shutil.copyfileobj(source, file, _PIECE)
        try:
            inspection_id, entries, photos = bundle.take_in(
                copy, data.inspections.folder, data.host, data.inspections.paused, refused, news
            )
        except durable.NotWritten:
            raise
        # One inspection that was damaged already when it was saved must not keep the others back.
        except InspectorError as problem:
            result.notes.append(f"{Path(name).stem} was not brought back: {problem}")
            return
    result.inspections += 1
    result.new_inspections += inspection_id not in there
    result.entries, result.photos = result.entries + entries, result.photos + photos
    result.notes += [*news, *(f"Not taken in: {reason}" for reason in refused)]


def _target_of(data: DataFolder, name: str) -> Path | None:
    """Where a plain file of the backup belongs; None for what is no plain file."""
    room, _, rest = name.partition("/")
    if room == "checklists":
        return data.path / name
    if room == "refused":
        inspection_id, _, file_name = rest.partition("/")
        folder = data.inspections.folder / inspection_id
        # An inspection that could not be brought back has no place for what it once refused.
        return folder / "refused" / file_name if folder.is_dir() else None
    return None


def _bring_file(archive: zipfile.ZipFile, name: str, target: Path, result: Restored) -> None:
    content = archive.read(name)
    if not target.exists():
        target.parent.mkdir(parents=True, exist_ok=True)
        durable.replace(target, content)
    # What is here may be newer, and nobody can be asked: it stays, and is named.
    elif target.read_bytes() != content:
        result.notes.append(f"{name} is here with other content, and stays as it is.")


def _bring_catalogue(data: DataFolder, brought: Any, result: Restored) -> None:
    """Add what is not here yet; what is here is never replaced."""
    if not isinstance(brought, dict):
        return
    for table in TABLES:
        here = data.catalogue.all(table)
        for document in _documents(brought.get(table)):
            _bring_document(data, table, document, here)
    for document in _documents(brought.get("settings")):
        name, value = document["id"], document.get("value")
        # The list of inspections put away is joined, not replaced: those put away here stay so.
        if name == AWAY and isinstance(value, list):
            there = set(data.inspections.ids())
            put_away(data.catalogue, [each for each in value if each in there])
        elif name not in NOT_SETTINGS and data.catalogue.setting(name) is None:
            data.catalogue.set(name, value)
        elif name not in NOT_SETTINGS and data.catalogue.setting(name) != value:
            result.notes.append(f"The setting {name!r} is another one here, and stays as it is.")


def _documents(table: Any) -> list[dict[str, Any]]:
    found = table if isinstance(table, list) else []
    # A backup may have been edited by hand; what is no document is passed over.
    return [each for each in found if isinstance(each, dict) and isinstance(each.get("id"), str)]


def _bring_document(
    data: DataFolder, table: str, document: dict[str, Any], here: list[dict[str, Any]]
) -> None:
    contents = [_content(each) for each in here]
    if _content(document) in contents:
        return
    # The same brief, worked on here and there since, is two briefs: neither may be lost.
    taken = document["id"] in {each["id"] for each in here}
    data.catalogue.put(table, _content(document) if taken else document)


def _content(document: dict[str, Any]) -> dict[str, Any]:
    return {name: value for name, value in document.items() if name != "id"}
