"""Whose name an entry made at the laptop carries: the first surveyor kept in the catalogue, until a form names another."""

from flask import request

from inspector.web.desk import desk


def who() -> str:
    """The name given with the form, else the first surveyor's, else none."""
    given = request.form.get("who", "").strip()[:80]
    surveyors = desk().catalogue.all("surveyors")
    return given or (surveyors[0]["name"] if surveyors else "")
