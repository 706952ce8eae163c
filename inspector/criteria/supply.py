"""Quality of the electrical supply at consumers: voltage, frequency, harmonics, and insulation to earth."""

from collections.abc import Mapping

from inspector.criteria.exact import exact, share
from inspector.criteria.judgement import Criterion, Input, Judgement, refuse
from inspector.criteria.ladder import Ladder, Step, below, beyond, inside, stairs, to
from inspector.criteria.profiles import Limit, Profile
from inspector.criteria.source import Source
from inspector.criteria.telling import told, told_between
from inspector.quantities import show

VARIATION = Source("IACS UR E5, voltage and frequency variations", "edition not read", "AC, at consumers", "memory")
HARMONICS = Source("IACS UR E24, harmonic distortion for ship electrical distribution systems", "Rev.1, December 2018",
                   "total voltage distortion", "seen")
EARTH = Source("Insulation to earth of an unearthed low-voltage section", "no publisher",
               "100 Ω per volt; 100 kΩ and 1000 kΩ", "common practice")

# share of nominal, %: permanent low, permanent high, transient either way
VOLTAGE = (-10, 6, 20)
FREQUENCY = (-5, 5, 10)
FREQUENCIES = (50.0, 60.0)
MOST_DISTORTION = 8.0  # %
EARTH_PROFILE = Profile("Usual bands of insulation to earth", (
    Limit("alarm", "alarm for each volt", "Ω", 100.0, 1, 10_000),
    Limit("locate", "to be located below", "kΩ", 100.0, 1, 100_000),
    Limit("sound", "sound above", "kΩ", 1000.0, 1, 1_000_000),
), EARTH)
# % of nominal, low and high, of a direct-current network by what feeds it
DIRECT = {"on charge": (-25, 30), "not on charge": (-25, 20), "no battery": (-10, 10)}
DIRECT_SOURCE = Source("IACS UR E5, voltage and frequency variations", "edition not read", "DC distribution and battery-fed systems", "memory")


def band_limits(nominal: float, shares: tuple[float, float, float]) -> tuple[float, float, float, float]:
    """Return permanent low and high, transient low and high, in the unit of nominal.

    Decimal arithmetic, so that 480 V + 6 % is 508.8 V and not the binary number next to it.

    Examples
    --------
    >>> band_limits(480, VOLTAGE)
    (432.0, 508.8, 384.0, 576.0)
    """
    low, high, transient = shares
    return tuple(share(100 + percent, nominal) for percent in (low, high, -transient, transient))


def variation_ladder(unit: str, nominal: float, shares: tuple[float, float, float]) -> Ladder:
    """The bands around a nominal value: outside for moments at most, outside for good, inside. IACS UR E5 (memory)."""
    low, high, transient_low, transient_high = band_limits(nominal, shares)
    moments = ("outside the permanent band", "poor", "outside the permanent band, where it may be for moments only")
    never = ("outside the transient band", "failed", "outside even the band for moments")
    return stairs(unit, below(transient_low, *never), below(low, *moments), to(high, "inside the permanent band", "good", "inside the permanent band"),
                  to(transient_high, *moments), beyond(*never))


def voltage_ladder(nominal: float) -> Ladder:
    """The bands of a steady AC voltage [V]. IACS UR E5 (memory)."""
    return variation_ladder("V", nominal, VOLTAGE)


def frequency_ladder(nominal: float) -> Ladder:
    """The bands of a steady frequency [Hz]; nominal 50 or 60. IACS UR E5 (memory)."""
    if nominal not in FREQUENCIES:
        refuse("supply-frequency", "nominal", nominal, f"the nominal frequency is 50 or 60 Hz, not {show(nominal, 'Hz')}")
    return variation_ladder("Hz", nominal, FREQUENCY)


def _judge_variation(name: str, step: Step, value: float, nominal: float, shares: tuple[float, float, float]) -> Judgement:
    unit = "V" if name == "supply-voltage" else "Hz"
    low, high, transient_low, transient_high = band_limits(nominal, shares)
    said = (f"{show(value, unit)} on a nominal {show(nominal, unit)}, against {show(low, unit)} to "
                f"{show(high, unit)} as a permanent state and {show(transient_low, unit)} to "
                f"{show(transient_high, unit)} for moments,")
    notes = ("Read at a consumer under a named load; generator terminals are held to tighter figures.",
             "Taken at meters already fitted: opening a live panel is work for qualified persons.")
    return told_between(name, step, said, (value, unit), (low, high), VARIATION, notes)


def judge_voltage(voltage: float, nominal: float) -> Judgement:
    """Judge a steady AC voltage at a consumer.

    Parameters: voltage, nominal [V], nominal 100 to 15 000. Permanent +6 / -10 %, transient 20 % either way.

    References: IACS UR E5 (memory).
    """
    return _judge_variation("supply-voltage", voltage_ladder(nominal).step(voltage), voltage, nominal, VOLTAGE)


def judge_frequency(frequency: float, nominal: float) -> Judgement:
    """Judge a steady frequency.

    Parameters: frequency, nominal [Hz], nominal 50 or 60. Permanent 5 %, transient 10 % either way.

    References: IACS UR E5 (memory).
    """
    return _judge_variation("supply-frequency", frequency_ladder(nominal).step(frequency), frequency, nominal, FREQUENCY)


def direct_ladder(nominal: float, state: str) -> Ladder:
    """The bands of the voltage [V] of a direct-current network. IACS UR E5 (memory)."""
    return inside("V", *(share(100 + percent, nominal) for percent in DIRECT[state]))


def judge_direct(voltage: float, nominal: float, state: str) -> Judgement:
    """Judge the voltage of a direct-current network at a consumer.

    Parameters: voltage, nominal [V]; state : on charge (-25 / +30 %), not on charge (-25 / +20 %), no battery (10 % either way).

    References: IACS UR E5 (memory).
    """
    ladder = direct_ladder(nominal, state)
    low, high = (step.upto for step in ladder.steps[:2])
    said = f"{show(voltage, 'V')} on a nominal {show(nominal, 'V')} DC network ({state})"
    notes = ("Read at the far end of the longest run, not at the charger.",)
    return told_between("battery-supply-voltage", ladder.step(voltage), said, (voltage, "V"), (low, high), DIRECT_SOURCE, notes)


def distortion_ladder() -> Ladder:
    """The two bands of total harmonic distortion [%]. IACS UR E24 Rev.1 (seen)."""
    over = "over it, unless every consumer is documented as designed for more"
    return stairs("%", to(MOST_DISTORTION, "within the limit", "good", "within it"), beyond("over the limit", "poor", over))


def judge_distortion(distortion: float) -> Judgement:
    """Judge the total harmonic distortion of the voltage of a distribution system.

    Parameters: distortion [%] of the fundamental, 0 to 100. Not over 8 %, unless every consumer is designed for more
    and that is documented: so poor and never failed.

    References: IACS UR E24 Rev.1 (seen).
    """
    said = f"A total harmonic distortion of {show(distortion, '%')}, against a limit of {show(MOST_DISTORTION, '%')},"
    notes = ("Meaningful with the large drives running; with filters on the main bus, also after loss of a filter.",)
    return told("harmonic-distortion", distortion_ladder().step(distortion), said, (distortion, "%", MOST_DISTORTION), HARMONICS, notes)


def earth_alarm(voltage: float, ohms_per_volt: float) -> float:
    """Return the alarm [kΩ] of a section of this nominal voltage [V].

    Examples
    --------
    >>> earth_alarm(480, 100)
    48.0
    """
    return float(exact(ohms_per_volt) * exact(voltage) / 1000)


def earth_ladder(voltage: float, limits: Mapping[str, float]) -> Ladder:
    """The bands of the insulation to earth [kΩ] of a section. Common practice, or as class and maker say."""
    alarm = earth_alarm(voltage, limits["alarm"])
    return stairs(
        "kΩ", below(alarm, "at the alarm", "failed", f"below the usual alarm of {show(alarm, 'kΩ')}: an earth fault"),
        below(limits["locate"], "low", "poor", "low: locate the fault before the sea trial"),
        to(limits["sound"], "watch", "fair", "to be watched"), beyond("sound", "good", "sound"),
    )


def judge_earth(resistance: float, voltage: float, limits: Mapping[str, float]) -> Judgement:
    """Judge the insulation to earth that the monitor of an unearthed section shows.

    Parameters: resistance [kΩ]; voltage [V], nominal, 12 to 1000; limits : alarm [Ω for each volt], locate and sound [kΩ].

    References: 100 Ω per volt as alarm, 100 and 1000 kΩ as bands (common practice).
    """
    locate, sound = limits["locate"], limits["sound"]
    said = (f"{show(resistance, 'kΩ')} to earth on a {show(voltage, 'V')} section, against bands at "
            f"{show(locate, 'kΩ')} and {show(sound, 'kΩ')},")
    notes = ("The reading is the parallel sum of all feeders switched on: twenty feeders of 20 MΩ show 1 MΩ.",
             "One dim lamp and two bright ones mean one earthed phase. Faults are traced by qualified persons.")
    step = earth_ladder(voltage, limits).step(resistance)
    return told("earth-fault", step, said, (resistance, "kΩ", locate), EARTH, notes, at_least=True)


CRITERIA = (
    Criterion(
        "supply-voltage", "Steady AC voltage at a consumer",
        (Input("voltage", "Voltage, line to line", "number", "V", low=0, high=20_000),
         Input("nominal", "Nominal voltage", "number", "V", low=100, high=15_000)),
        VARIATION, judge_voltage, "AC, nominal 100 V to 15 kV, steady reading at a consumer.",
        "Both ends of both bands for 208, 440, 480 and 690 V by our own arithmetic on the recalled shares.",
        ladder=voltage_ladder,
    ),
    Criterion(
        "supply-frequency", "Steady frequency of the supply",
        (Input("frequency", "Frequency", "number", "Hz", low=0, high=120),
         Input("nominal", "Nominal frequency", "number", "Hz", low=50, high=60)),
        VARIATION, judge_frequency, "AC of nominal 50 or 60 Hz, steady reading.",
        "Both ends of both bands for 50 and 60 Hz by our own arithmetic on the recalled shares.",
        ladder=frequency_ladder,
    ),
    Criterion(
        "battery-supply-voltage", "Voltage of a direct-current network",
        (Input("voltage", "Voltage at the consumer", "number", "V", low=0, high=2000),
         Input("nominal", "Nominal voltage", "number", "V", low=12, high=1000),
         Input("state", "What feeds the network", "choice", choices=tuple(DIRECT))),
        DIRECT_SOURCE, judge_direct, "Direct current, nominal 12 to 1000 V, steady reading at a consumer.",
        "Both ends of each band for 24 V by our own arithmetic on the recalled shares.", ladder=direct_ladder,
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
        profile=EARTH_PROFILE, ladder=earth_ladder,
    ),
)
