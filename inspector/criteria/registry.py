"""Every criterion by its name, so that a checklist, a command and the report find the same rule."""

import difflib
from collections import Counter

from inspector.criteria import (
    antifouling,
    assembly_temperature,
    atmosphere,
    azimuth,
    ballast,
    batteries,
    battery_room,
    bilge,
    certificates,
    circuit_insulation,
    cleanliness,
    coating,
    cold_rooms,
    cooling,
    deck,
    dp_holding,
    dp_trials,
    dynamic_positioning,
    emergency_supply,
    emissions,
    engine_balance,
    engine_condition,
    entry,
    fixed_fire,
    floating,
    fluids,
    fuel_sulphur,
    gauging,
    generator_response,
    habitability,
    hazardous,
    identity,
    insulation,
    landing,
    lifting,
    loading,
    noise,
    oil,
    oil_condition,
    pitting,
    pollution,
    propeller,
    protection,
    refrigerant_cycle,
    refrigerant_leaks,
    refrigeration,
    rust,
    service_dates,
    shafting,
    shore,
    steering,
    store_insulation,
    supply,
    tanks,
    thermography,
    thickness,
    unbalance,
    us_tiers,
    vibration,
    vibration_tables,
    wear_metals,
)
from inspector.criteria.judgement import Criterion
from inspector.criteria.source import MARKS
from inspector.errors import InspectorError

_MODULES = (thickness, coating, insulation, thermography, vibration, refrigeration, atmosphere, emissions,
            dynamic_positioning, identity, oil, supply,
            gauging, pitting, rust, entry, tanks, deck, floating, hazardous, antifouling, landing,
            shafting, propeller, cooling, steering, bilge, pollution, ballast, refrigerant_cycle, cold_rooms, refrigerant_leaks, service_dates, fixed_fire,
            lifting, certificates, azimuth, fuel_sulphur, us_tiers, store_insulation,
            circuit_insulation, assembly_temperature, unbalance, generator_response, shore, loading, batteries, battery_room, emergency_supply, protection,
            dp_trials, dp_holding, vibration_tables, habitability, noise, oil_condition, wear_metals, cleanliness, fluids, engine_balance, engine_condition)

CRITERIA: dict[str, Criterion] = {rule.name: rule for module in _MODULES for rule in module.CRITERIA}


class NoSuchCriterion(InspectorError):
    """No criterion has this name. Attributes: ``name``, ``nearest`` (a tuple of names)."""


def count_by_mark() -> dict[str, int]:
    """Return how many criteria rest on a source of each mark, in the order of MARKS, without marks that none has."""
    counted = Counter(rule.source.mark for rule in CRITERIA.values())
    return {mark: counted[mark] for mark in MARKS if counted[mark]}


def mark_table() -> str:
    """Return the count by mark as the Markdown table that README.md carries."""
    rows = [f"| {mark} | {count} |" for mark, count in count_by_mark().items()]
    return "\n".join(["| mark | criteria |", "| --- | ---: |", *rows, f"| all | {len(CRITERIA)} |"])


def criterion(name: str) -> Criterion:
    """Return the criterion of this name, or raise NoSuchCriterion with the nearest names.

    Examples
    --------
    >>> criterion("plate-thickness").source.mark
    'seen'
    """
    if name in CRITERIA:
        return CRITERIA[name]
    nearest = tuple(difflib.get_close_matches(name, CRITERIA, n=3, cutoff=0.4))
    hint = f"did you mean {' or '.join(nearest)}?" if nearest else f"the names are {', '.join(CRITERIA)}."
    raise NoSuchCriterion(f"There is no criterion '{name}': {hint}", name=name, nearest=nearest)
