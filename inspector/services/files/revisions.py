"""Signed revisions: a state of the record that somebody signed, and that can be made again.

A revision is recorded as entries of its own. It names the last entry of each device that it
covers, so that the same entries are found again whatever is recorded later, and their digest.
"""

import hashlib
import secrets
from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import date

from inspector.record.entry import Entry, to_json
from inspector.record.inspection import Inspection
from inspector.record.state import State
from inspector.record.typed_values import texts
from inspector.values.errors import InspectorError

SUBJECT = "signature/"


class CannotSign(InspectorError):
    """A revision that cannot be signed, with the reason."""


@dataclass(frozen=True)
class Revision:
    """One signed revision.

    Parameters
    ----------
    number : int
        From 1.
    digest : str
        SHA-256 of the entries that it covers, in hexadecimal digits.
    name, capacity : str
        Who signed, and as what.
    day : date
        Of the statement: surveys are due or not as of this day.
    up_to : dict of str to int
        Device -> the number of its last entry that is covered.
    """

    number: int
    digest: str
    name: str
    capacity: str
    day: date
    up_to: dict[str, int]

    @property
    def title(self) -> str:
        """The revision in words, as on cover and foot."""
        return f"revision {self.number}"

    @property
    def signed_by(self) -> str:
        """Name and capacity of who signed."""
        return ", ".join(part for part in (self.name, self.capacity) if part)


def digest_of(entries: Iterable[Entry]) -> str:
    """Return a digest of what was recorded, whatever the order in which it arrived.

    Parameters
    ----------
    entries : iterable of Entry
        Signatures among them do not count: to sign changes nothing of what is signed.

    Returns
    -------
    str
        SHA-256, in hexadecimal digits.
    """
    # Sorted, because devices hand over in any order.
    lines = sorted(to_json(entry) for entry in _without_signatures(entries))
    return hashlib.sha256("\n".join(lines).encode()).hexdigest()


def _without_signatures(entries: Iterable[Entry]) -> list[Entry]:
    return [entry for entry in entries if not entry.subject.startswith(SUBJECT)]


def revisions_of(inspection: Inspection) -> tuple[Revision, ...]:
    """Return the signed revisions of an inspection, the oldest first.

    Parameters
    ----------
    inspection : Inspection

    Returns
    -------
    tuple of Revision
        Numbered in the order in which they were signed.
    """
    subjects = inspection.state.existing(SUBJECT)
    found = (_read(texts(inspection.state, subject)) for subject in subjects)
    whole = [revision for revision in found if revision]
    return tuple(replace(each, number=number) for number, each in enumerate(whole, 1))


def _read(fields: dict[str, str]) -> Revision | None:
    """A revision as it was recorded; None where it is not whole, as while a bundle comes in."""
    try:
        last = [part.rpartition(":") for part in fields["up_to"].split()]
        return Revision(
            0,
            fields["digest"],
            fields.get("name", ""),
            fields.get("capacity", ""),
            date.fromisoformat(fields["day"]),
            {device: int(count) for device, _, count in last},
        )
    except (KeyError, ValueError):
        return None


def entries_of(inspection: Inspection, revision: Revision) -> list[Entry]:
    """Return the entries that a revision covers, as far as they are here.

    Parameters
    ----------
    inspection : Inspection
    revision : Revision

    Returns
    -------
    list of Entry
    """
    return [
        entry
        for entry in _without_signatures(inspection.entries)
        if entry.number <= revision.up_to.get(entry.device, 0)
    ]


def state_of(inspection: Inspection, revision: Revision) -> State:
    """Return what was recorded when a revision was signed.

    Parameters
    ----------
    inspection : Inspection
    revision : Revision

    Returns
    -------
    State

    Raises
    ------
    CannotSign
        The entries that are here are not those that were signed.
    """
    entries = entries_of(inspection, revision)
    if digest_of(entries) != revision.digest:
        raise CannotSign(
            f"The record of {revision.title} cannot be put together: its entries are not all here, "
            "or one that was missing has come since. A copy of the signed file is the only one."
        )
    return State(entries)


def unsigned(inspection: Inspection) -> bool:
    """Tell whether anything was recorded since the last revision, or none was signed.

    Parameters
    ----------
    inspection : Inspection

    Returns
    -------
    bool
    """
    signed = revisions_of(inspection)
    return not signed or signed[-1].digest != digest_of(inspection.entries)


def sign(inspection: Inspection, who: str, name: str, capacity: str, day: date) -> Revision:
    """Record that somebody signs what is recorded now.

    Parameters
    ----------
    inspection : Inspection
    who : str
        The author of the entries.
    name, capacity : str
        Who signs, and as what.
    day : date
        Of the statement.

    Returns
    -------
    Revision

    Raises
    ------
    CannotSign
        Nothing was recorded since the last revision, or entries of a device are missing.
    """
    if not unsigned(inspection):
        last = revisions_of(inspection)[-1]
        raise CannotSign(
            f"Nothing was recorded since {last.title} of {last.day.isoformat()}: it stands as "
            "it was signed."
        )
    missing = inspection.missing()
    if missing:
        raise CannotSign(
            f"Entries of {', '.join(sorted(missing))} are missing here, and what they say would "
            "not be in the revision. Hand over from that device first, or bring in its file."
        )
    entries = _without_signatures(inspection.entries)
    up_to: dict[str, int] = {}
    for entry in entries:
        up_to[entry.device] = max(up_to.get(entry.device, 0), entry.number)
    # Entry numbers are given in the order of time, so those of a device up to its last are all.
    subject = f"{SUBJECT}{secrets.token_hex(4)}"
    values = {
        "digest": digest_of(entries),
        "name": name,
        "capacity": capacity,
        "day": day.isoformat(),
        "up_to": " ".join(f"{device}:{last}" for device, last in sorted(up_to.items())),
    }
    inspection.record(who, [(subject, field, value) for field, value in values.items() if value])
    return revisions_of(inspection)[-1]
