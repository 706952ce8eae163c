"""What is shared and how: the chosen address, the mode of each inspection, pairing and devices."""

from dataclasses import dataclass
from typing import Any

from inspector.record.catalogue import Catalogue
from inspector.sharing.devices import Devices
from inspector.sharing.pairing import Pairing
from inspector.values.errors import InspectorError


class OtherMode(InspectorError):
    """An inspection is shared in the other mode already."""


@dataclass(frozen=True)
class Shared:
    """Where this instance is shared.

    Parameters
    ----------
    address : str
        IPv4.
    port : int
    mode : str
        "basic" (http) or "full" (https).
    fingerprint : str
        With full, the SHA-256 of the authority's certificate.
    fetch_port : int
        With full, the port where that certificate can be fetched.
    news : str
        With full, since when and why the authority is another one than before.
    """

    address: str
    port: int
    mode: str
    fingerprint: str = ""
    fetch_port: int = 0
    news: str = ""

    @property
    def fetch_address(self) -> str:
        """Where a device that does not trust the authority yet can fetch it, "" for nowhere."""
        return f"http://{self.address}:{self.fetch_port}/" if self.fetch_port else ""

    @property
    def origin(self) -> str:
        """Scheme, address and port: what a browser's storage belongs to."""
        return f"{'https' if self.mode == 'full' else 'http'}://{self.address}:{self.port}"


class Sharing:
    """The sharing of one running instance.

    Parameters
    ----------
    catalogue : Catalogue
    shared : Shared or None
        None where nothing but this computer is served.
    """

    def __init__(self, catalogue: Catalogue, shared: Shared | None):
        self.catalogue, self.shared = catalogue, shared
        self.pairing, self.devices = Pairing(), Devices(catalogue)

    def inspections(self) -> dict[str, dict[str, Any]]:
        """Return the inspections that devices may reach.

        Returns
        -------
        dict
            Inspection id -> its document, with ``id`` and ``mode``.
        """
        return {document["id"]: document for document in self.catalogue.all("shared")}

    def share(self, inspection_id: str) -> None:
        """Let devices reach an inspection, in the mode of this instance.

        Parameters
        ----------
        inspection_id : str

        Raises
        ------
        OtherMode
            Where it is shared in the other mode already.
        InspectorError
            Where this instance is not shared.
        """
        if self.shared is None:
            raise not_shared()
        refuse_other_mode(self.catalogue, self.shared.mode, inspection_id)
        self.catalogue.put("shared", {"id": inspection_id, "mode": self.shared.mode})

    def end(self, inspection_id: str) -> None:
        """Let devices reach an inspection no more."""
        self.catalogue.remove("shared", inspection_id)


def not_shared() -> InspectorError:
    """Return the error for what needs sharing, with how to start it; to be raised by the caller."""
    return InspectorError(
        "Nothing is shared now. Stop the inspector and start it with: inspector serve --share"
    )


def refuse_other_mode(catalogue: Catalogue, mode: str, only: str = "") -> None:
    """Refuse to share in a mode while an inspection is shared in the other one.

    Parameters
    ----------
    catalogue : Catalogue
    mode : str
        "basic" or "full".
    only : str
        The id of the one inspection to look at, "" for every one.

    Raises
    ------
    OtherMode
        With the mode to use.
    """
    for document in catalogue.all("shared"):
        # A browser keeps its storage by address: what was recorded under http is not there under
        # https.
        if document["mode"] != mode and only in ("", document["id"]):
            other = document["mode"]
            raise OtherMode(
                f"Inspection {document['id']} is shared in mode {other}, and what devices still "
                f"keep belongs to that address; start with --mode {other}, or end its sharing "
                "on the sharing page first."
            )


def mode_for(catalogue: Catalogue, asked: str | None) -> str:
    """Return the mode to share in.

    Parameters
    ----------
    catalogue : Catalogue
    asked : str or None
        The mode that was asked for.

    Returns
    -------
    str
        The one asked for, else the one that shared inspections have, else "basic".

    Raises
    ------
    OtherMode
        Where these differ.
    """
    kept = sorted({document["mode"] for document in catalogue.all("shared")})
    mode = asked or (kept[0] if kept else "basic")
    refuse_other_mode(catalogue, mode)
    return mode
