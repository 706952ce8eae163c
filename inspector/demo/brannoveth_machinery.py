"""Sheets of the tired candidate: machinery, boards, tanks, pipes and hull.

Half walked before light and time ran out; the format is that of ``sheet_lines``.
"""

SHEETS = {
    "propulsion": """
engine-plate f | plate=Painted over, serial not readable; power=2720 hp; hours=58900/61150
emission-certificate f | speed=750; certificate=none | Laid down before the first tier;
    no paper is owed.
overhaul-reports p | meter=58900/61150; at_overhaul=25800/25950; interval=24000;
    since_top=14200/15900 | Both past the maker's interval by more than a year of work.
engine-oil-reports p | content=96/110; metal=sodium; oil_hours=2400 |
    One report only. Sodium says sea water.
cold-start ?not run | | Dead ship, shore power for lights only.
load-run ?not run
exhaust-spread ?not run
leaks-and-lagging p | | Oil-soaked lagging over the fuel rail on both. Cold that day.
coolers p | sea_in=13; sea_out=13 | Putty on an end cover.
mounts f
gearbox-oil p | water=0.31/0.27; oil_hours=9000
gearbox-metal ft/xt | | || Flakes the size of a fingernail on the magnet.
stern-seals p | drops=9/14; topped=60/85 | Drip tins under both.
stern-tube-oil ?no access
shaft-survey x | surveyed=2017-08-11; due=2022-08-11 | Out of date by four years.
propeller ?no access
hub-oil p | water=0.8/1.1; sampled=2026-10-20
pitch-response ?not run
spares-and-service p | | Makers answer, but price each part as a one-off.
turbocharger f
control-stations f
flexible-coupling p | | Rubber cracked through to the cord.
wear-down ?no access
pitch-hydraulics p
""",
    "thrusters": """
plate f | plate=Tunnel, fixed pitch; power=515 kW; hours=18800/19150/14400
overhaul-reports p | overhauled=2012-04-03; since=9400; surveyed=2017-08-11
hub-oil p | water=0.55/0.12/0.7; sampled=2026-10-20
motor-insulation p | resistance=1.2/7.5/0.9; temperature=16; insulation=unknown;
    winding=random-wound, or form-wound under 1 kV; voltage=440; measured=2026-10-20 |
    Our own test, isolated by the ship's electrician.
full-run ?not run
vibration ?not run
foundation p | | Scale flakes off the ring by hand.
room-way p
room-bilge x/p/p | delay=0/40/45 | Water to the floor plates and no alarm. || ||
tunnel-outside ?no access
spares-and-service p
header-tank p
motor-air-and-grease p
standstill-heater x | | Cold to the hand on all three.
coupling f
hydraulics ?not run
starter-or-drive f
control-stations f
alarms x
""",
    "steering": """
plate f
main-time ?not run
oil-and-leaks p | topped=20
hoses p | hoses=8; oldest=17
stock-seal p
rudder-outside ?no access
room p
spares-and-service f
""",
    "power-generation": """
set-plate f | plate=Eight cylinder set, 60 Hz; power=350 kW; current=570; hours=44100/45800/39900
set-overhaul p/p/f | meter=44100/45800/39900; at_overhaul=24300/24400/24800; interval=16000
set-start ?not run
set-load ?not run
set-leaks p
alternator-insulation p/f/p | resistance=4.1/9.2/3.8; temperature=15; insulation=unknown;
    winding=random-wound, or form-wound under 1 kV; voltage=440; measured=2026-10-20
alternator-air-path p
set-oil f | fuel=2.6; oil_hours=400
set-soot f | soot=2.2
capacity f | installed=1050; largest=350; peak=640
shore-connection g | voltage=440; frequency=60; ship_voltage=440; ship_frequency=60;
    sequence=as on board; current=250
emergency-start x | | Three tries, no start.
emergency-fuel f
emergency-room p
spares-and-service p
""",
    "switchboards": """
earth-fault p | resistance=12; voltage=440; network=440 V
breakers p | type=Moulded and air, of 1998 | No springs, no poles, no maker for the air breakers.
board-front p | | Mat gone, drip tray under a pipe above the bus tie.
board-inside ?not opened
cables p
batteries x | sets=3 | 18 V with the charger on.
battery-cells p
ups p
spare-ways f
transformers f
drawings p | | Half the sheets gone, the rest marked up in pencil.
spares-and-service p
protection-tests p
bus-tie ?not run
""",
    "tanks": """
tank-plan f | tanks=36; capacity=650; built=some of each
class-record p | examined=2017-08-12; word=poor; tested=2017-08-14
air-pipes p | heads=33; faulty=18; height=450;
    position=position 1: freeboard deck, or forward quarter
quick-closing p | valves=6; pulled=6; closed=3 | Three of six hung on their wires.
covers f | covers=65; missing=9
boundaries p/f/g/f/x/p/p | leaks=2/1/0/1/4/2/1 | || || || || Four weeping seams and a cement box
    at frame 38. || ||
wall-gauging g/g/g/x/f | as_built=9.0; measured=8.1/7.9/8.0/5.9/7.0;
    member=shell, strength deck or tight bulkhead; basis=gauging report;
    place=Frame 38, tween side
steel-inside ?not opened
last-contents f
neighbours f
vent-valves p
sounding-pipes f
gauges x | | None of the panel's gauges answers.
level-alarms x
""",
    "pumps-and-piping": """
remote-valves p
lines-and-blanks f
pipe-wear p
patches p | clamps=9/6/14/2/5; weeping=12/5/9/1/4
hand-valves p | tried=5; faulty=3
filling-station p
bilge-suction ?not run
air-receivers x | receivers=4; inspected=2014-02-10; relief=2014-02-10
cargo-manifold f
way-out f
""",
    "reefers": """
temperature p | temperature=16.4/61 °F; store=frozen/chilled | Plant off; rooms hold paint tins.
panels x | coldest=16; wall=16; thickness=100 | Soaked: the probe came out wet at all three holes.
floor p | drained=300
leaks p | places=5
refrigerant p | refrigerant=R-22; installed=1998-05-01; charge=22; plate=R-22, one circuit
compressor x | compressors=2; hours=14000 | Seized, one turned by hand to no end.
pressures ?not run
door p
trapped-person x | | No bell, no inside handle on the freezer.
cooler p
stowage f | | Mould behind the shelves of both rooms.
loading-way g
suction-lagging p
""",
    "hull": """
gauging-report x | as_built=10.0; measured=6.8; measured_year=2022;
    member=shell, strength deck or tight bulkhead; previous=7.4; previous_year=2017;
    basis=gauging report; place=Frame 38, strake D, starboard
repair-history p | repairs=5
drawings f
old-paint f | papers=no report seen | Take lead under the white and fibres in the
    lagging as there until sampled.
spot-gauging x/p/p | as_built=10.0/8.0/8.0; measured=6.7/0.235 in/5.9;
    member=shell, strength deck or tight bulkhead; basis=gauging report; calibrated=2026-09-01;
    place=Frame 38, starboard
coating p | breakdown=34/41; scale=12/16; edges=55/60
pitting p | depth=3.4/2.8; as_built=10.0/8.0
doublers p | patches=7/5; cement=3/0
docking x | last=2017-08-10; ship=cargo; due=2022-08-10
sea-valves x | valves=17; turned=6 | Eleven would not move; I did not force them.
draughts f | forward_port=3.5; forward_starboard=3.7; midship_port=3.7; midship_starboard=3.9;
    aft_port=4.2; aft_starboard=4.4; list=1.8
weather-doors p | doors=7; leaking=5; height=300; item=door of a superstructure;
    position=position 1: freeboard deck, or forward quarter
penetrations p | bulkheads=3; open=6
watertight-doors ?not run
fairness f
waterline-belt p
fenders p | | Half the rubbers gone, brackets open to the shell.
cathodic-protection p
ventilators p
house-foot p | | Rust runs out from under the house all along the after end.
rails-and-ladders f
hatches p
windows f
""",
    "open-deck": """
deck-plate p | hollow=22; scars=60
sheathing p
bulwarks f
lashing-points p | points=48; faulty=19
cargo-rail p | set_in=160; posts=7
rail-pockets p | blocked=9
""",
    "dynamic-positioning": """
verification-document x | | None on board; the last one lapsed in 2019.
failure-analysis p
trials x
cabinets f
event-history ?not run
hold-trial ?not run
controllers ?not run
licences-and-spares p
""",
}
