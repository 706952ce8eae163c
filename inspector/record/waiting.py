"""The file in which a browser saved what waits on a device: read as a stranger's, and taken in through the same doors as a live hand-over.

It may hold hundreds of photos, so they are read one at a time: the part before `,"photos":[` is JSON once it is closed, and no photo has an inner brace.
(Inside a JSON string a quotation mark is always escaped, so these bytes cannot stand in somebody's text.)
"""

import base64
import binascii
import hashlib
import mmap
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from inspector.errors import InspectorError
from inspector.record import durable, photos, strict_json
from inspector.record.entry import DEVICE
from inspector.record.store import INSPECTION_ID, Inspection, Inspections

FORMAT, VERSION = "inspector-waiting", 1
MOST_BYTES = 2_000_000_000
MOST_HEAD = 100_000_000
LONGEST_PHOTO = photos.MOST_BYTES * 4 // 3 + 1000
_PHOTOS = b',"photos":['
MOST_ENTRIES = 20_000
MOST_PHOTOS = 2_000


class WaitingRefused(InspectorError):
    """Not a file of what waits that can be taken in; nothing was changed."""


@dataclass
class Brought:
    """What a file brought: counts of entries and photos new here and here already, and a sentence for each that was refused."""

    inspection: str
    entries: int = 0
    known: int = 0
    photos: int = 0
    refused: list[str] = field(default_factory=list)


def take_in(path: Path, inspections: Inspections) -> Brought:
    """Take the file in; WaitingRefused with one sentence where it is not one, durable.NotWritten where the disk does not take it (take it in again then)."""
    size = path.stat().st_size
    if not 0 < size <= MOST_BYTES:
        raise WaitingRefused(f"The file has {size / 1e6:.0f} MB; a file of what waits has 1 byte to {MOST_BYTES / 1e6:.0f} MB.")
    with open(path, "rb") as file, mmap.mmap(file.fileno(), 0, access=mmap.ACCESS_READ) as whole:
        data, pictures = _parts(whole)
        inspection = inspections.get(data["inspection"])
        brought = _entries(data, inspection)
        for number, one in enumerate(pictures, 1):
            try:
                brought.photos += _take_photo(inspection.folder, one())
            except InspectorError as problem:
                if isinstance(problem, durable.NotWritten):
                    raise
                brought.refused.append(f"photo {number}: {problem}")
    return brought


def _entries(data: dict[str, Any], inspection: Inspection) -> Brought:
    device = data["device"]
    if device == inspection.host:
        raise WaitingRefused(f"The file says that it comes from {device}, which is this computer; its own entries are here already.")
    taken = inspection.take_in(data["entries"], only=device, origin=f"a file of {device}")
    refused = [f"{entry}: {fate.removeprefix('refused: ')}" for entry, fate in taken.fates.items() if fate.startswith("refused: ")]
    known = sum(fate == "already had" for fate in taken.fates.values())
    return Brought(inspection.id, len(taken.stored), known, 0, refused)


def _parts(whole: mmap.mmap) -> tuple[dict[str, Any], Iterator[Callable[[], Any]]]:
    # What stands before the photos, and the photos as things to be read when their turn comes.
    place = whole.find(_PHOTOS)
    if place < 0:
        if len(whole) > MOST_HEAD:
            raise WaitingRefused("The file is not laid out as the walk page saves it. Save it again from the device.")
        data = _checked(strict_json.loads(whole[:]))
        return data, ((lambda one=one: one) for one in data["photos"])
    if place > MOST_HEAD:
        raise WaitingRefused(f"The file has more than {MOST_HEAD / 1e6:.0f} MB of entries; that is more than is taken in.")
    return _checked({**_head(whole[:place]), "photos": []}), _pictures(whole, place + len(_PHOTOS))


def _head(data: bytes) -> dict[str, Any]:
    found = strict_json.loads(data + b"}")
    return found if isinstance(found, dict) else {}


def _pictures(whole: mmap.mmap, place: int) -> Iterator[Callable[[], Any]]:
    for _ in range(MOST_PHOTOS):
        while whole[place:place + 1] in (b",", b" ", b"\n", b"\r", b"\t"):
            place += 1
        if whole[place:place + 1] == b"]":
            return
        end = whole.find(b"}", place, place + LONGEST_PHOTO) + 1
        if not end:
            yield _cut_short
            return
        yield lambda start=place, end=end: strict_json.loads(whole[start:end])
        place = end
    yield _too_many


def _cut_short() -> None:
    raise WaitingRefused("the file ends or is damaged here; what stood before it was taken in. Save it again from the device.")


def _too_many() -> None:
    raise WaitingRefused(f"a file has at most {MOST_PHOTOS} photos; what is beyond was not read.")


def _checked(data: Any) -> dict[str, Any]:
    if not isinstance(data, dict) or data.get("format") != FORMAT or data.get("version") != VERSION or data["version"] is True:
        raise WaitingRefused(f"The file is not of the format {FORMAT!r}, version {VERSION}, that the walk page saves. Save it again from the device.")
    if not isinstance(data.get("inspection"), str) or not INSPECTION_ID.fullmatch(data["inspection"]):
        raise WaitingRefused("The file names no inspection; expected an id of lower case letters, digits and hyphens.")
    if not isinstance(data.get("device"), str) or not DEVICE.fullmatch(data["device"]):
        raise WaitingRefused("The file names no device; expected a name of lower case letters, digits and hyphens.")
    for key, most in (("entries", MOST_ENTRIES), ("photos", MOST_PHOTOS)):
        if not isinstance(data.get(key), list) or len(data[key]) > most:
            raise WaitingRefused(f"The file's {key} must be a list of at most {most}.")
    return data


def _take_photo(folder: Path, one: Any) -> bool:
    sha, text = (one.get("sha256"), one.get("base64")) if isinstance(one, Mapping) else (None, None)
    if not isinstance(sha, str) or not isinstance(text, str):
        raise WaitingRefused("A photo in the file needs its sha256 and its base64.")
    try:
        data = base64.b64decode(text, validate=True)
    except (ValueError, binascii.Error) as problem:
        raise WaitingRefused("The photo in the file is not base64; the file may have been altered.") from problem
    if one.get("size") == "copy":
        return photos.take_in_copy(folder, sha, data).new
    if hashlib.sha256(data).hexdigest() != sha:
        raise WaitingRefused("The photo in the file does not have the digest that the file names; it was altered or cut short.")
    return photos.take_in(folder, data).new
