"""The commands that start the tool: on the user's own data, and on the invented portfolio."""

from argparse import ArgumentParser, Namespace

from inspector import places
from inspector.cli.command_options import add_command, data_option, folder_path
from inspector.values.errors import InspectorError


def add_to(commands) -> None:
    """Add the commands of this module."""
    shared = (data_option(), _serving_options())
    add_command(commands, "serve", serve, "start, and open the browser", *shared)
    add_command(commands, "demo", demo, "the same on an invented portfolio", *shared)


def _serving_options() -> ArgumentParser:
    """Return the options that serve and demo share."""
    options = ArgumentParser(add_help=False)
    text = "port (default: 5731, another if that is taken)"
    options.add_argument("--port", type=int, default=None, help=text)
    options.add_argument("--no-browser", action="store_true", help="do not open the browser")
    text = "let phones join from the start, as the button on the first page does"
    options.add_argument("--share", action="store_true", help=text)
    text = "with --share: the one address of this computer to share on"
    options.add_argument("--address", default=None, help=text)
    return options


def serve(options: Namespace) -> None:
    """Start on the user's own data."""
    # Flask and the server are imported only by the commands that serve.
    from inspector.cli.server import serve as start

    start(
        folder_path(options),
        options.port,
        open_browser=not options.no_browser,
        share=_sharing_wanted(options),
    )


def demo(options: Namespace) -> None:
    """Start on the invented portfolio, made anew where it is not there yet."""
    from inspector.cli.server import serve as start
    from inspector.demo.portfolio import prepare_in

    start(
        folder_path(options, places.user_data().with_name("vessel-inspections-demo")),
        options.port,
        open_browser=not options.no_browser,
        prepare=prepare_in,
        share=_sharing_wanted(options),
    )


def _sharing_wanted(options: Namespace):
    """How sharing was asked for, or None; an address that means nothing alone is refused."""
    from inspector.cli.server import SharingWanted

    if options.share:
        return SharingWanted(options.address)
    if options.address:
        raise InspectorError("--address says where to share; add --share, or leave it out.")
    return None
