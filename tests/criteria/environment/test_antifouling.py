"""Banned antifouling and the inventory: each date and the tonnage from both sides."""

import pytest

SEEN, NONE = "certificate seen", "no certificate seen"


@pytest.mark.parametrize(
    ("band", "rating", "built", "papers"),
    [
        ("suspect under sealer", "poor", "2007-12-31", NONE),
        ("prohibited when built", None, "2008-01-01", NONE),
        ("certificate decides", None, "2007-12-31", SEEN),
        ("survey required", "poor", None, NONE),
        ("certificate decides", None, None, SEEN),
    ],
)
def test_organotin_is_suspect_on_hulls_before_2008(judge, band, rating, built, papers):
    """Without a certificate; the sealer is mentioned."""
    judgement = judge("organotin", built=built, papers=papers)
    assert (band, rating) == (judgement.band, judgement.rating)


@pytest.mark.parametrize(
    ("band", "rating", "applied", "papers"),
    [
        ("possible until renewed", "fair", "2022-12-31", NONE),
        ("banned when applied", None, "2023-01-01", NONE),
        ("possible until renewed", None, "2022-12-31", SEEN),
        ("survey required", "fair", None, NONE),
    ],
)
def test_cybutryne_is_possible_in_coats_before_2023(judge, band, rating, applied, papers):
    """And gone at the next renewal."""
    judgement = judge("cybutryne", applied=applied, papers=papers)
    assert (band, rating) == (judgement.band, judgement.rating)


@pytest.mark.parametrize(
    ("last", "applied"),
    [("2026-05-31", "2021-05-31"), ("2025-02-28", "2020-02-29"), ("2027-12-31", "2022-12-31")],
)
def test_cybutryne_goes_at_the_latest_sixty_months_after_the_coat(judge, last, applied):
    """The last day of a month stays in its month."""
    assert f"at the latest by {last}" in judge("cybutryne", applied=applied).sentence


@pytest.mark.parametrize(
    ("band", "rating", "changes"),
    [
        ("inventory seen", "good", {"inventory": "seen"}),
        ("not required by tonnage", None, {"tonnage": 499}),
        ("due later and not seen", "fair", {"tonnage": 500}),
        ("due and not seen", "poor", {"european": "yes"}),
        ("due later and not seen", "fair", {"built": None}),
        ("due and not seen", "poor", {"built": "2025-06-26"}),
        ("due later and not seen", "fair", {"built": "2025-06-25"}),
        ("not required by tonnage", None, {"tonnage": 499, "european": "yes"}),
    ],
)
def test_an_inventory_is_asked_for_by_tonnage_flag_and_date(judge, band, rating, changes):
    """500 GT; European rules first; the convention for new ships at once and for others by 2030."""
    judgement = judge("hazard-inventory", **{"inventory": "not seen", **changes})
    assert (band, rating) == (judgement.band, judgement.rating)


@pytest.mark.parametrize(
    ("due", "changes"),
    [
        ("2030-06-26", {}),
        ("2020-12-31", {"european": "yes"}),
        ("2019-05-31", {"european": "yes", "built": "2019-05-31"}),
    ],
)
def test_the_day_it_is_due_is_told(judge, due, changes):
    """So that the reader can hold it against his own calendar."""
    assert due in judge("hazard-inventory", inventory="not seen", **changes).sentence
