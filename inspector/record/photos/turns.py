"""Photos take turns: so many at once that memory and processors suffice, the others in a line."""

import contextlib
import threading
from collections import deque
from collections.abc import Iterator

from inspector.record.photos.photo_refusals import Busy

MOST_AT_ONCE = 2  # more would take the processors from the pages
MOST_BYTES_AT_ONCE = 400_000_000
PATIENCE = 30  # seconds
MOST_REQUESTS = 8


class Turns:
    """A line in front of the decoder, first come first served.

    Parameters
    ----------
    most_bytes : int
        Memory of all pictures in work [bytes]; a larger picture has its turn alone.
    patience : float
        How long a picture waits for its turn [s].
    """

    def __init__(self, most_bytes: int = MOST_BYTES_AT_ONCE, patience: float = PATIENCE):
        self.most_bytes, self.patience = most_bytes, patience
        self._in_work: list[int] = []
        self._line: deque[object] = deque()
        self._changed = threading.Condition()

    @contextlib.contextmanager
    def turn(self, amount: int) -> Iterator[None]:
        """Wait for a turn, and have it while the context lasts.

        Parameters
        ----------
        amount : int
            What decoding the picture takes [bytes].

        Raises
        ------
        Busy
            Where the turn does not come in time.
        """
        self._wait(amount)
        try:
            yield
        finally:
            with self._changed:
                self._in_work.remove(amount)
                self._changed.notify_all()

    def _wait(self, amount: int) -> None:
        ticket = object()
        with self._changed:
            self._line.append(ticket)
            try:
                if not self._changed.wait_for(lambda: self._is_next(ticket, amount), self.patience):
                    raise Busy
                self._in_work.append(amount)
            finally:
                self._line.remove(ticket)
                self._changed.notify_all()

    def _is_next(self, ticket: object, amount: int) -> bool:
        # In turn, so that a large photo is not passed by small ones for ever.
        if self._line[0] is not ticket or len(self._in_work) >= MOST_AT_ONCE:
            return False
        # One alone is let through whatever it takes, or it would wait for ever.
        return not self._in_work or sum(self._in_work) + amount <= self.most_bytes


_requests = threading.BoundedSemaphore(MOST_REQUESTS)


@contextlib.contextmanager
def place_for_request() -> Iterator[None]:
    """A place for a request that sends or shows a photo, so that the server's other threads are
    free for pages.

    Raises
    ------
    Busy
        At once, where all places are taken.
    """
    # Refused at once: a device tries again by itself, and a waiting request would hold a thread.
    if not _requests.acquire(blocking=False):
        raise Busy
    try:
        yield
    finally:
        _requests.release()
