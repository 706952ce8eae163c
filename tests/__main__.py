"""`python3 -m tests`: sets up what the tests need, the browser included, then runs pytest with
the arguments given."""

import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parent.parent))

from inspector.cli import fresh_machine  # noqa: E402  (the path must be set first)

if __name__ == "__main__":
    fresh_machine.run_again_where_installed("tests", sys.argv[1:], tests=True)
    import pytest

    from tests import a_browser

    a_browser.fetch_if_missing()
    # The whole suite takes every core, each with a browser of its own; what somebody picked out
    # runs in one process, where it can be debugged.
    everything = ["--numprocesses=auto", "--dist=worksteal"]
    sys.exit(pytest.main(sys.argv[1:] or everything))
