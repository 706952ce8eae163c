"""Cleanliness of oil: the published code from particle counts, and codes against a target.

The code's table is used and never its logarithm, which disagrees with it just above each rounded
limit: 650 particles are code 17 by the table and 16 by the logarithm.
"""

import re
from collections.abc import Iterator, Mapping
from decimal import Decimal

from inspector.criteria.core.criterion import Criterion
from inspector.criteria.core.decimals import exact
from inspector.criteria.core.judgement import Judgement, refuse
from inspector.criteria.core.limit_sets import Limit, LimitSet, limit_prefix, settable_limit
from inspector.criteria.core.orders import AT_LEAST, AT_MOST, Order
from inspector.criteria.core.source import Source
from inspector.values.field import Field, number_field
from inspector.values.formatting import show

CODE = Source.common_practice(
    "ISO 4406, method for coding the level of contamination",
    "table 1 (seen); targets by service are common practice",
    edition="2021",
)
# The most particles in a millilitre, by code from 0 on; ISO 4406:2021, table 1 (seen).
_PARTICLES = (
    "0.01 0.02 0.04 0.08 0.16 0.32 0.64 1.3 2.5 5 10 20 40 80 160 320 640 1300 2500 5000 "
    "10000 20000 40000 80000 160000 320000 640000 1300000 2500000"
)
UPPER = tuple(map(Decimal, _PARTICLES.split()))
TOP = len(UPPER)  # the code of more than the table has, written "> 28"
SIZES = ("4", "6", "14")  # µm(c)
# Service -> codes at 4, 6 and 14 µm(c): the looser end of what the trade asks.
TARGETS = {
    "servo valves": (17, 15, 12),
    "proportional valves": (18, 16, 13),
    "piston pump": (18, 16, 13),
    "vane or gear pump": (20, 18, 15),
    "propeller hub or thruster": (19, 17, 14),
    "gearbox": (20, 18, 15),
}


def _limits() -> Iterator[Limit]:
    for service, codes in TARGETS.items():
        for size, code_limit in zip(SIZES, codes, strict=True):
            name, label = f"{limit_prefix(service)}_{size}", f"{service}, {size} µm"
            yield settable_limit(name, label, "", float(code_limit), 5, 28)


TARGET_LIMITS = LimitSet("Usual target codes", tuple(_limits()), CODE)
_WRITTEN = re.compile(r"(?:(-|>?\s?\d{1,2})\s*/\s*)?(>?\s?\d{1,2})\s*/\s*(>?\s?\d{1,2})")
NOTES = (
    "One step over is fair, more is poor: our own split.",
    "One step is twice the dirt. New oil from a drum is often dirtier than any target: "
    "ask for filtered filling.",
    "Laboratories that count in 100 ml give a hundred times the figure: choose the unit with care.",
    "The maker's figure wins.",
)
ONE_STEP = "one step over, twice the dirt: filter and sample again"
MORE_STEPS = "steps over: find where the dirt enters, filter and sample again"
# The codes at 4, 6 and 14 µm(c); None for a size that was not counted.
Codes = tuple[int | None, ...]


def code(particles: float) -> int:
    """Return the code of so many particles in a millilitre.

    Parameters
    ----------
    particles : float
        [per ml]

    Returns
    -------
    int
        0 to 28, and 29 for more than the table has.

    References
    ----------
    ISO 4406:2021, table 1 (seen).

    Examples
    --------
    >>> code(640), code(650), code(1300), code(3_000_000)
    (16, 17, 17, 29)
    """
    return sum(exact(particles) > upper for upper in UPPER)


def written(codes: Codes) -> str:
    """Return codes as they are written, "-" for a size that was not counted.

    Examples
    --------
    >>> written((18, 16, 13)), written((None, 16, 29))
    ('18/16/13', '-/16/> 28')
    """
    return "/".join(map(_written_code, codes))


def _written_code(found: int | None) -> str:
    if found is None:
        return "-"
    return "> 28" if found == TOP else str(found)


def parse_code(text: str) -> Codes:
    """Read a code of three sizes, or of two as reports without a count at 4 µm write it.

    Parameters
    ----------
    text : str
        Like "18/16/13", "-/16/13" or "16/13"; two parts are those at 6 and 14 µm(c), which the
        standard took in place of the older 5 and 15 µm.

    Returns
    -------
    tuple of (int or None)

    Raises
    ------
    CannotJudge
        It is no code, is above the table, or rises from a size to a larger one.

    Examples
    --------
    >>> parse_code("18/16/13"), parse_code("-/16/13"), parse_code("16/13")
    ((18, 16, 13), (None, 16, 13), (None, 16, 13))
    """
    found = _WRITTEN.fullmatch(text.strip())
    if not found:
        refuse("code", text, f"'{text}' is not a code like 18/16/13, -/16/13 or 16/13")
    codes = tuple(map(_parsed_code, found.groups()))
    counted = [each for each in codes if each is not None]
    if max(counted) > TOP:
        refuse("code", text, f"'{text}' holds a code above 28, where the table ends")
    # Each count includes all larger particles, so a rise is a slip of the pen.
    if counted != sorted(counted, reverse=True):
        why = f"'{text}' counts more large particles than small ones, which cannot be"
        refuse("code", text, why)
    return codes


def _parsed_code(text: str | None) -> int | None:
    if text in (None, "-"):
        return None
    return TOP if ">" in text else int(text)


def _judge(codes: Codes, service: str, limits: Mapping[str, float], read: str) -> Judgement:
    """Judge codes by the size that is most above the target of a service."""
    targets = tuple(int(limits[f"{limit_prefix(service)}_{size}"]) for size in SIZES)
    pairs = zip(codes, targets, strict=True)
    steps = max(found - target for found, target in pairs if found is not None)
    if steps <= 0:
        band, rating, meaning = "clean enough", "good", "clean enough"
    elif steps == 1:
        band, rating, meaning = "one step over", "fair", ONE_STEP
    else:
        band, rating, meaning = "over the target", "poor", f"{steps} {MORE_STEPS}"
    compared = f"{read} {written(codes)} in the oil of {service}, against {written(targets)}"
    sentence = f"{compared}, is {meaning}."
    return Judgement(band, rating, steps, None, 0, -steps, sentence, NOTES)


def judge_counts(
    larger_6: float,
    larger_14: float,
    service: str,
    limits: Mapping[str, float],
    larger_4: float | None = None,
) -> Judgement:
    """Judge the cleanliness of an oil by particle counts.

    Parameters
    ----------
    larger_6, larger_14 : float
        Particles larger than 6 and 14 µm(c) [per ml], each with all larger ones.
    service : str
        One of TARGETS.
    limits : mapping of str to float
        The target code of each service and size.
    larger_4 : float, optional
        Particles larger than 4 µm(c) [per ml], which a microscope does not count.

    Returns
    -------
    Judgement

    Raises
    ------
    CannotJudge
        The counts rise from a size to a larger one.

    References
    ----------
    ISO 4406:2021, table 1 (seen); targets by service are common practice, no source.
    """
    counts = (larger_4, larger_6, larger_14)
    given = [count for count in counts if count is not None]
    codes = tuple(None if count is None else code(count) for count in counts)
    shown = ", ".join(show(count, "per ml") for count in given)
    return _judge(codes, service, limits, f"Counts of {shown} make code")


def judge_code(code: str, service: str, limits: Mapping[str, float]) -> Judgement:
    """Judge the cleanliness of an oil by the code on a laboratory's sheet.

    Parameters
    ----------
    code : str
        Like 18/16/13 or -/16/13.
    service : str
        One of TARGETS.
    limits : mapping of str to float
        The target code of each service and size.

    Returns
    -------
    Judgement

    Raises
    ------
    CannotJudge
        It is no code.

    References
    ----------
    ISO 4406:2021 (seen); targets by service are common practice, no source.
    """
    return _judge(parse_code(code), service, limits, "Code")


def _count(size: str, optional: bool = False) -> Field:
    """Return the field of a count of particles larger than a size."""
    return number_field(
        f"larger_{size}",
        f"Particles larger than {size} µm",
        "per ml",
        0,
        100_000_000,
        optional=optional,
    )


_SERVICE = Field("service", "Where the oil serves", "choice", choices=tuple(TARGETS))
CRITERIA = (
    Criterion(
        "oil-cleanliness",
        "Cleanliness of an oil by particle counts",
        (_count("6"), _count("14"), _SERVICE, _count("4", True)),
        CODE,
        judge_counts,
        "Counts in a millilitre, each including all larger particles.",
        "Every limit of the published table from both sides, and nine samples by it.",
        limit_set=TARGET_LIMITS,
        orders=(
            Order("larger_6", AT_LEAST, "larger_14", "a count includes all larger particles"),
            Order("larger_6", AT_MOST, "larger_4", "a count includes all larger particles"),
        ),
    ),
    Criterion(
        "oil-cleanliness-code",
        "Cleanliness of an oil by its code",
        (Field("code", "Code", "text"), _SERVICE),
        CODE,
        judge_code,
        "Codes of three sizes, or of two by a microscope, 0 to 28.",
        "Codes at, one and two steps above a target.",
        limit_set=TARGET_LIMITS,
    ),
)
