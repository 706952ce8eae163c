"""`python3 -m tests`: sets up what the tests need, the browser included, then runs pytest with
the arguments given."""

import subprocess
import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parent.parent))

from inspector.cli import fresh_machine  # noqa: E402  (the path must be set first)

# More failures than this are a broken change and not a busy computer.
UNSTEADY_AT_MOST = 12


class Failures:
    """A pytest plugin that keeps the names of the tests that failed."""

    def __init__(self) -> None:
        self.names: set[str] = set()

    def pytest_runtest_logreport(self, report) -> None:
        """Keep the test's name, whether it or what was set up for it failed."""
        if report.failed:
            self.names.add(report.nodeid)


def run_everything() -> int:
    """Run the whole suite on every core, each with a browser of its own, and what failed once more.

    Browsers, folder carriers and killed servers share the cores with the rest, and a wait that is
    long enough on a quiet computer can be too short on a crowded one. The second run is alone on
    the computer: what fails there too has failed.
    """
    import pytest

    failures = Failures()
    first = pytest.main(["--numprocesses=auto", "--dist=worksteal", "-rfE"], [failures])
    if first != pytest.ExitCode.TESTS_FAILED or len(failures.names) > UNSTEADY_AT_MOST:
        return first
    failed = sorted(failures.names)
    print(f"\nOnce more, alone: {', '.join(failed)}", flush=True)
    # In a process of its own: the first run has left its modules and threads in this one.
    return subprocess.run([sys.executable, "-m", "pytest", "-v", "-rfE", *failed]).returncode


if __name__ == "__main__":
    fresh_machine.run_again_where_installed("tests", sys.argv[1:], tests=True)
    from tests import a_browser

    a_browser.fetch_if_missing()
    if not sys.argv[1:]:
        sys.exit(run_everything())
    # What somebody picked out runs in one process, where it can be debugged.
    import pytest

    sys.exit(pytest.main(sys.argv[1:]))
