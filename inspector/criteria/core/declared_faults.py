"""What a file of declared criteria must satisfy: every mistake with file, criterion and key.

The form of a file is described in ``declared.py``.
"""

from collections.abc import Iterator, Mapping

from inspector.criteria.core.declared import declared_criterion, declared_sources, field_of
from inspector.criteria.core.declared_examples import faults_of_examples
from inspector.criteria.core.declared_keys import faults_of_shape, faults_of_sources
from inspector.criteria.core.declared_names import NUMBER, OF_A_BAND, TEXT, Names, cells_of
from inspector.criteria.core.declared_rule import COMPARED, VALUE
from inspector.criteria.core.declared_terms import OPERATIONS, ROW_ENDS, Raw
from inspector.criteria.core.orders import RELATIONS, order_of
from inspector.criteria.core.source import Source
from inspector.values.table_rules import (
    TABLE,
    TABLES,
    entries_of,
    faults_of_keys,
    faults_of_unit,
    is_number,
    is_text,
    items_of,
)


def faults_of_file(file: str, data: Raw, taken: Mapping[str, str], own: bool = False) -> list[str]:
    """Return every mistake of a file of criteria.

    Parameters
    ----------
    file : str
        Its name, at the start of each sentence.
    data : mapping
        What the file holds.
    taken : mapping of str to str
        Id of each criterion that exists already -> where it is from ("shipped", or a file).
    own : bool
        Whether the file is a surveyor's own, whose sources carry no mark: they are cited by him.

    Returns
    -------
    list of str
    """
    faults = faults_of_keys(file, data, {"criterion": TABLES}, {"source": TABLE})
    faults += faults_of_sources(file, data.get("source"), own)
    sources = dict(items_of(data.get("source")))
    # Without its sources no criterion of the file can be built, so that its examples are not run.
    read = {} if faults else declared_sources(sources, own)
    seen = dict(taken)
    for number, raw in enumerate(entries_of(data.get("criterion")), 1):
        if isinstance(raw, dict):
            where = f"{file}, criterion {raw.get('id') or f'number {number}'}"
            faults += _faults_of_id(where, raw.get("id"), seen)
            faults += _faults_of_criterion(where, raw, sources, read)
            seen[str(raw.get("id"))] = "in this file already"
    return faults


def _faults_of_id(where: str, name: object, seen: Mapping[str, str]) -> Iterator[str]:
    if isinstance(name, str) and name in seen:
        yield f"{where}, key id: {name!r} is {seen[name]}; expected a name of its own."


def _faults_of_criterion(
    where: str, raw: Raw, sources: Raw, read: Mapping[str, Source]
) -> list[str]:
    """Every mistake of one ``[[criterion]]``: of its names and examples once its shape is right."""
    # Names can be looked up only in tables whose shape is right.
    faults = faults_of_shape(where, raw) or _Checker(where, raw, sources).faults()
    if faults or not read:
        return faults
    return faults_of_examples(where, declared_criterion(raw, read), raw["examples"])


class _Checker(Names):
    """The mistakes of one criterion whose shape is right, in the order of its keys."""

    def __init__(self, where: str, raw: Raw, sources: Raw) -> None:
        super().__init__(where, raw)
        self.sources = sources

    def faults(self) -> list[str]:
        """Return all of them, in the order of the keys."""
        return [
            *self._source("key source", self.raw["source"]),
            *self._inputs(),
            *self._limits(),
            *self._figures(),
            *self._value(),
            *self._compared("", self.raw),
            *self._bands(),
            *self._refused(),
            *self._orders(),
            *self._texts(),
        ]

    def _source(self, key: str, name: str) -> Iterator[str]:
        if name not in self.sources:
            known = ", ".join(self.sources) or "none"
            yield self.fault(key, f"{name!r} is no source of this file; its sources are {known}.")

    def _inputs(self) -> Iterator[str]:
        """The faults of the inputs, the first of which is compared and so must be a number."""
        names = [each["id"] for each in self.raw["inputs"]]
        for name in sorted({name for name in names if names.count(name) > 1}):
            yield self.fault(f"input {name}", "is there twice; expected each id once.")
        for name, raw in self.inputs.items():
            asked, key = field_of(raw), f"input {name}"
            # One choice is no question.
            if asked.kind == "choice" and len(asked.choices) < 2:
                yield self.fault(f"{key}, key choices", "expected at least two choices.")
            if asked.kind == "number" and "unit" not in raw:
                yield self.fault(f"{key}, key unit", 'is missing; expected a unit, or "" for none.')
            yield from faults_of_unit(f"{self.where}, {key}", asked.unit)
            if asked.is_number and not self._rises(raw):
                yield self.fault(f"{key}, key low", "expected low and high, and low below high.")
        first = next(iter(self.inputs.values()))
        if not field_of(first).is_number or first.get("optional"):
            problem = "expected a number that is always given, since it is the one compared."
            yield self.fault(f"input {first['id']}", problem)

    @staticmethod
    def _rises(raw: Raw) -> bool:
        low, high = raw.get("low"), raw.get("high")
        return is_number(low) and is_number(high) and low < high

    def _limits(self) -> Iterator[str]:
        if bool(self.raw.get("limits")) != ("limits_title" in self.raw):
            yield self.fault("key limits_title", "limits and their title are written together.")
        for raw in self.raw.get("limits", ()):
            key = f"limit {raw['id']}"
            yield from self.new(key, raw["id"])
            yield from faults_of_unit(f"{self.where}, {key}", raw["unit"])
            if ("value" in raw) == ("by" in raw) or ("by" in raw) != ("values" in raw):
                yield self.fault(key, "expected a value, or by with values.")
                continue
            if "by" in raw:
                yield from self.rows(key, raw["by"], raw["values"], None)
            for value in raw.get("values", {"": raw.get("value")}).values():
                if not (is_number(value) and raw["low"] <= value <= raw["high"]):
                    ends = f"{raw['low']} to {raw['high']}"
                    yield self.fault(key, f"{value!r} is outside its own range; expected {ends}.")

    def _figures(self) -> Iterator[str]:
        for name, figure in self.raw.get("figures", {}).items():
            yield from self.figure(f"figure {name}", figure)
            yield from self.new(f"figure {name}", name, self.kind_of(figure))

    def _value(self) -> Iterator[str]:
        """The faults of what is compared, where it is not the first input itself."""
        value = self.raw.get(VALUE)
        if value is not None:
            yield from self.figure("key value", value)
            if "unit" not in value or not any(name in value for name in OPERATIONS):
                yield self.fault("key value", "expected one operation and its unit.")
        self.known[VALUE] = NUMBER
        first = self.raw["inputs"][0]["id"]
        if self.raw.get("bands_on", first) != first:
            yield self.fault("key bands_on", f"expected the first input, {first!r}.")

    def _compared(self, key: str, raw: Raw) -> Iterator[str]:
        """The faults of the limit that a judgement or one band names."""
        keys = [name for name in COMPARED if name in raw]
        if len(keys) > 1:
            yield self.fault(f"{key}key {keys[1]}", f"expected one of {', '.join(COMPARED)}.")
        for name in keys:
            ends = raw[name] if name == "between" else [raw[name]]
            for end in ends:
                yield from self.name(f"{key}key {name}", end, NUMBER)

    def _bands(self) -> Iterator[str]:
        """The faults of the bands: their ends, conditions and limits."""
        bands = self.raw["bands"]
        for number, band in enumerate(bands, 1):
            key = f"bands {number}"
            if "upto" in band and "below" in band:
                yield self.fault(key, "has upto and below; expected one of them.")
            for end in ROW_ENDS:
                if end in band:
                    yield from self.name(f"{key}, key {end}", band[end], NUMBER)
            yield from self.conditions(f"{key}, key when", band.get("when", {}))
            yield from self._compared(f"{key}, ", band)
            if "source" in band:
                yield from self._source(f"{key}, key source", band["source"])
        # Otherwise some value would fall in no band.
        if any(key in bands[-1] for key in (*ROW_ENDS, "when")):
            yield self.fault(
                f"bands {len(bands)}", "expected the last band without end and without when."
            )

    def _refused(self) -> Iterator[str]:
        for number, refusal in enumerate(self.raw.get("refused", ()), 1):
            if refusal["input"] not in self.inputs:
                yield self.fault(
                    f"refused {number}, key input", f"{refusal['input']!r} is no input."
                )
            yield from self.conditions(f"refused {number}, key when", refusal["when"])

    def _orders(self) -> Iterator[str]:
        """The faults of orders, which are of two inputs of one quantity."""
        for number, raw in enumerate(self.raw.get("orders", ()), 1):
            key = f"orders {number}"
            if sum(relation in raw for relation in RELATIONS) != 1:
                yield self.fault(key, f"expected one of {', '.join(RELATIONS)}.")
                continue
            order = order_of(raw)
            unknown = [each for each in (order.input, order.other) if each not in self.inputs]
            if unknown:
                yield self.fault(key, f"{unknown[0]!r} is no input.")
                continue
            first, second = (field_of(self.inputs[each]) for each in (order.input, order.other))
            if (first.is_number, first.unit) != (second.is_number, second.unit):
                yield self.fault(key, "expected two inputs of one kind and unit.")

    def _texts(self) -> Iterator[str]:
        """The faults of every text with places for values."""
        yield from self._words()
        yield from self._texts_of("", self.raw)
        for number, band in enumerate(self.raw["bands"], 1):
            yield from self._texts_of(f"bands {number}, ", band)
        for number, refusal in enumerate(self.raw.get("refused", ()), 1):
            yield from self.placeholders(f"refused {number}, key why", refusal["why"])

    def _words(self) -> Iterator[str]:
        for name, words in self.raw.get("words", {}).items():
            key = f"word {name}"
            if isinstance(words, Mapping):
                rows = words.get("rows")
                yield from self.rows(key, words.get("by"), rows, words.get("rest"))
            for text in cells_of(words) if isinstance(words, Mapping) else [words]:
                if not is_text(text):
                    yield self.fault(key, f"is {text!r}; expected a text.")
                yield from self.placeholders(key, text)
        for name in self.raw.get("words", {}):
            yield from self.new(f"word {name}", name, TEXT)

    def _texts_of(self, key: str, holder: Raw) -> Iterator[str]:
        sentence = holder.get("sentence")
        yield from self.placeholders(f"{key}key sentence", sentence, *OF_A_BAND)
        yield from self.placeholders(f"{key}key meaning", holder.get("meaning"))
        for note in holder.get("notes", ()):
            table = note if isinstance(note, Mapping) else {"text": note, "when": {}}
            yield from self.placeholders(f"{key}key notes", table["text"])
            yield from self.conditions(f"{key}key notes", table["when"])
