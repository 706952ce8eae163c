"""Which kind of value each field of an entry may have.

An entry from a device or a file whose value is of another kind is kept aside and named, so that no
page has to show a list where it expects a text. A cleared field (None) fits every kind.
"""

import re
from collections.abc import Callable, Iterable, Mapping
from functools import cache
from typing import Any

from inspector.record.entry import Entry, EntryRefused


def _is_text(value: Any) -> bool:
    return isinstance(value, str)


def _is_quantity(value: Any) -> bool:
    """A text with or without the unit in which it was typed."""
    return _is_text(value) or (
        isinstance(value, Mapping)
        and {"value"} <= value.keys() <= {"value", "unit"}
        and all(map(_is_text, value.values()))
    )


def _is_answers(value: Any) -> bool:
    """Question -> answer, as the questions before an enclosed space are recorded."""
    return isinstance(value, Mapping) and all(map(_is_text, value.values()))


def _is_texts(value: Any) -> bool:
    return isinstance(value, list) and all(map(_is_text, value))


def _is_flag(value: Any) -> bool:
    # A text too, because a spreadsheet or another program may have written the entry.
    return isinstance(value, bool) or value in ("true", "yes", "false", "no", "")


TEXT = (_is_text, "a text")
QUANTITY = (_is_quantity, 'a text, or {"value": text, "unit": text}')
ANSWERS = (_is_answers, "a table of questions with a text each")
FLAG = (_is_flag, "true or false")
IDS = (_is_texts, "a list of entry ids")

Kind = tuple[Callable[[Any], bool], str]
# Kind of subject -> pattern of its fields -> kind of value; the first pattern that fits counts. A
# field without a pattern is one that this version does not read: it may have any value, so that
# the entries of a newer version are kept.
KINDS: dict[str, dict[str, Kind]] = {
    "sheet": {
        "gate": ANSWERS,
        "reading/.*": QUANTITY,
        "rating|note|depth": TEXT,
    },
    # Notes on what an entry names as replaced and nobody had seen (unseen.py).
    "inspection": {"gone": FLAG, "unseen/.*": IDS, ".*": QUANTITY},
    "finding": {"gone": FLAG, "title|text|action|urgency|on|check": TEXT},
    "photo": {"gone": FLAG, "on|kind|taken|taken_at|name|caption": TEXT},
    **{
        subject: {"gone": FLAG, ".*": QUANTITY}
        for subject in (
            "vessel",
            "brief",
            "settings",
            "unit",
            "verdict",
            "row",
            "certificate",
            "scope",
            "signature",
            "profile",
        )
    },
}


def kind_of(subject: str, field: str) -> Kind | None:
    """Return the kind of value that a field may have.

    Parameters
    ----------
    subject, field : str
        As in an entry.

    Returns
    -------
    tuple of (callable, str) or None
        The test of a value and its name in a sentence; None where any value is kept.
    """
    return _kind_of(subject.partition("/")[0], field)


# Cached because a journal of 50,000 entries has a few hundred fields.
@cache
def _kind_of(subject_kind: str, field: str) -> Kind | None:
    for pattern, kind in KINDS.get(subject_kind, {}).items():
        if re.fullmatch(pattern, field):
            return kind
    return None


def fits_its_field(entry: Entry) -> bool:
    """Tell whether an entry's value is of its field's kind, or cleared.

    Parameters
    ----------
    entry : Entry

    Returns
    -------
    bool
    """
    kind = kind_of(entry.subject, entry.field)
    return kind is None or entry.value is None or kind[0](entry.value)


def refuse_other_kind(entry: Entry) -> None:
    """Refuse an entry whose value is not of its field's kind.

    Parameters
    ----------
    entry : Entry

    Raises
    ------
    EntryRefused
        It names the field, what came, and what would be right.
    """
    if not fits_its_field(entry):
        raise EntryRefused(_reason(entry), entry.id)


def _reason(entry: Entry) -> str:
    expected = kind_of(entry.subject, entry.field)[1]
    return (
        f"The value of {entry.field!r} of {entry.subject} is {_named(entry.value)}; "
        f"expected {expected}."
    )


def faults_of_kinds(entries: Iterable[Entry]) -> dict[str, str]:
    """Return why entries are refused for the kind of their value.

    Parameters
    ----------
    entries : iterable of Entry

    Returns
    -------
    dict of str to str
        Id -> sentence, of those that are refused.
    """
    return {entry.id: _reason(entry) for entry in entries if not fits_its_field(entry)}


def _named(value: Any) -> str:
    """What a value is, in the words of JSON."""
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, int | float):
        return f"the number {value}"
    if isinstance(value, str):
        return f"the text {value[:40]!r}"
    return "a list" if isinstance(value, list) else "a table"
