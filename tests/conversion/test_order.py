"""The order in which rows were typed never decides an answer."""

from random import Random

import pytest

from inspector.conversion.power.chapter import chapter as power
from inspector.conversion.range.chapter import chapter as range_
from inspector.conversion.space.chapter import chapter as space
from inspector.conversion.stability.chapter import chapter as stability
from inspector.values.cell_text import cell_text
from tests.conversion.a_case import BOOKLET, WEIGHTS, case
from tests.conversion.power.test_chapter import WHOLE

BRIEF = {"speed": "11", "range": "3000", "endurance": "30", "persons": "20"}


def engine(name, power, drives="propeller", **more):
    """A row of the table of engines."""
    return {"name": name, "power": power, "drives": drives, **more}


TABLES = {
    **WHOLE,
    "hydrostatics": [BOOKLET],
    "weights": list(WEIGHTS),
    "speeds": [
        {"speed": "9", "power": "700", "displacement": "3200", "kind": "log"},
        {"speed": "11", "power": "1250", "displacement": "3100", "kind": "trial"},
        {"speed": "12", "power": "1700", "displacement": "3300", "kind": "log"},
        {"speed": "13", "power": "2150", "displacement": "3200"},
    ],
    "engines": [
        engine("port", "1500", rpm="900", year="2001", rate_75="205"),
        engine("starboard", "1500", rpm="900", year="2001", rate_75="205"),
        engine("set 1", "300", "generator", count="2"),
        engine("harbour set", "120", "generator", rate_75="230"),
    ],
    "tanks": [
        {"name": "Fuel 1", "kind": "fuel", "capacity": "200"},
        {"name": "Fuel 2", "kind": "fuel", "capacity": "150", "unusable": "4"},
        {"name": "fuel  1", "kind": "fuel", "capacity": "190"},
    ],
}
HOUSE = {
    "name": "house",
    "act": "on",
    "mass": "80",
    "vcg": "11",
    "lcg": "20",
    "tcg": "0",
    "stands": "open deck",
    "long": "20",
    "wide": "9",
    "high": "3",
    "room": "yes",
}
LOADED = {
    **TABLES,
    "weights": [*WEIGHTS, HOUSE, {**HOUSE, "name": "annex", "long": "6", "belongs_to": "house"}],
    "tanks": [
        *(
            {**tank, "vcg": "2", "lcg": "30", "tcg": "0", "free_surface": "40"}
            for tank in TABLES["tanks"]
        ),
        *(
            {
                "name": name,
                "kind": "ballast",
                "capacity": "90",
                "vcg": "1",
                "lcg": lcg,
                "tcg": "0",
            }
            for name, lcg in (("fore", "55"), ("aft", "5"), ("deep", "30"))
        ),
    ],
    "hydrostatics_by_draught": [
        {
            "draught": draught,
            "displacement": mass,
            "km": km,
            "limit_kg": limit,
            "lcb": "31",
            "lcf": "30",
            "mctc": "37",
        }
        for draught, mass, km, limit in (
            ("3.6", "1950", "8.6", "6.9"),
            ("4.4", "2600", "7.9", "6.7"),
            ("5.1", "3200", "7.55", "6.6"),
            ("5.8", "3800", "7.4", "6.5"),
        )
    ],
    "cross_curves": [
        {"displacement": mass, "kn_10": a, "kn_20": b, "kn_30": c, "kn_40": d}
        for mass, a, b, c, d in (
            ("1950", "1.5", "2.9", "4.1", "5.1"),
            ("3800", "1.3", "2.5", "3.6", "4.5"),
        )
    ],
    "decks": [{"name": "crate", "load": "9", "area": "6", "rated": "5"}],
    "spaces": [
        {"name": "hold", "kind": "hold", "act": "won", "area": "90", "height": "2.6"},
        {"name": "old house", "kind": "accommodation", "act": "given", "area": "200"},
    ],
}
LOADS = [*WHOLE["plant_loads"], {"name": "house", "kind": "new", "sea": "90", "harbour": "70"}]


def words(tables, chapter):
    """All that a chapter says, with figures to six digits."""
    found = chapter(case(tables, brief=BRIEF))
    figures = {
        figure.name: figure.span
        and tuple(float(f"{end:.6g}") for end in (figure.span.low, figure.span.high))
        for figure in found.figures
    }
    texts = [cell_text(text) for text in (found.answer, *found.warnings)]
    gaps = {(gap.name, cell_text(gap.why)) for gap in found.all_gaps}
    loading = [
        [cell_text(cell) for row in table.rows for cell in (row[0], row[1], row[9], row[10])]
        for table in found.figure_tables
        if table.title == "Loading conditions"
    ]
    return texts, figures, gaps, sorted(found.faults), loading


@pytest.mark.parametrize("chapter", [power, range_, space, stability])
@pytest.mark.parametrize("seed", range(6))
def test_rows_in_another_order_say_the_same(chapter, seed):
    """Every table shuffled, so that other rows come first and other ids are given."""
    mixed = {name: Random(seed).sample(rows, len(rows)) for name, rows in LOADED.items()}

    assert words(LOADED, chapter) == words(mixed, chapter)


def test_the_loading_conditions_are_in_that_case():
    """So that their ballast and their worst are shuffled as well."""
    found = stability(case(LOADED, brief=BRIEF))

    assert any(table.title == "Loading conditions" for table in found.figure_tables)


def span(tables, name):
    """A figure of the chapter on range."""
    found = range_(case(tables, brief=BRIEF))
    return next(figure.span for figure in found.figures if figure.name == name)


def test_one_row_for_each_engine_is_the_plant_of_one_row_with_a_count():
    """Two rows of one, or one row of two: the same load, burn and range."""
    together = [engine("port", "1500", count="2", rpm="900", year="2001", rate_75="205")]
    others = TABLES["engines"][2:]

    for name in ("Fuel burned at 11 kn", "Range at 11 kn"):
        apart = span(TABLES, name)
        assert apart == span({**TABLES, "engines": [*together, *others]}, name)


def test_unlike_engines_are_asked_about():
    """They are counted together, and the gap names both."""
    unlike = [*TABLES["engines"], engine("booster", "900")]
    found = range_(case({**TABLES, "engines": unlike}, brief=BRIEF))
    (why,) = [gap.why for gap in found.gaps if "booster" in cell_text(gap.why)]

    assert "2 × port and starboard" in why


def test_a_tank_that_is_typed_twice_is_named_and_counted_once():
    """The smaller of 200 and 190 m³ counts."""
    found = range_(case(TABLES, brief=BRIEF))
    once = {**TABLES, "tanks": TABLES["tanks"][1:]}

    assert any("typed more than once; 190 m³" in fault for fault in found.faults)
    assert span(once, "usable fuel") == span(TABLES, "usable fuel")


@pytest.mark.parametrize("load", ["1", "60", "400"])
def test_a_new_load_never_lengthens_a_range(load):
    """Whatever comes with the conversion burns fuel at sea and at anchor."""
    new = {"name": "house", "kind": "new", "sea": load, "harbour": load}
    with_load = {**TABLES, "plant_loads": [*WHOLE["plant_loads"], new]}

    for name in ("Range at 11 kn", "Fuel left after the brief's range and days"):
        before, after = span(TABLES, name), span(with_load, name)
        assert after.low < before.low
        assert after.point < before.point
        assert after.high < before.high


def test_a_margin_that_was_typed_is_not_put_on_a_log():
    """A log carries its weather; on a trial the margin counts."""
    passage = [{"id": "one", "sea_margin": "25"}]
    log = {**TABLES, "speeds": [{**row, "kind": "log"} for row in TABLES["speeds"]]}
    trial = {**TABLES, "speeds": [{**row, "kind": "trial"} for row in TABLES["speeds"]]}
    name = "Power at 11 kn"

    assert span(log, name) == span({**log, "propulsion": passage}, name)
    assert span(trial, name).point * 1.25 / 1.15 == pytest.approx(
        span({**trial, "propulsion": passage}, name).point
    )


def test_one_point_of_a_trial_leaves_the_rest_a_log():
    """Only that point takes a margin, so that the power is between log and all trial."""
    kinds = {"log": ["log"] * 4, "mixed": ["log", "trial", "log", "log"], "trial": ["trial"] * 4}
    power_at = {
        name: span(
            {
                **TABLES,
                "speeds": [
                    {**row, "kind": kind} for row, kind in zip(TABLES["speeds"], of, strict=True)
                ],
            },
            "Power at 11 kn",
        ).point
        for name, of in kinds.items()
    }

    assert power_at["log"] < power_at["mixed"] < power_at["trial"]


def test_points_are_not_carried_to_any_displacement():
    """At twice the weight of her points the fit says so and gives nothing."""
    heavy = [{**row, "displacement": "1600"} for row in TABLES["speeds"]]
    found = range_(case({**TABLES, "speeds": heavy}, brief=BRIEF))

    assert any("points near her displacement" in gap.name for gap in found.all_gaps)


def test_one_engine_running_is_a_case_of_its_own():
    """Two engines share the load; one alone carries twice as much, and may not reach the speed."""
    found = range_(case(TABLES, brief=BRIEF))
    (table,) = [each for each in found.figure_tables if "engines running" in each.title]
    one, two = table.rows

    assert ["1 engine", "2 engines"] == [one[0], two[0]]
    assert one[1].likely == pytest.approx(2 * two[1].likely)
    assert "yes" == two[2]
