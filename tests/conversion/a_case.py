"""An inspection's particulars written as rows, and the case that the chapters of the conversion
read from them."""

from datetime import date

from inspector.assess.from_state import read_inspection
from inspector.assess.model import Assessment
from inspector.conversion.contents import read_case
from inspector.record.entry import Entry
from inspector.record.state import State

DAY = date(2031, 5, 4)


def written(tables):
    """The state of a record that holds these rows: table id -> rows, each a mapping of column to
    what was typed."""
    entries = []
    for table, rows in tables.items():
        for at, row in enumerate(rows):
            subject = f"row/{table}/{row.get('id', at)}"
            for field, value in row.items():
                if field != "id":
                    number = len(entries) + 1
                    entries.append(
                        Entry(
                            f"laptop:{number}",
                            f"2031-05-04T08:00:{number % 60:02}.000Z",
                            "laptop",
                            "QX",
                            subject,
                            field,
                            value,
                        )
                    )
    return State(entries)


def case(tables=None, vessel=None, brief=None, systems=()):
    """The case of these rows, with the vessel's and the brief's texts as typed and the systems
    as assessed."""
    recorded = read_inspection(written(tables or {}))
    return read_case(
        Assessment(vessel=vessel or {}, brief=brief or {}, systems=systems, recorded=recorded), DAY
    )


BOOKLET = {
    "id": "one",
    "displacement": "3200",
    "draught_fore": "5.00",
    "draught_aft": "5.20",
    "lpp": "65",
    "breadth": "16",
    "kg": "6.40",
    "km": "7.55",
    "km_after": "7.55",
    "greatest_draught": "6.10",
    "tpc": "9.06",
    "mctc": "37.5",
    "lcf": "30",
    "free_surface": "122.4",
    "lightship": "2100",
    "lightship_lcg": "31",
    "lightship_vcg": "7.1",
    "booklet": "2009, society and flag",
    "inclined_on": "2009-03-02",
}
WEIGHTS = (
    {
        "name": "towing winch",
        "act": "off",
        "mass": "140",
        "basis": "drawing",
        "lcg": "40",
        "tcg": "0",
        "vcg": "8.2",
    },
    {
        "name": "bulk tanks",
        "act": "off",
        "mass": "72",
        "basis": "computed",
        "lcg": "34",
        "tcg": "0",
        "vcg": "3.2",
    },
    {
        "name": "landing deck",
        "act": "on",
        "mass": "85",
        "basis": "computed",
        "lcg": "8",
        "tcg": "0",
        "vcg": "15.5",
    },
)
LEVERS = tuple(
    {"angle": str(angle), "gz": lever}
    for angle, lever in ((0, "0"), (10, "0.17"), (20, "0.36"), (30, "0.52"), (40, "0.55"))
)
