"""A whole disk is restored, memory of numbers and all, so that numbers are given twice: both
laptops end equal, with every answer, and none is hidden by somebody who has not seen it.

An answer is known again by its time, which nobody else gets: under which number it is kept may
differ.
"""

import itertools
import shutil
import tempfile
from pathlib import Path
from unittest import mock

from hypothesis import HealthCheck, settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, invariant, rule

from inspector.record import inspection as store
from inspector.record.bundles import bundle
from inspector.record.inspections import Inspections

FIELDS = ("name", "flag")
laptops, fields = st.integers(0, 1), st.sampled_from(FIELDS)


class Laptop:
    """One computer: its inspections, the numbers it remembers, and a copy of the whole disk."""

    def __init__(self, folder, name):
        self.folder, self.name = folder, name
        self.disk, self.copy = folder / name, folder / f"copy of {name}"
        (self.disk / "data").mkdir(parents=True)
        self.start()

    def start(self):
        self.inspections = Inspections(self.disk / "data", self.name, self.disk / "numbers")

    def one(self):
        return self.inspections.get("one")

    def answers(self):
        """Time -> id of every answer that is here; notes are none."""
        return {each.at: each.id for each in self.one().entries if each.subject == "vessel"}

    def export(self, path):
        bundle.write(self.disk / "data" / "one", path)
        return path

    def bring(self, path):
        bundle.take_in(path, self.disk / "data", self.name, self.inspections.paused)

    def shown(self, field):
        return {each.at for each in self.one().state.heads("vessel", field)}


class RestoredDisks(RuleBasedStateMachine):
    """Two laptops with one inspection; either may have its disk restored."""

    def __init__(self):
        super().__init__()
        self.folder = Path(tempfile.mkdtemp(prefix="disks-"))
        self.ticks, self.files = itertools.count(1), itertools.count(1)
        self.clock = mock.patch.object(store, "now", self._now)
        self.clock.__enter__()
        self.both = [Laptop(self.folder, name) for name in ("first", "second")]
        (self.folder / "sheets").mkdir()
        (self.folder / "sheets" / "hull.toml").write_text("")
        self.both[0].inspections.create(self.folder / "sheets", "one")
        shutil.copytree(self.both[0].disk / "data" / "one", self.both[1].disk / "data" / "one")
        # Time -> field, and what its author had in sight.
        self.made, self.saw = {}, {}
        # What went with a restored disk and was nowhere else.
        self.gone = set()
        for laptop in self.both:
            self._copy(laptop)

    def _now(self):
        tick = next(self.ticks)
        return f"2026-05-02T09:{tick // 60:02}:{tick % 60:02}.000Z"

    @rule(which=laptops, field=fields)
    def a_laptop_answers(self, which, field):
        one = self.both[which].one()
        saw = set(self.both[which].answers())
        [entry] = one.record("QX", [("vessel", field, f"answer {next(self.files)}")])
        self.made[entry.at], self.saw[entry.at] = field, saw

    @rule(which=laptops)
    def the_disk_is_copied(self, which):
        self._copy(self.both[which])

    def _copy(self, laptop):
        shutil.rmtree(laptop.copy, ignore_errors=True)
        shutil.copytree(laptop.disk, laptop.copy)

    @rule(which=laptops, more=st.lists(fields, max_size=3))
    def the_disk_is_restored(self, which, more):
        """And somebody goes on with it, who does not know."""
        laptop = self.both[which]
        before = set(laptop.answers())
        laptop.inspections.close()
        shutil.rmtree(laptop.disk)
        shutil.copytree(laptop.copy, laptop.disk)
        laptop.start()
        self.gone |= before - set(laptop.answers()) - set(self.both[1 - which].answers())
        for field in more:
            self.a_laptop_answers(which, field)

    @rule(which=laptops)
    def a_bundle_is_brought(self, which):
        path = self.folder / f"{next(self.files)}.zip"
        self.both[which].bring(self.both[1 - which].export(path))

    @rule(which=laptops)
    def the_owner_takes_in_what_was_kept_aside(self, which):
        self.both[which].one().take_in_kept_aside()

    @invariant()
    def no_answer_is_hidden_by_somebody_who_has_not_seen_it(self):
        for laptop in self.both:
            there = laptop.answers()
            for field in FIELDS:
                said = {at for at in there if self.made[at] == field}
                seen = set().union(*(self.saw[at] for at in said))
                assert said - seen <= laptop.shown(field), laptop.name

    def teardown(self):
        try:
            for _ in range(2):
                for which in (0, 1):
                    self.a_bundle_is_brought(which)
                for which in (0, 1):
                    self.the_owner_takes_in_what_was_kept_aside(which)
            self.a_bundle_is_brought(0)
            self.a_bundle_is_brought(1)
            self._both_are_equal()
        finally:
            for laptop in self.both:
                laptop.inspections.close()
            self.clock.__exit__(None, None, None)
            shutil.rmtree(self.folder, ignore_errors=True)

    def _both_are_equal(self):
        first, second = self.both
        self.no_answer_is_hidden_by_somebody_who_has_not_seen_it()
        for laptop in self.both:
            assert set(self.made) - self.gone <= set(laptop.answers()), laptop.name
            assert [] == laptop.one().refused()
        for field in FIELDS:
            heads = [each.one().state.heads("vessel", field) for each in self.both]
            assert heads[0] == heads[1], heads
            # Whoever looks at both answers settles it once and for all.
        first.one().record("QX", [("vessel", name, "settled") for name in FIELDS], settles=True)
        second.bring(first.export(self.folder / "settled.zip"))
        for field in FIELDS:
            [head] = second.one().state.heads("vessel", field)
            assert "settled" == head.value
            assert not first.one().state.disputed("vessel", field)


RestoredDisks.TestCase.settings = settings(
    max_examples=100,
    stateful_step_count=12,
    deadline=None,
    suppress_health_check=list(HealthCheck),
)
TestRestoredDisks = RestoredDisks.TestCase
