"""Starts the tool on loopback: holds the data folder, finds a port, opens the browser, serves with waitress."""

import socket
import threading
import webbrowser
from collections.abc import Callable
from pathlib import Path

from inspector import create_app
from inspector.errors import InspectorError
from inspector.record import holding

USUAL_PORT = 5731
HOST = "127.0.0.1"


class NoPort(InspectorError):
    """No port could be had."""


def serve(data: Path, port: int | None, *, open_browser: bool = True, first: Callable[[Path], None] | None = None) -> None:
    """Serve the data folder until stopped; `first` may fill it before it is opened."""
    import waitress

    with holding.hold(data), listening(port) as bound:
        if first:
            first(data)
        app = create_app(data)
        address = f"http://{HOST}:{bound.getsockname()[1]}/"
        print(f"Data folder: {data}\nOpen {address} in a browser on this device. Stop with Ctrl-C.", flush=True)
        server = waitress.create_server(app, sockets=[bound], threads=8, max_request_body_size=app.config["MAX_CONTENT_LENGTH"], ident=None)
        if open_browser:
            threading.Timer(0.3, webbrowser.open, [address]).start()
        try:
            server.run()
        finally:
            app.extensions["desk"].close()


def listening(port: int | None) -> socket.socket:
    """A listening socket on the port asked for, else the usual one, else any free one (and say so)."""
    try:
        return _bound(USUAL_PORT if port is None else port)
    except (OSError, OverflowError) as problem:
        if port is not None:
            raise NoPort(f"Port {port} cannot be had on this device ({problem}). Name another one with --port, or none.") from problem
        bound = _bound(0)
        print(f"Port {USUAL_PORT} is taken by another program, so port {bound.getsockname()[1]} is used.", flush=True)
        return bound


def _bound(port: int) -> socket.socket:
    bound = socket.socket()
    try:
        # Not on Windows: there the option would let two programs share one port.
        if not hasattr(socket, "SO_EXCLUSIVEADDRUSE"):
            bound.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        bound.bind((HOST, port))
        bound.listen(64)
    except BaseException:
        bound.close()
        raise
    return bound
