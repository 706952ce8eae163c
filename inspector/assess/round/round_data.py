"""A round as plain data, for the walk page: ids and numbers only."""

from inspector.assess.round.composition import Round


def round_data(made: Round) -> dict[str, object]:
    """Return a round as the walk's scripts receive it.

    Parameters
    ----------
    made : Round

    Returns
    -------
    dict
        ``stops``: in walking order, each with its space, the person who looks there and its looks,
        each the sheets that it answers without "sheet/", its way and its seconds; ``left``: how
        many checks are left out; ``seconds``: what each of the people needs.
    """
    return {
        "stops": [
            {
                "space": stop.space,
                "person": stop.person,
                "looks": [
                    {
                        "sheets": [subject.removeprefix("sheet/") for subject in one.way.subjects],
                        "way": one.way.kind,
                        "seconds": one.way.seconds,
                    }
                    for one in stop.chosen
                ],
            }
            for stop in made.stops
        ],
        "left": len(made.left_out),
        "seconds": list(made.seconds),
    }
