"""Starts the tool: holds the data folder, has its ports, opens the browser, serves. On loopback, and where asked on one more address for devices."""

import contextlib
import socket
import threading
import webbrowser
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path

from flask import Flask

from inspector import addresses, create_app
from inspector.errors import InspectorError
from inspector.record import holding
from inspector.record.catalogue import Catalogue
from inspector.web.shared import Shared, Sharing, mode_for

USUAL_PORT = 5731
HOST = "127.0.0.1"
LARGEST_FROM_DEVICE = 26_000_000


class NoPort(InspectorError):
    """No port could be had."""


@dataclass(frozen=True)
class ShareAsked:
    """How sharing was asked for: an address and a mode ("basic", "full"), each None where the tool is to choose."""

    address: str | None = None
    mode: str | None = None


def serve(data: Path, port: int | None, *, open_browser: bool = True, first: Callable[[Path], None] | None = None, share: ShareAsked | None = None) -> None:
    """Serve the data folder until stopped; `first` may fill it before it is opened; `share` lets devices on the network join."""
    address = addresses.choose(share.address, addresses.own_addresses()) if share else ""
    # A shared port is fixed: what devices hold belongs to scheme, address and port together.
    with holding.hold(data), contextlib.ExitStack() as open_things:
        bound = open_things.enter_context(fixed(HOST, USUAL_PORT if port is None else port) if share else listening(port))
        if first:
            first(data)
        number = bound.getsockname()[1]
        print(f"Data folder: {data}\nOpen http://{HOST}:{number}/ in a browser on this device. Stop with Ctrl-C.", flush=True)
        app = open_things.enter_context(_shared_app(data, address, number, share)) if share else create_app(data)
        open_things.callback(app.extensions["desk"].close)
        if open_browser:
            threading.Timer(0.3, webbrowser.open, [f"http://{HOST}:{number}/{'sharing' if share else ''}"]).start()
        _waitress(app, bound, app.config["MAX_CONTENT_LENGTH"]).run()


def _waitress(app: Flask, bound: socket.socket, largest: int):
    import waitress

    return waitress.create_server(app, sockets=[bound], threads=8, max_request_body_size=largest, ident=None)


@contextlib.contextmanager
def _shared_app(data: Path, address: str, port: int, asked: ShareAsked) -> Iterator[Flask]:
    catalogue = Catalogue(data / "catalogue.json")
    mode = mode_for(catalogue, asked.mode)
    with contextlib.ExitStack() as open_things:
        if mode == "full":
            app = _full(data, address, port, open_things)
        else:
            app = create_app(data, SHARED=Shared(address, port, mode))
            server = _waitress(app, open_things.enter_context(fixed(address, port)), LARGEST_FROM_DEVICE)
            threading.Thread(target=server.run, daemon=True).start()
        _share_the_only_one(app)
        _tell(app.extensions["sharing"])
        yield app


def _full(data: Path, address: str, port: int, open_things: contextlib.ExitStack) -> Flask:
    from inspector import authority, fetching

    identity = authority.identity_for(data / "tls", address)
    app = create_app(data, SHARED=Shared(address, port, "full", identity.fingerprint, port + 1))
    fetch_server = _waitress(fetching.make(identity, address), open_things.enter_context(fixed(address, port + 1)), 1024)
    threading.Thread(target=fetch_server.run, daemon=True).start()
    server = _tls_server(app, address, port, identity)
    open_things.callback(server.stop)
    threading.Thread(target=server.serve, daemon=True).start()
    return app


def _tls_server(app: Flask, address: str, port: int, identity):
    # Waitress speaks no TLS. The extra brings a server that does.
    import ssl

    from cheroot.ssl.builtin import BuiltinSSLAdapter
    from cheroot.wsgi import Server

    server = Server((address, port), app, numthreads=16, request_queue_size=64, timeout=30, server_name=address)
    server.max_request_body_size, server.max_request_header_size = LARGEST_FROM_DEVICE, 64 * 1024
    server.ssl_adapter = BuiltinSSLAdapter(str(identity.certificate), str(identity.key))
    server.ssl_adapter.context.minimum_version = ssl.TLSVersion.TLSv1_2
    # A device that does not trust us yet breaks the handshake off: an everyday event, not worth a line on the screen each time.
    server.error_log = lambda *_, **__: None
    try:
        server.prepare()
    except OSError as problem:
        raise _taken(address, port, problem) from problem
    return server


def _tell(sharing: Sharing) -> None:
    shared, before = sharing.shared, sharing.catalogue.setting("share-origin")
    if before not in (None, shared.origin):
        print(f"Note: sharing was at {before} before. What a device still holds from then lies behind that address and is not seen at this one.", flush=True)
    sharing.catalogue.set("share-origin", shared.origin)
    print(f"Shared with devices at {shared.origin} ({shared.mode}); the code to join is on the page /sharing of this device.", flush=True)


def _share_the_only_one(app: Flask) -> None:
    # With one inspection there is nothing to choose; with several, the sharing page asks.
    ids, sharing = app.extensions["desk"].inspections.ids(), app.extensions["sharing"]
    if len(ids) == 1 and not sharing.inspections():
        sharing.share(ids[0])


def listening(port: int | None) -> socket.socket:
    """A listening socket on the port asked for, else the usual one, else any free one (and say so)."""
    try:
        return _bound(HOST, USUAL_PORT if port is None else port)
    except (OSError, OverflowError) as problem:
        if port is not None:
            raise NoPort(f"Port {port} cannot be had on this device ({problem}). Name another one with --port, or none.") from problem
        bound = _bound(HOST, 0)
        print(f"Port {USUAL_PORT} is taken by another program, so port {bound.getsockname()[1]} is used.", flush=True)
        return bound


def fixed(address: str, port: int) -> socket.socket:
    """A listening socket on this very port, or NoPort: another port would be another place for what the devices' browsers hold."""
    try:
        return _bound(address, port)
    except (OSError, OverflowError) as problem:
        raise _taken(address, port, problem) from problem


def _taken(address: str, port: int, problem: Exception) -> NoPort:
    return NoPort(f"Port {port} of {address} cannot be had ({problem}). Sharing needs the same port each time, since what devices hold belongs to it: "
                  "stop the program that has it. --port names another one, behind which what they still hold is out of sight.")


def _bound(address: str, port: int) -> socket.socket:
    bound = socket.socket()
    try:
        # Not on Windows: there the option would let two programs share one port.
        if not hasattr(socket, "SO_EXCLUSIVEADDRUSE"):
            bound.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        bound.bind((address, port))
        bound.listen(64)
    except BaseException:
        bound.close()
        raise
    return bound
