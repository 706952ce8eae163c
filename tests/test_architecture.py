"""Imports run one way: web -> report -> conversion -> assess -> criteria, above record, checklists and quantities, which know none of them."""

import ast
from pathlib import Path

import pytest

PACKAGE = Path(__file__).parents[1] / "inspector"
# the higher the level, the nearer to the user; nothing may import from a level above its own
LEVELS = {"web": 5, "report": 4, "conversion": 3, "assess": 2, "criteria": 1}
BELOW = ("record", "checklists", "checklist_rules", "checklist_criteria", "quantities", "errors", "places")
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
    level = LEVELS.get(own, 0 if own in BELOW else 9)
    return sorted(name for name in names if LEVELS.get(room(name), 0) > level)


MODULES = sorted(PACKAGE.rglob("*.py"))


@pytest.mark.parametrize("path", MODULES, ids=lambda path: str(path.relative_to(PACKAGE)))
def test_no_module_imports_from_above(path):
    """A room knows only the rooms below it."""
    relative = path.relative_to(PACKAGE.parent)
    own = relative.parts[1].removesuffix(".py")

    assert [] == broken(own, imported(path.read_text(encoding="utf-8"), relative))


@pytest.mark.parametrize("path", sorted((PACKAGE / "criteria").glob("*.py")), ids=lambda path: path.name)
def test_criteria_know_neither_files_nor_flask_nor_checklists(path):
    """Criteria are pure: from our own package only errors and quantities, and nothing that touches the outside."""
    names = imported(path.read_text(encoding="utf-8"), path.relative_to(PACKAGE.parent))
    own = {room(name) for name in names} - {None}

    assert own <= {"criteria", "errors", "quantities"}
    assert not FORBIDDEN_TO_CRITERIA & {name.partition(".")[0] for name in names}


@pytest.mark.parametrize(("own", "source"), [
    ("criteria", "from inspector.assess.shapes import Part"),
    ("assess", "import inspector.report"),
    ("record", "from inspector import criteria"),
    ("checklists", "def f():\n    from inspector.criteria.registry import CRITERIA"),
    ("conversion", "from ..web import walk"),
])
def test_the_rule_sees_an_import_from_above(own, source):
    """A forbidden import is found wherever it stands and however it is written."""
    assert [] != broken(own, imported(source, f"inspector/{own}/module.py"))


def test_the_rule_allows_what_runs_downwards():
    """Skipping rooms on the way down is fine."""
    assert [] == broken("web", imported("from inspector.criteria.registry import CRITERIA\nfrom inspector.record.state import State"))
