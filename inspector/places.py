"""Where files live: the shipped templates, static files and checklists, and the platform's folder for the user's data."""

from pathlib import Path

PACKAGE = Path(__file__).resolve().parent


def shipped(name: str) -> Path:
    """Folder `name` ("templates", "static" or "checklists"): inside the package in a wheel, beside it in a checkout."""
    inside = PACKAGE / "shipped" / name
    return inside if inside.is_dir() else PACKAGE.parent / name


def user_data() -> Path:
    """The platform's own folder for this user's data."""
    from platformdirs import user_data_path

    return user_data_path("vessel-inspections", appauthor=False)
