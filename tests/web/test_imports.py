"""Files brought in by page and command: bundles, what a device saved, and what is refused."""

import base64
import hashlib
import io
import json
import shutil
import zipfile

import pytest
from PIL import Image

from inspector.cli.parser import main
from inspector.record.bundles import bundle


def a_photo(colour="teal"):
    out = io.BytesIO()
    Image.new("RGB", (90, 60), colour).save(out, "JPEG")
    return out.getvalue()


def entry(number, device="phone-1", **more):
    return {
        "id": f"{device}:{number}",
        "at": "2026-05-02T09:14:07.512Z",
        "device": device,
        "who": "QX",
        "subject": "vessel",
        "field": "particulars",
        "value": "grey",
        "replaces": [],
        **more,
    }


def saved(inspection, entries=(), photos=(), **more):
    """What the walk page saves of what waits in it."""
    pictures = [
        {
            "sha256": hashlib.sha256(data).hexdigest(),
            "kind": "image/jpeg",
            "base64": base64.b64encode(data).decode(),
        }
        for data in photos
    ]
    return json.dumps(
        {
            "format": "inspector-waiting",
            "version": 1,
            "inspection": inspection,
            "device": "phone-1",
            "entries": list(entries),
            "photos": pictures,
            **more,
        }
    ).encode()


def bring(client, data, name="saved.json"):
    head = (
        f'--edge\r\nContent-Disposition: form-data; name="file"; filename="{name}"\r\n'
        "Content-Type: application/octet-stream\r\n\r\n"
    )
    return client.post(
        "/import",
        data=head.encode() + data + b"\r\n--edge--\r\n",
        content_type="multipart/form-data; boundary=edge",
    )


def kept(client, one):
    return [
        found["id"]
        for found in client.get(f"/exchange/{one}/entries").json["entries"]
        if found["device"].startswith("phone")
    ]


def test_what_a_device_saved_is_taken_in_once(client, begun):
    """Entries and photos of the file are here afterwards, and a second time adds nothing."""
    data = saved(begun, [entry(1), entry(2)], [a_photo()])
    for _ in range(2):
        assert 302 == bring(client, data).status_code
    page = client.get("/").get_data(as_text=True)

    assert ["phone-1:1", "phone-1:2"] == kept(client, begun)
    assert "new entries 2, known already 0, new photos 1" in page
    assert "new entries 0, known already 2, new photos 0" in page


def test_what_of_a_file_is_refused_is_told_and_the_rest_is_taken(client, begun):
    """Another content of a known id, one that is none and an altered photo get a sentence each.

    Their neighbours are taken.
    """
    good, bad = a_photo(), a_photo("navy")
    data = json.loads(saved(begun, [entry(1), entry(1, value="red"), "text"], [good, bad]))
    data["photos"][1]["sha256"] = "0" * 64
    bring(client, json.dumps(data).encode())
    page = client.get("/").get_data(as_text=True)

    assert ["phone-1:1"] == kept(client, begun)
    assert "new entries 1, known already 0, new photos 1" in page
    assert 3 == page.count("Not taken in: ")


@pytest.mark.parametrize(
    "change",
    [
        {"format": "other"},
        {"version": 2},
        {"version": True},
        {"inspection": "../x"},
        {"inspection": "nowhere"},
        {"inspection": 1},
        {"device": ""},
        {"device": ["x"]},
        {"entries": {}},
        {"entries": None},
        {"photos": 1},
        {"entries": [1] * 20_001},
    ],
)
def test_a_file_that_is_not_what_a_device_saves_is_refused(client, begun, change):
    """Another format, a path for an id, no lists: one sentence, nothing changed."""
    answer = bring(client, json.dumps({**json.loads(saved(begun, [entry(1)])), **change}).encode())

    assert answer.status_code in (400, 404)
    assert 'class="fault"' in answer.get_data(as_text=True)
    assert [] == kept(client, begun)


@pytest.mark.parametrize(
    "data",
    [
        b"",
        b"{",
        b"{" * 100_000,
        b'{"a":' * 100_000,
        b'{"a": NaN}',
        b"\xff\xfe{}",
        b"PK\x03\x04",
        b"GIF89a" * 100,
    ],
)
def test_a_file_that_is_nothing_of_ours_is_refused(client, begun, data):
    """Whatever is brought, the answer is a sentence."""
    answer = bring(client, data, "../../etc/passwd")

    assert 400 == answer.status_code
    assert 'class="fault"' in answer.get_data(as_text=True)


def test_a_file_as_the_page_saves_it_is_read_photo_by_photo(client, begun):
    """Without blanks, photos last: taken whole.

    Cut in the second photo, the entries and the first are taken and the rest is reported.
    """
    plain = saved(begun, [entry(1, value='a,"photos":[ in a text')], [a_photo(), a_photo("navy")])
    data = json.dumps(json.loads(plain), separators=(",", ":")).encode()
    bring(client, data[:-300])
    page = client.get("/").get_data(as_text=True)
    assert "new entries 1, known already 0, new photos 1" in page
    assert "photo 2: the file ends or is damaged here" in page
    bring(client, data)

    assert "new entries 0, known already 1, new photos 1" in client.get("/").get_data(as_text=True)


def test_every_whole_entry_of_a_file_is_taken_whoever_it_names(client, begun):
    """Whoever brings the file in decides: a phone had several names, and knew what others said."""
    entries = [entry(1, name) for name in ("phone-old", "phone-1", "tablet", "another-laptop-ab12")]
    bring(client, saved(begun, entries))
    assert "new entries 4, known already 0" in client.get("/").get_data(as_text=True)


def test_what_bears_this_computers_name_and_was_not_made_here_is_taken_on_demand(
    client, begun, app
):
    """It is refused and said; on the check page the owner takes it in, under no number of ours."""
    inspection = app.extensions["data_folder"].inspections.get(begun)
    host = inspection.host
    bring(client, saved(begun, [entry(5000, host)], device=host))
    assert f"Not taken in: {host}:5000" in client.get("/").get_data(as_text=True)
    page = client.get(f"/inspection/{begun}/check").get_data(as_text=True)
    assert "take in what was kept aside" in page
    client.post(f"/inspection/{begun}/check")
    page = client.get(f"/inspection/{begun}/check").get_data(as_text=True)
    assert "1 entry that was kept aside taken in." in page
    assert "take in what was kept aside" not in page
    assert f"{host}:5000" == inspection.entries[-1].id
    [answer] = inspection.record("QX", [("vessel", "name", "Grey Heron")])
    assert host != answer.device
    assert 1 == answer.number


def test_another_content_of_a_known_id_comes_beside_what_is_here(client, begun, app):
    """Nobody can say which one is right, so both are shown until somebody settles it."""
    bring(client, saved(begun, [entry(1)]))
    bring(client, saved(begun, [entry(1, value="red")]))
    client.post(f"/inspection/{begun}/check")
    page = client.get(f"/inspection/{begun}/check").get_data(as_text=True)
    assert "1 entry that was kept aside taken in." in page
    inspection = app.extensions["data_folder"].inspections.get(begun)
    assert ["grey"] == [each.value for each in inspection.entries if each.device == "phone-1"]
    [(_, _, heads)] = inspection.state.disputes()
    assert {"grey", "red"} == {each.value for each in heads}
    assert {"phone-1:1"} == {name for each in heads for name in each.replaces}
    assert [] == inspection.refused()
    assert 0 == inspection.take_in_kept_aside()


def test_the_command_ends_with_1_where_something_was_not_taken(
    client, begun, app, tmp_path, capsys
):
    """`import` says what was left, and `verify` takes in what can be."""
    path, data = tmp_path / "saved.json", app.extensions["data_folder"]
    path.write_bytes(saved(begun, [entry(1), entry(5000, data.host)]))
    assert 1 == main(["import", str(path), "--data", str(data.path)])
    told = capsys.readouterr()
    assert "new entries 1" in told.out
    assert "1 thing in" in told.err
    assert "--take-in-kept-aside" in told.err
    main(["verify", begun, "--take-in-kept-aside", "--data", str(data.path)])
    assert "1 entry that was kept aside taken in." in capsys.readouterr().out
    data.inspections.forget(begun)
    there = {each.id for each in data.inspections.get(begun).entries}
    assert {"phone-1:1", f"{data.host}:5000"} <= there


def test_a_bundle_is_merged_into_the_open_inspection(client, begun, app):
    """A bundle that comes while the inspection is open is there at once; the numbers go on."""
    data = app.extensions["data_folder"]
    inspection = data.inspections.get(begun)
    inspection.take_in([entry(1)])
    out = data.path / "one.zip"
    bundle.write(inspection.folder, out)
    other = bundle_with(out.read_bytes(), entry(2))

    assert 302 == bring(client, other, "one.zip").status_code
    assert ["phone-1:1", "phone-1:2"] == kept(client, begun)
    assert inspection is data.inspections.get(begun)


def bundle_with(data, raw):
    """The bundle, with one more entry in a journal of its own."""
    from inspector.record.entry import from_dict
    from inspector.record.journal import to_line

    line, out = to_line(from_dict(raw)), io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(data)) as old, zipfile.ZipFile(out, "w") as new:
        manifest = json.loads(old.read("manifest.json"))
        manifest["files"]["journal/elsewhere.jsonl"] = {
            "sha256": hashlib.sha256(line).hexdigest(),
            "bytes": len(line),
        }
        for name in old.namelist():
            new.writestr(name, json.dumps(manifest) if name == "manifest.json" else old.read(name))
        new.writestr("journal/elsewhere.jsonl", line)
    return out.getvalue()


def test_nothing_is_left_behind_in_quarantine(client, begun, app):
    """Taken or refused, the file that was brought is gone afterwards."""
    bring(client, saved(begun, [entry(1)]))
    bring(client, b"nothing of ours")

    assert [] == list((app.extensions["data_folder"].path / "quarantine").iterdir())


def test_no_file_is_told(client):
    """A form without a file gets a sentence."""
    assert 400 == client.post("/import", data={}).status_code


def test_the_command_takes_in_what_a_device_saved(client, begun, app, tmp_path, capsys):
    """`inspector import` reads the same file."""
    path = tmp_path / "saved.json"
    path.write_bytes(saved(begun, [entry(1)], [a_photo()]))
    data = str(app.extensions["data_folder"].path)

    assert 0 == main(["import", str(path), "--data", data])
    assert "new entries 1, known already 0, new photos 1" in capsys.readouterr().out
    assert ["phone-1:1"] == kept(client, begun)


def test_verify_names_holes_missing_originals_and_refusals(client, begun, app, capsys):
    """What is not here yet is reported for each device; a hole ends the command with 1."""
    inspection = app.extensions["data_folder"].inspections.get(begun)
    sha = "a" * 64
    inspection.take_in(
        [entry(1), entry(3), entry(4, subject=f"photo/{sha}", field="on", value=""), "text"]
    )

    assert 1 == main(["verify", begun, "--data", str(app.extensions["data_folder"].path)])
    printed = capsys.readouterr().out
    assert "phone-1: entries 2 are not here" in printed
    assert f"The original of photo {sha[:12]}… is not here; nor is a copy." in printed
    assert "1 refused entry is kept aside" in printed
    assert "nothing missing." in printed


def test_the_page_saves_everything_and_takes_it_back(client, begun, app):
    """One button out, the usual form in; what is in it and what is not is said."""
    page = client.get("/backup").get_data(as_text=True)
    assert "It does not hold" in page
    assert "passes of phones" in page
    answer = client.post("/backup")
    assert "attachment" in answer.headers["Content-Disposition"]
    # Made while it is sent, so it is read before the folder is lost.
    whole = answer.data
    app.extensions["data_folder"].inspections.forget(begun)
    shutil.rmtree(app.extensions["data_folder"].path / "inspections" / begun)

    assert 302 == bring(client, whole, "everything.zip").status_code

    assert "1 inspection, 1 new here" in client.get("/").get_data(as_text=True)
    assert 200 == client.get(f"/inspection/{begun}/walk").status_code
