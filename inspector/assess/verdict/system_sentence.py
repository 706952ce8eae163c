"""What a client reads beside the word of a system of several units: counts, and one sentence."""

from collections.abc import Iterable, Sequence

from inspector.assess.verdict.found_words import few_of
from inspector.assess.verdict.system_word import SystemWord, UnitWord, named
from inspector.values.text import capital, counted
from inspector.values.vocabulary import FIRM, NOT_LOOKED_AT, SO_FAR

# More sentences on single units than these are counted.
_MOST_SENTENCES = 3


def counts_of(units: Sequence[UnitWord]) -> str:
    """Return how the units stand: "5 sound, Set 4 needs work; 6 critical looks open.".

    Parameters
    ----------
    units : sequence of UnitWord

    Returns
    -------
    str
        "" for a single unit.
    """
    # A system of one unit is that unit: a count of one would only repeat it.
    if len(units) < 2:
        return ""
    sound = [unit for unit in units if unit.stays and unit.firmness == FIRM]
    so_far = [unit for unit in units if unit.stays and unit.firmness != FIRM]
    unseen = sum(unit.verdict == NOT_LOOKED_AT for unit in units)
    parts = [
        _staying(sound, "sound"),
        _staying(so_far, "sound so far"),
        _number(_at_work(units, certain=True), "needs work", "need work"),
        _number(_at_work(units, certain=False), "may need work"),
        _number([unit.name for unit in units if unit.replaced], "to be replaced"),
        _number([unit.name for unit in units if unit.let_go], "let go"),
        f"{unseen} not looked at" if unseen else "",
    ]
    looks = sum(len(unit.open_looks) for unit in units if not unit.let_go)
    text = ", ".join(filter(None, parts))
    return f"{text}; {counted(looks, 'critical look')} open." if looks else f"{text}."


def _staying(units: Sequence[UnitWord], word: str) -> str:
    """How many stay, and of how many something is to be put right all the same."""
    if not units:
        return ""
    jobs = sum(bool(unit.jobs) for unit in units)
    return f"{len(units)} {word}" + (f" ({jobs} with a job to do)" if jobs else "")


def _at_work(units: Sequence[UnitWord], *, certain: bool) -> list[str]:
    """The units that are worked on: for certain, or as far as was seen."""
    return [unit.name for unit in units if unit.worked_on and (unit.firmness != SO_FAR) == certain]


def _number(names: list[str], one: str, several: str = "") -> str:
    if not names:
        return ""
    if len(names) == 1:
        return f"{names[0]} {one}"
    return f"{len(names)} {several or one}"


def system_sentence(units: Sequence[UnitWord], word: SystemWord) -> str:
    """Return the sentence that a client reads beside the word of a system.

    Parameters
    ----------
    units : sequence of UnitWord
    word : SystemWord

    Returns
    -------
    str
    """
    if len(units) == 1:
        return units[0].sentence
    if not units or word.rule == "none looked at":
        return "Nobody has looked at it."
    staying = [unit for unit in units if unit.stays]
    parts = [_stay(staying, len(units))] if staying else []
    parts += _work_sentences([unit for unit in units if unit.worked_on or unit.replaced], units)
    gone = [unit.name for unit in units if unit.let_go]
    if gone:
        parts.append(f"removed: {named(gone)}")
    unseen = [unit.name for unit in units if unit.verdict == NOT_LOOKED_AT]
    if unseen:
        parts.append(f"not looked at: {named(unseen)}")
    return " ".join(f"{capital(part)}." for part in parts)


def _work_sentences(at_work: Sequence[UnitWord], units: Sequence[UnitWord]) -> list[str]:
    """What each unit needs; units that need the same share one sentence."""
    # Like units mostly have the same trouble: it is said once for all of them.
    by_sentence: dict[str, list[str]] = {}
    for unit in at_work:
        by_sentence.setdefault(unit.sentence.rstrip("."), []).append(unit.name)
    parts = [
        f"{of_units(names, len(units))}: {sentence}"
        for sentence, names in list(by_sentence.items())[:_MOST_SENTENCES]
    ]
    left = sum(len(names) for names in list(by_sentence.values())[_MOST_SENTENCES:])
    if left:
        verb = "needs" if left == 1 else "need"
        parts.append(f"{counted(left, 'more unit')} {verb} work")
    return parts


def of_units(names: Sequence[str], count: int) -> str:
    """Return of which units something is said: "all 4", or their names.

    Parameters
    ----------
    names : sequence of str
    count : int
        How many units there are.

    Returns
    -------
    str
    """
    if 1 < len(names) == count:
        return "both" if count == 2 else f"all {count}"
    return named(names)


def _stay(staying: Sequence[UnitWord], count: int) -> str:
    """How many units stay, what is still open of them, and what is to be put right."""
    so_far = any(unit.firmness != FIRM for unit in staying)
    number = "all" if len(staying) == count else f"{len(staying)} of {count}"
    seen = f"{number} {'sound as far as seen' if so_far else 'seen and sound'}"
    # Of like units one may have had a glance that another had not: the look is still one.
    looks = ([look.partition(" (only ")[0] for look in unit.open_looks] for unit in staying)
    still_open = _joined(looks) if so_far else ""
    jobs = _joined(unit.jobs for unit in staying)
    opened = f"; open: {still_open}" if still_open else ""
    return f"{seen}{opened}" + (f"; to put right: {jobs}" if jobs else "")


def _joined(names: Iterable[Sequence[str]]) -> str:
    return few_of([name for of_unit in names for name in of_unit])
