"""What of the application stands open to the network: http on one address, and https beside it."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

from inspector.sharing import authority
from inspector.sharing.network import servers
from inspector.sharing.network.ports import NoPort, listen_on
from inspector.values.errors import InspectorError


@dataclass(frozen=True)
class Shared:
    """Where this instance is shared.

    Parameters
    ----------
    address : str
        IPv4.
    port : int
        Of http.
    secure_port : int
        Of https, 0 where that is not served.
    fingerprint : str
        The SHA-256 of the authority's certificate, "" without https.
    news : str
        Since when and why the authority is another one than before.
    no_https : str
        Why https is not served, "" where it is.
    needs_new : bool
        Whether https would be served by a new authority.
    clock : str
        What is wrong with this computer's clock, "" for nothing.
    before : str
        Address and port at which this instance was shared before, "" for the same.
    """

    address: str
    port: int
    secure_port: int = 0
    fingerprint: str = ""
    news: str = ""
    no_https: str = ""
    needs_new: bool = False
    clock: str = ""
    before: str = ""

    @property
    def origin(self) -> str:
        """Scheme, address and port: what a browser's storage belongs to."""
        return f"http://{self.address}:{self.port}"

    @property
    def secure_origin(self) -> str:
        """The same over https, "" where that is not served."""
        return f"https://{self.address}:{self.secure_port}" if self.secure_port else ""

    @property
    def moved(self) -> str:
        """What became of phones that joined elsewhere before, "" where it is the same place."""
        if not self.before:
            return ""
        return (
            f"Sharing was at {self.before} before. What a phone recorded then and has not handed "
            "over yet is kept for that address and is not seen at this one."
        )


class Doors:
    """Opens an application to the network, and shuts it again.

    Parameters
    ----------
    app : callable
        A WSGI application.
    tls : Path
        Where the authority's files are kept.
    port : int
        Of http; the one after it is that of https.
    """

    def __init__(self, app: Callable[..., Any], tls: Path, port: int):
        self._app, self._tls, self._port = app, tls, port
        self._stops: list[Callable[[], None]] = []

    def open(self, address: str) -> Shared:
        """Serve devices on an address of this computer.

        Parameters
        ----------
        address : str
            IPv4.

        Returns
        -------
        Shared
            Without https where its port or a certificate cannot be had.

        Raises
        ------
        NoPort
            Where the port of http cannot be had.
        """
        bound = listen_on(address, self._port)
        self._stops.append(servers.serve_plain(self._app, bound))
        return self.open_secure(Shared(address, self._port), agreed=False)

    def open_secure(self, shared: Shared, *, agreed: bool) -> Shared:
        """Serve devices over https as well.

        Parameters
        ----------
        shared : Shared
            What is served without.
        agreed : bool
            Whether a new authority may take the place of one that does not serve any more.

        Returns
        -------
        Shared
            With https, or with why not.
        """
        port = shared.port + 1
        try:
            identity = authority.identity_for(self._tls, shared.address, agreed=agreed)
            paths = identity.certificate, identity.key
            stop = servers.serve_secure(self._app, shared.address, port, *paths)
        except authority.AuthorityKept as problem:
            return replace(shared, no_https=str(problem), needs_new=True)
        # What cannot be read, written or bound costs only the optional step, never the sharing.
        except (InspectorError, NoPort, OSError) as problem:
            return replace(shared, no_https=str(problem), needs_new=False)
        self._stops.append(stop)
        return replace(
            shared,
            secure_port=port,
            fingerprint=identity.fingerprint,
            news=identity.news,
            clock=authority.clock_warning(identity),
            no_https="",
            needs_new=False,
        )

    def shut(self) -> None:
        """Let nobody on the network in any more; returns once nothing listens."""
        while self._stops:
            self._stops.pop()()
