"""A report's file against the record: signed and unchanged, changed, a draft, or of another."""

from datetime import date

import pypdf
import pytest

from inspector.cli.parser import main
from inspector.services.data_folder import open_folder
from inspector.services.files.report_files import make_report
from inspector.services.files.revision_check import check_report
from inspector.services.files.revisions import revisions_of, sign

DAY = date(2026, 10, 20)


@pytest.fixture
def signed(tmp_path):
    """A folder, an inspection with one signed revision, and a later change."""
    data = open_folder(tmp_path / "data")
    inspection = data.begin()
    inspection.record("K. T.", [("vessel", "name", "Candidate B"), ("vessel", "length", "71.4")])
    sign(inspection, "K. T.", "K. Toreth", "surveyor", DAY)
    inspection.record("K. T.", [("vessel", "length", "72.9")])
    yield data, inspection
    data.close()


def made(signed, out, **how):
    data, inspection = signed
    make_report(data, inspection, out, **how)
    return out


def test_a_signed_revision_is_the_same_bytes_each_time(signed, tmp_path):
    """Whatever is recorded after it, and with no trace of the moment in which it is made."""
    (revision,) = revisions_of(signed[1])
    first = made(signed, tmp_path / "a.pdf", revision=revision).read_bytes()
    second = made(signed, tmp_path / "b.pdf", revision=revision).read_bytes()
    text = "".join(page.extract_text() for page in pypdf.PdfReader(tmp_path / "a.pdf").pages)

    assert first == second
    assert "revision 1" in text
    assert "K. Toreth, surveyor" in text
    assert "72.9" not in text


@pytest.mark.parametrize("how", [{}, {"paper": "letter", "units": "us", "extent": "short"}])
def test_an_unchanged_file_belongs(signed, tmp_path, how):
    (revision,) = revisions_of(signed[1])
    found = check_report(*signed, made(signed, tmp_path / "a.pdf", revision=revision, **how))

    assert found.ours
    assert (
        "revision 1, signed by K. Toreth, surveyor on 2026-10-20, byte for byte" in found.sentence
    )


def test_a_file_with_one_other_byte_does_not(signed, tmp_path):
    (revision,) = revisions_of(signed[1])
    out = made(signed, tmp_path / "a.pdf", revision=revision)
    content = bytearray(out.read_bytes())
    content[len(content) // 2] ^= 1
    out.write_bytes(content)
    found = check_report(*signed, out)

    assert not found.ours
    assert "bytes differ" in found.sentence


def test_a_draft_is_of_the_record_until_something_is_recorded(signed, tmp_path):
    """And the next revision lists what changed since the one before."""
    data, inspection = signed
    out = made(signed, tmp_path / "a.pdf")
    text = "".join(page.extract_text() for page in pypdf.PdfReader(out).pages)

    assert "Changes since revision 1" in text
    assert check_report(data, inspection, out).ours
    inspection.record("K. T.", [("vessel", "flag", "none")])
    found = check_report(data, inspection, out)
    assert (False, True) == (found.ours, "another digest" in found.sentence)


def test_another_file_is_no_report(signed, tmp_path):
    (tmp_path / "x.pdf").write_bytes(b"%PDF-1.4 nothing of ours")

    assert not check_report(*signed, tmp_path / "x.pdf").ours


def test_the_command_says_so(signed, tmp_path, capsys):
    """With exit code 0 for a file that belongs, and 1 for one that does not."""
    data, inspection = signed
    (revision,) = revisions_of(inspection)
    out = made(signed, tmp_path / "a.pdf", revision=revision)
    folder = ["--data", str(data.path)]

    assert main(["verify", inspection.id, "--report", str(out), *folder]) in (0, None)
    assert "byte for byte" in capsys.readouterr().out
    out.write_bytes(b"other")
    assert 1 == main(["verify", inspection.id, "--report", str(out), *folder])
