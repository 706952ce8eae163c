"""Named sets of limits where class, flag or maker decide: shipped with their source, set by the surveyor with his own.

A profile belongs to one criterion. The judgement names the profile it used, so that two reports can be told apart.
"""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from inspector.criteria.source import Source
from inspector.errors import InspectorError
from inspector.quantities import parse_number, show


class BadProfile(InspectorError):
    """Limits that cannot be used. Attributes: ``limit`` (its name), ``received``."""


@dataclass(frozen=True)
class Limit:
    """One named figure of a profile, in ``unit``, that may be set between ``low`` and ``high``."""

    name: str
    label: str
    unit: str
    value: float
    low: float
    high: float


@dataclass(frozen=True)
class Profile:
    """The limits of one criterion: ``title`` says whose they are, ``source`` where they stand."""

    title: str
    limits: tuple[Limit, ...]
    source: Source
    edited: bool = False

    @property
    def values(self) -> Mapping[str, float]:
        """Limit name -> value in its own unit."""
        return {limit.name: limit.value for limit in self.limits}

    def told(self) -> str:
        """The profile in one sentence: title and every limit."""
        return f"{self.title}: " + "; ".join(f"{limit.label} {show(limit.value, limit.unit)}" for limit in self.limits) + "."

    def with_limits(self, typed: Mapping[str, object], cited: str) -> "Profile":
        """The profile with limits as the surveyor typed them; what he did not type stays as shipped.

        typed: limit name -> number or text, in the limit's unit. cited: the text he takes them from; required.
        Raises BadProfile with one sentence that names the limit.
        """
        wanted = {name: value for name, value in typed.items() if str(value).strip()}
        unknown = [name for name in wanted if name not in self.values]
        if unknown:
            raise BadProfile(f"There is no limit '{unknown[0]}' in {self.title}; it has {', '.join(self.values)}.", limit=unknown[0])
        if not wanted:
            return self
        if not cited.strip():
            raise BadProfile(f"Limits of your own in {self.title} need the text they come from: title, edition, table.", limit="source")
        limits = tuple(replace(one, value=_number(one, wanted[one.name])) if one.name in wanted else one for one in self.limits)
        source = Source(cited.strip(), "as cited by the surveyor", f"in place of: {self.source.title}", "cited by the surveyor")
        return replace(self, title=f"{self.title}, as set by the surveyor", limits=limits, source=source, edited=True)


def _number(limit: Limit, received: object) -> float:
    try:
        value = parse_number(received)
    except InspectorError as problem:
        raise BadProfile(f"{limit.label}: {problem}", limit=limit.name, received=received) from problem
    if not limit.low <= value <= limit.high:
        expected = f"{show(limit.low, limit.unit)} to {show(limit.high, limit.unit)}"
        raise BadProfile(f"{limit.label}: {show(value, limit.unit)} cannot be; expected {expected}.", limit=limit.name, received=received)
    return value


def chosen(limits: Mapping[str, float], choice: str, *ends: str) -> tuple[float, ...]:
    """The limits of a choice: those named "<choice with underscores>_<end>" for each end.

    Examples
    --------
    >>> chosen({"stern_tube_watch": 0.5, "stern_tube_act": 1.0}, "stern tube", "watch", "act")
    (0.5, 1.0)
    """
    return tuple(limits[f"{key(choice)}_{end}"] for end in ends)


def key(choice: str) -> str:
    """A choice as the first part of a limit's name."""
    return choice.replace(",", "").replace(" ", "_").replace("-", "_")
