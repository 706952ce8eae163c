"""An entry: one thing that one person recorded about one field of one subject."""

import json
import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import UTC, datetime
from functools import lru_cache
from operator import itemgetter
from typing import Any

from inspector.values.errors import InspectorError

# Nine digits at most: more than any device records, and exact as a number in a browser.
ID = re.compile(r"[a-z0-9][a-z0-9-]{0,39}:[1-9][0-9]{0,8}")
DEVICE = re.compile(r"[a-z0-9][a-z0-9-]{0,39}")
_PART = r"[a-z0-9][a-z0-9_-]{0,59}"
SUBJECTS = re.compile(
    rf"inspection|vessel|brief|settings|(unit|verdict|row)/{_PART}/{_PART}"
    rf"|sheet/{_PART}/{_PART}/{_PART}|(finding|certificate|scope|signature|profile)/{_PART}"
    r"|photo/[0-9a-f]{64}"
)
FIELD = re.compile(rf"{_PART}(/{_PART})?")
# In characters of JSON, since a value need not be text.
LONGEST_VALUE = 20_000
LONGEST_NAME = 80
LONGEST_TIME = 30
MOST_REPLACED = 200
DEEPEST_VALUE = 12
KEYS = ("id", "at", "device", "who", "subject", "field", "value", "replaces")


# Made once: `json.dumps` makes one for every entry.
_ENCODER = json.JSONEncoder(ensure_ascii=False, separators=(",", ":"), allow_nan=False)


class EntryRefused(InspectorError):
    """A thing that is not an entry; `entry_id` is its id as far as one could be read."""

    def __init__(self, sentence: str, entry_id: str = ""):
        super().__init__(sentence)
        self.entry_id = entry_id


@dataclass(frozen=True, slots=True)
class Entry:
    """One line of the journal.

    Parameters
    ----------
    id : str
        Device and number, such as "kt-phone:118".
    at : str
        ISO time in UTC, by the device's own clock.
    device : str
        The device on which it was made.
    who : str
        Name or initials of the person.
    subject, field : str
        What it is about.
    value : Any
        JSON; None where the field was cleared.
    replaces : tuple of str
        Ids of the entries of this field that the person saw.
    """

    id: str
    at: str
    device: str
    who: str
    subject: str
    field: str
    value: Any
    replaces: tuple[str, ...] = ()

    @property
    def number(self) -> int:
        """The device's own count, from 1 without holes."""
        return int(self.id.rpartition(":")[2])


def now() -> str:
    """Return this moment as entries write it: UTC, milliseconds, Z."""
    return datetime.now(UTC).isoformat(timespec="milliseconds").replace("+00:00", "Z")


def to_json(entry: Entry) -> str:
    """Return the one spelling of an entry.

    Parameters
    ----------
    entry : Entry

    Returns
    -------
    str
        Compact JSON with its keys in order; NaN is refused.
    """
    return _ENCODER.encode(to_dict(entry))


def to_dict(entry: Entry) -> dict[str, Any]:
    """Return an entry as a plain dict, for JSON.

    Parameters
    ----------
    entry : Entry

    Returns
    -------
    dict of str to Any
        With KEYS, in that order.
    """
    found = {key: getattr(entry, key) for key in KEYS}
    return {**found, "replaces": list(entry.replaces)}


def from_dict(data: Any) -> Entry:
    """Check parsed JSON and make it an entry.

    Parameters
    ----------
    data : Any
        What a device, a file or a bundle brought.

    Returns
    -------
    Entry

    Raises
    ------
    EntryRefused
        Its sentence names the key that is wrong and what would be right.
    """
    entry = _plain_entry(data)
    if entry is not None:
        return entry
    if not isinstance(data, Mapping):
        raise EntryRefused("An entry must be a JSON object with the keys " + ", ".join(KEYS) + ".")
    entry_id = data.get("id") if isinstance(data.get("id"), str) else ""
    for key, (fits, expected) in _RULES.items():
        if key not in data:
            raise EntryRefused(f"The entry's {key} is missing; expected {expected}.", entry_id)
        if not fits(data.get(key)):
            raise EntryRefused(
                f"The entry's {key} is {_short(data.get(key))}; expected {expected}.", entry_id
            )
    if not data["id"].startswith(data["device"] + ":"):
        raise EntryRefused(
            f"The entry's id {data['id']!r} must begin with its device, {data['device']!r}.",
            entry_id,
        )
    # It would make itself disappear.
    if data["id"] in data["replaces"]:
        raise EntryRefused(f"The entry {data['id']} says that it replaces itself.", entry_id)
    return Entry(
        **{key: data[key] for key in KEYS if key != "replaces"}, replaces=tuple(data["replaces"])
    )


def _plain_entry(data: Any) -> Entry | None:
    """An entry of the usual kind; None for everything that needs a closer look.

    An inspection of years has tens of thousands of entries, and each is checked when it is opened.
    """
    if type(data) is not dict:
        return None
    try:
        entry_id, at, device, who, subject, field, value, replaces = _IN_ORDER(data)
        known = _is_device(device) and _is_subject(subject) and _is_field(field) and _is_who(who)
        numbered = ID.fullmatch(entry_id) and entry_id.startswith(device + ":")
    # A key is missing, or a value is of another kind.
    except (KeyError, TypeError, AttributeError):
        return None
    if not (known and numbered and _is_time(at) and _is_short_text(value)):
        return None
    if not _is_replaces(replaces) or entry_id in replaces:
        return None
    return Entry(entry_id, at, device, who, subject, field, value, tuple(replaces))


_IN_ORDER = itemgetter(*KEYS)


def _is_short_text(value: Any) -> bool:
    # As JSON, a sign becomes six at most.
    return type(value) is str and len(value) <= LONGEST_VALUE // 6 - 1 and value.isascii()


def _short(value: Any) -> str:
    """A value as it can be put into a sentence."""
    try:
        text = repr(value)
    except RecursionError:
        return "nested too deeply"
    return text if len(text) <= 60 else text[:57] + "..."


def _is_time(value: Any) -> bool:
    if not isinstance(value, str) or not value.endswith("Z") or len(value) > LONGEST_TIME:
        return False
    # Other signs, which a lenient reader accepts between date and time, are sorted differently by a
    # browser than here.
    if not value.isascii():
        return False
    try:
        datetime.fromisoformat(value)
    except ValueError:
        return False
    return True


def _is_shallow(value: Any) -> bool:
    # How deep json itself can go differs between Python versions, so the depth is counted here.
    return nested_at_most(value, DEEPEST_VALUE)


def nested_at_most(value: Any, deepest: int) -> bool:
    """Tell whether JSON is nested no deeper than a number of levels.

    Parameters
    ----------
    value : Any
        Parsed JSON.
    deepest : int
        The levels of lists and objects that are accepted.

    Returns
    -------
    bool
    """
    level = [value]
    for _ in range(deepest):
        level = [inner for nested in level for inner in _inside(nested)]
        if not level:
            return True
    return not any(isinstance(nested, list | dict) for nested in level)


def _inside(value: Any) -> Iterable[Any]:
    if isinstance(value, dict):
        return value.values()
    return value if isinstance(value, list) else ()


def _is_value(value: Any) -> bool:
    """Whether a value is JSON of a bounded depth and length."""
    if not _is_shallow(value):
        return False
    try:
        text = json.dumps(value, ensure_ascii=False, allow_nan=False)
        text.encode("utf-8")
    except (ValueError, TypeError, RecursionError):
        return False
    return len(text) <= LONGEST_VALUE


def _matches(pattern: re.Pattern):
    """A check whether a value is text of that pattern."""
    return lambda value: isinstance(value, str) and bool(pattern.fullmatch(value))


def _is_replaces(value: Any) -> bool:
    if not isinstance(value, list) or len(value) > MOST_REPLACED:
        return False
    return all(isinstance(each, str) and ID.fullmatch(each) for each in value)


# The same few devices, people, subjects and fields come again in every inspection.
_is_device, _is_subject, _is_field = (
    lru_cache(4096)(_matches(pattern)) for pattern in (DEVICE, SUBJECTS, FIELD)
)


@lru_cache(1024)
def _is_who(value: Any) -> bool:
    if not isinstance(value, str) or len(value) > LONGEST_NAME:
        return False
    # Half of a surrogate pair is no text that UTF-8 can keep.
    return not any(_is_control_or_surrogate(sign) for sign in value)


def _is_control_or_surrogate(sign: str) -> bool:
    return ord(sign) < 32 or 0xD800 <= ord(sign) < 0xE000


_RULES = {
    "id": (_matches(ID), "device and number, such as kt-phone:118"),
    "device": (_matches(DEVICE), "lower case letters, digits and hyphens, at most 40"),
    "at": (_is_time, "a UTC time such as 2026-05-02T09:14:07.512Z"),
    "who": (_is_who, f"a name or initials of at most {LONGEST_NAME} characters"),
    "subject": (_matches(SUBJECTS), "a subject such as sheet/thrusters/bow-1/hub-oil"),
    "field": (_matches(FIELD), "a field name in lower case"),
    "value": (_is_value, f"JSON of at most {LONGEST_VALUE} characters"),
    "replaces": (_is_replaces, "a list of entry ids"),
}
