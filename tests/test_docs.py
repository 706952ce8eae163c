"""The documentation is tested: every file it names is there, and the README names every command."""

import re
from pathlib import Path

import pytest

from inspector.cli.parser import main
from tests.room_map import PACKAGE, folders, room_map

ROOT = Path(__file__).parents[1]
GUIDES = ("README.md", "DEVELOPERS.md", "CHANGELOG.md", "checklists/README.md")
# A path in back quotes that ends in a file's ending or in a slash.
NAMED = re.compile(r"`([a-z_]+(?:/[a-z0-9_.-]+)*(?:/|\.(?:py|js|css|html|toml|md)))`")
# Files that a user writes, or that are made.
EXAMPLES = {
    "stabilisers.toml",
    "fin-seals.toml",
    "catalogue.json",
    "hull.toml",
    "spaces.toml",
    "cautions.toml",
}


def is_there(name):
    """Whether a path is at the top or in the package, or ends so anywhere in them: a guide names a
    folder once and then its files."""
    if (ROOT / name).exists() or (ROOT / "inspector" / name).exists():
        return True
    folders = ("inspector", "static", "templates", "tests", "checklists")
    return any(any((ROOT / folder).rglob(name.removesuffix("/"))) for folder in folders)


@pytest.mark.parametrize("guide", GUIDES)
def test_every_file_that_a_guide_names_is_there(guide):
    """A reader who follows the map finds the file."""
    named = set(NAMED.findall((ROOT / guide).read_text(encoding="utf-8"))) - EXAMPLES
    missing = [name for name in sorted(named) if not is_there(name)]

    assert [] == missing


def test_the_readme_names_every_command(capsys):
    """A command that is added is described before it is used."""
    with pytest.raises(SystemExit):
        main(["--help"])
    commands = re.findall(r"^    ([a-z]+)  ", capsys.readouterr().out, re.MULTILINE)
    readme = (ROOT / "README.md").read_text(encoding="utf-8")

    assert len(commands) > 10
    assert [] == [name for name in commands if f"`inspector {name}" not in readme]


def test_the_map_is_the_one_that_its_command_makes():
    """A folder that is added, or that changes what it holds, is in the map: run
    ``python3 -m tests.room_map``."""
    every = {path.parent for path in PACKAGE.rglob("__init__.py")} - {PACKAGE}

    assert set(folders()) == every
    assert room_map() in (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
