"""Water in lubricating and hydraulic oil, by service. Guidance of the trade: the maker's own figure always wins."""

from collections.abc import Mapping

from inspector.criteria.judgement import Criterion, Input, Judgement
from inspector.criteria.ladder import Ladder, beyond, stairs, watch_and_act
from inspector.criteria.profiles import Limit, Profile, chosen, key
from inspector.criteria.source import Source
from inspector.criteria.telling import told
from inspector.quantities import convert, show

SOURCE = Source("Water limits for lubricating, gear, hub and hydraulic oils", "no publisher", "trade guidance by service",
                "common practice")
# service -> watch above, act from: % by volume (1 % = 10 000 ppm)
LIMITS = {
    "thruster": (0.05, 0.10),
    "propeller hub": (0.05, 0.10),
    "gearbox": (0.05, 0.10),
    "hydraulic": (0.02, 0.05),
    "engine": (0.2, 0.5),
    "stern tube": (0.5, 1.0),
}
PROFILE = Profile("Usual limits of water in oil", tuple(
    Limit(f"{key(service)}_{end}", f"{service}, {label}", "%", value, 0.001, 10)
    for service, pair in LIMITS.items() for end, label, value in zip(("watch", "act"), ("watch above", "act from"), pair, strict=True)
), SOURCE)
NOTES = (
    "Free water or milky oil calls for action at any figure, and so does salt in the water.",
    "Laboratories often report ppm: 1 % is 10 000 ppm. Esters tolerate less, and the maker's figure wins.",
)
CAUSE = "to be acted on: find where the water enters"


def water_ladder(service: str, salt: str | None, limits: Mapping[str, float]) -> Ladder:
    """The bands of water [%] in the oil of a service; where its water is salt, only the call for action (common practice)."""
    if salt == "yes":
        return stairs("%", beyond("act", "poor", f"with salt in it {CAUSE}"))
    ladder = watch_and_act("%", *chosen(limits, service, "watch", "act"), CAUSE, act_from=True)
    dry, *rest = ladder.steps
    return stairs("%", type(dry)(dry.upto, dry.closed, "dry", "good", "dry enough"), *rest)


def judge_water(water: float, service: str, limits: Mapping[str, float], salt: str | None = None) -> Judgement:
    """Judge the water content of an oil.

    Parameters
    ----------
    water [%], 0 to 100; service : one of LIMITS; salt : is the water salt, yes or no, if tested; limits : watch and act [%] by service.

    References
    ----------
    Common practice: up to the first figure dry, from the second act. No publisher, so it may warn and never fail.
    """
    watch, act = chosen(limits, service, "watch", "act")
    ppm = show(convert(water, "%", "ppm"), "ppm")
    said = (f"{show(water, '%')} ({ppm}) of water in {service} oil, against watch above {show(watch, '%')} and "
            f"action from {show(act, '%')},")
    return told("oil-water", water_ladder(service, salt, limits).step(water), said, (water, "%", act), SOURCE, NOTES)


CRITERIA = (
    Criterion(
        "oil-water", "Water in lubricating, gear, hub and hydraulic oil",
        (Input("water", "Water content", "number", "%", low=0, high=100),
         Input("service", "Where the oil serves", "choice", choices=tuple(LIMITS)),
         Input("salt", "Is the water salt", "choice", choices=("no", "yes"), optional=True)),
        SOURCE, judge_water,
        "Mineral oil of engines, thrusters, propeller hubs, gearboxes, stern tubes and hydraulics; 0 to 100 %.",
        "Both limits of each service from both sides; trade guidance, no published example exists.", profile=PROFILE, ladder=water_ladder,
    ),
)
