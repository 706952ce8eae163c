"""A shared instance under attack: its laptop, a device that was let in, and the network; used by
the tests of attacks."""

import hashlib
import json

from inspector import create_app
from inspector.sharing.shared_inspections import Shared

ADDRESS = "192.168.137.1"
DEVICE_ADDRESS = "192.168.137.66"


class Ship:
    """A shared instance with one shared inspection, its laptop, a device that was let in and one
    that was not."""

    def __init__(self, folder):
        self.data = folder / "data"
        self.app = create_app(self.data, TESTING=True, SHARED=Shared(ADDRESS, 5731))
        self.sharing = self.app.extensions["sharing"]
        self.laptop = self.app.test_client()
        self.csrf = self.laptop.get("/session").json["csrf"]
        self.id = (
            self.laptop.post("/inspections", headers={"X-CSRFToken": self.csrf})
            .headers["Location"]
            .split("/")[2]
        )
        self.sharing.share(self.id)
        joined = self.from_network(
            "POST",
            "/join",
            data=json.dumps({"code": self.sharing.pairing.new_code(), "name": "tablet"}),
        )
        self.token, self.device = joined.json["token"], joined.json["device"]

    def from_network(self, method, path, headers=None, **more):
        """A request of a device, without cookies; its pass goes in `headers`."""
        client, where = self.app.test_client(use_cookies=False), {"REMOTE_ADDR": DEVICE_ADDRESS}
        with client.open(
            path,
            method=method,
            headers={"Host": f"{ADDRESS}:5731", **(headers or {})},
            environ_overrides=where,
            **more,
        ) as got:
            got.get_data()
            return got

    def on_laptop(self, method, path, headers=None, **more):
        with self.laptop.open(path, method=method, headers=headers or {}, **more) as got:
            got.get_data()
            return got

    def bring(self, data):
        """The laptop brings a file in, as its form would."""
        parts = (
            b'--edge\r\nContent-Disposition: form-data; name="file"; filename="../../x.zip"\r\nContent-Type: application/zip\r\n\r\n',
            data,
            b"\r\n--edge--\r\n",
        )
        return self.on_laptop(
            "POST",
            "/import",
            {"X-CSRFToken": self.csrf},
            data=b"".join(parts),
            content_type="multipart/form-data; boundary=edge",
        )

    def close(self):
        """Let go of the files."""
        self.app.extensions["data_folder"].close()

    def state(self):
        """Every recorded file with its content's digest; what can be made again is left out."""
        files = (
            path for path in self.data.rglob("*") if path.is_file() and "derived" not in path.parts
        )
        return {
            path.relative_to(self.data).as_posix(): hashlib.sha256(path.read_bytes()).digest()
            for path in files
        }
