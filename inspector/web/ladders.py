"""Bands that a phone can apply alone: for each check whose criterion hangs on one typed number, its ladder as plain data."""

from collections.abc import Mapping
from typing import Any

from inspector.checklists import Check, System
from inspector.criteria.atmosphere import BELOW, LABELS, OXYGEN_BELOW, OXYGEN_LEAST
from inspector.criteria.judgement import Criterion
from inspector.criteria.profiles import Profile
from inspector.criteria.registry import criterion
from inspector.criteria.source import Source
from inspector.quantities import exact_factors, units_like

AIR_ORDER = ("oxygen", "flammable", "toxic", "carbon_dioxide")  # the order of testing at a gate


def ladders_of(systems: list[System], profiles: Mapping[str, Profile] | None = None) -> dict[str, dict[str, Any]]:
    """ "system/check" -> ladder as data, for the checks that have one."""
    found = {f"{system.id}/{check.id}": ladder_data(check, profiles) for system in systems for check in system.checks}
    return {key: data for key, data in found.items() if data}


def ladder_data(check: Check, profiles: Mapping[str, Profile] | None = None) -> dict[str, Any] | None:
    """The bands of one check with input, unit, factors, range, title and source; None where more than one number decides.

    factors: unit -> ["n/d", "n/d"], exact: value in the ladder's unit = typed value x the first + the second.
    """
    rule = criterion(check.criterion) if check.criterion else None
    if rule is None or not _hangs_on_one(check, rule):
        return None
    profile = (profiles or {}).get(rule.name)
    ladder = rule.ladder_for(check.given, profile)
    asked = next((one for one in check.readings if one.id == rule.ladder_input), None)
    if ladder is None or asked is None:
        return None
    first = rule.inputs[0]
    factors = {unit: [_told(part) for part in exact_factors(unit, ladder.unit)] for unit in {*units_like(asked.unit), ladder.unit}}
    source = profile.source if profile and profile.edited else rule.source
    return {**ladder.as_data(), "input": rule.ladder_input, "factors": factors, "low": first.low, "high": first.high,
            "title": rule.title, "source": cited(source)}


def _hangs_on_one(check: Check, rule: Criterion) -> bool:
    # Any other input that is typed, or taken from the vessel's particulars, could change the bands.
    others = {asked.name for asked in rule.inputs} - {rule.ladder_input}
    return not others & ({one.id for one in check.readings} | set(check.taken))


def _told(part: Any) -> str:
    return f"{part.numerator}/{part.denominator}"


def cited(source: Source) -> str:
    """A source in one line, as it stands under a judgement."""
    return ", ".join(part for part in (source.title, source.edition, source.clause, source.mark if source.mark != "seen" else "") if part)


def air_asked() -> list[dict[str, Any]]:
    """The readings that a gate asks for, in their order, with the recommended figures [%]."""
    of = {name: f"% {entry[2]}" for name, entry in BELOW.items()} | {"oxygen": "% by volume"}
    most = {name: entry[1] for name, entry in BELOW.items()} | {"oxygen": OXYGEN_BELOW}
    least = {"oxygen": OXYGEN_LEAST}
    return [{"name": one, "label": LABELS[one], "of": of[one], "below": most[one], "least": least.get(one)} for one in AIR_ORDER]
