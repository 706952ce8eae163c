"""Cleanliness of hydraulic and gear oil: the published code from particle counts, and codes against a target.

The code's table is used and never its logarithm, which disagrees with it just above each rounded limit: 650 particles are
code 17 by the table and 16 by the logarithm.
"""

import re
from collections.abc import Mapping
from decimal import Decimal

from inspector.criteria.exact import exact
from inspector.criteria.judgement import Criterion, Input, Judgement, refuse
from inspector.criteria.profiles import Limit, Profile, key
from inspector.criteria.source import Source
from inspector.quantities import show

CODE = Source("ISO 4406, method for coding the level of contamination", "2021", "table 1 (seen); targets by service are common practice", "common practice")
# code -> most particles in a millilitre; ISO 4406:2021, table 1 (seen)
_FINE = ("0.01", "0.02", "0.04", "0.08", "0.16", "0.32", "0.64", "1.3", "2.5")
_COARSE = (5, 10, 20, 40, 80, 160, 320, 640, 1300, 2500, 5000, 10_000, 20_000, 40_000, 80_000, 160_000, 320_000, 640_000, 1_300_000, 2_500_000)
UPPER = tuple(map(Decimal, (*_FINE, *_COARSE)))
TOP = len(UPPER)  # what stands for "> 28"
SIZES = ("4", "6", "14")  # µm(c)
# service -> codes at 4, 6 and 14 µm(c): the looser end of what the trade asks
TARGETS = {
    "servo valves": (17, 15, 12),
    "proportional valves": (18, 16, 13),
    "piston pump": (18, 16, 13),
    "vane or gear pump": (20, 18, 15),
    "propeller hub or thruster": (19, 17, 14),
    "gearbox": (20, 18, 15),
}
PROFILE = Profile(
    "Usual target codes",
    tuple(
        Limit(f"{key(service)}_{size}", f"{service}, {size} µm", "", float(code), 5, 28)
        for service, codes in TARGETS.items()
        for size, code in zip(SIZES, codes, strict=True)
    ),
    CODE,
)
_WRITTEN = re.compile(r"(-|>?\s?\d{1,2})\s*/\s*(>?\s?\d{1,2})\s*/\s*(>?\s?\d{1,2})")
SAMPLE = (
    "One step is twice the dirt. New oil from a drum is often dirtier than any target: ask for filtered filling.",
    "Laboratories that count in 100 ml give a hundred times the figure: choose the unit with care.",
    "The maker's figure wins.",
)


def code(particles: float) -> int:
    """Return the code of so many particles in a millilitre, 0 to 28, and 29 for more than the table holds. ISO 4406:2021, table 1 (seen).

    Examples
    --------
    >>> code(640), code(650), code(1300), code(3_000_000)
    (16, 17, 17, 29)
    """
    return sum(exact(particles) > upper for upper in UPPER)


def written(codes: tuple[int | None, ...]) -> str:
    """Return codes as they are written, "-" for a size not counted.

    Examples
    --------
    >>> written((18, 16, 13)), written((None, 16, 29))
    ('18/16/13', '-/16/> 28')
    """
    return "/".join("-" if one is None else "> 28" if one == TOP else str(one) for one in codes)


def parse_code(text: str) -> tuple[int | None, ...]:
    """Read a code like "18/16/13" or "-/16/13"; refuse what is none, or what rises from a size to a larger one.

    Examples
    --------
    >>> parse_code("18/16/13"), parse_code("-/16/13")
    ((18, 16, 13), (None, 16, 13))
    """
    found = _WRITTEN.fullmatch(text.strip())
    if not found:
        refuse("oil-cleanliness-code", "code", text, f"'{text}' is not a code of three sizes like 18/16/13 or -/16/13")
    codes = tuple(None if one == "-" else TOP if ">" in one else int(one) for one in found.groups())
    if any(one is not None and one > TOP for one in codes):
        refuse("oil-cleanliness-code", "code", text, f"'{text}' holds a code above 28, where the table ends")
    counted = [one for one in codes if one is not None]
    if counted != sorted(counted, reverse=True):
        refuse("oil-cleanliness-code", "code", text, f"'{text}' counts more large particles than small ones, which cannot be")
    return codes


def _judge(name: str, codes: tuple[int | None, ...], service: str, limits: Mapping[str, float], read: str) -> Judgement:
    targets = tuple(int(limits[f"{key(service)}_{size}"]) for size in SIZES)
    steps = max(one - target for one, target in zip(codes, targets, strict=True) if one is not None)
    if steps <= 0:
        band, rating, meaning = "clean enough", "good", "clean enough"
    elif steps == 1:
        band, rating, meaning = "one step over", "fair", "one step over, twice the dirt: filter and sample again"
    else:
        band, rating, meaning = "over the target", "poor", f"{steps} steps over: find where the dirt enters, filter and sample again"
    sentence = f"{read} {written(codes)} in the oil of {service}, against {written(targets)}, is {meaning}."
    return Judgement(name, band, rating, steps, None, 0, -steps, sentence, CODE, ("One step over is fair, more is poor: our own split.", *SAMPLE))


def judge_counts(larger_6: float, larger_14: float, service: str, limits: Mapping[str, float], larger_4: float | None = None) -> Judgement:
    """Judge the cleanliness of an oil by particle counts.

    Parameters: larger_4 (not by a microscope), larger_6, larger_14 [per ml], each counting all larger than so many µm(c); service : one of TARGETS;
    limits : the target code of each service and size.

    References: ISO 4406:2021, table 1 (seen); targets by service (common practice).
    """
    counts = [count for count in (larger_4, larger_6, larger_14) if count is not None]
    if counts != sorted(counts, reverse=True):
        refuse("oil-cleanliness", "larger_6", larger_6, "counts include all larger particles, so none can rise from a size to a larger one")
    codes = tuple(None if count is None else code(count) for count in (larger_4, larger_6, larger_14))
    told_counts = ", ".join(show(count, "per ml") for count in counts)
    return _judge("oil-cleanliness", codes, service, limits, f"Counts of {told_counts} make code")


def judge_code(code: str, service: str, limits: Mapping[str, float]) -> Judgement:
    """Judge the cleanliness of an oil by the code on a laboratory's sheet.

    Parameters: code : like 18/16/13 or -/16/13; service : one of TARGETS; limits : the target code of each service and size.

    References: ISO 4406:2021 (seen); targets by service (common practice).
    """
    return _judge("oil-cleanliness-code", parse_code(code), service, limits, "Code")


def _count(size: str, optional: bool = False) -> Input:
    return Input(f"larger_{size}", f"Particles larger than {size} µm", "number", "per ml", optional=optional, low=0, high=100_000_000)


_SERVICE = Input("service", "Where the oil serves", "choice", choices=tuple(TARGETS))
CRITERIA = (
    Criterion(
        "oil-cleanliness",
        "Cleanliness of an oil by particle counts",
        (_count("6"), _count("14"), _SERVICE, _count("4", True)),
        CODE,
        judge_counts,
        "Counts in a millilitre, each including all larger particles.",
        "Every limit of the published table from both sides, and nine samples by it.",
        profile=PROFILE,
    ),
    Criterion(
        "oil-cleanliness-code",
        "Cleanliness of an oil by its code",
        (Input("code", "Code", "text"), _SERVICE),
        CODE,
        judge_code,
        "Codes of three sizes, or of two by a microscope, 0 to 28.",
        "Codes at, one and two steps above a target.",
        profile=PROFILE,
    ),
)
