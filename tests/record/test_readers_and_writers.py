"""Pages read the state while entries come in on other threads."""

import sys
import threading

import pytest

from inspector.record.state import State


@pytest.fixture
def restless():
    """Threads change places as often as the interpreter can."""
    before = sys.getswitchinterval()
    sys.setswitchinterval(1e-6)
    yield
    sys.setswitchinterval(before)


def test_reading_while_entries_come_in_never_fails(restless, entry):
    """A state can be read in every way while another thread adds thousands of entries."""
    state, faults, over = State(), [], threading.Event()

    def read():
        try:
            while not over.is_set():
                list(state.disputes())
                for subject in state.subjects("sheet/"):
                    state.values(subject)
                    state.history(subject, "rating")
        except RuntimeError as problem:
            faults.append(problem)

    readers = [threading.Thread(target=read) for _ in range(2)]
    for reader in readers:
        reader.start()
    for number in range(1, 3001):
        state.add(
            entry(
                number,
                subject=f"sheet/hull/hull-1/check-{number % 300}",
                field=("rating", "note")[number % 2],
            )
        )
    over.set()
    for reader in readers:
        reader.join()

    assert [] == faults
    assert 300 == len(state.subjects())
