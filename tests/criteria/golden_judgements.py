"""What each criterion answers: fixed cases, and each value at which the answer changes."""

import hashlib
import random
import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import partial

from inspector.criteria.core.criterion import Criterion
from inspector.criteria.core.judgement import CannotJudge, Judgement
from inspector.values.field import Field
from tests.criteria.golden_values import (
    STARTS,
    base_values,
    choice_cases,
    first_other,
    listed,
    random_case,
    tried,
    written,
)

CASES = 5
TRIES = 40
# a rule with many combinations of choices gets fewer cases for each
MANY_CHOICES = 20
# a code, a grade or a count of months is a step and no running number, so each stays in the words
STEPPED = re.compile(r"\d+/\d+/\d+|\d+ months|grade [\d.]+")
# between two neighbouring values; more would be a running number that looks like a step
MOST_EDGES = 6
NUMBERS = re.compile(r"[-−]?\d[\d.,:\s\u00a0\u202f]*")
MONTHS = re.compile(
    r"\b(?:January|February|March|April|May|June|July|August|September|October|November|December)\b"
)


@dataclass(frozen=True)
class Answer:
    """A judgement or a refusal: what the files show of it."""

    band: str
    rating: str | None
    numbers: tuple[object, ...]
    sentence: str
    notes: tuple[str, ...]

    @property
    def kind(self) -> tuple[object, ...]:
        """What must change for an edge: band, rating, and the words without their numbers."""
        words = " ".join((self.sentence, *self.notes))
        return (
            self.band,
            self.rating,
            MONTHS.sub("#", NUMBERS.sub("#", words)),
            tuple(STEPPED.findall(words)),
        )

    @property
    def digest(self) -> str:
        """A short mark that changes with any word or figure of sentence and notes."""
        # the limit set's sentence names every limit of the criterion: one changed limit would mark
        # all cases
        notes = [note for note in self.notes if not note.startswith("Profile used: ")]
        return _digest(self.sentence, *notes)

    def shown(self) -> str:
        """Return the answer on one line."""
        numbers = " | ".join(written(number) for number in self.numbers)
        return f"{self.band} | {written(self.rating)} | {numbers} | {self.digest}"


def _digest(*texts: str) -> str:
    """Return eight hexadecimal digits of the texts."""
    return hashlib.sha256("\n".join(texts).encode()).hexdigest()[:8]


def answer(rule: Criterion, case: Mapping[str, object]) -> Answer:
    """Return what a rule answers to a case."""
    try:
        return _of_judgement(rule.apply(case))
    except CannotJudge as refusal:
        return Answer("refused", None, (), str(refusal), ())


def _of_judgement(judged: Judgement) -> Answer:
    """Return the parts of a judgement that the files show."""
    numbers = (_number(judged.value), _number(judged.limit), _number(judged.margin), judged.unit)
    return Answer(judged.band, judged.rating, numbers, judged.sentence, judged.notes)


def _number(value: object) -> object:
    """Return a number as a float, so that 2 and 2.0 are written the same; what is none as it is."""
    return float(value) if isinstance(value, int) and not isinstance(value, bool) else value


def judgement_lines(rule: Criterion, valid: Mapping[str, object]) -> list[str]:
    """Return all lines of a criterion: its cases and edges, and one full sentence for each band."""
    lines: list[str] = []
    said: dict[str, Answer] = {}
    combinations = choice_cases(rule)
    many = len(combinations) > MANY_CHOICES
    cases = _cases_each(combinations)
    for choices in combinations:
        for case in _cases(rule, {**base_values(rule, valid), **choices}, choices, cases):
            found = answer(rule, case)
            said.setdefault(found.band, found)
            lines.append(f"case {listed(case)} | {found.shown()}")
        lines += _edges(rule, {**base_values(rule, valid), **choices}, choices, many)
    lines += [line for found in said.values() for line in _full(found)]
    return sorted({f"{rule.name} | {line}" for line in lines})


def cases_of(rule: Criterion, valid: Mapping[str, object]) -> Iterator[dict[str, object]]:
    """Yield the cases of a criterion that the files show, without the edges."""
    combinations = choice_cases(rule)
    for choices in combinations:
        base = {**base_values(rule, valid), **choices}
        yield from _cases(rule, base, choices, _cases_each(combinations))


def _cases_each(combinations: list[dict[str, object]]) -> int:
    """Return how many cases beside the base each combination of choices gets."""
    return 1 if len(combinations) > MANY_CHOICES else CASES


def _full(found: Answer) -> list[str]:
    """Return sentence and notes of one answer, a line each."""
    notes = [f"notes of {found.band} {place} | {note}" for place, note in enumerate(found.notes, 1)]
    return [f"sentence of {found.band} | {found.sentence}", *notes]


def _cases(
    rule: Criterion, base: dict[str, object], choices: Mapping[str, object], count: int
) -> Iterator[dict[str, object]]:
    """Yield the base case and some others, the same ones each time."""
    source = random.Random(f"{rule.name} {listed(choices)}")
    yield base
    for _ in range(count):
        yield random_case(rule, base, choices, source)


def _edges(
    rule: Criterion, base: dict[str, object], choices: Mapping[str, object], many: bool
) -> Iterator[str]:
    """Yield the edges along each number and date, from the base case and mostly another."""
    starts = [base, *({**base, **changes} for changes in STARTS.get(rule.name, ()))]
    other = None if many else _other_start(rule, base, choices)
    for start in [*starts, other] if other else starts:
        for asked in rule.inputs:
            if asked.kind not in ("choice", "text"):
                yield from _along(rule, start, asked)


def _other_start(
    rule: Criterion, base: dict[str, object], choices: Mapping[str, object]
) -> dict[str, object] | None:
    """Return a case with every value given that the rule judges, or None where none is found."""
    source = random.Random(f"start {rule.name} {listed(choices)}")
    for _ in range(TRIES):
        case = random_case(rule, base, choices, source)
        given = all(case[asked.name] is not None for asked in rule.inputs if asked.kind != "choice")
        if given and answer(rule, case).band != "refused":
            return case
    return None


def _along(rule: Criterion, start: dict[str, object], asked: Field) -> Iterator[str]:
    """Yield the edges along one input, and a mark of all answers on the way."""
    others = listed({name: value for name, value in start.items() if name != asked.name})
    values = tried(asked, start)
    found = [answer(rule, {**start, asked.name: value}) for value in values]
    yield f"along {asked.name} | {others} | {_digest(*(one.shown() for one in found))}"
    for place in range(1, len(values)):
        if found[place - 1].kind != found[place].kind:
            for edge, before, after in _edges_between(
                rule, start, asked, values[place - 1 : place + 1]
            ):
                changed = f"{before} -> {after}" if before != after else f"{before}, in other words"
                yield f"edge of {asked.name} | {others} | {written(edge)} | {changed}"


def _edges_between(
    rule: Criterion, start: dict[str, object], asked: Field, ends: list[object]
) -> Iterator[tuple[object, str, str]]:
    """Yield each value between two at which the answer changes, with the bands before and after."""
    low, high = ends
    last = answer(rule, {**start, asked.name: high})
    for _ in range(MOST_EDGES):
        before = answer(rule, {**start, asked.name: low})
        if before.kind == last.kind:
            return
        low = first_other(low, high, partial(_same, rule, start, asked, before))
        yield low, _named(before), _named(answer(rule, {**start, asked.name: low}))


def _same(
    rule: Criterion, start: dict[str, object], asked: Field, before: Answer, value: object
) -> bool:
    """Return whether the answer to a value is of the same kind as before."""
    return answer(rule, {**start, asked.name: value}).kind == before.kind


def _named(found: Answer) -> str:
    """Return band and rating of an answer."""
    return f"{found.band}, {written(found.rating)}"
