"""All that the rules look at, for one unit: its facts, what was seen of it, and the settings."""

from dataclasses import dataclass, field

from inspector.assess.model import Facts
from inspector.assess.verdict.evidence import Evidence
from inspector.assess.verdict.prices import priced, too_dear
from inspector.assess.verdict.settings import Settings


@dataclass(frozen=True)
class Case:
    """All that the rules look at, for one unit.

    Parameters
    ----------
    facts : Facts
    evidence : Evidence
    settings : Settings
    """

    facts: Facts
    evidence: Evidence
    settings: Settings = field(default_factory=Settings)

    @property
    def need(self) -> str:
        """The brief's need; nobody can do without a part of the ship that cannot be taken out."""
        return "required" if self.facts.stays else self.facts.need

    @property
    def looked_at(self) -> bool:
        """Whether anybody looked; who names a law or calls it beyond repair has looked."""
        facts = self.facts
        return self.evidence.looked_at or bool(facts.law or facts.beyond_repair)

    @property
    def horizon(self) -> float | None:
        """The buyer's horizon, else the setting's, in years."""
        # The brief's own horizon before the one of the settings.
        own = self.facts.horizon
        return self.settings.horizon if own is None else own

    @property
    def short_lived(self) -> bool:
        """The remaining life is known to end before the buyer's horizon."""
        return self._life_is_known and self.facts.life_years < self.horizon

    @property
    def _life_is_known(self) -> bool:
        return self.facts.life_years is not None and self.horizon is not None

    @property
    def without_parts(self) -> bool:
        """Whether its spare parts are no longer made."""
        return self.facts.parts == "no longer made"

    @property
    def parts_run_out(self) -> bool:
        """No parts any more, and not known to last the horizon without them."""
        # Missing parts are no trouble to a thing that outlives the buyer's plans.
        lasting = self._life_is_known and not self.short_lived
        return self.without_parts and not lasting

    @property
    def priced(self) -> bool:
        """Whether both ways have a price of like scope."""
        return priced(self.facts)

    @property
    def too_dear(self) -> bool:
        """Whether refurbishing costs too much against replacing."""
        return too_dear(self.facts, self.settings)

    @property
    def work_is_certain(self) -> bool:
        """A critical check is poor or failed, or even all good in the unseen would not do."""
        condition = self.evidence.condition
        # Even with everything unseen counted as good it cannot reach the condition that retains.
        lost = condition.seen > 0 and condition.high < self.settings.retain_from
        return bool(self.evidence.critical_bad) or lost

    @property
    def work_is_due(self) -> bool:
        """Enough was seen, and it is worn, short-lived or without parts for the horizon."""
        return self.evidence.enough and self._will_not_last

    @property
    def hints_at_work(self) -> bool:
        """What was seen or said so far speaks for work."""
        return self._will_not_last or self.evidence.hints_at_work

    @property
    def _will_not_last(self) -> bool:
        return self.looks_worn or self.short_lived or self.parts_run_out

    @property
    def looks_worn(self) -> bool:
        """What was seen or reported is below the level from which it is retained."""
        points = self.evidence.hinted_points
        return points is not None and points < self.settings.retain_from
