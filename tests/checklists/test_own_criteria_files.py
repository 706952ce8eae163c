"""`inspector checklists FOLDER` checks a surveyor's own criteria beside his checklists."""

import re
import shutil
from pathlib import Path

import pytest

from inspector.cli.parser import main
from inspector.places import shipped

GUIDE = (Path(__file__).parents[2] / "checklists" / "README.md").read_text(encoding="utf-8")
CHAPTER = GUIDE.split("## A criterion of your own")[1].split("\n## ")[0]
SEALS = re.search(r"```toml\n(.*?)```", CHAPTER, re.DOTALL).group(1)


@pytest.fixture
def folder(tmp_path):
    """Copies of the shipped files, criteria included, as the guide advises."""
    shutil.copytree(shipped("checklists"), tmp_path / "mine")
    return tmp_path / "mine"


def test_copies_of_the_shipped_files_are_no_mistake(folder, capsys):
    """Who copies the whole folder has not taken a shipped name."""
    assert 0 == main(["checklists", str(folder)])
    assert "no mistakes" in capsys.readouterr().out


def test_an_own_criterion_is_listed(folder, capsys):
    """The example of the guide, put beside the copies, is named with its title."""
    (folder / "criteria" / "fin-seals.toml").write_text(SEALS, encoding="utf-8")

    assert 0 == main(["checklists", str(folder)])
    assert "fin-seal-leakage: Leakage of a fin's shaft seal" in capsys.readouterr().out


def test_every_mistake_of_several_files_is_named(folder, capsys):
    """A name that two files use, and an example that comes out otherwise, each with its file."""
    (folder / "criteria" / "a.toml").write_text(SEALS, encoding="utf-8")
    (folder / "criteria" / "b.toml").write_text(SEALS, encoding="utf-8")
    wrong = SEALS.replace("fin-seal-leakage", "fin-seal").replace("margin = 1.5", "margin = 2")
    (folder / "criteria" / "c.toml").write_text(wrong, encoding="utf-8")

    assert 1 == main(["checklists", str(folder)])
    said = capsys.readouterr().err
    assert "criteria/b.toml, criterion fin-seal-leakage, key id: " in said
    assert "in another file of your own already" in said
    assert "criteria/c.toml, criterion fin-seal, examples 1: gives the margin 1.5" in said
    assert "a.toml" not in said
