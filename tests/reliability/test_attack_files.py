"""Files that attack: pictures that lie, bundles that lead out, unpack to death or hide other
things. Refused with a sentence, with nothing changed."""

import hashlib
import io
import json
import struct
import zipfile
import zlib

import pytest
from PIL import Image


def png(width, height, packed=b"", kind=b"\x08\x00\x00\x00\x00"):
    def chunk(name, data):
        return (
            struct.pack(">I", len(data)) + name + data + struct.pack(">I", zlib.crc32(name + data))
        )

    return (
        b"\x89PNG\r\n\x1a\n"
        + chunk(b"IHDR", struct.pack(">II", width, height) + kind)
        + chunk(b"IDAT", packed)
        + chunk(b"IEND", b"")
    )


def a_jpeg(size=(400, 300)):
    out = io.BytesIO()
    Image.effect_noise(size, 90).save(out, "JPEG")
    return out.getvalue()


def lying_pictures():
    """Pictures that are none, cut short, or would unpack to far more than they are."""
    whole = a_jpeg()
    return {
        "bomb": png(30_000, 30_000, zlib.compress(bytes(2_000_000), 9)),
        "claims a million by a million": png(1_000_000, 1_000_000),
        "no size": png(0, 0),
        "cut": whole[: len(whole) // 2],
        "head alone": whole[:20],
        "page": b"<html><script>alert(1)</script>",
        "svg": b'<svg xmlns="http://www.w3.org/2000/svg"/>',
        "gif": b"GIF89a" + bytes(100),
        "lies about its height": whole.replace(b"\x01\x2c\x01\x90", b"\xff\xff\xff\xff"),
        "pdf": b"%PDF-1.7\n" + bytes(200),
        "webp cut": b"RIFF\xff\xff\xff\x7fWEBPVP8 ",
        "heic boxes": b"\0\0\0\x18ftypheic\0\0\0\0" + b"\xff" * 40,
    }


@pytest.mark.parametrize("name", sorted(lying_pictures()))
def test_a_lying_picture_is_refused_and_not_kept(ship, name):
    """Bombs, cut files, other kinds: a sentence, soon, and no file."""
    data, before = lying_pictures()[name], ship.state()
    sha = hashlib.sha256(data).hexdigest()
    pass_of = {"Authorization": f"Bearer {ship.token}", "X-Digest": f"sha256={sha}"}
    base = f"/exchange/{ship.id}/photo"
    answers = [
        ship.from_network("PUT", f"{base}/{one}", pass_of, data=data)
        for one in (f"{sha}?size=original", f"{'a' * 64}?size=copy")
    ]

    assert [400, 400] == [answer.status_code for answer in answers]
    assert before == ship.state()


def bundle_of(files, manifest=None, **more):
    """A bundle with these files, which its manifest lists as they are."""
    out = io.BytesIO()
    listed = {
        name: {"sha256": hashlib.sha256(data).hexdigest(), "bytes": len(data)}
        for name, data in files
    }
    whole = {
        "format": "vessel inspection bundle",
        "version": 1,
        "inspection": "evil",
        "files": listed,
        **(manifest or {}),
    }
    with zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, data in files:
            info = zipfile.ZipInfo(name)
            info.compress_type = zipfile.ZIP_DEFLATED
            info.external_attr = more.get("attributes", 0)
            archive.writestr(info, data)
        archive.writestr("manifest.json", json.dumps(whole))
    return out.getvalue()


GOOD = ("checklists/hull.toml", b"[system]\n")
EVIL_BUNDLES = {
    "death": lambda: bundle_of(
        [
            ("checklists/hull.toml", b"#" * 1_900_000),
            *((f"checklists/a{n}.toml", b"#" * 1_900_000) for n in range(40)),
        ]
    ),
    "escape": lambda: bundle_of([GOOD, ("../../escaped.toml", b"x")]),
    "absolute": lambda: bundle_of([GOOD, ("/tmp/escaped.toml", b"x")]),
    "drive": lambda: bundle_of([GOOD, ("C:\\escaped.toml", b"x")]),
    "inside": lambda: bundle_of([GOOD, ("photos/../../escaped.jpg", b"x")]),
    "nested": lambda: bundle_of([GOOD, ("photos/inner.zip", bundle_of([GOOD]))]),
    "nested as photo": lambda: bundle_of(
        [GOOD, ("photos/" + "0" * 64 + ".jpg", bundle_of([GOOD]))]
    ),
    "device": lambda: bundle_of([GOOD, ("checklists/con.toml", b"x")]),
    "id": lambda: bundle_of([GOOD], {"inspection": "../../evil"}),
    "many": lambda: bundle_of([GOOD, *((f"checklists/a{n}.toml", b"") for n in range(20_001))]),
    "deep": lambda: bundle_of([GOOD], {"files": json.loads("[" * 900 + "]" * 900)}),
    "program": lambda: bundle_of([GOOD, ("inspector.py", b"import os")]),
    "catalogue": lambda: bundle_of([GOOD, ("catalogue.json", b"{}")]),
}


@pytest.mark.filterwarnings("ignore:Duplicate name")
@pytest.mark.parametrize("name", sorted(EVIL_BUNDLES))
def test_an_evil_bundle_changes_nothing(ship, name):
    """Zips of death, paths that lead out, zips in zips: refused with a sentence, and not a file
    is new, in the data folder or beside it."""
    before, beside = ship.state(), sorted(ship.data.parent.rglob("*escaped*"))
    answer = ship.bring(EVIL_BUNDLES[name]())

    assert 400 == answer.status_code
    assert before == ship.state()
    assert beside == sorted(ship.data.parent.rglob("*escaped*"))


def test_a_link_in_a_bundle_is_never_made(ship):
    """What says of itself that it is a symbolic link is an ordinary file afterwards, with the
    bytes it had."""
    data = bundle_of(
        [("checklists/hull.toml", b"/etc/passwd")],
        {"inspection": "linked"},
        attributes=0o120777 << 16,
    )
    ship.bring(data)
    path = ship.data / "inspections" / "linked" / "checklists" / "hull.toml"

    assert (False, b"/etc/passwd") == (path.is_symlink(), path.read_bytes())
