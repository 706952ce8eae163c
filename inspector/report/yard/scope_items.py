"""The work lines of an inspection as numbered items that a yard can price."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from inspector.assess.model import Assessment, SystemPart
from inspector.assess.registers import WorkLine
from inspector.assess.work_cost import counted_lines
from inspector.record.typed_values import typed_number

COUNTED, ALTERNATIVE = "counted", "alternative"
AMOUNTS = ("low", "likely", "high")


@dataclass(frozen=True)
class ScopeItem:
    """One item of the yard's list.

    Parameters
    ----------
    line : WorkLine
    system, unit : str
        Names; the unit is "all units" where the line is for the whole system.
    counted : bool
        Whether it is in the sums. Of a unit that is priced to be refurbished and to be replaced,
        one counts and the other is an alternative.
    after : int or None
        Number of the item that must be done before.
    finding : int or None
        Number of the finding that asks for it.
    photos : tuple of int
        Numbers of its photos in the report.
    """

    line: WorkLine
    system: str
    unit: str
    counted: bool
    after: int | None = None
    finding: int | None = None
    photos: tuple[int, ...] = ()

    @property
    def status(self) -> str:
        """Whether it is counted or an alternative, as a word."""
        return COUNTED if self.counted else ALTERNATIVE

    @property
    def quantity(self) -> float | None:
        """How much of it, in the line's own unit; None where no number was typed."""
        return typed_number(self.line.quantity)


@dataclass(frozen=True)
class ScopeSum:
    """A sum of counted items.

    Parameters
    ----------
    title : str
    low, likely, high : float or None
        In the inspection's currency; None where no item of it has that amount.
    unpriced : int
        Items without a likely amount, which the sum lacks.
    """

    title: str
    low: float | None
    likely: float | None
    high: float | None
    unpriced: int


def scope_items(assessment: Assessment) -> tuple[ScopeItem, ...]:
    """Return the work lines as items, system by system, in the order of their numbers.

    Parameters
    ----------
    assessment : Assessment

    Returns
    -------
    tuple of ScopeItem
    """
    numbers = {line.id: line.number for part in assessment.systems for line in part.lines}
    findings = {finding.id: finding.number for finding in assessment.findings}
    return tuple(
        item
        for part in assessment.systems
        for item in _items_of(part, assessment, numbers, findings)
    )


def _items_of(
    part: SystemPart, assessment: Assessment, numbers: dict[str, int], findings: dict[str, int]
) -> Iterator[ScopeItem]:
    counted = {line.id for line in counted_lines(part)}
    names = {unit.id: unit.name for unit in part.units}
    for line in sorted(part.lines, key=lambda line: line.number):
        yield ScopeItem(
            line,
            part.system.name,
            # A unit that was taken off the list keeps its line, under its id.
            "all units" if line.unit in ("all", "") else names.get(line.unit, line.unit),
            line.id in counted,
            after=numbers.get(line.after),
            finding=findings.get(line.finding),
            photos=_photos_of(line, assessment),
        )


def _photos_of(line: WorkLine, assessment: Assessment) -> tuple[int, ...]:
    """Numbers of the photos of the line's finding and of the check that it follows from."""
    places = set()
    if line.finding:
        places.add(f"finding/{line.finding}")
    if line.check:
        places.add(f"sheet/{line.system}/{line.unit}/{line.check}")
    return tuple(photo.number for photo in assessment.photos if photo.on in places)


def scope_sums(items: Sequence[ScopeItem]) -> tuple[ScopeSum, ...]:
    """Return what the counted items come to: the yard's, the owner's supply, and both together.

    Parameters
    ----------
    items : sequence of ScopeItem

    Returns
    -------
    tuple of ScopeSum
        The last one is the total; the two before it are left out where nothing is supplied by the
        owner.
    """
    counted = [item for item in items if item.counted]
    owner = [item for item in counted if item.line.supplied_by == "owner"]
    total = scope_sum("Sum of all counted items", counted)
    if not owner:
        return (total,)
    yard = [item for item in counted if item.line.supplied_by != "owner"]
    return (
        scope_sum("Sum, supplied by the yard", yard),
        scope_sum("Sum, supplied by the owner", owner),
        total,
    )


def scope_sum(title: str, items: Iterable[ScopeItem]) -> ScopeSum:
    """Return the sum of items; unknown is not nothing, and what lacks an amount is counted.

    Parameters
    ----------
    title : str
    items : iterable of ScopeItem

    Returns
    -------
    ScopeSum
    """
    lines = [item.line for item in items]
    # The same lines as in the total of the chapter on money, or the yard's list had another sum.
    priced = [line for line in lines if line.is_priced]
    sums = {}
    for name in AMOUNTS:
        known = [amount for line in priced if (amount := getattr(line, name)) is not None]
        sums[name] = sum(known) if known else None
    return ScopeSum(title, **sums, unpriced=len(lines) - len(priced))
