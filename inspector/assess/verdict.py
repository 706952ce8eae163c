"""Facts, condition and what was not seen -> a proposed verdict with its rule, its reasons and what would change it.

A proposal only: the surveyor decides, and both words stand in the report where they differ.
"""

import math
from collections.abc import Iterable, Iterator

from inspector.assess.changes import flips
from inspector.assess.rules import RULES, Case, Rule, Unseen, fired
from inspector.assess.settings import Settings
from inspector.assess.shapes import VERDICTS, CheckResult, Condition, Facts, Proposal
from inspector.words import amount

__all__ = ["RULES", "Case", "Rule", "Settings", "Unseen", "fired", "flips", "propose", "unseen_of"]


def unseen_of(results: Iterable[CheckResult]) -> tuple[Unseen, ...]:
    """The applicable checks without a rating, as the rules name them."""
    return tuple(
        Unseen(f"{one.unit_name}: {one.check.title}", one.check.weight, one.check.critical) for one in results if one.applicable and one.rating is None
    )


def propose(facts: Facts, condition: Condition, unseen: tuple[Unseen, ...] = (), settings: Settings | None = None, currency: str = "") -> Proposal:
    """Propose a verdict by the first of RULES that applies; pure, the same input always gives the same proposal.

    facts: need, law, remaining life [years], costs, parts; condition: 0..100 with coverage 0..1; unseen: applicable checks not seen;
    currency: what the costs are in, printed with each ("" where none was named).
    """
    case = Case(facts, condition, tuple(unseen), settings or Settings())
    rule = fired(case)
    return Proposal(
        verdict=rule.verdict, rule=rule.name, rule_text=rule.read(case.settings), reasons=tuple(_reasons(case, rule, currency)),
        changes=tuple(flip.change for flip in flips(case)), deciding=_deciding(case) if rule.verdict == "undecided" else (),
    )


def _reasons(case: Case, rule: Rule, currency: str) -> Iterator[str]:
    """Each fact that the rules know, in one plain sentence; law and need first."""
    facts = case.facts
    yield f"The brief calls it {facts.need}." if facts.need != "neutral" else "The brief does not ask for it and does not mind it."
    yield from facts.law
    yield from (f"A danger stands open: {title.rstrip('.')}." for title in facts.danger)
    yield _condition_reason(case.condition)
    if len(facts.units) > 1:
        counted = [f"{facts.units.count(word)} {word}" for word in VERDICTS if word in facts.units]
        yield f"Of its {len(facts.units)} units the verdicts are: {', '.join(counted)}."
    if case.condition.capped_by:
        yield f"The condition is capped by the critical checks: {'; '.join(case.condition.capped_by)}."
    yield from _life_reason(case)
    if facts.parts:
        yield f"Its parts are {facts.parts}."
    yield _cost_reason(case, currency)
    if rule.verdict == "remove":
        yield from _removal_reasons(facts)


def _condition_reason(condition: Condition) -> str:
    if condition.applicable == 0:
        return "No check of it applies."
    if condition.points is None:
        return f"None of its {condition.applicable} checks was seen."
    seen = f"{math.floor(condition.coverage * 100 + 1e-9)} % of the weight seen"
    # rounded down, so that 69.9 never stands beside a rule that asks for 70
    rest = "" if condition.low == condition.high else f"; what was not seen leaves it between {math.floor(condition.low)} and {math.ceil(condition.high)}"
    return f"Its condition is {math.floor(condition.points)} of 100 with {seen}{rest}."


def _life_reason(case: Case) -> Iterator[str]:
    facts, horizon = case.facts, case.horizon
    if facts.life_years is None:
        yield "Its remaining life is not known."
    elif horizon is None:
        yield f"It has about {facts.life_years:.3g} years left; the brief names no horizon."
    else:
        whose = "the buyer's" if facts.horizon is not None else "the settings'"
        relation = "short of" if facts.life_years < horizon else "enough for"
        yield f"It has about {facts.life_years:.3g} years left, {relation} {whose} horizon of {horizon:.3g} years."


def _cost_reason(case: Case, currency: str) -> str:
    if not case.priced:
        missing = [word for word, cost in (("refurbishing", case.facts.refurbish_cost), ("replacing", case.facts.replace_cost)) if cost is None]
        return f"{' and '.join(missing).capitalize()} {'is' if len(missing) == 1 else 'are'} not priced, so cost says nothing."
    if case.annual is not None:
        return _annual_reason(case, currency)
    side = "more than" if case.dear else "not more than"
    limit = f"{case.settings.cost_share * 100:g} %"
    return f"Refurbishing at {_sum(case.facts.refurbish_cost, currency)} is {side} {limit} of replacing at {_sum(case.facts.replace_cost, currency)}."


def _annual_reason(case: Case, currency: str) -> str:
    """The yearly costs with rate, lives, what counted as nothing and where they would be equal."""
    facts, found = case.facts, case.annual
    told = f"At {found.rate * 100:g} % a year refurbishing costs {_sum(round(found.refurbish), currency)} a year over {facts.life_refurbished:g} years"
    told += f" and replacing {_sum(round(found.replace), currency)} over {facts.life_new:g} years"
    winner = {"refurbish": "refurbishing is the cheaper", "replace": "replacing is the cheaper", "": "there is no clear difference"}[found.cheaper]
    equal = f"; equal at a rate of {found.break_even_rate * 100:.1f} %" if found.break_even_rate is not None else ""
    absent = [name for name, value in (("yearly cost refurbished", facts.yearly_refurbished), ("yearly cost new", facts.yearly_new),
                                       ("residual refurbished", facts.residual_refurbished), ("residual new", facts.residual_new)) if value is None]
    nothing = f" Not given and taken as 0: {', '.join(absent)}." if absent else ""
    return f"{told}: {winner}{equal}.{nothing}"


def _sum(value: float | None, currency: str) -> str:
    return f"{amount(value or 0)} {currency}".strip()


def _removal_reasons(facts: Facts) -> Iterator[str]:
    if facts.need == "required":
        yield "The brief requires it, so what is removed must be replaced."
    won = [f"{amount:g} {unit}" for amount, unit in ((facts.weight_won, "t"), (facts.space_won, "m³")) if amount]
    if won:
        yield f"Removing it wins {' and '.join(won)}."


def _deciding(case: Case) -> tuple[str, ...]:
    """The unseen checks that would decide it: the critical first, then the heaviest, as many as the asked coverage needs."""
    ordered = sorted(case.unseen, key=lambda one: (not one.critical, -one.weight))
    unseen_weight = sum(one.weight for one in ordered)
    share_unseen = 1 - case.condition.coverage
    needed = unseen_weight * (case.settings.coverage - case.condition.coverage) / share_unseen if share_unseen > 0 else 0.0
    names: list[str] = []
    for one in ordered:
        if needed <= 1e-9 and not one.critical:
            break
        names.append(one.label)
        needed -= one.weight
    return tuple(names[: case.settings.most_deciding])
