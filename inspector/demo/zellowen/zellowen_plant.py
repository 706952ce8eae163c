"""Power plant of the first candidate: sets, buses, loads, thrusters, wind and current."""

from inspector.demo.candidate import Entries, single_row, table_rows

PARTICULARS: Entries = (
    *table_rows(
        "plant_ties",
        # Split while keeping station and in narrow waters, one board at sea and alongside.
        "name one other normally at_harbour at_sea at_manoeuvring proven",
        "Bus tie|A|B|open|closed|closed|open|yes\nEmergency tie|A|E|closed||||yes",
    ),
    *table_rows(
        "plant_loads",
        # Every load on its own bus, so that a failure takes with it what it would take on board.
        "name bus kind harbour sea manoeuvring station_keeping runs essential",
        """
Engine room auxiliaries, port|A|existing|18|74|82|70|steadily|yes
Engine room auxiliaries, starboard|B|existing|18|74|82|70|steadily|yes
Steering gear|A|existing|0|16|24|16|by turns|yes
Air conditioning and heating|B|existing|70|64|64|64|by turns|no
Galley and laundry|A|existing|42|46|22|30|by turns|no
Lights and sockets|A|existing|30|34|34|34|steadily|yes
Cold stores|B|existing|16|16|16|16|by turns|no
Bridge, radio and control|A|existing|14|26|28|28|steadily|yes
Pumps and compressors|B|existing|28|38|46|36|by turns|no
Windlass and deck machinery|B|existing|0|0|110|0|by turns|no
Bow thruster 1|A|existing|0|0|500|0|steadily|yes
Bow thruster 2|B|existing|0|0|500|0|steadily|yes
Stern thruster|B|existing|0|0|390|0|steadily|yes
""",
    ),
    *table_rows(
        "plant_transformers",
        "name bus rating load current voltage",
        """
690 to 230 V, port|A|160|96||
690 to 230 V, starboard|B|160||210|230
690 to 440 V, galley and deck|B|250|148||
Emergency 690 to 230 V|E|75||118|230
""",
    ),
    *table_rows(
        "plant_thrusters",
        "name kind feed rated thrust side diameter x y acts control",
        """
Bow thruster 1|tunnel|A|736|105||1.9|29.0||across|DP computer 1 or DP computer 2
Bow thruster 2|tunnel|B|736|105||1.9|26.2||across|DP computer 1 or DP computer 2
Stern thruster|tunnel|B|590|84||1.7|-27.5||across|DP computer 1 or DP computer 2
Port propeller|open propeller|Main engine port|2200|300|95|3.2|-33.0|-4.2|along|
    DP computer 1 or DP computer 2
Starboard propeller|open propeller|Main engine starboard|2200|300|95|3.2|-33.0|4.2|along|
    DP computer 1 or DP computer 2
""",
    ),
    *table_rows(
        "plant_needs",
        "element on",
        """
Set 1|Cooling pump port
Set 2|Cooling pump port
Set 3|Cooling pump starboard
Set 4|Cooling pump starboard
Set 1|Day tank port or Day tank starboard
Set 2|Day tank port or Day tank starboard
Set 3|Day tank starboard or Day tank port
Set 4|Day tank starboard or Day tank port
Main engine port|Day tank port
Main engine starboard|Day tank starboard
Bow thruster 1|Bow thruster room 1
Bow thruster 2|Bow thruster room 2
DP computer 1|24 V port or 24 V starboard
DP computer 2|24 V port or 24 V starboard
""",
    ),
    *single_row(
        "plant_exposure",
        "length=74.2; breadth=18.4; draught=5.4; lateral=690; frontal=255; x_wind=6.0; "
        "x_current=-1.0; wind=12; current=1.0; waves=1.15; "
        "efficiency=0.92; limit=0.85",
    ),
    *single_row(
        "plant_board",
        "voltage=690; frequency=60; power_factor=0.85; shore_current=400; shore_voltage=690; "
        "shore_frequency=60",
    ),
)
