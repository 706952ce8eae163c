"""The vessel inspection recorder: prepare, walk, decide, report.

Importing this package needs nothing but the standard library, so that `python3 -m inspector` can set itself up on a fresh machine.
"""

__version__ = "0.1.0"


def create_app(data, **overrides):
    """The Flask application over one data folder (a Path); `overrides` are Flask settings, for tests."""
    from inspector.web.factory import make

    return make(data, overrides)
