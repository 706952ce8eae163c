"""The looks that a superintendent would choose, compared with a round.

The list is the answer of one who knows the trade and not the tool: 60 looks for three quarters of
an hour, and 160 more for four hours (common practice, no source).
"""

from dataclasses import dataclass
from pathlib import Path

from inspector.assess.round.composition import Round
from inspector.assess.round.look_ways import VisitLooks

_LIST = Path(__file__).with_name("superintendent.tsv")
SHORT, LONG = 45, 240


@dataclass(frozen=True)
class Comparison:
    """A round beside the list for the same time; all are "<system>/<check>".

    Parameters
    ----------
    asked : frozenset of str
        What the list chooses of what this vessel is asked.
    both : frozenset of str
        In the list and in the round.
    only_list, only_round : frozenset of str
    no_word : frozenset of str
        Of ``only_list``, what no look of the round can be: it changes no word.
    """

    asked: frozenset[str]
    both: frozenset[str]
    only_list: frozenset[str]
    only_round: frozenset[str]
    no_word: frozenset[str]

    @property
    def share(self) -> float:
        """The share of the list that is in the round."""
        return len(self.both) / len(self.asked)


def chosen_for(minutes: int) -> frozenset[str]:
    """What the superintendent looks at in SHORT or LONG minutes."""
    rows = [line.split("\t") for line in _LIST.read_text(encoding="utf-8").splitlines()[1:]]
    return frozenset(row[1] for row in rows if minutes == LONG or row[0] == "60")


def compared(made: Round, found: VisitLooks, minutes: int) -> Comparison:
    """Compare a round with the list for its minutes."""
    asked = chosen_for(minutes) & {_check(subject) for subject in found.still_open}
    own = frozenset(map(_check, made.subjects))
    with_look = {_check(subject) for look in found.looks for subject in look.subjects}
    return Comparison(
        asked, asked & own, asked - own, own - chosen_for(minutes), asked - own - with_look
    )


def _check(subject: str) -> str:
    _, system, _, check = subject.split("/")
    return f"{system}/{check}"
