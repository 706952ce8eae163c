"""One named value that somebody types: label, kind, unit, choices and range, with one reader.

Inputs of criteria, readings of checklists, columns of particulars, fields of forms, limits and
settings are all ``Field`` objects, so that each is read by the same rules and refused by the same
sentences. What a room needs beyond that (the default of a setting, the value of a limit) it keeps
beside the field.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date, datetime
from difflib import get_close_matches

from inspector.values.errors import InspectorError
from inspector.values.formatting import show
from inspector.values.measures import parse_measure
from inspector.values.numbers import NotANumber
from inspector.values.units import WrongUnit, convert

KINDS = ("number", "whole", "choice", "date", "text")

Value = float | int | str | date
# characters of choices that a refusal lists in full, and how many it names of more
_LONGEST_ROW, _NEAREST = 300, 3


class FieldRefused(InspectorError):
    """A value that a field cannot take. Attributes: ``field``, ``received``, ``problem``.

    ``problem`` is the sentence without the label, for those who name the field in their own way.
    """


@dataclass(frozen=True)
class Field:
    """One value that is asked for.

    Parameters
    ----------
    name : str
        Its key in the record and in calls.
    label : str
        What a person reads.
    kind : str
        One of KINDS.
    unit : str
        The unit in which ``parse`` returns a number and in which ``low`` and ``high`` are; "" for a
        plain count.
    choices : tuple of str
        What a choice may be.
    optional : bool
        True where the value may be missing.
    low, high : float or date or None
        The ends of what is accepted; both belong to it.
    longest : int
        The most characters of a text; 0 where the text has no limit of its own.
    help : str
        One sentence beside the field.
    """

    name: str
    label: str
    kind: str = "number"
    unit: str = ""
    choices: tuple[str, ...] = ()
    optional: bool = False
    low: float | date | None = None
    high: float | date | None = None
    longest: int = 0
    help: str = ""

    @property
    def is_number(self) -> bool:
        """Whether its value is a number with a unit or a count."""
        return self.kind in ("number", "whole")

    @property
    def label_with_unit(self) -> str:
        """The label as a form or a table heading shows it: "Draught, m"."""
        # A comma, since brackets beside a label that has brackets of its own are hard to read on a
        # phone.
        return f"{self.label}, {self.unit}" if self.unit else self.label

    def parse(self, received: object) -> Value | None:
        """Read a value as typed, converted to the field's own unit.

        Parameters
        ----------
        received : object
            Text, a number, a date, None, or a mapping ``{"value": ..., "unit": ...}`` as a reading
            is recorded. A number without a unit is in the field's own one.

        Returns
        -------
        float or int or str or date or None
            None where nothing was given and the field is optional.

        Raises
        ------
        FieldRefused
            With one sentence: which field, what is wrong, what would be right.
        """
        text, unit = typed_parts(received)
        if text is None or (isinstance(text, str) and not text.strip()):
            if self.optional:
                return None
            raise self.refusal(received, "is missing")
        value = _PARSERS[self.kind](self, text, unit)
        self._check_range(value, received)
        return value

    def refusal(self, received: object, problem: str) -> FieldRefused:
        """Return the error for a value that this field cannot take.

        Parameters
        ----------
        received : object
            What was given.
        problem : str
            The rest of the sentence after the label, without a full stop.

        Returns
        -------
        FieldRefused
            To be raised by the caller.
        """
        # "Draught is missing." reads on; "Draught: 'x' is not a number." needs the colon.
        link = " " if problem.startswith("is ") else ": "
        sentence = f"{self.label}{link}{problem}."
        return FieldRefused(sentence, field=self.name, received=received, problem=problem)

    def _check_range(self, value: Value, received: object) -> None:
        """Refuse a value outside the ends, with both in the sentence."""
        if self.low is not None and value < self.low:
            side = f"below {self.formatted(self.low)}"
        elif self.high is not None and value > self.high:
            side = f"above {self.formatted(self.high)}"
        else:
            return
        problem = f"{self.formatted(value)} is {side}; {self._range_text()} is accepted"
        raise self.refusal(received, problem)

    def _range_text(self) -> str:
        """Return the range in words: "1 to 12 mm", "0 or more"."""
        if self.high is None:
            return f"{self.formatted(self.low)} or more"
        if self.low is None:
            return f"{self.formatted(self.high)} or less"
        return f"{self.formatted(self.low)} to {self.formatted(self.high)}"

    def formatted(self, value: Value) -> str:
        """Return a value of this field as text with its unit.

        Parameters
        ----------
        value : float or int or str or date
            In the field's own unit.

        Returns
        -------
        str
        """
        # A year or a count is no quantity: neither grouped nor rounded.
        return show(value, self.unit) if self.kind == "number" else str(value)


def number_field(
    name: str, label: str, unit: str, low: float, high: float, *, optional: bool = False
) -> Field:
    """Return the field of a number.

    Parameters
    ----------
    name : str
    label : str
    unit : str
        "" for a plain number.
    low, high : float
        Its ends [unit].
    optional : bool
        Whether it may stay empty.

    Returns
    -------
    Field
    """
    return Field(name, label, "number", unit, optional=optional, low=low, high=high)


def typed_parts(received: object) -> tuple[object, str]:
    """Return a value as typed and its unit, from plain text or from a recorded reading.

    Parameters
    ----------
    received : object
        Anything that a form, a device or a bundle may bring.

    Returns
    -------
    tuple of (object, str)
        The value, and the unit that was typed with it, "" where none was.
    """
    if isinstance(received, Mapping):
        return received.get("value"), str(received.get("unit") or "")
    return received, ""


def _parse_number(field: Field, received: object, unit: str) -> float:
    """Read a number and convert it to the field's unit."""
    try:
        number, unit = parse_measure(received, unit or field.unit)
    except NotANumber as error:
        raise field.refusal(received, str(error).rstrip(".")) from error
    # A value without a unit is taken in the unit that the label names.
    if not unit or unit == field.unit:
        return number
    try:
        return convert(number, unit, field.unit)
    except WrongUnit as error:
        raise field.refusal(received, str(error).rstrip(".")) from error


def _parse_whole(field: Field, received: object, unit: str) -> int:
    """Return a whole number; 3.0 is taken for 3."""
    number = _parse_number(field, received, unit)
    if number != int(number):
        raise field.refusal(received, f"{received} is not a whole number")
    return int(number)


def _parse_choice(field: Field, received: object, _: str) -> str:
    """Read one of the choices; case and spelling must be theirs."""
    text = str(received).strip()
    # TOML and JSON have true and false, which would otherwise pass as the words "True" and "False".
    if isinstance(received, bool) or text not in field.choices:
        raise field.refusal(
            received, f"'{text}' is not one of {_choices_near(text, field.choices)}"
        )
    return text


def _choices_near(text: str, choices: tuple[str, ...]) -> str:
    """Return all choices in a row; of many, how many there are and those nearest to a text."""
    named = [choice for choice in choices if choice]
    # Without the empty one, which means that nothing was chosen.
    row = ", ".join(named)
    if len(row) <= _LONGEST_ROW:
        return row
    # Nobody reads forty choices in a refusal; a slip of the pen is near the right one.
    near = get_close_matches(text, named, _NEAREST, 0) or named[:_NEAREST]
    return f"the {len(named)} choices; near it are {', '.join(near)}"


def _parse_date(field: Field, received: object, _: str) -> date:
    """Read a date as ISO 8601 writes it."""
    # A datetime is a date in Python too, so it is looked at first.
    if isinstance(received, datetime):
        return received.date()
    if isinstance(received, date):
        return received
    try:
        return date.fromisoformat(str(received).strip())
    except ValueError as error:
        problem = f"'{received}' is not a date: write year-month-day, like 2008-05-31"
        raise field.refusal(received, problem) from error


def _parse_text(field: Field, received: object, _: str) -> str:
    """Return a text without space around it, refused where it is too long."""
    if not isinstance(received, str):
        raise field.refusal(received, f"{received!r} is not text")
    # A browser counts a line end as one character and posts two, so lengths are counted on one.
    text = received.replace("\r\n", "\n").strip()
    if field.longest and len(text) > field.longest:
        problem = f"the text has {len(text)} characters, and at most {field.longest} are taken"
        raise field.refusal(received, problem)
    return text


_PARSERS = {
    "number": _parse_number,
    "whole": _parse_whole,
    "choice": _parse_choice,
    "date": _parse_date,
    "text": _parse_text,
}
