"""Starts the tool: takes the data folder and the ports, opens the browser, serves."""

import threading
import webbrowser
from collections.abc import Callable
from contextlib import ExitStack
from pathlib import Path

from inspector import create_app
from inspector.cli.ports import HOST, USUAL_PORT, listen, listen_on
from inspector.cli.shared_server import SharingWanted, shared_app, waitress_server
from inspector.record import folder_lock
from inspector.services import leftovers
from inspector.sharing import addresses


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
        None for the usual one, or another where that is taken.
    open_browser : bool
    prepare : callable, optional
        Fills the data folder before it is opened.
    share : SharingWanted, optional
        Lets devices on the network join.

    Raises
    ------
    InspectorError
        Where the folder, the port or the address cannot be used.
    """
    # Before the folder is locked: a wrong address is refused without touching anything.
    address = addresses.choose(share.address, addresses.own_addresses()) if share else ""
    with folder_lock.lock_folder(data), ExitStack() as open_things:
        # A shared port is fixed: what devices keep belongs to scheme, address and port together.
        bound = listen_on(HOST, USUAL_PORT if port is None else port) if share else listen(port)
        open_things.enter_context(bound)
        # Beside the start, because a shelf of inspections takes a while to look through.
        threading.Thread(target=leftovers.clear, args=[data], daemon=True).start()
        if prepare:
            prepare(data)
        number = bound.getsockname()[1]
        start_page = f"http://{HOST}:{number}/"
        print(
            f"Data folder: {data}\nOpen {start_page} in a browser on this device. "
            "Stop with Ctrl-C.",
            flush=True,
        )
        if share:
            app = open_things.enter_context(shared_app(data, address, number, share))
        else:
            app = create_app(data)
        open_things.callback(app.extensions["data_folder"].close)
        # Before the folder closes: it finishes the inspection that it is reading.
        open_things.callback(app.extensions["shelf"].close)
        if open_browser:
            page = f"{start_page}sharing" if share else start_page
            # A moment later, when the server below answers.
            threading.Timer(0.3, webbrowser.open, [page]).start()
        waitress_server(app, bound, app.config["MAX_CONTENT_LENGTH"]).run()
