"""All inspections of a data folder as summaries: kept ones at once, missing ones in the background.

At a thousand inspections the list may neither open each of them nor keep them in memory.
"""

import threading
from collections.abc import Callable, Iterator
from contextlib import suppress
from dataclasses import dataclass

from inspector.services import summary_files
from inspector.services.data_folder import DataFolder
from inspector.services.summary import Row, empty_row, summary_of
from inspector.values.errors import InspectorError

# So few are read while a page waits; where there are more, rows say that they are being read.
AT_ONCE = 8


@dataclass(frozen=True)
class Progress:
    """How far the reading of missing summaries is.

    Parameters
    ----------
    done, total : int
        Inspections.
    running : bool
        Whether it goes on.
    """

    done: int
    total: int
    running: bool


class Shelf:
    """The summaries of one data folder. Thread-safe.

    Parameters
    ----------
    data : DataFolder
    """

    def __init__(self, data: DataFolder):
        self.data = data
        self._known: dict[str, tuple[str, Row]] = {}
        self._lock = threading.Lock()
        self._maker: threading.Thread | None = None
        self._stop = threading.Event()
        self._total, self._done = 0, 0
        self._stopped_by_user = False

    def rows(self, progress: Callable[[int, int], None] | None = None) -> list[Row]:
        """Return a row for each inspection, newest first, making every summary that is missing.

        Parameters
        ----------
        progress : callable, optional
            Called with how many of how many missing ones are made.

        Returns
        -------
        list of dict
        """
        found = list(self._looked_up())
        # The mark as it was looked up: entries that come meanwhile make the row stale, not wrong.
        missing = [(inspection_id, mark) for inspection_id, mark, row in found if _is_missing(row)]
        made = {}
        for number, (inspection_id, mark) in enumerate(missing, 1):
            made[inspection_id] = self._make(inspection_id, mark)
            if progress:
                progress(number, len(missing))
        return [made.get(inspection_id) or row for inspection_id, _, row in found]

    def rows_at_once(self) -> list[Row]:
        """Return the same without waiting: where many are missing, they are made meanwhile.

        Returns
        -------
        list of dict
            One whose summary is missing has ``reading`` set.
        """
        found = list(self._looked_up())
        missing = [each for each in found if _is_missing(each[2])]
        if len(missing) <= AT_ONCE:
            made = {each: self._make(each, mark) for each, mark, _ in missing}
        else:
            made = {each: {**(row or empty_row(each)), "reading": True} for each, _, row in missing}
            self._start_making(len(missing))
        return [made.get(inspection_id) or row for inspection_id, _, row in found]

    def row(self, inspection_id: str) -> Row:
        """Return the row of one inspection, made where it is missing.

        Parameters
        ----------
        inspection_id : str

        Returns
        -------
        dict
        """
        mark = self._mark(inspection_id)
        row = self._kept(inspection_id, mark)
        return self._make(inspection_id, mark) if _is_missing(row) else row

    def progress(self) -> Progress:
        """Return how far the reading in the background is.

        Returns
        -------
        Progress
        """
        with self._lock:
            running = self._maker is not None and self._maker.is_alive()
            return Progress(self._done, self._total, running)

    def stop(self) -> None:
        """Stop reading in the background, and do not begin again until `go_on`."""
        self._stopped_by_user = True
        self.close()

    def go_on(self) -> None:
        """Read on in the background when the list is shown the next time."""
        self._stopped_by_user = False

    def close(self) -> None:
        """Stop reading in the background; the inspection being read is finished first."""
        # Waited for, so that no thread writes into a folder that is being closed.
        self._stop.set()
        with self._lock:
            maker = self._maker
        if maker is not None:
            maker.join()

    def _looked_up(self) -> Iterator[tuple[str, str, Row | None]]:
        """(id, mark, row or None) of every inspection, newest first."""
        # The newest first, since those are on the first page.
        for inspection_id in reversed(self.data.inspections.ids()):
            mark = self._mark(inspection_id)
            yield inspection_id, mark, self._kept(inspection_id, mark)

    def _mark(self, inspection_id: str) -> str:
        return summary_files.mark_of_record(self.data.inspections.folder / inspection_id)

    def _kept(self, inspection_id: str, mark: str) -> Row | None:
        known = self._known.get(inspection_id)
        if known and known[0] == mark:
            return known[1]
        row = summary_files.read(self.data.inspections.folder / inspection_id, mark)
        if row is not None:
            self._known[inspection_id] = (mark, row)
        return row

    def _make(self, inspection_id: str, mark: str) -> Row:
        row = summary_of(self.data, inspection_id)
        # One that cannot be read may be readable the next time, without a change of its own.
        if not row["wrong"]:
            summary_files.write(self.data.inspections.folder / inspection_id, mark, row)
            self._known[inspection_id] = (mark, row)
        return row

    def _start_making(self, total: int) -> None:
        with self._lock:
            running = self._maker is not None and self._maker.is_alive()
            if running or self._stopped_by_user:
                return
            self._stop.clear()
            self._done, self._total = 0, total
            # A daemon: half a summary has another checksum and is made again.
            self._maker = threading.Thread(target=self._make_missing, daemon=True)
            self._maker.start()

    def _make_missing(self) -> None:
        """Make what is missing, one after the other, until that is done or stopped."""
        for inspection_id, mark, row in self._looked_up():
            if self._stop.is_set():
                return
            if _is_missing(row):
                # Taken out or unreadable meanwhile: the list will say so.
                with suppress(InspectorError, OSError):
                    self._make(inspection_id, mark)
                self._done += 1


def _is_missing(row: Row | None) -> bool:
    """Whether a summary must be made: there is none, or an earlier program made it."""
    return row is None or bool(row.get("earlier"))
