"""The table of what a loading condition needs beside tanks, weights and booklet."""

from inspector.conversion.core.particulars import Table, column

LOADING = Table(
    "loading",
    "Loading after the conversion",
    "What the loading conditions need beside tanks, things and booklet. Stores of a departure, and "
    "for a ship with passengers how far they can crowd to one side.",
    (
        column("stores", "Stores and effects at departure, not among the things", "t", high=20_000),
        column("stores_lcg", "Their centre from the after perpendicular", "m", low=-50, high=400),
        column("stores_vcg", "Their centre above the keel", "m", high=60),
        column("passengers", "Passengers, of the persons aboard", kind="whole", high=2000),
        column("persons_lcg", "Persons: centre from the after perpendicular", "m", high=400),
        column("persons_vcg", "Persons: centre above the keel", "m", high=60),
        column(
            "crowd", "How far to one side passengers can stand, from the centreline", "m", high=40
        ),
        column("service_speed", "Speed at which she is turned", "kn", low=1, high=60),
    ),
    single=True,
)
