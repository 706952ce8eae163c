"""The commands that help to decide: what the conversion does, and the looks left on board."""

import json
from argparse import Namespace
from collections.abc import Iterator
from datetime import date

from inspector.cli.command_options import add_command, data_option, json_option, opened_inspection
from inspector.values.cell_text import NOT_KNOWN, cell_text, table_cell_text
from inspector.values.errors import InspectorError
from inspector.values.formatting import show


def add_to(commands) -> None:
    """Add the commands of this module."""
    data = data_option()
    text = "what the conversion does: range, stability, power, space, money, papers"
    command = add_command(commands, "convert", convert, text, data, json_option())
    command.add_argument("id")
    text = "what is still worth the minutes left on board"
    command = add_command(commands, "next", next_looks, text, data)
    command.add_argument("id")
    command.add_argument("--minutes", type=float, required=True)
    text = "id of the space where the surveyor is"
    command.add_argument("--here", default="", help=text)


def convert(options: Namespace) -> None:
    """Print every chapter: the answer, figures with their spans, warnings and what is missing."""
    from inspector.conversion.contents import convert as chapters_of
    from inspector.report.figure_text import chapter_data

    data, inspection = opened_inspection(options)
    chapters = chapters_of(data.assessment_of(inspection), date.today())
    if options.json:
        plain = [chapter_data(chapter) for chapter in chapters]
        print(json.dumps(plain, ensure_ascii=False, indent=1, default=str))
        return
    for chapter in chapters:
        print(f"{chapter.title}\n    {cell_text(chapter.answer)}")
        for line in _chapter_lines(chapter):
            print(f"    {line}")


def _chapter_lines(chapter) -> Iterator[str]:
    """Yield a chapter's figures, warnings, faults and gaps, a line each."""
    for figure in chapter.figures:
        ends = " / ".join(table_cell_text(end) for end in figure.ends)
        yield f"{figure.name}: {ends if figure.known else NOT_KNOWN}"
    for sentence in (*chapter.warnings, *chapter.faults):
        yield cell_text(sentence)
    for gap in chapter.gaps:
        yield f"missing: {gap.name}: {cell_text(gap.why)}"
    if chapter.verify:
        yield cell_text(chapter.verify)


def next_looks(options: Namespace) -> None:
    """Print what is still worth the minutes left on board."""
    from inspector.services.visit.looks_left import looks_left

    data, inspection = opened_inspection(options)
    spaces = sorted({result.space for result in _results(data.assessment_of(inspection))} - {""})
    if options.here and options.here not in spaces:
        known = ", ".join(spaces) or "none yet"
        # Named here, since a mistyped space would otherwise look like one where nothing is left to
        # see.
        sentence = (
            f"The space {options.here!r} is not known in this inspection; it is one of: {known}."
        )
        raise InspectorError(sentence)
    found = looks_left(data, inspection, options.minutes, options.here)
    for advice in found.advice:
        print(f"{advice.look.label}\n    {advice.sentence}")
    spent, left = show(found.minutes, ""), show(options.minutes, "")
    print(found.why or f"{spent} of {left} minutes, walks included.")
    if found.joint:
        print(found.joint)


def _results(assessment) -> Iterator:
    """Yield the results of all checks, on every unit of every system."""
    for system in assessment.systems:
        for unit in system.units:
            yield from unit.results
