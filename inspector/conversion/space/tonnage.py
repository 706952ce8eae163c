"""Gross and net tonnage of the 1969 convention, and the thresholds that a change would cross.

A certificate drops the decimals, so the enclosed volume behind it is a span. Only a recognised
tonnage measurer decides what is enclosed.
"""

from math import floor, log10

from inspector.conversion.core.bounds import BadInput, plain
from inspector.conversion.core.span import Span, span
from inspector.criteria.core.source import Source
from inspector.values.formatting import show

ITC = Source.seen(
    "International Convention on Tonnage Measurement of Ships",
    "1969",
    "annex I, regulations 3 and 4",
)
# m³, far beyond any vessel of this kind.
MOST_VOLUME = 400_000.0
# Beyond both a figure was mistyped.
MOST_TONNAGE = 100_000


def volume_coefficient(volume: float) -> float:
    """Return K1 of regulation 3 or K2 of regulation 4: 0.2 + 0.02 log10 V.

    Parameters
    ----------
    volume : float
        Of enclosed or of cargo spaces [m³].

    Returns
    -------
    float

    References
    ----------
    ITC 1969, annex I, regulations 3 and 4 (seen).
    """
    return 0.2 + 0.02 * log10(volume)


def gross_tonnage(volume: float) -> float:
    """Return the gross tonnage of an enclosed volume, with its decimals: (0.2 + 0.02 log10 V) V.

    Parameters
    ----------
    volume : float
        Enclosed volume [m³], 1 to 400 000.

    Returns
    -------
    float
        Gross tonnage [-].

    Raises
    ------
    BadInput
        The volume is beyond those ends.

    References
    ----------
    ITC 1969, annex I, regulation 3 (seen).

    Examples
    --------
    >>> round(gross_tonnage(1000), 6)
    260.0
    """
    return volume_coefficient(plain("enclosed volume", volume, 1, MOST_VOLUME, "m³")) * volume


def certificate_tonnage(tonnage: float) -> int:
    """Return a tonnage as a certificate gives it: the decimals are dropped and never rounded up.

    Parameters
    ----------
    tonnage : float
        Gross or net tonnage with its decimals [-].

    Returns
    -------
    int
        Whole tonnage [-].

    References
    ----------
    ITC 1969, annex I (seen).

    Examples
    --------
    >>> certificate_tonnage(2999.97)
    2999
    """
    # A tonnage that should be whole may be just below it in binary.
    return floor(round(tonnage, 6))


def enclosed_volume(tonnage: float) -> float:
    """Return the enclosed volume of an exact gross tonnage, by bisection.

    Parameters
    ----------
    tonnage : float
        Gross tonnage with its decimals [-], 1 to 100 000.

    Returns
    -------
    float
        Enclosed volume [m³].

    Raises
    ------
    BadInput
        The tonnage is beyond those ends.

    References
    ----------
    ITC 1969, annex I, regulation 3 (seen), inverted.
    """
    plain("gross tonnage", tonnage, 1, MOST_TONNAGE)
    low, high = 1.0, MOST_VOLUME
    # A hundred halvings reach the last bit of a float, whatever the ends were.
    for _ in range(100):
        middle = (low + high) / 2
        low, high = (middle, high) if gross_tonnage(middle) < tonnage else (low, middle)
    return (low + high) / 2


def enclosed_volume_of_certificate(certificate: int) -> Span:
    """Return the enclosed volume behind the whole gross tonnage of a certificate.

    Parameters
    ----------
    certificate : int
        Gross tonnage as the certificate gives it [-].

    Returns
    -------
    Span
        Enclosed volume [m³]: anything up to that of the next whole tonnage.

    Raises
    ------
    BadInput
        It is not a whole number from 1 to 99 999.

    References
    ----------
    ITC 1969, annex I, regulation 3 (seen), inverted.
    """
    plain("gross tonnage", certificate, 1, MOST_TONNAGE - 1)
    # Decimals come from another table, such as a cubic number, and are no gross tonnage.
    if certificate != int(certificate):
        raise BadInput(
            f"Gross tonnage is {certificate}, and a certificate gives a whole number.",
            field="gross tonnage",
            value=certificate,
        )
    # Any volume between is as likely as another, so the span has no point.
    return Span(enclosed_volume(certificate), None, enclosed_volume(certificate + 1))


def gross_tonnage_after(volume: Span | float, added: Span | float) -> Span:
    """Return the gross tonnage after enclosed volume is added or removed.

    Parameters
    ----------
    volume : Span or float
        Enclosed volume before [m³].
    added : Span or float
        Enclosed volume added [m³], minus where it is removed.

    Returns
    -------
    Span
        Gross tonnage with its decimals [-].

    Raises
    ------
    BadInput
        No enclosed volume would remain.

    References
    ----------
    ITC 1969, annex I, regulation 3 (seen).
    """
    after = span(volume) + added
    # More is removed than the ship encloses: one of both was typed wrongly.
    if after.low < 1:
        sentence = (
            f"Enclosed volume would be {show(after.low, 'm³')}, and a vessel needs more; "
            "check what is removed."
        )
        raise BadInput(sentence, field="enclosed volume", value=after.low)
    return after.apply(gross_tonnage)
