"""What is shared and how: the open doors, the inspections behind them, pairing and devices."""

import threading
from collections.abc import Callable
from dataclasses import replace
from typing import Any

from inspector.record.catalogue import Catalogue
from inspector.sharing.devices import Devices
from inspector.sharing.network.doors import Doors, Shared
from inspector.sharing.network_name import NetworkName
from inspector.sharing.pairing import Pairing
from inspector.values.errors import InspectorError

# The setting that says where devices joined last; its place in the address is kept from then on.
_BEFORE = "share-origin"


class Sharing:
    """The sharing of one running instance.

    Parameters
    ----------
    catalogue : Catalogue
    doors : Doors, optional
        What sharing opens; without them it cannot be started.
    shared : Shared, optional
        Where the instance is shared already.
    """

    def __init__(
        self, catalogue: Catalogue, doors: Doors | None = None, shared: Shared | None = None
    ):
        self.catalogue, self.shared, self._doors = catalogue, shared, doors
        self.pairing, self.devices = Pairing(), Devices(catalogue)
        self.network = NetworkName(catalogue)
        # Told where the instance is shared now, None for nowhere.
        self.told: Callable[[Shared | None], None] = lambda _: None
        # Two taps on a button are one after the other.
        self._lock = threading.Lock()

    def start(self, address: str) -> Shared:
        """Let devices on a network of this computer join.

        Parameters
        ----------
        address : str
            IPv4, one of this computer's own.

        Returns
        -------
        Shared

        Raises
        ------
        NoPort
            Where something else has the port.
        """
        with self._lock:
            if self.shared is not None and self.shared.address == address:
                return self.shared
            self._stop()
            self.shared = self._remembered(self._open_doors().open(address))
            self.told(self.shared)
            return self.shared

    def agree_to_new_authority(self) -> None:
        """Serve https with a new authority, which each device that trusted the old one installs."""
        with self._lock:
            if self.shared is None:
                raise not_shared()
            if not self.shared.secure_port:
                self.shared = self._open_doors().open_secure(self.shared, agreed=True)

    def stop(self) -> None:
        """Let nobody on the network in any more; returns once nothing listens."""
        with self._lock:
            self._stop()

    def _stop(self) -> None:
        self.pairing.end()
        self.network.forget_what_is_not_kept()
        if self._doors is not None:
            self._doors.shut()
        if self.shared is not None:
            self.shared = None
            self.told(None)

    def _open_doors(self) -> Doors:
        if self._doors is None:
            raise InspectorError("This instance was started without a way to share.")
        return self._doors

    def _remembered(self, shared: Shared) -> Shared:
        """Note where devices join now, and say where it was another place before."""
        here = f"{shared.address}:{shared.port}"
        # A browser keeps what it records by address and port, so what was not handed over under
        # others is out of sight here.
        # Once it was kept with its scheme.
        before = str(self.catalogue.setting(_BEFORE, here)).rpartition("/")[2]
        self.catalogue.set(_BEFORE, here)
        return replace(shared, before=before if before != here else "")

    def inspections(self) -> dict[str, dict[str, Any]]:
        """Return the inspections that devices may reach.

        Returns
        -------
        dict
            Inspection id -> its document, with ``id``.
        """
        return {document["id"]: document for document in self.catalogue.all("shared")}

    def share(self, inspection_id: str) -> None:
        """Let devices reach an inspection.

        Parameters
        ----------
        inspection_id : str

        Raises
        ------
        InspectorError
            Where this instance is not shared.
        """
        if self.shared is None:
            raise not_shared()
        self.catalogue.put("shared", {"id": inspection_id})

    def share_the_only(self, inspection_ids: list[str]) -> None:
        """Share the inspection of a folder that has one, unless something is shared already.

        Parameters
        ----------
        inspection_ids : list of str
            All that the folder has: of several, a person says which.
        """
        if len(inspection_ids) == 1 and not self.inspections():
            self.share(inspection_ids[0])

    def end(self, inspection_id: str) -> None:
        """Let devices reach an inspection no more."""
        self.catalogue.remove("shared", inspection_id)


def not_shared() -> InspectorError:
    """Return the error for what needs sharing, with how to start it; to be raised by the caller."""
    return InspectorError(
        "Nothing is shared now. On the first page of this computer, tap “share with phones”."
    )
