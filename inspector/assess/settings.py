"""The surveyor's settings of the rules: each with its meaning, its default and the range it may have; kept with the inspection as typed.

None of them is a published limit: they are our own choice (common practice at best), a firm may set its own, and the report prints those used.
"""

from collections.abc import Mapping
from dataclasses import dataclass, fields

from inspector.errors import InspectorError
from inspector.quantities import parse_number, show


class BadSetting(InspectorError):
    """A setting outside its range. Attributes: ``name``, ``received``."""


@dataclass(frozen=True)
class Settings:
    """Levels of the rules; see ASKED for what each one means."""

    coverage: float = 0.60
    retain_from: float = 70.0
    refurbish_from: float = 25.0
    cost_share: float = 0.60
    critical_seen: bool = True
    most_deciding: int = 6
    discount_rate: float = 0.08
    clear_difference: float = 0.05
    horizon: float | None = None
    late_factor: float = 1.5
    buying_worth: float | None = None


@dataclass(frozen=True)
class AskedSetting:
    """One setting as a person types it: in `unit`, `scale` of which is 1 of the rule's own figure; `default` as typed."""

    name: str
    label: str
    unit: str
    default: str
    low: float
    high: float
    help: str
    scale: float = 1.0


ASKED = (
    AskedSetting("coverage", "Coverage needed", "%", "60", 0, 100, "Share of a sheet's weight that must be seen before its condition counts.", 100),
    AskedSetting("retain_from", "Retain from", "", "70", 1, 100, "Condition, of 100, from which a system stays as it is."),
    AskedSetting("refurbish_from", "Refurbish from", "", "25", 0, 99, "Condition, of 100, below which it goes unless a priced repair is cheap."),
    AskedSetting("cost_share", "Repair to replace", "%", "60", 1, 100, "Refurbishing may cost at most this share of replacing.", 100),
    AskedSetting("discount_rate", "Discount rate", "%", "8", 0, 50, "A year, for the comparison of yearly costs; real with today's prices.", 100),
    AskedSetting("clear_difference", "Clear difference", "%", "5", 0, 50, "Yearly costs nearer than this are no clear difference.", 100),
    AskedSetting("horizon", "Horizon", "years", "", 0, 60, "Used where the brief names none; empty: no horizon is assumed."),
    AskedSetting("late_factor", "Found too late", "", "1.5", 1, 10, "How many times dearer a fault is when found after the purchase; ranks the next look."),
    AskedSetting("buying_worth", "Worth of a sound vessel", "", "", 0, 1e12,
                 "What buying wins if nothing is wrong, in the work lines' currency; may stay empty."),
)


def read_settings(typed: Mapping[str, str]) -> tuple[Settings, tuple[str, ...]]:
    """Settings as typed -> the settings to use, and a sentence for each that cannot be used (its default stands then)."""
    values, faults = {}, []
    for asked in ASKED:
        try:
            value = setting(asked, typed.get(asked.name, ""))
        except BadSetting as problem:
            faults.append(str(problem))
            continue
        if value is not None:
            values[asked.name] = value
    made = Settings(**values)
    if made.refurbish_from > made.retain_from:
        faults.append("Refurbish from must not lie above retain from; both stand at their defaults.")
        made = Settings(**{name: value for name, value in values.items() if name not in ("retain_from", "refurbish_from")})
    return made, tuple(faults)


def setting(asked: AskedSetting, text: str) -> float | None:
    """One setting as typed, as the rules take it; None where nothing was typed. Raises BadSetting with one sentence."""
    text = (text or "").strip()
    if not text:
        return None
    try:
        number = parse_number(text)
    except InspectorError as problem:
        raise BadSetting(f"{asked.label}: {problem}", name=asked.name, received=text) from problem
    if not asked.low <= number <= asked.high:
        raise BadSetting(f"{asked.label}: {show(number, asked.unit)} cannot be; expected {show(asked.low, asked.unit)} to {show(asked.high, asked.unit)}.",
                         name=asked.name, received=text)
    return number / asked.scale


def told(settings: Settings) -> tuple[tuple[str, str, bool], ...]:
    """(label, value as text, whether it is the default) of every setting, for the report."""
    defaults = {one.name: one.default for one in fields(Settings)}
    return tuple((asked.label, _shown(getattr(settings, asked.name), asked), getattr(settings, asked.name) == defaults[asked.name]) for asked in ASKED)


def _shown(value: float | None, asked: AskedSetting) -> str:
    return "not set" if value is None else show(round(value * asked.scale, 6), asked.unit)
