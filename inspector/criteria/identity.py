"""The ship's identification number and its check digit.

A check digit that fits proves nothing but careful copying: it misses four in nine of the single slips in the third
place. So a fit carries no rating and the sentence asks for the mark on the hull.
"""

from inspector.criteria.judgement import Criterion, Input, Judgement, refuse
from inspector.criteria.source import Source

SOURCE = Source("IMO ship identification number scheme, resolution A.1117(30)", "2017",
                "check digit, as reference pages give it", "seen")
WEIGHTS = (7, 6, 5, 4, 3, 2)
COMPANY_WEIGHTS = (8, 6, 4, 2, 9, 7)
RUN = "1234567"
COMPARE = "Compare the mark on the hull, the certificate and the number plate: a digit that fits proves no number."


def check_digit(first_six: str) -> int:
    """Return the seventh digit that belongs to six digits of a ship's number. A.1117(30) (seen in reference pages).

    Examples
    --------
    >>> check_digit("907472")
    9
    """
    return sum(int(digit) * weight for digit, weight in zip(first_six, WEIGHTS, strict=True)) % 10


def company_check_digit(first_six: str) -> int:
    """Return the seventh digit that belongs to six digits of a company's or owner's number (seen in reference pages).

    Examples
    --------
    >>> company_check_digit("204199")
    9
    """
    total = sum(int(digit) * weight for digit, weight in zip(first_six, COMPANY_WEIGHTS, strict=True))
    return (11 - total % 11) % 10


def digits_of(number: str) -> str:
    """Return the seven digits of a number as typed ("IMO 0123450", "imo0123450"), or refuse with what is wrong."""
    plain = number.strip()
    if plain[:3].upper() == "IMO":
        plain = plain[3:].strip()
    if plain[:3].upper() == "IM0":
        refuse("imo-number", "number", number, f"'{number}' has a zero where IMO has its letter O")
    if "O" in plain.upper() and plain.upper().replace("O", "0").isdigit():
        refuse("imo-number", "number", number, f"'{number}' has the letter O where a zero belongs")
    if not (plain.isascii() and plain.isdigit()):
        refuse("imo-number", "number", number, f"'{number}' must be seven digits, with or without IMO before them")
    if len(plain) != 7:
        refuse("imo-number", "number", number, f"'{number}' has {len(plain)} digits and a ship's number has seven")
    if plain == "0000000":
        refuse("imo-number", "number", number, "'0000000' is a placeholder and no ship's number")
    return plain


def judge_number(number: str) -> Judgement:
    """Judge whether the check digit of a ship's number fits.

    Parameters
    ----------
    number : text, seven digits, with or without IMO before them; kept as text because of leading zeros.

    Returns
    -------
    Judgement : value the last digit, limit the digit that would fit; rating None where it fits, poor where not.

    References
    ----------
    Resolution A.1117(30), SOLAS XI-1/3; sum seen in reference pages.
    """
    digits = digits_of(number)
    wanted, last = check_digit(digits[:6]), int(digits[6])
    notes = [COMPARE]
    if digits == RUN:
        notes.append("1234567 fits by chance and looks typed for want of the true number.")
    if last == wanted:
        sentence = f"The check digit of {digits} fits: copied without an obvious slip, but not proven."
        return Judgement("imo-number", "check digit fits", None, last, None, wanted, None, sentence, SOURCE,
                         tuple(notes))
    if last == company_check_digit(digits[:6]):
        notes.append("It would fit as a company's or owner's number, which is another register.")
    sentence = f"The last digit of {digits} is {last} and should be {wanted}: read the hull mark and the papers again."
    return Judgement("imo-number", "check digit does not fit", "poor", last, None, wanted, None, sentence, SOURCE,
                     tuple(notes))


CRITERIA = (
    Criterion(
        "imo-number", "Check digit of the ship's identification number",
        (Input("number", "IMO number", "text"),),
        SOURCE, judge_number, "Seven digits, not all zero; text.",
        "Two published numbers and one company number as formula oracles; all single slips counted by ourselves.",
    ),
)
