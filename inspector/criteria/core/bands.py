"""Bands of one number as data, applied by a judging function here and by a phone alone."""

from dataclasses import dataclass, replace


@dataclass(frozen=True)
class Band:
    """One band of a number.

    Parameters
    ----------
    upto : float or None
        Its upper end, in the unit of the bands; None: without end.
    closed : bool
        Whether the end itself belongs to it.
    band : str
        Its name.
    rating : str or None
    meaning : str
        Finishes the sentence "9.6 mm is ...".
    """

    upto: float | None
    closed: bool
    band: str
    rating: str | None
    meaning: str

    def includes(self, value: float) -> bool:
        """Return whether the value is not beyond this band's upper end."""
        return self.upto is None or value < self.upto or (self.closed and value == self.upto)


@dataclass(frozen=True)
class Bands:
    """Bands of a criterion's first input by rising value, in ``unit``; the last one has no end."""

    unit: str
    bands: tuple[Band, ...]

    def band_of(self, value: float) -> Band:
        """Return the band in which a value lies."""
        # The last band has no end, so there always is one.
        return next(band for band in self.bands if band.includes(value))

    def capped_at_poor(self) -> "Bands":
        """Return the same bands for a source whose mark does not let them fail a system."""
        # The words of the band stay: only what it does to a system is less.
        capped = [replace(b, rating="poor") if b.rating == "failed" else b for b in self.bands]
        return replace(self, bands=tuple(capped))


def to(upto: float, band: str, rating: str | None, meaning: str) -> Band:
    """Return the band up to a value that belongs to it."""
    return Band(upto, True, band, rating, meaning)


def below(upto: float, band: str, rating: str | None, meaning: str) -> Band:
    """Return the band up to a value that belongs to the next band."""
    return Band(upto, False, band, rating, meaning)


def beyond(band: str, rating: str | None, meaning: str) -> Band:
    """Return the last band, without end."""
    return Band(None, False, band, rating, meaning)


def bands_of(unit: str, *bands: Band) -> Bands:
    """Return bands by rising value, without those that an earlier one leaves empty.

    So limits that a surveyor sets in an unusual order (an alarm above the watch limit) still give
    one band for each value. Where low is bad the earlier band is the stricter one; where high is
    bad the caller takes the lesser of two ends.

    Parameters
    ----------
    unit : str
    *bands : Band

    Returns
    -------
    Bands

    Examples
    --------
    >>> low, odd = below(5, "low", "poor", "low"), below(3, "odd", "fair", "odd")
    >>> [band.band for band in bands_of("V", low, odd, beyond("good", "good", "good")).bands]
    ['low', 'good']
    """
    kept: list[Band] = []
    for band in bands:
        # A surveyor may set the limit to act below the one to watch; the stricter one then counts.
        if band.upto is None or not kept or _end(band) > _end(kept[-1]):
            kept.append(band)
    return Bands(unit, tuple(kept))


def _end(band: Band) -> tuple[float, bool]:
    return band.upto, band.closed


def watch_and_act(unit: str, watch: float, act: float, cause: str) -> Bands:
    """Return bands of a number that is worse the higher it is: good to watch, fair to act, poor.

    An act limit at or below the watch limit leaves no fair band: the stricter one counts.

    Parameters
    ----------
    unit : str
    watch, act : float
        The limits [unit], each in the better band.
    cause : str
        What to do or to think of beyond the act limit.

    Returns
    -------
    Bands
    """
    return bands_of(
        unit,
        to(min(watch, act), "good", "good", "in order"),
        to(act, "watch", "fair", "to be watched, and read again"),
        beyond("act", "poor", cause),
    )
