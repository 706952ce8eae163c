"""Sheets of the well-kept candidate: deck machinery, stores, papers and boarding."""

SHEETS = {
    "deck-machinery": """
chain g | rule=46; worst=43,9; lengths=9; loose=0
anchors g | mass=3780
equipment f | letter=Number 812; length=495 | A taller house lifts the number;
    one length of chain more, by the designer's first sum.
hawse g
chain-locker g
windlass-brake g | lining=9
heave g | heaved=27.5; time=152; pressure=165
gypsy g
mooring-winches g | run=4; faulty=0; pull=80
mooring-lines f | lines=6; load=410 | Two of eight are stiff with powder between the strands.
fittings g | rollers=18; seized=1
crane-examination g | last=2026-05-11; kind=lifting appliance, thorough examination; open=1
crane-proof-load g | proof=6.3; swl=5; radius=12
crane-bearing f | play=1.1; limit=2.0; first=0.6 | Well inside the limit, but it has nearly
    doubled since new.
crane-wire g | nominal=18; measured=17,6; fitted=2024-05-20
broken-wires f | broken=2; wires=114
crane-run g | limits=5; failed=0
crane-rams g | drift=18
crane-reach f | radius=14; rating=3.4; wanted=4.5 | It does not lift the brief's boats where they
    would lie.
other-lifting g | last=2024-05-26; unlisted=3
seats g | machine=Windlass, one bolt retightened
hoses-on-deck f | oldest=2015; weeping=2 | Two hoses of the tugger weep at the crimp.
power-pack g | pressure=168; temperature=51
oil-cleanliness g | code=18/16/13; service=piston pump; sampled=2026-08-28
oil-wet g | water=0.012
deck-motors g | resistance=38; voltage=690; machine=Port mooring winch
brake-holds g | crept=0
crane-steel g
""",
    "spares-and-papers": """
count g | found=9; value=640 000 crowns by the owner's list
large-spares g | | Spare tail shaft at the yard that built her, paid for, storage to the year's end.
not-owned f | strangers=7 | Seven things of other owners: the satellite dome, two containers, gas
    bottles.
workshop g
welding g | bottles=9
special-tools g | missing=1
instruments g | interval=365; calibrated=2026-02-10
drawing-list g | shown=19
makers-manuals g | right=5
stability-book g | booklet=2560; found=2574; centre=7.3; inclined=2008-03-14
jobs-overdue g | overdue=11; critical=0
jobs-true g | true_jobs=5
oil-programme g | machines=14; unanswered=0
class-status g | conditions=1; special=2029-05-31; changes=0 | One condition, the crane bracket,
    due in February.
certificates g | expires=2029-05-31; survey=annual; last=2026-05-12; named=Load line
exemptions f | exemptions=3; ending=2 | Two of three end with the flag.
identity g | number=0001236; keel=2007-11-19
tonnage f | gross=2890; enclosed=620 | Some 110 tonnes below 3000: a house of 620 m³ takes her
    over the line.
detentions g | detentions=0; claims=1
manning g | document=11; aboard=6
lay-up g | since=2026-04-14; turned=2026-09-28 | Turned every week by the six, with a list on the
    door.
who-knows g | | The chief has been here eleven years and would stay for one season.
working-life g | idle=9; unknown=0
bringing-home f | days=21; price=About 310 000 crowns by the owner's agent, without the tow | Own
    power, after class has seen the starboard seal.
ownership f | missing=Letter of release of the mortgage | Handed to the buyer's lawyer.
cold-limits p | service=-10; lowest=-12; start=0 | Icing is not in the book; vents and fire main
    are not heated.
""",
    "landing-and-boarding": """
tender-places f | length=11.2; width=4.1; heaviest=4.5
launch-steel g | persons=2.1; goods=3.4
launch-examined g | last=2026-05-11; tested=2024-05-26
tender-launch g | out=210; home=260; hands=4
petrol n
boats-themselves g | hours=640
guest-boarding p | height=3.1 | Nobody of seventy climbs that. It wants a door or a platform.
gangway-test g | last=2024-05-26; persons=12; kind=gangway and ladder winch, load test
gangway-wires g | broken=0; wires=114
gangway g | slope=24; way=gangway
pilot-ladder g | climb=4.2; made=2025-02-01
shell-doors n
door-power n
where-a-door-could-go g | above=0.9 | Port side, frame 31 to 34: no tank, no main frame, a web to
    move.
""",
}
