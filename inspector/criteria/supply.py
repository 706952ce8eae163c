"""Quality of the electrical supply at consumers: voltage, frequency, harmonics, and insulation to earth."""

from decimal import Decimal

from inspector.criteria.judgement import Criterion, Input, Judgement, Ladder, Source, refuse
from inspector.criteria.ladder import Step
from inspector.quantities import difference, show

VARIATION = Source("IACS UR E5, voltage and frequency variations", "edition not read", "AC, at consumers", "memory")
HARMONICS = Source("IACS UR E24, harmonic distortion for ship electrical distribution systems", "Rev.1, December 2018",
                   "total voltage distortion", "seen")
EARTH = Source("Insulation to earth of an unearthed low-voltage section", "no publisher",
               "100 Ω per volt; 100 kΩ and 1000 kΩ", "common practice")

# share of nominal, %: permanent low, permanent high, transient either way
VOLTAGE = (Decimal(-10), Decimal(6), Decimal(20))
FREQUENCY = (Decimal(-5), Decimal(5), Decimal(10))
FREQUENCIES = (50.0, 60.0)
MOST_DISTORTION = 8.0  # %
OHMS_PER_VOLT = Decimal("0.1")  # kΩ per V
LOCATE_BELOW, SOUND_ABOVE = 100.0, 1000.0  # kΩ


def band_limits(nominal: float, shares: tuple[Decimal, Decimal, Decimal]) -> tuple[float, float, float, float]:
    """Return permanent low and high, transient low and high, in the unit of nominal.

    Decimal arithmetic, so that 480 V + 6 % is 508.8 V and not the binary number next to it.

    Examples
    --------
    >>> band_limits(480, VOLTAGE)
    (432.0, 508.8, 384.0, 576.0)
    """
    low, high, transient = shares
    return tuple(float(Decimal(str(nominal)) * (100 + share) / 100) for share in (low, high, -transient, transient))


def _judge_variation(
    name: str, value: float, nominal: float, unit: str, shares: tuple[Decimal, Decimal, Decimal]
) -> Judgement:
    low, high, transient_low, transient_high = band_limits(nominal, shares)
    if low <= value <= high:
        band, rating, meaning = "inside the permanent band", "good", "inside it"
    elif transient_low <= value <= transient_high:
        band, rating, meaning = "outside the permanent band", "poor", "outside it, where it may be for moments only"
    else:
        band, rating, meaning = "outside the transient band", "failed", "outside even the band for moments"
    below, above = difference(value, low), difference(high, value)
    limit, margin = (low, below) if below <= above else (high, above)
    sentence = (f"{show(value, unit)} on a nominal {show(nominal, unit)}, against {show(low, unit)} to "
                f"{show(high, unit)} as a permanent state and {show(transient_low, unit)} to "
                f"{show(transient_high, unit)} for moments, is {meaning}.")
    notes = ("Read at a consumer under a named load; generator terminals are held to tighter figures.",
             "Taken at meters already fitted: opening a live panel is work for qualified persons.")
    return Judgement(name, band, rating, value, unit, limit, margin, sentence, VARIATION, notes)


def judge_voltage(voltage: float, nominal: float) -> Judgement:
    """Judge a steady AC voltage at a consumer.

    Parameters: voltage, nominal [V], nominal 100 to 15 000. Permanent +6 / -10 %, transient 20 % either way.

    References: IACS UR E5 (memory).
    """
    return _judge_variation("supply-voltage", voltage, nominal, "V", VOLTAGE)


def judge_frequency(frequency: float, nominal: float) -> Judgement:
    """Judge a steady frequency.

    Parameters: frequency, nominal [Hz], nominal 50 or 60. Permanent 5 %, transient 10 % either way.

    References: IACS UR E5 (memory).
    """
    if nominal not in FREQUENCIES:
        refuse("supply-frequency", "nominal", nominal,
               f"the nominal frequency is 50 or 60 Hz, not {show(nominal, 'Hz')}")
    return _judge_variation("supply-frequency", frequency, nominal, "Hz", FREQUENCY)


def distortion_ladder() -> Ladder:
    """The two bands of total harmonic distortion [%]. IACS UR E24 Rev.1 (seen)."""
    over = "over it, unless every consumer is documented as designed for more"
    return Ladder("%", (Step(MOST_DISTORTION, True, "within the limit", "good", "within it"), Step(None, False, "over the limit", "poor", over)))


def judge_distortion(distortion: float) -> Judgement:
    """Judge the total harmonic distortion of the voltage of a distribution system.

    Parameters: distortion [%] of the fundamental, 0 to 100. Not over 8 %, unless every consumer is designed for more
    and that is documented: so poor and never failed.

    References: IACS UR E24 Rev.1 (seen).
    """
    step = distortion_ladder().step(distortion)
    sentence = (f"A total harmonic distortion of {show(distortion, '%')}, against a limit of "
                f"{show(MOST_DISTORTION, '%')}, is {step.meaning}.")
    notes = ("Meaningful with the large drives running; with filters on the main bus, also after loss of a filter.",)
    margin = difference(MOST_DISTORTION, distortion)
    return Judgement("harmonic-distortion", step.band, step.rating, distortion, "%", MOST_DISTORTION, margin, sentence, HARMONICS,
                     notes)


def judge_earth(resistance: float, voltage: float) -> Judgement:
    """Judge the insulation to earth that the monitor of an unearthed section shows.

    Parameters: resistance [kΩ]; voltage [V], nominal, 12 to 1000.

    References: 100 Ω per volt as alarm, 100 and 1000 kΩ as bands (common practice).
    """
    alarm = float(OHMS_PER_VOLT * Decimal(str(voltage)))
    if resistance < alarm:
        band, rating = "at the alarm", "failed"
        meaning = f"below the usual alarm of {show(alarm, 'kΩ')}: an earth fault"
    elif resistance < LOCATE_BELOW:
        band, rating, meaning = "low", "poor", "low: locate the fault before the sea trial"
    elif resistance <= SOUND_ABOVE:
        band, rating, meaning = "watch", "fair", "to be watched"
    else:
        band, rating, meaning = "sound", "good", "sound"
    sentence = (f"{show(resistance, 'kΩ')} to earth on a {show(voltage, 'V')} section, against bands at "
                f"{show(LOCATE_BELOW, 'kΩ')} and {show(SOUND_ABOVE, 'kΩ')}, is {meaning}.")
    notes = ("The reading is the parallel sum of all feeders switched on: twenty feeders of 20 MΩ show 1 MΩ.",
             "One dim lamp and two bright ones mean one earthed phase. Faults are traced by qualified persons.")
    margin = difference(resistance, LOCATE_BELOW)
    return Judgement("earth-fault", band, rating, resistance, "kΩ", LOCATE_BELOW, margin, sentence, EARTH, notes)


CRITERIA = (
    Criterion(
        "supply-voltage", "Steady AC voltage at a consumer",
        (Input("voltage", "Voltage, line to line", "number", "V", low=0, high=20_000),
         Input("nominal", "Nominal voltage", "number", "V", low=100, high=15_000)),
        VARIATION, judge_voltage, "AC, nominal 100 V to 15 kV, steady reading at a consumer.",
        "Both ends of both bands for 208, 440, 480 and 690 V by our own arithmetic on the recalled shares.",
    ),
    Criterion(
        "supply-frequency", "Steady frequency of the supply",
        (Input("frequency", "Frequency", "number", "Hz", low=0, high=120),
         Input("nominal", "Nominal frequency", "number", "Hz", low=50, high=60)),
        VARIATION, judge_frequency, "AC of nominal 50 or 60 Hz, steady reading.",
        "Both ends of both bands for 50 and 60 Hz by our own arithmetic on the recalled shares.",
    ),
    Criterion(
        "harmonic-distortion", "Total harmonic distortion of the voltage",
        (Input("distortion", "Total harmonic distortion", "number", "%", low=0, high=100),),
        HARMONICS, judge_distortion, "Distribution systems of ships, share of the fundamental, 0 to 100 %.",
        "The limit from both sides, with sums of harmonics worked by ourselves.", ladder=distortion_ladder,
    ),
    Criterion(
        "earth-fault", "Insulation to earth of an unearthed section",
        (Input("resistance", "Insulation to earth", "number", "kΩ", low=0, high=1_000_000),
         Input("voltage", "Nominal voltage", "number", "V", low=12, high=1000)),
        EARTH, judge_earth, "Unearthed low-voltage sections of 12 to 1000 V with a monitor or lamps.",
        "Each band from both sides by our own reading of trade guidance; no published example exists.",
    ),
)
