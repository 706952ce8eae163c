"""Ozone-depleting gases and halon: each date from both sides, and the unknown date."""

import pytest


@pytest.mark.parametrize(
    ("band", "rating", "cylinders", "installed"),
    [
        ("none seen", None, 0, None),
        ("to be decommissioned", "poor", 1, None),
        ("to be decommissioned", "poor", 2, "1994-09-30"),
        ("banned when installed", "poor", 2, "1994-10-01"),
        ("banned when installed", "poor", 2, "2005-05-18"),
        ("banned when installed", "failed", 2, "2005-05-19"),
    ],
)
def test_halon_is_cost_and_later_a_breach(judge, band, rating, cylinders, installed):
    """From 2005 the date was read, from 1994 it is recalled and may only warn."""
    judgement = judge("halon", cylinders=cylinders, installed=installed)
    assert (band, rating) == (judgement.band, judgement.rating)


@pytest.mark.parametrize(
    ("band", "rating", "built"),
    [
        ("CFC, halon and HCFC possible", "poor", "2005-05-18"),
        ("HCFC possible", "fair", "2005-05-19"),
        ("HCFC possible", "fair", "2019-12-31"),
        ("prohibited when built", None, "2020-01-01"),
    ],
)
def test_each_date_changes_which_gases_are_possible(judge, band, rating, built):
    """The day of a ban belongs to the ban."""
    judgement = judge("ozone-depleting", papers="no report seen", built=built)
    assert (band, rating) == (judgement.band, judgement.rating)
