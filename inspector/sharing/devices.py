"""The devices that were let in: their names, times, and the SHA-256 of each one's token.

The token itself is known to the device alone.
"""

import hashlib
import hmac
import re
import secrets
import threading
import time
from collections.abc import Callable, Iterable, Mapping
from typing import Any

from inspector.record.catalogue import Catalogue
from inspector.values.errors import InspectorError

LIFE = 30 * 86_400  # seconds
# How often the time at which a device was seen is written.
SEEN_EVERY = 300  # seconds
# More than a firm has; a bound for somebody who joins in a loop.
MOST = 100
# Those taken out of the list, which are still known; and the earlier names of one browser.
MOST_TAKEN_OUT, MOST_NAMES = 500, 20
# What a browser calls itself, or was called when it joined. No computer's name ends like this.
BROWSER = re.compile(r"[a-z0-9][a-z0-9-]{0,30}-([0-9a-f]{8}|[0-9a-f]{12})")


class NoMoreDevices(InspectorError):
    """There are as many devices as are kept."""


class Devices:
    """The catalogue's table of devices, kept in memory, since every request asks it.

    Parameters
    ----------
    catalogue : Catalogue
    clock : callable
        Returns the time [s].
    """

    def __init__(self, catalogue: Catalogue, clock: Callable[[], float] = time.time):
        self._catalogue, self._clock = catalogue, clock
        self._lock = threading.RLock()
        self._kept = {device["id"]: device for device in catalogue.all("devices")}
        self._seen: dict[str, float] = {}
        self._said: dict[str, dict[str, dict[str, Any]]] = {}

    def let_in(
        self,
        name: str,
        before: tuple[str, str] | None = None,
        *,
        moves: str = "",
        secure: bool = False,
    ) -> tuple[str, dict[str, Any]]:
        """Let a device in.

        Parameters
        ----------
        name : str
        before : tuple of (str, str), optional
            Id and token of an earlier pass of the same browser: with it, it stays the same device,
            and what it recorded before still counts as its own.
        moves : str
            The id of the device that moves from http to https by this, "" for none: its pass ends,
            its display name and its earlier names go along.
        secure : bool
            Whether it comes over https.

        Returns
        -------
        tuple of (str, dict)
            Its new token and its document.

        Raises
        ------
        NoMoreDevices
            Where there are as many as are kept.
        """
        with self._lock:
            # Who proves by token that he was here keeps his id, and the count of his entries with
            # it.
            earlier = self._earlier(before)
            if earlier is None and len(self.all()) >= MOST:
                raise NoMoreDevices(
                    f"{MOST} devices are known already; take out those that are no longer used on "
                    "the laptop's sharing page."
                )
            moved = self._kept.get(moves)
            name = moved["name"] if moved else name
            token, moment = secrets.token_urlsafe(32), self._clock()
            document = {
                "id": earlier["id"] if earlier else _id_for(name),
                "name": name,
                "secure": secure,
                # Only the digest is kept: whoever reads the file cannot act as the device.
                "token_sha256": _digest(token),
                "since": moment,
                "seen": moment,
                "revoked": False,
                "names": earlier.get("names", []) if earlier else [],
            }
            if moved and moved["id"] != document["id"]:
                names = dict.fromkeys((moved["id"], *moved.get("names", ()), *document["names"]))
                document["names"] = list(names)[:MOST_NAMES]
                # Over there it is another store of the same browser, with a count of its own.
                self._keep({**moved, "revoked": True, "taken_out": True, "moved": True})
            self._keep(document)
            return token, dict(document)

    def has_moved(self, device_id: str) -> bool:
        """Tell whether a device goes on over https, where it has another pass.

        Parameters
        ----------
        device_id : str

        Returns
        -------
        bool
        """
        with self._lock:
            return bool(self._kept.get(device_id, {}).get("moved"))

    def hear(self, device_id: str, inspection_id: str, said: Mapping[str, Any]) -> None:
        """Keep what a device says of itself: what it still holds, and whether it is ready.

        Parameters
        ----------
        device_id : str
            A device that is let in.
        inspection_id : str
            Of which it says it.
        said : mapping
            As the sharing page shows it.
        """
        with self._lock:
            device, moment = self._kept[device_id], self._clock()
            before = self._said.get(device_id, device.get("said", {}))
            older = before.get(inspection_id, {})
            self._said[device_id] = {**before, inspection_id: {**said, "at": moment}}
            # On disk so that a laptop that starts again still knows it; rarely, since it is said
            # every few seconds.
            changed = any(older.get(name) != said.get(name) for name in said)
            if changed or moment - older.get("kept", 0.0) > SEEN_EVERY:
                self._said[device_id][inspection_id]["kept"] = moment
                self._keep({**device, "said": self._said[device_id], "seen": moment})
            else:
                self._said[device_id][inspection_id]["kept"] = older["kept"]

    def names_of(
        self, device_id: str, asked: Iterable[str], tokens: Mapping[str, str] | None = None
    ) -> list[str]:
        """Return the names under which a browser may hand over: its own and those it used before.

        A browser comes back under another name when it was taken out of the list, was at another
        laptop or lost what it kept. An earlier name must not be one that is let in now, unless its
        token proves that it is the same browser; and one browser only may have it.

        Parameters
        ----------
        device_id : str
            A device that is let in.
        asked : iterable of str
            The names that it says to have used.
        tokens : mapping of str to str, optional
            The token of each of them that it still has.

        Returns
        -------
        list of str
        """
        with self._lock:
            device = self._kept[device_id]
            # Names of one browser before its storage was cleared, under which entries may still
            # arrive.
            names = list(device.get("names", ()))
            for name in sorted(set(asked) - {device_id, *names}):
                self._end_if_proved(name, (tokens or {}).get(name, ""))
                if len(names) < MOST_NAMES and self._is_free(name):
                    names.append(name)
            if names != device.get("names", []):
                self._keep({**device, "names": names})
            return [device_id, *(name for name in names if not self._is_let_in(name))]

    def _end_if_proved(self, name: str, token: str) -> None:
        """End a device's earlier name, if it proves by its token that it had it."""
        if token and self._earlier((name, token)):
            self._keep({**self._kept[name], "revoked": True, "taken_out": True})

    def _is_free(self, name: str) -> bool:
        """Whether a name is a browser's that is not let in, and that no other browser has."""
        let_in = filter(self._valid, self._kept.values())
        taken = any(name in device.get("names", ()) for device in let_in)
        return bool(BROWSER.fullmatch(name)) and not self._is_let_in(name) and not taken

    def _is_let_in(self, name: str) -> bool:
        """Whether a device of this name may read and write now."""
        device = self._kept.get(name)
        return device is not None and self._valid(device)

    def _earlier(self, before: tuple[str, str] | None) -> dict[str, Any] | None:
        """The device of an earlier pass, if its token proves it."""
        device = self._kept.get(before[0]) if before else None
        if device and hmac.compare_digest(device["token_sha256"], _digest(before[1])):
            return device
        return None

    def of_token(self, token: str) -> dict[str, Any] | None:
        """Return the device that has a token, if it may still come in; it counts as seen now.

        Parameters
        ----------
        token : str

        Returns
        -------
        dict or None
        """
        digest = _digest(token)
        with self._lock:
            for device in self._kept.values():
                if hmac.compare_digest(device["token_sha256"], digest) and self._valid(device):
                    return self._seen_now(device)
        return None

    def of_id(self, device_id: str) -> dict[str, Any] | None:
        """Return the device of an id, if it may still come in; it counts as seen now.

        Parameters
        ----------
        device_id : str

        Returns
        -------
        dict or None
        """
        with self._lock:
            device = self._kept.get(device_id)
            return self._seen_now(device) if device and self._valid(device) else None

    def all(self) -> list[dict[str, Any]]:
        """Return every device that was not taken out of the list, newest first.

        Returns
        -------
        list of dict
            Without what is kept of its token; ``expired`` is true once its thirty days are over.
        """
        with self._lock:
            kept = [device for device in self._kept.values() if not device.get("taken_out")]
            rows = [self._shown(device) for device in kept]
        return sorted(rows, key=lambda row: -row["since"])

    def _shown(self, device: dict[str, Any]) -> dict[str, Any]:
        """Return a device as the sharing page lists it, without its token's digest."""
        row = {key: value for key, value in device.items() if key != "token_sha256"}
        row["seen"] = self._seen.get(device["id"], device["seen"])
        row["said"] = self._said.get(device["id"], device.get("said", {}))
        row["expired"] = self._clock() > device["since"] + LIFE
        return row

    def revoke(self, device_id: str) -> None:
        """Let a device in no more; what it recorded stays."""
        with self._lock:
            if device_id in self._kept:
                self._keep({**self._kept[device_id], "revoked": True})

    def remove(self, device_id: str) -> None:
        """Take a device out of the list; it stays known, so that it can come back and hand over."""
        with self._lock:
            if device_id in self._kept:
                self._keep({**self._kept[device_id], "revoked": True, "taken_out": True})
            out = [device for device in self._kept.values() if device.get("taken_out")]
            # Those taken out stay known, so that a late entry of theirs is told from a stranger's.
            for device in sorted(out, key=lambda each: -each["since"])[MOST_TAKEN_OUT:]:
                del self._kept[device["id"]]
                self._catalogue.remove("devices", device["id"])

    def _valid(self, device: dict[str, Any]) -> bool:
        return not device["revoked"] and self._clock() <= device["since"] + LIFE

    def _seen_now(self, device: dict[str, Any]) -> dict[str, Any]:
        """Return a device with the time at which it was seen."""
        moment = self._clock()
        self._seen[device["id"]] = moment
        # Written now and then only: a disk write at each request would be felt.
        if moment - device["seen"] > SEEN_EVERY:
            self._keep({**device, "seen": moment})
        return dict(self._kept[device["id"]])

    def _keep(self, document: dict[str, Any]) -> None:
        """Keep a device on disk first, then in memory."""
        self._catalogue.put("devices", document)
        self._kept[document["id"]] = document


def _id_for(name: str) -> str:
    """Return a new id that begins like the name, so that a journal file can be recognised."""
    plain = re.sub(r"[^a-z0-9]+", "-", name.lower()).strip("-")[:20].strip("-") or "device"
    return f"{plain}-{secrets.token_hex(4)}"


def _digest(token: str) -> str:
    return hashlib.sha256(token.encode("utf-8", "replace")).hexdigest()
