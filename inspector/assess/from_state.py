"""The state of an inspection -> its record, read once.

Entries may come from another device or an older version: what does not fit is left out and never
raises.
"""

from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from inspector.assess.recorded import (
    CERTIFICATES,
    LIMITS,
    READING,
    SHEET,
    Answered,
    RecordedInspection,
    RecordedSheet,
    Unit,
)
from inspector.record.entry import Entry
from inspector.record.state import State
from inspector.record.typed_values import as_texts, texts, typed_text, typed_unit
from inspector.values.vocabulary import (
    DEPTHS,
    NOT_FITTED,
    NOT_SEEN,
    RATINGS,
    SOMETHING_SEEN,
    WALKED_PAST,
)


def read_inspection(state: State) -> RecordedInspection:
    """Read an inspection from its state.

    Parameters
    ----------
    state : State
        What is recorded of the inspection.

    Returns
    -------
    RecordedInspection
        Good until something more is recorded.
    """
    photos = _by_id(state, "photo/")
    return RecordedInspection(
        vessel=texts(state, "vessel"),
        brief=texts(state, "brief"),
        inspection=texts(state, "inspection"),
        settings=texts(state, "settings"),
        limits=read_limits(state),
        units=read_units(state),
        sheets={subject: _sheet(state, subject) for subject in state.subjects(SHEET)},
        findings=_by_id(state, "finding/"),
        photos=photos,
        work_lines=_by_id(state, "scope/"),
        line_numbers=_line_numbers(state),
        photographers={digest: _author(state, f"photo/{digest}")[0] for digest in photos},
        decisions=_decisions(state),
        rows=read_rows(state),
        ratings_by_person=_ratings_by_person(state),
        disputes=sum(1 for _ in state.disputes()),
    )


def read_units(state: State) -> tuple[Unit, ...]:
    """Read the units that are on board and have a name.

    Parameters
    ----------
    state : State
        What is recorded of the inspection.

    Returns
    -------
    tuple of Unit
        In the order in which they were entered.
    """
    return tuple(_units(state))


def _units(state: State) -> Iterator[Unit]:
    for subject in state.existing("unit/"):
        _, system, unit = subject.split("/")
        fields = texts(state, subject)
        # Without a name nobody could tell which unit is meant.
        if "name" in fields:
            kind, space = fields.get("kind", ""), fields.get("space", "")
            yield Unit(system, unit, fields["name"], kind, space, _walked_past(state, subject))


def _walked_past(state: State, subject: str) -> str:
    """What was seen in passing; of two who differ, the one who saw something."""
    # Of two people who disagree the one who saw something counts.
    given = {typed_text(head.value) for head in state.heads(subject, "walked_past")}
    known = [word for word in WALKED_PAST if word in given]
    return SOMETHING_SEEN if SOMETHING_SEEN in known else next(iter(known), "")


def read_limits(state: State) -> dict[str, dict[str, str]]:
    """Read the limits that the surveyor set for this inspection.

    Parameters
    ----------
    state : State
        What is recorded of the inspection.

    Returns
    -------
    dict of str to dict
        Criterion -> field -> text; the field "source" names the text they are taken from.
    """
    return {
        subject.removeprefix(LIMITS): as_texts(state.values(subject))
        for subject in state.subjects(LIMITS)
    }


def read_rows(state: State) -> dict[str, dict[str, dict[str, Any]]]:
    """Read the rows of all tables of particulars, and the certificates as one table more.

    Parameters
    ----------
    state : State
        What is recorded of the inspection.

    Returns
    -------
    dict of str to dict
        Table -> row id -> field -> value as typed, the oldest row first by its first entry.
    """
    tables: dict[str, dict[str, dict[str, Any]]] = {}
    # Kept as typed, unit and all: conversion reads each cell by its own field and names what is
    # wrong.
    for subject in (*state.existing("row/"), *state.existing("certificate/")):
        *path, row_id = subject.split("/")
        table = path[1] if len(path) > 1 else CERTIFICATES
        tables.setdefault(table, {})[row_id] = _without_mark(state.values(subject))
    return tables


def read_readings(state: State, subject: str) -> dict[str, Any]:
    """Read the readings of one sheet.

    Parameters
    ----------
    state : State
        What is recorded of the inspection.
    subject : str
        The sheet, "sheet/<system>/<unit>/<check>".

    Returns
    -------
    dict of str to Any
        Reading id -> as typed, without those that were cleared.
    """
    return _readings(state.values(subject))


def _readings(values: Mapping[str, Any]) -> dict[str, Any]:
    return {
        name.removeprefix(READING): value
        for name, value in values.items()
        if name.startswith(READING)
    }


def _by_id(state: State, prefix: str) -> dict[str, dict[str, str]]:
    """Id -> texts of the subjects of one sort, the oldest first."""
    return {
        subject.removeprefix(prefix): texts(state, subject) for subject in state.existing(prefix)
    }


def _line_numbers(state: State) -> dict[str, int]:
    """Id of a work line -> its number for the yard, which never changes.

    A line that was taken out keeps its number, since a yard may have priced the list with it.
    """
    in_order = state.oldest_first("scope/")
    return {subject.removeprefix("scope/"): number for number, subject in enumerate(in_order, 1)}


def _decisions(state: State) -> dict[str, dict[str, str]]:
    return {
        subject.removeprefix("verdict/"): texts(state, subject)
        for subject in state.subjects("verdict/")
    }


def _without_mark(values: Mapping[str, Any]) -> dict[str, Any]:
    # A row that was brought back still carries the emptied mark of having been taken out.
    return {name: value for name, value in values.items() if name != "gone"}


def _sheet(state: State, subject: str) -> RecordedSheet:
    values = state.values(subject)
    disputed = [name for name in state.fields(subject) if state.disputed(subject, name)]
    who, when = _author(state, subject)
    return RecordedSheet(
        answer=answer_of(values.get("rating")),
        readings=_readings(values),
        depth=depth_of(values.get("depth")),
        note=typed_text(values.get("note")),
        overruled_because=typed_text(values.get("overruled_because")),
        as_unit=typed_text(values.get("as_unit")),
        gate=_gate(values.get("gate")),
        who=who,
        when=when,
        answers=_answers(state, subject, disputed),
        heads={name: tuple(head.value for head in state.heads(subject, name)) for name in disputed},
    )


def answer_of(value: Any) -> str:
    """Return the answer to a check, "" for a word that no version has recorded."""
    text = typed_text(value)
    # Anything else was written by something that does not know our words, and is no answer.
    return text if text in (*RATINGS, NOT_FITTED) or text.startswith(NOT_SEEN) else ""


def depth_of(value: Any) -> str:
    """Return the depth of an answer, "" for a word that no version has recorded."""
    text = typed_text(value)
    return text if text in DEPTHS else ""


def _gate(value: Any) -> dict[str, str]:
    """The answers at an enclosed space, without empty ones."""
    if not isinstance(value, Mapping):
        return {}
    answers = {str(name): typed_text(answer) for name, answer in value.items()}
    return {name: answer for name, answer in answers.items() if answer}


def _answers(state: State, subject: str, disputed: Sequence[str]) -> tuple[Answered, ...]:
    """Every current answer of the fields on which two people differ."""
    return tuple(
        Answered(name, _answer_text(head.value), head.who, head.at)
        for name in disputed
        for head in state.heads(subject, name)
    )


def _answer_text(value: Any) -> str:
    """An answer in words, as a person compares it with another one."""
    if isinstance(value, Mapping) and "value" not in value:
        return ", ".join(f"{name} {typed_text(answer)}" for name, answer in value.items())
    return f"{typed_text(value)} {typed_unit(value)}".strip() or "cleared"


def _author(state: State, subject: str) -> tuple[str, str]:
    """Who gave the current rating and when, else who wrote last."""
    heads = state.heads(subject, "rating")
    if not heads:
        heads = [head for name in state.fields(subject) for head in state.heads(subject, name)]
    if not heads:
        return "", ""
    last = max(heads, key=lambda head: (head.at, head.id))
    return last.who, last.at


def _ratings_by_person(state: State) -> dict[str, dict[str, str]]:
    """Sheet -> person -> the last rating that each person gave independently."""
    found = {subject: _own_ratings(state, subject) for subject in state.subjects(SHEET)}
    return {subject: ratings for subject, ratings in found.items() if ratings}


def _own_ratings(state: State, subject: str) -> dict[str, str]:
    """Person -> last rating of one sheet. An entry without a name does not count.

    Who settles a disagreement has both answers before him: that rating, and any later one of his,
    is no second opinion.
    """
    history = state.history(subject, "rating")
    by_id = {entry.id: entry for entry in history}
    ratings: dict[str, Any] = {}
    settled = set()
    for entry in history:
        who = entry.who.strip()
        replaced = [by_id[entry_id] for entry_id in entry.replaces if entry_id in by_id]
        if who and _settles(replaced):
            settled.add(who)
        # Who has settled a dispute speaks for both from then on: that is no rating of his own any
        # more.
        elif who and who not in settled:
            ratings[who] = entry.value
    return {who: rating for who, rating in ratings.items() if rating in RATINGS}


def _settles(replaced: Sequence[Entry]) -> bool:
    """Whether an entry that replaces these ends a disagreement: they are several and unlike."""
    return any(entry.value != replaced[0].value for entry in replaced[1:])
