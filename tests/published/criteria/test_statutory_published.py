"""Fire, life-saving, weathertightness, polar, house and bridge, against the texts that set them.

Rules that were read are marked (seen), recalled ones (memory); sums are our own.
"""

import pytest

from inspector.checklists.registry import criterion

FIRST = "position 1: freeboard deck, or forward quarter"
SECOND = "position 2: superstructure deck aft of it"
HULL = {"length": 64, "breadth": 16, "depth": 7}
TWO_JETS = {"flow": "two jets", "tonnage": 2500}
FIRE_MAIN = "SOLAS II-2/10.2.1.6, from two public notes (seen)"
SPS = "Code of safety for special purpose ships 2008, MSC.266(84) (memory)"
LSA = "SOLAS III/31 and III/32, consolidated texts of 2009 and 2012 (seen)"
DOORS = "SOLAS II-1/13, consolidated text of 2009 (seen)"
LOAD_LINES = "Load Lines 1966, regulations 12 to 20 (memory, ventilators seen)"
WATER = "HSG274 part 2 as a bibliography quotes it; WHO, Legionella and its prevention (seen)"
MARPOL_V = "MARPOL Annex V regulation 10, IMO guidelines on a public rules site (seen)"
MLC = "Maritime Labour Convention A3.1 (memory)"
WATCH = "MSC.128(75), 4.1.2, on a public rules site (seen)"
FSS = "FSS Code chapter 5, by a national regulation that repeats it (seen)"

# criterion, values, band, rating, source
JUDGEMENTS = [
    (
        "fire-main-pressure",
        {"pressure": 2.5, "ship": "cargo", **TWO_JETS},
        "enough",
        "good",
        f"{FIRE_MAIN}: 0.25 N/mm² below 6000 GT",
    ),
    (
        "fire-main-pressure",
        {"pressure": 2.9, "ship": "special purpose, over 60 persons", **TWO_JETS},
        "too low",
        "failed",
        f"{FIRE_MAIN}: passenger 0.30 N/mm² below 4000 GT; {SPS}",
    ),
    (
        "fire-pump-capacity",
        {"capacity": 25, "ship": "cargo", "pumps": 2, **HULL},
        "large enough",
        "good",
        "SOLAS II-2/10.2.2.4.2, at least 25 m³/h (seen in IACS SC 270 and a public note)",
    ),
    (
        "emergency-fire-pump",
        {"capacity": 24.9, "ship": "cargo", "tonnage": 2000, **HULL},
        "too small",
        "failed",
        "FSS Code 12.2.2.1.1, 25 m³/h from 2000 GT (seen in IACS SC 270)",
    ),
    (
        "survival-craft",
        {"places": 35, "persons": 36, "ship": "cargo: boats, or rafts below 85 m"},
        "too few",
        "failed",
        f"{LSA}: everybody on each side",
    ),
    (
        "lifejacket-count",
        {"jackets": 36, "persons": 36, "stations": 5, "ship": "cargo"},
        "spares short",
        "poor",
        "SOLAS III/7.2, public notes (seen): those of the watch come on top",
    ),
    (
        "immersion-suit-count",
        {"suits": 36, "persons": 36, "stations": 0},
        "enough",
        "good",
        "SOLAS III/32.3 by a flag's guidance of 2006 (seen)",
    ),
    (
        "lifebuoy-count",
        {"buoys": 8, "length": 99.9, "ship": "cargo"},
        "enough",
        "good",
        f"{LSA}: eight below 100 m",
    ),
    (
        "special-purpose-step",
        {"persons": 61, "special": 30, "passengers": 0},
        "special purpose, over 60 persons",
        None,
        SPS,
    ),
    (
        "emergency-endurance",
        {"time": 18, "ship": "special purpose, over 60 persons"},
        "too short",
        "poor",
        SPS,
    ),
    ("bilge-pump-count", {"pumps": 3, "ship": "special purpose"}, "enough", "good", SPS),
    (
        "bottom-inspection",
        {"last": "2024-11-12", "on": "2026-11-25", "ship": "special purpose"},
        "not yet",
        "good",
        "certified for five years as a cargo ship, 36 months between two inspections (memory)",
    ),
    (
        "co2-quantity",
        {"gas": 714, "volume": 1000, "space": "machinery"},
        "too little",
        "failed",
        f"{FSS}: 40 % of 1000 m³ at 0.56 m³/kg are 714.3 kg",
    ),
    (
        "watertight-door-time",
        {"time": 40, "way": "one door by power"},
        "within the limit",
        "good",
        DOORS,
    ),
    (
        "watertight-door-time",
        {"time": 61, "way": "all doors from the bridge"},
        "too slow",
        "failed",
        DOORS,
    ),
    (
        "weather-height",
        {"height": 760, "item": "ventilator", "position": SECOND},
        "high enough",
        "good",
        LOAD_LINES,
    ),
    (
        "weather-height",
        {"height": 755, "item": "air pipe", "position": FIRST},
        "too low",
        "poor",
        LOAD_LINES,
    ),
    ("rail-height", {"height": 990}, "too low", "poor", "Load Lines regulation 25, 1 m (seen)"),
    (
        "rail-opening",
        {"opening": 381, "course": "between other courses"},
        "too wide",
        "poor",
        "Load Lines regulation 25, 380 mm (seen)",
    ),
    (
        "freeing-port-area",
        {"area": 1.4, "length": 20, "height": 1.0, "deck": "freeboard deck"},
        "enough",
        "good",
        "Load Lines regulation 24, 0.7 + 0.035 l (memory)",
    ),
    (
        "hull-potential",
        {"potential": -850, "electrode": "silver/silver chloride"},
        "protected",
        "good",
        "−800 mV for steel in aerated sea water, a monograph's abstract (seen)",
    ),
    ("anode-left", {"left": 40}, "renew", "fair", "common practice, no source"),
    (
        "polar-fuel-ban",
        {"density": 985, "waters": "Antarctic", "on": "2026-11-25"},
        "banned",
        "failed",
        "MARPOL I/43, from 1 August 2011",
    ),
    (
        "polar-service-temperature",
        {"service": -20, "lowest": -15},
        "not low enough",
        "poor",
        "Polar Code I-A 1.3 (memory): 10 °C below",
    ),
    (
        "icing-allowance",
        {"ice": 36.75, "decks": 1000, "lateral": 900},
        "enough",
        "good",
        "30 and 7.5 kg/m², high-speed craft codes on a public rules site (seen)",
    ),
    (
        "protected-fuel-tanks",
        {"volume": 600, "delivered": "2010-08-01", "protected": "no"},
        "not protected",
        "failed",
        "MARPOL I/12A as IMO's own page gives it (seen)",
    ),
    (
        "chain-wear",
        {"worst": 44, "rule": 50},
        "to be renewed",
        "poor",
        "survey guidance of a class society, 12.1.1 (seen): renewed when worn by 12 %",
    ),
    (
        "wire-broken",
        {"broken": 11, "wires": 216},
        "to be taken out",
        "failed",
        "5 % in ten diameters, a public note for seafarers (seen): 10.8 of 216",
    ),
    (
        "wire-diameter",
        {"measured": 46, "nominal": 50},
        "watch",
        "fair",
        "common practice, no source",
    ),
    (
        "water-temperature",
        {"temperature": 48, "place": "hot tap after 1 min"},
        "wrong",
        "poor",
        WATER,
    ),
    ("water-chlorine", {"chlorine": 0.1}, "too little", "poor", "WHO, 0.2 mg/l"),
    ("water-legionella", {"count": 1200}, "act", "poor", "German ordinance, 100 in 100 ml"),
    (
        "garbage-papers",
        {
            "tonnage": 100,
            "persons": 12,
            "length": 30,
            "placards": "yes",
            "plan": "no",
            "book": "no",
            "on": "2013-01-01",
        },
        "papers missing",
        "poor",
        f"{MARPOL_V}: plan from 100 GT",
    ),
    (
        "cabin-area",
        {"area": 5.4, "cabin": "cargo ship, one person", "tonnage": 3000},
        "too small",
        "poor",
        f"{MLC}: 5.5 m² from 3000 GT",
    ),
    ("cabin-headroom", {"height": 2.0}, "too low", "poor", "MLC A3.1, 203 cm (seen)"),
    (
        "general-alarm-level",
        {"level": 94, "noise": 85, "place": "other space"},
        "too quiet",
        "failed",
        "LSA Code 7.2.1, 80 dB(A) and 10 dB(A) over the noise, a public note (seen)",
    ),
    ("watch-alarm-period", {"period": 15}, "outside", "failed", f"{WATCH}: 3 to 12 min"),
    (
        "watch-alarm-delay",
        {"delay": 30, "stage": "call to master or back-up"},
        "late",
        "failed",
        f"{WATCH}: 15 s",
    ),
    (
        "compass-error",
        {"error": 6, "compass": "magnetic, deviation"},
        "adjust",
        "poor",
        "common practice, no source",
    ),
    (
        "blind-sector",
        {"sector": 12, "which": "one, forward of the beam"},
        "too wide",
        "poor",
        "SOLAS V/22, 10° (memory)",
    ),
    ("field-of-view", {"arc": 220}, "too narrow", "poor", "SOLAS V/22, 225°"),
    (
        "large-propeller-pitch",
        {"pitch": 3.02, "drawn": 3, "tolerance_class": "S"},
        "too high",
        "poor",
        "ISO 484-1, 0.5 % (memory; part 2 seen)",
    ),
    (
        "blade-roughness",
        {"roughness": 12.5, "tolerance_class": "II"},
        "rough",
        "fair",
        "ISO 484-1, 12 µm (memory)",
    ),
    (
        "cell-gravity",
        {"density": 1230, "full": 1250, "temperature": 45},
        "charged",
        "good",
        "0.7 kg/m³ for each degree (common practice): 1230 + 14 = 1244",
    ),
]


@pytest.mark.parametrize(("name", "values", "band", "rating", "source"), JUDGEMENTS)
def test_a_criterion_judges_as_its_source_does(name, values, band, rating, source):
    """Each case comes out in its band; what is only recalled is held at poor."""
    judgement = criterion(name).apply(values)
    assert (band, rating) == (judgement.band, judgement.rating), source


@pytest.mark.parametrize(("persons", "share"), [(60, 0.8), (150, 0.9), (240, 1.0)])
def test_the_note_on_damage_stability_is_a_straight_line(persons, share):
    """0.8 + 0.2 (N − 60) / 180 of the index (SPS Code 2.2, memory), as the note says."""
    assert share == pytest.approx(0.8 + 0.2 * (persons - 60) / 180)
    notes = (
        criterion("special-purpose-step")
        .apply({"persons": persons, "special": 20, "passengers": 0})
        .notes
    )
    assert any("80 %" in note and "from 240" in note for note in notes)
