"""A check that is about two systems is answered in one section and named in the other."""

from dataclasses import replace

from tests.report.test_condition_report import words


def test_a_check_of_another_sheet_is_named_with_its_answer(full, write):
    """The thrusters' section names the reefers' check that is also about them; no other does."""
    thrusters, reefers = full.systems
    one = thrusters.units[0].results[3]
    also = replace(
        one,
        subject="sheet/reefers/all/check-4",
        unit="all",
        unit_name="Reefers",
        check=replace(one.check, title="Room above the tunnel", also=("thrusters",)),
    )
    whole = replace(reefers.whole, results=(also,))

    text = words(write(replace(full, systems=(thrusters, replace(reefers, whole=whole)))))

    there = "Room above the tunnel (Reefers, Reefers): not seen, not run"
    assert 1 == text.count(f"Answered on another sheet: {there}")
