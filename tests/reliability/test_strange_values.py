"""Strange values in every stored field: each page, report and table still comes."""

import pytest

from tests.reliability.strange_values import one_round


@pytest.mark.parametrize(("seed", "share"), [(1, 0.03), (2, 0.3), (3, 0.9)])
def test_every_page_opens_whatever_the_journals_hold(seed, share):
    """No page, report, table or form of a vessel with strange values ends in a fault."""
    opened, faults = one_round(seed, share, most=4)

    assert opened > 30
    assert faults == []
