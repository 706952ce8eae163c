"""The ship's identification number and its check digit.

A check digit that fits proves nothing but careful copying: it misses four in nine of the slips in
the third place. So a fit carries no rating, and the sentence asks for the mark on the hull.
"""

import re

from inspector.criteria.core.criterion import Criterion
from inspector.criteria.core.judgement import Judgement, refuse
from inspector.criteria.core.source import Source
from inspector.values.field import Field

SOURCE = Source.seen(
    "IMO ship identification number scheme, resolution A.1117(30)",
    "2017",
    "check digit, as reference pages give it",
)
# what papers and plates write before the digits
_LETTERS = re.compile(r"I\.?M\.?O\.?\s*(?:number|no\.?|nr\.?|#)?\s*:?", re.IGNORECASE)
WEIGHTS = (7, 6, 5, 4, 3, 2)
COMPANY_WEIGHTS = (8, 6, 4, 2, 9, 7)
RUN = "1234567"
COMPARE = (
    "Compare the mark on the hull, the certificate and the number plate: a digit that "
    "fits proves no number."
)


def check_digit(first_six: str) -> int:
    """Return the seventh digit that belongs to six digits of a ship's number.

    Parameters
    ----------
    first_six : str
        First six digits.

    Returns
    -------
    int
        Seventh digit.

    References
    ----------
    A.1117(30) (seen in reference pages).

    Examples
    --------
    >>> check_digit("907472")
    9
    """
    return sum(int(digit) * weight for digit, weight in zip(first_six, WEIGHTS, strict=True)) % 10


def company_check_digit(first_six: str) -> int:
    """Return the seventh digit that belongs to six digits of a company's or owner's number.

    Parameters
    ----------
    first_six : str
        First six digits.

    Returns
    -------
    int
        Seventh digit.

    References
    ----------
    Reference pages (seen).

    Examples
    --------
    >>> company_check_digit("204199")
    9
    """
    total = sum(
        int(digit) * weight for digit, weight in zip(first_six, COMPANY_WEIGHTS, strict=True)
    )
    return (11 - total % 11) % 10


def digits_of(number: str) -> str:
    """Return the seven digits of a number as typed ("IMO 0123450", "I.M.O. No. 012 3450").

    Parameters
    ----------
    number : str
        IMO number.

    Returns
    -------
    str
        Seven digits.

    Raises
    ------
    CannotJudge
        With what is wrong.
    """
    plain = re.sub(r"\s", "", _LETTERS.sub("", number.strip()))
    if plain[:3].upper() == "IM0":
        refuse("number", number, f"'{number}' has a zero where IMO has its letter O")
    # a letter O typed for a zero is the commonest slip, and is named as such
    if "O" in plain.upper() and plain.upper().replace("O", "0").isdigit():
        refuse("number", number, f"'{number}' has the letter O where a zero belongs")
    if not (plain.isascii() and plain.isdigit()):
        refuse(
            "number", number, f"'{number}' must be seven digits, with or without IMO before them"
        )
    if len(plain) != 7:
        refuse(
            "number", number, f"'{number}' has {len(plain)} digits and a ship's number has seven"
        )
    if plain == "0000000":
        refuse("number", number, "'0000000' is a placeholder and no ship's number")
    return plain


def judge_number(number: str) -> Judgement:
    """Judge whether the check digit of a ship's number fits.

    Parameters
    ----------
    number : str
        IMO number.

    Returns
    -------
    Judgement
        Value the last digit, limit the digit that would fit; rating None where it fits, poor where
        not.

    References
    ----------
    Resolution A.1117(30), SOLAS XI-1/3; sum seen in reference pages.
    """
    digits = digits_of(number)
    wanted, last = check_digit(digits[:6]), int(digits[6])
    notes = [COMPARE]
    # The digit fits, so that only this says that somebody filled a field.
    if digits == RUN:
        notes.append("1234567 fits by chance and looks typed for want of the true number.")
    if last == wanted:
        sentence = (
            f"The check digit of {digits} fits: copied without an obvious slip, but not proven."
        )
        return Judgement("check digit fits", None, last, None, wanted, None, sentence, tuple(notes))
    # papers print the number of the company beside that of the ship
    if last == company_check_digit(digits[:6]):
        notes.append("It would fit as a company's or owner's number, which is another register.")
    sentence = (
        f"The last digit of {digits} is {last} and should be {wanted}: read the hull "
        "mark and the papers again."
    )
    return Judgement(
        "check digit does not fit", "poor", last, None, wanted, None, sentence, tuple(notes)
    )


CRITERIA = (
    Criterion(
        "imo-number",
        "Check digit of the ship's identification number",
        (Field("number", "IMO number", "text"),),
        SOURCE,
        judge_number,
        "Seven digits, not all zero; text.",
        "Two published numbers and one company number as formula oracles; all "
        "single slips counted by ourselves.",
    ),
)
