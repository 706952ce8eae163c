"""Sets a checkout up by itself: a virtual environment beside the code with what pyproject.toml asks for. Standard library only."""

import hashlib
import os
import subprocess
import sys
from importlib.util import find_spec
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
NEEDED = ("flask", "flask_wtf", "PIL", "platformdirs", "reportlab", "segno", "tinydb", "waitress")
NEEDED_FOR_TESTS = ("cheroot", "cryptography", "pytest", "hypothesis", "pint", "playwright", "pypdf", "ruff")


def run_again_where_installed(module: str, arguments: list[str], *, tests: bool = False) -> None:
    """Return if everything is importable here; else install into .venv and replace this process by `module` run there."""
    needed = NEEDED + (NEEDED_FOR_TESTS if tests else ())
    if all(find_spec(name) for name in needed):
        return
    python = _environment(".[test]" if tests else ".")
    command = [str(python), "-m", module, *arguments]
    if os.name == "nt":
        sys.exit(subprocess.call(command, cwd=ROOT))
    os.chdir(ROOT)
    os.execv(command[0], command)


def _environment(what: str) -> Path:
    folder = ROOT / ".venv"
    python = folder / ("Scripts/python.exe" if os.name == "nt" else "bin/python")
    stamp = folder / "installed-for"
    state = hashlib.sha256((ROOT / "pyproject.toml").read_bytes()).hexdigest()
    wanted = what + state
    # What the tests need includes what the tool needs.
    if python.exists() and stamp.exists() and stamp.read_text() in (wanted, ".[test]" + state):
        if Path(sys.prefix).resolve() == folder.resolve():
            sys.exit("The environment in .venv is set up, yet a package is missing in it. Delete the folder .venv, then run the same command again.")
        return python
    print("Setting up .venv (once; needs the network) ...", flush=True)
    try:
        if not python.exists():
            subprocess.run([sys.executable, "-m", "venv", str(folder)], check=True)
        subprocess.run([str(python), "-m", "pip", "install", "--quiet", "--disable-pip-version-check", "-e", what], cwd=ROOT, check=True)
    except (subprocess.CalledProcessError, OSError):
        sys.exit("The set-up did not finish. Needed: Python 3.11 or newer with venv (Debian: apt install python3-venv) and the network, once.")
    stamp.write_text(wanted)
    return python
