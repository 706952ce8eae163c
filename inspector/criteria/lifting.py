"""Lifting gear: does the load of the last test fit the rating on the certificate."""

from inspector.criteria.exact import exact, share
from inspector.criteria.judgement import Criterion, Input, Judgement
from inspector.criteria.ladder import Ladder, below, beyond, stairs
from inspector.criteria.source import Source
from inspector.criteria.telling import told
from inspector.quantities import show

SOURCE = Source("Proof loads in the practice of ILO convention 152", "recalled", "to 20 t 1.25 times, to 50 t 5 t more, above 1.1 times", "memory")


def proof_load(swl: float) -> float:
    """Return the proof load [t] for a safe working load [t]: 1.25 times below 20 t, 5 t more to 50 t, 1.1 times above (memory).

    Examples
    --------
    >>> proof_load(19.9), proof_load(20), proof_load(50), proof_load(60)
    (24.875, 25.0, 55.0, 66.0)
    """
    return share(125, swl) if swl < 20 else float(exact(swl) + 5) if swl <= 50 else share(110, swl)


def proof_ladder(swl: float) -> Ladder:
    """Two bands of the load of the last test [t]."""
    return stairs(
        "t",
        below(proof_load(swl), "does not fit the rating", "poor", "too little for this rating: the certificate does not fit it"),
        beyond("fits the rating", "good", "enough for this rating"),
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
        proof_ladder(swl).step(proof),
        f"A test load of {show(proof, 't')}, against at least {show(limit, 't')} for a rating of {show(swl, 't')},",
        (proof, "t", limit),
        SOURCE,
        notes,
        at_least=True,
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
