"""The golden files hold every figure of every criterion; what differs is shown."""

from difflib import unified_diff
from itertools import islice

import pytest

from inspector.checklists.registry import CRITERIA
from tests.criteria.golden import COMMAND, FOLDER, golden_texts, written_texts

SHOWN = 40


def differences(kept: dict[str, str], found: dict[str, str]) -> list[str]:
    """Return the lines in which two sets of files differ, under their names, limits first."""
    lines: list[str] = []
    for name in sorted({*kept, *found}, key=lambda name: (not name.startswith("limits"), name)):
        before, after = kept.get(name, "").splitlines(), found.get(name, "").splitlines()
        lines += unified_diff(before, after, f"kept/{name}", f"now/{name}", lineterm="", n=0)
    return lines


def test_every_figure_of_every_criterion_is_as_the_golden_files_say():
    """A limit, a range, a source or a sentence changes only together with its file."""
    changed = differences(written_texts(), golden_texts())
    if changed:
        first = "\n".join(islice(changed, SHOWN))
        pytest.fail(
            f"{len(changed)} lines differ, the first of them:\n{first}\n"
            f"If each is meant, run  {COMMAND}  and commit the files with the change.",
            pytrace=False,
        )


def test_a_changed_a_missing_and_a_new_file_are_each_seen():
    """The comparison itself: one figure, one file less, one file more."""
    assert differences({"a": "limit | 0.05 %\n"}, {"a": "limit | 0.055 %\n"})[-2:] == [
        "-limit | 0.05 %",
        "+limit | 0.055 %",
    ]
    assert differences({"a": "x\n"}, {})
    assert differences({}, {"a": "x\n"})
    assert differences({"a": "x\n"}, {"a": "x\n"}) == []


def test_the_folder_stays_small_enough_to_read():
    """At most twenty files, and twenty kilobytes for each criterion in all."""
    sizes = [path.stat().st_size for path in FOLDER.iterdir()]
    assert len(sizes) <= 20
    assert sum(sizes) < 20_000 * len(CRITERIA)
