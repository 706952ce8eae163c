"""The commands that write for readers: the report, the yard's list, the comparison of several."""

import sys
from argparse import Namespace
from datetime import date
from pathlib import Path

from inspector.cli.command_options import (
    PAPERS,
    add_command,
    data_option,
    opened_folder,
    opened_inspection,
    pdf_options,
)
from inspector.values.cell_text import figure
from inspector.values.errors import InspectorError

# Poor or failed checks without a finding that are named one by one.
MOST_NAMED = 12


def add_to(commands) -> None:
    """Add the commands of this module."""
    shared = (data_option(), pdf_options())
    text = "write the condition report of one inspection"
    command = add_command(commands, "report", report, text, *shared)
    command.add_argument("id")
    extent = command.add_mutually_exclusive_group()
    text = "without every single reading and rating"
    extent.add_argument("--short", action="store_true", help=text)
    text = "the client's two pages alone, with the page numbers of the whole report"
    extent.add_argument("--summary", action="store_true", help=text)
    text = "write the work lines of one inspection as a list that a yard prices (.pdf, .xlsx)"
    command = add_command(commands, "scope", scope, text, data_option())
    command.add_argument("id")
    command.add_argument("--out", type=Path, required=True)
    command.add_argument("--paper", choices=PAPERS, default="a4")
    command.add_argument("--estimate", action="store_true", help="with our own costs")
    text = "candidates against one brief, as a PDF"
    command = add_command(commands, "compare", compare, text, *shared)
    command.add_argument("ids", nargs="+", metavar="ID")


def report(options: Namespace) -> None:
    """Write the condition report."""
    from inspector.services.files.report_files import bad_checks_without_finding, make_report

    data, inspection = opened_inspection(options)
    without = bad_checks_without_finding(data, inspection)
    for _, named in without[:MOST_NAMED]:
        print(f"No finding is about {named}.", file=sys.stderr)
    if len(without) > MOST_NAMED:
        print(f"Nor about {len(without) - MOST_NAMED} more; the report names all.", file=sys.stderr)
    make_report(
        data,
        inspection,
        options.out,
        paper=options.paper,
        units=options.units,
        extent="short" if options.short else "summary" if options.summary else "whole",
    )
    print(f"Written: {options.out}")


def scope(options: Namespace) -> None:
    """Write the yard's list."""
    from inspector.services.files.report_files import make_scope

    data, inspection = opened_inspection(options)
    make_scope(data, inspection, options.out, paper=options.paper, with_estimate=options.estimate)
    print(f"Written: {options.out}")


def compare(options: Namespace) -> None:
    """Write the comparison of several inspections, and print their ranking."""
    from inspector.conversion.comparison.scores import WEIGHTS
    from inspector.report.comparison_report import build
    from inspector.services.comparison import comparison

    # One candidate has a report; a ranking of one says nothing.
    if len(options.ids) < 2:
        raise InspectorError(
            "A comparison needs at least two inspections; `inspector list` shows their ids."
        )
    found = comparison(opened_folder(options), options.ids, WEIGHTS)
    build(
        found,
        options.out,
        paper=options.paper,
        units=options.units,
        made_at=date.today().isoformat(),
    )
    for place in found.ranking.places:
        total = place.total
        low, high = (figure(end, "", digits=0) for end in (total.low, total.high))
        score = figure(total.middle, "", digits=1)
        print(f"{place.rank}. {place.name}: {score} of 100, between {low} and {high}")
    print(f"Written: {options.out}")
