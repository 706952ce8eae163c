"""Who is aboard, and what a naval architect needs for subdivision and damage stability."""

from inspector.conversion.core.particulars import Table, column

ABOARD = Table(
    "aboard",
    "Who is aboard",
    "Of the persons in the brief: crew, people with a task of the ship's special purpose, and "
    "passengers. Guests are passengers; the flag decides in doubt.",
    (
        column("crew", "Crew", kind="whole", high=1000),
        column("special", "Special personnel", kind="whole", high=1000),
        column("passengers", "Passengers", kind="whole", high=1000),
        column("use", "Use", kind="choice", choices=("private", "commercial")),
        column("length", "Length L by the load line certificate", "m", low=5, high=400),
    ),
    single=True,
)
COMPARTMENTS = Table(
    "compartments",
    "Watertight compartments",
    "Each space between two watertight bulkheads, from the general arrangement or the damage "
    "control plan. Collected for the naval architect: damage stability is not calculated here.",
    (
        column("name", "Compartment", kind="text", needed=True),
        column("after", "After bulkhead, from the after perpendicular", "m", low=-20, high=400),
        column("forward", "Forward bulkhead, from the after perpendicular", "m", low=-20, high=400),
        column("deck", "Deck to which the bulkheads reach", kind="text"),
        column("contents", "What is in it", kind="text"),
        column(
            "proof",
            "Watertight by",
            kind="choice",
            choices=("approved drawing", "seen aboard", "reported"),
        ),
    ),
)
OPENINGS = Table(
    "openings",
    "Openings through which she could flood",
    "Doors, hatches, air pipes, vents, side windows and pipes through bulkheads, the lowest "
    "first. Collected for the naval architect.",
    (
        column("name", "Opening", kind="text", needed=True),
        column(
            "kind",
            "Kind",
            kind="choice",
            choices=("door", "hatch", "vent", "air pipe", "window", "pipe or cable", "other"),
        ),
        column("lcg", "From the after perpendicular", "m", low=-20, high=400),
        column("tcg", "Off the centreline", "m", low=-50, high=50),
        column("height", "Lower edge above the keel", "m", high=60),
        column(
            "closing",
            "Closed by",
            kind="choice",
            choices=("watertight", "weathertight", "nothing", "not known"),
        ),
    ),
)
CUTS = Table(
    "cuts",
    "What the conversion cuts",
    "Every hole and every removal in a watertight bulkhead, deck or shell: doors, windows, ducts, "
    "tank tops, shell doors.",
    (
        column("name", "Cut", kind="text", needed=True),
        column(
            "through",
            "Through",
            kind="choice",
            choices=("bulkhead", "deck", "shell", "tank boundary", "superstructure"),
        ),
        column("at", "From the after perpendicular", "m", low=-20, high=400),
        column("height", "Lower edge above the keel", "m", high=60),
        column(
            "made_good",
            "Made good by",
            kind="choice",
            choices=("watertight closing", "weathertight closing", "new bulkhead", "not planned"),
        ),
    ),
)
TABLES = (ABOARD, COMPARTMENTS, OPENINGS, CUTS)
