"""Where a limit is published, and how firmly a limit from there may speak."""

from dataclasses import dataclass

# "seen": the text or an extract was read; "memory": recalled, to be confirmed; "common practice":
# nobody publishes it; "cited by the surveyor": his own limit, with the text that he names.
CITED = "cited by the surveyor"
MARKS = ("seen", "memory", "common practice", CITED)
MAY_FAIL = ("seen", CITED)


@dataclass(frozen=True)
class Source:
    """Where a limit is published.

    Parameters
    ----------
    title, edition, clause : str
    mark : str
        One of MARKS; only those of MAY_FAIL may fail a system.
    """

    title: str
    edition: str
    clause: str
    mark: str

    @classmethod
    def seen(cls, title: str, edition: str, clause: str) -> "Source":
        """Return a source of which the text, or an extract, was read."""
        return cls(title, edition, clause, "seen")

    @classmethod
    def recalled(cls, title: str, clause: str, edition: str = "recalled") -> "Source":
        """Return a source from memory, which the report asks to confirm."""
        return cls(title, edition, clause, "memory")

    @classmethod
    def common_practice(cls, title: str, clause: str, edition: str = "no publisher") -> "Source":
        """Return the source of a figure that the trade uses and nobody publishes."""
        return cls(title, edition, clause, "common practice")

    def __str__(self) -> str:
        return f"{self.title}, {self.edition}, {self.clause} ({self.mark})"

    def as_cited(self) -> str:
        """Return the source in one line, as it is shown under a judgement.

        Its mark is left out where it says that the source was seen, which is the usual case.
        """
        mark = "" if self.mark == "seen" else self.mark
        return ", ".join(part for part in (self.title, self.edition, self.clause, mark) if part)
