"""The values at which the golden files try an input, and how they are written."""

import random
from collections.abc import Callable, Iterable, Mapping
from datetime import date, timedelta
from itertools import product

from inspector.criteria.core.criterion import Criterion
from inspector.values.field import Field

FIRST, LAST = date(1900, 1, 1), date(2045, 1, 1)
# days from another date of the same case: what falls due after months and after years
OFFSETS = (
    1,
    20,
    45,
    75,
    100,
    140,
    200,
    300,
    380,
    500,
    800,
    1200,
    1600,
    2000,
    3000,
    3800,
    5000,
    8000,
)
SHARES = (
    0,
    1e-5,
    1e-4,
    5e-4,
    0.002,
    0.005,
    0.01,
    0.02,
    0.05,
    0.1,
    0.2,
    0.3,
    0.4,
    0.5,
    0.6,
    0.7,
    0.8,
    0.9,
    1,
)
FACTORS = (0.3, 0.6, 0.8, 0.9, 0.95, 1.05, 1.1, 1.25, 1.6, 3)
MOST_WHOLES = 20
# a year as a rule begins: each first day is tried with the day before, since a text may begin there
FIRST_DAYS = (
    date(2008, 1, 1),
    date(2014, 7, 1),
    date(2015, 1, 1),
    date(2017, 6, 9),
    date(2018, 12, 31),
    date(2019, 9, 8),
    date(2020, 10, 28),
    date(2020, 12, 31),
    date(2024, 9, 8),
    date(2025, 6, 26),
    date(2026, 1, 1),
    date(2030, 6, 26),
)
# cases that the base and the random ones miss: where two dates must meet, or a second text applies
STARTS = {
    "ballast-treatment": (
        {"on": date(2022, 1, 1), "renewal": date(2020, 6, 1), "installed": date(2018, 1, 1)},
    ),
    "dp-equipment": ({"built": date(2018, 5, 31)},),
    "us-engine-tier": tuple(
        {"model_year": year, "power": power, "displacement": litres}
        for year, power in ((2006, 400.0), (2013, 400.0), (2015, 1000.0), (2015, 2500.0))
        for litres in (0.5, 1.0, 2.0, 3.0, 5.0, 10.0, 20.0, 29.0)
    ),
    "fuel-quantity": tuple({"density": density} for density in (700.0, 780.0, 800.0, 1000.0)),
    "thermographic-rise": (
        {"over_similar": 2.0, "over_ambient": 5.0},
        {"over_similar": 2.0, "over_ambient": 15.0},
    ),
    "engine-vibration": ({"velocity": 0.5},),
    "halon": ({"installed": date(1993, 6, 1)},),
}
# above this range a number is also tried at each half of the one before
WIDE, HALVES = 1e5, 34
# texts that a rule reads itself; each counts as a choice
TEXTS = {
    "imo-number": {"number": ("0123450", "9999993", "1234567", "IMO 0123450", "12345", "1234565")},
    "oil-cleanliness-code": {
        "code": (
            "12/10/7",
            "15/13/10",
            "16/14/11",
            "18/16/13",
            "19/17/14",
            "20/18/15",
            "21/19/16",
            "24/22/19",
        ),
    },
    "exhaust-spread": {
        "temperatures": (
            "380 380 380 380",
            "380 390 400 380",
            "380 400 380 360",
            "380 420 390 370",
            "380 430 380 380",
            "380 440 380 350",
            "380 480 300 380",
            "500 510 520 530",
            "380",
            "380 390",
            "380 " * 20,
            "380 " * 21,
        ),
    },
    "compression-spread": {
        "pressures": (
            "40 40 40 40",
            "40 41 40 39",
            "40 42 40 40",
            "40 43 40 38",
            "40 44 40 40",
            "40 46 40 36",
        ),
    },
    "firing-pressure-spread": {
        "pressures": (
            "90 90 90 90",
            "90 92 90 90",
            "90 94 90 88",
            "90 96 90 90",
            "90 99 90 86",
            "90 105 90 90",
        ),
    },
}
TINY = 1e-9
Values = Mapping[str, object]


def written(value: object) -> str:
    """Return a value as the files show it: six significant digits, ISO dates, "-" for none."""
    if value is None:
        return "-"
    if not isinstance(value, float):
        return str(value)
    # a difference of binary numbers, or halving toward nothing, ends beside it
    return f"{value:.6g}" if abs(value) > TINY else "0"


def listed(values: Values) -> str:
    """Return a case as one text: "voltage 480, winding -"."""
    return ", ".join(f"{name} {written(value)}" for name, value in values.items()) or "any"


def base_values(rule: Criterion, valid: Values) -> dict[str, object]:
    """Return the valid values in the order and type in which a rule receives them."""
    return {asked.name: _typed(asked, valid.get(asked.name)) for asked in rule.inputs}


def _typed(asked: Field, value: object) -> object:
    """Return one value as a date or a number where it is one."""
    if value is None or asked.kind in ("choice", "text"):
        return value
    if asked.kind == "date":
        return value if isinstance(value, date) else date.fromisoformat(str(value))
    return int(value) if asked.kind == "whole" else float(value)


def choice_cases(rule: Criterion) -> list[dict[str, object]]:
    """Return every combination of the choices of a rule, with the sample texts as choices."""
    lists = {
        asked.name: _choices(rule, asked)
        for asked in rule.inputs
        if asked.kind in ("choice", "text")
    }
    return [dict(zip(lists, values, strict=True)) for values in product(*lists.values())]


def _choices(rule: Criterion, asked: Field) -> tuple[object, ...]:
    """Return what one choice or text is set to; None where it may be missing."""
    if asked.kind == "text":
        return TEXTS[rule.name][asked.name]
    return (*asked.choices, None) if asked.optional else asked.choices


def tried(asked: Field, base: Values) -> list[object]:
    """Return rising values over the whole range of a number or date, denser about the base case."""
    if asked.kind == "date":
        return _dates(asked, base)
    low, high, middle = asked.low, asked.high, base[asked.name]
    if asked.kind == "whole" and high - low <= MOST_WHOLES:
        return list(range(low, high + 1))
    values = [low + share * (high - low) for share in SHARES]
    values += [middle * factor for factor in FACTORS] if middle else []
    values += [high / 2**half for half in range(HALVES)] if high >= WIDE else []
    return _inside(
        (int(value) if asked.kind == "whole" else float(f"{value:.5g}") for value in values),
        low,
        high,
    )


def _dates(asked: Field, base: Values) -> list[object]:
    """Return dates over the range: years, first days of texts, intervals from other dates."""
    others = {
        value for name, value in base.items() if isinstance(value, date) and name != asked.name
    }
    dates = [date(year, 7, 1) for year in (*range(FIRST.year, 1990, 5), *range(1990, LAST.year))]
    dates += [day - timedelta(days=before) for day in FIRST_DAYS for before in (0, 1)]
    for other in others:
        dates.append(other)
        dates += [other + timedelta(days=sign * days) for days in OFFSETS for sign in (1, -1)]
    return _inside(dates, asked.low or FIRST, asked.high or LAST)


def _inside(values: Iterable[object], low: object, high: object) -> list[object]:
    """Return the values within a range, each once, rising, with both ends."""
    return sorted({low, high, *(value for value in values if low <= value <= high)})


def first_other(low: object, high: object, as_low: Callable[[object], bool]) -> object:
    """Return the first value between two that is not as the low one, found by halving."""
    while (middle := _between(low, high)) is not None:
        if as_low(middle):
            low = middle
        else:
            high = middle
    return high


def _between(low: object, high: object) -> object | None:
    """Return the value half way, None where both are the same to all digits that are written."""
    if isinstance(low, date):
        middle = date.fromordinal((low.toordinal() + high.toordinal()) // 2)
        return None if middle == low else middle
    if isinstance(low, int) and isinstance(high, int):
        middle = (low + high) // 2
        return None if middle == low else middle
    return None if high - low <= 1e-7 * max(abs(low), abs(high), 1e-6) else (low + high) / 2


def random_case(
    rule: Criterion, base: Values, choices: Values, source: random.Random
) -> dict[str, object]:
    """Return a case in which every number and date has another value, near the base or anywhere."""
    near = source.random() < 0.7
    case = {asked.name: _random_value(asked, base, near, source) for asked in rule.inputs}
    return case | dict(choices)


def _random_value(asked: Field, base: Values, near: bool, source: random.Random) -> object:
    """Return one value; what may be missing is mostly given, since the base often lacks it."""
    if asked.kind in ("choice", "text"):
        return None
    if asked.optional and source.random() < 0.15:
        return None
    if asked.kind == "date":
        return _random_date(asked, base, source)
    middle = base[asked.name]
    if near and middle:
        value = min(max(middle * source.uniform(0.6, 1.5), asked.low), asked.high)
    else:
        value = asked.low + (asked.high - asked.low) * source.random() ** source.choice((1, 3, 6))
    return round(value) if asked.kind == "whole" else float(f"{value:.4g}")


def _random_date(asked: Field, base: Values, source: random.Random) -> date:
    """Return a date within some years of the base, inside the range."""
    middle = base[asked.name] or date(2015, 1, 1)
    days = int(source.uniform(-1, 1) * source.choice((60, 500, 3000, 9000)))
    return min(max(middle + timedelta(days=days), asked.low or FIRST), asked.high or LAST)
