"""What a check must satisfy that names a criterion: each of its inputs is supplied.

An input is supplied by a reading, a constant or a particular. A reading must be of its kind, in a
unit that converts to its own, with choices that are its own.
"""

from collections.abc import Iterator, Mapping
from datetime import date

from inspector.criteria.core.criterion import Criterion
from inspector.values.errors import InspectorError
from inspector.values.field import Field
from inspector.values.table_rules import entries_of, items_of
from inspector.values.units import convert

Raw = Mapping[str, object]
# Kind of an input -> the kinds of reading that can supply it.
_SUPPLIED_BY = {
    "number": ("number",),
    "whole": ("whole",),
    "choice": ("choice",),
    "date": ("date",),
    "text": ("text", "choice"),
}
_GIVEN_AS = {
    "number": (int, float),
    "whole": (int,),
    "choice": (str,),
    "date": (str, date),
    "text": (str,),
}


def reading_kind(reading: Raw) -> str:
    """Return the kind of a reading: as written, else choice where it lists some, else number."""
    return str(reading.get("kind", "choice" if reading.get("choices") else "number"))


def faults_of_needs(where: str, check: Raw, criteria: Mapping[str, Criterion]) -> list[str]:
    """Return every mistake between a check and the criterion that it names.

    Parameters
    ----------
    where : str
        File and check, at the start of each sentence.
    check : mapping
        The table of the check.
    criteria : mapping of str to Criterion
        Every criterion that is known.

    Returns
    -------
    list of str
        Empty where the check names none.
    """
    name = check.get("criterion")
    if not isinstance(name, str):
        return []
    if name not in criteria:
        known = ", ".join(sorted(criteria))
        return [f"{where}, key criterion: {name!r} is not known; known are {known}."]
    return list(_Needs(where, check, criteria[name]).faults())


class _Needs:
    """The mistakes of one check against the inputs of its criterion."""

    def __init__(self, where: str, check: Raw, criterion: Criterion) -> None:
        self.where, self.name = where, criterion.name
        self.inputs = {asked.name: asked for asked in criterion.inputs}
        readings = [each for each in entries_of(check.get("readings")) if isinstance(each, dict)]
        self.readings = {each["id"]: each for each in readings if isinstance(each.get("id"), str)}
        self.constants, self.taken = dict(items_of(check.get("given"))), items_of(check.get("from"))
        self.elsewhere = {*self.constants, *(name for name, _ in self.taken)}

    def faults(self) -> Iterator[str]:
        """Yield them: names that are no inputs first, then input by input."""
        listed = ", ".join(sorted(self.inputs))
        for key, names in (("given", self.constants), ("from", dict(self.taken))):
            for name in names:
                if name not in self.inputs:
                    problem = f"is no input of {self.name}; its inputs are {listed}."
                    yield f"{self.where}, key {key}.{name}: {problem}"
        if not self.inputs.keys() & self.readings.keys():
            yield f"{self.where}, key readings: none of them is an input of {self.name} ({listed})."
        for asked in self.inputs.values():
            if asked.name in self.readings:
                yield from self._reading(asked, self.readings[asked.name])
            # Otherwise a reading would be taken on board and could never be judged.
            elif not asked.optional and asked.name not in self.elsewhere:
                problem = f"{self.name} cannot do without {asked.name!r}"
                remedy = "expected it as a reading, in given or in from."
                yield f"{self.where}, key readings: {problem}; {remedy}"
            if asked.name in self.constants:
                yield from self._constant(asked, self.constants[asked.name])

    def _reading(self, asked: Field, reading: Raw) -> Iterator[str]:
        where, kind = f"{self.where}, reading {asked.name}", reading_kind(reading)
        if "unjudged" in reading:
            yield f"{where}, key unjudged: is there, but {self.name} judges it; leave one out."
        if kind not in _SUPPLIED_BY[asked.kind]:
            needed = " or ".join(_SUPPLIED_BY[asked.kind])
            yield f"{where}, key kind: is {kind}; {self.name} asks for {needed}."
            return
        yield from self._unit(where, asked, reading.get("unit"))
        if asked.kind == "choice":
            for choice in entries_of(reading.get("choices")):
                if str(choice) not in asked.choices:
                    yield f"{where}, key choices: {self._no_choice(asked, choice)}"
        needed_here = not asked.optional and asked.name not in self.elsewhere
        if reading.get("optional") is True and needed_here:
            problem = f"is true, but {self.name} cannot do without it"
            remedy = "expected false, or the input in given or from as well."
            yield f"{where}, key optional: {problem}; {remedy}"

    def _unit(self, where: str, asked: Field, unit: object) -> Iterator[str]:
        if asked.kind != "number" or not isinstance(unit, str):
            return
        try:
            convert(1, unit, asked.unit)
        except InspectorError:
            needed = asked.unit or "a plain number"
            problem = f"{self.name} asks for {needed} or a unit that converts to it."
            yield f"{where}, key unit: is {unit!r}; {problem}"

    def _constant(self, asked: Field, value: object) -> Iterator[str]:
        where = f"{self.where}, key given.{asked.name}"
        # In Python true is a number as well.
        if isinstance(value, bool) or not isinstance(value, _GIVEN_AS[asked.kind]):
            yield f"{where}: is {value!r}; {self.name} asks for a {asked.kind}."
        elif asked.kind == "choice" and value not in asked.choices:
            yield f"{where}: {self._no_choice(asked, value)}"

    def _no_choice(self, asked: Field, choice: object) -> str:
        return (
            f"{choice!r} is no choice of {self.name}; its choices are {', '.join(asked.choices)}."
        )
