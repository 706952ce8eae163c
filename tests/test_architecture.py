"""The rooms of the package, and the directions in which they may import each other."""

import ast
from pathlib import Path

import pytest

PACKAGE = Path(__file__).parents[1] / "inspector"
# Room -> the rooms it may import; a room that is not named here does not exist.
BELOW_ASSESS = {"checklists", "criteria", "record", "values"}
BELOW_REPORT = BELOW_ASSESS | {"assess", "conversion"}
MAY_IMPORT = {
    "values": set(),
    "criteria": {"values"},
    "checklists": {"criteria", "values"},
    "record": {"values"},
    "sharing": {"record", "values"},
    "assess": BELOW_ASSESS,
    "conversion": BELOW_ASSESS | {"assess"},
    "in_browser": BELOW_ASSESS | {"assess"},
    "report": BELOW_REPORT,
    "services": BELOW_REPORT | {"report", "sharing"},
    "web": BELOW_REPORT | {"report", "services", "sharing"},
    "demo": BELOW_REPORT | {"report", "services"},
    # Nothing from web: it starts the application through the factory at the root.
    "cli": BELOW_REPORT | {"report", "services", "sharing", "demo"},
}
# Modules at the root: the application factory, `python3 -m inspector`, and where files are.
ROOT = {"__init__", "__main__", "places"}
# What may stand on places.py: rooms that read files.
READ_FILES = {"record", "sharing", "checklists", "report", "services", "web", "cli", "demo"}
# Rooms that run in a browser as well: the standard library and each other, and nothing that touches
# the outside.
PURE = ("values", "criteria")
OUTSIDE = {"flask", "pathlib", "os", "io", "time", "tomllib", "json", "sys", "shutil", "threading"}


def imported(source, path="inspector/module.py"):
    """Every module name that a source imports, with relative imports made whole."""
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


def forbidden(own, names):
    """The imports that a module of room `own` must not have."""
    found = []
    for name in names:
        other = room(name)
        if other == "places":
            if own not in READ_FILES:
                found.append(name)
        elif other in MAY_IMPORT and other != own and other not in MAY_IMPORT[own]:
            found.append(name)
    return sorted(found)


MODULES = sorted(PACKAGE.rglob("*.py"))
IN_ROOMS = [path for path in MODULES if path.parent != PACKAGE]


@pytest.mark.parametrize("path", IN_ROOMS, ids=lambda path: str(path.relative_to(PACKAGE)))
def test_no_module_imports_from_above(path):
    """A room knows only the rooms below it."""
    relative = path.relative_to(PACKAGE.parent)

    assert [] == forbidden(relative.parts[1], imported(path.read_text(encoding="utf-8"), relative))


def test_every_room_has_its_directions_and_nothing_else_is_at_the_root():
    """A new room is given its directions before it is used, and none that is gone is still
    listed."""
    rooms = {path.name for path in PACKAGE.iterdir() if (path / "__init__.py").is_file()}
    assert set(MAY_IMPORT) == rooms
    assert ROOT == {path.stem for path in PACKAGE.glob("*.py")}


@pytest.mark.parametrize(
    "path",
    [path for path in IN_ROOMS if path.relative_to(PACKAGE).parts[0] in PURE],
    ids=lambda path: str(path.relative_to(PACKAGE)),
)
def test_rooms_that_calculate_touch_nothing_outside(path):
    """Values and criteria know neither files nor clock nor Flask: they run in a browser as well."""
    names = imported(path.read_text(encoding="utf-8"), path.relative_to(PACKAGE.parent))

    assert set() == OUTSIDE & {name.partition(".")[0] for name in names}


# What the command line and the pages share must not know how it was asked for.
PAGE_LIBRARIES = {"flask", "flask_wtf", "wtforms", "werkzeug", "jinja2"}


@pytest.mark.parametrize(
    "path",
    [path for path in IN_ROOMS if path.relative_to(PACKAGE).parts[0] == "services"],
    ids=lambda path: path.name,
)
def test_no_service_knows_flask(path):
    """A service is a plain function: the command line calls it as the pages do."""
    names = imported(path.read_text(encoding="utf-8"), path.relative_to(PACKAGE.parent))

    assert set() == PAGE_LIBRARIES & {name.partition(".")[0] for name in names}


@pytest.mark.parametrize(
    "folder", sorted({path.parent for path in MODULES}), ids=lambda path: path.name
)
def test_no_folder_is_too_full_to_read(folder):
    """At most twenty files in a folder, so that its list can be read."""
    assert len([path for path in folder.iterdir() if path.is_file()]) <= 20


def dotted(path):
    """The dotted name of a module's file."""
    parts = path.relative_to(PACKAGE.parent).with_suffix("").parts
    return ".".join(parts[:-1] if parts[-1] == "__init__" else parts)


def in_a_circle(graph):
    """The modules from which one comes back to oneself, following imports wherever they are."""
    circular = set()
    for start in graph:
        seen, waiting = set(), list(graph[start])
        while waiting:
            name = waiting.pop()
            if name not in seen:
                seen.add(name)
                waiting += graph.get(name, ())
        if start in seen:
            circular.add(start)
    return circular


def test_no_modules_import_each_other_in_a_circle():
    """Imports inside functions count as well."""
    names = {dotted(path) for path in MODULES}
    graph = {}
    for path in MODULES:
        found = imported(path.read_text(encoding="utf-8"), path.relative_to(PACKAGE.parent))
        graph[dotted(path)] = {name for name in found & names if name != dotted(path)}
    # A package's own file is empty, and importing a module of it is no use of it.
    packages = {dotted(path) for path in MODULES if path.name == "__init__.py"} - {"inspector"}
    assert set() == in_a_circle(
        {name: used - packages - {"inspector"} for name, used in graph.items()}
    )


# What plays the same part in each room: the parts of a chapter, and the model of a folder or an
# inspection.
SAME_PART = {"model", "particulars", "calculation", "presentation", "chapter"}


def test_no_module_name_is_used_in_two_rooms():
    """A file's name says which one it is, beside the parts that every chapter has."""
    seen = {}
    for path in IN_ROOMS:
        if path.stem != "__init__" and path.stem not in SAME_PART:
            seen.setdefault(path.stem, []).append(str(path.relative_to(PACKAGE)))

    assert {} == {name: paths for name, paths in seen.items() if len(paths) > 1}


@pytest.mark.parametrize(
    ("own", "source"),
    [
        ("criteria", "from inspector.assess.model import Part"),
        ("assess", "import inspector.report"),
        ("record", "from inspector import criteria"),
        ("criteria", "def f():\n    from inspector.checklists.loader import read_library"),
        ("conversion", "from ..web import walk"),
        ("cli", "from inspector.web.current import data_folder"),
        ("values", "from inspector.report.wording import plain"),
        ("assess", "from inspector.places import shipped"),
        ("sharing", "from inspector.conversion.contents import convert"),
    ],
)
def test_the_rule_sees_an_import_from_above(own, source):
    """A forbidden import is found wherever it is and however it is written."""
    assert [] != forbidden(own, imported(source, f"inspector/{own}/module.py"))


def test_the_rule_allows_what_runs_downwards():
    """Skipping rooms on the way down is fine."""
    source = (
        "from inspector.criteria.core.source import Source\n"
        "from inspector.record.state import State"
    )
    assert [] == forbidden("web", imported(source))
