"""The commands: exit codes, sentences, and a bundle carried from one data folder to another."""

import socket

import pytest

from inspector import serving
from inspector.cli import main
from inspector.demo.portfolio import prepare_in


@pytest.fixture(scope="module")
def data(tmp_path_factory):
    folder = tmp_path_factory.mktemp("demo")
    prepare_in(folder)
    return folder


def test_a_bundle_goes_out_and_comes_in_by_union(data, tmp_path, capsys):
    """Exported here and imported elsewhere, an inspection is whole; the second import adds nothing."""
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


@pytest.mark.parametrize("command", [
    ["report", "none", "--out", "x.pdf"], ["export", "none", "--out", "x.zip"], ["import", "none.zip"], ["verify", "none"],
    ["judge", "none", "x=1"], ["judge", "cold-store-temperature", "oops"], ["judge", "cold-store-temperature", "temperature=warm", "store=frozen"],
])
def test_a_failure_is_one_sentence_and_ends_with_one(command, data, capsys):
    """What cannot be done is told in one sentence on standard error."""
    at = ["--data", str(data)] if command[0] != "judge" else []

    assert 1 == main([*command, *at])
    told = capsys.readouterr().err
    assert told.startswith("inspector: ")
    assert 1 == told.count("\n")


def test_wrong_use_ends_with_two(capsys):
    """An unknown command is wrong use."""
    with pytest.raises(SystemExit) as caught:
        main(["no-such-command"])
    assert 2 == caught.value.code


def test_another_port_is_taken_and_told_when_the_usual_one_is_in_use(monkeypatch, capsys):
    """A taken usual port leads to a free one, with a sentence; a taken port that was asked for is refused."""
    with socket.socket() as other:
        other.bind(("127.0.0.1", 0))
        other.listen()
        taken = other.getsockname()[1]
        monkeypatch.setattr(serving, "USUAL_PORT", taken)
        with serving.listening(None) as bound:
            assert bound.getsockname()[1] != taken
        assert f"Port {taken} is taken" in capsys.readouterr().out
        with pytest.raises(serving.NoPort, match=str(taken)):
            serving.listening(taken)
