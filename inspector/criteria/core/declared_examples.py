"""The worked examples of a declared criterion, judged and compared with what the file says."""

import math
from collections.abc import Iterator, Sequence

from inspector.criteria.core.criterion import Criterion
from inspector.criteria.core.declared_terms import Raw
from inspector.criteria.core.judgement import CannotJudge, Judgement
from inspector.values.errors import InspectorError


def faults_of_examples(where: str, criterion: Criterion, examples: Sequence[Raw]) -> list[str]:
    """Return a sentence for each example that comes out otherwise than the file says.

    Parameters
    ----------
    where : str
        File and criterion, at the start of each sentence.
    criterion : Criterion
    examples : sequence of mapping
        Each with ``given``, and ``band``, ``rating`` and ``margin`` or ``refused``.

    Returns
    -------
    list of str
    """
    faults: list[str] = []
    for number, example in enumerate(examples, 1):
        for problem in _problems(criterion, example):
            faults.append(f"{where}, examples {number}: {problem}")
    return faults


def _problems(criterion: Criterion, example: Raw) -> Iterator[str]:
    """Yield what an example gives otherwise than the file says."""
    refused = example.get("refused")
    try:
        judgement = criterion.apply(example["given"])
    except CannotJudge as refusal:
        if refused is None or refused not in str(refusal):
            yield f"is refused: {refusal}"
        return
    except InspectorError as problem:
        # A text that asks for a unit into which its value cannot be converted.
        yield f"cannot be formatted: {problem}"
        return
    # Ten to the power of a typed slip overflows the decimals.
    except ArithmeticError:
        yield "cannot be calculated: a number is far beyond anything that can be measured."
        return
    if refused is not None:
        yield f"gives the band {judgement.band!r}; expected a refusal with {refused!r}."
    else:
        yield from _differences(judgement, example)


def _differences(judgement: Judgement, example: Raw) -> Iterator[str]:
    """Yield each part of a judgement that differs from the example."""
    for key in ("band", "rating"):
        found, expected = getattr(judgement, key), example.get(key)
        if found != expected:
            yield f"gives the {key} {found or 'none'}; expected {expected or 'none'}."
    margin, expected = judgement.margin, example.get("margin")
    if not _same_figure(margin, expected):
        yield f"gives the margin {_figure(margin)}; expected {_figure(expected)}."


def _same_figure(found: float | None, expected: float | None) -> bool:
    if found is None or expected is None:
        return found is expected
    # A margin in a file is written with a few digits.
    return math.isclose(found, expected, rel_tol=1e-4, abs_tol=1e-9)


def _figure(value: float | None) -> str:
    return "none" if value is None else f"{value:.6g}"
