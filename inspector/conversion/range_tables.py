"""The particulars that range and endurance are computed from: speed and power points, engines, hotel load, propellers and stores."""

from inspector.conversion.tables import Column, Table

SPEEDS = Table("speeds", "Speed and power points", "From the log or a trial: three points over two knots tell more than any formula.", (
    Column("speed", "Speed", "kn", needed=True, low=1, high=60), Column("power", "Shaft power, all engines", "kW", needed=True, low=1, high=60_000),
    Column("displacement", "Displacement then", "t", low=50, high=200_000), Column("kind", "Where from", kind="choice", choices=("log", "trial")),
    Column("over", "Speed", kind="choice", choices=("through the water", "over the ground")), Column("on", "Date", kind="date"),
    Column("note", "Note", kind="text"),
))
ENGINES = Table("engines", "Engines", "Main engines and generator engines, from their plates; consumption from the shop trial or the log.", (
    Column("name", "Engine", kind="text", needed=True), Column("drives", "Drives", kind="choice", choices=("propeller", "generator"), needed=True),
    Column("power", "Rated power of each", "kW", needed=True, low=1, high=30_000), Column("count", "How many", kind="whole", low=1, high=12),
    Column("rpm", "Rated speed", "rpm", low=300, high=3000), Column("year", "Year built", kind="whole", low=1930, high=2100),
    Column("rate_50", "Consumption at 50 % load", "g/kWh", low=120, high=400), Column("rate_75", "at 75 %", "g/kWh", low=120, high=400),
    Column("rate_100", "at 100 %", "g/kWh", low=120, high=400), Column("measured", "Consumption is", kind="choice", choices=("measured on board", "declared")),
))
PROPULSION = Table("propulsion", "Passage", "What the passage rests on: hotel load, margins, propellers. Each may stay empty.", (
    Column("hotel_sea", "Hotel load at sea", "kW", high=20_000), Column("hotel_anchor", "Hotel load at anchor", "kW", high=20_000),
    Column("hotel_at", "Read at", kind="choice", choices=("switchboard", "engine")), Column("running", "Main engines running", kind="whole", low=1, high=12),
    Column("sea_margin", "Sea margin", "%", high=100), Column("reserve", "Reserve", "%", high=50),
    Column("screws", "Propellers", kind="whole", low=1, high=2), Column("diameter", "Propeller diameter", "m", low=0.5, high=8),
    Column("pitch_ratio", "Pitch ratio", low=0.3, high=1.6), Column("nozzles", "Nozzles", kind="choice", choices=("yes", "no")),
    Column("service", "Fouling and weather on top of the regression", low=1, high=3),
    Column("transom", "Immersed transom area", "m²", high=200), Column("bulb", "Bulb cross section", "m²", high=100),
    Column("appendages", "Appendage area", "m²", high=2000),
), single=True)
STORES = Table("stores", "Stores and holding", "What the persons on board live from and leave behind. What stays empty is a gap, never nothing.", (
    Column("water", "Fresh-water tanks", "m³", high=20_000), Column("watermaker", "Watermaker, rated", "m³/day", high=500),
    Column("sewage", "Sewage tanks", "m³", high=5000), Column("grey", "Grey-water tanks", "m³", high=5000), Column("dry", "Dry store", "m³", high=5000),
    Column("chilled", "Chill room", "m³", high=5000), Column("frozen", "Freezer", "m³", high=5000), Column("waste", "Garbage room", "m³", high=2000),
    Column("toilets", "Toilets", kind="choice", choices=("vacuum", "gravity")),
    Column("discharge", "On the route, discharge of", kind="choice", choices=("nothing", "as permitted")),
    Column("compactor", "Compactor", kind="choice", choices=("yes", "no")),
    Column("water_per_head", "Fresh water metered, litres a day each", low=0.5, high=1500),
), single=True)
