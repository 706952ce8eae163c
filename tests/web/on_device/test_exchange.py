"""Entries and photos in and out over HTTP."""

import hashlib
import io

import pytest
from PIL import Image

from inspector import create_app
from inspector.demo.portfolio import prepare_in
from inspector.demo.scenario import PORTFOLIO

SUBJECT = "sheet/reefers/{unit}/temperature"


def entry(
    number, subject="sheet/hull/shell-and-sea-chests/anodes", field="rating", value="good", **more
):
    return {
        "id": f"phone:{number}",
        "at": "2026-05-02T09:14:07.512Z",
        "device": "phone",
        "who": "QX",
        "subject": subject,
        "field": field,
        "value": value,
        "replaces": [],
        **more,
    }


def test_an_entry_is_stored_then_already_had(client, begun):
    """The same entry twice is kept once, and both answers say what became of it."""
    first = client.post(f"/exchange/{begun}/entries", json={"entries": [entry(1)]})
    again = client.post(f"/exchange/{begun}/entries", json={"entries": [entry(1)]})

    assert {"phone:1": "stored"} == first.json["fates"]
    assert {"phone:1": "already had"} == again.json["fates"]


def test_a_refused_entry_does_not_hold_up_the_others(client, begun):
    """One bad entry gets its sentence; its neighbours are stored."""
    answer = client.post(
        f"/exchange/{begun}/entries",
        json={"entries": [entry(1), entry(2, subject="nowhere"), entry(3)]},
    )

    assert ["stored", "stored"] == [answer.json["fates"][one] for one in ("phone:1", "phone:3")]
    assert answer.json["fates"]["phone:2"].startswith("refused: The entry's subject")


def test_an_id_used_twice_with_other_content_is_refused(client, begun):
    """A second entry under a known id never replaces the first."""
    client.post(f"/exchange/{begun}/entries", json={"entries": [entry(1)]})
    answer = client.post(f"/exchange/{begun}/entries", json={"entries": [entry(1, value="failed")]})

    assert "refused" in answer.json["fates"]["phone:1"]


def test_a_reading_is_judged_at_once(client, begun, app):
    """The answer to a hand-over judges the sheet it touched, with sentence and source."""
    library = app.extensions["data_folder"].library
    system, check = next(
        (s, c)
        for s in library.systems.values()
        for c in s.checks
        if c.criterion == "cold-store-temperature"
    )
    unit = client.get(f"/exchange/{begun}/entries").json["entries"]
    unit = next(
        e["subject"].split("/")[2] for e in unit if e["subject"].startswith(f"unit/{system.id}/")
    )
    subject = f"sheet/{system.id}/{unit}/{check.id}"
    readings = [entry(1, subject, "reading/temperature", {"value": "14", "unit": "°F"})]
    if "store" not in check.given:
        readings.append(entry(2, subject, "reading/store", {"value": "frozen"}))

    judged = client.post(f"/exchange/{begun}/entries", json={"entries": readings}).json[
        "judgements"
    ][subject]

    assert judged["rating"] in ("fair", "poor")
    assert judged["source"]


def test_entries_come_out_after_a_position_and_all_for_another_epoch(client, begun):
    """A position counts within one epoch only."""
    whole = client.get(f"/exchange/{begun}/entries").json
    none = client.get(
        f"/exchange/{begun}/entries?after={whole['position']}&epoch={whole['epoch']}"
    ).json
    other = client.get(f"/exchange/{begun}/entries?after={whole['position']}&epoch=other").json

    assert none["entries"] == []
    assert len(other["entries"]) == whole["position"]


@pytest.mark.parametrize(
    "body", [b"", b"{", b"[]", b'{"entries": 1}', b'{"entries": ' + b"[" * 50_000, b"\xff"]
)
def test_a_body_that_is_no_batch_gets_a_sentence(client, begun, body):
    """Whatever is posted, the answer is 4xx with a sentence."""
    answer = client.post(f"/exchange/{begun}/entries", data=body, content_type="application/json")

    assert answer.status_code == 400
    assert answer.json["error"]


def test_a_photo_comes_back_as_a_thumbnail(client, begun):
    """A PNG goes in under its digest, a small JPEG comes out."""
    data = io.BytesIO()
    Image.new("RGB", (900, 600), "teal").save(data, "PNG")
    sha = hashlib.sha256(data.getvalue()).hexdigest()

    taken = client.put(
        f"/exchange/{begun}/photo/{sha}",
        data=data.getvalue(),
        content_type="application/octet-stream",
    )
    thumb = client.get(f"/inspection/{begun}/photo/{sha}/thumb")

    assert taken.status_code == 200
    assert Image.open(io.BytesIO(thumb.data)).format == "JPEG"
    thumb.close()


@pytest.mark.parametrize("data", [b"", b"not a picture", b"\xff\xd8\xff\xe0" + b"\0" * 400])
def test_a_false_photo_gets_a_sentence(client, begun, data):
    """Bytes that are no photo are refused with one sentence."""
    sha = hashlib.sha256(data).hexdigest()
    answer = client.put(
        f"/exchange/{begun}/photo/{sha}", data=data, content_type="application/octet-stream"
    )

    assert 400 <= answer.status_code < 500
    assert answer.json["error"].endswith(".")


def test_a_photo_under_another_digest_is_refused(client, begun):
    """Bytes that do not fit the digest they came under are refused."""
    answer = client.put(
        f"/exchange/{begun}/photo/{'0' * 64}", data=b"abc", content_type="application/octet-stream"
    )

    assert "digest" in answer.json["error"]


PLATES = "sheet/hull/shell-and-sea-chests/gauging-report"
PLATE_READINGS = {
    "as_built": {"value": "12", "unit": "mm"},
    "measured": {"value": "11", "unit": "mm"},
    "measured_year": {"value": "2024"},
    "member": {"value": "shell, strength deck or tight bulkhead"},
}


class Phone:
    """A device that asks for what is new since its last exchange, as the walk page does."""

    def __init__(self, client, inspection_id):
        self.client, self.address = client, f"/exchange/{inspection_id}/entries"
        self.position, self.epoch, self.judgements = 0, "", {}

    def fetch(self):
        """One exchange; the judgements that came with it."""
        query = {"after": self.position, "epoch": self.epoch}
        reply = self.client.get(self.address, query_string=query).json
        self.position, self.epoch = reply["position"], reply["epoch"]
        self.judgements |= reply["judgements"]
        return reply["judgements"]


@pytest.fixture
def phone(client, begun):
    """A phone that has everything of a hull whose plates were read and whose year is known."""
    batch = [entry(1, "vessel", "year", "1994")]
    for number, (name, value) in enumerate(PLATE_READINGS.items(), 2):
        batch.append(entry(number, PLATES, f"reading/{name}", value))
    client.post(f"/exchange/{begun}/entries", json={"entries": batch})
    phone = Phone(client, begun)
    phone.fetch()
    return phone


def recorded(client, begun, subject, field, value):
    """Something recorded on the laptop."""
    inspection = client.application.extensions["data_folder"].inspections.get(begun)
    inspection.record("QX", [(subject, field, value)])


def test_nothing_is_judged_again_while_nothing_changes(phone):
    """A second exchange carries no judgement that the first one brought."""
    assert PLATES in phone.judgements
    assert phone.fetch() == {}


def test_another_build_year_brings_a_new_judgement(client, begun, phone):
    """The plates lose faster on a younger hull.

    Each device receives it once, though no reading changed.
    """
    before, other = phone.judgements[PLATES], Phone(client, begun)
    recorded(client, begun, "vessel", "year", "2019")

    after = phone.fetch()

    assert after[PLATES]["sentence"] != before["sentence"]
    assert phone.fetch() == {}
    assert other.fetch()[PLATES] == after[PLATES]


def test_a_build_year_taken_back_brings_the_sentence_that_it_is_missing(client, begun, phone):
    """Without the year the judgement cannot remain on the phone."""
    recorded(client, begun, "vessel", "year", None)

    assert "missing" in phone.fetch()[PLATES]["cannot"]


def test_limits_of_the_surveyors_own_bring_a_new_judgement(client, begun, phone):
    """The open phone shows a limit set on the laptop; after its removal, the shipped one."""
    before = phone.judgements[PLATES]
    form = {"shell_share": "5", "shell_added": "0", "source": "Rules of the yard, 2025"}
    client.post(f"/inspection/{begun}/rules/plate-remaining-life", data=form)

    after = phone.fetch()[PLATES]

    assert after["rating"] != before["rating"]
    assert "Rules of the yard, 2025" in after["source"]
    client.post(f"/inspection/{begun}/rules/plate-remaining-life", data={})
    assert phone.fetch() == {PLATES: before}


@pytest.mark.parametrize(
    ("subject", "field"),
    [
        ("vessel", "name"),
        ("brief", "speed"),
        ("profile/oil-water", "thruster_act"),
        ("sheet/hull/shell-and-sea-chests/anodes", "rating"),
    ],
)
def test_what_a_sheet_does_not_rest_on_judges_it_not_again(client, begun, phone, subject, field):
    """Only particulars that the check takes and limits of its own criterion count."""
    recorded(client, begun, subject, field, "14")

    assert phone.fetch() == {}


def test_particulars_judge_no_sheet_without_readings(client, begun):
    """Where nothing was read, a year has nothing to judge."""
    recorded(client, begun, "vessel", "year", "1994")

    assert Phone(client, begun).fetch() == {}


def test_cleared_readings_clear_the_judgement(client, begun, phone):
    """A phone drops what it showed once another one took every reading back."""
    for name in PLATE_READINGS:
        recorded(client, begun, PLATES, f"reading/{name}", None)

    assert phone.fetch() == {PLATES: None}


def test_handed_over_particulars_are_judged_in_the_answer(client, begun, phone):
    """A device that hands over the year itself learns the judgement in the same answer."""
    year = entry(20, "vessel", "year", "2019", replaces=["phone:1"])
    answer = client.post(f"/exchange/{begun}/entries", json={"entries": [year]}).json

    assert answer["judgements"][PLATES]["sentence"] != phone.judgements[PLATES]["sentence"]


@pytest.fixture(scope="module")
def demo_app(tmp_path_factory):
    """An application over the invented portfolio."""
    folder = tmp_path_factory.mktemp("demo")
    prepare_in(folder)
    app = create_app(folder, TESTING=True, WTF_CSRF_ENABLED=False)
    yield app
    app.extensions["data_folder"].close()


@pytest.mark.parametrize("candidate", [one.id for one in PORTFOLIO])
def test_phone_and_assessment_judge_every_sheet_of_the_demo_alike(demo_app, candidate):
    """A sheet with a reading has one judgement and one sentence, on the phone and in the report."""
    opened = demo_app.extensions["data_folder"]
    assessment = opened.assessment_of(opened.inspections.get(candidate))
    results = [
        result for system in assessment.systems for unit in system.units for result in unit.results
    ]

    phone = Phone(demo_app.test_client(), candidate)
    phone.fetch()

    judged = {
        result.subject: result for result in results if result.judgement or result.cannot_judge
    }
    assert judged
    assert {subject for subject, found in phone.judgements.items() if found} == set(judged)
    for subject, result in judged.items():
        found = phone.judgements[subject]
        if result.judgement is None:
            assert {"cannot": result.cannot_judge} == found
        else:
            expected = (
                result.judgement.rating,
                result.judgement.band,
                result.judgement.sentence,
                result.judgement.limit,
            )
            assert expected == tuple(
                found[name] for name in ("rating", "band", "sentence", "limit")
            )
