"""JSON from strangers: bounded depth, no key twice, no NaN. Python's own reader takes all of these, and the last key silently wins."""

import json
from typing import Any

from inspector.errors import InspectorError

DEEPEST = 16


class BadJson(InspectorError):
    """Not JSON that we read; the sentence says why."""


def loads(data: bytes, deepest: int = DEEPEST) -> Any:
    """Read UTF-8 JSON; BadJson with one sentence for anything that is not plain, bounded JSON."""
    try:
        found = json.loads(data.decode("utf-8"), object_pairs_hook=_once, parse_constant=_no_constant)
    except BadJson:
        raise
    except RecursionError as problem:
        raise BadJson(f"The JSON is nested more than {deepest} deep; flatter data is expected.") from problem
    except ValueError as problem:
        raise BadJson("This is not readable JSON in UTF-8; it may have been cut short. Send or save it again.") from problem
    if not _within(found, deepest):
        raise BadJson(f"The JSON is nested more than {deepest} deep; flatter data is expected.")
    return found


def _once(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    found = dict(pairs)
    if len(found) != len(pairs):
        raise BadJson("The JSON has a key twice in one object; each key may stand once.")
    return found


def _no_constant(name: str) -> None:
    raise BadJson(f"The JSON has {name}, which is no number; leave the value out.")


def _within(found: Any, deepest: int) -> bool:
    level = [found]
    for _ in range(deepest):
        level = [inner for one in level if isinstance(one, list | dict) for inner in (one.values() if isinstance(one, dict) else one)]
        if not level:
            return True
    return not any(isinstance(one, list | dict) for one in level)
