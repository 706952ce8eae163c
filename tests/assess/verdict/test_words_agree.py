"""Word, units and work lines of every demo vessel say one thing."""

import pytest

from inspector.assess.model import SystemPart
from inspector.assess.work_cost import counted_lines
from inspector.demo.portfolio import prepare_in
from inspector.demo.scenario import PORTFOLIO
from inspector.services.data_folder import open_folder
from inspector.values.vocabulary import NOT_LOOKED_AT, PRICE_BOTH


def contradictions(system: SystemPart):
    """Yield a sentence for whatever of a system speaks against something else of it."""
    name, whole = system.system.name, system.whole
    staying = [unit for unit in system.units if not unit.let_go]
    words = {unit.verdict for unit in staying}
    if not whole.decision:
        if whole.verdict == "retain" and words - {"retain", NOT_LOOKED_AT}:
            yield f"{name} stays, and of its units some do not: {words}"
        if whole.verdict == "refurbish" and words <= {"retain", NOT_LOOKED_AT}:
            yield f"{name} is refurbished, and no unit is: {words}"
        if whole.verdict == "remove" and words - {"remove"}:
            yield f"{name} goes, and of its units some stay: {words}"
    yield from system.against
    at_work = [
        line
        for line in (*counted_lines(system), *system.offered)
        if line.unit not in {unit.id for unit in system.units if unit.let_go}
    ]
    if whole.verdict == "retain" and bool(at_work) != ("with work" in whole.spoken):
        yield f"{name} is read {whole.spoken!r}, with {len(at_work)} lines"
    # What is worked on or replaced is counted in the word of a system of several units.
    changed = [one for one in staying if one.verdict in ("refurbish", "remove", PRICE_BOTH)]
    several = len(system.units) > 1 and not whole.decision
    if several and whole.verdict == "refurbish" and f"of {len(staying)}" not in whole.spoken:
        yield f"{name} does not say how many of its units: {whole.spoken} ({len(changed)})"
    for unit in system.units:
        if several and unit.let_go and whole.verdict == "retain" and "removed" not in whole.spoken:
            yield f"{name} does not say that {unit.name} is removed"


@pytest.fixture(scope="module")
def assessed(tmp_path_factory):
    folder = tmp_path_factory.mktemp("demo")
    prepare_in(folder)
    data = open_folder(folder)
    yield {one.id: data.assessment_of(data.inspections.get(one.id)) for one in PORTFOLIO}
    data.close()


@pytest.mark.parametrize("vessel", [one.id for one in PORTFOLIO])
def test_nothing_of_a_demo_vessel_contradicts_its_words(assessed, vessel):
    """Every system of every demo: its word follows from its units and lines, counts and all."""
    systems = assessed[vessel].systems

    assert systems
    assert [] == [found for system in systems for found in contradictions(system)]
