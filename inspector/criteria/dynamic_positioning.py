"""Equipment of a dynamic positioning system against the counts usual for its class.

The circulars are functional texts and no count tables: the counts are class practice. So a count can show equipment
consistent with a class, never the class, which rests on notation, verification document and failure analysis.
"""

from datetime import date

from inspector.criteria.judgement import Criterion, Input, Judgement
from inspector.criteria.source import Source

CIRC_645 = Source("Class practice with MSC/Circ.645, Guidelines for vessels with dynamic positioning systems",
                  "1994", "3.3 and 3.4, counts recalled", "memory")
CIRC_1580 = Source("Class practice with MSC.1/Circ.1580, Guidelines for vessels and units with dynamic positioning "
                   "(DP) systems", "2017", "3.3 and 3.4, counts recalled", "memory")
FIRST, NEXT = date(1994, 7, 1), date(2017, 6, 9)  # built on or after: which circular (both dates seen)

ITEMS = {"computers": "control computers", "references": "position references", "heading": "heading sensors",
         "motion": "motion sensors", "wind": "wind sensors", "ups": "uninterruptible supplies"}
# least counts by class, in the order of ITEMS; in class 3 one of each stands at the backup station
COUNTS = {
    CIRC_645: {1: (1, 1, 1, 1, 1, 0), 2: (2, 3, 2, 2, 2, 1), 3: (3, 3, 3, 3, 3, 3)},
    CIRC_1580: {1: (1, 2, 1, 1, 1, 1), 2: (2, 3, 2, 3, 3, 2), 3: (3, 3, 3, 3, 3, 3)},
}
NOTES = (
    "Counts say 'equipment consistent with the class'; the class itself rests on notation, verification document, "
    "failure analysis and trials.",
    "One shared pump, tank, supply or bus-tie undoes the redundancy that the counts suggest.",
    "Where control depends fully on one kind of sensor, three of it are asked in classes 2 and 3.",
    "The verification document lapses on a change of flag and after unapproved alteration (MSC/Circ.645: seen).",
)


def circular(built: date) -> Source:
    """Return which circular judges a vessel by her build date: 645 to 8 June 2017, 1580 from 9 June 2017 (seen)."""
    return CIRC_1580 if built >= NEXT else CIRC_645


def shortfall(source: Source, dp_class: int, counts: tuple[int, ...]) -> dict[str, int]:
    """Return what is missing for a class, item by item, in the order of ITEMS.

    Examples
    --------
    >>> shortfall(CIRC_645, 2, (2, 2, 2, 2, 2, 1))
    {'references': 1}
    """
    asked = COUNTS[source][dp_class]
    return {name: need - have for name, need, have in zip(ITEMS, asked, counts, strict=True) if have < need}


def judge_equipment(
    built: date, class_claimed: str, computers: int, references: int, heading: int, motion: int, wind: int, ups: int,
) -> Judgement:
    """Judge whether the equipment counted is consistent with the class claimed.

    Parameters
    ----------
    built : on or after 1 July 1994; class_claimed : 1, 2 or 3; computers, references, heading, motion, wind, ups :
    pieces of each that work.

    Returns
    -------
    Judgement : value the highest class the counts are consistent with (0 for none), limit the class claimed.

    References
    ----------
    MSC/Circ.645 or MSC.1/Circ.1580 by build date (dates seen), counts as class practice (memory).
    """
    source, claimed = circular(built), int(class_claimed)
    counts = (computers, references, heading, motion, wind, ups)
    reached = max((c for c in COUNTS[source] if not shortfall(source, c, counts)), default=0)
    missing = shortfall(source, claimed, counts)
    circular_name = source.title.removeprefix("Class practice with ").partition(",")[0]
    said = f"Built {built.isoformat()}, claiming class {claimed}, judged by class practice with {circular_name}"
    if not missing:
        return Judgement("dp-equipment", f"equipment consistent with class {claimed}", "good", reached, None, claimed,
                         reached - claimed, f"{said}: the equipment counted is consistent with it.", source, NOTES)
    short = ", ".join(f"{number} of the {ITEMS[name]}" for name, number in missing.items())
    sentence = f"{said}: missing are {short}, so the equipment is not consistent with it."
    return Judgement("dp-equipment", f"equipment short of class {claimed}", "failed", reached, None, claimed,
                     reached - claimed, sentence, source, NOTES)


CRITERIA = (
    Criterion(
        "dp-equipment", "Dynamic positioning equipment against the class claimed",
        (Input("built", "Built", "date", low=FIRST),
         Input("class_claimed", "Class claimed", "choice", choices=("1", "2", "3")),
         *(Input(name, label.capitalize(), "whole", low=0, high=20) for name, label in ITEMS.items())),
        CIRC_645, judge_equipment,
        "Vessels built on or after 1 July 1994; counts of working equipment, 0 to 20 each.",
        "The build date from both sides, each count one short; three references in classes 2 and 3 are seen, the rest "
        "recalled.",
    ),
)
