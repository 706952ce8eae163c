"""Tables of particulars that more than one chapter reads: the tanks, and the hydrostatics of the hull from its booklet."""

from inspector.conversion.tables import Column, Table
from inspector.criteria.floating import ROLL_FACTORS

TANK_KINDS = ("fuel", "fresh water", "sewage", "grey water", "lubricating oil", "ballast", "wet cargo", "dry bulk", "void")
PLANS = ("keep", "convert", "remove")

TANKS = Table("tanks", "Tanks", "Every tank with its capacity, what is in it now, and what is planned for it; centres from the capacity plan.", (
    Column("name", "Tank", kind="text", needed=True),
    Column("kind", "Contents", kind="choice", choices=TANK_KINDS),
    Column("capacity", "Capacity", "m³", needed=True, high=20_000),
    Column("fill", "Filled", "%", high=100),
    Column("density", "Density of the contents", "kg/m³", low=300, high=4000),
    Column("temperature", "Temperature", "°C", low=-5, high=150),
    Column("unusable", "Unusable below the suction", "%", high=100),
    Column("lcg", "Centre from the after perpendicular, forward is plus", "m", low=-200, high=200),
    Column("vcg", "Centre above the keel", "m", high=60),
    Column("free_surface", "Free-surface inertia, m⁴", high=1e6),
    Column("plan", "Plan", kind="choice", choices=PLANS),
))
HYDROSTATICS = Table("hydrostatics", "Hydrostatics and lightship",
                     "From the approved stability booklet, for the loading condition that the changes start from.", (
    Column("displacement", "Displacement", "t", low=1, high=200_000),
    Column("draught", "Mean draught", "m", low=0.3, high=30),
    Column("draught_fore", "Draught forward", "m", low=0.1, high=30),
    Column("draught_aft", "Draught aft", "m", low=0.1, high=30),
    Column("lpp", "Length between perpendiculars", "m", low=5, high=400),
    Column("lwl", "Length of the waterline", "m", low=5, high=400),
    Column("breadth", "Breadth moulded", "m", low=2, high=80),
    Column("depth", "Depth moulded", "m", low=0.5, high=40),
    Column("cb", "Block coefficient", low=0.3, high=1),
    Column("cw", "Waterplane coefficient", low=0.4, high=1),
    Column("kg", "KG of that condition, solid", "m", high=40),
    Column("km", "KM at that draught", "m", low=0.1, high=100),
    Column("km_after", "KM at the draught after the changes", "m", low=0.1, high=100),
    Column("gm", "GM of that condition, corrected for free surface", "m", low=-5, high=60),
    Column("free_surface", "Free-surface moment of that condition", "t·m", high=1e6),
    Column("tpc", "Tonnes per centimetre", "t/cm", low=0.1, high=200),
    Column("mctc", "Moment to change trim one centimetre, t·m/cm", low=0.1, high=20_000),
    Column("lcf", "Centre of flotation from the after perpendicular", "m", high=400),
    Column("lcb", "Centre of buoyancy from the after perpendicular", "m", high=400),
    Column("lightship", "Lightship", "t", high=200_000),
    Column("lightship_lcg", "Lightship centre from the after perpendicular", "m", low=-50, high=400),
    Column("lightship_vcg", "Lightship centre above the keel", "m", high=40),
    Column("roll_period", "Measured natural roll period, over and back", "s", low=1, high=60),
    Column("roll_loading", "Loading when the roll was timed", kind="choice", choices=tuple(ROLL_FACTORS)),
    Column("flooding", "Angle of down-flooding", "deg", high=90),
    Column("density", "Density of the water", "kg/m³", low=980, high=1040),
    Column("booklet", "Booklet: date and by whom approved", kind="text"),
    Column("inclined_on", "Date of the inclining test", kind="date"),
    Column("limit_kg", "Greatest KG allowed by the booklet at that draught", "m", high=40),
), single=True)
