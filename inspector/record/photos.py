"""Photos: take in, verify, and make the copies that are shown. The only code that touches photo files.

The bytes that came are kept as they came, named by their SHA-256 and written once; what a screen or the report shows is always a JPEG of our own making.
The type is decided by content, never by a name, and a picture is decoded before it is accepted: a mere look at its header misses a file that was cut short.
"""

import contextlib
import hashlib
import io
import re
import threading
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path

from PIL import Image, ImageCms

from inspector.errors import InspectorError
from inspector.record import copies, durable
from inspector.record.kinds import SUFFIXES, heif_boxes, kind_of

MOST_BYTES = 25_000_000
MOST_PIXELS = 120_000_000
REPORT_SIDE = 1600
THUMB_SIDE = 320
_SHA = re.compile(r"[0-9a-f]{64}")
_KINDS = {"JPEG": "jpeg", "MPO": "jpeg", "PNG": "png", "WEBP": "webp"}
_ORIENTATION, _EXIF_BLOCK, _TAKEN, _TAKEN_OFFSET = 0x0112, 0x8769, 36867, 36881
_TURNS = {
    2: Image.Transpose.FLIP_LEFT_RIGHT, 3: Image.Transpose.ROTATE_180, 4: Image.Transpose.FLIP_TOP_BOTTOM, 5: Image.Transpose.TRANSPOSE,
    6: Image.Transpose.ROTATE_270, 7: Image.Transpose.TRANSVERSE, 8: Image.Transpose.ROTATE_90,
}
# A decoded 48-megapixel picture takes about 150 MB: two at a time keep both cores busy and the memory bounded.
_decoders = threading.BoundedSemaphore(2)
Image.MAX_IMAGE_PIXELS = MOST_PIXELS


class PhotoRefused(InspectorError):
    """Not a photo that can be kept; the sentence says why and what would be right."""


@dataclass(frozen=True, slots=True)
class Taken:
    """A photo as kept: digest, kind ("jpeg", "png", "webp", "heic"), upright size in pixels (0 where unknown), EXIF time (ISO) and whether it is new here."""

    sha: str
    kind: str
    width: int
    height: int
    taken_at: str | None
    new: bool


@dataclass(frozen=True)
class _Look:
    kind: str
    width: int = 0
    height: int = 0
    taken_at: str | None = None
    report: bytes = b""
    thumb: bytes = b""


def take_in(folder: Path, data: bytes) -> Taken:
    """Check `data`, keep it under `folder`/photos by its SHA-256 and make its report copy and thumbnail.

    Raises PhotoRefused for what is no whole picture of a known type, durable.NotWritten where the disk does not take it.
    """
    if not data:
        raise PhotoRefused("The photo is empty (0 bytes); send it again.")
    if len(data) > MOST_BYTES:
        raise PhotoRefused(f"The photo has {len(data) / 1e6:.1f} MB; at most {MOST_BYTES / 1e6:.0f} MB are taken in. Send a smaller copy.")
    look, sha = _look(data), hashlib.sha256(data).hexdigest()
    path = folder / "photos" / f"{sha}.{SUFFIXES[look.kind]}"
    new = not _holds(path, data)
    if new:
        path.parent.mkdir(parents=True, exist_ok=True)
        durable.replace(path, data)
    # The copies can be remade at any time, so a disk that is full just now must not refuse a photo that is already kept.
    with contextlib.suppress(durable.NotWritten):
        _keep_copies(folder, sha, look)
    return Taken(sha, look.kind, look.width, look.height, look.taken_at, new)


def _holds(path: Path, data: bytes) -> bool:
    return path.is_file() and path.stat().st_size == len(data) and path.read_bytes() == data


def original(folder: Path, sha: str) -> Path | None:
    """The file with the original bytes of a photo, or None."""
    if not _SHA.fullmatch(sha):
        return None
    candidates = (folder / "photos" / f"{sha}.{suffix}" for suffix in SUFFIXES.values())
    return next((path for path in candidates if path.is_file()), None)


def report_copy(folder: Path, sha: str) -> Path | None:
    """The upright JPEG for the report, remade if it is gone; from a device's copy until the original is here; None without either (HEIC needs pillow-heif)."""
    return _copy(folder, sha, "report")


def thumbnail(folder: Path, sha: str) -> Path | None:
    """The upright JPEG of at most 320 px, remade if it is gone; None without a readable original or copy."""
    return _copy(folder, sha, "thumb")


def verify(folder: Path) -> list[str]:
    """Hash every original anew; one sentence for each file that is no longer what its name says."""
    faults = []
    for path in sorted((folder / "photos").glob("*")):
        if path.name.startswith("."):
            continue
        if not _SHA.fullmatch(path.stem) or path.suffix[1:] not in SUFFIXES.values():
            faults.append(f"photos/{path.name} is not named like a photo of ours; it is not used.")
        elif not path.is_file() or hashlib.sha256(path.read_bytes()).hexdigest() != path.stem:
            faults.append(f"photos/{path.name} is damaged: its bytes no longer have the SHA-256 in its name. Restore it from a bundle or a backup.")
    return faults + copies.verify(folder)


def _copy(folder: Path, sha: str, size: str) -> Path | None:
    if not _SHA.fullmatch(sha):
        return None
    # An original that cannot be read here need not hide a copy that can. What is made of a copy has a name of its own, so it never stands in the way.
    return _made(folder, sha, size, original(folder, sha)) or _made(folder, f"{sha}.of-copy", size, copies.copy(folder, sha))


def _made(folder: Path, name: str, size: str, source: Path | None) -> Path | None:
    path = folder / "derived" / f"{name}.{size}.jpg"
    if source is None or path.is_file():
        return path if source else None
    try:
        _keep_copies(folder, name, _look(source.read_bytes()))
    except PhotoRefused:
        return None
    return path if path.is_file() else None


def take_in_copy(folder: Path, sha: str, data: bytes) -> Taken:
    """Check `data`, a device's smaller copy of the photo whose original has the digest `sha`, and keep it beside the originals (copies.py).

    Raises as take_in does; a copy of a photo that has one already is checked, then passed over.
    """
    if not _SHA.fullmatch(sha):
        raise PhotoRefused(f"{sha[:80]!r} is not the SHA-256 of a photo; 64 hexadecimal digits are expected.")
    if not 0 < len(data) <= MOST_BYTES:
        raise PhotoRefused(f"The copy has {len(data) / 1e6:.1f} MB; 1 byte to {MOST_BYTES / 1e6:.0f} MB are taken in.")
    look = _look(data)
    if look.kind == "heic":
        raise PhotoRefused("A copy is a JPEG, PNG or WebP picture; this one is HEIC. Send the original instead.")
    new = copies.keep(folder, sha, data, SUFFIXES[look.kind])
    return Taken(sha, look.kind, look.width, look.height, look.taken_at, new)


def missing(folder: Path, wanted: Iterable[str]) -> list[str]:
    """Of the digests that entries speak of, those whose original is not here; one sentence each, which says whether a copy stands in."""
    gone = sorted(sha for sha in wanted if original(folder, sha) is None)
    stands_in = {sha: "a device's copy stands in" if copies.copy(folder, sha) else "nor is a copy" for sha in gone}
    return [f"The original of photo {sha[:12]}… is not here; {stands_in[sha]}." for sha in gone]


def _keep_copies(folder: Path, sha: str, look: _Look) -> None:
    derived = folder / "derived"
    derived.mkdir(parents=True, exist_ok=True)
    for size, data in (("report", look.report), ("thumb", look.thumb)):
        path = derived / f"{sha}.{size}.jpg"
        if data and not path.is_file():
            durable.replace(path, data)


def _look(data: bytes) -> _Look:
    kind = kind_of(data)
    if kind is None:
        raise PhotoRefused("The file is not a photo by its content; JPEG, PNG, WebP and HEIC are taken in.")
    if kind == "heic":
        return _look_heic(data)
    if kind == "webp" and len(data) < 8 + int.from_bytes(data[4:8], "little"):
        raise _damaged(kind)
    try:
        with _decoders, Image.open(io.BytesIO(data), formats=("JPEG", "PNG", "WEBP")) as picture:
            return _looked(picture, _KINDS[picture.format or ""])
    except (Image.DecompressionBombError, Image.DecompressionBombWarning) as problem:
        raise _huge() from problem
    except PhotoRefused:
        raise
    except Exception as problem:  # noqa: BLE001  (decoders answer damage with a dozen kinds of error)
        raise _damaged(kind) from problem


def _damaged(kind: str) -> PhotoRefused:
    return PhotoRefused(f"The photo is damaged or cut short: it begins like {kind.upper()} but cannot be read to its end. Send it again.")


def _huge() -> PhotoRefused:
    return PhotoRefused(f"The photo has more than {MOST_PIXELS / 1e6:.0f} megapixels; send a smaller copy.")


def _looked(picture: Image.Image, kind: str) -> _Look:
    width, height = picture.size
    if width * height > MOST_PIXELS:
        raise _huge()
    factor = next((f for f in (8, 4, 2) if max(width, height) // f >= REPORT_SIDE), 1)
    # The JPEG decoder gives 1/2, 1/4 or 1/8 almost for nothing, if asked for with the picture's own shape.
    picture.draft("RGB", (width // factor, height // factor))
    picture.load()
    orientation, taken_at = _exif(picture)
    plain = _plain(picture)
    if plain.size == (width, height) and factor > 1:
        plain = plain.reduce(factor)
    if orientation in _TURNS:
        plain = plain.transpose(_TURNS[orientation])
    small = plain.copy()
    small.thumbnail((THUMB_SIDE, THUMB_SIDE), reducing_gap=2.0)
    if orientation >= 5:
        width, height = height, width
    return _Look(kind, width, height, taken_at, _jpeg(plain, 82), _jpeg(small, 78))


def _plain(picture: Image.Image) -> Image.Image:
    # To 8-bit RGB without transparency: see-through parts become white paper.
    profile = picture.info.get("icc_profile")
    if picture.mode.startswith("I"):
        # 16-bit grey: Pillow's own conversion clips everything above 255 to white.
        return picture.convert("I").point(lambda value: value * (1 / 256)).convert("L").convert("RGB")
    if picture.has_transparency_data:
        layer = picture.convert("RGBA")
        picture = Image.new("RGB", layer.size, "white")
        picture.paste(layer, mask=layer.getchannel("A"))
    elif picture.mode not in ("RGB", "CMYK"):
        picture = picture.convert("RGB")
    return _srgb(picture, profile)


def _srgb(picture: Image.Image, profile: bytes | None) -> Image.Image:
    if profile and b"sRGB" not in profile:
        with contextlib.suppress(ImageCms.PyCMSError, OSError, ValueError, TypeError):
            picture = ImageCms.profileToProfile(picture, io.BytesIO(profile), ImageCms.createProfile("sRGB"), outputMode="RGB")
    return picture if picture.mode == "RGB" else picture.convert("RGB")


def _jpeg(picture: Image.Image, quality: int) -> bytes:
    out = io.BytesIO()
    picture.info = {}  # neither comments nor EXIF travel into the copies
    picture.save(out, "JPEG", quality=quality)
    return out.getvalue()


def _exif(picture: Image.Image) -> tuple[int, str | None]:
    # (orientation 1 to 8, ISO time or None); a broken EXIF block must not cost the photo.
    try:
        exif = picture.getexif()
        block = exif.get_ifd(_EXIF_BLOCK)
        orientation = exif.get(_ORIENTATION, 1)
        return orientation if orientation in _TURNS else 1, _time(block.get(_TAKEN), block.get(_TAKEN_OFFSET))
    except Exception:  # noqa: BLE001  (see above: it comes broken in every shape)
        return 1, None


def _time(taken: object, offset: object) -> str | None:
    # EXIF writes "2026:05:02 09:14:07", and the offset, if at all, apart as "+02:00".
    try:
        moment = datetime.strptime(str(taken).strip("\0 "), "%Y:%m:%d %H:%M:%S")
    except ValueError:
        return None
    zone = str(offset).strip("\0 ")
    return moment.isoformat() + (zone if re.fullmatch(r"[+-]\d\d:\d\d", zone) else "")


def _look_heic(data: bytes) -> _Look:
    if sum(heif_boxes(data)) != len(data):
        raise _damaged("heic")
    try:
        import pillow_heif
    except ImportError:
        return _Look("heic")
    pillow_heif.register_heif_opener()
    # What this reader cannot show is still kept: another one may.
    with contextlib.suppress(Exception), _decoders, Image.open(io.BytesIO(data), formats=("HEIF",)) as picture:
        return _looked(picture, "heic")
    return _Look("heic")
