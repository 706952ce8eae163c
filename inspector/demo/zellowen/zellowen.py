"""The first candidate of the demo, well kept and walked whole: findings, work, decisions."""

from inspector.demo.candidate import (
    Candidate,
    findings,
    units_of,
    values_of,
    verdict_facts,
    vessel,
    visit,
    work_lines,
    yard_details,
    yard_weeks,
)
from inspector.demo.rate_book import by_rate
from inspector.demo.sheet_lines import joined
from inspector.demo.zellowen import (
    zellowen_deck,
    zellowen_house,
    zellowen_hull,
    zellowen_machinery,
    zellowen_plant,
    zellowen_rules,
    zellowen_safety,
    zellowen_ship,
)

_FINDINGS = findings("""
before purchase|thrusters/bow-2|Water in the oil of bow thruster 2|
    0.62 % of water by two samples, header tank topped every fortnight.|
    Dock, open the unit, renew seals; price it before signing.
before purchase|hull/decks|Crack at the crane pedestal bracket|
    65 mm at the bracket toe, starboard aft, confirmed with dye.|
    Class to see it; gouge, weld and test, and find what swung there.
before purchase|hull/closing|Cable pipe open through the bulkhead at frame 30|
    Both faces seen; the pipe was filled with foam.|Close with an approved transit.
in the yard|reefers/plant|R-404A plant loses gas|
    5.5 kg in twelve months on 14 kg; oil at two flanges of circuit 1.|
    Find and stop the leaks now; plan a plant with another refrigerant.
in the yard|switchboards/main-a|Warm joint at the breaker of bow thruster 2|
    12 K above its sister poles at 62 % load.|
    Dead board, by licensed hands: clean, tighten, look again under load.
in the yard|switchboards/batteries|Emergency batteries seven years old|71 % of capacity left.|Renew.
in the yard|tanks/ballast|Two air pipe balls stuck on the port side|
    Moved by hand at frames 44 and 52.|Overhaul the heads, all ten.
keep watch|propulsion/gear-starboard|Stern seal drips inboard on the starboard line|
    Two drops a minute; six litres in the last quarter.|
    Log it weekly; decide at the docking of 2027.
keep watch|dynamic-positioning/dp|Consoles as old as the ship|Cards are found second-hand only.|
    Buy the spare cards of one console now.
before purchase|life-saving/boats|Places for 34 a side, 40 asked|
    Certificate for 24 persons, rafts for 34 on each side.|
    Settle with the flag who counts as what, then price boats and rafts.
before purchase|environment/sewage|Sewage plant for 24 of 40 persons|
    Old standard and old plate; 32 m³ of holding.|
    A second plant, or a new one, with the holding tank.
in the yard|accommodation/cabins|Two shower floors give|Cabins 7 and 9; the room below is dry.|
    Renew both units before anything is lined.
in the yard|alarm-and-control/control|Maker's modem open to anybody|
    Always on, password on its label.|Pull the cable today; one door, one key, a log.
keep watch|deck-machinery/crane|Crane bearing grows loose|1.1 mm of 2.0 allowed, 0.6 when new.|
    Rock it every half year; it decides what she may lift.
""")

_WORK = work_lines("""
2|tanks|dry|remove|Take out four bulk vessels with pipes and compressor|60000|85000|120000|-46
3|hull|decks|refurbish|Crane bracket, rail edges|24000|36000|58000|
5|tanks|waste|refurbish|Second treatment unit and 30 m³ of holding in wet cargo tank 1|
    110000|150000|210000|6
6|thrusters|bow-2|refurbish|Draw, open, new seals and bearings, test ashore|140000|185000|260000|
6|thrusters|bow-2|replace|New tunnel unit of the same size|520000|610000|720000|
8|switchboards|main-a|refurbish|Renew air breakers of the thrusters by the maker's successor type|
    90000|120000|165000|
9|switchboards|batteries|refurbish|Batteries and charger|9000|12000|16000|
10|reefers|plant|refurbish|Find leaks, new flanges, new cut-outs; gas stays|18000|26000|45000|
10|reefers|plant|replace|Plant with a natural refrigerant, pipes renewed|160000|210000|290000|0.9
11|dynamic-positioning|dp|replace|New consoles and computers, failure analysis, trials|
    480000|560000|700000|
11|dynamic-positioning|dp|refurbish|Spare cards, batteries of both supplies|40000|55000|75000|
12|environment|sewage|replace|Sewage plant for 44 persons with a buffer tank|130000|165000|240000|
13|life-saving|rafts|refurbish|Rafts for 44 on each side, suits tested, ten suits more|
    38000|52000|80000|
14|deck-machinery|crane|replace|Knuckle-boom crane, 6 t at 14 m, pedestal strengthened|
    290000|380000|560000|4.5
|fire-protection|all|refurbish|Sprinklers, zones and low lights if she is to carry guests by the
    passenger rules||||
|landing-and-boarding|way-in|refurbish|Side door with platform, port, frame 31 to 34||||
""") + by_rate("""
1|hazardous-materials|all|refurbish|Samples of the three rooms outside the survey||demo-sample|24
4|hull|decks|refurbish|Blasting and coating along the cargo rail||demo-coat|110
7|accommodation|all|replace|House of one deck and a half for the brief's people, on the after
    deck|143|demo-house|520
7|accommodation|cabins|refurbish|Two wet units||demo-wet|2
15|pumps-and-piping|fuel|refurbish|Transfer line rerouted clear of the new house||demo-pipe|64
16|hull|all|refurbish|Docking for the seals, anodes and the bottom survey||demo-dock|9
""")

_WEEKS = yard_weeks(
    "01=2 02=1 03=4 04=5 05=6 06=3 07=1 08=2 09=4 10=8 11=2 12=5 13=1 14=4 60=1 61=3 62=14 63=2 "
    "64=2 65=2"
)
# What a yard must know beside: where, how much, afloat or in dock, who attends and supplies.
_FOR_THE_YARD = yard_details("""
demo-01|dry bulk room, frames 44 to 58|4|vessels|afloat||yard||
demo-02|weather deck at the crane, frame 36|||afloat|yes|yard||demo-02
demo-03|wet cargo tank 1|1|plant|afloat|yes|owner|demo-01|
demo-04|bow thruster room|1|unit|in dock|yes|yard|demo-65|demo-01
demo-05|bow thruster room|1|unit|in dock|yes|owner|demo-65|demo-01
demo-06|main switchboard|3|breakers|afloat|yes|yard||demo-05
demo-14|weather deck, starboard|1|crane|afloat|yes|owner||
demo-61|cargo rail, both sides|||afloat||yard|demo-02|
demo-65||||in dock|yes|yard||
""")

_VERDICTS = verdict_facts(
    {
        "propulsion/all": (
            "life_years=18; parts=made; decision=retain; reason=Good papers, good oil. "
            "The starboard seal is watched, not feared."
        ),
        "thrusters/all": (
            "life_years=16; parts=hard to get; life_refurbished=12; life_new=25; "
            "yearly_refurbished=14000; yearly_new=6000; residual_new=40000"
        ),
        "thrusters/bow-2": (
            "life_years=1; parts=hard to get; life_refurbished=12; life_new=25; "
            "yearly_refurbished=14000; yearly_new=6000; residual_new=40000"
        ),
        "reefers/all": (
            "life_years=6; parts=hard to get; life_refurbished=5; life_new=20; "
            "yearly_refurbished=21000; yearly_new=5000; residual_refurbished=0; "
            "residual_new=10000"
        ),
        "reefers/plant": (
            "life_years=4; parts=hard to get; life_refurbished=5; life_new=20; "
            "yearly_refurbished=21000; yearly_new=5000; residual_new=10000"
        ),
        "switchboards/all": "life_years=16; parts=made",
        "hull/all": "life_years=20",
        "accommodation/all": "life_years=12; parts=made",
        "bridge/all": "life_years=8; parts=made",
        "alarm-and-control/all": "life_years=6; parts=hard to get",
        "dynamic-positioning/all": (
            "life_years=5; parts=hard to get; decision=remove; space_won=9; "
            "reason=The brief asks for no notation. Joystick and heading stay, "
            "the rest would be kept for nobody."
        ),
        "deck-machinery/crane": (
            "decision=remove; reason=Sound for its age, but the brief's boats need 6 t at 14 m, "
            "and it lifts half of that."
        ),
        "tanks/dry": (
            "decision=remove; weight_won=46; space_won=310; "
            "reason=Sound vessels, but an expedition ship carries no bulk and the room is wanted "
            "for boats and stores."
        ),
    }
)

WELL_KEPT = Candidate(
    "demo-zellowen-tide",
    visit(
        "Zellowen Tide, purchase inspection|Lay-by berth 4, Orrimhaven|2026-10-06|"
        "Master, chief engineer, electrician|Overcast, 9 °C, dry deck, slack water",
    ),
    vessel(
        "Zellowen Tide|0001236|Vessmark|Supply vessel, DP class 2, unattended machinery|2007-11-19|"
        "2008|Tarnbrekka Yard, hull 41|78.6|18.4|8.0|6.4|2890|720|2|Two shaft lines, four sets, "
        "three tunnel thrusters. One owner since new. In lay-up with a crew of six since April.",
    ),
    units_of(4),
    joined(
        zellowen_machinery.SHEETS,
        zellowen_hull.SHEETS,
        zellowen_house.SHEETS,
        zellowen_safety.SHEETS,
        zellowen_deck.SHEETS,
    ),
    (
        *_FINDINGS,
        *_WORK,
        *_WEEKS,
        *_FOR_THE_YARD,
        *_VERDICTS,
        *zellowen_ship.PARTICULARS,
        *zellowen_rules.RULES,
        *zellowen_plant.PARTICULARS,
        *values_of(
            "inspection",
            "surveyors=Ilvane Toreth and Osk Merrindal; "
            "advice=A sound hull and power plant. Bid, once the dock has opened bow thruster 2 "
            "and the places for garbage and sewage are priced for forty persons.",
        ),
        *values_of("settings", "discount_rate=6; clear_difference=8; buying_worth=1500000"),
        *values_of(
            "profile/stern-tube-wear",
            "watch=0.4; act=0.6; source=Rules of the vessel's own class (invented), "
            "2024 edition, part 5, table 3",
        ),
    ),
    (
        (
            "engine-room",
            "sheet/propulsion/engine-port/engine-plate",
            "Both engines from the forward door",
        ),
        ("oil-pressure", "sheet/propulsion/engine-port/load-run", "Oil pressure hot at 75 % load"),
        (
            "stern-seal",
            "sheet/propulsion/gear-starboard/stern-seals",
            "Drops under the inboard seal",
        ),
        (
            "tunnel",
            "sheet/thrusters/bow-2/tunnel-outside",
            "Tunnel of bow thruster 2, from the docking report",
        ),
        ("switchboard", "sheet/switchboards/main-a/board-front", "Front of the main switchboard"),
        (
            "thermal",
            "sheet/switchboards/main-a/thermography",
            "Warm middle pole of the thruster breaker",
        ),
        ("batteries", "sheet/switchboards/batteries/batteries", "Emergency batteries of 2019"),
        ("coil", "sheet/reefers/freezer/cooler", "Frost on the freezer coil"),
        ("deck", "sheet/open-deck/deck/deck-plate", "Open deck with its lashing points"),
        ("manhole", "sheet/tanks/wet/covers", "Ballast tank 4 starboard, cover on its bolts"),
        ("stern-seal", "finding/demo-08", "The same seal an hour later"),
        ("corroded-plate", "finding/demo-02", "Bracket toe cleaned to bright metal, dye on"),
        ("thermal", "finding/demo-05", "Breaker of bow thruster 2 from the side"),
        ("batteries", "sheet/bridge/bridge/radio-reserve", "Radio batteries, labels of 2023"),
        ("hull-side", "vessel", "From the quay, port side"),
    ),
    overruled="sheet/reefers/plant/refrigerant=fair",
    disputed="sheet/hull/shell/waterline-belt=poor",
    second_ratings=(
        "sheet/hull/decks/cracks=poor",
        "sheet/hull/closing/penetrations=fair",
        "sheet/hull/decks/rails-and-ladders=good",
        "sheet/propulsion/gear-starboard/stern-seals=fair",
        "sheet/propulsion/engine-port/smoke=good",
        "sheet/switchboards/main-a/thermography=poor",
        "sheet/switchboards/batteries/battery-test=failed",
        "sheet/steering/starboard/stock-seal=fair",
        "sheet/pumps-and-piping/bilge/remote-valves=fair",
        "sheet/switchboards/main-a/board-front=fair",
        "sheet/propulsion/engine-port/mounts=fair",
    ),
)
