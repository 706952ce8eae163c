"""Pictures made to cost time or memory, each a few bytes that the decoder takes at their word."""

import io
import struct
import zlib

from PIL import Image

EOB_RUN_14 = 0xE0  # the symbol for "2**14 blocks, and what the next 14 bits add, are empty"


def segment(marker, body):
    """A JPEG segment with its length."""
    return struct.pack(">BBH", 0xFF, marker, len(body) + 2) + body


def huffman_table(place, symbol):
    """A table of a single code, the bit 0."""
    return segment(0xC4, bytes([place, 1]) + bytes(15) + bytes([symbol]))


def frame(kind, width, height, components=3):
    """The header of a JPEG frame in which no component is reduced."""
    named = b"".join(bytes([number, 0x11, 0]) for number in range(1, components + 1))
    return segment(kind, struct.pack(">BHHB", 8, height, width, components) + named)


def scan(components, first, last, approximation, body):
    """A scan: its header and its bits."""
    named = b"".join(bytes([number, 0]) for number in components)
    head = bytes([len(components)]) + named + bytes([first, last, approximation])
    return segment(0xDA, head) + body


def progressive_jpeg(width, height, scans, *, refine=False, components=3, frame_kind=0xC2):
    """A progressive JPEG of empty blocks, whose every scan makes the decoder visit all of them."""
    blocks = -(-width // 8) * -(-height // 8)
    all_components = range(1, components + 1)
    first = scan(all_components, 0, 0, 0, bytes(blocks * components // 8 + 1))
    # One code bit and 14 more of ones: 32,767 blocks are empty. 0111 1111 1111 1111 by 15 bits.
    runs = "011111111111111" * (blocks // 32_767 + 1)
    bits = int(runs.ljust(-(-len(runs) // 8) * 8, "1"), 2).to_bytes(-(-len(runs) // 8), "big")
    body = bits.replace(b"\xff", b"\xff\0")
    each = scan([1], 1, 63, 0x10 if refine else 0x00, body)
    return b"".join(
        (
            b"\xff\xd8",
            segment(0xDB, bytes([0]) + bytes([1]) * 64),
            frame(frame_kind, width, height, components),
            huffman_table(0x00, 0),
            huffman_table(0x10, EOB_RUN_14),
            first,
            each * scans,
            b"\xff\xd9",
        )
    )


def partial_jpeg(width, height):
    """A JPEG, not progressive, whose single scan has one of its three components."""
    blocks = -(-width // 8) * -(-height // 8)
    return b"".join(
        (
            b"\xff\xd8",
            segment(0xDB, bytes([0]) + bytes([1]) * 64),
            frame(0xC0, width, height),
            huffman_table(0x00, 0),
            huffman_table(0x10, 0),
            scan([1], 0, 63, 0, bytes(blocks // 4 + 1)),
            b"\xff\xd9",
        )
    )


def png_chunk(name, body):
    """A PNG chunk with its length and its check."""
    return struct.pack(">I", len(body)) + name + body + struct.pack(">I", zlib.crc32(name + body))


def png(width, height, depth=8, colour=6, *, more=b"", rows=None):
    """A PNG of empty rows, or of the rows given; `more` are chunks before its rows."""
    if rows is None:
        channels = {0: 1, 2: 3, 3: 1, 4: 2, 6: 4}[colour]
        packer = zlib.compressobj(9)
        row = bytes(1 + -(-width * channels * depth // 8))
        rows = b"".join(packer.compress(row) for _ in range(height)) + packer.flush()
    head = struct.pack(">IIBBBBB", width, height, depth, colour, 0, 0, 0)
    palette = png_chunk(b"PLTE", bytes(768)) if colour == 3 else b""
    return b"".join(
        (
            b"\x89PNG\r\n\x1a\n",
            png_chunk(b"IHDR", head),
            palette,
            more,
            png_chunk(b"IDAT", rows),
            png_chunk(b"IEND", b""),
        )
    )


def saved(kind, size, mode="RGB", colour=0, **options):
    """An ordinary picture of a single colour."""
    out = io.BytesIO()
    Image.new(mode, size, colour).save(out, kind, **options)
    return out.getvalue()


def box(name, body=b""):
    """A HEIF box with its length."""
    return struct.pack(">I", len(body) + 8) + name + body


def jpeg_with(more, size=(640, 480)):
    """An ordinary JPEG with these bytes behind its first two."""
    whole = saved("JPEG", size, colour=(200, 30, 30))
    return whole[:2] + more + whole[2:]


def exif_of_many_tags(tags=5_000, size=60_000):
    """An EXIF block whose every tag has nearly the whole block as its value."""
    entries = b"".join(
        struct.pack(">HHII", tag, 1, size, 8) for tag in range(40_000, 40_000 + tags)
    )
    block = b"MM\0*" + struct.pack(">IH", 8, tags) + entries
    return b"Exif\0\0" + block.ljust(size + 100, b"\0")


def exif_in_a_circle():
    """An EXIF block whose directory of the camera is the main directory."""
    entry = struct.pack(">HHII", 0x8769, 4, 1, 8)
    return b"Exif\0\0MM\0*" + struct.pack(">IH", 8, 1) + entry + struct.pack(">I", 8)


def webp_claiming(width, height):
    """A WebP whose header states another size than its pixels have."""
    whole = bytearray(saved("WEBP", (64, 64), lossless=True))
    bits = (width - 1) | (height - 1) << 14
    whole[21:25] = struct.pack("<I", bits)
    return bytes(whole)


def heic(*boxes):
    """A file that begins as a HEIC photo does."""
    return b"".join((box(b"ftyp", b"heic" + bytes(4) + b"mif1heic"), *boxes))


def heic_items(width, height):
    """The boxes that describe one picture of a size."""
    items = (box(name, bytes(8)) for name in (b"iloc", b"iinf", b"pitm"))
    size = box(b"ispe", bytes(4) + struct.pack(">II", width, height))
    return box(b"meta", b"".join((bytes(4), *items, size)))


def packed_zeros(length):
    """So many zero bytes, packed."""
    packer, part = zlib.compressobj(9), bytes(1_000_000)
    packed = [packer.compress(part) for _ in range(length // len(part))]
    return b"".join([*packed, packer.flush()])
