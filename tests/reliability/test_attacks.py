"""Everything that a stranger, a wrong page or a false device can send: no answer of the 500s,
and not a byte written without the right to."""

import io
import json

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from pypdf import PdfReader

from tests.reliability.ship import ADDRESS

MARKUP = "<script>alert(1)</script><b>bold</b> & \"quoted\" 'single' {{ 7*7 }} <img src=x onerror=y> \u202eright to left"
FUZZ = settings(max_examples=300, deadline=None, suppress_health_check=list(HealthCheck))

# What a stranger is answered: how to join, and how to trust the authority, which is public.
BEFORE_JOINING = ("/static/", "/join", "/trust", "/here.svg", "/authority.crt")


def encoded(fields):
    """The fields as JSON."""
    return json.dumps(fields).encode()


WEIRD = st.sampled_from(
    [
        "x",
        "..",
        "%2e%2e%2f",
        "%00",
        "con",
        "a" * 300,
        "0" * 64,
        "hull",
        "vessel",
        "new",
        "é\u202e",
        "-1",
        "thumb",
        "*",
        "'\"<>",
        "%ff",
    ]
)
METHODS = st.sampled_from(["GET", "POST", "PUT", "DELETE", "PATCH", "HEAD", "OPTIONS", "TRACE"])
BODIES = st.one_of(
    st.binary(max_size=200),
    st.just(b"[" * 100_000),
    st.just(b'{"entries":' + b"[" * 100_000),
    st.just(b'{"entries":[null,1,{"id":{}},[]]}'),
    st.dictionaries(
        st.sampled_from(
            [
                "do",
                "name",
                "code",
                "entries",
                "decision",
                "unit",
                "system",
                "add",
                "text",
                "low",
                "seen",
                "brief",
                "go",
            ]
        ),
        st.text(max_size=40) | st.integers() | st.none() | st.lists(st.integers(), max_size=3),
        max_size=5,
    ).map(encoded),
)
TYPES = st.sampled_from(
    [
        "application/json",
        "application/x-www-form-urlencoded",
        "multipart/form-data; boundary=x",
        "text/plain",
        "",
        "\u00ff/x",
    ]
)
HEADERS = st.dictionaries(
    st.sampled_from(
        [
            "Origin",
            "Referer",
            "Sec-Fetch-Site",
            "Accept-Encoding",
            "Range",
            "If-None-Match",
            "If-Modified-Since",
            "Cookie",
            "Content-Encoding",
            "X-Digest",
            "X-Forwarded-For",
            "X-HTTP-Method-Override",
            "Accept",
        ]
    ),
    st.sampled_from(
        [
            "",
            "null",
            "*",
            "https://elsewhere.example",
            "same-origin",
            "cross-site",
            "bytes=0-",
            "bytes=9-1",
            "gzip;q=x",
            "a=b",
            "127.0.0.1",
            "sha256=",
            "Mon, 99 Foo",
        ]
    ),
    max_size=3,
)


@st.composite
def requests(draw, ship):
    """(method, path, headers, body, type) for some route of the application, with arguments that
    are real, wrong or strange."""
    rule = draw(st.sampled_from(sorted(ship.app.url_map.iter_rules(), key=str)))
    path = rule.rule
    for name in sorted(rule.arguments):
        real = (
            ship.id
            if name == "inspection_id"
            and rule.endpoint not in ("reports.report_pdf", "reports.bundle_zip")
            else "hull"
        )
        value = draw(st.sampled_from([real, real, real]) | WEIRD)
        for shape in (f"<{name}>", f"<path:{name}>"):
            path = path.replace(shape, value)
    query = draw(
        st.sampled_from(
            ["", "?after=x", "?after=1&epoch=y", "?size=copy", "?paper=%00", "?" + "a=b&" * 50]
        )
    )
    return draw(METHODS), path + query, draw(HEADERS), draw(BODIES), draw(TYPES)


def sent(ask, one, more=None):
    method, path, headers, body, kind = one
    return ask(
        method,
        path,
        headers={**headers, **({"Content-Type": kind} if kind else {}), **(more or {})},
        data=body,
    )


@FUZZ
@given(data=st.data())
def test_a_stranger_writes_nothing_whatever_is_sent(ship, data):
    """Any route, method, header and body from a device that was not let in: no 5xx, no success
    but for the open pages, not a byte changed."""
    before = ship.state()
    one = data.draw(requests(ship))
    answer = sent(ship.from_network, one)

    assert answer.status_code < 500, one
    assert before == ship.state(), one
    if answer.status_code == 200 and one[0] in ("GET", "POST", "PUT"):
        assert one[1].startswith(BEFORE_JOINING)


@FUZZ
@given(data=st.data())
def test_the_laptops_own_address_without_a_form_token_writes_nothing(ship, data):
    """What another site could make the laptop's browser send carries no token: no 5xx, not a
    byte changed."""
    before = ship.state()
    one = data.draw(requests(ship))
    answer = sent(ship.on_laptop, one)

    assert answer.status_code < 500, one
    assert before == ship.state(), one


@FUZZ
@given(data=st.data())
def test_a_device_that_was_let_in_writes_through_the_exchange_only(ship, data):
    """With a good pass: no 5xx, and nothing but the shared inspection's journal, photos and
    refusals can change (and when the device was last seen)."""
    before = ship.state()
    one = data.draw(requests(ship))
    answer = sent(ship.from_network, one, {"Authorization": f"Bearer {ship.token}"})
    after = ship.state()
    changed = {name for name in before | after if before.get(name) != after.get(name)} - {
        "catalogue.json",
        "catalogue.json.earlier",
    }

    assert answer.status_code < 500, one
    assert all(
        name.startswith(
            tuple(
                f"inspections/{ship.id}/{part}/"
                for part in ("journal", "photos", "copies", "refused")
            )
        )
        for name in changed
    ), one


@FUZZ
@given(data=st.data())
def test_no_form_of_the_laptop_ends_in_a_500(ship, data):
    """With the token, whatever is typed or sent gets a page or a sentence."""
    one = data.draw(requests(ship).filter(lambda one: not one[1].startswith("/sharing")))

    assert sent(ship.on_laptop, one, {"X-CSRFToken": ship.csrf}).status_code < 500, one


@pytest.mark.parametrize(
    "host",
    [
        "rebound.example",
        "rebound.example:5731",
        f"{ADDRESS}.rebound.example",
        "localhost.rebound.example",
        "127.0.0.1.rebound.example",
        "192.168.137.2",
        "[::2]",
        "",
        "localhost@rebound.example",
        "[",
        "xn--e1afmkfd.example",
        "0.0.0.0",
        "2130706433",
    ],
)
@pytest.mark.parametrize("path", ["/", "/session", "/static/css/base.css", "/join"])
def test_a_rebound_name_is_refused_everywhere(ship, host, path):
    """A page whose name was made to point here reads nothing, from this computer or from the
    network."""
    assert 400 <= ship.on_laptop("GET", path, {"Host": host}).status_code < 500
    assert 400 <= ship.from_network("GET", path, {"Host": host}).status_code < 500


CROSS = [
    {"Origin": "https://elsewhere.example"},
    {"Origin": "null"},
    {"Origin": "http://localhost:81"},
    {"Sec-Fetch-Site": "cross-site"},
    {"Sec-Fetch-Site": "same-site"},
    {"Origin": f"http://{ADDRESS}"},
    {"Origin": "https://localhost"},
]


@pytest.mark.parametrize("headers", CROSS)
def test_another_sites_page_posts_nothing_even_with_the_token(ship, headers):
    """A stolen form token does not help a page of another origin."""
    before = ship.state()
    for path in (
        "/inspections",
        "/surveyors",
        "/sharing/code",
        "/import",
        f"/exchange/{ship.id}/entries",
    ):
        assert (
            403
            == ship.on_laptop(
                "POST", path, {**headers, "X-CSRFToken": ship.csrf}, data={"name": "x"}
            ).status_code
        )
    assert before == ship.state()


def test_no_answer_invites_other_origins(ship):
    """No CORS header is ever given, and every answer forbids foreign and inline scripts."""
    for path in ("/", "/session", "/join", "/nowhere", f"/exchange/{ship.id}/entries"):
        for method in ("GET", "OPTIONS"):
            answer = ship.on_laptop(
                method,
                path,
                {"Origin": "https://elsewhere.example", "Access-Control-Request-Method": "PUT"},
            )
            assert not [
                name for name, _ in answer.headers if name.lower().startswith("access-control")
            ]
            assert "script-src 'self'" in answer.headers["Content-Security-Policy"]
            assert "unsafe" not in answer.headers["Content-Security-Policy"]


@pytest.mark.parametrize(
    "claim",
    [
        "Bearer",
        "Bearer ",
        "bearer x",
        "Bearer " + "a" * 5000,
        "Basic eDp5",
        "Bearer \u00ff",
        "Bearer null",
    ],
)
def test_a_false_token_is_none(ship, claim):
    """Whatever is claimed, only a token that was given counts."""
    assert (
        401
        == ship.from_network(
            "GET", f"/exchange/{ship.id}/entries", {"Authorization": claim}
        ).status_code
    )


def test_a_code_that_was_overheard_is_worth_nothing_later(ship):
    """The join of one device, repeated by another: refused."""
    body = json.dumps({"code": ship.sharing.pairing.new_code(), "name": "one"})
    assert 200 == ship.from_network("POST", "/join", data=body).status_code

    assert 403 == ship.from_network("POST", "/join", data=body).status_code
    ship.sharing.pairing.__init__()


def test_bodies_are_bounded_before_they_are_read(ship):
    """Each kind of request has its own size; one byte more is 413."""
    most = {
        "/join": 4_096,
        f"/exchange/{ship.id}/entries": 1_000_000,
        f"/exchange/{ship.id}/photo/{'0' * 64}": 25_000_000,
    }
    for path, size in most.items():
        method = "PUT" if "photo" in path else "POST"
        assert (
            413
            == ship.from_network(
                method, path, {"Authorization": f"Bearer {ship.token}"}, data=bytes(size + 1)
            ).status_code
        )
    assert (
        413
        == ship.on_laptop(
            "POST", "/surveyors", {"X-CSRFToken": ship.csrf}, data=bytes(300_000)
        ).status_code
    )


VALUES = [
    "[" * 100_000 + "]" * 100_000,
    '{"a":' * 100_000 + "1" + "}" * 100_000,
    "1" * 6000,
    "NaN",
    '"\\ud800"',
    '"' + "x" * 30_000 + '"',
]


@pytest.mark.parametrize("value", VALUES, ids=range(len(VALUES)))
def test_values_that_no_page_sends_are_refused_or_kept_as_text(ship, value):
    """100,000 deep, huge, no number, half a character: a status below 500 and nothing folded."""
    whole = {
        "id": f"{ship.device}:900",
        "at": "2026-05-02T09:14:07.512Z",
        "device": ship.device,
        "who": "QX",
        "subject": "sheet/hull/shell-and-sea-chests/anodes",
        "field": "note",
        "value": 0,
        "replaces": [],
    }
    body = json.dumps({"entries": [whole]}).replace('"value": 0', f'"value": {value}')
    answer = ship.from_network(
        "POST",
        f"/exchange/{ship.id}/entries",
        {"Authorization": f"Bearer {ship.token}"},
        data=body.encode(),
    )

    assert answer.status_code == 400 or answer.json["fates"][f"{ship.device}:900"].startswith(
        "refused"
    )


def test_markup_in_every_field_stays_text_on_pages_and_in_the_report(ship):
    """Names, notes, captions, findings, units, devices: on every page as text, and in the
    report's text as it was typed."""
    form = {"X-CSRFToken": ship.csrf}
    for subject in ("vessel", "inspection", "brief"):
        fields = {
            "name": MARKUP,
            "flag": MARKUP,
            "title": MARKUP,
            "place": MARKUP,
            "client": MARKUP,
            "particulars": MARKUP,
        }
        assert (
            302
            == ship.on_laptop(
                "POST", f"/inspection/{ship.id}/edit/{subject}", form, data=fields
            ).status_code
        )
    ship.on_laptop(
        "POST",
        f"/inspection/{ship.id}/finding",
        form,
        data={"title": MARKUP, "text": MARKUP, "action": MARKUP, "urgency": "danger now"},
    )
    ship.on_laptop(
        "POST", f"/inspection/{ship.id}/units", form, data={"system": "hull", "add": MARKUP}
    )
    ship.on_laptop("POST", "/surveyors", form, data={"name": MARKUP[:80]})
    ship.sharing.devices.let_in(MARKUP[:60])
    unit = next(
        one
        for one in ship.app.extensions["data_folder"]
        .inspections.get(ship.id)
        .state.subjects("unit/hull/")
    )
    library = ship.app.extensions["data_folder"].library
    check = library.systems["hull"].checks[0].id
    sheet = f"sheet/hull/{unit.split('/')[2]}/{check}"
    entries = [
        {
            "id": f"{ship.device}:{500 + n}",
            "at": "2026-05-02T09:14:07.512Z",
            "device": ship.device,
            "who": MARKUP[:80],
            "subject": sheet,
            "field": field,
            "value": value,
            "replaces": [],
        }
        for n, (field, value) in enumerate({"note": MARKUP, "rating": "poor"}.items())
    ]
    told = ship.from_network(
        "POST",
        f"/exchange/{ship.id}/entries",
        {"Authorization": f"Bearer {ship.token}"},
        json={"entries": entries},
    )
    assert ["stored", "stored"] == list(told.json["fates"].values())

    shown = ("prepare", "walk", "decide", "decide/hull", "report", "edit/vessel")
    for page in ("/", "/sharing", "/brief/new", *(f"/inspection/{ship.id}/{one}" for one in shown)):
        answer = ship.on_laptop("GET", page)
        assert 200 == answer.status_code, page
        assert "<script>alert(1)" not in answer.get_data(as_text=True), page
        assert "<img src=x" not in answer.get_data(as_text=True), page
    pdf = ship.on_laptop("GET", f"/inspection/{ship.id}/report.pdf")
    assert 200 == pdf.status_code
    found = set()
    for page in PdfReader(io.BytesIO(pdf.get_data())).pages:
        text = page.extract_text().replace("\n", " ").replace("  ", " ")
        found |= {typed for typed in ("<script>alert(1)</script>", "{{ 7*7 }}") if typed in text}
        if len(found) == 2:
            break
    assert {"<script>alert(1)</script>", "{{ 7*7 }}"} == found
