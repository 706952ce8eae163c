"""A whole small inspection, from entries to the assessment that screens and report show."""

from dataclasses import replace

import pytest

from inspector.assess.assessment import assess
from inspector.assess.from_state import read_inspection
from inspector.assess.verdict.settings import Settings
from inspector.assess.verdict_facts import facts_of_unit
from inspector.checklists.loader import read_library
from inspector.record.state import State

SHA = "a" * 64


def part(assessment, system, unit):
    found = next(one for one in assessment.systems if one.system.id == system)
    return found.whole if unit == "all" else next(one for one in found.units if one.id == unit)


def result(assessment, system, unit, check):
    return next(one for one in part(assessment, system, unit).results if one.check.id == check)


def all_good(write, unit, system="thrusters", checks=("oil", "tunnel", "noise")):
    for check in checks:
        write.rate(f"{system}/{unit}/{check}", "good")
    return write


def test_an_empty_state_gives_an_empty_assessment(library):
    """Nothing recorded, nothing shown, nothing raised."""
    assert () == assess(read_inspection(State()), library).systems


def test_only_systems_with_units_are_assessed_in_the_library_s_order(library, write):
    """Engines come before thrusters by their order, whichever was entered first."""
    assert ["engines", "thrusters"] == [
        one.system.id for one in assess(read_inspection(write.state), library).systems
    ]


def test_a_unit_taken_out_again_is_not_assessed(library, write):
    """A unit that is gone leaves, and with its last unit a system leaves."""
    write("unit/engines/main", "gone", True)("unit/thrusters/aft", "gone", True)

    found = assess(read_inspection(write.state), library)

    assert [["bow"]] == [[unit.id for unit in one.units] for one in found.systems]


def test_units_keep_the_order_in_which_they_were_entered(library, write):
    """Bow before aft, as entered, not by the alphabet."""
    thrusters = assess(read_inspection(write.state), library).systems[1]

    assert ["Bow thruster", "Aft thruster"] == [unit.name for unit in thrusters.units]


def test_the_judgement_s_rating_counts_until_the_surveyor_answers(library, write):
    """A reading alone rates the check; the surveyor's rating counts once he gives it."""
    write("sheet/thrusters/bow/oil", "reading/water", {"value": "5", "unit": "%"})
    before = result(assess(read_inspection(write.state), library), "thrusters", "bow", "oil")
    write.rate("thrusters/bow/oil", "good")
    after = result(assess(read_inspection(write.state), library), "thrusters", "bow", "oil")

    assert before.rating == before.judgement.rating != "good"
    assert ("", False) == (before.answer, before.overruled)
    assert ("good", True) == (after.rating, after.overruled)


def test_not_seen_beats_a_judgement_and_lowers_coverage(library, write):
    """Who says not seen has not seen it, whatever figure the crew's paper gave."""
    write("sheet/thrusters/bow/oil", "reading/water", {"value": "0.01", "unit": "%"})
    write.rate("thrusters/bow/oil", "not seen: no access").rate(
        "thrusters/bow/tunnel", "good"
    ).rate("thrusters/bow/noise", "good")

    found = part(assess(read_inspection(write.state), library), "thrusters", "bow")

    assert 0.5 == found.condition.coverage
    assert ("retain", "so far", ("Bow thruster: Water in the oil",)) == (
        found.proposal.verdict,
        found.proposal.firmness,
        found.proposal.deciding,
    )


def test_not_fitted_leaves_the_set(library, write):
    """A check that does not apply has no weight."""
    write.rate("thrusters/bow/oil", "not fitted").rate("thrusters/bow/tunnel", "good").rate(
        "thrusters/bow/noise", "good"
    )

    found = part(assess(read_inspection(write.state), library), "thrusters", "bow")

    assert (1.0, 2, "retain") == (
        found.condition.coverage,
        found.condition.applicable,
        found.verdict,
    )


@pytest.mark.parametrize(("first", "second"), [("good", "poor"), ("poor", "good")])
def test_of_two_people_who_differ_the_worse_answer_counts(library, write, first, second):
    """Whichever came later, until it is settled; the disagreement is shown and counted."""
    write.rate("thrusters/bow/tunnel", first).rate(
        "thrusters/bow/tunnel", second, device="phone", who="CD", blind=True
    )

    found = assess(read_inspection(write.state), library)
    tunnel = result(found, "thrusters", "bow", "tunnel")

    assert ("poor", "good", True, 1) == (
        tunnel.rating,
        tunnel.better,
        tunnel.disputed,
        found.disputes,
    )


def test_of_two_readings_that_differ_the_worse_judgement_counts(library, write):
    """5 % of water against 0.01 %: the oil is as bad as the worse bottle says."""
    for device, value in (("tablet", "5"), ("phone", "0.01")):
        write(
            "sheet/thrusters/bow/oil",
            "reading/water",
            {"value": value, "unit": "%"},
            device=device,
            blind=True,
        )

    oil = result(assess(read_inspection(write.state), library), "thrusters", "bow", "oil")

    assert ("poor", "good") == (oil.rating, oil.better)


def test_of_two_depths_the_lesser_counts(library, write):
    """Who says tested does not outvote who says that he was only told."""
    write.rate("thrusters/bow/oil", "good")
    for device, depth in (("tablet", "tested"), ("phone", "reported")):
        write("sheet/thrusters/bow/oil", "depth", depth, device=device, blind=True)

    oil = result(assess(read_inspection(write.state), library), "thrusters", "bow", "oil")

    assert ("reported", False) == (oil.depth, oil.seen)


def test_the_whole_system_counts_all_checks_of_its_units(library, write):
    """One good and one failed tunnel of equal weight make 50, with 6 of 20 weights seen."""
    write.rate("thrusters/bow/tunnel", "good").rate("thrusters/aft/tunnel", "failed")

    whole = part(assess(read_inspection(write.state), library), "thrusters", "all")

    assert (50.0, 0.3, 6) == (
        whole.condition.points,
        whole.condition.coverage,
        whole.condition.applicable,
    )


def test_the_need_comes_from_the_brief(library, write):
    """What the client does not want goes, and an unknown word says nothing."""
    write("brief", "need/thrusters", "unwanted")("brief", "need/engines", "maybe")

    found = assess(read_inspection(write.state), library)

    assert ("remove", "") == (
        part(found, "thrusters", "bow").verdict,
        part(found, "engines", "main").facts.need,
    )


def engine(write, certificate, keel="2012-03-01"):
    write("vessel", "built", keel)(
        "sheet/engines/main/tier", "reading/speed", {"value": "1800", "unit": "rpm"}
    )
    write("sheet/engines/main/tier", "reading/certificate", {"value": certificate})
    return all_good(write, "main", "engines", ("plate", "look"))


def test_a_failed_law_comes_before_condition(library, write):
    """An engine below the tier that its keel date asks for cannot stay, however good it is."""
    found = part(assess(read_inspection(engine(write, "I").state), library), "engines", "main")

    assert ("refurbish or remove", "law, not priced") == (found.verdict, found.proposal.rule)
    assert found.facts.law[0] in found.proposal.reasons
    assert "2012-03-01" in found.facts.law[0]


def test_a_paper_that_is_only_missing_makes_no_law(library, write):
    """No certificate at hand is poor, not forbidden."""
    assert (
        ()
        == part(
            assess(read_inspection(engine(write, "none").state), library), "engines", "main"
        ).facts.law
    )


def test_the_life_of_the_plate_is_taken_unless_the_surveyor_gives_one(library, write):
    """10 mm of 2006, 9 mm in 2026: 0.05 mm a year; the surveyor's own figure comes first."""
    write("vessel", "year", "2006")("brief", "horizon", "10")
    for name, value in (("as_built", "10"), ("measured", "9")):
        write("sheet/engines/main/plate", f"reading/{name}", {"value": value, "unit": "mm"})
    plate = result(assess(read_inspection(write.state), library), "engines", "main", "plate")
    by_plate = part(
        assess(read_inspection(write.state), library), "engines", "all"
    ).facts.life_years
    write("verdict/engines/main", "life_years", "4")
    own = part(assess(read_inspection(write.state), library), "engines", "all").facts

    assert plate.judgement.value == by_plate
    assert (4, 10) == (own.life_years, own.horizon)


def line(write, id, unit, act, likely, system="thrusters"):
    for name, value in (
        ("system", system),
        ("unit", unit),
        ("act", act),
        ("likely", likely),
        ("text", "Work"),
    ):
        write(f"scope/{id}", name, value)
    return write


def test_costs_are_summed_by_act_and_the_whole_adds_what_is_for_all(library, write):
    """Lines count with their unit and the whole; what is taken out or unpriced adds nothing."""
    line(write, "a", "bow", "refurbish", "10 000")
    line(write, "b", "bow", "refurbish", "5000")
    line(write, "c", "aft", "replace", "100000")
    line(write, "d", "all", "refurbish", "700.50")
    line(write, "e", "bow", "refurbish", "")
    line(write, "f", "bow", "refurbish", "999")("scope/f", "gone", True)

    found = assess(read_inspection(write.state), library)
    bow, whole = part(found, "thrusters", "bow").facts, part(found, "thrusters", "all").facts

    assert (15000, None) == (bow.refurbish_cost, bow.replace_cost)
    assert (15700.5, 100000) == (whole.refurbish_cost, whole.replace_cost)
    assert ["a", "b", "c", "d", "e"] == [one.id for one in found.systems[1].lines]


def test_too_dear_a_repair_is_proposed_for_removal(library, write):
    """Worn, and refurbishing at 70 % of replacing: it goes."""
    for check in ("oil", "tunnel", "noise"):
        write.rate(f"thrusters/bow/{check}", "poor")
    line(write, "a", "bow", "refurbish", "70")
    line(write, "b", "bow", "replace", "100")

    assert (
        "too dear"
        == part(assess(read_inspection(write.state), library), "thrusters", "bow").proposal.rule
    )


def test_the_surveyor_s_decision_is_beside_the_proposal(library, write):
    """His word is the verdict, the proposal stays readable; a word that is none is passed over."""
    all_good(write, "bow")("verdict/thrusters/bow", "decision", "remove")(
        "verdict/thrusters/bow", "reason", "No use for it."
    )
    write("verdict/thrusters/aft", "decision", "burn")

    found = assess(read_inspection(write.state), library)
    bow = part(found, "thrusters", "bow")

    assert ("remove", "retain", "No use for it.") == (bow.verdict, bow.proposal.verdict, bow.reason)
    assert "" == part(found, "thrusters", "aft").decision


def test_findings_and_photos_are_numbered_in_the_order_of_their_first_entry(library, write):
    """Later edits do not renumber; a finding taken out leaves no gap."""
    write("finding/zz", "title", "First")("finding/aa", "title", "Second")(
        "finding/mm", "title", "Third"
    )
    write(f"photo/{'b' * 64}", "on", "finding/aa")(f"photo/{SHA}", "on", "sheet/thrusters/bow/oil")
    write("finding/zz", "gone", True)("finding/aa", "on", "thrusters/bow")(
        "finding/aa", "urgency", "danger now"
    )

    found = assess(read_inspection(write.state), library)

    assert [(1, "Second", "Bow thruster"), (2, "Third", "")] == [
        (one.number, one.title, one.unit_name) for one in found.findings
    ]
    assert ("b" * 64,) == found.findings[0].photos
    assert [(1, "Finding 1: Second"), (2, "Bow thruster: Water in the oil")] == [
        (one.number, one.place) for one in found.photos
    ]
    assert (SHA,) == result(found, "thrusters", "bow", "oil").photos


def test_an_open_danger_is_a_reason_beside_the_word(library, write):
    """A danger now is named first; it is a finding of its own and does not turn the word."""
    all_good(all_good(write, "bow"), "aft")("finding/d", "title", "Guard missing")(
        "finding/d", "urgency", "danger now"
    )("finding/d", "on", "thrusters/bow")

    bow = part(assess(read_inspection(write.state), library), "thrusters", "bow")

    assert ("retain", "An open danger: Guard missing.") == (bow.verdict, bow.proposal.reasons[0])


def test_one_failed_unit_does_not_send_the_whole_system_away(library, write):
    """Water in one thruster's oil: that one is mended at least, and the system says which."""
    all_good(all_good(write, "bow"), "aft").rate("thrusters/aft/oil", "failed")

    whole = part(assess(read_inspection(write.state), library), "thrusters", "all")

    assert "refurbish, at least (1 of 2)" == whole.spoken
    assert "1 sound, Aft thruster needs work." == whole.proposal.counts
    assert None is whole.condition.shown


def test_what_is_said_of_the_whole_holds_for_each_unit_without_its_own(library, write):
    """Law, life and parts typed for the system reach its units; a unit's own come first."""
    write("verdict/thrusters/all", "law", "a ban of the flag")
    write("verdict/thrusters/all", "life_years", "4")("verdict/thrusters/all", "parts", "made")
    write("verdict/thrusters/aft", "life_years", "20")

    found = assess(read_inspection(write.state), library)
    bow, aft = (part(found, "thrusters", unit).facts for unit in ("bow", "aft"))

    assert (4, 20, "made") == (bow.life_years, aft.life_years, aft.parts)
    assert "a ban of the flag" in bow.law[0]
    assert bow.law == aft.law == part(found, "thrusters", "all").facts.law


def test_prices_of_unlike_scope_are_not_compared(library, write):
    """One thruster's repair against new ones for all: the unit has no price of a new one."""
    for check in ("oil", "tunnel", "noise"):
        write.rate(f"thrusters/bow/{check}", "poor")
    line(write, "a", "bow", "refurbish", "70")
    line(write, "b", "all", "replace", "100")

    bow = part(assess(read_inspection(write.state), library), "thrusters", "bow")

    assert (70, None, "work certain") == (
        bow.facts.refurbish_cost,
        bow.facts.replace_cost,
        bow.proposal.rule,
    )


def test_prices_of_the_whole_hold_for_units_without_their_own(library, write):
    """Both ways for the whole: each unit that needs work is judged by them."""
    for check in ("oil", "tunnel", "noise"):
        write.rate(f"thrusters/bow/{check}", "poor")
    line(write, "a", "all", "refurbish", "70")
    line(write, "b", "all", "replace", "100")

    bow = part(assess(read_inspection(write.state), library), "thrusters", "bow")

    assert ("too dear", True) == (bow.proposal.rule, bow.facts.shared)


def test_a_need_of_a_unit_comes_before_that_of_its_system(library, write):
    """Towing gear that nobody wants on a deck that is required."""
    all_good(write, "bow")("brief", "need/thrusters", "required")(
        "verdict/thrusters/aft", "need", "unwanted"
    )

    found = assess(read_inspection(write.state), library)

    assert "retain, firm (Aft thruster removed)" == part(found, "thrusters", "all").spoken


def test_poor_and_failed_checks_offer_lines_until_they_are_recorded(library, write):
    """Each offers one without a price; a recorded line of the check takes its place."""
    all_good(write, "bow").rate("thrusters/bow/noise", "failed").rate("thrusters/bow/oil", "poor")
    before = assess(read_inspection(write.state), library).systems[1].offered
    line(write, "a", "bow", "refurbish", "")("scope/a", "check", "oil")
    after = assess(read_inspection(write.state), library).systems[1].offered

    assert [("oil", "refurbish"), ("noise", "refurbish")] == [
        (one.check, one.act) for one in before
    ]
    assert ["noise"] == [one.check for one in after]


def test_answers_from_before_depths_count_and_say_so(library, write):
    """A rating without a depth counts as seen, as it did, with a remark."""
    bow = part(assess(read_inspection(all_good(write, "bow").state), library), "thrusters", "bow")

    assert "retain, firm" == bow.spoken
    assert bow.proposal.remark.startswith("3 answers say not how")


def test_what_was_seen_in_passing_gives_a_first_word(library, write):
    """One tap per unit; of two people the one who saw something counts."""
    write("unit/thrusters/bow", "walked_past", "nothing")
    write("unit/thrusters/aft", "walked_past", "something", device="phone", blind=True)
    write("unit/thrusters/aft", "walked_past", "nothing", blind=True)

    found = assess(read_inspection(write.state), library)

    assert ["retain, so far", "refurbish, so far"] == [
        part(found, "thrusters", unit).spoken for unit in ("bow", "aft")
    ]


def test_settings_reach_the_rules(library, write):
    """A firm that retains from 95 refurbishes what another keeps."""
    all_good(write, "bow").rate("thrusters/bow/noise", "fair")

    assert (
        "retain" == part(assess(read_inspection(write.state), library), "thrusters", "bow").verdict
    )
    assert (
        "refurbish"
        == part(
            assess(read_inspection(write.state), library, Settings(retain_from=95)),
            "thrusters",
            "bow",
        ).verdict
    )


@pytest.mark.parametrize(
    ("subject", "field", "value"),
    [
        ("unit/thrusters/bow", "name", {"odd": 1}),
        ("unit/unknown/x", "name", "X"),
        ("sheet/thrusters/bow/oil", "rating", ["good"]),
        ("sheet/thrusters/bow/oil", "rating", "excellent"),
        ("sheet/thrusters/bow/oil", "reading/water", 7),
        ("brief", "horizon", "-3"),
        ("brief", "horizon", "soon"),
        ("scope/a", "act", "polish"),
        ("verdict/thrusters/bow", "life_years", "9" * 400),
        (f"photo/{SHA}", "on", "sheet/gone/x/y"),
        (f"photo/{SHA}", "on", "nonsense"),
        ("finding/a", "urgency", "someday"),
        ("vessel", "built", 2008),
        ("sheet/thrusters/nobody/oil", "rating", "good"),
    ],
)
def test_odd_data_never_raises(library, write, subject, field, value):
    """Whatever is left in a field, an assessment comes back with both systems' places."""
    found = assess(read_inspection(write(subject, field, value).state), library)

    assert ["engines", "thrusters"] == [one.system.id for one in found.systems]


def test_a_limit_that_is_only_remembered_makes_no_law(library, write):
    """A failed judgement makes law by a text that was read, and not by one from memory."""
    found = result(
        assess(read_inspection(engine(write, "I").state), library), "engines", "main", "tier"
    )
    recalled = replace(
        found,
        judgement=replace(found.judgement, source=replace(found.judgement.source, mark="memory")),
    )

    assert 1 == len(
        facts_of_unit(read_inspection(write.state), "engines", "main", [found], (), ()).law
    )
    assert (
        () == facts_of_unit(read_inspection(write.state), "engines", "main", [recalled], (), ()).law
    )


def certificate(write, **fields):
    for name, value in fields.items():
        write("certificate/one", name, value)
    return write


@pytest.mark.parametrize(
    ("fields", "said"),
    [
        ({"kind": "engine air pollution prevention", "on_board": "no"}, "not on board"),
        ({"kind": "class", "issued": "2020-05-01", "expires": "2025-05-01"}, "2025-05-01"),
    ],
)
def test_a_missing_or_overdue_paper_is_beside_the_word_and_never_changes_it(
    tmp_path, library, write, fields, said
):
    """The system that a paper belongs to keeps its word, and the paper is named with its date."""
    system = {"class": "hull"}.get(fields["kind"], "propulsion")
    thrusters = (tmp_path / "thrusters.toml").read_text()
    (tmp_path / f"{system}.toml").write_text(
        thrusters.replace('id = "thrusters"', f'id = "{system}"', 1)
    )
    write("inspection", "date", "2026-05-02")(f"unit/{system}/one", "name", "One")
    all_good(write, "one", system)
    library = read_library(tmp_path, check_criteria=True)
    before = part(assess(read_inspection(write.state), library), system, "all")
    certificate(write, **fields)
    after = part(assess(read_inspection(write.state), library), system, "all")

    assert "retain, firm" == before.spoken == after.spoken
    assert ((), True) == (before.papers, said in after.papers[0].sentence)
    assert () == after.facts.law


def test_a_paper_in_order_is_not_named(library, write):
    """What is on board and not overdue is beside no word."""
    certificate(
        write, kind="class", issued="2024-05-01", expires="2029-05-01", last_annual="2026-04-20"
    )("inspection", "date", "2026-05-02")

    assert all(
        () == system.whole.papers
        for system in assess(read_inspection(write.state), library).systems
    )


def test_the_surveyor_names_a_law_himself(library, write):
    """Asbestos where it must go: the surveyor's sentence is a reason and precedes condition."""
    write(
        "verdict/engines/main",
        "law",
        "asbestos gaskets fitted in 2012, SOLAS II-1/3-5 from 2011-01-01",
    ).rate("engines/main/look", "good")

    found = part(assess(read_inspection(write.state), library), "engines", "main")

    assert "law, not priced" == found.proposal.rule
    assert "SOLAS II-1/3-5 from 2011-01-01" in found.facts.law[0]
