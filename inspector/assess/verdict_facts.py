"""What the rules of a word need beside what was seen: need, law, life, parts and prices."""

import math
from collections.abc import Iterable, Mapping

from inspector.assess.checked import CheckResult
from inspector.assess.model import Facts
from inspector.assess.recorded import RecordedInspection
from inspector.assess.registers import Finding, WorkLine
from inspector.record.typed_values import LARGEST, typed_number
from inspector.values.vocabulary import NEEDS, PARTS

# The criteria that judge by law; what fails one of them may not stay as it is.
LAW_CRITERIA = (
    "refrigerant-status",
    "nox-tier",
    "oily-water-equipment",
    "ballast-treatment",
    "sewage-plant",
    "foam-pfos",
    "organotin",
    "cybutryne",
    "ozone-depleting",
    "halon",
)
LIVES = ("life_refurbished", "life_new")
YEARLY = ("yearly_refurbished", "yearly_new", "residual_refurbished", "residual_new")
# Systems that are the ship itself: what is wrong with them decides about buying her.
# What is in her, hazardous materials, goes with her too: it is surveyed, sealed or cleared.
PARTS_OF_THE_SHIP = ("hull", "hazardous-materials")
WHOLE = "all"


def facts_of_unit(
    recorded: RecordedInspection,
    system: str,
    unit: str,
    results: Iterable[CheckResult],
    lines: Iterable[WorkLine],
    findings: Iterable[Finding],
) -> Facts:
    """Collect the facts of one unit.

    What is said of the whole system holds for each unit that has none of its own.

    Parameters
    ----------
    recorded : RecordedInspection
        The inspection.
    system, unit : str
        The unit.
    results : iterable of CheckResult
        The results of its checks.
    lines : iterable of WorkLine
        The work lines of the system.
    findings : iterable of Finding
        Findings; those on the unit that are a danger now count.

    Returns
    -------
    Facts
        Life and horizon in years, weight in t, space in m³, money in the currency of the lines.
    """
    results, lines = tuple(results), tuple(lines)
    own = recorded.decisions.get(f"{system}/{unit}", {})
    whole = recorded.decisions.get(f"{system}/{WHOLE}", {})
    typed = {**{name: whole[name] for name in _INHERITED if name in whole}, **own}
    refurbish, replace, shared = _like_prices(unit, lines)
    # The yearly costs of the whole go with its prices.
    money = {**whole, **own} if shared else own
    return Facts(
        need=_need(recorded, system, own),
        law=(*_law(results), *_law_named(typed)),
        life_years=_life_of_unit(own, whole, results),
        horizon=typed_number(recorded.brief.get("horizon"), 0),
        parts=typed.get("parts", "") if typed.get("parts") in PARTS else "",
        refurbish_cost=refurbish,
        replace_cost=replace,
        weight_won=typed_number(own.get("weight_won")),
        space_won=typed_number(own.get("space_won")),
        danger=_dangers(findings, system, unit),
        beyond_repair=typed.get("beyond_repair", "").strip().rstrip("."),
        shared=shared,
        stays=system in PARTS_OF_THE_SHIP,
        **{name: typed_number(typed.get(name), 0) for name in LIVES},
        # A residual may be negative: what getting rid of the thing costs.
        **{name: typed_number(money.get(name), -LARGEST) for name in YEARLY},
    )


_INHERITED = ("law", "parts", "beyond_repair", *LIVES)


def _need(recorded: RecordedInspection, system: str, own: Mapping[str, str]) -> str:
    """The brief's need of the unit, else of its system; "" where nothing is said."""
    need = own.get("need") or recorded.brief.get(f"need/{system}", "")
    return need if need in NEEDS else ""


def _like_prices(unit: str, lines: tuple[WorkLine, ...]) -> tuple[float | None, float | None, bool]:
    """Refurbishing and replacing on one scope, and whether that is the whole system.

    The unit's own prices count. Where it has none, those of the whole system do, if the whole is
    priced both ways: a price of two units is never compared with one of all.
    """
    own = [_total(lines, unit, act) for act in ("refurbish", "replace")]
    whole = [_total(lines, WHOLE, act) for act in ("refurbish", "replace")]
    shared = own == [None, None] and None not in whole
    return (*(whole if shared else own), shared)


def _dangers(findings: Iterable[Finding], system: str, unit: str) -> tuple[str, ...]:
    now = [finding for finding in findings if finding.urgency == "danger now"]
    return tuple(
        finding.title or finding.text
        for finding in now
        if (finding.system, finding.unit) == (system, unit)
    )


def facts_of_system(
    recorded: RecordedInspection,
    system: str,
    of_units: Iterable[Facts],
    lines: Iterable[WorkLine],
    findings: Iterable[Finding],
) -> Facts:
    """Collect the facts of a whole system, as page and report show them beside its word.

    What is recorded of the system itself counts first, else the shortest life of its units, the
    costs of all lines and what all of them share. Its word follows from those of its units.

    Parameters
    ----------
    recorded : RecordedInspection
        The inspection.
    system : str
        The system.
    of_units : iterable of Facts
        The facts of its units.
    lines, findings : iterable
        All work lines of the system, all findings of the inspection.

    Returns
    -------
    Facts
        As `facts_of_unit` returns them.
    """
    units, lines = tuple(of_units), tuple(lines)
    typed = recorded.decisions.get(f"{system}/{WHOLE}", {})
    lives = [unit.life_years for unit in units if unit.life_years is not None]
    parts = {unit.parts for unit in units}
    danger = _dangers(findings, system, WHOLE)
    return Facts(
        need=_need(recorded, system, {}),
        law=_without_repeats(sentence for unit in units for sentence in unit.law),
        life_years=_first_known(_life(typed), min(lives, default=None)),
        horizon=typed_number(recorded.brief.get("horizon"), 0),
        # Units with unlike parts have no common answer.
        parts=parts.pop() if len(parts) == 1 else "",
        refurbish_cost=_total(lines, None, "refurbish"),
        replace_cost=_total(lines, None, "replace"),
        weight_won=_first_known(
            typed_number(typed.get("weight_won")), _added(*(unit.weight_won for unit in units))
        ),
        space_won=_first_known(
            typed_number(typed.get("space_won")), _added(*(unit.space_won for unit in units))
        ),
        danger=(*danger, *(title for unit in units for title in unit.danger)),
        beyond_repair=typed.get("beyond_repair", "").strip().rstrip("."),
        services_cost=typed_number(typed.get("services_cost"), 0),
        stays=system in PARTS_OF_THE_SHIP,
    )


def _law(results: Iterable[CheckResult]) -> tuple[str, ...]:
    """Sentences of judgements by law that failed; a limit that is only remembered makes no law."""
    return _without_repeats(
        result.judgement.sentence
        for result in results
        if result.applicable and result.seen and result.judgement and _forbids(result)
    )


def _forbids(result: CheckResult) -> bool:
    """Whether a judgement says that the thing may not stay as it is."""
    judged = result.judgement
    # A limit from memory may be wrong, and law is stated only from a text that was read.
    by_law = judged.criterion in LAW_CRITERIA and judged.source.mark == "seen"
    return by_law and judged.rating == "failed"


def _law_named(typed: Mapping[str, str]) -> tuple[str, ...]:
    """The rule that the surveyor names: asbestos where it must go, a ban of the flag."""
    text = typed.get("law", "").strip().rstrip(".")
    return (f"The surveyor names a law against it: {text}.",) if text else ()


def _life_of_unit(
    own: Mapping[str, str], whole: Mapping[str, str], results: Iterable[CheckResult]
) -> float | None:
    """The surveyor's figure for the unit [years], else the lesser of that for the whole and what
    the loss of a plate leaves."""
    judged = [result.judgement for result in results if result.applicable and result.judgement]
    plates = [one.value for one in judged if one.criterion == "plate-remaining-life"]
    lives = [*plates, _life(whole)]
    shortest = min((life for life in lives if life is not None), default=None)
    return _first_known(_life(own), shortest)


def _life(typed: Mapping[str, str]) -> float | None:
    return typed_number(typed.get("life_years"), 0)


def _total(lines: Iterable[WorkLine], unit: str | None, act: str) -> float | None:
    """What the lines of one act cost: of a unit, or of all where no unit is named."""
    return _added(*(line.likely for line in lines if line.act == act and unit in (None, line.unit)))


def _added(*amounts: float | None) -> float | None:
    """The sum of what is known, None where nothing is."""
    known = [amount for amount in amounts if amount is not None]
    return math.fsum(known) if known else None


def _first_known(own: float | None, other: float | None) -> float | None:
    return other if own is None else own


def _without_repeats(sentences: Iterable[str]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(sentences))
