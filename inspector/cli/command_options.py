"""What several commands share: their options, and the data folder that these name."""

from argparse import ArgumentParser, Namespace
from collections.abc import Callable
from pathlib import Path

from inspector import places
from inspector.record.inspection import Inspection
from inspector.services.data_folder import DataFolder, open_folder
from inspector.values.vocabulary import UNIT_SYSTEMS

PAPERS = ("a4", "letter")


def add_command(
    commands, name: str, run: Callable[[Namespace], int | None], text: str, *shared: ArgumentParser
) -> ArgumentParser:
    """Add one command.

    Parameters
    ----------
    commands : argparse action
        What ``add_subparsers`` returned.
    name : str
    run : callable
        Receives the options that were read; returns the exit code, None for 0.
    text : str
        One line for the help.
    *shared : ArgumentParser
        Options that several commands have.

    Returns
    -------
    ArgumentParser
        To which the command's own arguments are added.
    """
    parser = commands.add_parser(name, help=text, description=text, parents=list(shared))
    parser.set_defaults(run=run)
    return parser


def data_option() -> ArgumentParser:
    """The option that names the data folder."""
    options = ArgumentParser(add_help=False)
    text = f"data folder (default: {places.user_data()})"
    options.add_argument("--data", type=Path, default=None, help=text)
    return options


def json_option() -> ArgumentParser:
    """The option for output that a program reads."""
    options = ArgumentParser(add_help=False)
    options.add_argument("--json", action="store_true", help="print JSON")
    return options


def pdf_options() -> ArgumentParser:
    """The options of a PDF: its file, the reader's units, the paper."""
    options = ArgumentParser(add_help=False)
    options.add_argument("--out", type=Path, required=True)
    options.add_argument("--units", choices=UNIT_SYSTEMS, default="si")
    options.add_argument("--paper", choices=PAPERS, default="a4")
    return options


def folder_path(options: Namespace, usual: Path | None = None) -> Path:
    """The data folder that was named, else the usual one."""
    return (options.data or usual or places.user_data()).expanduser().resolve()


def opened_folder(options: Namespace) -> DataFolder:
    """The data folder that was named, open."""
    return open_folder(folder_path(options))


def opened_inspection(options: Namespace) -> tuple[DataFolder, Inspection]:
    """The data folder, open, and the inspection whose id was given."""
    data = opened_folder(options)
    return data, data.inspections.get(options.id)
