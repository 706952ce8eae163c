"""What may be in a bundle, and how it is unpacked.

A bundle may come from a stranger's stick. It is unpacked into a quarantine folder under names that
we allow, and each file is counted and hashed while it is copied: only one that is right as a whole
is used.
"""

import errno
import hashlib
import json
import re
import shutil
import struct
import zipfile
import zlib
from pathlib import Path
from typing import Any

from inspector.record import photos
from inspector.record.inspections import INSPECTION_ID
from inspector.record.photos.picture_kind import SUFFIXES, kind_of
from inspector.values.errors import InspectorError

FORMAT, VERSION = "vessel inspection bundle", 1
MANIFEST = "manifest.json"
MOST_FILES = 20_000
MOST_BYTES = 8_000_000_000
# Of one file, by the part of the bundle that it is in.
MOST_OF_ONE = {
    "journal": 400_000_000,
    "photos": photos.MOST_BYTES,
    "copies": photos.MOST_BYTES,
    "checklists": 2_000_000,
}
MOST_MANIFEST = 8_000_000
# How many times larger than its packed size a file may be.
MOST_RATIO = 200
ROOM_LEFT = 100_000_000
_PIECE = 1 << 20
_NOT_A_ZIP = (
    zipfile.BadZipFile,
    zlib.error,
    struct.error,
    EOFError,
    NotImplementedError,
    RuntimeError,
    ValueError,
)
_NAMES = re.compile(
    r"journal/[a-z0-9][a-z0-9-]{0,39}\.jsonl|photos/[0-9a-f]{64}\.(jpg|png|webp|heic)"
    r"|copies/[0-9a-f]{64}\.[0-9a-f]{64}\.(jpg|png|webp)|checklists/[a-z0-9]+(-[a-z0-9]+)*\.toml"
)
# Names that Windows keeps for devices, with any ending.
_DEVICES = re.compile(r"(con|prn|aux|nul|com\d|lpt\d)\..*")


class BundleRefused(InspectorError):
    """Not a bundle that can be taken in; nothing was changed."""


def is_allowed_name(name: str) -> bool:
    """Tell whether a file of that name may be in a bundle, beside the manifest.

    Parameters
    ----------
    name : str
        With its folder, such as "journal/laptop.jsonl".

    Returns
    -------
    bool
    """
    return bool(_NAMES.fullmatch(name)) and not _DEVICES.fullmatch(name.partition("/")[2])


def unpack(zip_path: Path, quarantine: Path) -> str:
    """Unpack a bundle and check every file of it.

    Parameters
    ----------
    zip_path : Path
        The bundle.
    quarantine : Path
        An empty folder.

    Returns
    -------
    str
        The id of the inspection.

    Raises
    ------
    BundleRefused
        With one sentence.
    OSError
        Where the disk does not take it.
    """
    try:
        return _unpack_all(zip_path, quarantine)
    except _NOT_A_ZIP as problem:
        refusal: Exception = problem
    except OSError as problem:
        # A damaged directory of the zip file sends the reader to places before the file's
        # beginning.
        if problem.errno != errno.EINVAL:
            raise
        refusal = problem
    raise BundleRefused(
        f"{zip_path.name} is not a whole zip file ({refusal}). Copy the bundle again from where it "
        "was made."
    ) from refusal


def _unpack_all(zip_path: Path, quarantine: Path) -> str:
    """Check names and sizes first, so that a false bundle costs no room on the disk."""
    with zipfile.ZipFile(zip_path) as archive:
        members = _members(archive)
        manifest = _manifest(archive, members)
        unlike = (set(members) - {MANIFEST}) ^ set(manifest["files"])
        if unlike:
            raise BundleRefused(
                f"The bundle's manifest and its files differ, at {min(unlike)[:120]!r}. Make the "
                "bundle again."
            )
        _check_room(members, quarantine)
        for name, stated in manifest["files"].items():
            _copy_out(archive, members[name], stated, quarantine / name)
    if not any((quarantine / "checklists").glob("*.toml")):
        raise BundleRefused(
            "The bundle has no checklists, so it is not a whole inspection. Make the bundle again."
        )
    return manifest["inspection"]


def _members(archive: zipfile.ZipFile) -> dict[str, zipfile.ZipInfo]:
    """The files in the zip file by name, each checked before anything is unpacked."""
    found = archive.infolist()
    if len(found) > MOST_FILES:
        raise BundleRefused(
            f"The bundle has {len(found)} files; at most {MOST_FILES} are taken in."
        )
    members: dict[str, zipfile.ZipInfo] = {}
    for info in found:
        _check_member(info)
        if info.orig_filename in members:
            raise BundleRefused(
                f"The bundle holds {info.orig_filename} twice; each file may be in it once."
            )
        members[info.orig_filename] = info
    if sum(info.file_size for info in found) > MOST_BYTES:
        raise BundleRefused(
            f"The bundle would unpack to more than {MOST_BYTES / 1e9:.0f} GB; that is more than is "
            "taken in."
        )
    return members


def _check_member(info: zipfile.ZipInfo) -> None:
    name = info.orig_filename
    if name != MANIFEST and not is_allowed_name(name):
        raise BundleRefused(
            f"The bundle holds {name[:120]!r}; only a manifest, journals, photos and checklists "
            "may be in it."
        )
    if info.compress_type not in (zipfile.ZIP_STORED, zipfile.ZIP_DEFLATED):
        raise BundleRefused(
            f"{name} in the bundle is packed in a way that a bundle does not use. Make the bundle "
            "again."
        )
    most = MOST_OF_ONE.get(name.partition("/")[0], MOST_MANIFEST)
    if info.file_size > most or info.file_size > MOST_RATIO * max(info.compress_size, 1000):
        raise BundleRefused(
            f"{name} in the bundle would unpack to {info.file_size} bytes from "
            f"{info.compress_size}; that is more than is taken in."
        )


def _check_room(members: dict[str, zipfile.ZipInfo], folder: Path) -> None:
    # Once in quarantine, and once more when it is merged.
    needed = 2 * sum(info.file_size for info in members.values())
    free = shutil.disk_usage(folder).free
    if needed + ROOM_LEFT > free:
        raise BundleRefused(
            f"The bundle needs {needed / 1e6:.0f} MB here and {free / 1e6:.0f} MB are free. Free "
            "some space, then take it in again."
        )


def _manifest(archive: zipfile.ZipFile, members: dict[str, zipfile.ZipInfo]) -> dict[str, Any]:
    """The manifest, once its format, inspection and list of files are right."""
    if MANIFEST not in members:
        raise BundleRefused(
            f"The zip file has no {MANIFEST}, so it is not a bundle of an inspection."
        )
    try:
        with archive.open(members[MANIFEST]) as file:
            manifest = json.loads(file.read(MOST_MANIFEST))
    except (ValueError, RecursionError) as problem:
        raise BundleRefused(
            f"The bundle's {MANIFEST} is not readable JSON. Make the bundle again."
        ) from problem
    kind = (FORMAT, VERSION)
    if not isinstance(manifest, dict) or (manifest.get("format"), manifest.get("version")) != kind:
        raise BundleRefused(
            f"The bundle's {MANIFEST} is not of the kind {FORMAT!r}, version {VERSION}. Take it in "
            "with the program version that made it."
        )
    if not _is_inspection_id(manifest.get("inspection")):
        raise BundleRefused(
            "The bundle's manifest names no inspection; expected an id of lower case letters, "
            "digits and hyphens."
        )
    files = manifest.get("files")
    if not isinstance(files, dict) or not all(isinstance(each, dict) for each in files.values()):
        raise BundleRefused(
            "The bundle's manifest lists no files; expected the SHA-256 and length of each."
        )
    return manifest


def _is_inspection_id(found: Any) -> bool:
    if not isinstance(found, str) or not INSPECTION_ID.fullmatch(found):
        return False
    return not _DEVICES.fullmatch(found + ".")


def _copy_out(
    archive: zipfile.ZipFile, info: zipfile.ZipInfo, stated: dict[str, Any], target: Path
) -> None:
    """Unpack one file and check it against the manifest and its own name."""
    target.parent.mkdir(exist_ok=True)
    name, digest, count, head = info.orig_filename, hashlib.sha256(), 0, b""
    with archive.open(info) as source, open(target, "wb") as file:
        while piece := source.read(_PIECE):
            head, count = head or piece[:64], count + len(piece)
            if count > info.file_size:
                raise BundleRefused(
                    f"{name} in the bundle is longer than the bundle says; nothing was taken in."
                )
            digest.update(piece)
            file.write(piece)
    if digest.hexdigest() != stated.get("sha256") or count != stated.get("bytes"):
        raise BundleRefused(
            f"{name} in the bundle does not have the SHA-256 and length of the manifest; nothing "
            "was taken in. Copy the bundle again."
        )
    fits_name = (target.stem, target.suffix[1:]) == (
        digest.hexdigest(),
        SUFFIXES.get(kind_of(head) or ""),
    )
    if name.startswith("photos/") and not fits_name:
        raise BundleRefused(
            f"{name} in the bundle is not the photo that its name says; nothing was taken in."
        )
