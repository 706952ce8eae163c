"""The commands: exit codes, sentences, and a bundle carried from one data folder to another."""

import socket
from types import SimpleNamespace

import pytest

from inspector.cli import inspection_commands
from inspector.cli.parser import main
from inspector.demo.portfolio import prepare_in
from inspector.sharing.network import ports


@pytest.fixture(scope="module")
def data(tmp_path_factory):
    folder = tmp_path_factory.mktemp("demo")
    prepare_in(folder)
    return folder


def test_a_bundle_goes_out_and_comes_in_by_union(data, tmp_path, capsys):
    """Exported here and imported elsewhere, an inspection is whole.

    The second import adds nothing.
    """
    bundle, other = tmp_path / "one.zip", str(tmp_path / "other")
    assert 0 == main(["export", "demo-ithrenna-lark", "--out", str(bundle), "--data", str(data)])
    assert 0 == main(["import", str(bundle), "--data", other])
    capsys.readouterr()
    assert 0 == main(["import", str(bundle), "--data", other])
    assert "new entries 0, new photos 0" in capsys.readouterr().out
    assert 0 == main(["verify", "--data", other])
    assert "nothing damaged" in capsys.readouterr().out


def test_damage_is_named_and_ends_with_one(data, tmp_path, capsys):
    """A garbage line in a journal is named by verify, which then ends with 1."""
    prepare_in(tmp_path)
    journal = next((tmp_path / "inspections" / "demo-ithrenna-lark" / "journal").glob("*.jsonl"))
    journal.write_bytes(b"garbage\n" + journal.read_bytes())

    assert 1 == main(["verify", "--data", str(tmp_path)])
    assert "line 1: is not a whole journal line" in capsys.readouterr().out


@pytest.mark.parametrize(
    "command",
    [
        ["report", "none", "--out", "x.pdf"],
        ["export", "none", "--out", "x.zip"],
        ["import", "none.zip"],
        ["verify", "none"],
        ["judge", "none", "x=1"],
        ["judge", "cold-store-temperature", "oops"],
        ["judge", "cold-store-temperature", "temperature=warm", "store=frozen"],
    ],
)
def test_a_failure_is_one_sentence_and_ends_with_one(command, data, capsys):
    """What cannot be done is reported in one sentence on standard error."""
    at = ["--data", str(data)] if command[0] != "judge" else []

    assert 1 == main([*command, *at])
    printed = capsys.readouterr().err
    assert printed.startswith("inspector: ")
    assert 1 == printed.count("\n")


def test_wrong_use_ends_with_two(capsys):
    """An unknown command is wrong use."""
    with pytest.raises(SystemExit) as caught:
        main(["no-such-command"])
    assert 2 == caught.value.code


def test_another_port_is_taken_and_told_when_the_usual_one_is_in_use(monkeypatch, capsys):
    """A taken usual port leads to a free one, with a sentence.

    A taken port that was asked for is refused.
    """
    with socket.socket() as other:
        other.bind(("127.0.0.1", 0))
        other.listen()
        taken = other.getsockname()[1]
        monkeypatch.setattr(ports, "USUAL_PORT", taken)
        with ports.listen(None) as bound:
            assert bound.getsockname()[1] != taken
        assert f"Port {taken} is taken" in capsys.readouterr().out
        with pytest.raises(ports.NoPort, match=str(taken)):
            ports.listen(taken)


def test_a_judgement_prints_its_margin_with_a_minus_and_a_unit(capsys):
    """4 mm in 12 mm are 0.4 mm more than the 3.6 mm that may be lost."""
    assert 0 == main(["judge", "pit-depth", "depth=4", "as_built=12"])

    assert "Limit 3.6 mm, margin −0.4 mm\n" in capsys.readouterr().out


def test_a_system_s_line_rounds_as_the_report_does(capsys, monkeypatch):
    """Down for the points and the low end, up for the high end; a space before the percent sign."""
    system = {"name": "Hull", "word": "retain, firm", "condition": 69.9, "low": 60.9, "high": 80.1}
    row = {"id": "one", "title": "One", "wrong": "", "seen": 9, "checks": 10}
    found = [{**row, "systems": [{**system, "coverage": 0.9}]}]
    shelf = SimpleNamespace(rows=lambda _: found)
    monkeypatch.setattr(inspection_commands, "Shelf", lambda _: shelf)
    monkeypatch.setattr(inspection_commands, "opened_folder", lambda _: None)

    assert 0 == main(["list"])
    assert f"{'retain, firm':<28} 69 (60 to 81), 90 % seen\n" in capsys.readouterr().out
