"""What a candidate of the demo is made of, and how its findings, work and particulars are written.

They are lines of values with ``|`` between; an indented line continues the line above it.
"""

from collections.abc import Mapping
from dataclasses import dataclass

from inspector.demo.sheet_lines import FieldValue, logical_lines

Entries = tuple[FieldValue, ...]
Units = tuple[tuple[str, str], ...]

# The usual units of a supply vessel, system by system: "system|id=Name|id=Name".
# Where the units of a system are of several kinds, an id begins with its kind, unless all are
# of the first and usual one.
_USUAL_UNITS = """
hull|shell=Shell and sea chests|decks=Weather decks and deckhouses
    |closing=Bulkheads, doors and hatches
open-deck|deck=Open after deck
propulsion|engine-port=Port engine|engine-starboard=Starboard engine
    |gear-port=Port gear and shaft|gear-starboard=Starboard gear and shaft
thrusters|bow-1=Bow thruster 1|bow-2=Bow thruster 2|stern=Stern thruster
steering|port=Port rudder and steering gear|starboard=Starboard rudder and steering gear
power-generation|plant=Plant and shore connection|emergency=Emergency set
switchboards|main-a=Main switchboard, bus A|main-b=Main switchboard, bus B
    |emergency=Emergency switchboard|distribution=Distribution|batteries=Batteries and UPS
tanks|wet=Wet cargo tanks|dry=Dry bulk tanks|fuel=Fuel tanks|fresh=Fresh water tanks
    |ballast=Ballast tanks|waste=Waste tanks|voids=Voids, cofferdams and peaks
pumps-and-piping|cargo=Cargo pumps and lines|dry=Dry bulk air plant
    |fuel=Fuel transfer and manifold|bilge=Bilge and ballast|air=Compressed air
    |water=Fresh water making and supply|cooling=Cooling water, cooling and heating
reefers|freezer=Freezer room|chill=Chill room|plant=Refrigerating plant
    |galley=Galley and pantries
dynamic-positioning|dp=DP system
accommodation|cabins=Cabins and passages|air=Air conditioning and ventilation
    |rooms=Laundry, hospital and day rooms
bridge|bridge=Bridge
alarm-and-control|alarms=Machinery alarms and monitoring
    |panels=Fire, gas, door and general alarm panels
    |control=Remote control of engines, thrusters and pumps
deck-machinery|anchor=Windlass, anchors and chain|crane=Deck crane
    |mooring=Mooring winches and capstans|power-pack=Hydraulic power pack
fire-protection|detection=Detection, doors and dampers|main=Fire main and pumps
    |fixed=Fixed gas, mist and foam|gear=Portable gear and outfits
life-saving|boats=Rescue boat and davit|rafts=Rafts and their releases
    |gear=Suits, jackets, beacons and signals
environment|oil=Oil and bilge water|sewage=Sewage and grey water|ballast=Ballast treatment
    |garbage=Garbage and incinerator|air=Air and engine papers
spares-and-papers|stores=Spares, stores and workshop|manuals=Manuals, drawings and maintenance
    |papers=Certificates, class and people
landing-and-boarding|tender=Tenders and their launching
    |way-in=Gangways, ladders and shell doors
hazardous-materials|ship=The whole ship
"""
_VISIT = "title place date attending weather state berth"
_VESSEL = (
    "name imo flag class built year yard length breadth depth draught tonnage deck_area dp_class "
    "particulars"
)


def units_of(sets: int, **more: Units) -> dict[str, Units]:
    """Return the units of a supply vessel, system by system.

    Parameters
    ----------
    sets : int
        How many generator sets she has.
    **more : Units
        Units beside a system's usual ones; ``deck_machinery`` for the system deck-machinery.

    Returns
    -------
    dict of str to Units
    """
    units = {}
    for line in logical_lines(_USUAL_UNITS):
        system, *named = (part.strip() for part in line.split("|"))
        units[system] = tuple((id, name) for id, _, name in (each.partition("=") for each in named))
    generators = ((f"set-{number}", f"Generator set {number}") for number in range(1, sets + 1))
    units["power-generation"] = (*generators, *units["power-generation"])
    for system, extra in more.items():
        name = system.replace("_", "-")
        units[name] = (*units[name], *extra)
    return units


def _named(fields: str, text: str) -> dict[str, str]:
    """Return the values of a line by the names of its fields, without those left empty."""
    values = text.split("|")
    # Fields at the end may be left out, since few vessels have a class of positioning.
    named = zip(fields.split(), values + [""] * (len(fields.split()) - len(values)), strict=True)
    return {name: value for name, value in named if value}


def visit(text: str) -> dict[str, str]:
    """Return the fields of a visit, written title|place|date|attending|weather|state|berth."""
    return _named(_VISIT, text)


def vessel(text: str) -> dict[str, str]:
    """Return the fields of a vessel, written name|imo|flag and so on, as ``_VESSEL`` has them."""
    return _named(_VESSEL, text)


@dataclass(frozen=True)
class Candidate:
    """One vessel of the portfolio.

    Parameters
    ----------
    id : str
        Id of its inspection.
    visit, vessel : dict of str to str
        Fields of the inspection and of the vessel.
    units : dict of str to Units
        Units by system.
    sheets : dict of str to str
        Lines of checks by system, in the format of ``sheet_lines``.
    entries : Entries
        Everything beside the sheets: findings, work lines, particulars, decisions.
    photos : tuple
        (drawing, subject, caption) of each photo.
    overruled : str
        "subject=rating": the surveyor's rating against the judgement.
    disputed : str
        "subject=rating": a rating by the second surveyor, who had not seen the first.
    second_ratings : tuple of str
        "subject=rating" of checks that the second surveyor rated after seeing the first rating.
    """

    id: str
    visit: dict[str, str]
    vessel: dict[str, str]
    units: dict[str, Units]
    sheets: dict[str, str]
    entries: Entries
    photos: tuple[tuple[str, str, str], ...]
    overruled: str = ""
    disputed: str = ""
    second_ratings: tuple[str, ...] = ()


def rows(subject: str, fields: str, text: str) -> Entries:
    """Return the entries of subjects ``subject``/demo-01, demo-02 ..., one subject a line.

    Parameters
    ----------
    subject : str
        What the ids of the subjects begin with.
    fields : str
        Names of the fields with spaces between.
    text : str
        Lines of values with | between; an empty value makes no entry.

    Returns
    -------
    Entries

    Raises
    ------
    ValueError
        A line has more or fewer values than there are fields.
    """
    entries: list[FieldValue] = []
    for number, line in enumerate(logical_lines(text), 1):
        named = zip(fields.split(), line.split("|"), strict=True)
        entries += [
            (f"{subject}/demo-{number:02}", name, value.strip())
            for name, value in named
            if value.strip()
        ]
    return tuple(entries)


def values_of(subject: str, text: str) -> Entries:
    """Return the entries of one subject, written "name=value; name=value"."""
    pairs = (pair.partition("=") for pair in text.strip().split(";"))
    return tuple((subject, name.strip(), value.strip()) for name, _, value in pairs)


def table_rows(name: str, fields: str, text: str) -> Entries:
    """Return the rows of a table of particulars; raises ValueError as ``rows`` does."""
    return rows(f"row/{name}", fields, text)


def single_row(name: str, text: str) -> Entries:
    """Return the only row of a table of particulars, written "name=value; name=value"."""
    return values_of(f"row/{name}/one", text)


def findings(text: str) -> Entries:
    """Return findings, written urgency|on|title|text|action."""
    return rows("finding", "urgency on title text action", text)


def passed(**seen: str) -> Entries:
    """Return what was seen in passing, ``nothing`` or ``something`` -> "<system>/<unit> ..."."""
    return tuple(
        (f"unit/{unit}", "walked_past", what)
        for what, units in seen.items()
        for unit in units.split()
    )


def work_lines(text: str) -> Entries:
    """Return work lines, written sequence|system|unit|act|text|low|likely|high|weight."""
    return rows("scope", "sequence system unit act text low likely high weight", text)


def yard_details(text: str) -> Entries:
    """Return what a yard must know of work lines beside their text and cost.

    Parameters
    ----------
    text : str
        Lines id|place|quantity|quantity_unit|done|class_attends|supplied_by|after|finding.

    Returns
    -------
    Entries
    """
    names = [
        "place",
        "quantity",
        "quantity_unit",
        "done",
        "class_attends",
        "supplied_by",
        "after",
        "finding",
    ]
    made: list[FieldValue] = []
    for line in logical_lines(text):
        line_id, *values = (part.strip() for part in line.split("|"))
        pairs = zip(names, values, strict=True)
        made += [(f"scope/{line_id}", name, value) for name, value in pairs if value]
    return tuple(made)


def yard_weeks(text: str) -> Entries:
    """Return how long the yard works on lines.

    Parameters
    ----------
    text : str
        "number=weeks number=weeks ...", numbers as ``rows`` counts the lines.

    Returns
    -------
    Entries
    """
    pairs = (pair.partition("=") for pair in text.split())
    return tuple((f"scope/demo-{number}", "weeks", weeks) for number, _, weeks in pairs)


def verdict_facts(facts: Mapping[str, str]) -> Entries:
    """Return what is recorded beside verdicts: "<system>/<unit or all>" -> "name=value; ..."."""
    return tuple(
        entry for part, text in facts.items() for entry in values_of(f"verdict/{part}", text)
    )
