"""Equipment of a dynamic positioning system against the counts usual for its class.

The circulars are functional texts without tables of counts: the counts are class practice. So a
count can show equipment consistent with a class, never the class itself, which depends on notation,
verification document and failure analysis.
"""

from datetime import date

from inspector.criteria.core.criterion import Criterion
from inspector.criteria.core.judgement import Judgement
from inspector.criteria.core.source import Source
from inspector.values.field import Field

CIRC_645 = Source.recalled(
    "Class practice with MSC/Circ.645, Guidelines for vessels with dynamic positioning systems",
    "3.3 and 3.4, counts recalled; three references and a supply for each computer seen",
    edition="1994",
)
CIRC_1580 = Source.recalled(
    "Class practice with MSC.1/Circ.1580, Guidelines for vessels and units with dynamic "
    "positioning (DP) systems",
    "3.3 and 3.4, counts recalled; three references and a supply for each computer seen",
    edition="2017",
)
# vessels built on or after: the first circular, the next one (both dates seen)
FIRST, NEXT = date(1994, 7, 1), date(2017, 6, 9)

ITEMS = {
    "computers": "control computers",
    "references": "position references",
    "heading": "heading sensors",
    "motion": "motion sensors",
    "wind": "wind sensors",
    "ups": "uninterruptible supplies",
}
# heading sensors in class 2 where control does not depend fully on them
INDEPENDENT_HEADING = 2
# least counts by class, in the order of ITEMS; in class 3 one of each is at the backup station
COUNTS = {
    CIRC_645: {1: (1, 1, 1, 1, 1, 0), 2: (2, 3, 3, 2, 2, 2), 3: (3, 3, 3, 3, 3, 3)},
    CIRC_1580: {1: (1, 2, 1, 1, 1, 1), 2: (2, 3, 3, 3, 3, 2), 3: (3, 3, 3, 3, 3, 3)},
}
NOTES = (
    (
        "Counts say 'equipment consistent with the class'; the class itself depends on notation, "
        "verification document, failure analysis and trials."
    ),
    "One shared pump, tank, supply or bus-tie undoes the redundancy that the counts suggest.",
    "Where control depends fully on one kind of sensor, three of it are asked in classes 2 and 3: "
    "so three heading sensors, unless the failure analysis shows that control does not depend on "
    "them.",
    "Each control computer needs its own uninterruptible supply in classes 2 and 3, so that a "
    "failure of one takes no more than one computer (MSC/Circ.645, 3.4: seen).",
    (
        "The verification document lapses on a change of flag and after unapproved "
        "alteration (MSC/Circ.645: seen)."
    ),
)


def circular(built: date) -> Source:
    """Return the circular that applies by the build date: 645 to 8 June 2017, 1580 afterwards.

    Parameters
    ----------
    built : date
        Built.

    Returns
    -------
    Source

    References
    ----------
    Both circulars (dates seen).
    """
    return CIRC_1580 if built >= NEXT else CIRC_645


def asked_counts(
    source: Source, dp_class: int, computers: int, heading_decides: bool = True
) -> tuple[int, ...]:
    """Return the least counts of a class, in the order of ITEMS.

    Parameters
    ----------
    source : Source
        The circular.
    dp_class : int
        1, 2 or 3.
    computers : int
        Control computers fitted; in classes 2 and 3 each has a supply of its own.
    heading_decides : bool, optional
        Whether control depends fully on the heading sensors.

    Returns
    -------
    tuple of (int, ...)

    References
    ----------
    MSC/Circ.645, 3.4: a supply for each computer (seen); three sensors where control depends on
    them (from memory); the other counts class practice (from memory).
    """
    asked = dict(zip(ITEMS, COUNTS[source][dp_class], strict=True))
    # A supply shared by two computers fails both at once.
    if dp_class > 1:
        asked["ups"] = max(asked["ups"], computers)
    if dp_class == 2 and not heading_decides:
        asked["heading"] = INDEPENDENT_HEADING
    return tuple(asked.values())


def shortfall(
    source: Source, dp_class: int, counts: tuple[int, ...], heading_decides: bool = True
) -> dict[str, int]:
    """Return what is missing for a class, item by item, in the order of ITEMS.

    Parameters
    ----------
    source : Source
        The circular.
    dp_class : int
        1, 2 or 3.
    counts : tuple of (int, ...)
        Pieces that work, in the order of ``ITEMS``.
    heading_decides : bool, optional
        Whether control depends fully on the heading sensors.

    Returns
    -------
    dict of str to int
        Missing pieces by item.

    Examples
    --------
    >>> shortfall(CIRC_645, 2, (2, 2, 3, 2, 2, 2))
    {'references': 1}
    """
    asked = asked_counts(source, dp_class, counts[0], heading_decides)
    return {
        name: need - have
        for name, need, have in zip(ITEMS, asked, counts, strict=True)
        if have < need
    }


def judge_equipment(
    built: date,
    class_claimed: str,
    computers: int,
    references: int,
    heading: int,
    motion: int,
    wind: int,
    ups: int,
    heading_decides: str | None = None,
) -> Judgement:
    """Judge whether the equipment counted is consistent with the class claimed.

    Parameters
    ----------
    built : date
        Built.
    class_claimed : str
        Class claimed: 1, 2 or 3.
    computers : int
        Control computers.
    references : int
        Position references.
    heading : int
        Heading sensors.
    motion : int
        Motion sensors.
    wind : int
        Wind sensors.
    ups : int
        Uninterruptible supplies.
    heading_decides : str, optional
        "no" where control does not depend fully on the heading sensors; otherwise three are asked
        in class 2.

    Returns
    -------
    Judgement
        Value the highest class the counts are consistent with (0 for none), limit the class
        claimed.

    References
    ----------
    MSC/Circ.645 or MSC.1/Circ.1580 by build date (dates seen), counts as class practice (from
    memory).
    """
    source, claimed = circular(built), int(class_claimed)
    counts = (computers, references, heading, motion, wind, ups)
    depends = heading_decides != "no"
    # the counts do not rise evenly, so that each class is tried
    consistent = [c for c in COUNTS[source] if not shortfall(source, c, counts, depends)]
    reached = max(consistent, default=0)
    missing = shortfall(source, claimed, counts, depends)
    circular_name = source.title.removeprefix("Class practice with ").partition(",")[0]
    claim = (
        f"Built {built.isoformat()}, claiming class {claimed}, judged by class practice with "
        f"{circular_name}"
    )
    if missing:
        short = ", ".join(f"{number} of the {ITEMS[name]}" for name, number in missing.items())
        band, rating = f"equipment short of class {claimed}", "failed"
        outcome = f"missing are {short}, so the equipment is not consistent with it"
    else:
        band, rating = f"equipment consistent with class {claimed}", "good"
        outcome = "the equipment counted is consistent with it"
    margin = reached - claimed
    sentence = f"{claim}: {outcome}."
    return Judgement(band, rating, reached, None, claimed, margin, sentence, NOTES, source)


CRITERIA = (
    Criterion(
        "dp-equipment",
        "Dynamic positioning equipment against the class claimed",
        (
            Field("built", "Built", "date", low=FIRST),
            Field("class_claimed", "Class claimed", "choice", choices=("1", "2", "3")),
            *(
                Field(name, label.capitalize(), "whole", low=0, high=20)
                for name, label in ITEMS.items()
            ),
            Field(
                "heading_decides",
                "Control depends fully on the heading sensors",
                "choice",
                choices=("yes", "no"),
                optional=True,
            ),
        ),
        CIRC_645,
        judge_equipment,
        "Vessels built on or after 1 July 1994; counts of working equipment, 0 to 20 each.",
        "The build date from both sides, each count one short; three references in "
        "classes 2 and 3 and a supply for each computer are seen, the rest recalled.",
    ),
)
