"""The fleet of devices and laptops by hand, as often as one likes: `python3 -m tests.reliability.many --examples 100000 --steps 25`."""

import argparse
import random
import time

from hypothesis import HealthCheck, seed, settings
from hypothesis.stateful import run_state_machine_as_test

from tests.reliability.machine import Fleet


def main() -> None:
    """Run, and print how many there were; a failure is printed with the shortest way to it."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--examples", type=int, default=10_000)
    parser.add_argument("--steps", type=int, default=25)
    parser.add_argument("--seed", type=int, default=random.randrange(1 << 30))
    options = parser.parse_args()
    machine, start = seed(options.seed)(Fleet), time.monotonic()
    chosen = settings(max_examples=options.examples, stateful_step_count=options.steps, deadline=None, database=None,
                      suppress_health_check=list(HealthCheck))
    try:
        run_state_machine_as_test(machine, settings=chosen)
    finally:
        print(f"seed {options.seed}: {Fleet.examples} examples in {time.monotonic() - start:.0f} s", flush=True)


if __name__ == "__main__":
    main()
