"""Which numbers of each device are here, so that both sides can prove that nothing is missing."""

MOST_NAMED = 200


class DeviceCounts:
    """The numbers of entries per device. Adding a number again changes nothing."""

    def __init__(self) -> None:
        self._complete: dict[str, int] = {}
        self._beyond: dict[str, set[int]] = {}

    def add(self, device: str, number: int) -> None:
        """Count one number (from 1) of a device."""
        complete = self._complete.get(device, 0)
        # Nearly always the next one.
        if number == complete + 1 and not self._beyond.get(device):
            self._complete[device] = number
            return
        beyond = self._beyond.setdefault(device, set())
        if number > complete:
            beyond.add(number)
        while complete + 1 in beyond:
            complete += 1
            beyond.remove(complete)
        self._complete[device] = complete

    def highest(self, device: str) -> int:
        """Return the highest number of a device, holes or not; 0 for a device unknown here."""
        return max(self._beyond.get(device) or (), default=self._complete.get(device, 0))

    def count(self, device: str) -> int:
        """Return how many numbers of a device are here."""
        return self._complete.get(device, 0) + len(self._beyond.get(device, ()))

    def complete_up_to(self) -> dict[str, int]:
        """Return device -> the highest number up to which every one is here."""
        return dict(sorted(self._complete.items()))

    def missing(self, most: int = MOST_NAMED) -> dict[str, list[int]]:
        """Return device -> the numbers below its highest that are not here.

        Parameters
        ----------
        most : int
            How many numbers of a device are named.

        Returns
        -------
        dict of str to list of int
            Only devices that have such holes.
        """
        with_holes = sorted(device for device, beyond in self._beyond.items() if beyond)
        return {device: self._holes(device, most) for device in with_holes}

    def _holes(self, device: str, most: int) -> list[int]:
        """The first missing numbers of a device."""
        beyond, holes, number = self._beyond[device], [], self._complete[device] + 1
        last = max(beyond)
        while number < last and len(holes) < most:
            if number not in beyond:
                holes.append(number)
            number += 1
        return holes
