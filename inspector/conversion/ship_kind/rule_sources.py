"""Where the rules of the three kinds of ship are published, and how each text was read."""

from typing import NamedTuple

from inspector.criteria.core.source import Source


class Cited(NamedTuple):
    """A source, and the few words by which a line calls it."""

    short: str
    source: Source


_ACT = "as a national act repeats it, article"
_SPS = "Code of safety for special purpose ships 2008, MSC.266(84)"

PASSENGER_SHIP = Cited(
    "SOLAS I/2",
    Source.seen(
        "SOLAS chapter I, regulation 2", "1974 as amended, on a public law site", "2(e) to 2(g)"
    ),
)
SPECIAL_PURPOSE = Cited(
    "SPS code 1.3",
    Source.seen(_SPS, f"1.3 on a public rules site, and {_ACT} 234-2.01", "1.2, 1.3"),
)
SPECIAL_DAMAGE = Cited("SPS code 2.2 to 2.4", Source.seen(_SPS, f"{_ACT} 234-2.02", "2.2 to 2.4"))
SPECIAL_HULL = Cited("SPS code 2.5", Source.seen(_SPS, f"{_ACT} 234-2.02", "2.5"))
SPECIAL_POWER = Cited("SPS code 4.2", Source.seen(_SPS, f"{_ACT} 234-2.02", "4.2.1 and 4.2.2"))
SPECIAL_FIRE = Cited("SPS code 6", Source.seen(_SPS, f"{_ACT} 234-2.02", "6.1 to 6.3"))
SPECIAL_CRAFT = Cited("SPS code 8", Source.seen(_SPS, f"{_ACT} 234-2.02", "8.2 and 8.4"))
SPECIAL_RADIO = Cited("SPS code 9", Source.seen(_SPS, f"{_ACT} 234-2.02", "9.1"))
INDEX = Cited(
    "SOLAS II-1/6",
    Source.seen(
        "SOLAS chapter II-1, regulation 6",
        "MSC.421(98), for ships begun from 1 January 2020, on a public rules site",
        "6.2, required subdivision index",
    ),
)
SIDE_DAMAGE = Cited(
    "SOLAS II-1/8",
    Source.seen(
        "SOLAS chapter II-1, regulation 8", "as amended, on two public rules sites", "8.2 and 8.3"
    ),
)
BILGE = Cited(
    "SOLAS II-1/35-1",
    Source.recalled("SOLAS chapter II-1, regulation 35-1", "35-1.3, number of bilge pumps"),
)
POWER_CARGO = Cited(
    "SOLAS II-1/43",
    Source.seen("SOLAS chapter II-1, regulation 43", "consolidated text, page read", "43.2, 18 h"),
)
POWER_PASSENGER = Cited(
    "SOLAS II-1/42",
    Source.seen(
        "SOLAS chapter II-1, regulation 42", "2009 consolidated text, page read", "42.2, 36 h"
    ),
)
FIRE = Cited(
    "SOLAS II-2",
    Source.recalled("SOLAS chapter II-2", "7.5, 9.2 and 10.6: detection, divisions and sprinklers"),
)
CRAFT_CARGO = Cited(
    "SOLAS III/31",
    Source.seen("SOLAS chapter III, regulation 31", "2009 consolidated text, page read", "31.1"),
)
CRAFT_PASSENGER = Cited(
    "SOLAS III/21, 22",
    Source.seen(
        "SOLAS chapter III, regulations 21 and 22", f"{_ACT} 221-III/21 and 22", "21.1, 21.2, 22.2"
    ),
)
RADIO = Cited(
    "SOLAS IV", Source.recalled("SOLAS chapter IV", "application, and equipment of passenger ships")
)
RECORDER = Cited(
    "SOLAS V/20",
    Source.seen(
        "SOLAS chapter V, regulation 20",
        "text of 2002 with the amendment of 2004, on public sites",
        "20.1: passenger ships; others from 3000 GT",
    ),
)
CREW = Cited(
    "STCW III/2, V/2",
    Source.seen(
        "STCW Convention 1978 as amended, regulations III/2 and V/2",
        "2010 text with the amendment of 2016, on public sites",
        "III/2, V/2",
    ),
)
SURVEYS = Cited(
    "SOLAS I/7 to 14",
    Source.seen(
        "SOLAS chapter I, regulations 7 to 14",
        "harmonised system as public survey pages give it",
        "passenger ship: 12 months; cargo ship: five years with yearly surveys",
    ),
)
BOTTOM = Cited(
    "SOLAS I/7, I/10",
    Source.recalled("SOLAS chapter I, regulations 7 and 10", "inspections of the bottom"),
)
YACHT_CODES = Cited(
    "yacht codes A 1.2, B 1.2",
    Source.seen(
        "Yacht code of a group of flags, parts A and B",
        "January 2019, on a public rules site",
        "A 1.2, B 1.2: to 12, and 13 to 36 passengers with at most 200 persons",
    ),
)
AS_NEW = Cited(
    "SOLAS II-1/1, II-2/1",
    Source.recalled("SOLAS chapters II-1 and II-2, regulations 1", "conversion to passenger ship"),
)
