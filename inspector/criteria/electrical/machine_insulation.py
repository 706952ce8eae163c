"""Insulation of rotating machines: the one-minute resistance, corrected to 40 °C.

The correction decides: 12 MΩ at 20 °C is 3.00 MΩ or 9.15 MΩ at 40 °C, which fails or passes against
5 MΩ, by the kind of insulation. So the temperature of the winding and the kind of insulation are
required and never assumed.
"""

import math

from inspector.criteria.core.bands import Bands, bands_of, below, beyond
from inspector.criteria.core.criterion import Criterion
from inspector.criteria.core.judgement import Judgement, refuse
from inspector.criteria.core.source import Source
from inspector.values.field import Field, number_field
from inspector.values.formatting import show
from inspector.values.numbers import difference

RESISTANCE = Source.recalled(
    "IEEE 43", "6.3 (correction), 12.3 and table 3 (minimum at 40 °C)", edition="2013"
)

OLD, FORM = "old or field winding", "form-wound, over 1 kV"
RANDOM = "random-wound, or form-wound under 1 kV"
# winding -> minimum in MΩ at 40 °C; None where the formula kV + 1 applies
MINIMUM = {OLD: None, FORM: 100.0, RANDOM: 5.0}

FAIR_BELOW = 2  # own: under twice the minimum a reading is fair, since 10 K alone halve it

CAUTIONS = (
    (
        "The winding must have been dry, at least 3 °C above the dew point; otherwise "
        "the reading says nothing."
    ),
    (
        "One phase measured with the others earthed reads about twice the whole "
        "winding: halve it before comparing."
    ),
    "Testing is work for qualified persons with the plant isolated and electronics disconnected.",
)


def correction_thermoplastic(temperature: float) -> float:
    """Return the factor to 40 °C for thermoplastic insulation: half for each 10 °C.

    Parameters
    ----------
    temperature : float
        Temperature of the winding [°C].

    Returns
    -------
    float

    References
    ----------
    IEEE 43-2013, 6.3 (halving seen; range memory).

    Examples
    --------
    >>> correction_thermoplastic(20)
    0.25
    """
    # Halved for every 10 K: what is read warm was more when cold.
    return 0.5 ** ((40 - temperature) / 10)


def correction_thermosetting(temperature: float) -> float:
    """Return the factor to 40 °C for thermosetting insulation (epoxy, polyester).

    Parameters
    ----------
    temperature : float
        Temperature of the winding [°C].

    Returns
    -------
    float

    References
    ----------
    IEEE 43-2013, 6.3 (constants memory).

    Examples
    --------
    >>> round(correction_thermosetting(20), 4), round(correction_thermosetting(60), 4)
    (0.7622, 2.2517)
    """
    # The standard gives two slopes, which meet at 40 °C.
    constant = -4230 if temperature > 40 else -1245
    return math.exp(constant * (1 / (temperature + 273) - 1 / 313))


def minimum_resistance(winding: str, voltage: float) -> float:
    """Return the minimum [MΩ] at 40 °C for a winding and its rated line-to-line voltage [V].

    IEEE 43-2013, table 3.

    Parameters
    ----------
    winding : str
        Kind of winding, one of the choices.
    voltage : float
        Rated voltage, line to line [V].

    Returns
    -------
    float
        Minimum [MΩ].
    """
    fixed = MINIMUM[winding]
    # kV + 1, in MΩ: voltages are typed in volts.
    return voltage / 1000 + 1 if fixed is None else fixed


_CORRECTIONS = {
    "thermoplastic": (correction_thermoplastic,),
    "thermosetting": (correction_thermosetting,),
    "unknown": (correction_thermoplastic, correction_thermosetting),
}


def judge_resistance(
    resistance: float, temperature: float, insulation: str, winding: str, voltage: float
) -> Judgement:
    """Judge the one-minute insulation resistance of a winding.

    Parameters
    ----------
    resistance : float
        Insulation resistance after one minute [MΩ].
    temperature : float
        Temperature of the winding [°C].
    insulation : str
        Kind of insulation: thermoplastic, thermosetting or unknown.
    winding : str
        Kind of winding, one of ``MINIMUM``.
    voltage : float
        Rated voltage, line to line [V].

    Returns
    -------
    Judgement

    Notes
    -----
    Unknown insulation is judged only where both corrections agree; otherwise both figures are
    reported without a judgement. Good from twice the minimum, fair from the minimum: our own split.

    References
    ----------
    IEEE 43-2013, 6.3 and table 3 (from memory).
    """
    band = _resistance_bands(temperature, insulation, winding, voltage).band_of(resistance)
    minimum = minimum_resistance(winding, voltage)
    # One figure, or both where nobody knows the kind of insulation.
    at_40 = [resistance * factor(temperature) for factor in _CORRECTIONS[insulation]]
    reading = f"{show(resistance, 'MΩ')} at {show(temperature, '°C')}"
    if band.rating is None:
        sentence = (
            f"{reading} becomes {show(at_40[0], 'MΩ')} at 40 °C if the insulation is "
            f"thermoplastic and {show(at_40[1], 'MΩ')} if thermosetting, on either side of the "
            f"minimum of {show(minimum, 'MΩ')}: {band.meaning}."
        )
        return Judgement(band.band, None, None, "MΩ", minimum, None, sentence, CAUTIONS)
    # where both corrections agree, the lower figure is the cautious one
    corrected = min(at_40)
    sentence = (
        f"{reading} becomes {show(corrected, 'MΩ')} at 40 °C ({insulation} insulation), against "
        f"a minimum of {show(minimum, 'MΩ')} for a winding '{winding}': {band.meaning}."
    )
    margin = difference(corrected, minimum)
    notes = (*_assumed(insulation), *CAUTIONS)
    return Judgement(band.band, band.rating, corrected, "MΩ", minimum, margin, sentence, notes)


def _assumed(insulation: str) -> tuple[str, ...]:
    """Return the notes on our own split, and on an unknown kind of insulation."""
    split = "Fair between the minimum and twice the minimum: our own split."
    both = (
        "The kind of insulation is unknown; both corrections agree, and the lower figure is shown."
    )
    return (split, both) if insulation == "unknown" else (split,)


def _resistance_bands(temperature: float, insulation: str, winding: str, voltage: float) -> Bands:
    """Return the bands of the resistance as measured [MΩ], not corrected to 40 °C."""
    if insulation != "thermosetting" and temperature > 60:
        refuse(
            "temperature",
            temperature,
            f"for {insulation} insulation the halving rule ends at 60 °C, and the "
            f"winding had {show(temperature, '°C')}",
        )
    if winding == FORM and voltage < 1000:
        refuse("winding", winding, f"a winding rated {show(voltage, 'V')} is not '{FORM}'")
    # above 1 kV a winding is form-wound: 5 MΩ would pass where 100 MΩ are asked
    if winding == RANDOM and voltage > 1000:
        refuse(
            "winding",
            winding,
            f"a winding rated {show(voltage, 'V')} is above the 1 kV of '{RANDOM}'; "
            f"choose '{FORM}' or '{OLD}'",
        )
    minimum = minimum_resistance(winding, voltage)
    factors = [correction(temperature) for correction in _CORRECTIONS[insulation]]
    return bands_of(
        "MΩ",
        below(
            minimum / max(factors),
            "below the minimum",
            "failed",
            "below it, so clean, dry and measure again before any other test",
        ),
        below(
            minimum / min(factors),
            "insulation unknown",
            None,
            "cannot be judged until the kind of insulation is known",
        ),
        below(
            FAIR_BELOW * minimum / min(factors),
            "above the minimum",
            "fair",
            "above it by less than a factor of two, so follow the trend",
        ),
        beyond("well above the minimum", "good", "well above it"),
    )


CRITERIA = (
    Criterion(
        "insulation-resistance",
        "Insulation resistance of a winding, corrected to 40 °C",
        (
            number_field(
                "resistance", "Insulation resistance after one minute", "MΩ", 0, 1_000_000
            ),
            number_field("temperature", "Temperature of the winding", "°C", 10, 85),
            Field("insulation", "Kind of insulation", "choice", choices=tuple(_CORRECTIONS)),
            Field("winding", "Kind of winding", "choice", choices=tuple(MINIMUM)),
            number_field("voltage", "Rated voltage, line to line", "V", 24, 15_000),
        ),
        RESISTANCE,
        judge_resistance,
        "Winding at 10 to 85 °C (thermoplastic or unknown insulation: 10 to 60 °C) "
        "and dry; rated 24 V to 15 kV.",
        "Correction factors and cases by our own arithmetic on the recalled "
        "constants; the halving rule is seen.",
        bands=_resistance_bands,
    ),
)
