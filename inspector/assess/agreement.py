"""How far two surveyors agree who rated the same checks: counts, and the list where they differ.

Cohen's kappa, with the table it comes from, is for the data files: on screens and in the report
nobody acts on it.

J. Cohen, A coefficient of agreement for nominal scales, Educational and Psychological Measurement
20 (1960) 37-46 (*from memory*); weighted: the same, Psychological Bulletin 70 (1968) 213-220 (*from
memory*).
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import combinations

from inspector.values.text import counted
from inspector.values.vocabulary import RATINGS


@dataclass(frozen=True)
class Differing:
    """One check that two people rated differently.

    Parameters
    ----------
    about : str
        "Bow thruster 1: Water in the hub oil".
    critical : bool
    first, second : str
        The two ratings.
    """

    about: str
    critical: bool
    first: str
    second: str


@dataclass(frozen=True)
class Agreement:
    """Two people's ratings of the same checks.

    Parameters
    ----------
    first, second : str
        The two.
    table : tuple of tuple of int
        Counts over the ratings good to failed; the rows are the first one's.
    same : float
        Share of the checks on which they agree, 0 to 1.
    kappa, linear : float or None
        Cohen's kappa, and with linear weights; None where it is not defined (0/0).
    dropped : int
        Checks that only one of the two rated; they do not count.
    differ : tuple of Differing
        Where they differ, critical checks first.
    """

    first: str
    second: str
    table: tuple[tuple[int, ...], ...]
    same: float
    kappa: float | None
    linear: float | None
    dropped: int
    differ: tuple[Differing, ...] = ()

    @property
    def count(self) -> int:
        """How many checks both rated."""
        return sum(map(sum, self.table))

    @property
    def sentence(self) -> str:
        """The result in words: how many both rated, and on how many they agree."""
        rated, same = counted(self.count, "check"), round(self.same * self.count)
        start = f"{self.first} and {self.second} both rated {rated} and agree on {same}"
        critical = sum(each.critical for each in self.differ)
        if not self.differ:
            return f"{start}."
        of_these = f", {critical} of them critical" if critical else ""
        return f"{start}; they differ on {len(self.differ)}{of_these}."

    @property
    def differing(self) -> tuple[str, ...]:
        """Where they differ, a line each, critical checks first."""
        return tuple(
            f"{each.about}{' (critical)' if each.critical else ''}: {self.first} {each.first}, "
            f"{self.second} {each.second}."
            for each in self.differ
        )


def kappa(table: Sequence[Sequence[int]], weighted: bool = False) -> float | None:
    """Return Cohen's kappa of a square table of counts.

    Parameters
    ----------
    table : sequence of sequence of int
        Rows of the first person, columns of the second.
    weighted : bool
        With linear weights.

    Returns
    -------
    float or None
        None where it is 0/0 or nothing was counted.

    Examples
    --------
    >>> round(kappa([[20, 5], [10, 15]]), 4)
    0.4
    """
    size, total = len(table), sum(map(sum, table))
    if total == 0:
        return None
    rows = [sum(row) for row in table]
    columns = [sum(column) for column in zip(*table, strict=True)]
    found = by_chance = 0.0
    for i in range(size):
        for j in range(size):
            # Disagreement, not agreement, is weighted: none on the diagonal.
            apart = abs(i - j) / (size - 1) if weighted else float(i != j)
            found += apart * table[i][j]
            by_chance += apart * rows[i] * columns[j]
    # Both gave one and the same rating throughout: chance alone explains it, and kappa has no
    # value.
    return None if by_chance == 0 else 1 - (found / total) / (by_chance / total**2)


def agreement(
    first: str,
    second: str,
    ratings: Mapping[str, Mapping[str, str]],
    checks: Mapping[str, tuple[str, bool]] | None = None,
) -> Agreement:
    """Compare two people.

    Parameters
    ----------
    first, second : str
        The two.
    ratings : mapping of str to mapping
        Check -> person -> rating; a check that either left unrated is dropped and counted.
    checks : mapping of str to (str, bool), optional
        Check -> what it is about, and whether it is critical; without it only counts are made.

    Returns
    -------
    Agreement
    """
    both = {check: given for check, given in ratings.items() if first in given and second in given}
    either = sum(1 for given in ratings.values() if first in given or second in given)
    pairs = [(given[first], given[second]) for given in both.values()]
    table = tuple(tuple(pairs.count((row, column)) for column in RATINGS) for row in RATINGS)
    same = sum(table[i][i] for i in range(len(RATINGS))) / len(pairs) if pairs else 0.0
    unweighted, linear = kappa(table), kappa(table, weighted=True)
    differ = [
        Differing(*(checks or {}).get(check, (check, False)), given[first], given[second])
        for check, given in both.items()
        if given[first] != given[second]
    ]
    # Critical ones first, since these are settled before the visit ends.
    differ.sort(key=lambda each: (not each.critical, each.about))
    dropped = either - len(pairs)
    return Agreement(first, second, table, same, unweighted, linear, dropped, tuple(differ))


def agreements(
    ratings: Mapping[str, Mapping[str, str]],
    checks: Mapping[str, tuple[str, bool]] | None = None,
) -> tuple[Agreement, ...]:
    """Compare every two people who rated at least one check both.

    Parameters
    ----------
    ratings : mapping of str to mapping
        Check -> person -> rating.
    checks : mapping of str to (str, bool), optional
        Check -> what it is about, and whether it is critical.

    Returns
    -------
    tuple of Agreement
        By name.
    """
    people = sorted({who for given in ratings.values() for who in given})
    pairs = combinations(people, 2)
    made = [agreement(first, second, ratings, checks) for first, second in pairs]
    return tuple(found for found in made if found.count)
