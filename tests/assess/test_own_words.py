"""Second opinions that are none, amounts with their currency, and refusals in plain words."""

from datetime import date

import pytest

from inspector.assess.agreement import agreements
from inspector.assess.assessment import assess
from inspector.assess.from_state import read_inspection
from inspector.assess.next_look.advice import next_look
from inspector.checklists.registry import criterion
from inspector.cli.parser import main
from inspector.criteria.core.judgement import CannotJudge

OIL = "sheet/thrusters/bow/oil"


def test_two_answers_given_apart_count(write):
    """An answer given without seeing the other is a second opinion, also after it is settled."""
    write.rate("thrusters/bow/oil", "good", who="AB").rate(
        "thrusters/bow/oil", "poor", who="CD", device="phone", blind=True
    )
    assert {"AB": "good", "CD": "poor"} == read_inspection(write.state).ratings_by_person[OIL]
    write.rate("thrusters/bow/oil", "poor", who="AB")
    assert {"AB": "good", "CD": "poor"} == read_inspection(write.state).ratings_by_person[OIL]
    assert [0.0] == [one.same for one in agreements(read_inspection(write.state).ratings_by_person)]


def test_a_second_opinion_given_in_sight_of_the_first_counts_with_its_last_word(write):
    """Replacing one answer of somebody else is an opinion; only ending a dispute is none."""
    write.rate("thrusters/bow/oil", "fair", who="AB").rate("thrusters/bow/oil", "good", who="AB")
    write.rate("thrusters/bow/oil", "poor", who="CD", device="phone")
    assert {"AB": "good", "CD": "poor"} == read_inspection(write.state).ratings_by_person[OIL]
    assert [0.0] == [one.same for one in agreements(read_inspection(write.state).ratings_by_person)]


@pytest.mark.parametrize(
    ("currency", "said"),
    [("NOK", "replacing at 300\u00a0000 NOK."), ("", "replacing at 300\u00a0000.")],
)
def test_amounts_carry_the_currency_of_the_inspection(library, write, currency, said):
    """Where the inspection names a currency each sum in reasons and next look carries it."""
    write("row/prices/one", "currency", currency)
    for act, likely in (("refurbish", "100000"), ("replace", "300000")):
        for field, value in (
            ("system", "thrusters"),
            ("unit", "bow"),
            ("act", act),
            ("text", act),
            ("likely", likely),
        ):
            write(f"scope/{act}", field, value)
    found = assess(read_inspection(write.state), library)
    bow = next(unit for system in found.systems for unit in system.units if unit.id == "bow")
    assert any(reason.endswith(said) for reason in bow.proposal.reasons)
    priced = [one.sentence for one in next_look(found, 60).advice if "at stake" in one.sentence]
    assert priced
    assert all(
        f" {currency} at stake".replace("  ", "\u00a0") in one if currency else "0 at stake" in one
        for one in priced
    )


def test_a_refusal_begins_with_the_title(capsys):
    """People read the criterion's title, programs its name."""
    with pytest.raises(CannotJudge) as caught:
        criterion("imo-number").apply({"number": ""})
    assert str(caught.value).startswith(f"{criterion('imo-number').title} cannot be judged: ")
    assert "imo-number" == caught.value.criterion
    with pytest.raises(CannotJudge, match="^" + criterion("oily-water-equipment").title):
        criterion("oily-water-equipment").apply(_late(criterion("oily-water-equipment")))


def _late(rule):
    values = {"calibrated": "2030-01-01", "on": "2026-05-02"}
    for asked in rule.inputs:
        if asked.name not in values and not asked.optional:
            values[asked.name] = (
                asked.choices[0]
                if asked.choices
                else (asked.low or (date(2020, 1, 1) if asked.kind == "date" else 1))
            )
    return values


def test_a_limit_without_a_unit_is_printed_without_one(capsys):
    """No unit is no word."""
    assert 0 == main(["judge", "imo-number", "number=0123450"])
    assert "None" not in capsys.readouterr().out


def test_a_space_that_is_not_there_is_refused(tmp_path, capsys):
    """The next look names the spaces that it knows."""
    from inspector.demo.portfolio import prepare_in

    prepare_in(tmp_path)
    assert 0 != main(
        [
            "next",
            "demo-ithrenna-lark",
            "--minutes",
            "30",
            "--here",
            "nowhere",
            "--data",
            str(tmp_path),
        ]
    )
    told = capsys.readouterr()
    assert (
        "The space 'nowhere' is not known in this inspection; it is one of: " in told.err + told.out
    )
    assert "engine-room" in told.err + told.out
