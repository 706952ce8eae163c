"""Electrical loads, and the demand that they add up to in a condition."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from inspector.conversion.core.bounds import check_ranges, one_of, or_default, plain
from inspector.conversion.core.figure import Default, Figure, Gap, no_figure
from inspector.conversion.core.span import Span, span
from inspector.conversion.power.three_phase import MOST_POWER

CONDITIONS = ("harbour", "sea", "manoeuvring", "station keeping")
STATION_KEEPING = "station keeping"
# A sentence that names more loads than this is no longer read.
MOST_NAMED = 4
DIVERSITY = Default(
    "diversity of intermittent loads",
    Span(2.0, 2.0, 3.0),
    "they seldom peak together; 2 is the cautious end",
)
SIMULTANEITY = Default("simultaneity", 1.0, "taken as all running at once where nothing was given")
ACCURACY = Default(
    "accuracy of a load list", Span(0.90, 1.00, 1.10), "lists are seldom nearer to the meters"
)


@dataclass(frozen=True)
class Consumer:
    """One electrical load.

    Parameters
    ----------
    name, bus : str
    demand : tuple of (str, float)
        Condition -> demand [kW]; a condition that was not given is absent.
    new : bool
        Whether it comes with the conversion.
    essential : bool
        Whether it must stay on, so that it cannot be shed.
    intermittent : bool
        Whether it runs by turns, so that it takes part by diversity.
    connected : float, optional
        Connected power [kW], used where a condition was not given.
    factor : float, optional
        Load factor, a share.
    simultaneity : float, optional
        Share of it that runs at once.

    Raises
    ------
    BadInput
        A value that no load can have; the field is named.
    """

    name: str
    bus: str
    demand: tuple[tuple[str, float], ...] = ()
    new: bool = False
    essential: bool = True
    intermittent: bool = False
    connected: float | None = None
    factor: float | None = None
    simultaneity: float | None = None

    def __post_init__(self) -> None:
        for condition, power in self.demand:
            one_of(f"{self.name}: condition", condition, CONDITIONS)
            plain(f"{self.name}: {condition}", power, 0, MOST_POWER, "kW")
        if self.connected is not None:
            plain(f"{self.name}: connected power", self.connected, 0, MOST_POWER, "kW")
        check_ranges(self.name, self, {"factor": (0, 1, ""), "simultaneity": (0, 1, "")})

    def demand_in(self, condition: str) -> float | None:
        """Return the demand in a condition.

        Parameters
        ----------
        condition : str
            One of CONDITIONS.

        Returns
        -------
        float or None
            Demand [kW]: as given, else connected × factor × simultaneity; None where neither is
            known.

        References
        ----------
        Load analysis by factors (common practice, no source).
        """
        given = dict(self.demand).get(condition)
        # A demand from the load balance or a meter is closer than connected power times a factor.
        if given is not None or self.connected is None or self.factor is None:
            return given
        simultaneity = SIMULTANEITY.value if self.simultaneity is None else self.simultaneity
        return self.connected * self.factor * simultaneity


def diversified(continuous: float, intermittent: float, diversity: float | Span) -> Span:
    """Return the demand of continuous and intermittent loads together.

    Parameters
    ----------
    continuous : float
        Sum of the continuous loads [kW].
    intermittent : float
        Sum of the intermittent loads [kW].
    diversity : float or Span
        How many times the demand of the intermittent loads their sum is, about 2 to 3.

    Returns
    -------
    Span
        Demand [kW].

    Raises
    ------
    BadInput
        A negative load, or a diversity below 1.

    References
    ----------
    P = P_c + P_i / diversity, a published form of the load analysis (text book of a training body
    for ships' electricity, 1996, seen).

    Examples
    --------
    >>> diversified(220, 140, 2).point
    290.0
    """
    divisor = diversity if isinstance(diversity, Span) else None
    # Below 1 the loads by turns would peak together more than all at once.
    for end in (diversity,) if divisor is None else (divisor.low, divisor.high):
        plain("diversity", end, 1, 10)
    steady = plain("continuous load", continuous, 0, MOST_POWER, "kW")
    return steady + plain("intermittent load", intermittent, 0, MOST_POWER, "kW") / span(diversity)


def demand(
    consumers: Iterable[Consumer],
    condition: str,
    extra: Span | None = None,
    accuracy: Span | None = None,
) -> Figure:
    """Return the demand of all loads in a condition.

    Parameters
    ----------
    consumers : iterable of Consumer
    condition : str
        One of CONDITIONS.
    extra : Span, optional
        Power that is calculated elsewhere, such as of thrusters [kW].
    accuracy : Span, optional
        Factor by which the list may be off; without it, 0.9 to 1.1 is a listed default.

    Returns
    -------
    Figure
        Demand [kW]; without a span where a load was not given for it, or there is none.

    Raises
    ------
    BadInput
        A condition that is none of CONDITIONS.

    References
    ----------
    Load analysis by diversity, see ``diversified``; accuracy of a list (common practice, no
    source).
    """
    one_of("condition", condition, CONDITIONS)
    loads, name = tuple(consumers), f"demand, {condition}"
    # One load that is not known leaves the sum unknown: it may be the largest of all.
    gaps = _load_gaps(loads, condition)
    if gaps:
        return no_figure(name, "kW", gaps)
    shares, defaults = or_default(accuracy, ACCURACY)
    # Steady loads run all together; those by turns peak at different moments.
    steady = sum(load.demand_in(condition) for load in loads if not load.intermittent)
    by_turns = sum(load.demand_in(condition) for load in loads if load.intermittent)
    if by_turns:
        defaults += (DIVERSITY,)
    if any(_assumes_simultaneity(load, condition) for load in loads):
        defaults += (SIMULTANEITY,)
    total = diversified(steady, by_turns, DIVERSITY.value) * shares
    formula = ["sum of the loads"]
    if by_turns:
        formula.append("intermittent / diversity")
    if extra is not None:
        formula.append("thrusters")
        total = total + extra
    return Figure(name, total, "kW", " + ".join(formula), defaults=defaults)


def _assumes_simultaneity(load: Consumer, condition: str) -> bool:
    return load.simultaneity is None and condition not in dict(load.demand)


def _load_gaps(loads: Sequence[Consumer], condition: str) -> tuple[Gap, ...]:
    """Return what is missing for a sum, with the loads by name."""
    if not loads:
        return (Gap("loads", "none is typed, so no demand can be calculated"),)
    # Nothing typed is not nothing drawn: a load that does not run is typed as 0.
    missing = [load.name for load in loads if load.demand_in(condition) is None]
    if not missing:
        return ()
    more = " and more" if len(missing) > MOST_NAMED else ""
    names = "; ".join(missing[:MOST_NAMED])
    why = f"not given for {names}{more}; type 0 where it does not run"
    return (Gap(f"load, {condition}", why),)
