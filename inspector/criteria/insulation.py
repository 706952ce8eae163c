"""Insulation of rotating machines: one-minute resistance corrected to 40 °C, and the polarization index.

The correction decides: 12 MΩ at 20 °C is 3.00 MΩ or 9.15 MΩ at 40 °C, fail or pass against 5 MΩ, by the kind of
insulation. So the winding's temperature and the kind of insulation are asked for and never assumed.
"""

import math

from inspector.criteria.judgement import Criterion, Input, Judgement, refuse
from inspector.criteria.ladder import Ladder, below, beyond, stairs, to
from inspector.criteria.source import Source
from inspector.quantities import difference, show

RESISTANCE = Source("IEEE 43", "2013", "6.3 (correction), 12.3 and table 3 (minimum at 40 °C)", "memory")
INDEX = Source("IEEE 43", "2000 (2013 alike: memory)", "table 2 (minimum polarization index)", "seen")

OLD, FORM, RANDOM = "old or field winding", "form-wound, over 1 kV", "random-wound or under 1 kV"
# winding -> minimum in MΩ at 40 °C; None stands for the formula kV + 1
MINIMUM = {OLD: None, FORM: 100.0, RANDOM: 5.0}
# thermal class -> minimum polarization index
MINIMUM_INDEX = {"A": 1.5, "B": 2.0, "F": 2.0, "H": 2.0}

TOO_HIGH_FOR_INDEX = 5000  # MΩ; above it the index says nothing (memory)
DRY_INDEX = 5  # common practice: above it an old winding may be dried out
FAIR_BELOW = 2  # own: under twice the minimum a reading is fair, since 10 K alone halve it

CAUTIONS = (
    "The winding must have been dry, at least 3 °C above the dew point; otherwise the reading says nothing.",
    "One phase measured with the others earthed reads about twice the whole winding: halve it before comparing.",
    "Testing is work for qualified persons with the plant isolated and electronics disconnected.",
)


def correction_thermoplastic(temperature: float) -> float:
    """Return the factor to 40 °C for thermoplastic insulation: half for each 10 °C.

    Parameters: temperature [°C] of the winding, 10 to 60. Source: IEEE 43-2013, 6.3 (halving seen; range memory).

    Examples
    --------
    >>> correction_thermoplastic(20)
    0.25
    """
    return 0.5 ** ((40 - temperature) / 10)


def correction_thermosetting(temperature: float) -> float:
    """Return the factor to 40 °C for thermosetting insulation (epoxy, polyester).

    Parameters: temperature [°C] of the winding, 10 to 85. Source: IEEE 43-2013, 6.3 (constants memory).

    Examples
    --------
    >>> round(correction_thermosetting(20), 4), round(correction_thermosetting(60), 4)
    (0.7622, 2.2517)
    """
    constant = -4230 if temperature > 40 else -1245
    return math.exp(constant * (1 / (temperature + 273) - 1 / 313))


def minimum_resistance(winding: str, voltage: float) -> float:
    """Return the minimum [MΩ] at 40 °C for a winding and its rated line-to-line voltage [V]. IEEE 43-2013, table 3."""
    fixed = MINIMUM[winding]
    return voltage / 1000 + 1 if fixed is None else fixed


_CORRECTIONS = {
    "thermoplastic": (correction_thermoplastic,),
    "thermosetting": (correction_thermosetting,),
    "unknown": (correction_thermoplastic, correction_thermosetting),
}


def judge_resistance(resistance: float, temperature: float, insulation: str, winding: str, voltage: float) -> Judgement:
    """Judge the one-minute insulation resistance of a winding.

    Parameters
    ----------
    resistance [MΩ] after one minute; temperature [°C] of the winding, 10 to 85 (thermoplastic or unknown: to 60);
    insulation : thermoplastic, thermosetting or unknown; winding : one of MINIMUM; voltage [V], rated, line to line.

    Notes
    -----
    Unknown insulation is judged only where both corrections agree; otherwise both figures are told and nothing is
    judged. Good from twice the minimum, fair from the minimum: our own split.

    References
    ----------
    IEEE 43-2013, 6.3 and table 3 (memory).
    """
    name = "insulation-resistance"
    step = resistance_ladder(temperature, insulation, winding, voltage).step(resistance)
    minimum = minimum_resistance(winding, voltage)
    at_40 = [resistance * factor(temperature) for factor in _CORRECTIONS[insulation]]
    read = f"{show(resistance, 'MΩ')} at {show(temperature, '°C')}"
    if step.rating is None:
        sentence = (f"{read} becomes {show(at_40[0], 'MΩ')} at 40 °C if the insulation is thermoplastic and "
                    f"{show(at_40[1], 'MΩ')} if thermosetting, on either side of the minimum of {show(minimum, 'MΩ')}: {step.meaning}.")
        return Judgement(name, step.band, None, None, "MΩ", minimum, None, sentence, RESISTANCE, CAUTIONS)
    corrected = min(at_40)
    sentence = (f"{read} becomes {show(corrected, 'MΩ')} at 40 °C ({insulation} insulation), against a minimum of "
                f"{show(minimum, 'MΩ')} for a winding '{winding}': {step.meaning}.")
    margin = difference(corrected, minimum)
    return Judgement(name, step.band, step.rating, corrected, "MΩ", minimum, margin, sentence, RESISTANCE,
                     (*_assumed(insulation), *CAUTIONS))


def _assumed(insulation: str) -> tuple[str, ...]:
    split = "Fair between the minimum and twice the minimum: our own split."
    both = "The kind of insulation is unknown; both corrections agree, and the lower figure is shown."
    return (split, both) if insulation == "unknown" else (split,)


def resistance_ladder(temperature: float, insulation: str, winding: str, voltage: float) -> Ladder:
    """The bands of the resistance as measured [MΩ]: the minimum at 40 °C divided by the correction to it. IEEE 43-2013 (memory)."""
    if insulation != "thermosetting" and temperature > 60:
        refuse("insulation-resistance", "temperature", temperature,
               f"for {insulation} insulation the halving rule ends at 60 °C, and the winding had {show(temperature, '°C')}")
    if winding == FORM and voltage < 1000:
        refuse("insulation-resistance", "winding", winding, f"a winding rated {show(voltage, 'V')} is not '{FORM}'")
    minimum = minimum_resistance(winding, voltage)
    factors = [correction(temperature) for correction in _CORRECTIONS[insulation]]
    return stairs(
        "MΩ",
        below(minimum / max(factors), "below the minimum", "failed", "below it, so clean, dry and measure again before any other test"),
        below(minimum / min(factors), "insulation unknown", None, "cannot be judged until the kind of insulation is known"),
        below(FAIR_BELOW * minimum / min(factors), "above the minimum", "fair", "above it by less than a factor of two, so follow the trend"),
        beyond("well above the minimum", "good", "well above it"),
    )


def polarization_index(one_minute: float, ten_minutes: float) -> float:
    """Return the ten-minute over the one-minute insulation resistance [MΩ]; no temperature correction. IEEE 43."""
    return ten_minutes / one_minute


def judge_index(one_minute: float, ten_minutes: float, thermal_class: str) -> Judgement:
    """Judge the polarization index of a winding.

    Parameters
    ----------
    one_minute, ten_minutes [MΩ]; thermal_class : A, B, F or H.

    Notes
    -----
    A low index alone is poor and never failed: on small random-wound machines the absorption dies out within minutes,
    so the index may say nothing there (IEEE 43-2013, 5.4 and annex A, as quoted in a trade article: seen).

    References
    ----------
    IEEE 43-2000, table 2 (seen in an instrument manual's appendix).
    """
    step = index_ladder(ten_minutes, thermal_class).step(one_minute)
    if step.rating is None:
        sentence = f"The one-minute reading of {show(one_minute, 'MΩ')} is {step.meaning}."
        return Judgement("polarization-index", step.band, None, None, None, None, None, sentence, INDEX, CAUTIONS)
    minimum = MINIMUM_INDEX[thermal_class]
    index = polarization_index(one_minute, ten_minutes)
    sentence = (f"{show(ten_minutes, 'MΩ')} after ten minutes over {show(one_minute, 'MΩ')} after one gives an index "
                f"of {show(index, None)}; the minimum of {show(minimum, None)} for class {thermal_class} is {step.meaning}.")
    dry = ("An index above 5 on an old winding may mean dried, brittle insulation.",) if index > DRY_INDEX else ()
    notes = (*dry, "Not meant for bare field windings; a low index alone does not condemn a machine.", *CAUTIONS)
    margin = difference(index, minimum)
    return Judgement("polarization-index", step.band, step.rating, index, None, minimum, margin, sentence, INDEX, notes)


def index_ladder(ten_minutes: float, thermal_class: str) -> Ladder:
    """The bands of the one-minute resistance [MΩ] beside a ten-minute one: low enough for the index, too high, or too high to tell. IEEE 43."""
    low = "not reached: dirt or moisture is likely, unless the winding is small and random-wound"
    enough = min(ten_minutes / MINIMUM_INDEX[thermal_class], TOO_HIGH_FOR_INDEX)
    return stairs(
        "MΩ", to(enough, "at or above the minimum", "good", "reached"), to(TOO_HIGH_FOR_INDEX, "below the minimum", "poor", low),
        beyond("not assessed", None, f"above {show(TOO_HIGH_FOR_INDEX, 'MΩ')}, where the polarization index says nothing: not assessed"),
    )


CRITERIA = (
    Criterion(
        "insulation-resistance", "Insulation resistance of a winding, corrected to 40 °C",
        (Input("resistance", "Insulation resistance after one minute", "number", "MΩ", low=0, high=1_000_000),
         Input("temperature", "Temperature of the winding", "number", "°C", low=10, high=85),
         Input("insulation", "Kind of insulation", "choice", choices=tuple(_CORRECTIONS)),
         Input("winding", "Kind of winding", "choice", choices=tuple(MINIMUM)),
         Input("voltage", "Rated voltage, line to line", "number", "V", low=24, high=15_000)),
        RESISTANCE, judge_resistance,
        "Winding at 10 to 85 °C (thermoplastic or unknown insulation: 10 to 60 °C) and dry; rated 24 V to 15 kV.",
        "Correction factors and cases by our own arithmetic on the recalled constants; the halving rule is seen.",
        ladder=resistance_ladder,
    ),
    Criterion(
        "polarization-index", "Polarization index of a winding",
        (Input("one_minute", "Resistance after one minute", "number", "MΩ", low=0.001, high=1_000_000),
         Input("ten_minutes", "Resistance after ten minutes", "number", "MΩ", low=0, high=1_000_000),
         Input("thermal_class", "Thermal class", "choice", choices=tuple(MINIMUM_INDEX))),
        INDEX, judge_index,
        "Classes A, B, F and H; one-minute resistance up to 5000 MΩ, above it not assessed.",
        "Against the published minima by class, seen in an instrument manual's appendix; ratios by our own arithmetic.",
        ladder=index_ladder,
    ),
)
