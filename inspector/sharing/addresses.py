"""This computer's own addresses, and which one of them to share on.

IPv4 only: it is what a hotspot or a pocket router hands out.
"""

import ipaddress
import socket
import struct

from inspector.values.errors import InspectorError

_GET_ADDRESS = 0x8915  # SIOCGIFADDR of Linux
# One address of each private range and one of the documentation range, which nobody has.
_TARGETS = ("10.255.255.254", "172.31.255.254", "192.168.255.254", "192.0.2.1")


class NoAddress(InspectorError):
    """There is no address to share on, or more than one."""


def own_addresses() -> list[str]:
    """Return the IPv4 addresses of this computer that other devices could reach.

    Returns
    -------
    list of str
        In order, without loopback.
    """
    found = _of_interfaces() | _of_name() | _of_routes()
    addresses = sorted(ipaddress.ip_address(address) for address in found)
    # Loopback is this computer alone, and unspecified would be all networks at once.
    usable = [each for each in addresses if not each.is_loopback and not each.is_unspecified]
    return [str(address) for address in usable]


def choose(asked: str | None, own: list[str]) -> str:
    """Return the one address to share on.

    Parameters
    ----------
    asked : str or None
        The address that was asked for.
    own : list of str
        The addresses of this computer.

    Returns
    -------
    str
        The one asked for, else the only private one.

    Raises
    ------
    NoAddress
        With the addresses that there are.
    """
    if asked is not None:
        return _checked(asked, own)
    private = [address for address in own if ipaddress.ip_address(address).is_private]
    # One private address needs no question; of several, only a person knows which network the
    # phones are on.
    if len(private) == 1:
        return private[0]
    if not private:
        raise NoAddress(
            f"This computer has no address on a private network (it has: {_listed(own)}). "
            "Start its hotspot or join the router, then share."
        )
    raise NoAddress(
        f"This computer has several addresses: {', '.join(private)}. "
        f"Say on which one to share, such as --address {private[0]}."
    )


def _checked(asked: str, own: list[str]) -> str:
    """The address that was asked for, if this computer has it."""
    try:
        given = ipaddress.ip_address(asked)
    except ValueError as problem:
        sentence = f"{asked!r} is not an address; those of this computer are: {_listed(own)}."
        raise NoAddress(sentence) from problem
    if given.version != 4 or given.is_unspecified:
        raise NoAddress(
            f"{asked} cannot be shared on; name one address of this computer: {_listed(own)}."
        )
    if asked not in own and not given.is_loopback:
        raise NoAddress(
            f"{asked} is not an address of this computer; those it has are: {_listed(own)}."
        )
    return str(given)


def _listed(own: list[str]) -> str:
    return ", ".join(own) or "none"


def _of_interfaces() -> set[str]:
    """What each interface of a Unix has; elsewhere nothing."""
    try:
        import fcntl

        names = [name for _, name in socket.if_nameindex()]
    except (ImportError, OSError):
        return set()
    found = set()
    with socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as asking:
        for name in names:
            # Linux takes names of interfaces of 15 bytes at most.
            request = struct.pack("256s", name.encode()[:15])
            try:
                answer = fcntl.ioctl(asking.fileno(), _GET_ADDRESS, request)
            except OSError:
                # An interface without an address.
                continue
            found.add(socket.inet_ntoa(answer[20:24]))
    return found


def _of_name() -> set[str]:
    """Return the addresses that this computer's own name resolves to."""
    try:
        return set(socket.gethostbyname_ex(socket.gethostname())[2])
    except OSError:
        return set()


def _of_routes() -> set[str]:
    """The addresses that would be sent from, on systems that name no interfaces."""
    # Connecting a datagram socket sends nothing; it only makes the system choose its address.
    found = set()
    for target in _TARGETS:
        with socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as asking:
            try:
                asking.connect((target, 9))
                found.add(asking.getsockname()[0])
            except OSError:
                continue
    return found
