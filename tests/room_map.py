"""The map of rooms in DEVELOPERS.md, made from what each folder says of itself.

A folder's ``__init__.py`` says in its first paragraph what is in it and, after *Start:*, where a
reader begins. ``python3 -m tests.room_map`` writes the table anew.
"""

import ast
import re
from pathlib import Path

ROOT = Path(__file__).parents[1]
PACKAGE = ROOT / "inspector"
GUIDE = ROOT / "DEVELOPERS.md"
# From the user down, as the imports run.
ROOMS = (
    "cli",
    "web",
    "services",
    "sharing",
    "report",
    "conversion",
    "assess",
    "checklists",
    "criteria",
    "record",
    "values",
    "in_browser",
    "demo",
)
HEAD = "| room | what is in it | where to start |\n| --- | --- | --- |\n"
TABLE = re.compile(re.escape(HEAD) + r"(?:\|.*\|\n)+")


def folders() -> list[Path]:
    """Return every folder of the package, each room before what is inside it."""
    found = []
    for room in ROOMS:
        inside = sorted(path.parent for path in (PACKAGE / room).rglob("__init__.py"))
        found.extend(inside)
    return found


def row(folder: Path) -> str:
    """Return the line of one folder.

    Raises
    ------
    ValueError
        If the folder does not say what is in it and where to start.
    """
    said = ast.get_docstring(ast.parse((folder / "__init__.py").read_text(encoding="utf-8"))) or ""
    paragraphs = [" ".join(part.split()) for part in said.split("\n\n")]
    starts = [part for part in paragraphs[1:] if part.startswith("Start: ")]
    name = folder.relative_to(PACKAGE).as_posix()
    if len(starts) != 1:
        raise ValueError(f"{name}/__init__.py does not say what is in it and where to start")
    what = paragraphs[0].removesuffix(".")
    start = starts[0].removeprefix("Start: ").removesuffix(".")
    return f"| `{name}/` | {what} | {start} |\n"


def room_map() -> str:
    """Return the table, a line for each folder."""
    return HEAD + "".join(row(folder) for folder in folders())


def main() -> None:
    """Write the table in DEVELOPERS.md anew."""
    guide = GUIDE.read_text(encoding="utf-8")
    GUIDE.write_text(TABLE.sub(lambda _: room_map(), guide, count=1), encoding="utf-8")


if __name__ == "__main__":
    main()
