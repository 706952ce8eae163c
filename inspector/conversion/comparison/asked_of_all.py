"""One list of what is asked of every candidate, so that nobody is measured by a shorter one.

A chapter leaves out what it cannot calculate; a list made of what the chapters say would be the
shorter, the less is known of a vessel.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from inspector.conversion.core.chapter import Requirement


@dataclass(frozen=True)
class Asked:
    """One thing that is asked of every candidate.

    Parameters
    ----------
    id : str
        Of the requirement that answers it.
    label : str
        Where no candidate answers it.
    field : str
        Of the brief, that asks it; "" where it is asked of every vessel.
    """

    id: str
    label: str
    field: str = ""


ASKED = (
    Asked("speed", "Speed on the engines", "speed"),
    Asked("range", "Range", "range"),
    Asked("endurance", "Endurance, first thing to run out", "endurance"),
    Asked("persons", "Persons berthed", "persons"),
    Asked("loading", "Loading conditions that meet every check"),
    Asked("load-line", "Draught at the load-line mark"),
    Asked("gm", "Metacentric height after the changes"),
    Asked("kg-limit", "Greatest KG by the booklet, after the changes"),
    Asked("wind", "Severe wind: area to leeward over area to windward"),
    Asked("deck-load", "Heaviest load on deck, of what is declared"),
    Asked("deck-cargo", "All loads on deck, against the greatest deck cargo"),
    Asked("power-one-set-out-harbour", "Power with one set out, harbour"),
    Asked("power-one-set-out-sea", "Power with one set out, sea"),
    Asked("wind-after-failure", "Wind withstood after the worst single failure"),
)


def asked_by(brief: Mapping[str, str]) -> tuple[Asked, ...]:
    """Return what a brief asks of every vessel, whatever is known of one.

    Parameters
    ----------
    brief : mapping of str to str

    Returns
    -------
    tuple of Asked

    References
    ----------
    Model of our own.
    """
    return tuple(one for one in ASKED if not one.field or str(brief.get(one.field, "")).strip())


def answers(
    asked: Sequence[Asked], requirements: Sequence[Requirement]
) -> tuple[Requirement | None, ...]:
    """Return what a vessel offers for each thing asked.

    Parameters
    ----------
    asked : sequence of Asked
    requirements : sequence of Requirement
        Of her chapters.

    Returns
    -------
    tuple of Requirement or None
        None where nobody could calculate it.

    References
    ----------
    Model of our own.
    """
    by_id = {requirement.id: requirement for requirement in requirements}
    return tuple(by_id.get(one.id) for one in asked)
