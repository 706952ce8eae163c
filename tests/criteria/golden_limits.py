"""What each criterion declares: texts, source, inputs, limits, and the ends of its bands."""

from collections.abc import Iterator, Mapping
from itertools import pairwise

from inspector.criteria.core.bands import Bands
from inspector.criteria.core.criterion import Criterion
from inspector.criteria.core.judgement import CannotJudge
from inspector.values.field import Field
from tests.criteria.golden_values import (
    base_values,
    choice_cases,
    first_other,
    listed,
    tried,
    written,
)

MOST_VALUES = 10


def limit_lines(rule: Criterion, valid: Mapping[str, object]) -> list[str]:
    """Return all lines of a criterion, sorted."""
    lines = [*_texts(rule), *_inputs(rule), *_profile(rule), *_bands(rule, valid)]
    return sorted({f"{rule.name} | {line}" for line in lines})


def _texts(rule: Criterion) -> Iterator[str]:
    """Yield title, range, checks and source."""
    yield f"title | {rule.title}"
    yield f"range | {rule.range_text}"
    yield f"checked | {rule.checked}"
    yield from _source("source", rule.source)


def _source(name: str, source: object) -> Iterator[str]:
    """Yield the four parts of a source."""
    for part in ("title", "edition", "clause", "mark"):
        yield f"{name} {part} | {getattr(source, part)}"


def _inputs(rule: Criterion) -> Iterator[str]:
    """Yield label, kind with unit and range, and each choice of each input, with its place."""
    for place, asked in enumerate(rule.inputs, 1):
        yield f"input {asked.name} | {_kind(asked)}"
        yield f"input {asked.name} label | {place} {asked.label}"
        for order, choice in enumerate(asked.choices, 1):
            yield f"input {asked.name} choice {order:02} | {choice}"


def _kind(asked: Field) -> str:
    """Return what an input takes: "number % 0 .. 100, optional"."""
    unit = f" {asked.unit}" if asked.unit else ""
    ends = (
        ""
        if asked.low is None and asked.high is None
        else f" {written(asked.low)} .. {written(asked.high)}"
    )
    return f"{asked.kind}{unit}{ends}{', optional' if asked.optional else ''}"


def _profile(rule: Criterion) -> Iterator[str]:
    """Yield each limit that a surveyor may set, with its own range and label."""
    if rule.limit_set is None:
        return
    yield f"limits title | {rule.limit_set.title}"
    yield from _source("limits source", rule.limit_set.source)
    for limit in rule.limit_set.limits:
        yield f"limit {limit.name} | {written(limit.value)} {limit.unit}"
        yield f"limit {limit.name} label | {limit.label}"
        ends = f"{written(limit.field.low)} .. {written(limit.field.high)}"
        yield f"limit {limit.name} range | {ends} {limit.unit}"


def _bands(rule: Criterion, valid: Mapping[str, object]) -> Iterator[str]:
    """Yield each band of a criterion: all choices, and each other number over its range."""
    if rule.bands is None:
        return
    base = base_values(rule, valid)
    for choices in choice_cases(rule):
        for case in _varied(rule, {**base, **choices}):
            yield from _band_lines(rule, case)
        yield from _moves(rule, {**base, **choices})


def _varied(rule: Criterion, base: dict[str, object]) -> Iterator[dict[str, object]]:
    """Yield the case without its deciding number, then with each other number or date changed."""
    constants = {name: value for name, value in base.items() if name != rule.deciding_input}
    yield constants
    for asked in _others(rule):
        values = tried(asked, base)
        for value in values[:: max(1, len(values) // MOST_VALUES)]:
            yield {**constants, asked.name: value}


def _others(rule: Criterion) -> list[Field]:
    """Return the numbers and dates that do not decide by themselves but move the bands."""
    return [asked for asked in rule.inputs[1:] if asked.kind not in ("choice", "text")]


def _moves(rule: Criterion, base: dict[str, object]) -> Iterator[str]:
    """Yield where the bands step along another number: the sizes and dates of a table's rows."""
    constants = {name: value for name, value in base.items() if name != rule.deciding_input}
    for asked in _others(rule):
        values = tried(asked, base)
        found = [_bands_of(rule, {**constants, asked.name: value}) for value in values]
        rest = listed({name: value for name, value in constants.items() if name != asked.name})
        for place in _steps_between(found):
            edge = _step_at(rule, constants, asked, (values[place], values[place + 1]))
            yield f"bands step at {asked.name} | {rest} | {written(edge)}"


def _steps_between(found: list[object]) -> list[int]:
    """Return the places after which the bands change, where they are the same for a while."""
    flat = [first == second for first, second in pairwise(found)]
    ends = range(len(flat))
    return [place for place in ends if not flat[place] and any(flat[max(0, place - 1) : place + 2])]


def _step_at(
    rule: Criterion, constants: dict[str, object], asked: Field, ends: tuple[object, object]
) -> object:
    """Return the first value at which the bands are no longer those of the lower end."""
    before = _bands_of(rule, {**constants, asked.name: ends[0]})
    return first_other(
        *ends, lambda value: _bands_of(rule, {**constants, asked.name: value}) == before
    )


def _bands_of(rule: Criterion, case: dict[str, object]) -> Bands | None:
    """Return the bands of a case, None where it is refused."""
    try:
        return rule.bands_for(case)
    except CannotJudge:
        return None


def _band_lines(rule: Criterion, case: dict[str, object]) -> Iterator[str]:
    """Yield one line a band, or why there are none."""
    try:
        bands = rule.bands_for(case)
    except CannotJudge as refusal:
        yield f"bands of {listed(case)} | refused: {refusal}"
        return
    if bands is not None:
        yield from _steps(bands, f"bands of {listed(case)}")


def _steps(bands: Bands, of: str) -> Iterator[str]:
    """Yield the bands in rising order."""
    for place, step in enumerate(bands.bands, 1):
        end = (
            "without end"
            if step.upto is None
            else f"{'to' if step.closed else 'below'} {written(float(step.upto))}"
        )
        answer = f"{step.band} | {written(step.rating)} | {step.meaning}"
        yield f"{of} | {place} {end} {bands.unit} | {answer}"
