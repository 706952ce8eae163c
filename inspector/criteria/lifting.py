"""Lifting gear: does the load of the last test fit the rating on the certificate."""

from decimal import Decimal

from inspector.criteria.judgement import Criterion, Input, Judgement, Ladder, Source
from inspector.criteria.laddered import below, told
from inspector.quantities import show

SOURCE = Source("Proof loads in the practice of ILO convention 152", "recalled", "to 20 t 1.25 times, to 50 t 5 t more, above 1.1 times", "memory")


def proof_load(swl: float) -> float:
    """Return the proof load [t] for a safe working load [t]: 1.25 times below 20 t, 5 t more to 50 t, 1.1 times above (memory).

    Examples
    --------
    >>> proof_load(19.9), proof_load(20), proof_load(50), proof_load(60)
    (24.875, 25.0, 55.0, 66.0)
    """
    load = Decimal(str(swl))
    return float(load * Decimal("1.25") if load < 20 else load + 5 if load <= 50 else load * Decimal("1.1"))


def proof_ladder(swl: float) -> Ladder:
    """Two bands of the load of the last test [t]."""
    return below(
        "t",
        (proof_load(swl), "does not fit the rating", "poor", "too little for this rating: the certificate does not fit it"),
        (None, "fits the rating", "good", "enough for this rating"),
    )


def judge_proof(proof: float, swl: float) -> Judgement:
    """Judge the load of the last test of a lifting appliance against its rating.

    Parameters
    ----------
    proof [t], load of the test, 0 to 2000; swl [t], rating at the same radius and mode, 0.1 to 1000.

    References
    ----------
    Practice of ILO convention 152: 1.25 times below 20 t, 5 t more to 50 t, 1.1 times above (memory).
    """
    limit = proof_load(swl)
    notes = (
        "Radius and mode belong to the rating: a load at 10 m is not one at 16 m.",
        "Nothing is lifted for an inspection; certificates and register are read.",
    )
    return told(
        "lifting-proof-load",
        proof_ladder(swl),
        proof,
        "A test load",
        f"at least {show(limit, 't')} for a rating of {show(swl, 't')}",
        limit,
        SOURCE,
        at_least=True,
        notes=notes,
    )


CRITERIA = (
    Criterion(
        "lifting-proof-load",
        "Load of the last test of a lifting appliance",
        (Input("proof", "Load of the last test", "number", "t", low=0, high=2000), Input("swl", "Rating at that radius", "number", "t", low=0.1, high=1000)),
        SOURCE,
        judge_proof,
        "Cranes, davits for stores and winches of 0.1 to 1000 t.",
        "Both edges of the rule and one load each by our own arithmetic; the rule is recalled.",
        ladder=proof_ladder,
    ),
)
