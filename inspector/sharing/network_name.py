"""The name and the password of the network that the phones join, as the user typed them.

They are forgotten when sharing stops, unless the user says that they shall be kept.
"""

from dataclasses import dataclass

from inspector.record.catalogue import Catalogue
from inspector.values.errors import InspectorError

SETTING = "network"
# IEEE 802.11: a name has 1 to 32 octets; a passphrase 8 to 63 characters, a key 64 hexadecimal
# digits. From memory.
MOST_NAME, LEAST_PASSWORD, MOST_PASSWORD = 32, 8, 64


class NetworkRefused(InspectorError):
    """No Wi-Fi network can have this name or password."""


@dataclass(frozen=True)
class Network:
    """A Wi-Fi network.

    Parameters
    ----------
    name : str
    password : str
        "" for an open network.
    """

    name: str
    password: str

    @property
    def code_text(self) -> str:
        """What the standard Wi-Fi code says, which the cameras of phones understand."""
        from segno import helpers

        kind = "WPA" if self.password else "nopass"
        return helpers.make_wifi_data(self.name, self.password or None, kind)


class NetworkName:
    """What was typed, in memory, and on disk where the user said so.

    Parameters
    ----------
    catalogue : Catalogue
    """

    def __init__(self, catalogue: Catalogue):
        self._catalogue = catalogue
        self._typed: Network | None = None

    @property
    def is_kept(self) -> bool:
        """Whether it is on disk."""
        return bool(self._catalogue.setting(SETTING))

    def now(self) -> Network | None:
        """Return what is known.

        Returns
        -------
        Network or None
        """
        kept = self._catalogue.setting(SETTING)
        if self._typed is None and kept:
            return Network(kept["name"], kept["password"])
        return self._typed

    def take(self, name: str, password: str, *, keep: bool) -> Network:
        """Take what was typed.

        Parameters
        ----------
        name, password : str
            As typed; no password for an open network.
        keep : bool
            Whether to keep it on disk; else what was kept there is removed.

        Returns
        -------
        Network

        Raises
        ------
        NetworkRefused
            Where no network can be so.
        """
        found = Network(name.strip(), password)
        _check(found)
        self._typed = found
        self._catalogue.set(SETTING, {"name": found.name, "password": password} if keep else None)
        return found

    def forget_what_is_not_kept(self) -> None:
        """Forget what was typed; what is on disk stays."""
        self._typed = None


def _check(network: Network) -> None:
    """Refuse what no network can have, so that no phone is sent after it."""
    size = len(network.name.encode("utf-8"))
    if not 0 < size <= MOST_NAME or not network.name.isprintable():
        raise NetworkRefused(
            f"The network's name has 1 to {MOST_NAME} letters; type it as the phone lists it."
        )
    length = len(network.password)
    if length and not LEAST_PASSWORD <= length <= MOST_PASSWORD:
        raise NetworkRefused(
            f"A Wi-Fi password has {LEAST_PASSWORD} to {MOST_PASSWORD} characters, and this one "
            f"has {length}; leave it empty for a network without one."
        )
    if not network.password.isprintable():
        raise NetworkRefused("A Wi-Fi password is one line without control characters.")
