"""What a table of a TOML file must look like: a rule for each key, a sentence for each fault.

Checklists and declared criteria are files that surveyors write by hand, so that a file is checked
whole and every mistake is named at once: where it is, what is written there, what would be right.
"""

import re
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass

from inspector.values.errors import InspectorError
from inspector.values.units import known_unit


@dataclass(frozen=True)
class Rule:
    """What one value must be: the test of it, and the words that say what would be right."""

    accepts: Callable[[object], bool]
    expected: str


def is_number(value: object) -> bool:
    """Return whether a value is a number; true and false are none."""
    # bool is an int in Python, and `weight = true` is a mistake, not a 1.
    return isinstance(value, int | float) and not isinstance(value, bool)


def is_text(value: object) -> bool:
    """Return whether a value is a text with something in it."""
    return isinstance(value, str) and bool(value.strip())


def written_as(pattern: str, expected: str) -> Rule:
    """Return the rule of a text that a pattern describes."""
    # Compiled once: a checklist folder asks this for some thousand keys.
    whole = re.compile(pattern)
    return Rule(lambda value: isinstance(value, str) and bool(whole.fullmatch(value)), expected)


def list_of(accepts: Callable[[object], bool], expected: str) -> Rule:
    """Return the rule of a list whose members are all of a kind."""
    return Rule(lambda value: isinstance(value, list) and all(map(accepts, value)), expected)


def between(low: float, high: float) -> Rule:
    """Return the rule of a number from low to high."""
    expected = f"a number from {low:g} to {high:g}"
    return Rule(lambda value: is_number(value) and low <= value <= high, expected)


def any_of(words: Iterable[str]) -> Rule:
    """Return the rule of a text that is one of some words."""
    words = tuple(words)
    return Rule(lambda value: value in words, f"one of {', '.join(words)}")


TEXT = Rule(is_text, "a text that is not empty")
TEXTS = list_of(is_text, "a list of texts")
TEXT_OR_TEXTS = Rule(
    lambda value: TEXT.accepts(value) or TEXTS.accepts(value), "a text or a list of texts"
)
FLAG = Rule(lambda value: isinstance(value, bool), "true or false")
NUMBER = Rule(is_number, "a number")
TABLE = Rule(lambda value: isinstance(value, dict), "a table { name = value }")
TABLES = list_of(lambda value: isinstance(value, dict), "a list of tables")
ID = written_as(r"[a-z0-9]+(-[a-z0-9]+)*", "lower case letters, digits and hyphens")
NAME = written_as(r"[a-z][a-z0-9_]*", "lower case letters, digits and _")

Rules = Mapping[str, Rule]


def faults_of_keys(where: str, data: object, needed: Rules, options: Rules) -> list[str]:
    """Return a sentence for each key that is missing, not known or not as its rule asks.

    Parameters
    ----------
    where : str
        The file and the place in it, at the start of each sentence.
    data : object
        What the file holds there.
    needed, options : mapping of str to Rule
        The keys that must be there, and those that may.

    Returns
    -------
    list of str
    """
    if not isinstance(data, Mapping):
        return [f"{where}: is {data!r}; expected a table with {', '.join(needed)}."]
    faults = []
    # What is missing comes first: with it a mistyped key is often explained.
    for key, rule in needed.items():
        if key not in data:
            faults.append(f"{where}, key {key}: is missing; expected {rule.expected}.")
    known = {**needed, **options}
    for key, value in data.items():
        if key not in known:
            faults.append(f"{where}, key {key}: is not known; known keys are {', '.join(known)}.")
        elif not known[key].accepts(value):
            faults.append(f"{where}, key {key}: is {value!r}; expected {known[key].expected}.")
    return faults


def faults_of_unit(where: str, unit: object) -> list[str]:
    """Return a sentence where a text is no unit that can be converted."""
    try:
        known_unit(unit if isinstance(unit, str) else repr(unit))
    except InspectorError:
        expected = "expected a unit that `inspector` can convert, such as mm, °C, bar, h or years."
        return [f"{where}, key unit: {unit!r} is not known; {expected}"]
    return []


def entries_of(value: object) -> list:
    """Return a list as it is, and an empty one for anything else, which its own rule reports."""
    return value if isinstance(value, list) else []


def items_of(value: object) -> list[tuple]:
    """Return the pairs of a table, and none for anything else, which its own rule reports."""
    return list(value.items()) if isinstance(value, dict) else []
