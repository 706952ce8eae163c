"""The advice for the minutes left as plain data: what the computer and a device both answer."""

from dataclasses import asdict
from typing import Any

from inspector.assess.next_look.advice import NextLook


def advice_data(found: NextLook) -> dict[str, Any]:
    """Return the looks worth the minutes as the walk's scripts receive them.

    Parameters
    ----------
    found : NextLook

    Returns
    -------
    dict
        ``looks``: in walking order, each with its reason; ``minutes``: what they take [min];
        ``why`` there are none; ``joint``: what to see before buying or walking away.
    """
    looks = [{**asdict(one.look), "sentence": one.sentence} for one in found.advice]
    return {"looks": looks, "minutes": found.minutes, "why": found.why, "joint": found.joint}
