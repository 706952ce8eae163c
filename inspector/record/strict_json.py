"""JSON from strangers: bounded depth, no key twice, no NaN.

Python's own reader accepts all of these, and of a key that is there twice it uses the last.
"""

import json
from typing import Any

from inspector.record.entry import nested_at_most
from inspector.values.errors import InspectorError

DEEPEST = 16


class BadJson(InspectorError):
    """Not JSON that we read; the sentence says why."""


def loads(data: bytes, deepest: int = DEEPEST) -> Any:
    """Read JSON.

    Parameters
    ----------
    data : bytes
        UTF-8.
    deepest : int
        The levels of lists and objects that are accepted.

    Returns
    -------
    Any

    Raises
    ------
    BadJson
        With one sentence, for anything that is not plain, bounded JSON.
    """
    try:
        found = _DECODER.decode(data.decode("utf-8"))
    except BadJson:
        raise
    except RecursionError as problem:
        raise BadJson(
            f"The JSON is nested more than {deepest} deep; flatter data is expected."
        ) from problem
    except ValueError as problem:
        raise BadJson(
            "This is not readable JSON in UTF-8; it may have been cut short. Send or save it again."
        ) from problem
    if not nested_at_most(found, deepest):
        raise BadJson(f"The JSON is nested more than {deepest} deep; flatter data is expected.")
    return found


def _once(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    """An object whose keys are all different."""
    found = dict(pairs)
    if len(found) != len(pairs):
        raise BadJson("The JSON has a key twice in one object; each key may be there once.")
    return found


def _no_constant(name: str) -> None:
    raise BadJson(f"The JSON has {name}, which is no number; leave the value out.")


# Made once: `json.loads` makes one for every answer.
_DECODER = json.JSONDecoder(object_pairs_hook=_once, parse_constant=_no_constant)
