"""The one-time code by which a device is let in: short-lived, single use, locked after wrong tries.

It is kept in memory only.
"""

import hashlib
import hmac
import secrets
import threading
import time
from collections.abc import Callable

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


class Pairing:
    """At most one live code.

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
        self._digest = b""
        self._ends = 0.0
        # Wrong tries of this code, which end it, beside all wrong tries, which lock the door.
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
        code = "".join(secrets.choice(LETTERS) for _ in range(LENGTH))
        with self._lock:
            self._digest, self._ends, self._wrong_here = _digest(code), self._clock() + LIFE, 0
        # In fours, as it is read aloud across a deck.
        return "-".join(code[place : place + 4] for place in range(0, LENGTH, 4))

    def seconds_left(self) -> float:
        """Return how long the code is still good.

        Returns
        -------
        float
            Seconds; 0 where there is no code.
        """
        with self._lock:
            return max(0.0, self._ends - self._clock()) if self._digest else 0.0

    def end(self) -> None:
        """End the code."""
        with self._lock:
            self._digest = b""

    def use(self, code: str) -> None:
        """Use the code up.

        Parameters
        ----------
        code : str
            As typed.

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
            # Compared in any case, so that the time taken does not show whether there is a code.
            fits = hmac.compare_digest(given, self._digest or _digest(secrets.token_hex(8)))
            if fits and moment < self._ends:
                self._digest, self._wrong, self._pause = b"", 0, FIRST_LOCK
                return
            self._count_wrong(moment)
        raise CodeRefused(
            "This is not the code that the laptop shows now. A code works once, for ten minutes; "
            "ask for a new one there.",
            status=403,
            wait=0,
        )

    def _count_wrong(self, moment: float) -> None:
        """Count a wrong code: it ends after a few, and the door locks for longer each time."""
        self._wrong += 1
        self._wrong_here += 1
        if self._wrong_here >= MOST_WRONG:
            self._digest = b""
        if self._wrong % TRIES == 0:
            self._locked_until = moment + self._pause
            self._pause = min(self._pause * 2, LONGEST_LOCK)


def _digest(code: str) -> bytes:
    """Return the digest of a code, whatever case and dashes it was typed with."""
    plain = "".join(letter for letter in code.lower() if letter in LETTERS)
    return hashlib.sha256(b"code " + plain.encode()).digest()
