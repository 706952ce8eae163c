"""Particulars of the first candidate: hull, tanks, passage, spaces, money and certificates."""

from inspector.demo.candidate import Entries, rows, single_row, table_rows

# The well-kept candidate: nearly everything is typed, so that every chapter has figures.
PARTICULARS: Entries = (
    *single_row(
        "hydrostatics",
        """
displacement=4990; draught=5.4; draught_fore=5.2; draught_aft=5.6; greatest_draught=6.4;
lpp=70.0; lwl=74.2; breadth=18.4; depth=8.0; cb=0.70; cw=0.87; kg=6.45; km=8.72; gm=2.15;
free_surface=620; tpc=11.5; mctc=53.5; lcf=33.2; lcb=34.6;
lightship=2560; lightship_lcg=36.9; lightship_vcg=7.30;
roll_period=10.6; roll_loading=light or ballast; flooding=42; density=1025;
wind_height=7.6; keels=30; cargo=1450; stores=64;
booklet=12 May 2008, approved by her class (invented); inclined_on=2008-03-14; limit_is=fluid
""",
    ),
    *table_rows(
        "tanks",
        "name kind capacity fill density temperature unusable lcg tcg vcg free_surface plan "
        "becomes",
        """
Fuel 1 port, double bottom|fuel|85|40|846|15|4|28.0||0.9|62|keep|
Fuel 1 starboard, double bottom|fuel|85|40|846|15|4|28.0||0.9|62|keep|
Fuel 2 port, double bottom|fuel|85|35|846|15|4|41.5||0.9|58|keep|
Fuel 2 starboard, double bottom|fuel|85|35|846|15|4|41.5||0.9|58|keep|
Fuel 3 port, wing|fuel|180|42|846|15|2|34.0||4.3|24|keep|
Fuel 3 starboard, wing|fuel|180|42|846|15|2|34.0||4.3|24|keep|
Settling tank|fuel|40|55|846|35|3|19.5||5.6|7|keep|
Service tank|fuel|40|70|846|40|3|18.0||5.6|7|keep|
Fresh water 1 port|fresh water|160|35|1000|||52.0||4.0|48|keep|
Fresh water 1 starboard|fresh water|160|35|1000|||52.0||4.0|48|keep|
Fresh water 2 port|fresh water|160|34|1000|||46.0|-2.6|4.0|48|keep|
Fresh water 2 starboard|fresh water|160|34|1000|||46.0|2.6|4.0|48|convert|grey water
Wet cargo 1 port|wet cargo|155|0||||38.0|-4.1|3.6|70|convert|sewage
Wet cargo 1 starboard|wet cargo|155|0||||38.0|4.1|3.6|70|convert|fresh water
Wet cargo 2 port|wet cargo|155|0||||30.5|-4.1|3.6|70|keep|
Wet cargo 2 starboard|wet cargo|155|0||||30.5|4.1|3.6|70|keep|
Dry bulk 1|dry bulk|52.5|0||||44.0|-3.4|4.2||remove|
Dry bulk 2|dry bulk|52.5|0||||44.0|3.4|4.2||remove|
Dry bulk 3|dry bulk|52.5|0||||40.0|-3.4|4.2||remove|
Dry bulk 4|dry bulk|52.5|0||||40.0|3.4|4.2||remove|
Ballast fore peak|ballast|130|0|1025|||67.0||4.8|60|keep|
Ballast 2 to 9, wings and bottom|ballast|700|45|1025|||35.0||1.6|140|keep|
Ballast after peak|ballast|120|60|1025|||3.0||5.0|90|keep|
Sewage|sewage|32|30|1000|||21.0||2.4|10|keep|
Grey water|grey water|12|40|1000|||23.0||2.4|4|keep|
Sludge||14|45|920|||16.0||1.8|3|keep|
""",
    ),
    *table_rows(
        # Points over nearly four knots by the log, enough for a curve of her own.
        "speeds",
        "speed power displacement kind over on note",
        """
9.8|930|4700|log|through the water|2026-03-02|Five steady days photographed
11.5|1570|4700|log|through the water|2026-03-04|
12.6|2130|4700|log|through the water|2026-03-05|
13.6|2750|4700|log|through the water|2026-03-06|
""",
    ),
    *table_rows(
        "engines",
        # Each engine and set once, with its bus: range and power plant read the same rows.
        "name drives power count rpm year rate_50 rate_75 rate_100 measured bus electrical "
        "power_factor emergency",
        """
Main engine port|propeller|2350|1|750|2008|206|199|202|declared||||
Main engine starboard|propeller|2350|1|750|2008|206|199|202|declared||||
Set|generator|968|4|1800|2008|218|209|207|declared|A, A, B, B|910|0.8|no
Emergency set|generator|160|1|1800|2008||||declared|E|150|0.8|yes
""",
    ),
    *single_row(
        "propulsion",
        "hotel_sea=310; hotel_anchor=240; hotel_at=switchboard; running=2; sea_margin=15; "
        "reserve=10; screws=2; diameter=3.2; shaft_height=2.0; tunnels=3; tunnel_diameter=1.9; "
        "pitch_ratio=0.95; nozzles=no; service=1.1; transom=3; bulb=8; appendages=90",
    ),
    *single_row(
        "stores",
        "watermaker=12; dry=19; chilled=12; frozen=15.5; "
        "waste=6; toilets=vacuum; discharge=as permitted; "
        "compactor=no; water_per_head=140",
    ),
    *table_rows(
        "weights",
        # A house is one thing: its weight, the deck under it, its side in the wind, its rooms and
        # what it takes are read from these rows.
        "name act mass basis area thickness extra lcg tcg vcg part belongs_to stands long "
        "wide high room rated walls bus takes_harbour takes_sea takes_manoeuvring "
        "takes_station_keeping",
        """
Take out four bulk vessels with pipes and compressor|off|46|drawing||||42.0|0|4.4|lightship|||||||
    ||||||
Cargo pumps and deck lines|off|15.5|computed||||33.0|0|2.8|lightship|||||||||||||
Fire monitors and their pump|off|6.8|weighed||||54.0|0|17.5|lightship|||||||||||||
Deck sheathing, timber|off|31|computed||||24.0|0|8.2|lightship|||||||||||||
House of one deck and a half for the brief's people, on the after deck|on|||1180|7|25|33.5|0|11.2|
    lightship||open deck|30|14|2.6|yes|5|96|B|112|118|106|106
Upper half of that house|on||||||33.5|0|13.7|lightship|
    House of one deck and a half for the brief's people, on the after deck|on another thing|12|11|
    2.5|yes|||||||
Its linings, furniture and wet units|on|62|rule of thumb||||33.5|0|10.9|lightship|
    House of one deck and a half for the brief's people, on the after deck||||||||||||
Knuckle-boom crane, 6 t at 14 m, pedestal strengthened|on|4.5|drawing||||17.0|5.5|12.5|lightship||
    |||||||B|0|0|0|0
Two boats with cradles and davit|on|17|drawing||||14.0|-4.0|10.2|lightship||open deck|14.5|4|2.4||
    5|9|||||
Second treatment unit and 30 m³ of holding in wet cargo tank 1|on|6|computed||||22.0|0|3.2|
    lightship||inside|||||||A|19|24|
    19|19
Stores and guests' effects|on|24|rule of thumb||||36.0|0|9.6|stores|||||||||||||
""",
    ),
    *table_rows(
        "hydrostatics_by_draught",
        "draught displacement km limit_kg lcb lcf tpc mctc",
        """
3.4|2740|9.72|7.70|35.6|34.6|10.8|46.0
4.2|3620|9.20|7.48|35.3|34.1|11.1|48.5
5.0|4538|8.84|7.25|34.9|33.6|11.4|51.5
5.4|4990|8.72|7.15|34.6|33.2|11.5|53.5
5.8|5460|8.64|7.05|34.3|32.9|11.7|55.0
6.2|5940|8.60|6.95|34.0|32.6|11.9|57.0
6.6|6430|8.58|6.85|33.7|32.4|12.1|59.0
""",
    ),
    *table_rows(
        "cross_curves",
        "displacement kn_5 kn_10 kn_15 kn_20 kn_25 kn_30 kn_35 kn_40 kn_50 kn_60",
        """
2740|0.85|1.69|2.52|3.32|4.06|4.74|5.35|5.90|6.80|7.42
3620|0.80|1.60|2.39|3.15|3.86|4.50|5.07|5.57|6.36|6.87
4538|0.77|1.54|2.30|3.03|3.71|4.32|4.85|5.30|5.99|6.42
4990|0.76|1.52|2.26|2.98|3.64|4.23|4.73|5.16|5.80|6.17
5460|0.75|1.50|2.23|2.93|3.57|4.13|4.61|5.01|5.60|5.92
5940|0.75|1.48|2.19|2.88|3.50|4.04|4.50|4.87|5.41|5.67
""",
    ),
    *table_rows(
        "levers",
        "angle gz",
        "0|0\n5|0.19\n10|0.38\n15|0.56\n20|0.73\n25|0.86\n30|0.94\n35|0.96\n40|0.93\n50|0.76\n"
        "60|0.48",
    ),
    *table_rows(
        "decks",
        "name area rated total",
        "Two boats with cradles and davit|58|5|1400",
    ),
    *table_rows(
        "spaces",
        "name kind act frames pitch length breadth deducted height area volume share state",
        """
After deck|open deck|given|16|3.0||15.4|18|||||
Bulk room when the vessels are out|hold|won|||17.0|7.4||4.6|||80|
Cargo pump room|machinery space|won|||6.6|5.2||3.4|||70|
Wet cargo tanks 1|tank|won||||||||310||
House as it stands|accommodation|given||||||2.2|520|||kept
""",
    ),
    *table_rows(
        "wants",
        "name kind place count persons who area height plan",
        """
Guest cabins|cabin|inside|12|2|guest|15|2.1|build
Crew cabins, single|cabin|inside|8|1|crew|7.2|2.1|there already
Officers' cabins|cabin|inside|6|1|officer|9.5|2.1|there already
Crew cabins, single, new|cabin|inside|2|1|crew|7|2.1|build
Mess and lounge|mess|inside|1|||72|2.4|build
Galley|galley|inside|1|||34|2.3|there already
Hospital|hospital|inside|1|||14|2.1|there already
Laundry|laundry|inside|1|||12|2.1|there already
Passages and stairs|corridors and stairs|inside|1|||70|2.1|build
Stores for 45 days|store|inside|1|||46|2.4|build
Workshop|workshop|inside|1|||24|2.6|there already
Laboratory|laboratory|inside|1|||22|2.4|build
Two boats, 9.5 m and 7 m|tender bay|open deck|1|||95||build
""",
    ),
    *single_row(
        "loading",
        "persons_lcg=40; persons_vcg=11; passengers=24; crowd=6.5; service_speed=12",
    ),
    *single_row(
        "claims",
        "deadweight=3900; service_speed=14; fuel_a_day=14; fuel=820; fresh_water=640; berths=26",
    ),
    *table_rows(
        "class_conditions",
        "name due met memo",
        "Renew the hose of the fuel transfer station|2026-12-31|no|condition of class\n"
        "Wasted ladder in fore peak, to be renewed at docking|2027-06-01|no|memorandum",
    ),
    *single_row(
        "prices",
        "currency=crowns; priced_on=2026-09-01; place=Yard at Orrimhaven (invented); "
        "asking=8400000; correlation=0.35; definition=12; ends=extremes; begins=2027-02-01; "
        "rise=3; laid_up=3",
    ),
    *table_rows(
        "costs",
        "kind name low likely high per",
        """
growth of the work|What turns up when she is opened|8|12|20|% of the work
work not seen yet|Eighteen tanks, both stern seals, positioning|60000|180000|420000|once
docking|Among the work lines|0|0|0|once
design|Naval architect: stability, house, approval drawings|190000|240000|330000|once
class and flag fees|Change of type and of flag, plan approval, surveys|85000|120000|190000|once
owner's supply|Boats, galley, linen, tools and first stores|260000|340000|480000|once
supervision|Superintendent, naval architect two days a week|24000|28000|36000|month in the yard
delivery|Crew, fuel and insurance to the yard and home|70000|95000|150000|once
lay-up|Berth, watchmen and insurance|18000|22000|30000|month laid up
""",
    ),
    *table_rows(
        "sales",
        "name low likely high buyer",
        """
Bulk vessels and compressor|18000|30000|52000|A yard that fits a sister out
Cargo pumps, two of four|9000|16000|30000|Second-hand trade
Fire monitors with pump|12000|22000|35000|Second-hand trade
DP consoles and sensors|20000|45000|90000|Owners of sisters, for parts
""",
    ),
    *rows(
        "certificate",
        "kind number on_board issued expires last_annual last_intermediate last_bottom "
        "bottom_before_that",
        """
class|ZT-1001|yes|2024-05-28|2029-05-31|2026-05-12||2024-05-24|2021-06-01
load line|ZT-1002|yes|2024-05-28|2029-05-31|2026-05-12|||
safety construction|ZT-1003|yes|2024-05-28|2029-05-31|2026-05-12||2024-05-24|2021-06-01
safety equipment|ZT-1004|yes|2024-05-28|2029-05-31|2026-05-12|||
safety radio|ZT-1005|yes|2024-05-28|2029-05-31|2026-05-12|||
oil pollution prevention|ZT-1006|yes|2024-05-28|2029-05-31|2026-05-12|||
air pollution prevention|ZT-1007|yes|2024-05-28|2029-05-31|2026-05-12|||
ballast water management|ZT-1008|yes|2024-05-28|2029-05-31|2026-05-12|||
sewage pollution prevention|ZT-1009|yes|2024-05-28|2029-05-31||||
safety management|ZT-1010|yes|2024-06-20|2029-06-19||||
ship security|ZT-1011|yes|2024-06-20|2029-06-19||||
maritime labour|ZT-1012|yes|2024-06-20|2029-06-19||||
dynamic positioning statement|ZT-1013|yes|2024-06-03|2029-06-02|2026-04-20|||
inventory of hazardous materials|ZT-1014|yes|2025-03-11|2030-03-10||||
sanitation|ZT-1015|yes|2026-09-14|2027-03-13||||
insurance|ZT-1016|yes|2026-02-20|2027-02-19||||
tonnage|ZT-1017|yes|2008-06-02|||||
registry|ZT-1018|yes|2008-06-10|||||
minimum safe manning|ZT-1019|yes|2024-06-20|||||
""",
    ),
)
