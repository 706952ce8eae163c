"""The worked case as a surveyor types it: one invented workboat and brief, and a second vessel.

All of it is invented and chosen so that a person can follow every figure on paper: her log is
exactly on a cube law, both displacements are whole cubes (13³ = 2197 t, 14³ = 2744 t), and what
would be a band of a default is mostly measured.
"""

from datetime import date

from inspector.assess.assessment import assess
from inspector.assess.from_state import read_inspection
from inspector.checklists.loader import read_library
from inspector.conversion.comparison.calculation import candidate
from inspector.conversion.contents import convert, read_case
from inspector.record.inspections import Inspections
from inspector.values.cell_text import cell_text, table_cell_text

DAY = date(2031, 5, 4)
SPACES = '[space.room]\nname = "Thruster room"\norder = 1\n'
CAUTIONS = """[caution.alone]
signal = "warning"
hurts = "Nobody hears."
instead = "Go in twos."
decides = "The master."
"""
HEAD = """[system]
id = "{}"
name = "{}"
order = {}
unit = "unit"
units = ["One"]
about = "About."
retain = "Stays."
refurbish = "Is worked on."
remove = "Goes."
"""
CHECK = """
[[check]]
id = "{}"
title = "{}"
ask = "Ask."
look = "Look."
bad = "Bad."
space = "room"
minutes = {}
weight = {}
critical = {}
"""
# weight and minutes of each check; the oil of a thruster and the skin of the hull are critical
SHEETS = {
    ("hull", "Hull", 10): (("skin", "Skin", 6, 4, "true"), ("coating", "Coating", 4, 1, "false")),
    ("thrusters", "Thrusters", 20): (
        ("oil", "Oil of the hub", 10, 5, "true"),
        ("motor", "Motor", 4, 4, "false"),
        ("tunnel", "Tunnel", 4, 3, "false"),
        ("noise", "Noise", 3, 2, "false"),
        ("hatch", "Hatch", 3, 2, "false"),
    ),
    ("deck-machinery", "Deck machinery", 30): (("drum", "Drum", 5, 3, "false"),),
}
BRIEF = {
    "speed": "10",
    "range": "6000",
    "endurance": "28",
    "station": "1",
    "persons": "36",
    "horizon": "15",
    "budget": "4000000",
    "need/hull": "required",
    "need/thrusters": "useful",
    "need/deck-machinery": "unwanted",
}
VESSEL = {
    "name": "Worked case",
    "length": "62",
    "breadth": "14",
    "draught": "4.6",
    "tonnage": "1500",
    "deck_area": "300",
}
UNITS = {
    "unit/hull/whole": "Hull",
    "unit/thrusters/bow": "Bow thruster",
    "unit/thrusters/aft": "Aft thruster",
    "unit/deck-machinery/winch": "Towing winch",
}
RATINGS = {
    "hull/whole/skin": "good",
    "hull/whole/coating": "good",
    # the oil of the bow thruster waits for a bottle, its hatch is none
    "thrusters/bow/motor": "fair",
    "thrusters/bow/tunnel": "poor",
    "thrusters/bow/noise": "good",
    "thrusters/bow/hatch": "not fitted",
    "thrusters/aft/oil": "poor",
    "thrusters/aft/motor": "good",
    "thrusters/aft/tunnel": "good",
    "thrusters/aft/noise": "good",
    "thrusters/aft/hatch": "good",
    "deck-machinery/winch/drum": "good",
}
SCOPE = {
    "bow-repair": ("thrusters", "bow", "refurbish", "80000", "90000", "130000"),
    "bow-new": ("thrusters", "bow", "replace", "230000", "260000", "320000"),
    "aft-repair": ("thrusters", "aft", "refurbish", "100000", "120000", "170000"),
    "aft-new": ("thrusters", "aft", "replace", "230000", "260000", "320000"),
    "winch-out": ("deck-machinery", "winch", "remove", "40000", "60000", "110000"),
}
AFT = {
    "life_refurbished": "6",
    "life_new": "15",
    "yearly_refurbished": "12000",
    "yearly_new": "3000",
    "residual_refurbished": "0",
    "residual_new": "20000",
}
CERTIFICATES = {
    "class": {
        "kind": "class",
        "issued": "2029-03-01",
        "expires": "2034-02-28",
        "last_annual": "2030-03-10",
        "last_bottom": "2029-02-10",
    },
    "load-line": {
        "kind": "load line",
        "issued": "2028-02-01",
        "expires": "2033-01-31",
        "last_annual": "2030-02-01",
    },
}


def tank(name, kind, capacity, **more):
    return {"name": name, "kind": kind, "capacity": capacity, **more}


def thruster(name, kind, feed, rated, thrust, x, acts):
    return {
        "name": name,
        "kind": kind,
        "feed": feed,
        "rated": rated,
        "thrust": thrust,
        "x": x,
        "acts": acts,
    }


def load(name, bus, harbour, sea, manoeuvring, keeping, **more):
    return {
        "name": name,
        "bus": bus,
        "harbour": harbour,
        "sea": sea,
        "manoeuvring": manoeuvring,
        "station_keeping": keeping,
        **more,
    }


def kn(levers):
    """The cells of KN at 10, 20, 30 and 40°."""
    return dict(zip(("kn_10", "kn_20", "kn_30", "kn_40"), levers.split(), strict=True))


def by_draught(draught, displacement, km, limit):
    """A row of hydrostatics; her centres and MCTC hardly change with the draught."""
    centres = {"lcb": "27.5", "lcf": "27", "mctc": "30"}
    named = {"draught": draught, "displacement": displacement, "km": km, "limit_kg": limit}
    return {**named, **centres}


TABLES = {
    "tanks": [
        tank(
            "Fuel 1",
            "fuel",
            "200",
            fill="60",
            density="850",
            temperature="25",
            unusable="5",
            lcg="28",
            tcg="0",
            vcg="2",
            free_surface="120",
        ),
        tank(
            "Fuel 2",
            "fuel",
            "180",
            fill="98",
            density="850",
            temperature="15",
            unusable="5",
            lcg="32",
            tcg="0",
            vcg="2",
            free_surface="110",
        ),
        tank(
            "Fuel 3",
            "fuel",
            "100",
            fill="50",
            density="850",
            temperature="15",
            unusable="5",
            lcg="30",
            tcg="0",
            vcg="1.5",
            free_surface="300",
            plan="convert",
            becomes="fresh water",
        ),
        tank(
            "Water 1",
            "fresh water",
            "120",
            fill="70",
            lcg="24",
            tcg="0",
            vcg="3",
            free_surface="60",
        ),
        tank("Ballast", "ballast", "150", fill="0", density="1025", lcg="30", tcg="0", vcg="1"),
    ],
    "speeds": [
        {
            "speed": speed,
            "power": power,
            "displacement": "2197",
            "kind": "log",
            "over": "through the water",
        }
        for speed, power in (("8", "256"), ("10", "500"), ("12", "864"))
    ],
    "engines": [
        {
            "name": "Main",
            "drives": "propeller",
            "power": "750",
            "count": "2",
            "measured": "measured on board",
            "rate_50": "200",
            "rate_75": "200",
            "rate_100": "200",
        },
        {
            "name": "Sets",
            "drives": "generator",
            "power": "600",
            "count": "3",
            "measured": "measured on board",
            "rate_50": "220",
            "rate_75": "220",
            "rate_100": "220",
        },
    ],
    "propulsion": [
        {
            "hotel_sea": "752",
            "hotel_anchor": "611",
            "hotel_at": "switchboard",
            "running": "1",
            "sea_margin": "10",
            "reserve": "10",
            "station_fuel": "12",
            "diameter": "2.4",
            "shaft_height": "1.8",
        }
    ],
    "stores": [
        {
            "watermaker": "4",
            "sewage": "40",
            "grey": "200",
            "dry": "20",
            "chilled": "15",
            "frozen": "14",
            "waste": "12",
            "toilets": "vacuum",
            "discharge": "nothing",
            "compactor": "yes",
            "water_per_head": "150",
        }
    ],
    "hydrostatics": [
        {
            "displacement": "2744",
            "draught_fore": "4.50",
            "draught_aft": "4.70",
            "lpp": "58",
            "lwl": "60",
            "breadth": "14",
            "depth": "6",
            "kg": "5.80",
            "km": "6.90",
            "greatest_draught": "5.10",
            "cb": "0.68",
            "wind_height": "5.5",
            "cargo": "500",
            "stores": "60",
            "keels": "16.8",
            "gm": "1.04",
            "free_surface": "164.64",
            "tpc": "7",
            "mctc": "30",
            "lcf": "27",
            "lightship": "1800",
            "lightship_lcg": "28",
            "lightship_vcg": "6.4",
            "roll_period": "10.5",
            "roll_loading": "loaded, liquids 20 % of load",
            "booklet": "2019, society and flag",
            "inclined_on": "2019-02-02",
        }
    ],
    "weights": [
        {
            "name": "towing winch",
            "act": "off",
            "mass": "110",
            "basis": "weighed",
            "lcg": "34",
            "tcg": "0",
            "vcg": "7.5",
        },
        {
            "name": "bulk tanks",
            "act": "off",
            "mass": "60",
            "basis": "drawing",
            "lcg": "30",
            "tcg": "0",
            "vcg": "3",
        },
        {
            "name": "deckhouse",
            "act": "on",
            "area": "800",
            "thickness": "8",
            "extra": "25",
            "stands": "open deck",
            "long": "12",
            "wide": "10",
            "high": "2.8",
            "room": "yes",
            "rated": "5",
            "lcg": "14",
            "tcg": "0",
            "vcg": "11",
        },
        {
            "name": "bulk pipe",
            "act": "off",
            "length": "200",
            "pipe": "4 in, schedule 40",
            "extra": "30",
            "lcg": "30",
            "tcg": "0",
            "vcg": "2.5",
        },
        {
            "name": "tender",
            "act": "on",
            "mass": "9",
            "basis": "weighed",
            "lcg": "10",
            "tcg": "4",
            "vcg": "9",
        },
        {
            "name": "stores water",
            "act": "on",
            "volume": "40",
            "density": "1000",
            "lcg": "25",
            "tcg": "0",
            "vcg": "2",
        },
    ],
    "claims": [{"deadweight": "1400", "fuel": "480", "fresh_water": "220", "berths": "12"}],
    "class_conditions": [
        {"name": "cracked bracket in the steering flat", "due": "2031-06-03", "met": "no"}
    ],
    "loading": [
        {
            "stores": "30",
            "stores_lcg": "30",
            "stores_vcg": "8",
            "passengers": "24",
            "persons_lcg": "30",
            "persons_vcg": "10",
            "crowd": "6",
            "service_speed": "12",
        }
    ],
    "hydrostatics_by_draught": [
        by_draught("3.00", "1624", "7.80", "6.90"),
        by_draught("3.60", "2044", "7.40", "6.60"),
        by_draught("4.40", "2604", "7.00", "6.30"),
        by_draught("4.60", "2744", "6.90", "6.20"),
        by_draught("5.20", "3170", "6.80", "6.10"),
    ],
    "levers": [
        {"angle": str(angle), "gz": lever}
        for angle, lever in ((0, "0"), (10, "0.18"), (20, "0.38"), (30, "0.54"), (40, "0.58"))
    ],
    "cross_curves": [
        {"displacement": "1600", **kn("1.37 2.72 3.93 4.88")},
        {"displacement": "2600", **kn("1.22 2.43 3.53 4.42")},
        {"displacement": "2700", **kn("1.21 2.40 3.49 4.37")},
        {"displacement": "2800", **kn("1.19 2.37 3.45 4.32")},
    ],
    "decks": [
        {
            "name": "container laboratory",
            "load": "44",
            "area": "20",
            "rated": "5",
            "walls": "16",
            "acceleration": "0.4",
        }
    ],
    "spaces": [
        {
            "name": "bulk hold",
            "kind": "hold",
            "act": "won",
            "length": "20",
            "breadth": "10",
            "deducted": "20",
            "height": "2.6",
        },
        {
            "name": "forward accommodation",
            "kind": "accommodation",
            "act": "given",
            "area": "60",
            "height": "2.1",
            "share": "90",
            "state": "free",
        },
    ],
    "wants": [
        {
            "name": "new cabins",
            "kind": "cabin",
            "place": "inside",
            "count": "12",
            "persons": "2",
            "who": "crew",
        },
        {
            "name": "old cabins",
            "kind": "cabin",
            "place": "inside",
            "count": "6",
            "persons": "2",
            "who": "guest",
            "plan": "there already",
        },
        {"name": "mess", "kind": "mess", "place": "inside", "area": "54"},
        {"name": "toilets", "kind": "sanitary", "place": "inside", "count": "6", "area": "4"},
        {"name": "corridors", "kind": "corridors and stairs", "place": "inside", "area": "40"},
        {"name": "dry store", "kind": "store", "place": "inside", "area": "30"},
        {"name": "tender bay", "kind": "tender bay", "place": "open deck", "area": "80"},
    ],
    "plant_generators": [
        {"name": name, "bus": bus, "rated": rated, "power_factor": "0.8"}
        for name, bus, rated in (("G1", "A", "600"), ("G2", "B", "600"), ("G3", "A", "400"))
    ],
    "plant_ties": [
        {
            "name": "tie",
            "one": "A",
            "other": "B",
            "normally": "open",
            "at_harbour": "closed",
            "at_sea": "closed",
        }
    ],
    "plant_loads": [
        load("hotel A", "A", "200", "400", "300", "180"),
        load("hotel B", "B", "100", "352", "300", "120"),
        load("laboratory", "A", "60", "60", "60", "60", kind="new", essential="no"),
    ],
    "plant_transformers": [{"name": "TR1", "rating": "100", "current": "150", "voltage": "400"}],
    "plant_thrusters": [
        thruster("T1", "tunnel", "A", "400", "52", "22", "across"),
        thruster("T2", "tunnel", "B", "400", "52", "22", "across"),
        thruster("T3", "azimuth in nozzle", "A", "800", "130", "-22", "both"),
        thruster("T4", "azimuth in nozzle", "B", "800", "130", "-22", "both"),
    ],
    "plant_exposure": [
        {
            "length": "58",
            "breadth": "14",
            "draught": "4.6",
            "lateral": "400",
            "frontal": "150",
            "x_wind": "0",
            "x_house": "0",
            "x_current": "0",
            "wind": "10",
            "current": "1",
            "wind_beam": "0.9",
            "wind_head": "0.7",
            "current_beam": "0.7",
            "current_head": "0.1",
            "waves": "1.25",
            "efficiency": "0.9",
            "limit": "0.9",
        }
    ],
    "plant_board": [
        {
            "voltage": "440",
            "frequency": "60",
            "power_factor": "0.8",
            "shore_current": "125",
            "shore_voltage": "400",
            "shore_frequency": "50",
        }
    ],
    "prices": [
        {
            "currency": "EUR",
            "priced_on": "2031-05-01",
            "place": "an invented yard",
            "asking": "1500000",
            "definition": "12",
        }
    ],
    "sales": [{"name": "towing winch", "low": "20000", "likely": "35000", "high": "60000"}],
}
SINGLE = (
    "propulsion",
    "stores",
    "hydrostatics",
    "claims",
    "loading",
    "plant_exposure",
    "plant_board",
    "prices",
)
OTHER = (
    ("vessel", "name", "Second vessel"),
    ("inspection", "date", "2031-05-04"),
    ("unit/hull/whole", "name", "Hull"),
    ("sheet/hull/whole/skin", "rating", "fair"),
    ("sheet/hull/whole/coating", "rating", "good"),
    ("row/prices/one", "currency", "EUR"),
    ("row/prices/one", "asking", "1000000"),
    # a fixed price, so that her cost is one number
    ("scope/paint", "system", "hull"),
    ("scope/paint", "unit", "whole"),
    ("scope/paint", "act", "refurbish"),
    ("scope/paint", "text", "coating"),
    ("scope/paint", "low", "100000"),
    ("scope/paint", "likely", "100000"),
    ("scope/paint", "high", "100000"),
    ("certificate/class", "kind", "class"),
    ("certificate/class", "issued", "2031-03-01"),
    ("certificate/class", "expires", "2036-02-29"),
    ("certificate/class", "last_bottom", "2031-02-20"),
)


def typed():
    """Every entry of the case, in the order of the walk and the desk: (subject, field, value)."""
    yield "inspection", "date", DAY.isoformat()
    yield from (("vessel", field, text) for field, text in VESSEL.items())
    yield from (("brief", field, text) for field, text in BRIEF.items())
    yield from ((subject, "name", name) for subject, name in UNITS.items())
    yield from ((f"sheet/{path}", "rating", rating) for path, rating in RATINGS.items())
    for line, (system, unit, act, low, likely, high) in SCOPE.items():
        yield from (
            (f"scope/{line}", field, text)
            for field, text in (
                ("system", system),
                ("unit", unit),
                ("act", act),
                ("text", line),
                ("low", low),
                ("likely", likely),
                ("high", high),
            )
        )
    yield from (("verdict/thrusters/aft", field, text) for field, text in AFT.items())
    yield "verdict/deck-machinery/winch", "weight_won", "110"
    for paper, fields in CERTIFICATES.items():
        yield from ((f"certificate/{paper}", field, text) for field, text in fields.items())
    for table, rows in TABLES.items():
        for at, row in enumerate(rows, 1):
            yield from (
                (f"row/{table}/{'one' if table in SINGLE else f'r{at}'}", field, text)
                for field, text in row.items()
            )


def other():
    """The second vessel under the same brief: little typed, one paper, one price."""
    yield from (("brief", field, text) for field, text in BRIEF.items())
    yield from OTHER


class Worked:
    """One inspection kept on disk by the recorder, assessed and converted."""

    def __init__(self, folder, entries):
        sheets = folder / "sheets"
        sheets.mkdir(parents=True)
        (sheets / "spaces.toml").write_text(SPACES)
        (sheets / "cautions.toml").write_text(CAUTIONS)
        for (system, name, order), checks in SHEETS.items():
            (sheets / f"{system}.toml").write_text(
                HEAD.format(system, name, order)
                + "".join(CHECK.format(*check) for check in checks),
                encoding="utf-8",
            )
        inspection = Inspections(folder / "kept", "laptop").create(sheets)
        inspection.record("QX", entries)
        inspection.close()
        # read again from the disk, as on the next day
        kept = Inspections(folder / "kept", "laptop").get(inspection.id)
        self.state = kept.state
        self.assessment = assess(
            read_inspection(self.state), read_library(sheets, check_criteria=True)
        )
        self.chapters = {one.id: one for one in convert(self.assessment, DAY)}
        kept.close()

    def part(self, system, unit="all"):
        """A unit's part, or the whole system's."""
        found = next(one for one in self.assessment.systems if one.system.id == system)
        return found.whole if unit == "all" else next(one for one in found.units if one.id == unit)

    def figure(self, chapter, name):
        """The one figure of that name."""
        (found,) = (one for one in self.chapters[chapter].figures if one.name == name)
        return found

    def span(self, chapter, name):
        """(low, point, high) of a figure."""
        found = self.figure(chapter, name).span
        return found.low, found.point, found.high

    def answer(self, chapter):
        """The answer of a chapter as a reader sees it."""
        return cell_text(self.chapters[chapter].answer)

    def warnings(self, chapter):
        """The warnings of a chapter as a reader sees them."""
        return [cell_text(warning) for warning in self.chapters[chapter].warnings]

    def table(self, chapter, title):
        """The table whose title begins so."""
        (found,) = (
            table
            for table in self.chapters[chapter].figure_tables
            if cell_text(table.title).startswith(title)
        )
        return found

    def rows(self, chapter, title):
        """Its rows as calculated: first cell -> the others."""
        return {row[0]: row[1:] for row in self.table(chapter, title).rows}

    def printed(self, chapter, title):
        """Its rows as a reader sees them."""
        table = self.table(chapter, title)
        units = [column.unit for column in table.columns]
        return [
            tuple(table_cell_text(cell, unit=unit) for cell, unit in zip(row, units, strict=True))
            for row in table.rows
        ]

    def printed_rows(self, chapter, title):
        """Its rows as a reader sees them: first cell -> the others."""
        return {row[0]: row[1:] for row in self.printed(chapter, title)}

    def candidate(self, name):
        """She as a candidate of the comparison."""
        return candidate(read_case(self.assessment, DAY), name, name, tuple(self.chapters.values()))
