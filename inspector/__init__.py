"""The vessel inspection recorder: prepare, walk, decide, report.

Importing this package needs nothing but the standard library, so that `python3 -m inspector` can
set itself up on a fresh machine.
"""

__version__ = "0.1.0"


def create_app(data, **overrides):
    """Return the Flask application over one data folder.

    Parameters
    ----------
    data : Path
        The data folder, made where it is not there yet.
    **overrides
        Settings of Flask; SHARED is where the application is shared.

    Returns
    -------
    Flask
    """
    from inspector.web.factory import make

    return make(data, overrides)
