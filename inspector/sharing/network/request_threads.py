"""The threads that answer requests: pages have theirs, and photos have theirs.

A photo may take seconds. If photos could take every thread, no page would be answered meanwhile.
"""

import logging

from waitress.channel import HTTPChannel
from waitress.task import ThreadedTaskDispatcher

PAGE_THREADS, PHOTO_THREADS = 8, 4


class ThreadsApart(ThreadedTaskDispatcher):
    """The threads for pages, with those for photos beside them."""

    def __init__(self):
        super().__init__()
        self.for_photos = ThreadedTaskDispatcher()
        # Photos that wait for a thread are everyday, not worth a line on the screen each time.
        self.for_photos.queue_logger = logging.getLogger("inspector.photos")
        self.for_photos.queue_logger.setLevel(logging.ERROR)

    def add_task(self, task: HTTPChannel) -> None:
        """Give a connection's next request to the threads of its kind.

        Parameters
        ----------
        task : HTTPChannel
            The connection, with its requests.
        """
        # A request that cannot be read has no path.
        # A phone hands over a day of photos at once, and pages must still be answered.
        if "/photo/" in getattr(task.requests[0], "path", ""):
            self.for_photos.add_task(task)
        else:
            super().add_task(task)

    def shutdown(self, cancel_pending: bool = True, timeout: int = 5) -> bool:
        """Stop the threads of both kinds.

        Parameters
        ----------
        cancel_pending : bool
            Whether requests that wait are dropped.
        timeout : int
            How long each kind may take [s].

        Returns
        -------
        bool
            Whether requests were dropped.
        """
        dropped = self.for_photos.shutdown(cancel_pending, timeout)
        return super().shutdown(cancel_pending, timeout) or dropped


def threads_apart() -> ThreadsApart:
    """Return the threads of a server, started.

    Returns
    -------
    ThreadsApart
    """
    threads = ThreadsApart()
    threads.set_thread_count(PAGE_THREADS)
    threads.for_photos.set_thread_count(PHOTO_THREADS)
    return threads
