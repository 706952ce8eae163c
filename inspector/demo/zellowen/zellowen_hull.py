"""Sheets of the well-kept candidate: hull, open deck, tanks and pipes."""

SHEETS = {
    "hull": """
gauging-report g | as_built=11.0; measured=10.6; measured_year=2024;
    member=shell, strength deck or tight bulkhead; previous=10.7; previous_year=2019;
    basis=gauging report; place=Frame 22, strake C, port
repair-history g | repairs=2
drawings g
old-paint g | papers=report seen
spot-gauging g | as_built=11.0/9.0/8.0; measured=10.5/0.341 in/7.8;
    member=shell, strength deck or tight bulkhead; basis=drawing; calibrated=2026-09-01;
    place=Frame 22, both sides
coating g/f | breakdown=2/6; scale=0/1; edges=6/14 | || Rust along the edges of the cargo
    rail, no scale under it.
pitting g | depth=0.6/0.9; as_built=11.0/9.0
pitted-plate f | least=8.9; as_built=11.0; renewal=8.5; intensity=3; where=Frame 44, port
weld-groove ?no access
eaten-edge f | least=7.4; as_built=9.0; renewal=7.0; band_share=12
cracks g/p | cracks=0/1; longest=0/65 | || One at the toe of the crane pedestal bracket, 65
    mm, dye confirmed.
doublers g | patches=0; cement=0
docking g | last=2024-05-24; ship=cargo; due=2027-05-24
docking-pictures g
growth f | | Slime, and shell at the tunnel mouths.
antifouling g | papers=certificate seen; coated=2024-05-22; idle=190
draughts g | forward_port=4.31; forward_starboard=4.33; midship_port=4.62;
    midship_starboard=4.66; aft_port=4.95; aft_starboard=4.97; greatest=6.2; list=0.2
fairness g | depth=14; bays=3
waterline-belt f | bare=9
fenders g | broken=2.5
cathodic-protection gt | potential=-920; electrode=silver/silver chloride; current=14
anodes g | left=60
sea-valves g | valves=21; turned=21
sea-chests g | interval=30
shell-inside g | spots=12
ventilators g | height=900; position=position 1: freeboard deck, or forward quarter;
    worked=14; stuck=1
house-foot g | holed=0; rusted=0.2
rails-and-ladders g | loose=0; height=1020
ladders-and-gratings g | loose=2
rail-gaps g | opening=210; course=below the lowest course
weather-doors g | doors=9; leaking=1; height=600; item=door into the engine casing;
    position=position 1: freeboard deck, or forward quarter
hatches g | tried=6; faulty=0; height=600; position=position 1: freeboard deck, or forward quarter
watertight-doors g | doors=3; time=61; way=one door by hand
penetrations f | bulkheads=5; open=1 | One cable pipe open beside frame 30, both faces.
    Foam is not a seal.
windows g | leaking=1
gauging-density g | points=426; plates=194; extent=all plates
ice-strengthening g | notation=None; belt=11; temperature=-10 |
    No ice class. Polar waters with ice are not hers without a new belt.
roll-damping g | means=roll tank | One passive tank forward, over the bow thrusters;
    its booklet is aboard.
marks g | certificate=1180; measured=1182
moonpool n
subdivision f | bulkheads=7; longest=14.2; rules=cargo ship; bottom=46 |
    By the rules of a cargo ship.
    Seven bulkheads and a double bottom: a naval architect has something to work with.
subdivision-walk g | found=7; openings=0
diver ?not run | | The broker allows it; not on a day when something runs.
roll-period f | | The mate: lively when light, about eight seconds; people wedge themselves in.
air-draught g | height=33.4; weight=2580
emergency-towing g | rating=64
icing g | ice=38; decks=620; lateral=780
collision-bulkhead g | valves=3; worked=3
""",
    "open-deck": """
load-plan g | mass=60; area=20; rated=5; total=1400; centre=1.0
length-by-count g | claimed=48; counted=16; pitch=3.0
clear-area g | length=48; breadth=15.4; deducted=18; pieces=7
deck-plate g | hollow=6; scars=31
underside g | bays=9; bent=0
landing-lines g | bulkheads=4; span=9.6
sheathing g | left=52; soft=4
lashing-points g | points=64; faulty=2; rating=10
sockets-and-pads g | places=12; seats=2
cargo-rail g | set_in=20; posts=0
rail-pockets f | blocked=3
bulwarks g | flaps=12; swinging=11; area=4.6; length=38; height=1.2
deck-services g | sockets=10; largest=125
wet-deck g | freeboard=3.02; draught=4.96
""",
    "tanks": """
tank-plan g | tanks=40; capacity=830; built=some of each
last-contents g | last=Brine, gas oil and water by plan; washed=2026-06-20; now=0/0/310/9
class-record g | examined=2024-05-22; word=good; tested=2024-05-23
steel-loss g | measured=10.4; measured_year=2024; previous=10.6; previous_year=2019; as_built=11.0
neighbours g | shared=2; shell=2; volume=720; protected=yes
vessel-papers g | test_pressure=8.4; design_pressure=5.6; tested=2023-05-12; relief=2025-05-12;
    plate=Plates readable on all four
water-treatment g | chlorine=0.3
drinking-water g | analysed=2026-07-02; count=40; lined=2019-05-30
air-pipes f | heads=34; faulty=2; tank=Ballast 5 and 7 port |
    Two balls stuck in their guides, port side.
vent-valves g | overhauled=2024-05-25
sounding-pipes g | pipes=34; faulty=0
gauges g | claimed=62.4; gauged=62.1; tank=Number 2 port
fuel-aboard g | claimed=296; volume=350; temperature=18; density=848
level-alarms g | proved=4; failed=0
quick-closing g | valves=8; pulled=8; closed=8 | All eight pulled from the deck box, all eight fell.
waste-holding f | sewage=32; sludge=14; landed=2026-09-28 | Enough for a crew of 24, not for the
    brief's forty.
stirrers-and-fittings g | fitted=4; ran=4
sample g | water=4/0/0; sampled=2026-10-07
full-depth g | tape=4.82/5.20/2.10; table=4.84/5.24/2.11
covers g | covers=70; missing=0
boundaries g | leaks=0
wall-gauging g | as_built=10.0/10.0/9.0/9.0/9.0; measured=9.7/0.382 in/8.8/7.8/8.7;
    member=shell, strength deck or tight bulkhead; basis=drawing;
    place=Frame 41, by the cargo rail
vessel-shell g | found=9.2; least=7.5; place=Cone, two spots
seats g | weight=11.5; widest=3.2; opening=4.6
tank-air ?not opened
air-instrument g | oxygen=yes; flammable=yes; hydrogen_sulphide=yes; carbon_monoxide=yes;
    carbon_dioxide=yes; remote=yes
lining-of-cargo-tanks ?not opened
coating-inside ?not opened/g |
    breakdown=2; scale=0; edges=8; tank=Ballast 4 starboard, entered by the yard's own permit
steel-inside ?not opened/?not opened/?not opened/g/?not opened/?not opened |
    pit=0.8; anodes=55; tank=Ballast 4 starboard
corrugations g | pitch=1200; depth=340; cracks=0
solid-ballast g | mass=0
voids ?no access | | No permit made out for the peaks that day.
""",
    "pumps-and-piping": """
pipe-wear g/g/f | bend=7.4/7.3/4.6; straight=7.6/7.5/6.3 |
    || || The elbow behind the after cooler, sea water side.
patches g | clamps=0/0/1/0/1; weeping=0/0/2/0/0
hoses g | pieces=6/8/8; oldest=6
remote-valves g/f | run=16/20; dead=0/1
hand-valves g | tried=5; faulty=0/1/0/0
lines-and-blanks g | crossings=2
pump-run g | pumps=2/3/2/4; ran=2/3/2/4; plate=60/100/8/180; flow=57/93/7,6/171
pump-vibration g | velocity=2.6; category=II; size=up to 200 kW; pump=Cooling pump 2
cargo-manifold g | stations=6; lines=4
cargo-hydraulics n
way-out g | pumps=4/0; pipe=210/90; bore=125; mass=9/4
bulk-compressor g | hours=6100; pressure=5.6
bulk-lines g
filling-station g | stations=2
fuel-transfer g | pumps=2; unreachable=0
fuel-purifier g | capacity=1500; hours=900
bunker-note g | temperature=66; density=846
bilge-suction g | wells=9; emptied=9; slowest=6
emergency-suction g | bore=200; turned=fully
bilge-main g | bore=125
bilge-pump g | capacity=100
bilge-count g | pumps=3; ship=cargo
bilge-valves g | proved=3; failed=0
ballast-transfer g | flow=96; left=40
water-maker g | rated=500; logged=455; salt=190 | Eleven cubic metres a day by its log of March.
water-supply g | starts=1; pressure=5.2
cooling-main g | pumps=4; sea=14; fresh=35
air-compressors g | gained=10; minutes=14; hours=3100
water-back-flow g | open=0
cooling-power g | installed=240; outside=30; sea=28
heating-power g | installed=310; outside=-12
cold-start-temperature f | air=-10; dead=1 | She was never built for more cold than that.
receiver-drains g
air-receivers g | receivers=5; inspected=2024-05-14; relief=2024-05-14
control-air g | lost=0.3
""",
}
