"""What a candidate of the invented portfolio is made of, and the short lines its findings, work and particulars are written in."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

Entries = tuple[tuple[str, str, Any], ...]
Units = tuple[tuple[str, str], ...]

THRUSTERS: Units = (("bow-1", "Bow thruster 1"), ("bow-2", "Bow thruster 2"), ("stern", "Stern thruster"))
_HULL = (("shell", "Shell and sea chests"), ("decks", "Weather decks and deckhouses"), ("closing", "Bulkheads, doors and hatches"))
_SHAFTS = (("port", "Port shaft line"), ("starboard", "Starboard shaft line"))
_RUDDERS = (("port", "Port rudder and steering gear"), ("starboard", "Starboard rudder and steering gear"))
_BOARDS = (("main", "Main switchboard (bus A and B)"), ("emergency", "Emergency switchboard"), ("distribution", "Distribution"),
           ("batteries", "Batteries and UPS"))
_TANKS = (("wet", "Wet cargo tanks"), ("dry", "Dry bulk tanks"), ("fuel", "Fuel tanks"), ("fresh", "Fresh water tanks"), ("ballast", "Ballast tanks"),
          ("waste", "Waste tanks"), ("voids", "Voids, cofferdams and peaks"))
_PIPES = (("cargo", "Cargo pumps and lines"), ("dry", "Dry bulk air plant"), ("fuel", "Fuel transfer and manifold"), ("bilge", "Bilge and ballast"),
          ("air", "Compressed air"), ("water", "Fresh water making and supply"), ("cooling", "Cooling water"))
_ROOMS = (("freezer", "Freezer room"), ("chill", "Chill room"), ("plant", "Refrigerating plant"), ("galley", "Galley and pantries"))
_HOUSE = (("cabins", "Cabins and passages"), ("air", "Air conditioning and ventilation"), ("rooms", "Laundry, hospital and day rooms"))
_ALARMS = (("alarms", "Machinery alarms and monitoring"), ("panels", "Fire, gas, door and general alarm panels"),
           ("control", "Remote control of engines, thrusters and pumps"))
_DECK = (("anchor", "Windlass, anchors and chain"), ("crane", "Deck crane"), ("mooring", "Mooring winches and capstans"))
_FIRE = (("detection", "Detection, doors and dampers"), ("main", "Fire main and pumps"), ("fixed", "Fixed gas, mist and foam"),
         ("gear", "Portable gear and outfits"))
_BOATS = (("boats", "Rescue boat and davit"), ("rafts", "Rafts and their releases"), ("gear", "Suits, jackets, beacons and signals"))
_ENVIRONMENT = (("oil", "Oil and bilge water"), ("sewage", "Sewage and grey water"), ("ballast", "Ballast treatment"), ("garbage", "Garbage and incinerator"),
                ("air", "Air and engine papers"))
_PAPERS = (("stores", "Spares, stores and workshop"), ("manuals", "Manuals, drawings and maintenance"), ("papers", "Certificates, class and people"))
_BOARDING = (("tender", "Tenders and their launching"), ("way-in", "Gangways, ladders and shell doors"))


def units_of(sets: int, **more: Units) -> dict[str, Units]:
    """The units of a supply vessel with so many generator sets, system by system; `more` is put before a system's own (deck_machinery for deck-machinery)."""
    generators = tuple((f"set-{number}", f"Generator set {number}") for number in range(1, sets + 1))
    usual = {
        "hull": _HULL, "open-deck": (("deck", "Open after deck"),), "propulsion": _SHAFTS, "thrusters": THRUSTERS, "steering": _RUDDERS,
        "power-generation": (*generators, ("plant", "Plant and shore connection"), ("emergency", "Emergency set")),
        "switchboards": _BOARDS, "tanks": _TANKS, "pumps-and-piping": _PIPES, "reefers": _ROOMS, "dynamic-positioning": (("dp", "DP system"),),
        "accommodation": _HOUSE, "bridge": (("bridge", "Bridge"),), "alarm-and-control": _ALARMS, "deck-machinery": _DECK, "fire-protection": _FIRE,
        "life-saving": _BOATS, "environment": _ENVIRONMENT, "spares-and-papers": _PAPERS, "landing-and-boarding": _BOARDING,
        "hazardous-materials": (("ship", "The whole ship"),),
    }
    return usual | {system: (*usual[system], *units) for name, units in more.items() for system in [name.replace("_", "-")]}


@dataclass(frozen=True)
class Candidate:
    """One vessel of the portfolio; `said` holds (subject, field, value) beside the sheets, `photos` (drawing, subject, caption)."""

    id: str
    visit: dict[str, str]
    vessel: dict[str, str]
    units: dict[str, Units]
    sheets: dict[str, str]
    said: Entries
    photos: tuple[tuple[str, str, str], ...]
    overruled: str = ""                 # "subject=rating": the surveyor's word against the judgement
    disputed: str = ""                  # "subject=rating": the second surveyor's word, given without seeing the first
    seconded: tuple[str, ...] = ()      # the same, of checks that the other surveyor rated too, having seen the first rating


def rows(subject: str, fields: str, text: str) -> Entries:
    """Lines of values parted by | -> entries of `subject`/demo-<n>; `fields` names the columns; an empty value makes no entry."""
    parted = (line.split("|") for line in text.strip().splitlines())
    return tuple((f"{subject}/demo-{number:02}", name, value.strip())
                 for number, row in enumerate(parted, 1) for name, value in zip(fields.split(), row, strict=True) if value.strip())


def one(subject: str, text: str) -> Entries:
    """"name=value; name=value" -> entries of one subject."""
    pairs = (pair.partition("=") for pair in text.strip().split(";"))
    return tuple((subject, name.strip(), value.strip()) for name, _, value in pairs)


def table(name: str, fields: str, text: str) -> Entries:
    """Rows of a table of particulars."""
    return rows(f"row/{name}", fields, text)


def single(name: str, text: str) -> Entries:
    """The one row of a table of particulars."""
    return one(f"row/{name}/one", text)


def findings(text: str) -> Entries:
    """Lines `urgency|on|title|text|action`."""
    return rows("finding", "urgency on title text action", text)


def work(text: str) -> Entries:
    """Lines `sequence|system|unit|act|text|low|likely|high|weight`."""
    return rows("scope", "sequence system unit act text low likely high weight", text)


def verdicts(said: Mapping[str, str]) -> Entries:
    """"<system>/<unit or all>" -> "name=value; name=value"."""
    return tuple(entry for part, text in said.items() for entry in one(f"verdict/{part}", text))
