"""Serves devices on one more address: over http (basic), or over https (full)."""

import contextlib
import sys
import threading
from collections.abc import Callable, Iterator
from contextlib import ExitStack
from dataclasses import dataclass
from pathlib import Path
from socket import socket

from flask import Flask

from inspector import create_app
from inspector.cli.ports import listen_on, taken
from inspector.record.catalogue import Catalogue
from inspector.sharing.shared_inspections import Shared, Sharing, mode_for

LARGEST_FROM_DEVICE = 26_000_000  # bytes
# Windows can watch 512 connections at once; others count open files, of which there are at
# least 1024.
MOST_CONNECTIONS = 480
SILENT_FOR = 30  # seconds


@dataclass(frozen=True)
class SharingWanted:
    """How sharing was asked for; the tool chooses what is None.

    Parameters
    ----------
    address : str or None
        IPv4.
    mode : str or None
        "basic" or "full".
    new_authority : bool
        Whether a new authority is agreed to where the old one does not serve; else it is asked.
    """

    address: str | None = None
    mode: str | None = None
    new_authority: bool = False


@contextlib.contextmanager
def shared_app(data: Path, address: str, port: int, wanted: SharingWanted) -> Iterator[Flask]:
    """The application, served to devices on an address of this computer while the context lasts.

    Parameters
    ----------
    data : Path
        The data folder.
    address : str
        IPv4.
    port : int
    wanted : SharingWanted

    Yields
    ------
    Flask
    """
    mode = mode_for(Catalogue(data / "catalogue.json"), wanted.mode)
    with ExitStack() as open_things:
        if mode == "full":
            agreed = _asked if not wanted.new_authority else (lambda _: True)
            app = _start_full(data, address, port, open_things, agreed)
        else:
            app = _start_basic(data, address, port, open_things)
        _share_the_only_inspection(app)
        _print_origin(app.extensions["sharing"])
        yield app


def waitress_server(app: Flask, bound: socket, largest: int):
    """Return a server of an application on a listening socket.

    Parameters
    ----------
    app : Flask
    bound : socket
    largest : int
        Of a request's body [bytes].

    Returns
    -------
    waitress server
    """
    import waitress

    from inspector.cli import request_threads

    # An argument it has for tests, and the only door to its threads.
    return waitress.create_server(
        app,
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


def _start_basic(data: Path, address: str, port: int, open_things: ExitStack) -> Flask:
    """Serve the network in plain http beside the loopback, and return the application."""
    app = create_app(data, SHARED=Shared(address, port, "basic"))
    bound = open_things.enter_context(listen_on(address, port))
    _run_beside(waitress_server(app, bound, LARGEST_FROM_DEVICE).run)
    return app


def _asked(why: str) -> bool:
    """Whether the person at the terminal agrees to a new authority; nobody there does not."""
    # A service has nobody to ask, and must not make a new authority by itself.
    if not sys.stdin.isatty():
        return False
    print(
        f"Full sharing needs a new authority: {why}.\n"
        "Each device that trusts the old one must install the new one once.",
        flush=True,
    )
    return input("Make a new one? [y/N] ").strip().lower() in ("y", "yes")


def _start_full(
    data: Path, address: str, port: int, open_things: ExitStack, agreed: Callable[[str], bool]
) -> Flask:
    """Serve devices over https, and the certificate's page beside it over http."""
    # These need the packages of the extra "share".
    from inspector.sharing import authority, certificate_page

    identity = authority.identity_for(data / "tls", address, agreed=agreed)
    for sentence in filter(None, (identity.news, authority.clock_warning(identity))):
        print(f"Authority: {sentence}", flush=True)
    shared = Shared(address, port, "full", identity.fingerprint, port + 1, identity.news)
    app = create_app(data, SHARED=shared)
    bound = open_things.enter_context(listen_on(address, port + 1))
    page = certificate_page.make(identity, address)
    # In plain http, because a device that does not trust the authority yet can open nothing else.
    _run_beside(waitress_server(page, bound, largest=1024).run)
    server = _tls_server(app, address, port, identity)
    open_things.callback(server.stop)
    _run_beside(server.serve)
    return app


def _run_beside(run) -> None:
    """Run a server in a thread of its own."""
    # A daemon thread ends with the process, whatever it is doing.
    threading.Thread(target=run, daemon=True).start()


def _tls_server(app: Flask, address: str, port: int, identity):
    """Return a server that speaks TLS, ready to serve."""
    # Waitress speaks no TLS. The extra brings a server that does.
    import ssl

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
    server.ssl_adapter = BuiltinSSLAdapter(str(identity.certificate), str(identity.key))
    server.ssl_adapter.context.minimum_version = ssl.TLSVersion.TLSv1_2
    # A device that does not trust us yet breaks the handshake off: an everyday event, not worth
    # a line on the screen each time.
    server.error_log = lambda *_, **__: None
    try:
        server.prepare()
    except OSError as problem:
        raise taken(address, port, problem) from problem
    return server


def _print_origin(sharing: Sharing) -> None:
    """Print where devices join, and warn where the address was another one before."""
    origin = sharing.shared.origin
    before = sharing.catalogue.setting("share-origin")
    # A browser keeps what it records by origin, so a changed one hides what was not handed over.
    if before not in (None, origin):
        print(
            f"Note: sharing was at {before} before. What a device recorded then and has not handed "
            "over yet is kept for that address and is not seen at this one.",
            flush=True,
        )
    sharing.catalogue.set("share-origin", origin)
    print(
        f"Shared with devices at {origin} ({sharing.shared.mode}); "
        "the code to join is on the page /sharing of this device.",
        flush=True,
    )


def _share_the_only_inspection(app: Flask) -> None:
    """Share the inspection of a folder that has one, unless something is shared already."""
    # With one inspection there is nothing to choose; with several, the sharing page asks.
    sharing = app.extensions["sharing"]
    ids = app.extensions["data_folder"].inspections.ids()
    if len(ids) == 1 and not sharing.inspections():
        sharing.share(ids[0])
