"""Thrust as measured: of one thruster against its power, and of what the worst failure leaves against what is needed."""

from collections.abc import Mapping

from inspector.criteria.judgement import Criterion, Input, Judgement
from inspector.criteria.ladder import Ladder, below, beyond, stairs
from inspector.criteria.profiles import Limit, Profile
from inspector.criteria.source import Source
from inspector.criteria.telling import told
from inspector.quantities import show

FAILURE = Source(
    "MSC/Circ.645 and MSC.1/Circ.1580, Guidelines for vessels with dynamic positioning",
    "1994 and 2017",
    "section 2, equipment classes: no loss of position from one failure in classes 2 and 3",
    "seen",
)
PULL = Source("Static thrust of thrusters, a station-keeping standard's formula", "edition not read", "K (D P) to the power 2/3", "memory")
PROFILE = Profile("Usual share of nominal thrust", (Limit("low", "low below", "%", 70.0, 30, 100), Limit("sound", "sound from", "%", 85.0, 30, 100)), PULL)
FACTORS = {"tunnel": 900, "azimuth in nozzle": 1200, "open propeller": 800}  # newtons, D in m and P in kW


def nominal_thrust(kind: str, diameter: float, power: float) -> float:
    """Return the nominal static thrust [kN] of a thruster of this diameter [m] at this shaft power [kW] (memory).

    Examples
    --------
    >>> round(nominal_thrust("tunnel", 1.2, 250), 2), round(nominal_thrust("azimuth in nozzle", 2.2, 1000), 2)
    (40.33, 202.98)
    """
    return FACTORS[kind] * (diameter * power) ** (2 / 3) / 1000


def pull_ladder(kind: str, diameter: float, power: float, limits: Mapping[str, float]) -> Ladder:
    """The bands of a measured thrust [kN] beside the nominal one."""
    nominal = nominal_thrust(kind, diameter, power)
    return stairs(
        "kN",
        below(limits["low"] / 100 * nominal, "weak", "poor", "weak: look at blades, pitch and power"),
        below(limits["sound"] / 100 * nominal, "reduced", "fair", "reduced, within the losses of hull and inflow"),
        beyond("sound", "good", "what such a thruster gives"),
    )


def judge_pull(thrust: float, kind: str, diameter: float, power: float, limits: Mapping[str, float]) -> Judgement:
    """Judge the static thrust measured on one thruster.

    Parameters: thrust [kN], by a load cell at a bollard or from a trial; kind : one of FACTORS; diameter [m]; power [kW] at the measurement;
    limits : low and sound [%] of nominal.

    References: a station-keeping standard's constants (memory); losses of 10 to 30 % (common practice).
    """
    nominal = nominal_thrust(kind, diameter, power)
    limit = limits["low"] / 100 * nominal
    said = f"{show(thrust, 'kN')} from a thruster ({kind}) of {show(diameter, 'm')} at {show(power, 'kW')}, nominally {show(nominal, 'kN')},"
    notes = ("A screen, not a bollard pull certificate; shallow water, quay walls and current spoil the figure.",)
    return told("thruster-pull", pull_ladder(kind, diameter, power, limits).step(thrust), said, (thrust, "kN", limit), PULL, notes, at_least=True)


def failure_ladder(needed: float, class_claimed: str) -> Ladder:
    """The bands of the thrust [kN] left after the worst failure; class 1 may lose position. MSC/Circ.645, section 2 (seen)."""
    short = (
        ("not held, and not asked of class 1", None, "too little to hold, which class 1 does not ask")
        if class_claimed == "1"
        else ("not held", "failed", f"too little to hold, which class {class_claimed} does not allow")
    )
    return stairs("kN", below(needed, *short), beyond("held", "good", "enough to hold"))


def judge_failure(available: float, needed: float, class_claimed: str) -> Judgement:
    """Judge the thrust that is left after the worst single failure, as shown in a trial or a capability analysis.

    Parameters: available, needed [kN], at the same end of the vessel and the same wind; class_claimed : 1, 2 or 3.

    References: MSC/Circ.645 and MSC.1/Circ.1580, section 2 (seen).
    """
    said = f"{show(available, 'kN')} left after the worst failure, where {show(needed, 'kN')} are needed, of a vessel claiming class {class_claimed},"
    notes = ("Judge bow and stern apart, and name wind, current and failure; a thruster out on delivery is where the trial starts.",)
    step = failure_ladder(needed, class_claimed).step(available)
    return told("worst-failure-thrust", step, said, (available, "kN", needed), FAILURE, notes, at_least=True)


CRITERIA = (
    Criterion(
        "worst-failure-thrust",
        "Thrust left after the worst failure",
        (
            Input("available", "Thrust left", "number", "kN", low=0, high=10_000),
            Input("needed", "Thrust needed", "number", "kN", low=0, high=10_000),
            Input("class_claimed", "Class claimed", "choice", choices=("1", "2", "3")),
        ),
        FAILURE,
        judge_failure,
        "Results of trials and capability analyses, 0 to 10 000 kN.",
        "One layout by our own arithmetic, the limit from both sides.",
        ladder=failure_ladder,
    ),
    Criterion(
        "thruster-pull",
        "Static thrust of one thruster",
        (
            Input("thrust", "Thrust measured", "number", "kN", low=0, high=5000),
            Input("kind", "Kind of thruster", "choice", choices=tuple(FACTORS)),
            Input("diameter", "Propeller diameter", "number", "m", low=0.3, high=6),
            Input("power", "Shaft power at the measurement", "number", "kW", low=10, high=10_000),
        ),
        PULL,
        judge_pull,
        "Thrusters of 0.3 to 6 m and 10 to 10 000 kW at zero speed.",
        "Six thrusters by our own arithmetic on the recalled constants, both limits from both sides.",
        profile=PROFILE,
        ladder=pull_ladder,
    ),
)
