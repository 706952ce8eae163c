"""A bundle: one inspection as a zip, out and in. Taking one in is a union, so it may be done in either direction, again, and in any order.

A bundle may come from a stranger's stick. It is unpacked into a quarantine folder under names that we allow, each file is counted and hashed while
it is copied, and only a bundle that is right as a whole is merged. Nothing that stands here is ever overwritten or removed.
"""

import errno
import hashlib
import json
import os
import re
import shutil
import struct
import tempfile
import zipfile
import zlib
from collections.abc import Callable
from contextlib import AbstractContextManager, nullcontext
from datetime import UTC, datetime
from pathlib import Path

from inspector.errors import InspectorError
from inspector.record import durable, photos
from inspector.record.entry import EntryRefused
from inspector.record.journal import from_line
from inspector.record.kinds import SUFFIXES, kind_of
from inspector.record.merging import merge
from inspector.record.store import INSPECTION_ID

FORMAT, VERSION = "vessel inspection bundle", 1
MANIFEST = "manifest.json"
MOST_FILES = 20_000
MOST_BYTES = 8_000_000_000
MOST_OF_ONE = {"journal": 400_000_000, "photos": photos.MOST_BYTES, "copies": photos.MOST_BYTES, "checklists": 2_000_000}
MOST_MANIFEST = 8_000_000
MOST_RATIO = 200
ROOM_LEFT = 100_000_000
_NOT_A_ZIP = (zipfile.BadZipFile, zlib.error, struct.error, EOFError, NotImplementedError, RuntimeError, ValueError)
_NAMES = re.compile(
    r"journal/[a-z0-9][a-z0-9-]{0,39}\.jsonl|photos/[0-9a-f]{64}\.(jpg|png|webp|heic)"
    r"|copies/[0-9a-f]{64}\.[0-9a-f]{64}\.(jpg|png|webp)|checklists/[a-z0-9]+(-[a-z0-9]+)*\.toml"
)
# Names that Windows keeps for devices, with any ending.
_DEVICES = re.compile(r"(con|prn|aux|nul|com\d|lpt\d)\..*")


class BundleRefused(InspectorError):
    """Not a bundle that can be taken in; nothing was changed."""


def write(inspection_folder: Path, out: Path) -> None:
    """Write the inspection in `inspection_folder` as a bundle to `out`, whole or not at all.

    A photo whose bytes no longer fit its name stays out and stands in the manifest's "left_out".
    Raises durable.NotWritten where the disk does not take it.
    """
    draft = out.with_name(f".{out.name}.{os.getpid()}.new")
    try:
        out.parent.mkdir(parents=True, exist_ok=True)
        with open(draft, "wb") as file:
            _pack(inspection_folder, file)
            file.flush()
            os.fsync(file.fileno())
        os.replace(draft, out)
        durable.sync_folder(out.parent)
    except OSError as problem:
        draft.unlink(missing_ok=True)
        raise durable.NotWritten(f"The bundle {out} could not be written ({problem.strerror or problem}). Free some space or name another place.") from problem


def _pack(folder: Path, file) -> None:
    listed, left_out = {}, []
    with zipfile.ZipFile(file, "w") as archive:
        for name in _contents(folder):
            data = (folder / name).read_bytes()
            if name.startswith("journal/"):
                data = _without_torn_end(data)
            digest = hashlib.sha256(data).hexdigest()
            if (named := _digest_in(name)) and digest != named:
                left_out.append(name)
                continue
            listed[name] = {"sha256": digest, "bytes": len(data)}
            _put(archive, name, data)
        made = datetime.now(UTC).isoformat(timespec="seconds").replace("+00:00", "Z")
        manifest = {"format": FORMAT, "version": VERSION, "inspection": folder.name, "made": made, "files": listed, "left_out": left_out}
        _put(archive, MANIFEST, json.dumps(manifest, indent=1).encode("utf-8"))


def _digest_in(name: str) -> str:
    # The digest that a photo's or copy's bytes must have by its name; "" for other files.
    part, _, own = name.partition("/")
    return own.split(".")[-2] if part in ("photos", "copies") else ""


def _put(archive: zipfile.ZipFile, name: str, data: bytes) -> None:
    # Photos are compressed already. A journal of many like lines is stored too where deflating it would look like a bomb to the reader.
    how = zipfile.ZIP_STORED if name.startswith(("photos/", "copies/")) or len(zlib.compress(data)) * (MOST_RATIO // 2) < len(data) else zipfile.ZIP_DEFLATED
    archive.writestr(zipfile.ZipInfo(name), data, how)


def _contents(folder: Path) -> list[str]:
    paths = (path for part in ("journal", "photos", "copies", "checklists") for path in sorted((folder / part).glob("*")))
    # A copy travels only while it stands in for its original.
    needed = (path for path in paths if path.parent.name != "copies" or photos.original(folder, path.name[:64]) is None)
    return [name for path in needed if _allowed(name := f"{path.parent.name}/{path.name}") and path.is_file()]


def _allowed(name: str) -> bool:
    return bool(_NAMES.fullmatch(name)) and not _DEVICES.fullmatch(name.partition("/")[2])


def _without_torn_end(data: bytes) -> bytes:
    # A line that is being appended at this moment is not evidence of damage; the next bundle brings it whole.
    whole, newline, end = data.rpartition(b"\n")
    try:
        from_line(end)
    except EntryRefused:
        return whole + newline
    return data


def take_in(
    zip_path: Path, inspections_folder: Path, host: str, pause: Callable[[str], AbstractContextManager] = nullcontext
) -> tuple[str, int, int]:
    """Merge a bundle into the folder of inspections; returns (inspection id, new entries, new photos).

    host: this computer's name; new entries go to its own journal file, whoever wrote them.
    pause: entered with the inspection's id while its files are appended to (a running program holds its own writing back: Inspections.paused).
    Raises BundleRefused, before anything is changed, for what is not a whole and honest bundle; durable.NotWritten where the disk does not take it
    (what was merged until then stays; taking the bundle in again completes it).
    """
    inspections_folder.mkdir(parents=True, exist_ok=True)
    quarantine = Path(tempfile.mkdtemp(prefix=".quarantine-", dir=inspections_folder))
    try:
        inspection_id = _unpack(zip_path, quarantine)
        with pause(inspection_id):
            return inspection_id, *merge(quarantine, inspections_folder / inspection_id, host)
    except OSError as problem:
        raise durable.NotWritten(f"The bundle {zip_path.name} could not be taken in ({problem.strerror or problem}). Free some space, then again.") from problem
    finally:
        shutil.rmtree(quarantine, ignore_errors=True)


def _unpack(zip_path: Path, quarantine: Path) -> str:
    try:
        return _unpack_all(zip_path, quarantine)
    except _NOT_A_ZIP as problem:
        refusal: Exception = problem
    except OSError as problem:
        # A damaged directory of the zip sends the reader to places before the file's beginning.
        if problem.errno != errno.EINVAL:
            raise
        refusal = problem
    raise BundleRefused(f"{zip_path.name} is not a whole zip file ({refusal}). Copy the bundle again from where it was made.") from refusal


def _unpack_all(zip_path: Path, quarantine: Path) -> str:
    with zipfile.ZipFile(zip_path) as archive:
        members = _members(archive)
        manifest = _manifest(archive, members)
        if set(members) - {MANIFEST} != set(manifest["files"]):
            odd = sorted((set(members) - {MANIFEST}) ^ set(manifest["files"]))[0]
            raise BundleRefused(f"The bundle's manifest and its files differ, at {odd[:120]!r}. Make the bundle again.")
        _room_for(members, quarantine)
        for name, stated in manifest["files"].items():
            _copy_out(archive, members[name], stated, quarantine / name)
    if not any((quarantine / "checklists").glob("*.toml")):
        raise BundleRefused("The bundle has no checklists, so it is not a whole inspection. Make the bundle again.")
    return manifest["inspection"]


def _members(archive: zipfile.ZipFile) -> dict[str, zipfile.ZipInfo]:
    found = archive.infolist()
    if len(found) > MOST_FILES:
        raise BundleRefused(f"The bundle has {len(found)} files; at most {MOST_FILES} are taken in.")
    members = {}
    for info in found:
        name = info.orig_filename
        if name != MANIFEST and not _allowed(name):
            raise BundleRefused(f"The bundle holds {name[:120]!r}; only a manifest, journals, photos and checklists may be in it.")
        if info.compress_type not in (zipfile.ZIP_STORED, zipfile.ZIP_DEFLATED):
            raise BundleRefused(f"{name} in the bundle is packed in a way that a bundle does not use. Make the bundle again.")
        if name in members:
            raise BundleRefused(f"The bundle holds {name} twice; each file may be in it once.")
        most = MOST_OF_ONE.get(name.partition("/")[0], MOST_MANIFEST)
        if info.file_size > most or info.file_size > MOST_RATIO * max(info.compress_size, 1000):
            raise BundleRefused(f"{name} in the bundle would unpack to {info.file_size} bytes from {info.compress_size}; that is more than is taken in.")
        members[name] = info
    if sum(info.file_size for info in found) > MOST_BYTES:
        raise BundleRefused(f"The bundle would unpack to more than {MOST_BYTES / 1e9:.0f} GB; that is more than is taken in.")
    return members


def _room_for(members: dict[str, zipfile.ZipInfo], folder: Path) -> None:
    # Once in quarantine, and once more when it is merged.
    needed, free = 2 * sum(info.file_size for info in members.values()), shutil.disk_usage(folder).free
    if needed + ROOM_LEFT > free:
        raise BundleRefused(f"The bundle needs {needed / 1e6:.0f} MB here and {free / 1e6:.0f} MB are free. Free some space, then take it in again.")


def _manifest(archive: zipfile.ZipFile, members: dict[str, zipfile.ZipInfo]) -> dict:
    if MANIFEST not in members:
        raise BundleRefused(f"The zip file has no {MANIFEST}, so it is not a bundle of an inspection.")
    try:
        with archive.open(members[MANIFEST]) as file:
            manifest = json.loads(file.read(MOST_MANIFEST))
    except (ValueError, RecursionError) as problem:
        raise BundleRefused(f"The bundle's {MANIFEST} is not readable JSON. Make the bundle again.") from problem
    if not isinstance(manifest, dict) or manifest.get("format") != FORMAT or manifest.get("version") != VERSION:
        raise BundleRefused(f"The bundle's {MANIFEST} is not of the kind {FORMAT!r}, version {VERSION}. Take it in with the program version that made it.")
    inspection_id, files = manifest.get("inspection"), manifest.get("files")
    if not isinstance(inspection_id, str) or not INSPECTION_ID.fullmatch(inspection_id) or _DEVICES.fullmatch(inspection_id + "."):
        raise BundleRefused("The bundle's manifest names no inspection; expected an id of lower case letters, digits and hyphens.")
    if not isinstance(files, dict) or not all(isinstance(stated, dict) for stated in files.values()):
        raise BundleRefused("The bundle's manifest lists no files; expected the SHA-256 and length of each.")
    return manifest


def _copy_out(archive: zipfile.ZipFile, info: zipfile.ZipInfo, stated: dict, target: Path) -> None:
    target.parent.mkdir(exist_ok=True)
    name, digest, count, head = info.orig_filename, hashlib.sha256(), 0, b""
    with archive.open(info) as source, open(target, "wb") as file:
        while piece := source.read(1 << 20):
            head, count = head or piece[:64], count + len(piece)
            if count > info.file_size:
                raise BundleRefused(f"{name} in the bundle is longer than the bundle says; nothing was taken in.")
            digest.update(piece)
            file.write(piece)
    if digest.hexdigest() != stated.get("sha256") or count != stated.get("bytes"):
        raise BundleRefused(f"{name} in the bundle does not have the SHA-256 and length of the manifest; nothing was taken in. Copy the bundle again.")
    if name.startswith("photos/") and (target.stem != digest.hexdigest() or SUFFIXES.get(kind_of(head) or "") != target.suffix[1:]):
        raise BundleRefused(f"{name} in the bundle is not the photo that its name says; nothing was taken in.")
