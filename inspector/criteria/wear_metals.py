"""Wear metals in engine oil: no figure is universal, the trend decides, and without hours on the oil nothing is judged."""

from collections.abc import Mapping

from inspector.criteria.judgement import Criterion, Input, Judgement
from inspector.criteria.ladder import Ladder, beyond, stairs, watch_and_act
from inspector.criteria.profiles import Limit, Profile, chosen
from inspector.criteria.source import Source
from inspector.criteria.telling import told
from inspector.quantities import show

SOURCE = Source("Wear metals in oil of medium and high speed diesels", "no publisher", "wide scatter, trend first", "common practice")
# metal -> watch above, act above [ppm], and what it usually means
METALS = {
    "iron": (60, 100, "liners, rings and gears"),
    "copper": (25, 50, "bearings, or a cooler"),
    "lead": (20, 40, "bearings"),
    "tin": (10, 20, "bearings"),
    "aluminium": (15, 25, "pistons, or dirt where silicon follows"),
    "chromium": (10, 20, "rings"),
    "silicon": (15, 25, "dirt past the filter, or sealant"),
    "sodium": (30, 80, "salt water where magnesium follows, coolant where boron or potassium follows"),
}
PROFILE = Profile(
    "Usual limits of wear metals",
    tuple(
        Limit(f"{metal}_{end}", f"{metal}, {end} above", "ppm", float(value), 1, 1000)
        for metal, (watch, act, _) in METALS.items()
        for end, value in (("watch", watch), ("act", act))
    ),
    SOURCE,
)


def rate(content: float, oil_hours: float) -> float:
    """Return the metal [ppm] gained in 1000 hours.

    Examples
    --------
    >>> rate(48, 400), rate(48, 2000)
    (120.0, 24.0)
    """
    return 1000 * content / oil_hours


def metal_ladder(metal: str, oil_hours: float | None, limits: Mapping[str, float]) -> Ladder:
    """The bands of a metal's content [ppm]; one band without a rating where the hours on the oil are not known."""
    if not oil_hours:
        return stairs("ppm", beyond("trend only", None, "worth its trend only, since the hours on the oil are not known"))
    return watch_and_act("ppm", *chosen(limits, metal, "watch", "act"), f"so high that its origin is to be found: {METALS[metal][2]}")


def judge_metal(content: float, metal: str, limits: Mapping[str, float], oil_hours: float | None = None) -> Judgement:
    """Judge one wear metal in engine oil.

    Parameters: content [ppm]; metal : one of METALS; oil_hours [h] on this filling, if known; limits : watch and act [ppm] by metal.

    References: common practice; makers publish no universal limit.
    """
    step = metal_ladder(metal, oil_hours, limits).step(content)
    said = f"{show(content, 'ppm')} of {metal}"
    if step.rating is None:
        return told("wear-metal", step, said, (content, "ppm", None), SOURCE, ("A single bottle from an oil of unknown age proves nothing.",))
    watch, act = chosen(limits, metal, "watch", "act")
    said = f"{said} after {show(oil_hours, 'h')}, {show(rate(content, oil_hours), 'ppm')} in 1000 h, against {show(watch, 'ppm')} and {show(act, 'ppm')},"
    notes = (
        "The same figure after a tenth of the hours is ten times the wear: follow the rate over three samples.",
        "One metal in one bottle never condemns an engine.",
    )
    return told("wear-metal", step, said, (content, "ppm", act), SOURCE, notes)


CRITERIA = (
    Criterion(
        "wear-metal",
        "One wear metal in engine oil",
        (
            Input("content", "Content", "number", "ppm", low=0, high=100_000),
            Input("metal", "Which metal", "choice", choices=tuple(METALS)),
            Input("oil_hours", "Hours on the oil", "number", "h", optional=True, low=0, high=50_000),
        ),
        SOURCE,
        judge_metal,
        "Engine oil of medium and high speed diesels; without hours on the oil a trend only.",
        "Both limits of each metal from both sides; trade guidance, no published example exists.",
        profile=PROFILE,
        ladder=metal_ladder,
    ),
)
