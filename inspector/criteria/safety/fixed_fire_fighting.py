"""Fixed fire-fighting: pressure tests of carbon dioxide cylinders."""

import math

from inspector.criteria.core.band_judgement import judge_by_band
from inspector.criteria.core.bands import Bands, bands_of, below, beyond
from inspector.criteria.core.criterion import Criterion
from inspector.criteria.core.judgement import Judgement
from inspector.criteria.core.orders import AT_MOST, Order
from inspector.criteria.core.source import Source
from inspector.values.field import Field, number_field
from inspector.values.formatting import show

CYLINDERS = Source.seen(
    "MSC.1/Circ.1318/Rev.1, fixed carbon dioxide systems",
    "25 May 2021, extract read in a public copy",
    "6.1.2, pressure tests of cylinders",
)


def cylinders_asked(cylinders: int, failed: int, age: float) -> int:
    """Return how many cylinders must have been pressure-tested at an age [years].

    Parameters
    ----------
    cylinders : int
        Cylinders of the system.
    failed : int
        Of them failed.
    age : float
        Age of the cylinders [years].

    Returns
    -------
    int
        How many cylinders must have been pressure-tested at an age [years].

    References
    ----------
    MSC.1/Circ.1318/Rev.1, 6.1.2 (seen).

    Examples
    --------
    >>> cylinders_asked(38, 0, 10), cylinders_asked(38, 1, 10), cylinders_asked(38, 2, 10)
    (4, 19, 38)
    """
    # Two failures say that the batch is bad, and after twenty years all are due anyway.
    if age >= 20 or failed > 1:
        return cylinders
    if failed == 1:
        return math.ceil(cylinders / 2)
    return math.ceil(cylinders / 10) if age >= 10 else 0


def _cylinders_bands(cylinders: int, failed: int, age: float) -> Bands:
    """Return the bands of the number of cylinders tested."""
    return bands_of(
        "",
        below(cylinders_asked(cylinders, failed, age), "too few", "failed", "too few"),
        beyond("enough", "good", "enough"),
    )


def judge_cylinders(tested: int, cylinders: int, failed: int, age: float) -> Judgement:
    """Judge how many carbon dioxide cylinders were pressure-tested in the last ten years.

    Parameters
    ----------
    tested : int
        Cylinders tested.
    cylinders : int
        Cylinders of the system.
    failed : int
        Of them failed.
    age : float
        Age of the cylinders [years].

    Returns
    -------
    Judgement

    References
    ----------
    MSC.1/Circ.1318/Rev.1, 6.1.2: at ten years a tenth; one fails, a half; more, all; all before the
    twentieth year (seen).
    """
    limit = cylinders_asked(cylinders, failed, age)
    return judge_by_band(
        _cylinders_bands(cylinders, failed, age).band_of(tested),
        f"A count of {show(tested, '')} tested cylinders, against at least {limit} "
        f"of {cylinders} at {show(age, 'years')} with {failed} failed,",
        (tested, "", limit),
        at_least=True,
    )


CRITERIA = (
    Criterion(
        "co2-cylinder-tests",
        "Number of carbon dioxide cylinders pressure-tested",
        (
            Field("tested", "Cylinders tested", "whole", low=0, high=500),
            Field("cylinders", "Cylinders of the system", "whole", low=1, high=500),
            Field("failed", "Of them failed", "whole", low=0, high=500),
            number_field("age", "Age of the cylinders", "years", 0, 60),
        ),
        CYLINDERS,
        judge_cylinders,
        "Fixed carbon dioxide systems of 1 to 500 cylinders up to 60 years old.",
        "Each step from both sides for 38 cylinders.",
        bands=_cylinders_bands,
        orders=(
            Order("tested", AT_MOST, "cylinders", "no more can have been tested than there are"),
            Order("failed", AT_MOST, "tested", "no more can have failed than were tested"),
        ),
    ),
)
