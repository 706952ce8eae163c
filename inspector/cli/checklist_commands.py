"""The command that checks checklist files, shipped ones and the surveyor's own."""

from argparse import Namespace
from pathlib import Path

from inspector import places
from inspector.checklists.asked import minutes_of_sheet
from inspector.checklists.loader import read_library
from inspector.checklists.model import Library, System
from inspector.cli.command_options import add_command
from inspector.values.formatting import show


def add_to(commands) -> None:
    """Add the command of this module."""
    text = "check checklist folders, name every mistake"
    command = add_command(commands, "checklists", check_checklists, text)
    command.add_argument("folder", nargs="*", type=Path)


def check_checklists(options: Namespace) -> None:
    """Check checklist folders (the shipped one by default) and print what they hold."""
    for folder in options.folder or [places.shipped("checklists")]:
        library = read_library(folder, check_criteria=True)
        systems = library.systems.values()
        for system in systems:
            print(_system_line(system, library))
        for rule in library.criteria.values():
            print(f"{rule.name}: {rule.title}, {rule.source.mark}")
        checks = sum(len(system.checks) for system in systems)
        minutes = sum(minutes_of_sheet(system, library) for system in systems)
        shown = show(minutes, "min")
        print(f"{folder}: {checks} checks, {shown} for one unit of each, no mistakes.")


def _system_line(system: System, library: Library) -> str:
    """Return how many checks a system has, and how long they take for each of its units."""
    basis = "with one unit of each kind" if system.kinds else "a unit"
    minutes = minutes_of_sheet(system, library)
    return f"{system.name}: {len(system.checks)} checks, {show(minutes, 'min')} {basis}"
