"""Devices and laptops under every order of answers, lost and repeated messages, crashes, bundles
and carried folders: nothing is lost, hidden or different."""

from hypothesis import HealthCheck, settings

from tests.reliability.machine import Fleet

# By hand, more: python3 -m tests.reliability.many --examples 100000
TestFleet = Fleet.TestCase
TestFleet.settings = settings(
    max_examples=250,
    stateful_step_count=15,
    deadline=None,
    suppress_health_check=list(HealthCheck),
)
