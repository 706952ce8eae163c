"""Water and wear metals in oil: both limits of each, and what overrides them."""

import pytest

from inspector.criteria.core.judgement import CannotJudge

# service -> watch above, act from [%]; common practice, typed from trade guidance in ppm: gear, hub
# and thruster oil 500 and 1000, hydraulic oil 200 and 500, engine oil 2000 and 5000, stern tube oil
# 5000 and 10 000
PRACTICE = [
    ("thruster", 0.05, 0.10),
    ("propeller hub", 0.05, 0.10),
    ("gearbox", 0.05, 0.10),
    ("hydraulic", 0.02, 0.05),
    ("engine", 0.2, 0.5),
    ("stern tube", 0.5, 1.0),
]


@pytest.mark.parametrize(("service", "watch", "act"), PRACTICE)
def test_each_service_is_dry_to_its_first_limit_and_acts_from_its_second(
    judge, service, watch, act
):
    """Watch begins above the first figure, action on the second."""
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
    assert ["act", "dry"] == [
        judge("oil-water", water=0.001, salt=salt).band for salt in ("yes", "no")
    ]


# metal, watch above, act above [ppm]; common practice for medium and high speed diesels, wide
# scatter
PRACTICE_WEAR_METALS = [
    ("iron", 60, 100),
    ("copper", 25, 50),
    ("lead", 20, 40),
    ("tin", 10, 20),
    ("aluminium", 15, 25),
    ("chromium", 10, 20),
    ("silicon", 15, 25),
    ("sodium", 30, 80),
]


@pytest.mark.parametrize(("metal", "watch", "act"), PRACTICE_WEAR_METALS)
def test_each_metal_is_watched_and_acted_on(judge, metal, watch, act):
    """Good to the first figure, fair to the second, poor above, and never failed."""
    found = [
        judge("wear-metal", metal=metal, content=content).rating
        for content in (watch, watch + 1, act, act + 1)
    ]
    assert ["good", "fair", "fair", "poor"] == found


@pytest.mark.parametrize("oil_hours", [None, 0])
def test_without_hours_a_metal_is_a_trend_only(judge, oil_hours):
    """500 ppm of iron in a bottle of unknown age give no rating."""
    judgement = judge("wear-metal", content=500, oil_hours=oil_hours)
    assert ("trend only", None) == (judgement.band, judgement.rating)


def test_the_rate_is_beside_the_figure(judge):
    """48 ppm after 400 hours are 120 in a thousand, after 2000 hours 24."""
    assert "120 ppm in 1000 h" in judge("wear-metal", content=48).sentence
    assert "24 ppm in 1000 h" in judge("wear-metal", content=48, oil_hours=2000).sentence


@pytest.mark.parametrize("changes", [{"content": -1}, {"metal": "gold"}])
def test_what_lies_outside_is_refused(judge, changes):
    """No negative content, no metal without limits."""
    with pytest.raises(CannotJudge):
        judge("wear-metal", **changes)
