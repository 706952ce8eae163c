"""The one-time code by which a device is let in: short-lived, single use, locked after wrong tries. Kept in memory only; no Flask, the clock is given."""

import hashlib
import hmac
import secrets
import threading
import time
from collections.abc import Callable

from inspector.errors import InspectorError

# No letters or digits that are mistaken for each other on a wet screen.
LETTERS = "abcdefghjkmnpqrstuvwxyz23456789"
LENGTH = 12
LIFE = 600.0
TRIES = 5
FIRST_LOCK, LONGEST_LOCK = 60.0, 900.0
MOST_WRONG = 20


class CodeRefused(InspectorError):
    """The code does not let in; `status` is 403, or 429 while tries are locked, with `wait` in seconds."""


class Pairing:
    """At most one live code. All tries are counted together, so that it does not matter from how many addresses somebody guesses."""

    def __init__(self, clock: Callable[[], float] = time.monotonic):
        self._clock = clock
        self._lock = threading.Lock()
        self._digest = b""
        self._ends = 0.0
        self._wrong_here = 0
        self._wrong = 0
        self._locked_until = 0.0
        self._pause = FIRST_LOCK

    def new_code(self) -> str:
        """Make a code, in groups of four letters; an earlier one ends with this."""
        code = "".join(secrets.choice(LETTERS) for _ in range(LENGTH))
        with self._lock:
            self._digest, self._ends, self._wrong_here = _digest(code), self._clock() + LIFE, 0
        return "-".join(code[place:place + 4] for place in range(0, LENGTH, 4))

    def seconds_left(self) -> float:
        """How long the live code still lives; 0 where there is none."""
        with self._lock:
            return max(0.0, self._ends - self._clock()) if self._digest else 0.0

    def end(self) -> None:
        """End the live code."""
        with self._lock:
            self._digest = b""

    def use(self, code: str) -> None:
        """Use the code up; CodeRefused where it is not the live one, or while tries are locked (then not even the right one is looked at)."""
        given = _digest(code)
        with self._lock:
            moment = self._clock()
            if moment < self._locked_until:
                wait = int(self._locked_until - moment) + 1
                raise CodeRefused(f"Too many wrong codes were tried; wait {wait} seconds, then type it again.", status=429, wait=wait)
            # Compared in any case, so that the time tells nothing about whether there is a code.
            fits = hmac.compare_digest(given, self._digest or _digest(secrets.token_hex(8)))
            if fits and moment < self._ends:
                self._digest, self._wrong, self._pause = b"", 0, FIRST_LOCK
                return
            self._count_wrong(moment)
        raise CodeRefused("This is not the code that the laptop shows now. A code works once, for ten minutes; ask for a new one there.", status=403, wait=0)

    def _count_wrong(self, moment: float) -> None:
        self._wrong += 1
        self._wrong_here += 1
        if self._wrong_here >= MOST_WRONG:
            self._digest = b""
        if self._wrong % TRIES == 0:
            self._locked_until, self._pause = moment + self._pause, min(self._pause * 2, LONGEST_LOCK)


def _digest(code: str) -> bytes:
    plain = "".join(letter for letter in code.lower()[:64] if letter in LETTERS)
    return hashlib.sha256(b"code " + plain.encode()).digest()
