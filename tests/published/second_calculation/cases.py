"""Expected answers that were written down before they were compared, from source and inputs alone.

A file of cases is of one family. A line in brackets names a criterion and what its cases rest on;
each line below it is a case: the expected answer, the values, and why, with bars between::

    [battery-capacity] IEEE 450, replaced at 80 % of the rated capacity (seen)
    good     | duration=6.5; rated_duration=8 | 81.25 % of the rated capacity

Expected is a rating, ``none`` (an answer without a rating), ``refused``, a group of ratings where
the source says that something is not met and not how bad that is (``not good``, and ``bad``: poor
or failed), or several with strokes between. Words after a colon must be in the sentence as well. A
choice itself may hold commas, so that values are parted by semicolons.

``python3 -m tests.published.second_calculation.cases`` counts what agrees, by family.
"""

from collections import Counter
from dataclasses import dataclass
from pathlib import Path

from inspector.checklists.registry import criterion
from inspector.criteria.core.judgement import CannotJudge

FOLDER = Path(__file__).parent
GROUPS = {"not good": ("fair", "poor", "failed"), "bad": ("poor", "failed")}


@dataclass(frozen=True)
class Case:
    """One expected answer.

    Parameters
    ----------
    family, criterion, source : str
        The file's name, the criterion, and what its cases rest on.
    expected, why : str
    values : dict of str to str
        Input name -> value as typed.
    """

    family: str
    criterion: str
    source: str
    expected: str
    values: dict[str, str]
    why: str

    @property
    def name(self) -> str:
        """What a failing test shows."""
        values = "; ".join(f"{name}={value}" for name, value in self.values.items())
        return f"{self.criterion}: {values} is {self.expected}, since {self.why}"


def answer(case: Case) -> tuple[str, str]:
    """Return the rating that the criterion gives, "none" or "refused", and its sentence."""
    try:
        judgement = criterion(case.criterion).apply(case.values)
    except CannotJudge as refusal:
        return "refused", str(refusal)
    return judgement.rating or "none", judgement.sentence


def agrees(case: Case, given: str, sentence: str) -> bool:
    """Whether an answer is the expected one; a refusal that names words has them."""
    wanted, _, words = case.expected.partition(": ")
    ratings = [rating for word in wanted.split("/") for rating in GROUPS.get(word, (word,))]
    return given in ratings and words in sentence


def all_cases() -> list[Case]:
    """Return the cases of all files, in their order."""
    return [case for path in sorted(FOLDER.rglob("*.txt")) for case in _cases_of(path)]


def _cases_of(path: Path) -> list[Case]:
    cases, heading = [], ("", "")
    for line in path.read_text(encoding="utf-8").splitlines():
        if line.startswith("["):
            name, _, source = line[1:].partition("]")
            heading = (name, source.strip())
        elif line.strip():
            expected, values, why = (part.strip() for part in line.split("|"))
            cases.append(Case(path.stem, *heading, expected, _values(values), why))
    return cases


def _values(text: str) -> dict[str, str]:
    """Return the values of a case; a number such as "3 bar" brings its unit along in the text."""
    pairs = (pair.split("=", 1) for pair in text.split(";") if pair.strip())
    return {name.strip(): value.strip() for name, value in pairs}


def main() -> None:
    """Print for each family how many cases agree (and how many of these are refusals) or not."""
    counts: Counter[tuple[str, str]] = Counter()
    for case in all_cases():
        given, sentence = answer(case)
        if not agrees(case, given, sentence):
            counts[case.family, "disagreed"] += 1
            print(f"{case.name}\n    but: {given}. {sentence}")
            continue
        counts[case.family, "refused" if given == "refused" else "agreed"] += 1
    for family in sorted({family for family, _ in counts}):
        row = (f"{counts[family, kind]} {kind}" for kind in ("agreed", "refused", "disagreed"))
        print(f"{family}: {', '.join(row)}")


if __name__ == "__main__":
    main()
