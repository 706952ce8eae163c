"""An application over an empty data folder, and an inspection begun in it."""

import pytest

from inspector import create_app


@pytest.fixture
def app(tmp_path):
    app = create_app(tmp_path / "data", TESTING=True, WTF_CSRF_ENABLED=False)
    yield app
    app.extensions["desk"].close()


@pytest.fixture
def client(app):
    return app.test_client()


@pytest.fixture
def begun(client):
    """The id of an inspection begun with all systems."""
    answer = client.post("/inspections", data={"go": "walk"})
    return answer.headers["Location"].split("/")[2]
