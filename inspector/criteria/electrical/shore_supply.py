"""A shore supply against the network on board: phase sequence, and voltage for each hertz.

Motors and transformers are stressed by the voltage for each hertz, not by the voltage alone.
"""

from collections.abc import Mapping

from inspector.criteria.core.band_judgement import judge_by_band
from inspector.criteria.core.bands import Bands, bands_of, below, beyond, to
from inspector.criteria.core.criterion import Criterion
from inspector.criteria.core.decimals import exact
from inspector.criteria.core.judgement import Judgement
from inspector.criteria.core.limit_sets import LimitSet, settable_limit
from inspector.criteria.core.source import Source
from inspector.values.field import Field, number_field
from inspector.values.formatting import show

SOURCE = Source.common_practice(
    "Shore supply and the flux of machines on board",
    "voltage for each hertz, 90 to 106 % of the vessel's own",
)
PROFILE = LimitSet(
    "Usual band of voltage for each hertz",
    (
        settable_limit("low", "at least", "%", 90.0, 50, 100),
        settable_limit("high", "at most", "%", 106.0, 100, 130),
    ),
    SOURCE,
)
# permanent variation of frequency that machines on board are built for, IACS UR E5 (memory) [%]
FREQUENCY_SHARE = 5
SEQUENCES = ("as on board", "reversed")


def flux(voltage: float, frequency: float, ship_voltage: float, ship_frequency: float) -> float:
    """Return the shore's voltage for each hertz in % of the vessel's own.

    Parameters
    ----------
    voltage : float
        Shore voltage, line to line [V].
    frequency : float
        Shore frequency [Hz].
    ship_voltage : float
        Voltage of the network on board [V].
    ship_frequency : float
        Frequency of the network on board [Hz].

    Returns
    -------
    float
        Share of the vessel's own [%].

    Examples
    --------
    >>> round(flux(400, 50, 440, 60), 1), flux(400, 50, 480, 60), flux(380, 50, 480, 60)
    (109.1, 100.0, 95.0)
    """
    v, f, own_v, own_f = (
        exact(value) for value in (voltage, frequency, ship_voltage, ship_frequency)
    )
    # Volts for each hertz, as a share of the vessel's own.
    return float(100 * v * own_f / (f * own_v))


def _shore_bands(
    frequency: float,
    ship_voltage: float,
    ship_frequency: float,
    sequence: str,
    limits: Mapping[str, float],
) -> Bands:
    """Return the bands of the voltage [V] of the shore at its frequency."""
    # Before any voltage is looked at: it fails at every voltage.
    if sequence == "reversed":
        return bands_of(
            "V",
            beyond(
                "phases reversed",
                "failed",
                "of reversed phase sequence: every motor would turn backwards",
            ),
        )
    # the flux of a machine follows volts for each hertz, so that the band moves with frequency
    per_cent = exact(ship_voltage) * exact(frequency) / (100 * exact(ship_frequency))
    low, high = (float(per_cent * exact(limits[name])) for name in ("low", "high"))
    return bands_of(
        "V",
        below(
            low,
            "under-fluxed",
            "poor",
            "too low for the machines on board, which draw more current",
        ),
        to(high, *_at_frequency(frequency, ship_frequency)),
        beyond(
            "over-fluxed", "poor", "too high for the machines on board, which saturate and run hot"
        ),
    )


def _at_frequency(frequency: float, ship_frequency: float) -> tuple[str, str, str]:
    """Return band, rating and meaning of a supply with the right volts for each hertz."""
    share = 100 * exact(frequency) / exact(ship_frequency)
    # With the right volts for each hertz, slow machines run cool; fast ones take more power.
    if share < 100 - FREQUENCY_SHARE:
        meaning = "tolerable for the machines on board, whose pumps and fans run slow"
        return "slow machines", "fair", meaning
    if share > 100 + FREQUENCY_SHARE:
        meaning = "too fast for the machines on board: pumps and fans overload their motors"
        return "fast machines", "poor", meaning
    return "suits the machines", "good", "what the machines on board can take"


def _notes_of_speed(frequency: float, ship_frequency: float) -> tuple[str, ...]:
    """Return what another frequency means for speed, flow, head and power."""
    if frequency == ship_frequency:
        return ()
    speed = frequency / ship_frequency
    flow, head, power = (show(100 * speed**exponent, "%") for exponent in (1, 2, 3))
    note = (
        f"At {show(frequency, 'Hz')} motors built for {show(ship_frequency, 'Hz')} turn at {flow} "
        f"of their speed: a centrifugal pump gives {flow} of its flow and {head} of its head, for "
        f"{power} of its power."
    )
    return (note,)


def judge_shore(
    voltage: float,
    frequency: float,
    ship_voltage: float,
    ship_frequency: float,
    sequence: str,
    limits: Mapping[str, float],
) -> Judgement:
    """Judge a shore supply before it is connected.

    Parameters
    ----------
    voltage : float
        Shore voltage, line to line [V].
    frequency : float
        Shore frequency [Hz].
    ship_voltage : float
        Voltage of the network on board [V].
    ship_frequency : float
        Frequency of the network on board [Hz].
    sequence : str
        Phase sequence: as on board or reversed.
    limits : mapping of str to float
        The limits of ``PROFILE``.

    Returns
    -------
    Judgement

    References
    ----------
    Common practice; the ratio is plain arithmetic. 5 % of frequency: IACS UR E5 (from memory);
    flow, head and power with the speed, its square and its cube: affinity laws of pumps.
    """
    ratio = flux(voltage, frequency, ship_voltage, ship_frequency)
    band = _shore_bands(frequency, ship_voltage, ship_frequency, sequence, limits).band_of(voltage)
    subject = (
        f"A shore supply of {show(voltage, 'V')} at {show(frequency, 'Hz')}, which "
        f"is {show(ratio, '%')} of the volts for each hertz of "
        f"{show(ship_voltage, 'V')} at {show(ship_frequency, 'Hz')},"
    )
    notes = (
        *_notes_of_speed(frequency, ship_frequency),
        "Connection, earth bond and rotation are proved by qualified persons, not by the visitor.",
    )
    low = ratio < 100
    return judge_by_band(
        band, subject, (ratio, "%", limits["low" if low else "high"]), notes, at_least=low
    )


CRITERIA = (
    Criterion(
        "shore-supply",
        "Shore supply against the network on board",
        (
            number_field("voltage", "Shore voltage, line to line", "V", 0, 20_000),
            number_field("frequency", "Shore frequency", "Hz", 45, 65),
            number_field("ship_voltage", "Voltage of the network on board", "V", 100, 15_000),
            number_field("ship_frequency", "Frequency of the network on board", "Hz", 45, 65),
            Field("sequence", "Phase sequence", "choice", choices=SEQUENCES),
        ),
        SOURCE,
        judge_shore,
        "Three-phase AC of 45 to 65 Hz, ship's network 100 V to 15 kV.",
        "Four pairs of networks by our own arithmetic, both limits from both sides.",
        limit_set=PROFILE,
        bands=_shore_bands,
    ),
)
