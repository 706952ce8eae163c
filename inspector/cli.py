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
    from inspector import commands, deciding

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

    add("serve", commands.serve, "start, and open the browser", data, _started())
    add("demo", commands.demo, "the same on an invented portfolio", data, _started())
    add("list", commands.list_all, "inspections with condition, coverage and verdicts", data, json)
    one = add("report", commands.report, "write the condition report of one inspection", data, _printed())
    one.add_argument("id")
    one.add_argument("--short", action="store_true", help="without every single reading and rating")
    add("compare", deciding.compare, "candidates against one brief, as a PDF", data, _printed()).add_argument("ids", nargs="+", metavar="ID")
    add("convert", deciding.convert, "what the conversion does: range, stability, power, space, money, papers", data, json).add_argument("id")
    one = add("next", deciding.next_look, "what is still worth the minutes left on board", data)
    one.add_argument("id")
    one.add_argument("--minutes", type=float, required=True)
    one.add_argument("--here", default="", help="id of the space where one stands")
    one = add("export", deciding.export, "one inspection as a bundle (.zip) or as tables (.xlsx, .csv, .json)", data)
    one.add_argument("id")
    one.add_argument("--out", type=Path, required=True)
    add("import", commands.take_in, "take in a bundle, or what a device saved, by union", data).add_argument("file", type=Path)
    one = add("judge", commands.judge, "judge one reading: name=value for each input", json)
    one.add_argument("criterion")
    one.add_argument("values", nargs="*", metavar="name=value")
    add("criteria", commands.criteria, "every criterion with inputs, source and mark", json)
    add("checklists", commands.checklists, "check checklist folders, name every mistake").add_argument("folder", nargs="*", type=Path)
    add("verify", commands.verify, "integrity of journals and photos", data).add_argument("id", nargs="?")
    return parser


def _started() -> argparse.ArgumentParser:
    options = argparse.ArgumentParser(add_help=False)
    options.add_argument("--port", type=int, default=None, help="port (default: 5731, another if that is taken)")
    options.add_argument("--no-browser", action="store_true", help="do not open the browser")
    options.add_argument("--share", action="store_true", help="let phones and tablets on the same network join, by a code")
    options.add_argument("--address", default=None, help="with --share: the one address of this computer to share on")
    options.add_argument("--mode", choices=("basic", "full"), default=None, help="with --share: basic (http) or full (https)")
    return options


def _printed() -> argparse.ArgumentParser:
    options = argparse.ArgumentParser(add_help=False)
    options.add_argument("--out", type=Path, required=True)
    options.add_argument("--units", choices=("si", "us"), default="si")
    options.add_argument("--paper", choices=("a4", "letter"), default="a4")
    return options
