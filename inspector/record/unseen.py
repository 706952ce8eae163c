"""What a computer notes when it takes an entry in: which of the replaced ones were not here.

An author can only replace what was there. An entry of a joined device that names others which this
computer does not know yet may be forged, to hide them before they come; so the claim is noted as
not seen, in an entry of this computer's own, and no fold counts it. Where it was honest after all,
both answers are shown until somebody settles them.
"""

import re
from collections.abc import Callable, Collection, Iterable, Mapping

from inspector.record.entry import Entry

SUBJECT = "inspection"
_FIELD = re.compile(r"unseen/(.+)_([0-9]+)")


class Unseen:
    """All such notes, whoever made them. To add one again changes nothing."""

    def __init__(self) -> None:
        self._claims: dict[str, set[str]] = {}
        self.count = 0

    def add(self, entry: Entry) -> bool:
        """Take a note in.

        Parameters
        ----------
        entry : Entry

        Returns
        -------
        bool
            False where the entry is no such note.
        """
        found = _FIELD.fullmatch(entry.field) if entry.subject == SUBJECT else None
        if not found:
            return False
        claims = self._claims.setdefault(f"{found[1]}:{found[2]}", set())
        before = len(claims)
        if isinstance(entry.value, list):
            claims.update(each for each in entry.value if isinstance(each, str))
        self.count += len(claims) - before
        return True

    def claimed_by(self, entry_id: str) -> Collection[str]:
        """Return the ids that an entry names as replaced and that its author cannot have seen."""
        return self._claims.get(entry_id, ())


def field_of(entry_id: str) -> str:
    """Return the field of the note on an entry."""
    device, _, number = entry_id.rpartition(":")
    return f"unseen/{device}_{number}"


def not_seen(entry: Entry, known: Collection[str], same: Collection[str]) -> list[str]:
    """Return the ids that an entry names as replaced and that are not here.

    Parameters
    ----------
    entry : Entry
    known : collection of str
        The ids of the entries that are here.
    same : collection of str
        Devices that are one with the author: what it recorded itself, it has seen.

    Returns
    -------
    list of str
    """
    unknown = [each for each in entry.replaces if each not in known]
    return sorted({each for each in unknown if each.rpartition(":")[0] not in same})


def without_note(
    known: Iterable[Entry],
    late: Mapping[str, Entry],
    noted: Callable[[str], Collection[str]],
) -> dict[str, list[str]]:
    """Find claims on entries that come only now, of which no note is here.

    So it is where another computer's note is in a line that is damaged here.

    Parameters
    ----------
    known : iterable of Entry
        Those that are here.
    late : mapping of str to Entry
        Those that come now, by id.
    noted : callable
        Id -> what that entry is noted not to have seen.

    Returns
    -------
    dict of str to list of str
        Id of the entry that claims -> the ids in `late` that it claims to replace. What an author
        says of its own later entries is left out: the fold knows without a note.
    """
    found = {}
    for entry in known:
        claims = late.keys() & set(entry.replaces).difference(noted(entry.id))
        found[entry.id] = sorted(each for each in claims if late[each].device != entry.device)
    return {entry_id: claims for entry_id, claims in found.items() if claims}


def claims_on_other_contents(
    entries: Iterable[Entry], twice: Mapping[str, Collection[Entry]], known: Iterable[Entry]
) -> dict[str, list[str]]:
    """Find entries whose authors may have seen another content of a number than is here.

    Parameters
    ----------
    entries : iterable of Entry
        What came together with the other contents.
    twice : mapping of str to collection of Entry
        The ids that have another content there, each with the contents.
    known : iterable of Entry
        All that is here, with the notes on claims that were not seen.

    Returns
    -------
    dict of str to list of str
        Id of the entry -> those of `twice` that it names as replaced and that nobody noted yet.
    """
    noted: dict[str, set[str]] = {}
    for each in known:
        if each.subject == SUBJECT and isinstance(each.value, list):
            noted.setdefault(each.field, set()).update(each.value)
    found = {}
    for entry in entries:
        claims = {each for each in twice if each in entry.replaces}
        # Who wrote the contents anew has seen them all.
        claims -= {each for each in claims if any(_same(entry, one) for one in twice[each])}
        found[entry.id] = sorted(claims - noted.get(field_of(entry.id), set()))
    return {entry_id: claims for entry_id, claims in found.items() if claims}


def _same(one: Entry, other: Entry) -> bool:
    """Whether one is the content of the other under another number."""
    pair = (one, other)
    facts = [(each.at, each.who, each.subject, each.field, each.value) for each in pair]
    return facts[0] == facts[1]
