"""An application served from a thread of the test run, and ended without a socket being closed
under a thread that still uses it."""

import contextlib
import threading
from collections.abc import Iterator

import waitress
from flask import Flask
from waitress import wasyncore


@contextlib.contextmanager
def serving(app: Flask, port: int = 0) -> Iterator[int]:
    """Serve `app` on loopback while the block runs.

    Parameters
    ----------
    app : Flask
        What answers.
    port : int
        The port; 0 takes any free one.

    Yields
    ------
    int
        The port that is served.
    """
    sockets = {}
    # What breaks off at the end, a body sent or an answer, must not leave a temporary file open.
    in_memory = {"inbuf_overflow": 64 * 2**20, "outbuf_overflow": 64 * 2**20}
    server = waitress.create_server(
        app, host="127.0.0.1", port=port, threads=4, map=sockets, **in_memory
    )
    loop = threading.Thread(target=server.run, daemon=True)
    loop.start()
    try:
        yield server.effective_port
    finally:
        # First the threads that answer, which wake the loop through its trigger; then the loop
        # closes its own sockets, because nobody else knows when it is not waiting on them.
        server.task_dispatcher.shutdown(cancel_pending=True, timeout=30)
        woken = threading.Event()

        def close() -> None:
            # The loop may be awake already, for the last answer. It would then close the trigger
            # while it is being pulled below, and that write would go to whatever has its number.
            woken.wait(30)
            wasyncore.close_all(sockets)

        server.trigger.pull_trigger(close)
        woken.set()
        loop.join(30)
        app.extensions["data_folder"].close()
