"""The commands. Each ends with 0 on success, 2 on wrong use, 1 on failure with one clear sentence on standard error."""

import argparse
import sys
from collections.abc import Sequence
from pathlib import Path

from inspector import __version__, places
from inspector.errors import InspectorError


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command; the value is the exit code."""
    options = _parser().parse_args(arguments)
    try:
        return options.run(options) or 0
    except InspectorError as problem:
        print(f"inspector: {problem}", file=sys.stderr)
    except KeyboardInterrupt:
        print("inspector: stopped.", file=sys.stderr)
    except BrokenPipeError:
        return 0
    except OSError as problem:
        print(f"inspector: {problem.filename or 'the system'}: {problem.strerror or problem}.", file=sys.stderr)
    return 1


def _parser() -> argparse.ArgumentParser:
    from inspector import commands

    parser = argparse.ArgumentParser(prog="inspector", description="Walk a used workboat, judge what is read, send the condition report.")
    parser.add_argument("--version", action="version", version=__version__)
    kinds = parser.add_subparsers(dest="command", required=True, metavar="COMMAND")
    data = argparse.ArgumentParser(add_help=False)
    data.add_argument("--data", type=Path, default=None, help=f"data folder (default: {places.user_data()})")
    json = argparse.ArgumentParser(add_help=False)
    json.add_argument("--json", action="store_true", help="print JSON")

    def add(name: str, run, text: str, *parents: argparse.ArgumentParser) -> argparse.ArgumentParser:
        one = kinds.add_parser(name, help=text, description=text, parents=list(parents))
        one.set_defaults(run=run)
        return one

    for name, run, text in (("serve", commands.serve, "start, and open the browser"), ("demo", commands.demo, "the same on an invented portfolio")):
        one = add(name, run, text, data)
        one.add_argument("--port", type=int, default=None, help="port (default: 5731, another if that is taken)")
        one.add_argument("--no-browser", action="store_true", help="do not open the browser")
    add("list", commands.list_all, "inspections with condition, coverage and verdicts", data, json)
    one = add("report", commands.report, "write the condition report of one inspection", data)
    one.add_argument("id")
    one.add_argument("--out", type=Path, required=True)
    one.add_argument("--units", choices=("si", "us"), default="si")
    one.add_argument("--paper", choices=("a4", "letter"), default="a4")
    one = add("export", commands.export, "one inspection as a bundle", data)
    one.add_argument("id")
    one.add_argument("--out", type=Path, required=True)
    add("import", commands.take_in, "take a bundle in, by union", data).add_argument("bundle", type=Path)
    one = add("judge", commands.judge, "judge one reading: name=value for each input", json)
    one.add_argument("criterion")
    one.add_argument("values", nargs="*", metavar="name=value")
    add("criteria", commands.criteria, "every criterion with inputs, source and mark", json)
    add("checklists", commands.checklists, "check checklist folders, name every mistake").add_argument("folder", nargs="*", type=Path)
    add("verify", commands.verify, "integrity of journals and photos", data).add_argument("id", nargs="?")
    return parser
