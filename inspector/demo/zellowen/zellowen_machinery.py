"""Sheets of the well-kept candidate: propulsion, steering, power, boards and positioning.

Worded as the surveyors spoke on board; the format is that of ``sheet_lines``.
"""

SHEETS = {
    "propulsion": """
engine-plate g | plate=V8, serial QL-4471/QL-4472; power=2350 kW; hours=31240/30985 h |
    Plates clean and readable.
emission-certificate g | speed=750; certificate=II | Technical file aboard, settings match.
overhaul-reports g | meter=31240/30985; at_overhaul=19940/20085; interval=24000; since_top=4120/3870
engine-oil-reports g | content=12/14; metal=iron; oil_hours=610/590 |
    Four reports in a row, flat trend.
cold-start g | block=41/39; seconds=4/5
crankshaft-deflections gr | worst=0.04/0.05; limit=0.16; measured=2026-03-03
crankcase-pressure g | pressure=1.8/2.2; load=75/74
load-run g | load=75/74; speed=750; jacket=82/83; oil_pressure=67 psi/4.5 bar;
    oil_temperature=64/66; charge_air=2.1/2.0 | Half an hour, nothing moved.
exhaust-spread g/f | temperatures=368 372 388 359 371 377 370 373/374 380 369 371 378 418 375
    372; load=75/74; after_turbo=341/349 | || Cylinder 6 runs hot. Nozzle, says the chief;
    I agree so far.
smoke gt | | Clear at load, a light puff at the step.
engine-vibration g | velocity=6.1/6.8; machine_class=5; load=75/74
leaks-and-lagging g | temperature=148/156 | Lagging renewed at the last docking, boxes shut.
jacket-water g | outlet=82/83; inlet=75/76
coolant-salt g | chloride=21/24
oil-mist g | bore=280; power=2350 kW; watch=unmanned; detector=fitted
coolers g | sea_in=14; sea_out=31/32
turbocharger gt | rundown=96/91
mounts g | | Chocks bright, paint not cracked.
engine-protection g | tested=2026-03-11
control-stations gt | | Bridge, control room and local all taken and given back.
gearbox-vibration g | velocity=1.6/0.07 in/s; group=1; support=rigid
gearbox-oil g | water=0.01/0.02; oil_hours=2100
gearbox-metal gt | | A little grey fluff on the magnet, no flakes.
clutch g | seconds=2.4/2.6; pressure=21.5/21.0
flexible-coupling g | | Rubber of 2022, no cracks at the roots.
shaft-bearings ?no time
stern-seals g/f | drops=0/2; topped=1/6 | || Two drops a minute inboard.
    Small, but it was none last year.
stern-tube-oil g | water=0.03/0.06; sampled=2026-08-30
sea-speed g | speed=13.4; fuel=262; minutes=20; wind=9 | Both ways, by satellite and flow meter.
crash-stop g | time=118; distance=410
own-samples g | bottles=11; refused=0; bad=1 | Eleven bottles; the warning is bow thruster 2.
wear-down g | wear=0.12/0.18; shaft=380; measured=2024-05-20
shaft-survey g | surveyed=2024-05-20; due=2029-05-20
propeller ?no access | | Afloat; the docking pictures show edges dressed.
hub-oil g/g | water=0.03/0.04; sampled=2026-08-30
pitch-response g | time=17/18; back=18/18; difference=1.5/2
pitch-hydraulics g | code=17/15/12; at_rest=38; pitching=62/64
spares-and-service g | | Maker's service still asks her hours every quarter.
log-points g | slow_speed=9.8; slow_fuel=6900; fast_speed=13.6; fast_fuel=17800;
    mode=both modes used | Five steady days photographed.
compression gr | pressures=28.1 27.5 28.4 27.9 28.0 27.8 28.2 27.7/28.0 27.9 28.3 27.6 28.1 27.4
    27.9 28.0; measured=2026-03-02
gearbox-cooling g | before=58/59; after=47/48; pressure=3.2/3.1
water-bearing n
""",
    "thrusters": """
plate g | plate=Tunnel, controllable pitch; power=736/736/590 kW; hours=9100/9850/7420
overhaul-reports g/f/g | overhauled=2021-06-02/2016-05-28/2021-06-02; since=3100/7600/2700;
    surveyed=2024-05-20 | || Unit 2 was put off twice; letters aboard. ||
hub-oil g/p/g | water=0.03/0.62/0.02; sampled=2026-10-06 | || Grey as milk tea.
    Drawn twice, same colour. ||
oil-metal g/f/g | iron=22/96/19; copper=6/31/5; oil_hours=1900
header-tank g/p/g | topped=1/48/0 | || Topped every fortnight.
    The oil goes somewhere, and water comes back. ||
hull-seal g/f/g | | || Weep at the input shaft, sheen in the tray. ||
motor-insulation gr | resistance=310/86/420; temperature=24/23/26; insulation=thermosetting;
    winding=random-wound, or form-wound under 1 kV; voltage=690; measured=2026-09-15
standstill-heater g | frame=29/27/30; bulkhead=18
motor-air-and-grease g
full-run g/f/g | rated=790/790/630; port=744/801/588; starboard=751/812/590; stroke=11/14/11 |
    || Draws over its plate to starboard at full pitch. ||
hot-run g/f/g | load=80/70/80; winding=84/97/81; bearing=52/64/50; oil=48/139 °F/46
start-dip g | voltage=609; rated=690; lowest_frequency=58.3; sets=2
vibration g/p/g | velocity=1.8/5.4/1.7; group=1; support=rigid; pitch=50 |
    || Felt through the soles before the meter showed it. ||
cabin-noise f | level=62; without=49 | Measured under bow thruster 2.
pitch-follow g | difference=2/4/2
hydraulics g | code=18/15/12; at_rest=32; moving=58/55/57
coupling g
foundation g/g/g | | Hammered round: rings true, paint whole.
room-way g
room-bilge g | delay=6/7/5
tunnel-outside ?no access | | Afloat. Docking pictures of 2024 show grids sound.
starter-or-drive g | type=Star delta, soft stop
control-stations gt
alarms g | tested=2026-03-12
spares-and-service f | | The seal set of unit 2 is eleven weeks away, by letter.
""",
    "steering": """
plate g | plate=Rotary vane, two pumps; angle=35; pressure=80
main-time g | time=21/22; condition=under way, less; pressure=61/63 | On our half day at sea.
auxiliary-time g | time=31; condition=alongside
pumps-each g | rated=42; first=31/33; second=32/31; pressure=74
single-failure g | seconds=6/7
split-or-linked g | kind=nothing, split; difference=0.5
indicator g | error=0.5; position=amidships
bridge-controls gt
alarms g | proved=6; failed=0
local-steering g | minutes=1.5; drill=2026-08-14
feeds g
oil-and-leaks g | water=0.01; code=19/17/14; topped=0
hoses g | hoses=6; oldest=4
foundation g
stock-seal gt/ft | | || A weep at the packing when she swings.
rudder-play g | clearance=1.6/1.9; diameter=340; measured=2024-05-21
rudder-outside ?no access | | Afloat; docking pictures show dry plugs.
room g | delay=6
turning-circle gt | across=310
spares-and-service g
""",
    "power-generation": """
set-plate g | plate=Six cylinder set, 60 Hz; power=910 kW; current=950;
    hours=22310/21980/23140/19870
set-emission g | speed=1800; certificate=II
set-overhaul g | meter=22310/21980/23140/19870; at_overhaul=16110/16080/16040/16070; interval=20000
set-oil g | fuel=0.4/0.5/0.9/0.3; oil_hours=310
set-soot g | soot=0.6
set-start g | tries=1; seconds=6/6/7/5
set-load g/g/f/g | load=640/655/640/660; current=690/705/692/710; hottest=418/421/452/415;
    coldest=396/399/388/398; oil_pressure=4.9/71 psi/4.2/5.1 | || || Set 3 runs warmer and
    spreads more. Due its injectors. ||
set-blow-by g | pressure=1.9/2.0/2.6/1.7
set-cooling g | outlet=81/82/86/80; load=640/655/640/660
set-fuel g | interval=500
set-exhaust g
set-vibration g | velocity=9.5/10.2/11.8/8.9; machine_class=5
alternator-vibration g | velocity=3.1
set-leaks g/g/f/g | | || || Weeping lube filter gasket, tray holds a cupful. ||
alternator-insulation gr | resistance=190/210/74/260; temperature=31/30/33/28;
    insulation=thermosetting; winding=random-wound, or form-wound under 1 kV; voltage=690;
    measured=2026-09-16
alternator-air-path g
set-frequency g | frequency=60.0/60.1/59.9/60.0; nominal=60
set-step g | frequency=58.6; nominal=60; voltage=668
set-settling g | time=2
set-voltage g | voltage=690/691/688/690; rated=690
set-shutdowns g | tested=2026-03-10
capacity g | installed=3640; largest=910; peak=1880
harbour-load g | power=310; rated_power=910; persons=24
dead-ship gr | bar=4 | By the chief's word: done in April, from one bottle.
shaft-generator g | power=1200; carried=900 | Coupled and put on the board for us.
shore-connection g | voltage=690; frequency=60; ship_voltage=690; ship_frequency=60;
    sequence=as on board; current=400 | By the quay's own transformer.
emergency-start g | time=19; load=120
emergency-second-start g | tries=3; batteries=2024-02-11
emergency-book g | last=2026-09-27
emergency-fuel g | time=38; ship=cargo; fuel=1450
emergency-feed g | power=150; list=118; listed=14; dead=0
emergency-back-feed g
emergency-room g
spares-and-service g
""",
    "switchboards": """
two-halves g | pairs=10; same=0
bus-tie g
power-management g | start=85; stop=30
sharing g | power=410; rated_power=910; total_power=814; total_rated=1820; largest_rated=910
blackout-recovery g | first_breaker=24; tested=2026-10-06 | Done for us, alongside.
    24 s by my watch.
breakers f | type=Air, withdrawable, of 2008 | Sound, but the maker ends the line; letter aboard.
protection-tests g | last=2024-05-27
harmonics g | distortion=4.1; measured=2026-09-17
spare-ways g | ways=7; largest=400
earth-fault p/g/g | resistance=45/2100/2400; voltage=690/690/440; network=690 V A/690 V B/440 V |
    Galley circuit, says the log. It climbs back when the ovens are off. || ||
thermography p/?no time | over_similar=12; load=62 | Middle pole of thruster 2's breaker, warm
    beside its sisters. ||
board-front g
board-inside ?not opened | | Live and needed that day. Nobody opened it.
feeder-loading g | current=210/160; rating=400/400; feeder=Bow thruster pumps/Fire pump
drawings g | corrected=2025-11-02
transformers g | current=118; voltage=230; rated_power=75; casing=58
motor-control g | centres=4; starters=9
circuit-insulation gr | resistance=60; voltage=690; circuit=Deck socket 4; measured=2026-09-16
phase-balance g | first=230; second=229; third=231
cables g | dead=0
batteries f | age=7.6; sets=5 | Seven years old. They carry, but not for long now.
battery-cells g
battery-test x | duration=7.1; rated_duration=10; tested=2026-04-02 | 71 % of capacity left.
dc-network g | voltage=26.4; nominal=24; state=on charge
ups g | time=34; units=5; tested=2026-04-19; batteries=2020-03-01
transitional g | time=45; tried=10; dead=0
spares-and-service g
""",
    "reefers": """
temperature g | temperature=-21.5/3.1; store=frozen/chilled
temperature-log g | duration=0.5; store=frozen/chilled; warmest=-18.6/4.4
door g/f | gaps=0/2 | || Paper slips at two places on the hinge side.
trapped-person g | answer=14/16; warm=Control room and bridge
panels g/f | coldest=15/14; wall=17/18; thickness=150/100 | || A damp patch under the cooler,
    warm room wall otherwise even.
floor g | drained=22/25
cooler p/g | ice=9/1; standing=0 | White over the lower third.
    Defrost ends by its clock, not by its sensor. ||
stowage g | gross=24/18; net=15.5/12
loading-way g | narrowest=880; steps=2
suction-lagging g
refrigerant p | refrigerant=R-404A; installed=2008-09-01; charge=14;
    plate=Two circuits, R-404A on both | May run and be topped up with reclaimed gas for now;
    it leaks, it does not fail.
gas-book p | added=5.5; charge=14 | Five and a half kilos in a year on 14: it leaks somewhere.
leaks f | places=2
compressor g | compressors=2; hours=6100; proved=2026-06-30 | One full cylinder of gas; the agent
    quotes ten weeks for the next.
run-share g | hours=14; on=74; off=52; outside=19
pressures g | temperature=-14; pressure=110; refrigerant=R-404A; place=compressor
subcooling g | temperature=30; pressure=1480; refrigerant=R-404A
charge-in-room g | charge=9; volume=60; refrigerant=R-404A; room=Plant room
gas-alarm g | tested=2026-04-04; alarm=500; relief=2024-05-20
leak-checks g | last=2026-06-30; refrigerant=R-404A; charge=14; detection=yes
""",
    "dynamic-positioning": """
verification-document g | flag=unchanged; alteration=none; notation=DP class 2 as printed on the
    certificate; issued=2024-06-03
equipment-count g | computers=2; references=3; heading=3; motion=2; wind=2; ups=2
failure-analysis g | dated=2024-01-12; changed=2023-11-02; revision=C
trials g | last=2026-04-20; anniversary=2024-06-03; open_findings=1
controllers f | version=7.2; year=2008 | Both consoles are as old as the ship.
    Cards come from ships being broken.
changeover gr | | By the operator's word; the half day at sea had no time for it.
heading g | spread=0.6; roll_spread=0.2
wind g | spread=2
satellite-references g | scatter=0.4; paid_until=2027-01-31
line-of-sight-references g
under-water-references n
consequence-analysis g
thruster-signals f | difference=6
joystick gt | | On our half day at sea.
plant-configuration g
power-limits g | tested=2026-04-20
capability-and-manual g | available=118; needed=92; side_area=640
cabinets g
event-history g | losses=0
hold-trial ?not run | | The half day at sea was too short for it; other ships came near.
backup-station n
licences-and-spares f
complete-trials g | last=2024-06-01
stations g | stations=2
""",
}
