"""The loading condition that the changes start from, as typed from the booklet."""

from dataclasses import dataclass

from inspector.conversion.core.particulars import Row


@dataclass(frozen=True)
class StartingCondition:
    """The row of hydrostatics, with what follows from it: KG, KM and GM complete one another.

    Parameters
    ----------
    row : Row
        The row of the table of hydrostatics.
    """

    row: Row

    def number(self, name: str) -> float | None:
        """Return a number of the table of hydrostatics.

        Parameters
        ----------
        name : str
            Name of the column.

        Returns
        -------
        float or None
            In the column's unit.

        References
        ----------
        As typed from the approved booklet.
        """
        return self.row.number(name)

    @property
    def draught(self) -> float | None:
        """Mean draught [m]: as given, else the mean of forward and aft."""
        given, fore, aft = (
            self.number(name) for name in ("draught", "draught_fore", "draught_aft")
        )
        # The marks give a mean only together.
        if given or fore is None or aft is None:
            return given or None
        return (fore + aft) / 2

    @property
    def free_surface_rise(self) -> float:
        """What the booklet's free surfaces take from GM before [m]; 0 where it names none."""
        moment, mass = self.number("free_surface"), self.number("displacement")
        # A booklet without a moment mostly gives GM with the surfaces in it.
        return moment / mass if moment and mass else 0.0

    @property
    def kg(self) -> float | None:
        """KG before, solid [m]."""
        km, gm = self.number("km"), self.number("gm")
        if self.number("kg") is not None:
            return self.number("kg")
        return None if km is None or gm is None else km - gm - self.free_surface_rise

    @property
    def km(self) -> float | None:
        """KM before [m]."""
        kg, gm = self.number("kg"), self.number("gm")
        if self.number("km") is not None:
            return self.number("km")
        return None if kg is None or gm is None else kg + gm + self.free_surface_rise

    @property
    def gm(self) -> float | None:
        """GM before [m]: as given, else from KM, KG and free surface."""
        km, kg = self.number("km"), self.number("kg")
        if self.number("gm") is not None:
            return self.number("gm")
        return None if km is None or kg is None else km - kg - self.free_surface_rise

    @property
    def gm_disagreement(self) -> float:
        """How far a given GM is from KM − KG − free surface [m]; 0 where not all are given."""
        kg, km, gm = (self.number(name) for name in ("kg", "km", "gm"))
        if None in (kg, km, gm):
            return 0.0
        # A booklet gives GM with free surfaces taken off, so they are taken off here as well.
        return km - kg - self.free_surface_rise - gm
