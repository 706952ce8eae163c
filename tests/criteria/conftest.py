"""Fixtures for the criteria: judge by name, and one set of valid values for each criterion."""

import tomllib
from pathlib import Path

import pytest

from inspector.checklists.registry import criterion

VALID = tomllib.loads((Path(__file__).parent / "valid_values.toml").read_text(encoding="utf-8"))


@pytest.fixture
def judge():
    """Judge values by the name of a criterion, over the valid ones where a value is not given."""

    def apply(name, **values):
        return criterion(name).apply({**VALID[name], **values})

    return apply


@pytest.fixture
def valid():
    """Return a copy of the valid values of a criterion."""
    return lambda name: dict(VALID[name])
