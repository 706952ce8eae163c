"""Why a photo is not taken in: for good, or only at this moment."""

from inspector.values.errors import InspectorError


class PhotoRefused(InspectorError):
    """Not a photo that can be kept; the sentence says why and what would be right."""


class Busy(InspectorError):
    """Too many photos are being worked on; the same photo is taken in a little later.

    Parameters
    ----------
    wait : int
        When to try again [s].
    """

    def __init__(self, wait: int = 5):
        super().__init__(
            f"This computer is working on other photos just now. Try again in {wait} seconds; "
            "nothing is lost."
        )
        self.wait = wait


def damaged(kind: str) -> PhotoRefused:
    """Return the refusal of a picture that cannot be read to its end.

    Parameters
    ----------
    kind : str
        As `picture_kind.kind_of` returned it.

    Returns
    -------
    PhotoRefused
    """
    return PhotoRefused(
        f"The photo is damaged or cut short: it begins like {kind.upper()} but cannot be read to "
        "its end. Send it again."
    )
