"""The ports to listen on: on loopback for this computer, on one more address for devices."""

import socket

from inspector.values.errors import InspectorError

USUAL_PORT = 5731
HOST = "127.0.0.1"


class NoPort(InspectorError):
    """A port cannot be used."""


def listen(port: int | None) -> socket.socket:
    """Listen on loopback.

    Parameters
    ----------
    port : int or None
        The port that was asked for; None for the usual one, or any free one (which is printed)
        where that is taken.

    Returns
    -------
    socket.socket

    Raises
    ------
    NoPort
        Where the port that was asked for cannot be used.
    """
    try:
        return _bound(HOST, USUAL_PORT if port is None else port)
    except (OSError, OverflowError) as problem:
        # A port that was asked for is not changed silently: a bookmark may point to it.
        if port is not None:
            sentence = (
                f"Port {port} cannot be had on this device ({problem}). "
                "Name another one with --port, or none."
            )
            raise NoPort(sentence) from problem
    bound = _bound(HOST, 0)
    number = bound.getsockname()[1]
    print(f"Port {USUAL_PORT} is taken by another program, so port {number} is used.", flush=True)
    return bound


def listen_on(address: str, port: int) -> socket.socket:
    """Listen on this very port.

    Parameters
    ----------
    address : str
        IPv4.
    port : int

    Returns
    -------
    socket.socket

    Raises
    ------
    NoPort
        Another port would be another place for what the devices' browsers keep, so none is tried.
    """
    try:
        return _bound(address, port)
    except (OSError, OverflowError) as problem:
        raise taken(address, port, problem) from problem


def taken(address: str, port: int, problem: Exception) -> NoPort:
    """Return the error for a port that sharing cannot use.

    Parameters
    ----------
    address : str
    port : int
    problem : Exception
        As the system reports it.

    Returns
    -------
    NoPort
        To be raised by the caller.
    """
    return NoPort(
        f"Port {port} of {address} cannot be had ({problem}). Sharing needs the same port each "
        "time, since what devices keep belongs to it: stop the program that has it. --port names "
        "another one, from which what they still keep cannot be reached."
    )


def _bound(address: str, port: int) -> socket.socket:
    """Return a socket that listens, closed again where it cannot."""
    bound = socket.socket()
    try:
        # Not on Windows: there the option would let two programs share one port.
        if not hasattr(socket, "SO_EXCLUSIVEADDRUSE"):
            bound.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        bound.bind((address, port))
        bound.listen(64)
    # Also for Ctrl-C: an open socket would keep the port until the process ends.
    except BaseException:
        bound.close()
        raise
    return bound
