"""How an answer is known: reported, sighted or tested.

The three depths are the trade's distinction. A check says at which depth it is proved; an answer
carries the depth at which it was given.
"""

from collections.abc import Collection

from inspector.checklists.model import Check
from inspector.values.vocabulary import DEPTHS, REPORTED, SIGHTED, TESTED


def load_readings(check: Check) -> tuple[str, ...]:
    """Return the readings that say under which load or condition a check was tested.

    Parameters
    ----------
    check : Check

    Returns
    -------
    tuple of str
        Ids of readings; empty where the check is proved without a test, or asks for none.
    """
    if check.proof != TESTED:
        return ()
    asked = [reading for reading in check.readings if not reading.optional]
    loads = [reading for reading in asked if "load" in f"{reading.name} {reading.label}".lower()]
    # Without a load of its own, the figures that are asked are what shows that it was run.
    return tuple(reading.name for reading in loads or asked)


def usual_depth(check: Check, typed: Collection[str]) -> str:
    """Return the depth that an answer has where nobody says another one.

    Parameters
    ----------
    check : Check
    typed : collection of str
        Ids of the readings that are typed.

    Returns
    -------
    str
        A check that papers prove: reported. One that is proved by a test, with its load typed:
        tested. Any other: sighted. The walk's own script says the same.
    """
    if check.proof == REPORTED:
        return REPORTED
    loads = load_readings(check)
    return TESTED if loads and all(name in typed for name in loads) else SIGHTED


def counted_depth(check: Check, recorded: str, typed: Collection[str]) -> str:
    """Return the depth at which an answer counts.

    Parameters
    ----------
    check : Check
    recorded : str
        The depth as recorded, "" where it was not.
    typed : collection of str
        Ids of the readings that are typed.

    Returns
    -------
    str
        *Tested* without the load that the check asks for counts as sighted.
    """
    if recorded == TESTED and not all(name in typed for name in load_readings(check)):
        return SIGHTED
    return recorded


def reaches(depth: str, asked: str) -> bool:
    """Return whether a depth is at least the one asked.

    Parameters
    ----------
    depth : str
        "" for an answer that was recorded before depths were: it counts as it did.
    asked : str

    Returns
    -------
    bool
    """
    return not depth or DEPTHS.index(depth) >= DEPTHS.index(asked)
