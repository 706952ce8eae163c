"""Three devices and two laptops in every order of events that can be thought of: a state machine
for Hypothesis."""

import itertools
import shutil
import tempfile
from collections import Counter
from pathlib import Path
from typing import ClassVar

from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, initialize, invariant, precondition, rule

from inspector.record.inspections import Inspections
from inspector.values.errors import InspectorError
from tests.reliability.faults import KINDS, Gone, failing
from tests.reliability.fleet import ID, Device, Laptop, Stick
from tests.reliability.truth import World, folded, void_claims

PLACES = (
    ("sheet/hull/shell/plating", "reading/width"),
    ("sheet/hull/shell/plating", "reading/mm"),
    ("vessel", "name"),
)
VALUES = ("good", "poor", None, {"value": "9.6", "unit": "mm"})
DAYS = (0, 0, 400, -400, -9500, 11300)
LINE_ENDS = (b"\r\n", b"\r", b" \n", b"\n")
DEVICES, LAPTOPS, KEPT_BUNDLES = 3, 2, 4

devices, laptops = st.integers(0, DEVICES - 1), st.integers(0, LAPTOPS - 1)
places, values, days, shares = (
    st.sampled_from(PLACES),
    st.sampled_from(VALUES),
    st.sampled_from(DAYS),
    st.sampled_from((0.0, 0.4, 0.9, 1.0)),
)
calls, kinds = st.integers(1, 5), st.sampled_from(KINDS)


class Fleet(RuleBasedStateMachine):
    """Five that record about one vessel. At the end everything is exchanged, and all five must
    be equal."""

    examples = 0
    # In how many histories each of the rare things came about.
    met: ClassVar[Counter] = Counter()

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
        self.laptops = [
            Laptop(self.world, self.folder / host, host) for host in ("laptop-a", "laptop-b")
        ]
        self.devices = [Device(self.world, name) for name in ("phone-a", "phone-b", "tablet")]
        if told:
            self.laptops[0].record([(*PLACES[0], "good")])

    @rule(which=devices, place=places, value=values, days=days)
    def a_device_answers(self, which, place, value, days):
        self.world.days = days
        self.devices[which].record(place, value)

    @rule(which=devices, to=laptops)
    def a_device_hands_over(self, which, to):
        self.devices[which].hand_over(self.laptops[to])

    @rule(
        which=devices,
        to=laptops,
        chosen=st.lists(st.integers(1, 12), min_size=1, max_size=5),
        reply_lost=st.booleans(),
    )
    def a_batch_goes_astray(self, which, to, chosen, reply_lost):
        """Any of the device's entries, in any order, some twice, some long handed over: a
        hold-up on the network delivers it now."""
        device = self.devices[which]
        ids = [one for number in chosen if (one := f"{device.name}:{number}") in device.own]
        device.send(self.laptops[to], ids, reply_lost)

    @rule(which=devices, to=laptops)
    def a_device_only_fetches(self, which, to):
        self.devices[which].fetch_only(self.laptops[to])

    @rule(which=devices)
    def a_page_is_opened_anew(self, which):
        self.devices[which].reload()

    @rule(which=laptops, said=st.dictionaries(places, values, min_size=1, max_size=2), days=days)
    def a_laptop_answers(self, which, said, days):
        self.world.days = days
        self.laptops[which].record([(*place, value) for place, value in said.items()])

    @rule(which=laptops)
    def a_form_is_opened(self, which):
        self.laptops[which].open_form()

    @precondition(lambda self: any(one.form is not None for one in self.laptops))
    @rule(place=places, value=values)
    def a_form_is_sent(self, place, value):
        one = next(one for one in self.laptops if one.form is not None)
        one.record([(*place, value)], from_form=True)
        one.form = None

    @rule(which=laptops)
    def a_laptop_is_killed(self, which):
        self.laptops[which].kill()

    @rule(which=laptops, share=shares)
    def the_plug_is_pulled(self, which, share):
        self.laptops[which].pull_the_plug(share)

    @rule(
        which=laptops,
        device=devices,
        k=calls,
        kind=kinds,
        act=st.sampled_from(("say", "take", "bring")),
        place=places,
        value=values,
        share=shares,
        restart=st.booleans(),
    )
    def a_disk_fails(self, which, device, k, kind, act, place, value, share, restart):
        """While it writes; then it goes on, or is started again, or had no power any more."""
        one, phone = self.laptops[which], self.devices[device]
        gone = False
        try:
            with failing(k, kind):
                if act == "say":
                    one.record([(*place, value)])
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

    @rule(which=devices, other=devices, to=laptops, place=places, value=values)
    def a_device_replaces_what_is_not_there_yet(self, which, other, to, place, value):
        self.devices[which].forge(place, value, self.laptops[to], self.devices[other])

    @rule(which=devices, other=devices, to=laptops, of_laptop=st.booleans())
    def a_device_writes_in_another_name(self, which, other, to, of_laptop):
        """In that of another device, or of the laptop."""
        names = [one.name for one in self.devices if one is not self.devices[which]]
        name = self.laptops[to].host if of_laptop else names[other % len(names)]
        number = 800_000_000 + next(self.numbers)
        self.laptops[to].refuse_another_name(self.devices[which], name, number)

    @rule(which=devices)
    def a_device_joins_anew(self, which):
        device = self.devices[which]
        device.join_anew(f"{device.name.partition('-again')[0]}-again-{next(self.numbers)}")

    @rule(which=devices, to=laptops)
    def all_that_a_device_knows_is_brought_as_a_file(self, which, to):
        self.laptops[to].bring_saved(list(self.devices[which].known.values()))

    @rule(which=laptops, ahead=st.integers(0, 3))
    def a_file_of_a_stranger_uses_the_other_laptops_name(self, which, ahead):
        entry = self.laptops[1 - which].made_up(700_000_000 + ahead)
        self.laptops[which].bring_saved([entry])

    @rule(which=laptops)
    def a_backup_is_made(self, which):
        self.laptops[which].back_up(self.folder / f"backup-{next(self.numbers)}")

    @rule(which=laptops, age=st.integers(0, 2))
    def an_older_backup_is_put_back(self, which, age):
        one = self.laptops[which]
        if one.backups:
            one.put_older_back(age, self._known_beside(one))

    @rule(which=laptops)
    def an_own_journal_is_removed_while_closed(self, which):
        one = self.laptops[which]
        one.remove_own_journal(self._known_beside(one))

    @rule(which=laptops, line_end=st.sampled_from(LINE_ENDS))
    def an_editor_saves_an_own_journal(self, which, line_end):
        self.laptops[which].edit_own_journal(line_end)

    def _known_beside(self, laptop: Laptop) -> set[str]:
        """What any of the others knows or made."""
        found = set()
        for one in self.laptops:
            found |= set(one.known()) if one is not laptop else set()
        return found.union(*({*one.known, *one.own} for one in self.devices))

    @rule(which=laptops, ahead=st.integers(0, 3))
    def a_stranger_uses_a_laptops_name(self, which, ahead):
        self.laptops[which].refuse_stranger(ahead)

    @rule(which=laptops, share=shares)
    def an_own_journal_is_cut_or_removed(self, which, share):
        self.laptops[which].lose_own_journal(share)

    @rule(
        which=laptops,
        place=places,
        value=values,
        at=st.integers(0, 400),
        bit=st.integers(0, 7),
    )
    def a_bit_flips(self, which, place, value, at, bit):
        """After the next answer, a bundle made before brings back what the bit took."""
        laptop = self.laptops[which]
        laptop.take_in([], ())
        stick = laptop.export(self.folder / f"{next(self.numbers)}.zip")
        laptop.flip_a_bit(at, bit)
        laptop.record([(*place, value)])
        laptop.bring(stick)

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
            one.take_in([], ())  # the next writing clears up what a failed one left
        for phone in self.devices:
            phone.hand_over(a)
            # What a laptop lost, a device may still know.
            a.bring_saved(list(phone.known.values()))
        for turn in (1, 2):
            for source, target in ((a, b), (b, a)):
                target.bring(source.export(self.folder / f"last-{turn}-{source.host}.zip"))
            for one in (a, b):
                one.take_in_kept_aside()
        for phone in self.devices:
            phone.hand_over(b)
            phone.hand_over(a)

    def _all_equal(self):
        whole = self.laptops[0].known()
        assert self.world.acknowledged <= set(whole) | self.world.gone
        assert whole == {one: self.world.entries[one] for one in whole}
        truth = self.world.unseen_heads(whole.values())
        # A claim that the laptop could not check hides nothing, even where it was true.
        unchecked = {claim for _, claim in void_claims(whole.values())}
        for known in (*(one.known() for one in self.laptops), *(one.known for one in self.devices)):
            assert whole == known, f"differs in {sorted(set(whole) ^ set(known))}"
            shown = folded(known.values())
            assert set(truth) == {(subject, name) for subject in shown for name in shown[subject]}
            for (subject, name), standing in truth.items():
                assert standing <= set(shown[subject][name]) <= standing | unchecked
        for one in self.laptops:
            one.check()
        self._count(unchecked)

    def _count(self, unchecked):
        names = [path.stem for one in self.laptops for path in one.own_files]
        happened = {
            "a new own name": any(name not in ("laptop-a", "laptop-b") for name in names),
            "answers gone with an older state": bool(self.world.gone),
            "a claim noted as not seen": bool(unchecked),
            "an entry of a stranger": bool(self.world.forged),
        }
        Fleet.met.update(what for what, did in happened.items() if did)
