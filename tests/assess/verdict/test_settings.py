"""Settings of the rules as typed: read and refused like every field, else the default."""

import pytest

from inspector.assess.verdict.settings import (
    DEFAULTS,
    SETTINGS,
    Settings,
    read_settings,
    settings_used,
)


def test_the_default_of_each_setting_reads_back_as_itself():
    """What a form shows as default is what the rules use without it."""
    for setting in SETTINGS:
        assert getattr(DEFAULTS, setting.field.name) == setting.read(setting.default)


def test_a_share_is_typed_in_per_cent_and_used_as_a_share():
    """60 % is 0.6 of one; what is not typed has its default."""
    settings, faults = read_settings({"coverage": "75", "late_factor": "2,5"})

    assert (Settings(coverage=0.75, late_factor=2.5), ()) == (settings, faults)


@pytest.mark.parametrize(
    ("name", "typed", "part"),
    [
        ("coverage", "101", "Enough seen: 101 % is above 100 %"),
        ("retain_from", "0", "Retain from: 0 is below 1"),
        ("horizon", "soon", "'soon' is not a number"),
        ("buying_worth", "1.200", "can be read in two ways"),
    ],
)
def test_a_setting_that_cannot_be_is_named_and_has_its_default(name, typed, part):
    """One sentence, and the rules go on."""
    settings, (fault,) = read_settings({name: typed})

    assert part in fault
    assert DEFAULTS == settings


def test_a_level_of_an_older_version_is_passed_over():
    """What the rules no longer use is neither used nor called a fault."""
    assert (DEFAULTS, ()) == read_settings({"refurbish_from": "80"})


def test_the_settings_used_are_listed_with_what_differs_from_the_default():
    """For the report: label, value with its unit, and whether it is the default."""
    listed = {label: rest for label, *rest in settings_used(Settings(discount_rate=0.07))}

    assert ["7 %", False] == listed["Discount rate"]
    assert ["45 %", True] == listed["Enough seen"]
    assert ["not set", True] == listed["Horizon"]
