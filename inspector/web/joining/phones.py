"""The phones and tablets that were let in, as the laptop lists them: what each still holds, and
whether it is ready to go below."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import UTC, datetime
from typing import Any

from inspector.sharing.devices import Devices
from inspector.values.errors import InspectorError

# Whoever has the walk open speaks every quarter of a minute.
SILENT_AFTER = 60  # seconds
STATES = ("ready", "ready with a caution", "not ready")
MOST_LINES, LONGEST = 16, 400
_COUNTS = ("answers", "photos", "refused")
_FLAGS = ("judges", "round")


class NotSaid(InspectorError):
    """What a device says of itself cannot be read."""


@dataclass(frozen=True)
class Of:
    """What a phone says of one inspection.

    Parameters
    ----------
    title : str
        The vessel's name.
    holds : str
        What is on the phone only, in words.
    is_all_here : bool
        Whether that is nothing.
    state : str
        One of STATES, "" where it has not said.
    steps : list of (str, str, str)
        What is not simply ready: its name, its state, the next step.
    judges, has_round : bool
        Whether readings are judged, and the round is, on the phone itself.
    """

    title: str
    holds: str
    is_all_here: bool
    state: str
    steps: list[tuple[str, str, str]]
    judges: bool
    has_round: bool


@dataclass(frozen=True)
class Phone:
    """A phone or tablet that was let in.

    Parameters
    ----------
    id, name : str
    kind : str
        What lasts on it, in words.
    heard : str
        When it spoke last, in words.
    is_silent : bool
        Whether that is longer ago than a walk that is open takes.
    state : str
        "in", "ended" (let in no longer) or "over" (its thirty days).
    names : list of str
        Earlier names for which it hands over.
    says : list of Of
    """

    id: str
    name: str
    kind: str
    heard: str
    is_silent: bool
    state: str
    names: list[str] = field(default_factory=list)
    says: list[Of] = field(default_factory=list)

    @property
    def is_all_here(self) -> bool:
        """Whether it has said of every inspection that nothing is on it alone."""
        return bool(self.says) and all(of.is_all_here for of in self.says)


def phones(devices: Devices, titles: Mapping[str, str], moment: float) -> list[Phone]:
    """Return the phones that were let in, newest first.

    Parameters
    ----------
    devices : Devices
    titles : mapping of str to str
        Inspection id -> the vessel's name.
    moment : float
        Now [s].

    Returns
    -------
    list of Phone
    """
    return [_phone(row, titles, moment) for row in devices.all()]


def _phone(row: Mapping[str, Any], titles: Mapping[str, str], moment: float) -> Phone:
    silent = moment - row["seen"]
    state = "ended" if row["revoked"] else "over" if row["expired"] else "in"
    return Phone(
        row["id"],
        row["name"],
        "works after closing too" if row.get("secure") else "its page must stay open",
        f"heard {ago(silent)}",
        silent > SILENT_AFTER,
        state,
        row.get("names", []),
        [_of(titles[name], said, moment) for name, said in row["said"].items() if name in titles],
    )


def _of(title: str, said: Mapping[str, Any], moment: float) -> Of:
    return Of(
        title,
        held(said, moment),
        not any(said[name] for name in _COUNTS),
        said["ready"],
        [(name, state, step) for name, state, step in said["lines"]],
        said["judges"],
        said["round"],
    )


def holds_something(said: Mapping[str, Mapping[str, Any]]) -> bool:
    """Tell whether a phone has said that something is on it only.

    Parameters
    ----------
    said : mapping
        Inspection id -> as `read` gives it.

    Returns
    -------
    bool
    """
    return any(each[name] for each in said.values() for name in _COUNTS)


def held(said: Mapping[str, Any], moment: float) -> str:
    """Say what is on a phone only.

    Parameters
    ----------
    said : mapping
        As `read` gives it.
    moment : float
        Now [s].

    Returns
    -------
    str
        A sentence.
    """
    answers, photos, refused = (said[name] for name in _COUNTS)
    parts = [_counted(answers, "answer"), _counted(photos, "photo")]
    waits = " and ".join(filter(None, parts))
    sentence = f"Still holds {waits}" if waits else "Holds nothing that is not here"
    if waits and said["since"]:
        age = moment - datetime.fromisoformat(said["since"]).timestamp()
        sentence += f", the oldest from {ago(age)}"
    if refused:
        sentence += f"; {_counted(refused, 'entry', 'entries')} refused here and kept there"
    return f"{sentence}."


def ago(seconds: float) -> str:
    """Return how long ago something was, in words.

    Parameters
    ----------
    seconds : float

    Returns
    -------
    str
    """
    if seconds < SILENT_AFTER:
        return "just now"
    for size, name in ((86_400, "day"), (3_600, "hour"), (60, "minute")):
        if seconds >= size:
            return f"{_counted(int(seconds // size), name)} ago"
    return "just now"


def _counted(number: int, name: str, names: str = "") -> str:
    """A number with its noun, "" for none."""
    if not number:
        return ""
    return f"{number} {name if number == 1 else names or name + 's'}"


def read(body: Any) -> dict[str, Any]:
    """Return what a device says of itself, checked.

    Parameters
    ----------
    body : Any
        Parsed JSON.

    Returns
    -------
    dict
        ``answers``, ``photos``, ``refused`` (counts), ``since`` (ISO time or ""), ``ready`` (one of
        STATES or ""), ``lines`` (name, state, step), ``judges``, ``round`` (flags).

    Raises
    ------
    NotSaid
        Where something of it is missing or of another kind.
    """
    if not isinstance(body, dict):
        raise NotSaid("A device says what it holds as a JSON object.")
    counts = {name: body.get(name) for name in _COUNTS}
    for name, count in counts.items():
        if not isinstance(count, int) or isinstance(count, bool) or not 0 <= count < 10**7:
            raise NotSaid(f"{name} is how many wait on the device: a whole number, 0 or more.")
    flags = {name: body.get(name) is True for name in _FLAGS}
    state = body.get("ready")
    return {
        **counts,
        **flags,
        "since": _time(body.get("since")),
        "ready": state if state in STATES else "",
        "lines": _lines(body.get("lines")),
    }


def _time(since: Any) -> str:
    """An ISO time with its zone, "" for anything else."""
    try:
        found = datetime.fromisoformat(since) if isinstance(since, str) else None
    except ValueError:
        return ""
    return found.astimezone(UTC).isoformat() if found and found.tzinfo else ""


def _lines(lines: Any) -> list[list[str]]:
    """The lines that are not simply ready, each three texts of a bounded length."""
    rows = lines if isinstance(lines, list) else []
    texts = [row for row in rows if isinstance(row, list) and len(row) == 3]
    whole = [row for row in texts if all(isinstance(text, str) for text in row)]
    return [[text[:LONGEST] for text in row] for row in whole[:MOST_LINES]]
