"""Sheets of the tired candidate: house, bridge, alarms, deck, safety and papers."""

SHEETS = {
    "accommodation": """
berths p | papers=16; berths=20; singles=4 | Four-berth cabins, counted twice in the advertisement.
cabin-size p | area=4.1; cabin=cargo ship, one person
headroom p | height=1,98
below-the-line p | below=3; blind=9 | Three cabins under the mark, behind the collision bulkhead.
noise ?not run
vibration ?not run
behind-linings x | panels=2; wet=2 | Both wet. Wool black and heavy, rust flakes on the deck bar.
linings p | stains=11
wet-units x | units=9; soft=7; persons=8 | Brown water from the seams; drips in the room below.
toilets ?not run
hot-water ?not run
cabin-power p | tried=10; no_earth=6
ways-out p | width=24 in; blocked=1 | The second way ends at a hatch that one man cannot lift.
nose-and-mould p | | Wet dog in the first breath, black bloom on every cold wall.
cold-day ?not run
air-unit x | | Fan seized, filters gone to pulp.
gas p | refrigerant=R-22; installed=1998-05-01; charge=30
leak-record ?no access
chillers ?not run
ducts p
laundry p
hospital p | expires=2019-11-30 | A store for paint.
noise-at-cruise ?not run
""",
    "bridge": """
sight-ahead ?no light
windows p | panes=5
wings f
one-system p | sets=17; dead=9; year=1998 | Four makers, nine dead screens.
radars ?not run
mast p | | Rust through at the foot of the scanner platform.
screen-charts n
gyro ?not run
magnetic-compass p | adjusted=2017-06-01; error=9 | A bubble as large as an egg.
position ?not run
radio-area x | areas=A1+A2; expires=2022-08-11; endorsed=2018-09-04
radio-tests ?not run
radio-reserve f | age=9; rest=19.5
telegraph p
lights-and-whistle p | dead=4; silent=4
room f | free=8; breakers=2
whistle-and-searchlights ?not run
""",
    "alarm-and-control": """
alarm-system p | year=1998; stations=1
channels p | channels=420; inhibited=96; standing=61 | More than a third is dead or switched off.
ten-by-lot ?not run
duty-call ?not run
unattended p | surveyed=2017-08-11
history p | | No paper in the printer; memory of two days.
tank-gauging x | tanks=29; dead=29; kind=bubbler
loading-computer ?not run
fire-panel x | disabled=14; faults=9; year=1998 | Half the zones out.
    I carried my own lamp and told the watchman where I went.
gas-panel x
gas-meters x | interval=180; calibrated=2018-11-02
general-alarm ?not run
control-lost ?not run
lever-electronics p | year=1998; spares=0
stops p | listed=16; faulty=7
junction-boxes p | opened=3; wet=3
loop-drawings p
""",
    "deck-machinery": """
chain p | rule=42; worst=37,4; lengths=9; loose=6 | 89 % at the worst place we reached.
    Six studs loose.
anchors p | mass=2850
hawse p
chain-locker ?no access
windlass-brake p | lining=3 | Lining at the rivets. Not loaded.
heave ?not run
gypsy p
mooring-winches ?not run
mooring-lines p | lines=3
fittings p | rollers=14; seized=9
crane-examination p | last=2018-04-10; kind=lifting appliance, thorough examination; open=12
crane-proof-load ?no access
crane-bearing p | play=3.4; limit=2.5; first=0.5 | Over the maker's limit by our own dial.
crane-wire p | nominal=16; measured=13,9; fitted=2013-05-01
broken-wires x | broken=14; wires=114
crane-run ?not run
towing-examination p | last=2017-07-30; pull=62
towing-release ?not run
pins-and-roller p
seats p
hoses-on-deck x | oldest=1998; weeping=9
power-pack ?not run
deck-motors x | resistance=0.12; voltage=440; machine=Windlass | Windlass motor. Dried out it may
    come back.
brake-holds ?not run
crane-steel p
towing-winch p
""",
    "fire-protection": """
fire-plan p | wrong=4
heads ?not run
heads-age p | year=1998; free=0
doors p | tried=6; failed=4
dampers p | tried=5; failed=4
fan-stops ?not run
insulated-divisions p | holes=9
main-pressure ?not run
emergency-pump x | | Starter flat, hand gear seized.
main-pipe p | tried=8; faulty=5; clamps=4
hoses x | missing=6
monitors n
fixed-system p | medium=carbon dioxide; spaces=1; year=1998
gas-charge x | measured=36.5; nominal=45; short=6 | From the last list aboard, of 2018.
    It will not be better today.
cylinder-tests x | tested=0; cylinders=18; failed=0; age=28
gas-room p | | Brooms and paint inside. We stayed at the door.
mist-or-sprinkler n
foam-content n
extinguishers x | seen=9; faulty=6
outfits x | sets=1; spare=0
escape-sets p | sets=2; faulty=2
fixed-dates p | last=2018-03-02; kind=CO2 charge, cargo ship
gear-dates x | last=2018-03-02; kind=fire hoses, pressure test
battery-chargers p | | Two swollen tool batteries on a wooden shelf.
""",
    "life-saving": """
places x | certificate=16; other=20; places=20;
    ship=special purpose, up to 60: boats, or rafts below 85 m
boat-annual n
boat-five-year n
hooks n
davit-steel p
boat-lowered ?not run
boat-engine ?not run
rescue-boat p
raft-service x | last=2018-11-20; rafts=4; raft_made=2009-05-01
release p | wrong=2
suits x | suits=14; stations=2
lifejackets x | jackets=19; children=0; stations=2;
    ship=special purpose, up to 60 persons
lifebuoys p
beacon x | maintained=2017-08-11 | Coded for another ship's number.
radio-dates p | expires=2020-04-30; kind=lifebuoy light battery
drill ?no access
raft-contents p | expires=2020-11-30; kind=hydrostatic release, disposable
raft-canisters p
gear-dates x | last=2017-10-10; kind=immersion suit, pressure test; made=2008-03-01
guest-evacuation ?not run
""",
    "environment": """
separator-papers f | installed=1998-04-01; standard=MEPC.60(33)
separator-run ?not run
bypass p | seals=None found, no log | Fresh tool marks at the flange after the valve.
oil-book p | book=2; sounded=9,5
sludge-size ?no time
sewage-plate p | installed=1998-05-01; standard=MEPC.2(VI); capacity=16
sewage-alive p
treatment p | treatment=none; renewal=2017-08-14
garbage-hold p | held=2
incinerator n
technical-file p
after-treatment n
""",
    "spares-and-papers": """
count p | found=3
large-spares p | | A cylinder head in the rain is all there is.
workshop p
instruments ?not opened
drawing-list p | shown=6
makers-manuals p | right=2
stability-book p | booklet=1480; found=1561; centre=6.1; inclined=1998-05-20 |
    The deckhouse of 2006 is not in it.
jobs-overdue p | overdue=640; critical=41
class-status x | conditions=11; special=2022-08-11; changes=3 |
    Suspended. Eleven conditions, three societies in ten years.
certificates x | expires=2022-08-11; survey=renewal; named=Safety construction
identity g | number=0003454; keel=1997-06-02
tonnage f | gross=1630; enclosed=900
detentions p | detentions=2
manning p | document=9; aboard=0
lay-up p | since=2019-06-10; turned=2021-05-30 | Dry air gone since the second winter.
who-knows p | | The watchman knows where the keys are. Nobody knows the ship.
working-life p | idle=60; unknown=14
bringing-home p | | Nobody has priced it. A tow, by what we saw.
ownership ?no access
""",
    "landing-and-boarding": """
landing-papers p | certificate=not seen; structure=not seen; friction_report=not seen |
    A deck of 2006 over the wheelhouse, no paper at all.
landing-circle p | diameter=11.8; d_value=13.0
landing-sector ?no light
landing-load ?no access
landing-fuel n
tender-places f | length=7; width=2.6; heaviest=1.2
launch-steel p
launch-examined p | last=2018-04-10
gangway-test x | last=2018-04-10; persons=8; kind=gangway and ladder winch, load test
gangway p | slope=38; way=gangway
pilot-ladder p | made=2014-01-01
shell-doors n
""",
    "hazardous-materials": """
inventory f | inventory=not seen; european=no; samples=0
asbestos-papers p | papers=no report seen | Take the lagging as asbestos until a laboratory says
    otherwise.
asbestos-open p | places=5 | Torn lagging on the manifold; we turned back at that door.
asbestos-house ?not opened
pcb f | papers=no report seen
halon p | cylinders=2; installed=1998-05-01 | Two bottles under the chart table, gauges in the
    green.
small-plants p | refrigerant=R-22; installed=2004-06-01; charge=1.2; total=5
cybutryne f | papers=no certificate seen; applied=2017-08-14
cargo-remains p | drums=38
chemical-store p | land=120
""",
    "reefers": """
ranges-and-ovens ?not run
galley-deck x | hollow=7 | Rotten under the tiles: the heel goes through by the drain.
dry-store p | net=9; temperature=11; certified=2019-04-20
""",
}
