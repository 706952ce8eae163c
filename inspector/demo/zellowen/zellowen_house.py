"""Sheets of the well-kept candidate: accommodation, bridge, alarms and galley."""

SHEETS = {
    "accommodation": """
berths f | papers=24; berths=26; singles=14 | Two bunks stand in the ship's office.
    The brief's forty need a new house, not more bunks.
cabin-size g | area=7.2; cabin=cargo ship, one person
headroom g | height=2,06
below-the-line g | below=0; blind=4 | Four inside cabins on main deck, no daylight.
noise g | level=57; ran=Two sets at 60 %, bow thruster 1 at half pitch, port aft cabin on main deck
engine-room-noise g | level=104; watch=unmanned; ran=Two sets at 60 %
vibration ?not run
hearing-the-neighbour g
behind-linings g | panels=3; wet=0 | One at the side, two under the boat deck.
    Wool dry, pins bright, paint whole.
linings g | stains=1
wet-units f | units=12; soft=2; persons=4 | Trays of cabins 7 and 9 give under the heel.
    Dry in the room below, so far.
toilets g | flushed=12; faulty=0; starts=1
hot-water g | temperature=57; place=hot tap after 1 min; sampled=2026-06-11
cabin-power g | tried=12; no_earth=0
ways-out g | width=710; blocked=0 | The cook led the way and had the lamp off before I asked.
nose-and-mould g
moving-walls g | | Studs and boards but for the stair and two pillars, all marked on our print.
cold-day g | coldest=20.5; outside=9; heating=180
hot-day ?not run | | Nine degrees outside; no cooling to be had from it.
air-unit g | | Coils clean, pan drains, filters of August.
fan-vibration g | velocity=2.6; support=rigid
fresh-air g | total=1450; head=60
ducts f | | Lagging wet at one bend above the mess, drip on the ceiling board.
extract g | tried=9; dead=1
gas f | refrigerant=R-134a; installed=2008-09-01; charge=38
leak-record g | last=2026-07-02; refrigerant=R-134a; charge=38; detection=no; added=0.8
chillers g | machines=2; hours=8800; rated=62; running=51
laundry g | machines=4
hospital g | expires=2027-03-31
day-rooms g | seats=20; floor=34
day-room-noise g | level=55; space=mess room; ran=Two sets at 60 %
guest-comfort ?not run
noise-at-cruise ?not run | | No trial at sea; agreed with the buyer's man to ask 50 dB(A).
""",
    "bridge": """
sight-ahead g | eye=15.8; bow=11.2; distance=14.5
blind-sectors g | sector=14; which=all together, forward of the beam
sight-aft g | free=4.2; arc=240 | The after desk looks over a house of one deck and a half, not
    of two.
wings f | | Open wings. A pilot or a guest stands in the rain there.
windows g | panes=1
wipers f | wipers=0; heated=2 | Two heated panes cold on the port quarter.
one-system f | sets=21; dead=1; year=2016; supported=2028-12-31 |
    Refitted as one system in 2016. The letter says parts until end of 2028.
radars g | sets=2; hours=6400; year=2016
mast g
screen-charts g | sets=2; updated=2026-09-30; permits=2027-01-31
gyro g | error=0.4; repeaters=0.6; serviced=2025-11-12
magnetic-compass g | adjusted=2025-05-14; error=2
autopilot ?not run | | Alongside; nothing to steer by.
position g | off=4; sets=2
sounder-and-log g | sounder=7.9; lead=8.0
identity g | number=000 123 000; tested=2026-04-20
radio-area g | areas=A1+A2+A3; expires=2029-05-31; endorsed=2026-05-12
radio-tests g | passed=7; failed=0; answered=2026-10-06
radio-reserve g | age=3.4; rest=26,1; sending=24,8
inner-voices g | tried=9; dead=0
telegraph gt
lights-and-whistle g | dead=0; silent=0
watch-alarm g | period=9
watch-alarm-calls g | delay=15; stage=call to master or back-up
voyage-recorder g | last=2026-02-18; beacon=2028-06-30
data-link f | until=2026-12-31 | The owner's contract ends with the ship.
after-dark g | not_dimming=1
bridge-noise g | level=61; ran=Two sets at 60 %, fans on
room g | free=14; breakers=6
whistle-and-searchlights g | searchlights=2
security-and-network g | | Certificate aboard, verified last spring.
""",
    "alarm-and-control": """
alarm-system f | year=2008; stations=3; supported=2027-12-31 |
    As old as the ship. The maker promises parts for one more year.
channels g | channels=1140; inhibited=6; standing=3 | All nine read out loud by the chief, each
    with a reason.
ten-by-lot g | tried=10; failed=0
broken-wire g | pulled=3; silent=0
gauge-pairs g | pairs=10; off=1
duty-call g | cabin=22; escalated=3
personnel-alarm g | reminder=27
unattended g | calls=1; surveyed=2026-05-12
history f | blackouts=1; frequent=212 | Bilge high in the bow thruster room, 212 times.
    It goes with the finding on unit 2.
tank-gauging g | tanks=38; dead=1; kind=pressure cell
loading-computer g | gm_book=2,15; gm_program=2,14; lightship=2560
fire-panel g | disabled=0; faults=0; year=2018
gas-panel g | heads=6; delay=20
gas-meters g | interval=180; calibrated=2026-06-18
backups g | systems=11; without=1; oldest=2025-03-14 | All but the crane.
general-alarm g | level=81; noise=58; place=sleeping place, door shut; deaf=0
door-panel g | doors=3; lamps=0
told-apart g | taped=0
control-lost g | tried=4; moved=0 | Four losses, four alarms, nothing moved.
    The electrician had done it before.
lever-electronics f | year=2008; spares=2
stand-by-pumps g | pairs=3; failed=0; longest=4
cargo-mimic g | controllers=4; stays=14
stops g | listed=22; faulty=1
junction-boxes f | opened=3; wet=1 | Mast foot: water line in the box, green screws.
loop-drawings g
ways-in p | lines=3; open=1 | The maker's modem was on, and the password is on its label.
cameras g | cameras=12; dead=1
control-room-noise g | level=68; cabinet=27
""",
    "reefers": """
ranges-and-ovens g | fitted=9; heating=9; plate=36; cabinets=4; dead=0
meals f | most=28; bench=6,4 | Twenty-eight in two sittings. For forty it wants another oven and
    three metres of bench.
galley-deck f | hollow=0.6 | Tiles ring hollow before the range.
dry-store g | net=19; temperature=17; certified=2026-09-14
stores-lift n
""",
}
