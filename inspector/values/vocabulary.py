"""The words that an inspection is recorded, decided and reported in: one list for each.

A browser receives these lists as data (``for_browser``) and never types them again. The order of a
list is the order in which a form offers it.
"""

from inspector.values import measures

RATINGS = ("good", "fair", "poor", "failed")
NOT_FITTED = "not fitted"
NOT_SEEN = "not seen"
NOT_SEEN_REASONS = (
    "no access",
    "not opened",
    "not run",
    "no light",
    "no time",
    "unsafe",
    "refused",
    "covered",
    "not shown",
)
# The reason where a space was not entered, and the one that leaves a check worth another look.
NO_ACCESS, NO_TIME = "no access", "no time"
# The reason where it was not running, or not where it could run.
NOT_RUN = "not run"
NOT_OPENED, NOT_SHOWN = "not opened", "not shown"

# Three words and no more: a buyer plans with each of them differently.
VERDICTS = ("retain", "refurbish", "remove")
# Read aloud of what stays and has a line of work all the same.
RETAIN_WITH_WORK = "retain, with work"
# Where nobody looked there is no word, and where only prices can say there are two.
NOT_LOOKED_AT = "not looked at"
PRICE_BOTH = "refurbish or remove"
# How far a word can be relied on: nothing open could turn it; what was seen points there; whatever
# is still open cannot undo it, only add to it.
FIRM, SO_FAR, AT_LEAST = FIRMNESS = ("firm", "so far", "at least")
# What the buyer's brief says of a system, the strongest first.
NEEDS = ("required", "useful", "neutral", "unwanted")
URGENCIES = ("danger now", "before purchase", "in the yard", "keep watch")
# What a work line does to a unit or a system.
ACTS = ("refurbish", "replace", "remove")
# Where a work line is done, and who supplies what is fitted by it.
PLACES_OF_WORK = ("afloat", "in dock")
SUPPLIERS = ("yard", "owner")
# Whether spare parts can be had.
PARTS = ("made", "hard to get", "no longer made")

# How an answer is known, from what somebody says to what was run or measured here.
REPORTED, SIGHTED, TESTED = DEPTHS = ("reported", "sighted", "tested")
# What a look needs, the most demanding last; a dock and a laboratory are never found on board.
LOOK_NEEDS = ("paper", "sight", "hand", "power", "running", "sea", "dock", "laboratory")
# What a surveyor who only walks past a unit sees against it.
NOTHING_SEEN, SOMETHING_SEEN = WALKED_PAST = ("nothing", "something")

# The state in which a vessel is met at a visit, from the one in which most can be had; and where.
VESSEL_STATES = ("in service", "warm lay-up", "cold lay-up", "dead")
BERTHS = ("alongside", "at anchor", "sea trial", "in dock")
# What is asked of the crew before a visit, with its label and the reason where the answer is no.
YES, NO = "yes", "no"
ASKED_OF_CREW = {
    "running": ("Machinery is run for us", NOT_RUN),
    "tanks": ("Tanks are opened", NOT_OPENED),
    "panels": ("Panels are opened by the crew", NOT_OPENED),
    "papers": ("Papers are shown", NOT_SHOWN),
}

# ANSI Z535 and ISO 3864: the more serious first.
SIGNAL_WORDS = ("danger", "warning", "caution", "notice")
# How a space that counts as enclosed was looked at.
ENTERED, FROM_OUTSIDE, NOT_ENTERED = ("entered", "from outside", "not entered")
# What must be answered with yes before anybody goes in; each with its label.
GATE_QUESTIONS = {
    "permit": "permit",
    "attendant": "attendant",
    "instrument": "calibrated instrument",
}
# What became of an entry or a photo that was handed over: kept, or refused with a sentence behind a
# colon.
TAKEN = ("stored", "already had", "kept", "known")
REFUSED = "refused"
# Fields whose texts two people may both keep, joined, where they answered differently.
PROSE_FIELDS = ("note", "text", "caption", "action")

# The reader's choice for a report; what was typed is kept in its own unit.
UNIT_SYSTEMS = ("si", "us")


def not_seen(reason: str) -> str:
    """Return the answer of a check that was not seen, with its reason.

    Parameters
    ----------
    reason : str
        One of NOT_SEEN_REASONS.

    Returns
    -------
    str
        As recorded in the field ``rating``.

    Examples
    --------
    >>> not_seen("no light")
    'not seen: no light'
    """
    return f"{NOT_SEEN}: {reason}"


def for_browser() -> dict[str, object]:
    """Return every list that the pages' scripts use, as plain JSON data.

    Returns
    -------
    dict
        In the shape that ``page/vocabulary.js`` documents.
    """
    return {
        "ratings": RATINGS,
        "notFitted": NOT_FITTED,
        "notSeen": NOT_SEEN,
        "reasons": NOT_SEEN_REASONS,
        "depths": DEPTHS,
        "walkedPast": WALKED_PAST,
        "noAccess": NO_ACCESS,
        "noTime": NO_TIME,
        "vesselStates": VESSEL_STATES,
        "berths": BERTHS,
        "urgencies": URGENCIES,
        "proseFields": PROSE_FIELDS,
        "gate": {
            "yes": "yes",
            "no": "no",
            "required": tuple(GATE_QUESTIONS),
            "entered": ENTERED,
            "outside": FROM_OUTSIDE,
            "notEntered": NOT_ENTERED,
        },
        "measures": measures.for_browser(),
        "outcomes": {"taken": TAKEN, "refused": REFUSED},
    }
