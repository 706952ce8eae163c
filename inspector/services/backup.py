"""Everything of a data folder as one file, to be brought back on another computer."""

import hashlib
import io
import json
import os
import tempfile
import zipfile
from collections.abc import Iterator
from datetime import UTC, date, datetime
from pathlib import Path
from typing import Any

from inspector import __version__
from inspector.record import durable
from inspector.record.bundles import bundle
from inspector.services.backup_contents import (
    CATALOGUE,
    FORMAT,
    MANIFEST,
    NOT_SETTINGS,
    TABLES,
    VERSION,
    is_allowed_name,
)
from inspector.services.data_folder import DataFolder

_PIECE = 1 << 20


def file_name() -> str:
    """Return the usual name of a backup that is made today.

    Returns
    -------
    str
    """
    return f"vessel-inspections-{date.today()}.backup.zip"


def write(data: DataFolder, out: Path) -> tuple[int, int, dict[str, str]]:
    """Write a backup, whole or not at all.

    Parameters
    ----------
    data : DataFolder
    out : Path
        An earlier file of that name is replaced by the whole new one.

    Returns
    -------
    tuple of (int, int, dict of str to str)
        How many inspections are in it, its size [bytes], and why others are not in it, by id.

    Raises
    ------
    durable.NotWritten
        Where the disk does not take it.
    """
    # Beside its target, since only within one file system can it take its place in one step.
    draft = out.with_name(f".{out.name}.{os.getpid()}.new")
    left_out: dict[str, str] = {}
    try:
        out.parent.mkdir(parents=True, exist_ok=True)
        with open(draft, "wb") as file:
            for piece in pieces(data, left_out):
                file.write(piece)
            size = file.tell()
            file.flush()
            os.fsync(file.fileno())
        os.replace(draft, out)
        durable.sync_folder(out.parent)
    except (OSError, durable.NotWritten) as problem:
        draft.unlink(missing_ok=True)
        reason = getattr(problem, "strerror", None) or problem
        raise durable.NotWritten(
            f"The backup {out} could not be written ({reason}). Free some space or name another "
            "place."
        ) from problem
    return len(data.inspections.ids()) - len(left_out), size, left_out


def pieces(data: DataFolder, left_out: dict[str, str] | None = None) -> Iterator[bytes]:
    """Make a backup piece by piece, so that it is never in memory as a whole.

    Parameters
    ----------
    data : DataFolder
    left_out : dict of str to str, optional
        Gets the id of each inspection that is not whole, and why.

    Yields
    ------
    bytes
        In the order of the file.
    """
    out, listed = _Pieces(), {}
    left_out = {} if left_out is None else left_out
    with zipfile.ZipFile(out, "w", zipfile.ZIP_STORED) as archive:
        for name, source in _sources(data, left_out):
            digest, count = hashlib.sha256(), 0
            info = zipfile.ZipInfo(name)
            with source, archive.open(info, "w", force_zip64=True) as member:
                while piece := source.read(_PIECE):
                    digest.update(piece)
                    count += len(piece)
                    member.write(piece)
                    yield out.taken()
            listed[name] = {"sha256": digest.hexdigest(), "bytes": count}
        # Last, because the digests are known only when everything has been written.
        archive.writestr(MANIFEST, json.dumps(_manifest(data, listed, left_out), indent=1))
    yield out.taken()


def _manifest(data: DataFolder, listed: dict[str, Any], left_out: dict[str, str]) -> dict[str, Any]:
    made = datetime.now(UTC).isoformat(timespec="seconds").replace("+00:00", "Z")
    head = {"format": FORMAT, "version": VERSION, "made": made, "program": __version__}
    return {**head, "computer": data.host, "files": listed, "left_out": left_out}


class _Pieces(io.RawIOBase):
    """A file that is only written to, and whose content is taken away piece by piece."""

    def __init__(self) -> None:
        super().__init__()
        self._kept: list[bytes] = []

    def writable(self) -> bool:
        return True

    def write(self, data: Any) -> int:
        self._kept.append(bytes(data))
        return len(data)

    def taken(self) -> bytes:
        """What was written since the last time."""
        kept, self._kept = self._kept, []
        return b"".join(kept)


def _sources(data: DataFolder, left_out: dict[str, str]) -> Iterator[tuple[str, Any]]:
    """(name in the backup, open file) of everything that belongs into it.

    An inspection that is not whole gets its reason into `left_out`, and keeps no other back.
    """
    # First, since a backup is recognised by it.
    yield CATALOGUE, io.BytesIO(json.dumps(_catalogue(data), ensure_ascii=False).encode())
    for path in sorted((data.path / "checklists").rglob("*.toml")):
        name = f"checklists/{path.relative_to(data.path / 'checklists').as_posix()}"
        if is_allowed_name(name):
            yield name, open(path, "rb")  # noqa: SIM115
    for inspection_id in data.inspections.ids():
        folder = data.inspections.folder / inspection_id
        for path in sorted((folder / "refused").glob("*.jsonl")):
            if is_allowed_name(f"refused/{inspection_id}/{path.name}"):
                yield f"refused/{inspection_id}/{path.name}", open(path, "rb")  # noqa: SIM115
        # One bundle at a time is on the disk twice.
        with tempfile.TemporaryDirectory(dir=_waiting_room(data)) as made:
            try:
                bundle.write(folder, Path(made) / "bundle.zip")
            except bundle.NotWhole as problem:
                # A broken inspection must not keep the others from being saved; it is named in the
                # manifest.
                left_out[inspection_id] = str(problem)
                continue
            yield f"inspections/{inspection_id}.zip", open(Path(made) / "bundle.zip", "rb")  # noqa: SIM115


def _waiting_room(data: DataFolder) -> Path:
    folder = data.path / "quarantine"
    folder.mkdir(mode=0o700, exist_ok=True)
    return folder


def _catalogue(data: DataFolder) -> dict[str, list[dict[str, Any]]]:
    """The tables of the catalogue, without passes and without what names this computer."""
    settings = data.catalogue.all("settings")
    kept = [each for each in settings if each["id"] not in NOT_SETTINGS]
    return {**{table: data.catalogue.all(table) for table in TABLES}, "settings": kept}
