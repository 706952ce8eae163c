"""The report's fonts are there for every report, also for two that are begun at once."""

import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).parents[2]
# In a process of its own, since fonts are registered once for a process.
BEGUN_AT_ONCE = """
from concurrent.futures import ThreadPoolExecutor
from reportlab.lib.fonts import ps2tt
from inspector.report.theme import BOLD, use_fonts

def begin(_):
    use_fonts()
    return ps2tt(BOLD)

with ThreadPoolExecutor(8) as pool:
    print(len(set(pool.map(begin, range(8)))))
"""


def test_reports_begun_at_once_find_the_fonts():
    """None is set before the family of the fonts is known."""
    command = [sys.executable, "-c", BEGUN_AT_ONCE]
    ended = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, check=False)

    assert "1\n" == ended.stdout, ended.stderr
