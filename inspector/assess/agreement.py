"""How far two surveyors agree who rated the same checks: Cohen's kappa, with the table it comes from.

J. Cohen, A coefficient of agreement for nominal scales, Educational and Psychological Measurement 20 (1960) 37-46 (memory);
weighted: the same, Psychological Bulletin 70 (1968) 213-220 (memory). Beside the figure always stand the raw share and the counts.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from itertools import combinations

from inspector.criteria.judgement import RATINGS
from inspector.record.entry import Entry
from inspector.record.state import State

LEAST = 5  # below so few checks no figure is told at all (own)
FEW = 30  # below about this many checks the figure carries no label (common practice)


@dataclass(frozen=True)
class Agreement:
    """Two raters' table (rows: the first) over the ratings good to failed; kappas are None where they are not defined (0/0).

    dropped: checks that only one of the two rated; they do not count.
    """

    first: str
    second: str
    table: tuple[tuple[int, ...], ...]
    same: float
    kappa: float | None
    linear: float | None
    dropped: int

    @property
    def count(self) -> int:
        """How many checks both rated."""
        return sum(map(sum, self.table))

    @property
    def sentence(self) -> str:
        """What it says, with its counts."""
        same = round(self.same * self.count)
        start = f"{self.first} and {self.second} both rated {self.count} {'check' if self.count == 1 else 'checks'} and agree on {same}"
        if self.count < LEAST:
            return f"{start}; too few for Cohen's kappa."
        if self.kappa is None:
            return f"{start}; Cohen's kappa is not defined, since all lie in one rating."
        few = f", from fewer than {FEW} checks: an indication only" if self.count < FEW else ""
        return f"{start}: Cohen's kappa {self.kappa:.2f} (linear weights {self.linear:.2f}){few}."


def kappa(table: Iterable[Iterable[int]], weighted: bool = False) -> float | None:
    """Cohen's kappa of a square table of counts, linear weights where asked; None where it is 0/0 or nothing was counted.

    Examples
    --------
    >>> round(kappa([[20, 5], [10, 15]]), 4)
    0.4
    """
    counts = [list(row) for row in table]
    size, total = len(counts), sum(map(sum, counts))
    if total == 0:
        return None
    apart = [[(abs(i - j) / (size - 1) if weighted else float(i != j)) for j in range(size)] for i in range(size)]
    rows, columns = [sum(row) for row in counts], [sum(column) for column in zip(*counts, strict=True)]
    found = sum(apart[i][j] * counts[i][j] for i in range(size) for j in range(size)) / total
    by_chance = sum(apart[i][j] * rows[i] * columns[j] for i in range(size) for j in range(size)) / total**2
    return None if by_chance == 0 else 1 - found / by_chance


def agreement(first: str, second: str, ratings: Mapping[str, Mapping[str, str]]) -> Agreement:
    """Two raters over checks: ratings is check -> rater -> rating; what either left unrated is dropped and counted."""
    pairs = [(given[first], given[second]) for given in ratings.values() if first in given and second in given]
    either = sum(1 for given in ratings.values() if first in given or second in given)
    table = [[sum(1 for pair in pairs if pair == (one, other)) for other in RATINGS] for one in RATINGS]
    same = sum(table[i][i] for i in range(len(RATINGS))) / len(pairs) if pairs else 0.0
    return Agreement(first, second, tuple(map(tuple, table)), same, kappa(table), kappa(table, weighted=True), either - len(pairs))


def given_ratings(state: State) -> dict[str, dict[str, str]]:
    """The last rating that each person gave of his own: subject -> who -> rating. A name that was not given does not count.

    Who settles a disagreement (one entry in place of several unlike answers) has both before him: that, and what he says then, is no second opinion.
    """
    found: dict[str, dict[str, str]] = {}
    for subject in state.subjects("sheet/"):
        history = state.history(subject, "rating")
        by_id, settled = {entry.id: entry for entry in history}, set()
        for entry in history:
            who = entry.who.strip()
            if who and _settles([by_id[one] for one in entry.replaces if one in by_id]):
                settled.add(who)
            elif who and who not in settled:
                found.setdefault(subject, {})[who] = entry.value
    return {subject: kept for subject, given in found.items() if (kept := {who: rating for who, rating in given.items() if rating in RATINGS})}


def _settles(replaced: Sequence[Entry]) -> bool:
    """Whether an entry that replaces these ends a disagreement: they are several and unlike."""
    return any(one.value != replaced[0].value for one in replaced[1:])


def agreements(state: State) -> tuple[Agreement, ...]:
    """Every pair of people who rated at least one check both, by name."""
    ratings = given_ratings(state)
    people = sorted({who for given in ratings.values() for who in given})
    made = (agreement(one, other, ratings) for one, other in combinations(people, 2))
    return tuple(one for one in made if one.count)
