"""Thrust as measured: what the worst failure leaves, and one thruster against its power."""

import pytest

from inspector.criteria.core.judgement import CannotJudge

# kind, constant K [N, with D in m and P in kW]; static thrust K (D P)^(2/3), a station-keeping
# standard's formula (memory)
CONSTANTS = [("open propeller", 800), ("tunnel", 900), ("azimuth in nozzle", 1200)]


@pytest.mark.parametrize(("kind", "constant"), CONSTANTS)
def test_a_thruster_is_reduced_below_85_and_weak_below_70_per_cent(judge, kind, constant):
    """Shares of its nominal thrust; recalled constants never fail."""
    nominal = constant * (1.2 * 250) ** (2 / 3) / 1000
    found = [
        judge("thruster-pull", thrust=share * nominal, kind=kind).rating
        for share in (0.851, 0.849, 0.701, 0.699)
    ]
    assert ["good", "fair", "fair", "poor"] == found


@pytest.mark.parametrize(
    ("name", "changes"),
    [("thruster-pull", {"diameter": 0.2})],
)
def test_what_lies_outside_is_refused(judge, name, changes):
    """Toy thrusters and notations below class 1 are not judged."""
    with pytest.raises(CannotJudge):
        judge(name, **changes)
