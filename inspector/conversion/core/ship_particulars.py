"""Tables of particulars that several chapters read: the tanks, and the booklet's hydrostatics."""

from inspector.conversion.core.particulars import Table, column
from inspector.criteria.hull.lightship_and_roll import ROLL_FACTORS

TANK_KINDS = (
    "fuel",
    "cargo fuel",
    "fresh water",
    "sewage",
    "grey water",
    "lubricating oil",
    "ballast",
    "wet cargo",
    "dry bulk",
    "void",
)
PLANS = ("keep", "convert", "remove")

# One table for three chapters: fuel for range, free surfaces for stability, what is removed for
# weights.
TANKS = Table(
    "tanks",
    "Tanks",
    "Every tank once, with its capacity, what is in it now, and what is planned for it; centres "
    "from the capacity plan. Range, water, holding, free surfaces and weight are read from here. "
    "Fuel carried as cargo is kept apart from her own.",
    (
        column("name", "Tank", kind="text", needed=True),
        column("kind", "Contents", kind="choice", choices=TANK_KINDS),
        column("capacity", "Capacity", "m³", needed=True, high=20_000),
        column("fill", "Filled", "%", high=100),
        column("density", "Density of the contents", "kg/m³", low=300, high=4000),
        column("temperature", "Temperature", "°C", low=-5, high=150),
        column("unusable", "Unusable below the suction", "%", high=100),
        column(
            "lcg", "Centre from the after perpendicular, forward is plus", "m", low=-200, high=200
        ),
        column("tcg", "Centre off the centreline, starboard is plus", "m", low=-50, high=50),
        column("vcg", "Centre above the keel", "m", high=60),
        column("free_surface", "Free-surface inertia", "m⁴", high=1e6),
        column("plan", "Plan", kind="choice", choices=PLANS),
        column("becomes", "Holds after conversion", kind="choice", choices=TANK_KINDS),
        column("steel", "Mass of the tank itself, where it comes out", "t", high=2000),
        column("used", "Is emptied as number", kind="whole", low=1, high=60),
    ),
    groups=(
        ("What is in it", ("fill", "density", "temperature", "unusable", "used")),
        ("Where it is", ("lcg", "tcg", "vcg", "free_surface")),
        ("What becomes of it", ("plan", "becomes", "steel")),
    ),
)
HYDROSTATICS = Table(
    "hydrostatics",
    "Hydrostatics and lightship",
    "From the approved stability booklet, for the loading condition that the changes start from.",
    (
        column("displacement", "Displacement", "t", low=1, high=200_000),
        column("draught", "Mean draught", "m", low=0.3, high=30),
        column("draught_fore", "Draught forward", "m", low=0.1, high=30),
        column("draught_aft", "Draught aft", "m", low=0.1, high=30),
        column(
            "greatest_draught",
            "Greatest draught by the load line, amidships",
            "m",
            low=0.3,
            high=30,
        ),
        column("lpp", "Length between perpendiculars", "m", low=5, high=400),
        column("lwl", "Length of the waterline", "m", low=5, high=400),
        column("breadth", "Breadth moulded", "m", low=2, high=80),
        column("depth", "Depth moulded", "m", low=0.5, high=40),
        column("cb", "Block coefficient", low=0.3, high=1),
        column("cw", "Waterplane coefficient", low=0.4, high=1),
        column("kg", "KG of that condition, solid", "m", high=40),
        column("km", "KM at that draught", "m", low=0.1, high=100),
        column("km_after", "KM at the draught after the changes", "m", low=0.1, high=100),
        column("gm", "GM of that condition, corrected for free surface", "m", low=-5, high=60),
        column("free_surface", "Free-surface moment of that condition", "t·m", high=1e6),
        column("tpc", "Tonnes per centimetre", "t/cm", low=0.1, high=200),
        column("mctc", "Moment to change trim one centimetre", "t·m/cm", low=0.1, high=20_000),
        column("lcf", "Centre of flotation from the after perpendicular", "m", high=400),
        column("lcb", "Centre of buoyancy from the after perpendicular", "m", high=400),
        column("cargo", "Cargo in that condition, not in tanks of the list", "t", high=200_000),
        column("stores", "Stores, crew and effects in that condition", "t", high=20_000),
        column("lightship", "Lightship", "t", high=200_000),
        column(
            "lightship_lcg", "Lightship centre from the after perpendicular", "m", low=-50, high=400
        ),
        column("lightship_vcg", "Lightship centre above the keel", "m", high=40),
        column("roll_period", "Measured natural roll period, over and back", "s", low=1, high=60),
        column(
            "roll_loading",
            "Loading when the roll was timed",
            kind="choice",
            choices=tuple(ROLL_FACTORS),
        ),
        column("flooding", "Angle of down-flooding", "deg", high=90),
        column("wind_area", "Side area in the wind after the changes", "m²", high=20_000),
        column("wind_height", "Centre of that area above half the draught", "m", high=60),
        column("keels", "Area of both bilge keels", "m²", high=500),
        column("density", "Density of the water", "kg/m³", low=980, high=1040),
        column("booklet", "Booklet: date and by whom approved", kind="text"),
        column("inclined_on", "Date of the inclining test", kind="date"),
        column("limit_kg", "Greatest KG allowed by the booklet at the draught after", "m", high=40),
        column("limit_is", "That greatest KG is", kind="choice", choices=("fluid", "solid")),
    ),
    single=True,
    groups=(
        ("Hull", ("lpp", "lwl", "breadth", "depth", "cb", "cw", "density", "keels")),
        ("Height and free surface", ("kg", "km", "km_after", "gm", "free_surface")),
        ("Trim", ("tpc", "mctc", "lcf", "lcb")),
        (
            "Lightship, and what is loaded in that condition",
            ("lightship", "lightship_lcg", "lightship_vcg", "cargo", "stores"),
        ),
        ("Roll", ("roll_period", "roll_loading")),
        ("Wind and flooding", ("flooding", "wind_area", "wind_height")),
        ("The booklet and its limit", ("booklet", "inclined_on", "limit_kg", "limit_is")),
    ),
)
