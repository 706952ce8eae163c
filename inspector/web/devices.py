"""The devices that were let in: name, since when, last seen, and the SHA-256 of each one's token. The token itself is known to the device alone."""

import hashlib
import hmac
import re
import secrets
import threading
import time
from collections.abc import Callable
from typing import Any

from inspector.errors import InspectorError
from inspector.record.catalogue import Catalogue

LIFE = 30 * 86_400
SEEN_EVERY = 300
MOST = 100


class NoMoreDevices(InspectorError):
    """There are as many devices as are kept."""


class Devices:
    """The catalogue's table of devices, held in memory, since every request asks it."""

    def __init__(self, catalogue: Catalogue, clock: Callable[[], float] = time.time):
        self._catalogue, self._clock = catalogue, clock
        self._lock = threading.RLock()
        self._kept = {one["id"]: one for one in catalogue.all("devices")}
        self._seen: dict[str, float] = {}

    def let_in(self, name: str, before: tuple[str, str] | None = None) -> tuple[str, dict[str, Any]]:
        """Let a device in; returns its new token and its document. `before` is (id, token) of an earlier pass of the same browser: with it, it stays the
        same device, and what it recorded before still counts as its own.
        """
        with self._lock:
            earlier = self._kept.get(before[0]) if before else None
            same = earlier and hmac.compare_digest(earlier["token_sha256"], _digest(before[1]))
            if not same and len(self._kept) >= MOST:
                raise NoMoreDevices(f"{MOST} devices are known already; take out those that are no longer used on the laptop's sharing page.")
            token, moment = secrets.token_urlsafe(32), self._clock()
            document = {"id": earlier["id"] if same else _id_for(name), "name": name, "token_sha256": _digest(token), "since": moment, "seen": moment,
                        "revoked": False}
            self._keep(document)
            return token, dict(document)

    def of_token(self, token: str) -> dict[str, Any] | None:
        """The device that has this token, if it may still come in; marks it as seen."""
        digest = _digest(token)
        with self._lock:
            return next((self._seen_now(one) for one in self._kept.values() if hmac.compare_digest(one["token_sha256"], digest) and self._good(one)), None)

    def of_id(self, device_id: str) -> dict[str, Any] | None:
        """The device of this id, if it may still come in."""
        with self._lock:
            one = self._kept.get(device_id)
            return self._seen_now(one) if one and self._good(one) else None

    def all(self) -> list[dict[str, Any]]:
        """Every device, newest first, without what was kept of its token; `expired` says that its thirty days are over."""
        with self._lock:
            rows = [{key: value for key, value in one.items() if key != "token_sha256"} | {"seen": self._seen.get(one["id"], one["seen"]),
                    "expired": self._clock() > one["since"] + LIFE} for one in self._kept.values()]
        return sorted(rows, key=lambda row: -row["since"])

    def revoke(self, device_id: str) -> None:
        """Let a device in no more; what it recorded stays."""
        with self._lock:
            if device_id in self._kept:
                self._keep({**self._kept[device_id], "revoked": True})

    def remove(self, device_id: str) -> None:
        """Take a device out of the list altogether."""
        with self._lock:
            if self._kept.pop(device_id, None):
                self._catalogue.remove("devices", device_id)

    def _good(self, one: dict[str, Any]) -> bool:
        return not one["revoked"] and self._clock() <= one["since"] + LIFE

    def _seen_now(self, one: dict[str, Any]) -> dict[str, Any]:
        moment = self._clock()
        self._seen[one["id"]] = moment
        # Written now and then only: a disk write at each request would be felt.
        if moment - one["seen"] > SEEN_EVERY:
            self._keep({**one, "seen": moment})
        return dict(self._kept[one["id"]])

    def _keep(self, document: dict[str, Any]) -> None:
        self._catalogue.put("devices", document)
        self._kept[document["id"]] = document


def _id_for(name: str) -> str:
    plain = re.sub(r"[^a-z0-9]+", "-", name.lower()).strip("-")[:20].strip("-") or "device"
    return f"{plain}-{secrets.token_hex(4)}"


def _digest(token: str) -> str:
    return hashlib.sha256(token.encode("utf-8", "replace")).hexdigest()
