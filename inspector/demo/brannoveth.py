"""The second candidate of the demo, tired and half walked: findings, work, particulars."""

from inspector.demo import brannoveth_house, brannoveth_machinery
from inspector.demo.candidate import (
    Candidate,
    Entries,
    findings,
    rows,
    single_row,
    table_rows,
    units_of,
    values_of,
    verdict_facts,
    vessel,
    visit,
    work_lines,
)
from inspector.demo.rate_book import by_rate
from inspector.demo.sheet_lines import joined

# The tired candidate: each finding is of another kind, from a plate below its limit to papers that
# ran out.
_FINDINGS = findings("""
danger now|thrusters/bow-1|Water to the floor plates of the bow thruster room|
    No bilge alarm; the pump has no power.|
    Keep out until pumped and tested for air by the yard's people; find where it enters.
before purchase|hull/shell|Plate below renewal thickness at frame 38|
    6.7 mm of 10.0 by our own gauge, starboard at the waterline.|
    Full gauging by class before any offer.
before purchase|hull/shell|Eleven of seventeen sea valves do not move|Not forced.|
    Docking; until then no pipe is opened inboard of them.
before purchase|reefers/plant|Plant shut down, R-22|Compressor seized, panels soaked.|
    Recover the gas by certified hands; count on a new plant.
danger now|hazardous-materials/ship|Torn lagging at the exhaust manifold, taken as asbestos|
    Five places, dust on the plates below; no laboratory report.|
    Shut the door and keep it shut; sampling and sealing by a licensed firm before anybody works
    there.
before purchase|spares-and-papers/papers|Class suspended, eleven conditions|
    Third society in ten years; safety construction ran out in 2022.|
    Ask two societies in writing what they would want for entry.
before purchase|deck-machinery/crane|Crane bearing beyond its limit|
    3.4 mm of 2.5 by our own dial.|No lift by it; count on a new crane or none.
""")
_WORK = work_lines("""
3|hull|shell|refurbish|Blast and coat shell, renew sea valves|260000|340000|480000|0.4
4|propulsion|all|refurbish|Both engines and gears overhauled ashore, seals, shafts surveyed|
    900000|1250000|1800000|0
4|propulsion|all|replace|New engines and gears on new seats|1500000|1900000|2600000|-8
5|reefers|plant|remove|Plant, panels and pipes out, gas recovered|25000|35000|60000|-7
6|reefers|plant|replace|New rooms and plant|240000|300000|380000|7
7|accommodation|all|remove|House gutted to the steel, lagging by a licensed firm|
    310000|480000|900000|-54
8|switchboards|all|replace|New boards and main cables||||
""") + by_rate("""
2|hull|shell|replace|Renew shell and tank wall from frame 30 to 46|2|demo-steel|42
1|hazardous-materials|ship|refurbish|Asbestos survey of the whole ship by a laboratory||
    demo-sample|60
""")
_PARTICULARS: Entries = (
    *single_row(
        "hydrostatics",
        "displacement=2840; draught=4.6; greatest_draught=5.6; lpp=55.6; lwl=58.4; "
        "breadth=15.1; depth=6.8; "
        "cb=0.71; cw=0.86; kg=5.7; km=7.02; lightship=1480; "
        "lightship_vcg=6.1; booklet=Of 1998, the deckhouse of 2006 is not in it; "
        "inclined_on=1998-05-20",
    ),
    *table_rows(
        "tanks",
        "name kind capacity fill density plan",
        """
Fuel, six tanks by the plan|fuel|520|12|850|keep
Fresh water, four tanks|fresh water|380|5|1000|keep
Wet cargo, six tanks|wet cargo|480|0||convert
Dry bulk, four vessels|dry bulk|170|0||remove
Ballast, eight tanks|ballast|700|40|1025|keep
""",
    ),
    *table_rows(
        "engines",
        "name drives power count rpm year",
        "Main engines|propeller|2028|2|750|1998\nGenerator sets|generator|350|3|1800|1998",
    ),
    *single_row(
        "propulsion", "hotel_sea=190; hotel_at=switchboard; running=2; screws=2; nozzles=no"
    ),
    # No watermaker and small holding tanks: days beside a brief that asks for weeks.
    *single_row("stores", "water=380; sewage=9; chilled=6; frozen=7; dry=9; toilets=gravity"),
    # All on one bus and without ties: a screen of failures finds nothing that survives its loss.
    *table_rows("plant_generators", "name bus rated", "Set 1|A|350\nSet 2|A|350\nSet 3|A|350"),
    *table_rows(
        "weights",
        "name act mass basis vcg part",
        """
Linings and insulation of the house|off|54|rule of thumb|8.8|lightship
Refrigerating plant and panels|off|7|rule of thumb|6.2|lightship
New rooms and plant|on|7|rule of thumb|6.2|lightship
""",
    ),
    # Cheap to buy: the comparison shows what that is worth.
    *single_row("prices", "currency=crowns; priced_on=2026-09-01; asking=1900000; definition=3"),
    *table_rows(
        "sales", "name low likely high", "Old engines as scrap and parts|20000|35000|60000"
    ),
    *rows(
        "certificate",
        "kind number on_board issued expires last_annual last_bottom",
        """
class|BV-201|no|2017-08-11|2022-08-11|2018-09-04|2017-08-10
safety construction|BV-202|yes|2017-08-11|2022-08-11|2018-09-04|2017-08-10
load line|BV-203|yes|2017-08-11|2022-08-11|2018-09-04|
oil pollution prevention|BV-204|yes|2017-08-14|2022-08-11||
""",
    ),
)

TIRED = Candidate(
    "demo-brannoveth-veil",
    visit(
        "Brannoveth Veil, first look|Outer quay, Skelmavik Sound|2026-10-20|"
        "Watchman, ship's electrician for two hours|"
        "Rain, 6 °C, dark from 17:00, no heating on board",
    ),
    vessel(
        "Brannoveth Veil|0003454|Ostravelle|Supply vessel, class suspended|1997-06-02|1998|"
        "Kelmorra Shipworks, hull 17|62.2|15.1|6.8|5.6|1630|430|1|Two shaft lines, three sets, "
        "three tunnel thrusters. Laid up without crew since 2019, shore power for lights.",
    ),
    units_of(
        3,
        deck_machinery=(("towing", "Towing gear"),),
        landing_and_boarding=(("landing", "Landing deck over the wheelhouse"),),
    ),
    joined(brannoveth_machinery.SHEETS, brannoveth_house.SHEETS),
    (
        *_FINDINGS,
        *_WORK,
        *_PARTICULARS,
        *values_of(
            "inspection",
            "advice=No bid before a dock has shown the steel: propulsion and house are to be "
            "replaced, and half of her was not seen.",
        ),
        *verdict_facts(
            {
                "propulsion/all": "life_years=3; parts=hard to get",
                "reefers/all": "life_years=0; parts=no longer made",
                "hull/all": "life_years=2",
                "switchboards/all": "parts=no longer made",
                "alarm-and-control/all": "parts=no longer made",
                "accommodation/all": (
                    "weight_won=54; decision=remove; reason=Wet behind every lining that we "
                    "opened. Gutted to the steel and built new."
                ),
            }
        ),
    ),
    (
        (
            "corroded-plate",
            "sheet/hull/shell/spot-gauging",
            "Frame 38 starboard, scale knocked off",
        ),
        ("start-air", "sheet/pumps-and-piping/air/air-receivers", "Starting air as found"),
        ("tired-deck", "sheet/hull/decks/coating", "Weather deck aft of the house"),
        ("hull-side", "sheet/hull/shell/coating", "Starboard side from the quay"),
        ("tired-deck", "finding/demo-07", "Rust at the ring bolts of the crane"),
        (
            "closed-manhole",
            "sheet/deck-machinery/anchor/chain-locker",
            "Chain locker cover, not opened",
        ),
    ),
)
