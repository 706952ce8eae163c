"""The third candidate of the demo, barely seen: two hours alongside with the master ashore."""

from inspector.demo import ithrenna_sheets
from inspector.demo.candidate import (
    Candidate,
    findings,
    passed,
    single_row,
    units_of,
    values_of,
    vessel,
    visit,
)

# The one barely seen: it shows what the report and the comparison do with a vessel of which little
# is known.
BARELY = Candidate(
    "demo-ithrenna-lark",
    visit(
        "Ithrenna Lark, looked at from the quay|Timber quay, Dunmorrel|2026-11-10|"
        "Watchman; master ashore with the keys|Clear, 3 °C, two hours of light left",
    ),
    vessel(
        "Ithrenna Lark|0005672|Vessmark|Supply vessel, DP class 2|2011-03-28|2012|"
        "Tarnbrekka Yard, hull 58|73.4|16.8|7.4|6.0|2310|610|2|Two shaft lines, three sets, three "
        "thrusters by the drawing in the seller's letter. Nothing run, nothing opened.",
    ),
    units_of(3, landing_and_boarding=(("landing", "Landing deck over the bow"),)),
    ithrenna_sheets.SHEETS,
    (
        *findings(
            "keep watch|hull/shell|Second visit needed|Two hours alongside, "
            "deck and bow thruster hatch only.|"
            "Come back with the master aboard, two days and a dead board."
        ),
        *passed(
            nothing="accommodation/cabins deck-machinery/mooring life-saving/boats "
            "life-saving/rafts landing-and-boarding/landing",
            something="deck-machinery/crane tanks/ballast",
        ),
        *single_row("prices", "currency=crowns; asking=7200000"),
        *values_of("certificate/demo-01", "kind=class; expires=2027-03-27"),
    ),
    (
        ("hull-side-far", "sheet/hull/shell/coating", "Port side from the quay"),
        ("closed-manhole", "sheet/tanks/wet/covers", "Tank cover, not opened"),
    ),
)
