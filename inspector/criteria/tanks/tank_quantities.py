"""Tanks and what is in them: paper against gauging, and room for fuel to expand."""

from collections.abc import Mapping

from inspector.criteria.core.band_judgement import judge_by_band
from inspector.criteria.core.bands import Bands, bands_of, beyond, to
from inspector.criteria.core.criterion import Criterion
from inspector.criteria.core.decimals import around, exact, nearer_end
from inspector.criteria.core.judgement import Judgement
from inspector.criteria.core.limit_sets import LimitSet, settable_limit
from inspector.criteria.core.orders import ABOVE, AT_LEAST, AT_MOST, Order
from inspector.criteria.core.source import Source
from inspector.criteria.tanks.tank_contents import (
    factor_15,
    greatest_fill,
    mass_in_air,
    table_volume,
)
from inspector.values.field import Field, number_field
from inspector.values.formatting import show

GAUGED = Source.common_practice("Quantity on paper against quantity gauged", "agreement within 1 %")
FACTOR = Source.seen(
    "ASTM D1250-80 / API MPMS 11.1, volume correction to 15 °C, with commercial mass in air",
    "1980 constants, from public sources",
    "table 54B, generalized products",
)
AGREED = Source.common_practice(
    "Fuel on paper against fuel gauged, by ASTM D1250-80 table 54B",
    "agreement within 1 %",
    edition="no publisher for the tolerance",
)
EXPANSION = Source.common_practice(
    "Room for fuel to expand, by ASTM D1250-80 table 54B",
    "98 %, as MARPOL Annex I regulation 12A counts a tank's capacity: no limit of filling",
    edition="no publisher for the stop at 98 %",
)
FULL = 98  # %


def _tolerance(source: Source) -> LimitSet:
    """Return the tolerance that a surveyor may set, with its source."""
    return LimitSet(
        "Paper against gauging",
        (settable_limit("tolerance", "agreement within", "%", 1, 0.1, 10),),
        source,
    )


AGREEMENT, FUEL_AGREEMENT = _tolerance(GAUGED), _tolerance(AGREED)


def _agreement(
    claimed: float,
    measured: float,
    unit: str,
    limits: Mapping[str, float],
    measured_by: str,
    notes: tuple[str, ...],
) -> Judgement:
    """Return the judgement of a quantity on paper by the quantity measured, both in the unit."""
    low, high = around(exact(measured), limits["tolerance"])
    limit, margin = nearer_end(claimed, low, high)
    if low <= claimed <= high:
        band, rating, outcome = "agrees", "good", "agrees with it"
    # More and less on paper are unlike troubles: fuel that is gone, or a wrong table or sounding.
    elif claimed > high:
        band, rating = "more on paper", "poor"
        outcome = "is more than was found: ask where the rest is, and gauge again"
    else:
        band, rating = "less on paper", "poor"
        outcome = (
            "is less than was found: the table, the sounding or the paper is not the right one"
        )
    sentence = (
        f"{measured_by}; the paper's {show(claimed, unit)}, against {show(low, unit)} to "
        f"{show(high, unit)}, {outcome}."
    )
    return Judgement(band, rating, claimed, unit, limit, margin, sentence, notes)


def judge_table(
    sounding: float,
    lower: float,
    lower_volume: float,
    upper: float,
    upper_volume: float,
    claimed: float,
    limits: Mapping[str, float],
) -> Judgement:
    """Judge a volume on paper by a sounding between two neighbouring rows of the tank's table.

    Parameters
    ----------
    sounding : float
        Sounding, corrected [m].
    lower : float
        Sounding of the row below [m].
    lower_volume : float
        Volume of the row below [m³].
    upper : float
        Sounding of the row above [m].
    upper_volume : float
        Volume of the row above [m³].
    claimed : float
        Volume on paper [m³].
    limits : mapping of str to float
        The limits of ``AGREEMENT``.

    Returns
    -------
    Judgement

    References
    ----------
    Straight line between the rows (plain arithmetic); agreement within 1 % is common practice.
    """
    # the table is made for the tank upright, so that a corrected sounding is expected
    measured = table_volume(sounding, ((lower, lower_volume), (upper, upper_volume)))
    measured_by = f"A sounding of {show(sounding, 'm')} is {show(measured, 'm³')} by the table"
    notes = (
        "Trim, heel, the striker plate and another datum move a sounding: correct "
        "it before the table is read.",
    )
    return _agreement(claimed, measured, "m³", limits, measured_by, notes)


def judge_fuel(
    claimed: float, volume: float, temperature: float, density: float, limits: Mapping[str, float]
) -> Judgement:
    """Judge a mass of fuel on paper by the volume, temperature and density found.

    Parameters
    ----------
    claimed : float
        Mass on paper, in air [t].
    volume : float
        Volume gauged [m³].
    temperature : float
        Temperature of the fuel [°C].
    density : float
        Density at 15 °C [kg/m³].
    limits : mapping of str to float
        The limits of ``FUEL_AGREEMENT``.

    Returns
    -------
    Judgement

    References
    ----------
    ASTM D1250-80 / API MPMS 11.1, table 54B (constants seen), mass in air 1.1 kg/m³ less (seen); 1
    % is common practice.
    """
    factor = factor_15(density, temperature)
    # In air, as bunkers are weighed and sold: a mass in vacuum is about 0.1 % more, and would make
    # every delivery seem short.
    measured = mass_in_air(volume * factor, density)
    at_15 = show(volume * factor, "m³")
    measured_by = (
        f"{show(volume, 'm³')} at {show(temperature, '°C')} are {at_15} at 15 °C "
        f"(factor {factor:.4f}) and {show(measured, 't')} in air"
    )
    notes = (
        f"Method: {FACTOR}.",
        (
            "The density is that at 15 °C; one observed at another temperature is "
            "brought to 15 °C first."
        ),
    )
    return _agreement(claimed, measured, "t", limits, measured_by, notes)


def _fill_bands(temperature: float, warmest: float, density: float) -> Bands:
    """Return the bands of a fuel tank's filling [%] now, by what it will be at its warmest."""
    return bands_of(
        "%",
        to(
            greatest_fill(density, temperature, warmest, FULL),
            "room to expand",
            "good",
            "low enough to stay within 98 % when warm",
        ),
        beyond("too full", "poor", f"too full: it passes {FULL} % when warm"),
    )


def judge_fill(fill: float, temperature: float, warmest: float, density: float) -> Judgement:
    """Judge whether fuel has room to expand.

    Parameters
    ----------
    fill : float
        Filling now [%].
    temperature : float
        Temperature of the fuel [°C].
    warmest : float
        Warmest on the voyage [°C].
    density : float
        Density at 15 °C [kg/m³].

    Returns
    -------
    Judgement

    References
    ----------
    98 %: common practice, the share by which MARPOL Annex I reg. 12A counts capacity (memory); it
    limits no filling. Expansion: ASTM D1250-80, table 54B (seen).
    """
    limit = greatest_fill(density, temperature, warmest, FULL)
    subject = (
        f"A filling of {show(fill, '%')} at {show(temperature, '°C')}, against at most "
        f"{show(limit, '%')} before warming to {show(warmest, '°C')},"
    )
    notes = (
        "The ship's own bunkering limit is often lower, 85 to 95 % (common practice).",
        "98 % is how the pollution rule counts a tank's capacity; no rule of filling is behind it.",
    )
    return judge_by_band(
        _fill_bands(temperature, warmest, density).band_of(fill), subject, (fill, "%", limit), notes
    )


_DENSITY = number_field("density", "Density at 15 °C", "kg/m³", 653, 1075)
_TEMPERATURE = number_field("temperature", "Temperature of the fuel", "°C", -18, 90)


def _cubic(name: str, label: str) -> Field:
    return number_field(name, label, "m³", 0.01, 10_000)


def _metres(name: str, label: str) -> Field:
    return number_field(name, label, "m", 0, 30)


CRITERIA = (
    Criterion(
        "tank-table",
        "Volume on paper against a sounding in the tank's table",
        (
            _metres("sounding", "Sounding, corrected"),
            _metres("lower", "Sounding of the row below"),
            number_field("lower_volume", "Volume of the row below", "m³", 0, 10_000),
            _metres("upper", "Sounding of the row above"),
            _cubic("upper_volume", "Volume of the row above"),
            _cubic("claimed", "Volume on paper"),
        ),
        GAUGED,
        judge_table,
        "A sounding between two neighbouring rows of the tank's own table.",
        "A case between two rows and both ends of the tolerance by our own arithmetic.",
        limit_set=AGREEMENT,
        orders=(
            Order(
                "upper", ABOVE, "lower", "rows in the wrong order count a fuller tank as emptier"
            ),
            Order(
                "upper_volume",
                ABOVE,
                "lower_volume",
                "rows in the wrong order count a fuller tank as emptier",
            ),
            Order("sounding", AT_LEAST, "lower", "it lies outside the two rows"),
            Order("sounding", AT_MOST, "upper", "it lies outside the two rows"),
        ),
    ),
    Criterion(
        "fuel-quantity",
        "Fuel on paper against fuel gauged",
        (
            number_field("claimed", "Mass on paper, in air", "t", 0.01, 10_000),
            _cubic("volume", "Volume gauged"),
            _TEMPERATURE,
            _DENSITY,
        ),
        AGREED,
        judge_fuel,
        "Fuels of 653 to 1075 kg/m³ at 15 °C, gauged at -18 to 90 °C.",
        "The factor against a published value and our own runs; mass and tolerance "
        "by our own arithmetic.",
        limit_set=FUEL_AGREEMENT,
    ),
    Criterion(
        "fuel-tank-fill",
        "Room for fuel to expand",
        (
            number_field("fill", "Filling now", "%", 0, 100),
            _TEMPERATURE,
            number_field("warmest", "Warmest on the voyage", "°C", -18, 90),
            _DENSITY,
        ),
        EXPANSION,
        judge_fill,
        "Fuels of 653 to 1075 kg/m³ at 15 °C, -18 to 90 °C, warming and not cooling.",
        "Two cases by our own arithmetic on the published factor.",
        bands=_fill_bands,
        orders=(
            Order(
                "warmest",
                AT_LEAST,
                "temperature",
                "cooling fuel makes room, and nothing can be asked of it",
            ),
        ),
    ),
)
