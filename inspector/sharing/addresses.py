"""This computer's own addresses, in words, and which one of them to share on.

IPv4 only: it is what a hotspot or a pocket router hands out.
"""

import ipaddress
import re
import socket
from dataclasses import dataclass

from inspector.sharing.tls_certificates import HOTSPOTS
from inspector.values.errors import InspectorError

# One address of each private range and one of the documentation range, which nobody has.
_TARGETS = ("10.255.255.254", "172.31.255.254", "192.168.255.254", "192.0.2.1")
HOTSPOT, WIFI, CABLE = "this computer's own hotspot", "Wi-Fi", "a network cable"
INNER = "a network inside this computer, where no phone is"
# How systems name their interfaces (common practice, no source): the first pattern that is found in
# the name says what it is.
_KINDS = (
    (r"hotspot|wi-?fi direct|local area connection\*|^ap\d|^p2p|^bridge100\b", HOTSPOT),
    (r"docker|^br-|^veth|^virbr|^vmnet|^vbox|virtual|^v?ethernet \(|hyper-v|\bvpn\b", INNER),
    (r"^(u?tun|tap|wg|ppp|zt|lxc|cni|flannel)\d*", INNER),
    (r"^wl|wi-?fi|wireless|802\.11", WIFI),
    (r"^e(n|th)|ethernet|^lan", CABLE),
)


class NoAddress(InspectorError):
    """There is no address to share on."""


class SeveralAddresses(NoAddress):
    """There are several, and only a person knows on which network the phones are."""


@dataclass(frozen=True)
class Address:
    """An address of this computer.

    Parameters
    ----------
    address : str
        IPv4.
    interface : str
        The system's name of what it belongs to, "" where that is not known.
    """

    address: str
    interface: str = ""

    @property
    def kind(self) -> str:
        """What kind of network it is on, in words, "" where that is not known."""
        name = self.interface.lower()
        found = next((words for pattern, words in _KINDS if re.search(pattern, name)), "")
        if self.address in HOTSPOTS and found != INNER:
            return HOTSPOT
        return found

    @property
    def words(self) -> str:
        """What it is, for a person who chooses."""
        kind = self.kind or "a network"
        return f"{kind} ({self.interface})" if self.interface else kind

    @property
    def is_likely(self) -> bool:
        """Whether phones may be on its network."""
        return ipaddress.ip_address(self.address).is_private and self.kind != INNER


def own_addresses() -> list[Address]:
    """Return the IPv4 addresses of this computer that other devices could reach.

    Returns
    -------
    list of Address
        In order, without loopback.
    """
    found = dict.fromkeys(_of_name() | _of_routes(), "") | _of_interfaces()
    usable = [ipaddress.ip_address(each) for each in found]
    # Loopback is this computer alone, and unspecified would be all networks at once.
    usable = [each for each in usable if not each.is_loopback and not each.is_unspecified]
    return [Address(str(each), found[str(each)]) for each in sorted(usable)]


def likely(own: list[Address]) -> list[Address]:
    """Return those on whose network phones may be.

    Parameters
    ----------
    own : list of Address
        The addresses of this computer.

    Returns
    -------
    list of Address
        Every private one where none is likely.
    """
    private = [each for each in own if ipaddress.ip_address(each.address).is_private]
    return [each for each in own if each.is_likely] or private


def choose(asked: str | None, own: list[Address]) -> str:
    """Return the one address to share on.

    Parameters
    ----------
    asked : str or None
        The address that was asked for.
    own : list of Address
        The addresses of this computer.

    Returns
    -------
    str
        The one asked for, else the only one that phones may be near.

    Raises
    ------
    SeveralAddresses
        With what each of them is.
    NoAddress
        Where there is none, or not the one that was asked for.
    """
    if asked is not None:
        return _checked(asked, own)
    found = likely(own)
    # One needs no question; of several, only a person knows which network the phones are on.
    if len(found) == 1:
        return found[0].address
    if not found:
        raise NoAddress(
            "This computer is on no network that a phone could be on "
            f"(its addresses: {_listed(own)}). Switch its mobile hotspot on, or join the network "
            "of a router, then share."
        )
    each = "; ".join(f"{one.address}, {one.words}" for one in found)
    raise SeveralAddresses(
        f"This computer is on several networks: {each}. "
        f"Say on which one the phones are, such as --address {found[0].address}."
    )


def _checked(asked: str, own: list[Address]) -> str:
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
    if asked not in [each.address for each in own] and not given.is_loopback:
        raise NoAddress(
            f"{asked} is not an address of this computer; those it has are: {_listed(own)}."
        )
    return str(given)


def _listed(own: list[Address]) -> str:
    return ", ".join(each.address for each in own) or "none"


def _of_interfaces() -> dict[str, str]:
    """Every address that the system names, with the name of its interface."""
    import ifaddr

    try:
        found = [(ip, adapter) for adapter in ifaddr.get_adapters() for ip in adapter.ips]
    # Some tablets let no program ask; the other ways are left.
    except OSError:
        return {}
    return {
        ip.ip: _interface(ip.nice_name, adapter.nice_name) for ip, adapter in found if ip.is_IPv4
    }


def _interface(name: str, described: str) -> str:
    """What the system calls an interface; some describe it beside its name."""
    return name if described in name or not described else f"{name}, {described}"


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
