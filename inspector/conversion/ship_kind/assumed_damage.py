"""The hole in her side that a passenger ship must survive anywhere along it."""

from inspector.conversion.core.bounds import plain

# Least of the damage that is assumed, and its shares for 36 and for 400 persons.
LEAST_DAMAGE, LEAST_PENETRATION = 3.0, 0.75
FROM_PERSONS, TO_PERSONS = 36, 400
LENGTH_SHARES, BREADTH_SHARES = (0.015, 0.03), (0.05, 0.1)


def assumed_damage(persons: int, length: float, breadth: float) -> tuple[float, float] | None:
    """Return the damage to her side that a passenger ship must survive anywhere along it.

    Parameters
    ----------
    persons : int
        All persons on board, 1 to 6000.
    length, breadth : float
        Subdivision length 5 to 400 [m], breadth 2 to 80 [m].

    Returns
    -------
    tuple of (float, float) or None
        Length of the hole and how far it reaches inboard [m]; None below 36 persons.

    Raises
    ------
    BadInput
        A value that cannot be.

    References
    ----------
    SOLAS II-1/8.2 and 8.3: 0.015 L and 0.05 B for 36 persons, 0.03 L and 0.1 B for 400, at least
    3 m and 0.75 m (seen); a straight line between (from memory).

    Examples
    --------
    >>> assumed_damage(36, 70, 18.4), assumed_damage(35, 70, 18.4)
    ((3.0, 0.92), None)
    """
    number = plain("persons", persons, 1, 6000)
    if number < FROM_PERSONS:
        return None
    between = min(number - FROM_PERSONS, TO_PERSONS - FROM_PERSONS) / (TO_PERSONS - FROM_PERSONS)

    def along(ends: tuple[float, float], size: float, least: float) -> float:
        few, many = (max(share * size, least) for share in ends)
        return few + (many - few) * between

    return (
        along(LENGTH_SHARES, plain("length", length, 5, 400, "m"), LEAST_DAMAGE),
        round(along(BREADTH_SHARES, plain("breadth", breadth, 2, 80, "m"), LEAST_PENETRATION), 6),
    )
