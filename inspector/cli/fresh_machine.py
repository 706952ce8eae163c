"""Sets a checkout up by itself: an environment beside the code with what pyproject.toml asks for.

It uses the standard library only, since nothing else is there yet.
"""

import hashlib
import os
import subprocess
import sys
from importlib.util import find_spec
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
NEEDED = (
    "asn1crypto",
    "cheroot",
    "ecdsa",
    "flask",
    "flask_wtf",
    "ifaddr",
    "PIL",
    "platformdirs",
    "reportlab",
    "segno",
    "tinydb",
    "waitress",
)
NEEDED_FOR_TESTS = (
    "cryptography",
    "pytest",
    "hypothesis",
    "pint",
    "playwright",
    "pypdf",
    "ruff",
)


def run_again_where_installed(module: str, arguments: list[str], *, tests: bool = False) -> None:
    """Return if everything is importable here; else install it and run the module again there.

    Parameters
    ----------
    module : str
        What replaces this process, run in the environment .venv.
    arguments : list of str
        Of the module.
    tests : bool
        Whether what the tests need is needed as well.
    """
    needed = NEEDED + (NEEDED_FOR_TESTS if tests else ())
    # Looked for and not imported: an import would take half a second of every start.
    if all(find_spec(name) for name in needed):
        return
    python = _environment(".[test]" if tests else ".")
    command = [str(python), "-m", module, *arguments]
    # Windows has no exec that keeps the terminal, so the new process runs below this one.
    if os.name == "nt":
        sys.exit(subprocess.call(command, cwd=ROOT))
    os.chdir(ROOT)
    os.execv(command[0], command)


def _environment(what: str) -> Path:
    """The Python of the environment, which is set up where it is not there or is out of date."""
    folder = ROOT / ".venv"
    python = folder / ("Scripts/python.exe" if os.name == "nt" else "bin/python")
    stamp = folder / "installed-for"
    # A changed pyproject.toml may ask for more than was installed.
    state = hashlib.sha256((ROOT / "pyproject.toml").read_bytes()).hexdigest()
    # What the tests need includes what the tool needs.
    sufficient = (what + state, ".[test]" + state)
    if python.exists() and stamp.exists() and stamp.read_text() in sufficient:
        if Path(sys.prefix).resolve() == folder.resolve():
            # Running here already: to start again would start again without end.
            sys.exit(
                "The environment in .venv is set up, yet a package is missing in it. "
                "Delete the folder .venv, then run the same command again."
            )
        return python
    print("Setting up .venv (once; needs the network) ...", flush=True)
    _install(folder, python, what)
    stamp.write_text(what + state)
    return python


def _install(folder: Path, python: Path, what: str) -> None:
    """Make the environment and install; end with one sentence where that fails."""
    # By the interpreter of .venv itself, so that nothing goes into the system's Python.
    install = [str(python), "-m", "pip", "install", "--quiet", "--disable-pip-version-check"]
    try:
        if not python.exists():
            subprocess.run([sys.executable, "-m", "venv", str(folder)], check=True)
        subprocess.run([*install, "-e", what], cwd=ROOT, check=True)
    except (subprocess.CalledProcessError, OSError):
        sys.exit(
            "The set-up did not finish. Needed: Python 3.11 or newer with venv "
            "(Debian: apt install python3-venv) and the network, once."
        )
