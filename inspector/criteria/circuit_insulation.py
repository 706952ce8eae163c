"""Insulation of circuits, cables and boards, which have laxer minima than windings (insulation.py), and the tester's own voltage.

A board measured with its feeders on shows their parallel sum: twenty feeders of 20 MΩ give 1 MΩ.
"""

from collections.abc import Mapping

from inspector.criteria.exact import exact
from inspector.criteria.judgement import Criterion, Input, Judgement, refuse
from inspector.criteria.ladder import Ladder, below, beyond, stairs, to
from inspector.criteria.profiles import Limit, Profile
from inspector.criteria.source import Source
from inspector.criteria.telling import told
from inspector.quantities import show

CLASS = Source(
    "IEC 60092-401 and class practice, installed circuits, cables and boards", "edition not read", "1 MΩ to 1 kV, above it 1 MΩ for each kV plus 1", "memory"
)
REGISTER = Source(
    "A national inland register's survey annex, least insulation of electrical equipment in service",
    "as kept in a public legal database",
    "table of resistances",
    "seen",
)
TESTER = Source("IEEE 43", "2000 (2013 alike: memory)", "table 1 (DC test voltage by rated voltage)", "seen")
CLASS_PROFILE = Profile(
    "Usual minimum of a low-voltage circuit",
    (
        Limit("least", "minimum to 1 kV", "MΩ", 1.0, 0.05, 100),
        Limit("sound", "sound from so many times the minimum", "", 5.0, 1, 100),
    ),
    CLASS,
)
MAIN, MACHINE, OTHER, BOARD, CABLE = "main switchboard", "generator or main motor", "other machine", "other board", "power cable"
ITEMS = (MAIN, MACHINE, OTHER, BOARD, CABLE)
# least rated voltage -> least and most volts the tester may apply
TEST_VOLTAGES = ((0, 500, 500), (1000, 500, 1000), (2501, 1000, 2500), (5001, 2500, 5000), (12_001, 5000, 10_000))
CAUTIONS = (
    "With feeders connected the reading is the parallel sum of all: ask for feeders off before blaming the board.",
    "Testing is work for qualified persons with the plant isolated and electronics disconnected.",
)


def class_minimum(voltage: float, least: float) -> float:
    """Return the minimum [MΩ] of a circuit of this rated voltage [V]. IEC 60092-401 and class practice (memory).

    Examples
    --------
    >>> class_minimum(690, 1), class_minimum(6600, 1), class_minimum(11000, 1)
    (1, 7.6, 12.0)
    """
    return least if voltage <= 1000 else float(exact(voltage) / 1000 + 1)


def circuit_ladder(voltage: float, limits: Mapping[str, float]) -> Ladder:
    """The bands of a circuit's insulation [MΩ]."""
    minimum = class_minimum(voltage, limits["least"])
    return stairs(
        "MΩ",
        below(minimum, "below the minimum", "failed", "below the minimum"),
        to(limits["sound"] * minimum, "watch", "fair", "above the minimum and to be watched"),
        beyond("sound", "good", "sound"),
    )


def judge_circuit(resistance: float, voltage: float, limits: Mapping[str, float]) -> Judgement:
    """Judge the insulation of an installed circuit, cable or board.

    Parameters: resistance [MΩ]; voltage [V], rated; limits : least [MΩ], and sound, as a multiple of it.

    References: IEC 60092-401 and class practice (memory); sound above five times the minimum is our own split.
    """
    minimum = class_minimum(voltage, limits["least"])
    said = f"{show(resistance, 'MΩ')} on a circuit of {show(voltage, 'V')}, against {show(minimum, 'MΩ')},"
    trend = ("A fall to less than half between two dry readings at like temperature is to be watched at any figure.",)
    step = circuit_ladder(voltage, limits).step(resistance)
    return told("circuit-insulation", step, said, (resistance, "MΩ", minimum), CLASS, (*trend, *CAUTIONS), at_least=True)


def register_minimum(item: str, voltage: float) -> float:
    """Return the register's least resistance [MΩ] of an item of this rated voltage [V] in service (seen).

    Examples
    --------
    >>> register_minimum("generator or main motor", 690), register_minimum("power cable", 690), register_minimum("other board", 100)
    (0.69, 1.38, 0.06)
    """
    volts = exact(voltage)
    if item == BOARD and voltage > 500:
        refuse("register-insulation", "voltage", voltage, f"the table ends at 500 V for boards other than the main one, and this has {show(voltage, 'V')}")
    low, high = {
        MAIN: (1, 1),
        MACHINE: (0.2, volts / 1000),
        OTHER: (0.2, 0.2),
        BOARD: (0.06 if voltage <= 100 else 0.2, 0),
        CABLE: (0.2, volts / 500),
    }[item]
    return float(low if voltage <= 500 else high)


def register_ladder(item: str, voltage: float) -> Ladder:
    """The bands of the insulation [MΩ] of an item in service, by one register (seen)."""
    return stairs(
        "MΩ",
        below(register_minimum(item, voltage), "below the minimum", "failed", "below the least in service"),
        beyond("at or above the minimum", "good", "at or above the least in service"),
    )


def judge_register(resistance: float, item: str, voltage: float) -> Judgement:
    """Judge the insulation of equipment in service by one register's table, far laxer than the one for windings.

    Parameters: resistance [MΩ]; item : one of ITEMS (the main switchboard with consumers off); voltage [V], rated.

    References: a national inland register's survey annex (seen).
    """
    minimum = register_minimum(item, voltage)
    said = f"{show(resistance, 'MΩ')} on a {item} of {show(voltage, 'V')}, against {show(minimum, 'MΩ')} by one register's table,"
    notes = ("This is the least one register tolerates in service, not the mark of a sound plant; a winding is judged at 40 °C elsewhere.", *CAUTIONS)
    return told("register-insulation", register_ladder(item, voltage).step(resistance), said, (resistance, "MΩ", minimum), REGISTER, notes, at_least=True)


def applied_ladder(rated: float) -> Ladder:
    """The bands of the voltage [V] that a tester applies. IEEE 43-2000, table 1 (seen)."""
    low, high = next((low, high) for least, low, high in reversed(TEST_VOLTAGES) if rated >= least)
    return stairs(
        "V",
        below(low, "under the table", None, "under the table's, so the reading flatters"),
        to(high, "as the table asks", None, "as the table asks"),
        beyond("over the table", None, "over the table's: the reading stands, but nobody should repeat it on an old winding"),
    )


def judge_tester(applied: float, rated: float) -> Judgement:
    """Judge whether an insulation test was made at the table's voltage; this says nothing of the machine's condition.

    Parameters: applied [V], DC; rated [V], line to line, 24 to 15 000.

    References: IEEE 43-2000, table 1 (seen in a trade association's paper).
    """
    ladder = applied_ladder(rated)
    under = applied < ladder.steps[0].upto
    said = f"{show(applied, 'V')} DC applied to a winding rated {show(rated, 'V')} is a test voltage that"
    step = ladder.step(applied)
    return told("insulation-test-voltage", step, said, (applied, "V", ladder.steps[0 if under else 1].upto), TESTER, CAUTIONS[1:], at_least=under)


def _ohms(label: str) -> Input:
    return Input("resistance", label, "number", "MΩ", low=0, high=1_000_000)


def _volts(name: str = "voltage", high: float = 15_000) -> Input:
    return Input(name, "Rated voltage", "number", "V", low=12, high=high)


CRITERIA = (
    Criterion(
        "circuit-insulation",
        "Insulation of a circuit, cable or board",
        (_ohms("Insulation resistance"), _volts()),
        CLASS,
        judge_circuit,
        "Installed circuits, cables and boards rated 12 V to 15 kV, electronics disconnected.",
        "Minima of three voltages by our own arithmetic on the recalled rule, each band from both sides.",
        profile=CLASS_PROFILE,
        ladder=circuit_ladder,
    ),
    Criterion(
        "register-insulation",
        "Insulation in service by one register's table",
        (_ohms("Insulation resistance"), Input("item", "What was measured", "choice", choices=ITEMS), _volts()),
        REGISTER,
        judge_register,
        "Equipment rated 12 V to 15 kV in service; boards other than the main one to 500 V.",
        "Each row of the table from both sides, two formulas by our own arithmetic.",
        ladder=register_ladder,
    ),
    Criterion(
        "insulation-test-voltage",
        "Voltage applied in an insulation test",
        (Input("applied", "Voltage applied, DC", "number", "V", low=0, high=20_000), Input("rated", "Rated voltage", "number", "V", low=24, high=15_000)),
        TESTER,
        judge_tester,
        "Windings rated 24 V to 15 kV.",
        "Each row of the published table from both sides.",
        ladder=applied_ladder,
    ),
)
