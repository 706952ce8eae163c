"""Tanks and what is in them: paper against gauging, slack tanks, room to expand, the pressure test of dry bulk tanks."""

from collections.abc import Mapping

from inspector.criteria.exact import around, exact, nearer
from inspector.criteria.judgement import Criterion, Input, Judgement, refuse
from inspector.criteria.ladder import Ladder, below, beyond, stairs, to
from inspector.criteria.profiles import Limit, Profile
from inspector.criteria.source import Source
from inspector.criteria.tank_contents import factor_15, greatest_fill, mass_in_air, table_volume
from inspector.criteria.telling import told
from inspector.quantities import show

GAUGED = Source("Quantity on paper against quantity gauged", "no publisher", "agreement within 1 %", "common practice")
FACTOR = Source("ASTM D1250-80 / API MPMS 11.1, volume correction to 15 °C, with commercial mass in air", "1980 constants, from public sources",
                "table 54B, generalized products", "seen")
AGREED = Source("Fuel on paper against fuel gauged, by ASTM D1250-80 table 54B", "no publisher for the tolerance", "agreement within 1 %", "common practice")
SLACK = Source("IS Code 2008, resolution MSC.267(85), part B", "2008", "3.1.2, free surface of tanks", "seen")
PROTECTED = Source("MARPOL Annex I regulation 12A, with the fuel expanding by ASTM D1250-80 table 54B", "recalled", "98 % filling", "memory")
BULK = Source("Hydraulic test of dry bulk tanks", "no publisher", "1.3 to 1.5 times the design pressure", "common practice")
TEST_SHARES = (exact(1.3), exact(1.5))  # of design pressure
FULL = 98  # %


def _tolerance(source: Source) -> Profile:
    return Profile("Paper against gauging", (Limit("tolerance", "agreement within", "%", 1, 0.1, 10),), source)


AGREEMENT, FUEL_AGREEMENT = _tolerance(GAUGED), _tolerance(AGREED)


def _agreement(
    name: str, claimed: float, found: float, unit: str, limits: Mapping[str, float], source: Source, found_by: str, notes: tuple[str, ...]
) -> Judgement:
    low, high = around(exact(found), limits["tolerance"])
    limit, margin = nearer(claimed, low, high)
    if low <= claimed <= high:
        band, rating, said = "agrees", "good", "agrees with it"
    elif claimed > high:
        band, rating, said = "more on paper", "poor", "is more than was found: ask where the rest is, and gauge again"
    else:
        band, rating, said = "less on paper", "poor", "is less than was found: the table, the sounding or the paper is not the right one"
    sentence = f"{found_by}; the paper's {show(claimed, unit)}, against {show(low, unit)} to {show(high, unit)}, {said}."
    return Judgement(name, band, rating, claimed, unit, limit, margin, sentence, source, notes)


def judge_table(
    sounding: float, lower: float, lower_volume: float, upper: float, upper_volume: float, claimed: float, limits: Mapping[str, float]
) -> Judgement:
    """Judge a volume on paper by a sounding between two neighbouring rows of the tank's table.

    Parameters
    ----------
    sounding, lower, upper [m] : the sounding and those of the rows beside it; lower_volume, upper_volume, claimed [m³];
    limits : those of AGREEMENT.

    References
    ----------
    Straight line between the rows (plain arithmetic); agreement within 1 % is common practice.
    """
    if upper <= lower or upper_volume <= lower_volume:
        refuse("tank-table", "upper", upper, "the upper row must have both the greater sounding and the greater volume")
    if not lower <= sounding <= upper:
        refuse("tank-table", "sounding", sounding, f"a sounding of {show(sounding, 'm')} lies outside the rows of {show(lower, 'm')} and {show(upper, 'm')}")
    found = table_volume(sounding, ((lower, lower_volume), (upper, upper_volume)))
    found_by = f"A sounding of {show(sounding, 'm')} stands for {show(found, 'm³')} in the table"
    notes = ("Trim, heel, the striker plate and another datum move a sounding: correct it before the table is read.",)
    return _agreement("tank-table", claimed, found, "m³", limits, GAUGED, found_by, notes)


def judge_quantity(claimed: float, gauged: float, limits: Mapping[str, float]) -> Judgement:
    """Judge a quantity on paper by the quantity gauged.

    Parameters
    ----------
    claimed, gauged [m³] at the same temperature; limits : those of AGREEMENT.

    References
    ----------
    Agreement within 1 % is common practice.
    """
    notes = ("Compare volumes of one temperature only; fuel at another temperature is compared by mass.",)
    return _agreement("tank-quantity", claimed, gauged, "m³", limits, GAUGED, f"{show(gauged, 'm³')} were gauged", notes)


def judge_fuel(claimed: float, volume: float, temperature: float, density: float, limits: Mapping[str, float]) -> Judgement:
    """Judge a mass of fuel on paper by the volume, temperature and density found.

    Parameters
    ----------
    claimed [t] in air; volume [m³] as gauged; temperature [°C] of the fuel; density [kg/m³] at 15 °C, from the bunker note;
    limits : those of FUEL_AGREEMENT.

    References
    ----------
    ASTM D1250-80 / API MPMS 11.1, table 54B (constants seen), mass in air 1.1 kg/m³ less (seen); 1 % is common practice.
    """
    factor = factor_15(density, temperature)
    found = mass_in_air(volume * factor, density)
    at_15 = show(volume * factor, "m³")
    found_by = f"{show(volume, 'm³')} at {show(temperature, '°C')} are {at_15} at 15 °C (factor {factor:.4f}) and {show(found, 't')} in air"
    notes = (f"Method: {FACTOR}.", "The density is that at 15 °C; one observed at another temperature is brought to 15 °C first.")
    return _agreement("fuel-quantity", claimed, found, "t", limits, AGREED, found_by, notes)


def slack_ladder() -> Ladder:
    """Bands of a tank's filling [%]."""
    return stairs(
        "%",
        to(0, "empty", None, "empty, so without free surface"),
        below(FULL, "slack", None, "slack: its free surface counts against stability"),
        beyond("full", None, "full enough that no free surface is counted"),
    )


def judge_slack(fill: float) -> Judgement:
    """Tell whether a tank's free surface counts.

    Parameters
    ----------
    fill [%] of the tank's volume.

    References
    ----------
    IS Code 2008 part B, 3.1.2 (seen): no correction at 98 % and above.
    """
    said = f"A tank filled to {show(fill, '%')}, against {FULL} % for full,"
    notes = ("How much it counts depends on the surface, not on the mass; the stability booklet gives the moments.",)
    return told("free-surface", slack_ladder().step(fill), said, (fill, "%", FULL), SLACK, notes, at_least=True)


def _check_warming(temperature: float, warmest: float) -> None:
    if warmest < temperature:
        refuse("fuel-tank-fill", "warmest", warmest, f"the warmest of {show(warmest, '°C')} must not lie below the present {show(temperature, '°C')}")


def fill_ladder(temperature: float, warmest: float, density: float) -> Ladder:
    """Bands of a fuel tank's filling [%] now, by what it will be at its warmest."""
    _check_warming(temperature, warmest)
    return stairs(
        "%",
        to(greatest_fill(density, temperature, warmest, FULL), "room to expand", "good", "low enough to stay within 98 % when warm"),
        beyond("too full", "poor", f"too full: it passes {FULL} % when warm"),
    )


def judge_fill(fill: float, temperature: float, warmest: float, density: float) -> Judgement:
    """Judge whether fuel has room to expand.

    Parameters
    ----------
    fill [%] now, temperature [°C] now, warmest [°C] on the voyage, density [kg/m³] at 15 °C.

    References
    ----------
    98 %: MARPOL Annex I reg. 12A (memory); expansion: ASTM D1250-80, table 54B (seen).
    """
    limit = greatest_fill(density, temperature, warmest, FULL)
    said = f"A filling of {show(fill, '%')} at {show(temperature, '°C')}, against at most {show(limit, '%')} before warming to {show(warmest, '°C')},"
    notes = ("The ship's own bunkering limit is often lower, 85 to 95 % (common practice).",)
    return told("fuel-tank-fill", fill_ladder(temperature, warmest, density).step(fill), said, (fill, "%", limit), PROTECTED, notes)


def usual_test_pressures(design_pressure: float) -> tuple[float, float]:
    """Return the usual least and greatest test pressure [bar] of a dry bulk tank of a design pressure [bar] (common practice)."""
    return tuple(float(exact(design_pressure) * share) for share in TEST_SHARES)


def bulk_ladder(design_pressure: float) -> Ladder:
    """Bands of the test pressure [bar] on the plate of a dry bulk tank."""
    low, high = usual_test_pressures(design_pressure)
    return stairs(
        "bar",
        below(low, "low test pressure", "poor", "low: ask for the code and the certificate"),
        to(high, "usual test pressure", "good", "usual"),
        beyond("high test pressure", "fair", "above the usual: ask for the code and the certificate"),
    )


def judge_bulk(test_pressure: float, design_pressure: float) -> Judgement:
    """Judge the test pressure on a dry bulk tank's plate by its design pressure.

    Parameters
    ----------
    test_pressure [bar], design_pressure [bar], both from the plate.

    References
    ----------
    Hydraulic test at 1.3 to 1.5 times the design pressure, by code (common practice).
    """
    low, high = usual_test_pressures(design_pressure)
    said = f"A test pressure of {show(test_pressure, 'bar')}, against {show(low, 'bar')} to {show(high, 'bar')} for {show(design_pressure, 'bar')} design,"
    notes = ("Plate, relief valve tag and last test are looked at from outside; a tank under pressure is opened by the ship only.",)
    return told("bulk-tank-test", bulk_ladder(design_pressure).step(test_pressure), said, (test_pressure, "bar", low), BULK, notes, at_least=True)


_DENSITY = Input("density", "Density at 15 °C", "number", "kg/m³", low=653, high=1075)
_TEMPERATURE = Input("temperature", "Temperature of the fuel", "number", "°C", low=-18, high=90)


def _cubic(name: str, label: str) -> Input:
    return Input(name, label, "number", "m³", low=0.01, high=10_000)


def _metres(name: str, label: str) -> Input:
    return Input(name, label, "number", "m", low=0, high=30)


CRITERIA = (
    Criterion(
        "tank-table", "Volume on paper against a sounding in the tank's table",
        (_metres("sounding", "Sounding, corrected"), _metres("lower", "Sounding of the row below"), Input("lower_volume", "Volume of the row below", "number",
         "m³", low=0, high=10_000), _metres("upper", "Sounding of the row above"), _cubic("upper_volume", "Volume of the row above"),
         _cubic("claimed", "Volume on paper")),
        GAUGED, judge_table, "A sounding between two neighbouring rows of the tank's own table.",
        "A case between two rows and both ends of the tolerance by our own arithmetic.", profile=AGREEMENT,
    ),
    Criterion(
        "tank-quantity", "Quantity on paper against quantity gauged", (_cubic("claimed", "Volume on paper"), _cubic("gauged", "Volume gauged")),
        GAUGED, judge_quantity, "Volumes of one tank at one temperature, 0.01 to 10 000 m³.",
        "Both ends of the tolerance from both sides by our own arithmetic.", profile=AGREEMENT,
    ),
    Criterion(
        "fuel-quantity", "Fuel on paper against fuel gauged",
        (Input("claimed", "Mass on paper, in air", "number", "t", low=0.01, high=10_000), _cubic("volume", "Volume gauged"), _TEMPERATURE, _DENSITY),
        AGREED, judge_fuel, "Fuels of 653 to 1075 kg/m³ at 15 °C, gauged at -18 to 90 °C.",
        "The factor against a published value and our own runs; mass and tolerance by our own arithmetic.", profile=FUEL_AGREEMENT,
    ),
    Criterion(
        "free-surface", "Slack or full", (Input("fill", "Filling", "number", "%", low=0, high=100),), SLACK, judge_slack,
        "Tanks of liquids, 0 to 100 % of the volume.", "Empty, just below and at the published limit.", ladder=slack_ladder,
    ),
    Criterion(
        "fuel-tank-fill", "Room for fuel to expand",
        (Input("fill", "Filling now", "number", "%", low=0, high=100), _TEMPERATURE, Input("warmest", "Warmest on the voyage", "number", "°C", low=-18,
                                                                                           high=90),
         _DENSITY),
        PROTECTED, judge_fill, "Fuels of 653 to 1075 kg/m³ at 15 °C, -18 to 90 °C, warming and not cooling.",
        "Two cases by our own arithmetic on the published factor.", ladder=fill_ladder,
    ),
    Criterion(
        "bulk-tank-test", "Test pressure of a dry bulk tank",
        (Input("test_pressure", "Test pressure on the plate", "number", "bar", low=0, high=100),
         Input("design_pressure", "Design pressure on the plate", "number", "bar", low=0.5, high=50)),
        BULK, judge_bulk, "Dry bulk pressure tanks of 0.5 to 50 bar design.", "Both ends from both sides by our own arithmetic.", ladder=bulk_ladder,
    ),
)
