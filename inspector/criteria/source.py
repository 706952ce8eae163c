"""Where a limit stands, and how firmly a limit from there may speak."""

from dataclasses import dataclass

# "seen": text or extract read; "memory": recalled; "cited by the surveyor": his own limit, with the text that he names
MARKS = ("seen", "memory", "common practice", "cited by the surveyor")
MAY_FAIL = ("seen", "cited by the surveyor")


@dataclass(frozen=True)
class Source:
    """Where a limit stands. ``mark`` is one of MARKS; only those of MAY_FAIL may fail a system."""

    title: str
    edition: str
    clause: str
    mark: str

    def __str__(self) -> str:
        return f"{self.title}, {self.edition}, {self.clause} ({self.mark})"
