"""Water in oil: both limits of each service, and the factor between per cent and ppm."""

import pytest

from inspector.criteria.judgement import CannotJudge
from inspector.criteria.oil import LIMITS


@pytest.mark.parametrize("service", LIMITS)
def test_each_service_is_dry_to_its_first_limit_and_acts_from_its_second(judge, service):
    """Watch begins above the first figure, action on the second."""
    watch, act = LIMITS[service]
    between = [(water, "watch", "fair") for water in (watch + 0.001, act - 0.001)]
    for water, band, rating in [(watch, "dry", "good"), *between, (act, "act", "poor")]:
        judgement = judge("oil-water", water=water, service=service)
        assert (band, rating) == (judgement.band, judgement.rating)


def test_trade_guidance_never_fails_an_oil(judge):
    """Even an emulsion is poor, because nobody publishes the limit."""
    judgement = judge("oil-water", water=100)
    assert (judgement.rating, judgement.source.mark) == ("poor", "common practice")


def test_the_sentence_gives_ppm_beside_per_cent(judge):
    """0.2 % is 2000 ppm: laboratories write the one, forms the other."""
    assert "0.2 % (2000 ppm)" in judge("oil-water", water=0.2).sentence


@pytest.mark.parametrize("water", [-0.01, 100.1, "wet"])
def test_what_is_no_share_is_refused(judge, water):
    """A share of water lies between 0 and 100 %; a ppm figure typed as per cent is caught."""
    with pytest.raises(CannotJudge):
        judge("oil-water", water=water)


def test_salt_calls_for_action_at_any_figure(judge):
    """Sea water in the oil is acted on, however little; fresh water is judged by its share."""
    assert ["act", "dry"] == [judge("oil-water", water=0.001, salt=salt).band for salt in ("yes", "no")]
