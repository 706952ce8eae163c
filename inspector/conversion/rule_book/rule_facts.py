"""What the rules are read against: the facts of one vessel and her conversion, as far as typed."""

from dataclasses import dataclass
from datetime import date

from inspector.conversion.core.case import Case
from inspector.conversion.core.particulars import Row
from inspector.conversion.core.ship_particulars import TANKS
from inspector.conversion.core.span import Span
from inspector.conversion.range.particulars import read_inputs
from inspector.conversion.range.stores import Stores
from inspector.conversion.rule_book.particulars import RULE_DATES
from inspector.conversion.ship_kind.calculation import ship_kind
from inspector.conversion.space.calculation import layout
from inspector.record.typed_values import typed_number
from inspector.values.errors import InspectorError

FUEL, BALLAST = "fuel", "ballast"


@dataclass(frozen=True)
class RuleFacts:
    """The facts; None where they are not known.

    Parameters
    ----------
    dates : Row
        The row of RULE_DATES.
    keel : date or None
    today : date
    tonnage : int or None
        Gross tonnage of the certificate [-].
    added : Span or None
        Enclosed volume added [m³].
    power : float or None
        Propulsion power as it is [kW].
    rpm : float or None
        Rated speed of the main engines [rpm].
    fuel : float
        All fuel tanks after the conversion [m³].
    has_ballast : bool
    persons : int or None
    kind : str
        The kind of ship that the persons make; "" where that is not known.
    private : bool or None
    stores : Stores
    """

    dates: Row
    keel: date | None
    today: date
    tonnage: int | None
    added: Span | None
    power: float | None
    rpm: float | None
    fuel: float
    has_ballast: bool
    persons: int | None
    kind: str
    private: bool | None
    stores: Stores

    @property
    def power_change(self) -> float | None:
        """Change of propulsion power [%]; None where one of both is not known."""
        after = self.dates.number("power_after")
        if after is None or not self.power:
            return None
        return 100 * (after - self.power) / self.power


def rule_facts(case: Case) -> RuleFacts:
    """Return what the rules are read against.

    Parameters
    ----------
    case : Case

    Returns
    -------
    RuleFacts

    References
    ----------
    As typed.
    """
    inputs, who = read_inputs(case), ship_kind(case)
    main = inputs.main
    tonnage = typed_number(case.assessment.vessel.get("tonnage"), 1)
    use = case.tables["aboard"].one.text("use")
    return RuleFacts(
        case.one(RULE_DATES),
        _day(case.assessment.vessel.get("built")),
        case.today,
        int(tonnage) if tonnage and tonnage < 100_000 else None,
        _added(case),
        None if main is None else main.power * main.count,
        None if main is None else main.rpm,
        sum(row.number("capacity") or 0.0 for row in case.rows(TANKS) if _holds(row, FUEL)),
        any(_holds(row, BALLAST) for row in case.rows(TANKS)),
        who.aboard.persons,
        who.kind,
        {"private": True, "commercial": False}.get(use),
        inputs.stores,
    )


def _holds(row: Row, what: str) -> bool:
    """Whether a tank holds something after the conversion."""
    if row.text("plan") == "convert":
        return row.text("becomes") == what
    return row.text("kind") == what and row.text("plan") != "remove"


def _added(case: Case) -> Span | None:
    """The enclosed volume that the conversion adds."""
    try:
        return layout(case).tonnage.added
    except InspectorError:
        return None


def _day(text: object) -> date | None:
    """A date as typed in the vessel's particulars."""
    try:
        return date.fromisoformat(str(text or "").strip())
    except ValueError:
        return None
