"""Temperatures that a switchboard may reach by its own standard, and surfaces of machinery that oil must not meet."""

from inspector.criteria.judgement import Criterion, Input, Judgement
from inspector.criteria.ladder import Ladder, beyond, stairs, to
from inspector.criteria.source import Source
from inspector.criteria.telling import told
from inspector.quantities import difference, show

TERMINALS = Source(
    "IEC 61439-1, low-voltage switchgear and controlgear assemblies",
    "as quoted in an engineering institution's forum",
    "table 6, terminals for external conductors, 70 K",
    "seen",
)
TOUCHED = Source("IEC 61439-1, low-voltage switchgear and controlgear assemblies", "edition not read", "table 6, manual operating means and covers", "memory")
SURFACES = Source("SOLAS II-2/4.2.2.6, arrangements for oil fuel, protection of hot surfaces", "consolidated text", "220 °C", "memory")
MOST_RISE = 70.0  # K
TOUCH_RISE = {"metal handle": 15.0, "insulating handle": 25.0, "metal cover": 30.0, "insulating cover": 40.0}  # K
MOST_SURFACE = 220.0  # °C
PART_LOAD = (
    "The rise stands for full load: under part load expect more, so read the current too.",
    "A design figure of a type test at a mean of 35 °C; class may ask less where machinery spaces reach 45 °C.",
    "Covers are opened by qualified persons only.",
)


def _rise_ladder(ambient: float, most: float) -> Ladder:
    return stairs("°C", to(difference(ambient, -most), "within the limit", "good", "within it"), beyond("over the limit", "poor", "over it"))


def _judge(name: str, part: str, temperature: float, ambient: float, most: float, source: Source) -> Judgement:
    rise = difference(temperature, ambient)
    said = f"A {part} at {show(temperature, '°C')} in air of {show(ambient, '°C')}, a rise of {show(rise, 'K')} against {show(most, 'K')},"
    return told(name, _rise_ladder(ambient, most).step(temperature), said, (rise, "K", most), source, PART_LOAD)


def terminal_ladder(ambient: float) -> Ladder:
    """The bands of a terminal's temperature [°C] in air of so many [°C]. IEC 61439-1, table 6 (seen)."""
    return _rise_ladder(ambient, MOST_RISE)


def judge_terminal(temperature: float, ambient: float) -> Judgement:
    """Judge the temperature of a terminal for an external cable.

    Parameters: temperature, ambient [°C], the air at the panel. A rise of 70 K; poor above, since it is a design figure.

    References: IEC 61439-1, table 6 (seen in a forum that quotes it).
    """
    return _judge("terminal-temperature", "terminal", temperature, ambient, MOST_RISE, TERMINALS)


def touch_ladder(ambient: float, part: str) -> Ladder:
    """The bands of a touched part's temperature [°C]. IEC 61439-1, table 6 (memory)."""
    return _rise_ladder(ambient, TOUCH_RISE[part])


def judge_touch(temperature: float, ambient: float, part: str) -> Judgement:
    """Judge the temperature of a part of a closed board that hands touch.

    Parameters: temperature, ambient [°C], the air at the panel; part : one of TOUCH_RISE.

    References: IEC 61439-1, table 6 (memory).
    """
    return _judge("touch-temperature", part, temperature, ambient, TOUCH_RISE[part], TOUCHED)


def surface_ladder() -> Ladder:
    """The bands of a surface's temperature [°C] where oil could reach it. SOLAS II-2/4.2.2.6 (memory)."""
    return stairs(
        "°C",
        to(MOST_SURFACE, "below the limit", "good", "not above it"),
        beyond("hot and bare", "failed", "above it: to be insulated where oil could reach it"),
    )


def judge_surface(temperature: float) -> Judgement:
    """Judge the hottest surface of machinery that leaking oil could reach.

    Parameters: temperature [°C], by infrared thermometer from a distance, on a running machine.

    References: SOLAS II-2/4.2.2.6, 220 °C (memory).
    """
    said = f"A surface of {show(temperature, '°C')}, against {show(MOST_SURFACE, '°C')},"
    notes = ("Look for lagging that is missing, oil-soaked or open at the joints; bare shiny metal reads cold.", "Nobody touches what may be hot.")
    return told("hot-surface", surface_ladder().step(temperature), said, (temperature, "°C", MOST_SURFACE), SURFACES, notes)


def _temperature(label: str, high: float = 400) -> Input:
    return Input("temperature", label, "number", "°C", low=-20, high=high)


_AIR = Input("ambient", "Air at the panel", "number", "°C", low=-20, high=60)
CRITERIA = (
    Criterion(
        "terminal-temperature",
        "Temperature of a terminal for an external cable",
        (_temperature("Temperature of the terminal"), _AIR),
        TERMINALS,
        judge_terminal,
        "Low-voltage boards in air of −20 to 60 °C.",
        "The published 70 K from both sides, three terminals by our own arithmetic.",
        ladder=terminal_ladder,
    ),
    Criterion(
        "touch-temperature",
        "Temperature of a part that hands touch",
        (_temperature("Temperature of the part"), _AIR, Input("part", "Which part", "choice", choices=tuple(TOUCH_RISE))),
        TOUCHED,
        judge_touch,
        "Closed low-voltage boards in air of −20 to 60 °C.",
        "Each recalled rise from both sides.",
        ladder=touch_ladder,
    ),
    Criterion(
        "hot-surface",
        "Hot surface that oil could reach",
        (_temperature("Hottest surface", 900),),
        SURFACES,
        judge_surface,
        "Machinery surfaces of −20 to 900 °C within reach of oil.",
        "The recalled limit from both sides.",
        ladder=surface_ladder,
    ),
)
