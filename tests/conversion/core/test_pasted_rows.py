"""Pasted tables: headings say which column is which, and what is not understood is told."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.conversion.contents import TABLES
from inspector.conversion.core.pasted_rows import MOST_ROWS, understood
from inspector.conversion.core.ship_particulars import TANKS
from inspector.conversion.stability.booklet.booklet_tables import BY_DRAUGHT, CROSS_CURVES, LEVERS


def test_hydrostatics_as_a_booklet_heads_them():
    """Usual short headings with units, a column that is none, and commas for points."""
    headings = "T (m)\tDispl. (t)\tKMT\tVCB\tMCT [tm/cm]\n"
    text = f"{headings}4,40\t2604\t7.00\t2.3\t30\n4.60\t2744\t6.90\t2.4\t31"
    found = understood(BY_DRAUGHT, text)

    assert () == found.faults
    assert ("VCB",) == found.left_out
    assert {"draught": "4,40", "displacement": "2604", "km": "7.00", "mctc": "30"} == found.rows[0]
    assert found.can_be_taken


def test_cross_curves_with_heels_across_and_downwards_are_the_same():
    """A booklet may print heels downwards and displacements across."""
    across = "Displacement;10;20;30°\n2600;1.22;2.43;3.53\n2700;1.21;2.40;3.49"
    downwards = "heel  2600  2700\n10  1.22  1.21\n20  2.43  2.40\n30  3.53  3.49"
    first, second = (understood(CROSS_CURVES, text) for text in (across, downwards))

    assert {"displacement": "2600", "kn_10": "1.22", "kn_20": "2.43", "kn_30": "3.53"} == (
        first.rows[0]
    )
    assert first.rows == second.rows
    assert () == first.faults == second.faults


def test_tanks_by_their_labels():
    """Names with spaces, parted by tabs; a density of ten kilograms is refused with its line."""
    text = "Tank\tContents\tCapacity\tDensity\nFuel 1 port\tfuel\t85\t846\nFuel 2\tfuel\t85\t10"
    found = understood(TANKS, text)

    assert "Fuel 1 port" == found.rows[0]["name"]
    assert len(found.faults) == 1
    assert found.faults[0].startswith("Line 3: Density of the contents: 10 kg/m³")
    assert not found.can_be_taken


@pytest.mark.parametrize(
    ("table", "text", "told"),
    [
        (LEVERS, "", "Paste a line of headings"),
        (LEVERS, "angle gz", "at least one line below"),
        (LEVERS, "10 0.2\n20 0.4", "No heading is a column"),
        (LEVERS, "angle\tangle\tgz\n10\t10\t0.2", "Two headings mean Heel"),
        (BY_DRAUGHT, "draught\tKM\n4.4\t7.0", "No heading means Displacement"),
        (LEVERS, "angle\tgz\n10\t0.2\t7", "Line 2 has 3 cells"),
        (LEVERS, "angle\tgz\n" + "10\t0.2\n" * (MOST_ROWS + 1), "are accepted"),
        (LEVERS, "angle\tgz\n10\t" + "0" * 60_000, "longer than"),
        (LEVERS, "angle\tgz\n10\tten", "Line 2"),
        (LEVERS, "angle\tgz\n95\t0.1", "Line 2"),
    ],
)
def test_what_cannot_be_taken_is_told(table, text, told):
    """One sentence each, and nothing of it is taken."""
    found = understood(table, text)

    assert any(told in fault for fault in found.faults), found.faults
    assert not found.can_be_taken


@given(st.sampled_from([table for table in TABLES if not table.single]), st.text(max_size=400))
def test_no_text_breaks_it(table, text):
    """Whatever is pasted, it is rows, a left-out heading or a sentence."""
    found = understood(table, text)

    assert found.rows or found.faults


@pytest.mark.parametrize(
    "table", [table for table in TABLES if not table.single], ids=lambda table: table.id
)
def test_every_table_takes_its_own_labels(table):
    """A spreadsheet that was made from the labels is understood column by column."""
    labels = [column.label.replace(",", "") for column in table.columns]
    values = ["1"] * len(labels)
    found = understood(table, "\t".join(labels) + "\n" + "\t".join(values))

    assert [column.name for column in table.columns] == [one.name for one in found.columns]
