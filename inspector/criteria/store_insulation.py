"""Heat through the walls of a cold store, held against the classes of the agreement for insulated vehicles."""

from inspector.criteria.exact import exact
from inspector.criteria.judgement import Criterion, Input, Judgement, refuse
from inspector.criteria.ladder import Ladder, beyond, stairs, to
from inspector.criteria.source import Source
from inspector.criteria.telling import told
from inspector.quantities import difference, show

ATP = Source("ATP agreement on the carriage of perishable foodstuffs", "recalled", "K of heavily and of normally insulated bodies", "memory")
CONDUCTANCE = {"heavy": 0.40, "normal": 0.70}  # W/(m² K)
LEAST_DIFFERENCE = 10.0  # K, below which a measured heat gain says nothing: our own choice


def heat_limit(area: float, inside: float, outside: float, insulation: str) -> float:
    """Return the most heat [W] through an area [m²] between two temperatures [°C]: K A dT, K 0.40 (heavy) or 0.70 (normal). ATP (memory).

    Examples
    --------
    >>> heat_limit(94, -20, 35, "heavy")
    2068.0
    """
    return float(exact(CONDUCTANCE[insulation]) * exact(area) * exact(difference(outside, inside)))


def heat_ladder(area: float, inside: float, outside: float, store: str) -> Ladder:
    """Bands of steady heat gain [W]; a chilled store is held to the wider limit, a frozen one to the narrower."""
    heavy, normal = (heat_limit(area, inside, outside, kind) for kind in CONDUCTANCE)
    wet = beyond("poor insulation", "poor", "too much: wet or missing insulation, or a door that leaks")
    if store == "chilled":
        return stairs("W", to(normal, "insulated", "good", "as of an insulated store"), wet)
    return stairs(
        "W",
        to(heavy, "well insulated", "good", "as of a heavily insulated store"),
        to(normal, "weak for frozen goods", "fair", "as of normal insulation, weak for frozen goods"),
        wet,
    )


def judge_heat(heat: float, area: float, inside: float, outside: float, store: str) -> Judgement:
    """Judge the steady heat gain of a store, as an electric heater or the plant's own balance gives it.

    Parameters
    ----------
    heat [W], steady, 0 to 100 000; area [m²] of its walls, floor and deckhead, 5 to 1000; inside, outside [°C]; store : frozen or chilled.

    Errors
    ------
    CannotJudge : less than 10 K between inside and outside, where such a figure says nothing.

    References
    ----------
    ATP agreement: K at most 0.40 W/(m² K) heavily, 0.70 normally insulated (memory); made for vehicles, taken as a yardstick.
    """
    if abs(outside - inside) < LEAST_DIFFERENCE:
        refuse("store-heat-gain", "outside", outside, f"between {show(inside, '°C')} and {show(outside, '°C')} lie less than {show(LEAST_DIFFERENCE, 'K')}")
    cold, warm = sorted((inside, outside))
    limit = heat_limit(area, cold, warm, "heavy" if store == "frozen" else "normal")
    share = heat / area / (warm - cold)
    notes = (
        f"That is {share:.2f} W per m² and K. Made for vehicles; taken here as a yardstick.",
        "The reliable way is a known heater in the closed room until it is steady.",
    )
    return told(
        "store-heat-gain",
        heat_ladder(area, cold, warm, store).step(heat),
        f"A heat gain of {show(heat, 'W')} in a {store} store, against at most {show(limit, 'W')},",
        (heat, "W", limit),
        ATP,
        notes,
    )


CRITERIA = (
    Criterion(
        "store-heat-gain",
        "Heat gain of a cold store",
        (
            Input("heat", "Steady heat gain", "number", "W", low=0, high=100_000),
            Input("area", "Area of all sides", "number", "m²", low=5, high=1000),
            Input("inside", "Inside", "number", "°C", low=-60, high=60),
            Input("outside", "Outside", "number", "°C", low=-60, high=60),
            Input("store", "Kind of store", "choice", choices=("frozen", "chilled")),
        ),
        ATP,
        judge_heat,
        "Stores of 5 to 1000 m² with at least 10 K across the walls.",
        "Three rooms by our own arithmetic on recalled limits.",
    ),
)
