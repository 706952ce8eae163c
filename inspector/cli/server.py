"""Starts the tool: takes the data folder and the port, opens the browser, serves."""

import threading
import webbrowser
from collections.abc import Callable
from contextlib import ExitStack
from dataclasses import dataclass
from pathlib import Path

from flask import Flask

from inspector import create_app
from inspector.record import folder_lock
from inspector.services import leftovers
from inspector.sharing import addresses
from inspector.sharing.network.ports import HOST, USUAL_PORT, listen
from inspector.sharing.network.servers import plain_server


@dataclass(frozen=True)
class SharingWanted:
    """That sharing is started at once, as the button on the first page does.

    Parameters
    ----------
    address : str or None
        IPv4; None for the only one that phones may be near.
    """

    address: str | None = None


def serve(
    data: Path,
    port: int | None,
    *,
    open_browser: bool = True,
    prepare: Callable[[Path], None] | None = None,
    share: SharingWanted | None = None,
) -> None:
    """Serve a data folder until stopped.

    Parameters
    ----------
    data : Path
        The data folder.
    port : int or None
        Also that of sharing; None for the usual one, or on this computer another where that is
        taken.
    open_browser : bool
    prepare : callable, optional
        Fills the data folder before it is opened.
    share : SharingWanted, optional
        Lets devices on the network join from the start.

    Raises
    ------
    InspectorError
        Where the folder, the port or the address cannot be used.
    """
    # Before the folder is locked: a wrong address is refused without touching anything.
    address = addresses.choose(share.address, addresses.own_addresses()) if share else ""
    with folder_lock.lock_folder(data), ExitStack() as open_things:
        bound = open_things.enter_context(listen(port))
        # Beside the start, because a shelf of inspections takes a while to look through.
        threading.Thread(target=leftovers.clear, args=[data], daemon=True).start()
        if prepare:
            prepare(data)
        start_page = f"http://{HOST}:{bound.getsockname()[1]}/"
        print(
            f"Data folder: {data}\nOpen {start_page} in a browser on this device. "
            "Stop with Ctrl-C.",
            flush=True,
        )
        # A shared port is fixed: what devices keep belongs to scheme, address and port together.
        app = create_app(data, SHARING_PORT=USUAL_PORT if port is None else port)
        open_things.callback(app.extensions["data_folder"].close)
        # Before the folder closes: it finishes the inspection that it is reading.
        open_things.callback(app.extensions["shelf"].close)
        open_things.callback(app.extensions["sharing"].stop)
        if address:
            _share(app, address)
        if open_browser:
            page = f"{start_page}sharing" if share else start_page
            # A moment later, when the server below answers.
            threading.Timer(0.3, webbrowser.open, [page]).start()
        plain_server(app, bound, app.config["MAX_CONTENT_LENGTH"]).run()


def _share(app: Flask, address: str) -> None:
    """Start sharing, and print where devices join and what does not work."""
    sharing = app.extensions["sharing"]
    shared = sharing.start(address)
    sharing.share_the_only(app.extensions["data_folder"].inspections.ids())
    notes = (shared.moved, shared.news, shared.no_https, shared.clock)
    for sentence in filter(None, notes):
        print(f"Note: {sentence}", flush=True)
    print(
        f"Shared with devices at {shared.origin}; "
        "the code to join is on the page /sharing of this device.",
        flush=True,
    )
