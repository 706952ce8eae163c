"""The class of an estimate by how far the work is defined."""

from dataclasses import dataclass

from inspector.conversion.core.span import ConversionError
from inspector.criteria.core.source import Source
from inspector.values.formatting import show

AACE = Source.recalled(
    "AACE International Recommended Practice 18R-97",
    "table of estimate classes",
    edition="edition not read",
)
# A visit of some hours cannot claim better: our own judgement.
BEST_CLASS_OF_A_VISIT = 4


@dataclass(frozen=True)
class EstimateClass:
    """What a class of estimate claims.

    Parameters
    ----------
    defined : tuple of (float, float)
        Least and most share of the work that is defined [%].
    below, above : tuple of (float, float)
        How far the cost may be below and above the estimate [%], each from one end to the other.
    """

    defined: tuple[float, float]
    below: tuple[float, float]
    above: tuple[float, float]


# AACE 18R-97; the ends as commonly printed (from memory).
CLASSES = {
    5: EstimateClass((0, 2), (-50, -20), (30, 100)),
    4: EstimateClass((1, 15), (-30, -15), (20, 50)),
    3: EstimateClass((10, 40), (-20, -10), (10, 30)),
    2: EstimateClass((30, 75), (-15, -5), (5, 20)),
    1: EstimateClass((65, 100), (-10, -3), (3, 15)),
}


def estimate_class(definition: float) -> int:
    """Return the class of an estimate; where two overlap, the less certain one.

    Parameters
    ----------
    definition : float
        Share of the work that is defined [%].

    Returns
    -------
    int
        5, the least certain, to 1.

    Raises
    ------
    ConversionError
        The share is not from 0 to 100.

    References
    ----------
    AACE International Recommended Practice 18R-97, table of estimate classes (*from memory*).
    """
    if not 0 <= definition <= 100:
        raise ConversionError(
            f"The share of definition must be 0 to 100 %, not {show(definition, '%')}.",
            field="definition",
        )
    # The classes count down as they become more certain.
    return max(
        number
        for number, claims in CLASSES.items()
        if claims.defined[0] <= definition <= claims.defined[1]
    )


def class_of_visit(definition: float | None) -> int:
    """Return the class that an estimate from a visit may claim.

    Parameters
    ----------
    definition : float or None
        Share of the work that is defined [%]; None where it is not given.

    Returns
    -------
    int
        5 where it is not given, and never better than 4.

    References
    ----------
    AACE 18R-97 (*from memory*); that a visit is no better than class 4 is a model of our own.
    """
    return 5 if definition is None else max(BEST_CLASS_OF_A_VISIT, estimate_class(definition))
