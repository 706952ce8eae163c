"""Small things of language that every room needs: a grouped number, a capital at the start, names in a row."""

from collections.abc import Sequence

BETWEEN_GROUPS = "\u00a0"


def grouped(value: float, form: str = ",.0f") -> str:
    """Return a number with its thousands set apart by a space that does not break; `form` is a format that groups by commas.

    Examples
    --------
    >>> grouped(1234567.4).split()
    ['1', '234', '567']
    """
    return format(value, form).replace(",", BETWEEN_GROUPS)


def amount(value: float) -> str:
    """Return a sum of money: grouped, with hundredths only where there are any.

    Examples
    --------
    >>> amount(250), amount(250.5)
    ('250', '250.50')
    """
    return grouped(value, ",.2f").removesuffix(".00")


def capital(text: str) -> str:
    """Return a text with its first letter as a capital and the others as they are.

    Examples
    --------
    >>> capital("main engine of the USV")
    'Main engine of the USV'
    """
    return text[:1].upper() + text[1:]


def listed(names: Sequence[str], last: str = "and") -> str:
    """Return names in a row, the last one after a word.

    Examples
    --------
    >>> listed(["hull"]), listed(["hull", "deck", "tanks"]), listed(["fuel", "water"], "or")
    ('hull', 'hull, deck and tanks', 'fuel or water')
    """
    return f" {last} ".join([", ".join(names[:-1]), names[-1]]) if len(names) > 1 else "".join(names)
