"""What a request works on: the data folder, the inspection, the sharing, the surveyor's name."""

from flask import current_app, request

from inspector.record.inspection import Inspection
from inspector.record.inspections import NoSuchInspection
from inspector.services.data_folder import DataFolder
from inspector.services.integrity import older_than_written
from inspector.sharing.shared_inspections import Sharing

MOST_DAMAGE_SHOWN = 3
WHAT_TO_DO = (
    "Everything else was read. To get back what was there, bring in the latest bundle from another "
    "computer, or let the devices hand over again; leave the damaged file as it is."
)


def data_folder() -> DataFolder:
    """The running data folder that this instance has open."""
    return current_app.extensions["data_folder"]


def open_inspection(inspection_id: str, refresh: bool = True) -> Inspection:
    """The inspection of that id; NoSuchInspection becomes a 404 with its sentence."""
    return data_folder().inspections.get(inspection_id, refresh=refresh)


def sharing() -> Sharing:
    """The running instance's sharing."""
    return current_app.extensions["sharing"]


def surveyor_name() -> str:
    """The author of entries made on this computer: the first surveyor; "" while none is kept."""
    surveyors = data_folder().catalogue.all("surveyors")
    return surveyors[0]["name"] if surveyors else ""


def damage_sentences() -> dict[str, list[str]]:
    """What every page of an inspection says of its damaged journal lines, for the templates."""
    inspection_id = (request.view_args or {}).get("inspection_id")
    if not inspection_id:
        return {"damage_sentences": []}
    try:
        inspection = open_inspection(inspection_id)
    except NoSuchInspection:
        return {"damage_sentences": []}
    gone, found = list(older_than_written(inspection)), inspection.damage_to_mend()
    sentences = [f"Damaged: {damage}." for damage in found[:MOST_DAMAGE_SHOWN]]
    more = len(found) - MOST_DAMAGE_SHOWN
    if more > 0:
        sentences.append(f"Damaged: {more} more lines; `inspector verify` names each.")
    return {"damage_sentences": [*gone, *sentences, *([WHAT_TO_DO] if sentences else [])]}
