"""Sheets of the well-kept candidate: fire protection, life-saving, environment, hazards."""

SHEETS = {
    "fire-protection": """
fire-plan g | wrong=0
guests f | today=cargo ship; passengers=24; special=0 | With 24 guests she is a passenger ship by
    rule: sprinklers, zones, low lights. Nothing of it is there.
heads g | tried=13; failed=0; slowest=14
heads-age g | year=2018; free=48
doors g | tried=11; failed=1
dampers g | tried=14; failed=0
fan-stops g | stops=7; failed=0; shut=3,5
insulated-divisions f | holes=2 | Two holes beside the cable tray in the stores passage, one of
    them stuffed with rag.
main-pressure g | pressure=5.6; start=14
pump-plates g | capacity=110; pumps=2
emergency-pump g | time=48; pressure=4.1; capacity=50 | Started by the second mate,
    who had never done it.
main-pipe g | tried=18; faulty=1; clamps=0
hoses g | missing=0
monitors g | mass=6.8
fixed-system g | medium=carbon dioxide; spaces=3; year=2008
gas-charge g | measured=43.8; nominal=45; short=0
cylinder-tests g | tested=6; cylinders=52; failed=0; age=18
gas-room g | delay=25; blown=2024-05-27
gas-nozzles g | nozzles=0
mist-or-sprinkler g | nozzles=0
foam-content g | content=0.4; volume=2,2
foam-mixing g | measured=3.2; nominal=3
galley-fire g | cleaned=2026-04-02; fat=1
small-spaces g
extinguishers g | seen=22; faulty=0
outfits g | sets=4; spare=8; donned=71
air-compressor g
escape-sets g | sets=11; faulty=0
fixed-dates p | last=2025-09-10; kind=foam concentrate, later sample | Late by four weeks; the
    bottle is drawn and waits on the office shelf.
battery-chargers g | | Tool batteries in the workshop, on a steel shelf under a head.
gear-dates g | last=2026-03-30; kind=breathing air, quality
""",
    "life-saving": """
places f | certificate=24; other=34 | One side carries 34.
    The brief asks for 40 and a refit's people come on top.
boat-annual n
boat-five-year n
hooks n
davit-steel g | | The rescue boat's davit: seat and pins sound under the paint.
falls g | measured=13.8; nominal=14
boat-lowered g | lower=95; hoist=160
boat-engine g | start=4
boat-shell n
rescue-boat g
raft-service g | last=2026-04-09; rafts=6; raft_made=2018-03-01
raft-contents g | expires=2027-10-31; kind=raft rations and contents
release g | wrong=0
raft-davit n
way-to-the-water g | short=0
suits g | suits=46; stations=4
lifejackets g | jackets=52; children=0; stations=6
lifebuoys g | buoys=14
beacon g | maintained=2024-05-28
radio-dates g | expires=2028-02-28; kind=rockets, flares, smoke
polar-kit p | insulated=4; days=1 | Four suits that keep a man warm, for twenty-four.
drill g | muster=6
fall-dates g | last=2024-05-25; kind=boat falls, renewal
raft-canisters g
guest-evacuation p | time=6; sills=9; width=640 | Nine sills and a steep stair; a stretcher is
    tilted twice.
gear-dates x | last=2023-08-20; kind=immersion suit, pressure test; made=2017-02-01 | Pressure
    test ran out in August; the firm is booked for November.
""",
    "environment": """
separator-papers g | installed=2008-09-01; standard=MEPC.107(49); calibrated=2024-05-27
separator-run g | content=6; swing=8 | Half an hour back to the tank; 4 to 6 ppm.
bypass g | seals=Seven found, seven in the log
oil-book g | book=5.1; sounded=5,3
sludge-size g | volume=14; consumption=11.7; days=35; fuel=distillate
oil-to-sea f | | Thrusters and stern tubes run on mineral oil. Polar waters will want another one.
spill-gear g
sewage-plate p | installed=2008-09-01; standard=MEPC.2(VI); capacity=24 |
    The plate says 24 persons; the brief says 40.
sewage-alive g | analysed=2026-05-30; solids=38
grey-water f | grey=12 | Twelve cubic metres: three days of forty people.
treatment g | treatment=approved system; renewal=2024-05-28; installed=2022-03-15;
    approval=BWMS Code
treatment-alive g | bypasses=0; hours=410
ballast-need f | needed=420 | The dry bulk tanks gone, she needs more of it, not less.
hull-growth g | cleaned=2026-04-11
garbage-hold f | held=6 | Six cubic metres, no cold room; ten days of the brief's forty.
garbage-papers g | placards=yes; plan=yes; book=yes
incinerator n
other-engines g | speed=1800; certificate=II; area=open sea
technical-file g | wrong=0
american-label ?no time
after-treatment n
emission-reporting g | fuel=1840
""",
    "hazardous-materials": """
inventory g | inventory=seen; european=no; samples=31
asbestos-papers g | papers=report seen; samples=2 | Two positive, both gaskets of the exhaust,
    both on the drawing.
asbestos-open g | places=0
asbestos-house g | kinds=4
asbestos-parts f | undeclared=2
pcb g | papers=report seen
halon g | cylinders=0
small-plants f | refrigerant=R-410A; installed=2016-05-20; charge=2.4; total=11 |
    Four split units, bought ashore and not in the inventory.
foam ?not opened
lead-elsewhere g | mass=0.2
cybutryne g | papers=certificate seen; applied=2024-05-22
sources g | sources=0
cargo-remains f | drums=6 | Six drums of brine additive behind the bulk tanks; nobody claims them.
chemical-store g | land=14
fibres-and-wool g
cutting-plan f | unknown=3; samples=12 | Three rooms of the new plan lie outside the survey.
    The seller allows samples.
waste-papers g
mercury g
""",
}
