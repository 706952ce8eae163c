"""Where files are: what is shipped, and the platform's folders for the user's data and numbers."""

import os
from pathlib import Path

PACKAGE = Path(__file__).resolve().parent


def shipped(name: str) -> Path:
    """Return a shipped folder.

    Parameters
    ----------
    name : str
        "templates", "static" or "checklists".

    Returns
    -------
    Path
        Inside the package where it was installed, beside it in a checkout.
    """
    inside = PACKAGE / "shipped" / name
    return inside if inside.is_dir() else PACKAGE.parent / name


def user_data() -> Path:
    """Return the platform's own folder for this user's data."""
    from platformdirs import user_data_path

    return user_data_path("vessel-inspections", appauthor=False)


def numbers_given() -> Path:
    """Return the folder that remembers how far this computer has numbered its entries.

    Returns
    -------
    Path
        Outside every data folder, so that a backup of one does not bring it back; the environment
        variable INSPECTOR_NUMBERS names another.
    """
    from platformdirs import user_state_path

    named = os.environ.get("INSPECTOR_NUMBERS")
    return Path(named) if named else user_state_path("vessel-inspections-numbers", appauthor=False)
