"""What was written on the candidate barely seen: the master was ashore with the keys; the format is that of well_kept.py."""

SHEETS = {
    "hull": """
coating f | breakdown=7; scale=2; edges=18 | From the quay, through glasses.
draughts g | forward=4.1; midship=4.4; aft=4.8; list=0.4
fenders f | broken=11
deck-plate g | hollow=8; scars=18
bulwarks g | flaps=10; swinging=10
spot-gauging ?no time
sea-valves ?no access
penetrations ?no access
gauging-report ?no access | | In the master's cabin, and the master was ashore.
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
room-access g
""",
    "switchboards": """
breakers ?no access
shore-connection g | voltage=440; frequency=60; current=250
set-load ?not run
emergency-start ?no access
""",
    "tanks": """
air-pipes g | heads=4; faulty=0; lowest=760
covers g | covers=8; missing=0
""",
    "reefers": """
temperature ?no access
refrigerant ?no access
""",
}
