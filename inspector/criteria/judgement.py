"""What every criterion shares: source, inputs, judgement, and the check of values before a rule sees them.

A rule never receives a missing, unlike or out-of-range value: ``Criterion.apply`` refuses first, with a sentence. A
rule that rests on memory or on common practice alone may warn but never fail a system: ``apply`` caps it at poor.
Where class, flag or maker decide, the limits are a named profile (profiles.py) that a surveyor may set himself; where
one number decides alone, the bands are a ladder (ladder.py) that a phone can apply without the server.
"""

import dataclasses
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from datetime import date, datetime
from typing import NoReturn

from inspector.criteria.ladder import Ladder
from inspector.criteria.profiles import Profile
from inspector.criteria.source import MAY_FAIL, Source
from inspector.errors import InspectorError
from inspector.quantities import NotANumber, parse_number, show

RATINGS = ("good", "fair", "poor", "failed")
KINDS = ("number", "whole", "choice", "date", "text")


class CannotJudge(InspectorError):
    """A reading that the criterion may not judge. Attributes: ``criterion``, ``input``, ``received``."""


@dataclass(frozen=True)
class Input:
    """One value a criterion asks for. ``low`` and ``high`` belong to the range; for a date they are dates."""

    name: str
    label: str
    kind: str
    unit: str | None = None
    choices: tuple[str, ...] = ()
    optional: bool = False
    low: float | date | None = None
    high: float | date | None = None


@dataclass(frozen=True)
class Judgement:
    """What a criterion says of a reading.

    ``rating`` is good, fair, poor, failed, or None where the rule does not speak of condition. ``value``, ``limit`` and
    ``margin`` are numbers in ``unit`` or None; a margin is positive on the good side of the limit.
    """

    criterion: str
    band: str
    rating: str | None
    value: float | None
    unit: str | None
    limit: float | None
    margin: float | None
    sentence: str
    source: Source
    notes: tuple[str, ...] = ()


@dataclass(frozen=True)
class Criterion:
    """A published rule with what it asks for. ``judge`` is a pure function whose parameters are the input names.

    With a ``profile``, ``judge`` also takes ``limits`` (name -> value). ``ladder`` makes the bands of the one deciding
    number from the other inputs (and ``limits``, with a profile); ``judge`` must use the same ladder.
    """

    name: str
    title: str
    inputs: tuple[Input, ...]
    source: Source
    judge: Callable[..., Judgement]
    range_text: str
    checked: str
    profile: Profile | None = None
    ladder: Callable[..., Ladder] | None = None

    def apply(self, values: Mapping[str, object], profile: Profile | None = None) -> Judgement:
        """Check every value (name, kind, presence, range), judge, cap what is not published, name the limits used.

        Numbers may be text as a person types it ("9,6"); dates may be ISO text; None and "" mean missing. ``profile``
        is this criterion's own one with limits that the surveyor has set; without it the profile as shipped is used.

        Errors
        ------
        CannotJudge : with ``criterion``, ``input``, ``received``.
        """
        try:
            return self._applied(values, profile)
        except CannotJudge as refusal:
            # a rule that knows only its own name refused: a person is told the title
            told = str(refusal).replace(f"{self.name} cannot be judged", f"{self.title} cannot be judged", 1)
            raise CannotJudge(told, criterion=refusal.criterion, input=refusal.input, received=refusal.received) from refusal.__cause__

    def _applied(self, values: Mapping[str, object], profile: Profile | None) -> Judgement:
        names = [asked.name for asked in self.inputs]
        for name in values:
            if name not in names:
                refuse(self, name, values[name], f"it does not ask for '{name}', only for {', '.join(names)}")
        checked = {asked.name: self._checked(asked, values.get(asked.name)) for asked in self.inputs}
        used = profile or self.profile
        if used is None:
            return _with_limits(_capped(self.judge(**checked)))
        found = self.judge(**checked, limits=used.values)
        return _with_limits(_capped(dataclasses.replace(found, source=used.source) if used.edited else found), used)

    def ladder_for(self, constants: Mapping[str, object], profile: Profile | None = None) -> Ladder | None:
        """The bands as data, where ``constants`` fix every input but the deciding number; None where they do not.

        A rating that the criterion may not give by its mark is already lowered to poor.
        """
        if self.ladder is None:
            return None
        deciding = self.ladder_input
        others = [asked for asked in self.inputs if asked.name != deciding]
        if any(constants.get(asked.name) in (None, "") and not asked.optional for asked in others):
            return None
        fixed = {asked.name: self._checked(asked, constants.get(asked.name)) for asked in others}
        used = profile or self.profile
        made = self.ladder(**fixed, **({"limits": used.values} if used else {}))
        source = used.source if used and used.edited else self.source
        return made if source.mark in MAY_FAIL else made.held_at_poor()

    @property
    def ladder_input(self) -> str:
        """The name of the number that decides where a ladder exists: always the first input."""
        return self.inputs[0].name

    def _checked(self, asked: Input, received: object) -> object:
        if received is None or (isinstance(received, str) and not received.strip()):
            if not asked.optional:
                refuse(self, asked.name, received, f"{_named(asked)} is missing")
            return None
        value = _READERS[asked.kind](self, asked, received)
        _check_range(self, asked, value)
        return value


def refuse(criterion: "Criterion | str", input_name: str | None, received: object, why: str) -> NoReturn:
    """Raise CannotJudge with one sentence that begins with the criterion's title, or its name where only that is known."""
    name, told = (criterion, criterion) if isinstance(criterion, str) else (criterion.name, criterion.title)
    raise CannotJudge(f"{told} cannot be judged: {why}.", criterion=name, input=input_name, received=received)


def _named(asked: Input) -> str:
    return f"'{asked.name}' ({asked.label}{f', {asked.unit}' if asked.unit else ''})"


def _read_number(criterion: Criterion, asked: Input, received: object) -> float:
    try:
        return parse_number(received)
    except NotANumber as error:
        reason = str(error).rstrip(".")
    refuse(criterion, asked.name, received, f"{_named(asked)} must be a number; {reason}")


def _read_whole(criterion: Criterion, asked: Input, received: object) -> int:
    number = _read_number(criterion, asked, received)
    if number != int(number):
        refuse(criterion, asked.name, received, f"{_named(asked)} must be a whole number, not {received}")
    return int(number)


def _read_choice(criterion: Criterion, asked: Input, received: object) -> str:
    text = str(received).strip()
    if isinstance(received, bool) or text not in asked.choices:
        choices = " | ".join(asked.choices)
        refuse(criterion, asked.name, received, f"{_named(asked)} must be one of {choices}, not '{text}'")
    return text


def _read_date(criterion: Criterion, asked: Input, received: object) -> date:
    if isinstance(received, date):
        return received.date() if isinstance(received, datetime) else received
    try:
        return date.fromisoformat(str(received).strip())
    except ValueError:
        refuse(criterion, asked.name, received, f"{_named(asked)} must be a date like 2008-05-31, not '{received}'")


def _read_text(criterion: Criterion, asked: Input, received: object) -> str:
    if not isinstance(received, str):
        refuse(criterion, asked.name, received, f"{_named(asked)} must be text, not {received!r}")
    return received.strip()


_READERS = {"number": _read_number, "whole": _read_whole, "choice": _read_choice, "date": _read_date,
            "text": _read_text}


def _check_range(criterion: Criterion, asked: Input, value: object) -> None:
    if asked.low is not None and value < asked.low:
        side = f"below {_shown(asked.low, asked)}"
    elif asked.high is not None and value > asked.high:
        side = f"above {_shown(asked.high, asked)}"
    else:
        return
    refuse(criterion, asked.name, value, f"{_named(asked)} is {_shown(value, asked)}, {side}, where the rule ends")


def _shown(value: object, asked: Input) -> str:
    # a year is not a quantity: no grouping, no rounding
    return show(value, asked.unit) if asked.kind == "number" else str(value)


def _capped(judgement: Judgement) -> Judgement:
    if judgement.rating != "failed" or judgement.source.mark in MAY_FAIL:
        return judgement
    mark = judgement.source.mark
    note = f"Held at poor: the limit is marked {mark}, and such a limit may warn but not fail a system."
    return dataclasses.replace(judgement, rating="poor", notes=(*judgement.notes, note))


def _with_limits(judgement: Judgement, profile: Profile | None = None) -> Judgement:
    guidance = " Guidance, not a rule." if judgement.source.mark == "common practice" else ""
    used = f"Limits used: {judgement.source}.{guidance}"
    named = (f"Profile used: {profile.told()}",) if profile else ()
    return dataclasses.replace(judgement, notes=(*judgement.notes, used, *named))
