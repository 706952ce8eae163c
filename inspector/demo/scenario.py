"""The invented brief, the two surveyors and the three candidates of the demo. All of it is made up."""

from inspector.demo.brannoveth import TIRED
from inspector.demo.ithrenna import BARELY
from inspector.demo.zellowen import WELL_KEPT

SURVEYORS = ("Ilvane Toreth", "Osk Merrindal")
NEEDS = {"hull": "required", "open-deck": "required", "propulsion": "required", "thrusters": "required", "steering": "required",
         "power-generation": "required", "switchboards": "required", "tanks": "useful", "pumps-and-piping": "useful", "reefers": "required",
         "dynamic-positioning": "neutral", "accommodation": "required", "bridge": "required", "alarm-and-control": "required", "deck-machinery": "useful",
         "fire-protection": "required", "life-saving": "required", "environment": "required", "spares-and-papers": "useful",
         "landing-and-boarding": "useful", "hazardous-materials": "neutral"}
BRIEF = {"id": "demo-brief", "client": "Halvenna Expeditions (invented)", "speed": "12", "range": "9000", "endurance": "45", "persons": "40",
         "horizon": "15", "budget": "17000000", "waters": "open sea", **{f"need/{system}": need for system, need in NEEDS.items()}}
PORTFOLIO = (WELL_KEPT, TIRED, BARELY)
