"""The tables of particulars of the power plant: sets, engines, ties, loads, transformers, thrusters, needs, wind and current, and the main board."""

from inspector.conversion.load_balance import CONDITIONS
from inspector.conversion.plant import ACTS, KINDS
from inspector.conversion.tables import Column, Table

YES_NO = ("no", "yes")
FIELDS = {condition: condition.replace(" ", "_") for condition in CONDITIONS}


def _name(label: str = "Name") -> Column:
    return Column("name", label, kind="text", needed=True)


def _yes(name: str, label: str) -> Column:
    return Column(name, label, kind="choice", choices=YES_NO)


GENERATORS = Table(
    "plant_generators",
    "Generating sets",
    "From the plates: one row per set, the harbour and emergency sets too.",
    (
        _name(),
        Column("bus", "Bus it feeds, as named on the board", kind="text", needed=True),
        Column("rated", "Rated power", "kW", low=0.1, high=100_000, needed=True),
        Column("power_factor", "Power factor on the plate", low=0.1, high=1),
        _yes("emergency", "Emergency set"),
        _yes("out", "Out of order"),
    ),
)
ENGINES = Table(
    "plant_engines",
    "Engines that drive by shaft",
    "Main engines that turn a propeller or thruster; a shaft generator is a set that needs its engine.",
    (
        _name(),
        Column("rated", "Rated power", "kW", low=0.1, high=100_000, needed=True),
        _yes("out", "Out of order"),
    ),
)
TIES = Table(
    "plant_ties",
    "Ties between buses",
    "One row per tie breaker, in the state it has while keeping station.",
    (
        _name(),
        Column("one", "Joins bus", kind="text", needed=True),
        Column("other", "and bus", kind="text", needed=True),
        Column("normally", "Normally", kind="choice", choices=("open", "closed"), needed=True),
        _yes("proven", "Proven by trial to part on a fault"),
    ),
)
LOADS = Table(
    "plant_loads",
    "Electrical loads",
    "From the load balance or a meter, without thrusters while keeping station: those follow from the wind. Type 0 where a load does not run.",
    (
        _name(),
        Column("bus", "Bus", kind="text"),
        Column("kind", "Kind", kind="choice", choices=("existing", "new")),
        *(Column(FIELDS[condition], f"Takes, {condition}", "kW", high=100_000) for condition in CONDITIONS),
        Column("connected", "Connected power, where no demand is known", "kW", high=100_000),
        Column("factor", "Load factor (0 to 1)", high=1),
        Column("simultaneity", "Simultaneity (0 to 1)", high=1),
        Column("runs", "Runs", kind="choice", choices=("steadily", "by turns")),
        Column("essential", "Must stay on", kind="choice", choices=("yes", "no")),
    ),
)
TRANSFORMERS = Table(
    "plant_transformers",
    "Transformers",
    "From the plates, with the load on a busy evening.",
    (
        _name(),
        Column("bus", "Bus", kind="text"),
        Column("rating", "Rating", "kVA", low=0.1, high=20_000, needed=True),
        Column("load", "Load", "kVA", high=20_000),
        Column("current", "or current", "A", high=50_000),
        Column("voltage", "at voltage, line to line", "V", low=12, high=15_000),
    ),
)
THRUSTERS = Table(
    "plant_thrusters",
    "Thrusters and propellers",
    'One row each, fed by a bus or an engine of the tables above; several with "or" where it can be changed over.',
    (
        _name(),
        Column("kind", "Kind", kind="choice", choices=KINDS, needed=True),
        Column("feed", "Fed by", kind="text", needed=True),
        Column("rated", "Rated power at the shaft", "kW", low=0.1, high=100_000, needed=True),
        Column("thrust", "Full thrust, if measured", "kN", low=0.1, high=5000),
        Column("side", "Side thrust of propeller with rudder, if known", "kN", low=0.1, high=5000),
        Column("diameter", "Diameter", "m", low=0.3, high=8),
        Column("x", "Forward of midship (aft: minus)", "m", low=-200, high=200, needed=True),
        Column("acts", "Acts", kind="choice", choices=ACTS, needed=True),
        Column("control", 'Controlled from (several with "or")', kind="text"),
        _yes("out", "Out of order"),
    ),
)
NEEDS = Table(
    "plant_needs",
    "What else hangs on what",
    'Shared needs: a day tank, a cooling pump, a 24 V board, a room. Several with "or" where any one will do.',
    (
        Column("element", "Element", kind="text", needed=True),
        Column("on", "needs", kind="text", needed=True),
    ),
)
EXPOSURE = Table(
    "plant_exposure",
    "Wind and current",
    "For a static balance only; what stays empty takes a listed default or stays a gap.",
    (
        Column("length", "Length at the waterline", "m", low=5, high=400),
        Column("breadth", "Breadth", "m", low=2, high=80),
        Column("draught", "Draught", "m", low=0.5, high=30),
        Column("lateral", "Side area in the wind", "m²", low=1, high=20_000),
        Column("frontal", "Frontal area in the wind", "m²", low=1, high=5000),
        Column("x_wind", "Centre of side wind area, forward of midship", "m", low=-200, high=200),
        Column("x_current", "Centre of side area under water, forward of midship", "m", low=-200, high=200),
        Column("wind", "Wind to be held", "m/s", high=100),
        Column("current", "Current", "kn", high=12),
        Column("wind_beam", "Wind coefficient, beam", low=0.01, high=3),
        Column("wind_head", "Wind coefficient, head", low=0.01, high=3),
        Column("current_beam", "Current coefficient, beam", low=0.01, high=3),
        Column("current_head", "Current coefficient, head", low=0.01, high=3),
        Column("waves", "Factor for waves (1.25 adds a quarter)", low=1, high=2),
        Column("efficiency", "Efficiency of electric drives (0.5 to 1)", low=0.5, high=1),
        Column("limit", "Most load of sets and engines (0.3 to 1)", low=0.3, high=1),
    ),
    single=True,
)
BOARD = Table(
    "plant_board",
    "Main board and shore connection",
    "From the board and the shore box.",
    (
        Column("voltage", "Ship's voltage", "V", low=12, high=15_000),
        Column("frequency", "Ship's frequency", "Hz", low=40, high=70),
        Column("power_factor", "Power factor of the load, as read", low=0.1, high=1),
        Column("shore_current", "Shore breaker", "A", high=10_000),
        Column("shore_voltage", "Shore voltage", "V", low=12, high=15_000),
        Column("shore_frequency", "Shore frequency", "Hz", low=40, high=70),
    ),
    single=True,
)
TABLES = (GENERATORS, ENGINES, TIES, LOADS, TRANSFORMERS, THRUSTERS, NEEDS, EXPOSURE, BOARD)
