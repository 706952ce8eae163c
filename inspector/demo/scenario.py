"""The brief, the two surveyors and the three candidates of the demo. All of it is made up."""

from inspector.demo.brannoveth import TIRED
from inspector.demo.ithrenna import BARELY
from inspector.demo.zellowen.zellowen import WELL_KEPT

SURVEYORS = ("Ilvane Toreth", "Osk Merrindal")
# An expedition of forty for a month and a half: what carries it is required, the trade's own
# equipment is not.
NEEDS = {
    "hull": "required",
    "open-deck": "required",
    "propulsion": "required",
    "thrusters": "required",
    "steering": "required",
    "power-generation": "required",
    "switchboards": "required",
    "tanks": "useful",
    "pumps-and-piping": "useful",
    "reefers": "required",
    "dynamic-positioning": "neutral",
    "accommodation": "required",
    "bridge": "required",
    "alarm-and-control": "required",
    "deck-machinery": "useful",
    "fire-protection": "required",
    "life-saving": "required",
    "environment": "required",
    "spares-and-papers": "useful",
    "landing-and-boarding": "useful",
    "hazardous-materials": "neutral",
}
BRIEF = {
    "id": "demo-brief",
    "client": "Halvenna Expeditions (invented)",
    "speed": "12",
    "range": "9000",
    "endurance": "45",
    "persons": "40",
    "horizon": "15",
    # For the vessel and the work together, as the comparison counts it.
    "budget": "17000000",
    "waters": "open sea",
    "ship": "passenger",
    **{f"need/{system}": need for system, need in NEEDS.items()},
}
# Their IMO numbers begin with 000: below any that was assigned, with a valid check digit.
PORTFOLIO = (WELL_KEPT, TIRED, BARELY)
