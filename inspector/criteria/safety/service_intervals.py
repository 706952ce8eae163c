"""How long services, tests and surveys of fire, life-saving and other gear last.

The months are the longest that the text allows; flag, class and maker may shorten them, and a yacht
outside trade may be under other rules.
"""

from dataclasses import dataclass

from inspector.criteria.core.source import Source


@dataclass(frozen=True)
class Interval:
    """How long one kind of service lasts.

    Parameters
    ----------
    months : int
    source : Source
    days : int
        Where the text counts days; the months are then 0.
    grace : int
        Months after the due date that are its window.
    note : str
    """

    months: int
    source: Source
    days: int = 0
    grace: int = 0
    note: str = ""


def _seen(title: str, clause: str, edition: str = "extract read in a public copy") -> Source:
    """Return a source that was read."""
    return Source(title, edition, clause, "seen")


def _recalled(title: str, clause: str) -> Source:
    """Return a source from memory."""
    return Source(title, "recalled", clause, "memory")


_EXT = "Resolution A.951(23), portable fire extinguishers"
_CO2 = "MSC.1/Circ.1318/Rev.1, fixed carbon dioxide systems"
_FIRE = "MSC.1/Circ.1432, maintenance of fire protection systems"
_BOATS = "Resolution MSC.402(96), lifeboats, rescue boats, launching appliances and release gear"
_RADIO = "SOLAS IV/15.9 with MSC.1/Circ.1040/Rev.2 and MSC.1/Circ.1039/Rev.1"
_SPECIAL = "Code of safety for special purpose ships 2008, MSC.266(84), with " + _CO2
_LIFT = "SOLAS II-1/3-13 and the practice of ILO convention 152"
_SAMPLE = "Of ten-year-old cylinders a tenth is tested."
_SHAFT = "The class status gives the due date; monitoring and extensions change it."
_RAFT = (
    "Up to 17 months where the flag agrees that 12 were impracticable; new kinds of raft up to 30."
)

INTERVALS: dict[str, Interval] = {
    "portable extinguisher, service": Interval(12, _seen(_EXT, "9.1")),
    "portable extinguisher, discharge in a drill": Interval(
        60, _seen(_EXT, "9.1.1"), note="One of each type and year of make."
    ),
    "portable extinguisher, pressure test": Interval(
        120, _seen(_EXT, "9.1.2"), note="Bodies and propellant cartridges."
    ),
    "wheeled extinguisher, examination": Interval(
        60, _seen(_FIRE, "9.6"), note="One of each type and year of make."
    ),
    "CO2 system, general check": Interval(0, _seen(_CO2, "4.1"), days=30),
    "CO2 charge, cargo ship": Interval(
        36,
        Source(
            _CO2,
            "own reading",
            "at intermediate, periodical and renewal surveys, taken as 36 months",
            "common practice",
        ),
    ),
    "CO2 charge, passenger ship": Interval(24, _seen(_CO2, "6.1.1"), grace=3),
    "CO2 charge, special purpose ship, up to 60 persons": Interval(
        36, _recalled(_SPECIAL, "chapter 6, fire protection as a cargo ship to 60 persons")
    ),
    "CO2 charge, special purpose ship, over 60 persons": Interval(
        24,
        _recalled(_SPECIAL, "chapter 6, fire protection as a passenger ship above 60 persons"),
        grace=3,
    ),
    "CO2 control valves, internal": Interval(60, _seen(_CO2, "6.2")),
    # Pressure tests of CO2 cylinders go by number and year made: the criterion co2-cylinder-tests.
    "CO2 hoses, renewal": Interval(
        120, _seen(_CO2, "6.1, flexible hoses"), note="The maker's interval goes first."
    ),
    "other fixed gas, valves internal": Interval(60, _seen(_FIRE, "9.1")),
    "other fixed gas or powder cylinders, pressure test": Interval(
        120, _recalled(_FIRE, "10"), note=_SAMPLE
    ),
    "foam mixing and valves": Interval(60, _seen(_FIRE, "9.2")),
    "foam concentrate, first sample": Interval(
        36, _recalled("MSC.1/Circ.1312, foam concentrates", "first within three years of supply")
    ),
    "foam concentrate, later sample": Interval(
        12, _recalled("MSC.1/Circ.1312, foam concentrates", "yearly after the first")
    ),
    "sprinkler section valves": Interval(60, _seen(_FIRE, "9.3")),
    "breathing apparatus, masks and demand valves": Interval(12, _seen(_FIRE, "7")),
    "breathing air, quality": Interval(12, _seen(_FIRE, "7, recharging systems")),
    "breathing apparatus cylinders, pressure test": Interval(
        60, _seen(_FIRE, "9, steel cylinders"), note="Steel; other materials by their maker."
    ),
    "fire hoses, pressure test": Interval(
        60, _seen(_FIRE, "7.1.4"), note="A sample each year, so that every hose comes round."
    ),
    "inflatable raft, service": Interval(
        12, _seen("SOLAS III/20.8 with MSC.388(94)", "20.8.1"), note=_RAFT
    ),
    "inflatable lifejacket, service": Interval(12, _seen("SOLAS III/20.8", "20.8.1"), note=_RAFT),
    "hydrostatic release, service": Interval(
        12,
        _seen("SOLAS III/20.9", "20.9, other than disposable units"),
        note="Up to 17 months where the flag agrees.",
    ),
    "immersion suit, monthly look": Interval(
        1, _seen("MSC/Circ.1047, immersion suits", "monthly inspection")
    ),
    "immersion suit, pressure test": Interval(
        36,
        _seen("MSC/Circ.1114, immersion suits", "air pressure test"),
        note="One flag's note asks for 24 months above ten years of age.",
    ),
    "EPIRB, annual test": Interval(
        12,
        _seen(_RADIO, "15.9.1"),
        grace=3,
        note="The window after the anniversary holds for cargo ships.",
    ),
    "EPIRB, shore maintenance": Interval(60, _seen(_RADIO, "15.9.2")),
    "SART, annual test": Interval(
        12, _recalled("SOLAS IV/15, radar transponders", "yearly with the radio survey")
    ),
    "boat and davit, annual examination": Interval(12, _seen(_BOATS, "6.2")),
    "boat and davit, overload and release gear": Interval(60, _seen(_BOATS, "6.3")),
    "boat falls, renewal": Interval(60, _seen("SOLAS III/20.4", "20.4, or earlier when worn")),
    "davit-launched raft, hook overhaul": Interval(
        60, _recalled("SOLAS III/20.11", "automatic release hooks")
    ),
    "evacuation system, deployment": Interval(
        72, _recalled("SOLAS III/20.8.2", "deployed in rotation")
    ),
    "lifting appliance, thorough examination": Interval(
        12, _recalled(_LIFT, "thorough examination")
    ),
    "lifting appliance, load test": Interval(60, _recalled(_LIFT, "load test")),
    "anchor-handling winch, examination": Interval(
        12, _recalled("MSC.1/Circ.1662, anchor-handling winches", "yearly and after work")
    ),
    "gangway and ladder winch, load test": Interval(
        60, _seen("SOLAS III/20.7.2 with MSC.1/Circ.1331", "operational load test")
    ),
    "gangway wires, renewal": Interval(
        60, _seen("SOLAS III/20.7.2 with MSC.1/Circ.1331", "wires, or earlier when worn")
    ),
    "watertight doors, operation": Interval(
        0, _seen("SOLAS II-1/21", "weekly, passenger ships"), days=7
    ),
    "15 ppm alarm, calibration": Interval(
        60, _seen("MEPC.107(49) as amended by MEPC.285(70)", "4.2.11")
    ),
    "voyage recorder, performance test": Interval(12, _recalled("SOLAS V/18.8", "yearly")),
    "tail shaft, oil or closed fresh water": Interval(
        60, _recalled("IACS UR Z21, surveys of propeller shafts", "withdrawal"), note=_SHAFT
    ),
    "tail shaft, open water": Interval(
        36,
        _recalled(
            "IACS UR Z21, surveys of propeller shafts",
            "single shafts without corrosion-resistant means",
        ),
        note=_SHAFT,
    ),
    "stern tube oil, analysis": Interval(
        6,
        _seen(
            "Rules of one classification society, propeller shafts",
            "analysis of oil or fresh water",
        ),
    ),
    "azimuth or podded unit, survey": Interval(
        60, _seen("Rules of one classification society, 2016, thrusters", "main units")
    ),
    "tunnel thruster, survey": Interval(
        60,
        _seen(
            "Rules of one classification society, 2016, thrusters",
            "athwartship and positioning thrusters",
        ),
    ),
    "boiler, internal survey": Interval(
        36, _recalled("IACS UR Z18, machinery", "two in five years, at most 36 months apart")
    ),
    "emergency steering drill": Interval(3, _seen("SOLAS V/26", "drill every three months")),
}
AGED_SUIT_MONTHS, AGED_SUIT_YEARS = 24, 10
AGED_SUIT = Source(
    "A United Kingdom note on immersion suits beside MSC/Circ.1114",
    "extract read in a public copy",
    "above ten years of age",
    "seen",
)

_PRINTED = Source(
    "Printed date of the maker",
    "as read on the item",
    "life-saving appliances code, marking",
    "memory",
)
PRINTED: dict[str, Source] = {
    "hydrostatic release, disposable": _PRINTED,
    "EPIRB battery": _seen(_RADIO, "battery expiry date"),
    "SART battery": _PRINTED,
    "hand radio battery": _PRINTED,
    "rockets, flares, smoke": _PRINTED,
    "line-throwing appliance": _PRINTED,
    "raft rations and contents": _seen("SOLAS III/20.8 with MSC.388(94)", "dated contents"),
    "lifebuoy light battery": _PRINTED,
}
