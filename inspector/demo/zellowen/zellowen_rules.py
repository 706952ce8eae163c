"""Who is aboard the first candidate, her bulkheads and openings, and dates of her conversion."""

from inspector.demo.candidate import Entries, single_row, table_rows

RULES: Entries = (
    *single_row("aboard", "crew=16; special=0; passengers=24; use=commercial; length=71.3"),
    *table_rows(
        "compartments",
        "name after forward deck contents proof",
        """
After peak and steering gear|-2.0|5.5|main deck|steering gear, ballast|approved drawing
Engine room|5.5|25.5|main deck|engines, gears, sets|approved drawing
Wet cargo tanks and pump room|25.5|42.0|main deck|tanks, cargo pumps|approved drawing
Bulk room|42.0|49.0|main deck|dry bulk vessels|approved drawing
Accommodation below the main deck|49.0|60.5|main deck|cabins, stores|reported
Bow thruster room|60.5|65.2|main deck|two bow thrusters|seen aboard
Fore peak|65.2|71.5|main deck|ballast, chain|approved drawing
""",
    ),
    *table_rows(
        "openings",
        "name kind lcg tcg height closing",
        """
Engine room vents, after pair|vent|9.0|6.2|11.4|weathertight
Door from the after deck to the house|door|48.0|4.1|8.6|weathertight
Air pipes of the wing tanks|air pipe|34.0|8.9|8.9|weathertight
Cable pipe at frame 30|pipe or cable|20.0|2.5|6.2|nothing
""",
    ),
    *table_rows(
        "cuts",
        "name through at height made_good",
        """
Stairs from the bulk room to the new house|deck|45.5|8.0|not planned
Ducts through the bulkhead forward of the bulk room|bulkhead|49.0|6.8|watertight closing
""",
    ),
    *single_row(
        "rule_dates",
        "starts=2027-02-01; new_type=yes; lengthened=0; freeboard=no; engines=none; "
        "polar=northern; kept_days=6; house_height=2.6; air_hot=38; sea_hot=30; air_cold=-25; "
        "cooled=yes; rated_tropical=no",
    ),
)
