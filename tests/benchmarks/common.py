"""What all measures share: acts taking turns, one way to print a ratio, and entries as a phone
makes them."""

import statistics
import time
from collections.abc import Callable


def median_of(*acts: Callable[[], object], rounds: int = 200) -> list[float]:
    """Median seconds of each act, the acts taking turns."""
    times: list[list[float]] = [[] for _ in acts]
    for _ in range(rounds):
        for act, kept in zip(acts, times, strict=True):
            start = time.perf_counter()
            act()
            kept.append(time.perf_counter() - start)
    return [statistics.median(kept) for kept in times]


def say(what: str, seconds: float, against: str, baseline: float, goal: str) -> None:
    """One line: what it costs, as a ratio against its baseline, and the goal."""
    print(
        f"{what}: {seconds * 1000:.2f} ms, {seconds / baseline:.2f} x {against} "
        f"({baseline * 1000:.2f} ms); goal {goal}",
        flush=True,
    )


class Answers:
    """Entries as a phone makes them, each new; where told so, each replaces the one before it in
    its field."""

    def __init__(self, device: str = "phone", replacing: bool = False):
        self.device, self.number, self.replacing = device, 0, replacing
        self.last: dict[str, str] = {}

    def __call__(self) -> dict:
        self.number += 1
        entry_id, subject = (
            f"{self.device}:{self.number}",
            f"sheet/hull/shell-{self.number % 20}/check-{self.number % 30}",
        )
        replaced = [self.last[subject]] if self.replacing and subject in self.last else []
        self.last[subject] = entry_id
        return {
            "id": entry_id,
            "at": "2026-05-02T09:14:07.512Z",
            "device": self.device,
            "who": "QX",
            "subject": subject,
            "field": "rating",
            "value": "poor",
            "replaces": replaced,
        }
