"""Why a unit has its word: at most four reasons, the worst thing seen first."""

from collections.abc import Iterator

from inspector.assess.model import Facts
from inspector.assess.verdict.found_words import bad_words, few_of, open_names
from inspector.assess.verdict.prices import priced, too_dear, yearly_comparison
from inspector.assess.verdict.unit_case import Case
from inspector.assess.verdict.unit_rules import Word
from inspector.values.cell_text import money_text
from inspector.values.formatting import show
from inspector.values.quantity import Money
from inspector.values.text import capital, counted, listed
from inspector.values.vocabulary import NOTHING_SEEN

MOST_REASONS = 4
# A longer life is given as more than this: nobody plans beyond it.
_LONGEST_LIFE = 50
# Rules by which prices decide, so that they are a reason before the rest.
_BY_PRICE = (
    "law, too dear",
    "law, way back priced",
    "too dear",
    "worth repair",
    "not worth an overhaul",
    "too dear so far",
)
_WINNER = {
    "refurbish": "refurbishing is the cheaper",
    "replace": "replacing is the cheaper",
    "": "there is no clear difference",
}


def reasons_of(case: Case, word: Word, currency: str) -> tuple[str, ...]:
    """Return why a unit has its word.

    Parameters
    ----------
    case : Case
    word : Word
        Its word.
    currency : str
        What the costs are in.

    Returns
    -------
    tuple of str
        At most MOST_REASONS sentences.
    """
    deciding = list(_deciding(case, word, currency))
    seen = [f"{bad_words(result)}." for result in case.evidence.bad]
    others = [*_dangers(case.facts), *deciding, *_rest(case, currency)]
    room = MOST_REASONS - len(deciding)
    worst = seen[: max(room, 1)]
    found = dict.fromkeys((*worst, *deciding, *others))
    return tuple(found)[:MOST_REASONS]


def _deciding(case: Case, word: Word, currency: str) -> Iterator[str]:
    """What the rule that applied goes by, beside what was seen."""
    facts, rule = case.facts, word.rule.name
    if rule == "not wanted":
        yield "The brief does not want it."
        yield from _won(facts)
    elif rule == "not worth repair":
        yield "The brief does not ask for it and does not mind it."
    elif rule == "beyond repair":
        yield f"The surveyor says that it is beyond repair: {facts.beyond_repair}."
    if rule.startswith("law"):
        yield from facts.law[:1]
    if rule in _BY_PRICE:
        yield cost_reason(case, currency)
    if rule in ("law, no parts", "no parts", "not priced") and facts.parts:
        yield f"Its parts are {facts.parts}."
    if rule == "short-lived":
        yield from _life(case)
    if rule in ("sound so far", "work so far", "too dear so far"):
        yield from _how_far(case)


def _dangers(facts: Facts) -> list[str]:
    return [f"An open danger: {title.rstrip('.')}." for title in facts.danger]


def _how_far(case: Case) -> Iterator[str]:
    """What the verdict is based on while too little was seen, and what is open."""
    evidence = case.evidence
    if evidence.walked_past == NOTHING_SEEN:
        yield "Walked past: nothing seen against it."
    elif evidence.walked_past:
        yield "Walked past: something seen against it."
    if evidence.by_word_only:
        yield "By word and paper only: nothing of it was seen on board."
    if evidence.open_critical:
        yield f"Open: {few_of(open_names(evidence))}."


def _rest(case: Case, currency: str) -> Iterator[str]:
    """What counts beside the rule: law, life, parts, price."""
    facts = case.facts
    worn = case.work_is_certain or case.looks_worn
    if case.evidence.enough and not case.evidence.bad and case.evidence.results and not worn:
        critical = any(result.check.critical for result in case.evidence.results)
        seen = "Every critical check was seen at its depth" if critical else "Enough of it was seen"
        yield f"{seen}, and nothing is poor."
    yield from facts.law
    yield from _life(case)
    if facts.parts:
        yield f"Its parts are {facts.parts}."
    if priced(facts):
        yield cost_reason(case, currency)
    elif case.work_is_certain:
        yield _missing_price(facts)


def _life(case: Case) -> Iterator[str]:
    facts, horizon = case.facts, case.horizon
    if facts.life_years is None:
        return
    years = f"about {facts.life_years:.3g}"
    if facts.life_years > _LONGEST_LIFE:
        years = f"over {_LONGEST_LIFE}"
    left = f"It has {years} years left"
    if horizon is None:
        yield f"{left}; the brief names no horizon."
        return
    whose = "the settings'" if facts.horizon is None else "the buyer's"
    relation = "short of" if case.short_lived else "enough for"
    yield f"{left}, {relation} {whose} horizon of {horizon:.3g} years."


def _missing_price(facts: Facts) -> str:
    costs = {"refurbishing": facts.refurbish_cost, "replacing": facts.replace_cost}
    missing = [word for word, cost in costs.items() if cost is None]
    verb = "is" if len(missing) == 1 else "are"
    return f"{capital(listed(missing))} {verb} not priced yet."


def cost_reason(case: Case, currency: str) -> str:
    """Return what the prices say.

    Parameters
    ----------
    case : Case
        Priced both ways.
    currency : str

    Returns
    -------
    str
    """
    facts = case.facts
    found = yearly_comparison(facts, case.settings)
    whole = " for the whole system" if facts.shared else ""
    if found is None:
        relation = "more than" if too_dear(facts, case.settings) else "not more than"
        share = show(case.settings.cost_share * 100, "%")
        refurbish, new = (
            _sum(cost, currency) for cost in (facts.refurbish_cost, facts.replace_cost)
        )
        return f"Refurbishing at {refurbish}{whole} is {relation} {share} of replacing at {new}."
    # Rounded, so that 0.07 does not read 7.000000000000001 %.
    rate = show(round(found.rate * 100, 6), "%")
    refurbish, new = (_sum(round(cost), currency) for cost in (found.refurbish, found.replace))
    return (
        f"At {rate} a year refurbishing{whole} costs {refurbish} a year over "
        f"{facts.life_refurbished:g} years and replacing {new} over {facts.life_new:g} years: "
        f"{_WINNER[found.cheaper]}.{_taken_as_nothing(facts)}"
    )


def _taken_as_nothing(facts: Facts) -> str:
    figures = {
        "yearly cost refurbished": facts.yearly_refurbished,
        "yearly cost new": facts.yearly_new,
        "residual refurbished": facts.residual_refurbished,
        "residual new": facts.residual_new,
    }
    absent = [name for name, value in figures.items() if value is None]
    return f" Not given and taken as 0: {', '.join(absent)}." if absent else ""


def _sum(value: float | None, currency: str) -> str:
    return money_text(Money.exact(value or 0, currency, as_typed=True))


def _won(facts: Facts) -> Iterator[str]:
    gains = (facts.weight_won, "t"), (facts.space_won, "m³")
    won = [show(gain, unit) for gain, unit in gains if gain]
    if won:
        yield f"Removing it wins {listed(won)}."


def remark_of(case: Case) -> str:
    """Return what must be known of the answers: those from before depths were recorded.

    Parameters
    ----------
    case : Case

    Returns
    -------
    str
        "" where every answer carries its depth.
    """
    answers = (*case.evidence.results, *case.evidence.services)
    rated = [result for result in answers if result.rating]
    older = sum(not result.depth for result in rated)
    if not older:
        return ""
    number = counted(older, "answer says", "answers say")
    return f"{number} not how it is known (recorded before that was asked), and counts as seen."
