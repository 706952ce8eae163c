"""The invented brief, surveyors and three candidates: particulars, units, findings, work lines, decisions and photos. All of it is made up."""

from dataclasses import dataclass
from typing import Any

from inspector.demo import barely_seen, tired, well_kept

SURVEYORS = ("Ilvane Toreth", "Osk Merrindal")
NEEDS = {"hull": "required", "open-deck": "required", "propulsion": "required", "thrusters": "required", "steering": "required",
         "power-generation": "required", "switchboards": "required", "tanks": "useful", "pumps-and-piping": "useful", "reefers": "required",
         "dynamic-positioning": "neutral"}
BRIEF = {"id": "demo-brief", "client": "Halvenna Expeditions (invented)", "speed": "12", "range": "9000", "endurance": "45", "persons": "40",
         "horizon": "15", **{f"need/{system}": need for system, need in NEEDS.items()}}

_THRUSTERS = (("bow-1", "Bow thruster 1"), ("bow-2", "Bow thruster 2"), ("stern", "Stern thruster"))
_ROOMS = (("freezer", "Freezer room"), ("chill", "Chill room"), ("plant", "Refrigerating plant"))
_TANKS = (("wet", "Wet cargo tanks"), ("dry", "Dry bulk tanks"), ("fuel", "Fuel tanks"), ("fresh", "Fresh water tanks"), ("ballast", "Ballast tanks"),
          ("waste", "Waste tanks"), ("voids", "Voids, cofferdams and peaks"))
_HULL = (("shell", "Shell and sea chests"), ("decks", "Weather decks and deckhouses"), ("closing", "Bulkheads, doors and hatches"))
_SHAFTS = (("port", "Port shaft line"), ("starboard", "Starboard shaft line"))
_RUDDERS = (("port", "Port rudder and steering gear"), ("starboard", "Starboard rudder and steering gear"))
_BOARDS = (("main", "Main switchboard (bus A and B)"), ("emergency", "Emergency switchboard"), ("distribution", "Distribution"),
           ("batteries", "Batteries and UPS"))
_PIPES = (("cargo", "Cargo pumps and lines"), ("dry", "Dry bulk air plant"), ("fuel", "Fuel transfer and manifold"), ("bilge", "Bilge and ballast"),
          ("air", "Compressed air"))
_DECK = (("deck", "Open after deck"),)


def _power(sets: int) -> tuple[tuple[str, str], ...]:
    generators = tuple((f"set-{number}", f"Generator set {number}") for number in range(1, sets + 1))
    return (*generators, ("plant", "Plant and shore connection"), ("emergency", "Emergency set"))


@dataclass(frozen=True)
class Candidate:
    """One vessel of the portfolio; `said` holds (subject, field, value) beside the sheets, `photos` (drawing, subject, caption)."""

    id: str
    visit: dict[str, str]
    vessel: dict[str, str]
    units: dict[str, tuple[tuple[str, str], ...]]
    sheets: dict[str, str]
    said: tuple[tuple[str, str, Any], ...]
    photos: tuple[tuple[str, str, str], ...]
    overruled: str = ""                 # "subject=rating": the surveyor's word against the judgement
    disputed: str = ""                  # "subject=rating": the second surveyor's word, given without seeing the first


def _said(kind: str, fields: tuple[str, ...], text: str) -> tuple[tuple[str, str, str], ...]:
    """Lines of values parted by | -> entries of `kind`/line-<n>; an empty value makes no entry."""
    rows = (line.split("|") for line in text.strip().splitlines())
    return tuple((f"{kind}/demo-{number}", name, value.strip())
                 for number, row in enumerate(rows, 1) for name, value in zip(fields, row, strict=True) if value.strip())


def _findings(text: str):
    return _said("finding", ("urgency", "on", "title", "text", "action"), text)


def _lines(text: str):
    return _said("scope", ("system", "unit", "act", "text", "low", "likely", "high", "weight"), text)


def _verdicts(rows: dict[str, dict[str, str]]):
    return tuple((f"verdict/{part}", name, value) for part, fields in rows.items() for name, value in fields.items())


WELL_KEPT = Candidate(
    "demo-zellowen-tide",
    {"title": "Zellowen Tide, purchase inspection", "place": "Lay-by berth 4, Orrimhaven", "date": "2026-10-06",
     "attending": "Master, chief engineer, electrician",
     "weather": "Overcast, 9 °C, dry deck, slack water"},
    {"name": "Zellowen Tide", "imo": "0001236", "flag": "Vessmark", "class": "Supply vessel, DP class 2, unattended machinery",
     "built": "2007-11-19", "year": "2008",
     "yard": "Tarnbrekka Yard, hull 41", "length": "78.6", "breadth": "18.4", "depth": "8.0", "draught": "6.4", "tonnage": "2890",
     "deck_area": "720", "dp_class": "2",
     "particulars": "Two shaft lines, four sets, three tunnel thrusters. One owner since new. In lay-up with a crew of six since April."},
    {"hull": _HULL, "open-deck": _DECK, "propulsion": _SHAFTS, "thrusters": _THRUSTERS, "steering": _RUDDERS, "power-generation": _power(4),
     "switchboards": _BOARDS, "tanks": _TANKS, "pumps-and-piping": _PIPES, "reefers": _ROOMS,
     "dynamic-positioning": (("dp", "DP system"),)},
    well_kept.SHEETS,
    _findings("""
before purchase|thrusters/bow-2|Water in the oil of bow thruster 2|0.62 % of water by two samples, header tank topped every fortnight.|Dock, open \
the unit, renew seals; price it before signing.
before purchase|hull/decks|Crack at the crane pedestal bracket|65 mm at the bracket toe, starboard aft, confirmed with dye.|Class to see it; gouge, \
weld and test, and find what swung there.
before purchase|hull/closing|Cable pipe open through the bulkhead at frame 30|Both faces seen; the pipe was filled with foam.|Close with an approved transit.
in the yard|reefers/plant|R-404A plant loses gas|5.5 kg in twelve months on 14 kg; oil at two flanges of circuit 1.|Find and stop the leaks now; \
plan a plant with another refrigerant.
in the yard|switchboards/main|Warm joint at the breaker of bow thruster 2|12 K above its sister poles at 62 % load.|Dead board, by licensed hands: \
clean, tighten, look again under load.
in the yard|switchboards/batteries|Emergency batteries seven years old|71 % of capacity left.|Renew.
in the yard|tanks/ballast|Two air pipe balls stuck on the port side|Moved by hand at frames 44 and 52.|Overhaul the heads, all ten.
keep watch|propulsion/starboard|Stern seal drips inboard on the starboard line|Two drops a minute; six litres in the last quarter.|Log it weekly; \
decide at the docking of 2027.
keep watch|dynamic-positioning/dp|Consoles as old as the ship|Cards are found second-hand only.|Buy the spare cards of one console now.
""")
    + _lines("""
thrusters|bow-2|refurbish|Draw, open, new seals and bearings, test ashore|140000|185000|260000|0
thrusters|bow-2|replace|New tunnel unit of the same size|520000|610000|720000|0.4
reefers|plant|refurbish|Find leaks, new flanges, new cut-outs; gas stays|18000|26000|45000|0
reefers|plant|replace|Plant with a natural refrigerant, pipes renewed|160000|210000|290000|0.9
hull|decks|refurbish|Crane bracket, rail edges, 60 m² of blasting and coating|35000|52000|80000|0.2
switchboards|main|refurbish|Renew air breakers of the thrusters by the maker's successor type|90000|120000|165000|-0.3
switchboards|batteries|refurbish|Batteries and charger|9000|12000|16000|0
tanks|dry|remove|Take out four bulk vessels with pipes and compressor|60000|85000|120000|-46
tanks|waste|refurbish|Second treatment unit and 30 m³ of holding in wet cargo tank 1|110000|150000|210000|6
dynamic-positioning|dp|replace|New consoles and computers, failure analysis, trials|480000|560000|700000|-0.2
dynamic-positioning|dp|refurbish|Spare cards, batteries of both supplies|40000|55000|75000|0
""")
    + _verdicts({
        "propulsion/all": {"life_years": "18", "parts": "made", "decision": "retain",
        "reason": "Good papers, good oil. The starboard seal is watched, not feared."},
        "thrusters/all": {"life_years": "16", "parts": "hard to get"}, "switchboards/all": {"life_years": "16", "parts": "made"},
        "hull/all": {"life_years": "20"}, "reefers/all": {"life_years": "6", "parts": "hard to get"},
        "dynamic-positioning/all": {"life_years": "5", "parts": "hard to get", "decision": "remove", "space_won": "9",
                                    "reason": "The brief asks for no notation. Joystick and heading stay; the rest would be kept for nobody."},
        "tanks/dry": {"decision": "remove", "weight_won": "46", "space_won": "310",
                      "reason": "Sound vessels, but an expedition ship carries no bulk; the room is wanted for boats and stores."},
    }),
    (("engine-room", "sheet/propulsion/port/engine-plate", "Both engines from the forward door"),
     ("oil-pressure", "sheet/propulsion/port/load-run", "Oil pressure hot at 75 % load"),
     ("stern-seal", "sheet/propulsion/starboard/stern-seals", "Drops under the inboard seal"),
     ("tunnel", "sheet/thrusters/bow-2/tunnel-outside", "Tunnel of bow thruster 2, from the docking report"),
     ("switchboard", "sheet/switchboards/main/board-front", "Front of the main switchboard"),
     ("thermal", "sheet/switchboards/main/thermography", "Warm middle pole of the thruster breaker"),
     ("batteries", "sheet/switchboards/batteries/batteries", "Emergency batteries of 2019"),
     ("coil", "sheet/reefers/freezer/cooler", "Frost on the freezer coil"),
     ("deck", "sheet/open-deck/deck/deck-plate", "Open deck with its lashing points"),
     ("manhole", "sheet/tanks/ballast/covers", "Ballast tank 4 starboard, cover on its bolts")),
    overruled="sheet/reefers/plant/refrigerant=fair", disputed="sheet/hull/shell/waterline-belt=poor",
)

TIRED = Candidate(
    "demo-brannoveth-veil",
    {"title": "Brannoveth Veil, first look", "place": "Outer quay, Skelmavik Sound", "date": "2026-10-20",
     "attending": "Watchman, ship's electrician for two hours",
     "weather": "Rain, 6 °C, dark from 17:00, no heating on board"},
    {"name": "Brannoveth Veil", "imo": "0003454", "flag": "Ostravelle", "class": "Supply vessel, class suspended", "built": "1997-06-02", "year": "1998",
     "yard": "Kelmorra Shipworks, hull 17", "length": "62.2", "breadth": "15.1", "depth": "6.8", "draught": "5.6", "tonnage": "1630",
     "deck_area": "430", "dp_class": "1",
     "particulars": "Two shaft lines, three sets, three tunnel thrusters. Laid up without crew since 2019, shore power for lights."},
    {"hull": _HULL, "open-deck": _DECK, "propulsion": _SHAFTS, "thrusters": _THRUSTERS, "steering": _RUDDERS, "power-generation": _power(3),
     "switchboards": _BOARDS, "tanks": _TANKS, "pumps-and-piping": _PIPES, "reefers": _ROOMS,
     "dynamic-positioning": (("dp", "DP system"),)},
    tired.SHEETS,
    _findings("""
danger now|thrusters/bow-1|Water to the floor plates of the bow thruster room|No bilge alarm; the pump has no power.|Keep out until pumped and \
tested for air by the yard's people; find where it enters.
before purchase|hull/shell|Plate below renewal thickness at frame 38|6.7 mm of 10.0 by our own gauge, starboard at the waterline.|Full gauging by \
class before any offer.
before purchase|hull/shell|Eleven of seventeen sea valves do not move|Not forced.|Docking; until then no pipe is opened inboard of them.
before purchase|reefers/plant|Plant shut down, R-22|Compressor seized, panels soaked.|Recover the gas by certified hands; count on a new plant.
""")
    + _lines("""
hull|shell|replace|Renew 42 t of shell and tank wall|420000|580000|900000|2
hull|shell|refurbish|Blast and coat shell, renew sea valves|260000|340000|480000|0.4
propulsion|all|refurbish|Both engines and gears overhauled ashore, seals, shafts surveyed|900000|1250000|1800000|0
propulsion|all|replace|New engines and gears on new seats|1500000|1900000|2600000|-8
reefers|plant|remove|Plant, panels and pipes out, gas recovered|25000|35000|60000|-7
reefers|plant|replace|New rooms and plant|240000|300000|380000|7
""")
    + _verdicts({
        "propulsion/all": {"life_years": "3", "parts": "hard to get"}, "reefers/all": {"life_years": "0", "parts": "no longer made", "weight_won": "7"},
        "hull/all": {"life_years": "2"}, "switchboards/all": {"parts": "no longer made"},
    }),
    (("corroded-plate", "sheet/hull/shell/spot-gauging", "Frame 38 starboard, scale knocked off"),
     ("start-air", "sheet/pumps-and-piping/air/air-receivers", "Starting air as found"),
     ("tired-deck", "sheet/hull/decks/coating", "Weather deck aft of the house"),
     ("hull-side", "sheet/hull/shell/coating", "Starboard side from the quay")),
)

BARELY = Candidate(
    "demo-ithrenna-lark",
    {"title": "Ithrenna Lark, looked at from the quay", "place": "Timber quay, Dunmorrel", "date": "2026-11-10",
     "attending": "Watchman; master ashore with the keys",
     "weather": "Clear, 3 °C, two hours of light left"},
    {"name": "Ithrenna Lark", "imo": "0005672", "flag": "Vessmark", "class": "Supply vessel, DP class 2", "built": "2011-03-28", "year": "2012",
     "yard": "Tarnbrekka Yard, hull 58", "length": "73.4", "breadth": "16.8", "depth": "7.4", "draught": "6.0", "tonnage": "2310",
     "deck_area": "610", "dp_class": "2",
     "particulars": "Two shaft lines, three sets, three thrusters by the drawing in the seller's letter. Nothing run, nothing opened."},
    {"hull": _HULL, "open-deck": _DECK, "propulsion": _SHAFTS, "thrusters": _THRUSTERS, "steering": _RUDDERS, "power-generation": _power(3),
     "switchboards": _BOARDS, "tanks": _TANKS, "pumps-and-piping": _PIPES, "reefers": _ROOMS},
    barely_seen.SHEETS,
    _findings("keep watch|hull/shell|Second visit needed|Two hours alongside, deck and bow thruster hatch only.|"
              "Come back with the master aboard, two days and a dead board."),
    (("hull-side-far", "sheet/hull/shell/coating", "Port side from the quay"), ("closed-manhole", "sheet/tanks/ballast/covers", "Tank cover, not opened")),
)

PORTFOLIO = (WELL_KEPT, TIRED, BARELY)
