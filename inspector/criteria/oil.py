"""Water in lubricating and hydraulic oil, by service. Guidance of the trade: the maker's own figure always wins."""

from inspector.criteria.judgement import Criterion, Input, Judgement, Source
from inspector.quantities import convert, difference, show

SOURCE = Source("Water limits for gear, hub and hydraulic oils", "no publisher", "trade guidance by service",
                "common practice")
# service -> watch above, act from: % by volume (1 % = 10 000 ppm)
LIMITS = {
    "thruster": (0.05, 0.10),
    "propeller hub": (0.05, 0.10),
    "gearbox": (0.05, 0.10),
    "hydraulic": (0.02, 0.05),
}
NOTES = (
    "Free water or milky oil calls for action at any figure, and so does salt in the water.",
    "Laboratories often report ppm: 1 % is 10 000 ppm. Esters tolerate less, and the maker's figure wins.",
)


def water_band(water: float, service: str) -> str:
    """Return "dry", "watch" or "act" for water [%] in the oil of a service (common practice).

    Examples
    --------
    >>> water_band(0.05, "thruster"), water_band(0.051, "thruster"), water_band(0.1, "thruster")
    ('dry', 'watch', 'act')
    """
    watch, act = LIMITS[service]
    return "dry" if water <= watch else "watch" if water < act else "act"


def judge_water(water: float, service: str) -> Judgement:
    """Judge the water content of an oil.

    Parameters
    ----------
    water [%], 0 to 100; service : one of LIMITS.

    References
    ----------
    Common practice: up to the first figure dry, from the second act. No publisher, so it may warn and never fail.
    """
    watch, act = LIMITS[service]
    band = water_band(water, service)
    rating, meaning = {"dry": ("good", "dry enough"), "watch": ("fair", "to be watched, and sampled again"),
                       "act": ("poor", "to be acted on: find where the water enters")}[band]
    ppm = show(convert(water, "%", "ppm"), "ppm")
    sentence = (f"{show(water, '%')} ({ppm}) of water in {service} oil, against watch above {show(watch, '%')} and "
                f"action from {show(act, '%')}, is {meaning}.")
    return Judgement("oil-water", band, rating, water, "%", act, difference(act, water), sentence, SOURCE, NOTES)


CRITERIA = (
    Criterion(
        "oil-water", "Water in gear, hub and hydraulic oil",
        (Input("water", "Water content", "number", "%", low=0, high=100),
         Input("service", "Where the oil serves", "choice", choices=tuple(LIMITS))),
        SOURCE, judge_water,
        "Mineral oil of thrusters, propeller hubs, gearboxes and hydraulics; 0 to 100 %.",
        "Both limits of each service from both sides; trade guidance, no published example exists.",
    ),
)
