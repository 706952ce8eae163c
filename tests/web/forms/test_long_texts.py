"""Long texts: what fits is kept whole, what is too long is refused and comes back whole."""

import ast
import html
import re
from pathlib import Path

import pytest

from inspector import places
from inspector.assess.verdict.settings import SETTINGS
from inspector.checklists.registry import CRITERIA
from inspector.web.forms import form_fields

PACKAGE = Path(form_fields.__file__).parents[2]
ROOMS = ("web", "services", "sharing")
RULE = next(rule for rule in CRITERIA.values() if rule.limit_set)
LIMITS = {name: f"{value:g}" for name, value in RULE.limit_set.values.items()}
VERDICT = {"unit": "all", "decision": "remove", "reason": "Too thin."}
FINDING = {"title": "Weeps", "urgency": "danger now", "text": "At the seam", "action": "Weld"}
LINE = {"text": "Renew", "act": "replace", "unit": "all", "low": "1", "likely": "2", "high": "3"}
RATE = {"name": "Plating", "unit": "kg", "low": "1", "likely": "2", "high": "3"}
# Path, a valid form, the field, and the most characters that it keeps.
TEXTS = [
    ("decide/hull/verdict", VERDICT, "reason", 4000),
    ("decide/hull/facts", {"life_years": "4"}, "law", 1000),
    ("decide/hull/line", LINE, "text", 1000),
    ("finding", FINDING, "title", 200),
    ("finding", FINDING, "text", 4000),
    ("finding", FINDING, "action", 4000),
    ("edit/vessel", {"flag": "none"}, "name", 120),
    ("edit/vessel", {"flag": "none"}, "particulars", 4000),
    ("edit/inspection", {"place": "the yard"}, "weather", 200),
    ("edit/brief", {"speed": "11"}, "client", 120),
    (f"rules/{RULE.name}", LIMITS, "source", 400),
    ("particulars/sales/new", {"low": "1", "likely": "2", "high": "3"}, "name", 200),
    ("units", {"system": "thrusters"}, "add", 80),
    ("units", {"system": "thrusters"}, "unit-bow-thruster-1", 80),
    ("/rates", RATE, "name", 120),
    ("/rates", RATE, "source", 120),
    ("/surveyors", {}, "name", 80),
    ("/brief/new", {"speed": "11"}, "client", 120),
]
# Figures: a zero before the number makes any length of a number that can be.
FIGURES = [
    ("decide/hull/facts", {"parts": "made"}, "life_years", 40),
    ("decide/hull/line", LINE, "weight", 40),
    ("rules", {}, SETTINGS[0].field.name, 40),
    (f"rules/{RULE.name}", {**LIMITS, "source": "the maker"}, next(iter(LIMITS)), 40),
    ("edit/vessel", {}, "length", 40),
    ("/rates", RATE, "likely", 120),
]
LONG = [case for case in TEXTS if case[3] >= 4000]


def ids(case):
    return f"{case[0]}-{case[2]}"


def address(begun, path):
    return path if path.startswith("/") else f"/inspection/{begun}/{path}"


def text_of(answer):
    return html.unescape(answer.get_data(as_text=True))


def lines_of(most):
    """A text of exactly `most` characters in lines, as it was typed and as a browser posts it."""
    text = (
        "\n".join(["a plate that is thin along its low edge"] * (most // 40 + 1))[: most - 1] + "x"
    )
    return text, text.replace("\n", "\r\n")


def values(app, begun):
    """Every value in the journal."""
    return [entry.value for entry in app.extensions["data_folder"].inspections.get(begun).since(0)]


def catalogue_values(app):
    tables = [
        app.extensions["data_folder"].catalogue.all(name)
        for name in ("rates", "surveyors", "briefs")
    ]
    return [value for rows in tables for row in rows for value in row.values()]


def texts_kept(app, begun):
    return [
        value.get("value") if isinstance(value, dict) else value for value in values(app, begun)
    ] + catalogue_values(app)


@pytest.mark.parametrize("case", LONG, ids=ids)
def test_a_long_text_in_lines_is_kept_entire(app, client, begun, case):
    """A line end counts as one character and is kept as one, though a browser posts two."""
    path, data, field, most = case
    text, posted = lines_of(most)
    assert most == len(text) < len(posted)

    answer = client.post(address(begun, path), data={**data, field: posted})

    assert 302 == answer.status_code
    assert text in values(app, begun)


@pytest.mark.parametrize("case", LONG, ids=ids)
def test_a_long_text_in_lines_that_does_not_fit_comes_back(app, client, begun, case):
    """One character more is a sentence with both lengths; the text is in its form, whole."""
    path, data, field, most = case
    text, posted = lines_of(most + 1)
    before = texts_kept(app, begun)

    answer = client.post(address(begun, path), data={**data, field: posted})

    assert 400 == answer.status_code
    assert f"the text has {most + 1} characters; at most {most} can be kept" in text_of(answer)
    assert text in text_of(answer).replace("\r\n", "\n")
    assert before == texts_kept(app, begun)


@pytest.mark.parametrize("case", TEXTS, ids=ids)
def test_a_text_of_the_most_characters_is_kept(app, client, begun, case):
    path, data, field, most = case
    text = "w" * most

    answer = client.post(address(begun, path), data={**data, field: text})

    assert 302 == answer.status_code, text_of(answer)
    assert text in texts_kept(app, begun)


@pytest.mark.parametrize("case", TEXTS, ids=ids)
def test_a_text_too_long_is_refused_and_all_comes_back(app, client, begun, case):
    """The sentence says how long it is and may be; every field of the form is as it was typed.

    Nothing is recorded.
    """
    path, data, field, most = case
    text = "w" * (most + 1)
    before = texts_kept(app, begun)

    answer = client.post(address(begun, path), data={**data, field: text})

    page = text_of(answer)
    assert answer.status_code == 400
    assert f"the text has {most + 1} characters; at most {most} can be kept" in page
    assert re.search(rf">\s*{text}</textarea>|value=\"{text}\"", page)
    for name, typed in data.items():
        if name not in (field, "system", "unit", "decision"):
            assert shows(page, name, typed), name
    assert before == texts_kept(app, begun)


def shows(page, name, typed):
    """Whether a field of that name shows what was typed.

    An input, a text area or a chosen option.
    """
    name, typed = re.escape(name), re.escape(typed)
    patterns = (
        rf'<input(?=[^>]*name="{name}")(?=[^>]*value="{typed}")',
        rf'<textarea[^>]*name="{name}"[^>]*>\s*{typed}</textarea>',
        rf'<select[^>]*name="{name}"[^>]*>(?:(?!</select>).)*?'
        rf'<option(?: value="{typed}")? selected>{typed}',
    )
    return any(re.search(pattern, page, re.DOTALL) for pattern in patterns)


@pytest.mark.parametrize("case", FIGURES, ids=ids)
def test_a_figure_too_long_is_refused_and_comes_back(app, client, begun, case):
    """A number is not cut to another number."""
    path, data, field, most = case
    figure = "2".zfill(most + 1)
    before = texts_kept(app, begun)

    answer = client.post(address(begun, path), data={**data, field: figure})

    assert 400 == answer.status_code
    assert f"the text has {most + 1} characters; at most {most} can be kept" in text_of(answer)
    assert shows(text_of(answer), field, figure)
    assert before == texts_kept(app, begun)


def test_a_changed_rate_comes_back_in_its_own_line(app, client):
    """Not as a new rate, which would be a second one of that name."""
    client.post("/rates", data=RATE)
    kept = app.extensions["data_folder"].catalogue.all("rates")[0]
    page = text_of(client.post("/rates", data={**RATE, "id": kept["id"], "name": "w" * 121}))
    new, own = page.split('name="id"', 1)

    assert "w" * 121 not in new
    assert f'value="{"w" * 121}"' in own


# Slices with an upper end that are not of posted text, with the reason for each.
_ID_OF_NAME = "re.sub('[^a-z0-9]+', '-', name.lower()).strip('-')"
_ID_OF_HOST = "re.sub('[^a-z0-9]+', '-', socket.gethostname().lower()).strip('-')"
NOT_POSTED = {
    "head.at[:16]": "a time shown to the minute",
    "hashlib.sha256(str(data).encode()).hexdigest()[:8]": "a part of a digest names the cookie",
    "found.hexdigest()[:12]": "a part of a digest names the edition",
    "hashlib.sha256((runtime_folder() / _SUMS).read_bytes()).hexdigest()[:12]": (
        "a part of a digest names the release of the runtime"
    ),
    f"{_ID_OF_HOST}[:24]": "an id made of the computer's name",
    f"{_ID_OF_NAME}[:20]": "an id made of a device's name, which is kept whole",
    f"{_ID_OF_NAME}[:LONGEST_ID]": "an id made of a unit's name, which is kept whole",
    "known[:MOST_HEADS]": "ids of entries, as many as an entry may replace",
    "found[:MOST_DAMAGE_SHOWN]": "damaged lines of a journal; how many more there are is said",
    "refused[:MOST_SHOWN]": "sentences of ours; how many more there are is shown",
    "(walked or readable)[:MOST]": "candidates beside each other on a page",
    "used[:MOST_NAMES]": "earlier names of a browser, as many as one may have",
    "sha[:12]": "a part of a digest names a photo in a sentence",
    "list(dict.fromkeys(request.args.getlist('id')))[:MOST]": "candidates beside each other",
    "found[(page - 1) * PER_PAGE:page * PER_PAGE]": "one page of the list",
    "restored.notes[:MOST_SHOWN]": "sentences of ours; `inspector restore` prints all",
    "strange[:120]": "the name of a file in a backup that is refused",
    "code[place:place + 4]": "a code of ours in groups of four",
    "digits[place:place + 2]": "a digest in groups of two",
    "list(names)[:MOST_NAMES]": "the earlier names of one browser",
    "whole[:MOST_LINES]": "what a device's own page says of its readiness, recorded nowhere",
    "text[:LONGEST]": "what a device's own page says of its readiness, recorded nowhere",
    f"{_ID_OF_HOST}[:40]": "a host name for a certificate",
}


def slices_with_an_end(path):
    """The text of each slice with an upper end in a module."""
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if (
            isinstance(node, ast.Subscript)
            and isinstance(node.slice, ast.Slice)
            and node.slice.upper is not None
        ):
            yield ast.unparse(node)


def test_no_posted_text_is_cut():
    """Every slice with an upper end in the web pages is known not to be of posted text."""
    paths = [path for room in ROOMS for path in (PACKAGE / room).rglob("*.py")]
    found = {text for path in paths for text in slices_with_an_end(path)}

    assert NOT_POSTED.keys() == found
    assert [] == [text for text in found if "request.form" in text or ".data" in text]


DESK = [
    path
    for path in sorted(places.shipped("templates").rglob("*.html"))
    if path.parent.name != "walk"
]


@pytest.mark.parametrize("path", DESK, ids=lambda path: path.name)
def test_no_browser_cuts_what_is_pasted(path):
    """A `maxlength` cuts a pasted text without a word, and counts a line end as one character."""
    assert "maxlength" not in path.read_text(encoding="utf-8").lower()
