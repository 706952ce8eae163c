"""What all tests share: generated cases are never judged by the clock, since this suite also
runs on two slow cores; the numbers that this computer gave are remembered in a folder of the
tests."""

import os
import shutil
import tempfile

import pytest
from hypothesis import settings

# The same cases in every run: what passed before it landed passes after it. Long runs draw at
# random (``tests.reliability.many``), and what they find becomes a case of its own.
settings.register_profile("ours", deadline=None, derandomize=True)
settings.load_profile("ours")


@pytest.fixture(scope="session", autouse=True)
def numbers_of_the_tests():
    """In place of the user's own folder, also for the servers that tests start."""
    folder = tempfile.mkdtemp(prefix="numbers-")
    os.environ["INSPECTOR_NUMBERS"] = folder
    yield folder
    shutil.rmtree(folder, ignore_errors=True)
