"""How large a house stays below a step of gross tonnage."""

from dataclasses import dataclass

from inspector.conversion.core.span import Span
from inspector.conversion.space.tonnage import (
    certificate_tonnage,
    enclosed_volume_of_certificate,
    gross_tonnage_after,
)
from inspector.conversion.space.tonnage_thresholds import THRESHOLDS, volume_left_below

# The two steps at which most begins, for ships of this kind.
STEPS = (500, 3000)
# m from deck to deck of a new house, where nobody gave it.
HOUSE_HEIGHT = 2.8


@dataclass(frozen=True)
class TonnageRoom:
    """One step of gross tonnage against the vessel after her changes.

    Parameters
    ----------
    step : int
        [-]
    begins : str
        What begins there.
    after : Span
        Gross tonnage as a certificate prints it, after the changes [-].
    volume : Span
        What may still be enclosed below the step [m³]; minus where it is passed.
    """

    step: int
    begins: str
    after: Span
    volume: Span

    @property
    def passed(self) -> bool | None:
        """Whether she is at or above the step; None where not the whole span agrees."""
        return self.after.at_least(self.step)

    def floor(self, height: float) -> Span:
        """Return the floor of a house of one deck that stays below the step.

        Parameters
        ----------
        height : float
            From deck to deck, 1.8 to 6 [m].

        Returns
        -------
        Span
            [m²]; minus where the step is passed.

        References
        ----------
        Plain arithmetic.
        """
        return self.volume / height


def tonnage_rooms(certificate: int, added: Span | None) -> tuple[TonnageRoom, ...]:
    """Return the steps of gross tonnage, each with what may still be enclosed below it.

    Parameters
    ----------
    certificate : int
        Gross tonnage of the certificate [-].
    added : Span or None
        Enclosed volume that the conversion adds [m³], minus where it removes; None for none.

    Returns
    -------
    tuple of TonnageRoom

    Raises
    ------
    BadInput
        A tonnage that cannot be.

    References
    ----------
    International tonnage convention 1969, annex I, regulation 3 (seen), inverted.
    """
    change = added or Span.exact(0.0)
    volume = enclosed_volume_of_certificate(certificate)
    # Nothing added leaves the certificate as it is; its volume alone would end one tonnage higher.
    after = Span.exact(certificate)
    if added is not None:
        after = gross_tonnage_after(volume, change).apply(certificate_tonnage)
    return tuple(
        TonnageRoom(step, THRESHOLDS[step], after, volume_left_below(volume + change, step))
        for step in STEPS
    )
