"""The application factory: settings, desk, protection, blueprints and what a refusal looks like. Nothing happens on import."""

import hashlib
from pathlib import Path
from typing import Any

from flask import Flask, jsonify, render_template
from flask_wtf.csrf import CSRFError
from werkzeug.exceptions import HTTPException

from inspector import __version__, places
from inspector.errors import InspectorError
from inspector.quantities import units_like
from inspector.record.durable import NotWritten
from inspector.record.holding import make_private
from inspector.record.store import NoSuchInspection
from inspector.web import (
    compare,
    conversion,
    decide,
    exchange,
    imports,
    next_look,
    offline,
    particulars,
    prepare,
    rates,
    reports,
    rules,
    security,
    settle,
    walk,
)
from inspector.web import sharing as sharing_pages
from inspector.web.desk import open_desk, secret_key
from inspector.web.shared import Shared, Sharing

PARTS = (prepare, walk, offline, exchange, next_look, decide, conversion, compare, particulars, rates, rules, settle, reports, sharing_pages, imports)
LARGEST_BODY = 2_000_000_000  # a bundle that is brought in; every route has its own bound (security.py)


def make(data: Path, overrides: dict[str, Any]) -> Flask:
    """Make the application over a data folder."""
    app = Flask("inspector", template_folder=str(places.shipped("templates")), static_folder=str(places.shipped("static")))
    data = Path(data).resolve()
    shared: Shared | None = overrides.pop("SHARED", None)
    make_private(data)
    desk = open_desk(data)
    app.config.update(
        SECRET_KEY=secret_key(data),
        # Cookies do not know ports: two instances on one machine must not overwrite each other's session.
        SESSION_COOKIE_NAME="inspector-" + hashlib.sha256(str(data).encode()).hexdigest()[:8],
        SESSION_COOKIE_SAMESITE="Strict",
        WTF_CSRF_TIME_LIMIT=None,  # an inspection may be below decks for a day before it comes back
        TRUSTED_HOSTS=[*security.HERE, *([shared.address] if shared else [])],
        MAX_CONTENT_LENGTH=LARGEST_BODY,
    )
    app.config.update(overrides)
    app.extensions["desk"] = desk
    app.extensions["sharing"] = Sharing(desk.catalogue, shared)
    app.jinja_env.globals.update(units_like=units_like, version=__version__)
    app.jinja_env.trim_blocks = app.jinja_env.lstrip_blocks = True
    security.init_app(app)
    for module in PARTS:
        app.register_blueprint(module.pages)
    _refusals(app)
    return app


def _refusals(app: Flask) -> None:
    app.register_error_handler(NoSuchInspection, lambda problem: _refused(str(problem), 404))
    app.register_error_handler(NotWritten, lambda problem: _refused(str(problem), 507))
    app.register_error_handler(InspectorError, lambda problem: _refused(str(problem), 400))
    app.register_error_handler(CSRFError, lambda problem: _refused("This page was open too long to be trusted. Load it again, then repeat what you did.", 400))
    app.register_error_handler(HTTPException, lambda problem: _refused(_sentence(problem), problem.code or 500))
    app.register_error_handler(Exception, _unexpected)


def _sentence(problem: HTTPException) -> str:
    plain = {
        404: "There is no such page.",
        405: "This address does not take that kind of request.",
        413: problem.description or "This is larger than what is taken here.",
    }
    return plain.get(problem.code or 500, problem.description or problem.name)


def _unexpected(problem: Exception):
    from flask import current_app

    current_app.logger.exception("unexpected", exc_info=problem)
    return _refused("Something went wrong in the inspector itself. What was shown as kept is kept; the log says more.", 500)


def _refused(sentence: str, status: int):
    if security.wants_json():
        return jsonify(error=sentence), status
    return render_template("refused.html", sentence=sentence, status=status), status
