"""The ship of the attack tests."""

import pytest

from tests.reliability.ship import Ship


@pytest.fixture(scope="module")
def ship(tmp_path_factory):
    ship = Ship(tmp_path_factory.mktemp("ship"))
    yield ship
    ship.close()
