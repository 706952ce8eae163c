"""The fleet of devices and laptops by hand, as often as one likes: `python3 -m
tests.reliability.many --examples 100000 --steps 25`."""

import argparse
import random
import signal
import sys
import time

from hypothesis import HealthCheck, Phase, seed, settings
from hypothesis.stateful import run_state_machine_as_test

from tests.reliability.machine import Fleet


def main() -> None:
    """Run, and print how many there were; a failure is printed with the shortest way to it."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--examples", type=int, default=10_000)
    parser.add_argument("--steps", type=int, default=25)
    parser.add_argument("--seed", type=int, default=random.randrange(1 << 30))
    parser.add_argument("--first", action="store_true", help="a failure is printed unshortened")
    options = parser.parse_args()
    # Ended before its time, it prints what it has done.
    signal.signal(signal.SIGTERM, lambda *_: sys.exit(1))
    machine, start = seed(options.seed)(Fleet), time.monotonic()
    chosen = settings(
        max_examples=options.examples,
        stateful_step_count=options.steps,
        deadline=None,
        database=None,
        suppress_health_check=list(HealthCheck),
        phases=[Phase.generate] if options.first else list(Phase),
    )
    try:
        run_state_machine_as_test(machine, settings=chosen)
    finally:
        print(
            f"seed {options.seed}: {Fleet.examples} examples in {time.monotonic() - start:.0f} s",
            flush=True,
        )
        for what, count in sorted(Fleet.met.items()):
            print(f"    with {what}: {count}", flush=True)


if __name__ == "__main__":
    main()
