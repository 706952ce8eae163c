"""The catalogue: briefs, surveyors, settings and the list of inspections, in TinyDB.

TinyDB's own storage rewrites in place and can leave half a file; ours writes a sibling and renames
it, and keeps the file before it. An unreadable or empty catalogue is an error or is read from the
file before it, never "no data".
"""

import json
import secrets
import threading
from pathlib import Path
from typing import Any

from tinydb import TinyDB, where
from tinydb.storages import Storage

from inspector.record import durable
from inspector.values.errors import InspectorError

TABLES = ("briefs", "surveyors", "settings", "inspections", "devices", "shared", "rates")
OWNER_ONLY = 0o600


class CatalogueUnreadable(InspectorError):
    """The catalogue and its last generation are both damaged."""


class WholeFileStorage(Storage):
    """TinyDB storage: read, write, close; a write is old or new, never half."""

    def __init__(self, path: Path):
        self.path = Path(path)
        self.earlier = self.path.with_name(self.path.name + ".earlier")

    def read(self) -> dict | None:
        """Return the stored tables, None only where there never was a catalogue."""
        if not self.path.exists() and not self.earlier.exists():
            return None
        for candidate in (self.path, self.earlier):
            found = _load(candidate)
            if found is not None:
                return found
        raise CatalogueUnreadable(
            f"{self.path} and {self.earlier.name} are both unreadable. The inspections themselves "
            "are whole: move both files away and the list is built anew from the folders."
        )

    def write(self, data: dict) -> None:
        """Replace the file, and keep the one before it."""
        text = json.dumps(data, ensure_ascii=False, indent=1, allow_nan=False).encode("utf-8")
        if self.path.exists() and _load(self.path) is not None:
            durable.replace(self.earlier, self.path.read_bytes(), OWNER_ONLY)
        # It names the devices that may come in and keeps the digests of their tokens.
        durable.replace(self.path, text, OWNER_ONLY)

    def close(self) -> None:
        """Nothing is held open between writes."""


def _load(path: Path) -> dict | None:
    """The content of a file, None where it is not a whole catalogue."""
    try:
        found = json.loads(path.read_bytes())
    except (OSError, ValueError):
        return None
    return found if isinstance(found, dict) else None


class Catalogue:
    """Small tables of documents, each with an `id` of ours.

    All calls take one lock: TinyDB is not made for threads.
    """

    def __init__(self, path: Path):
        path.parent.mkdir(parents=True, exist_ok=True)
        self._lock = threading.RLock()
        self._db = TinyDB(path, storage=WholeFileStorage)

    def all(self, table: str) -> list[dict[str, Any]]:
        """Return every document of a table as copies, the first kept first."""
        with self._lock:
            self._db.table(table).clear_cache()
            return [dict(document) for document in self._db.table(table).all()]

    def get(self, table: str, document_id: str) -> dict[str, Any] | None:
        """Return one document as a copy, or None."""
        documents = self.all(table)
        return next((found for found in documents if found.get("id") == document_id), None)

    def put(self, table: str, document: dict[str, Any]) -> dict[str, Any]:
        """Keep a document.

        Parameters
        ----------
        table : str
            One of TABLES.
        document : dict
            Kept by its "id", or by a new one where it has none.

        Returns
        -------
        dict
            As it is kept.
        """
        if table not in TABLES:
            raise ValueError(f"{table!r} is not a table of the catalogue")
        kept = {**document, "id": document.get("id") or secrets.token_hex(4)}
        with self._lock:
            self._db.table(table).upsert(kept, where("id") == kept["id"])
        return kept

    def remove(self, table: str, document_id: str) -> None:
        """Take a document out of the catalogue (never an inspection's own record)."""
        with self._lock:
            self._db.table(table).remove(where("id") == document_id)

    def setting(self, name: str, default: Any = None) -> Any:
        """Return one setting, by name."""
        found = self.get("settings", name)
        return found["value"] if found else default

    def set(self, name: str, value: Any) -> None:
        """Keep one setting."""
        self.put("settings", {"id": name, "value": value})
