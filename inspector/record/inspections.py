"""All inspections of a data folder."""

import re
import secrets
import shutil
import threading
from collections import OrderedDict
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from weakref import WeakValueDictionary

from inspector.record import durable
from inspector.record.entry import now
from inspector.record.inspection import Inspection
from inspector.record.journal_files import JournalFiles
from inspector.record.own_numbers import NumbersGiven
from inspector.values.errors import InspectorError

INSPECTION_ID = re.compile(r"[a-z0-9][a-z0-9-]{0,59}")
# A comparison works on eight; with a few beside it, what is worked on is never read twice.
MOST_OPEN = 12


class NoSuchInspection(InspectorError):
    """There is no inspection of that id."""


class Inspections:
    """The folder of all inspections; those used last are kept open, the others are on disk only.

    Parameters
    ----------
    folder : Path
    host : str
        This computer's name, for what is recorded here.
    numbers : Path, optional
        The folder outside the data folder that remembers how far this computer has numbered.
    most_open : int
        How many are kept open beside those that somebody is working on.
    """

    def __init__(
        self, folder: Path, host: str, numbers: Path | None = None, *, most_open: int = MOST_OPEN
    ):
        self.folder, self.host, self.numbers = folder, host, numbers
        self.most_open = most_open
        # The ones used last, the latest at the end.
        self._open: OrderedDict[str, Inspection] = OrderedDict()
        # Every one that somebody holds. Two objects over one journal file would give a number
        # twice, so an inspection that is in use is never opened a second time.
        self._in_use: WeakValueDictionary[str, Inspection] = WeakValueDictionary()
        self._lock = threading.RLock()

    def ids(self) -> list[str]:
        """Return the ids of all inspections, by name."""
        names = [path.parent.name for path in self.folder.glob("*/checklists")]
        return sorted(name for name in names if INSPECTION_ID.fullmatch(name))

    def get(
        self, inspection_id: str, *, keep_open: bool = True, refresh: bool = True
    ) -> Inspection:
        """Return an inspection as it is on disk now.

        Parameters
        ----------
        inspection_id : str
        keep_open : bool
            Whether it is likely to be asked for again soon.
        refresh : bool
            Whether files that changed are read again; False for whoever calls `take_in` or `since`
            next, which do that themselves.

        Returns
        -------
        Inspection

        Raises
        ------
        NoSuchInspection
            With one sentence.
        """
        with self._lock:
            found = self._in_use.get(inspection_id)
            if found is None:
                folder, given = self._folder_of(inspection_id), self._given(inspection_id)
                found = Inspection(folder, self.host, given)
                self._in_use[inspection_id] = found
            if keep_open or not found.may_be_closed():
                self._open[inspection_id] = found
                self._open.move_to_end(inspection_id)
                self._close_the_oldest()
        if refresh:
            found.refresh()
        return found

    def _close_the_oldest(self) -> None:
        """Let go of those not used for longest; whoever works on one still has it."""
        for inspection_id in list(self._open)[: -self.most_open or None]:
            if self._open[inspection_id].may_be_closed():
                del self._open[inspection_id]

    def _given(self, inspection_id: str) -> NumbersGiven:
        return NumbersGiven(self.numbers / inspection_id if self.numbers else None)

    def _folder_of(self, inspection_id: str) -> Path:
        folder = self.folder / inspection_id
        if INSPECTION_ID.fullmatch(inspection_id) and (folder / "checklists").is_dir():
            return folder
        raise NoSuchInspection(
            f"There is no inspection {inspection_id!r} in {self.folder}; `inspector list` shows "
            "those that are there."
        )

    @contextmanager
    def paused(self, inspection_id: str) -> Iterator[JournalFiles]:
        """Let an inspection record nothing while this is entered; yields its journal files.

        A bundle may then append to its own file, whose new lines are read afterwards.

        Parameters
        ----------
        inspection_id : str
            It may be one that is not here yet.

        Raises
        ------
        durable.NotWritten
            Where what a failed write left behind cannot be cleared up even now.
        """
        try:
            found = self.get(inspection_id)
        except NoSuchInspection:
            folder, given = self.folder / inspection_id, self._given(inspection_id)
            files = JournalFiles(folder, self.host, given)
            # An import that was broken off may have left files there.
            files.refresh()
            yield files
            return
        with found.written_to() as files:
            yield files

    def create(self, checklists: Path, inspection_id: str = "") -> Inspection:
        """Begin an inspection: its folder with the checklists as they are today.

        Parameters
        ----------
        checklists : Path
            The folder of checklist files to be copied.
        inspection_id : str
            "" for one made of today's date.

        Returns
        -------
        Inspection

        Raises
        ------
        durable.NotWritten
            Where the disk does not take it; then nothing of it is left.
        """
        inspection_id = inspection_id or f"{now()[:10]}-{secrets.token_hex(3)}"
        folder = self.folder / inspection_id
        is_new = not folder.exists()
        try:
            self._fill(folder, checklists)
        except OSError as problem:
            if is_new:
                shutil.rmtree(folder, ignore_errors=True)
            raise durable.NotWritten(
                f"The disk did not take the new inspection ({problem.strerror or 'it is full'}); "
                "none was begun. Free some space, then try again."
            ) from problem
        return self.get(inspection_id)

    def _fill(self, folder: Path, checklists: Path) -> None:
        for name in ("journal", "photos", "derived"):
            (folder / name).mkdir(parents=True, exist_ok=True)
        # The checklists folder is what makes it an inspection, so it comes last and in one step.
        draft = folder / ".checklists"
        shutil.copytree(checklists, draft, dirs_exist_ok=True, ignore=_other_than_toml)
        draft.rename(folder / "checklists")

    def take_back(self, inspection_id: str) -> None:
        """Remove an inspection whose first entries the disk did not take.

        Parameters
        ----------
        inspection_id : str
            One with any entry stays as it is.
        """
        found = self.get(inspection_id)
        if not found.entries:
            self.forget(inspection_id)
            shutil.rmtree(found.folder, ignore_errors=True)

    def forget(self, inspection_id: str) -> None:
        """Close an inspection, so that the next `get` reads it anew."""
        with self._lock:
            self._open.pop(inspection_id, None)
            found = self._in_use.pop(inspection_id, None)
            if found:
                found.close()

    def close(self) -> None:
        """Close every inspection."""
        for inspection_id in list(self._in_use):
            self.forget(inspection_id)


def _other_than_toml(_: str, names: list[str]) -> list[str]:
    return [name for name in names if not name.endswith(".toml")]
