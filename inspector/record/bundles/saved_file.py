"""The file in which a browser saved what waits on a device, read as a stranger's.

Its entries and photos are taken in as those of a live hand-over are. It may have hundreds of
photos, so they are read one at a time: the part before `,"photos":[` is JSON once it is closed, and
no photo has an inner brace. (In a JSON string a quotation mark is always escaped, so these bytes
cannot be part of somebody's text.)
"""

import base64
import binascii
import hashlib
import mmap
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field
from functools import partial
from pathlib import Path
from typing import Any

from inspector.record import durable, photos, strict_json
from inspector.record.entry import DEVICE
from inspector.record.inspection import Inspection
from inspector.record.inspections import INSPECTION_ID, Inspections
from inspector.record.photos.camera_time import keep_camera_time
from inspector.values.errors import InspectorError

FORMAT, VERSION = "inspector-waiting", 1
MOST_BYTES = 2_000_000_000
MOST_HEAD = 100_000_000
LONGEST_PHOTO = photos.MOST_BYTES * 4 // 3 + 1000
MOST_ENTRIES = 20_000
MOST_PHOTOS = 2_000
_PHOTOS = b',"photos":['
_BETWEEN_PHOTOS = (b",", b" ", b"\n", b"\r", b"\t")
_REFUSED = "refused: "

ReadPhoto = Callable[[], Any]


class SavedFileRefused(InspectorError):
    """Not a file of what waits that can be taken in; nothing was changed."""


@dataclass
class TakenFromFile:
    """What a file brought.

    Parameters
    ----------
    inspection : str
        Id of the inspection.
    entries, known, photos : int
        How many entries are new here, how many were here already, how many photos are new.
    refused : list of str
        One sentence for each entry and photo that was refused.
    """

    inspection: str
    entries: int = 0
    known: int = 0
    photos: int = 0
    refused: list[str] = field(default_factory=list)


def take_in(path: Path, inspections: Inspections) -> TakenFromFile:
    """Take in a saved file.

    Parameters
    ----------
    path : Path
    inspections : Inspections

    Returns
    -------
    TakenFromFile

    Raises
    ------
    SavedFileRefused
        With one sentence, where it is no such file.
    durable.NotWritten
        Where the disk does not take it; it may be taken in again then.
    photos.Busy
        Where too many photos are worked on; it may be taken in again then.
    """
    size = path.stat().st_size
    if not 0 < size <= MOST_BYTES:
        raise SavedFileRefused(
            f"The file has {size / 1e6:.0f} MB; a file of what waits has 1 byte to "
            f"{MOST_BYTES / 1e6:.0f} MB."
        )
    with open(path, "rb") as file, mmap.mmap(file.fileno(), 0, access=mmap.ACCESS_READ) as content:
        data, pictures = _parts(content)
        inspection = inspections.get(data["inspection"])
        taken = _take_entries(data, inspection)
        for number, read_photo in enumerate(pictures, 1):
            try:
                taken.photos += _take_photo(inspection, read_photo())
            # No fault of the photo: the whole file is to be brought in again, and nothing in it
            # counts as refused.
            except (durable.NotWritten, photos.Busy):
                raise
            except InspectorError as problem:
                taken.refused.append(f"photo {number}: {problem}")
    return taken


def _take_entries(data: dict[str, Any], inspection: Inspection) -> TakenFromFile:
    # Whoever brings the file in decides that it is taken; its authors may have had several names.
    entries = data["entries"]
    found = (entry.get("device") for entry in entries if isinstance(entry, dict))
    names = {name for name in found if isinstance(name, str)}
    taken = inspection.take_in(entries, names, origin=f"a file of {data['device']}")
    refused = [
        f"{entry}: {outcome.removeprefix(_REFUSED)}"
        for entry, outcome in taken.outcomes.items()
        if outcome.startswith(_REFUSED)
    ]
    # Counted apart, since a file is often brought in after the device has handed over most of it.
    known = sum(outcome == "already had" for outcome in taken.outcomes.values())
    return TakenFromFile(inspection.id, len(taken.stored), known, 0, refused)


def _parts(content: mmap.mmap) -> tuple[dict[str, Any], Iterator[ReadPhoto]]:
    """What is before the photos, and for each photo a function that reads it in its turn."""
    # Not parsed as one JSON text: with its photos it may be larger than the memory of the laptop.
    place = content.find(_PHOTOS)
    if place < 0:
        if len(content) > MOST_HEAD:
            raise SavedFileRefused(
                "The file is not laid out as the walk page saves it. Save it again from the device."
            )
        # Written by something else than the walk page, in another order of keys: small enough to be
        # read whole.
        data = _checked(strict_json.loads(content[:]))
        return data, (partial(_itself, photo) for photo in data["photos"])
    if place > MOST_HEAD:
        raise SavedFileRefused(
            f"The file has more than {MOST_HEAD / 1e6:.0f} MB of entries; that is more than is "
            "taken in."
        )
    head = _checked({**_head(content[:place]), "photos": []})
    return head, _pictures(content, place + len(_PHOTOS))


def _itself(photo: Any) -> Any:
    return photo


def _head(data: bytes) -> dict[str, Any]:
    found = strict_json.loads(data + b"}")
    return found if isinstance(found, dict) else {}


def _pictures(content: mmap.mmap, place: int) -> Iterator[ReadPhoto]:
    """Find each photo by its braces, without reading the file as a whole."""
    for _ in range(MOST_PHOTOS):
        while content[place : place + 1] in _BETWEEN_PHOTOS:
            place += 1
        if content[place : place + 1] == b"]":
            return
        # Base64 holds no brace, so that the first one ends the photo.
        end = content.find(b"}", place, place + LONGEST_PHOTO) + 1
        if not end:
            yield _cut_short
            return
        yield partial(_read_photo, content, place, end)
        place = end
    yield _too_many


def _read_photo(content: mmap.mmap, start: int, end: int) -> Any:
    return strict_json.loads(content[start:end])


def _cut_short() -> None:
    raise SavedFileRefused(
        "the file ends or is damaged here; what came before it was taken in. Save it again from "
        "the device."
    )


def _too_many() -> None:
    raise SavedFileRefused(f"a file has at most {MOST_PHOTOS} photos; what is beyond was not read.")


def _checked(data: Any) -> dict[str, Any]:
    """The head of a file whose format, names and lists are right; SavedFileRefused otherwise."""
    if not _is_of_this_format(data):
        raise SavedFileRefused(
            f"The file is not of the format {FORMAT!r}, version {VERSION}, that the walk page "
            "saves. Save it again from the device."
        )
    for key, pattern in (("inspection", INSPECTION_ID), ("device", DEVICE)):
        if not isinstance(data.get(key), str) or not pattern.fullmatch(data[key]):
            kind = "an id" if key == "inspection" else "a name"
            raise SavedFileRefused(
                f"The file names no {key}; expected {kind} of lower case letters, digits and "
                "hyphens."
            )
    for key, most in (("entries", MOST_ENTRIES), ("photos", MOST_PHOTOS)):
        if not isinstance(data.get(key), list) or len(data[key]) > most:
            raise SavedFileRefused(f"The file's {key} must be a list of at most {most}.")
    return data


def _is_of_this_format(data: Any) -> bool:
    if not isinstance(data, dict) or data.get("format") != FORMAT:
        return False
    version = data.get("version")
    # Python takes true for 1.
    return version == VERSION and version is not True


def _take_photo(inspection: Inspection, photo: Any) -> bool:
    """Take one photo or copy in; returns whether it is new here."""
    found = photo if isinstance(photo, Mapping) else {}
    sha, text = found.get("sha256"), found.get("base64")
    if not isinstance(sha, str) or not isinstance(text, str):
        raise SavedFileRefused("A photo in the file needs its sha256 and its base64.")
    try:
        data = base64.b64decode(text, validate=True)
    except (ValueError, binascii.Error) as problem:
        raise SavedFileRefused(
            "The photo in the file is not base64; the file may have been altered."
        ) from problem
    # A copy has another content than the original whose digest it carries.
    if found.get("size") == "copy":
        return photos.take_in_copy(inspection.folder, sha, data).new
    if hashlib.sha256(data).hexdigest() != sha:
        raise SavedFileRefused(
            "The photo in the file does not have the digest that the file names; it was altered or "
            "cut short."
        )
    taken = photos.take_in(inspection.folder, data)
    keep_camera_time(inspection, taken)
    return taken.new
