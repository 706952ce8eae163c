"""The polarization index of a winding: its resistance after ten minutes over that after one."""

from inspector.criteria.core.bands import Band, Bands, bands_of, below, beyond, to
from inspector.criteria.core.criterion import Criterion
from inspector.criteria.core.judgement import Judgement, judgement_in_words
from inspector.criteria.core.source import Source
from inspector.criteria.electrical.machine_insulation import CAUTIONS, MINIMUM, RANDOM, RESISTANCE
from inspector.values.field import Field, number_field
from inspector.values.formatting import show
from inspector.values.numbers import difference

INDEX = Source.seen("IEEE 43", "2000 (2013 alike: memory)", "table 2 (minimum polarization index)")


# thermal class -> minimum polarization index
MINIMUM_INDEX = {"A": 1.5, "B": 2.0, "F": 2.0, "H": 2.0}


TOO_HIGH_FOR_INDEX = 5000  # MΩ; above it the index says nothing (memory)


# the least minimum of a stator winding, where its own is not given [MΩ]
LEAST_RESISTANCE = MINIMUM[RANDOM]
WET = "below the minimum resistance"


DRY_INDEX = 5  # common practice: above it an old winding may be dried out


def polarization_index(one_minute: float, ten_minutes: float) -> float:
    """Return the ten-minute over the one-minute resistance, without correction of temperature.

    Parameters
    ----------
    one_minute : float
        Resistance after one minute [MΩ].
    ten_minutes : float
        Resistance after ten minutes [MΩ].

    Returns
    -------
    float
        Polarization index.

    References
    ----------
    IEEE 43.
    """
    return ten_minutes / one_minute


def judge_index(
    one_minute: float, ten_minutes: float, thermal_class: str, least: float | None = None
) -> Judgement:
    """Judge the polarization index of a winding.

    Parameters
    ----------
    one_minute : float
        Resistance after one minute [MΩ].
    ten_minutes : float
        Resistance after ten minutes [MΩ].
    thermal_class : str
        Thermal class: A, B, F or H.
    least : float, optional
        Minimum resistance of this winding [MΩ]; without it 5 MΩ, the minimum of a machine under
        1 kV.

    Returns
    -------
    Judgement

    Notes
    -----
    Below the minimum resistance the index is not judged: a dead winding can have a high one.
    A low index alone is poor and never failed: on small random-wound machines the absorption dies
    out within minutes, so the index may say nothing there (IEEE 43-2013, 5.4 and annex A, as quoted
    in a trade article: seen).

    References
    ----------
    IEEE 43-2000, table 2 (seen in an instrument manual's appendix); minimum resistance: IEEE
    43-2013, table 3 (from memory).
    """
    band = _index_bands(ten_minutes, thermal_class, least).band_of(one_minute)
    if band.band == WET:
        return _below_resistance(band, one_minute, least)
    # above 5000 MΩ the currents are too small to measure a ratio of them
    if band.rating is None:
        sentence = f"The one-minute reading of {show(one_minute, 'MΩ')} is {band.meaning}."
        return judgement_in_words(band.band, None, sentence, CAUTIONS)
    minimum = MINIMUM_INDEX[thermal_class]
    index = polarization_index(one_minute, ten_minutes)
    sentence = (
        f"{show(ten_minutes, 'MΩ')} after ten minutes over {show(one_minute, 'MΩ')} after one "
        f"gives an index of {show(index, None)}; the minimum of {show(minimum, None)} for class "
        f"{thermal_class} is {band.meaning}."
    )
    notes = (
        "Not meant for bare field windings; a low index alone does not condemn a machine.",
        *CAUTIONS,
    )
    # A high index is good news for moisture and may be bad news for age.
    if index > DRY_INDEX:
        notes = ("An index above 5 on an old winding may mean dried, brittle insulation.", *notes)
    margin = difference(index, minimum)
    return Judgement(band.band, band.rating, index, None, minimum, margin, sentence, notes)


def _below_resistance(band: Band, one_minute: float, least: float | None) -> Judgement:
    """Return the judgement of a winding whose resistance alone is too low."""
    minimum = LEAST_RESISTANCE if least is None else least
    sentence = f"The one-minute reading of {show(one_minute, 'MΩ')} is {band.meaning}."
    assumed = "5 MΩ is the minimum under 1 kV; a form-wound machine above it is asked 100 MΩ."
    notes = CAUTIONS if least is not None else (assumed, *CAUTIONS)
    margin = difference(one_minute, minimum)
    return Judgement(
        band.band, band.rating, one_minute, "MΩ", minimum, margin, sentence, notes, RESISTANCE
    )


def _index_bands(ten_minutes: float, thermal_class: str, least: float | None = None) -> Bands:
    """Return the bands of the one-minute resistance [MΩ] beside a ten-minute one."""
    minimum = LEAST_RESISTANCE if least is None else least
    wet = (
        f"below the minimum resistance of {show(minimum, 'MΩ')}, where the polarization index says "
        "nothing: clean, dry and measure again"
    )
    low = "not reached: dirt or moisture is likely, unless the winding is small and random-wound"
    enough = min(ten_minutes / MINIMUM_INDEX[thermal_class], TOO_HIGH_FOR_INDEX)
    return bands_of(
        "MΩ",
        # the minimum resistance is recalled, so that it may warn and not fail
        below(minimum, WET, "poor", wet),
        to(enough, "at or above the minimum", "good", "reached"),
        to(TOO_HIGH_FOR_INDEX, "below the minimum", "poor", low),
        beyond(
            "not assessed",
            None,
            f"above {show(TOO_HIGH_FOR_INDEX, 'MΩ')}, where the polarization index "
            "says nothing: not assessed",
        ),
    )


CRITERIA = (
    Criterion(
        "polarization-index",
        "Polarization index of a winding",
        (
            number_field("one_minute", "Resistance after one minute", "MΩ", 0.001, 1_000_000),
            number_field("ten_minutes", "Resistance after ten minutes", "MΩ", 0, 1_000_000),
            Field("thermal_class", "Thermal class", "choice", choices=tuple(MINIMUM_INDEX)),
            number_field(
                "least", "Minimum resistance of this winding", "MΩ", 1, 1000, optional=True
            ),
        ),
        INDEX,
        judge_index,
        "Classes A, B, F and H; one-minute resistance from the minimum to 5000 MΩ, above it not "
        "assessed.",
        "Against the published minima by class, seen in an instrument manual's "
        "appendix; ratios by our own arithmetic.",
        bands=_index_bands,
    ),
)
