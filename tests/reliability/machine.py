"""Three devices and two laptops in every order of events that can be thought of: a state machine for Hypothesis."""

import itertools
import shutil
import tempfile
from pathlib import Path

from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, initialize, invariant, precondition, rule

from inspector.errors import InspectorError
from inspector.record.store import Inspections
from tests.reliability.faults import KINDS, Gone, failing
from tests.reliability.fleet import ID, Device, Laptop, Stick
from tests.reliability.truth import World, folded

PLACES = (("sheet/hull/shell/plating", "rating"), ("sheet/hull/shell/plating", "reading/mm"), ("vessel", "name"))
VALUES = ("good", "poor", None, {"value": "9.6", "unit": "mm"})
YEARS = (0, 0, -26, 31)
DEVICES, LAPTOPS, KEPT_BUNDLES = 3, 2, 4

devices, laptops = st.integers(0, DEVICES - 1), st.integers(0, LAPTOPS - 1)
places, values, years, shares = st.sampled_from(PLACES), st.sampled_from(VALUES), st.sampled_from(YEARS), st.sampled_from((0.0, 0.4, 0.9, 1.0))
calls, kinds = st.integers(1, 5), st.sampled_from(KINDS)


class Fleet(RuleBasedStateMachine):
    """Five that record about one vessel. At the end everything is exchanged, and all five must be equal."""

    examples = 0

    def __init__(self):
        super().__init__()
        Fleet.examples += 1
        self.folder = Path(tempfile.mkdtemp(prefix="fleet-"))
        self.world = World()
        self.force = self.world.in_force()
        self.force.__enter__()
        self.bundles: list[Stick] = []
        self.numbers = itertools.count(1)

    @initialize(told=st.booleans())
    def begin(self, told):
        """One laptop begins the inspection; the other gets it as a bundle."""
        (self.folder / "sheets").mkdir()
        (self.folder / "sheets" / "hull.toml").write_text("")
        for host in ("laptop-a", "laptop-b"):
            (self.folder / host).mkdir()
        first = Inspections(self.folder / "laptop-a", "laptop-a")
        first.create(self.folder / "sheets", ID)
        first.close()
        shutil.copytree(self.folder / "laptop-a" / ID, self.folder / "laptop-b" / ID)
        self.laptops = [Laptop(self.world, self.folder / host, host) for host in ("laptop-a", "laptop-b")]
        self.devices = [Device(self.world, name) for name in ("phone-a", "phone-b", "tablet")]
        if told:
            self.laptops[0].say([(*PLACES[0], "good")])

    @rule(which=devices, place=places, value=values, years=years)
    def a_device_answers(self, which, place, value, years):
        self.world.years = years
        self.devices[which].say(place, value)

    @rule(which=devices, to=laptops)
    def a_device_hands_over(self, which, to):
        self.devices[which].hand_over(self.laptops[to])

    @rule(which=devices, to=laptops, chosen=st.lists(st.integers(1, 12), min_size=1, max_size=5), reply_lost=st.booleans())
    def a_batch_goes_astray(self, which, to, chosen, reply_lost):
        """Any of the device's entries, in any order, some twice, some long handed over: a hold-up on the network delivers it now."""
        device = self.devices[which]
        ids = [one for number in chosen if (one := f"{device.name}:{number}") in device.own]
        device.send(self.laptops[to], ids, reply_lost)

    @rule(which=devices, to=laptops)
    def a_device_only_fetches(self, which, to):
        self.devices[which].fetch_only(self.laptops[to])

    @rule(which=devices)
    def a_page_is_opened_anew(self, which):
        self.devices[which].reload()

    @rule(which=laptops, said=st.dictionaries(places, values, min_size=1, max_size=2), years=years)
    def a_laptop_answers(self, which, said, years):
        self.world.years = years
        self.laptops[which].say([(*place, value) for place, value in said.items()])

    @rule(which=laptops)
    def a_form_is_opened(self, which):
        self.laptops[which].open_form()

    @precondition(lambda self: any(one.form is not None for one in self.laptops))
    @rule(place=places, value=values)
    def a_form_is_sent(self, place, value):
        one = next(one for one in self.laptops if one.form is not None)
        one.say([(*place, value)], from_form=True)
        one.form = None

    @rule(which=laptops)
    def a_laptop_is_killed(self, which):
        self.laptops[which].kill()

    @rule(which=laptops, share=shares)
    def the_plug_is_pulled(self, which, share):
        self.laptops[which].pull_the_plug(share)

    @rule(which=laptops, device=devices, k=calls, kind=kinds, act=st.sampled_from(("say", "take", "bring")), place=places, value=values, share=shares,
          restart=st.booleans())
    def a_disk_fails(self, which, device, k, kind, act, place, value, share, restart):
        """While it writes; then it goes on, or is started again, or had no power any more."""
        one, phone = self.laptops[which], self.devices[device]
        gone = False
        try:
            with failing(k, kind):
                if act == "say":
                    one.say([(*place, value)])
                elif act == "take":
                    phone.send(one, phone.outbox[:5])
                elif self.bundles:
                    one.bring(self.bundles[k % len(self.bundles)])
        except (InspectorError, OSError):
            pass
        except Gone:
            gone = True
        if gone:
            one.pull_the_plug(share)
        elif restart:
            one.kill()

    @rule(which=laptops, share=shares)
    def a_folder_is_carried(self, which, share):
        self.laptops[which].carry_to(self.laptops[1 - which], share)

    @rule(which=laptops)
    def a_backup_is_put_back(self, which):
        self.laptops[which].put_back()

    @rule(which=laptops)
    def a_bundle_is_made(self, which):
        path = self.folder / f"{next(self.numbers)}.zip"
        self.bundles = [*self.bundles, self.laptops[which].export(path)][-KEPT_BUNDLES:]

    @precondition(lambda self: self.bundles)
    @rule(which=laptops, age=st.integers(0, KEPT_BUNDLES - 1))
    def a_bundle_is_taken_in(self, which, age):
        """Whichever is at hand: of today or of long ago, of the other laptop or of this one."""
        self.laptops[which].bring(self.bundles[-1 - age % len(self.bundles)])

    @invariant()
    def every_laptop_is_right(self):
        for one in self.laptops:
            one.check()

    def teardown(self):
        """Exchange everything, then compare all five; then clean up."""
        try:
            if hasattr(self, "devices"):
                self._exchange_all()
                self._all_equal()
        finally:
            for one in getattr(self, "laptops", ()):
                one.inspections.close()
            self.force.__exit__(None, None, None)
            shutil.rmtree(self.folder, ignore_errors=True)

    def _exchange_all(self):
        a, b = self.laptops
        for one in (a, b):
            one.take_in([], "")  # the next writing clears up what a failed one left
        for phone in self.devices:
            phone.hand_over(a)
        for source, target in ((a, b), (b, a)):
            target.bring(source.export(self.folder / f"last-{source.host}.zip"))
        for phone in self.devices:
            phone.hand_over(b)

    def _all_equal(self):
        whole = self.world.entries
        truth = self.world.unseen_heads(whole.values())
        for known in (*(one.known() for one in self.laptops), *(one.known for one in self.devices)):
            assert self.world.acknowledged <= set(known)
            assert whole == known
            shown = folded(known.values())
            assert truth == {(subject, name): set(ids) for subject, fields in shown.items() for name, ids in fields.items()}
        for one in self.laptops:
            one.check()
