"""What was read aboard, judged anew as each kind of ship: which existing items fail which."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from inspector.assess.checked import BAD, CheckResult
from inspector.assess.judging import Basis, judge_sheet
from inspector.assess.model import Assessment
from inspector.checklists.registry import criterion
from inspector.conversion.ship_kind.ship_kinds import CARGO, FEW, KINDS, PASSENGER, SPECIAL
from inspector.criteria.core.criterion import Criterion
from inspector.criteria.core.judgement import Judgement

# The input by which a criterion asks what kind of ship it judges.
KIND_INPUT = "ship"


@dataclass(frozen=True)
class ExistingItem:
    """One check of one unit, judged as each kind of ship.

    Parameters
    ----------
    name : str
        Unit and check.
    judged : mapping of str to Judgement or None
        Kind of ship -> judgement; None where it cannot be judged as that kind.
    """

    name: str
    judged: Mapping[str, Judgement | None]

    def fails(self, kind: str) -> bool | None:
        """Return whether it fails as a kind of ship; None where it cannot be judged.

        Parameters
        ----------
        kind : str
            One of KINDS.

        Returns
        -------
        bool or None

        References
        ----------
        The criterion itself, which names its source.
        """
        found = self.judged.get(kind)
        return None if found is None or found.rating is None else found.rating in BAD


@dataclass(frozen=True)
class ExistingItems:
    """All items that depend on the kind of ship.

    Parameters
    ----------
    items : tuple of ExistingItem
        Those that were read aboard.
    unread : tuple of str
        Names of those of which nothing was read yet.
    """

    items: tuple[ExistingItem, ...] = ()
    unread: tuple[str, ...] = ()

    def failing(self, kind: str) -> tuple[str, ...]:
        """Return the names of the items that fail as a kind of ship.

        Parameters
        ----------
        kind : str
            One of KINDS.

        Returns
        -------
        tuple of str

        References
        ----------
        The criteria themselves, each of which names its source.
        """
        return tuple(item.name for item in self.items if item.fails(kind))


def existing_items(assessment: Assessment, persons: int | None) -> ExistingItems:
    """Return every check whose criterion depends on the kind of ship, judged as each kind.

    Parameters
    ----------
    assessment : Assessment
    persons : int or None
        All persons on board, by which a special purpose ship is judged.

    Returns
    -------
    ExistingItems

    References
    ----------
    The criteria themselves, each with its own source; the readings are those taken aboard.
    """
    items, unread = [], []
    for name, result, rule in _dependent(assessment):
        sheet = assessment.recorded.sheets.get(result.subject)
        readings = sheet.readings if sheet is not None else {}
        judged = {
            kind: _judged_as(kind, result, rule, readings, assessment, persons) for kind in KINDS
        }
        if any(found is not None for found in judged.values()):
            items.append(ExistingItem(name, judged))
        else:
            unread.append(name)
    return ExistingItems(tuple(items), tuple(unread))


def _dependent(assessment: Assessment) -> Iterator[tuple[str, CheckResult, Criterion]]:
    """Every applicable check whose criterion asks for the kind of ship."""
    for system in assessment.systems:
        for unit in system.units:
            for result in unit.results:
                if not result.check.criterion or not result.fitted:
                    continue
                rule = criterion(result.check.criterion, assessment.own_criteria)
                if any(asked.name == KIND_INPUT for asked in rule.inputs):
                    yield f"{unit.name}: {result.check.title}", result, rule


def _judged_as(
    kind: str,
    result: CheckResult,
    rule: Criterion,
    readings: Mapping[str, Any],
    assessment: Assessment,
    persons: int | None,
) -> Judgement | None:
    """The judgement of the readings as one kind of ship."""
    # Without a reading the kind alone would be judged, which says nothing of this vessel.
    if not any(name != KIND_INPUT for name in readings):
        return None
    choices = next(asked.choices for asked in rule.inputs if asked.name == KIND_INPUT)
    choice = choice_for(kind, choices, persons)
    if choice is None:
        return None
    basis = Basis(
        assessment.vessel,
        assessment.brief,
        assessment.inspection,
        assessment.profiles,
        assessment.own_criteria,
    )
    judgement, _ = judge_sheet(result.check, {**readings, KIND_INPUT: choice}, basis)
    return judgement


def choice_for(kind: str, choices: tuple[str, ...], persons: int | None) -> str | None:
    """Return the word by which a criterion calls a kind of ship.

    Parameters
    ----------
    kind : str
        One of KINDS.
    choices : tuple of str
        The words that the criterion knows.
    persons : int or None
        All persons on board; a special purpose ship is called by them.

    Returns
    -------
    str or None
        None where it has no word for it, or the persons are not known.

    References
    ----------
    Model of our own.
    """
    if kind == CARGO:
        return _first(choices, "cargo")
    if kind == PASSENGER:
        return _first(choices, "passenger")
    by_persons = [choice for choice in choices if "60" in choice and SPECIAL[:15] in choice]
    if not by_persons:
        return _first(choices, "special purpose")
    if persons is None:
        return None
    side = "over 60" if persons > FEW else "up to 60"
    return next((choice for choice in by_persons if side in choice), None)


def _first(choices: tuple[str, ...], start: str) -> str | None:
    return next((choice for choice in choices if choice.startswith(start)), None)
