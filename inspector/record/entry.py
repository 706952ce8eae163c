"""An entry: one thing that one person said about one field of one subject; and what is refused as an entry."""

import json
import re
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import UTC, datetime
from typing import Any

from inspector.errors import InspectorError

ID = re.compile(r"[a-z0-9][a-z0-9-]{0,39}:[1-9][0-9]{0,8}")
DEVICE = re.compile(r"[a-z0-9][a-z0-9-]{0,39}")
_PART = r"[a-z0-9][a-z0-9_-]{0,59}"
SUBJECTS = re.compile(
    rf"inspection|vessel|brief|settings|unit/{_PART}/{_PART}|sheet/{_PART}/{_PART}/{_PART}|verdict/{_PART}/{_PART}"
    rf"|(finding|certificate|scope|signature|profile)/{_PART}|row/{_PART}/{_PART}|photo/[0-9a-f]{{64}}"
)
FIELD = re.compile(rf"{_PART}(/{_PART})?")
LONGEST_VALUE = 20_000
MOST_REPLACED = 200
DEEPEST_VALUE = 12
KEYS = ("id", "at", "device", "who", "subject", "field", "value", "replaces")


class EntryRefused(InspectorError):
    """A thing that is not an entry; `entry_id` is its id as far as one could be read."""

    def __init__(self, sentence: str, entry_id: str = ""):
        super().__init__(sentence)
        self.entry_id = entry_id


@dataclass(frozen=True, slots=True)
class Entry:
    """One line of the journal; `value` is JSON (None: cleared), `at` an ISO time in UTC by the device's own clock."""

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
    """This moment as entries write it: UTC, milliseconds, Z."""
    return datetime.now(UTC).isoformat(timespec="milliseconds").replace("+00:00", "Z")


def to_json(entry: Entry) -> str:
    """The one spelling of an entry: compact, keys in order, NaN refused."""
    return json.dumps(to_dict(entry), ensure_ascii=False, separators=(",", ":"), allow_nan=False)


def to_dict(entry: Entry) -> dict[str, Any]:
    """The entry as a plain dict, for JSON."""
    return {key: list(entry.replaces) if key == "replaces" else getattr(entry, key) for key in KEYS}


def from_dict(data: Any) -> Entry:
    """Check `data` (parsed JSON) and make it an Entry; EntryRefused names the key that is wrong and what would be right."""
    if not isinstance(data, Mapping):
        raise EntryRefused("An entry must be a JSON object with the keys " + ", ".join(KEYS) + ".")
    entry_id = data.get("id") if isinstance(data.get("id"), str) else ""
    for key, (fits, expected) in _RULES.items():
        if key not in data:
            raise EntryRefused(f"The entry's {key} is missing; expected {expected}.", entry_id)
        if not fits(data.get(key)):
            raise EntryRefused(f"The entry's {key} is {_short(data.get(key))}; expected {expected}.", entry_id)
    if not data["id"].startswith(data["device"] + ":"):
        raise EntryRefused(f"The entry's id {data['id']!r} must begin with its device, {data['device']!r}.", entry_id)
    if data["id"] in data["replaces"]:
        raise EntryRefused(f"The entry {data['id']} says that it replaces itself.", entry_id)
    return Entry(**{key: data[key] for key in KEYS if key != "replaces"}, replaces=tuple(data["replaces"]))


def _short(value: Any) -> str:
    try:
        text = repr(value)
    except RecursionError:
        return "nested too deeply"
    return text if len(text) <= 60 else text[:57] + "..."


def _is_time(value: Any) -> bool:
    # ASCII alone: other signs, which a lenient reader lets stand between date and time, are put in another order by a browser than here.
    if not isinstance(value, str) or not value.endswith("Z") or len(value) > 30 or not value.isascii():
        return False
    try:
        datetime.fromisoformat(value)
    except ValueError:
        return False
    return True


def _is_shallow(value: Any) -> bool:
    # How deep json itself can go differs between Python versions, so the depth is counted, level by level.
    level = [value]
    for _ in range(DEEPEST_VALUE):
        level = [inner for one in level if isinstance(one, list | dict) for inner in (one.values() if isinstance(one, dict) else one)]
    return not any(isinstance(one, list | dict) for one in level)


def _is_value(value: Any) -> bool:
    if not _is_shallow(value):
        return False
    try:
        text = json.dumps(value, ensure_ascii=False, allow_nan=False)
        text.encode("utf-8")
    except (ValueError, TypeError, RecursionError):
        return False
    return len(text) <= LONGEST_VALUE


def _matches(pattern: re.Pattern):
    return lambda value: isinstance(value, str) and bool(pattern.fullmatch(value))


def _is_replaces(value: Any) -> bool:
    return isinstance(value, list) and len(value) <= MOST_REPLACED and all(map(_matches(ID), value))


def _is_who(value: Any) -> bool:
    return isinstance(value, str) and len(value) <= 80 and not any(ord(c) < 32 or 0xD800 <= ord(c) < 0xE000 for c in value)


_RULES = {
    "id": (_matches(ID), "device and number, such as kt-phone:118"),
    "device": (_matches(DEVICE), "lower case letters, digits and hyphens, at most 40"),
    "at": (_is_time, "a UTC time such as 2026-05-02T09:14:07.512Z"),
    "who": (_is_who, "a name or initials of at most 80 characters"),
    "subject": (_matches(SUBJECTS), "a subject such as sheet/thrusters/bow-1/hub-oil"),
    "field": (_matches(FIELD), "a field name in lower case"),
    "value": (_is_value, f"JSON of at most {LONGEST_VALUE} characters"),
    "replaces": (_is_replaces, "a list of entry ids"),
}
