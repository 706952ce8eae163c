"""Servers of an application on one address: over http, and over https; each can be stopped."""

import ssl
import threading
from collections.abc import Callable
from pathlib import Path
from socket import socket
from typing import Any

from inspector.sharing.network import request_threads
from inspector.sharing.network.ports import taken

LARGEST_FROM_DEVICE = 26_000_000  # bytes
# Windows can watch 512 connections at once; others count open files, of which there are at
# least 1024.
MOST_CONNECTIONS = 480
SILENT_FOR = 30  # seconds
# How long a request that is being answered may take to end.
ENDS_WITHIN = 5  # seconds


def plain_server(app: Callable[..., Any], bound: socket, largest: int, sockets: dict | None = None):
    """Return a server over http on a listening socket.

    Parameters
    ----------
    app : callable
        A WSGI application.
    bound : socket
    largest : int
        Of a request's body [bytes].
    sockets : dict, optional
        Filled with what the server listens on.

    Returns
    -------
    waitress server
    """
    import waitress

    # An argument it has for tests, and the only door to its threads.
    return waitress.create_server(
        app,
        map=sockets,
        sockets=[bound],
        _dispatcher=request_threads.threads_apart(),
        max_request_body_size=largest,
        # No name of the server in its answers.
        ident=None,
        # A request that is not sent to its end holds a connection and no thread. There are far
        # more connections than any walk needs, and silent ones are closed soon.
        connection_limit=MOST_CONNECTIONS,
        channel_timeout=SILENT_FOR,
        cleanup_interval=SILENT_FOR // 3,
        asyncore_use_poll=True,
    )


def serve_plain(app: Callable[..., Any], bound: socket) -> Callable[[], None]:
    """Serve devices over http beside the running program.

    Parameters
    ----------
    app : callable
        A WSGI application.
    bound : socket
        It is closed when the server is stopped.

    Returns
    -------
    callable
        Stops it, and returns once nothing listens any more.
    """
    from waitress import wasyncore

    sockets: dict = {}
    server = plain_server(app, bound, LARGEST_FROM_DEVICE, sockets)
    loop = _run_beside(server.run)

    def stop() -> None:
        server.task_dispatcher.shutdown(cancel_pending=True, timeout=ENDS_WITHIN)
        # The loop closes its own sockets: nobody else knows when it is not waiting on them.
        server.trigger.pull_trigger(lambda: wasyncore.close_all(sockets))
        loop.join(ENDS_WITHIN)

    return stop


def serve_secure(
    app: Callable[..., Any], address: str, port: int, certificate: Path, key: Path
) -> Callable[[], None]:
    """Serve devices over https beside the running program.

    Parameters
    ----------
    app : callable
        A WSGI application.
    address : str
        IPv4.
    port : int
    certificate, key : Path
        PEM files.

    Returns
    -------
    callable
        Stops it, and returns once nothing listens any more.

    Raises
    ------
    NoPort
        Where the port cannot be had.
    """
    server = _tls_server(app, address, port, certificate, key)
    loop = _run_beside(server.serve)

    def stop() -> None:
        server.stop()
        loop.join(ENDS_WITHIN)

    return stop


def _tls_server(app, address: str, port: int, certificate: Path, key: Path):
    """Return a server that speaks TLS, ready to serve."""
    # Waitress speaks no TLS.
    from cheroot.ssl.builtin import BuiltinSSLAdapter
    from cheroot.wsgi import Server

    # It reads a request in the thread that answers it, so photos get no threads of their own here;
    # `photos.place_for_request` leaves half of them to pages.
    server = Server(
        (address, port), app, numthreads=64, request_queue_size=256, timeout=30, server_name=address
    )
    # The largest photo that is taken, with the form around it.
    server.max_request_body_size = LARGEST_FROM_DEVICE
    server.max_request_header_size = 64 * 1024
    server.ssl_adapter = BuiltinSSLAdapter(str(certificate), str(key))
    server.ssl_adapter.context.minimum_version = ssl.TLSVersion.TLSv1_2
    # A device that does not trust us yet breaks the handshake off: an everyday event, not worth
    # a line on the screen each time.
    server.error_log = lambda *_, **__: None
    try:
        server.prepare()
    except OSError as problem:
        raise taken(address, port, problem) from problem
    return server


def _run_beside(run: Callable[[], None]) -> threading.Thread:
    """Run a server in a thread of its own."""
    # A daemon thread ends with the process, whatever it is doing.
    thread = threading.Thread(target=run, daemon=True)
    thread.start()
    return thread
