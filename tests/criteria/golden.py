"""Every figure of every criterion as plain text, to be compared and to be read by people.

``python3 -m tests.criteria.golden`` writes the files in ``golden/``: ``limits-*.txt`` with what a
criterion declares (one value a line) and ``judgements-*.txt`` with what it answers: a fixed set of
cases for each combination of choices, and the value of each number and date at which the answer
changes. The files are grouped by the first letter of the criterion, never by its module, so that
moving code leaves them alone.
"""

from itertools import groupby
from pathlib import Path

from inspector.checklists.registry import CRITERIA
from tests.criteria.conftest import VALID
from tests.criteria.golden_judgements import judgement_lines
from tests.criteria.golden_limits import limit_lines

FOLDER = Path(__file__).parent / "golden"
COMMAND = "python3 -m tests.criteria.golden"
# nine groups of about twenty criteria each: a difference stays readable
GROUPS = ("ab", "c", "de", "fg", "hijkl", "mno", "pqr", "s", "tuvwxyz")


def group_of(name: str) -> str:
    """Return the group of a criterion's name, as its files are called: "a-b" or "c"."""
    letters = next(group for group in GROUPS if name[0] in group)
    return letters if len(letters) == 1 else f"{letters[0]}-{letters[-1]}"


def golden_texts() -> dict[str, str]:
    """Return the text of each file by its name, calculated from the criteria as they are now."""
    texts = {}
    for group, names in groupby(sorted(CRITERIA), group_of):
        rules = [CRITERIA[name] for name in names]
        limits = [line for rule in rules for line in limit_lines(rule, VALID[rule.name])]
        judged = [line for rule in rules for line in judgement_lines(rule, VALID[rule.name])]
        texts[f"limits-{group}.txt"] = "\n".join(limits) + "\n"
        texts[f"judgements-{group}.txt"] = "\n".join(judged) + "\n"
    return texts


def written_texts() -> dict[str, str]:
    """Return the text of each file in the folder by its name."""
    return {path.name: path.read_text(encoding="utf-8") for path in sorted(FOLDER.glob("*.txt"))}


def main() -> None:
    """Write all files again, and remove those that no longer belong to a group."""
    FOLDER.mkdir(exist_ok=True)
    texts = golden_texts()
    for path in FOLDER.glob("*.txt"):
        if path.name not in texts:
            path.unlink()
    for name, text in texts.items():
        (FOLDER / name).write_text(text, encoding="utf-8")
    print(f"{len(texts)} files written to {FOLDER}")


if __name__ == "__main__":
    main()
