"""Coolant and fuel by a laboratory's sheet: salt in the coolant, flash point and viscosity of distillate fuel."""

from collections.abc import Mapping

from inspector.criteria.judgement import Criterion, Input, Judgement
from inspector.criteria.ladder import Ladder, below, beyond, stairs, to
from inspector.criteria.profiles import Limit, Profile
from inspector.criteria.source import Source
from inspector.criteria.telling import told, told_between
from inspector.quantities import show

COOLANT = Source("Chloride in engine coolant", "no publisher", "sea water suspected above 100 ppm", "common practice")
FUEL = Source("ISO 8217, marine fuels, grade DMA", "edition not read", "flash point and viscosity at 40 °C", "memory")
COOLANT_PROFILE = Profile("Usual limit of chloride in coolant", (Limit("most", "at most", "ppm", 100.0, 5, 1000),), COOLANT)
LEAST_FLASH = 60.0  # °C
VISCOSITY = (2.0, 6.0)  # mm²/s at 40 °C


def chloride_ladder(limits: Mapping[str, float]) -> Ladder:
    """The bands of chloride [ppm] in coolant."""
    return stairs(
        "ppm",
        to(limits["most"], "no sea water", "good", "no sign of sea water"),
        beyond("sea water suspected", "poor", "a sign of sea water: prove the coolers"),
    )


def judge_chloride(chloride: float, limits: Mapping[str, float]) -> Judgement:
    """Judge the chloride in an engine's coolant.

    Parameters: chloride [ppm]; limits : most [ppm].

    References: 100 ppm (common practice); inhibitor and pH by the maker.
    """
    said = f"{show(chloride, 'ppm')} of chloride in the coolant, against {show(limits['most'], 'ppm')},"
    return told(
        "coolant-chloride",
        chloride_ladder(limits).step(chloride),
        said,
        (chloride, "ppm", limits["most"]),
        COOLANT,
        ("Inhibitor and pH are the maker's to say; hot systems are never opened.",),
    )


def flash_ladder() -> Ladder:
    """The bands of a fuel's flash point [°C]. ISO 8217 (memory)."""
    return stairs("°C", below(LEAST_FLASH, "too low", "failed", "too low for use on board"), beyond("high enough", "good", "high enough"))


def judge_flash(temperature: float) -> Judgement:
    """Judge the flash point of a distillate fuel.

    Parameters: temperature [°C], closed cup.

    References: ISO 8217, at least 60 °C (memory); emergency sets may have a lower one.
    """
    said = f"A flash point of {show(temperature, '°C')}, against {show(LEAST_FLASH, '°C')} at least,"
    notes = ("Emergency generators and lifeboats may burn fuel of a lower flash point, where the flag agrees.",)
    return told("fuel-flash-point", flash_ladder().step(temperature), said, (temperature, "°C", LEAST_FLASH), FUEL, notes, at_least=True)


def viscosity_ladder() -> Ladder:
    """The bands of a distillate's viscosity [mm²/s] at 40 °C. ISO 8217, DMA (memory)."""
    low, high = VISCOSITY
    return stairs(
        "mm²/s", below(low, "too thin", "poor", "too thin"), to(high, "in the grade", "good", "in the grade"), beyond("too thick", "poor", "too thick")
    )


def judge_viscosity(viscosity: float) -> Judgement:
    """Judge the viscosity of a distillate fuel.

    Parameters: viscosity [mm²/s] at 40 °C.

    References: ISO 8217, grade DMA, 2 to 6 mm²/s (memory).
    """
    low, high = VISCOSITY
    said = f"{show(viscosity, 'mm²/s')} at 40 °C, against {show(low, 'mm²/s')} to {show(high, 'mm²/s')},"
    notes = ("Clear and bright in a glass: water and sediment show first.",)
    return told_between("fuel-viscosity", viscosity_ladder().step(viscosity), said, (viscosity, "mm²/s"), VISCOSITY, FUEL, notes)


CRITERIA = (
    Criterion(
        "coolant-chloride",
        "Chloride in engine coolant",
        (Input("chloride", "Chloride", "number", "ppm", low=0, high=100_000),),
        COOLANT,
        judge_chloride,
        "Engine coolant, 0 to 100 000 ppm.",
        "The limit from both sides; trade guidance.",
        profile=COOLANT_PROFILE,
        ladder=chloride_ladder,
    ),
    Criterion(
        "fuel-flash-point",
        "Flash point of a distillate fuel",
        (Input("temperature", "Flash point, closed cup", "number", "°C", low=-50, high=200),),
        FUEL,
        judge_flash,
        "Distillate fuel on board, −50 to 200 °C.",
        "The recalled limit from both sides.",
        ladder=flash_ladder,
    ),
    Criterion(
        "fuel-viscosity",
        "Viscosity of a distillate fuel",
        (Input("viscosity", "Viscosity at 40 °C", "number", "mm²/s", low=0.3, high=100),),
        FUEL,
        judge_viscosity,
        "Distillate fuel at 40 °C, 0.3 to 100 mm²/s.",
        "Both recalled limits from both sides.",
        ladder=viscosity_ladder,
    ),
)
