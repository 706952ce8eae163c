"""Named sets of limits where class, flag or maker decide, which a surveyor may change.

A limit set belongs to one criterion. The judgement names the set it used, so that two reports can
be told apart.
"""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from inspector.criteria.core.source import CITED, Source
from inspector.values.errors import InspectorError
from inspector.values.field import Field, FieldRefused, number_field


class BadLimit(InspectorError):
    """Limits that cannot be used. Attributes: ``limit`` (its name), ``received``."""


@dataclass(frozen=True)
class Limit:
    """One named figure of a limit set: the field in which it may be set, and its value."""

    field: Field
    value: float

    @property
    def name(self) -> str:
        """Its key."""
        return self.field.name

    @property
    def label(self) -> str:
        """What a person reads."""
        return self.field.label

    @property
    def unit(self) -> str:
        """The unit of its value."""
        return self.field.unit

    @property
    def text(self) -> str:
        """Its value with the unit."""
        return self.field.formatted(self.value)

    def set_to(self, received: object) -> "Limit":
        """Return the limit at a value as typed; BadLimit with one sentence where it cannot be.

        Parameters
        ----------
        received : object
            A number, or text as typed, in the limit's unit.

        Returns
        -------
        Limit

        Raises
        ------
        BadLimit
            With ``limit`` and ``received``.
        """
        try:
            return replace(self, value=self.field.parse(received))
        except FieldRefused as refusal:
            raise BadLimit(str(refusal), limit=self.name, received=received) from refusal


def settable_limit(
    name: str, label: str, unit: str, value: float, low: float, high: float
) -> Limit:
    """Return a limit of a value [unit] that may be set from low to high [unit]."""
    return Limit(number_field(name, label, unit, low, high), value)


@dataclass(frozen=True)
class LimitSet:
    """The limits of one criterion: ``title`` says whose, ``source`` where they are published."""

    title: str
    limits: tuple[Limit, ...]
    source: Source
    edited: bool = False

    @property
    def values(self) -> Mapping[str, float]:
        """Limit name -> value in its own unit."""
        return {limit.name: limit.value for limit in self.limits}

    def sentence(self) -> str:
        """Return the set in one sentence: its title and every limit."""
        return f"{self.title}: {'; '.join(f'{each.label} {each.text}' for each in self.limits)}."

    def with_limits(self, typed: Mapping[str, object], cited: str) -> "LimitSet":
        """Return the set with limits as the surveyor typed them; all others stay as shipped.

        Parameters
        ----------
        typed : mapping of str to object
            Limit name -> number or text, in the limit's unit.
        cited : str
            The text he takes them from; required where a limit is typed.

        Returns
        -------
        LimitSet

        Raises
        ------
        BadLimit
            With one sentence that names the limit.
        """
        # An empty field of the form leaves the shipped limit as it is.
        wanted = {name: value for name, value in typed.items() if str(value).strip()}
        for name in wanted:
            if name not in self.values:
                known = ", ".join(self.values)
                sentence = f"There is no limit '{name}' in {self.title}; it has {known}."
                raise BadLimit(sentence, limit=name)
        if not wanted:
            return self
        # A limit without its text could not be checked by whoever reads the report.
        if not cited.strip():
            needed = "the text they come from: title, edition, table"
            sentence = f"Limits of your own in {self.title} need {needed}."
            raise BadLimit(sentence, limit="source")
        return replace(
            self,
            title=f"{self.title}, as set by the surveyor",
            limits=tuple(self._changed(each, wanted) for each in self.limits),
            source=self._cited(cited),
            edited=True,
        )

    @staticmethod
    def _changed(limit: Limit, wanted: Mapping[str, object]) -> Limit:
        return limit.set_to(wanted[limit.name]) if limit.name in wanted else limit

    def _cited(self, cited: str) -> Source:
        replaced = f"in place of: {self.source.title}"
        return Source(cited.strip(), "as cited by the surveyor", replaced, CITED)


def limits_of_choice(limits: Mapping[str, float], choice: str, *ends: str) -> tuple[float, ...]:
    """Return the limits of a choice: those named "<choice with underscores>_<end>" for each end.

    Parameters
    ----------
    limits : mapping of str to float
        Limit name -> value.
    choice : str
        One of the criterion's choices.
    *ends : str
        Such as "watch", "act".

    Returns
    -------
    tuple of float

    Examples
    --------
    >>> limits = {"stern_tube_watch": 0.5, "stern_tube_act": 1.0}
    >>> limits_of_choice(limits, "stern tube", "watch", "act")
    (0.5, 1.0)
    """
    return tuple(limits[f"{limit_prefix(choice)}_{end}"] for end in ends)


def limit_prefix(choice: str) -> str:
    """Return a choice as the first part of a limit's name."""
    # The name of a form's field is made of it, which takes neither spaces nor commas.
    return choice.replace(",", "").replace(" ", "_").replace("-", "_")
