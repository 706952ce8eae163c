"""What must hold of any inspection: recorded at random, entry by entry, and assessed.

Word, units and lines never contradict; seeing more or deeper takes nothing back; a worse answer
never betters a word; neither order nor device nor paper changes one.
"""

import itertools
import tempfile
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import settings as effort
from hypothesis import strategies as st

from inspector.assess.assessment import assess
from inspector.assess.from_state import read_inspection
from inspector.assess.verdict.changes import word_changes
from inspector.assess.verdict.evidence import evidence_of
from inspector.assess.verdict.proposal import open_words
from inspector.assess.verdict.unit_case import Case
from inspector.assess.verdict.unit_rules import ORDER, word_for
from inspector.assess.work_cost import counted_lines, parts_priced_twice
from inspector.checklists.loader import read_library
from inspector.record.inspections import Inspections
from inspector.record.state import State
from inspector.values.vocabulary import NEEDS, NOT_LOOKED_AT, RATINGS
from tests.assess.verdict.a_case import LOOKS, sheets_in

DEPTHS = ("reported", "sighted", "tested")
ratings = st.sampled_from((*RATINGS, None))
sheet = st.tuples(ratings, st.sampled_from((*DEPTHS, None)))
unit = st.fixed_dictionaries(
    {
        "looks": st.lists(sheet, min_size=len(LOOKS), max_size=len(LOOKS)),
        "facts": st.fixed_dictionaries(
            {},
            optional={
                "law": st.just("a ban"),
                "parts": st.sampled_from(("made", "no longer made")),
                "life_years": st.sampled_from(("5", "20")),
                "beyond_repair": st.just("holed"),
                "need": st.sampled_from(NEEDS),
                "decision": st.sampled_from(("retain", "refurbish", "remove")),
            },
        ),
        "walked_past": st.sampled_from((None, "nothing", "something")),
        "prices": st.sampled_from((None, (30, 100), (90, 100), (30, None), (None, 100))),
    }
)
vessels = st.fixed_dictionaries(
    {
        "system": st.sampled_from(("hull", "sets")),
        "need": st.sampled_from((None, *NEEDS)),
        "units": st.lists(unit, min_size=1, max_size=4),
        "whole": st.sampled_from((None, (30, 100), (90, 100))),
        "decision": st.sampled_from((None, None, "retain", "refurbish", "remove")),
    }
)


@pytest.fixture(scope="module")
def library(tmp_path_factory):
    return read_library(sheets_in(tmp_path_factory.mktemp("sheets") / "s"), check_criteria=True)


def entries_of(vessel):
    """Every entry of a vessel: (subject, field, value)."""
    system = vessel["system"]
    yield "brief", "horizon", "15"
    if vessel["need"]:
        yield "brief", f"need/{system}", vessel["need"]
    if vessel["decision"]:
        yield f"verdict/{system}/all", "decision", vessel["decision"]
    for number, one in enumerate(vessel["units"]):
        yield f"unit/{system}/u{number}", "name", f"Unit {number}"
        if one["walked_past"]:
            yield f"unit/{system}/u{number}", "walked_past", one["walked_past"]
        for name, value in one["facts"].items():
            yield f"verdict/{system}/u{number}", name, value
        for check, (rating, depth) in zip(LOOKS, one["looks"], strict=True):
            subject = f"sheet/{system}/u{number}/{check}"
            if rating:
                yield subject, "rating", rating
                yield subject, "reading/load", {"value": "300", "unit": "kW"}
            if depth:
                yield subject, "depth", depth
        yield from _lines(system, f"u{number}", one["prices"])
    yield from _lines(system, "all", vessel["whole"])


def _lines(system, unit_id, prices):
    for act, likely in zip(("refurbish", "replace"), prices or (), strict=False):
        if likely:
            fields = {"system": system, "unit": unit_id, "act": act, "likely": str(likely)}
            yield from ((f"scope/{unit_id}-{act}", name, value) for name, value in fields.items())


def recorded(vessel, more=()):
    """The state of a vessel, kept by the recorder."""
    with tempfile.TemporaryDirectory() as folder:
        sheets = sheets_in(Path(folder) / "sheets")
        kept = Inspections(Path(folder) / "kept", "laptop")
        inspection = kept.create(sheets)
        inspection.record("AB", list(entries_of(vessel)))
        if more:
            inspection.record("AB", list(more))
        entries = list(inspection.entries)
        kept.close()
    return entries


def system_of(entries, library):
    return assess(read_inspection(State(entries)), library).systems[0]


@given(vessels)
@effort(max_examples=150, deadline=None)
def test_word_units_and_lines_never_contradict(library, vessel):
    """Whatever was recorded, the system's word is what its units' words say, and so are its
    lines."""
    system = system_of(recorded(vessel), library)
    word, units = system.whole.verdict, system.units

    if word == "retain":
        assert (
            all(unit.verdict in ("retain", NOT_LOOKED_AT) or unit.let_go for unit in units)
            or (
                # What is decided of a single unit comes before what is decided of the whole.
                vessel["decision"]
            )
        )
    if not vessel["decision"]:
        if word == "remove":
            assert all(unit.verdict == "remove" for unit in units)
        if word == "refurbish":
            assert any(unit.verdict not in ("retain", NOT_LOOKED_AT) for unit in units)
        if word == NOT_LOOKED_AT:
            assert all(unit.verdict == NOT_LOOKED_AT or unit.let_go for unit in units)
        firm = all(unit.firmness == "firm" for unit in units)
        assert (system.whole.firmness == "firm") == firm
    if vessel["decision"] in ("retain", "remove"):
        for number, unit in enumerate(units):
            own = vessel["units"][number]["facts"].get("decision")
            assert unit.verdict == (own or vessel["decision"])
    for line in system.offered:
        (of,) = [unit for unit in units if unit.id == line.unit]
        acts = {
            "retain": {"refurbish"},
            "refurbish": {"refurbish"},
            "refurbish or remove": {"refurbish", "replace"},
            "remove": {"remove", "replace"},
            NOT_LOOKED_AT: {"refurbish"},
        }
        assert line.act in acts[of.verdict]
        assert not (of.let_go and line.act != "remove")


@given(vessels)
@effort(max_examples=150, deadline=None)
def test_money_never_contradicts_a_word(library, vessel):
    """Of a part that is priced both ways the act of its word counts, and the label beside the sum
    fits the word of the system."""
    system = system_of(recorded(vessel), library)

    for twice in parts_priced_twice(system):
        part = twice.part
        if part.let_go:
            assert "" == twice.counts
        elif not twice.is_the_dearer:
            ways = {"retain": "refurbish", "refurbish": "refurbish", "remove": "replace"}
            assert ways[part.verdict] == twice.counts
        else:
            assert part.verdict not in ("retain", "remove")
    cost, whole = system.whole.cost, system.whole
    if cost:
        labels = {"work beside it": "retain", "work on it": "refurbish"}
        labels |= {"taking out and replacing": "remove", "taking it out": "remove"}
        assert labels.get(cost.label, whole.verdict) == whole.verdict
        assert whole.let_go == (cost.label == "taking it out")
    for unit in system.units:
        lines = [line for line in counted_lines(system) if line.unit == unit.id]
        goes_on = unit.let_go and any(line.act != "remove" for line in lines)
        renewed = unit.verdict == "retain" and any(line.act != "refurbish" for line in lines)
        assert (goes_on or renewed) == any(unit.name in line for line in system.against)


@given(vessels)
@effort(max_examples=150, deadline=None)
def test_what_stays_with_work_is_read_so(library, vessel):
    """A part that stays and has a line, recorded or offered, says "with work"; no other does."""
    system = system_of(recorded(vessel), library)
    lines = [*counted_lines(system), *system.offered]
    gone = {unit.id for unit in system.units if unit.let_go}
    at_work = {line.unit for line in lines} - gone

    for unit in system.units if len(system.units) > 1 else ():
        stays_with_work = unit.verdict == "retain" and unit.id in at_work
        assert stays_with_work == ("with work" in unit.spoken)
    whole = system.whole
    assert (whole.verdict == "retain" and bool(at_work)) == ("with work" in whole.spoken)


@given(vessels)
@effort(max_examples=60, deadline=None)
def test_a_hull_is_never_removed(library, vessel):
    """Unless the surveyor himself says so."""
    for one in vessel["units"]:
        one["facts"].pop("decision", None)
    system = system_of(recorded(vessel | {"system": "hull"}), library)

    assert "remove" not in {part.proposal.verdict for part in (system.whole, *system.units)}


@given(vessels, st.randoms(use_true_random=False))
@effort(max_examples=60, deadline=None)
def test_neither_order_nor_device_changes_a_word(library, vessel, luck):
    """The same entries in another order, and from other devices, give the same words."""
    entries = recorded(vessel)
    before = system_of(entries, library)
    luck.shuffle(entries)
    after = system_of(entries, library)
    moved = [replace(entry, device="tablet") for entry in entries]

    assert before == after
    assert words_of(before) == words_of(system_of(moved, library))


def words_of(system):
    return [part.proposal.spoken for part in (system.whole, *system.units)]


@given(vessels, st.sampled_from(("class", "load line", "safety construction")), st.booleans())
@effort(max_examples=60, deadline=None)
def test_a_paper_never_changes_a_word(library, vessel, kind, on_board):
    """Overdue or missing, it is beside the word of the hull."""
    vessel = vessel | {"system": "hull"}
    paper = (
        ("inspection", "date", "2026-11-25"),
        ("certificate/one", "kind", kind),
        ("certificate/one", "issued", "2019-01-01"),
        ("certificate/one", "expires", "2024-01-01"),
        ("certificate/one", "on_board", "yes" if on_board else "no"),
    )
    before, after = (system_of(recorded(vessel, more), library) for more in ((), paper))

    assert words_of(before) == words_of(after)
    assert len(before.whole.papers) < len(after.whole.papers)


@given(vessels)
@effort(max_examples=60, deadline=None)
def test_taking_a_unit_out_never_makes_the_rest_worse(library, vessel):
    """The words of the other units are what they were."""
    entries = recorded(vessel)
    gone = recorded(vessel, [(f"unit/{vessel['system']}/u0", "gone", True)])
    before = system_of(entries, library)
    if len(vessel["units"]) == 1:
        return

    assert words_of(before)[2:] == words_of(system_of(gone, library))[1:]


# From here on one unit, changed answer by answer: the rules themselves, without the disk.


def case_of(library, vessel):
    """The case of the first unit."""
    system = system_of(recorded(vessel), library)
    part = system.units[0]
    return Case(part.facts, evidence_of(part.results, part.walked_past)), part


def answered(case, part, place, rating, depth):
    """The case with one check answered."""
    results = list(part.results)
    results[place] = replace(results[place], rating=rating, answer=rating or "", depth=depth)
    return Case(case.facts, evidence_of(results, part.walked_past))


@given(vessels, st.integers(0, len(LOOKS) - 1), st.sampled_from(RATINGS))
@effort(max_examples=150, deadline=None)
def test_seeing_more_never_turns_firm_into_so_far(library, vessel, place, rating):
    """One more look, at the depth that its check asks."""
    case, part = case_of(library, vessel)
    if part.results[place].rating is not None:
        return
    before = word_for(case)
    after = word_for(answered(case, part, place, rating, part.results[place].check.proof))

    assert before.firmness != "firm" or after.firmness != "so far"


@given(vessels, st.integers(0, len(LOOKS) - 1))
@effort(max_examples=150, deadline=None)
def test_a_worse_answer_never_betters_a_word(library, vessel, place):
    """From good over fair and poor to failed, the word only moves towards remove."""
    case, part = case_of(library, vessel)
    for depth in ("", *DEPTHS):
        found = [word_for(answered(case, part, place, rating, depth)).verdict for rating in RATINGS]
        places = [ORDER.index(verdict) for verdict in found]
        assert places == sorted(places)


@given(vessels, st.integers(0, len(LOOKS) - 1))
@effort(max_examples=100, deadline=None)
def test_looking_deeper_never_takes_a_word_back(library, vessel, place):
    """The same answer sighted in place of reported, tested in place of sighted."""
    case, part = case_of(library, vessel)
    rating = part.results[place].rating
    if rating is None:
        return
    found = [word_for(answered(case, part, place, rating, depth)) for depth in DEPTHS]

    for less, more in itertools.pairwise(found):
        assert less.firmness != "firm" or more.firmness in ("firm", "at least", "")


@given(vessels, st.integers(0, len(LOOKS) - 1), st.sampled_from(RATINGS))
@effort(max_examples=150, deadline=None)
def test_seeing_more_opens_no_word_that_was_closed(library, vessel, place, rating):
    """Until a word is firm, each look leaves the same words possible, or fewer."""
    case, part = case_of(library, vessel)
    if part.results[place].rating is not None:
        return
    seen = answered(case, part, place, rating, part.results[place].check.proof)
    before, after = word_for(case), word_for(seen)
    if before.firmness == "firm" or before.verdict == NOT_LOOKED_AT:
        return

    assert set(open_words(seen, after)) <= set(open_words(case, before))


@given(vessels)
@effort(max_examples=100, deadline=None)
def test_every_stated_change_turns_the_word(library, vessel):
    """Each varied case is put through the rules again, and gives the stated other word."""
    case, _ = case_of(library, vessel)
    now = word_for(case)

    for change in word_changes(case):
        assert change.word.key == word_for(change.case).key != now.key
