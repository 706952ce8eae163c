"""Heat through the walls of a cold store, compared with the classes for insulated vehicles."""

from inspector.criteria.core.band_judgement import judge_by_band
from inspector.criteria.core.bands import Bands, bands_of, beyond, to
from inspector.criteria.core.criterion import Criterion
from inspector.criteria.core.decimals import exact
from inspector.criteria.core.judgement import Judgement, refuse
from inspector.criteria.core.source import Source
from inspector.values.field import Field, number_field
from inspector.values.formatting import show
from inspector.values.numbers import difference

ATP = Source.seen(
    "ATP agreement on the carriage of perishable foodstuffs",
    "text read in a State's collection of treaties",
    "annex 1, paragraph 1: K of heavily and of normally insulated bodies",
)
CONDUCTANCE = {"heavy": 0.40, "normal": 0.70}  # W/(m² K)
LEAST_DIFFERENCE = 10.0  # K, below which a measured heat gain says nothing: our own choice


def heat_limit(area: float, inside: float, outside: float, insulation: str) -> float:
    """Return the most heat through an area between two temperatures: K A dT.

    Parameters
    ----------
    area : float
        Area of all sides [m²].
    inside : float
        Inside [°C].
    outside : float
        Outside [°C].
    insulation : str
        heavy (K 0.40) or normal (K 0.70).

    Returns
    -------
    float
        Heat [W].

    References
    ----------
    ATP agreement, annex 1.

    Examples
    --------
    >>> heat_limit(94, -20, 35, "heavy")
    2068.0
    """
    return float(exact(CONDUCTANCE[insulation]) * exact(area) * exact(difference(outside, inside)))


def _heat_bands(area: float, inside: float, outside: float, store: str) -> Bands:
    """Return the bands of steady heat gain [W]; the wider limit applies to chilled stores."""
    # In the order of the table: the better insulation first.
    heavy, normal = (heat_limit(area, inside, outside, kind) for kind in CONDUCTANCE)
    wet = beyond(
        "poor insulation", "poor", "too much: wet or missing insulation, or a door that leaks"
    )
    # The agreement has two kinds of bodies, and a chilled store may be of either.
    if store == "chilled":
        return bands_of("W", to(normal, "insulated", "good", "as of an insulated store"), wet)
    return bands_of(
        "W",
        to(heavy, "well insulated", "good", "as of a heavily insulated store"),
        to(
            normal,
            "weak for frozen goods",
            "fair",
            "as of normal insulation, weak for frozen goods",
        ),
        wet,
    )


def judge_heat(heat: float, area: float, inside: float, outside: float, store: str) -> Judgement:
    """Judge the steady heat gain of a store, by an electric heater or the balance of the plant.

    Parameters
    ----------
    heat : float
        Steady heat gain [W].
    area : float
        Area of all sides [m²].
    inside : float
        Inside [°C].
    outside : float
        Outside [°C].
    store : str
        Kind of store: frozen or chilled.

    Returns
    -------
    Judgement

    Raises
    ------
    CannotJudge
        Less than 10 K between inside and outside, where such a figure says nothing.

    References
    ----------
    ATP agreement: K at most 0.40 W/(m² K) heavily, 0.70 normally insulated; made for
    vehicles, taken as a yardstick.
    """
    if abs(outside - inside) < LEAST_DIFFERENCE:
        refuse(
            "outside",
            outside,
            f"between {show(inside, '°C')} and {show(outside, '°C')} are less than "
            f"{show(LEAST_DIFFERENCE, 'K')}",
        )
    # heat flows either way through a wall, and a heater test warms the store
    cold, warm = sorted((inside, outside))
    limit = heat_limit(area, cold, warm, "heavy" if store == "frozen" else "normal")
    # W/(m² K): the K that the agreement limits.
    share = heat / area / (warm - cold)
    notes = (
        f"That is {share:.2f} W per m² and K. Made for vehicles; taken here as a yardstick.",
        "The reliable way is a known heater in the closed room until it is steady.",
    )
    return judge_by_band(
        _heat_bands(area, cold, warm, store).band_of(heat),
        f"A heat gain of {show(heat, 'W')} in a {store} store, against at most {show(limit, 'W')},",
        (heat, "W", limit),
        notes,
    )


CRITERIA = (
    Criterion(
        "store-heat-gain",
        "Heat gain of a cold store",
        (
            number_field("heat", "Steady heat gain", "W", 0, 100_000),
            number_field("area", "Area of all sides", "m²", 5, 1000),
            number_field("inside", "Inside", "°C", -60, 60),
            number_field("outside", "Outside", "°C", -60, 60),
            Field("store", "Kind of store", "choice", choices=("frozen", "chilled")),
        ),
        ATP,
        judge_heat,
        "Stores of 5 to 1000 m² with at least 10 K across the walls.",
        "Three rooms by our own arithmetic on recalled limits.",
    ),
)
