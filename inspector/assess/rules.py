"""The verdict's rules in their order, as a surveyor reads them aloud. The first that applies gives the verdict.

Law stands before condition, since what may not stay does not stay however well it looks; and what is not wanted goes without being looked at.
The levels are settings (settings.py). "Too dear" goes by the yearly cost where both lives are known, and by the share of replacing where they are not.
"""

from collections.abc import Callable
from dataclasses import dataclass, field
from fractions import Fraction

from inspector.assess.annual_cost import Comparison, NoAnnualCost, Way, annual_cost, cheaper, compare
from inspector.assess.settings import Settings
from inspector.assess.shapes import Condition, Facts


@dataclass(frozen=True)
class Unseen:
    """An applicable check that was not seen: "Bow thruster 1: Water in the hub oil", its weight, whether it is critical."""

    label: str
    weight: float
    critical: bool = False


@dataclass(frozen=True)
class Case:
    """All that the rules look at, for one unit or system."""

    facts: Facts
    condition: Condition
    unseen: tuple[Unseen, ...] = ()
    settings: Settings = field(default_factory=Settings)

    @property
    def worn(self) -> bool:
        """Condition below the level from which it is retained, or unknown."""
        return self.condition.points is None or self.condition.points < self.settings.retain_from

    @property
    def horizon(self) -> float | None:
        """The buyer's horizon, else the setting's, in years."""
        return self.facts.horizon if self.facts.horizon is not None else self.settings.horizon

    @property
    def short(self) -> bool:
        """The remaining life is known to end before the buyer's horizon."""
        return self.facts.life_years is not None and self.horizon is not None and self.facts.life_years < self.horizon

    @property
    def lasting(self) -> bool:
        """The remaining life is known to cover a known horizon."""
        return self.facts.life_years is not None and self.horizon is not None and not self.short

    @property
    def priced(self) -> bool:
        return self.facts.refurbish_cost is not None and self.facts.replace_cost is not None

    @property
    def ways(self) -> tuple[Way, Way] | None:
        """Refurbishing and replacing as ways to pay for, where prices and both lives are known."""
        facts = self.facts
        if not self.priced or facts.life_refurbished is None or facts.life_new is None:
            return None
        return (Way(facts.refurbish_cost, facts.life_refurbished, facts.residual_refurbished or 0.0, facts.yearly_refurbished or 0.0),
                Way(facts.replace_cost, facts.life_new, facts.residual_new or 0.0, facts.yearly_new or 0.0))

    @property
    def annual(self) -> Comparison | None:
        """Both ways a year with their break-evens, for the reasons; None where a life or the rate cannot be used."""
        try:
            return compare(*self.ways, self.settings.discount_rate, self.settings.clear_difference) if self.ways else None
        except NoAnnualCost:
            return None

    @property
    def cheaper(self) -> str | None:
        """"refurbish", "replace" or "" by the yearly costs; None where they are not known."""
        try:
            costs = [annual_cost(way, self.settings.discount_rate) for way in self.ways or ()]
        except NoAnnualCost:
            return None
        return cheaper(*costs, self.settings.clear_difference) if costs else None

    @property
    def dear(self) -> bool:
        """Clearly dearer a year than replacing; where the lives are not known, over its share of replacing (exact, without a division)."""
        if self.cheaper is not None:
            return self.cheaper == "replace"
        return self.priced and _exact(self.facts.refurbish_cost) > _exact(self.settings.cost_share) * _exact(self.facts.replace_cost)

    @property
    def partless(self) -> bool:
        return self.facts.parts == "no longer made"

    @property
    def little_seen(self) -> bool:
        """Less than the coverage asked was seen, and what is unseen could still lift it, or one of its units, out of the lowest range."""
        open_yet = self.condition.high >= self.settings.refurbish_from or "undecided" in self.facts.units
        return self.condition.points is None or (self.condition.coverage < self.settings.coverage and open_yet)

    @property
    def lost(self) -> bool:
        """Below the lowest level; a whole system only if all its units go, since one failed unit caps the condition of all."""
        return self.condition.points < self.settings.refurbish_from and all(verdict == "remove" for verdict in self.facts.units)

    @property
    def critical_unseen(self) -> bool:
        return self.settings.critical_seen and any(one.critical for one in self.unseen)


@dataclass(frozen=True)
class Rule:
    """One rule: short name, text to read aloud ({} fields are settings), the verdict it gives, and when it applies."""

    name: str
    text: str
    verdict: str
    applies: Callable[[Case], bool]

    def read(self, settings: Settings) -> str:
        """The text with the settings' figures filled in."""
        shares = {"coverage": f"{settings.coverage:.0%}".replace("%", " %"), "cost_share": f"{settings.cost_share:.0%}".replace("%", " %")}
        return self.text.format(retain_from=f"{settings.retain_from:g}", refurbish_from=f"{settings.refurbish_from:g}", **shares)


RULES = (
    Rule("not wanted", "What the brief does not want goes.", "remove", lambda case: case.facts.need == "unwanted"),
    Rule("nothing applies", "Where no check applies, nothing can be said.", "undecided", lambda case: case.condition.applicable == 0),
    Rule("law, no way back",
         "What may not stay by law goes, if its parts are no longer made or refurbishing is too dear: more a year than replacing, or over {cost_share} of it.",
         "remove", lambda case: bool(case.facts.law) and (case.partless or case.dear)),
    Rule("law", "What may not stay as it is by law is brought within the law.", "refurbish", lambda case: bool(case.facts.law)),
    Rule("too little seen", "While less than {coverage} of the weight was seen, and the rest could still matter, it stays undecided.",
         "undecided", lambda case: case.little_seen),
    Rule("no parts", "What has no parts any more goes, unless it is in good condition and is known to outlast the buyer's horizon.",
         "remove", lambda case: case.partless and (case.worn or not case.lasting)),
    Rule("too dear",
         "What needs work goes, if refurbishing is too dear: more a year than replacing or, where lives are not known, over {cost_share} of it.",
         "remove", lambda case: (case.worn or case.short) and case.dear),
    Rule("beyond repair",
         "What is below {refurbish_from} of 100, in all its units, goes, unless refurbishing is priced and costs at most {cost_share} of replacing.",
         "remove", lambda case: case.lost and not case.priced),
    Rule("worn", "What is below {retain_from} of 100 is refurbished.", "refurbish", lambda case: case.worn),
    Rule("short-lived", "What will not last the buyer's horizon is refurbished.", "refurbish", lambda case: case.short),
    Rule("danger open", "Where a danger stands open, it is put right first.", "refurbish", lambda case: bool(case.facts.danger)),
    Rule("critical check not seen", "What looks good stays undecided until every critical check was seen.", "undecided", lambda case: case.critical_unseen),
    Rule("good", "What is at {retain_from} of 100 or better, lawful and lasting as far as is known, stays.", "retain", lambda case: True),
)


def fired(case: Case) -> Rule:
    """The first rule that applies; the last one always does."""
    return next(rule for rule in RULES if rule.applies(case))


def _exact(number: float | None) -> Fraction:
    # repr, because a typed 0.6 means six tenths and not the binary fraction next to it
    return Fraction(repr(float(number or 0)))
