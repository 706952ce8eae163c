"""The numbered lists of an inspection: findings, photos and work lines."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from inspector.assess.photo_times import in_order, shown_time
from inspector.assess.recorded import RecordedInspection
from inspector.checklists.model import Library
from inspector.record.typed_values import typed_number
from inspector.values.vocabulary import ACTS, PLACES_OF_WORK, SUPPLIERS, URGENCIES, YES

MOST_STEPS = 9999
_TEXTS_OF_LINE = ("quantity", "quantity_unit", "place", "after", "finding", "check")


@dataclass(frozen=True)
class WorkLine:
    """One line of the scope: what the yard would do.

    Parameters
    ----------
    id, system : str
    unit : str
        Unit id or "all".
    act : str
        "refurbish", "replace" or "remove".
    text : str
    low, likely, high : float or None
        Money.
    weight : float or None
        t; plus is added.
    sequence : int or None
        Place in the order of the work, 1 first; None where it has none yet.
    rate : str
        The line of the rate book by which it was priced, as it was then.
    number : int
        Its number in the yard's list, which it keeps for good; 0 where it was never recorded.
    quantity, quantity_unit : str
        How much of it, as typed: "110" and "m²".
    place : str
        Frame or place on board, as typed.
    done : str
        "afloat", "in dock", or "" where nobody said.
    after : str
        Id of the line that must be done before, "" for none.
    finding : str
        Id of the finding that asks for it, "" for none.
    check : str
        Id of the check that it follows from, "" for none.
    class_attends : bool
        Whether the classification society attends.
    supplied_by : str
        "yard", "owner", or "" where nobody said.
    weeks : float or None
        How long the yard works on it [weeks].
    """

    id: str
    system: str
    unit: str
    act: str
    text: str
    low: float | None = None
    likely: float | None = None
    high: float | None = None
    weight: float | None = None
    sequence: int | None = None
    rate: str = ""
    weeks: float | None = None
    number: int = 0
    quantity: str = ""
    quantity_unit: str = ""
    place: str = ""
    done: str = ""
    after: str = ""
    finding: str = ""
    check: str = ""
    class_attends: bool = False
    supplied_by: str = ""

    @property
    def is_priced(self) -> bool:
        """Whether it is in the sums: a likely cost, and ends on the right sides of it."""
        # One rule for every page that sums, or two of them would print two sums.
        if self.likely is None:
            return False
        given = [cost for cost in (self.low, self.likely, self.high) if cost is not None]
        return given[0] >= 0 and given == sorted(given)


@dataclass(frozen=True)
class Finding:
    """One fact found, with its urgency and what to do.

    Parameters
    ----------
    id : str
    number : int
        In the register.
    title, text, urgency, action : str
    system, unit, unit_name : str
        What it was found on.
    photos : tuple of str
        SHA-256.
    check : str
        Title of the check on which it was made, "" for none.
    """

    id: str
    number: int
    title: str
    text: str
    urgency: str
    action: str = ""
    system: str = ""
    unit: str = ""
    unit_name: str = ""
    photos: tuple[str, ...] = ()
    check: str = ""

    @property
    def where(self) -> str:
        """The unit, and the check on which it was made: "Bow thruster 1: Water in the hub oil"."""
        return ": ".join(part for part in (self.unit_name, self.check) if part)


@dataclass(frozen=True)
class Photo:
    """A photo as registered.

    Parameters
    ----------
    number : int
        In the register.
    sha : str
        SHA-256.
    caption : str
    on : str
        Subject it belongs to, "" for none.
    taken : str
        ISO time by the camera, else by the device on which it was chosen.
    who : str
    kind : str
        "jpeg", "png", "webp" or "heic".
    place : str
        Where it belongs, in words: "Bow thruster 1: Water in the hub oil".
    by_camera : bool
        Whether the camera itself wrote the time.
    """

    number: int
    sha: str
    caption: str = ""
    on: str = ""
    taken: str = ""
    who: str = ""
    kind: str = "jpeg"
    place: str = ""
    by_camera: bool = False


def work_lines(recorded: RecordedInspection) -> tuple[WorkLine, ...]:
    """Return the lines of the scope that name a known act.

    Parameters
    ----------
    recorded : RecordedInspection
        The inspection.

    Returns
    -------
    tuple of WorkLine
        In the order in which they were entered.
    """
    return tuple(
        _work_line(line_id, fields, recorded.line_numbers.get(line_id, 0))
        for line_id, fields in recorded.work_lines.items()
        # A line without an act says nothing that could be priced or done.
        if fields.get("act") in ACTS
    )


def _work_line(line_id: str, fields: Mapping[str, str], number: int) -> WorkLine:
    return WorkLine(
        id=line_id,
        system=fields.get("system", ""),
        unit=fields.get("unit", "all"),
        act=fields["act"],
        text=fields.get("text", ""),
        low=typed_number(fields.get("low")),
        likely=typed_number(fields.get("likely")),
        high=typed_number(fields.get("high")),
        weight=typed_number(fields.get("weight")),
        sequence=_step(fields.get("sequence")),
        rate=fields.get("rate", ""),
        number=number,
        class_attends=fields.get("class_attends") == YES,
        # A word of a newer version says nothing here.
        done=_one_of(PLACES_OF_WORK, fields.get("done", "")),
        supplied_by=_one_of(SUPPLIERS, fields.get("supplied_by", "")),
        **{name: fields.get(name, "") for name in _TEXTS_OF_LINE},
        weeks=typed_number(fields.get("weeks"), 0),
    )


def _one_of(words: tuple[str, ...], word: str) -> str:
    return word if word in words else ""


def _step(text: str | None) -> int | None:
    """The place in the order of the work, None where none can be read."""
    number = typed_number(text, 1)
    return int(number) if number is not None and number <= MOST_STEPS else None


def findings(recorded: RecordedInspection, library: Library) -> tuple[Finding, ...]:
    """Number the findings that have a title or a text.

    Parameters
    ----------
    recorded : RecordedInspection
        The inspection.
    library : Library
        Its checklists, for the title of the check on which a finding was made.

    Returns
    -------
    tuple of Finding
        The oldest first; an unknown urgency counts as before purchase.
    """
    pictures: dict[str, list[str]] = {}
    for digest, fields in recorded.photos.items():
        pictures.setdefault(fields.get("on", ""), []).append(digest)
    names = unit_names(recorded)
    made: list[Finding] = []
    for finding_id, fields in recorded.findings.items():
        # Begun on a device and never filled in: nothing to show, and no number of its own.
        if not (fields.get("title") or fields.get("text")):
            continue
        system, _, unit = fields.get("on", "").partition("/")
        urgency = fields.get("urgency", "")
        finding = Finding(
            id=finding_id,
            number=len(made) + 1,
            title=fields.get("title", ""),
            text=fields.get("text", ""),
            # An urgency of a newer version must not hide the finding.
            urgency=urgency if urgency in URGENCIES else "before purchase",
            action=fields.get("action", ""),
            system=system,
            unit=unit,
            unit_name=names.get((system, unit), ""),
            photos=tuple(pictures.get(f"finding/{finding_id}", ())),
            check=_check_title(library, system, fields.get("check", "")),
        )
        made.append(finding)
    return tuple(made)


def photos(
    recorded: RecordedInspection, library: Library, findings: Iterable[Finding] = ()
) -> tuple[Photo, ...]:
    """Number the photos.

    Parameters
    ----------
    recorded : RecordedInspection
        The inspection.
    library : Library
        Its checklists, for the title of the check that a photo belongs to.
    findings : iterable of Finding
        The findings that photos may belong to.

    Returns
    -------
    tuple of Photo
        In the order in which they were taken.
    """
    places = {f"finding/{one.id}": f"Finding {one.number}: {one.title}" for one in findings}
    names = unit_names(recorded)
    made = []
    # Numbered anew each time: by when they were taken, whatever the order in which they arrived.
    for number, digest in enumerate(in_order(recorded.photos), 1):
        fields = recorded.photos[digest]
        taken = shown_time(fields)
        on = fields.get("on", "")
        photo = Photo(
            number=number,
            sha=digest,
            caption=fields.get("caption", ""),
            on=on,
            taken=taken,
            # The report says which clock a time is by.
            by_camera=bool(taken) and taken == fields.get("camera_time"),
            who=recorded.photographers.get(digest, ""),
            kind=fields.get("kind", "jpeg"),
            # Of a finding by its number, since that is how the report refers to it.
            place=places.get(on) or _place(on, library, names),
        )
        made.append(photo)
    return tuple(made)


def unit_names(recorded: RecordedInspection) -> dict[tuple[str, str], str]:
    """Return the names of the units on board.

    Parameters
    ----------
    recorded : RecordedInspection
        The inspection.

    Returns
    -------
    dict of (str, str) to str
        (system, unit) -> name.
    """
    return {(unit.system, unit.id): unit.name for unit in recorded.units}


def _place(on: str, library: Library, names: Mapping[tuple[str, str], str]) -> str:
    """Where a photo belongs, in words: "Bow thruster 1: Water in the hub oil"."""
    kind, *path = on.split("/")
    if kind in ("vessel", "inspection"):
        return kind.capitalize()
    if kind == "space" and path:
        return library.spaces.get(path[0], "")
    if kind not in ("unit", "sheet") or len(path) < 2:
        return ""
    unit = names.get((path[0], path[1]), "")
    title = _check_title(library, path[0], path[2]) if len(path) > 2 else ""
    return f"{unit}: {title}" if unit and title else unit


def _check_title(library: Library, system: str, check: str) -> str:
    """Title of a check, "" where these checklists do not have it."""
    found = library.systems.get(system)
    known = found.check(check) if found else None
    return known.title if known else ""
