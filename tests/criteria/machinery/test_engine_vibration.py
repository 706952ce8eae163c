"""Vibration: every boundary of both tables, and that the two tables are not mixed."""

import pytest

from inspector.checklists.registry import criterion
from inspector.criteria.core.judgement import CannotJudge

# group, support, ends of zones A, B, C [mm/s]; ISO 20816-3:2022, formerly ISO 10816-3 (memory)
MACHINES = [
    ("1", "rigid", (2.3, 4.5, 7.1)),
    ("1", "flexible", (3.5, 7.1, 11.0)),
    ("2", "rigid", (1.4, 2.8, 4.5)),
    ("2", "flexible", (2.3, 4.5, 7.1)),
]
# class, ends of the highest grades of zones A or B and of C [mm/s]; ISO 10816-6:1995 (memory)
ENGINES = [
    ("1", 4.46, 7.07),
    ("2", 7.07, 11.2),
    ("3", 11.2, 17.8),
    ("4", 17.8, 28.2),
    ("5", 28.2, 44.6),
    ("6", 44.6, 70.7),
    ("7", 70.7, 112),
]


@pytest.mark.parametrize(("group", "support", "ends"), MACHINES)
def test_a_boundary_belongs_to_the_better_zone(judge, group, support, ends):
    """At each printed value the zone below holds; a hundredth more is the next."""
    for end, zone, following in zip(ends, "ABC", "BCD", strict=True):
        assert (
            f"zone {zone}"
            == judge("machine-vibration", velocity=end, group=group, support=support).band
        )
        assert (
            f"zone {following}"
            == judge("machine-vibration", velocity=end + 0.01, group=group, support=support).band
        )


@pytest.mark.parametrize(
    ("expected", "velocity"), [("good", 2.3), ("good", 4.5), ("poor", 7.1), ("poor", 7.11)]
)
def test_zones_become_ratings_and_a_recalled_table_never_fails(judge, expected, velocity):
    """A and B good, C poor, D held at poor because the table is recalled."""
    assert expected == judge("machine-vibration", velocity=velocity).rating


@pytest.mark.parametrize(("machine_class", "long_term", "limited"), ENGINES)
def test_each_class_changes_zone_at_its_grades(judge, machine_class, long_term, limited):
    """The highest grades of zones A/B and C end in mm/s at the ladder's own figures."""
    for velocity, zone in (
        (long_term, "A or B"),
        (long_term + 0.01, "C"),
        (limited, "C"),
        (limited + 0.01, "D"),
    ):
        assert (
            f"zone {zone}"
            == judge("engine-vibration", velocity=velocity, machine_class=machine_class).band
        )


def test_the_engine_judgement_names_grade_and_limit(judge):
    """30 mm/s is grade 45, and class 5 ends at 44.6 mm/s."""
    judgement = judge("engine-vibration", velocity=30)
    assert "severity grade 45" in judgement.sentence
    assert (judgement.limit, judgement.margin) == (44.6, 14.6)


def test_the_two_tables_do_not_take_each_others_inputs():
    """An engine has no group and a machine no class."""
    with pytest.raises(CannotJudge, match="does not ask for 'group'"):
        criterion("engine-vibration").apply({"velocity": 5, "machine_class": "5", "group": "1"})


@pytest.mark.parametrize("name", ["machine-vibration", "engine-vibration"])
def test_no_velocity_is_negative(judge, name):
    """An r.m.s. value cannot be below zero, and a running machine is never still."""
    with pytest.raises(CannotJudge, match="is below 0"):
        judge(name, velocity=-0.1)


@pytest.mark.parametrize(
    ("name", "choice"),
    [
        ("machine-vibration", {"group": "3"}),
        ("machine-vibration", {"group": "I"}),
        ("engine-vibration", {"machine_class": "8"}),
    ],
)
def test_a_group_of_another_table_is_refused(judge, name, choice):
    """Groups 3 and 4 and classes I to IV belong to other tables."""
    with pytest.raises(CannotJudge, match="is not one of"):
        judge(name, **choice)


@pytest.mark.parametrize(
    ("zone", "more"),
    [
        ("zone A or B", {}),
        ("zone C", {"displacement": 500}),
        ("zone D", {"displacement": 711}),
        ("zone C", {"acceleration": 44.3}),
        ("zone D", {"acceleration": 70.2}),
        ("zone A or B", {"displacement": 448, "acceleration": 44.2}),
    ],
)
def test_the_worst_of_three_quantities_decides(judge, zone, more):
    """A low velocity hides neither displacement nor acceleration; class 5 has grades 28 and 45."""
    assert zone == judge("engine-vibration", velocity=5, **more).band


def test_the_engine_judgement_names_what_was_read(judge):
    """300 µm beside 9 mm/s are grade 28, by the displacement."""
    sentence = judge("engine-vibration", velocity=9, displacement=300).sentence
    assert "9 mm/s and 300 µm r.m.s. are, by the worst of them, severity grade 28" in sentence
