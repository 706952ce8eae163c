"""The keys that the tables of a declared criterion have, and what each must be."""

from datetime import date

from inspector.criteria.core.declared_terms import Raw
from inspector.criteria.core.orders import RELATIONS
from inspector.criteria.core.source import CITED, MARKS
from inspector.values.field import KINDS
from inspector.values.table_rules import (
    FLAG,
    ID,
    NAME,
    NUMBER,
    TABLE,
    TABLES,
    TEXT,
    TEXTS,
    Rule,
    any_of,
    entries_of,
    faults_of_keys,
    is_number,
    is_text,
    items_of,
)
from inspector.values.vocabulary import RATINGS

UNIT = Rule(lambda value: isinstance(value, str), 'a unit, or "" for a plain number')
NOTES = Rule(
    lambda value: isinstance(value, list) and all(is_text(n) or isinstance(n, dict) for n in value),
    "a list of texts, or of tables { text, when }",
)
END = Rule(lambda value: is_number(value) or is_text(value), "a number or a name")
ENDS = Rule(lambda value: isinstance(value, list) and len(value) == 2, "a list of two names")
RANGE_END = Rule(
    lambda value: is_number(value) or isinstance(value, date), "a number, or a date for a date"
)
SOURCE_KEYS = {"title": TEXT, "edition": TEXT, "clause": TEXT, "mark": any_of(MARKS[:3])}
CRITERION_KEYS = {
    "id": ID,
    "title": TEXT,
    "source": TEXT,
    "range": TEXT,
    "checked": TEXT,
    "inputs": TABLES,
    "sentence": TEXT,
    "bands": TABLES,
    "examples": TABLES,
}
COMPARED_KEYS = {"at_most": END, "at_least": END, "between": ENDS}
CRITERION_OPTIONS = {
    "limits_title": TEXT,
    "limits": TABLES,
    "figures": TABLE,
    "words": TABLE,
    "value": TABLE,
    "bands_on": TEXT,
    **COMPARED_KEYS,
    "notes": NOTES,
    "refused": TABLES,
    "orders": TABLES,
}
INPUT_KEYS = {"id": NAME, "label": TEXT}
INPUT_OPTIONS = {
    "kind": any_of(KINDS),
    "unit": UNIT,
    "choices": TEXTS,
    "optional": FLAG,
    "low": RANGE_END,
    "high": RANGE_END,
}
LIMIT_KEYS = {"id": NAME, "label": TEXT, "unit": UNIT, "low": NUMBER, "high": NUMBER}
LIMIT_OPTIONS = {"value": NUMBER, "by": TEXT, "values": TABLE}
BAND_KEYS = {"band": TEXT, "meaning": TEXT}
BAND_OPTIONS = {
    "upto": END,
    "below": END,
    "rating": any_of(RATINGS),
    "when": TABLE,
    "sentence": TEXT,
    "notes": NOTES,
    "source": TEXT,
    "without": Rule(
        lambda value: value in (["limit"], ["value", "limit"]), '["limit"] or ["value", "limit"]'
    ),
    **COMPARED_KEYS,
}
REFUSED_KEYS = {"input": TEXT, "when": TABLE, "why": TEXT}
ORDER_KEYS = {"input": TEXT, "why": TEXT}
ORDER_OPTIONS = {"times": NUMBER, **dict.fromkeys(RELATIONS, TEXT)}
EXAMPLE_KEYS = {"given": TABLE, "from": TEXT}
EXAMPLE_OPTIONS = {"band": TEXT, "rating": any_of(RATINGS), "margin": NUMBER, "refused": TEXT}
NOTE_KEYS = {"text": TEXT, "when": TABLE}
TABLE_KEYS = {
    "inputs": (INPUT_KEYS, INPUT_OPTIONS),
    "limits": (LIMIT_KEYS, LIMIT_OPTIONS),
    "bands": (BAND_KEYS, BAND_OPTIONS),
    "refused": (REFUSED_KEYS, {}),
    "orders": (ORDER_KEYS, ORDER_OPTIONS),
    "examples": (EXAMPLE_KEYS, EXAMPLE_OPTIONS),
}


def faults_of_sources(file: str, sources: Raw, own: bool) -> list[str]:
    """Return every mistake in the sources of a file; those of a surveyor's own need no mark."""
    # A surveyor's criterion is always "cited by the surveyor": he cannot mark it as read by us.
    needed = {key: rule for key, rule in SOURCE_KEYS.items() if not (own and key == "mark")}
    options = {"mark": any_of([CITED])} if own else {}
    faults: list[str] = []
    for name, source in items_of(sources):
        faults += faults_of_keys(f"{file}, source {name}", source, needed, options)
    return faults


def faults_of_shape(where: str, raw: Raw) -> list[str]:
    """Return every mistake in the keys of a ``[[criterion]]`` and of the tables inside it.

    Parameters
    ----------
    where : str
        File and criterion, at the start of each sentence.
    raw : mapping
        The table.

    Returns
    -------
    list of str
    """
    faults = faults_of_keys(where, raw, CRITERION_KEYS, CRITERION_OPTIONS)
    for key, (needed, options) in TABLE_KEYS.items():
        for number, table in enumerate(entries_of(raw.get(key)), 1):
            faults += faults_of_keys(f"{where}, {key} {number}", table, needed, options)
    for key in ("inputs", "bands", "examples"):
        if raw.get(key) == []:
            faults.append(f"{where}, key {key}: is empty; expected at least one.")
    for holder in (raw, *(b for b in entries_of(raw.get("bands")) if isinstance(b, dict))):
        for note in entries_of(holder.get("notes")):
            if isinstance(note, dict):
                faults += faults_of_keys(f"{where}, key notes", note, NOTE_KEYS, {})
    return faults
