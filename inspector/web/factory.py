"""The application factory: settings, data folder, protection, blueprints, refusals."""

import hashlib
from pathlib import Path
from typing import Any

from flask import Flask, jsonify, render_template
from flask_wtf.csrf import CSRFError
from werkzeug.exceptions import HTTPException

from inspector import __version__, places
from inspector.record.catalogue import Catalogue
from inspector.record.durable import NotWritten
from inspector.record.folder_lock import make_private
from inspector.record.inspections import NoSuchInspection
from inspector.record.photos import Busy
from inspector.services.data_folder import open_folder, secret_key
from inspector.services.shelf import Shelf
from inspector.sharing.network.doors import Doors, Shared
from inspector.sharing.network.ports import USUAL_PORT
from inspector.sharing.shared_inspections import Sharing
from inspector.values.errors import InspectorError
from inspector.values.units import units_like
from inspector.web import (
    check,
    compare,
    conversion_pages,
    counting,
    decide,
    exchange,
    levels,
    not_written,
    particular_tables,
    pasted_table_page,
    prepare,
    rates,
    reports,
    security,
    settle,
    walk,
)
from inspector.web.current import damage_sentences
from inspector.web.first_page import home, imports
from inspector.web.forms.form_fields import described
from inspector.web.joining import join_pages, sharing_page
from inspector.web.on_device import offline, python_files
from inspector.web.visit import looks, paper_page, round_page

PARTS = (
    check,
    home,
    prepare,
    counting,
    walk,
    looks,
    round_page,
    paper_page,
    offline,
    python_files,
    exchange,
    decide,
    conversion_pages,
    compare,
    particular_tables,
    pasted_table_page,
    rates,
    levels,
    settle,
    reports,
    sharing_page,
    join_pages,
    imports,
)
LARGEST_BODY = (
    2_000_000_000  # a bundle that is brought in; every route has its own bound (security.py)
)


def make(data: Path, overrides: dict[str, Any]) -> Flask:
    """Make the application over a data folder."""
    app = Flask(
        "inspector",
        template_folder=str(places.shipped("templates")),
        static_folder=str(places.shipped("static")),
    )
    data = Path(data).resolve()
    shared: Shared | None = overrides.pop("SHARED", None)
    # Before anything is written into it.
    make_private(data)
    # Before the configuration, because the secret and the cookie's name belong to the folder.
    opened = open_folder(data)
    app.config.update(
        SECRET_KEY=secret_key(data),
        # Cookies do not know ports: two instances on one machine must not overwrite each other's
        # session.
        SESSION_COOKIE_NAME="inspector-" + hashlib.sha256(str(data).encode()).hexdigest()[:8],
        SESSION_COOKIE_SAMESITE="Strict",
        WTF_CSRF_TIME_LIMIT=None,  # an inspection may be below decks for a day before it comes back
        MAX_CONTENT_LENGTH=LARGEST_BODY,
        SHARING_PORT=USUAL_PORT,
        TLS_FOLDER=data / "tls",
    )
    # Last, so that a test can replace any of them.
    app.config.update(overrides)
    app.extensions["data_folder"] = opened
    app.extensions["shelf"] = Shelf(opened)
    app.extensions["sharing"] = _sharing(app, opened.catalogue, shared)
    app.jinja_env.globals.update(units_like=units_like, described=described, version=__version__)
    # Templates are indented for their readers; the pages that travel are not.
    app.jinja_env.trim_blocks = app.jinja_env.lstrip_blocks = True
    # On every page: damage that is shown on one page only would be seen too late.
    app.context_processor(damage_sentences)
    security.init_app(app)
    for module in PARTS:
        app.register_blueprint(module.pages)
    _refusals(app)
    return app


def _sharing(app: Flask, catalogue: Catalogue, shared: Shared | None) -> Sharing:
    """Return the sharing of an application, which is started and stopped while it runs."""
    doors = Doors(app, app.config["TLS_FOLDER"], app.config["SHARING_PORT"])
    found = Sharing(catalogue, doors, shared)

    def told(now: Shared | None) -> None:
        names = [now.address] if now else []
        app.config["TRUSTED_HOSTS"] = [*security.HERE, *names]

    told(shared)
    found.told = told
    return found


def _refusals(app: Flask) -> None:
    """Register what each kind of error becomes: a page for people, JSON for scripts."""
    app.register_error_handler(NoSuchInspection, lambda problem: _refused(str(problem), 404))
    app.register_error_handler(NotWritten, lambda problem: not_written.refuse(str(problem)))
    app.register_error_handler(OSError, _of_system)
    app.register_error_handler(InspectorError, lambda problem: _refused(str(problem), 400))
    app.register_error_handler(Busy, _busy)
    app.register_error_handler(
        CSRFError,
        lambda problem: _refused(
            "This page was open too long to be trusted. Load it again, then repeat what you did.",
            400,
        ),
    )
    app.register_error_handler(
        HTTPException, lambda problem: _refused(_sentence(problem), problem.code or 500)
    )
    app.register_error_handler(Exception, _unexpected)


def _of_system(problem: OSError):
    """Refuse for an error of the system, with what to do where the disk is full."""
    if not_written.is_of_disk(problem):
        return not_written.refuse(not_written.disk_sentence(problem))
    return _unexpected(problem)


def _busy(problem: Busy):
    """Refuse for now, with the seconds after which to try again."""
    page, status = _refused(str(problem), 503)
    return page, status, {"Retry-After": str(problem.wait)}


def _sentence(problem: HTTPException) -> str:
    """Return what went wrong in plain words."""
    plain = {
        404: "There is no such page.",
        405: "This address does not take that kind of request.",
        413: problem.description or "This is larger than what is taken here.",
    }
    return plain.get(problem.code or 500, problem.description or problem.name)


def _unexpected(problem: Exception):
    """Log an error that nobody foresaw, and say that nothing shown as kept is lost."""
    from flask import current_app

    current_app.logger.exception("unexpected", exc_info=problem)
    return _refused(
        "Something went wrong in the inspector itself. What was shown as kept is kept; "
        "the log says more.",
        500,
    )


def _refused(sentence: str, status: int):
    """Return a refusal as JSON or as a page, by what was asked for."""
    if security.wants_json():
        return jsonify(error=sentence), status
    return render_template("refused.html", sentence=sentence, status=status), status
