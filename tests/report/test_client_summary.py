"""The client's two pages: nothing that decides depends on what somebody happened to type."""

import dataclasses

from inspector.assess.recorded import RecordedInspection
from inspector.conversion.core.chapter import Chapter, Requirement
from inspector.conversion.core.span import Span
from inspector.report.client.all_in_cost import AllIn
from inspector.report.client.decision import Decision
from inspector.report.client.safety_items import bad_without_finding, safety_items
from inspector.report.client.to_settle import settled_first
from tests.report.test_condition_report import words

COST = AllIn(
    Span(12.4e6, 13.0e6, 13.7e6),
    13.4e6,
    17e6,
    "crowns",
    (("asking price", 8.4e6), ("work lines", 4.6e6), ("class and flag", None)),
    ("class and flag",),
)
RANGE = Requirement("range", "Range", 9000, "nmi", Span(12000, 12500, 13000))
STORES = Requirement("endurance", "Endurance", 45, "days", Span(5, 19, 50))
BERTHS = Requirement("persons", "Persons berthed", 40, "", Span(34, 34, 34))
CHAPTER = Chapter("range", "Range and endurance", "So far.", requirements=(RANGE, STORES, BERTHS))


def first_page(full, write, **how):
    return " ".join(write(full, **how).pages[0].extract_text().split())


def test_the_two_pages_hold_what_decides(full, write):
    """Advice, the brief asked and offered, one total against the budget, and the marks."""
    advised = dataclasses.replace(full, inspection={**full.inspection, "advice": "Bid low."})
    reader = write(advised, chapters=[CHAPTER], cost=COST)
    first, second = (" ".join(page.extract_text().split()) for page in reader.pages[:2])

    for said in ("Bid low.", "likely 13.0", "budget 17.0", "12.4 low", "13.7 high", "Thrusters"):
        assert said in first
    for said in ("at least 9000 nmi", "12 500 nmi", "met", "short by 26 days", "3.6 million"):
        assert said in second.replace("\u00a0", " ")


def test_no_advice_is_ever_made_up(full, write):
    """Without the surveyor's own sentence the page says that there is none."""
    assert "The surveyor has written no advice yet" in first_page(full, write)


def test_what_is_settled_first_keeps_room_for_the_brief(full):
    """At most five: dangers and purchase findings by urgency, and what the brief does not get."""
    many = [
        dataclasses.replace(full.findings[1], id=f"f{at}", number=20 + at, urgency=urgency)
        for at, urgency in enumerate(["before purchase"] * 6 + ["danger now"])
    ]
    found, more = settled_first(
        dataclasses.replace(full, findings=tuple(many)), Decision([CHAPTER], COST)
    )
    keys = [key for runs in found for key, tone in runs if tone == "page"]

    assert 5 == len(found)
    assert "finding-26" == keys[0]
    assert ["chapter-range"] * 2 == keys[-2:]
    assert 4 == more


def test_over_the_budget_is_settled_before_money_moves(full):
    """A likely total above the budget is among the first things, with what is lacking."""
    found, _ = settled_first(full, Decision([], dataclasses.replace(COST, budget=12.4e6)))
    said = " ".join(text for runs in found for text, _ in runs)

    assert "1 million crowns over the budget" in said.replace("\u00a0", " ")


def test_failed_safety_is_on_the_first_page_without_any_finding(full, write):
    """A failed check of fire protection is there though nobody typed a finding of it."""
    thrusters = full.systems[0]
    failed = dataclasses.replace(thrusters.units[0].results[0], rating="failed")
    unit = dataclasses.replace(thrusters.units[0], results=(failed,))
    system = dataclasses.replace(thrusters.system, id="fire-protection", name="Fire protection")
    part = dataclasses.replace(thrusters, system=system, units=(unit,))
    burning = dataclasses.replace(full, systems=(part,), findings=())

    assert ["failed"] == [item.state for item in safety_items(burning)]
    assert "Plate thickness of the tunnel: failed" in first_page(burning, write)
    assert [failed] == bad_without_finding(burning)


def test_an_overdue_certificate_is_a_safety_item(full):
    """Surveys count from the day of the visit, whoever reads the report and when."""
    rows = {"a": {"kind": "load line", "issued": "2019-05-01", "expires": "2024-05-01"}}
    recorded = RecordedInspection(inspection={"date": "2026-05-02"}, rows={"certificates": rows})
    found = safety_items(dataclasses.replace(full, recorded=recorded))

    assert any(item.what.startswith("load line") and item.state == "overdue" for item in found)


def test_a_bad_check_with_a_finding_is_not_named_again(full):
    """Only what no finding is about is named before the report is made."""

    def named(*findings):
        left = bad_without_finding(dataclasses.replace(full, findings=findings))
        return {(one.unit, one.check.title) for one in left}

    about = dataclasses.replace(full.findings[0], check="Water in the hub oil")
    oil, plate = "Water in the hub oil", "Plate thickness of the tunnel"

    assert {("bow-1", oil), ("bow-1", plate), ("stern", oil), ("stern", plate)} == named()
    assert {("bow-1", plate), ("stern", oil), ("stern", plate)} == named(about)
    # One on the whole unit may be about any of its checks.
    assert {("stern", oil), ("stern", plate)} == named(full.findings[0])


def test_no_total_is_printed_where_nothing_is_priced(full, write):
    """The page says that there is none, and never a sum of nothing."""
    said = first_page(full, write, cost=AllIn(open=("work lines",)))

    assert "there is no total. Not priced: work lines." in said


def test_a_total_that_lacks_lines_is_so_much_at_least(full, write):
    """What is not priced is named beside the bar, and the budget is not called met."""
    assert "So much at least. Not priced: class and flag." in first_page(full, write, cost=COST)


def test_the_summary_alone_has_the_pages_of_the_whole(full, write):
    """Two pages, with the numbers of the report that they are the beginning of, and no link."""
    whole = write(full, "whole.pdf", chapters=[CHAPTER], cost=COST)
    alone = write(full, "alone.pdf", chapters=[CHAPTER], cost=COST, extent="summary")

    assert 2 == len(alone.pages)
    first = [words(reader).split("Safety")[0].split("Settle")[1] for reader in (whole, alone)]
    assert first[0] == first[1]
    assert all("/Annots" not in page for page in alone.pages)


def links(page, reader):
    """The pages to which the links of a page lead, from 1."""
    found = [annotation.get_object().get("/Dest") for annotation in page.get("/Annots", ())]
    numbers = {each.indirect_reference.idnum: at for at, each in enumerate(reader.pages, 1)}
    return [numbers[dest.get_object()[0].idnum] for dest in found if dest is not None]


def test_references_lead_both_ways(full, write):
    """The summary leads to a finding, the finding to its check, and the check to both again."""
    about = dataclasses.replace(
        full.findings[0], check="Water in the hub oil", urgency="before purchase"
    )
    reader = write(dataclasses.replace(full, findings=(about, *full.findings[1:])))
    texts = [" ".join(page.extract_text().split()) for page in reader.pages]
    finding = next(at for at, text in enumerate(texts, 1) if "Pull and renew the hub seals" in text)
    check = next(at for at, text in enumerate(texts, 1) if "Not good, in full" in text)

    assert finding in links(reader.pages[0], reader)
    assert check in links(reader.pages[finding - 1], reader)
    assert finding in links(reader.pages[check - 1], reader)
