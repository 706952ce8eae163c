"""What was refused is kept beside the journal, with the sentence why: shown to people, never folded, and bounded in size."""

import contextlib
import hashlib
import json
import os
from pathlib import Path
from typing import Any

from inspector.record import durable
from inspector.record.entry import now

MOST_BYTES = 2_000_000
LONGEST = 24_000


class Refusals:
    """One file of this computer's refusals. Not thread-safe; the inspection's lock covers it."""

    def __init__(self, folder: Path, host: str):
        self.folder, self.path = folder, folder / f"{host}.jsonl"
        self._digests: set[str] | None = None

    def keep(self, refused: list[tuple[Any, str]], origin: str) -> None:
        """Keep (what was handed over, the sentence) pairs; one that is kept already, or for which there is no room, is passed over.

        A disk that does not take them costs nothing but this copy: the device keeps its own.
        """
        if self._digests is None:
            self._digests = {hashlib.sha256(_same(row)).hexdigest() for row in _rows(self.path)}
        lines, size = [], self.path.stat().st_size if self.path.is_file() else 0
        for data, why in refused:
            row = {"at": now(), "from": origin, "why": why[:1000], "entry": _bounded(data)}
            digest, line = hashlib.sha256(_same(row)).hexdigest(), json.dumps(row).encode() + b"\n"
            if digest not in self._digests and size + len(line) <= MOST_BYTES:
                self._digests.add(digest)
                lines.append(line)
                size += len(line)
        if lines:
            with contextlib.suppress(OSError, durable.NotWritten):
                self._append(b"".join(lines))

    def _append(self, data: bytes) -> None:
        self.folder.mkdir(exist_ok=True)
        handle = os.open(self.path, os.O_RDWR | os.O_CREAT | os.O_APPEND | getattr(os, "O_BINARY", 0), 0o644)
        try:
            durable.append(handle, data)
        finally:
            os.close(handle)

    def all(self) -> list[dict[str, Any]]:
        """Every refusal kept here, of every computer: {"at", "from", "why", "entry"}, oldest first."""
        rows = [row for path in sorted(self.folder.glob("*.jsonl")) for row in _rows(path)]
        return sorted(rows, key=lambda row: row["at"])


def _bounded(data: Any) -> Any:
    try:
        text = json.dumps(data)
    except (ValueError, TypeError, RecursionError):
        return {"unreadable": True}
    return data if len(text) <= LONGEST else {"cut": text[:2000]}


def _same(row: dict[str, Any]) -> bytes:
    return json.dumps([row["from"], row["why"], row["entry"]], sort_keys=True).encode()


def _rows(path: Path) -> list[dict[str, Any]]:
    try:
        lines = path.read_bytes().split(b"\n")
    except OSError:
        return []
    rows = []
    for line in lines:
        with contextlib.suppress(ValueError, RecursionError):
            row = json.loads(line)
            if isinstance(row, dict) and all(isinstance(row.get(key), str) for key in ("at", "from", "why")) and "entry" in row:
                rows.append(row)
    return rows
