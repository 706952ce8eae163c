"""A browser at a part of the machine's speed, its workers included.

The browser's own throttle slows the thread of the page alone, and what runs beside it goes on at
full speed. Here the processes that draw pages are stopped and let go on, many times a second.
"""

import os
import signal
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

PERIOD = 0.04  # seconds: shorter than what a person notices


@contextmanager
def slowed(share: float) -> Iterator[None]:
    """Let the renderers that this process started run for a share of the time only."""
    pids = renderers()
    done = threading.Event()

    def pulse() -> None:
        while not done.is_set():
            signal_all(pids, signal.SIGSTOP)
            done.wait(PERIOD * (1 - share))
            signal_all(pids, signal.SIGCONT)
            done.wait(PERIOD * share)

    thread = threading.Thread(target=pulse, daemon=True)
    thread.start()
    try:
        yield
    finally:
        done.set()
        thread.join()
        signal_all(pids, signal.SIGCONT)


def signal_all(pids: list[int], number: int) -> None:
    """Send a signal to each process that is still there."""
    for pid in pids:
        try:
            os.kill(pid, number)
        except ProcessLookupError:
            continue


def renderers() -> list[int]:
    """The processes below this one that draw pages (Linux)."""
    parents = {}
    for path in Path("/proc").glob("[0-9]*"):
        try:
            stat = (path / "stat").read_text()
            line = (path / "cmdline").read_bytes()
        except OSError:
            continue
        parents[int(path.name)] = (int(stat.rpartition(")")[2].split()[1]), line)
    return [
        pid
        for pid, (_, line) in parents.items()
        if b"--type=renderer" in line and _below(pid, parents)
    ]


def _below(pid: int, parents: dict[int, tuple[int, bytes]]) -> bool:
    while pid in parents:
        pid = parents[pid][0]
        if pid == os.getpid():
            return True
    return False
