"""Which address to share on: picked where there is one, asked in words where there are several."""

import socket
from types import SimpleNamespace

import ifaddr
import pytest

from inspector.sharing import addresses
from inspector.sharing.addresses import CABLE, HOTSPOT, INNER, WIFI, Address

HOME, HOTEL = Address("10.42.0.1", "wlan0"), Address("192.168.3.7", "eth0")


@pytest.mark.parametrize(
    ("address", "interface", "kind"),
    [
        ("192.168.3.7", "wlp2s0", WIFI),
        ("192.168.3.7", "Wi-Fi, Wireless Adapter", WIFI),
        ("192.168.3.7", "enp3s0", CABLE),
        ("192.168.3.7", "Ethernet 2", CABLE),
        ("10.42.0.1", "wlan0", HOTSPOT),
        ("192.168.137.1", "Local Area Connection* 2, Wi-Fi Direct Virtual Adapter", HOTSPOT),
        ("192.168.9.1", "ap0", HOTSPOT),
        ("172.17.0.1", "docker0", INNER),
        ("172.20.0.1", "vEthernet (inner)", INNER),
        ("10.8.0.2", "tun0", INNER),
        ("10.8.0.2", "utun3", INNER),
        ("192.168.122.1", "virbr0", INNER),
        ("192.168.3.7", "", ""),
    ],
)
def test_what_an_address_is_is_said_in_words(address, interface, kind):
    """A person knows a hotspot, a Wi-Fi and a cable, and not the name of an interface."""
    assert kind == Address(address, interface).kind


@pytest.mark.parametrize(
    ("asked", "own", "chosen"),
    [
        (None, [Address("192.168.137.1")], "192.168.137.1"),
        (None, [HOME, Address("8.8.4.4", "ppp0")], "10.42.0.1"),
        (None, [HOME, Address("172.17.0.1", "docker0"), Address("10.8.0.2", "tun0")], "10.42.0.1"),
        (None, [Address("172.17.0.1", "docker0")], "172.17.0.1"),
        ("10.42.0.1", [HOME, HOTEL], "10.42.0.1"),
    ],
)
def test_the_one_address_is_chosen(asked, own, chosen):
    """The address asked for, else the only one on whose network a phone may be."""
    assert chosen == addresses.choose(asked, own)


@pytest.mark.parametrize(
    ("asked", "own", "sentence"),
    [
        (None, [], "on no network that a phone could be on"),
        ("10.0.0.9", [HOME], "is not an address"),
        ("0.0.0.0", [HOME], "cannot be shared on"),
        ("::1", [HOME], "cannot be shared on"),
        ("laptop", [HOME], "is not an address"),
    ],
)
def test_an_address_that_cannot_be_is_refused_with_those_that_can(asked, own, sentence):
    """None, a foreign one, all of them at once: one sentence that lists the machine's own."""
    with pytest.raises(addresses.NoAddress, match=sentence):
        addresses.choose(asked, own)


def test_several_are_asked_about_in_words():
    """Each with what it is."""
    with pytest.raises(addresses.SeveralAddresses) as asked:
        addresses.choose(None, [HOME, HOTEL])

    assert "10.42.0.1, this computer's own hotspot (wlan0)" in str(asked.value)
    assert "192.168.3.7, a network cable (eth0)" in str(asked.value)


def test_the_systems_interfaces_are_read_and_loopback_is_none(monkeypatch):
    """Every IPv4 address with its interface; neither loopback nor IPv6."""
    ips = [
        SimpleNamespace(ip="192.168.3.7", nice_name="wlan0", is_IPv4=True),
        SimpleNamespace(ip=("fe80::1", 0, 0), nice_name="wlan0", is_IPv4=False),
        SimpleNamespace(ip="127.0.0.1", nice_name="lo", is_IPv4=True),
    ]
    adapters = [SimpleNamespace(nice_name="wlan0", ips=ips)]
    monkeypatch.setattr(ifaddr, "get_adapters", lambda: adapters)
    monkeypatch.setattr(addresses, "_of_name", set)
    monkeypatch.setattr(addresses, "_of_routes", set)

    assert [Address("192.168.3.7", "wlan0")] == addresses.own_addresses()


def test_a_system_that_lets_nobody_ask_still_has_addresses(monkeypatch):
    """Where interfaces cannot be listed, the address that would be sent from is left."""

    def refused():
        raise OSError("not permitted")

    monkeypatch.setattr(ifaddr, "get_adapters", refused)
    monkeypatch.setattr(addresses, "_of_routes", lambda: {"192.168.3.7"})
    monkeypatch.setattr(addresses, "_of_name", set)

    assert [Address("192.168.3.7")] == addresses.own_addresses()


def test_here_the_real_ones_can_be_bound():
    """Whatever this machine has, each address is its own."""
    for each in addresses.own_addresses():
        with socket.socket() as one:
            one.bind((each.address, 0))
