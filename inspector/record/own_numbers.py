"""Which numbers this computer has given, and which entries only pretend to be its own.

How far it has numbered is also kept outside the data folder: an older backup of that brings an
older journal back, and no number may be given twice.
"""

import os
import re
import secrets
from collections.abc import Collection, Iterable
from contextlib import suppress
from pathlib import Path

from inspector.record.entry import Entry
from inspector.record.journal import JournalContents, Lost, read_file

# A count that cannot be read: then every number may have been given.
EVERY = 999_999_999
_BINARY = getattr(os, "O_BINARY", 0)
_SUFFIX = re.compile(r"-[0-9a-f]{6}$")
_LONGEST_STEM = 33
_COUNT = re.compile(rb"([0-9]{9})\n")
# Bytes; a longer file is damaged in any case.
_LONGEST_COUNT = 100


def last_own_number(host: str, count: int, highest: int, lost: Collection[Lost]) -> int:
    """Return the highest number that this computer can have given, read or not.

    Parameters
    ----------
    host : str
        This computer's name.
    count, highest : int
        How many of its entries are whole, and the highest number among them.
    lost : collection of Lost
        What damaged lines of its own file held and what is not back.

    Returns
    -------
    int
    """
    own = [each.entry_id for each in lost if each.entry_id.startswith(f"{host}:")]
    numbers = [int(entry_id.rpartition(":")[2]) for entry_id in own]
    # Any damaged line may be of this computer, since the id in it may be what was damaged.
    # Numbers are given without holes, so none is above the count of the whole and the lost.
    return max([highest, count + len(lost), *numbers])


def last_number_in(contents: JournalContents, host: str) -> int:
    """Return the same for the contents of this computer's own file."""
    numbers = [entry.number for entry in contents.entries.values() if entry.device == host]
    lost = lost_entries(contents)
    return last_own_number(host, len(numbers), max(numbers, default=0), lost)


def lost_entries(contents: JournalContents) -> list[Lost]:
    """Return what damaged lines held and what is not whole elsewhere in the same contents."""
    lost = [each for damage in contents.damage for each in damage.lost]
    return [each for each in lost if not each.is_entry(contents.entries.get(each.entry_id))]


def forged(host: str, last: int, entries: Iterable[Entry], damaged: int = 0) -> dict[str, str]:
    """Find entries in this computer's name that it cannot have made.

    Those that go on where its own count ends are its own from before an older backup was put
    back; numbers are given without holes, so one far beyond is a stranger's, and would use up
    the numbers.

    Parameters
    ----------
    host : str
        This computer's name.
    last : int
        The highest number that it has given, as far as its own file says.
    entries : iterable of Entry
        What somebody else's file brings.
    damaged : int
        How many entries of that file are damaged, so that there may be holes.

    Returns
    -------
    dict of str to str
        Id -> the sentence why it is refused.
    """
    brought = list(entries)
    beyond = {each.id: each.number for each in brought if each.device == host}
    beyond = {entry_id: number for entry_id, number in beyond.items() if number > last}
    # A number that somebody named as replaced before it was given was left out.
    named = {entry_id for each in brought for entry_id in each.replaces}
    left_out = [each for each in named - beyond.keys() if each.startswith(f"{host}:")]
    farthest = last + len(beyond) + len(left_out) + damaged
    return {
        entry_id: not_of_this_computer(entry_id, last)
        for entry_id, number in beyond.items()
        if number > farthest
    }


def not_of_this_computer(entry_id: str, last: int) -> str:
    """Return the sentence for an entry beyond this computer's own count."""
    return (
        f"{entry_id} bears the name of this computer, which has numbered its entries only up to "
        f"{last}; it was not made here, so it is not taken in."
    )


class NumbersGiven:
    """The numbers that this computer gave in one inspection, under each name it has used there.

    Each name has a small file of its own, so that two copies of a data folder, which write under
    two names, do not disturb each other.

    Parameters
    ----------
    folder : Path or None
        Where these files are; None where nothing is remembered.
    """

    def __init__(self, folder: Path | None):
        self._folder = folder
        self._paths: dict[str, str] = {}

    def names(self) -> list[str]:
        """Return the names that this computer has used, the one used last first."""
        if self._folder is None or not self._folder.is_dir():
            return []
        paths = sorted(self._folder.iterdir(), key=lambda path: -path.stat().st_mtime_ns)
        return [path.name for path in paths]

    def highest(self, name: str) -> int:
        """Return the highest number given under a name; 0 for a name that was never used.

        Parameters
        ----------
        name : str

        Returns
        -------
        int
            EVERY where the count is damaged.
        """
        if self._folder is None:
            return 0
        # Asked for every answer, and read anew each time: another process may have numbered.
        try:
            handle = os.open(self._path(name), os.O_RDONLY | _BINARY)
        except OSError:
            return 0
        try:
            found = _COUNT.fullmatch(os.read(handle, _LONGEST_COUNT))
            # Half a count, as a full disk leaves it, reads as a number that is too low.
            return int(found[1]) if found else EVERY
        except OSError:
            return 0
        finally:
            os.close(handle)

    def _path(self, name: str) -> str:
        path = self._paths.get(name)
        if path is None:
            path = self._paths[name] = str(self._folder / name)
        return path

    def remember(self, name: str, number: int) -> bool:
        """Remember that a number was given.

        It follows the journal, which is on the disk already, so it is not waited for; where the
        disk does not take it, the journal is still right.

        Parameters
        ----------
        name : str
        number : int

        Returns
        -------
        bool
            False where the disk did not take it, so that it is to be tried again.
        """
        if self._folder is None:
            return True
        count = b"%09d\n" % number
        with suppress(OSError):
            handle = self._open_for_writing(name)
            try:
                # In place, as one short write of always the same length.
                return os.write(handle, count) == len(count)
            finally:
                os.close(handle)
        return False

    def _open_for_writing(self, name: str) -> int:
        flags = os.O_WRONLY | os.O_CREAT | _BINARY
        try:
            return os.open(self._path(name), flags, 0o600)
        except FileNotFoundError:
            self._folder.mkdir(parents=True, exist_ok=True)
            return os.open(self._path(name), flags, 0o600)


def name_in(journals: Path, host: str, given: NumbersGiven) -> str:
    """Return the name under which this computer goes on writing in an inspection.

    Parameters
    ----------
    journals : Path
        The folder of journal files.
    host : str
        This computer's first name.
    given : NumbersGiven

    Returns
    -------
    str
        Of several names the one used last whose journal is whole; the host's where there is none.
    """
    names = given.names()
    if len(names) > 1:
        whole = (name for name in names if _last_in(journals, name) >= given.highest(name))
        return next(whole, names[0])
    return names[0] if names else host


def _last_in(journals: Path, name: str) -> int:
    contents, path = JournalContents(), journals / f"{name}.jsonl"
    if path.is_file():
        read_file(path, contents)
    return last_number_in(contents, name)


def new_name(name: str) -> str:
    """Return a name that no computer has used, made of an earlier one."""
    stem = _SUFFIX.sub("", name)[:_LONGEST_STEM].rstrip("-")
    return f"{stem}-{secrets.token_hex(3)}"
