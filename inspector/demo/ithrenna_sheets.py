"""Sheets of the candidate barely seen: the master was ashore with the keys."""

SHEETS = {
    "hull": """
coating f | breakdown=7; scale=2; edges=18 | From the quay, through glasses.
draughts g | forward_port=4.1; forward_starboard=4.1; midship_port=4.4; midship_starboard=4.5;
    aft_port=4.8; aft_starboard=4.8; list=0.4
fenders f | broken=11
spot-gauging ?no time
sea-valves ?no access
penetrations ?no access
gauging-report ?no access | | In the master's cabin, and the master was ashore.
""",
    "open-deck": """
deck-plate g | hollow=8; scars=18
bulwarks g | flaps=10; swinging=10
""",
    "propulsion": """
engine-plate ?no access | | Engine room locked.
load-run ?not run
stern-seals ?no access
""",
    "thrusters": """
plate g | plate=Plates on the motors, seen from the hatch; power=650 kW
hub-oil ?no access
full-run ?not run
room-bilge g | delay=8
""",
    "power-generation": """
shore-connection g | voltage=440; frequency=60; ship_voltage=440; ship_frequency=60;
    sequence=as on board; current=250
set-start gr | | One set runs every Monday for an hour, says the watchman.
set-load ?not run
emergency-start ?no access
""",
    "switchboards": """
breakers ?no access
""",
    "tanks": """
air-pipes g | heads=4; faulty=0; height=760;
    position=position 1: freeboard deck, or forward quarter
covers g | covers=8; missing=0
""",
    "reefers": """
temperature ?no access
refrigerant ?no access
""",
    "accommodation": """
nose-and-mould ?no access
noise ?not run
""",
    "bridge": """
mast g | | From the quay, through glasses.
one-system ?no access
""",
    "deck-machinery": """
anchors g
windlass-brake ?not run
crane-wire f | | From below: rust at the head sheave.
crane-examination ?no access
""",
    "life-saving": """
raft-service ?no access | | Four rafts seen in their cradles; the dates face inboard.
places ?no access
""",
    "landing-and-boarding": """
landing-papers ?no access | | A marked deck over the bow, the watchman says never used.
gangway p | slope=34; way=gangway
pilot-ladder gr | | New last year, by the watchman.
""",
    "spares-and-papers": """
class-status ?no access
""",
    "hazardous-materials": """
asbestos-papers ?no access
""",
}
