"""The tables of particulars of the power plant, from generating sets to the shore connection."""

from inspector.conversion.core.engine_rows import ENGINES as ALL_ENGINES
from inspector.conversion.core.particulars import Table, column
from inspector.conversion.power.electrical_loads import CONDITIONS
from inspector.conversion.power.plant_elements import ACTS, KINDS
from inspector.values.field import Field

YES_NO = ("no", "yes")
TIE_STATES = ("open", "closed")
# Condition -> the column that keeps its demand.
DEMAND_COLUMNS = {condition: condition.replace(" ", "_") for condition in CONDITIONS}
# Condition -> the column that keeps the state of a tie, where it is not as while keeping station.
TIE_COLUMNS = {
    condition: f"at_{name}"
    for condition, name in DEMAND_COLUMNS.items()
    if name != "station_keeping"
}


def _name() -> Field:
    return column("name", "Name", kind="text", needed=True)


def _yes_no(name: str, label: str) -> Field:
    return column(name, label, kind="choice", choices=YES_NO)


GENERATORS = Table(
    "plant_generators",
    "Generating sets",
    "As typed before; each set is typed once now, among engines and generating sets.",
    (
        _name(),
        column("bus", "Bus it feeds, as named on the board", kind="text", needed=True),
        column("rated", "Rated power", "kW", low=0.1, high=100_000, needed=True),
        column("power_factor", "Power factor on the plate", low=0.1, high=1),
        _yes_no("emergency", "Emergency set"),
        _yes_no("out", "Out of order"),
    ),
    superseded_by=ALL_ENGINES.id,
)
ENGINES = Table(
    "plant_engines",
    "Engines that drive by shaft",
    "As typed before; each engine is typed once now, among engines and generating sets.",
    (
        _name(),
        column("rated", "Rated power", "kW", low=0.1, high=100_000, needed=True),
        _yes_no("out", "Out of order"),
    ),
    superseded_by=ALL_ENGINES.id,
)
TIES = Table(
    "plant_ties",
    "Ties between buses",
    "One row per tie breaker. Its state decides which sets carry which loads: type it for each "
    "way of running in which it is not as while keeping station.",
    (
        _name(),
        column("one", "Joins bus", kind="text", needed=True),
        column("other", "and bus", kind="text", needed=True),
        column("normally", "Keeping station", kind="choice", choices=TIE_STATES, needed=True),
        *(
            column(name, f"In {condition}", kind="choice", choices=TIE_STATES)
            for condition, name in TIE_COLUMNS.items()
        ),
        _yes_no("proven", "Proven by trial to part on a fault"),
    ),
)
# Thrusters are no loads while keeping station: what they take there follows from the wind, and
# would count twice.
LOADS = Table(
    "plant_loads",
    "Electrical loads",
    "From the load balance or a meter, without thrusters while keeping station: those follow from "
    "the wind. Type 0 where a load does not run.",
    (
        _name(),
        column("bus", "Bus", kind="text"),
        column("kind", "Kind", kind="choice", choices=("existing", "new")),
        *(
            column(name, f"Takes, {condition}", "kW", high=100_000)
            for condition, name in DEMAND_COLUMNS.items()
        ),
        column("connected", "Connected power, where no demand is known", "kW", high=100_000),
        column("factor", "Load factor (0 to 1)", high=1),
        column("simultaneity", "Simultaneity (0 to 1)", high=1),
        column("runs", "Runs", kind="choice", choices=("steadily", "by turns")),
        column("essential", "Must stay on", kind="choice", choices=("yes", "no")),
    ),
)
TRANSFORMERS = Table(
    "plant_transformers",
    "Transformers",
    "From the plates, with the load on a busy evening.",
    (
        _name(),
        column("bus", "Bus", kind="text"),
        column("rating", "Rating", "kVA", low=0.1, high=20_000, needed=True),
        column("load", "Load", "kVA", high=20_000),
        column("current", "or current", "A", high=50_000),
        column("voltage", "at voltage, line to line", "V", low=12, high=15_000),
    ),
)
THRUSTERS = Table(
    "plant_thrusters",
    "Thrusters and propellers",
    'One row each, fed by a bus or an engine of the tables above; several with "or" where it '
    "can be changed over.",
    (
        _name(),
        column("kind", "Kind", kind="choice", choices=KINDS, needed=True),
        column("feed", "Fed by", kind="text", needed=True),
        column("rated", "Rated power at the shaft", "kW", low=0.1, high=100_000, needed=True),
        column("thrust", "Full thrust, if measured", "kN", low=0.1, high=5000),
        column(
            "side", "Side thrust of propeller with rudder at full ahead", "kN", low=0.1, high=5000
        ),
        column("diameter", "Diameter", "m", low=0.3, high=8),
        column("x", "Forward of midship (aft: minus)", "m", low=-200, high=200, needed=True),
        column("y", "Off the centreline (starboard: plus)", "m", low=-40, high=40),
        column("astern", "Full thrust astern of a propeller, if known", "kN", low=0.1, high=5000),
        column("acts", "Acts", kind="choice", choices=ACTS, needed=True),
        column("control", 'Controlled from (several with "or")', kind="text"),
        _yes_no("out", "Out of order"),
    ),
)
DEPENDENCIES = Table(
    "plant_needs",
    "What else depends on what",
    'Shared dependencies: a day tank, a cooling pump, a 24 V board, a room. Several with "or" '
    "where any of them is enough.",
    (
        column("element", "Element", kind="text", needed=True),
        column("on", "needs", kind="text", needed=True),
    ),
)
EXPOSURE = Table(
    "plant_exposure",
    "Wind and current",
    "For a static balance only; what stays empty takes a listed default or stays a gap.",
    (
        column("length", "Length at the waterline", "m", low=5, high=400),
        column("breadth", "Breadth", "m", low=2, high=80),
        column("draught", "Draught", "m", low=0.5, high=30),
        column("lateral", "Side area in the wind", "m²", low=1, high=20_000),
        column("frontal", "Frontal area in the wind", "m²", low=1, high=5000),
        column("x_wind", "Centre of side wind area, forward of midship", "m", low=-200, high=200),
        column(
            "x_current",
            "Centre of side area under water, forward of midship",
            "m",
            low=-200,
            high=200,
        ),
        _yes_no("with_house", "These areas include the house to be built"),
        column("x_house", "Centre of that house, forward of midship", "m", low=-200, high=200),
        # In m/s as on certificates and in capability plots, although a master speaks of knots.
        column("wind", "Wind to be withstood", "m/s", high=100),
        column("current", "Current", "kn", high=12),
        column("wind_beam", "Wind coefficient, beam", low=0.01, high=3),
        column("wind_head", "Wind coefficient, head", low=0.01, high=3),
        column("current_beam", "Current coefficient, beam", low=0.01, high=3),
        column("current_head", "Current coefficient, head", low=0.01, high=3),
        column("waves", "Factor for waves (1.25 adds a quarter)", low=1, high=2),
        column("efficiency", "Efficiency of electric drives (0.5 to 1)", low=0.5, high=1),
        column("limit", "Most load of sets and engines (0.3 to 1)", low=0.3, high=1),
    ),
    single=True,
)
BOARD = Table(
    "plant_board",
    "Main board and shore connection",
    "From the board and the shore box.",
    (
        column("voltage", "Ship's voltage", "V", low=12, high=15_000),
        column("frequency", "Ship's frequency", "Hz", low=40, high=70),
        column("power_factor", "Power factor of the load, as read", low=0.1, high=1),
        column("shore_current", "Shore breaker", "A", high=10_000),
        column("shore_voltage", "Shore voltage", "V", low=12, high=15_000),
        column("shore_frequency", "Shore frequency", "Hz", low=40, high=70),
    ),
    single=True,
)
TABLES = (
    GENERATORS,
    ENGINES,
    TIES,
    LOADS,
    TRANSFORMERS,
    THRUSTERS,
    DEPENDENCIES,
    EXPOSURE,
    BOARD,
)
