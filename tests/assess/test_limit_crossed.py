"""The limit that is shown beside a rating is the one that its reading has crossed."""

import tomllib
from pathlib import Path

import pytest

from inspector.assess.limit_crossed import with_limit_crossed
from inspector.checklists.registry import criterion
from inspector.criteria.core.judgement import CannotJudge
from inspector.values.vocabulary import RATINGS

VALUES = tomllib.loads(
    (Path(__file__).parents[1] / "criteria" / "valid_values.toml").read_text(encoding="utf-8")
)
WITH_BANDS = sorted(name for name in VALUES if criterion(name).bands is not None)


def judged(name, **values):
    rule = criterion(name)
    return with_limit_crossed(rule, values, None, rule.apply(values))


@pytest.mark.parametrize(
    ("velocity", "rating", "limit", "margin"),
    [
        (1.0, "good", 4.5, 3.5),
        (3.0, "good", 4.5, 1.5),
        (4.5, "good", 4.5, 0.0),
        (5.4, "poor", 4.5, -0.9),
        (9.0, "poor", 4.5, -4.5),
    ],
)
def test_a_reading_between_two_limits_shows_the_one_behind_it(velocity, rating, limit, margin):
    """Group 1 on rigid supports runs unrestricted to 4.5 mm/s, held at poor beyond 7.1 too."""
    found = judged("machine-vibration", velocity=velocity, group="1", support="rigid")
    assert (rating, limit) == (found.rating, found.limit)
    assert margin == pytest.approx(found.margin)


@pytest.mark.parametrize("name", WITH_BANDS)
def test_a_good_reading_is_within_its_limit_and_a_bad_one_beyond(name):
    """Whatever is read: the sign of the margin never contradicts the rating."""
    rule, values = criterion(name), dict(VALUES[name])
    deciding = rule.deciding_input
    start = float(values.get(deciding) or 1)
    seen = set()
    for factor in (0.01, 0.1, 0.5, 0.8, 0.95, 1, 1.05, 1.3, 2, 5, 20):
        values[deciding] = start * factor
        try:
            found = judged(name, **values)
        except CannotJudge:
            continue
        seen.add(found.rating)
        if found.margin is None or found.rating is None:
            continue
        ratings = [band.rating for band in rule.bands_for(values).bands if band.rating]
        # Where all rated bands are alike nothing better is published to be measured from.
        if len(set(ratings)) > 1 and found.rating == min(ratings, key=RATINGS.index):
            assert found.margin >= 0
        else:
            assert found.rating in ("good", "fair") or found.margin <= 0
    assert seen
