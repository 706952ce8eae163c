"""Fixed fire-fighting: charge and cylinder tests of carbon dioxide, mixing and content of foam."""

import math
from datetime import date

from inspector.criteria.exact import percent_of, share
from inspector.criteria.judgement import Criterion, Input, Judgement, refuse
from inspector.criteria.ladder import Ladder, below, beyond, stairs, to
from inspector.criteria.source import Source
from inspector.criteria.telling import told, told_between
from inspector.quantities import show

CHARGE = Source("MSC.1/Circ.1318/Rev.1, fixed carbon dioxide systems", "25 May 2021, extract read in a public copy", "6.1.1, charge above 90 %", "seen")
CYLINDERS = Source(
    "MSC.1/Circ.1318/Rev.1, fixed carbon dioxide systems", "25 May 2021, extract read in a public copy", "6.1.2, pressure tests of cylinders", "seen"
)
MIXING = Source("MSC.1/Circ.1432, maintenance of fire protection systems", "extract read in a public copy", "9.2, mixing of foam within -10 and +30 %", "seen")
PFOS = Source("SOLAS II-2/10.11 by MSC.532(107), prohibited fire-fighting media", "from 1 January 2026, as class notices give it", "10 mg/kg of PFOS", "seen")
LEAST_CHARGE = 90  # % of the nominal charge
MOST_PFOS = 10.0  # mg/kg, which is ppm by mass
PFOS_FROM = date(2026, 1, 1)


def least_charge(nominal: float) -> float:
    """Return 90 % of a nominal charge [kg], exactly: the text wants more than this.

    Examples
    --------
    >>> least_charge(21.0), least_charge(45)
    (18.9, 40.5)
    """
    return share(LEAST_CHARGE, nominal)


def charge_ladder(nominal: float) -> Ladder:
    """Three bands of the charge of a cylinder [kg]: below 90 %, at exactly 90 %, above. MSC.1/Circ.1318/Rev.1 (seen)."""
    limit = least_charge(nominal)
    return stairs(
        "kg",
        below(limit, "refill", "failed", "short: it must be refilled"),
        to(limit, "on the border", "fair", "exactly on the border, which the text leaves open: have it refilled"),
        beyond("charged", "good", "enough"),
    )


def judge_charge(measured: float, nominal: float) -> Judgement:
    """Judge the charge of one carbon dioxide cylinder.

    Parameters
    ----------
    measured [kg] of gas, without the cylinder, 0 to 200; nominal [kg], 1 to 120.

    Errors
    ------
    CannotJudge : more gas than 1.2 of the nominal charge, as where the cylinder was weighed with it.

    References
    ----------
    MSC.1/Circ.1318/Rev.1, 6.1.1: above 90 % of the nominal charge, refill below 90 % (seen).
    """
    if measured > 1.2 * nominal:
        refuse("co2-charge", "measured", measured, f"{show(measured, 'kg')} of gas in a cylinder of {show(nominal, 'kg')} cannot be; take off the empty weight")
    limit = least_charge(nominal)
    notes = (
        f"That is {show(percent_of(measured, nominal), '%')} of the nominal charge.",
        "Weighed or gauged by a service firm; the release must be made fast first.",
    )
    return told(
        "co2-charge",
        charge_ladder(nominal).step(measured),
        f"A charge of {show(measured, 'kg')}, against more than {show(limit, 'kg')}, 90 % of {show(nominal, 'kg')},",
        (measured, "kg", limit),
        CHARGE,
        notes,
        at_least=True,
    )


def cylinders_asked(cylinders: int, failed: int, age: float) -> int:
    """Return how many cylinders must have been pressure-tested at an age [years]. MSC.1/Circ.1318/Rev.1, 6.1.2 (seen).

    Examples
    --------
    >>> cylinders_asked(38, 0, 10), cylinders_asked(38, 1, 10), cylinders_asked(38, 2, 10), cylinders_asked(38, 0, 9.9)
    (4, 19, 38, 0)
    """
    if age >= 20 or failed > 1:
        return cylinders
    if failed == 1:
        return math.ceil(cylinders / 2)
    return math.ceil(cylinders / 10) if age >= 10 else 0


def cylinders_ladder(cylinders: int, failed: int, age: float) -> Ladder:
    """Two bands of the number of cylinders tested."""
    return stairs(
        "",
        below(cylinders_asked(cylinders, failed, age), "too few", "failed", "too few"),
        beyond("enough", "good", "enough"),
    )


def judge_cylinders(tested: int, cylinders: int, failed: int, age: float) -> Judgement:
    """Judge how many cylinders of a carbon dioxide system were pressure-tested in the last ten years.

    Parameters
    ----------
    tested : cylinders tested; cylinders : in the system, 1 to 500; failed : of those tested; age [years] since making or the last test of all, 0 to 60.

    References
    ----------
    MSC.1/Circ.1318/Rev.1, 6.1.2: at ten years a tenth; one fails, a half; more, all; all before the twentieth year (seen).
    """
    if tested > cylinders:
        refuse("co2-cylinder-tests", "tested", tested, f"{tested} of {cylinders} cylinders cannot have been tested")
    if failed > tested:
        refuse("co2-cylinder-tests", "failed", failed, f"{failed} of {tested} tested cylinders cannot have failed")
    limit = cylinders_asked(cylinders, failed, age)
    return told(
        "co2-cylinder-tests",
        cylinders_ladder(cylinders, failed, age).step(tested),
        f"A count of {show(tested, '')} tested cylinders, against at least {limit} of {cylinders} at {show(age, 'years')} with {failed} failed,",
        (tested, "", limit),
        CYLINDERS,
        at_least=True,
    )


def mixing_limits(nominal: float) -> tuple[float, float]:
    """Return the least and the most mixing ratio [%] for a nominal one: -10 and +30 % of it.

    Examples
    --------
    >>> mixing_limits(3)
    (2.7, 3.9)
    """
    return share(90, nominal), share(130, nominal)


def mixing_ladder(nominal: float) -> Ladder:
    """Three bands of the mixing ratio of foam [%]. MSC.1/Circ.1432, 9.2 (seen)."""
    low, high = mixing_limits(nominal)
    return stairs(
        "%",
        below(low, "too lean", "failed", "too lean to make foam as designed"),
        to(high, "within the limits", "good", "within them"),
        beyond("too rich", "poor", "too rich: the concentrate will not last as designed"),
    )


def judge_mixing(measured: float, nominal: float) -> Judgement:
    """Judge the mixing ratio of a foam system.

    Parameters
    ----------
    measured [%], 0 to 20; nominal [%], 0.5 to 10, commonly 1, 3 or 6.

    References
    ----------
    MSC.1/Circ.1432, 9.2: within +30 and -10 % of the nominal ratio (seen).
    """
    low, high = mixing_limits(nominal)
    return told_between(
        "foam-mixing",
        mixing_ladder(nominal).step(measured),
        f"A mixing ratio of {show(measured, '%')}, against {show(low, '%')} to {show(high, '%')} of a nominal {show(nominal, '%')},",
        (measured, "%"),
        (low, high),
        MIXING,
    )


def pfos_ladder(on: date) -> Ladder:
    """Two bands of PFOS in a foam concentrate [ppm]; it fails only from the day of the ban. SOLAS II-2/10.11 (seen)."""
    over = (
        ("failed", "over it, and such a medium may no longer be kept")
        if on >= PFOS_FROM
        else ("poor", "over it, and must go by the first survey from 2026-01-01 on")
    )
    return stairs("ppm", to(MOST_PFOS, "within the limit", "good", "within it"), beyond("over the limit", *over))


def judge_pfos(content: float, on: date) -> Judgement:
    """Judge the PFOS content of a fire-fighting medium.

    Parameters
    ----------
    content [ppm], mg/kg by a laboratory or the maker's declaration, 0 to 1 000 000; on : the day.

    References
    ----------
    SOLAS II-2/10.11, MSC.532(107): not above 10 mg/kg from the first survey on or after 1 January 2026 (seen).
    """
    notes = (
        "Binds from the first survey on or after 1 January 2026; old foam without papers wants a sample.",
        "To be landed with a reception facility, never discharged.",
    )
    return told(
        "foam-pfos",
        pfos_ladder(on).step(content),
        f"A PFOS content of {show(content, 'ppm')}, against at most {show(MOST_PFOS, 'ppm')},",
        (content, "ppm", MOST_PFOS),
        PFOS,
        notes,
    )


_RATIO = "Mixing ratio"

CRITERIA = (
    Criterion(
        "co2-charge",
        "Charge of a carbon dioxide cylinder",
        (Input("measured", "Gas in the cylinder", "number", "kg", low=0, high=200), Input("nominal", "Nominal charge", "number", "kg", low=1, high=120)),
        CHARGE,
        judge_charge,
        "Fixed carbon dioxide systems, cylinders of 1 to 120 kg of gas.",
        "The border from both sides and on it, in exact decimals.",
        ladder=charge_ladder,
    ),
    Criterion(
        "co2-cylinder-tests",
        "Number of carbon dioxide cylinders pressure-tested",
        (
            Input("tested", "Cylinders tested", "whole", low=0, high=500),
            Input("cylinders", "Cylinders of the system", "whole", low=1, high=500),
            Input("failed", "Of them failed", "whole", low=0, high=500),
            Input("age", "Age of the cylinders", "number", "years", low=0, high=60),
        ),
        CYLINDERS,
        judge_cylinders,
        "Fixed carbon dioxide systems of 1 to 500 cylinders up to 60 years old.",
        "Each step from both sides for 38 cylinders.",
        ladder=cylinders_ladder,
    ),
    Criterion(
        "foam-mixing",
        "Mixing ratio of a foam system",
        (Input("measured", _RATIO, "number", "%", low=0, high=20), Input("nominal", f"{_RATIO}, nominal", "number", "%", low=0.5, high=10)),
        MIXING,
        judge_mixing,
        "Fixed foam systems of a nominal 0.5 to 10 %.",
        "Both ends for 3 and 6 % from both sides.",
        ladder=mixing_ladder,
    ),
    Criterion(
        "foam-pfos",
        "PFOS in a fire-fighting medium",
        (Input("content", "PFOS content", "number", "ppm", low=0, high=1_000_000), Input("on", "Day", "date", low=date(2000, 1, 1))),
        PFOS,
        judge_pfos,
        "Foam concentrates and other media, days from 2000 on.",
        "The limit and the date from both sides.",
        ladder=pfos_ladder,
    ),
)
