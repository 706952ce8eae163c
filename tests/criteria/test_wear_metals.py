"""Wear metals: both limits of each, and no judgement without hours on the oil."""

import pytest

from inspector.criteria.judgement import CannotJudge
from inspector.criteria.wear_metals import METALS


@pytest.mark.parametrize("metal", METALS)
def test_each_metal_is_watched_and_acted_on(judge, metal):
    """Good to the first figure, fair to the second, poor above, and never failed."""
    watch, act, _ = METALS[metal]
    found = [judge("wear-metal", metal=metal, content=content).rating for content in (watch, watch + 1, act, act + 1)]
    assert ["good", "fair", "fair", "poor"] == found


@pytest.mark.parametrize("oil_hours", [None, 0])
def test_without_hours_a_metal_is_a_trend_only(judge, oil_hours):
    """500 ppm of iron in a bottle of unknown age give no rating."""
    judgement = judge("wear-metal", content=500, oil_hours=oil_hours)
    assert ("trend only", None) == (judgement.band, judgement.rating)


def test_the_rate_is_told_beside_the_figure(judge):
    """48 ppm after 400 hours are 120 in a thousand, after 2000 hours 24."""
    assert "120 ppm in 1000 h" in judge("wear-metal", content=48).sentence
    assert "24 ppm in 1000 h" in judge("wear-metal", content=48, oil_hours=2000).sentence


@pytest.mark.parametrize("changes", [{"content": -1}, {"metal": "gold"}])
def test_what_lies_outside_is_refused(judge, changes):
    """No negative content, no metal without limits."""
    with pytest.raises(CannotJudge):
        judge("wear-metal", **changes)
