"""This machine's own addresses, and which one of them to share on. IPv4 only: it is what a hotspot or a pocket router hands out."""

import ipaddress
import socket
import struct

from inspector.errors import InspectorError

_GET_ADDRESS = 0x8915  # SIOCGIFADDR of Linux


class NoAddress(InspectorError):
    """No address to share on could be told."""


def own_addresses() -> list[str]:
    """The IPv4 addresses of this machine that other devices could reach, in order; loopback left out."""
    found = _of_interfaces() | _of_name() | _of_routes()
    usable = {one for one in found if not ipaddress.ip_address(one).is_loopback and not ipaddress.ip_address(one).is_unspecified}
    return sorted(usable, key=ipaddress.ip_address)


def choose(asked: str | None, own: list[str]) -> str:
    """The one address to share on: the one asked for, else the only private one of `own`; NoAddress lists them where that does not tell."""
    listed = ", ".join(own) or "none"
    if asked is not None:
        try:
            given = ipaddress.ip_address(asked)
        except ValueError as problem:
            raise NoAddress(f"{asked!r} is not an address; those of this computer are: {listed}.") from problem
        if given.version != 4 or given.is_unspecified:
            raise NoAddress(f"{asked} cannot be shared on; name one address of this computer: {listed}.")
        if asked not in own and not given.is_loopback:
            raise NoAddress(f"{asked} is not an address of this computer; those it has are: {listed}.")
        return str(given)
    private = [one for one in own if ipaddress.ip_address(one).is_private]
    if len(private) == 1:
        return private[0]
    if not private:
        raise NoAddress(f"This computer has no address on a private network (it has: {listed}). Start its hotspot or join the router, then share.")
    raise NoAddress(f"This computer has several addresses: {', '.join(private)}. Say on which one to share, such as --address {private[0]}.")


def _of_interfaces() -> set[str]:
    try:
        import fcntl

        names = [name for _, name in socket.if_nameindex()]
    except (ImportError, OSError):
        return set()
    found = set()
    with socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as asking:
        for name in names:
            try:
                answer = fcntl.ioctl(asking.fileno(), _GET_ADDRESS, struct.pack("256s", name.encode()[:15]))
            except OSError:
                continue
            found.add(socket.inet_ntoa(answer[20:24]))
    return found


def _of_name() -> set[str]:
    try:
        return set(socket.gethostbyname_ex(socket.gethostname())[2])
    except OSError:
        return set()


def _of_routes() -> set[str]:
    # Connecting a datagram socket sends nothing; it only makes the system choose the address it would send from.
    found = set()
    for target in ("10.255.255.254", "172.31.255.254", "192.168.255.254", "192.0.2.1"):
        with socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as asking:
            try:
                asking.connect((target, 9))
                found.add(asking.getsockname()[0])
            except OSError:
                continue
    return found
