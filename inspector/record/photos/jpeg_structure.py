"""The segments of a JPEG, looked through before it is decoded.

A few bytes can make a decoder visit every block of a large picture hundreds of times. So scans are
counted and blocks added up first, and the decoder receives only the segments that it needs.
"""

import re
import struct
from collections.abc import Iterator
from dataclasses import dataclass, field
from itertools import islice

from inspector.record.photos.photo_refusals import PhotoRefused, damaged
from inspector.values.text import counted

# A camera's progressive picture has 10 scans, a well packed one about 20. Model of our own.
MOST_SCANS = 100
# A picture of 48 megapixels at full colour resolution in the usual 10 scans has 10.5 million.
MOST_BLOCK_VISITS = 16_000_000
# All coefficients of a picture in several scans are in memory at once, 2 bytes each.
MOST_COEFFICIENT_BYTES = 240_000_000
MOST_SEGMENTS = 4_000
_MARKER = re.compile(rb"\xff[\x01-\xcf\xd8-\xfe]")
_START_OF_SCAN, _END, _FRAMES = 0xDA, 0xD9, (0xC0, 0xC1, 0xC2)
_RARE_FRAMES = (0xC3, 0xC5, 0xC6, 0xC7, 0xC9, 0xCA, 0xCB, 0xCD, 0xCE, 0xCF)
# Tables, restart interval, JFIF and Adobe's colour transform.
_NEEDED = (0xDB, 0xC4, 0xDD, 0xE0, 0xEE, *_FRAMES)
_BYTES_OF_BLOCK = 128


@dataclass
class JpegStructure:
    """What was found in the segments.

    Parameters
    ----------
    needed : bytes
        The picture with only those segments that the decoder needs.
    exif : bytes
        The EXIF block, or nothing.
    blocks : dict of int to int
        Component -> its blocks of 8 x 8.
    scans : list of bytes
        The components of each scan.
    progressive : bool
    """

    needed: bytes = b""
    exif: bytes = b""
    blocks: dict[int, int] = field(default_factory=dict)
    scans: list[bytes] = field(default_factory=list)
    progressive: bool = False

    @property
    def coefficient_bytes(self) -> int:
        """What the decoder keeps of the whole picture until the last scan [bytes]."""
        # A picture in one scan is decoded row by row, and needs no memory for its coefficients.
        in_parts = any(len(scan) < len(self.blocks) for scan in self.scans)
        several = self.progressive or in_parts or len(self.scans) > 1
        return sum(self.blocks.values()) * _BYTES_OF_BLOCK if several else 0

    @property
    def block_visits(self) -> int:
        """How many blocks all scans together pass through."""
        return sum(self.blocks.get(component, 0) for scan in self.scans for component in scan)


def look_through(data: bytes) -> JpegStructure:
    """Look through the segments of a JPEG.

    Parameters
    ----------
    data : bytes
        The whole file.

    Returns
    -------
    JpegStructure

    Raises
    ------
    PhotoRefused
        Where its segments make no picture, or one that takes too long or too much to decode.

    References
    ----------
    ITU-T T.81 (1992), Annex B: markers, frame and scan headers. *From memory.*
    """
    found, head = JpegStructure(), [b"\xff\xd8"]
    first_scan = end = 0
    for marker, start, stop in _segments(data):
        body = data[start + 4 : stop]
        if marker == _START_OF_SCAN:
            first_scan = first_scan or start
            found.scans.append(_components_of_scan(body))
        elif marker == _END:
            end = stop
        # Only what a decoder needs goes on: it never sees comments and makers' notes.
        elif not first_scan and _is_needed(marker, body):
            head.append(data[start:stop])
        elif marker == 0xE1 and body.startswith(b"Exif\0\0"):
            found.exif = found.exif or body
        _read_frame(found, marker, body)
    if not first_scan or not found.blocks:
        raise damaged("jpeg")
    _refuse_costly(found)
    found.needed = b"".join([*head, data[first_scan : end or len(data)]])
    return found


def _segments(data: bytes) -> Iterator[tuple[int, int, int]]:
    """Marker, start and end of each segment up to the end of the picture; what is between them is
    skipped."""
    place = 2
    # Bounded, since a file of millions of empty segments would take minutes.
    for _ in range(MOST_SEGMENTS):
        match = _MARKER.search(data, place)
        if match is None:
            return
        marker, start = data[match.start() + 1], match.start()
        # Markers without a length behind them.
        if marker in (_END, 0x01, 0xD8):
            place = start + 2
        else:
            place = start + 2 + int.from_bytes(data[start + 2 : start + 4], "big")
        yield marker, start, place
        if marker == _END:
            return
    raise PhotoRefused(
        f"The photo has more than {MOST_SEGMENTS} JPEG segments; no camera writes that. Save it "
        "as a new JPEG."
    )


def _is_needed(marker: int, body: bytes) -> bool:
    return marker in _NEEDED or (marker == 0xE2 and body.startswith(b"ICC_PROFILE\0"))


def _components_of_scan(body: bytes) -> bytes:
    """The components that a scan names, a byte each."""
    count = body[0] if body else 0
    # Every other byte is a component's id, the ones between name its tables.
    return bytes(islice(body[1:], 0, 2 * count, 2))


def _read_frame(found: JpegStructure, marker: int, body: bytes) -> None:
    """Note kind and blocks of the picture, where the segment is the header of its frame."""
    if marker in _RARE_FRAMES:
        raise PhotoRefused(
            "The photo is a JPEG of a rare kind (lossless, hierarchical or arithmetic) that is not "
            "shown here. Save it as an ordinary JPEG."
        )
    if marker not in _FRAMES:
        return
    if found.blocks or len(body) < 6 or len(body) < 6 + 3 * body[5]:
        raise damaged("jpeg")
    found.progressive = marker == 0xC2
    height, width = struct.unpack(">HH", body[1:5])
    parts = [body[place : place + 2] for place in range(6, 6 + 3 * body[5], 3)]
    widest = max((part[1] >> 4 for part in parts), default=0)
    tallest = max((part[1] & 15 for part in parts), default=0)
    if not widest or not tallest:
        raise damaged("jpeg")
    for component, sampling in parts:
        # Rounded up, in blocks of 8 by 8 at the component's own resolution.
        across = -(-width * (sampling >> 4) // (8 * widest))
        down = -(-height * (sampling & 15) // (8 * tallest))
        found.blocks[component] = across * down


def _refuse_costly(found: JpegStructure) -> None:
    scans = len(found.scans)
    if scans > MOST_SCANS:
        raise PhotoRefused(
            f"The photo is a progressive JPEG of {scans} scans; at most {MOST_SCANS} are decoded. "
            "Save it as an ordinary JPEG."
        )
    too_much = found.coefficient_bytes > MOST_COEFFICIENT_BYTES
    if too_much or found.block_visits > MOST_BLOCK_VISITS:
        raise PhotoRefused(
            f"The photo is a progressive JPEG ({counted(scans, 'scan')}) with more blocks than can "
            "be decoded here. Save it as an ordinary (baseline) JPEG, or send a smaller copy."
        )
