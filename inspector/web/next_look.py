"""The next look: what is still worth the minutes left on board, asked by the walk page after each answer that was handed over."""

from dataclasses import asdict

from flask import Blueprint, abort, jsonify, request

from inspector.assess.next_look import next_look
from inspector.errors import InspectorError
from inspector.quantities import parse_number
from inspector.web.desk import desk, open_inspection

pages = Blueprint("next_look", __name__)
LONGEST = 24 * 60


@pages.get("/exchange/<inspection_id>/next")
def advice(inspection_id: str):
    """The plan for `minutes` from the space `here`: looks in walking order, each with its reason in a sentence."""
    inspection = open_inspection(inspection_id)
    minutes = _minutes(request.args.get("minutes", ""))
    here = request.args.get("here", "")
    assessment = desk().assessment_of(inspection)
    found = next_look(assessment, minutes, here=here if here in desk().library_of(inspection).spaces else "", settings=assessment.settings)
    return jsonify(
        looks=[{**asdict(one.look), "sentence": one.sentence} for one in found.advice], minutes=found.minutes, why=found.why, joint=found.joint)


def _minutes(text: str) -> float:
    try:
        minutes = parse_number(text)
    except InspectorError as problem:
        abort(400, f"The minutes left: {problem}")
    if not 0 <= minutes <= LONGEST:
        abort(400, f"The minutes left must be 0 to {LONGEST}, and not {text}.")
    return minutes
