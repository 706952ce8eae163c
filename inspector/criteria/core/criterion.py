"""A published rule with what it asks for, and the check of every value before the rule sees it.

A rule never receives a missing, unlike or out-of-range value: ``Criterion.apply`` refuses first,
with a sentence. A rule from memory or common practice alone may warn but never fail a
system: ``apply`` caps it at poor. Where class, flag or maker decide, the limits are a named set
(limit_sets.py) that a surveyor may set himself; where one number decides alone, its bands
(bands.py) can be read as data.
"""

import dataclasses
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass

from inspector.criteria.core.bands import Bands
from inspector.criteria.core.judgement import CannotJudge, Judgement, refuse
from inspector.criteria.core.limit_sets import LimitSet
from inspector.criteria.core.orders import Order, refuse_broken
from inspector.criteria.core.source import MAY_FAIL, Source
from inspector.values.field import Field, FieldRefused, Value
from inspector.values.formatting import show


@dataclass(frozen=True)
class Criterion:
    """A published rule.

    Parameters
    ----------
    name, title : str
        The key in checklists and commands, and what a person reads.
    inputs : tuple of Field
        What it asks for. The first one is the deciding number where the criterion has bands.
    source : Source
    judge : callable
        A pure function whose parameters are the input names; with a limit set it also takes
        ``limits`` (name -> value).
    range_text : str
        For what the rule is meant, and over which range.
    checked : str
        How its figures were checked.
    limit_set : LimitSet, optional
        The limits where class, flag or maker decide.
    bands : callable, optional
        Makes the bands of the deciding number from the other inputs (and ``limits``); ``judge``
        must use the same ones.
    orders : tuple of Order
        Which inputs cannot be above, below, before or after which.
    """

    name: str
    title: str
    inputs: tuple[Field, ...]
    source: Source
    judge: Callable[..., Judgement]
    range_text: str
    checked: str
    limit_set: LimitSet | None = None
    bands: Callable[..., Bands] | None = None
    orders: tuple[Order, ...] = ()

    def apply(self, values: Mapping[str, object], limit_set: LimitSet | None = None) -> Judgement:
        """Check every value, judge, cap what is not published, and name the limits used.

        Parameters
        ----------
        values : mapping of str to object
            Input name -> value in the input's unit. Numbers may be text as a person types it
            ("9,6"); dates may be ISO text; None and "" mean missing.
        limit_set : LimitSet, optional
            This criterion's own set with limits that the surveyor changed; without it the set as
            shipped is used.

        Returns
        -------
        Judgement

        Raises
        ------
        CannotJudge
            With ``criterion``, ``input`` and ``received``.
        """
        with self._named_in_refusals():
            return self._judged(values, limit_set)

    @contextmanager
    def _named_in_refusals(self) -> Iterator[None]:
        """A rule does not know its own name: what it refuses is completed here."""
        try:
            yield
        except CannotJudge as refusal:
            sentence = f"{self.title} cannot be judged: {refusal}."
            raise CannotJudge(
                sentence, criterion=self.name, input=refusal.input, received=refusal.received
            ) from refusal.__cause__

    def _judged(self, values: Mapping[str, object], limit_set: LimitSet | None) -> Judgement:
        """Judge checked values, cap the rating and name the limits that were used."""
        self._refuse_unknown(values)
        checked = {field.name: self._parsed(field, values.get(field.name)) for field in self.inputs}
        self._refuse_broken(checked)
        used = limit_set or self.limit_set
        limits = {"limits": used.values} if used else {}
        judgement = self.judge(**checked, **limits)
        # Limits that the surveyor set come from the text that he cites, whatever the rule's own
        # source is.
        source = used.source if used and used.edited else judgement.source or self.source
        judgement = dataclasses.replace(judgement, criterion=self.name, source=source)
        return _with_limits_named(_capped(_told_apart(judgement)), used)

    def _refuse_broken(self, values: Mapping[str, Value | None]) -> None:
        refuse_broken(self.orders, {field.name: field for field in self.inputs}, values)

    def _refuse_unknown(self, values: Mapping[str, object]) -> None:
        """Refuse a value that the rule does not ask for: it was meant for another one."""
        names = [field.name for field in self.inputs]
        for name in values:
            if name not in names:
                why = f"it does not ask for '{name}', only for {', '.join(names)}"
                refuse(name, values[name], why)

    def bands_for(
        self, constants: Mapping[str, object], limit_set: LimitSet | None = None
    ) -> Bands | None:
        """Return the bands as data, where ``constants`` fix every input but the deciding number.

        Parameters
        ----------
        constants : mapping of str to object
            Input name -> value in the input's unit.
        limit_set : LimitSet, optional
            As in ``apply``.

        Returns
        -------
        Bands or None
            None where the criterion has no bands or an input is missing. A rating that the
            criterion may not give by its mark is already lowered to poor.
        """
        with self._named_in_refusals():
            return self._bands(constants, limit_set) if self.bands else None

    def _bands(self, constants: Mapping[str, object], limit_set: LimitSet | None) -> Bands | None:
        # The first input is the one that is compared; the bands depend on the rest.
        others = self.inputs[1:]
        missing = [field for field in others if constants.get(field.name) in (None, "")]
        # Another number decides as well, so there are no bands of this one alone.
        if any(not field.optional for field in missing):
            return None
        fixed = {field.name: self._parsed(field, constants.get(field.name)) for field in others}
        self._refuse_broken(fixed)
        used = limit_set or self.limit_set
        limits = {"limits": used.values} if used else {}
        bands = self.bands(**fixed, **limits)
        source = used.source if used and used.edited else self.source
        # As `_capped` does it for a judgement.
        return bands if source.mark in MAY_FAIL else bands.capped_at_poor()

    @property
    def deciding_input(self) -> str:
        """The name of the number that decides where a criterion has bands: the first input."""
        return self.inputs[0].name

    def _parsed(self, field: Field, received: object) -> Value | None:
        """Read one value, and name input and unit where it is refused."""
        try:
            return field.parse(received)
        except FieldRefused as refusal:
            unit = f", {field.unit}" if field.unit else ""
            link = "" if refusal.problem.startswith("is ") else ":"
            why = f"'{field.name}' ({field.label}{unit}){link} {refusal.problem}"
            refuse(field.name, received, why)


_MOST_DIGITS = 12


def _told_apart(judgement: Judgement) -> Judgement:
    """Print more digits of a value that would read like the limit that it is not at."""
    value, limit, unit = judgement.value, judgement.limit, judgement.unit
    if None in (value, limit) or value == limit:
        return judgement
    # 9.996 and 10 both print as 10, and the sentence would contradict itself.
    alike = show(value, unit)
    # A sentence names what was read before the limit that it is compared with.
    if alike != show(limit, unit) or judgement.sentence.count(alike) < 2:
        return judgement
    apart = next(
        (
            show(value, unit, digits)
            for digits in range(_MOST_DIGITS)
            if show(value, unit, digits) != show(limit, unit, digits)
        ),
        alike,
    )
    return dataclasses.replace(judgement, sentence=judgement.sentence.replace(alike, apart, 1))


def _capped(judgement: Judgement) -> Judgement:
    """A limit that nobody published may warn, and never fail a system."""
    if judgement.rating != "failed" or judgement.source.mark in MAY_FAIL:
        return judgement
    mark = judgement.source.mark
    why = f"the limit is marked {mark}, and such a limit may warn but not fail a system"
    note = f"Held at poor: {why}."
    return dataclasses.replace(judgement, rating="poor", notes=(*judgement.notes, note))


def _with_limits_named(judgement: Judgement, limit_set: LimitSet | None = None) -> Judgement:
    """Add the notes that name source and profile."""
    # A reader takes any limit for a rule unless he is told otherwise beside it.
    guidance = " Guidance, not a rule." if judgement.source.mark == "common practice" else ""
    notes = [f"Limits used: {judgement.source}.{guidance}"]
    if limit_set:
        notes.append(f"Profile used: {limit_set.sentence()}")
    return dataclasses.replace(judgement, notes=(*judgement.notes, *notes))
