"""The commands on criteria: one reading judged, and the table of every criterion."""

import json
from argparse import Namespace
from dataclasses import asdict

from inspector.checklists.registry import CRITERIA, criterion, mark_table
from inspector.cli.command_options import add_command, json_option
from inspector.criteria.core.criterion import Criterion
from inspector.criteria.core.judgement import Judgement
from inspector.values.errors import InspectorError
from inspector.values.formatting import show


def add_to(commands) -> None:
    """Add the commands of this module."""
    text = "judge one reading: name=value for each input"
    command = add_command(commands, "judge", judge, text, json_option())
    command.add_argument("criterion")
    command.add_argument("values", nargs="*", metavar="name=value")
    text = "every criterion with inputs, source and mark"
    add_command(commands, "criteria", list_criteria, text, json_option())


def judge(options: Namespace) -> None:
    """Judge one reading and print the judgement."""
    judgement = criterion(options.criterion).apply(_readings(options.values))
    if options.json:
        print(json.dumps(asdict(judgement), ensure_ascii=False, indent=1, default=str))
        return
    # Some criteria report and do not rate, such as a check digit that fits.
    print(f"{(judgement.rating or 'no rating').capitalize()}: {judgement.sentence}")
    if judgement.limit is not None:
        print(_limit_line(judgement))
    source = judgement.source
    cited = (source.title, source.edition, source.clause, source.mark)
    print(f"Source: {', '.join(part for part in cited if part)}")
    for note in judgement.notes:
        print(f"- {note}")


def _readings(pairs: list[str]) -> dict[str, str]:
    """Read "name=value" pairs; the first that is none is refused."""
    readings = {}
    for pair in pairs:
        # At the first "=": a choice may have another one in it.
        name, separator, value = pair.partition("=")
        if not name or not separator:
            sentence = f"{pair!r} is not name=value; an example is temperature=-18."
            raise InspectorError(sentence)
        readings[name] = value
    return readings


def _limit_line(judgement: Judgement) -> str:
    """Return the limit of a judgement and the margin to it, both in its unit."""
    limit = f"Limit {show(judgement.limit, judgement.unit)}"
    if judgement.margin is None:
        return limit
    return f"{limit}, margin {show(judgement.margin, judgement.unit)}"


def list_criteria(options: Namespace) -> None:
    """Print every criterion."""
    table = [_as_data(each) for each in CRITERIA.values()]
    if options.json:
        print(json.dumps(table, ensure_ascii=False, indent=1))
        return
    for row in table:
        print(_criterion_text(row))
    print(f"\n{mark_table()}")


def _as_data(rule: Criterion) -> dict:
    """Return a criterion as plain values, for JSON and for the printed list."""
    inputs = [
        {
            "name": field.name,
            "unit": field.unit or field.kind,
            "choices": list(field.choices),
            "optional": field.optional,
        }
        for field in rule.inputs
    ]
    return {
        "name": rule.name,
        "title": rule.title,
        "inputs": inputs,
        "source": rule.source.title,
        "edition": rule.source.edition,
        "clause": rule.source.clause,
        "mark": rule.source.mark,
        "range": rule.range_text,
        "checked": rule.checked,
    }


def _criterion_text(row: dict) -> str:
    """Return one criterion as the lines of the printed list."""
    inputs = []
    for field in row["inputs"]:
        optional = " optional" if field["optional"] else ""
        inputs.append(f"{field['name']} [{field['unit']}]{optional}")
    source = f"{row['source']}, {row['edition']}, {row['clause']} ({row['mark']})"
    lines = (
        f"{row['name']}: {row['title']}",
        f"    inputs: {', '.join(inputs)}",
        f"    source: {source}",
        f"    range: {row['range']}",
        f"    checked: {row['checked']}",
    )
    return "\n".join(lines)
