"""Every public function of the conversion is documented as its signature says, with its source."""

import ast
import re
from pathlib import Path

import pytest

ROOM = Path(__file__).parents[2] / "inspector" / "conversion"
# These read, arrange and print; what they calculate is documented where it is calculated.
WITHOUT_SOURCE = {
    "core",
    "chapter",
    "contents",
    "particulars",
    "presentation",
    "side_by_side",
    "money_drawings",
    "power_drawings",
    "power_tables",
    "power_warnings",
    "stability_warnings",
}
_SECTION = re.compile(r"^(\w[\w ]*)\n-{3,}$", re.MULTILINE)
_PARAMETERS = re.compile(r"^(\*{0,2}\w+(?:, \*{0,2}\w+)*) : \S", re.MULTILINE)


def functions():
    """Every public function and method, by module and qualified name."""
    for path in sorted(ROOM.rglob("*.py")):
        module = str(path.relative_to(ROOM).with_suffix("")).replace("/", ".")
        yield from _functions_of(module, ast.parse(path.read_text()).body, "")


def _functions_of(module, body, prefix):
    for node in body:
        if isinstance(node, ast.ClassDef) and not node.name.startswith("_"):
            yield from _functions_of(module, node.body, f"{node.name}.")
        elif isinstance(node, ast.FunctionDef) and not node.name.startswith("_"):
            yield pytest.param(module, node, id=f"{module}:{prefix}{node.name}")


every_function = pytest.mark.parametrize(("module", "node"), list(functions()))


def sections(node):
    """The sections of a NumPy docstring: title -> text; what is before the first is under ''."""
    text = ast.get_docstring(node) or ""
    parts = _SECTION.split(text)
    return {"": parts[0], **dict(zip(parts[1::2], parts[2::2], strict=True))}


def parameters(node):
    """The names of the signature as a docstring writes them, without self and cls."""
    asked = node.args
    names = [one.arg for one in (*asked.posonlyargs, *asked.args, *asked.kwonlyargs)]
    names += [f"*{asked.vararg.arg}"] if asked.vararg else []
    names += [f"**{asked.kwarg.arg}"] if asked.kwarg else []
    return [name for name in names if name not in ("self", "cls")]


def is_property(node):
    return any("property" in ast.unparse(one) for one in node.decorator_list)


@every_function
def test_every_parameter_is_documented_with_its_type(module, node):
    """No parameter is missing, and none is documented that does not exist."""
    found = _PARAMETERS.findall(sections(node).get("Parameters", ""))

    assert sorted(parameters(node)) == sorted(name for row in found for name in row.split(", "))


@every_function
def test_a_function_says_what_it_is_and_what_it_returns(module, node):
    """A summary in one sentence, and a section for the result; a property is its result."""
    told = sections(node)
    summary = told[""].strip()

    assert summary
    assert summary.split("\n\n")[0].endswith(".")
    nothing = node.returns is None or ast.unparse(node.returns) == "None"
    short = not parameters(node) and summary.startswith("Return ")
    assert nothing or short or is_property(node) or {"Returns", "Yields"} & set(told)


@every_function
def test_a_calculation_names_its_source_or_that_the_model_is_our_own(module, node):
    """Whoever checks a figure finds where its formula is printed."""
    if WITHOUT_SOURCE & set(module.split(".")) or is_property(node):
        return
    assert "References" in sections(node) or "our own" in (ast.get_docstring(node) or "")
