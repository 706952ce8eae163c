"""Every public function of the report is documented as its signature says."""

import ast
from pathlib import Path

import pytest

from tests.conversion import test_docstrings as conversion

ROOM = Path(__file__).parents[2] / "inspector" / "report"
# ReportLab calls these by its own names and signatures.
HOOKS = {"draw", "wrap", "split", "afterFlowable"}


def functions():
    """Every public function and method of the room that is not a hook."""
    for path in sorted(ROOM.rglob("*.py")):
        for found in conversion._functions_of(path.stem, ast.parse(path.read_text()).body, ""):
            if found.values[1].name not in HOOKS:
                yield found


every_function = pytest.mark.parametrize(("module", "node"), list(functions()))


@every_function
def test_every_parameter_is_documented_with_its_type(module, node):
    """No parameter is missing, and none is documented that does not exist."""
    conversion.test_every_parameter_is_documented_with_its_type(module, node)


@every_function
def test_a_function_says_what_it_is_and_what_it_returns(module, node):
    """A summary in one sentence, and a section for the result."""
    conversion.test_a_function_says_what_it_is_and_what_it_returns(module, node)
