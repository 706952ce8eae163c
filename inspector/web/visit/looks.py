"""The next look: what is still worth the minutes left on board, as the walk page asks."""

from flask import Blueprint, abort, jsonify, request

from inspector.services.visit.looks_left import looks_left
from inspector.values.numbers import NotANumber, parse_number
from inspector.web.current import data_folder, open_inspection

pages = Blueprint("next_look", __name__)


@pages.get("/exchange/<inspection_id>/next")
def advice(inspection_id: str):
    """The looks for `minutes` from the space `here`, in walking order, each with its reason."""
    inspection = open_inspection(inspection_id)
    here = request.args.get("here", "")
    # A space that the checklists do not know is no place to start from.
    if here not in data_folder().library_of(inspection).spaces:
        here = ""
    found = looks_left(data_folder(), inspection, _minutes(), here)
    # Slow to import, and asked for only on board.
    from inspector.assess.next_look.advice_data import advice_data

    return jsonify(advice_data(found))


def _minutes() -> float:
    """Return the minutes left, as typed in the address."""
    try:
        return parse_number(request.args.get("minutes", ""))
    except NotANumber as problem:
        abort(400, f"The minutes left: {problem}")
