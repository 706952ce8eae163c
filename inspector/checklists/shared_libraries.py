"""Keeps the checklists last read, so that folders with the same files are read once."""

import hashlib
import threading
from collections import OrderedDict
from pathlib import Path

from inspector.checklists.loader import read_library
from inspector.checklists.model import Library

# Inspections of one year share their checklists, so that a few serve them all.
MOST_LIBRARIES = 6


class SharedLibraries:
    """Checklists by the content of their files, since every inspection has copies of its own."""

    def __init__(self):
        self._kept: OrderedDict[tuple[str, bool], Library] = OrderedDict()
        self._lock = threading.Lock()

    def of(self, folder: Path, check_criteria: bool = False) -> Library:
        """Return the checklists of a folder, read only where none with the same files is kept.

        Parameters
        ----------
        folder : Path
        check_criteria : bool
            As for ``read_library``.

        Returns
        -------
        Library

        Raises
        ------
        ChecklistFaults
            Each time: what has faults is not kept.
        """
        key = (_digest_of_files(folder), check_criteria)
        with self._lock:
            if key not in self._kept:
                self._kept[key] = read_library(folder, check_criteria)
            self._kept.move_to_end(key)
            while len(self._kept) > MOST_LIBRARIES:
                self._kept.popitem(last=False)
            return self._kept[key]


def _digest_of_files(folder: Path) -> str:
    digest = hashlib.sha256()
    for path in sorted(folder.rglob("*.toml")):
        digest.update(f"{path.relative_to(folder)}\n{path.stat().st_size}\n".encode())
        digest.update(path.read_bytes())
    return digest.hexdigest()


SHARED = SharedLibraries()
