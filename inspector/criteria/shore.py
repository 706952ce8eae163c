"""A shore supply against the network on board: phase sequence and voltage for each hertz, which is what motors and transformers feel."""

from collections.abc import Mapping

from inspector.criteria.exact import exact
from inspector.criteria.judgement import Criterion, Input, Judgement
from inspector.criteria.ladder import Ladder, below, beyond, stairs, to
from inspector.criteria.profiles import Limit, Profile
from inspector.criteria.source import Source
from inspector.criteria.telling import told
from inspector.quantities import show

SOURCE = Source("Shore supply and the flux of machines on board", "no publisher", "voltage for each hertz, 90 to 106 % of the vessel's own", "common practice")
PROFILE = Profile(
    "Usual band of voltage for each hertz",
    (
        Limit("low", "at least", "%", 90.0, 50, 100),
        Limit("high", "at most", "%", 106.0, 100, 130),
    ),
    SOURCE,
)
SEQUENCES = ("as on board", "reversed")


def flux(voltage: float, frequency: float, ship_voltage: float, ship_frequency: float) -> float:
    """Return the shore's voltage for each hertz in % of the vessel's own.

    Examples
    --------
    >>> round(flux(400, 50, 440, 60), 1), flux(400, 50, 480, 60), flux(380, 50, 480, 60)
    (109.1, 100.0, 95.0)
    """
    v, f, own_v, own_f = (exact(value) for value in (voltage, frequency, ship_voltage, ship_frequency))
    return float(100 * v * own_f / (f * own_v))


def shore_ladder(frequency: float, ship_voltage: float, ship_frequency: float, sequence: str, limits: Mapping[str, float]) -> Ladder:
    """The bands of the shore's voltage [V] at its frequency beside the vessel's own network."""
    if sequence == "reversed":
        return stairs("V", beyond("phases reversed", "failed", "of reversed phase sequence: every motor would turn backwards"))
    per_cent = exact(ship_voltage) * exact(frequency) / (100 * exact(ship_frequency))
    low, high = (float(per_cent * exact(limits[name])) for name in ("low", "high"))
    return stairs(
        "V",
        below(low, "under-fluxed", "poor", "too low for the machines on board, which draw more current"),
        to(high, "suits the machines", "good", "what the machines on board can take"),
        beyond("over-fluxed", "poor", "too high for the machines on board, which saturate and run hot"),
    )


def judge_shore(voltage: float, frequency: float, ship_voltage: float, ship_frequency: float, sequence: str, limits: Mapping[str, float]) -> Judgement:
    """Judge a shore supply before it is connected.

    Parameters: voltage [V] and frequency [Hz] of the shore; ship_voltage [V], ship_frequency [Hz]; sequence : as on board or reversed;
    limits : low and high [%] of the vessel's own voltage for each hertz.

    References: common practice; the ratio is plain arithmetic.
    """
    found = flux(voltage, frequency, ship_voltage, ship_frequency)
    step = shore_ladder(frequency, ship_voltage, ship_frequency, sequence, limits).step(voltage)
    said = (
        f"A shore supply of {show(voltage, 'V')} at {show(frequency, 'Hz')}, which is {show(found, '%')} of the volts for each hertz of "
        f"{show(ship_voltage, 'V')} at {show(ship_frequency, 'Hz')},"
    )
    speed = (f"At {show(frequency, 'Hz')} motors built for {show(ship_frequency, 'Hz')} turn at {show(100 * frequency / ship_frequency, '%')} of their speed.",)
    notes = (*(speed if frequency != ship_frequency else ()), "Connection, earth bond and rotation are proved by qualified persons, not by the visitor.")
    low = found < 100
    return told("shore-supply", step, said, (found, "%", limits["low" if low else "high"]), SOURCE, notes, at_least=low)


CRITERIA = (
    Criterion(
        "shore-supply",
        "Shore supply against the network on board",
        (
            Input("voltage", "Shore voltage, line to line", "number", "V", low=0, high=20_000),
            Input("frequency", "Shore frequency", "number", "Hz", low=45, high=65),
            Input("ship_voltage", "Voltage of the network on board", "number", "V", low=100, high=15_000),
            Input("ship_frequency", "Frequency of the network on board", "number", "Hz", low=45, high=65),
            Input("sequence", "Phase sequence", "choice", choices=SEQUENCES),
        ),
        SOURCE,
        judge_shore,
        "Three-phase AC of 45 to 65 Hz, ship's network 100 V to 15 kV.",
        "Four pairs of networks by our own arithmetic, both limits from both sides.",
        profile=PROFILE,
        ladder=shore_ladder,
    ),
)
