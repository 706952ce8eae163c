"""What is shared, with whom and how: the one chosen address, the mode of each shared inspection, the pairing and the devices of a running instance."""

from dataclasses import dataclass
from typing import Any

from flask import current_app

from inspector.errors import InspectorError
from inspector.record.catalogue import Catalogue
from inspector.web.devices import Devices
from inspector.web.pairing import Pairing


class OtherMode(InspectorError):
    """An inspection is shared in the other mode already."""


@dataclass(frozen=True)
class Shared:
    """Where this instance is shared: an IPv4 address, a port, "basic" (http) or "full" (https); with full, the SHA-256 of the authority's certificate and
    the port where it can be fetched.
    """

    address: str
    port: int
    mode: str
    fingerprint: str = ""
    fetch_port: int = 0

    @property
    def origin(self) -> str:
        """Scheme, address and port: what a browser's storage belongs to."""
        return f"{'https' if self.mode == 'full' else 'http'}://{self.address}:{self.port}"


class Sharing:
    """The sharing of one running instance; `shared` is None where nothing but this computer is served."""

    def __init__(self, catalogue: Catalogue, shared: Shared | None):
        self.catalogue, self.shared = catalogue, shared
        self.pairing, self.devices = Pairing(), Devices(catalogue)

    def inspections(self) -> dict[str, dict[str, Any]]:
        """Inspection id -> {"id", "mode"} of those that devices may reach."""
        return {one["id"]: one for one in self.catalogue.all("shared")}

    def share(self, inspection_id: str) -> None:
        """Let devices reach an inspection, in the mode of this instance; OtherMode if it is recorded with the other one."""
        if self.shared is None:
            raise InspectorError("Nothing is shared now. Stop the inspector and start it with: inspector serve --share")
        refuse_other_mode(self.catalogue, self.shared.mode, inspection_id)
        self.catalogue.put("shared", {"id": inspection_id, "mode": self.shared.mode})

    def end(self, inspection_id: str) -> None:
        """Let devices reach an inspection no more."""
        self.catalogue.remove("shared", inspection_id)


def refuse_other_mode(catalogue: Catalogue, mode: str, only: str = "") -> None:
    """OtherMode if a shared inspection (the one of id `only`, if given) is recorded with a mode other than `mode`."""
    for one in catalogue.all("shared"):
        if one["mode"] != mode and only in ("", one["id"]):
            raise OtherMode(
                f"Inspection {one['id']} is shared in mode {one['mode']}, and what devices still hold lies behind that address; "
                f"start with --mode {one['mode']}, or end its sharing on the sharing page first."
            )


def mode_for(catalogue: Catalogue, asked: str | None) -> str:
    """The mode to share in: the one asked for, else the one that shared inspections have, else basic; OtherMode where these differ."""
    kept = sorted({one["mode"] for one in catalogue.all("shared")})
    mode = asked or (kept[0] if kept else "basic")
    refuse_other_mode(catalogue, mode)
    return mode


def sharing() -> Sharing:
    """The running instance's sharing."""
    return current_app.extensions["sharing"]
