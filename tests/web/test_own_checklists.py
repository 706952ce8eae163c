"""A surveyor's own checklists in the data folder add or replace a system.

A mistake in them stops nothing.
"""

import pytest

from inspector import create_app, places

OWN = places.shipped("checklists") / "open-deck.toml"


@pytest.fixture
def started(tmp_path):
    """Starts the tool over a data folder with these files in its checklists folder."""
    apps = []

    def start(files):
        folder = tmp_path / "data" / "checklists"
        folder.mkdir(parents=True)
        for name, text in files.items():
            (folder / name).write_text(text, encoding="utf-8")
        apps.append(create_app(tmp_path / "data", TESTING=True, WTF_CSRF_ENABLED=False))
        return apps[-1]

    yield start
    for app in apps:
        app.extensions["data_folder"].close()


def begun(app):
    inspection_id = (
        app.test_client()
        .post("/inspections", data={"go": "walk"})
        .headers["Location"]
        .split("/")[2]
    )
    data = app.extensions["data_folder"]
    return data.library_of(data.inspections.get(inspection_id))


def test_a_new_file_adds_a_system(started):
    """Twenty-one systems and his own one; the next inspection carries it."""
    app = started(
        {
            "diving-gear.toml": OWN.read_text()
            .replace('id = "open-deck"', 'id = "diving-gear"')
            .replace('name = "Open deck', 'name = "Diving gear')
        }
    )

    assert "diving-gear" in begun(app).systems
    assert "open-deck" in begun(app).systems


def test_a_file_of_the_same_name_replaces_a_system(started):
    """His own words are used, the others are as shipped."""
    app = started(
        {"open-deck.toml": OWN.read_text().replace('name = "Open deck', 'name = "Our deck')}
    )

    assert begun(app).systems["open-deck"].name.startswith("Our deck")
    assert len(begun(app).systems) == 21


def test_a_mistake_is_told_at_the_front_and_the_shipped_ones_serve(started):
    """File, check and key are named on the first page; inspections begin with what was shipped."""
    app = started({"open-deck.toml": OWN.read_text().replace("weight = ", "wieght = ", 1)})
    page = app.test_client().get("/").get_data(as_text=True)

    assert "open-deck.toml" in page
    assert "wieght" in page
    assert begun(app).systems["open-deck"].name.startswith("Open deck")
