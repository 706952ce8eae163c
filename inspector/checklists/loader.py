"""Reads and checks a checklist folder (TOML, one file per system), every mistake in one list."""

import tomllib
from pathlib import Path

from inspector.checklists.criteria_files import KEPT_AS, criteria_in, own_tables
from inspector.checklists.folder_rules import faults_across, faults_of_layouts, faults_of_trials
from inspector.checklists.library_tables import (
    CAUTIONS,
    LAYOUTS,
    NOT_SYSTEMS,
    SPACES,
    TRIALS,
    library_of_tables,
    table_in,
)
from inspector.checklists.model import Library
from inspector.checklists.registry import CRITERIA
from inspector.checklists.schema import (
    faults_of_cautions,
    faults_of_spaces,
    faults_of_system,
)
from inspector.values.errors import InspectorError


class ChecklistFaults(InspectorError):
    """A checklist folder that cannot be used; ``faults`` holds one sentence per mistake."""

    def __init__(self, faults: list[str]):
        super().__init__("The checklists have mistakes:\n" + "\n".join(faults))
        self.faults = faults


def read_library(folder: Path, check_criteria: bool = False) -> Library:
    """Read a whole checklist folder, with a surveyor's own criteria beside it.

    Parameters
    ----------
    folder : Path
        One file per system, spaces.toml, cautions.toml, where there are any trials.toml and
        layouts.toml, and a surveyor's own criteria.
    check_criteria : bool
        Whether each check must suit the criterion that it names, and each own criterion have a name
        of its own. An inspection keeps the checklists with which it began, which later criteria
        need not suit.

    Returns
    -------
    Library

    Raises
    ------
    ChecklistFaults
        With every mistake of every file at once.
    """
    faults: list[str] = []
    raw = _raw_files(folder, faults)
    spaces, cautions = table_in(raw, SPACES), table_in(raw, CAUTIONS)
    trials, layouts = table_in(raw, TRIALS), table_in(raw, LAYOUTS)
    faults += faults_of_spaces(SPACES, spaces) + faults_of_cautions(CAUTIONS, cautions)
    faults += faults_of_trials(TRIALS, trials, cautions) + faults_of_layouts(LAYOUTS, layouts)
    own = _own_tables(folder, check_criteria, faults)
    systems = {name: data for name, data in raw.items() if name not in NOT_SYSTEMS}
    # Not checked for an inspection's own copies: they were, when they were taken in.
    known = {**CRITERIA, **criteria_in(own)} if check_criteria else None
    for name, data in systems.items():
        faults += faults_of_system(name, data, spaces=spaces, cautions=cautions, criteria=known)
    faults += faults_across(systems, trials)
    if faults:
        raise ChecklistFaults(faults)
    return library_of_tables({**raw, **own})


def _raw_files(folder: Path, faults: list[str]) -> dict[str, dict]:
    """What each file of systems, spaces and cautions holds, without those that cannot be read."""
    # Copies of own criteria lie in the same folder of an inspection, and are no checklists.
    paths = sorted(path for path in folder.glob("*.toml") if not path.name.startswith(KEPT_AS))
    if not paths:
        faults.append(f"{folder}: no checklist files are here; expected one .toml file per system.")
    raw = {}
    for path in paths:
        try:
            raw[path.name] = tomllib.loads(path.read_text(encoding="utf-8"))
        except (tomllib.TOMLDecodeError, UnicodeDecodeError) as problem:
            faults.append(f"{path.name}: not readable as TOML: {problem}.")
    return raw


def _own_tables(folder: Path, check: bool, faults: list[str]) -> dict[str, dict]:
    if check:
        return own_tables(folder, CRITERIA, faults)
    # An inspection goes on with what it can use of its copies, whatever has been shipped since.
    return own_tables(folder, {}, [])
