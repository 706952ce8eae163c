"""The shipped checklists hold what a survey needs, and a broken folder names every mistake."""

import re
import shutil
import tomllib
from pathlib import Path

import pytest

from inspector.checklists.asked import minutes_of_sheet
from inspector.checklists.loader import ChecklistFaults, read_library
from inspector.checklists.registry import CRITERIA
from inspector.checklists.schema import (
    CAUTION_KEYS,
    CHECK_KEYS,
    CHECK_OPTIONS,
    READING_KEYS,
    READING_OPTIONS,
    SYSTEM_KEYS,
    SYSTEM_OPTIONS,
)
from inspector.cli import parser as cli
from inspector.places import shipped
from inspector.services.data_folder import gather_checklists
from inspector.values.units import convert, known_unit

SYSTEMS = [
    "hull",
    "open-deck",
    "propulsion",
    "thrusters",
    "steering",
    "power-generation",
    "switchboards",
    "dynamic-positioning",
    "tanks",
    "pumps-and-piping",
    "reefers",
    "accommodation",
    "bridge",
    "alarm-and-control",
    "deck-machinery",
    "fire-protection",
    "life-saving",
    "environment",
    "spares-and-papers",
    "landing-and-boarding",
    "hazardous-materials",
]
# Nothing on board is ever called safe by us, and nobody is asked to put a hand where it is bitten.
BANNED = re.compile(
    r"safe to |\b(is|are|it's|being) (quite |perfectly )?safe\b|safely enter|no danger|"
    r"without (any )?(risk|danger)|is harmless|gas.free, so|"
    r"you (may|can) (now )?(enter|go in|open)|no permit (is )?needed|put your hand|"
    r"touch the (terminal|busbar|bus bar|winding)|taste the|sniff at",
    re.IGNORECASE,
)


@pytest.fixture(scope="module")
def library():
    return read_library(shipped("checklists"), check_criteria=True)


def checks(library):
    return [(system, check) for system in library.systems.values() for check in system.checks]


def words(text):
    return re.findall(r"[\w°]+", text.casefold())


# What is shipped


def test_the_systems_are_exactly_the_twenty_one(library):
    """Each system of the job has its file, none is there by mistake, and no two share a place."""
    assert set(SYSTEMS) == set(library.systems)
    assert len({system.order for system in library.systems.values()}) == 21


def test_there_are_at_least_380_checks(library):
    """The walk is as deep as was promised, and no system is a stub."""
    assert len(checks(library)) >= 380
    assert {
        name: len(one.checks) for name, one in library.systems.items() if len(one.checks) < 14
    } == {}


@pytest.mark.parametrize("system_id", SYSTEMS)
def test_each_system_says_where_it_is_walked_and_what_the_words_mean(library, system_id):
    """A system has a home, a caution, proposed units, and three different meanings of a word."""
    system = library.systems[system_id]

    assert system.home in library.spaces
    assert system.cautions
    assert system.units
    assert len({system.retain, system.refurbish, system.remove}) == 3


@pytest.mark.parametrize("system_id", SYSTEMS)
def test_each_system_has_two_to_four_critical_checks(library, system_id):
    """Critical stays rare, so that it says something."""
    assert 2 <= sum(check.critical for check in library.systems[system_id].checks) <= 4


@pytest.mark.parametrize("system_id", SYSTEMS)
def test_each_system_has_a_published_criterion(library, system_id):
    """Each system has at least one check judged by a criterion."""
    assert any(check.criterion for check in library.systems[system_id].checks)


@pytest.mark.parametrize("system_id", SYSTEMS)
def test_each_file_argues_its_weights(system_id):
    """A file begins with a comment that argues its weights and its critical marks."""
    head = (
        (shipped("checklists") / f"{system_id}.toml")
        .read_text(encoding="utf-8")
        .split("[system]")[0]
    )

    assert all(line.startswith("#") or not line.strip() for line in head.splitlines())
    assert "weight" in head.lower()
    assert "critical" in head.lower()


@pytest.mark.parametrize("system_id", SYSTEMS)
def test_every_kind_of_unit_is_asked_something_heavy(library, system_id):
    """Where units are unlike, each kind is counted somewhere and asked something heavy.

    It is proposed by its system or by one of the layouts, and asked something of weight 3 or more.
    """
    system = library.systems[system_id]
    of_layouts = [
        unit.get("kind")
        for one in library.layouts.values()
        for unit in one.units.get(system_id, ())
    ]

    assert set(system.kinds) <= {*system.unit_kinds.values(), *of_layouts}
    for kind in system.kinds or ("",):
        assert sum(check.weight >= 3 for check in system.checks_for(kind)) >= 1, kind


def test_no_two_titles_of_a_system_are_alike(library):
    """In a list of checks each title tells which it is."""
    for system in library.systems.values():
        titles = [" ".join(words(check.title)) for check in system.checks]
        assert [] == sorted({title for title in titles if titles.count(title) > 1}), system.id


def test_no_two_checks_ask_the_same(library):
    """No question is put twice on one ship, not even in nearly the same words."""
    asked = [
        (f"{system.id}/{check.id}", frozenset(words(check.ask)))
        for system, check in checks(library)
    ]
    alike = [
        (one, other)
        for number, (one, mine) in enumerate(asked)
        for other, theirs in asked[:number]
        if len(mine & theirs) > 0.75 * len(mine | theirs)
    ]

    assert [] == alike


def test_texts_fit_a_phone_and_never_call_anything_safe(library):
    """A text is short enough for a wet hand, and none says that something is safe."""
    texts = [
        (f"{system.id}/{check.id}", text)
        for system, check in checks(library)
        for text in (check.title, check.ask, check.look, check.bad)
    ]
    texts += [
        (system.id, text)
        for system in library.systems.values()
        for text in (system.about, system.retain, system.refurbish, system.remove)
    ]
    texts += [
        (caution.id, text)
        for caution in library.cautions.values()
        for text in (caution.hurts, caution.instead, caution.decides)
    ]

    assert [] == [(where, text) for where, text in texts if BANNED.search(text)]
    assert [] == [(where, len(text)) for where, text in texts if len(text) > 300]


@pytest.mark.parametrize(
    "phrase",
    [
        "It is safe to enter.",
        "The tank is safe.",
        "You may enter now.",
        "There is no danger.",
        "This gas is harmless.",
    ],
)
def test_the_list_of_banned_phrases_bites(phrase):
    """The guard above would find what it looks for."""
    assert BANNED.search(phrase)


def test_cautions_use_the_four_signal_words_and_danger_stays_rare(library):
    """Each signal word occurs, danger for five at most, and each caution says who decides."""
    signals = [caution.signal for caution in library.cautions.values()]

    assert {"danger", "warning", "caution", "notice"} == set(signals)
    assert 1 <= signals.count("danger") <= 5
    assert {"enclosed-space", "live-panel", "co2-space", "ammonia"} <= {
        one.id for one in library.cautions.values() if one.signal == "danger"
    }


def test_every_check_done_properly_only_inside_carries_the_caution(library):
    """A check that would need entry into an enclosed space shows a caution."""
    inside = [(system, check) for system, check in checks(library) if check.enclosed]

    assert inside
    assert [] == [
        f"{system.id}/{check.id}"
        for system, check in inside
        if "enclosed-space" not in (*check.cautions, *system.cautions)
    ]


def test_every_number_has_a_unit_that_is_known(library):
    """A number reading can be converted; the others carry no unit to confuse."""
    for system, check in checks(library):
        for reading in check.readings:
            assert (reading.kind == "number") == bool(reading.unit), (
                system.id,
                check.id,
                reading.name,
            )
            assert known_unit(reading.unit) == reading.unit, (system.id, check.id, reading.name)


def test_readings_feed_their_criterion(library):
    """Each required input of a named criterion is supplied, in a unit that converts."""
    for system, check in checks(library):
        if not check.criterion:
            continue
        typed = {reading.name: reading for reading in check.readings}
        assert typed.keys() & {one.name for one in CRITERIA[check.criterion].inputs}, (
            system.id,
            check.id,
        )
        for asked in CRITERIA[check.criterion].inputs:
            reading, where = typed.get(asked.name), (system.id, check.id, asked.name)
            assert (
                asked.optional or reading or asked.name in check.given or asked.name in check.taken
            ), where
            if reading and asked.kind == "number":
                convert(1, reading.unit, asked.unit or "")
            if reading and asked.kind == "choice":
                assert set(reading.choices) <= set(asked.choices), where
            if asked.name in check.given and asked.kind == "choice":
                assert check.given[asked.name] in asked.choices, where


def test_the_command_tells_minutes_for_each_system_and_in_all(capsys, library):
    """`inspector checklists` prints every system's minutes and their sum."""
    assert cli.main(["checklists"]) in (0, None)
    printed = capsys.readouterr().out

    for system in library.systems.values():
        minutes = minutes_of_sheet(system, library)
        assert f"{system.name}: {len(system.checks)} checks, {minutes:g} min" in printed
    minutes = sum(minutes_of_sheet(system, library) for system in library.systems.values())
    expected = f"{len(checks(library))} checks, {minutes:g} min for one unit of each"
    assert expected in printed


# What is refused

HEAD = """
[system]
id = "broken"
name = "Broken"
order = 5
unit = "thing"
units = ["Thing 1"]
about = "a"
retain = "b"
refurbish = "c"
remove = "d"
"""
WATER = 'criterion = "oil-water"\n'
READING = '{ id = "water", label = "Water", unit = "%" }'
SALT = '{ id = "salt", label = "Salt", choices = ["no", "a bit"] }'
NOTE = '{ id = "note", label = "Note", kind = "text" }'
SERVICE = 'given = { service = "thruster" }\n'


def check(number, extra="", **changed):
    """One [[check]] that is right but for what is changed (None leaves a key out) or added."""
    plain = {
        "ask": '"a"',
        "look": '"b"',
        "bad": '"c"',
        "space": '"quay"',
        "minutes": 3,
        "weight": 3,
    }
    keys = {"id": f'"c{number}"', "title": f'"Look {number}"', **plain, **changed}
    return (
        "[[check]]\n"
        + "".join(f"{key} = {value}\n" for key, value in keys.items() if value is not None)
        + extra
    )


# What is wrong with one check -> where the sentence says it is wrong
MISTAKES = [
    ({"bad": None}, "", "key bad: is missing"),
    ({"minuten": 4}, "", "key minuten: is not known"),
    ({"ask": '"  "'}, "", "key ask: is '  '"),
    ({"weight": 9}, "", "key weight: is 9"),
    ({"weight": "true"}, "", "key weight: is True"),
    ({"minutes": '"long"'}, "", "key minutes: is 'long'"),
    ({"critical": 1}, "", "key critical: is 1"),
    ({"space": '"attic"'}, "", "key space: 'attic' is not in spaces.toml"),
    ({"caution": '"dragons"'}, "", "key caution: 'dragons' is not in cautions.toml"),
    ({"caution": '["alone", "dragons"]'}, "", "key caution: 'dragons' is not in cautions.toml"),
    ({"caution": "[3]"}, "", "key caution: is [3]; expected a text or a list of texts"),
    ({"needs": '"courage"'}, "", "key needs: is 'courage'; expected one of paper, sight"),
    ({"proof": '"felt"'}, "", "key proof: is 'felt'; expected one of reported, sighted, tested"),
    ({"glance": '{ look = "a", bad = "b" }'}, "", "glance, key seconds: is missing"),
    (
        {"glance": '{ look = "a", seconds = 9, bad = "b", which = "all" }'},
        "",
        "glance, key which: is 'all'; expected one of each, worst, one",
    ),
    ({"together": '"regatta"'}, "", "key together: 'regatta' is not in trials.toml"),
    ({"also": '["rigging"]'}, "", "key also: 'rigging' is no system; known are broken"),
    ({"also": '["broken"]'}, "", "key also: 'broken' is its own system"),
    ({"replaces": '["old"]'}, "", "key replaces: is 'old'; expected <system>/<check>"),
    (
        {"replaces": '["broken/old", "broken/old"]'},
        "",
        "key replaces: 'broken/old' is replaced by broken/",
    ),
    ({"for": '["fin"]'}, "", "key for: 'fin' is no kind of unit"),
    ({}, 'criterion = "oil-wine"\n', "key criterion: 'oil-wine' is not known"),
    (
        {},
        WATER + f"readings = [{READING}]\n",
        "key readings: oil-water cannot do without 'service'",
    ),
    (
        {},
        WATER + f'given = {{ service = "galley" }}\nreadings = [{READING}]\n',
        "key given.service: 'galley' is no choice of oil-water",
    ),
    ({}, WATER + f"given = {{ service = 3 }}\nreadings = [{READING}]\n", "key given.service: is 3"),
    (
        {},
        WATER + f'given = {{ service = "thruster", depth = 3 }}\nreadings = [{READING}]\n',
        "key given.depth: is no input of oil-water",
    ),
    (
        {},
        WATER + f'from = {{ service = "weather.today" }}\nreadings = [{READING}]\n',
        "key from.service: is 'weather.today'",
    ),
    (
        {},
        WATER + SERVICE + 'readings = [{ id = "water", label = "Water", unit = "mm" }]\n',
        "reading water, key unit: is 'mm'",
    ),
    (
        {},
        WATER + SERVICE + 'readings = [{ id = "water", label = "Water", kind = "text" }]\n',
        "reading water, key kind: is text",
    ),
    (
        {},
        WATER
        + SERVICE
        + 'readings = [{ id = "water", label = "Water", unit = "%", optional = true }]\n',
        "reading water, key optional: is true",
    ),
    (
        {},
        WATER + SERVICE + f"readings = [{READING}, {SALT}]\n",
        "reading salt, key choices: 'a bit' is no choice",
    ),
    (
        {},
        WATER
        + SERVICE
        + 'readings = [{ id = "water", label = "Water", unit = "%", unjudged = "no limit" }]\n',
        "reading water, key unjudged: is there, but oil-water judges it",
    ),
    (
        {},
        WATER + f'given = {{ water = 0.1, service = "thruster" }}\nreadings = [{NOTE}]\n',
        "key readings: none of them is an input",
    ),
    ({}, 'readings = [{ id = "depth", label = "Depth" }]\n', "reading depth, key unit: is missing"),
    (
        {},
        'readings = [{ id = "depth", label = "Depth", unit = "fathoms" }]\n',
        "reading depth, key unit: 'fathoms' is not known",
    ),
    (
        {},
        'readings = [{ id = "Depth!", label = "Depth", unit = "m" }]\n',
        "reading Depth!, key id: is 'Depth!'",
    ),
    (
        {},
        'readings = [{ id = "state", label = "State", kind = "choice" }]\n',
        "reading state, key choices: is missing",
    ),
    (
        {},
        'readings = [{ id = "a", label = "A", kind = "date" }, '
        '{ id = "a", label = "B", kind = "date" }]\n',
        "reading a: is there twice",
    ),
]


@pytest.fixture
def folder(tmp_path):
    """A folder with the shipped spaces and cautions only."""
    made = tmp_path / "checklists"
    made.mkdir()
    for name in ("spaces.toml", "cautions.toml"):
        shutil.copy(shipped("checklists") / name, made / name)
    return made


def faults_of(folder):
    with pytest.raises(ChecklistFaults) as caught:
        read_library(folder, check_criteria=True)
    return caught.value.faults


def test_more_than_twenty_kinds_of_mistake_are_named_at_once(folder):
    """A file with a mistake of each kind: each is named by file, check and key, and no other."""
    text = HEAD + "".join(
        check(number, extra, **changed) for number, (changed, extra, _) in enumerate(MISTAKES)
    )
    text += check(98, id='"c0"') + check(99, title='"LOOK, 1!"')
    (folder / "broken.toml").write_text(text, encoding="utf-8")
    expected = [
        f"broken.toml, check c{number}, {fault}" for number, (_, _, fault) in enumerate(MISTAKES)
    ]
    expected += [
        "broken.toml, check c0, key id: is there twice",
        "broken.toml, check c99, key title: 'LOOK, 1!' is there twice",
    ]

    faults = faults_of(folder)

    assert len(MISTAKES) >= 20
    assert [] == [one for one in expected if not any(fault.startswith(one) for fault in faults)]
    assert [] == [fault for fault in faults if not any(fault.startswith(one) for one in expected)]


def test_the_same_file_without_mistakes_loads(folder):
    """The base of the broken file is right, so that each fault above is the mistake's own."""
    (folder / "broken.toml").write_text(
        HEAD + check(1, WATER + SERVICE + f"readings = [{READING}]\n"), encoding="utf-8"
    )

    assert ("c1",) == tuple(
        one.id for one in read_library(folder, check_criteria=True).systems["broken"].checks
    )


SYSTEM_MISTAKES = [
    ('id = "broken"', 'id = "other"', "system, key id: is 'other'"),
    ("order = 5", 'order = "fifth"', "system, key order"),
    ('remove = "d"', "", "system, key remove: is missing"),
    (
        'remove = "d"',
        'remove = "d"\nhome = "attic"',
        "system, key home: 'attic' is not in spaces.toml",
    ),
    (
        'remove = "d"',
        'remove = "d"\ncautions = ["dragons"]',
        "system, key cautions: 'dragons' is not in cautions.toml",
    ),
    (
        'remove = "d"',
        'remove = "d"\nunit_homes = { "Thing 2" = "quay" }',
        "system, key unit_homes.Thing 2: is none of the units",
    ),
    (
        'remove = "d"',
        'remove = "d"\nunit_homes = { "Thing 1" = ["quay"] }',
        "system, key unit_homes.Thing 1: is ['quay']",
    ),
    (
        'remove = "d"',
        'remove = "d"\nkinds = { fin = "Fin" }\nunit_kinds = { "Thing 1" = "wing" }',
        "system, key unit_kinds.Thing 1: is 'wing'",
    ),
    ('remove = "d"', 'remove = "d"\ncolour = "red"', "system, key colour: is not known"),
]


@pytest.mark.parametrize(("old", "new", "expected"), SYSTEM_MISTAKES)
def test_a_mistake_of_the_system_names_file_and_key(folder, old, new, expected):
    """A mistake in [system] is named with the file's name and the key, and alone."""
    assert old in HEAD
    (folder / "broken.toml").write_text(HEAD.replace(old, new) + check(1), encoding="utf-8")

    faults = faults_of(folder)

    assert all(fault.startswith(f"broken.toml, {expected}") for fault in faults), faults


VALUES = ["7", "[]", "{}", "true", '""', '"x y"', "[[1]]", "[{}]", "nan", "2026-01-01"]


@pytest.mark.parametrize("key", [*SYSTEM_KEYS, *SYSTEM_OPTIONS])
def test_no_value_in_the_head_breaks_the_reader(folder, key):
    """Whatever is written at a key of [system], it is loaded or its mistakes are named."""
    head = "".join(
        line for line in HEAD.splitlines(keepends=True) if not line.startswith(f"{key} =")
    )
    for value in VALUES:
        (folder / "broken.toml").write_text(f"{head}{key} = {value}\n{check(1)}", encoding="utf-8")
        assert told_or_loaded(folder), (key, value)


@pytest.mark.parametrize("key", [*CHECK_KEYS, *CHECK_OPTIONS])
def test_no_value_in_a_check_breaks_the_reader(folder, key):
    """The same for the keys of a check."""
    for value in VALUES:
        (folder / "broken.toml").write_text(HEAD + check(1, **{key: value}), encoding="utf-8")
        assert told_or_loaded(folder), (key, value)


@pytest.mark.parametrize("key", [*READING_KEYS, *READING_OPTIONS])
def test_no_value_in_a_reading_breaks_the_reader(folder, key):
    """The same for the keys of a reading that feeds a criterion."""
    for value in VALUES:
        whole = {"id": '"water"', "label": '"Water"', "unit": '"%"', key: value}
        reading = ", ".join(f"{name} = {one}" for name, one in whole.items())
        (folder / "broken.toml").write_text(
            HEAD + check(1, f"{WATER}{SERVICE}readings = [{{ {reading} }}]\n"), encoding="utf-8"
        )
        assert told_or_loaded(folder), (key, value)


def told_or_loaded(folder):
    try:
        return bool(read_library(folder, check_criteria=True).systems)
    except ChecklistFaults as problem:
        return all(
            re.match(r"broken\.toml, (system|check|key)\b", fault) for fault in problem.faults
        )


@pytest.mark.parametrize("name", ["spaces.toml", "cautions.toml"])
@pytest.mark.parametrize(
    "text", ["", "space = 3\ncaution = 3\n", "[space]\nquay = 3\n[caution]\nalone = 3\n"]
)
def test_broken_spaces_and_cautions_are_named_by_file(folder, name, text):
    """The two files apart are checked like the others."""
    (folder / name).write_text(text, encoding="utf-8")
    (folder / "broken.toml").write_text(HEAD + check(1), encoding="utf-8")

    assert any(fault.startswith(f"{name}, ") for fault in faults_of(folder))


def test_all_mistakes_of_several_files_are_named_at_once(tmp_path):
    """Mistakes of several files come in one list; one that is no TOML hides no others."""
    shutil.copytree(shipped("checklists"), tmp_path / "c")
    (tmp_path / "c" / "hull.toml").write_text("not = = toml")
    (tmp_path / "c" / "tanks.toml").write_text("[system]\nid = 'tanks'\n")

    faults = faults_of(tmp_path / "c")

    named = {fault.split(",")[0].split(":")[0] for fault in faults}
    # Sheets that show a line on a sheet that cannot be read are named as well.
    assert {"hull.toml", "tanks.toml"} <= named
    assert len(named) <= 4
    assert len(faults) > 8


def test_an_empty_folder_is_refused(tmp_path):
    """A folder without checklists says so."""
    with pytest.raises(ChecklistFaults, match="no checklist files"):
        read_library(tmp_path)


# A surveyor's own file


@pytest.fixture(scope="module")
def example():
    """The example of the guide, as written there."""
    guide = (Path(__file__).parents[2] / "checklists" / "README.md").read_text(encoding="utf-8")
    chapter = guide.split("## A checklist of your own")[1].split("\n## ")[0]
    return re.search(r"```toml\n(.*?)```", chapter, re.DOTALL).group(1)


def test_the_guide_shows_every_key(example):
    """No key of the format is left to guess."""
    data = tomllib.loads(example)
    shown = [
        set(data["system"]),
        set().union(*data["check"]),
        set().union(*(reading for one in data["check"] for reading in one["readings"])),
    ]

    assert [
        set(SYSTEM_KEYS | SYSTEM_OPTIONS),
        set(CHECK_KEYS | CHECK_OPTIONS),
        set(READING_KEYS | READING_OPTIONS),
    ] == shown


def test_the_guide_names_the_keys_of_a_caution():
    """The sentence on cautions lists what one must have."""
    guide = (
        (Path(__file__).parents[2] / "checklists" / "README.md")
        .read_text(encoding="utf-8")
        .split("## A checklist of your own")[1]
    )

    assert all(key in guide for key in CAUTION_KEYS)


def test_the_example_of_the_guide_adds_a_system(tmp_path, example):
    """Put into the data folder's checklists, the example is read beside the shipped systems."""
    own = tmp_path / "data" / "checklists"
    own.mkdir(parents=True)
    (own / "stabilisers.toml").write_text(example, encoding="utf-8")
    gather_checklists(tmp_path / "data", tmp_path / "made")

    library = read_library(tmp_path / "made", check_criteria=True)

    assert {*SYSTEMS, "stabilisers"} == set(library.systems)
    assert ["box-seal"] == [one.id for one in library.systems["stabilisers"].checks_for("fin")]


def test_a_file_of_the_same_name_replaces_a_system(tmp_path, example):
    """A surveyor's own hull.toml is the hull of new inspections."""
    own = tmp_path / "data" / "checklists"
    own.mkdir(parents=True)
    (own / "hull.toml").write_text(
        example.replace('id = "stabilisers"', 'id = "hull"'), encoding="utf-8"
    )
    gather_checklists(tmp_path / "data", tmp_path / "made")

    library = read_library(tmp_path / "made", check_criteria=True)

    assert set(SYSTEMS) == set(library.systems)
    assert "Stabilisers" == library.systems["hull"].name
