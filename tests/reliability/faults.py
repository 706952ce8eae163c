"""A disk that fails at its k-th call: that call alone is refused, or every one from there on (a
full disk), or the machine is gone (a pulled plug)."""

import errno
import os
from collections.abc import Callable
from contextlib import contextmanager
from pathlib import Path

KINDS = ("once", "full", "plug")
CALLS = ("write", "fsync", "replace", "ftruncate")


class Gone(BaseException):
    """The machine has no power: nothing after this happens, not even what follows an error."""


class Disk:
    """Counts the calls that change the disk, and fails at the k-th; a write that fails has
    written its first half."""

    def __init__(self, fails_at: int, kind: str):
        self.fails_at, self.kind, self.calls = fails_at, kind, 0
        self.real = {name: getattr(os, name) for name in CALLS}

    def call(self, name: str, *arguments):
        self.calls += 1
        first, later = (
            self.calls == self.fails_at,
            0 < self.fails_at < self.calls and self.kind != "once",
        )
        if not first and not later:
            return self.real[name](*arguments)
        if name == "write" and first:
            handle, data = arguments
            self.real["write"](handle, bytes(data)[: len(data) // 2])
        if self.kind == "plug":
            raise Gone
        raise OSError(errno.ENOSPC, "No space left on device")


@contextmanager
def failing(fails_at: int, kind: str = "once"):
    """Within this, the disk fails at its k-th call (0: never); yields the Disk, which counts."""
    disk = Disk(fails_at, kind)
    for name in CALLS:
        setattr(os, name, lambda *arguments, name=name: disk.call(name, *arguments))
    try:
        yield disk
    finally:
        for name, real in disk.real.items():
            setattr(os, name, real)


def every_crash(
    prepare: Callable[[Path], Callable[[], None]], folder: Path, errors: type[Exception]
):
    """Run what `prepare` returns once whole, then with a failure at each call, of each kind;
    yields (place, k, whether it said that it was done)."""
    with failing(0) as disk:
        prepare(folder / "whole")()
    for kind in KINDS:
        for k in range(1, disk.calls + 1):
            place = folder / f"{kind}-{k}"
            act, done = prepare(place), False
            with failing(k, kind):
                try:
                    act()
                    done = True
                except (errors, OSError, Gone):
                    pass
            yield place, k, done
    assert disk.calls, "nothing was written, so nothing was tried"
