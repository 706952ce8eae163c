"""The third candidate of the invented portfolio, barely seen: two hours alongside with the master ashore."""

from inspector.demo import barely_seen
from inspector.demo.candidate import Candidate, findings, one, single, units_of

BARELY = Candidate(
    "demo-ithrenna-lark",
    {"title": "Ithrenna Lark, looked at from the quay", "place": "Timber quay, Dunmorrel", "date": "2026-11-10",
     "attending": "Watchman; master ashore with the keys", "weather": "Clear, 3 °C, two hours of light left"},
    {"name": "Ithrenna Lark", "imo": "0005672", "flag": "Vessmark", "class": "Supply vessel, DP class 2", "built": "2011-03-28", "year": "2012",
     "yard": "Tarnbrekka Yard, hull 58", "length": "73.4", "breadth": "16.8", "depth": "7.4", "draught": "6.0", "tonnage": "2310",
     "deck_area": "610", "dp_class": "2",
     "particulars": "Two shaft lines, three sets, three thrusters by the drawing in the seller's letter. Nothing run, nothing opened."},
    units_of(3, landing_and_boarding=(("landing", "Landing deck over the bow"),)),
    barely_seen.SHEETS,
    (*findings("keep watch|hull/shell|Second visit needed|Two hours alongside, deck and bow thruster hatch only.|"
               "Come back with the master aboard, two days and a dead board."),
     *single("prices", "currency=crowns; asking=7200000"), *one("certificate/demo-01", "kind=class; expires=2027-03-27")),
    (("hull-side-far", "sheet/hull/shell/coating", "Port side from the quay"), ("closed-manhole", "sheet/tanks/ballast/covers", "Tank cover, not opened")),
)
