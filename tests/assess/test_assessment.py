"""A whole small inspection, from entries to the assessment that screens and report show."""

from dataclasses import replace

import pytest

from inspector.assess.assessment import assess
from inspector.assess.gather import facts
from inspector.assess.verdict import Settings
from inspector.checklists import read_library
from inspector.record.state import State
from inspector.web.desk import known_inputs

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
    assert () == assess(State(), library).systems


def test_only_systems_with_units_are_assessed_in_the_library_s_order(library, write):
    """Engines come before thrusters by their order, whichever was entered first."""
    assert ["engines", "thrusters"] == [one.system.id for one in assess(write.state, library).systems]


def test_a_unit_taken_out_again_is_not_assessed(library, write):
    """A unit that is gone leaves, and with its last unit a system leaves."""
    write("unit/engines/main", "gone", True)("unit/thrusters/aft", "gone", True)

    found = assess(write.state, library)

    assert [["bow"]] == [[unit.id for unit in one.units] for one in found.systems]


def test_units_keep_the_order_in_which_they_were_entered(library, write):
    """Bow before aft, as entered, not by the alphabet."""
    thrusters = assess(write.state, library).systems[1]

    assert ["Bow thruster", "Aft thruster"] == [unit.name for unit in thrusters.units]


def test_the_judgement_s_rating_counts_until_the_surveyor_answers(library, write):
    """A reading alone rates the check; it is his word that counts once he gives it, and the difference is shown."""
    write("sheet/thrusters/bow/oil", "reading/water", {"value": "5", "unit": "%"})
    before = result(assess(write.state, library), "thrusters", "bow", "oil")
    write.rate("thrusters/bow/oil", "good")
    after = result(assess(write.state, library), "thrusters", "bow", "oil")

    assert before.rating == before.judgement.rating != "good"
    assert ("", False) == (before.answer, before.overruled)
    assert ("good", True) == (after.rating, after.overruled)


def test_not_seen_beats_a_judgement_and_lowers_coverage(library, write):
    """Who says not seen has not seen it, whatever figure the crew's paper gave."""
    write("sheet/thrusters/bow/oil", "reading/water", {"value": "0.01", "unit": "%"})
    write.rate("thrusters/bow/oil", "not seen: no access").rate("thrusters/bow/tunnel", "good").rate("thrusters/bow/noise", "good")

    found = part(assess(write.state, library), "thrusters", "bow")

    assert 0.5 == found.condition.coverage
    assert ("undecided", ("Bow thruster: Water in the oil",)) == (found.proposal.verdict, found.proposal.deciding)


def test_not_fitted_leaves_the_set(library, write):
    """A check that does not apply has no weight."""
    write.rate("thrusters/bow/oil", "not fitted").rate("thrusters/bow/tunnel", "good").rate("thrusters/bow/noise", "good")

    found = part(assess(write.state, library), "thrusters", "bow")

    assert (1.0, 2, "retain") == (found.condition.coverage, found.condition.applicable, found.verdict)


def test_two_people_who_differ_are_shown_as_disputed(library, write):
    """The newest answer counts and the disagreement is told and counted."""
    write.rate("thrusters/bow/tunnel", "good").rate("thrusters/bow/tunnel", "poor", device="phone", who="CD", blind=True)

    found = assess(write.state, library)
    tunnel = result(found, "thrusters", "bow", "tunnel")

    assert ("poor", True, "CD", 1) == (tunnel.rating, tunnel.disputed, tunnel.who, found.disputes)


def test_the_whole_system_counts_all_checks_of_its_units(library, write):
    """One good and one failed tunnel of equal weight make 50, with 6 of 20 weights seen."""
    write.rate("thrusters/bow/tunnel", "good").rate("thrusters/aft/tunnel", "failed")

    whole = part(assess(write.state, library), "thrusters", "all")

    assert (50.0, 0.3, 6) == (whole.condition.points, whole.condition.coverage, whole.condition.applicable)


def test_the_need_comes_from_the_brief(library, write):
    """What the client does not want goes, and an unknown word counts as neutral."""
    write("brief", "need/thrusters", "unwanted")("brief", "need/engines", "maybe")

    found = assess(write.state, library)

    assert ("remove", "neutral") == (part(found, "thrusters", "bow").verdict, part(found, "engines", "main").facts.need)


def engine(write, certificate, keel="2012-03-01"):
    write("vessel", "built", keel)("sheet/engines/main/tier", "reading/speed", {"value": "1800", "unit": "rpm"})
    write("sheet/engines/main/tier", "reading/certificate", {"value": certificate})
    return all_good(write, "main", "engines", ("plate", "look"))


def test_a_law_that_is_failed_stands_before_condition(library, write):
    """An engine below the tier its keel date asks for cannot stay as it is, however good; the judgement's sentence says why."""
    found = part(assess(engine(write, "I").state, library), "engines", "main")

    assert ("refurbish", "law") == (found.verdict, found.proposal.rule)
    assert found.facts.law[0] in found.proposal.reasons
    assert "2012-03-01" in found.facts.law[0]


def test_a_paper_that_is_only_missing_makes_no_law(library, write):
    """No certificate at hand is poor, not forbidden."""
    assert () == part(assess(engine(write, "none").state, library), "engines", "main").facts.law


def test_the_life_of_the_plate_is_taken_unless_the_surveyor_gives_one(library, write):
    """10 mm of 2006 measured at 9 mm in 2026 lose 0.05 mm a year; the surveyor's own figure goes before."""
    write("vessel", "year", "2006")("brief", "horizon", "10")
    for name, value in (("as_built", "10"), ("measured", "9")):
        write("sheet/engines/main/plate", f"reading/{name}", {"value": value, "unit": "mm"})
    plate = result(assess(write.state, library), "engines", "main", "plate")
    by_plate = part(assess(write.state, library), "engines", "all").facts.life_years
    write("verdict/engines/main", "life_years", "4")
    own = part(assess(write.state, library), "engines", "all").facts

    assert plate.judgement.value == by_plate
    assert (4, 10) == (own.life_years, own.horizon)


def line(write, id, unit, act, likely, system="thrusters"):
    for name, value in (("system", system), ("unit", unit), ("act", act), ("likely", likely), ("text", "Work")):
        write(f"scope/{id}", name, value)
    return write


def test_costs_are_summed_by_act_and_the_whole_adds_what_is_for_all(library, write):
    """Unit lines stay with their unit; the whole has them all and the lines for all; what is gone or not priced adds nothing."""
    line(write, "a", "bow", "refurbish", "10 000")
    line(write, "b", "bow", "refurbish", "5000")
    line(write, "c", "aft", "replace", "100000")
    line(write, "d", "all", "refurbish", "700.50")
    line(write, "e", "bow", "refurbish", "")
    line(write, "f", "bow", "refurbish", "999")("scope/f", "gone", True)

    found = assess(write.state, library)
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

    assert "too dear" == part(assess(write.state, library), "thrusters", "bow").proposal.rule


def test_the_surveyor_s_decision_stands_beside_the_proposal(library, write):
    """His word is the verdict, the proposal stays readable; a word that is none is passed over."""
    all_good(write, "bow")("verdict/thrusters/bow", "decision", "remove")("verdict/thrusters/bow", "reason", "No use for it.")
    write("verdict/thrusters/aft", "decision", "burn")

    found = assess(write.state, library)
    bow = part(found, "thrusters", "bow")

    assert ("remove", "retain", "No use for it.") == (bow.verdict, bow.proposal.verdict, bow.reason)
    assert "" == part(found, "thrusters", "aft").decision


def test_findings_and_photos_are_numbered_in_the_order_of_their_first_entry(library, write):
    """Later edits do not renumber; a finding taken out leaves no gap."""
    write("finding/zz", "title", "First")("finding/aa", "title", "Second")("finding/mm", "title", "Third")
    write(f"photo/{'b' * 64}", "on", "finding/aa")(f"photo/{SHA}", "on", "sheet/thrusters/bow/oil")
    write("finding/zz", "gone", True)("finding/aa", "on", "thrusters/bow")("finding/aa", "urgency", "danger now")

    found = assess(write.state, library)

    assert [(1, "Second", "Bow thruster"), (2, "Third", "")] == [(one.number, one.title, one.unit_name) for one in found.findings]
    assert ("b" * 64,) == found.findings[0].photos
    assert [(1, "Finding 1: Second"), (2, "Bow thruster: Water in the oil")] == [(one.number, one.place) for one in found.photos]
    assert (SHA,) == result(found, "thrusters", "bow", "oil").photos


def test_an_open_danger_keeps_a_good_unit_from_being_retained(library, write):
    """A danger now on a good unit is put right first, for the unit and for the whole."""
    all_good(all_good(write, "bow"), "aft")("finding/d", "title", "Guard missing")("finding/d", "urgency", "danger now")("finding/d", "on", "thrusters/bow")

    found = assess(write.state, library)

    assert ["danger open", "good", "danger open"] == [part(found, "thrusters", one).proposal.rule for one in ("bow", "aft", "all")]


def test_one_failed_unit_does_not_send_the_whole_system_away(library, write):
    """Water in one thruster's oil caps the system at 24 and removes that unit; the other stays, so the whole is refurbished."""
    all_good(all_good(write, "bow"), "aft").rate("thrusters/aft/oil", "failed")

    found = assess(write.state, library)

    assert 24 == part(found, "thrusters", "all").condition.points
    assert ["retain", "remove", "refurbish"] == [part(found, "thrusters", one).verdict for one in ("bow", "aft", "all")]
    assert "Of its 2 units the verdicts are: 1 retain, 1 remove." in part(found, "thrusters", "all").proposal.reasons


def test_settings_reach_the_rules(library, write):
    """A firm that retains from 95 refurbishes what another keeps."""
    all_good(write, "bow").rate("thrusters/bow/noise", "fair")

    assert "retain" == part(assess(write.state, library), "thrusters", "bow").verdict
    assert "refurbish" == part(assess(write.state, library, Settings(retain_from=95)), "thrusters", "bow").verdict


@pytest.mark.parametrize(("subject", "field", "value"), [
    ("unit/thrusters/bow", "name", {"odd": 1}), ("unit/unknown/x", "name", "X"), ("sheet/thrusters/bow/oil", "rating", ["good"]),
    ("sheet/thrusters/bow/oil", "rating", "excellent"), ("sheet/thrusters/bow/oil", "reading/water", 7), ("brief", "horizon", "-3"),
    ("brief", "horizon", "soon"), ("scope/a", "act", "polish"), ("verdict/thrusters/bow", "life_years", "9" * 400),
    (f"photo/{SHA}", "on", "sheet/gone/x/y"), (f"photo/{SHA}", "on", "nonsense"), ("finding/a", "urgency", "someday"),
    ("vessel", "built", 2008), ("sheet/thrusters/nobody/oil", "rating", "good"),
])
def test_odd_data_never_raises(library, write, subject, field, value):
    """Whatever another device or an old version left in a field, an assessment comes back with both systems' places."""
    found = assess(write(subject, field, value).state, library)

    assert ["engines", "thrusters"] == [one.system.id for one in found.systems]


def test_a_limit_that_is_only_remembered_makes_no_law(library, write):
    """The same failed judgement from memory gives no sentence of law; from a text that was read it gives one."""
    found = result(assess(engine(write, "I").state, library), "engines", "main", "tier")
    recalled = replace(found, judgement=replace(found.judgement, source=replace(found.judgement.source, mark="memory")))

    assert 1 == len(facts(write.state, "engines", "main", [found], (), ()).law)
    assert () == facts(write.state, "engines", "main", [recalled], (), ()).law


def certificate(write, **fields):
    for name, value in fields.items():
        write("certificate/one", name, value)
    return write


@pytest.mark.parametrize(("fields", "said"), [
    ({"kind": "engine air pollution prevention", "on_board": "no"}, "not on board"),
    ({"kind": "class", "issued": "2020-05-01", "expires": "2025-05-01"}, "2025-05-01"),
])
def test_a_missing_or_overdue_paper_is_law_before_condition(tmp_path, library, write, fields, said):
    """The system that the paper lets sail is refurbished by law, with rule and date, however well it looks."""
    system = {"class": "hull"}.get(fields["kind"], "propulsion")
    thrusters = (tmp_path / "thrusters.toml").read_text()
    (tmp_path / f"{system}.toml").write_text(thrusters.replace('id = "thrusters"', f'id = "{system}"', 1))
    certificate(write, **fields)("inspection", "date", "2026-05-02")(f"unit/{system}/one", "name", "One")
    for name in ("oil", "tunnel", "noise"):
        write.rate(f"{system}/one/{name}", "good")

    found = next(one for one in assess(write.state, read_library(tmp_path, known_inputs())).systems if one.system.id == system).whole

    assert ("refurbish", "law") == (found.verdict, found.proposal.rule)
    assert any(said in sentence for sentence in found.facts.law)


def test_a_paper_in_order_makes_no_law(library, write):
    """What is on board and not overdue says nothing against the system."""
    certificate(write, kind="class", issued="2024-05-01", expires="2029-05-01", last_annual="2026-04-20")("inspection", "date", "2026-05-02")

    assert all(() == system.whole.facts.law for system in assess(write.state, library).systems)


def test_the_surveyor_names_a_law_himself(library, write):
    """Asbestos where it must go: his sentence stands among the reasons and comes before condition."""
    write("verdict/engines/main", "law", "asbestos gaskets fitted in 2012, SOLAS II-1/3-5 from 2011-01-01").rate("engines/main/look", "good")

    found = part(assess(write.state, library), "engines", "main")

    assert "law" == found.proposal.rule
    assert "SOLAS II-1/3-5 from 2011-01-01" in found.facts.law[0]
