"""The root of all our errors, in a module of its own so that every room can import it."""


class InspectorError(Exception):
    """One clear sentence for a person, and the facts known at that moment for a program.

    Parameters
    ----------
    sentence : str
        What is wrong, where, and what would be right.
    **facts
        Kept as attributes of the error and, together, in ``facts``.

    Examples
    --------
    >>> error = InspectorError("The unit 'furlong' is not known.", unit="furlong")
    >>> str(error), error.unit
    ("The unit 'furlong' is not known.", 'furlong')
    """

    def __init__(self, sentence: str, **facts: object) -> None:
        super().__init__(sentence)
        self.facts = facts
        # A program reads `error.field`; only a person reads the sentence, whose words may change.
        for name, fact in facts.items():
            setattr(self, name, fact)
