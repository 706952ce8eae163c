"""The commands on inspections as they are kept: list, export, import, backup, restore, verify."""

import json
import math
import sys
from argparse import Namespace
from pathlib import Path

from inspector.cli.command_options import (
    add_command,
    data_option,
    folder_path,
    json_option,
    opened_folder,
    opened_inspection,
)
from inspector.record import folder_lock
from inspector.services.data_folder import DataFolder
from inspector.services.files.export_file import export
from inspector.services.import_file import import_file
from inspector.services.integrity import check_integrity, take_in_kept_aside
from inspector.services.shelf import Shelf
from inspector.values.errors import InspectorError
from inspector.values.formatting import ONE_FIGURE, show


def add_to(commands) -> None:
    """Add the commands of this module."""
    data = data_option()
    text = "inspections with condition, coverage and verdicts"
    add_command(commands, "list", list_inspections, text, data, json_option())
    text = "one inspection as a bundle (.zip) or as tables (.xlsx, .csv, .json)"
    command = add_command(commands, "export", export_inspection, text, data)
    command.add_argument("id")
    command.add_argument("--out", type=Path, required=True)
    more = "in a bundle: copies of the photos without the place and device that cameras write"
    command.add_argument("--photo-copies", action="store_true", help=more)
    more = "in a .csv: the table, such as readings (default: checks)"
    command.add_argument("--table", default="", metavar="NAME", help=more)
    text = "take in a bundle, or what a device saved, by union"
    command = add_command(commands, "import", import_inspection, text, data)
    command.add_argument("file", type=Path)
    text = "everything in one file, to be brought back on another computer"
    command = add_command(commands, "backup", back_up, text, data)
    command.add_argument("--out", type=Path, required=True)
    text = "bring a backup back, by union: nothing that is here is replaced"
    command = add_command(commands, "restore", bring_back, text, data)
    command.add_argument("file", type=Path)
    command = add_command(commands, "verify", verify, "integrity of journals and photos", data)
    command.add_argument("id", nargs="?")
    text = "also whether this report belongs to the inspection, and is unchanged"
    command.add_argument("--report", type=Path, metavar="PDF", help=text)
    text = "first take in the refused entries that were kept aside and are not here"
    command.add_argument("--take-in-kept-aside", action="store_true", help=text)


def list_inspections(options: Namespace) -> None:
    """Print the inspections."""
    found = Shelf(opened_folder(options)).rows(_print_progress)
    if options.json:
        print(json.dumps(found, ensure_ascii=False, indent=1))
        return
    for row in found:
        # One damaged inspection must not hide the others of the folder.
        if row["wrong"]:
            print(f"{row['id']}  {row['title']}  cannot be read: {row['wrong']}")
        else:
            print(f"{row['id']}  {row['title']}  {row['seen']} of {row['checks']} checks seen")
        for system in row["systems"]:
            print(_system_line(system))
    if not found:
        print("No inspections yet. `inspector serve` begins one.")


def _print_progress(done: int, total: int) -> None:
    """How far the reading is, on standard error: a program reads standard output."""
    if sys.stderr.isatty():
        print(f"\r{done} of {total} inspections", end="", file=sys.stderr, flush=True)
        if done == total:
            print(file=sys.stderr)
    # In a log, a line now and then.
    elif done % 50 == 0 or done == total:
        print(f"{done} of {total} inspections", file=sys.stderr, flush=True)


def _system_line(system: dict) -> str:
    """Return one system of the list: its word, its condition of 100, and how much was seen."""
    condition = "not assessed"
    if system["condition"] is not None:
        # Rounded as in the report, so that 69.9 does not read 70 and no span looks narrower.
        points, low = (show(math.floor(system[name]), "") for name in ("condition", "low"))
        condition = f"{points} ({low} to {show(math.ceil(system['high']), '')})"
        # All was seen: one figure, as the report prints it.
        if system["high"] - system["low"] < ONE_FIGURE:
            condition = points
    seen = show(system["coverage"] * 100, "%", 0)
    return f"    {system['name']:<32} {system['word']:<28} {condition}, {seen} seen"


def export_inspection(options: Namespace) -> None:
    """Write a bundle (.zip), or the tables for those who calculate on (.xlsx, .csv, .json)."""
    data, inspection = opened_inspection(options)
    originals = not options.photo_copies
    export(data, inspection, options.out, originals=originals, table=options.table)
    print(f"Written: {options.out}")


def import_inspection(options: Namespace) -> None:
    """Take in a bundle or what a device saved; an error where anything of it was not taken."""
    if not options.file.is_file():
        raise InspectorError(f"There is no file {options.file}.")
    # A running server writes too; two writers would give one number twice.
    with folder_lock.lock_folder(folder_path(options)):
        imported = import_file(opened_folder(options), options.file)
    print("\n".join(imported.sentences))
    if imported.refused:
        what = "thing" if imported.refused == 1 else "things"
        raise InspectorError(
            f"{imported.refused} {what} in {options.file} were not taken in, as said above. What "
            "can be read is kept aside; `inspector verify --take-in-kept-aside` takes it in."
        )


def back_up(options: Namespace) -> None:
    """Write everything into one file."""
    from inspector.services import backup
    from inspector.services.backup_contents import NOT_HELD

    count, size, left_out = backup.write(opened_folder(options), options.out)
    print(f"Written: {options.out}, {count} inspections, {size / 1e6:.1f} MB. Not in it:")
    for each in NOT_HELD:
        print(f"- {each}.")
    for inspection_id, why in left_out.items():
        print(f"- {inspection_id}: {why}")


def bring_back(options: Namespace) -> None:
    """Bring a backup back."""
    from inspector.services import restore

    if not options.file.is_file():
        raise InspectorError(f"There is no file {options.file}.")
    with folder_lock.lock_folder(folder_path(options)):
        data = opened_folder(options)
        restored = restore.restore(data, options.file, _print_progress)
    for sentence in (restored.sentence(), *restored.notes):
        print(sentence)
    print(f"This computer writes as {data.host}. Let phones and tablets join again.")


def _verify_report(data: DataFolder, options: Namespace) -> bool:
    """Print what a report's file says it is, and whether it is."""
    from inspector.services.files.revision_check import check_report

    if not options.id:
        raise InspectorError("Name the inspection of the report: `inspector verify ID --report`.")
    if not options.report.is_file():
        raise InspectorError(f"There is no file {options.report}.")
    found = check_report(data, data.inspections.get(options.id), options.report)
    print(f"{options.id}: {found.sentence}")
    return found.ours


def verify(options: Namespace) -> int:
    """Check journals, photos and numbers; 1 where anything is damaged or an entry is missing."""
    if options.take_in_kept_aside:
        with folder_lock.lock_folder(folder_path(options)):
            return _verify(options)
    return _verify(options)


def _verify(options: Namespace) -> int:
    """Print what is damaged or missing, or whether a report belongs; 1 where anything is wrong."""
    data = opened_folder(options)
    sound = options.report is None or _verify_report(data, options)
    for inspection_id in [options.id] if options.id else data.inspections.ids():
        inspection = data.inspections.get(inspection_id)
        if options.take_in_kept_aside:
            print(f"{inspection_id}: {take_in_kept_aside(inspection)}")
        found = check_integrity(inspection)
        damage = f"{len(found.faults)} damaged:" if found.faults else "nothing damaged."
        print(f"{inspection_id}: {found.entries} whole entries, {damage}")
        for line in (*found.faults, *found.notes):
            print(f"    {line}")
        aside = len(inspection.refused())
        if aside:
            entries = "entry is" if aside == 1 else "entries are"
            print(
                f"    {aside} refused {entries} kept aside; "
                "`inspector verify --take-in-kept-aside` takes in what is whole."
            )
        sound = sound and found.complete
    return 0 if sound else 1
