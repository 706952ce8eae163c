"""Every route that writes.

The entries that it makes carry the name of the surveyor at the laptop.
"""

import ast
import inspect
import io
import json
from pathlib import Path

import pytest

from inspector.assess.assessment import assess
from inspector.assess.from_state import read_inspection
from inspector.assess.round.paper_stops import paper_stops
from inspector.checklists.registry import CRITERIA
from inspector.checklists.shared_libraries import SHARED
from inspector.record.inspection import Inspection
from inspector.services.visit.rounds import put_away
from inspector.web import current as who_module

SURVEYOR = "QX One"
ELSEWHERE = "KT"
SUBJECT = "sheet/thrusters/bow-thruster-1/oil"
WRITING = {"POST", "PUT", "PATCH", "DELETE"}
AN_OLDER_CHANGE = [
    ("scope/s1", "system", "hull"),
    ("scope/s1", "text", "Renew the plating"),
    ("row/sales/r1", "name", "Winch"),
    ("vessel", "name", "Grey Heron"),
]
NO_ENTRIES = {
    "prepare.brief": "a brief is kept in the catalogue, for inspections not begun yet",
    "home.add_surveyor": "surveyors are kept in the catalogue",
    "home.away": "which inspections are put away is kept in the catalogue",
    "home.reading": "reading for the list is stopped or goes on; nothing is kept",
    "imports.make_backup": "a backup is only made; what is brought back has its authors",
    "check.take_in": "entries that were kept aside have their authors",
    "exchange.photo_in": "the bytes of a photo; who took it is in the entries about it",
    "rates.rates": "the rate book is kept in the catalogue",
    "rates.take_out": "the rate book is kept in the catalogue",
    "sharing.new_code": "a code is kept in memory only",
    "sharing.choose": "what is shared is kept in the catalogue",
    "sharing.device": "devices are kept in the catalogue",
    "sharing.start": "sharing opens and shuts; nothing is recorded",
    "sharing.stop": "sharing opens and shuts; nothing is recorded",
    "sharing.authority": "an authority is files of its own",
    "sharing.network_code": "a network's name is kept in the catalogue, or in memory",
    "joining.let_in": "devices are kept in the catalogue",
    "joining.move": "a code is kept in memory only",
    "joining.says": "what a device says of itself is kept in the catalogue",
}


def entry(device, number, **more):
    return {
        "id": f"{device}:{number}",
        "at": "2026-05-02T09:14:07.512Z",
        "device": device,
        "who": ELSEWHERE,
        "subject": "vessel",
        "field": "yard",
        "value": "north",
        "replaces": [],
        **more,
    }


@pytest.fixture
def inspection(app, client, begun):
    """An inspection with a work line, a row, a name and a disagreement.

    After that a surveyor and a brief are kept.
    """
    data = app.extensions["data_folder"]
    one = data.inspections.get(begun)
    one.record("AB", AN_OLDER_CHANGE)
    one.take_in(
        [
            entry("phone", 1, subject=SUBJECT, field="note", value="dry"),
            entry("tablet", 1, subject=SUBJECT, field="note", value="wet"),
        ]
    )
    data.catalogue.put("surveyors", {"name": SURVEYOR})
    data.catalogue.put("surveyors", {"name": "QX Two"})
    data.catalogue.put("briefs", {"id": "b1", "client": "the owner", "speed": "11"})
    return one


def begin(inspection):
    return "/inspections", {"data": {"go": "prepare", "brief": "b1"}}


def take_brief(inspection):
    return f"/inspection/{inspection.id}/brief", {"data": {"brief": "b1"}}


def edit(inspection):
    return f"/inspection/{inspection.id}/edit/vessel", {
        "data": {"name": "Grey Petrel", "yard": "north"}
    }


def count_units(inspection):
    return f"/inspection/{inspection.id}/units", {
        "data": {"system": "thrusters", "add": "Stern thruster 9"}
    }


def step(inspection):
    return f"/inspection/{inspection.id}/count", {"data": {"system": "thrusters", "more": ""}}


def count_layout(inspection):
    return f"/inspection/{inspection.id}/layout", {"data": {"layout": "shafts"}}


def record_not_had(inspection):
    inspection.record("QX", [("inspection", "state", "dead")])
    return f"/inspection/{inspection.id}/round/not-had", {}


def undo_not_had(inspection):
    subject = "sheet/steering/rudder-and-steering-gear/feeds"
    ends = put_away(inspection, "QX", {subject: "not run"})
    return f"/inspection/{inspection.id}/round/take-back", {
        "data": dict(zip(("first", "last"), ends, strict=True))
    }


def entries_in(inspection):
    return f"/exchange/{inspection.id}/entries", {"json": {"entries": [entry("phone", 2)]}}


def give_verdict(inspection):
    return f"/inspection/{inspection.id}/decide/hull/verdict", {
        "data": {"unit": "all", "decision": "remove", "reason": "Too thin."}
    }


def give_facts(inspection):
    return f"/inspection/{inspection.id}/decide/hull/facts", {
        "data": {"life_years": "4", "parts": "made", "law": "the flag's rule"}
    }


def add_line(inspection):
    data = {
        "text": "Renew the deck",
        "act": "replace",
        "unit": "all",
        "low": "1",
        "likely": "2",
        "high": "3",
        "weight": "-2",
    }
    return f"/inspection/{inspection.id}/decide/hull/line", {"data": data}


def take_line_out(inspection):
    return f"/inspection/{inspection.id}/gone/scope/s1", {}


def add_finding(inspection):
    return f"/inspection/{inspection.id}/finding", {
        "data": {"title": "Weeps", "urgency": "danger now", "text": "At the seam", "action": "Weld"}
    }


def row(inspection):
    return f"/inspection/{inspection.id}/particulars/sales/new", {
        "data": {"name": "Anchor", "low": "1", "likely": "2", "high": "3"}
    }


def take_row_out(inspection):
    return f"/inspection/{inspection.id}/particulars/sales/r1/gone", {}


def keep_settings(inspection):
    return f"/inspection/{inspection.id}/rules", {"data": {"retain_from": "90"}}


def keep_limits(inspection):
    rule = next(rule for rule in CRITERIA.values() if rule.limit_set)
    limits = {name: f"{value:g}" for name, value in rule.limit_set.values.items()}
    return f"/inspection/{inspection.id}/rules/{rule.name}", {
        "data": {**limits, "source": "the maker's manual, 2031"}
    }


def settle(inspection):
    heads = [head.id for head in inspection.state.heads(SUBJECT, "note")]
    return f"/inspection/{inspection.id}/settle", {
        "data": {"subject": SUBJECT, "field": "note", "keep": "both", "seen": heads}
    }


def take_in(inspection):
    whole = {
        "format": "inspector-waiting",
        "version": 1,
        "inspection": inspection.id,
        "device": "phone",
        "entries": [entry("phone", 2)],
        "photos": [],
    }
    return "/import", {"data": {"file": (io.BytesIO(json.dumps(whole).encode()), "saved.json")}}


def sign_revision(inspection):
    signing = {"name": "K. Toreth", "day": "2026-10-20"}
    return f"/inspection/{inspection.id}/sign", {"data": signing}


def paste(inspection):
    text = "Draught\tDisplacement\tKM\n4.4\t2604\t7.0"
    where = f"/inspection/{inspection.id}/particulars/hydrostatics_by_draught/paste"
    return where, {"data": {"text": text, "take": "yes"}}


def own_words(inspection):
    return f"/inspection/{inspection.id}/report", {"data": {"advice": "Buy her below the ask."}}


def type_from_paper(inspection):
    library = SHARED.of(inspection.folder / "checklists")
    stops = paper_stops(assess(read_inspection(inspection.state), library), library.spaces)
    look = stops[0].looks[0]
    where = f"/inspection/{inspection.id}/paper/{stops[0].space}"
    return where, {"data": {f"{look.number}-rating": "poor"}}


# Endpoint -> what is posted, and whose name the entries carry; what was recorded elsewhere keeps
# its own author.
CASES = {
    "prepare.begin": (begin, SURVEYOR),
    "prepare.take_brief": (take_brief, SURVEYOR),
    "prepare.edit": (edit, SURVEYOR),
    "counting.count_units": (count_units, SURVEYOR),
    "counting.step": (step, SURVEYOR),
    "counting.count_layout": (count_layout, SURVEYOR),
    "round.record_not_had": (record_not_had, SURVEYOR),
    "round.undo_not_had": (undo_not_had, SURVEYOR),
    "paper.keep": (type_from_paper, SURVEYOR),
    "reports.report": (own_words, SURVEYOR),
    "pasted_table.paste": (paste, SURVEYOR),
    "reports.sign_revision": (sign_revision, SURVEYOR),
    "exchange.entries_in": (entries_in, ELSEWHERE),
    "decide.give_verdict": (give_verdict, SURVEYOR),
    "decide.give_facts": (give_facts, SURVEYOR),
    "decide.add_line": (add_line, SURVEYOR),
    "decide.take_out": (take_line_out, SURVEYOR),
    "decide.add_finding": (add_finding, SURVEYOR),
    "particulars.row": (row, SURVEYOR),
    "particulars.take_out": (take_row_out, SURVEYOR),
    "rules.keep_settings": (keep_settings, SURVEYOR),
    "rules.keep_limits": (keep_limits, SURVEYOR),
    "settle.settle": (settle, SURVEYOR),
    "imports.take_in": (take_in, ELSEWHERE),
}


def test_every_writing_route_has_a_case(app):
    """A new route that writes fails here until it has a case, or a reason why it makes no entry."""
    writing = {rule.endpoint for rule in app.url_map.iter_rules() if rule.methods & WRITING}

    assert writing == CASES.keys() | NO_ENTRIES.keys()
    assert set() == CASES.keys() & NO_ENTRIES.keys()


def all_entries(app):
    """Every entry of every inspection, by (inspection, entry)."""
    inspections = app.extensions["data_folder"].inspections
    return {
        (one, made.id): made for one in inspections.ids() for made in inspections.get(one).since(0)
    }


@pytest.mark.parametrize("endpoint", CASES)
def test_the_author_is_in_the_journal(app, client, inspection, endpoint):
    """What a valid form records carries the first surveyor's name, in every entry."""
    make, expected = CASES[endpoint]
    path, body = make(inspection)
    adapter = app.url_map.bind("localhost")
    assert endpoint == adapter.match(path, method="POST")[0]
    before = all_entries(app)

    answer = client.post(path, **body)

    made = [found for key, found in all_entries(app).items() if key not in before]
    assert answer.status_code in (200, 302), answer.get_data(as_text=True)
    assert made
    assert {expected} == {found.who for found in made}


def test_no_entry_is_without_an_author_by_default():
    """Who records must be named by the caller, and no page names nobody."""
    assert inspect.Parameter.empty is inspect.signature(Inspection.record).parameters["who"].default
    for path in Path(who_module.__file__).parent.glob("*.py"):
        for call in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if (
                isinstance(call, ast.Call)
                and isinstance(call.func, ast.Attribute)
                and call.func.attr == "record"
            ):
                assert "surveyor_name()" == ast.unparse(call.args[0]), f"{path.name}:{call.lineno}"
