"""The one-time codes by which a device is let in: short-lived, single use, locked after wrong ones.

They are kept in memory only, as digests.
"""

import hashlib
import hmac
import secrets
import threading
import time
from collections.abc import Callable
from dataclasses import dataclass

from inspector.values.errors import InspectorError

# No letters or digits that are mistaken for each other on a wet screen.
LETTERS = "abcdefghjkmnpqrstuvwxyz23456789"
LENGTH = 12
LIFE = 600.0  # seconds
TRIES = 5
FIRST_LOCK, LONGEST_LOCK = 60.0, 900.0  # seconds
# After so many wrong tries a code ends by itself.
MOST_WRONG = 20


class CodeRefused(InspectorError):
    """The code does not let in. Attributes: ``status``, ``wait``.

    ``status`` is 403, or 429 while tries are locked, then with ``wait`` in seconds.
    """


@dataclass(frozen=True)
class _Code:
    """A live code: when it ends [s], and which device moves by it, "" for a new one."""

    ends: float
    device: str = ""


class Pairing:
    """At most one live code for a new device, and one for each device that moves to https.

    All tries are counted together, so that it does not matter from how many addresses somebody
    guesses.

    Parameters
    ----------
    clock : callable
        Returns the time [s].
    """

    def __init__(self, clock: Callable[[], float] = time.monotonic):
        self._clock = clock
        self._lock = threading.Lock()
        # By their digests.
        self._codes: dict[bytes, _Code] = {}
        # Wrong tries of these codes, which end them, beside all wrong tries, which lock the door.
        self._wrong_here = 0
        self._wrong = 0
        self._locked_until = 0.0
        self._pause = FIRST_LOCK

    def new_code(self) -> str:
        """Return a new code, in groups of four letters; an earlier one ends with this.

        Returns
        -------
        str
        """
        code = self._made("")
        # In fours, as it is read aloud across a deck.
        return "-".join(code[place : place + 4] for place in range(0, LENGTH, 4))

    def code_to_move(self, device: str) -> str:
        """Return a code by which a device that is let in comes in again at the other address.

        Parameters
        ----------
        device : str
            Its id.

        Returns
        -------
        str
            Never shown to anybody: one page hands it to the other.
        """
        return self._made(device)

    def _made(self, device: str) -> str:
        """Make a code; the one before it, of the same device or for a new one, ends with this."""
        code = "".join(secrets.choice(LETTERS) for _ in range(LENGTH))
        with self._lock:
            moment = self._clock()
            kept = self._codes.items()
            self._codes = {
                digest: each
                for digest, each in kept
                if each.device != device and moment < each.ends
            }
            self._codes[_digest(code)] = _Code(moment + LIFE, device)
            if not device:
                self._wrong_here = 0
        return code

    def seconds_left(self) -> float:
        """Return how long the code for a new device is still good.

        Returns
        -------
        float
            Seconds; 0 where there is no code.
        """
        with self._lock:
            ends = [code.ends for code in self._codes.values() if not code.device]
            return max(0.0, ends[0] - self._clock()) if ends else 0.0

    def end(self) -> None:
        """End every code."""
        with self._lock:
            self._codes = {}

    def use(self, code: str) -> str:
        """Use a code up.

        Parameters
        ----------
        code : str
            As typed.

        Returns
        -------
        str
            The id of the device that moves by it, "" for a new one.

        Raises
        ------
        CodeRefused
            Where it is not the code that is shown now, or while tries are locked: then not even
            the right one is looked at.
        """
        given = _digest(code)
        with self._lock:
            moment = self._clock()
            if moment < self._locked_until:
                wait = int(self._locked_until - moment) + 1
                sentence = (
                    f"Too many wrong codes were tried; wait {wait} seconds, then type it again."
                )
                raise CodeRefused(sentence, status=429, wait=wait)
            found = self._live(given)
            if found is not None and moment < found.ends:
                del self._codes[given]
                self._wrong, self._pause = 0, FIRST_LOCK
                return found.device
            self._count_wrong(moment)
        raise CodeRefused(
            "This is not the code that the laptop shows now. A code works once, for ten minutes; "
            "ask for a new one there.",
            status=403,
            wait=0,
        )

    def _live(self, given: bytes) -> _Code | None:
        """The code of a digest; the time taken does not show whether there is one."""
        found = None
        # One is compared in any case.
        for digest in self._codes or [_digest(secrets.token_hex(8))]:
            if hmac.compare_digest(given, digest):
                found = self._codes.get(digest)
        return found

    def _count_wrong(self, moment: float) -> None:
        """Count a wrong code: all end after a few, and the door locks for longer each time."""
        self._wrong += 1
        self._wrong_here += 1
        if self._wrong_here >= MOST_WRONG:
            self._codes = {}
        if self._wrong % TRIES == 0:
            self._locked_until = moment + self._pause
            self._pause = min(self._pause * 2, LONGEST_LOCK)


def _digest(code: str) -> bytes:
    """Return the digest of a code, whatever case and dashes it was typed with."""
    plain = "".join(letter for letter in code.lower() if letter in LETTERS)
    return hashlib.sha256(b"code " + plain.encode()).digest()
