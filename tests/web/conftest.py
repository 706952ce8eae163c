"""An application over an empty data folder, and an inspection begun in it.

The same shared with devices at an address of its own.
"""

import json

import pytest

from inspector import create_app
from inspector.sharing.shared_inspections import Shared

ADDRESS = "192.168.137.1"


@pytest.fixture
def app(tmp_path):
    app = create_app(tmp_path / "data", TESTING=True, WTF_CSRF_ENABLED=False)
    yield app
    app.extensions["data_folder"].close()


@pytest.fixture
def client(app):
    return app.test_client()


@pytest.fixture
def begun(client):
    """The id of an inspection begun with all systems."""
    answer = client.post("/inspections", data={"go": "walk"})
    return answer.headers["Location"].split("/")[2]


class Device:
    """A device on the network: another address, the shared name, and after joining its token."""

    def __init__(self, app, address="192.168.137.50"):
        self.client, self.address, self.token, self.id = app.test_client(), address, "", ""

    def ask(self, method, path, *, token=True, host=f"{ADDRESS}:5731", headers=None, **more):
        """One request as this device; token=False leaves the bearer token out."""
        given = {
            "Host": host,
            **({"Authorization": f"Bearer {self.token}"} if token and self.token else {}),
            **(headers or {}),
        }
        return self.client.open(
            path,
            method=method,
            headers=given,
            environ_overrides={"REMOTE_ADDR": self.address},
            **more,
        )

    def join(self, code, name="tablet of QX", **more):
        answer = self.ask(
            "POST",
            "/join",
            token=False,
            data=json.dumps({"code": code, "name": name, **more}),
            content_type="application/json",
        )
        if answer.status_code == 200:
            self.token, self.id = answer.json["token"], answer.json["device"]
        return answer


@pytest.fixture
def shared_app(tmp_path):
    app = create_app(
        tmp_path / "data",
        TESTING=True,
        WTF_CSRF_ENABLED=False,
        SHARED=Shared(ADDRESS, 5731),
    )
    yield app
    app.extensions["data_folder"].close()


@pytest.fixture
def laptop(shared_app):
    """The laptop's own browser, on an instance that is shared."""
    return shared_app.test_client()


@pytest.fixture
def new_device(shared_app):
    """Maker of devices that are not let in yet."""
    return lambda address="192.168.137.50": Device(shared_app, address)


@pytest.fixture
def code(shared_app):
    """Maker of one-time codes."""
    return shared_app.extensions["sharing"].pairing.new_code


@pytest.fixture
def shared_id(laptop, shared_app):
    """The id of an inspection that devices may reach."""
    one = laptop.post("/inspections", data={"go": "walk"}).headers["Location"].split("/")[2]
    shared_app.extensions["sharing"].share(one)
    return one


@pytest.fixture
def tablet(new_device, code, shared_id):
    """A device that was let in."""
    device = new_device()
    assert device.join(code()).status_code == 200
    return device
