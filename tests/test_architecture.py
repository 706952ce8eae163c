"""Imports run one way: what starts the app -> web -> report -> conversion -> assess -> criteria -> record, checklists, quantities, words."""

import ast
from pathlib import Path

import pytest

PACKAGE = Path(__file__).parents[1] / "inspector"
# the higher the level, the nearer to the user; nothing may import from a level above its own
LEVELS = {"web": 5, "report": 4, "conversion": 3, "assess": 2, "criteria": 1}
BELOW = ("record", "checklists", "checklist_rules", "checklist_criteria", "quantities", "words", "errors", "places")
# what starts, serves and fills the app: it may know every room, and no room may know it
STARTS = ("__init__", "__main__", "cli", "commands", "deciding", "serving", "addresses", "authority", "fetching", "fresh_machine", "demo")
LEVELS |= dict.fromkeys(BELOW, 0) | dict.fromkeys(STARTS, 6)
OF_CRITERIA = {"criteria", "errors", "quantities", "words"}
FORBIDDEN_TO_CRITERIA = {"flask", "pathlib", "os", "io", "time", "tomllib", "json", "sys", "shutil"}


def imported(source, path="inspector/module.py"):
    """Every module name that a source imports, with `from inspector import x` read as inspector.x and relative ones made whole."""
    package = Path(path).with_suffix("").parts[:-1]
    names = set()
    for node in ast.walk(ast.parse(source)):
        if isinstance(node, ast.Import):
            names |= {alias.name for alias in node.names}
        elif isinstance(node, ast.ImportFrom):
            start = ".".join(package[: len(package) - node.level + 1]) if node.level else ""
            module = ".".join(part for part in (start, node.module) if part)
            names |= {module} | {f"{module}.{alias.name}" for alias in node.names}
    return names


def room(name):
    """The room of a module's dotted name within the package, or None for a module of others."""
    parts = name.split(".")
    return parts[1] if parts[0] == "inspector" and len(parts) > 1 else None


def broken(own, names):
    """The imports that a module of room `own` must not have."""
    return sorted(name for name in names if LEVELS.get(room(name), 0) > LEVELS[own])


MODULES = sorted(PACKAGE.rglob("*.py"))


@pytest.mark.parametrize("path", MODULES, ids=lambda path: str(path.relative_to(PACKAGE)))
def test_no_module_imports_from_above(path):
    """A room knows only the rooms below it."""
    relative = path.relative_to(PACKAGE.parent)
    own = relative.parts[1].removesuffix(".py")

    assert [] == broken(own, imported(path.read_text(encoding="utf-8"), relative))


def test_every_room_and_module_has_its_level():
    """A new module at the root is given a place before it is used, and none that is gone is still listed."""
    there = {path.name.removesuffix(".py") for path in PACKAGE.iterdir() if path.suffix == ".py" or (path / "__init__.py").is_file()}
    assert there == set(LEVELS)


@pytest.mark.parametrize("path", sorted((PACKAGE / "criteria").glob("*.py")), ids=lambda path: path.name)
def test_criteria_know_neither_files_nor_flask_nor_checklists(path):
    """Criteria are pure: from our own package only errors, quantities and words, and nothing that touches the outside."""
    names = imported(path.read_text(encoding="utf-8"), path.relative_to(PACKAGE.parent))
    own = {room(name) for name in names} - {None}

    assert own <= OF_CRITERIA
    assert not FORBIDDEN_TO_CRITERIA & {name.partition(".")[0] for name in names}


@pytest.mark.parametrize(("own", "source"), [
    ("criteria", "from inspector.assess.shapes import Part"),
    ("assess", "import inspector.report"),
    ("record", "from inspector import criteria"),
    ("checklists", "def f():\n    from inspector.criteria.registry import CRITERIA"),
    ("conversion", "from ..web import walk"),
    ("web", "from inspector.serving import serve"),
    ("words", "from inspector.report.wording import plain"),
])
def test_the_rule_sees_an_import_from_above(own, source):
    """A forbidden import is found wherever it stands and however it is written."""
    assert [] != broken(own, imported(source, f"inspector/{own}/module.py"))


def test_the_rule_allows_what_runs_downwards():
    """Skipping rooms on the way down is fine."""
    assert [] == broken("web", imported("from inspector.criteria.registry import CRITERIA\nfrom inspector.record.state import State"))
