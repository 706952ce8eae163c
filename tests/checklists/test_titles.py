"""A title asks one thing, so that one tap can answer it."""

import re

import pytest

from inspector.checklists.loader import read_library
from inspector.places import shipped

JOINT = re.compile(r"[,:;]|\b(and|or)\b")
# Two things at most, which are looked at and rated as one (seats and floors, locks and rubber).
MOST_JOINTS = 1


@pytest.fixture(scope="module")
def titles():
    library = read_library(shipped("checklists"))
    return {
        f"{system.id}/{check.id}": check.title
        for system in library.systems.values()
        for check in system.checks
    }


def test_a_title_joins_no_more_than_two_things(titles):
    """Who reads the title knows what the rating is of."""
    assert {} == {
        name: title for name, title in titles.items() if len(JOINT.findall(title)) > MOST_JOINTS
    }


def test_a_title_fits_one_line_of_a_phone_or_two(titles):
    """At most 60 characters, two lines of 390 pixels."""
    assert {} == {name: title for name, title in titles.items() if len(title) > 60}


@pytest.mark.parametrize(
    ("title", "joints"),
    [("Windows, wipers and heating", 2), ("Wipers and heated panes", 1), ("Sandbags", 0)],
)
def test_joints_are_counted_as_whole_words(title, joints):
    """The guard above sees commas and words, and no letters within a word."""
    assert joints == len(JOINT.findall(title))
