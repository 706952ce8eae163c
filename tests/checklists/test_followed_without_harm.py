"""What could hurt a junior who follows a sheet to the letter: each line once found, kept mended."""

import pytest

from inspector.checklists.loader import read_library
from inspector.places import shipped

# Check -> words that its text must hold, and cautions right before the act. Common practice, no
# source: each stands for a way in which people were hurt, or a ship.
ACTS = {
    "deck-machinery/windlass-brake": ("stopper closed", {"tight-lines"}),
    "deck-machinery/brake-holds": ("master's leave", {"tight-lines", "divers-and-boats"}),
    "deck-machinery/crane-steel": ("boom must be in its rest", {"overhead-load"}),
    "deck-machinery/crane-rams": ("from a distance", {"overhead-load"}),
    "deck-machinery/anchors": ("not from below", {"overhead-load"}),
    "accommodation/behind-linings": ("first read the asbestos paper", {"dust-and-lagging"}),
    "accommodation/ducts": ("first read the asbestos paper", {"dust-and-lagging"}),
    "hazardous-materials/asbestos-open": ("read the asbestos paper first", {"dust-and-lagging"}),
    "hazardous-materials/asbestos-house": ("read the asbestos paper first", {"dust-and-lagging"}),
    "accommodation/toilets": ("stand back", {"foul-gas"}),
    "accommodation/nose-and-mould": ("one breath from outside", {"foul-gas"}),
    "accommodation/hot-water": ("no shower", {"legionella"}),
    "accommodation/chillers": ("crankcase heater on since yesterday", {"stagnant-plant"}),
    "reefers/compressor": ("crankcase heater on since yesterday", {"stagnant-plant"}),
    "reefers/stores-lift": ("two metres off", {"turning-parts"}),
    "fire-protection/air-compressor": ("is not run for you", {"stored-pressure"}),
    "fire-protection/mist-or-sprinkler": ("engine room sections stay shut", {"stored-pressure"}),
    "fire-protection/gas-charge": ("no cylinder is lifted", {"co2-space"}),
    "life-saving/lifebuoys": ("eyes only", {"pyrotechnics"}),
    "life-saving/hooks": ("touch no handle", {"boat-hooks"}),
    "life-saving/boat-lowered": ("empty boat", {"boat-hooks", "divers-and-boats"}),
    "life-saving/boat-engine": ("only the crew in it", {"boat-hooks"}),
    "life-saving/boat-shell": ("in its cradle", {"boat-hooks"}),
    "landing-and-boarding/shell-doors": ("nobody in the path", {"stored-pressure", "over-water"}),
    "landing-and-boarding/boats-themselves": ("in its chock", {"boat-hooks"}),
    "bridge/autopilot": ("nothing is disconnected under way", set()),
    "bridge/lights-and-whistle": ("nobody climbs", set()),
    "environment/incinerator": ("lit at sea only", {"hot-surface"}),
    "environment/separator-run": ("back to the tank", {"overboard-discharge"}),
}
DATES = {"service-due", "printed-expiry"}
SPLIT = ("fire-protection", "life-saving", "deck-machinery", "landing-and-boarding", "bridge")


@pytest.fixture(scope="module")
def library():
    return read_library(shipped("checklists"))


@pytest.mark.parametrize("name", ACTS)
def test_an_act_that_hurt_somebody_has_its_condition_and_its_caution(library, name):
    """The condition is in the words that are read before the act, the caution right beside it."""
    system, _, check_id = name.partition("/")
    check = library.systems[system].check(check_id)
    words, cautions = ACTS[name]

    assert words in f"{check.ask} {check.look}".casefold()
    assert cautions <= set(check.cautions)


@pytest.mark.parametrize("system", SPLIT)
def test_a_printed_date_rates_paper_and_never_iron(library, system):
    """Where a date proposes the rating, the check is one of papers or says that it asks dates."""
    assert [] == [
        check.id
        for check in library.systems[system].checks
        if check.criterion in DATES and check.needs != "paper" and "date" not in check.title.lower()
    ]


def test_noise_alongside_proves_nothing_and_guests_are_asked_at_sea(library):
    """The limit is one for crew; what guests sleep in is measured at cruise."""
    house = library.systems["accommodation"]

    assert "sighted" == house.check("noise").proof
    assert ("sea", "tested") == (
        house.check("noise-at-cruise").needs,
        house.check("noise-at-cruise").proof,
    )
