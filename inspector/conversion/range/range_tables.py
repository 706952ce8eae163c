"""The tables that range and endurance ask for: speed with fuel or power, the passage, stores."""

from inspector.conversion.core.engine_rows import ENGINES
from inspector.conversion.core.particulars import Table, column
from inspector.conversion.core.ship_particulars import HYDROSTATICS, TANKS
from inspector.conversion.range.fuel.fuel_by_speed import BURNS

BY_SETS, BY_SHAFT = "generating sets", "shaft generators"
HOTEL_FROM = (BY_SETS, BY_SHAFT)
SPEEDS = Table(
    "speeds",
    "Speed with fuel or power",
    "From the log or a trial, with fuel a day or with shaft power: three points over two knots "
    "tell more than any formula.",
    (
        column("speed", "Speed", "kn", needed=True, low=1, high=60),
        column("fuel", "Fuel a day", "t/day", low=0.01, high=500),
        column("burns", "That fuel is of", kind="choice", choices=BURNS),
        column("power", "or shaft power, all engines", "kW", low=1, high=60_000),
        column("displacement", "Displacement then", "t", low=50, high=200_000),
        column("kind", "Where from", kind="choice", choices=("log", "trial")),
        column(
            "over", "That speed is", kind="choice", choices=("through the water", "over the ground")
        ),
        column("on", "Date", kind="date"),
        column("note", "Note", kind="text"),
    ),
)
PROPULSION = Table(
    "propulsion",
    "Passage",
    "What the passage depends on: hotel load, margins, propellers. Each may stay empty.",
    (
        column("hotel_from", "At sea it comes from", kind="choice", choices=HOTEL_FROM),
        column("shaft_generator", "Shaft generators together, rated", "kW", low=1, high=20_000),
        column("station_fuel", "Fuel a day on station, everything aboard", "t/day", high=500),
        column("hotel_sea", "Hotel load at sea", "kW", high=20_000),
        column("hotel_anchor", "Hotel load at anchor", "kW", high=20_000),
        # A reading at the switchboard is behind the generator's losses, one at the engine before
        # them.
        column("hotel_at", "Read at", kind="choice", choices=("switchboard", "engine")),
        column("running", "Main engines running", kind="whole", low=1, high=12),
        column("sea_margin", "Sea margin", "%", high=100),
        column("reserve", "Reserve", "%", high=50),
        column("screws", "Propellers", kind="whole", low=1, high=2),
        column("diameter", "Propeller diameter", "m", low=0.5, high=8),
        column("pitch_ratio", "Pitch ratio", low=0.3, high=1.6),
        column("open_water", "Open-water efficiency, if known", low=0.2, high=0.85),
        column("shaft_height", "Centre of the propeller above the keel", "m", low=0.1, high=15),
        column("tunnels", "Thruster tunnels", kind="whole", low=0, high=8),
        column("tunnel_diameter", "Diameter of a tunnel", "m", low=0.2, high=5),
        column("nozzles", "Nozzles", kind="choice", choices=("yes", "no")),
        column("service", "Fouling and weather on top of the regression", low=1, high=3),
        column("transom", "Immersed transom area", "m²", high=200),
        column("bulb", "Bulb cross section", "m²", high=100),
        column("appendages", "Appendage area", "m²", high=2000),
    ),
    single=True,
    groups=(
        (
            "Hotel load and station",
            (
                "hotel_from",
                "shaft_generator",
                "station_fuel",
                "hotel_sea",
                "hotel_anchor",
                "hotel_at",
            ),
        ),
        (
            "Propellers",
            ("screws", "diameter", "pitch_ratio", "open_water", "shaft_height", "nozzles"),
        ),
        (
            "Hull under water",
            ("tunnels", "tunnel_diameter", "service", "transom", "bulb", "appendages"),
        ),
    ),
)
STORES = Table(
    "stores",
    "Stores and holding",
    "What the persons on board live from and leave behind. "
    "What stays empty is a gap, never nothing. Tanks in the table of tanks need not be typed here.",
    (
        column("water", "Fresh water, where its tanks are not listed", "m³", high=20_000),
        column("watermaker", "Watermaker, rated", "m³/day", high=500),
        column("sewage", "Sewage, where its tanks are not listed", "m³", high=5000),
        column("grey", "Grey water, where its tanks are not listed", "m³", high=5000),
        column("dry", "Dry store", "m³", high=5000),
        column("chilled", "Chill room", "m³", high=5000),
        column("frozen", "Freezer", "m³", high=5000),
        column("waste", "Garbage room", "m³", high=2000),
        column("toilets", "Toilets", kind="choice", choices=("vacuum", "gravity")),
        column(
            "discharge",
            "On the route, discharge of",
            kind="choice",
            choices=("nothing", "as permitted"),
        ),
        column("compactor", "Compactor", kind="choice", choices=("yes", "no")),
        column("water_per_head", "Fresh water metered, litres a day each", low=0.5, high=1500),
    ),
    single=True,
)
TABLES = (SPEEDS, ENGINES, PROPULSION, STORES)
READ = (*TABLES, TANKS, HYDROSTATICS)
