"""What a criterion answers to a reading, and its refusal of a reading that it may not judge."""

from dataclasses import dataclass
from typing import NoReturn

from inspector.criteria.core.source import Source
from inspector.values.errors import InspectorError


class CannotJudge(InspectorError):
    """A reading that may not be judged. Attributes: ``criterion``, ``input``, ``received``."""


@dataclass(frozen=True)
class Judgement:
    """What a criterion says of a reading.

    Parameters
    ----------
    band : str
        The band in which the reading lies.
    rating : str or None
        good, fair, poor or failed; None where the rule does not speak of condition.
    value, limit, margin : float or None
        In ``unit``; a margin is positive on the good side of the limit.
    unit : str or None
    sentence : str
        The whole judgement in one sentence.
    notes : tuple of str
        What a reader must know beside it, one sentence each.
    source : Source or None
        Where the limit is published; None: the criterion's own source, which ``Criterion.apply``
        fills in.
    criterion : str
        The criterion's name, which ``Criterion.apply`` fills in.
    """

    band: str
    rating: str | None
    value: float | None
    unit: str | None
    limit: float | None
    margin: float | None
    sentence: str
    notes: tuple[str, ...] = ()
    source: Source | None = None
    criterion: str = ""


def judgement_in_words(
    band: str,
    rating: str | None,
    sentence: str,
    notes: tuple[str, ...] = (),
    source: Source | None = None,
) -> Judgement:
    """Return the judgement of what was seen, shown or dated, where no numbers are compared.

    Parameters
    ----------
    band, rating, sentence, notes, source
        As in ``Judgement``.

    Returns
    -------
    Judgement
    """
    return Judgement(band, rating, None, None, None, None, sentence, notes, source)


def refuse(input_name: str | None, received: object, why: str) -> NoReturn:
    """Raise CannotJudge; ``Criterion.apply`` adds which criterion it was.

    Parameters
    ----------
    input_name : str or None
        The input that cannot be used.
    received : object
        What was given for it.
    why : str
        The reason, without a full stop.

    Raises
    ------
    CannotJudge
        Always.
    """
    raise CannotJudge(why, criterion="", input=input_name, received=received)
