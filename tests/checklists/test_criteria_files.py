"""The shipped files of criteria: no mistakes, and every worked example comes out as written."""

import tomllib

import pytest

from inspector.checklists.criteria_files import shipped_files
from inspector.checklists.registry import CRITERIA
from inspector.criteria.core.declared_examples import faults_of_examples
from inspector.criteria.core.declared_faults import faults_of_file

FILES = {path.name: tomllib.loads(path.read_text(encoding="utf-8")) for path in shipped_files()}
TABLES = {raw["id"]: raw for data in FILES.values() for raw in data["criterion"]}
every_file = pytest.mark.parametrize("name", FILES)
everyone = pytest.mark.parametrize("name", TABLES)


@every_file
def test_a_shipped_file_has_no_mistakes(name):
    """Form, names and examples of every shipped file are right."""
    assert [] == faults_of_file(name, FILES[name], taken={})


@everyone
def test_a_worked_example_comes_out_as_written(name):
    """Band, rating and margin of each example are those of the criterion as it is registered."""
    assert [] == faults_of_examples(name, CRITERIA[name], TABLES[name]["examples"])


@everyone
def test_every_band_and_every_refusal_has_an_example(name):
    """A band that no example reaches could say anything."""
    raw = TABLES[name]
    bands = {band["band"] for band in raw["bands"]}
    refused = [example for example in raw["examples"] if "refused" in example]

    assert bands == {example.get("band") for example in raw["examples"]} - {None}
    assert len(refused) >= len(raw.get("refused", ()))


@everyone
def test_every_row_of_a_table_has_an_example(name):
    """Each choice by which a limit, a figure or a word is chosen is tried at least once."""
    raw = TABLES[name]
    tables = [*raw.get("limits", ()), *raw.get("figures", {}).values()]
    inputs = {asked["id"]: asked for asked in raw["inputs"]}
    names = [table["by"] for table in tables if isinstance(table, dict) and "by" in table]
    flat = {name for by in names for name in ([by] if isinstance(by, str) else by)}
    for asked in flat:
        tried = {example["given"].get(asked) for example in raw["examples"]}
        assert set(inputs[asked].get("choices", ())) <= tried, asked


@everyone
def test_an_example_says_where_it_comes_from(name):
    """Who reads the file can look the example up, or calculate it again."""
    for example in TABLES[name]["examples"]:
        assert len(example["from"]) > 10
