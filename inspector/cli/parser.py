"""The command line: which commands there are, and how each ends.

A command ends with 0 on success, with 2 on wrong use and with 1 on failure, which one clear
sentence on standard error then explains.
"""

import argparse
import sys
from collections.abc import Sequence

from inspector import __version__
from inspector.values.errors import InspectorError


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command.

    Parameters
    ----------
    arguments : sequence of str, optional
        Without it, those of the process.

    Returns
    -------
    int
        The exit code.
    """
    options = _parser().parse_args(arguments)
    try:
        return options.run(options) or 0
    except InspectorError as problem:
        _print_error(str(problem))
    except KeyboardInterrupt:
        _print_error("stopped.")
    except BrokenPipeError:
        # Whoever reads the output, such as `head`, has seen enough.
        return 0
    except OSError as problem:
        place = problem.filename or "the system"
        _print_error(f"{place}: {problem.strerror or problem}.")
    return 1


def _print_error(sentence: str) -> None:
    print(f"inspector: {sentence}", file=sys.stderr)


def _parser() -> argparse.ArgumentParser:
    """Return the parser of all commands."""
    # Imported here, so that --version needs nothing but the standard library.
    from inspector.cli import (
        checklist_commands,
        criteria_commands,
        decision_commands,
        inspection_commands,
        report_commands,
        serving_commands,
    )

    parser = argparse.ArgumentParser(
        prog="inspector",
        description="Walk a used workboat, judge what is read, send the condition report.",
    )
    parser.add_argument("--version", action="version", version=__version__)
    commands = parser.add_subparsers(dest="command", required=True, metavar="COMMAND")
    # In the order of the job: begin, look after, report, decide, look up.
    serving_commands.add_to(commands)
    inspection_commands.add_to(commands)
    report_commands.add_to(commands)
    decision_commands.add_to(commands)
    criteria_commands.add_to(commands)
    checklist_commands.add_to(commands)
    return parser
