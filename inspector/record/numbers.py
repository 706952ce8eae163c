"""Which numbers of each device are here: the highest without holes, and the holes, so that both sides can prove that nothing is missing."""

MOST_NAMED = 200


class Counted:
    """The numbers seen per device. Adding a number again changes nothing."""

    def __init__(self) -> None:
        self._held: dict[str, int] = {}
        self._beyond: dict[str, set[int]] = {}

    def add(self, device: str, number: int) -> None:
        """Count one number (from 1) of a device."""
        held, beyond = self._held.setdefault(device, 0), self._beyond.setdefault(device, set())
        if number > held:
            beyond.add(number)
        while held + 1 in beyond:
            held += 1
            beyond.remove(held)
        self._held[device] = held

    def highest(self, device: str) -> int:
        """The highest number of a device, holes or not; 0 for a device unknown here."""
        return max(self._beyond.get(device) or (), default=self._held.get(device, 0))

    def held(self) -> dict[str, int]:
        """Device -> the highest number up to which every one is here."""
        return dict(sorted(self._held.items()))

    def missing(self, most: int = MOST_NAMED) -> dict[str, list[int]]:
        """Device -> the numbers below its highest that are not here, at most `most` of each; only devices that have such holes."""
        return {device: self._holes(device, most) for device, beyond in sorted(self._beyond.items()) if beyond}

    def _holes(self, device: str, most: int) -> list[int]:
        beyond, holes, number = self._beyond[device], [], self._held[device] + 1
        last = max(beyond)
        while number < last and len(holes) < most:
            if number not in beyond:
                holes.append(number)
            number += 1
        return holes
